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

/* The row of the page's tables of kinds whose first cell has KEY: kinds that are alike share one. */
static char *
kind_line(const char *page, const char *key) {
  g_autofree char *wanted = g_strdup_printf("`%s`", key);
  g_auto(GStrv) lines = g_strsplit(strstr(page, "### The kinds"), "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++) {
    const char *at = g_str_has_prefix(lines[i], "| `") ? strstr(lines[i], wanted) : NULL;
    if (at != NULL && at < strchr(lines[i] + 1, '|'))
      return g_strdup(lines[i]);
  }
  fail_msg("the page has no kind %s", key);
  return NULL;
}

/* LINE and the rows of the sets of measures that it names. */
static char *
with_sets(const char *page, const char *line) {
  static const char *const sets[] = { "a charge's", "a band's line", "a line" };
  GString *whole = g_string_new(line);
  for (guint i = 0; i < G_N_ELEMENTS(sets); i++) {
    g_autofree char *start = g_strdup_printf("\n| %s |", sets[i]);
    const char *row = strstr(page, start);
    if (row == NULL)
      fail_msg("the page has no set %s", sets[i]);
    if (strstr(whole->str, sets[i]) != NULL)
      g_string_append_len(whole, row + strlen(start), (gssize) strcspn(row + strlen(start), "\n"));
  }
  return g_string_free(whole, FALSE);
}

/* Kinds whose one tincture is called as they are don't repeat it. */
static void
assert_has_slots(const char *line, const SpvPatternInfo *info) {
  if (info->n_slots == 1)
    return;
  g_autoptr(GString) slots = g_string_new("| ");
  for (guint slot = 0; slot < info->n_slots; slot++) {
    g_autofree char *name = g_utf8_strdown(info->slots[slot], -1);
    g_string_append_printf(slots, "%s%s", slot > 0 ? ", " : "", name);
  }
  g_string_append(slots, " |");
  assert_has(line, slots->str);
}

static void
the_page_has_every_kind_measure_and_text(void **state) {
  (void) state;
  g_autofree char *page = read_resource("format.md");
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
    const SpvPatternInfo *info = spv_pattern_info((SpvPatternKind) kind);
    g_autofree char *line = kind_line(page, info->key);
    g_autofree char *whole = with_sets(page, line);
    guint n_measures = 0;
    assert_has_slots(line, info);
    for (const char *p = whole; *p != '\0'; p++)
      n_measures += *p == ':';
    if (n_measures != info->n_measures)
      fail_msg("%s has %u measures, not %u: %s", info->key, info->n_measures, n_measures, whole);
    for (guint i = 0; i < info->n_measures; i++) {
      g_autofree char *words = measure_words(&info->measures[i]);
      assert_has(whole, words);
    }
    for (guint i = 0; i < info->n_texts; i++) {
      g_autofree char *text = g_strdup_printf("`%s`", info->texts[i].key);
      g_autofree char *own = table_line(page, info->texts[i].key);
      assert_has(whole, text);
      assert_non_null(own);
    }
  }
}

static void
the_page_has_every_family_hatch_fur_and_surface(void **state) {
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
  g_autofree char *furs = table_line(page, "fur");
  for (guint fur = SPV_FUR_NONE + 1; fur < SPV_N_FURS; fur++) {
    g_autofree char *key = g_strdup_printf("`%s`", spv_fur_key((SpvFur) fur));
    assert_has(furs, key);
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
  const SpvPanel *gauntlet = scheme->panels[1];
  assert_int_equal(gauntlet->n_layers, 3);
  assert_true(gauntlet->layers[0]->locked);
  assert_string_equal(gauntlet->layers[1]->tinctures[0], "winter-coat");
  assert_true(gauntlet->layers[1]->pattern.mirrored);
  assert_string_equal(gauntlet->layers[2]->on, "bend");
  assert_int_equal(scheme->tinctures[3].fur, SPV_FUR_ERMINE);
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

/* VALUE, or what it refers to. */
static const json_t *
resolved(const json_t *schema, const json_t *value) {
  const char *reference = json_string_value(json_object_get(value, "$ref"));
  if (reference == NULL)
    return value;
  assert_true(g_str_has_prefix(reference, "#/$defs/"));
  return definition(schema, reference + strlen("#/$defs/"));
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
fur_key(guint i) {
  return spv_fur_key((SpvFur) (i + 1));
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

/* Whether a condition on the kind holds for KEY. */
static gboolean
is_meant(const json_t *match, const char *key) {
  const json_t *several = json_object_get(match, "enum");
  if (g_strcmp0(json_string_value(json_object_get(match, "const")), key) == 0)
    return TRUE;
  for (gsize i = 0; i < json_array_size(several); i++)
    if (g_strcmp0(json_string_value(json_array_get(several, i)), key) == 0)
      return TRUE;
  return FALSE;
}

/* What the schema asks of a layer of the kind called KEY: one condition holds for it. */
static const json_t *
layer_of_kind(const json_t *schema, const char *key) {
  const json_t *conditions = json_object_get(definition(schema, "layer"), "allOf");
  const json_t *found = NULL;
  for (gsize i = 0; i < json_array_size(conditions); i++) {
    const json_t *condition = json_array_get(conditions, i);
    if (!is_meant(property(json_object_get(condition, "if"), "kind"), key))
      continue;
    assert_null(found);
    found = resolved(schema, json_object_get(condition, "then"));
  }
  if (found == NULL)
    fail_msg("the schema has no condition for %s", key);
  return found;
}

static void
assert_layer(const json_t *schema, const SpvPatternInfo *info) {
  const json_t *layer = layer_of_kind(schema, info->key);
  const json_t *slots = property(layer, "tinctures");
  assert_int_equal(json_integer_value(json_object_get(slots, "minItems")), info->n_slots);
  assert_int_equal(json_integer_value(json_object_get(slots, "maxItems")), info->n_slots);
  const json_t *counterchange = json_object_get(json_object_get(layer, "properties"), "counterchange");
  assert_int_equal(info->n_slots != 1, json_is_false(counterchange));

  const json_t *measures = property(layer, "measures");
  assert_true(json_is_false(json_object_get(measures, "additionalProperties")));
  assert_int_equal(json_object_size(json_object_get(measures, "properties")), info->n_measures);
  for (guint i = 0; i < info->n_measures; i++)
    assert_measure(resolved(schema, property(measures, info->measures[i].key)), &info->measures[i]);

  const json_t *texts = property(layer, "texts");
  assert_true(json_is_false(json_object_get(texts, "additionalProperties")));
  assert_int_equal(json_object_size(json_object_get(texts, "properties")), info->n_texts);
  for (guint i = 0; i < info->n_texts; i++) {
    const json_t *text = resolved(schema, property(texts, info->texts[i].key));
    assert_int_equal(json_integer_value(json_object_get(text, "maxLength")), SPV_PATTERN_TEXT_MAX);
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
  assert_list(property(definition(schema, "tincture"), "fur"), "enum", fur_key, SPV_N_FURS - 1);
  assert_range(property(definition(schema, "tincture"), "pitch"), SPV_FUR_PITCH_MIN, SPV_FUR_PITCH_MAX);
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++)
    assert_layer(schema, spv_pattern_info((SpvPatternKind) kind));
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
    cmocka_unit_test(the_page_has_every_kind_measure_and_text),
    cmocka_unit_test(the_page_has_every_family_hatch_fur_and_surface),
    cmocka_unit_test(the_pages_example_loads),
    cmocka_unit_test(the_schema_has_the_same_tables),
    cmocka_unit_test(the_schema_asks_for_the_families_own_measures),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
