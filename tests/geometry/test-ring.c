/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Closed polylines: area, length, box, winding, convexity. */
#include "geometry-test.h"

#include <geos_c.h>

static SpvRing *
regular(guint n, gboolean clockwise) {
  g_autofree SpvPoint *points = g_new(SpvPoint, n);
  for (guint i = 0; i < n; i++) {
    double angle = 2 * G_PI * i / n * (clockwise ? 1 : -1);
    points[i] = spv_point(40 + cos(angle), -7 + sin(angle));
  }
  return spv_ring_new(points, n);
}

/* tests/reference/areas.csv, regular-N: n/2 sin(2π/n), six decimals. */
static void
test_regular_polygons_have_their_published_areas(void **state) {
  (void) state;
  const guint sides[] = { 3, 5, 6, 8, 12 };
  for (guint i = 0; i < G_N_ELEMENTS(sides); i++) {
    g_autofree char *key = g_strdup_printf("regular-%u", sides[i]);
    g_autoptr(SpvRing) clockwise = regular(sides[i], TRUE);
    g_autoptr(SpvRing) other = regular(sides[i], FALSE);
    assert_near(spv_ring_area(clockwise), reference_area(key), 5e-7);
    assert_near(spv_ring_area(other), -reference_area(key), 5e-7);
    assert_near(spv_ring_length(clockwise), 2 * sides[i] * sin(G_PI / sides[i]), 1e-12);
  }
}

/* GEOS's own area of the same ring. */
static void
test_area_is_that_of_geos(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(11);
  GEOSContextHandle_t geos = GEOS_init_r();
  for (guint round = 0; round < 50; round++) {
    g_autoptr(SpvRing) ring = random_star(random, 3 + round, 1, 20);
    guint n = (guint) ring->n_points;
    GEOSCoordSequence *corners = GEOSCoordSeq_create_r(geos, n + 1, 2);
    for (guint i = 0; i <= n; i++)
      GEOSCoordSeq_setXY_r(geos, corners, i, ring->points[i % n].x, ring->points[i % n].y);
    GEOSGeometry *polygon = GEOSGeom_createPolygon_r(geos, GEOSGeom_createLinearRing_r(geos, corners), NULL,
                                                     0);
    double area = 0;
    assert_int_equal(GEOSArea_r(geos, polygon, &area), 1);
    assert_near(spv_ring_area(ring), area, 1e-11 * area);
    GEOSGeom_destroy_r(geos, polygon);
  }
  GEOS_finish_r(geos);
}

static void
test_a_small_ring_far_away_keeps_its_digits(void **state) {
  (void) state;
  const SpvPoint points[] = {
    { 1e6, 1e6 }, { 1e6 + 0.5, 1e6 }, { 1e6 + 0.5, 1e6 + 0.25 }, { 1e6, 1e6 + 0.25 }
  };
  g_autoptr(SpvRing) ring = spv_ring_new(points, G_N_ELEMENTS(points));
  assert_near(spv_ring_area(ring), 0.125, 1e-15);
}

static void
test_bounds_hold_every_point(void **state) {
  (void) state;
  const SpvPoint points[] = { { 3, -2 }, { 8, 1 }, { -1, 5 } };
  g_autoptr(SpvRing) ring = spv_ring_new(points, G_N_ELEMENTS(points));
  SpvBox box = spv_ring_bounds(ring);
  assert_near(box.x0, -1, 0);
  assert_near(box.y0, -2, 0);
  assert_near(box.x1, 8, 0);
  assert_near(box.y1, 5, 0);
}

static void
test_winding_counts_turns_with_their_sign(void **state) {
  (void) state;
  const SpvPoint bow_tie[] = { { 0, 0 }, { 10, 10 }, { 10, 0 }, { 0, 10 } };
  g_autoptr(SpvRing) crossed = spv_ring_new(bow_tie, G_N_ELEMENTS(bow_tie));
  assert_int_equal(spv_ring_winding(crossed, spv_point(2, 5)), 1);
  assert_int_equal(spv_ring_winding(crossed, spv_point(8, 5)), -1);
  assert_int_equal(spv_ring_winding(crossed, spv_point(5, 2)), 0);

  SpvPoint twice[20];
  for (guint i = 0; i < 20; i++)
    twice[i] = spv_point(cos(2 * G_PI * i / 10), sin(2 * G_PI * i / 10));
  g_autoptr(SpvRing) wound = spv_ring_new(twice, G_N_ELEMENTS(twice));
  assert_int_equal(spv_ring_winding(wound, spv_point(0.1, 0.2)), 2);
  assert_int_equal(spv_ring_winding(wound, spv_point(1.1, 0)), 0);
}

static void
test_a_ray_through_a_corner_counts_once(void **state) {
  (void) state;
  const SpvPoint diamond[] = { { 0, -1 }, { 1, 0 }, { 0, 1 }, { -1, 0 } };
  g_autoptr(SpvRing) ring = spv_ring_new(diamond, G_N_ELEMENTS(diamond));
  assert_int_equal(spv_ring_winding(ring, spv_point(0, 0)), 1);
  assert_int_equal(spv_ring_winding(ring, spv_point(-2, 0)), 0);
  assert_int_equal(spv_ring_winding(ring, spv_point(-2, 1)), 0);
  assert_int_equal(spv_ring_winding(ring, spv_point(-2, -1)), 0);
}

static void
test_convexity(void **state) {
  (void) state;
  const SpvPoint square[] = { { 0, 0 }, { 2, 0 }, { 4, 0 }, { 4, 4 }, { 0, 4 } };
  const SpvPoint dented[] = { { 0, 0 }, { 2, 0.01 }, { 4, 0 }, { 4, 4 }, { 0, 4 } };
  const SpvPoint dented_slope[] = { { 0, 0 }, { 4, 0 }, { 1.9, 1.9 }, { 0, 4 } };
  const SpvPoint spike[] = { { 0, 0 }, { 4, 0 }, { 2, 0 }, { 2, 2 } };
  const SpvPoint line[] = { { 0, 0 }, { 1, 1 }, { 2, 2 } };
  SpvPoint pentagram[5], twice[10];
  for (guint i = 0; i < 5; i++)
    pentagram[i] = spv_point(cos(4 * G_PI * i / 5), sin(4 * G_PI * i / 5));
  for (guint i = 0; i < 10; i++)
    twice[i] = spv_point(cos(2 * G_PI * i / 5), sin(2 * G_PI * i / 5));
  const struct {
    const SpvPoint *points;
    gsize n;
    gboolean convex;
  } cases[] = { { square, 5, TRUE }, { dented, 5, FALSE },    { dented_slope, 4, FALSE }, { spike, 4, FALSE },
                { line, 3, FALSE },  { pentagram, 5, FALSE }, { twice, 10, FALSE } };
  for (guint i = 0; i < G_N_ELEMENTS(cases); i++) {
    g_autoptr(SpvRing) ring = spv_ring_new(cases[i].points, cases[i].n);
    assert_int_equal(spv_ring_is_convex(ring), cases[i].convex);
  }
  g_autoptr(SpvRing) clockwise = regular(12, TRUE);
  g_autoptr(SpvRing) other = regular(12, FALSE);
  assert_true(spv_ring_is_convex(clockwise));
  assert_true(spv_ring_is_convex(other));
}

static void
test_rings_of_too_few_points_measure_nothing(void **state) {
  (void) state;
  const SpvPoint points[] = { { 1, 2 }, { 4, 6 } };
  for (gsize n = 0; n <= 2; n++) {
    g_autoptr(SpvRing) ring = spv_ring_new(points, n);
    assert_near(spv_ring_area(ring), 0, 0);
    assert_near(spv_ring_length(ring), n == 2 ? 10 : 0, 0);
    assert_int_equal(spv_ring_winding(ring, spv_point(2, 3)), 0);
    assert_false(spv_ring_is_convex(ring));
    assert_near(spv_box_width(spv_ring_bounds(ring)), n == 2 ? 3 : 0, 0);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_regular_polygons_have_their_published_areas),
    cmocka_unit_test(test_area_is_that_of_geos),
    cmocka_unit_test(test_a_small_ring_far_away_keeps_its_digits),
    cmocka_unit_test(test_bounds_hold_every_point),
    cmocka_unit_test(test_winding_counts_turns_with_their_sign),
    cmocka_unit_test(test_a_ray_through_a_corner_counts_once),
    cmocka_unit_test(test_convexity),
    cmocka_unit_test(test_rings_of_too_few_points_measure_nothing),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
