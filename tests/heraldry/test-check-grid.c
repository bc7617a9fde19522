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

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(columns_fill_the_width_exactly),
    cmocka_unit_test(warennes_chequy_has_twenty_five_squares_of_forty_nine),
    cmocka_unit_test(the_offset_leaves_the_widest_cut_cells),
    cmocka_unit_test(across_a_line_or_a_cell_stands_on_the_centre_line),
    cmocka_unit_test(the_painter_can_centre_and_shift),
    cmocka_unit_test(cells_finer_than_any_brush_are_bounded),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
