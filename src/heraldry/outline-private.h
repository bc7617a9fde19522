/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a family draws the right half of its outline, from the datum down to the foot of the centre line. */
#pragma once

#include "heraldry/outline.h"

/* Steps of the right half, in order; each is a LINE, CURVE or ARC as in SpvPathStep. */
typedef struct {
  GArray *steps; /* SpvPathStep */
  SpvPoint at;   /* where the last one ended */
} SpvHalf;

void spv_half_line(SpvHalf *half, SpvPoint to);
void spv_half_curve(SpvHalf *half, SpvPoint c1, SpvPoint c2, SpvPoint to);
void spv_half_arc(SpvHalf *half, SpvPoint centre, double radius, double start, double sweep);

typedef struct {
  SpvOutlineInfo info;
  /* Sets ERROR where the family's own measures do not go with its width and height (already in range). */
  gboolean (*check)(const SpvOutlineSpec *spec, GError **error);
  void (*preset)(SpvOutlineSpec *spec);
  void (*draw)(const SpvOutlineSpec *spec, SpvHalf *half);
} SpvFamily;

const SpvFamily *spv_outline_family(SpvOutlineFamily family);
