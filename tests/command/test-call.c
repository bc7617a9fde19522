/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What goes wrong is said in one line, whatever the words hold. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>

#include "command/call.h"

static void
assert_failure(const char *where, const char *message, const char *expected) {
  g_autoptr(GString) out = g_string_new(NULL);
  g_autoptr(GString) err = g_string_new(NULL);
  SpvCall call = { .out = out, .err = err, .percent = -1 };
  assert_int_equal(spv_call_fail(&call, where, message), SPV_EXIT_FAILED);
  assert_string_equal(err->str, expected);
  assert_string_equal(out->str, "");
}

static void
a_failure_names_the_program_and_the_place(void **state) {
  (void) state;
  assert_failure("a.json", "it is empty; draw something",
                 "spolvero-cli: a.json: it is empty; draw something\n");
  assert_failure(NULL, "a.json:1:2: what", "spolvero-cli: a.json:1:2: what\n");
}

static void
a_failure_is_one_line(void **state) {
  (void) state;
  assert_failure("two\nlines", "what,\n  and what to do\r\n\t($.path)\n",
                 "spolvero-cli: two lines: what, and what to do ($.path)\n");
}

static void
a_failure_is_utf8(void **state) {
  (void) state;
  assert_failure("a\xff.json", "gone", "spolvero-cli: a\uFFFD.json: gone\n");
}

static void
progress_is_silent_unless_somebody_looks(void **state) {
  (void) state;
  g_autoptr(GString) out = g_string_new(NULL);
  g_autoptr(GString) err = g_string_new(NULL);
  SpvCall call = { .out = out, .err = err, .percent = -1 };
  spv_call_progress(0.5, &call);
  assert_int_equal(call.percent, -1);
  spv_call_progress_end(&call);
  assert_string_equal(err->str, "");
  assert_string_equal(out->str, "");
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(a_failure_names_the_program_and_the_place),
    cmocka_unit_test(a_failure_is_one_line),
    cmocka_unit_test(a_failure_is_utf8),
    cmocka_unit_test(progress_is_silent_unless_somebody_looks),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
