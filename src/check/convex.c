/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Quick measures of convex rings. */
#include "check/convex.h"

static SpvPoint
ring_point(const SpvRing *ring, gsize i) {
  return ring->points[i < ring->n_points ? i : i - ring->n_points];
}

SpvPoint
spv_convex_centre(const SpvRing *ring) {
  SpvPoint origin = ring->points[0];
  SpvPoint sum = { 0, 0 };
  double area = 0;

  for (gsize i = 1; i + 1 < ring->n_points; i++) {
    SpvPoint a = spv_point_subtract(ring->points[i], origin);
    SpvPoint b = spv_point_subtract(ring->points[i + 1], origin);
    double cross = spv_point_cross(a, b);

    area += cross;
    sum = spv_point_add(sum, spv_point_scale(spv_point_add(a, b), cross / 3));
  }
  return area != 0 ? spv_point_add(origin, spv_point_scale(sum, 1 / area)) : origin;
}

static double
distance_to_segment(SpvPoint point, SpvPoint a, SpvPoint b) {
  SpvPoint along = spv_point_subtract(b, a);
  double squared = spv_point_dot(along, along);
  double t = squared > 0 ? spv_point_dot(spv_point_subtract(point, a), along) / squared : 0;

  return spv_point_distance(point, spv_point_between(a, b, CLAMP(t, 0, 1)));
}

double
spv_convex_clearance(const SpvRing *ring, SpvPoint point) {
  double nearest = INFINITY;

  for (gsize i = 0; i < ring->n_points; i++)
    nearest = MIN(nearest, distance_to_segment(point, ring_point(ring, i), ring_point(ring, i + 1)));
  return nearest;
}
