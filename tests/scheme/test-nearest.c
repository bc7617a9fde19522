/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which words a mistyped one is said to be near to. */
#include "scheme-test.h"

#include <string.h>

#include "scheme/nearest-private.h"

static const char *const words[] = { "bend", "bendlet", "per-bend", "fess", "pale", "pall", "cross" };

static const char *
word_at(guint index) {
  return words[index];
}

static void
the_likest_come_first(void **state) {
  (void) state;
  static const struct {
    const char *word, *nearest;
  } rows[] = {
    { "bend", "bend" },        /* the word itself */
    { "bedn", "bend" },        /* two letters swapped */
    { "per-bnd", "per-bend" }, /* one left out */
    { "palle", "pale, pall" }, /* one too many: of equals the first of the list */
    { "fesss", "fess" },       /* likewise */
    { "benlet", "bendlet, bend" },
    { "stripes", "" }, /* like none */
    { "", "" },
  };
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autofree char *nearest = spv_nearest_words(rows[i].word, word_at, G_N_ELEMENTS(words), 3);
    assert_string_equal(nearest, rows[i].nearest);
  }
}

static void
no_more_are_named_than_asked(void **state) {
  (void) state;
  g_autofree char *one = spv_nearest_words("palle", word_at, G_N_ELEMENTS(words), 1);
  assert_string_equal(one, "pale");
  g_autofree char *none = spv_nearest_words("palle", word_at, 0, 3);
  assert_string_equal(none, "");
}

/* Words longer than any key are looked at in part. */
static void
a_word_of_any_length_is_taken(void **state) {
  (void) state;
  g_autofree char *endless = g_strnfill(1000000, 'b');
  g_autofree char *nearest = spv_nearest_words(endless, word_at, G_N_ELEMENTS(words), 2);
  assert_true(strlen(nearest) < 40);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(the_likest_come_first),
    cmocka_unit_test(no_more_are_named_than_asked),
    cmocka_unit_test(a_word_of_any_length_is_taken),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
