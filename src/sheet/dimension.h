/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Dimension lines as in a technical drawing: extension lines, a line between two arrowheads, and the figure
 * above it, or beyond its end where it is too short. In the context's colour; millimetres on the page. */
#pragma once

#include <cairo.h>

/* From X0 to X1, measured at FROM (y) and drawn at AT, below it. */
void spv_dimension_draw_across(cairo_t *cr, double x0, double x1, double from, double at, const char *figure);
/* From Y0 to Y1, measured at FROM (x) and drawn at AT, to its right; the figure reads from below upwards. */
void spv_dimension_draw_down(cairo_t *cr, double y0, double y1, double from, double at, const char *figure);
