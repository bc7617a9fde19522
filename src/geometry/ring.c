/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Closed polylines: length, area, box and winding number. */
#include "geometry/path.h"

#include <string.h>

SpvRing *
spv_ring_new(const SpvPoint *points, gsize n) {
  g_return_val_if_fail(points != NULL || n == 0, NULL);

  SpvRing *ring = g_new(SpvRing, 1);
  ring->points = n > 0 ? g_memdup2(points, n * sizeof *points) : NULL;
  ring->n_points = n;
  return ring;
}

void
spv_ring_free(SpvRing *ring) {
  if (ring == NULL)
    return;
  g_free(ring->points);
  g_free(ring);
}

double
spv_ring_area(const SpvRing *ring) {
  g_return_val_if_fail(ring != NULL, 0);

  if (ring->n_points < 3)
    return 0;
  /* Measured from the ring's own first point, so that a small ring far from the datum keeps its digits. */
  SpvPoint origin = ring->points[0];
  SpvPoint before = spv_point_subtract(ring->points[1], origin);
  double twice = 0;
  for (gsize i = 2; i < ring->n_points; i++) {
    SpvPoint here = spv_point_subtract(ring->points[i], origin);
    twice += spv_point_cross(before, here);
    before = here;
  }
  return twice / 2;
}

double
spv_ring_length(const SpvRing *ring) {
  g_return_val_if_fail(ring != NULL, 0);

  double length = 0;
  for (gsize i = 0; i < ring->n_points; i++)
    length += spv_point_distance(ring->points[i], ring->points[(i + 1) % ring->n_points]);
  return length;
}

SpvBox
spv_ring_bounds(const SpvRing *ring) {
  g_return_val_if_fail(ring != NULL, ((SpvBox){ 0 }));

  if (ring->n_points == 0)
    return (SpvBox){ 0 };
  SpvBox box = { ring->points[0].x, ring->points[0].y, ring->points[0].x, ring->points[0].y };
  for (gsize i = 1; i < ring->n_points; i++) {
    SpvPoint p = ring->points[i];
    box.x0 = MIN(box.x0, p.x);
    box.y0 = MIN(box.y0, p.y);
    box.x1 = MAX(box.x1, p.x);
    box.y1 = MAX(box.y1, p.y);
  }
  return box;
}

/* What counts as straight, mm. */
#define STRAIGHT 1e-9

static int
sign_of(double value) {
  return (value > STRAIGHT) - (value < -STRAIGHT);
}

/* How often the sign of VALUES changes on the way round; zeros are passed over. */
static guint
sign_changes(const double *values, gsize n) {
  int last = 0;
  for (gsize i = 0; i < n; i++)
    if (sign_of(values[i]) != 0)
      last = sign_of(values[i]);
  guint changes = 0;
  for (gsize i = 0; i < n; i++) {
    int sign = sign_of(values[i]);
    if (sign == 0)
      continue;
    changes += sign != last;
    last = sign;
  }
  return changes;
}

gboolean
spv_ring_is_convex(const SpvRing *ring) {
  g_return_val_if_fail(ring != NULL, FALSE);

  gsize n = ring->n_points;
  double area = spv_ring_area(ring);
  if (n < 3 || !(fabs(area) > 0))
    return FALSE;
  g_autofree double *steps = g_new(double, 2 * n);
  for (gsize i = 0; i < n; i++) {
    SpvPoint a = ring->points[i], b = ring->points[(i + 1) % n], c = ring->points[(i + 2) % n];
    SpvPoint in = spv_point_subtract(b, a), out = spv_point_subtract(c, b);
    double turn = spv_point_cross(in, out) * (area > 0 ? 1 : -1);
    double slack = STRAIGHT * spv_point_distance(a, c);
    if (turn < -slack || (turn <= slack && spv_point_dot(in, out) < 0))
      return FALSE;
    steps[i] = in.x;
    steps[n + i] = in.y;
  }
  /* All turns to one side, and the direction comes round once: left and right change twice, so do up and
   * down. */
  return sign_changes(steps, n) <= 2 && sign_changes(steps + n, n) <= 2;
}

int
spv_ring_winding(const SpvRing *ring, SpvPoint point) {
  g_return_val_if_fail(ring != NULL, 0);

  /* Crossings of the ray from POINT to the right. An edge owns its upper end and not its lower one, so that a
   * ray through a corner counts once. */
  int winding = 0;
  for (gsize i = 0; i < ring->n_points; i++) {
    SpvPoint a = ring->points[i];
    SpvPoint b = ring->points[i + 1 == ring->n_points ? 0 : i + 1];
    if ((a.y <= point.y) == (b.y <= point.y))
      continue;
    double side = spv_point_cross(spv_point_subtract(b, a), spv_point_subtract(point, a));
    if (a.y <= point.y && side > 0)
      winding++;
    else if (a.y > point.y && side < 0)
      winding--;
  }
  return winding;
}
