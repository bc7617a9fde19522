/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a pattern made of a measure that was left to it, read off its draft. No widgets in here. */
#pragma once

#include "compose/compose.h"

/* What the measure called KEY of layer LAYER comes to on COMPOSITION's panel, in the core's units (mm,
 * radians or a count): the pitch of points, the size and the rows of cells, the slope of a division, where
 * and how large charges stand, the width of an ordinary. NAN for other measures, and where the draft does not
 * show it (a hidden layer, a single line). */
double spv_measure_effect(const SpvComposition *composition, guint layer, const char *key);
