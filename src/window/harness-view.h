/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The harness laid flat: all its panels to one common scale in the places where the wearer bears them, drawn
 * live. Choosing one here chooses it in the session. */
#pragma once

#include <gtk/gtk.h>

#include "window/session.h"

G_BEGIN_DECLS

#define SPV_TYPE_HARNESS_VIEW (spv_harness_view_get_type())
G_DECLARE_FINAL_TYPE(SpvHarnessView, spv_harness_view, SPV, HARNESS_VIEW, GtkWidget)

/* Property: "session" (SpvSession or NULL). */

GtkWidget *spv_harness_view_new(void);

/* Where panel PANEL is drawn, px in the view, at least 16 px on a side: what a click takes. FALSE when there
 * is no such panel. */
gboolean spv_harness_view_panel_box(SpvHarnessView *view, guint panel, SpvBox *box);

/* The panel nearest to panel FROM in the direction (DX, DY), one of which is 0; FROM itself when
 * there is none. */
guint spv_harness_view_neighbour(SpvHarnessView *view, guint from, int dx, int dy);

G_END_DECLS
