/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Analytic paths: building, flattening, the non-zero rule. */
#include "geometry-test.h"

static SpvPathOp
op_at(const SpvPath *path, gsize index) {
  gsize n = 0;
  const SpvPathStep *steps = spv_path_steps(path, &n);
  assert_true(index < n);
  return steps[index].op;
}

static gsize
n_steps(const SpvPath *path) {
  gsize n = 0;
  spv_path_steps(path, &n);
  return n;
}

/* tests/reference/segments.csv: Machinery's Handbook, 31st ed., p. 83; five decimals. */
static void
test_circle_segments(void **state) {
  (void) state;
  g_autoptr(GPtrArray) rows = reference_rows("segments.csv");
  assert_int_equal(rows->len, 16);
  for (guint i = 0; i < rows->len; i++) {
    char **row = g_ptr_array_index(rows, i);
    double angle = g_ascii_strtod(row[0], NULL) * G_PI / 180;
    SpvPathBuilder *builder = spv_path_builder_new();
    spv_path_builder_arc(builder, spv_point(0, 0), 1, -G_PI_2 - angle / 2, angle);
    spv_path_builder_close(builder);
    g_autoptr(SpvPath) path = spv_path_builder_build(builder);
    g_autoptr(GPtrArray) rings = spv_path_flatten(path, 1e-8);
    if (rings->len == 0)
      fail_msg("the segment of %s degrees is gone", row[0]);
    const SpvRing *ring = g_ptr_array_index(rings, 0);
    SpvBox box = spv_ring_bounds(ring);
    double chord = spv_point_distance(ring->points[0], ring->points[ring->n_points - 1]);
    assert_near(spv_ring_length(ring) - chord, g_ascii_strtod(row[1], NULL), 6e-6);
    assert_near(spv_box_height(box), g_ascii_strtod(row[2], NULL), 6e-6);
    assert_near(chord, g_ascii_strtod(row[3], NULL), 6e-6);
    assert_near(spv_ring_area(ring), g_ascii_strtod(row[4], NULL), 6e-6);
  }
}

/* tests/reference/areas.csv: the heater shield, arcs about the corners of an inverted
 * equilateral triangle. */
static void
test_a_heater_shield(void **state) {
  (void) state;
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_move(builder, spv_point(-10, 0));
  spv_path_builder_line(builder, spv_point(10, 0));
  spv_path_builder_arc(builder, spv_point(-10, 5), 20, 0, G_PI / 3);
  spv_path_builder_arc(builder, spv_point(10, 5), 20, 2 * G_PI / 3, G_PI / 3);
  spv_path_builder_close(builder);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  g_autoptr(GPtrArray) rings = spv_path_flatten(path, 1e-7);
  assert_int_equal(rings->len, 1);
  assert_near(spv_ring_area(g_ptr_array_index(rings, 0)), reference_area("heater-shield"), 1e-5);
  assert_near(spv_box_height(spv_path_bounds(path)), reference_area("heater-shield-height"), 1e-5);
}

static void
test_arcs_flatten_within_the_tolerance(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(1);
  for (guint round = 0; round < 60; round++) {
    SpvPoint centre = random_point(random, 20);
    double radius = g_rand_double_range(random, 0.01, 30), start = g_rand_double_range(random, -7, 7);
    double sweep = g_rand_double_range(random, 0.3, 2 * G_PI) * (round % 2 == 0 ? 1 : -1);
    double tolerance = pow(10, g_rand_double_range(random, -5, -1));
    SpvPathBuilder *builder = spv_path_builder_new();
    spv_path_builder_arc(builder, centre, radius, start, sweep);
    g_autoptr(SpvPath) path = spv_path_builder_build(builder);
    g_autoptr(GPtrArray) rings = spv_path_flatten(path, tolerance);
    if (rings->len == 0) /* one chord: an arc flatter than the tolerance */
      continue;
    const SpvRing *ring = g_ptr_array_index(rings, 0);
    for (gsize i = 0; i < ring->n_points; i++)
      assert_near(spv_point_distance(ring->points[i], centre), radius, 1e-12 * (radius + 20));
    for (guint i = 0; i <= 997; i++) {
      double angle = start + sweep * i / 997;
      SpvPoint on = { centre.x + radius * cos(angle), centre.y + radius * sin(angle) };
      assert_true(distance_to_ring(on, ring) <= tolerance * (1 + 1e-6) + 1e-12);
    }
  }
}

static void
test_curves_flatten_within_the_tolerance(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(2);
  for (guint round = 0; round < 100; round++) {
    SpvPoint p[4];
    for (guint i = 0; i < 4; i++)
      p[i] = random_point(random, 25);
    double tolerance = pow(10, g_rand_double_range(random, -4, -1));
    SpvPathBuilder *builder = spv_path_builder_new();
    spv_path_builder_move(builder, p[0]);
    spv_path_builder_curve(builder, p[1], p[2], p[3]);
    g_autoptr(SpvPath) path = spv_path_builder_build(builder);
    g_autoptr(GPtrArray) rings = spv_path_flatten(path, tolerance);
    assert_int_equal(rings->len, 1);
    const SpvRing *ring = g_ptr_array_index(rings, 0);
    for (guint i = 0; i <= 997; i++) {
      /* De Casteljau's construction: another way to the same point. */
      double t = i / 997.0;
      SpvPoint a = spv_point_between(p[0], p[1], t), b = spv_point_between(p[1], p[2], t),
               c = spv_point_between(p[2], p[3], t);
      SpvPoint on = spv_point_between(spv_point_between(a, b, t), spv_point_between(b, c, t), t);
      assert_true(distance_to_ring(on, ring) <= tolerance * (1 + 1e-6));
    }
  }
}

static void
test_a_finer_tolerance_gives_more_points(void **state) {
  (void) state;
  g_autoptr(SpvPath) circle = spv_path_new_circle(spv_point(0, 0), 10);
  gsize before = 0;
  for (double tolerance = 1; tolerance > 1e-7; tolerance /= 10) {
    g_autoptr(GPtrArray) rings = spv_path_flatten(circle, tolerance);
    const SpvRing *ring = g_ptr_array_index(rings, 0);
    assert_true(ring->n_points > before);
    before = ring->n_points;
  }
  /* And no tolerance asks for more than memory can hold. */
  g_autoptr(GPtrArray) finest = spv_path_flatten(circle, 1e-300);
  assert_true(((const SpvRing *) g_ptr_array_index(finest, 0))->n_points <= 65536);
}

/* A chord for the error ε spans 2√(2Rε − ε²); a circle needs ⌈π / arccos(1 − ε/R)⌉ of them: 15 for R = 2,
 * ε = 0.05 (elementary geometry, worked by hand). */
static void
test_a_circle_takes_no_more_chords_than_it_needs(void **state) {
  (void) state;
  g_autoptr(SpvPath) circle = spv_path_new_circle(spv_point(0, 0), 2);
  g_autoptr(GPtrArray) rings = spv_path_flatten(circle, 0.05);
  const SpvRing *ring = g_ptr_array_index(rings, 0);
  assert_int_equal(ring->n_points, 15);
  assert_near(spv_ring_area(ring), 15 / 2.0 * sin(2 * G_PI / 15) * 4, 1e-12);
}

static void
test_an_arc_is_joined_to_its_run(void **state) {
  (void) state;
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_move(builder, spv_point(5, 5));
  spv_path_builder_arc(builder, spv_point(0, 0), 1, 0, G_PI_2);
  spv_path_builder_arc(builder, spv_point(0, 0), 1, G_PI_2, G_PI_2);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  assert_int_equal(n_steps(path), 4);
  assert_int_equal(op_at(path, 0), SPV_PATH_MOVE);
  assert_int_equal(op_at(path, 1), SPV_PATH_LINE);
  assert_int_equal(op_at(path, 2), SPV_PATH_ARC);
  assert_int_equal(op_at(path, 3), SPV_PATH_ARC);
}

static void
test_after_a_close_a_new_run_starts(void **state) {
  (void) state;
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_close(builder);
  spv_path_builder_line(builder, spv_point(1, 1));
  spv_path_builder_line(builder, spv_point(2, 1));
  spv_path_builder_close(builder);
  spv_path_builder_close(builder);
  spv_path_builder_curve(builder, spv_point(3, 3), spv_point(4, 3), spv_point(4, 4));
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  gsize n = 0;
  const SpvPathStep *steps = spv_path_steps(path, &n);
  const SpvPathOp expected[] = { SPV_PATH_MOVE, SPV_PATH_LINE, SPV_PATH_CLOSE, SPV_PATH_MOVE,
                                 SPV_PATH_CURVE };
  assert_int_equal(n, G_N_ELEMENTS(expected));
  for (gsize i = 0; i < n; i++)
    assert_int_equal(steps[i].op, expected[i]);
  assert_near(steps[2].to.x, 1, 0);
  assert_near(steps[3].to.x, 3, 0);
}

static void
test_a_path_can_be_added_to_another(void **state) {
  (void) state;
  g_autoptr(SpvPath) box = spv_path_new_box((SpvBox){ 0, 0, 4, 3 });
  g_autoptr(SpvPath) circle = spv_path_new_circle(spv_point(20, 0), 2);
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_path(builder, box);
  spv_path_builder_path(builder, circle);
  spv_path_builder_line(builder, spv_point(9, 9));
  g_autoptr(SpvPath) both = spv_path_builder_build(builder);
  assert_int_equal(n_steps(both), n_steps(box) + n_steps(circle) + 1);
  assert_int_equal(op_at(both, n_steps(both) - 1), SPV_PATH_MOVE);
  assert_true(spv_path_contains(both, spv_point(1, 1)));
  assert_true(spv_path_contains(both, spv_point(20, 1)));
  assert_false(spv_path_contains(both, spv_point(10, 1)));
}

static void
test_a_run_the_other_way_cuts_a_hole(void **state) {
  (void) state;
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_arc(builder, spv_point(0, 0), 10, 0, 2 * G_PI);
  spv_path_builder_close(builder);
  spv_path_builder_arc(builder, spv_point(0, 0), 5, 0, -2 * G_PI);
  spv_path_builder_close(builder);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  assert_true(spv_path_contains(path, spv_point(7, 0)));
  assert_false(spv_path_contains(path, spv_point(1, 1)));
  assert_false(spv_path_contains(path, spv_point(8, 8)));
}

static void
test_a_box_is_clockwise_whichever_way_it_is_given(void **state) {
  (void) state;
  const SpvBox boxes[] = { { 1, 2, 4, 7 }, { 4, 2, 1, 7 }, { 1, 7, 4, 2 }, { 4, 7, 1, 2 } };
  for (guint i = 0; i < G_N_ELEMENTS(boxes); i++) {
    g_autoptr(SpvPath) path = spv_path_new_box(boxes[i]);
    g_autoptr(GPtrArray) rings = spv_path_flatten(path, 0.1);
    assert_near(spv_ring_area(g_ptr_array_index(rings, 0)), 15, 0);
    assert_near(spv_path_bounds(path).y1, 7, 0);
  }
}

static void
test_bounds_are_the_curves_own(void **state) {
  (void) state;
  g_autoptr(SpvPath) circle = spv_path_new_circle(spv_point(3, -2), 8);
  SpvBox box = spv_path_bounds(circle);
  assert_near(box.x0, -5, SPV_CHORD_ERROR);
  assert_near(box.y0, -10, SPV_CHORD_ERROR);
  assert_near(box.x1, 11, SPV_CHORD_ERROR);
  assert_near(box.y1, 6, SPV_CHORD_ERROR);
}

/* An open run is closed; fewer than three different points make no ring; points in a row that are one point
 * count once. */
static void
test_degenerate_runs(void **state) {
  (void) state;
  const SpvPoint repeated[] = { { 0, 0 }, { 0, 0 }, { 3, 0 }, { 3, 0 }, { 3, 3 }, { 3, 3 }, { 0, 0 } };
  g_autoptr(SpvPath) path = spv_path_new_polygon(repeated, G_N_ELEMENTS(repeated));
  g_autoptr(GPtrArray) rings = spv_path_flatten(path, 0.1);
  assert_int_equal(rings->len, 1);
  assert_int_equal(((const SpvRing *) g_ptr_array_index(rings, 0))->n_points, 3);

  for (gsize n = 0; n <= 2; n++) {
    g_autoptr(SpvPath) few = spv_path_new_polygon(repeated + 1, n);
    g_autoptr(GPtrArray) none = spv_path_flatten(few, 0.1);
    assert_int_equal(none->len, 0);
    assert_int_equal(spv_path_is_empty(few), n == 0);
    assert_false(spv_path_contains(few, spv_point(0, 0)));
    assert_near(spv_box_width(spv_path_bounds(few)), 0, 0);
  }

  g_autoptr(SpvPath) speck = spv_path_new_circle(spv_point(1, 1), 0);
  g_autoptr(GPtrArray) no_rings = spv_path_flatten(speck, 0.1);
  assert_int_equal(no_rings->len, 0);
  g_autoptr(SpvPath) small = spv_path_new_circle(spv_point(1, 1), 1e-4);
  g_autoptr(GPtrArray) small_rings = spv_path_flatten(small, 0.1);
  assert_true(spv_ring_area(g_ptr_array_index(small_rings, 0)) > 0);
  g_autoptr(SpvPath) flat = spv_path_new_box((SpvBox){ 0, 0, 5, 0 });
  assert_false(spv_path_contains(flat, spv_point(2, 1)));
}

static gpointer
look_inside(gpointer path) {
  guint inside = 0;
  for (int i = -10; i <= 10; i++)
    inside += spv_path_contains(path, spv_point(i, 0.1)) ? 1 : 0;
  return GUINT_TO_POINTER(inside);
}

static void
test_threads_may_look_at_one_path(void **state) {
  (void) state;
  for (guint round = 0; round < 50; round++) {
    g_autoptr(SpvPath) circle = spv_path_new_circle(spv_point(0, 0), 5);
    GThread *threads[4];
    for (guint i = 0; i < G_N_ELEMENTS(threads); i++)
      threads[i] = g_thread_new("look", look_inside, circle);
    for (guint i = 0; i < G_N_ELEMENTS(threads); i++)
      assert_int_equal(GPOINTER_TO_UINT(g_thread_join(threads[i])), 9);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_circle_segments),
    cmocka_unit_test(test_a_heater_shield),
    cmocka_unit_test(test_arcs_flatten_within_the_tolerance),
    cmocka_unit_test(test_curves_flatten_within_the_tolerance),
    cmocka_unit_test(test_a_finer_tolerance_gives_more_points),
    cmocka_unit_test(test_a_circle_takes_no_more_chords_than_it_needs),
    cmocka_unit_test(test_an_arc_is_joined_to_its_run),
    cmocka_unit_test(test_after_a_close_a_new_run_starts),
    cmocka_unit_test(test_a_path_can_be_added_to_another),
    cmocka_unit_test(test_a_run_the_other_way_cuts_a_hole),
    cmocka_unit_test(test_a_box_is_clockwise_whichever_way_it_is_given),
    cmocka_unit_test(test_bounds_are_the_curves_own),
    cmocka_unit_test(test_degenerate_runs),
    cmocka_unit_test(test_threads_may_look_at_one_path),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
