/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Overlay: parts add up to the whole, however often it is cut. */
#include "geometry-test.h"
#include "geometry/shape.h"

/* What the composition promises: areas add up within this part of the whole. */
#define PARTITION 1e-9

static void
free_ring(gpointer ring) {
  spv_ring_free(ring);
}

static SpvShape *
circle_shape(SpvPoint centre, double radius) {
  g_autoptr(SpvPath) path = spv_path_new_circle(centre, radius);
  return spv_shape_new_from_path(path);
}

static SpvShape *
box_shape(double x0, double y0, double x1, double y1) {
  g_autoptr(SpvPath) path = spv_path_new_box((SpvBox){ x0, y0, x1, y1 });
  return spv_shape_new_from_path(path);
}

/* A band of random teeth across the datum at a random slant. */
static SpvShape *
random_zigzag(GRand *random) {
  int teeth = g_rand_int_range(random, 2, 40);
  double depth = g_rand_double_range(random, 0, 6), thickness = g_rand_double_range(random, 0.01, 8);
  double slant = g_rand_double_range(random, -G_PI, G_PI), along = 60.0 / teeth;
  g_autofree SpvPoint *points = g_new(SpvPoint, 4 * (gsize) teeth + 2);
  gsize n = 0;
  for (int i = 0; i <= 2 * teeth; i++)
    points[n++] = spv_point(-30 + along * i / 2, i % 2 == 0 ? 0 : depth);
  for (int i = 2 * teeth; i >= 0; i--)
    points[n++] = spv_point(-30 + along * i / 2, thickness + (i % 2 == 0 ? 0 : depth));
  for (gsize i = 0; i < n; i++)
    points[i] = spv_point(points[i].x * cos(slant) - points[i].y * sin(slant),
                          points[i].x * sin(slant) + points[i].y * cos(slant));
  g_autoptr(SpvPath) path = spv_path_new_polygon(points, n);
  return spv_shape_new_from_path(path);
}

/* Every other cell of a turned grid of N by N that covers REACH about the datum. */
static GPtrArray *
check_cells(guint n, double reach, double turn, gboolean all) {
  GPtrArray *cells = g_ptr_array_new_with_free_func(free_ring);
  double side = 2 * reach / n, c = cos(turn), s = sin(turn);
  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < n; j++) {
      if (!all && (i + j) % 2 == 1)
        continue;
      SpvPoint corners[4];
      for (guint k = 0; k < 4; k++) {
        double x = -reach + side * (i + (k == 1 || k == 2)), y = -reach + side * (j + (k >= 2));
        corners[k] = spv_point(x * c - y * s, x * s + y * c);
      }
      g_ptr_array_add(cells, spv_ring_new(corners, 4));
    }
  return cells;
}

static SpvShape *
cells_shape(GPtrArray *cells) {
  SpvPathBuilder *builder = spv_path_builder_new();
  for (guint i = 0; i < cells->len; i++) {
    const SpvRing *cell = g_ptr_array_index(cells, i);
    spv_path_builder_polygon(builder, cell->points, cell->n_points);
  }
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  return spv_shape_new_from_path(path);
}

static SpvShape *
random_shape(GRand *random) {
  switch (g_rand_int_range(random, 0, 4)) {
  case 0:
    return random_zigzag(random);
  case 1: {
    g_autoptr(GPtrArray)
        cells = check_cells((guint) g_rand_int_range(random, 1, 12), g_rand_double_range(random, 3, 20),
                            g_rand_double_range(random, -2, 2), FALSE);
    return cells_shape(cells);
  }
  case 2:
    return circle_shape(random_point(random, 12), g_rand_double_range(random, 0.1, 15));
  default: {
    g_autoptr(SpvRing) ring = random_star(random, (guint) g_rand_int_range(random, 3, 60), 2, 18);
    g_autoptr(SpvPath) path = spv_path_new_polygon(ring->points, ring->n_points);
    return spv_shape_new_from_path(path);
  }
  }
}

/* tests/reference/areas.csv, lens. The circles are polygons within SPV_CHORD_ERROR, so the lens may lose that
 * much along its edge. */
static void
test_two_circles_share_a_lens(void **state) {
  (void) state;
  g_autoptr(SpvShape) a = circle_shape(spv_point(0, 0), 10);
  g_autoptr(SpvShape) b = circle_shape(spv_point(10, 0), 10);
  g_autoptr(SpvShape) lens = spv_shape_intersection(a, b);
  double edge = 2 * 10 * 2 * G_PI / 3, area = reference_area("lens");
  assert_true(spv_shape_area(lens) < area);
  assert_true(spv_shape_area(lens) > area - edge * SPV_CHORD_ERROR);
}

static void
test_two_parts_make_the_whole(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(31);
  guint cut = 0;
  for (guint round = 0; round < 60; round++) {
    g_autoptr(SpvShape) a = random_shape(random);
    g_autoptr(SpvShape) b = random_shape(random);
    g_autoptr(SpvShape) common = spv_shape_intersection(a, b);
    g_autoptr(SpvShape) rest = spv_shape_difference(a, b);
    double whole = spv_shape_area(a), parts = spv_shape_area(common) + spv_shape_area(rest);
    assert_near(parts, whole, PARTITION * whole);
    cut += !spv_shape_is_empty(common) && !spv_shape_is_empty(rest);
  }
  assert_true(cut > 35);
}

static void
test_thirty_cuts_still_make_the_whole(void **state) {
  (void) state;
  for (guint seed = 1; seed <= 2; seed++) {
    g_autoptr(GRand) random = g_rand_new_with_seed(seed);
    g_autoptr(SpvShape) panel = circle_shape(spv_point(0, 0), 20);
    g_autoptr(SpvShape) rest = spv_shape_ref(panel);
    double parts = 0;
    for (guint i = 0; i < 30; i++) {
      g_autoptr(SpvShape) laid = random_shape(random);
      /* Every third time the same edges once more: what was cut along them is cut along them again. */
      g_autoptr(SpvShape) shrunk = i % 3 == 2 ? spv_shape_intersection(laid, panel) : spv_shape_ref(laid);
      g_autoptr(SpvShape) seen = spv_shape_intersection(rest, shrunk);
      g_autoptr(SpvShape) left = spv_shape_difference(rest, shrunk);
      parts += spv_shape_area(seen);
      g_clear_pointer(&rest, spv_shape_unref);
      rest = g_steal_pointer(&left);
      assert_near(parts + spv_shape_area(rest), spv_shape_area(panel), PARTITION * spv_shape_area(panel));
      /* Nothing is left where it was taken. */
      g_autoptr(SpvShape) again = spv_shape_intersection(rest, seen);
      assert_near(spv_shape_area(again), 0, 1e-7);
    }
  }
}

static void
test_union(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(33);
  for (guint round = 0; round < 60; round++) {
    g_autoptr(SpvShape) a = random_shape(random);
    g_autoptr(SpvShape) b = random_shape(random);
    const SpvShape *both[] = { a, b };
    g_autoptr(SpvShape) joined = spv_shape_union(both, 2);
    g_autoptr(SpvShape) common = spv_shape_intersection(a, b);
    double expected = spv_shape_area(a) + spv_shape_area(b) - spv_shape_area(common);
    assert_near(spv_shape_area(joined), expected, PARTITION * expected);
  }
  g_autoptr(SpvShape) none = spv_shape_union(NULL, 0);
  assert_true(spv_shape_is_empty(none));
}

static void
test_what_does_not_meet_stays(void **state) {
  (void) state;
  g_autoptr(SpvShape) a = box_shape(0, 0, 2, 2);
  g_autoptr(SpvShape) beside = box_shape(2, 0, 4, 2);
  g_autoptr(SpvShape) corner = box_shape(2, 2, 4, 4);
  g_autoptr(SpvShape) empty = spv_shape_new_empty();
  const SpvShape *others[] = { beside, corner, empty };
  for (guint i = 0; i < G_N_ELEMENTS(others); i++) {
    g_autoptr(SpvShape) common = spv_shape_intersection(a, others[i]);
    g_autoptr(SpvShape) rest = spv_shape_difference(a, others[i]);
    assert_true(spv_shape_is_empty(common));
    assert_near(spv_shape_area(rest), 4, 1e-9);
  }
  g_autoptr(SpvShape) gone = spv_shape_difference(a, a);
  g_autoptr(SpvShape) same = spv_shape_intersection(a, a);
  assert_true(spv_shape_is_empty(gone));
  assert_near(spv_shape_area(same), 4, 1e-9);
}

static void
test_clipped_cells_are_the_cells_clipped(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(34);
  for (guint round = 0; round < 60; round++) {
    g_autoptr(SpvShape) outline = random_shape(random);
    g_autoptr(GPtrArray)
        cells = check_cells((guint) g_rand_int_range(random, 1, 16), g_rand_double_range(random, 2, 25),
                            g_rand_double_range(random, -2, 2), round % 3 == 0);
    g_autoptr(SpvShape) clipped = spv_shape_clip_cells(outline, cells);
    g_autoptr(SpvShape) whole = cells_shape(cells);
    g_autoptr(SpvShape) expected = spv_shape_intersection(outline, whole);
    assert_near(spv_shape_area(clipped), spv_shape_area(expected), PARTITION * spv_shape_area(outline));
    /* It is a shape like any other: the rest of the outline can be had from it. */
    g_autoptr(SpvShape) rest = spv_shape_difference(outline, clipped);
    assert_near(spv_shape_area(clipped) + spv_shape_area(rest), spv_shape_area(outline),
                PARTITION * spv_shape_area(outline));
  }
}

static void
test_cells_that_share_sides_and_cells_outside(void **state) {
  (void) state;
  g_autoptr(SpvShape) outline = circle_shape(spv_point(0, 0), 10);
  g_autoptr(GPtrArray) all = check_cells(9, 30, 0, TRUE);
  g_autoptr(SpvShape) covered = spv_shape_clip_cells(outline, all);
  assert_near(spv_shape_area(covered), spv_shape_area(outline), PARTITION * spv_shape_area(outline));
  g_autoptr(SpvShape) bare = spv_shape_difference(outline, covered);
  assert_near(spv_shape_area(bare), 0, 1e-7);

  const SpvPoint far_off[] = { { 50, 50 }, { 51, 50 }, { 51, 51 } };
  const SpvPoint flat[] = { { 0, 0 }, { 1, 0 } };
  g_autoptr(GPtrArray) outside = g_ptr_array_new_with_free_func(free_ring);
  g_autoptr(SpvShape) none = spv_shape_clip_cells(outline, outside);
  assert_true(spv_shape_is_empty(none));
  g_ptr_array_add(outside, spv_ring_new(far_off, 3));
  g_ptr_array_add(outside, spv_ring_new(flat, 2));
  g_autoptr(SpvShape) missed = spv_shape_clip_cells(outline, outside);
  assert_true(spv_shape_is_empty(missed));
  g_autoptr(SpvShape) empty = spv_shape_new_empty();
  g_autoptr(SpvShape) nowhere = spv_shape_clip_cells(empty, all);
  assert_true(spv_shape_is_empty(nowhere));
}

static void
test_the_same_input_gives_the_same_points(void **state) {
  (void) state;
  g_autoptr(SpvRing) first = NULL;
  for (guint round = 0; round < 3; round++) {
    g_autoptr(GRand) random = g_rand_new_with_seed(35);
    g_autoptr(SpvShape) a = random_zigzag(random);
    g_autoptr(SpvShape) b = circle_shape(spv_point(1, 2), 9);
    g_autoptr(SpvShape) common = spv_shape_intersection(a, b);
    gsize n = 0;
    const SpvPiece *pieces = spv_shape_pieces(common, &n);
    assert_true(n > 0);
    const SpvRing *ring = pieces[0].rings[0];
    if (first == NULL)
      first = spv_ring_new(ring->points, ring->n_points);
    assert_int_equal(ring->n_points, first->n_points);
    assert_memory_equal(ring->points, first->points, ring->n_points * sizeof *ring->points);
  }
}

static gpointer
cut_in_thread(gpointer shape) {
  g_autoptr(SpvShape) cut = circle_shape(spv_point(8, 0), 6);
  double *area = g_new(double, 1);
  g_autoptr(SpvShape) rest = spv_shape_difference(shape, cut);
  *area = spv_shape_area(rest);
  return area;
}

static void
test_threads_may_cut_one_shape(void **state) {
  (void) state;
  g_autoptr(SpvShape) shape = circle_shape(spv_point(0, 0), 10);
  g_autofree double *expected = cut_in_thread(shape);
  GThread *threads[4];
  for (guint i = 0; i < G_N_ELEMENTS(threads); i++)
    threads[i] = g_thread_new("cut", cut_in_thread, shape);
  for (guint i = 0; i < G_N_ELEMENTS(threads); i++) {
    g_autofree double *area = g_thread_join(threads[i]);
    assert_near(*area, *expected, 0);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_two_circles_share_a_lens),
    cmocka_unit_test(test_two_parts_make_the_whole),
    cmocka_unit_test(test_thirty_cuts_still_make_the_whole),
    cmocka_unit_test(test_union),
    cmocka_unit_test(test_what_does_not_meet_stays),
    cmocka_unit_test(test_clipped_cells_are_the_cells_clipped),
    cmocka_unit_test(test_cells_that_share_sides_and_cells_outside),
    cmocka_unit_test(test_the_same_input_gives_the_same_points),
    cmocka_unit_test(test_threads_may_cut_one_shape),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
