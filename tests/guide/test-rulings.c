/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rulings against hand-made figures: offsets, chords, ends inside the panel, and names. */
#include "support/near.h"

#include "guide/design.h"

static const SpvRuling *
ruling(const SpvGuide *guide, guint number) {
  assert_true(number >= 1 && number <= guide->rulings->len);
  return &g_array_index(guide->rulings, SpvRuling, number - 1);
}

static void
columns_and_rows_add_up_to_the_panel(void **state) {
  SpvLayer *layers[] = { design_check(7, 5) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 11.3, 7.9, layers, 1);
  double x = -11.3 / 2, y = 0, width = 0, height = 0;

  (void) state;
  assert_int_equal(guide->rulings->len, 6 + 4);
  for (guint i = 0; i < 6; i++) {
    const SpvRuling *column = ruling(guide, i + 1);

    assert_int_equal(column->number, i + 1);
    assert_int_equal(column->kind, SPV_LINE_COLUMN);
    assert_int_equal(column->index, i + 1);
    assert_near(column->ends[0].at.x, column->ends[1].at.x, 1e-9);
    assert_near(column->ends[0].at.y, 0, 1e-9);
    assert_near(column->ends[1].at.y, 7.9, 1e-9);
    assert_near(column->ends[0].at.x - x, 11.3 / 7, 1e-9);
    width += column->ends[0].at.x - x;
    x = column->ends[0].at.x;
  }
  assert_near(width + (11.3 / 2 - x), 11.3, 1e-9);
  for (guint i = 0; i < 4; i++) {
    const SpvRuling *row = ruling(guide, i + 7);

    assert_int_equal(row->kind, SPV_LINE_ROW);
    assert_int_equal(row->index, i + 1);
    assert_near(row->ends[0].at.x, -11.3 / 2, 1e-9);
    assert_near(row->ends[1].at.x, 11.3 / 2, 1e-9);
    height += row->ends[0].at.y - y;
    y = row->ends[0].at.y;
  }
  assert_near(height + (7.9 - y), 7.9, 1e-9);
}

static void
offsets_on_a_rectangle_by_hand(void **state) {
  /* 8 wide, 6 high, parted per pale 1 to sinister of the centre line and per fess 1 below the middle. */
  SpvLayer *pale = spv_layer_new("pale", SPV_PATTERN_PER_PALE, "argent", "vert");
  SpvLayer *fess = spv_layer_new("fess", SPV_PATTERN_PER_FESS, "sable", NULL);
  SpvLayer *layers[] = { design_set(pale, "shift", SPV_UNIT_MM, 1),
                         design_set(fess, "shift", SPV_UNIT_MM, 1) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 8, 6, layers, 2);
  const SpvRuling *upright = ruling(guide, 1), *level = ruling(guide, 2);

  (void) state;
  assert_int_equal(guide->rulings->len, 2);
  assert_int_equal(upright->layer, 0);
  assert_int_equal(upright->ends[0].edge, SPV_EDGE_CHIEF);
  assert_near(upright->ends[0].along, 5, 1e-9);
  assert_near(upright->ends[0].from_datum, 1, 1e-9);
  assert_int_equal(upright->ends[1].edge, SPV_EDGE_BASE);
  assert_near(upright->ends[1].along, 5, 1e-9);
  assert_near(upright->ends[1].from_datum, 4 + 6 + 3, 1e-9);

  assert_int_equal(level->layer, 1);
  assert_int_equal(level->ends[0].edge, SPV_EDGE_DEXTER);
  assert_near(level->ends[0].along, 4, 1e-9);
  assert_near(level->ends[0].from_datum, -(4 + 4), 1e-9);
  assert_int_equal(level->ends[1].edge, SPV_EDGE_SINISTER);
  assert_near(level->ends[1].along, 4, 1e-9);
  assert_near(level->ends[1].from_datum, 4 + 4, 1e-9);
}

static void
a_bend_runs_from_corner_to_corner(void **state) {
  SpvLayer *bend[] = { spv_layer_new("bend", SPV_PATTERN_PER_BEND, "argent", "vert") };
  SpvLayer *sinister[] = { spv_layer_new("bend", SPV_PATTERN_PER_BEND_SINISTER, "argent", "vert") };
  g_autoptr(SpvGuide) down = design_guide(SPV_OUTLINE_RECTANGLE, 8, 6, bend, 1);
  g_autoptr(SpvGuide) up = design_guide(SPV_OUTLINE_RECTANGLE, 8, 6, sinister, 1);

  (void) state;
  assert_int_equal(down->rulings->len, 1);
  assert_near(ruling(down, 1)->ends[0].at.x, -4, 1e-6);
  assert_near(ruling(down, 1)->ends[0].at.y, 0, 1e-6);
  assert_near(ruling(down, 1)->ends[1].at.x, 4, 1e-6);
  assert_near(ruling(down, 1)->ends[1].at.y, 6, 1e-6);
  assert_near(fabs(ruling(down, 1)->ends[0].from_datum), 4, 1e-6);
  assert_int_equal(up->rulings->len, 1);
  assert_near(ruling(up, 1)->ends[0].at.x, -4, 1e-6);
  assert_near(ruling(up, 1)->ends[0].at.y, 6, 1e-6);
  assert_near(ruling(up, 1)->ends[1].at.y, 0, 1e-6);
}

static void
a_chevron_ends_at_its_apex(void **state) {
  SpvLayer *layer = spv_layer_new("chevron", SPV_PATTERN_PER_CHEVRON, "argent", "vert");

  layer = design_set(layer, "apex", SPV_UNIT_MM, 2);
  layer = design_set(layer, "angle", SPV_UNIT_DEGREES, 90);
  SpvLayer *layers[] = { layer };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 6, 9, layers, 1);
  const SpvRuling *dexter = ruling(guide, 1), *sinister = ruling(guide, 2);

  (void) state;
  /* The legs fall by 3 over half the width of 3; the apex is 2 below the datum, nearest to the
   * chief there. */
  assert_int_equal(guide->rulings->len, 2);
  assert_near(dexter->ends[0].at.x, -3, 1e-9);
  assert_near(dexter->ends[0].at.y, 5, 1e-9);
  assert_int_equal(dexter->ends[0].edge, SPV_EDGE_DEXTER);
  assert_near(dexter->ends[1].at.x, 0, 1e-9);
  assert_near(dexter->ends[1].at.y, 2, 1e-9);
  assert_int_equal(dexter->ends[1].edge, SPV_EDGE_CHIEF);
  assert_near(dexter->ends[1].from_datum, 0, 1e-9);
  assert_near(sinister->ends[0].at.x, 0, 1e-9);
  assert_near(sinister->ends[1].at.x, 3, 1e-9);
  assert_near(sinister->ends[1].along, 5, 1e-9);
}

static void
rulings_on_a_disc_are_its_chords(void **state) {
  /* c = 2·sqrt(h(2r - h)): Machinery's Handbook, 31st ed., p. 79. Ends lie at arcs of r·acos(1 - h/r). */
  SpvLayer *layer = spv_layer_new("fess", SPV_PATTERN_PER_FESS, "argent", "vert");
  SpvLayer *layers[] = { design_set(layer, "shift", SPV_UNIT_MM, -8) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_DISC, 24, 24, layers, 1);
  const SpvRuling *level = ruling(guide, 1);
  double chord = 2 * sqrt(4 * (24 - 4.0));

  (void) state;
  assert_int_equal(guide->rulings->len, 1);
  assert_near(level->ends[1].at.x - level->ends[0].at.x, chord, 5e-3);
  assert_near(level->ends[1].from_datum, 12 * acos(1 - 4.0 / 12), 5e-3);
  assert_near(level->ends[0].from_datum, -12 * acos(1 - 4.0 / 12), 5e-3);
}

static void
a_notch_parts_a_ruling(void **state) {
  /* A banner with two tails is concave at its foot: a level line through the tails has two chords. */
  SpvOutlineSpec spec;
  g_autoptr(SpvPanel) panel = NULL, laid = NULL;
  g_autoptr(SpvScheme) scheme = NULL, changed = NULL;
  SpvLayer *layers[] = { design_set(spv_layer_new("fess", SPV_PATTERN_PER_FESS, "argent", "vert"), "shift",
                                    SPV_UNIT_MM, 9.9) };

  (void) state;
  scheme = design_new(SPV_OUTLINE_RECTANGLE, 12, 20, layers, 1);
  spv_outline_spec_preset(SPV_OUTLINE_BANNER, 12, 20, &spec);
  spec.own[0] = 5;
  panel = spv_panel_with_outline(scheme->panels[0], &spec);
  changed = spv_scheme_with_panel(scheme, 0, panel);
  g_autoptr(SpvComposition) composition = spv_compose(changed, 0);
  g_autoptr(SpvGuide) guide = spv_guide_new(composition);

  assert_int_equal(guide->rulings->len, 2);
  assert_int_equal(ruling(guide, 1)->index, 1);
  assert_int_equal(ruling(guide, 2)->index, 1);
  assert_int_equal(ruling(guide, 2)->number, 2);
  assert_true(ruling(guide, 1)->ends[1].at.x < 0);
  assert_true(ruling(guide, 2)->ends[0].at.x > 0);
  assert_near(ruling(guide, 1)->ends[1].at.x, -ruling(guide, 2)->ends[0].at.x, 1e-9);
}

static void
a_line_beside_the_panel_rules_nothing(void **state) {
  SpvLayer *layers[] = {
    design_set(spv_layer_new("pale", SPV_PATTERN_PER_PALE, "argent", "vert"), "shift", SPV_UNIT_MM, 4.5),
    design_set(spv_layer_new("pale2", SPV_PATTERN_PER_PALE, "argent", "vert"), "shift", SPV_UNIT_MM, 4),
  };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 8, 6, layers, 2);

  (void) state;
  assert_int_equal(guide->rulings->len, 0);
}

static void
rulings_have_names(void **state) {
  g_autofree char *column = spv_ruling_name(&(SpvRuling){ .kind = SPV_LINE_COLUMN, .index = 3 });
  g_autofree char *row = spv_ruling_name(&(SpvRuling){ .kind = SPV_LINE_ROW, .index = 2 });
  g_autofree char *division = spv_ruling_name(&(SpvRuling){ .kind = SPV_LINE_DIVISION, .index = 1 });

  (void) state;
  assert_string_equal(column, "column 3");
  assert_string_equal(row, "row 2");
  assert_string_equal(division, "division 1");
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(columns_and_rows_add_up_to_the_panel),  cmocka_unit_test(offsets_on_a_rectangle_by_hand),
    cmocka_unit_test(a_bend_runs_from_corner_to_corner),     cmocka_unit_test(a_chevron_ends_at_its_apex),
    cmocka_unit_test(rulings_on_a_disc_are_its_chords),      cmocka_unit_test(a_notch_parts_a_ruling),
    cmocka_unit_test(a_line_beside_the_panel_rules_nothing), cmocka_unit_test(rulings_have_names),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
