/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sampler as the window writes it: its options, its names, and the work on a thread. */
#include "window/a-scheme.h"

#include "window/chart-export.h"

typedef struct {
  SpvChartExportResult *result;
  GError *error;
  guint calls;
} Outcome;

static void
finished(GObject *source, GAsyncResult *async, gpointer data) {
  Outcome *outcome = data;

  (void) source;
  outcome->calls++;
  outcome->result = spv_chart_export_finish(async, &outcome->error);
}

static void
outcome_clear(Outcome *outcome) {
  g_clear_pointer(&outcome->result, spv_chart_export_result_free);
  g_clear_error(&outcome->error);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Outcome, outcome_clear)

static void
options_come_from_the_last_export_and_the_scheme(void **state) {
  g_autoptr(SpvExportChoices) choices = spv_export_choices_load(NULL);
  g_autoptr(SpvScheme) bare = a_scheme();
  g_autoptr(SpvScheme) scheme = spv_scheme_with_finest_line(bare, 0.4);

  (void) state;
  choices->paper = spv_paper_from_key("letter");
  choices->hatch = TRUE;
  SpvChartOptions options = spv_chart_export_options(choices, scheme);
  assert_string_equal(options.paper->key, "letter");
  assert_true(options.hatch);
  assert_true(options.finest_line == 0.4);
  assert_true(spv_chart_export_options(choices, NULL).finest_line == SPV_FINEST_LINE_PRESET);
}

static void
names_get_a_suffix_and_pages_a_number(void **state) {
  static const struct {
    const char *typed, *name, *first;
  } names[] = {
    { "sampler", "sampler.pdf", "sampler.pdf" },
    { "sampler.pdf", "sampler.pdf", "sampler.pdf" },
    { "sampler.png", "sampler.png", "sampler-1.png" },
    { "my.sampler.svg", "my.sampler.svg", "my.sampler-1.svg" },
    { "my.sampler", "my.sampler.pdf", "my.sampler.pdf" },
    { ".png", ".png.pdf", ".png.pdf" },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(names); i++) {
    g_autofree char *name = spv_chart_export_name(names[i].typed);
    g_autofree char *first = spv_chart_export_first(name);
    assert_string_equal(name, names[i].name);
    assert_string_equal(first, names[i].first);
  }
}

/* Writes NAME into FOLDER with the presets, and waits for it. */
static void
write_sampler(const char *folder, const char *name, GCancellable *cancellable, Outcome *outcome) {
  g_autofree char *path = g_build_filename(folder, name, NULL);
  SpvChartOptions options = spv_chart_options_preset();

  spv_chart_export_async(&options, path, SPV_DPI_MIN, cancellable, finished, outcome);
  WAIT_FOR(outcome->calls == 1, 60000);
}

static void
a_pdf_is_one_file_and_said_so(void **state) {
  g_autofree char *folder = a_folder();
  g_auto(Outcome) outcome = { 0 };

  (void) state;
  write_sampler(folder, "sampler.pdf", NULL, &outcome);
  assert_null(outcome.error);
  assert_int_equal(outcome.result->paths->len, 1);
  assert_true(outcome.result->n_pages > 1);
  assert_int_equal(count_files(folder), 1);
  g_autofree char *words = spv_chart_export_words(outcome.result);
  g_autofree char *wanted = g_strdup_printf("%u pages of the sampler written to %s/sampler.pdf.",
                                            outcome.result->n_pages, folder);
  assert_string_equal(words, wanted);
  remove_folder(folder);
}

static void
pages_are_files_and_their_first_is_foretold(void **state) {
  g_autofree char *folder = a_folder();
  g_auto(Outcome) outcome = { 0 };

  (void) state;
  write_sampler(folder, "sampler.svg", NULL, &outcome);
  assert_null(outcome.error);
  assert_int_equal(outcome.result->paths->len, outcome.result->n_pages);
  assert_int_equal(count_files(folder), outcome.result->n_pages);
  g_autofree char *path = g_build_filename(folder, "sampler.svg", NULL);
  g_autofree char *first = spv_chart_export_first(path);
  assert_string_equal(g_ptr_array_index(outcome.result->paths, 0), first);
  g_autofree char *words = spv_chart_export_words(outcome.result);
  g_autofree char *end = g_strdup_printf("written to %s.", folder);
  assert_true(g_str_has_suffix(words, end));
  remove_folder(folder);
}

static void
what_goes_wrong_is_told_and_leaves_nothing(void **state) {
  g_autofree char *folder = a_folder();
  g_auto(Outcome) cancelled = { 0 }, blocked = { 0 };
  g_autoptr(GCancellable) cancellable = g_cancellable_new();

  (void) state;
  g_cancellable_cancel(cancellable);
  write_sampler(folder, "sampler.pdf", cancellable, &cancelled);
  assert_true(g_error_matches(cancelled.error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
  assert_int_equal(count_files(folder), 0);
  /* A file stands where the folder should be. */
  g_autofree char *file = g_build_filename(folder, "pages", NULL);
  assert_true(g_file_set_contents(file, "", 0, NULL));
  write_sampler(folder, "pages/sampler.pdf", NULL, &blocked);
  assert_null(blocked.result);
  assert_non_null(blocked.error);
  assert_int_equal(count_files(folder), 1);
  remove_folder(folder);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(options_come_from_the_last_export_and_the_scheme),
    cmocka_unit_test(names_get_a_suffix_and_pages_a_number),
    cmocka_unit_test(a_pdf_is_one_file_and_said_so),
    cmocka_unit_test(pages_are_files_and_their_first_is_foretold),
    cmocka_unit_test(what_goes_wrong_is_told_and_leaves_nothing),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
