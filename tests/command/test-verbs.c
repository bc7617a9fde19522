/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The verbs with a scheme to work on: what they say into a buffer, and each way in which they fail. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>
#include <glib/gstdio.h>
#include <jansson.h>
#include <string.h>
#include <unistd.h>

#include "command/run.h"

/* The scheme of the tests, and a folder of each test's own. */
typedef struct {
  char *scheme;
  char *folder;
} Fixture;

static int
set_up(void **state) {
  Fixture *fixture = g_new0(Fixture, 1);
  fixture->scheme = g_build_filename(g_getenv("SPV_TEST_SOURCE_DIR"), "tests", "command", "small.scheme.json",
                                     NULL);
  fixture->folder = spv_run_folder();
  *state = fixture;
  return fixture->folder ? 0 : -1;
}

static int
tear_down(void **state) {
  Fixture *fixture = *state;
  spv_run_folder_remove(fixture->folder);
  g_free(fixture->scheme);
  g_free(fixture->folder);
  g_free(fixture);
  return 0;
}

/* RUN failed, printed nothing, and said one line that holds MESSAGE. */
static void
assert_failed(const SpvRun *run, const char *message) {
  if (run->status != SPV_EXIT_FAILED || !strstr(run->err->str, message))
    fail_msg("status %d: %s", run->status, run->err->str);
  assert_string_equal(run->out->str, "");
  assert_true(g_str_has_prefix(run->err->str, "spolvero-cli: "));
  assert_ptr_equal(strchr(run->err->str, '\n'), run->err->str + run->err->len - 1);
}

static guint
count_files(const char *folder) {
  g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
  guint n = 0;
  while (dir && g_dir_read_name(dir))
    n++;
  return n;
}

static void
guide_goes_into_the_buffer(void **state) {
  const Fixture *fixture = *state;
  g_autoptr(SpvRun) run = spv_run("guide", fixture->scheme, NULL);
  assert_int_equal(run->status, SPV_EXIT_DONE);
  assert_string_equal(run->err->str, "");
  assert_true(g_str_has_prefix(run->out->str, "Quarry Row Pikes\n"));
  assert_non_null(strstr(run->out->str, "    9  root  teeth  -5.40  8.00  dexter   8.00      -14.00\n"));
}

static void
options_may_stand_before_the_file_or_after(void **state) {
  const Fixture *fixture = *state;
  g_autoptr(SpvRun) before = spv_run("guide", "--panel=strap", "--json", fixture->scheme, NULL);
  g_autoptr(SpvRun) after = spv_run("guide", fixture->scheme, "--json", "--panel", "strap", NULL);
  assert_int_equal(before->status, SPV_EXIT_DONE);
  assert_string_equal(before->out->str, after->out->str);
  json_t *root = json_loads(after->out->str, 0, NULL);
  assert_int_equal(json_array_size(json_object_get(root, "panels")), 1);
  json_decref(root);
}

static void
an_unknown_panel_is_named_with_the_known_ones(void **state) {
  const Fixture *fixture = *state;
  const char *message = "no panel is called “cloak”; take one of: plate, spare, strap\n";
  g_autoptr(SpvRun) guide = spv_run("guide", fixture->scheme, "--panel", "cloak", NULL);
  assert_failed(guide, message);
  g_autoptr(SpvRun) check = spv_run("check", fixture->scheme, "--panel", "cloak", NULL);
  assert_failed(check, message);
  g_autoptr(SpvRun)
      sheet = spv_run("sheet", fixture->scheme, "-o", fixture->folder, "--panel", "cloak", NULL);
  assert_failed(sheet, "cloak");
  assert_non_null(strstr(sheet->err->str, fixture->scheme));
  assert_int_equal(count_files(fixture->folder), 0);
}

static void
a_missing_scheme_fails_each_verb(void **state) {
  const Fixture *fixture = *state;
  g_autofree char *missing = g_build_filename(fixture->folder, "gone.scheme.json", NULL);
  g_autoptr(SpvRun) guide = spv_run("guide", missing, NULL);
  assert_failed(guide, missing);
  g_autoptr(SpvRun) check = spv_run("check", missing, NULL);
  assert_failed(check, missing);
  g_autoptr(SpvRun) sheet = spv_run("sheet", missing, "-o", fixture->folder, NULL);
  assert_failed(sheet, missing);
}

static void
a_panel_too_large_for_the_paper_is_said(void **state) {
  const Fixture *fixture = *state;
  g_autofree char *text = NULL;
  assert_true(g_file_get_contents(fixture->scheme, &text, NULL, NULL));
  g_auto(GStrv) halves = g_strsplit(text, "\"width\": 12, \"height\": 8", 2);
  g_autofree char *large = g_strjoinv("\"width\": 480, \"height\": 8", halves);
  g_autofree char *path = g_build_filename(fixture->folder, "large.scheme.json", NULL);
  assert_true(g_file_set_contents(path, large, -1, NULL));
  g_autoptr(SpvRun) run = spv_run("sheet", path, "-o", fixture->folder, NULL);
  assert_failed(run, path);
  assert_int_equal(count_files(fixture->folder), 1);
}

static void
a_call_that_is_stopped_fails_and_leaves_nothing(void **state) {
  const Fixture *fixture = *state;
  g_autoptr(GCancellable) cancellable = g_cancellable_new();
  g_cancellable_cancel(cancellable);
  const char *const check[] = { "check", fixture->scheme, NULL };
  g_autoptr(SpvRun) checked = spv_run_with(check, cancellable);
  assert_failed(checked, "stopped before the check was done");
  const char *const one[] = { "check", fixture->scheme, "--panel", "plate", NULL };
  g_autoptr(SpvRun) checked_one = spv_run_with(one, cancellable);
  assert_failed(checked_one, "stopped before the check was done");
  const char *const sheet[] = { "sheet", fixture->scheme, "-o", fixture->folder, NULL };
  g_autoptr(SpvRun) printed = spv_run_with(sheet, cancellable);
  assert_failed(printed, "stopped");
  assert_int_equal(count_files(fixture->folder), 0);
}

static void
an_unknown_harness_fails(void **state) {
  const Fixture *fixture = *state;
  g_autofree char *path = g_build_filename(fixture->folder, "new.scheme.json", NULL);
  g_autoptr(SpvRun) run = spv_run("new", "--harness", "hovercraft", "-o", path, NULL);
  assert_failed(run, "hovercraft");
  assert_int_equal(count_files(fixture->folder), 0);
}

static void
sheet_prints_the_names_of_its_files(void **state) {
  const Fixture *fixture = *state;
  g_autoptr(SpvRun)
      run = spv_run("sheet", fixture->scheme, "-o", fixture->folder, "--dpi", "150", "--paper", "a5", NULL);
  assert_int_equal(run->status, SPV_EXIT_DONE);
  assert_string_equal(run->err->str, "");
  g_auto(GStrv) paths = g_strsplit(run->out->str, "\n", -1);
  guint n = g_strv_length(paths) - 1;
  assert_string_equal(paths[n], "");
  assert_int_equal(count_files(fixture->folder), n);
  for (guint i = 0; i < n; i++)
    assert_int_equal(g_access(paths[i], F_OK), 0);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)

int
main(void) {
  const struct CMUnitTest tests[] = {
    TEST(guide_goes_into_the_buffer),
    TEST(options_may_stand_before_the_file_or_after),
    TEST(an_unknown_panel_is_named_with_the_known_ones),
    TEST(a_missing_scheme_fails_each_verb),
    TEST(a_panel_too_large_for_the_paper_is_said),
    TEST(a_call_that_is_stopped_fails_and_leaves_nothing),
    TEST(an_unknown_harness_fails),
    TEST(sheet_prints_the_names_of_its_files),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
