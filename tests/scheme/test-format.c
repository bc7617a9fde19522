/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The format's page and its JSON Schema say what the program's tables say. */
#include "scheme-test.h"

#include <math.h>
#include <string.h>

static char *
read_resource(const char *name) {
  g_autofree char *path = g_build_filename(g_getenv("SPV_TEST_SOURCE_DIR"), "resources", name, NULL);
  return test_read(path);
}

/* The line of the page's table that starts with "| `KEY` |". */
static char *
table_line(const char *page, const char *key) {
  g_autofree char *start = g_strdup_printf("\n| `%s` |", key);
  const char *line = strstr(page, start);
  if (line == NULL)
    fail_msg("the page has no line for %s", key);
  return g_strndup(line + 1, strcspn(line + 1, "\n"));
}

static void
assert_has(const char *line, const char *words) {
  if (strstr(line, words) == NULL)
    fail_msg("\"%s\" lacks \"%s\"", line, words);
}

static const char *
basis_words(SpvBasis basis) {
  switch (basis) {
  case SPV_BASIS_NONE:
    return "";
  case SPV_BASIS_WIDTH:
    return "of the width, ";
  case SPV_BASIS_HEIGHT:
    return "of the height, ";
  case SPV_BASIS_SMALLER:
    return "of the smaller side, ";
  }
  return "";
}

/* "`pieces`: count, 2 to 200" */
static char *
measure_words(const SpvMeasureSpec *spec) {
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return g_strdup_printf("`%s`: count, %g to %g", spec->key, spec->min, spec->max);
  case SPV_MEASURE_LENGTH:
    return g_strdup_printf("`%s`: length, %s%g to %g", spec->key, basis_words(spec->basis), spec->min,
                           spec->max);
  case SPV_MEASURE_ANGLE:
    return g_strdup_printf("`%s`: %g to %g", spec->key, spec->min, spec->max);
  case SPV_MEASURE_CHOICE: {
    GString *words = g_string_new(NULL);
    g_string_printf(words, "`%s`: ", spec->key);
    for (guint i = 0; spec->choices[i] != NULL; i++)
      g_string_append_printf(words, "%s`%s`",
                             i == 0                         ? ""
                             : spec->choices[i + 1] == NULL ? " or "
                                                            : ", ",
                             spec->choices[i]);
    return g_string_free(words, FALSE);
  }
  }
  return NULL;
}

static void
the_page_has_every_kind_and_measure(void **state) {
  (void) state;
  g_autofree char *page = read_resource("format.md");
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
    const SpvPatternInfo *info = spv_pattern_info((SpvPatternKind) kind);
    g_autofree char *line = table_line(page, info->key);
    g_autofree char *first = g_utf8_strdown(info->slots[0], -1);
    g_autofree char *second = info->n_slots > 1 ? g_utf8_strdown(info->slots[1], -1) : NULL;
    g_autofree char *slots = second != NULL ? g_strdup_printf("| %s, %s |", first, second)
                                            : g_strdup_printf("| %s |", first);
    assert_has(line, slots);
    guint n_ticks = 0;
    for (const char *p = strstr(line, slots); *p != '\0'; p++)
      n_ticks += *p == ':';
    assert_int_equal(n_ticks, info->n_measures);
    for (guint i = 0; i < info->n_measures; i++) {
      g_autofree char *words = measure_words(&info->measures[i]);
      assert_has(line, words);
    }
  }
}

static void
the_page_has_every_family_hatch_and_surface(void **state) {
  (void) state;
  g_autofree char *page = read_resource("format.md");
  for (guint family = 0; family < SPV_N_OUTLINE_FAMILIES; family++) {
    const SpvOutlineInfo *info = spv_outline_info((SpvOutlineFamily) family);
    g_autofree char *line = table_line(page, info->key);
    for (guint i = 0; i < info->n_own; i++) {
      g_autofree char *own = g_strdup_printf("`%s`:", info->own[i].key);
      assert_has(line, own);
    }
    if (info->n_own == 0)
      assert_has(line, "| none |");
  }
  g_autofree char *hatches = table_line(page, "hatch");
  for (guint hatch = 0; hatch < SPV_N_HATCHES; hatch++) {
    g_autofree char *key = g_strdup_printf("`%s`", spv_hatch_key((SpvHatch) hatch));
    assert_has(hatches, key);
  }
  g_autofree char *surfaces = table_line(page, "surface");
  for (guint kind = 0; kind < SPV_N_SURFACES; kind++) {
    g_autofree char *key = g_strdup_printf("`%s`", spv_surface_kind_key((SpvSurfaceKind) kind));
    assert_has(surfaces, key);
  }
}

static void
the_pages_example_loads(void **state) {
  (void) state;
  g_autofree char *page = read_resource("format.md");
  const char *start = strstr(page, "```json\n");
  assert_non_null(start);
  start += strlen("```json\n");
  g_autofree char *text = g_strndup(start, (gsize) (strstr(start, "```\n") - start));
  g_autoptr(SpvScheme) scheme = test_parse(text);
  assert_string_equal(scheme->title, "Heron Ferry Guild");
  assert_int_equal(scheme->n_panels, 2);
  assert_int_equal(scheme->panels[0]->n_layers, 3);
  assert_true(scheme->panels[1]->layers[0]->locked);
}

static const json_t *
definition(const json_t *schema, const char *name) {
  const json_t *found = json_object_get(json_object_get(schema, "$defs"), name);
  if (found == NULL)
    fail_msg("the schema has no definition of %s", name);
  return found;
}

static const json_t *
property(const json_t *object, const char *name) {
  const json_t *found = json_object_get(json_object_get(object, "properties"), name);
  if (found == NULL)
    fail_msg("the schema has no property %s", name);
  return found;
}

static void
assert_range(const json_t *object, double min, double max) {
  assert_true(json_number_value(json_object_get(object, "minimum")) == min);
  assert_true(json_number_value(json_object_get(object, "maximum")) == max);
}

/* The list KEY of OBJECT holds the N keys that KEY_OF gives, in their order. */
static void
assert_list(const json_t *object, const char *key, const char *(*key_of)(guint), guint n) {
  const json_t *list = json_object_get(object, key);
  assert_int_equal(json_array_size(list), n);
  for (guint i = 0; i < n; i++)
    assert_string_equal(json_string_value(json_array_get(list, i)), key_of(i));
}

static const char *
kind_key(guint i) {
  return spv_pattern_info((SpvPatternKind) i)->key;
}

static const char *
family_key(guint i) {
  return spv_outline_info((SpvOutlineFamily) i)->key;
}

static const char *
hatch_key(guint i) {
  return spv_hatch_key((SpvHatch) i);
}

static const char *
surface_key(guint i) {
  return spv_surface_kind_key((SpvSurfaceKind) i);
}

static const char *
side_key(guint i) {
  return spv_side_key((SpvSide) i);
}

static void
assert_measure(const json_t *schema, const SpvMeasureSpec *spec) {
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    assert_string_equal(json_string_value(json_object_get(schema, "type")), "integer");
    assert_range(schema, spec->min, spec->max);
    break;
  case SPV_MEASURE_LENGTH:
    assert_range(property(schema, "mm"), spec->min, spec->max);
    assert_range(property(schema, "relative"), spec->min < 0 ? -SPV_RELATIVE_MAX : 0, SPV_RELATIVE_MAX);
    break;
  case SPV_MEASURE_ANGLE:
    assert_range(property(schema, "degrees"), spec->min, spec->max);
    break;
  case SPV_MEASURE_CHOICE: {
    const json_t *list = json_object_get(schema, "enum");
    assert_int_equal(json_array_size(list), g_strv_length((char **) spec->choices));
    for (guint i = 0; spec->choices[i] != NULL; i++)
      assert_string_equal(json_string_value(json_array_get(list, i)), spec->choices[i]);
  }
  }
}

static void
the_schema_has_the_same_tables(void **state) {
  (void) state;
  g_autofree char *text = read_resource("scheme.schema.json");
  json_t *schema = json_loads(text, JSON_REJECT_DUPLICATES, NULL);
  assert_non_null(schema);
  assert_list(property(definition(schema, "layer"), "kind"), "enum", kind_key, SPV_N_PATTERNS);
  assert_list(property(definition(schema, "outline"), "family"), "enum", family_key, SPV_N_OUTLINE_FAMILIES);
  assert_list(property(definition(schema, "tincture"), "hatch"), "enum", hatch_key, SPV_N_HATCHES);
  assert_list(property(definition(schema, "surface"), "kind"), "enum", surface_key, SPV_N_SURFACES);
  assert_list(property(definition(schema, "panel"), "side"), "enum", side_key, SPV_SIDE_SINISTER + 1);
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
    const SpvPatternInfo *info = spv_pattern_info((SpvPatternKind) kind);
    g_autofree char *name = g_strdup_printf("layer-%s", info->key);
    const json_t *layer = definition(schema, name);
    assert_int_equal(json_integer_value(json_object_get(property(layer, "tinctures"), "minItems")),
                     info->n_slots);
    assert_int_equal(json_integer_value(json_object_get(property(layer, "tinctures"), "maxItems")),
                     info->n_slots);
    const json_t *measures = property(layer, "measures");
    assert_true(json_is_false(json_object_get(measures, "additionalProperties")));
    assert_int_equal(json_object_size(json_object_get(measures, "properties")), info->n_measures);
    for (guint i = 0; i < info->n_measures; i++)
      assert_measure(property(measures, info->measures[i].key), &info->measures[i]);
  }
  json_decref(schema);
}

/* Each family with own measures has its condition, which requires them. */
static void
the_schema_asks_for_the_families_own_measures(void **state) {
  (void) state;
  g_autofree char *text = read_resource("scheme.schema.json");
  json_t *schema = json_loads(text, 0, NULL);
  const json_t *conditions = json_object_get(definition(schema, "outline"), "allOf");
  gsize at = 0;
  for (guint family = 0; family < SPV_N_OUTLINE_FAMILIES; family++) {
    const SpvOutlineInfo *info = spv_outline_info((SpvOutlineFamily) family);
    if (info->n_own == 0)
      continue;
    const json_t *condition = json_array_get(conditions, at++);
    const json_t *match = property(json_object_get(condition, "if"), "family");
    assert_string_equal(json_string_value(json_object_get(match, "const")), info->key);
    const json_t *then = json_object_get(condition, "then");
    assert_int_equal(json_array_size(json_object_get(then, "required")), info->n_own);
    for (guint i = 0; i < info->n_own; i++) {
      assert_string_equal(json_string_value(json_array_get(json_object_get(then, "required"), i)),
                          info->own[i].key);
      assert_range(property(then, info->own[i].key), 0, SPV_OUTLINE_MAX_MM);
    }
  }
  assert_int_equal(json_array_size(conditions), at);
  json_decref(schema);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(the_page_has_every_kind_and_measure),
    cmocka_unit_test(the_page_has_every_family_hatch_and_surface),
    cmocka_unit_test(the_pages_example_loads),
    cmocka_unit_test(the_schema_has_the_same_tables),
    cmocka_unit_test(the_schema_asks_for_the_families_own_measures),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
