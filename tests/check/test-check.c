/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The findings of a panel and of a scheme: what is bare or unmeasured, their order, their words, cancelling.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include <locale.h>

#include "check/findings.h"
#include "scheme/library.h"

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
  assert_says(nth(findings, 0), scheme, "Part of the panel has no tincture: 50 %.",
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
a_panel_without_a_visible_layer_is_not_painted(void **state) {
  SpvLayer *field = design_field("vert");
  SpvLayer *layers[] = { spv_layer_with_hidden(field, TRUE) };
  g_autoptr(SpvScheme) empty = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, NULL, 0);
  g_autoptr(SpvScheme) hidden = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 1);
  g_autoptr(SpvPanel) typical = spv_panel_with_measured(hidden->panels[0], FALSE);
  g_autoptr(SpvScheme) unmeasured = spv_scheme_with_panel(hidden, 0, typical);
  g_autoptr(GPtrArray) of_empty = findings_of(empty);
  g_autoptr(GPtrArray) of_hidden = findings_of(unmeasured);

  (void) state;
  assert_int_equal(of_empty->len, 0);
  assert_int_equal(of_hidden->len, 0);
  spv_layer_unref(field);
}

static void
layers_that_cover_nothing_leave_the_panel_bare(void **state) {
  SpvLayer *layers[] = { spv_layer_new("field", SPV_PATTERN_FIELD, NULL, NULL) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 8, 8, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);

  (void) state;
  assert_int_equal(findings->len, 1);
  assert_says(nth(findings, 0), scheme, "The panel has no tincture.", "Add a field below the others.");
}

static void
typical_sizes_are_noted_on_panels_with_a_design(void **state) {
  SpvLayer *layers[] = { design_field("vert") };
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
  SpvLayer *small = roundel_of("small", 1.2, 1.5, 0.1);
  SpvLayer *layers[] = { columns_of(14), roundel_of("large", 0, 3, 1.6),
                         spv_layer_with_tincture(small, 0, "vert"), points_of(9, 0.3, 0.2) };
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
  SpvLayer *layers[] = { columns_of(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  const SpvPanel *panel = scheme->panels[0];
  g_autoptr(SpvPanel) greave = spv_panel_new("greave", "greave", SPV_SIDE_DEXTER, &panel->outline,
                                             &panel->surface, spv_point(9, 0));
  SpvLayer *nothing = spv_layer_new("field", SPV_PATTERN_FIELD, NULL, NULL);
  g_autoptr(SpvPanel) laid = spv_panel_with_layers(greave, &nothing, 1);
  g_autoptr(SpvPanel) second = spv_panel_with_measured(laid, TRUE);
  SpvPanel *panels[] = { scheme->panels[0], second };
  g_autoptr(SpvScheme) two = spv_scheme_with_panels(scheme, panels, 2);
  g_autoptr(GArray) progress = g_array_new(FALSE, FALSE, sizeof(double));
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) findings = spv_check_scheme(two, NULL, note_progress, progress, &error);

  (void) state;
  assert_null(error);
  spv_layer_unref(nothing);
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
  SpvLayer *layers[] = { columns_of(12) };
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

static gpointer
cancel_soon(gpointer cancellable) {
  g_usleep(30000);
  g_cancellable_cancel(cancellable);
  return NULL;
}

/* The whole check takes a second or more. */
static void
a_long_check_stops_soon_after_it_is_cancelled(void **state) {
  SpvLayer *layers[] = { design_set(columns_of(200), "rows", SPV_UNIT_PLAIN, 200) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 9, 9, layers, 1);
  g_autoptr(GCancellable) cancellable = g_cancellable_new();
  g_autoptr(GError) error = NULL;
  GThread *thread = g_thread_new("cancel", cancel_soon, cancellable);
  g_autoptr(GPtrArray) findings = spv_check_panel(scheme, 0, cancellable, &error);

  (void) state;
  g_thread_join(thread);
  assert_null(findings);
  assert_true(g_error_matches(error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
}

static void
the_examples_can_be_painted(void **state) {
  g_autoptr(GPtrArray) examples = spv_library_list(SPV_LIBRARY_EXAMPLE);

  (void) state;
  assert_int_equal(examples->len, 4);
  for (guint i = 0; i < examples->len; i++) {
    g_autoptr(SpvScheme) scheme = spv_library_load(g_ptr_array_index(examples, i), NULL);
    g_autoptr(GPtrArray) findings = spv_check_scheme(scheme, NULL, NULL, NULL, NULL);

    assert_int_equal(count_warnings(findings), 0);
    for (guint j = 0; j < findings->len; j++)
      assert_int_not_equal(nth(findings, j)->kind, SPV_FINDING_BARE);
  }
}

static void
a_remedy_that_no_longer_fits_changes_nothing(void **state) {
  SpvLayer *layers[] = { columns_of(12) };
  g_autoptr(SpvScheme) scheme = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, layers, 1);
  g_autoptr(GPtrArray) findings = findings_of(scheme);
  g_autoptr(SpvScheme) none = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, NULL, 0);
  g_autoptr(SpvScheme) same = spv_finding_apply(nth(findings, 0), none);
  g_autofree char *message = spv_finding_message(nth(findings, 0), none);
  SpvLayer *others[] = { design_field("vert") };
  g_autoptr(SpvScheme) other = design_new(SPV_OUTLINE_RECTANGLE, 2.4, 2.4, others, 1);
  g_autoptr(SpvScheme) still = spv_finding_apply(nth(findings, 0), other);

  (void) state;
  assert_ptr_equal(same, none);
  assert_ptr_equal(still, other);
  assert_non_null(strstr(message, "0.20"));
}

static void
sentences_keep_their_point_in_any_locale(void **state) {
  SpvLayer *layers[] = { design_set(columns_of(7), "cell", SPV_UNIT_MM, 0.2) };
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
  assert_string_equal(spv_cause_key(SPV_CAUSE_PATTERN), "pattern");
  assert_string_equal(spv_cause_key(SPV_CAUSE_EDGE), "edge");
  assert_string_equal(spv_cause_key(SPV_CAUSE_COVER), "cover");
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(bare_parts_are_found_with_their_share),
    cmocka_unit_test(a_bare_strip_is_no_stroke),
    cmocka_unit_test(a_panel_without_a_visible_layer_is_not_painted),
    cmocka_unit_test(layers_that_cover_nothing_leave_the_panel_bare),
    cmocka_unit_test(typical_sizes_are_noted_on_panels_with_a_design),
    cmocka_unit_test(the_worst_comes_first),
    cmocka_unit_test(the_same_scheme_gives_the_same_findings),
    cmocka_unit_test(a_scheme_is_checked_panel_by_panel),
    cmocka_unit_test(cancelling_gives_an_error_and_nothing_else),
    cmocka_unit_test(a_long_check_stops_soon_after_it_is_cancelled),
    cmocka_unit_test(the_examples_can_be_painted),
    cmocka_unit_test(a_remedy_that_no_longer_fits_changes_nothing),
    cmocka_unit_test(sentences_keep_their_point_in_any_locale),
    cmocka_unit_test(keys_are_as_in_json),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
