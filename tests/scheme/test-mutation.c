/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A good file with a few bytes changed is read or refused with a place, never anything else; what is read
 * comes back from its own text. The same bytes every run. */
#include "scheme-test.h"

#include <string.h>

#define ROUNDS 6000

static const char *const pieces[] = {
  "{", "}",   "[",   "]",      ",",       ":",    "\"", "\\",           "null",         "true",
  "-", "1e9", "0.0", "\"id\"", "\\u0000", "\xc3", "\n", "\xef\xbb\xbf", "999999999999", "{\"mm\":1}"
};

/* One change at a random place: a byte flipped, some bytes cut, a piece put in, or a part repeated. */
static void
mutate(GString *text, GRand *random) {
  gsize at = (gsize) g_rand_int_range(random, 0, (gint32) text->len);
  gsize rest = text->len - at;
  gsize some = (gsize) g_rand_int_range(random, 1, 12);
  some = MIN(rest, some);
  switch (g_rand_int_range(random, 0, 4)) {
  case 0:
    text->str[at] = (char) (text->str[at] ^ (1 << g_rand_int_range(random, 0, 8)));
    break;
  case 1:
    g_string_erase(text, (gssize) at, (gssize) some);
    break;
  case 2:
    g_string_insert(text, (gssize) at, pieces[g_rand_int_range(random, 0, G_N_ELEMENTS(pieces))]);
    break;
  default: {
    g_autofree char *part = g_strndup(text->str + at, some);
    g_string_insert_len(text, (gssize) at, part, (gssize) some);
  }
  }
}

/* "m:LINE:COLUMN: ", both at least 1, and a path in brackets at the end. */
static void
assert_has_a_place(const char *message) {
  g_autoptr(GRegex)
      form = g_regex_new("^m:[1-9][0-9]*:[1-9][0-9]*: .* \\(\\$.*\\)$", G_REGEX_DOTALL, 0, NULL);
  if (!g_utf8_validate(message, -1, NULL) || !g_regex_match(form, message, 0, NULL))
    fail_msg("\"%s\" has no place", message);
}

static gboolean
check_text(const GString *text) {
  GError *error = NULL;
  g_autoptr(SpvScheme) scheme = spv_scheme_parse(text->str, text->len, "m", &error);
  if (scheme == NULL) {
    assert_has_a_place(error->message);
    g_error_free(error);
    return FALSE;
  }
  assert_null(error);
  gsize length;
  g_autofree char *once = spv_scheme_to_text(scheme, &length);
  g_autoptr(SpvScheme) again = spv_scheme_parse(once, length, "m", &error);
  if (again == NULL)
    fail_msg("reads once only: %s", error->message);
  g_autofree char *twice = spv_scheme_to_text(again, NULL);
  assert_string_equal(once, twice);
  return TRUE;
}

static void
changed_bytes_are_read_or_refused(void **state) {
  (void) state;
  static const char *const samples[] = { "scheme-full.scheme.json", "scheme-newer.scheme.json",
                                         "scheme-laid.scheme.json" };
  guint n_read = 0, n_refused = 0;
  for (guint i = 0; i < G_N_ELEMENTS(samples); i++) {
    g_autoptr(GRand) random = g_rand_new_with_seed(4711 + i);
    g_autofree char *path = test_data(samples[i]);
    g_autofree char *good = test_read(path);
    for (guint round = 0; round < ROUNDS / G_N_ELEMENTS(samples); round++) {
      g_autoptr(GString) text = g_string_new(good);
      for (gint n = g_rand_int_range(random, 1, 4); n > 0; n--)
        mutate(text, random);
      if (check_text(text))
        n_read++;
      else
        n_refused++;
    }
  }
  /* Both happen, or the changes would not be worth the name. */
  assert_true(n_read > ROUNDS / 50);
  assert_true(n_refused > ROUNDS / 2);
}

/* Cut off at each byte. */
static void
a_file_cut_off_anywhere_is_refused(void **state) {
  (void) state;
  g_autofree char *path = test_data("scheme-small.scheme.json");
  g_autofree char *good = test_read(path);
  /* Without the last bracket and line feed. */
  for (gsize length = 0; length + 2 <= strlen(good); length++) {
    g_autoptr(GString) text = g_string_new_len(good, (gssize) length);
    assert_false(check_text(text));
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(changed_bytes_are_read_or_refused),
    cmocka_unit_test(a_file_cut_off_anywhere_is_refused),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
