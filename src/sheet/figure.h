/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pictures of a panel on a sheet: templates at true size, and enlargements with the marks to paint by.
 * Millimetres on the page. */
#pragma once

#include "draw/draw.h"
#include "sheet/label.h"
#include "sheet/subject.h"

/* The factors that an enlargement may have, largest first; their number goes to N. */
const double *spv_figure_factors(guint *n);

/* The box of everything that spv_figure_draw() draws, with the upper left corner of the outline's box at (0,
 * 0): dots, numbers, the datum and the dimension lines stand outside of the outline. */
SpvBox spv_figure_extent(const SpvSubject *subject, double factor);

/* Where the word for the datum stands above it, in page millimetres from the datum: beyond the numbers there.
 */
SpvBox spv_figure_datum_words(cairo_t *measuring, const SpvSubject *subject, double factor);

/* A template with the upper left corner of its outline's box at AT: the panel in MODE, or its outline alone
 * (SPV_DRAW_LINES); with the guide's marks unless MARKED_LABELS (SpvLabel) is NULL. */
void spv_template_draw(cairo_t *cr, const SpvSubject *subject, SpvPoint at, SpvDrawMode mode,
                       const GArray *marked_labels);

/* An enlargement, which says its factor, with the upper left corner of its outline's box at AT. */
void spv_figure_draw(cairo_t *cr, const SpvSubject *subject, SpvPoint at, double factor, SpvDrawMode mode,
                     const GArray *labels);
