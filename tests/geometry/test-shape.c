/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Shapes as values: from a path, pieces, orientation, the middle. */
#include "geometry-test.h"
#include "geometry/shape.h"

static SpvShape *
polygon_shape(const SpvPoint *points, gsize n) {
  g_autoptr(SpvPath) path = spv_path_new_polygon(points, n);
  return spv_shape_new_from_path(path);
}

static SpvShape *
box_shape(double x0, double y0, double x1, double y1) {
  g_autoptr(SpvPath) path = spv_path_new_box((SpvBox){ x0, y0, x1, y1 });
  return spv_shape_new_from_path(path);
}

static SpvShape *
annulus(SpvPoint outer, double outer_radius, SpvPoint inner, double inner_radius) {
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_arc(builder, outer, outer_radius, 0, 2 * G_PI);
  spv_path_builder_close(builder);
  spv_path_builder_arc(builder, inner, inner_radius, 0, -2 * G_PI);
  spv_path_builder_close(builder);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  return spv_shape_new_from_path(path);
}

static gsize
n_pieces(const SpvShape *shape) {
  gsize n = 0;
  spv_shape_pieces(shape, &n);
  return n;
}

/* tests/reference/areas.csv, zigzag-band: width × thickness whatever the teeth. */
static void
test_a_zigzag_band_has_the_area_of_a_plain_one(void **state) {
  (void) state;
  for (guint teeth = 1; teeth <= 8; teeth++) {
    const double depth = 4, pitch = 30.0 / teeth;
    g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
    for (guint i = 0; i <= 2 * teeth; i++) {
      SpvPoint p = { pitch / 2 * i, i % 2 == 0 ? 0 : depth };
      g_array_append_val(points, p);
    }
    for (guint i = 2 * teeth + 1; i > 0; i--) {
      SpvPoint p = { pitch / 2 * (i - 1), 6 + (i % 2 == 1 ? 0 : depth) };
      g_array_append_val(points, p);
    }
    g_autoptr(SpvShape) band = polygon_shape((const SpvPoint *) (void *) points->data, points->len);
    assert_near(spv_shape_area(band), reference_area("zigzag-band"), 1e-8);
  }
}

static void
test_rings_are_turned_as_promised(void **state) {
  (void) state;
  g_autoptr(SpvShape) ring = annulus(spv_point(0, 0), 10, spv_point(1, 0), 4);
  gsize n = 0;
  const SpvPiece *pieces = spv_shape_pieces(ring, &n);
  assert_int_equal(n, 1);
  assert_int_equal(pieces[0].n_rings, 2);
  assert_true(spv_ring_area(pieces[0].rings[0]) > 0);
  assert_true(spv_ring_area(pieces[0].rings[1]) < 0);
  /* A polygon in the circle loses less than its chords' sagittas all round. */
  double lost = G_PI * (100 - 16) - spv_shape_area(ring);
  assert_near(lost, 0, SPV_CHORD_ERROR * 2 * G_PI * 14);
  assert_true(spv_shape_contains(ring, spv_point(-8, 0)));
  assert_false(spv_shape_contains(ring, spv_point(1, 1)));
  assert_false(spv_shape_contains(ring, spv_point(11, 0)));
  assert_near(spv_shape_bounds(ring).x1, 10, SPV_CHORD_ERROR);
}

static void
test_overlapping_runs_are_joined(void **state) {
  (void) state;
  SpvPathBuilder *builder = spv_path_builder_new();
  const SpvPoint first[] = { { 0, 0 }, { 6, 0 }, { 6, 6 }, { 0, 6 } };
  const SpvPoint second[] = { { 4, 4 }, { 10, 4 }, { 10, 10 }, { 4, 10 } };
  const SpvPoint hole[] = { { 1, 1 }, { 1, 2 }, { 2, 2 }, { 2, 1 } };
  spv_path_builder_polygon(builder, first, 4);
  spv_path_builder_polygon(builder, second, 4);
  spv_path_builder_polygon(builder, hole, 4);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  g_autoptr(SpvShape) shape = spv_shape_new_from_path(path);
  assert_near(spv_shape_area(shape), 36 + 36 - 4 - 1, 1e-8);
  assert_int_equal(n_pieces(shape), 1);
}

/* Each run by the non-zero rule: where it winds twice it fills once, and a bow-tie fills both its lobes. */
static void
test_runs_that_cross_themselves(void **state) {
  (void) state;
  const SpvPoint bow_tie[] = { { 0, 0 }, { 10, 10 }, { 10, 0 }, { 0, 10 } };
  g_autoptr(SpvShape) lobes = polygon_shape(bow_tie, G_N_ELEMENTS(bow_tie));
  assert_near(spv_shape_area(lobes), 50, 1e-8);
  assert_int_equal(n_pieces(lobes), 2);

  SpvPoint pentagram[5];
  for (guint i = 0; i < 5; i++)
    pentagram[i] = spv_point(sin(4 * G_PI * i / 5), -cos(4 * G_PI * i / 5));
  g_autoptr(SpvShape) star = polygon_shape(pentagram, 5);
  /* Area of the filled pentagram in the unit circle: 10 tan(18°) / (3 − tan²(18°)), elementary geometry. */
  double t = tan(G_PI / 10);
  assert_near(spv_shape_area(star), 10 * t / (3 - t * t), 1e-8);
  assert_true(spv_shape_contains(star, spv_point(0, 0)));

  SpvPoint twice[12];
  for (guint i = 0; i < 12; i++)
    twice[i] = spv_point((1 + 0.1 * (i / 6)) * cos(2 * G_PI * i / 6), sin(2 * G_PI * i / 6));
  g_autoptr(SpvShape) wound = polygon_shape(twice, 12);
  assert_int_equal(n_pieces(wound), 1);
  assert_true(spv_shape_area(wound) < 3.14);
  assert_true(spv_shape_contains(wound, spv_point(0.1, 0.1)));
}

static void
test_there_and_back_through_a_path(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(21);
  for (guint round = 0; round < 30; round++) {
    g_autoptr(SpvRing) ring = random_star(random, 8 + round, 5, 20);
    g_autoptr(SpvShape) star = polygon_shape(ring->points, ring->n_points);
    g_autoptr(SpvShape) hole = box_shape(-1, -2, 2, 1);
    g_autoptr(SpvShape) shape = spv_shape_difference(star, hole);
    g_autoptr(SpvPath) path = spv_shape_to_path(shape);
    g_autoptr(SpvShape) again = spv_shape_new_from_path(path);
    assert_near(spv_shape_area(star), spv_ring_area(ring), 1e-8);
    assert_near(spv_shape_area(shape), spv_ring_area(ring) - 9, 1e-8);
    assert_near(spv_shape_area(again), spv_shape_area(shape), 1e-9);
    for (guint i = 0; i < 50; i++) {
      SpvPoint p = random_point(random, 20);
      assert_int_equal(spv_shape_contains(shape, p), spv_path_contains(path, p));
    }
  }
}

static void
test_coordinates_lie_on_the_grid(void **state) {
  (void) state;
  g_autoptr(SpvShape) disc = annulus(spv_point(G_PI, G_E), 7, spv_point(4, 3), 2);
  g_autoptr(SpvShape) cut = box_shape(1.0 / 3, 1.0 / 7, 9, 5);
  g_autoptr(SpvShape) common = spv_shape_intersection(disc, cut);
  g_autoptr(SpvShape) grown = spv_shape_offset(common, 0.123456789);
  const SpvShape *shapes[] = { disc, cut, common, grown };
  for (guint k = 0; k < G_N_ELEMENTS(shapes); k++) {
    gsize n = 0;
    const SpvPiece *pieces = spv_shape_pieces(shapes[k], &n);
    assert_true(n > 0);
    for (gsize i = 0; i < pieces[0].rings[0]->n_points; i++) {
      double steps = pieces[0].rings[0]->points[i].x / SPV_SNAP_GRID;
      assert_near(steps, round(steps), 1e-4);
    }
  }
}

static void
test_pieces(void **state) {
  (void) state;
  SpvPathBuilder *builder = spv_path_builder_new();
  const SpvPoint first[] = { { 0, 0 }, { 3, 0 }, { 3, 3 }, { 0, 3 } };
  const SpvPoint corner[] = { { 3, 3 }, { 5, 3 }, { 5, 5 }, { 3, 5 } };
  const SpvPoint beside[] = { { 5, 3 }, { 6, 3 }, { 6, 5 }, { 5, 5 } };
  spv_path_builder_polygon(builder, first, 4);
  spv_path_builder_polygon(builder, corner, 4);
  spv_path_builder_polygon(builder, beside, 4);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  g_autoptr(SpvShape) shape = spv_shape_new_from_path(path);
  /* What shares a side is one piece; what touches at a corner only is apart. */
  assert_int_equal(n_pieces(shape), 2);
  double total = 0;
  for (gsize i = 0; i < 2; i++) {
    g_autoptr(SpvShape) piece = spv_shape_piece(shape, i);
    assert_int_equal(n_pieces(piece), 1);
    total += spv_shape_area(piece);
    assert_true(spv_shape_area(piece) > 5);
  }
  assert_near(total, 9 + 6, 1e-9);
}

static void
test_the_middle(void **state) {
  (void) state;
  double radius = 0;
  g_autoptr(SpvShape) box = box_shape(10, 20, 40, 40);
  SpvPoint middle = spv_shape_middle(box, &radius);
  assert_near(radius, 10, 0.001);
  assert_near(middle.x, 25, 5.001);
  assert_near(middle.y, 30, 0.001);

  const SpvPoint triangle[] = { { 0, 0 }, { 4, 0 }, { 0, 3 } };
  g_autoptr(SpvShape) right = polygon_shape(triangle, 3);
  middle = spv_shape_middle(right, &radius);
  /* The 3-4-5 triangle's inscribed circle: radius 1, elementary geometry. */
  assert_near(radius, 1, 0.001);
  assert_near(middle.x, 1, 0.001);
  assert_near(middle.y, 1, 0.001);

  /* The widest part of an eccentric ring, and the larger of two pieces. */
  g_autoptr(SpvShape) ring = annulus(spv_point(0, 0), 10, spv_point(2, 0), 6);
  middle = spv_shape_middle(ring, &radius);
  assert_near(radius, 3, 0.002);
  assert_near(middle.x, -7, 0.1);
  g_autoptr(SpvShape) far_box = box_shape(100, 0, 101, 1);
  const SpvShape *both[] = { far_box, ring };
  g_autoptr(SpvShape) pieces = spv_shape_union(both, 2);
  assert_near(spv_shape_middle(pieces, NULL).x, -7, 0.1);

  /* Hair-thin, straight and aslant: still an answer inside, at once. */
  const SpvPoint hair[] = { { 0, 0 }, { 300, 200 }, { 300, 200.0001 }, { 0, 0.0001 } };
  g_autoptr(SpvShape) thin = polygon_shape(hair, 4);
  middle = spv_shape_middle(thin, &radius);
  assert_near(radius, 0, 0.001);
  assert_true(middle.x > 0 && middle.x < 300);
}

static void
test_the_middle_is_as_deep_as_it_says(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(22);
  for (guint round = 0; round < 30; round++) {
    g_autoptr(SpvRing) ring = random_star(random, 6 + round, 4, 20);
    g_autoptr(SpvShape) star = polygon_shape(ring->points, ring->n_points);
    double radius = 0;
    SpvPoint middle = spv_shape_middle(star, &radius);
    assert_true(spv_shape_contains(star, middle));
    assert_near(distance_to_ring(middle, ring), radius, 0.001);
    /* No place of a thousand random ones is deeper. */
    for (guint i = 0; i < 1000; i++) {
      SpvPoint p = random_point(random, 20);
      if (spv_shape_contains(star, p))
        assert_true(distance_to_ring(p, ring) < radius + 0.001);
    }
  }
}

static void
test_nothing_comes_of_nothing(void **state) {
  (void) state;
  const SpvPoint line[] = { { 0, 0 }, { 1, 1 }, { 2, 2 }, { 5, 5 } };
  const SpvPoint back[] = { { 0, 0 }, { 5, 0 }, { 5, 5 }, { 5, 0 } };
  const struct {
    const SpvPoint *points;
    gsize n;
  } cases[] = { { line, 0 }, { line, 1 }, { line, 2 }, { line, 3 }, { line, 4 }, { back, 4 } };
  for (guint i = 0; i < G_N_ELEMENTS(cases); i++) {
    g_autoptr(SpvShape) shape = polygon_shape(cases[i].points, cases[i].n);
    assert_true(spv_shape_is_empty(shape));
    assert_near(spv_shape_area(shape), 0, 0);
    assert_int_equal(n_pieces(shape), 0);
    double radius = 1;
    assert_near(spv_shape_middle(shape, &radius).x, 0, 0);
    assert_near(radius, 0, 0);
    assert_false(spv_shape_contains(shape, spv_point(1, 1)));
    g_autoptr(SpvPath) path = spv_shape_to_path(shape);
    assert_true(spv_path_is_empty(path));
    g_autoptr(SpvShape) grown = spv_shape_offset(shape, 1);
    assert_true(spv_shape_is_empty(grown));
  }
  /* A hole alone cuts from nothing. */
  const SpvPoint hole[] = { { 0, 0 }, { 0, 5 }, { 5, 5 }, { 5, 0 } };
  g_autoptr(SpvShape) cut = polygon_shape(hole, 4);
  assert_true(spv_shape_is_empty(cut));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_a_zigzag_band_has_the_area_of_a_plain_one),
    cmocka_unit_test(test_rings_are_turned_as_promised),
    cmocka_unit_test(test_overlapping_runs_are_joined),
    cmocka_unit_test(test_runs_that_cross_themselves),
    cmocka_unit_test(test_there_and_back_through_a_path),
    cmocka_unit_test(test_coordinates_lie_on_the_grid),
    cmocka_unit_test(test_pieces),
    cmocka_unit_test(test_the_middle),
    cmocka_unit_test(test_the_middle_is_as_deep_as_it_says),
    cmocka_unit_test(test_nothing_comes_of_nothing),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
