/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tables keep their columns in line, whatever is in them. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>

#include "command/table.h"

static void
assert_table(const char *alignment, const char *const *cells, guint indent, const char *expected) {
  g_autoptr(SpvTable) table = spv_table_new(alignment);
  g_autoptr(GString) out = g_string_new(NULL);
  guint n = 0;
  while (alignment[n])
    n++;
  for (; *cells; cells += n)
    spv_table_add(table, cells);
  spv_table_print(table, out, indent);
  assert_string_equal(out->str, expected);
}

static void
columns_keep_to_their_side(void **state) {
  (void) state;
  const char *const cells[] = { "dot", "kind", "x", "1", "tip", "-0.50", "12", "root", "10.25", NULL };
  assert_table("rlr", cells, 2,
               "  dot  kind      x\n"
               "    1  tip   -0.50\n"
               "   12  root  10.25\n");
}

static void
no_row_ends_in_a_blank(void **state) {
  (void) state;
  const char *const cells[] = { "a", "long word", "b", "c", "d", "", NULL };
  assert_table("ll", cells, 0, "a  long word\nb  c\nd\n");
}

static void
an_empty_cell_keeps_its_place(void **state) {
  (void) state;
  const char *const cells[] = { "1", "upper", "", "lower", NULL };
  assert_table("rl", cells, 1, " 1  upper\n    lower\n");
}

static void
letters_count_by_the_places_they_take(void **state) {
  (void) state;
  /* An en dash takes one place of three bytes; a wide letter two; a combining mark none. */
  const char *const cells[] = { "1–12", "x", "盾", "x", "e\u0301", "x", NULL };
  assert_table("ll", cells, 0, "1–12  x\n盾    x\ne\u0301     x\n");
}

static void
a_table_without_rows_prints_nothing(void **state) {
  (void) state;
  const char *const cells[] = { NULL };
  assert_table("ll", cells, 2, "");
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(columns_keep_to_their_side),
    cmocka_unit_test(no_row_ends_in_a_blank),
    cmocka_unit_test(an_empty_cell_keeps_its_place),
    cmocka_unit_test(letters_count_by_the_places_they_take),
    cmocka_unit_test(a_table_without_rows_prints_nothing),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
