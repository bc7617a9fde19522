/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Guides against hand-made figures: numbering, spacing, offsets, what is left out, and how lengths
 * are said. */
#include "support/near.h"

#include <locale.h>
#include <string.h>

#include "guide/design.h"

static const SpvDot *
dot(const SpvGuide *guide, guint number) {
  assert_true(number >= 1 && number <= guide->dots->len);
  return &g_array_index(guide->dots, SpvDot, number - 1);
}

/* Lengths. */

static void
rounds_to_what_calipers_set(void **state) {
  static const struct {
    double mm, rounded;
  } worked[] = {
    { 0, 0 },       { 0.024, 0 },      { 0.025, 0.05 }, { 0.075, 0.1 },  { 0.125, 0.15 },
    { 0.175, 0.2 }, { 1.37, 1.35 },    { 1.375, 1.4 },  { 1.38, 1.4 },   { 12.34, 12.35 },
    { -0.024, 0 },  { -0.025, -0.05 }, { -1.38, -1.4 }, { 99.975, 100 }, { 0.1 + 0.2, 0.3 },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(worked); i++)
    assert_near(spv_guide_round(worked[i].mm), worked[i].rounded, 1e-12);
  /* A half that sums have left a hair short is a half. */
  assert_near(spv_guide_round(0.005 * 5 - 1e-15), 0.05, 1e-12);
  assert_false(signbit(spv_guide_round(-0.01)));
}

static void
says_lengths_with_a_point_and_two_places(void **state) {
  static const struct {
    double mm;
    const char *said;
  } worked[] = {
    { 0, "0.00" },     { -0.01, "0.00" }, { -0.0, "0.00" },      { 1.4, "1.40" },
    { 1.376, "1.40" }, { -2.5, "-2.50" }, { 123.456, "123.45" },
  };
  const char *comma = setlocale(LC_ALL, "de_DE.UTF-8");

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(worked); i++) {
    g_autofree char *said = spv_guide_format(worked[i].mm);

    assert_string_equal(said, worked[i].said);
  }
  if (comma != NULL)
    setlocale(LC_ALL, "C.UTF-8");
  g_autofree char *huge = spv_guide_format(1e300);
  assert_int_equal(strlen(huge), 304);
}

/* Dots. */

static void
dots_of_the_base_by_hand(void **state) {
  /* A rectangle 12 by 8, three points 1 deep on its base: tips 4 apart at x = -4, 0, 4; roots at -6, -2,
   * 2, 6. */
  SpvLayer *layers[] = { design_field("argent"), design_border(2, 3, 1) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 12, 8, layers, 2);

  (void) state;
  assert_int_equal(guide->dots->len, 7);
  assert_int_equal(guide->rulings->len, 0);
  for (guint i = 0; i < 3; i++) {
    const SpvDot *tip = dot(guide, i + 1);

    assert_int_equal(tip->number, i + 1);
    assert_int_equal(tip->layer, 1);
    assert_int_equal(tip->kind, SPV_DOT_TIP);
    assert_int_equal(tip->edge, SPV_EDGE_BASE);
    assert_near(tip->at.x, -4 + 4.0 * i, 1e-9);
    assert_near(tip->at.y, 7, 1e-9);
    assert_near(tip->along, 2 + 4.0 * i, 1e-9);
  }
  for (guint i = 0; i < 4; i++) {
    const SpvDot *root = dot(guide, i + 4);

    assert_int_equal(root->kind, SPV_DOT_ROOT);
    assert_int_equal(root->edge, SPV_EDGE_BASE);
    assert_near(root->at.x, -6 + 4.0 * i, 1e-9);
    assert_near(root->at.y, 8, 1e-9);
    assert_near(root->along, 4.0 * i, 1e-9);
  }
  /* Round by the sinister side: 6 + 8 + 2 to the tip that stands farthest to sinister. */
  assert_near(dot(guide, 3)->from_datum, 16, 1e-9);
  assert_near(dot(guide, 1)->from_datum, -16, 1e-9);
  assert_near(dot(guide, 7)->from_datum, 14, 1e-9);
}

static void
dots_of_the_sides_come_from_the_top(void **state) {
  (void) state;
  for (int edge = 1; edge <= 3; edge += 2) {
    SpvLayer *layers[] = { design_border(edge, 4, 1) };
    g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 12, 8, layers, 1);

    assert_int_equal(guide->dots->len, 9);
    for (guint i = 0; i < 4; i++) {
      assert_near(dot(guide, i + 1)->at.y, 1 + 2.0 * i, 1e-9);
      assert_near(dot(guide, i + 1)->at.x, edge == 1 ? -5 : 5, 1e-9);
      assert_near(dot(guide, i + 1)->along, 1 + 2.0 * i, 1e-9);
      assert_int_equal(dot(guide, i + 1)->edge, edge == 1 ? SPV_EDGE_DEXTER : SPV_EDGE_SINISTER);
    }
    for (guint i = 0; i < 5; i++) {
      assert_near(dot(guide, i + 5)->along, 2.0 * i, 1e-9);
      assert_int_equal(dot(guide, i + 5)->edge, edge == 1 ? SPV_EDGE_DEXTER : SPV_EDGE_SINISTER);
    }
  }
}

static void
dots_of_the_chief_come_from_dexter(void **state) {
  SpvLayer *layers[] = { design_border(0, 5, 1) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 10, 8, layers, 1);

  (void) state;
  assert_int_equal(guide->dots->len, 11);
  for (guint i = 0; i < 5; i++) {
    assert_near(dot(guide, i + 1)->at.x, -4 + 2.0 * i, 1e-9);
    assert_near(dot(guide, i + 1)->from_datum, -4 + 2.0 * i, 1e-9);
    assert_int_equal(dot(guide, i + 1)->edge, SPV_EDGE_CHIEF);
  }
  assert_near(dot(guide, 6)->along, 0, 1e-9);
  assert_near(dot(guide, 11)->along, 10, 1e-9);
  assert_int_equal(dot(guide, 6)->edge, SPV_EDGE_CHIEF);
  assert_int_equal(dot(guide, 11)->edge, SPV_EDGE_CHIEF);
}

static void
dots_round_a_disc_stand_at_equal_angles(void **state) {
  enum { N = 16 };
  SpvLayer *layers[] = { design_field("argent"), design_border(4, N, 1.2) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_DISC, 20, 20, layers, 2);

  (void) state;
  assert_int_equal(guide->dots->len, 2 * N);
  for (guint i = 0; i < N; i++) {
    const SpvDot *tip = dot(guide, i + 1);
    const SpvDot *root = dot(guide, N + i + 1);
    /* Clockwise on screen from the datum, which is at the top of the circle. */
    double tip_angle = atan2(tip->at.x, 10 - tip->at.y);
    double root_angle = atan2(root->at.x, 10 - root->at.y);

    assert_near(remainder(tip_angle - (i + 0.5) * 2 * G_PI / N, 2 * G_PI), 0, 1e-3);
    assert_near(remainder(root_angle - i * 2 * G_PI / N, 2 * G_PI), 0, 1e-3);
    assert_near(hypot(tip->at.x, tip->at.y - 10), 8.8, 2e-3);
    assert_near(hypot(root->at.x, root->at.y - 10), 10, 2e-3);
  }
  /* One run of tips and one of roots, spaced by the circumference over their number. */
  assert_int_equal(guide->runs->len, 2);
  for (guint i = 0; i < 2; i++)
    assert_near(g_array_index(guide->runs, SpvDotRun, i).spacing, 20 * G_PI / N, 1e-3);
}

static void
the_zigzag_through_the_dots_has_its_length(void **state) {
  /* Closed form for n equal points of depth d over a length L: the edge is 2n·sqrt((L/2n)² + d²) long, and
     the area under it L·d/2. */
  enum { N = 7 };
  const double length = 15, depth = 1.3;
  SpvLayer *layers[] = { design_border(2, N, depth) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, length, 8, layers, 1);
  double edge = 0, area = 0;

  (void) state;
  assert_int_equal(guide->dots->len, 2 * N + 1);
  for (guint i = 0; i < N; i++) {
    SpvPoint before = dot(guide, N + 1 + i)->at, tip = dot(guide, 1 + i)->at,
             after = dot(guide, N + 2 + i)->at;

    edge += spv_point_distance(before, tip) + spv_point_distance(tip, after);
    area += (after.x - before.x) * (8 - tip.y) / 2;
  }
  assert_near(edge, 2 * N * hypot(length / (2 * N), depth), 1e-9);
  assert_near(area, length * depth / 2, 1e-9);
}

static void
a_later_layer_hides_dots(void **state) {
  /* The sides' upper points lie under a chief 4 deep; a root that stands on the chief's own edge is seen. */
  SpvLayer *layers[] = { design_border(1, 4, 1),
                         design_set(spv_layer_new("chief", SPV_PATTERN_CHIEF, "vert", NULL), "depth",
                                    SPV_UNIT_MM, 4) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 12, 8, layers, 2);

  (void) state;
  assert_int_equal(guide->dots->len, 2 + 3);
  assert_near(dot(guide, 1)->at.y, 5, 1e-9);
  assert_near(dot(guide, 2)->at.y, 7, 1e-9);
  assert_near(dot(guide, 3)->at.y, 4, 1e-9);
  assert_int_equal(guide->runs->len, 2);
  assert_int_equal(g_array_index(guide->runs, SpvDotRun, 0).first, 1);
  assert_int_equal(g_array_index(guide->runs, SpvDotRun, 0).last, 2);
  assert_int_equal(g_array_index(guide->runs, SpvDotRun, 1).first, 3);
  assert_int_equal(g_array_index(guide->runs, SpvDotRun, 1).last, 5);
}

static void
a_hidden_dot_parts_its_run(void **state) {
  /* A roundel over the third of five tips. */
  SpvLayer *roundel = spv_layer_new("roundel", SPV_PATTERN_ROUNDEL, "vert", NULL);

  roundel = design_set(roundel, "across", SPV_UNIT_MM, 0);
  roundel = design_set(roundel, "down", SPV_UNIT_MM, 7);
  roundel = design_set(roundel, "diameter", SPV_UNIT_MM, 1);
  SpvLayer *layers[] = { design_border(2, 5, 1), roundel };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 10, 8, layers, 2);

  (void) state;
  assert_int_equal(guide->dots->len, 10);
  assert_int_equal(guide->runs->len, 3);
  for (guint i = 0; i < 2; i++) {
    const SpvDotRun *run = &g_array_index(guide->runs, SpvDotRun, i);

    assert_int_equal(run->kind, SPV_DOT_TIP);
    assert_int_equal(run->first, 1 + 2 * i);
    assert_int_equal(run->last, 2 + 2 * i);
    assert_near(run->spacing, 2, 1e-9);
  }
}

static void
a_bordure_hides_the_roots_on_the_panels_edge(void **state) {
  SpvLayer *layers[] = { design_border(2, 4, 2),
                         design_set(spv_layer_new("bordure", SPV_PATTERN_BORDURE, "vert", NULL), "width",
                                    SPV_UNIT_MM, 0.5) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 12, 8, layers, 2);

  (void) state;
  assert_int_equal(guide->dots->len, 4);
  for (guint i = 0; i < 4; i++)
    assert_int_equal(dot(guide, i + 1)->kind, SPV_DOT_TIP);
}

static void
dots_outside_the_panel_are_left_out(void **state) {
  /* Points deeper than the panel is high have their tips beyond it; the roots stand on the edge, and stay. */
  SpvLayer *layers[] = { design_border(2, 3, 9) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 12, 8, layers, 1);

  (void) state;
  assert_int_equal(guide->dots->len, 4);
  for (guint i = 0; i < 4; i++)
    assert_int_equal(dot(guide, i + 1)->kind, SPV_DOT_ROOT);
}

static void
hidden_and_untinctured_layers_mark_nothing(void **state) {
  g_autoptr(SpvLayer) given = design_border(2, 3, 1);
  g_autoptr(SpvLayer) hidden = spv_layer_with_hidden(given, TRUE);
  g_autoptr(SpvLayer) untinctured = spv_layer_with_tincture(given, 0, NULL);
  SpvLayer *layers[] = { spv_layer_with_id(hidden, "hidden"), spv_layer_with_id(untinctured, "untinctured"),
                         spv_layer_new("pale", SPV_PATTERN_PER_PALE, NULL, NULL),
                         spv_layer_with_locked(given, TRUE) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 12, 8, layers, 4);

  (void) state;
  /* A lock keeps a layer from change, not from being painted. */
  assert_int_equal(guide->dots->len, 7);
  assert_int_equal(dot(guide, 1)->layer, 3);
  assert_int_equal(guide->rulings->len, 0);
}

static void
numbers_run_on_over_the_layers(void **state) {
  g_autoptr(SpvLayer) chief = design_border(0, 2, 1);
  SpvLayer *layers[] = { spv_layer_with_id(chief, "upper"), design_border(2, 3, 1) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_RECTANGLE, 12, 8, layers, 2);

  (void) state;
  assert_int_equal(guide->dots->len, 5 + 7);
  for (guint i = 0; i < guide->dots->len; i++) {
    assert_int_equal(dot(guide, i + 1)->number, i + 1);
    assert_int_equal(dot(guide, i + 1)->layer, i < 5 ? 0 : 1);
  }
  assert_int_equal(guide->runs->len, 4);
}

static SpvGuide *
guide_of_much(void) {
  SpvLayer *layers[] = { design_check(9, 9), design_border(4, 21, 0.7) };

  return design_guide(SPV_OUTLINE_DISC, 11, 11, layers, 2);
}

static void
the_same_design_gives_the_same_guide(void **state) {
  g_autoptr(SpvGuide) one = guide_of_much();
  g_autoptr(SpvGuide) other = guide_of_much();

  (void) state;
  assert_true(one->dots->len > 0 && one->rulings->len > 0);
  assert_int_equal(one->dots->len, other->dots->len);
  assert_int_equal(one->rulings->len, other->rulings->len);
  for (guint i = 0; i < one->dots->len; i++) {
    assert_true(dot(one, i + 1)->at.x == dot(other, i + 1)->at.x);
    assert_true(dot(one, i + 1)->from_datum == dot(other, i + 1)->from_datum);
  }
}

/* On a disc the row's ends stand on the flanks, not on the base: the run is still read as the base is. */
static void
a_straight_row_is_numbered_from_dexter(void **state) {
  SpvLayer *layers[] = { design_set(design_set(design_border(2, 6, 1), "width", SPV_UNIT_MM, 3), "row",
                                    SPV_UNIT_PLAIN, 1) };
  g_autoptr(SpvGuide) guide = design_guide(SPV_OUTLINE_DISC, 8, 8, layers, 1);

  (void) state;
  assert_int_equal(guide->dots->len, 13);
  assert_int_equal(dot(guide, 7)->edge, SPV_EDGE_DEXTER);
  assert_int_equal(dot(guide, 13)->edge, SPV_EDGE_SINISTER);
  for (guint i = 1; i < 13; i++)
    if (dot(guide, i)->kind == dot(guide, i + 1)->kind)
      assert_true(dot(guide, i)->at.x < dot(guide, i + 1)->at.x);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(rounds_to_what_calipers_set),
    cmocka_unit_test(says_lengths_with_a_point_and_two_places),
    cmocka_unit_test(dots_of_the_base_by_hand),
    cmocka_unit_test(dots_of_the_sides_come_from_the_top),
    cmocka_unit_test(dots_of_the_chief_come_from_dexter),
    cmocka_unit_test(dots_round_a_disc_stand_at_equal_angles),
    cmocka_unit_test(the_zigzag_through_the_dots_has_its_length),
    cmocka_unit_test(a_later_layer_hides_dots),
    cmocka_unit_test(a_hidden_dot_parts_its_run),
    cmocka_unit_test(a_bordure_hides_the_roots_on_the_panels_edge),
    cmocka_unit_test(dots_outside_the_panel_are_left_out),
    cmocka_unit_test(hidden_and_untinctured_layers_mark_nothing),
    cmocka_unit_test(numbers_run_on_over_the_layers),
    cmocka_unit_test(a_straight_row_is_numbered_from_dexter),
    cmocka_unit_test(the_same_design_gives_the_same_guide),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
