/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Charges, letters, lines and furs held against the painter's line, and what would mend them. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include "findings.h"
#include "guide/design.h"
#include "heraldry/figure.h"

/* LAYER (consumed) over a field on a panel of 12 by 14 mm. */
static SpvScheme *
over_a_field(SpvLayer *layer) {
  SpvLayer *layers[] = { design_field("argent"), layer };

  return design_new(SPV_OUTLINE_PLATE, 12, 14, layers, 2);
}

/* The only warning on SCHEME's panel, or NULL where there is none. */
static const SpvFinding *
only_warning(GPtrArray *findings) {
  const SpvFinding *found = NULL;

  for (guint i = 0; i < findings->len; i++) {
    const SpvFinding *finding = g_ptr_array_index(findings, i);
    if (finding->severity != SPV_SEVERITY_WARNING)
      continue;
    assert_null(found);
    found = finding;
  }
  return found;
}

/* Whether SCHEME has a warning; it must have a remedy for measure KEY (NULL: for any) that clears it. */
static gboolean
warns(const SpvScheme *scheme, const char *key) {
  g_autoptr(GPtrArray) findings = spv_check_panel(scheme, 0, NULL, NULL);
  const SpvFinding *finding = only_warning(findings);

  if (finding == NULL)
    return FALSE;
  const SpvPattern *pattern = &scheme->panels[0]->layers[finding->layer]->pattern;
  assert_int_equal(finding->kind, SPV_FINDING_NARROW_STROKE);
  assert_true(finding->has_remedy);
  if (key != NULL)
    assert_string_equal(spv_pattern_info(pattern->kind)->measures[finding->remedy.measure].key, key);
  g_autoptr(SpvScheme) mended = spv_finding_apply(finding, scheme);
  g_autoptr(GPtrArray) after = spv_check_panel(mended, 0, NULL, NULL);
  assert_null(only_warning(after));
  return TRUE;
}

/* Every charge at a size a little above its smallest can be painted, and well below it can't: the size that
 * is declared and the check that is made agree. */
static void
the_smallest_size_of_a_charge_is_where_warnings_end(void **state) {
  static const SpvPatternKind kinds[] = { SPV_PATTERN_KEY, SPV_PATTERN_CROSS_POTENT, SPV_PATTERN_ANNULET,
                                          SPV_PATTERN_SWORD, SPV_PATTERN_MASCLE };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(kinds); i++) {
    SpvPattern pattern = spv_pattern_preset(kinds[i]);
    double smallest = spv_figure_smallest(&pattern, SPV_FINEST_LINE_PRESET);
    g_autoptr(SpvScheme) large = over_a_field(
        design_set(spv_layer_new("charge", kinds[i], "sable", NULL), "size", SPV_UNIT_MM, 1.03 * smallest));
    g_autoptr(SpvScheme) small = over_a_field(
        design_set(spv_layer_new("charge", kinds[i], "sable", NULL), "size", SPV_UNIT_MM, 0.6 * smallest));

    assert_false(warns(large, NULL));
    assert_true(warns(small, "size"));
  }
}

static void
many_small_charges_are_mended_by_fewer(void **state) {
  SpvLayer *layer = spv_layer_new("charges", SPV_PATTERN_KEY, "sable", NULL);

  (void) state;
  layer = design_set(layer, "number", SPV_UNIT_PLAIN, 60);
  g_autoptr(SpvScheme) scheme = over_a_field(layer);
  assert_true(warns(scheme, NULL));
}

static void
letters_are_held_against_the_line(void **state) {
  SpvLayer *low = spv_layer_new("words", SPV_PATTERN_LETTERING, "sable", NULL);
  SpvLayer *high = spv_layer_new("words", SPV_PATTERN_LETTERING, "sable", NULL);

  (void) state;
  low = design_set(low, "height", SPV_UNIT_MM, 0.8);
  high = design_set(high, "height", SPV_UNIT_MM, 3);
  g_autoptr(SpvScheme) fine = over_a_field(low);
  g_autoptr(SpvScheme) bold = over_a_field(high);
  assert_true(warns(fine, "height"));
  assert_false(warns(bold, NULL));
}

static void
a_line_with_too_many_teeth_has_fewer(void **state) {
  SpvLayer *layer = spv_layer_new("fess", SPV_PATTERN_FESS, "sable", NULL);

  (void) state;
  layer = design_set(layer, "line", SPV_UNIT_PLAIN, 3); /* embattled */
  layer = design_set(layer, "periods", SPV_UNIT_PLAIN, 40);
  layer = design_set(layer, "amplitude", SPV_UNIT_MM, 1);
  g_autoptr(SpvScheme) scheme = over_a_field(layer);
  assert_true(warns(scheme, "periods"));
}

static void
a_fur_that_is_too_fine_is_told_its_pitch(void **state) {
  SpvLayer *layers[] = { spv_layer_new("field", SPV_PATTERN_FIELD, "vert", NULL) };
  g_autoptr(SpvScheme) plain = design_new(SPV_OUTLINE_PLATE, 12, 14, layers, 1);
  SpvTincture fur = {
    .id = "ermine", .name = "winter coat", .fur = SPV_FUR_ERMINE, .of = { "argent", "sable" }, .pitch = 1
  };
  g_autoptr(SpvScheme) furred = spv_scheme_with_tincture_added(plain, &fur);
  g_autoptr(SpvLayer) layer = spv_layer_new("field", SPV_PATTERN_FIELD, "ermine", NULL);
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(furred->panels[0], 0, layer);
  g_autoptr(SpvScheme) scheme = spv_scheme_with_panel(furred, 0, panel);
  g_autoptr(GPtrArray) findings = spv_check_panel(scheme, 0, NULL, NULL);
  const SpvFinding *finding = g_ptr_array_index(findings, 0);
  g_autofree char *remedy = spv_finding_remedy(finding, scheme);

  (void) state;
  assert_int_equal(finding->severity, SPV_SEVERITY_WARNING);
  assert_false(finding->has_remedy);
  assert_true(g_str_has_prefix(remedy, "Give winter coat a pitch of "));

  /* As fine as the line holds, where no pitch is given. */
  fur.pitch = 0;
  g_autoptr(SpvScheme)
      wide = spv_scheme_with_tincture(scheme, (guint) spv_scheme_find_tincture(scheme, "ermine"), &fur);
  g_autoptr(GPtrArray) after = spv_check_panel(wide, 0, NULL, NULL);
  for (guint i = 0; i < after->len; i++)
    assert_int_not_equal(((SpvFinding *) g_ptr_array_index(after, i))->severity, SPV_SEVERITY_WARNING);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(the_smallest_size_of_a_charge_is_where_warnings_end),
    cmocka_unit_test(many_small_charges_are_mended_by_fewer),
    cmocka_unit_test(letters_are_held_against_the_line),
    cmocka_unit_test(a_line_with_too_many_teeth_has_fewer),
    cmocka_unit_test(a_fur_that_is_too_fine_is_told_its_pitch),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
