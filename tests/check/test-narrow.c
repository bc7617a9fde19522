/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Narrow strokes against closed forms: how narrow, whose, where, and whether the remedy mends. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include "check/findings.h"

/* Nothing to find. */

static void
what_a_hand_can_paint_gives_no_finding(void **state) {
  SpvLayer *layers[] = { columns_of(6), points_of(5, 1, 0.5) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 9, 9, layers, 2);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  /* The border cuts cells, but no whole cell is narrow. */
  assert_int_equal(count_warnings(findings), 0);
  for (guint i = 0; i < findings->len; i++)
    assert_int_equal(nth(findings, i)->cause, SPV_CAUSE_COVER);
}

static void
as_wide_as_the_line_is_wide_enough(void **state) {
  /* Every stroke is 0.25 mm, to the last figure that can be measured. */
  SpvLayer *designs[][2] = {
    { columns_of(12), NULL },
    { stripes_of(SPV_PATTERN_PALY, 12), NULL },
    { stripes_of(SPV_PATTERN_BARRY, 12), NULL },
    { design_field("argent"), points_of(4, 1, 0.25) },
    { design_field("argent"),
      design_set(spv_layer_new("bordure", SPV_PATTERN_BORDURE, "sable", NULL), "width", SPV_UNIT_MM, 0.25) },
    { design_field("argent"), roundel_of("roundel", 0, 1.5, 0.25) },
    { design_field("argent"),
      design_set(spv_layer_new("chief", SPV_PATTERN_CHIEF, "sable", NULL), "depth", SPV_UNIT_MM, 0.25) },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(designs); i++) {
    g_autoptr(SpvScheme)
        scheme = design_new(SPV_OUTLINE_RECTANGLE, 3, 3, designs[i], designs[i][1] != NULL ? 2 : 1);
    g_autoptr(GPtrArray) findings = findings_of(scheme);

    assert_int_equal(findings->len, 0);
  }
}

/* Check. */

static void
narrow_cells_are_found_with_the_most_columns_that_would_do(void **state) {
  SpvLayer *layers[] = { columns_of(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 2);
  for (guint i = 0; i < 2; i++) {
    const SpvFinding *finding = nth(findings, i);

    assert_int_equal(finding->kind, SPV_FINDING_NARROW_STROKE);
    assert_int_equal(finding->severity, SPV_SEVERITY_WARNING);
    assert_int_equal(finding->cause, SPV_CAUSE_PATTERN);
    assert_int_equal(finding->panel, 0);
    assert_int_equal(finding->layer, 0);
    assert_int_equal(finding->tincture, i == 0 ? ARGENT : SABLE);
    assert_close(finding->width, 0.2, MEASURED);
    assert_true(finding->limit == 0.25);
    assert_int_equal(finding->count, 72);
    /* 2.4 mm hold nine cells of 0.25 mm or more, and not ten. */
    assert_says(finding, scheme, "Cells are 0.20 mm wide; your line is 0.25 mm.", "Nine columns would do.");
    assert_mends(finding, scheme);
  }
  assert_int_equal(count_warnings_with(scheme, 0, "columns", SPV_UNIT_PLAIN, 10), 2);
}

static void
the_place_lies_in_a_cell_of_the_finding(void **state) {
  SpvLayer *layers[] = { columns_of(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  for (guint i = 0; i < findings->len; i++) {
    int index = spv_composition_pick(composition, nth(findings, i)->place);
    const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, index);

    assert_true(index >= 0);
    assert_int_equal(laid->tincture, nth(findings, i)->tincture);
  }
}

static void
a_cell_that_was_given_is_widened(void **state) {
  SpvLayer *layers[] = { design_set(columns_of(7), "cell", SPV_UNIT_MM, 0.2) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);
  int cell = spv_pattern_measure_index(SPV_PATTERN_CHECK, "cell");

  (void) state;
  assert_true(findings->len > 0);
  assert_says(nth(findings, 0), scheme, "Cells are 0.20 mm wide; your line is 0.25 mm.",
              "Cells of 0.25 mm would do.");
  assert_int_equal(nth(findings, 0)->remedy.measure, cell);
  assert_int_equal(nth(findings, 0)->remedy.value.unit, SPV_UNIT_MM);
  assert_mends(nth(findings, 0), scheme);
}

static void
rows_are_thinned_when_they_are_the_narrow_ones(void **state) {
  SpvLayer *layers[] = { design_set(columns_of(4), "rows", SPV_UNIT_PLAIN, 20) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 4, 4, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(count_warnings(findings), 2);
  assert_says(nth(findings, 0), scheme, "Cells are 0.20 mm wide; your line is 0.25 mm.", "16 rows would do.");
  assert_mends(nth(findings, 0), scheme);
}

static void
cells_that_the_edge_cuts_are_one_note(void **state) {
  SpvLayer *layers[] = { columns_of(9) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_DISC, 9, 9, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 2);
  for (guint i = 0; i < findings->len; i++) {
    const SpvFinding *finding = nth(findings, i);
    g_autofree char *message = spv_finding_message(finding, scheme);

    assert_int_equal(finding->severity, SPV_SEVERITY_NOTE);
    assert_int_equal(finding->cause, SPV_CAUSE_EDGE);
    assert_false(finding->has_remedy);
    assert_true(finding->width < 0.25);
    assert_true(g_str_has_prefix(message, "Cells at the edge are 0."));
    assert_true(hypot(finding->place.x, finding->place.y - 4.5) > 4);
    /* The grid and the disc are the same to dexter and to sinister. */
    assert_true(finding->count > 0 && finding->count % 2 == 0);
  }
}

static void
cells_that_a_later_layer_cuts_are_a_note(void **state) {
  /* A bar of the second column, 0.1 wide, is all that a chief 0.9 deep leaves of the first row of 1 mm. */
  SpvLayer *layers[] = { design_set(columns_of(4), "rows", SPV_UNIT_PLAIN, 4),
                         design_set(spv_layer_new("chief", SPV_PATTERN_CHIEF, "vert", NULL), "depth",
                                    SPV_UNIT_MM, 0.9) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 4, 4, layers, 2);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 2);
  assert_int_equal(nth(findings, 0)->severity, SPV_SEVERITY_NOTE);
  assert_int_equal(nth(findings, 0)->layer, 0);
  assert_int_equal(nth(findings, 0)->count, 2);
  assert_says(nth(findings, 1), scheme, "Cells beside a later layer are 0.10 mm wide; your line is 0.25 mm.",
              "Paint the later layer over it.");
}

/* Stripes. */

static void
stripes_give_their_closed_form(void **state) {
  static const struct {
    SpvPatternKind kind;
    int pieces, remedy;
    double width; /* of one of them */
  } worked[] = {
    { SPV_PATTERN_PALY, 20, 16, 4.0 / 20 },
    { SPV_PATTERN_BARRY, 20, 12, 3.0 / 20 },
    /* From corner to corner of 4 by 3, at the slope 3/4: the panel reaches 4 · 3/5 + 3 · 4/5 across the
       stripes. */
    { SPV_PATTERN_BENDY, 24, 19, 4.8 / 24 },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(worked); i++) {
    SpvLayer *layers[] = { stripes_of(worked[i].kind, worked[i].pieces) };
    g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 4, 3, layers, 1);
    g_autoptr(GPtrArray) findings = findings_of(scheme);
    g_autofree char *message = spv_finding_message(nth(findings, 0), scheme);

    assert_int_equal(count_warnings(findings), 2);
    assert_close(nth(findings, 0)->width, worked[i].width, MEASURED);
    assert_true(g_str_has_prefix(message, "Stripes are "));
    assert_true(nth(findings, 0)->remedy.value.value == worked[i].remedy);
    assert_mends(nth(findings, 0), scheme);
    assert_int_equal(count_warnings_with(scheme, 0, "pieces", SPV_UNIT_PLAIN, worked[i].remedy + 1) > 0,
                     TRUE);
  }
}

static void
the_corner_of_a_bend_is_as_wide_as_its_largest_disc(void **state) {
  /* A right triangle of legs a has the incircle of diameter a (2 - sqrt 2); a = 0.4 and 0.5 lie on either
     side of 0.25. */
  static const double legs[] = { 0.4, 0.5 };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(legs); i++) {
    SpvLayer *bend = spv_layer_new("bend", SPV_PATTERN_PER_BEND, "argent", "sable");

    bend = design_set(bend, "angle", SPV_UNIT_DEGREES, 45);
    SpvLayer *layers[] = { design_set(bend, "shift", SPV_UNIT_MM, 10 - legs[i]) };
    g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 10, 10, layers, 1);
    g_autoptr(GPtrArray) findings = findings_of(scheme);

    assert_int_equal(findings->len, i == 0 ? 1 : 0);
    if (i > 0)
      continue;
    assert_close(nth(findings, 0)->width, 0.4 * (2 - G_SQRT2), 0.002);
    assert_int_equal(nth(findings, 0)->tincture, ARGENT);
    assert_close(nth(findings, 0)->place.x, 5 - 0.2 * (2 - G_SQRT2), 0.01);
    assert_close(nth(findings, 0)->place.y, 0.2 * (2 - G_SQRT2), 0.01);
    assert_false(nth(findings, 0)->has_remedy);
    assert_says(nth(findings, 0), scheme, "Per bend is 0.23 mm at its narrowest; your line is 0.25 mm.",
                "Widen it, or leave it out.");
  }
}

/* Borders and ordinaries. */

/* The largest disc in a point of BASE and DEPTH: an isosceles triangle's incircle, diameter 4A/P. */
static double
point_width(double base, double depth) {
  return 4 * (base * depth / 2) / (base + 2 * hypot(base / 2, depth));
}

static void
points_are_as_wide_as_their_largest_disc(void **state) {
  SpvLayer *layers[] = { design_field("argent"), points_of(36, 0.6, 0) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 10, 8, layers, 2);
  g_autoptr(GPtrArray) findings = findings_of(scheme);
  const SpvFinding *finding = nth(findings, 0);
  int most = 36;

  (void) state;
  while (point_width(10.0 / most, 0.6) < 0.25)
    most--;
  assert_int_equal(findings->len, 1);
  assert_int_equal(finding->layer, 1);
  assert_int_equal(finding->tincture, SABLE);
  assert_int_equal(finding->count, 36);
  assert_close(finding->width, point_width(10.0 / 36, 0.6), MEASURED);
  assert_int_equal(most, 30);
  assert_says(finding, scheme, "Points are 0.22 mm wide; your line is 0.25 mm.", "30 points would do.");
  assert_mends(finding, scheme);
}

static void
flat_points_are_deepened_when_that_is_the_smaller_change(void **state) {
  /* A depth of 0.4 would do for 24 points, a third more; or 16 points for a depth of 0.3, a third less. */
  SpvLayer *layers[] = { design_field("argent"), points_of(24, 0.3, 0) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 10, 8, layers, 2);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_true(point_width(10.0 / 24, 0.35) < 0.25 && point_width(10.0 / 24, 0.4) > 0.25);
  assert_true(point_width(10.0 / 17, 0.3) < 0.25 && point_width(10.0 / 16, 0.3) > 0.25);
  assert_int_equal(findings->len, 1);
  assert_says(nth(findings, 0), scheme, "Points are 0.22 mm wide; your line is 0.25 mm.",
              "A depth of 0.40 mm would do.");
  assert_mends(nth(findings, 0), scheme);
}

static void
strokes_of_one_tincture_that_meet_are_no_finding(void **state) {
  /* Two roundels of one tincture overlap by a hair: the neck between them is not painted as a stroke. */
  SpvLayer *layers[] = { design_field("argent"), roundel_of("one", -0.99, 4, 2),
                         roundel_of("two", 0.99, 4, 2) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 3);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 0);
}

static void
what_another_layer_of_the_tincture_widens_is_no_finding(void **state) {
  /* A chief 0.1 deep over a wide bar of its own tincture: 0.1 of a broad stroke. */
  SpvLayer *fess = spv_layer_new("fess", SPV_PATTERN_PER_FESS, "sable", "argent");
  SpvLayer *chief = spv_layer_new("chief", SPV_PATTERN_CHIEF, "sable", NULL);
  SpvLayer *layers[] = { fess, design_set(chief, "depth", SPV_UNIT_MM, 0.1) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 2);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 0);
}

static void
a_thin_band_asks_for_width_rather_than_for_fewer_points(void **state) {
  SpvLayer *layers[] = { design_field("argent"), points_of(6, 1, 0.1) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 10, 8, layers, 2);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 1);
  assert_close(nth(findings, 0)->width, 0.1, MEASURED);
  assert_says(nth(findings, 0), scheme, "The border is 0.10 mm wide under its points; your line is 0.25 mm.",
              "A width of 0.25 mm would do.");
  assert_mends(nth(findings, 0), scheme);
}

static void
bordure_chief_and_roundel_are_called_by_name(void **state) {
  static const struct {
    SpvPatternKind kind;
    const char *key, *message, *remedy;
    double value;
  } worked[] = {
    { SPV_PATTERN_BORDURE, "width", "Bordure is 0.15 mm at its narrowest; your line is 0.25 mm.",
      "A width of 0.25 mm would do.", 0.15 },
    { SPV_PATTERN_CHIEF, "depth", "Chief is 0.17 mm at its narrowest; your line is 0.25 mm.",
      "A depth of 0.25 mm would do.", 0.17 },
    { SPV_PATTERN_ROUNDEL, "diameter", "Roundel is 0.20 mm at its narrowest; your line is 0.25 mm.",
      "A diameter of 0.25 mm would do.", 0.2 },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(worked); i++) {
    SpvLayer *layers[] = { design_field("argent"),
                           design_set(spv_layer_new("ordinary", worked[i].kind, "sable", NULL), worked[i].key,
                                      SPV_UNIT_MM, worked[i].value) };
    g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 9, layers, 2);
    g_autoptr(GPtrArray) findings = findings_of(scheme);

    assert_int_equal(findings->len, 1);
    assert_says(nth(findings, 0), scheme, worked[i].message, worked[i].remedy);
    assert_mends(nth(findings, 0), scheme);
  }
}

static void
the_gap_between_two_charges_is_the_fields(void **state) {
  /* Two roundels, 2 across, with 0.15 between them. */
  SpvLayer *layers[] = { design_field("argent"), roundel_of("one", -1.075, 4, 2),
                         roundel_of("two", 1.075, 4, 2) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 3);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 1);
  assert_int_equal(nth(findings, 0)->layer, 0);
  assert_int_equal(nth(findings, 0)->tincture, ARGENT);
  assert_close(nth(findings, 0)->width, 0.15, MEASURED);
  assert_close(nth(findings, 0)->place.x, 0, 0.05);
  assert_close(nth(findings, 0)->place.y, 4, 0.05);
  assert_false(nth(findings, 0)->has_remedy);
  assert_int_equal(nth(findings, 0)->severity, SPV_SEVERITY_NOTE);
  assert_int_equal(nth(findings, 0)->cause, SPV_CAUSE_COVER);
  assert_says(nth(findings, 0), scheme, "Field is 0.15 mm wide beside a later layer; your line is 0.25 mm.",
              "Paint the later layer over it.");
}

/* Two halves of 4 by 8 and a chief that leaves only 0.1 of them. */
static void
what_a_later_layer_covers_is_painted_whole(void **state) {
  static const SpvPatternKind kinds[] = {
    SPV_PATTERN_FIELD,   SPV_PATTERN_PER_PALE, SPV_PATTERN_QUARTERLY,
    SPV_PATTERN_BORDURE, SPV_PATTERN_ROUNDEL,  SPV_PATTERN_JAGGED_BORDER
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(kinds); i++) {
    gboolean two = spv_pattern_info(kinds[i])->n_slots > 1;
    SpvLayer *below = spv_layer_new("below", kinds[i], "sable", two ? "argent" : NULL);
    double depth = 7.9;

    if (kinds[i] == SPV_PATTERN_ROUNDEL)
      below = design_set(design_set(below, "diameter", SPV_UNIT_MM, 5.8), "down", SPV_UNIT_MM, 5.05);
    else if (kinds[i] == SPV_PATTERN_JAGGED_BORDER)
      below = design_set(design_set(below, "width", SPV_UNIT_MM, 0.5), "depth", SPV_UNIT_MM, 0.8);
    SpvLayer *layers[] = { design_field("vert"), below,
                           design_set(spv_layer_new("chief", SPV_PATTERN_CHIEF, "vert", NULL), "depth",
                                      SPV_UNIT_MM, depth) };
    g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 3);
    g_autoptr(GPtrArray) findings = findings_of(scheme);
    guint covered = 0;

    assert_int_equal(count_warnings(findings), 0);
    for (guint j = 0; j < findings->len; j++)
      covered += nth(findings, j)->layer == 1 && nth(findings, j)->cause == SPV_CAUSE_COVER;
    assert_true(covered >= (kinds[i] == SPV_PATTERN_JAGGED_BORDER ? 0 : 1));
  }
}

/* A bordure 0.15 wide stays a warning, told by its own width, though a roundel leaves only 0.05 of it in
 * one place. */
static void
what_is_fine_by_itself_stays_a_warning_beside_a_later_layer(void **state) {
  /* The roundel of another tincture, and of the bordure's own. */
  for (guint i = 0; i < 2; i++) {
    SpvLayer *bordure = spv_layer_new("bordure", SPV_PATTERN_BORDURE, i == 0 ? "vert" : "sable", NULL);
    SpvLayer *layers[] = { design_field("argent"), design_set(bordure, "width", SPV_UNIT_MM, 0.15),
                           roundel_of("roundel", 0, 6.45, 3) };
    g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 3);
    g_autoptr(GPtrArray) findings = findings_of(scheme);
    const SpvFinding *finding = nth(findings, 0);

    assert_int_equal(finding->layer, 1);
    assert_int_equal(finding->severity, SPV_SEVERITY_WARNING);
    assert_int_equal(finding->cause, SPV_CAUSE_PATTERN);
    assert_close(finding->width, 0.15, MEASURED);
    assert_true(finding->has_remedy);
  }
  (void) state;
}

/* A roundel too fine for any hand lies under a later layer: nobody paints it. */
static void
what_a_later_layer_hides_is_no_finding(void **state) {
  SpvLayer *layers[] = { design_field("argent"), roundel_of("small", 0, 2, 0.1),
                         roundel_of("large", 0, 2, 3) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 3);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 0);
}

/* 36 points hide a speck that 30, which would do otherwise, bring to light between two of them. */
static void
a_remedy_uncovers_nothing_narrow(void **state) {
  SpvLayer *speck = roundel_of("speck", 0.9722, 7.94, 0.1);
  SpvLayer *layers[] = { design_field("argent"), spv_layer_with_tincture(speck, 0, "vert"),
                         points_of(36, 0.6, 0) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 10, 8, layers, 3);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 1);
  assert_int_equal(nth(findings, 0)->layer, 2);
  assert_true(count_warnings_with(scheme, 2, "points", SPV_UNIT_PLAIN, 30) > 0);
  assert_mends(nth(findings, 0), scheme);
  spv_layer_unref(speck);
}

static void
a_finer_line_finds_less(void **state) {
  SpvLayer *layers[] = { columns_of(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  g_autoptr(SpvScheme) finer = spv_scheme_with_finest_line(scheme, 0.19);
  g_autoptr(GPtrArray) findings = findings_of(finer);

  (void) state;
  assert_int_equal(findings->len, 0);
}

static void
a_width_is_never_said_to_be_the_line(void **state) {
  SpvFinding finding = { .kind = SPV_FINDING_NARROW_STROKE, .width = 0.2479, .limit = 0.25, .layer = 0 };
  SpvLayer *layers[] = { columns_of(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);

  (void) state;
  assert_says(&finding, scheme, "Cells are 0.24 mm wide; your line is 0.25 mm.",
              "Widen it, or leave it out.");
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(what_a_hand_can_paint_gives_no_finding),
    cmocka_unit_test(as_wide_as_the_line_is_wide_enough),
    cmocka_unit_test(narrow_cells_are_found_with_the_most_columns_that_would_do),
    cmocka_unit_test(the_place_lies_in_a_cell_of_the_finding),
    cmocka_unit_test(a_cell_that_was_given_is_widened),
    cmocka_unit_test(rows_are_thinned_when_they_are_the_narrow_ones),
    cmocka_unit_test(cells_that_the_edge_cuts_are_one_note),
    cmocka_unit_test(cells_that_a_later_layer_cuts_are_a_note),
    cmocka_unit_test(stripes_give_their_closed_form),
    cmocka_unit_test(the_corner_of_a_bend_is_as_wide_as_its_largest_disc),
    cmocka_unit_test(points_are_as_wide_as_their_largest_disc),
    cmocka_unit_test(flat_points_are_deepened_when_that_is_the_smaller_change),
    cmocka_unit_test(strokes_of_one_tincture_that_meet_are_no_finding),
    cmocka_unit_test(what_another_layer_of_the_tincture_widens_is_no_finding),
    cmocka_unit_test(a_thin_band_asks_for_width_rather_than_for_fewer_points),
    cmocka_unit_test(bordure_chief_and_roundel_are_called_by_name),
    cmocka_unit_test(the_gap_between_two_charges_is_the_fields),
    cmocka_unit_test(what_a_later_layer_covers_is_painted_whole),
    cmocka_unit_test(what_is_fine_by_itself_stays_a_warning_beside_a_later_layer),
    cmocka_unit_test(what_a_later_layer_hides_is_no_finding),
    cmocka_unit_test(a_remedy_uncovers_nothing_narrow),
    cmocka_unit_test(a_finer_line_finds_less),
    cmocka_unit_test(a_width_is_never_said_to_be_the_line),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
