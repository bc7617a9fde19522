/* SPDX-License-Identifier: GPL-3.0-or-later */
/* JSON on standard output: numbers as short as they can be, and still the same numbers. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>
#include <math.h>

#include "command/json-text.h"

static void
assert_number(double number, const char *expected) {
  g_autoptr(GString) out = g_string_new(NULL);
  spv_json_print_number(number, out);
  assert_string_equal(out->str, expected);
}

static void
numbers_have_their_shortest_form(void **state) {
  (void) state;
  assert_number(0, "0");
  assert_number(-0.0, "0");
  assert_number(12, "12");
  assert_number(1.4, "1.4");
  assert_number(-0.05, "-0.05");
  assert_number(28 * 0.05, "1.4000000000000001"); /* not the double that 1.4 means, but the next one */
}

static void
every_number_reads_back_as_itself(void **state) {
  (void) state;
  GRand *random = g_rand_new_with_seed(20261104);
  for (int i = 0; i < 20000; i++) {
    double number = g_rand_double_range(random, -1, 1) * pow(10, g_rand_int_range(random, -12, 12));
    g_autoptr(GString) out = g_string_new(NULL);
    spv_json_print_number(number, out);
    assert_true(g_ascii_strtod(out->str, NULL) == number);
    json_t *read = json_loads(out->str, JSON_DECODE_ANY, NULL);
    assert_non_null(read);
    json_decref(read);
  }
  g_rand_free(random);
}

static void
innermost_containers_take_one_line(void **state) {
  (void) state;
  json_t *value = json_pack("{s:s, s:[{s:i, s:f}], s:[], s:b}", "name", "a \"b\"\n–", "list", "x", 1, "y",
                            2.5, "none", "is", 1);
  g_autoptr(GString) out = g_string_new(NULL);
  spv_json_print(value, out);
  assert_string_equal(out->str, "{\n"
                                "  \"name\": \"a \\\"b\\\"\\n–\",\n"
                                "  \"list\": [\n"
                                "    {\"x\": 1, \"y\": 2.5}\n"
                                "  ],\n"
                                "  \"none\": [],\n"
                                "  \"is\": true\n"
                                "}\n");
  json_t *read = json_loads(out->str, 0, NULL);
  assert_true(json_equal(read, value));
  json_decref(read);
  json_decref(value);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(numbers_have_their_shortest_form),
    cmocka_unit_test(every_number_reads_back_as_itself),
    cmocka_unit_test(innermost_containers_take_one_line),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
