/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Check: square cells, whole counts, and the offset that keeps the cells at the edge wide. */
#include "support/near.h"

#include "heraldry/pattern.h"

static SpvPattern
check(double columns, double cell_mm, double rows) {
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_CHECK);
  if (columns > 0)
    pattern.measures[0] = (SpvMeasure){ SPV_UNIT_PLAIN, columns };
  if (cell_mm > 0)
    pattern.measures[1] = (SpvMeasure){ SPV_UNIT_MM, cell_mm };
  if (rows > 0)
    pattern.measures[2] = (SpvMeasure){ SPV_UNIT_PLAIN, rows };
  return pattern;
}

static SpvOutline *
rectangle(double width, double height) {
  SpvOutlineSpec spec = { SPV_OUTLINE_RECTANGLE, width, height, { 0, 0 } };
  return spv_outline_new(&spec);
}

static guint
count_lines(const SpvDraft *draft, SpvLineKind kind) {
  guint n = 0;
  for (guint i = 0; i < draft->lines->len; i++)
    n += g_array_index(draft->lines, SpvDraftLine, i).kind == kind;
  return n;
}

static double
shown(const SpvDraft *draft, int slot, const SpvOutline *outline) {
  g_autoptr(SpvShape) seen = spv_shape_clip_cells(spv_outline_shape(outline), draft->cells[slot]);
  return spv_shape_area(seen);
}

static void
columns_fill_the_width_exactly(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(9, 6);
  SpvPattern pattern = check(12, 0, 8);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
  double last = -4.5;

  (void) state;
  assert_int_equal(count_lines(draft, SPV_LINE_COLUMN), 11);
  assert_int_equal(count_lines(draft, SPV_LINE_ROW), 7);
  assert_int_equal(draft->cells[0]->len + draft->cells[1]->len, 96);
  for (guint i = 0; i < 11; i++) {
    double x = g_array_index(draft->lines, SpvDraftLine, i).from.x;
    assert_near(x - last, 0.75, 1e-9);
    last = x;
  }
  /* No cell is cut. */
  assert_near(draft->smallest_partial, 0, 0);
  assert_near(shown(draft, 0, panel), 27, 1e-9);
  assert_near(shown(draft, 1, panel), 27, 1e-9);
}

/* Warenne, "Chequy or and azure" (Boutell ch. V no. 68; Britannica 9th ed.: usually seven squares across):
 * with 7 by 7 on a square field the tincture in dexter chief has 25 squares of 49, the other 24. */
static void
warennes_chequy_has_twenty_five_squares_of_forty_nine(void **state) {
  g_autoptr(SpvOutline) field = rectangle(7, 7);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_CHECK);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, field);

  (void) state;
  assert_int_equal(draft->cells[0]->len, 25);
  assert_int_equal(draft->cells[1]->len, 24);
  assert_near(shown(draft, 0, field), 25, 1e-9);
  assert_near(shown(draft, 1, field), 24, 1e-9);
}

/* Along one axis the best that can be done is known: with n whole cells of c and r left over, the two cut
 * cells share (r + c) evenly, or there is none cut. */
static void
the_offset_leaves_the_widest_cut_cells(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(7);

  (void) state;
  for (int round = 0; round < 60; round++) {
    double height = g_rand_double_range(rand, 3, 12), cell = g_rand_double_range(rand, 0.5, 1.5);
    double width = 6 * cell; /* nothing is cut across */
    g_autoptr(SpvOutline) panel = rectangle(width, height);
    SpvPattern pattern = check(6, 0, 0);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
    double over = fmod(height, cell), best = (over + cell) / 2;

    /* The search steps by a 128th of a cell. */
    assert_true(draft->smallest_partial >= best - cell / 128 - 1e-6);
    assert_true(draft->smallest_partial <= best + 1e-6);
  }
}

static void
across_a_line_or_a_cell_stands_on_the_centre_line(void **state) {
  SpvOutlineSpec spec = { SPV_OUTLINE_DISC, 8.5, 8.5, { 0, 0 } };
  g_autoptr(SpvOutline) disc = spv_outline_new(&spec);

  (void) state;
  for (double cell = 0.4; cell < 2; cell += 0.13) {
    SpvPattern pattern = check(0, cell, 0);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, disc);
    double x = g_array_index(draft->lines, SpvDraftLine, 0).from.x;
    double off = fmod(fabs(x), cell / 2);
    assert_true(MIN(off, cell / 2 - off) < 1e-9);
  }
}

static void
the_painter_can_centre_and_shift(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(10, 10);
  SpvPattern pattern = check(0, 2, 0);

  (void) state;
  pattern.measures[3] = (SpvMeasure){ SPV_UNIT_PLAIN, 1 }; /* line */
  {
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
    assert_near(g_array_index(draft->lines, SpvDraftLine, 0).from.x, -4, 1e-9);
    assert_near(draft->smallest_partial, 1, 1e-9);
  }
  pattern.measures[3] = (SpvMeasure){ SPV_UNIT_PLAIN, 2 }; /* cell */
  {
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
    assert_near(g_array_index(draft->lines, SpvDraftLine, 0).from.x, -3, 1e-9);
    assert_near(draft->smallest_partial, 0, 0);
  }
  pattern.measures[4] = (SpvMeasure){ SPV_UNIT_MM, 0.5 };
  {
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
    assert_near(g_array_index(draft->lines, SpvDraftLine, 0).from.x, -4.5, 1e-9);
    assert_near(draft->smallest_partial, 0.5, 1e-9);
  }
}

static void
cells_finer_than_any_brush_are_bounded(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(500, 500);
  SpvPattern pattern = check(0, 0.05, 0);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);

  (void) state;
  assert_true(draft->cells[0]->len + draft->cells[1]->len <= 201 * 201);
}

static SpvPattern
turned(SpvPattern pattern, double degrees) {
  pattern.measures[6] = (SpvMeasure){ SPV_UNIT_DEGREES, degrees };
  return pattern;
}

/* The slot at POINT; one of the two, and only one. */
static int
slot_at(const SpvDraft *draft, SpvPoint point) {
  gboolean first = spv_path_contains(draft->area[0], point);
  assert_true(first != spv_path_contains(draft->area[1], point));
  return first ? 0 : 1;
}

/* Along its own axis a square of side s, turned by 45 degrees, is s√2 wide: so many columns share that. */
static void
a_check_turned_by_half_a_right_angle(void **state) {
  g_autoptr(SpvOutline) square = rectangle(7, 7);
  SpvPattern pattern = turned(check(7, 0, 0), 45);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, square);
  g_autoptr(GRand) rand = g_rand_new_with_seed(45);
  double cell = sqrt(2);
  guint whole = 0;

  (void) state;
  assert_int_equal(count_lines(draft, SPV_LINE_COLUMN), 6);
  assert_int_equal(count_lines(draft, SPV_LINE_ROW), 6);
  assert_near(shown(draft, 0, square) + shown(draft, 1, square), 49, 1e-9);
  for (int slot = 0; slot < 2; slot++)
    for (guint i = 0; i < draft->cells[slot]->len; i++) {
      const SpvRing *ring = g_ptr_array_index(draft->cells[slot], i);
      assert_true(spv_ring_is_convex(ring));
      whole += fabs(spv_ring_area(ring) - cell * cell) < 1e-9;
    }
  /* All inner cells of 7 by 7 whose own box meets the panel. */
  assert_true(whole >= 13);
  /* A cell stands on the middle, its corners on the axes. */
  int middle = slot_at(draft, spv_point(0, 3.5));
  assert_int_equal(slot_at(draft, spv_point(0.99, 3.5)), middle);
  assert_int_equal(slot_at(draft, spv_point(0, 4.49)), middle);
  assert_int_equal(slot_at(draft, spv_point(0.9, 3.5 + 0.9)), 1 - middle);
  assert_int_equal(slot_at(draft, spv_point(1.5, 3.5)), middle);
  for (int i = 0; i < 300; i++) {
    SpvPoint at = { g_rand_double_range(rand, 0, 3.5), g_rand_double_range(rand, 0, 7) };
    assert_int_equal(slot_at(draft, at), slot_at(draft, spv_point(-at.x, at.y)));
  }
}

static void
a_turn_of_nothing_changes_nothing(void **state) {
  SpvOutlineSpec spec = { SPV_OUTLINE_DISC, 8.5, 8.5, { 0, 0 } };
  g_autoptr(SpvOutline) disc = spv_outline_new(&spec);
  SpvPattern straight = check(0, 1.1, 0), by_nothing = turned(straight, 0),
             by_little = turned(straight, 1e-9);
  straight.measures[3] = by_nothing.measures[3] = by_little.measures[3] = (SpvMeasure){ SPV_UNIT_PLAIN, 2 };
  straight.measures[6] = (SpvMeasure){ SPV_UNIT_AUTO, 0 };
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&straight, disc);
  g_autoptr(SpvDraft) same = spv_pattern_lay(&by_nothing, disc);
  g_autoptr(SpvDraft) nearly = spv_pattern_lay(&by_little, disc);
  gsize n, n_same;
  const SpvPathStep *steps = spv_path_steps(draft->area[0], &n);
  const SpvPathStep *same_steps = spv_path_steps(same->area[0], &n_same);

  (void) state;
  assert_int_equal(n, n_same);
  for (gsize i = 0; i < n; i++) {
    assert_near(same_steps[i].to.x, steps[i].to.x, 0);
    assert_near(same_steps[i].to.y, steps[i].to.y, 0);
  }
  assert_near(same->smallest_partial, draft->smallest_partial, 0);
  /* And hardly any turn hardly anything. */
  assert_int_equal(nearly->lines->len, draft->lines->len);
  for (int slot = 0; slot < 2; slot++)
    assert_near(shown(nearly, slot, disc), shown(draft, slot, disc), 1e-6);
  assert_near(nearly->smallest_partial, draft->smallest_partial, 1e-6);
}

/* By a right angle, the columns of a grid are counted down the panel. */
static void
a_check_turned_by_a_right_angle(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(4, 9);
  SpvPattern pattern = turned(check(6, 0, 2), 90);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);

  (void) state;
  assert_int_equal(count_lines(draft, SPV_LINE_COLUMN), 5);
  assert_int_equal(count_lines(draft, SPV_LINE_ROW), 1);
  assert_int_equal(draft->cells[0]->len + draft->cells[1]->len, 12);
  assert_near(shown(draft, 0, panel), 18, 1e-9);
  assert_int_equal(slot_at(draft, spv_point(1, 0.7)), slot_at(draft, spv_point(-1, 2.2)));
  assert_int_equal(slot_at(draft, spv_point(1, 0.7)), 1 - slot_at(draft, spv_point(-1, 0.7)));
}

/* Whatever the turn, the cells are shifted along the panel's own axes. */
static void
a_turned_check_shifts_towards_sinister_and_down(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(10, 10);
  g_autoptr(GRand) rand = g_rand_new_with_seed(31);

  (void) state;
  for (int round = 0; round < 20; round++) {
    SpvPattern still = turned(check(0, 1.7, 0), g_rand_double_range(rand, -89, 89)), shifted;
    double across = g_rand_double_range(rand, 0.1, 1), down = g_rand_double_range(rand, 0.1, 1);
    int differ = 0;
    still.measures[3] = (SpvMeasure){ SPV_UNIT_PLAIN, 2 };
    shifted = still;
    shifted.measures[4] = (SpvMeasure){ SPV_UNIT_MM, across };
    shifted.measures[5] = (SpvMeasure){ SPV_UNIT_MM, down };
    g_autoptr(SpvDraft) before = spv_pattern_lay(&still, panel);
    g_autoptr(SpvDraft) after = spv_pattern_lay(&shifted, panel);
    for (int i = 0; i < 50; i++) {
      SpvPoint at = { g_rand_double_range(rand, -4.9, 3.9), g_rand_double_range(rand, 0.1, 8.9) };
      differ += slot_at(before, at) != slot_at(after, spv_point(at.x + across, at.y + down));
    }
    /* All alike, or all exchanged: which cell is the first may change. */
    assert_true(differ == 0 || differ == 50);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(columns_fill_the_width_exactly),
    cmocka_unit_test(warennes_chequy_has_twenty_five_squares_of_forty_nine),
    cmocka_unit_test(the_offset_leaves_the_widest_cut_cells),
    cmocka_unit_test(across_a_line_or_a_cell_stands_on_the_centre_line),
    cmocka_unit_test(the_painter_can_centre_and_shift),
    cmocka_unit_test(cells_finer_than_any_brush_are_bounded),
    cmocka_unit_test(a_check_turned_by_half_a_right_angle),
    cmocka_unit_test(a_turn_of_nothing_changes_nothing),
    cmocka_unit_test(a_check_turned_by_a_right_angle),
    cmocka_unit_test(a_turned_check_shifts_towards_sinister_and_down),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
