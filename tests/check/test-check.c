/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Findings against closed forms: how narrow, whose, where, and whether the remedy mends. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include <locale.h>
#include <math.h>
#include <string.h>

#include "check/check.h"
#include "guide/design.h"

#define assert_close(a, b, within) assert_true(fabs((a) - (b)) < (within))

/* A width is measured to within 0.002 mm on a curve that is flattened to within 0.001 mm on either side. */
#define MEASURED 0.005

#define ARGENT 0
#define VERT 1
#define SABLE 2

static GPtrArray *
findings_of(const SpvScheme *scheme) {
  g_autoptr(GError) error = NULL;
  GPtrArray *findings = spv_check_panel(scheme, 0, NULL, &error);

  assert_null(error);
  assert_non_null(findings);
  return findings;
}

static const SpvFinding *
nth(const GPtrArray *findings, guint index) {
  assert_true(index < findings->len);
  return g_ptr_array_index(findings, index);
}

static guint
count_warnings(const GPtrArray *findings) {
  guint n = 0;

  for (guint i = 0; i < findings->len; i++)
    n += nth(findings, i)->severity == SPV_SEVERITY_WARNING;
  return n;
}

static void
assert_says(const SpvFinding *finding, const SpvScheme *scheme, const char *message, const char *remedy) {
  g_autofree char *said = spv_finding_message(finding, scheme);
  g_autofree char *advice = spv_finding_remedy(finding, scheme);

  assert_string_equal(said, message);
  if (remedy == NULL)
    assert_null(advice);
  else
    assert_string_equal(advice, remedy);
}

/* That carrying out the remedy of FINDING leaves no warning on the panel. */
static void
assert_mends(const SpvFinding *finding, const SpvScheme *scheme) {
  g_autoptr(SpvScheme) mended = NULL;
  g_autoptr(GPtrArray) after = NULL;

  assert_true(finding->has_remedy);
  mended = spv_finding_apply(finding, scheme);
  after = findings_of(mended);
  assert_int_equal(count_warnings(after), 0);
}

/* SCHEME with measure KEY of layer LAYER set to VALUE. */
static SpvScheme *
with(const SpvScheme *scheme, guint layer, const char *key, SpvUnit unit, double value) {
  SpvLayer *changed = design_set(spv_layer_ref(scheme->panels[0]->layers[layer]), key, unit, value);
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(scheme->panels[0], layer, changed);

  spv_layer_unref(changed);
  return spv_scheme_with_panel(scheme, 0, panel);
}

static guint
count_warnings_with(const SpvScheme *scheme, guint layer, const char *key, SpvUnit unit, double value) {
  g_autoptr(SpvScheme) changed = with(scheme, layer, key, unit, value);
  g_autoptr(GPtrArray) findings = findings_of(changed);

  return count_warnings(findings);
}

static SpvLayer *
field(const char *tincture) {
  return spv_layer_new("field", SPV_PATTERN_FIELD, tincture, NULL);
}

static SpvLayer *
check(int columns) {
  return design_set(spv_layer_new("check", SPV_PATTERN_CHECK, "argent", "sable"), "columns", SPV_UNIT_PLAIN,
                    columns);
}

static SpvLayer *
stripes(SpvPatternKind kind, int pieces) {
  return design_set(spv_layer_new("stripes", kind, "argent", "sable"), "pieces", SPV_UNIT_PLAIN, pieces);
}

static SpvLayer *
border(int points, double depth, double width) {
  SpvLayer *layer = spv_layer_new("border", SPV_PATTERN_JAGGED_BORDER, "sable", NULL);

  layer = design_set(layer, "points", SPV_UNIT_PLAIN, points);
  layer = design_set(layer, "depth", SPV_UNIT_MM, depth);
  return design_set(layer, "width", SPV_UNIT_MM, width);
}

static SpvLayer *
roundel(const char *id, double across, double down, double diameter) {
  SpvLayer *layer = spv_layer_new(id, SPV_PATTERN_ROUNDEL, "sable", NULL);

  layer = design_set(layer, "across", SPV_UNIT_MM, across);
  layer = design_set(layer, "down", SPV_UNIT_MM, down);
  return design_set(layer, "diameter", SPV_UNIT_MM, diameter);
}

/* Nothing to find. */

static void
what_a_hand_can_paint_gives_no_finding(void **state) {
  SpvLayer *layers[] = { check(6), border(5, 1, 0.5) };
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
    { check(12), NULL },
    { stripes(SPV_PATTERN_PALY, 12), NULL },
    { stripes(SPV_PATTERN_BARRY, 12), NULL },
    { field("argent"), border(4, 1, 0.25) },
    { field("argent"),
      design_set(spv_layer_new("bordure", SPV_PATTERN_BORDURE, "sable", NULL), "width", SPV_UNIT_MM, 0.25) },
    { field("argent"), roundel("roundel", 0, 1.5, 0.25) },
    { field("argent"),
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
  SpvLayer *layers[] = { check(12) };
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
  SpvLayer *layers[] = { check(12) };
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
  SpvLayer *layers[] = { design_set(check(7), "cell", SPV_UNIT_MM, 0.2) };
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
  SpvLayer *layers[] = { design_set(check(4), "rows", SPV_UNIT_PLAIN, 20) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 4, 4, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(count_warnings(findings), 2);
  assert_says(nth(findings, 0), scheme, "Cells are 0.20 mm wide; your line is 0.25 mm.", "16 rows would do.");
  assert_mends(nth(findings, 0), scheme);
}

static void
cells_that_the_edge_cuts_are_one_note(void **state) {
  SpvLayer *layers[] = { check(9) };
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
  SpvLayer *layers[] = { design_set(check(4), "rows", SPV_UNIT_PLAIN, 4),
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
              "You may leave them out.");
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
    SpvLayer *layers[] = { stripes(worked[i].kind, worked[i].pieces) };
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
  SpvLayer *layers[] = { field("argent"), border(36, 0.6, 0) };
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
  SpvLayer *layers[] = { field("argent"), border(24, 0.3, 0) };
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
  SpvLayer *layers[] = { field("argent"), roundel("one", -0.99, 4, 2), roundel("two", 0.99, 4, 2) };
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
  SpvLayer *layers[] = { field("argent"), border(6, 1, 0.1) };
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
    SpvLayer *layers[] = { field("argent"),
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
  SpvLayer *layers[] = { field("argent"), roundel("one", -1.075, 4, 2), roundel("two", 1.075, 4, 2) };
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
}

static void
a_finer_line_finds_less(void **state) {
  SpvLayer *layers[] = { check(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  g_autoptr(SpvScheme) finer = spv_scheme_with_finest_line(scheme, 0.19);
  g_autoptr(GPtrArray) findings = findings_of(finer);

  (void) state;
  assert_int_equal(findings->len, 0);
}

static void
a_width_is_never_said_to_be_the_line(void **state) {
  SpvFinding finding = { .kind = SPV_FINDING_NARROW_STROKE, .width = 0.2479, .limit = 0.25, .layer = 0 };
  SpvLayer *layers[] = { check(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);

  (void) state;
  assert_says(&finding, scheme, "Cells are 0.24 mm wide; your line is 0.25 mm.", "You may leave them out.");
}

/* Bare and unmeasured. */

static void
bare_parts_are_found_with_their_share(void **state) {
  SpvLayer *layers[] = { spv_layer_new("pale", SPV_PATTERN_PER_PALE, NULL, "vert") };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 1);
  assert_int_equal(nth(findings, 0)->kind, SPV_FINDING_BARE);
  assert_int_equal(nth(findings, 0)->severity, SPV_SEVERITY_NOTE);
  assert_int_equal(nth(findings, 0)->layer, -1);
  assert_int_equal(nth(findings, 0)->tincture, -1);
  assert_close(nth(findings, 0)->share, 0.5, 1e-9);
  assert_close(nth(findings, 0)->place.x, -2, 0.01);
  assert_false(nth(findings, 0)->has_remedy);
  assert_says(nth(findings, 0), scheme, "No tincture covers 50 % of the panel.",
              "Add a field below the others.");
}

static void
a_bare_strip_is_no_stroke(void **state) {
  /* 0.1 mm of the panel shows beside the pale: bare, not a narrow stroke. */
  SpvLayer *layers[] = { design_set(spv_layer_new("pale", SPV_PATTERN_PER_PALE, NULL, "vert"), "shift",
                                    SPV_UNIT_MM, -3.9) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 1);
  assert_int_equal(nth(findings, 0)->kind, SPV_FINDING_BARE);
  assert_close(nth(findings, 0)->share, 0.1 / 8, 1e-9);
}

static void
a_panel_without_layers_is_bare(void **state) {
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, NULL, 0);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 1);
  assert_says(nth(findings, 0), scheme, "Nothing covers the panel.", "Add a field.");
}

static void
typical_sizes_are_noted_on_panels_with_a_design(void **state) {
  SpvLayer *layers[] = { field("vert") };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 1);
  g_autoptr(SpvPanel) panel = spv_panel_with_measured(scheme->panels[0], FALSE);
  g_autoptr(SpvPanel) blank = spv_panel_with_layers(panel, NULL, 0);
  g_autoptr(SpvScheme) typical = spv_scheme_with_panel(scheme, 0, panel);
  g_autoptr(SpvScheme) empty = spv_scheme_with_panel(scheme, 0, blank);
  g_autoptr(GPtrArray) findings = findings_of(typical);
  g_autoptr(GPtrArray) none = findings_of(empty);

  (void) state;
  assert_int_equal(findings->len, 1);
  assert_int_equal(nth(findings, 0)->kind, SPV_FINDING_NOT_MEASURED);
  assert_int_equal(nth(findings, 0)->severity, SPV_SEVERITY_NOTE);
  assert_says(nth(findings, 0), typical, "These are typical sizes; measure your own with calipers.", NULL);
  for (guint i = 0; i < none->len; i++)
    assert_int_not_equal(nth(none, i)->kind, SPV_FINDING_NOT_MEASURED);
}

/* The whole. */

static SpvScheme *
crowded(void) {
  SpvLayer *small = roundel("small", 1.2, 1.5, 0.1);
  SpvLayer *layers[] = { check(14), roundel("large", 0, 3, 1.6), spv_layer_with_tincture(small, 0, "vert"),
                         border(9, 0.3, 0.2) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_DISC, 6, 6, layers, 4);
  g_autoptr(SpvPanel) panel = spv_panel_with_measured(scheme->panels[0], FALSE);

  spv_layer_unref(small);
  return spv_scheme_with_panel(scheme, 0, panel);
}

static void
the_worst_comes_first(void **state) {
  g_autoptr(SpvScheme) scheme = crowded();
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_true(count_warnings(findings) >= 2);
  assert_true(count_warnings(findings) < findings->len);
  for (guint i = 1; i < findings->len; i++) {
    const SpvFinding *before = nth(findings, i - 1), *after = nth(findings, i);

    assert_true(before->severity >= after->severity);
    if (before->severity == after->severity && before->kind == after->kind)
      assert_true(before->width <= after->width);
  }
  assert_int_equal(nth(findings, findings->len - 1)->kind, SPV_FINDING_NOT_MEASURED);
}

static void
the_same_scheme_gives_the_same_findings(void **state) {
  g_autoptr(SpvScheme) one = crowded();
  g_autoptr(SpvScheme) other = crowded();
  g_autoptr(GPtrArray) first = findings_of(one);
  g_autoptr(GPtrArray) second = findings_of(other);

  (void) state;
  assert_int_equal(first->len, second->len);
  for (guint i = 0; i < first->len; i++) {
    const SpvFinding *a = nth(first, i), *b = nth(second, i);

    assert_int_equal(a->kind, b->kind);
    assert_int_equal(a->layer, b->layer);
    assert_int_equal(a->tincture, b->tincture);
    assert_int_equal(a->count, b->count);
    assert_true(a->width == b->width && a->place.x == b->place.x && a->place.y == b->place.y);
    assert_int_equal(a->has_remedy, b->has_remedy);
  }
}

static void
note_progress(double fraction, gpointer data) {
  g_array_append_val((GArray *) data, fraction);
}

static void
a_scheme_is_checked_panel_by_panel(void **state) {
  SpvLayer *layers[] = { check(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  const SpvPanel *panel = scheme->panels[0];
  g_autoptr(SpvPanel) second = spv_panel_new("greave", "greave", SPV_SIDE_DEXTER, &panel->outline,
                                             &panel->surface, spv_point(9, 0));
  SpvPanel *panels[] = { scheme->panels[0], second };
  g_autoptr(SpvScheme) two = spv_scheme_with_panels(scheme, panels, 2);
  g_autoptr(GArray) progress = g_array_new(FALSE, FALSE, sizeof(double));
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) findings = spv_check_scheme(two, NULL, note_progress, progress, &error);

  (void) state;
  assert_null(error);
  assert_int_equal(findings->len, 3);
  assert_int_equal(nth(findings, 1)->panel, 0);
  assert_int_equal(nth(findings, 2)->panel, 1);
  assert_int_equal(nth(findings, 2)->kind, SPV_FINDING_BARE);
  assert_int_equal(progress->len, 2);
  assert_true(g_array_index(progress, double, 0) == 0.5);
  assert_true(g_array_index(progress, double, 1) == 1);
}

static void
cancelling_gives_an_error_and_nothing_else(void **state) {
  SpvLayer *layers[] = { check(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  g_autoptr(GCancellable) cancellable = g_cancellable_new();
  g_autoptr(GError) panel_error = NULL;
  g_autoptr(GError) scheme_error = NULL;

  (void) state;
  g_cancellable_cancel(cancellable);
  assert_null(spv_check_panel(scheme, 0, cancellable, &panel_error));
  assert_true(g_error_matches(panel_error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
  assert_null(spv_check_scheme(scheme, cancellable, NULL, NULL, &scheme_error));
  assert_true(g_error_matches(scheme_error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
}

static void
a_remedy_that_no_longer_fits_changes_nothing(void **state) {
  SpvLayer *layers[] = { check(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);
  g_autoptr(SpvScheme) none = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, NULL, 0);
  g_autoptr(SpvScheme) same = spv_finding_apply(nth(findings, 0), none);
  g_autofree char *message = spv_finding_message(nth(findings, 0), none);
  SpvLayer *others[] = { field("vert") };
  g_autoptr(SpvScheme) other = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, others, 1);
  g_autoptr(SpvScheme) still = spv_finding_apply(nth(findings, 0), other);

  (void) state;
  assert_ptr_equal(same, none);
  assert_ptr_equal(still, other);
  assert_non_null(strstr(message, "0.20"));
}

static void
sentences_keep_their_point_in_any_locale(void **state) {
  SpvLayer *layers[] = { design_set(check(7), "cell", SPV_UNIT_MM, 0.2) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  setlocale(LC_NUMERIC, "de_DE.UTF-8");
  g_autofree char *message = spv_finding_message(nth(findings, 0), scheme);
  g_autofree char *remedy = spv_finding_remedy(nth(findings, 0), scheme);
  setlocale(LC_NUMERIC, "C");
  assert_non_null(strstr(message, "0.20"));
  assert_non_null(strstr(remedy, "0.25"));
}

static void
keys_are_as_in_json(void **state) {
  (void) state;
  assert_string_equal(spv_finding_key(SPV_FINDING_NARROW_STROKE), "narrow-stroke");
  assert_string_equal(spv_finding_key(SPV_FINDING_BARE), "bare");
  assert_string_equal(spv_finding_key(SPV_FINDING_NOT_MEASURED), "not-measured");
  assert_string_equal(spv_severity_key(SPV_SEVERITY_NOTE), "note");
  assert_string_equal(spv_severity_key(SPV_SEVERITY_WARNING), "warning");
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
    cmocka_unit_test(a_finer_line_finds_less),
    cmocka_unit_test(a_width_is_never_said_to_be_the_line),
    cmocka_unit_test(bare_parts_are_found_with_their_share),
    cmocka_unit_test(a_bare_strip_is_no_stroke),
    cmocka_unit_test(a_panel_without_layers_is_bare),
    cmocka_unit_test(typical_sizes_are_noted_on_panels_with_a_design),
    cmocka_unit_test(the_worst_comes_first),
    cmocka_unit_test(the_same_scheme_gives_the_same_findings),
    cmocka_unit_test(a_scheme_is_checked_panel_by_panel),
    cmocka_unit_test(cancelling_gives_an_error_and_nothing_else),
    cmocka_unit_test(a_remedy_that_no_longer_fits_changes_nothing),
    cmocka_unit_test(sentences_keep_their_point_in_any_locale),
    cmocka_unit_test(keys_are_as_in_json),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
