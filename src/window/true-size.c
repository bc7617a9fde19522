/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/true-size.h"

/* Pixels a millimetre, as the toolkit counts them: from a wall display to beyond the finest telephone. */
#define LEAST 0.5
#define MOST 25.0
#define SQUARE 0.1

gboolean
spv_true_size_scale(int width_mm, int height_mm, int width_px, int height_px, double *scale) {
  double across, down;

  if (width_mm <= 0 || height_mm <= 0 || width_px <= 0 || height_px <= 0)
    return FALSE;
  across = (double) width_px / width_mm;
  down = (double) height_px / height_mm;
  if (across < LEAST || across > MOST || ABS(across - down) > SQUARE * across)
    return FALSE;
  /* The longer side is the less rounded one. */
  *scale = width_mm >= height_mm ? across : down;
  return TRUE;
}
