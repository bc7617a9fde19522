/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The canvas: the chosen panel on a cutting mat between millimetre rulers, drawn live, with handles on
 * everything that has a measure and the panel at true size in a corner. */
#pragma once

#include <gtk/gtk.h>

#include "window/session.h"

G_BEGIN_DECLS

#define SPV_TYPE_CANVAS (spv_canvas_get_type())
G_DECLARE_FINAL_TYPE(SpvCanvas, spv_canvas, SPV, CANVAS, GtkWidget)

/* Properties: "session" (SpvSession or NULL), "hatch" (boolean: tinctures as hatch), "show-guide" (boolean:
 * the dots and rulings of the chosen layer; of all while none is chosen). */

GtkWidget *spv_canvas_new(void);

/* By a step, about the middle. */
void spv_canvas_zoom_in(SpvCanvas *canvas);
void spv_canvas_zoom_out(SpvCanvas *canvas);
/* The whole panel, and it stays fitted until the painter zooms or pans. */
void spv_canvas_zoom_fit(SpvCanvas *canvas);

G_END_DECLS
