/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measuring along a polyline. */
#include "geometry-test.h"
#include "geometry/track.h"

static const SpvPoint square[] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } };

static SpvTrack *
square_track(gboolean closed) {
  return spv_track_new(square, G_N_ELEMENTS(square), closed);
}

static void
assert_point(SpvPoint actual, double x, double y, double tolerance) {
  assert_near(actual.x, x, tolerance);
  assert_near(actual.y, y, tolerance);
}

static SpvTrack *
star_track(GRand *random, guint n) {
  g_autoptr(SpvRing) ring = random_star(random, n, 5, 20);
  return spv_track_new(ring->points, ring->n_points, TRUE);
}

static SpvTrack *
circle_track(double radius) {
  g_autoptr(SpvPath) path = spv_path_new_circle(spv_point(0, 0), radius);
  g_autoptr(GPtrArray) rings = spv_path_flatten(path, SPV_CHORD_ERROR);
  const SpvRing *ring = g_ptr_array_index(rings, 0);
  return spv_track_new(ring->points, ring->n_points, TRUE);
}

static void
test_places_along(void **state) {
  (void) state;
  g_autoptr(SpvTrack) closed = square_track(TRUE);
  g_autoptr(SpvTrack) open = square_track(FALSE);
  assert_true(spv_track_is_closed(closed));
  assert_false(spv_track_is_closed(open));
  assert_near(spv_track_length(closed), 40, 0);
  assert_near(spv_track_length(open), 30, 0);
  assert_point(spv_track_at(closed, 13), 10, 3, 0);
  assert_point(spv_track_at(closed, 35), 0, 5, 0);
  /* A closed one wraps, an open one runs on straight. */
  assert_point(spv_track_at(closed, -5), 0, 5, 0);
  assert_point(spv_track_at(closed, 40 * 7 + 13), 10, 3, 1e-12);
  assert_point(spv_track_at(open, -5), -5, 0, 0);
  assert_point(spv_track_at(open, 34), -4, 10, 0);
}

/* Length of a zigzag edge of n points, depth d, over L: 2n√((L/2n)² + d²), elementary geometry. */
static void
test_a_zigzag_has_its_length(void **state) {
  (void) state;
  SpvPoint points[13];
  for (guint i = 0; i < G_N_ELEMENTS(points); i++)
    points[i] = spv_point(2.5 * i, i % 2 == 0 ? 0 : 4);
  g_autoptr(SpvTrack) track = spv_track_new(points, G_N_ELEMENTS(points), FALSE);
  assert_near(spv_track_length(track), 2 * 6 * sqrt(2.5 * 2.5 + 16), 1e-12);
}

static void
test_what_lies_on_the_track_is_found_there(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(3);
  for (guint round = 0; round < 40; round++) {
    g_autoptr(SpvTrack) track = star_track(random, 4 + round);
    for (guint i = 0; i < 50; i++) {
      double s = g_rand_double_range(random, 0, spv_track_length(track));
      SpvPoint on = spv_track_at(track, s);
      double distance = 1;
      double found = spv_track_locate(track, on, &distance);
      assert_near(distance, 0, 1e-12);
      assert_near(found, s, 1e-9);
      assert_near(spv_point_distance(spv_track_at(track, found), on), 0, 1e-9);
    }
  }
}

static void
test_the_nearest_place_is_found(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(4);
  for (guint round = 0; round < 40; round++) {
    g_autoptr(SpvRing) ring = random_star(random, 20, 5, 20);
    g_autoptr(SpvTrack) track = spv_track_new(ring->points, ring->n_points, TRUE);
    SpvPoint p = random_point(random, 25);
    double distance = 0;
    double s = spv_track_locate(track, p, &distance);
    assert_near(distance, distance_to_ring(p, ring), 1e-12);
    assert_near(spv_point_distance(spv_track_at(track, s), p), distance, 1e-9);
  }
  /* The first of equals wins; the end of a closed track is its start. */
  g_autoptr(SpvTrack) closed = square_track(TRUE);
  assert_near(spv_track_locate(closed, spv_point(5, 5), NULL), 5, 0);
  assert_near(spv_track_locate(closed, spv_point(-1, -1), NULL), 0, 0);
  g_autoptr(SpvTrack) open = square_track(FALSE);
  assert_near(spv_track_locate(open, spv_point(-4, 12), NULL), 30, 0);
}

static void
test_normals_are_unit_and_point_inward(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(5);
  for (guint round = 0; round < 40; round++) {
    g_autoptr(SpvRing) ring = random_star(random, 5 + round, 12, 20);
    g_autoptr(SpvTrack) track = spv_track_new(ring->points, ring->n_points, TRUE);
    for (guint i = 0; i < 100; i++) {
      double s = g_rand_double_range(random, 0, spv_track_length(track));
      SpvPoint normal = spv_track_normal(track, s);
      assert_near(spv_point_length(normal), 1, 1e-12);
      SpvPoint in = spv_point_add(spv_track_at(track, s), spv_point_scale(normal, 1e-6));
      assert_int_equal(spv_ring_winding(ring, in), 1);
    }
  }
}

static void
test_a_flattened_circle_has_the_circles_normals(void **state) {
  (void) state;
  const double radii[] = { 0.5, 2, 10, 60 };
  for (guint r = 0; r < G_N_ELEMENTS(radii); r++) {
    g_autoptr(SpvTrack) track = circle_track(radii[r]);
    for (guint i = 0; i < 1000; i++) {
      double s = spv_track_length(track) * i / 1000;
      SpvPoint towards = spv_point_unit(spv_point_scale(spv_track_at(track, s), -1));
      SpvPoint normal = spv_track_normal(track, s);
      /* The chord's own normals would be out by up to half a step: 0.045 radians at radius 0.5. */
      assert_near(atan2(spv_point_cross(towards, normal), spv_point_dot(towards, normal)), 0, 1e-4);
    }
  }
}

static void
test_a_corner_keeps_its_sides_normals(void **state) {
  (void) state;
  g_autoptr(SpvTrack) track = square_track(TRUE);
  assert_point(spv_track_normal(track, 5), 0, 1, 1e-15);
  assert_point(spv_track_normal(track, 9.999), 0, 1, 1e-15);
  assert_point(spv_track_normal(track, 10.001), -1, 0, 1e-15);
  assert_point(spv_track_normal(track, 10), -G_SQRT2 / 2, G_SQRT2 / 2, 1e-12);
  assert_point(spv_track_normal(track, 0), G_SQRT2 / 2, G_SQRT2 / 2, 1e-12);
  assert_point(spv_track_normal(track, 40), G_SQRT2 / 2, G_SQRT2 / 2, 1e-12);
  /* The ends of an open track have no neighbour to lean to. */
  g_autoptr(SpvTrack) open = square_track(FALSE);
  assert_point(spv_track_normal(open, 0), 0, 1, 1e-15);
  assert_point(spv_track_normal(open, -3), 0, 1, 1e-15);
  assert_point(spv_track_normal(open, 33), 0, -1, 1e-15);
}

static void
test_a_gentle_bend_turns_evenly(void **state) {
  (void) state;
  double turn = 10 * G_PI / 180;
  const SpvPoint points[] = {
    { -20, 0 }, { 0, 0 }, { 2 * cos(turn), 2 * sin(turn) }, { 22 * cos(turn), 22 * sin(turn) }
  };
  g_autoptr(SpvTrack) track = spv_track_new(points, G_N_ELEMENTS(points), FALSE);
  /* About the bend at 20 the shorter side reaches 1 mm either way. */
  const double places[] = { 15, 19, 19.5, 20, 20.5, 21 }, turned[] = { 0, 0, 0.25, 0.5, 0.75, 1 };
  for (guint i = 0; i < G_N_ELEMENTS(places); i++) {
    SpvPoint normal = spv_track_normal(track, places[i]);
    assert_near(atan2(-normal.x, normal.y), turn * turned[i], 1e-9);
  }
}

static void
test_parts(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(6);
  for (guint round = 0; round < 100; round++) {
    g_autoptr(SpvTrack) track = star_track(random, 3 + round % 20);
    double length = spv_track_length(track);
    double s0 = g_rand_double_range(random, -length, length);
    double s1 = s0 + g_rand_double_range(random, 0.1, 2 * length);
    g_autoptr(SpvTrack) part = spv_track_part(track, s0, s1);
    assert_false(spv_track_is_closed(part));
    assert_near(spv_track_length(part), s1 - s0, 1e-9);
    for (guint i = 0; i <= 20; i++) {
      double s = (s1 - s0) * i / 20;
      assert_near(spv_point_distance(spv_track_at(part, s), spv_track_at(track, s0 + s)), 0, 1e-8);
    }
  }
  g_autoptr(SpvTrack) open = square_track(FALSE);
  g_autoptr(SpvTrack) longer = spv_track_part(open, -2, 33);
  assert_near(spv_track_length(longer), 35, 1e-12);
  assert_point(spv_track_at(longer, 0), -2, 0, 0);
  assert_point(spv_track_at(longer, 35), -3, 10, 1e-12);
}

static void
test_crossings_lie_on_both(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(7);
  guint total = 0;
  for (guint round = 0; round < 200; round++) {
    g_autoptr(SpvTrack) track = star_track(random, 5 + round % 30);
    SpvPoint a = random_point(random, 15), b = random_point(random, 15);
    SpvPoint along = spv_point_unit(spv_point_subtract(b, a));
    g_autoptr(GArray) crossings = spv_track_crossings(track, a, b);
    assert_int_equal(crossings->len % 2, 0);
    double before = -INFINITY;
    for (guint i = 0; i < crossings->len; i++) {
      SpvPoint on = spv_point_subtract(spv_track_at(track, g_array_index(crossings, double, i)), a);
      assert_near(spv_point_cross(along, on), 0, 1e-9);
      assert_true(spv_point_dot(along, on) > before);
      before = spv_point_dot(along, on);
    }
    /* Every change of side along the track is among them. */
    gsize n = 0;
    const SpvPoint *points = spv_track_points(track, &n);
    guint changes = 0;
    for (gsize i = 0; i < n; i++)
      changes += (spv_point_cross(along, spv_point_subtract(points[i], a)) > 0) !=
                 (spv_point_cross(along, spv_point_subtract(points[(i + 1) % n], a)) > 0);
    assert_int_equal(crossings->len, changes);
    total += changes;
  }
  assert_true(total > 200);
}

static void
assert_crossings(const SpvTrack *track, SpvPoint a, SpvPoint b, guint n, const double *expected) {
  g_autoptr(GArray) crossings = spv_track_crossings(track, a, b);
  assert_int_equal(crossings->len, n);
  for (guint i = 0; i < n; i++)
    assert_near(g_array_index(crossings, double, i), expected[i], 1e-12);
}

static void
test_crossings_in_order_and_at_corners(void **state) {
  (void) state;
  g_autoptr(SpvTrack) track = square_track(TRUE);
  const double down[] = { 4, 26 }, up[] = { 26, 4 }, diagonal[] = { 0, 20 };
  assert_crossings(track, spv_point(4, 2), spv_point(4, 3), 2, down);
  assert_crossings(track, spv_point(4, 3), spv_point(4, 2), 2, up);
  assert_crossings(track, spv_point(3, 3), spv_point(5, 5), 2, diagonal);
  /* A touch at a corner or along a side is no crossing. */
  assert_crossings(track, spv_point(-1, 1), spv_point(1, -1), 0, NULL);
  assert_crossings(track, spv_point(3, 0), spv_point(5, 0), 0, NULL);
  assert_crossings(track, spv_point(3, -1), spv_point(5, -1), 0, NULL);
  /* No line, no crossing. */
  assert_crossings(track, spv_point(3, 3), spv_point(3, 3), 0, NULL);

  /* A step whose tread lies on the line crosses once, at the middle of the tread. */
  const SpvPoint steps[] = { { 0, -5 }, { 0, 0 }, { 6, 0 }, { 6, 5 } };
  g_autoptr(SpvTrack) step = spv_track_new(steps, G_N_ELEMENTS(steps), FALSE);
  const double tread[] = { 8 };
  assert_crossings(step, spv_point(-1, 0), spv_point(1, 0), 1, tread);
  /* An open end that only reaches the line does not cross it. */
  assert_crossings(step, spv_point(-1, 5), spv_point(1, 5), 0, NULL);
  assert_crossings(step, spv_point(-1, -5), spv_point(1, -5), 0, NULL);
}

static void
test_degenerate_tracks(void **state) {
  (void) state;
  const SpvPoint repeated[] = { { 1, 1 }, { 1, 1 }, { 4, 5 }, { 4, 5 }, { 1, 1 } };
  g_autoptr(SpvTrack) there_and_back = spv_track_new(repeated, G_N_ELEMENTS(repeated), TRUE);
  gsize n = 0;
  spv_track_points(there_and_back, &n);
  assert_int_equal(n, 2);
  assert_near(spv_track_length(there_and_back), 10, 0);
  assert_near(spv_point_length(spv_track_normal(there_and_back, 5)), 1, 1e-12);

  for (int closed = 0; closed <= 1; closed++) {
    g_autoptr(SpvTrack) speck = spv_track_new(repeated, 2, closed);
    double distance = 0;
    assert_near(spv_track_length(speck), 0, 0);
    assert_point(spv_track_at(speck, 7), 1, 1, 0);
    assert_point(spv_track_normal(speck, 7), 0, 1, 0);
    assert_near(spv_track_locate(speck, spv_point(4, 5), &distance), 0, 0);
    assert_near(distance, 5, 0);
    assert_crossings(speck, spv_point(0, 0), spv_point(1, 1), 0, NULL);
    g_autoptr(SpvTrack) part = spv_track_part(speck, 0, 3);
    assert_near(spv_track_length(part), 0, 0);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_places_along),
    cmocka_unit_test(test_a_zigzag_has_its_length),
    cmocka_unit_test(test_what_lies_on_the_track_is_found_there),
    cmocka_unit_test(test_the_nearest_place_is_found),
    cmocka_unit_test(test_normals_are_unit_and_point_inward),
    cmocka_unit_test(test_a_flattened_circle_has_the_circles_normals),
    cmocka_unit_test(test_a_corner_keeps_its_sides_normals),
    cmocka_unit_test(test_a_gentle_bend_turns_evenly),
    cmocka_unit_test(test_parts),
    cmocka_unit_test(test_crossings_lie_on_both),
    cmocka_unit_test(test_crossings_in_order_and_at_corners),
    cmocka_unit_test(test_degenerate_tracks),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
