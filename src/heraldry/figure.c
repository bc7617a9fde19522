/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures. */
#include "heraldry/figure.h"

SpvPath *
spv_figure_path(const SpvPattern *pattern) {
  (void) pattern;
  return spv_path_new_circle(spv_point(0, 0), 0.5);
}
