/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Transforms of points and paths. */
#include "geometry-test.h"

#include "geometry/shape.h"
#include "geometry/transform.h"

static void
assert_point(SpvPoint got, double x, double y) {
  assert_near(got.x, x, 1e-12);
  assert_near(got.y, y, 1e-12);
}

static SpvTransform
random_transform(GRand *random) {
  double v[6];
  for (guint i = 0; i < 6; i++)
    v[i] = g_rand_double_range(random, -3, 3);
  return (SpvTransform){ v[0], v[1], v[2], v[3], v[4], v[5] };
}

static void
test_turns_and_places(void **state) {
  (void) state;
  /* A quarter turn clockwise on screen: right becomes down. */
  assert_point(spv_transform_point(spv_transform_turn(G_PI_2, spv_point(5, 6)), spv_point(1, 0)), 5, 7);
  assert_point(spv_transform_point(spv_transform_place(3, G_PI, spv_point(5, 6)), spv_point(1, 0)), 2, 6);
  assert_point(spv_transform_point(SPV_TRANSFORM_MIRROR, spv_point(4, 5)), -4, 5);
  assert_true(spv_transform_is_identity(SPV_TRANSFORM_IDENTITY));
  assert_false(spv_transform_is_identity(SPV_TRANSFORM_MIRROR));
}

static void
test_composing_and_inverting(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(3);
  for (guint round = 0; round < 200; round++) {
    SpvTransform inner = random_transform(random), outer = random_transform(random), inverse;
    SpvPoint p = random_point(random, 10);
    SpvPoint both = spv_transform_point(outer, spv_transform_point(inner, p));
    assert_point(spv_transform_point(spv_transform_compose(outer, inner), p), both.x, both.y);
    if (fabs(inner.a * inner.d - inner.b * inner.c) < 1e-2)
      continue;
    assert_true(spv_transform_invert(inner, &inverse));
    SpvPoint back = spv_transform_point(inverse, spv_transform_point(inner, p));
    assert_near(back.x, p.x, 1e-9);
    assert_near(back.y, p.y, 1e-9);
  }
  SpvTransform none;
  assert_false(spv_transform_invert((SpvTransform){ 1, 2, 2, 4, 0, 0 }, &none));
}

static SpvPath *
pie(void) {
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_move(builder, spv_point(1, 1));
  spv_path_builder_line(builder, spv_point(6, 1));
  spv_path_builder_arc(builder, spv_point(1, 1), 5, 0, 1);
  spv_path_builder_curve(builder, spv_point(2, 4), spv_point(0, 3), spv_point(1, 2));
  spv_path_builder_close(builder);
  return spv_path_builder_build(builder);
}

static double
signed_area(const SpvPath *path) {
  g_autoptr(GPtrArray) rings = spv_path_flatten(path, 1e-6);
  double area = 0;
  for (guint i = 0; i < rings->len; i++)
    area += spv_ring_area(g_ptr_array_index(rings, i));
  return area;
}

static guint
count(const SpvPath *path, SpvPathOp op) {
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);
  guint number = 0;
  for (gsize i = 0; i < n; i++)
    number += steps[i].op == op;
  return number;
}

/* An area grows by the determinant, and a mirror leaves what adds adding. */
static void
test_areas(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(4);
  g_autoptr(SpvPath) path = pie();
  double area = signed_area(path);
  assert_true(area > 0);
  for (guint round = 0; round < 100; round++) {
    SpvTransform t = random_transform(random);
    g_autoptr(SpvPath) moved = spv_path_transform(path, t);
    double factor = fabs(t.a * t.d - t.b * t.c);
    assert_near(signed_area(moved), area * factor, 2e-4 * MAX(factor, 1));
  }
}

/* Arcs stay arcs where circles stay circles. */
static void
test_arcs(void **state) {
  (void) state;
  g_autoptr(SpvPath) path = pie();
  const SpvTransform even[] = { spv_transform_place(2.5, 0.7, spv_point(3, -2)), SPV_TRANSFORM_MIRROR,
                                spv_transform_compose(spv_transform_place(0.3, -2, spv_point(0, 9)),
                                                      SPV_TRANSFORM_MIRROR) };
  for (guint i = 0; i < G_N_ELEMENTS(even); i++) {
    g_autoptr(SpvPath) moved = spv_path_transform(path, even[i]);
    g_autoptr(GPtrArray) rings = spv_path_flatten(moved, 1e-5), before = spv_path_flatten(path, 1e-5);
    const SpvRing *ring = g_ptr_array_index(rings, 0), *was = g_ptr_array_index(before, 0);
    assert_int_equal(count(moved, SPV_PATH_ARC), 1);
    for (gsize k = 0; k < was->n_points; k++)
      assert_true(distance_to_ring(spv_transform_point(even[i], was->points[k]), ring) < 1e-4);
  }
  /* An ellipse of curves strays by less than 1e-4 of its radius. */
  g_autoptr(SpvPath) circle = spv_path_new_circle(spv_point(2, 3), 1);
  g_autoptr(SpvPath) oval = spv_path_transform(circle, (SpvTransform){ 4, 0, 0, 2, 0, 0 });
  g_autoptr(GPtrArray) rings = spv_path_flatten(oval, 1e-6);
  const SpvRing *ring = g_ptr_array_index(rings, 0);
  assert_int_equal(count(oval, SPV_PATH_ARC), 0);
  for (gsize k = 0; k < ring->n_points; k++)
    assert_near(hypot((ring->points[k].x - 8) / 4, (ring->points[k].y - 6) / 2), 1, 1e-5);
}

/* Backwards twice is the same path; backwards once fills the same with the other sign. */
static void
test_reversing(void **state) {
  (void) state;
  g_autoptr(SpvPath) one = pie();
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_path(builder, one);
  spv_path_builder_move(builder, spv_point(20, 20)); /* an open run, and one of a single point */
  spv_path_builder_line(builder, spv_point(22, 20));
  spv_path_builder_line(builder, spv_point(22, 23));
  spv_path_builder_move(builder, spv_point(30, 30));
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  g_autoptr(SpvPath) back = spv_path_reverse(path);
  g_autoptr(SpvPath) again = spv_path_reverse(back);
  gsize n, m;
  const SpvPathStep *a = spv_path_steps(path, &n), *b = spv_path_steps(again, &m);
  assert_near(signed_area(back), -signed_area(path), 1e-6);
  assert_int_equal(n, m);
  for (gsize i = 0; i < n; i++) {
    assert_int_equal(a[i].op, b[i].op);
    assert_point(b[i].to, a[i].to.x, a[i].to.y);
  }
}

/* A hole mirrored is a hole. */
static void
test_a_mirrored_hole(void **state) {
  (void) state;
  g_autoptr(SpvPath) disc = spv_path_new_circle(spv_point(9, 9), 5);
  g_autoptr(SpvPath) small = spv_path_new_circle(spv_point(9, 9), 3);
  g_autoptr(SpvPath) hole = spv_path_reverse(small);
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_path(builder, disc);
  spv_path_builder_path(builder, hole);
  g_autoptr(SpvPath) ring = spv_path_builder_build(builder);
  g_autoptr(SpvPath) image = spv_path_transform(ring, SPV_TRANSFORM_MIRROR);
  g_autoptr(SpvShape) shape = spv_shape_new_from_path(image);
  assert_near(spv_shape_area(shape), 16 * G_PI, 0.05);
  assert_false(spv_shape_contains(shape, spv_point(-9, 9)));
  assert_true(spv_shape_contains(shape, spv_point(-5, 9)));
}

/* Two open runs joined are one run with a line between them. */
static void
test_joining(void **state) {
  (void) state;
  SpvPathBuilder *second = spv_path_builder_new();
  spv_path_builder_move(second, spv_point(10, 10));
  spv_path_builder_line(second, spv_point(0, 10));
  g_autoptr(SpvPath) part = spv_path_builder_build(second);
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_move(builder, spv_point(0, 0));
  spv_path_builder_line(builder, spv_point(10, 0));
  spv_path_builder_join(builder, part);
  spv_path_builder_close(builder);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  assert_int_equal(count(path, SPV_PATH_MOVE), 1);
  assert_near(signed_area(path), 100, 1e-12);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_turns_and_places),
    cmocka_unit_test(test_composing_and_inverting),
    cmocka_unit_test(test_areas),
    cmocka_unit_test(test_arcs),
    cmocka_unit_test(test_reversing),
    cmocka_unit_test(test_a_mirrored_hole),
    cmocka_unit_test(test_joining),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
