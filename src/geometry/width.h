/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How wide a shape is for a round brush. */
#pragma once

#include "geometry/shape.h"

/* The narrowest stroke of the one piece PIECE_INDEX of SHAPE, mm: the diameter of the largest disc up to
 * which the piece, eroded by it, is still there, still in one part and still has its arms. So a bar gives its
 * width, a waist gives the waist, a T the narrower of its limbs, and a tooth that only comes to a point gives
 * the width of what it stands on: points are another question. The wall between a hole and the edge, or
 * another hole, is a waist too. An arm is what an erosion takes away all at once: longer than it is wide, and
 * even (its sides meet at less than about 6 degrees). Where the piece hangs together by less than 1e-6 mm, as
 * at a corner that two of its holes share, it is taken apart and the narrowest part counts.
 *
 * Where the narrowest place is goes to PLACE unless NULL (the middle of the waist or the arm, or of the
 * largest inscribed disc where there is neither). ENOUGH, mm: a piece wider than this need not be measured
 * further: the result is then any value >= ENOUGH (pass INFINITY to measure fully). Exact within 0.002 mm,
 * but a waist whose lesser side is less than a twelfth wider than itself, and no arm, may be passed over.
 * Morphological erosion: Serra, Image Analysis and Mathematical Morphology (1982), from memory. */
double spv_piece_narrowest(const SpvShape *shape, gsize piece_index, double enough, SpvPoint *place);
