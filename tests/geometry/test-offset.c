/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Growing and shrinking by a disc. */
#include "geometry-test.h"
#include "geometry/shape.h"

static SpvShape *
polygon_shape(const SpvPoint *points, gsize n) {
  g_autoptr(SpvPath) path = spv_path_new_polygon(points, n);
  return spv_shape_new_from_path(path);
}

static SpvShape *
rectangle(void) {
  g_autoptr(SpvPath) path = spv_path_new_box((SpvBox){ 0, 0, 30, 20 });
  return spv_shape_new_from_path(path);
}

/* What a disc of RADIUS can reach inside SHAPE: eroded, then dilated. */
static SpvShape *
open_shape(const SpvShape *shape, double radius) {
  g_autoptr(SpvShape) eroded = spv_shape_offset(shape, -radius);
  return spv_shape_offset(eroded, radius);
}

/* tests/reference/areas.csv: dilation (Steiner), erosion and opening of a 30 × 20 rectangle by r = 2. The
 * arcs' chords lie inside them by at most SPV_CHORD_ERROR, along four quarter circles. */
static void
test_a_rectangle_grown_shrunk_and_opened(void **state) {
  (void) state;
  const double arcs = 2 * G_PI * 2 * SPV_CHORD_ERROR;
  g_autoptr(SpvShape) box = rectangle();
  g_autoptr(SpvShape) grown = spv_shape_offset(box, 2);
  g_autoptr(SpvShape) shrunk = spv_shape_offset(box, -2);
  g_autoptr(SpvShape) opened = open_shape(box, 2);
  double dilation = reference_area("dilation-rectangle"), opening = reference_area("opening-rectangle");
  assert_near(spv_shape_area(grown), dilation - arcs / 2, arcs / 2);
  assert_near(spv_shape_area(shrunk), reference_area("erosion-rectangle"), 1e-7);
  assert_near(spv_shape_area(opened), opening - arcs / 2, arcs / 2);
}

/* An isosceles triangle with the angle APEX at the top, its sides long. */
static SpvShape *
corner(double apex) {
  const SpvPoint points[] = { { 0, 0 },
                              { 40 * sin(apex / 2), 40 * cos(apex / 2) },
                              { -40 * sin(apex / 2), 40 * cos(apex / 2) } };
  return polygon_shape(points, 3);
}

/* tests/reference/areas.csv, opening-corner-N: a corner loses r²(cot θ/2 − (π − θ)/2). Measured at r = 1
 * above a line well below the top, where nothing else is lost. */
static void
test_corners_lose_their_tips(void **state) {
  (void) state;
  const guint angles[] = { 30, 60, 90, 120 };
  for (guint i = 0; i < G_N_ELEMENTS(angles); i++) {
    double apex = angles[i] * G_PI / 180;
    g_autoptr(SpvShape) triangle = corner(apex);
    g_autoptr(SpvShape) opened = open_shape(triangle, 1);
    g_autoptr(SpvPath) top_path = spv_path_new_box((SpvBox){ -50, -1, 50, 10 });
    g_autoptr(SpvShape) top = spv_shape_new_from_path(top_path);
    g_autoptr(SpvShape) before = spv_shape_intersection(triangle, top);
    g_autoptr(SpvShape) after = spv_shape_intersection(opened, top);
    g_autofree char *key = g_strdup_printf("opening-corner-%u", angles[i]);
    double lost = spv_shape_area(before) - spv_shape_area(after);
    /* The chords of the one arc, of π − θ, take up to this much more. */
    double arc = (G_PI - apex) * SPV_CHORD_ERROR;
    assert_near(lost, reference_area(key) + arc / 2, arc / 2 + 1e-6);
  }
}

/* tests/reference/areas.csv, tip-BASE-RISE: a round brush of r = 0.25 stays r(1/sin(θ/2) − 1) from a tooth's
 * tip. */
static void
test_a_round_brush_stays_short_of_a_tip(void **state) {
  (void) state;
  const struct {
    const char *key;
    double base, rise;
  } teeth[] = { { "tip-5-4", 5, 4 }, { "tip-2.5-3", 2.5, 3 } };
  for (guint i = 0; i < G_N_ELEMENTS(teeth); i++) {
    const SpvPoint points[] = { { 0, 0 },
                                { teeth[i].base / 2, teeth[i].rise },
                                { teeth[i].base / 2, 20 },
                                { -teeth[i].base / 2, 20 },
                                { -teeth[i].base / 2, teeth[i].rise } };
    g_autoptr(SpvShape) tooth = polygon_shape(points, G_N_ELEMENTS(points));
    g_autoptr(SpvShape) opened = open_shape(tooth, 0.25);
    assert_near(spv_shape_bounds(opened).y0, reference_area(teeth[i].key), SPV_CHORD_ERROR + 5e-5);
  }
}

static void
test_a_circle_stays_a_circle(void **state) {
  (void) state;
  const double radius = 8, offsets[] = { -7.5, -3, -0.2, 0.2, 3, 20 };
  g_autoptr(SpvPath) path = spv_path_new_circle(spv_point(5, -3), radius);
  g_autoptr(SpvShape) circle = spv_shape_new_from_path(path);
  for (guint i = 0; i < G_N_ELEMENTS(offsets); i++) {
    g_autoptr(SpvShape) moved = spv_shape_offset(circle, offsets[i]);
    gsize n = 0;
    const SpvPiece *pieces = spv_shape_pieces(moved, &n);
    assert_int_equal(n, 1);
    assert_int_equal(pieces[0].n_rings, 1);
    const SpvRing *ring = pieces[0].rings[0];
    for (gsize j = 0; j < ring->n_points; j++) {
      SpvPoint middle = spv_point_between(ring->points[j], ring->points[(j + 1) % ring->n_points], 0.5);
      double at = spv_point_distance(ring->points[j], spv_point(5, -3));
      double between = spv_point_distance(middle, spv_point(5, -3));
      /* The circle's own chords and the joins' are each within the chord error. */
      assert_near(at, radius + offsets[i], 2 * SPV_CHORD_ERROR);
      assert_near(between, radius + offsets[i], 2 * SPV_CHORD_ERROR);
    }
  }
}

/* The edge of what is left lies at the distance from the old edge, at corners and between them. */
static void
test_the_new_edge_keeps_its_distance(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(41);
  for (guint round = 0; round < 40; round++) {
    g_autoptr(SpvRing) ring = random_star(random, 5 + 3 * round, 8, 12);
    g_autoptr(SpvShape) star = polygon_shape(ring->points, ring->n_points);
    double distance = g_rand_double_range(random, 0.05, 4) * (round % 2 == 0 ? 1 : -1);
    g_autoptr(SpvShape) moved = spv_shape_offset(star, distance);
    gsize n = 0;
    const SpvPiece *pieces = spv_shape_pieces(moved, &n);
    assert_true(n > 0);
    for (gsize i = 0; i < n; i++)
      for (gsize j = 0; j < pieces[i].rings[0]->n_points; j++) {
        const SpvRing *edge = pieces[i].rings[0];
        SpvPoint middle = spv_point_between(edge->points[j], edge->points[(j + 1) % edge->n_points], 0.5);
        assert_near(distance_to_ring(edge->points[j], ring), fabs(distance), SPV_CHORD_ERROR);
        assert_near(distance_to_ring(middle, ring), fabs(distance), SPV_CHORD_ERROR);
      }
  }
}

static void
test_holes_shrink_when_the_shape_grows(void **state) {
  (void) state;
  SpvPathBuilder *builder = spv_path_builder_new();
  const SpvPoint outer[] = { { 0, 0 }, { 20, 0 }, { 20, 20 }, { 0, 20 } };
  const SpvPoint hole[] = { { 6, 6 }, { 6, 14 }, { 14, 14 }, { 14, 6 } };
  spv_path_builder_polygon(builder, outer, 4);
  spv_path_builder_polygon(builder, hole, 4);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  g_autoptr(SpvShape) frame = spv_shape_new_from_path(path);
  g_autoptr(SpvShape) grown = spv_shape_offset(frame, 1);
  g_autoptr(SpvShape) filled = spv_shape_offset(frame, 4.001);
  gsize n = 0;
  assert_int_equal(spv_shape_pieces(grown, &n)[0].n_rings, 2);
  assert_near(-spv_ring_area(spv_shape_pieces(grown, &n)[0].rings[1]), 36, 1e-8);
  assert_int_equal(spv_shape_pieces(filled, &n)[0].n_rings, 1);
}

static void
test_what_is_too_thin_is_gone(void **state) {
  (void) state;
  g_autoptr(SpvShape) box = rectangle();
  g_autoptr(SpvShape) line = spv_shape_offset(box, -9.999);
  g_autoptr(SpvShape) gone = spv_shape_offset(box, -10.001);
  g_autoptr(SpvShape) same = spv_shape_offset(box, 0);
  assert_near(spv_shape_area(line), 0.002 * 10.002, 1e-7);
  assert_true(spv_shape_is_empty(gone));
  assert_near(spv_shape_area(same), 600, 1e-9);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_a_rectangle_grown_shrunk_and_opened),
    cmocka_unit_test(test_corners_lose_their_tips),
    cmocka_unit_test(test_a_round_brush_stays_short_of_a_tip),
    cmocka_unit_test(test_a_circle_stays_a_circle),
    cmocka_unit_test(test_the_new_edge_keeps_its_distance),
    cmocka_unit_test(test_holes_shrink_when_the_shape_grows),
    cmocka_unit_test(test_what_is_too_thin_is_gone),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
