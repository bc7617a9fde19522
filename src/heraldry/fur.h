/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Furs: patterns of two tinctures that heraldry counts as a tincture. */
#pragma once

#include "heraldry/outline.h"

typedef enum {
  SPV_FUR_NONE,
  SPV_FUR_ERMINE, /* tails strewn in half-drop rows; ermines, erminois and pean are other tinctures of it */
  SPV_FUR_VAIR,   /* bells in rows, upright and inverted in turn, like under unlike */
  SPV_FUR_COUNTER_VAIR, /* likewise, those of one tincture base to base */
  SPV_FUR_POTENT        /* crutch heads in rows */
} SpvFur;
#define SPV_N_FURS 5

/* "ermine", as in the file; NULL for none. */
const char *spv_fur_key(SpvFur fur);
/* FALSE where KEY is no fur; never gives SPV_FUR_NONE. */
gboolean spv_fur_from_key(const char *key, SpvFur *fur);

/* What the second tincture covers of a panel: the tails, or the bells that point up, PITCH mm (above 0) from
 * one to the next in a row, one column on the centre line, one row starting at the top edge. Reaches past the
 * outline on all sides. Spots are no smaller for being many: a PITCH that would give more than 40,000 is
 * raised. A new reference. */
SpvPath *spv_fur_spots(SpvFur fur, double pitch, const SpvOutline *outline);
/* The smallest pitch, mm, at which neither a spot nor what is left between two is narrower than LINE mm.
 * Computed from the figures. */
double spv_fur_smallest_pitch(SpvFur fur, double line);
