/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What runs round the panel's edge: shares, widths, and what is laid on it. */
#include "measured.h"

/* A bordure is a fifth of the shield, read as its area (tests/reference/heraldry_proportions.csv), or
 * whatever share is asked for; Fox-Davies (1909) p. 138 gives no fixed width. */
static void
a_bordure_covers_its_share(void **state) {
  static const double shares[] = { 1, 20, 50, 80, 95 };

  (void) state;
  for (int f = 0; f < SPV_N_OUTLINE_FAMILIES; f++)
    for (gsize i = 0; i < G_N_ELEMENTS(shares); i++) {
      g_autoptr(SpvOutline) outline = panel_of((SpvOutlineFamily) f, 14, 17);
      SpvPattern bordure = spv_pattern_preset(SPV_PATTERN_BORDURE);
      if (shares[i] != 20)
        set(&bordure, "share", SPV_UNIT_PLAIN, shares[i]);
      double share = share_shown(&bordure, outline);
      if (!(fabs(share - shares[i] / 100) <= 1e-9))
        fail_msg("family %d, share %g: off by %g", f, shares[i], share - shares[i] / 100);
    }
}

/* On a rectangle a by b: w = (a + b − √((a + b)² − 4 ab s)) / 4 covers the share s. Plane geometry. */
static void
a_share_of_a_rectangle_by_formula(void **state) {
  g_autoptr(SpvOutline) outline = rectangle(30, 20);
  SpvPattern bordure = spv_pattern_preset(SPV_PATTERN_BORDURE);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&bordure, outline);
  double w = (50 - sqrt(2500 - 4 * 600 * 0.2)) / 4;

  (void) state;
  assert_near(draft->frame->breadth, w, 1e-8);
  /* Charges stand along the middle of it, all round. */
  assert_int_equal(draft->frame->spines->len, 1);
  const SpvTrack *spine = g_ptr_array_index(draft->frame->spines, 0);
  assert_true(spv_track_is_closed(spine));
  assert_near(spv_track_length(spine), 2 * (30 - w + 20 - w), 1e-7);
  assert_near(spv_track_at(spine, 0).x, 0, 1e-9);
  assert_near(spv_track_at(spine, 0).y, w / 2, 1e-9);
}

/* Plane geometry: two rectangles, one inside the other. */
static double
band_area(double inset, double width) {
  return (30 - 2 * inset) * (20 - 2 * inset) - (30 - 2 * (inset + width)) * (20 - 2 * (inset + width));
}

static void
orles_and_tressures_of_a_rectangle(void **state) {
  g_autoptr(SpvOutline) outline = rectangle(30, 20);
  SpvPattern orle = spv_pattern_preset(SPV_PATTERN_ORLE), tressure = spv_pattern_preset(SPV_PATTERN_TRESSURE);
  gsize n;

  (void) state;
  set(&orle, "width", SPV_UNIT_MM, 1.5);
  set(&orle, "inset", SPV_UNIT_MM, 2);
  assert_near(shown(&orle, outline), band_area(2, 1.5), 1e-6);

  set(&tressure, "width", SPV_UNIT_MM, 0.5);
  set(&tressure, "inset", SPV_UNIT_MM, 1);
  set(&tressure, "number", SPV_UNIT_PLAIN, 3);
  g_autoptr(SpvShape) three = shown_shape(&tressure, outline);
  assert_near(spv_shape_area(three), band_area(1, 0.5) + band_area(2, 0.5) + band_area(3, 0.5), 1e-6);
  spv_shape_pieces(three, &n);
  assert_int_equal(n, 3);
  set(&tressure, "apart", SPV_UNIT_MM, 2);
  assert_near(shown(&tressure, outline), band_area(1, 0.5) + band_area(3.5, 0.5) + band_area(6, 0.5), 1e-6);
  /* Those that have no room are left out. */
  set(&tressure, "number", SPV_UNIT_PLAIN, 50);
  assert_near(shown(&tressure, outline),
              band_area(1, 0.5) + band_area(3.5, 0.5) + band_area(6, 0.5) + band_area(8.5, 0.5), 1e-6);
}

/* Fox-Davies p. 141: an orle is half as wide as a bordure. */
static void
an_orle_is_half_a_bordure(void **state) {
  (void) state;
  for (int f = 0; f < SPV_N_OUTLINE_FAMILIES; f++) {
    g_autoptr(SpvOutline) outline = panel_of((SpvOutlineFamily) f, 14, 17);
    SpvPattern bordure = spv_pattern_preset(SPV_PATTERN_BORDURE), orle = spv_pattern_preset(SPV_PATTERN_ORLE);
    g_autoptr(SpvDraft) wide = spv_pattern_lay(&bordure, outline);
    g_autoptr(SpvDraft) narrow = spv_pattern_lay(&orle, outline);
    assert_near(narrow->frame->breadth, wide->frame->breadth / 2, 1e-9);
  }
}

static void
what_runs_round_is_symmetrical(void **state) {
  (void) state;
  for (int f = 0; f < SPV_N_OUTLINE_FAMILIES; f++)
    for (int kind = SPV_PATTERN_BORDURE; kind <= SPV_PATTERN_TRESSURE; kind++) {
      g_autoptr(SpvOutline) outline = panel_of((SpvOutlineFamily) f, 14, 17);
      SpvPattern one = spv_pattern_preset((SpvPatternKind) kind), other = one;
      other.mirrored = TRUE;
      g_autoptr(SpvShape) a = shown_shape(&one, outline), b = shown_shape(&other, outline);
      assert_false(spv_shape_is_empty(a));
      assert_true(difference_of(a, b) < 1e-4 * spv_shape_area(spv_outline_shape(outline)));
    }
}

static void
no_measures_bring_it_down(void **state) {
  (void) state;
  lay_at_random(SPV_PATTERN_JAGGED_BORDER, SPV_PATTERN_TRESSURE, 60);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(a_bordure_covers_its_share),         cmocka_unit_test(a_share_of_a_rectangle_by_formula),
    cmocka_unit_test(orles_and_tressures_of_a_rectangle), cmocka_unit_test(an_orle_is_half_a_bordure),
    cmocka_unit_test(what_runs_round_is_symmetrical),     cmocka_unit_test(no_measures_bring_it_down),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
