/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the numbers of a guide go, so that none covers another or a dot. Kept apart from the drawing so that
 * the rules can be read, and tested, as arithmetic. */
#pragma once

#include "draw/draw.h"

#define SPV_NUMBER_SIZE 2.0 /* mm on paper, height of the figures */
#define SPV_DOT_RING 0.3    /* width of the white ring about a dot, of the dot's radius */

/* A number that has found its place. */
typedef struct {
  guint number;
  gboolean is_ruling;
  SpvPoint at; /* middle of the number, mm on the panel */
  SpvBox box;  /* what it covers, mm on the panel */
} SpvPlacedNumber;

/* The radius, mm on the panel, of each dot of GUIDE: as large as the look wants, less where a neighbour is
 * close. In the order of the guide's dots; free with g_free(). LAYER is an index, or -1 for all. */
double *spv_mark_radii(const SpvGuide *guide, int layer, double paper_mm);

/* The numbers of the dots and rulings of LAYER (-1: of all), each clear of the others and of every dot; DIGIT
 * is how wide a figure is, mm on the panel. Returns an array of SpvPlacedNumber. */
GArray *spv_mark_numbers(const SpvGuide *guide, int layer, const double *radii, double digit,
                         double paper_mm);

/* The ends of RULING, run on a little past the outline. */
void spv_mark_ruling_ends(const SpvRuling *ruling, double paper_mm, SpvPoint ends[2]);
