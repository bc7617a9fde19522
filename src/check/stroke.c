/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One stroke held against a line: how fine it is, and whether a disc of the line's width reaches a place. */
#include "check/check-private.h"
#include "geometry/width.h"

#include <math.h>

/* A piece smaller than this, mm², is dust that no eye sees. */
#define DUST 1e-6

/* A convex piece with more corners than this has a flattened curve for a side. */
#define STRAIGHT_CORNERS 8

static double
piece_area(const SpvPiece *piece) {
  double area = 0;

  for (gsize i = 0; i < piece->n_rings; i++)
    area += spv_ring_area(piece->rings[i]);
  return area;
}

/* Whether all sides of PIECE are straight, as far as that can be told. */
static gboolean
is_straight(const SpvPiece *piece) {
  return piece->n_rings == 1 && piece->rings[0]->n_points <= STRAIGHT_CORNERS &&
         spv_ring_is_convex(piece->rings[0]);
}

gboolean
spv_stroke_is_narrow(const SpvShape *shape, gsize index, double limit, double *width, SpvPoint *place) {
  gsize n;
  const SpvPiece *piece = &spv_shape_pieces(shape, &n)[index];

  if (piece_area(piece) < DUST)
    return FALSE;
  /* What is just wide enough may measure a hair less, unless all its sides are straight. */
  double enough = limit - (is_straight(piece) ? SPV_CHECK_SAME : SPV_CHECK_EXACT);
  *width = spv_piece_narrowest(shape, index, MAX(enough, SPV_CHECK_SAME), place);
  return *width < enough;
}

double
spv_stroke_clearance(const SpvRing *ring, SpvPoint point) {
  double nearest = INFINITY;
  SpvPoint from = ring->points[ring->n_points - 1];

  for (gsize i = 0; i < ring->n_points; i++) {
    SpvPoint to = ring->points[i], along = spv_point_subtract(to, from);
    double squared = spv_point_dot(along, along);
    double t = squared > 0 ? spv_point_dot(spv_point_subtract(point, from), along) / squared : 0;

    nearest = MIN(nearest, spv_point_distance(point, spv_point_between(from, to, CLAMP(t, 0, 1))));
    from = to;
  }
  return nearest;
}

SpvShape *
spv_stroke_erode(const SpvShape *shape, double limit) {
  return spv_shape_offset(shape, -(limit - SPV_CHECK_EXACT) / 2);
}

gboolean
spv_stroke_reaches(const SpvShape *eroded, double limit, SpvPoint place) {
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(eroded, &n);

  if (spv_shape_contains(eroded, place))
    return TRUE;
  for (gsize i = 0; i < n; i++)
    for (gsize j = 0; j < pieces[i].n_rings; j++)
      if (spv_stroke_clearance(pieces[i].rings[j], place) <= limit / 2)
        return TRUE;
  return FALSE;
}
