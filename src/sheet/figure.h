/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pictures of a panel on a sheet: templates at true size, and enlargements with the marks to paint by.
 * Millimetres on the page. */
#pragma once

#include "draw/draw.h"
#include "sheet/subject.h"

/* White round a template, so that scissors can reach it. */
#define SPV_TEMPLATE_CLEAR 4.0

/* The largest factor at which WIDTH by HEIGHT mm stays within ROOM_WIDTH by ROOM_HEIGHT; 0 when even the
 * smallest is too large. */
double spv_figure_factor(double width, double height, double room_width, double room_height);

/* The box of everything that spv_figure_draw() draws, with the upper left corner of the outline's box at (0,
 * 0): dots, numbers, the datum and the dimension lines stand outside of the outline. */
SpvBox spv_figure_extent(const SpvSubject *subject, double factor);

/* A template with the upper left corner of its outline's box at AT: the panel in MODE, or its outline alone
 * (SPV_DRAW_LINES), with the guide's marks where MARKED. */
void spv_template_draw(cairo_t *cr, const SpvSubject *subject, SpvPoint at, SpvDrawMode mode,
                       gboolean marked);

/* An enlargement with the upper left corner of its outline's box at AT. */
void spv_figure_draw(cairo_t *cr, const SpvSubject *subject, SpvPoint at, double factor, SpvDrawMode mode);
