/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers within words. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "window/roman-text.h"

static void
numbers_become_numerals_and_words_stay(void **state) {
  /* The numerals are those of any handbook of numbers: 4 IV, 9 IX, 40 XL, 1444, 3999. */
  static const char *const rows[][2] = {
    { "7", "VII" },           { "Row 14", "Row XIV" },
    { "4-9-40", "IV-IX-XL" }, { "1444 1944", "MCDXLIV MCMXLIV" },
    { "3999", "MMMCMXCIX" },  { "007", "VII" },
    { "Nº 3é", "Nº IIIé" },   { "0 12", "0 XII" },
    { "4000 2", "4000 II" },  { "99999999999999999999999 1", "99999999999999999999999 I" },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autofree char *roman = spv_roman_text(rows[i][0]);
    assert_string_equal(roman, rows[i][1]);
  }
}

static void
without_a_number_there_is_nothing_to_do(void **state) {
  static const char *const rows[] = { "", "Wardens", "0", "4000", "VII" };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++)
    assert_null(spv_roman_text(rows[i]));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(numbers_become_numerals_and_words_stay),
    cmocka_unit_test(without_a_number_there_is_nothing_to_do),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
