/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures: their own unit, any path as a charge, and how small a figure may be. Expected values are closed
 * forms of the figures' own measures. */
#include "support/near.h"

#include "heraldry/arrange.h"
#include "heraldry/figure-private.h"
#include "heraldry/figure.h"

static SpvPattern
path_charge(const char *data) {
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_PATH_CHARGE);
  pattern.texts[0] = data;
  return pattern;
}

static double
figure_area(SpvPattern pattern) {
  g_autoptr(SpvPath) path = spv_figure_path(&pattern);
  g_autoptr(SpvShape) shape = spv_shape_new_from_path(path);
  return spv_shape_area(shape);
}

/* The box of PATH's chords, within 1e-8. */
static SpvBox
chords_box(const SpvPath *path) {
  g_autoptr(GPtrArray) rings = spv_path_flatten(path, 1e-8);
  SpvBox box = spv_ring_bounds(g_ptr_array_index(rings, 0));
  for (guint i = 1; i < rings->len; i++)
    box = spv_box_join(box, spv_ring_bounds(g_ptr_array_index(rings, i)));
  return box;
}

static void
assert_box_near(SpvBox a, SpvBox b, double tolerance) {
  assert_near(a.x0, b.x0, tolerance);
  assert_near(a.y0, b.y0, tolerance);
  assert_near(a.x1, b.x1, tolerance);
  assert_near(a.y1, b.y1, tolerance);
}

static void
bounds_are_those_of_the_curves_themselves(void **state) {
  g_autoptr(GRand) random = g_rand_new_with_seed(1603);
  (void) state;
  for (int round = 0; round < 300; round++) {
    SpvPathBuilder *builder = spv_path_builder_new();
    for (int run = 0; run < 3; run++) {
      SpvPoint p[4];
      for (int i = 0; i < 4; i++)
        p[i] = spv_point(g_rand_double_range(random, -1, 1), g_rand_double_range(random, -1, 1));
      spv_path_builder_move(builder, p[0]);
      spv_path_builder_curve(builder, p[1], p[2], p[3]);
      spv_path_builder_arc(builder, p[2], g_rand_double_range(random, 0.1, 1),
                           g_rand_double_range(random, -7, 7), g_rand_double_range(random, -6.2, 6.2));
      spv_path_builder_close(builder);
    }
    g_autoptr(SpvPath) path = spv_path_builder_build(builder);
    assert_box_near(spv_figure_bounds(path), chords_box(path), 1e-7);
  }
}

static void
a_straight_curve_has_the_bounds_of_its_ends(void **state) {
  SpvPathBuilder *builder = spv_path_builder_new();
  (void) state;
  spv_path_builder_move(builder, spv_point(0, 0));
  spv_path_builder_curve(builder, spv_point(1, 2), spv_point(2, 4), spv_point(3, 6));
  spv_path_builder_line(builder, spv_point(3, 0));
  spv_path_builder_close(builder);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  assert_box_near(spv_figure_bounds(path), (SpvBox){ 0, 0, 3, 6 }, 1e-12);
}

static void
any_path_is_brought_to_its_own_unit(void **state) {
  static const char *const paths[] = {
    "M0 0H40V20H0Z",
    "M1e-6 1e-6h4e-6v2e-6h-4e-6z",
    "M-1e6 7e5h400000v200000h-400000z",
    "M500 500M0 0H40V20H0Z",
  };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(paths); i++) {
    SpvPattern pattern = path_charge(paths[i]);
    g_autoptr(SpvPath) path = spv_figure_path(&pattern);
    assert_box_near(chords_box(path), (SpvBox){ -0.5, -0.25, 0.5, 0.25 }, 1e-9);
    assert_near(figure_area(pattern), 0.5, 1e-9);
  }
}

/* Which way round a path goes is nothing to SVG 1.1, 11.3, fill-rule nonzero. */
static void
a_path_is_filled_as_svg_fills_it(void **state) {
  (void) state;
  /* Counter-clockwise alone; a hole either way; an island in the hole. */
  assert_near(figure_area(path_charge("M0 0V10H10V0Z")), 1, 1e-9);
  assert_near(figure_area(path_charge("M0 0H10V10H0Z M2 2V8H8V2Z")), 0.64, 1e-9);
  assert_near(figure_area(path_charge("M0 0V10H10V0Z M2 2H8V8H2Z")), 0.64, 1e-9);
  assert_near(figure_area(path_charge("M0 0H10V10H0Z M2 2H8V8H2Z")), 1, 1e-9);
  assert_near(figure_area(path_charge("M0 0H10V10H0Z M2 2V8H8V2Z M4 4H6V6H4Z")), 0.68, 1e-9);
  /* Two squares, side by side, that go round opposite ways. */
  assert_near(figure_area(path_charge("M0 0H4V4H0Z M6 0V4H10V0Z")), 0.32, 1e-9);
}

static void
a_path_without_area_is_an_empty_figure(void **state) {
  static const char *const paths[] = { "M0 0L10 10", "M0 0Z", "M5 5H9H5Z", "", "M0 0 nonsense" };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(paths); i++) {
    SpvPattern pattern = path_charge(paths[i]);
    g_autoptr(SpvPath) path = spv_figure_path(&pattern);
    assert_true(spv_path_is_empty(path));
    assert_near(spv_figure_smallest(&pattern, 0.25), 0, 0);
  }
}

static void
a_path_charge_without_a_path_shows_its_preset(void **state) {
  (void) state;
  assert_true(figure_area(path_charge(NULL)) > 0);
}

/* The narrowest place of the figure of DATA, of its greater side. */
static double
narrowest(const char *data) {
  SpvPattern pattern = path_charge(data);
  return 1 / spv_figure_smallest(&pattern, 1);
}

static void
strokes_decide_how_small_a_figure_may_be(void **state) {
  (void) state;
  /* A bar; a T of two limbs; a waist. */
  assert_near(narrowest("M0 0H100V12H0Z"), 0.12, 1e-9);
  assert_near(narrowest("M0 0H100V20H60V100H44V20H0Z"), 0.16, 1e-3);
  assert_near(narrowest("M0 0H100L55 50L100 100H0L45 50Z"), 0.1 * 0.9, 0.02);
  /* Two bars far apart: the narrower one. */
  assert_near(narrowest("M0 0H100V18H0Z M0 89H100V100H0Z"), 0.11, 1e-3);
}

static void
gaps_decide_as_strokes_do(void **state) {
  (void) state;
  /* A round hole; a slit between two parts; a deep notch; a short one, as a crenel is; a mouth. */
  assert_near(narrowest("M0 0H100V100H0Z M44 50A6 6 0 0 0 56 50A6 6 0 0 0 44 50Z"), 0.12, 2e-3);
  assert_near(narrowest("M0 0H100V45H0Z M0 53H100V100H0Z"), 0.08, 2e-3);
  assert_near(narrowest("M0 0H40V60H50V0H100V100H0Z"), 0.1, 2e-3);
  assert_near(narrowest("M0 0H40V11H50V0H100V100H0Z"), 0.1, 6e-3);
  assert_near(narrowest("M0 0H46V20H30V70H70V20H54V0H100V100H0Z"), 0.08, 2e-3);
}

static void
tips_and_wedges_are_no_strokes(void **state) {
  (void) state;
  /* What isn't convex needs four lines, whatever it shows. */
  assert_near(narrowest("M0 0L50 40L100 0V100H0Z"), 0.25, 1e-9);
  assert_near(narrowest("M50 0L70 60H100V100H0V60H30Z"), 0.25, 1e-9);
}

static void
the_smallest_size_goes_by_the_line(void **state) {
  SpvPattern annulet = spv_pattern_preset(SPV_PATTERN_ANNULET);
  SpvPattern roundel = spv_pattern_preset(SPV_PATTERN_ROUNDEL);
  (void) state;
  /* A wall of (1 − 0.55) ÷ 2 of the diameter. */
  assert_near(spv_figure_smallest(&annulet, 0.25), 0.25 / 0.225, 0.01);
  assert_near(spv_figure_smallest(&annulet, 0.5) / spv_figure_smallest(&annulet, 0.25), 2, 1e-12);
  annulet.measures[SPV_CHARGE_OWN] = (SpvMeasure){ SPV_UNIT_PLAIN, 10 };
  assert_near(spv_figure_smallest(&annulet, 0.25), 2.5, 0.04);
  /* A dot is as large as its brush. */
  assert_near(spv_figure_smallest(&roundel, 0.25), 0.25, 1e-3);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(bounds_are_those_of_the_curves_themselves),
    cmocka_unit_test(a_straight_curve_has_the_bounds_of_its_ends),
    cmocka_unit_test(any_path_is_brought_to_its_own_unit),
    cmocka_unit_test(a_path_is_filled_as_svg_fills_it),
    cmocka_unit_test(a_path_without_area_is_an_empty_figure),
    cmocka_unit_test(a_path_charge_without_a_path_shows_its_preset),
    cmocka_unit_test(strokes_decide_how_small_a_figure_may_be),
    cmocka_unit_test(gaps_decide_as_strokes_do),
    cmocka_unit_test(tips_and_wedges_are_no_strokes),
    cmocka_unit_test(the_smallest_size_goes_by_the_line),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
