/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How small a charge may be, kept until another figure or another line is asked about: it takes a while to
 * work out, and a drag has no time for that. No widgets in here. */
#pragma once

#include "heraldry/pattern.h"

typedef struct {
  SpvPatternKind kind;
  SpvMeasure own[SPV_PATTERN_MEASURES];
  char *path;  /* of a path charge */
  double line; /* mm; 0: nothing was worked out yet */
  double size; /* mm */
} SpvSmallestFigure;

/* See spv_figure_smallest(). */
double spv_smallest_figure(SpvSmallestFigure *last, const SpvPattern *pattern, double line);
void spv_smallest_figure_clear(SpvSmallestFigure *last);
