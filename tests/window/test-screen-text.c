/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Names as they are typed, and the core's words on screen. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "window/screen-text.h"

static void
a_name_is_one_line_without_blanks_at_its_ends(void **state) {
  static const char *const rows[][2] = {
    { "reed edge", "reed edge" },
    { "  reed edge \t", "reed edge" },
    { "reed\nedge\r\n", "reed edge" },
    { " \n ", "" },
    { "Ö, tenné \u2009x", "Ö, tenné \u2009x" },
    { "", "" },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autofree char *name = spv_screen_text_name(rows[i][0]);
    assert_string_equal(name, rows[i][1]);
  }
}

/* Characters count, not bytes: so many does a scheme file hold. */
static void
a_long_name_is_cut_at_whole_characters(void **state) {
  g_autoptr(GString) text = g_string_new(NULL);
  g_autofree char *name = NULL;

  (void) state;
  for (int i = 0; i < SPV_SCREEN_TEXT_NAME_MAX + 1; i++)
    g_string_append(text, "é");
  name = spv_screen_text_name(text->str);
  assert_int_equal(g_utf8_strlen(name, -1), SPV_SCREEN_TEXT_NAME_MAX);
  assert_true(g_utf8_validate(name, -1, NULL));
}

static void
a_message_becomes_a_sentence(void **state) {
  static const char *const rows[][2] = {
    { "the width must be from 0.5 to 500\u2009mm", "The width must be from 0.5 to 500\u202fmm." },
    { "Ready.", "Ready." },
    { "did you mean engrailed?", "Did you mean engrailed?" },
    { "éclair", "Éclair." },
    { "“Foot” must not be below 0", "“Foot” must not be below 0." },
    { "", "" },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autofree char *sentence = spv_screen_text_sentence(rows[i][0]);
    assert_string_equal(sentence, rows[i][1]);
  }
}

static void
words_go_on_small_in_english(void **state) {
  g_autofree char *inside = spv_screen_text_inside("Top edge");

  (void) state;
  assert_string_equal(inside, "top edge");
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(a_name_is_one_line_without_blanks_at_its_ends),
    cmocka_unit_test(a_long_name_is_cut_at_whole_characters),
    cmocka_unit_test(a_message_becomes_a_sentence),
    cmocka_unit_test(words_go_on_small_in_english),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
