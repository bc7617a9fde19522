/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The figures of charges: what each looks like, in a unit of its own, and how small it may be. */
#pragma once

#include "heraldry/pattern.h"

/* The figure of PATTERN, a charge: its middle (of its bounds) at (0, 0), the greater side of its bounds 1,
 * upright, as it looks to the viewer. A new reference. An empty path where a path charge's path has no area.
 */
SpvPath *spv_figure_path(const SpvPattern *pattern);

/* The smallest size, mm, at which no stroke of PATTERN's figure, and no hole or notch in it, is narrower than
 * LINE mm. Computed from the figure, within about 1 %. A figure that isn't convex is said to need four lines
 * at least: what is finer is no figure any more; 0 where there is nothing to draw. */
double spv_figure_smallest(const SpvPattern *pattern, double line);
