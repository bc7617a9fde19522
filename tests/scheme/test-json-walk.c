/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Places in a JSON text: from a path to a position, and from a position to a path. */
#include "scheme-test.h"

#include "scheme/json-walk-private.h"

#include <string.h>

static const char text[] = "{\n"
                           "  \"a\": [1, {\"b\": \"x,}]\\\"\"}, [[], [true]]],\n"
                           "  \"\\u0062\": {\"ä\": null, \"c d\": -1.5e3},\n"
                           "  \"\": 7\n"
                           "}\n";

/* Keys by name, items as "#3"; the places are counted by hand. */
static const struct {
  const char *steps[4];
  const char *path;
  gsize line, column;         /* of the value; 0 when there is none */
  gsize key_line, key_column; /* of the key; 0 for an item */
} rows[] = {
  { { NULL }, "$", 1, 1, 0, 0 },
  { { "a", NULL }, "$.a", 2, 8, 2, 3 },
  { { "a", "#0", NULL }, "$.a[0]", 2, 9, 0, 0 },
  { { "a", "#1", NULL }, "$.a[1]", 2, 12, 0, 0 },
  { { "a", "#1", "b", NULL }, "$.a[1].b", 2, 18, 2, 13 },
  { { "a", "#2", NULL }, "$.a[2]", 2, 29, 0, 0 },
  { { "a", "#2", "#0", NULL }, "$.a[2][0]", 2, 30, 0, 0 },
  { { "a", "#2", "#1", "#0" }, "$.a[2][1][0]", 2, 35, 0, 0 },
  { { "b", NULL }, "$.b", 3, 13, 3, 3 },
  { { "b", "ä", NULL }, "$.b['ä']", 3, 19, 3, 14 },
  { { "b", "c d", NULL }, "$.b['c d']", 3, 32, 3, 25 },
  { { "", NULL }, "$['']", 4, 7, 4, 3 },
  { { "c", NULL }, "$.c", 0, 0, 0, 0 },
  { { "a", "#3", NULL }, "$.a[3]", 0, 0, 0, 0 },
  { { "a", "b", NULL }, "$.a.b", 0, 0, 0, 0 },
  { { "b", "#0", NULL }, "$.b[0]", 0, 0, 0, 0 },
};

static const SpvJsonPath *
make_path(SpvJsonPath *chain, const char *const *steps) {
  chain[0] = (SpvJsonPath){ NULL, NULL, 0 };
  for (guint i = 0; i < 4; i++) {
    if (steps[i] == NULL)
      return &chain[i];
    gboolean is_item = steps[i][0] == '#';
    chain[i + 1] = (SpvJsonPath){ &chain[i], is_item ? NULL : steps[i],
                                  is_item ? (gsize) (steps[i][1] - '0') : 0 };
  }
  return &chain[4];
}

static void
assert_position(gsize offset, gsize line, gsize column, const char *path) {
  gsize at_line, at_column;
  if (line == 0) {
    assert_int_equal(offset, strlen(text));
    return;
  }
  spv_json_position(text, offset, &at_line, &at_column);
  if (at_line != line || at_column != column)
    fail_msg("%s is at %zu:%zu, not %zu:%zu", path, at_line, at_column, line, column);
}

static void
values_and_keys_are_found(void **state) {
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    SpvJsonPath chain[5];
    const SpvJsonPath *path = make_path(chain, rows[i].steps);
    g_autofree char *words = spv_json_path_to_string(path);
    assert_string_equal(words, rows[i].path);
    assert_position(spv_json_find_value(text, strlen(text), path), rows[i].line, rows[i].column, words);
    if (path->key != NULL)
      assert_position(spv_json_find_key(text, strlen(text), path), rows[i].key_line, rows[i].key_column,
                      words);
  }
}

static void
tokens_know_their_path(void **state) {
  (void) state;
  static const struct {
    const char *before; /* the parser stopped after this */
    const char *token, *path;
  } places[] = {
    { "[1", "1", "$.a[0]" },        { "{\"b\"", "\"b\"", "$.a[1].b" },  { "[true", "true", "$.a[2][1][0]" },
    { "null", "null", "$.b['ä']" }, { "-1.5", "-1.5e3", "$.b['c d']" }, { ": 7", "7", "$['']" },
  };
  for (guint i = 0; i < G_N_ELEMENTS(places); i++) {
    gsize stopped = (gsize) (strstr(text, places[i].before) - text) + strlen(places[i].before), end;
    g_autofree char *path = NULL;
    gsize start = spv_json_token_before(text, strlen(text), stopped, &end, &path);
    g_autofree char *token = g_strndup(text + start, end - start);
    assert_string_equal(token, places[i].token);
    assert_string_equal(path, places[i].path);
  }
}

static void
columns_are_characters_and_lines_end_with_line_feeds(void **state) {
  (void) state;
  gsize line, column;
  spv_json_position("ä盾x", strlen("ä盾"), &line, &column);
  assert_int_equal(line, 1);
  assert_int_equal(column, 3);
  spv_json_position("a\r\n\r\nb", 5, &line, &column);
  assert_int_equal(line, 3);
  assert_int_equal(column, 1);
}

static void
depth_is_found_outside_of_text_only(void **state) {
  (void) state;
  const char *deep = "[\"[[[\\\"[[\", {\"[\": [[]]}]";
  assert_int_equal(spv_json_find_too_deep(deep, strlen(deep), 4), strlen(deep));
  assert_int_equal(spv_json_find_too_deep(deep, strlen(deep), 3), strstr(deep, "[]") - deep);
  assert_int_equal(spv_json_find_too_deep(deep, strlen(deep), 0), 0);
}

/* Whatever the bytes are, the walk ends, and within the text: run it under the sanitizers, too. */
static void
broken_text_is_walked_to_its_end(void **state) {
  (void) state;
  static const char alphabet[] = "{}[]\",:\\ \n1a\xc3";
  g_autoptr(GRand) random = g_rand_new_with_seed(9);
  for (guint i = 0; i < 20000; i++) {
    gsize length = (gsize) g_rand_int_range(random, 0, 40);
    g_autofree char *bytes = g_malloc(length + 1);
    for (gsize j = 0; j < length; j++)
      bytes[j] = alphabet[g_rand_int_range(random, 0, sizeof alphabet - 1)];
    SpvJsonPath root = { NULL, NULL, 0 }, key = { &root, "a", 0 }, item = { &key, NULL, 1 };
    assert_true(spv_json_find_value(bytes, length, &item) <= length);
    assert_true(spv_json_find_key(bytes, length, &key) <= length);
    gsize end;
    g_autofree char *path = NULL;
    assert_true(spv_json_token_before(bytes, length, length / 2, &end, &path) <= length);
    assert_true(end <= length);
    assert_true(path[0] == '$');
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(values_and_keys_are_found),
    cmocka_unit_test(tokens_know_their_path),
    cmocka_unit_test(columns_are_characters_and_lines_end_with_line_feeds),
    cmocka_unit_test(depth_is_found_outside_of_text_only),
    cmocka_unit_test(broken_text_is_walked_to_its_end),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
