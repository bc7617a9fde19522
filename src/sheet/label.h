/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which tincture is where, for a sheet that is printed without colour: a name inside a piece that has room
 * for it, else the letter by which the legend knows the tincture, and beside the panel, with a thin line to
 * its piece, where not even that fits. Labels keep clear of rulings, dots and their numbers. */
#pragma once

#include "draw/draw.h"
#include "sheet/subject.h"

/* Where labels beside the panel stand: from the outline's right end, mm on paper. */
#define SPV_LABEL_BESIDE 2.8

typedef struct {
  char *words;
  SpvPoint at;   /* middle of the words, mm on paper from the datum */
  SpvPoint lead; /* where the thin line ends, likewise; (NAN, NAN) when there is none */
} SpvLabel;

/* "A", "B": the letter of the scheme's tincture INDEX. Letters that look like figures are left out; after the
 * last comes "A1". Free with g_free(). */
char *spv_tincture_letter(guint index);

/* The labels of SUBJECT (SpvLabel) when a millimetre of the panel comes out as FACTOR mm. */
GArray *spv_labels_new(cairo_t *measuring, const SpvSubject *subject, double factor);

/* Draws LABELS with the datum at (0, 0), in page millimetres. */
void spv_labels_draw(cairo_t *cr, const GArray *labels);
