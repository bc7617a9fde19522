/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How wide a shape is for a round brush. */
#pragma once

#include "geometry/shape.h"

/* The narrowest stroke of the one piece PIECE_INDEX of SHAPE, mm: the diameter of the largest disc for which
 * the piece, eroded by that disc, is still there and still in one part. So a bar gives its width, a waist
 * gives the waist, and a tooth that only comes to a point gives the width of what it stands on: points are
 * another question. Where the narrowest place is goes to PLACE unless NULL (the waist's middle, or the middle
 * of the largest inscribed disc where there is no waist). ENOUGH, mm: a piece wider than this need not be
 * measured further: the result is then any value >= ENOUGH (pass INFINITY to measure fully). Exact within
 * 0.002 mm. Morphological erosion: Serra, Image Analysis and Mathematical Morphology (1982), from memory. */
double spv_piece_narrowest(const SpvShape *shape, gsize piece_index, double enough, SpvPoint *place);
