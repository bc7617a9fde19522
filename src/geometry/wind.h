/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Paths from outside (SVG, fonts) go round as they like; ours add clockwise and cut the other way. */
#pragma once

#include "geometry/path.h"

typedef enum { SPV_FILL_NONZERO, SPV_FILL_EVEN_ODD } SpvFillRule;

/* A path that fills what PATH fills by RULE, each run turned clockwise where it adds and the other way where
 * it cuts a hole; one that lies where the others fill anyway is left out. Open runs are closed. The runs are
 * taken whole: where two that go opposite ways cross each other, or one crosses itself, RULE is not followed
 * into the crossing's own small areas. A hole in which, or over which, another run adds is joined to the run
 * that it is cut from by a slit of no width, for a hole cuts from all that a path adds (see
 * spv_shape_new_from_path()). */
SpvPath *spv_path_wind(const SpvPath *path, SpvFillRule rule);
