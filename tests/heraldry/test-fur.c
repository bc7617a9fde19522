/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Furs: equal shares, rows as they should lie, and the smallest pitch that a line holds. */
#include "support/near.h"

#include "geometry/width.h"
#include "heraldry/fur.h"

static SpvOutline *
rectangle(double width, double height) {
  SpvOutlineSpec spec = { SPV_OUTLINE_RECTANGLE, width, height, { 0, 0 } };
  return spv_outline_new(&spec);
}

static SpvShape *
spots_on(SpvFur fur, double pitch, const SpvOutline *outline) {
  g_autoptr(SpvPath) path = spv_fur_spots(fur, pitch, outline);
  g_autoptr(SpvShape) all = spv_shape_new_from_path(path);
  return spv_shape_intersection(spv_outline_shape(outline), all);
}

static void
furs_are_known_by_their_keys(void **state) {
  SpvFur fur;

  (void) state;
  for (int i = SPV_FUR_NONE + 1; i < SPV_N_FURS; i++) {
    assert_true(spv_fur_from_key(spv_fur_key((SpvFur) i), &fur));
    assert_int_equal(fur, i);
  }
  assert_null(spv_fur_key(SPV_FUR_NONE));
  assert_false(spv_fur_from_key("mink", &fur));
  assert_false(spv_fur_from_key(NULL, &fur));
}

/* Vair and potent are skins of two tinctures sewn side by side: on whole periods both cover the same area. */
static void
vair_and_potent_are_half_and_half(void **state) {
  static const SpvFur furs[] = { SPV_FUR_VAIR, SPV_FUR_COUNTER_VAIR, SPV_FUR_POTENT };
  g_autoptr(SpvOutline) panel = rectangle(12, 8);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(furs); i++) {
    g_autoptr(SpvShape) spots = spots_on(furs[i], 2, panel);
    assert_near(spv_shape_area(spots), 48, 1e-7);
  }
}

/* Whether a flattened curve might run either side of POINT. */
static gboolean
is_at_edge(const SpvPath *path, SpvPoint point) {
  gboolean inside = spv_path_contains(path, point);

  for (int i = 0; i < 8; i++) {
    SpvPoint off = { 0.004 * cos(i * G_PI / 4), 0.004 * sin(i * G_PI / 4) };
    if (spv_path_contains(path, spv_point_add(point, off)) != inside)
      return TRUE;
  }
  return FALSE;
}

static gboolean
same_at(const SpvPath *path, SpvPoint a, SpvPoint b) {
  return spv_path_contains(path, a) == spv_path_contains(path, b) || is_at_edge(path, a);
}

/* Every row goes on from bell to bell; the next row lies half a bell further (vair and potent, so that like
 * is under unlike, and ermine, a half-drop), or is the mirror image of this one (counter-vair, like under
 * like: base to base). */
static void
rows_lie_as_they_should(void **state) {
  static const struct {
    SpvFur fur;
    double shift, row;
  } rows[] = { { SPV_FUR_ERMINE, 0.5, 0.75 }, { SPV_FUR_VAIR, 0.5, 1 }, { SPV_FUR_POTENT, 0.5, 0.5 } };
  g_autoptr(SpvOutline) panel = rectangle(12, 12);
  g_autoptr(GRand) rand = g_rand_new_with_seed(9);
  double pitch = 3;

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autoptr(SpvPath) spots = spv_fur_spots(rows[i].fur, pitch, panel);
    for (int k = 0; k < 60; k++) {
      SpvPoint at = { g_rand_double_range(rand, -6, 4), g_rand_double_range(rand, 1, 9) };
      assert_true(same_at(spots, at, spv_point(at.x + pitch, at.y)));
      assert_true(same_at(spots, at, spv_point(at.x + rows[i].shift * pitch, at.y + rows[i].row * pitch)));
      assert_true(same_at(spots, at, spv_point(-at.x, at.y)));
    }
  }
  g_autoptr(SpvPath) counter = spv_fur_spots(SPV_FUR_COUNTER_VAIR, pitch, panel);
  for (int k = 0; k < 60; k++) {
    SpvPoint at = { g_rand_double_range(rand, -6, 4), g_rand_double_range(rand, 0, 2 * pitch) };
    assert_true(same_at(counter, at, spv_point(at.x + pitch, at.y)));
    assert_true(same_at(counter, at, spv_point(at.x, at.y + 2 * pitch)));
    /* The second row starts a pitch down. */
    assert_true(same_at(counter, at, spv_point(at.x, 2 * pitch - at.y)));
  }
}

/* Half-turned about the middle of its side, a bell is a bell of the ground. */
static void
the_ground_has_the_same_shape_upside_down(void **state) {
  static const struct {
    SpvFur fur;
    double row;
  } furs[] = { { SPV_FUR_VAIR, 1 }, { SPV_FUR_COUNTER_VAIR, 1 }, { SPV_FUR_POTENT, 0.5 } };
  g_autoptr(SpvOutline) panel = rectangle(16, 4);
  g_autoptr(GRand) rand = g_rand_new_with_seed(10);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(furs); i++) {
    g_autoptr(SpvPath) spots = spv_fur_spots(furs[i].fur, 4, panel);
    for (int k = 0; k < 60; k++) {
      SpvPoint at = { g_rand_double_range(rand, -8, 8), g_rand_double_range(rand, 0.1, 4 * furs[i].row) };
      SpvPoint turned = { 2 - at.x, 4 * furs[i].row - at.y };
      assert_true(is_at_edge(spots, at) || !same_at(spots, at, turned));
    }
  }
}

/* Vair: a bell of one tincture stands on one of the other; counter-vair: on one of its own. In both it comes
 * to a point at the top, on the centre line. */
static void
bells_point_up(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(12, 12);
  g_autoptr(SpvPath) vair = spv_fur_spots(SPV_FUR_VAIR, 4, panel);
  g_autoptr(SpvPath) counter = spv_fur_spots(SPV_FUR_COUNTER_VAIR, 4, panel);

  (void) state;
  assert_true(spv_path_contains(vair, spv_point(0, 0.1)));
  assert_false(spv_path_contains(vair, spv_point(0.5, 0.1)));
  assert_true(spv_path_contains(vair, spv_point(1.8, 3.95)));
  assert_false(spv_path_contains(vair, spv_point(0, 4.1)));
  assert_true(spv_path_contains(counter, spv_point(0, 4.1)));
  assert_true(spv_path_contains(counter, spv_point(1.8, 4.05)));
}

/* One spot is three dots and a tail; two columns by two rows of whole ones on a patch of that size. */
static void
ermine_is_three_dots_over_a_tail(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(4, 4.8);
  g_autoptr(SpvShape) spots = spots_on(SPV_FUR_ERMINE, 4, panel);
  gsize n, whole = 0;

  (void) state;
  spv_shape_pieces(spots, &n);
  for (gsize i = 0; i < n; i++) {
    g_autoptr(SpvShape) piece = spv_shape_piece(spots, i);
    SpvBox box = spv_shape_bounds(piece);
    whole += fabs(box.x0 + box.x1) < 1e-9 || (box.x0 > -1 && box.x1 < 1);
  }
  assert_int_equal(whole, 4);
}

static double
narrowest(const SpvShape *shape, double enough) {
  gsize n;

  spv_shape_pieces(shape, &n);
  for (gsize i = 0; i < n; i++)
    enough = MIN(enough, spv_piece_narrowest(shape, i, enough, NULL));
  return enough;
}

/* The narrowest of what spots, and the ground that they leave, come to at PITCH; ENOUGH where that is less.
 */
static double
ermine_at(double pitch, double enough) {
  g_autoptr(SpvOutline) patch = rectangle(pitch, pitch);
  g_autoptr(SpvPath) path = spv_fur_spots(SPV_FUR_ERMINE, pitch, patch);
  g_autoptr(SpvShape) spots = spv_shape_new_from_path(path);
  g_autoptr(SpvPath) margin = spv_path_new_box(spv_box_grow(spv_shape_bounds(spots), pitch));
  g_autoptr(SpvShape) around = spv_shape_new_from_path(margin);
  g_autoptr(SpvShape) ground = spv_shape_difference(around, spots);
  return narrowest(ground, narrowest(spots, enough));
}

static void
the_smallest_pitch_of_ermine_is_the_smallest(void **state) {
  double line = 0.25, pitch = spv_fur_smallest_pitch(SPV_FUR_ERMINE, line);

  (void) state;
  assert_true(ermine_at(pitch, 1.1 * line) >= line - 0.002);
  assert_true(ermine_at(0.97 * pitch, 1.1 * line) < line);
  assert_near(spv_fur_smallest_pitch(SPV_FUR_ERMINE, 2 * line), 2 * pitch, 1e-9);
}

/* How wide the spot about POINT is, which lies on its middle; it is known to be less than WIDEST. */
static double
width_at(const SpvPath *spots, SpvPoint point, double widest) {
  double in = 0, out = widest / 2;

  while (out - in > 1e-6) {
    double middle = (in + out) / 2;
    *(spv_path_contains(spots, spv_point(point.x + middle, point.y)) ? &in : &out) = middle;
  }
  return in + out;
}

/* A bell is narrowest at its neck, half way down its row; a crutch at its stem, three quarters down. The
 * ground between is of the same shape. */
static void
the_smallest_pitch_of_vair_and_potent_is_the_smallest(void **state) {
  static const struct {
    SpvFur fur;
    double down;
  } strokes[] = { { SPV_FUR_VAIR, 0.5 }, { SPV_FUR_COUNTER_VAIR, 0.5 }, { SPV_FUR_POTENT, 0.375 } };
  double line = 0.25;

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(strokes); i++) {
    double pitch = spv_fur_smallest_pitch(strokes[i].fur, line);
    for (int k = 0; k < 2; k++) {
      double used = k == 0 ? pitch : 0.97 * pitch;
      g_autoptr(SpvOutline) patch = rectangle(3 * used, 3 * used);
      g_autoptr(SpvPath) spots = spv_fur_spots(strokes[i].fur, used, patch);
      double width = width_at(spots, spv_point(0, strokes[i].down * used), used);
      assert_true(k == 0 ? width >= line : width < line);
    }
    assert_near(spv_fur_smallest_pitch(strokes[i].fur, 2 * line), 2 * pitch, 1e-9);
  }
}

static void
spots_reach_past_the_panel(void **state) {
  (void) state;
  for (int family = 0; family < SPV_N_OUTLINE_FAMILIES; family++) {
    SpvOutlineSpec spec;
    spv_outline_spec_preset((SpvOutlineFamily) family, 7, family == SPV_OUTLINE_DISC ? 7 : 5, &spec);
    g_autoptr(SpvOutline) outline = spv_outline_new(&spec);
    SpvBox box = spv_outline_bounds(outline);
    for (int fur = SPV_FUR_NONE + 1; fur < SPV_N_FURS; fur++) {
      g_autoptr(SpvPath) spots = spv_fur_spots((SpvFur) fur, 1.3, outline);
      SpvBox covered = spv_path_bounds(spots);
      assert_true(covered.x0 < box.x0 && covered.y0 < box.y0 && covered.x1 > box.x1 && covered.y1 > box.y1);
    }
  }
}

static void
spots_finer_than_any_brush_are_bounded(void **state) {
  static const double sizes[][2] = { { 500, 500 }, { 500, 0.5 }, { 0.5, 500 } };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(sizes); i++) {
    g_autoptr(SpvOutline) panel = rectangle(sizes[i][0], sizes[i][1]);
    g_autoptr(SpvPath) spots = spv_fur_spots(SPV_FUR_VAIR, 1e-4, panel);
    gsize n;
    spv_path_steps(spots, &n);
    assert_true(n > 10000 && n <= 40000 * 8);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(furs_are_known_by_their_keys),
    cmocka_unit_test(vair_and_potent_are_half_and_half),
    cmocka_unit_test(rows_lie_as_they_should),
    cmocka_unit_test(the_ground_has_the_same_shape_upside_down),
    cmocka_unit_test(bells_point_up),
    cmocka_unit_test(ermine_is_three_dots_over_a_tail),
    cmocka_unit_test(the_smallest_pitch_of_ermine_is_the_smallest),
    cmocka_unit_test(the_smallest_pitch_of_vair_and_potent_is_the_smallest),
    cmocka_unit_test(spots_reach_past_the_panel),
    cmocka_unit_test(spots_finer_than_any_brush_are_bounded),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
