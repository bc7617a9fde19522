/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Quick measures of convex rings: what most cells and stripes are. */
#pragma once

#include "geometry/path.h"

/* The centre of gravity of a convex RING. */
SpvPoint spv_convex_centre(const SpvRing *ring);

/* How far POINT lies from RING, mm; RING need not be convex. */
double spv_convex_clearance(const SpvRing *ring, SpvPoint point);
