/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How wide a shape is for a round brush. */
#pragma once

#include "geometry/shape.h"

/* The narrowest stroke of the one piece PIECE_INDEX of SHAPE, mm: the diameter of the largest disc for which
 * the piece, eroded by that disc, is still there and still in one part. So a bar gives its width, a waist
 * gives the waist, and a tooth that only comes to a point gives the width of what it stands on: points are
 * another question. Where the narrowest place is goes to PLACE unless NULL (the waist's middle, or the middle
 * of the largest inscribed disc where there is no waist). The wall between a hole and the edge, or another
 * hole, is a waist too. Where the piece hangs together by less than 1e-6 mm, as at a corner that two of its
 * holes share, it is taken apart and the narrowest part counts. A waist whose lesser side is hardly wider
 * than itself (by less than 1/24 of ENOUGH or of the inscribed disc) is a swelling and may be passed over.
 * ENOUGH, mm: a piece wider than this need not be measured further: the result is then any value >= ENOUGH
 * (pass INFINITY to measure fully). Exact within 0.002 mm. Morphological erosion: Serra, Image Analysis and
 * Mathematical Morphology (1982), from memory. */
double spv_piece_narrowest(const SpvShape *shape, gsize piece_index, double enough, SpvPoint *place);
