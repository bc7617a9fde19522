/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every broken scheme in tests/data/broken/ is refused with the message beside it: FAULT.scheme.json, and
 * FAULT.expected with what follows the file's name and its colon. Run with SPV_TEST_WRITE=1, it writes the
 * messages of now instead: read what changed before you keep it. */
#include "scheme-test.h"

#include <string.h>

#define SUFFIX ".scheme.json"
#define ENOUGH 40

static char *
message_of(const char *path, const char *file) {
  GError *error = NULL;
  g_autofree char *text = NULL;
  gsize length;
  assert_true(g_file_get_contents(path, &text, &length, NULL));
  g_autoptr(SpvScheme) scheme = spv_scheme_parse(text, length, file, &error);
  if (scheme != NULL)
    fail_msg("%s is not broken", file);
  assert_int_equal(error->domain, SPV_SCHEME_ERROR);
  g_autofree char *start = g_strdup_printf("%s:", file);
  if (!g_str_has_prefix(error->message, start))
    fail_msg("\"%s\" does not start with the file's name", error->message);
  char *message = g_strdup_printf("%s\n", error->message + strlen(start));
  g_error_free(error);
  return message;
}

static void
check_message(const char *folder, const char *file) {
  g_autofree char *path = g_build_filename(folder, file, NULL);
  g_autofree char *message = message_of(path, file);
  g_autofree char *fault = g_strndup(file, strlen(file) - strlen(SUFFIX));
  g_autofree char *expected_file = g_strconcat(fault, ".expected", NULL);
  g_autofree char *expected_path = g_build_filename(folder, expected_file, NULL);
  if (g_getenv("SPV_TEST_WRITE") != NULL)
    assert_true(g_file_set_contents(expected_path, message, -1, NULL));
  g_autofree char *expected = test_read(expected_path);
  if (strcmp(message, expected) != 0)
    fail_msg("%s: says\n%sand should say\n%s", file, message, expected);
}

static void
every_broken_scheme_has_its_message(void **state) {
  (void) state;
  g_autofree char *folder = test_data("broken");
  g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
  assert_non_null(dir);
  const char *file;
  guint n_schemes = 0, n_expected = 0;
  while ((file = g_dir_read_name(dir)) != NULL) {
    if (g_str_has_suffix(file, ".expected")) {
      n_expected++;
      continue;
    }
    assert_true(g_str_has_suffix(file, SUFFIX));
    check_message(folder, file);
    n_schemes++;
  }
  if (g_getenv("SPV_TEST_WRITE") == NULL)
    assert_int_equal(n_expected, n_schemes);
  assert_true(n_schemes >= ENOUGH);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(every_broken_scheme_has_its_message),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
