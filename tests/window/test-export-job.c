/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/a-scheme.h"

#include "window/export.h"

typedef struct {
  SpvExportResult *result;
  GError *error;
  guint calls;
} Outcome;

static void
finished(SpvExportResult *result, const GError *error, gpointer data) {
  Outcome *outcome = data;
  outcome->calls++;
  outcome->result = result;
  outcome->error = error ? g_error_copy(error) : NULL;
}

static void
outcome_clear(Outcome *outcome) {
  g_clear_pointer(&outcome->result, spv_export_result_free);
  g_clear_error(&outcome->error);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Outcome, outcome_clear)

static SpvExportChoices *
choices_for(const char *folder) {
  SpvExportChoices *choices = spv_export_choices_load(NULL);
  g_free(choices->folder);
  choices->folder = g_strdup(folder);
  choices->dpi = SPV_DPI_MIN;
  return choices;
}

static void
presets_without_settings(void **state) {
  (void) state;
  g_autoptr(SpvExportChoices) choices = spv_export_choices_load(NULL);
  assert_string_equal(choices->paper->key, "a4");
  assert_int_equal(choices->format, SPV_FORMAT_PNG);
  assert_int_equal(choices->dpi, 600);
  assert_int_equal(choices->content, SPV_CONTENT_ALL);
  assert_false(choices->hatch);
  assert_false(choices->date);
  assert_null(choices->panels);
  assert_true(g_path_is_absolute(choices->folder));
}

static void
choices_are_remembered(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  g_autoptr(GSettings) settings = g_settings_new("org.spolvero.Spolvero");
  g_autoptr(SpvExportChoices) choices = choices_for(folder);
  choices->paper = spv_paper_from_key("a5");
  choices->format = SPV_FORMAT_SVG;
  choices->content = SPV_CONTENT_OFFSETS;
  choices->hatch = choices->date = TRUE;
  spv_export_choices_store(choices, settings);
  g_autoptr(SpvExportChoices) again = spv_export_choices_load(settings);
  assert_string_equal(again->folder, folder);
  assert_string_equal(again->paper->key, "a5");
  assert_int_equal(again->format, SPV_FORMAT_SVG);
  assert_int_equal(again->dpi, SPV_DPI_MIN);
  assert_int_equal(again->content, SPV_CONTENT_OFFSETS);
  assert_true(again->hatch && again->date);
  remove_folder(folder);
  /* A folder that is gone is not offered again. */
  g_autoptr(SpvExportChoices) gone = spv_export_choices_load(settings);
  assert_string_not_equal(gone->folder, folder);
}

static void
sheets_are_written_and_progress_ends_at_one(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  g_autoptr(SpvScheme) scheme = a_scheme();
  g_autoptr(SpvExportChoices) choices = choices_for(folder);
  g_auto(Outcome) outcome = { 0 };
  g_autoptr(SpvExport) job = spv_export_start(scheme, choices, finished, &outcome);
  double before = 0;
  while (outcome.calls == 0) {
    double now = spv_export_progress(job);
    assert_true(now >= before && now <= 1);
    before = now;
    g_main_context_iteration(NULL, FALSE);
  }
  assert_null(outcome.error);
  assert_non_null(outcome.result);
  assert_int_equal(outcome.result->paths->len, outcome.result->n_sheets);
  assert_int_equal(count_files(folder), outcome.result->paths->len);
  assert_true(g_file_test(g_ptr_array_index(outcome.result->paths, 0), G_FILE_TEST_IS_REGULAR));
  assert_true(spv_export_progress(job) == 1);
  remove_folder(folder);
}

static void
what_goes_wrong_is_told(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  g_autoptr(SpvScheme) scheme = a_scheme();
  g_autoptr(SpvExportChoices) choices = choices_for(folder);
  choices->panels = g_strsplit("no-such-panel", ",", -1);
  g_auto(Outcome) outcome = { 0 };
  g_autoptr(SpvExport) job = spv_export_start(scheme, choices, finished, &outcome);
  WAIT_FOR(outcome.calls == 1, 20000);
  assert_true(g_error_matches(outcome.error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_PANEL));
  assert_int_equal(count_files(folder), 0);
  remove_folder(folder);
}

static void
a_cancelled_export_says_so_and_leaves_no_half_file(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  g_autoptr(SpvScheme) scheme = a_scheme();
  g_autoptr(SpvExportChoices) choices = choices_for(folder);
  choices->dpi = SPV_DPI_MAX;
  g_auto(Outcome) outcome = { 0 };
  g_autoptr(SpvExport) job = spv_export_start(scheme, choices, finished, &outcome);
  spv_export_cancel(job);
  WAIT_FOR(outcome.calls == 1, 20000);
  assert_true(g_error_matches(outcome.error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
  assert_int_equal(count_files(folder), 0);
  remove_folder(folder);
}

static void
an_export_that_is_let_go_of_is_silent(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  g_autoptr(SpvScheme) scheme = a_scheme();
  g_autoptr(SpvExportChoices) choices = choices_for(folder);
  Outcome outcome = { 0 };
  spv_export_free(spv_export_start(scheme, choices, finished, &outcome));
  gint64 end = g_get_monotonic_time() + 300000;
  while (g_get_monotonic_time() < end)
    g_main_context_iteration(NULL, FALSE);
  assert_int_equal(outcome.calls, 0);
  remove_folder(folder);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(presets_without_settings),
    cmocka_unit_test(choices_are_remembered),
    cmocka_unit_test(sheets_are_written_and_progress_ends_at_one),
    cmocka_unit_test(what_goes_wrong_is_told),
    cmocka_unit_test(a_cancelled_export_says_so_and_leaves_no_half_file),
    cmocka_unit_test(an_export_that_is_let_go_of_is_silent),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
