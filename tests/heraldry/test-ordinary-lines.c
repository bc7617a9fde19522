/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lines of partition on ordinaries: which edges bear them, and that they leave each in one piece. */
#include "measured.h"

/* Where the upper and the lower edge of KIND with LINE lie at X on a square of side 10. */
static void
edges_at(SpvPatternKind kind, const char *line, double x, double inside, double *upper, double *lower) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern pattern = one_of(kind, FALSE);
  int index = spv_pattern_measure_index(kind, "line");
  const char *const *choices = spv_pattern_info(kind)->measures[index].choices;
  guint choice = 0;

  while (!g_str_equal(choices[choice], line))
    choice++;
  set(&pattern, "line", SPV_UNIT_PLAIN, choice);
  set(&pattern, "pitch", SPV_UNIT_MM, 2);
  set(&pattern, "amplitude", SPV_UNIT_MM, 1);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, square);
  SpvPoint at = { x, inside };
  assert_true(spv_path_contains(draft->area[0], at));
  *upper = inside - reach_from(draft->area[0], at, spv_point(0, -1));
  *lower = inside + reach_from(draft->area[0], at, spv_point(0, 1));
}

/* Fox-Davies (1909) pp. 93, 108: a fess and a chevron are embattled on the upper edge only, a chief on its
 * lower edge, a pale, a cross and a saltire on both; a fess wavy or dancetty has edges that run alike (p.
 * 94), one engrailed or indented edges that mirror each other. */
static void
lines_stand_on_the_edges_of_the_handbooks(void **state) {
  double upper, lower, other, low[2] = { INFINITY, INFINITY }, high[2] = { -INFINITY, -INFINITY };

  (void) state;
  for (double x = -4.93; x < 5; x += 0.1) {
    edges_at(SPV_PATTERN_FESS, "embattled", x, 5, &upper, &lower);
    assert_near(lower, 20.0 / 3, 1e-6);
    low[0] = MIN(low[0], upper);
    high[0] = MAX(high[0], upper);
    edges_at(SPV_PATTERN_CHIEF, "embattled", x, 1, &other, &lower);
    low[1] = MIN(low[1], lower);
    high[1] = MAX(high[1], lower);
    edges_at(SPV_PATTERN_FESS, "wavy", x, 5, &upper, &lower);
    assert_near(lower - upper, 10.0 / 3, 1e-6);
    edges_at(SPV_PATTERN_FESS, "engrailed", x, 5, &upper, &lower);
    assert_near(lower + upper, 10, 1e-6);
  }
  assert_near(low[0], 10.0 / 3 - 0.5, 1e-6);
  assert_near(high[0], 10.0 / 3 + 0.5, 1e-6);
  assert_near(low[1], 10.0 / 3 - 0.5, 1e-6);
  assert_near(high[1], 10.0 / 3 + 0.5, 1e-6);
}

/* Teeth make crests and troughs, but no crumbs and no holes: every line on every ordinary that is one piece
 * when plain, but for a dancetty one whose teeth are as deep as it is wide. */
static void
lines_leave_it_in_one_piece(void **state) {
  static const SpvPatternKind kinds[] = { SPV_PATTERN_FESS,    SPV_PATTERN_PALE,    SPV_PATTERN_BEND,
                                          SPV_PATTERN_CHEVRON, SPV_PATTERN_CROSS,   SPV_PATTERN_PALL,
                                          SPV_PATTERN_SALTIRE, SPV_PATTERN_QUARTER, SPV_PATTERN_CANTON,
                                          SPV_PATTERN_PILE,    SPV_PATTERN_GYRON,   SPV_PATTERN_CHIEF };
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);

  (void) state;
  for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++) {
    SpvPattern pattern = one_of(kinds[k], FALSE);
    int index = spv_pattern_measure_index(kinds[k], "line");
    for (guint line = 0; spv_pattern_info(kinds[k])->measures[index].choices[line]; line++) {
      gsize n, largest = 0;
      set(&pattern, "line", SPV_UNIT_PLAIN, line);
      g_autoptr(SpvShape) shape = shown_shape(&pattern, outline);
      const SpvPiece *pieces = spv_shape_pieces(shape, &n);
      double most = 0, whole = spv_shape_area(shape);
      for (gsize i = 0; i < n; i++)
        if (spv_ring_area(pieces[i].rings[0]) > most) {
          most = spv_ring_area(pieces[i].rings[0]);
          largest = i;
        }
      /* The panel's edge may cut a crest off from the rest. */
      if (g_str_equal(spv_pattern_info(kinds[k])->measures[index].choices[line], "dancetty"))
        continue;
      if (pieces[largest].n_rings != 1 || most < 0.93 * whole)
        fail_msg("%s %s: %zu pieces, the largest %g of %g, %zu rings", spv_pattern_info(kinds[k])->key,
                 spv_pattern_info(kinds[k])->measures[index].choices[line], n, most, whole,
                 pieces[largest].n_rings);
    }
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(lines_stand_on_the_edges_of_the_handbooks),
    cmocka_unit_test(lines_leave_it_in_one_piece),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
