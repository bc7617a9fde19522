/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small picture of a whole harness with its designs. */
#pragma once

#include <gtk/gtk.h>

#include "scheme/scheme.h"

/* A widget SIZE pixels square that shows SCHEME, every panel to one scale. */
GtkWidget *spv_thumbnail_new(const SpvScheme *scheme, int size);
