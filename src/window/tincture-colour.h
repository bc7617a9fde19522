/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The dialog that chooses a tincture's colour: the one place that knows the toolkit's own. */
#pragma once

#include <gtk/gtk.h>

#include "window/session.h"

G_BEGIN_DECLS

/* Asks for another colour of the tincture called ID, over the window that WIDGET is in; one edit when the
 * painter agrees. Returns the dialog, which frees itself. */
GtkWidget *spv_tincture_colour_ask(GtkWidget *widget, SpvSession *session, const char *id);

G_END_DECLS
