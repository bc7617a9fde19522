/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A path as the screen shows it. */
#pragma once

#include <glib.h>

/* PATH in UTF-8, with "~" for the painter's home where it goes on from there. Free with g_free(). */
char *spv_path_words(const char *path);
