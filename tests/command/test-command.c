/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The dispatcher: help, the version, and calls that are wrong. None of these reads a file. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>
#include <string.h>

#include "command/run.h"
#include "config.h"

static const char *const verbs[] = { "new", "blazon", "describe", "check", "guide", "sheet", "chart" };

static void
help_names_every_verb_and_no_other(void **state) {
  (void) state;
  g_autoptr(SpvRun) run = spv_run("--help", NULL);
  assert_int_equal(run->status, SPV_EXIT_DONE);
  assert_string_equal(run->err->str, "");
  assert_true(g_str_has_prefix(run->out->str, "Usage: spolvero-cli VERB"));
  g_auto(GStrv) lines = g_strsplit(run->out->str, "\n", -1);
  guint n = 0;
  for (char **line = lines; *line; line++) {
    if (!g_str_has_prefix(*line, "  ") || (*line)[2] == '-' || (*line)[2] == ' ')
      continue;
    assert_true(n < G_N_ELEMENTS(verbs));
    g_auto(GStrv) words = g_strsplit(*line + 2, " ", 2);
    assert_string_equal(words[0], verbs[n++]);
  }
  assert_int_equal(n, G_N_ELEMENTS(verbs));

  g_autoptr(SpvRun) brief = spv_run("-h", NULL);
  assert_int_equal(brief->status, SPV_EXIT_DONE);
  assert_string_equal(brief->out->str, run->out->str);
}

static void
version_is_the_programs(void **state) {
  (void) state;
  g_autoptr(SpvRun) run = spv_run("--version", NULL);
  assert_int_equal(run->status, SPV_EXIT_DONE);
  assert_string_equal(run->out->str, "spolvero-cli " SPV_VERSION "\n");
  assert_string_equal(run->err->str, "");
}

static void
each_verb_has_help_of_its_own(void **state) {
  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(verbs); i++) {
    /* Help asks for nothing else: no FILE is named. */
    g_autoptr(SpvRun) run = spv_run(verbs[i], "--help", NULL);
    assert_int_equal(run->status, SPV_EXIT_DONE);
    assert_string_equal(run->err->str, "");
    g_autofree char *usage = g_strdup_printf("Usage: spolvero-cli %s ", verbs[i]);
    assert_true(g_str_has_prefix(run->out->str, usage));
    assert_non_null(strstr(run->out->str, "  -h, --help"));
    g_auto(GStrv) lines = g_strsplit(run->out->str, "\n", -1);
    for (char **line = lines; *line; line++)
      assert_true(g_utf8_strlen(*line, -1) <= 80);
    g_autoptr(SpvRun) brief = spv_run(verbs[i], "-h", NULL);
    assert_string_equal(brief->out->str, run->out->str);
  }
}

/* A call, and what its first line on standard error must hold. */
typedef struct {
  const char *arguments[8];
  const char *message;
} WrongCall;

static const WrongCall wrong_calls[] = {
  { { NULL }, "name a verb" },
  { { "paint" }, "no verb “paint”" },
  { { "--json" }, "no verb “--json”" },
  { { "sheet" }, "name a scheme file" },
  { { "sheet", "a" }, "with -o" },
  { { "sheet", "a", "-o", "" }, "with -o" },
  { { "sheet", "a", "-o" }, "-o" },
  { { "sheet", "a", "b", "-o", "c" }, "“b” is one too many" },
  { { "sheet", "a", "-o", "c", "--dpi", "149" }, "149 dots an inch is out of range; take 150 to 2400" },
  { { "sheet", "a", "-o", "c", "--dpi=2401" }, "2401 dots an inch is out of range; take 150 to 2400" },
  { { "sheet", "a", "-o", "c", "--dpi", "fine" }, "fine" },
  { { "sheet", "a", "-o", "c", "--dpi", "99999999999" }, "99999999999" },
  { { "sheet", "a", "-o", "c", "--paper", "a3" }, "no paper is called “a3”; take one of: a4, a5, letter" },
  { { "sheet", "a", "-o", "c", "--format", "gif" }, "no format is called “gif”; take one of: png, pdf, svg" },
  { { "sheet", "a", "-o", "c", "--content", "dots" }, "dots" },
  { { "sheet", "a", "-o", "c", "--content", "" }, "" },
  { { "sheet", "a", "-o", "c", "--date", "" }, "--date is empty" },
  { { "sheet", "a", "-o", "c", "--date", " " }, "--date is empty" },
  { { "sheet", "a", "-o", "c", "--date", "\xff" }, "--date is not UTF-8" },
  { { "sheet", "a", "-o", "c", "--colour" }, "--colour" },
  { { "guide" }, "name a scheme file" },
  { { "guide", "a", "b" }, "“b” is one too many" },
  { { "guide", "a", "--panel" }, "--panel" },
  { { "guide", "a", "--paper", "a4" }, "--paper" },
  { { "check" }, "name a scheme file" },
  { { "check", "a", "b" }, "“b” is one too many" },
  { { "check", "a", "--strict" }, "--strict" },
  { { "new" }, "--list" },
  { { "new", "--harness", "" }, "--list" },
  { { "new", "--harness", "armoured-trooper-32" }, "with -o" },
  { { "new", "--harness", "armoured-trooper-32", "-o", "" }, "with -o" },
  { { "new", "--harness", "armoured-trooper-32", "file" }, "“file” is one word too many" },
  { { "new", "--harness", "armoured-trooper-32", "-o", "-", "--title", "" }, "--title is empty" },
  { { "new", "--harness", "armoured-trooper-32", "-o", "-", "--title", "\xc3" }, "--title is not UTF-8" },
  { { "new", "--list", "-o", "-" }, "--list goes with no other option" },
  { { "new", "--list", "--force" }, "--list goes with no other option" },
};

static void
a_wrong_call_says_what_is_wrong_and_where_help_is(void **state) {
  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(wrong_calls); i++) {
    const WrongCall *wrong = &wrong_calls[i];
    g_autoptr(SpvRun) run = spv_run_with(wrong->arguments, NULL);
    g_auto(GStrv) lines = g_strsplit(run->err->str, "\n", -1);
    const char *verb = wrong->arguments[0];
    gboolean known = verb && (g_str_equal(verb, "new") || g_str_equal(verb, "check") ||
                              g_str_equal(verb, "guide") || g_str_equal(verb, "sheet"));
    g_autofree char *hint = g_strdup_printf("Try “spolvero-cli %s%s--help”.", known ? verb : "",
                                            known ? " " : "");
    if (run->status != SPV_EXIT_USAGE || g_strv_length(lines) != 3 || !strstr(lines[0], wrong->message))
      fail_msg("call %zu gives %d: %s", i, run->status, run->err->str);
    assert_string_equal(run->out->str, "");
    assert_true(g_str_has_prefix(lines[0], "spolvero-cli: "));
    assert_true(g_utf8_validate(lines[0], -1, NULL));
    assert_string_equal(lines[1], hint);
    assert_string_equal(lines[2], "");
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(help_names_every_verb_and_no_other),
    cmocka_unit_test(version_is_the_programs),
    cmocka_unit_test(each_verb_has_help_of_its_own),
    cmocka_unit_test(a_wrong_call_says_what_is_wrong_and_where_help_is),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
