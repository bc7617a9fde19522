/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every kind of pattern on every family of outline: whatever a guide or a finding says must hold together. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include <math.h>

#include "check/check.h"
#include "guide/design.h"
#include "guide/guide.h"

/* A point on the edge may lie this far to either side of it, mm. */
#define ON_EDGE 1e-5

/* A scheme with PATTERN over a field, on a panel of FAMILY about WIDTH by HEIGHT. */
static SpvScheme *
scheme_of(const SpvPattern *pattern, SpvOutlineFamily family, double width, double height) {
  SpvOutlineSpec spec = { .family = family, .width = width, .height = height };
  SpvLayer *given = spv_layer_new("laid", pattern->kind, "vert",
                                  spv_pattern_info(pattern->kind)->n_slots > 1 ? "sable" : NULL);

  if (family == SPV_OUTLINE_DISC)
    spec.height = height = width;
  for (guint i = 0; i < spv_pattern_info(pattern->kind)->n_measures; i++)
    given = design_set(given, spv_pattern_info(pattern->kind)->measures[i].key, pattern->measures[i].unit,
                       pattern->measures[i].value);
  SpvLayer *layers[] = { spv_layer_new("ground", SPV_PATTERN_FIELD, "argent", NULL), given };
  g_autoptr(SpvScheme) square = design_new(SPV_OUTLINE_RECTANGLE, width, height, layers, 2);
  spv_outline_spec_preset(family, width, height, &spec);
  g_autoptr(SpvPanel) panel = spv_panel_with_outline(square->panels[0], &spec);

  return spv_scheme_with_panel(square, 0, panel);
}

static double
distance_to_edge(const SpvOutline *outline, SpvPoint point) {
  double distance;

  spv_track_locate(spv_outline_track(outline), point, &distance);
  return distance;
}

static void
assert_guide_holds(const SpvScheme *scheme) {
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);
  g_autoptr(SpvGuide) guide = spv_guide_new(composition);
  const SpvOutline *outline = composition->outline;
  double half = spv_track_length(spv_outline_track(outline)) / 2;

  for (guint i = 0; i < guide->dots->len; i++) {
    const SpvDot *dot = &g_array_index(guide->dots, SpvDot, i);

    assert_int_equal(dot->number, i + 1);
    assert_true(spv_shape_contains(spv_outline_shape(outline), dot->at) ||
                distance_to_edge(outline, dot->at) < ON_EDGE);
    assert_true(dot->along >= -ON_EDGE && fabs(dot->from_datum) <= half + ON_EDGE);
  }
  for (guint i = 0; i < guide->rulings->len; i++) {
    const SpvRuling *ruling = &g_array_index(guide->rulings, SpvRuling, i);
    SpvPoint a = ruling->ends[0].at, b = ruling->ends[1].at;

    assert_int_equal(ruling->number, i + 1);
    assert_true(ruling->index >= 1);
    assert_true(spv_shape_contains(spv_outline_shape(outline), spv_point_between(a, b, 0.5)));
    assert_true(a.x < b.x || (fabs(a.x - b.x) < ON_EDGE && a.y < b.y));
    for (guint end = 0; end < 2; end++)
      assert_true(fabs(ruling->ends[end].from_datum) <= half + ON_EDGE);
  }
  for (guint i = 0; i < guide->runs->len; i++) {
    const SpvDotRun *run = &g_array_index(guide->runs, SpvDotRun, i);

    assert_true(run->first >= 1 && run->first < run->last && run->last <= guide->dots->len);
    assert_true(run->spacing > 0);
  }
}

static void
assert_findings_hold(const SpvScheme *scheme) {
  g_autoptr(GPtrArray) findings = spv_check_panel(scheme, 0, NULL, NULL);
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);

  assert_non_null(findings);
  for (guint i = 0; i < findings->len; i++) {
    const SpvFinding *finding = g_ptr_array_index(findings, i);
    g_autofree char *message = spv_finding_message(finding, scheme);
    const SpvPattern *pattern = &scheme->panels[0]->layers[finding->layer]->pattern;

    /* All is covered and measured. */
    assert_int_equal(finding->kind, SPV_FINDING_NARROW_STROKE);
    assert_true(finding->width > 0 && finding->width < finding->limit);
    assert_true(finding->count >= 1);
    assert_true(spv_shape_contains(spv_outline_shape(composition->outline), finding->place));
    assert_non_null(message);
    assert_int_equal(finding->severity == SPV_SEVERITY_WARNING, finding->cause == SPV_CAUSE_PATTERN);
    if (!finding->has_remedy)
      continue;

    g_autoptr(SpvScheme) mended = spv_finding_apply(finding, scheme);
    g_autoptr(GPtrArray) after = spv_check_panel(mended, 0, NULL, NULL);
    const SpvMeasureSpec *spec = &spv_pattern_info(pattern->kind)->measures[finding->remedy.measure];
    assert_true(spv_measure_is_valid(spec, finding->remedy.value));
    for (guint j = 0; j < after->len; j++) {
      const SpvFinding *left = g_ptr_array_index(after, j);

      assert_true(left->layer != finding->layer || left->severity == SPV_SEVERITY_NOTE);
    }
  }
}

static void
assert_holds(const SpvPattern *pattern, SpvOutlineFamily family, double width, double height) {
  g_autoptr(SpvScheme) scheme = scheme_of(pattern, family, width, height);

  assert_guide_holds(scheme);
  assert_findings_hold(scheme);
}

static void
presets_hold_on_every_outline(void **state) {
  (void) state;
  for (guint family = 0; family < SPV_N_OUTLINE_FAMILIES; family++)
    for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
      SpvPattern pattern = spv_pattern_preset((SpvPatternKind) kind);

      /* Charges stand alike on all: each on two families. */
      if (spv_pattern_group(pattern.kind) == SPV_GROUP_CHARGE && (kind + family) % 4 != 0)
        continue;
      assert_holds(&pattern, (SpvOutlineFamily) family, 7, 9);
    }
}

static void
presets_hold_on_a_panel_too_small_for_any_hand(void **state) {
  (void) state;
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
    SpvPattern pattern = spv_pattern_preset((SpvPatternKind) kind);

    assert_holds(&pattern, SPV_OUTLINE_KNEEPAD, 0.6, 0.7);
  }
}

/* Every length of PATTERN set to its MM, every angle left. */
static void
set_lengths(SpvPattern *pattern, double mm) {
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);

  for (guint i = 0; i < info->n_measures; i++) {
    SpvMeasure value = { SPV_UNIT_MM, MAX(mm, info->measures[i].min) };

    if (info->measures[i].type == SPV_MEASURE_LENGTH)
      pattern->measures[i] = value;
  }
}

static void
lengths_of_nothing_and_of_too_much_hold(void **state) {
  static const double lengths[] = { 0, 0.1, 40 };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(lengths); i++)
    for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
      SpvPattern pattern = spv_pattern_preset((SpvPatternKind) kind);

      set_lengths(&pattern, lengths[i]);
      assert_holds(&pattern, SPV_OUTLINE_PLATE, 2, 2.4);
    }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(presets_hold_on_every_outline),
    cmocka_unit_test(presets_hold_on_a_panel_too_small_for_any_hand),
    cmocka_unit_test(lengths_of_nothing_and_of_too_much_hold),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
