/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Layers: texts, what they are laid on, counterchange, mirror images; each kind comes back from the file with
 * all of it. */
#include "scheme-test.h"

#include <string.h>

#include "scheme/equal-private.h"

/* A scheme's first panel with these layers of the kinds given, called "a", "b", ... from the bottom up. */
static SpvPanel *
panel_of(const SpvScheme *scheme, const SpvPatternKind *kinds, guint n) {
  g_autoptr(GPtrArray) layers = g_ptr_array_new_with_free_func((GDestroyNotify) spv_layer_unref);
  for (guint i = 0; i < n; i++) {
    const char id[2] = { (char) ('a' + i), '\0' };
    g_ptr_array_add(layers, spv_layer_new(id, kinds[i], "azure", "argent"));
  }
  return spv_panel_with_layers(scheme->panels[0], (SpvLayer *const *) layers->pdata, n);
}

/* The panel with its layer INDEX laid on the one called ON, and counterchanged across the one called
 * COUNTERCHANGE. */
static SpvPanel *
referring(const SpvPanel *panel, guint index, const char *on, const char *counterchange) {
  g_autoptr(SpvLayer) laid = spv_layer_with_on(panel->layers[index], on);
  g_autoptr(SpvLayer) changed = spv_layer_with_counterchange(laid, counterchange);
  return spv_panel_with_layer(panel, index, changed);
}

static SpvMeasure
some_measure(const SpvMeasureSpec *spec) {
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return (SpvMeasure){ SPV_UNIT_PLAIN, spec->max };
  case SPV_MEASURE_LENGTH:
    return (SpvMeasure){ SPV_UNIT_MM, MAX(spec->min, 1.25) };
  case SPV_MEASURE_ANGLE:
    return (SpvMeasure){ SPV_UNIT_DEGREES, spec->min };
  case SPV_MEASURE_CHOICE:
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_strv_length((char **) spec->choices) - 1 };
  }
  return (SpvMeasure){ SPV_UNIT_AUTO, 0 };
}

static const char *
some_text(const SpvTextSpec *spec) {
  return strcmp(spec->key, "rows") == 0 ? "3, 2, 1" : spec->preset;
}

/* LAYER with a value for every measure and text of its kind, and a third tincture. Consumes it. */
static SpvLayer *
filled(SpvLayer *layer) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);
  for (guint i = 0; i < info->n_measures; i++) {
    SpvLayer *next = spv_layer_with_measure(layer, i, some_measure(&info->measures[i]));
    spv_layer_unref(layer);
    layer = next;
  }
  for (guint i = 0; i < info->n_texts; i++) {
    SpvLayer *next = spv_layer_with_text(layer, i, some_text(&info->texts[i]));
    spv_layer_unref(layer);
    layer = next;
  }
  if (info->n_slots == SPV_PATTERN_SLOTS) {
    SpvLayer *next = spv_layer_with_tincture(layer, 2, "azure");
    spv_layer_unref(layer);
    layer = next;
  }
  return layer;
}

static void
every_kind_comes_back_with_all_it_can_have(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  for (guint i = 0; i < SPV_N_PATTERNS; i++) {
    const SpvPatternKind kinds[] = { SPV_PATTERN_PER_PALE, SPV_PATTERN_BORDURE, (SpvPatternKind) i };
    g_autoptr(SpvPanel) plain = panel_of(scheme, kinds, 3);
    g_autoptr(SpvLayer) full = filled(spv_layer_ref(plain->layers[2]));
    g_autoptr(SpvLayer) mirrored = spv_layer_with_mirrored(full, TRUE);
    g_autoptr(SpvPanel) panel = spv_panel_with_layer(plain, 2, mirrored);
    g_autoptr(SpvPanel) laid = referring(panel, 2, "b", "a");
    assert_string_equal(laid->layers[2]->on, "b");
    assert_int_equal(laid->layers[2]->counterchange != NULL, spv_pattern_info(kinds[2])->n_slots == 1);

    g_autoptr(SpvScheme) whole = spv_scheme_with_panel(scheme, 0, laid);
    g_autofree char *text = spv_scheme_to_text(whole, NULL);
    g_autoptr(SpvScheme) again = test_parse(text);
    if (!spv_scheme_equal(whole, again))
      fail_msg("%s is not the same again:\n%s", spv_pattern_info(kinds[2])->key, text);
  }
}

/* Dropped where the layer below goes, moves above, or becomes of a kind that does not serve. */
static void
a_layer_lets_go_of_one_that_is_not_below_it(void **state) {
  (void) state;
  static const SpvPatternKind kinds[] = { SPV_PATTERN_PER_PALE, SPV_PATTERN_FESS, SPV_PATTERN_MULLET };
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autoptr(SpvPanel) plain = panel_of(scheme, kinds, 3);
  g_autoptr(SpvPanel) panel = referring(plain, 2, "b", "a");

  g_autoptr(SpvPanel) less = spv_panel_with_layer_removed(panel, 1);
  assert_null(less->layers[1]->on);
  assert_string_equal(less->layers[1]->counterchange, "a");
  g_autoptr(SpvPanel) lower = spv_panel_with_layer_moved(panel, 2, 0);
  assert_null(lower->layers[0]->on);
  assert_null(lower->layers[0]->counterchange);
  g_autoptr(SpvPanel) swapped = spv_panel_with_layer_moved(panel, 0, 1);
  assert_string_equal(swapped->layers[2]->on, "b");
  assert_string_equal(swapped->layers[2]->counterchange, "a");

  g_autoptr(SpvLayer) division = spv_layer_with_kind(panel->layers[1], SPV_PATTERN_PER_FESS);
  g_autoptr(SpvPanel) divided = spv_panel_with_layer(panel, 1, division);
  assert_null(divided->layers[2]->on);
  g_autoptr(SpvLayer) field = spv_layer_with_kind(panel->layers[1], SPV_PATTERN_FIELD);
  g_autoptr(SpvPanel) covered = spv_panel_with_layer(panel, 1, field);
  assert_null(covered->layers[2]->on);
  g_autoptr(SpvLayer) check = spv_layer_with_kind(panel->layers[2], SPV_PATTERN_CHECK);
  g_autoptr(SpvPanel) checked = spv_panel_with_layer(panel, 2, check);
  assert_string_equal(checked->layers[2]->on, "b");
  assert_null(checked->layers[2]->counterchange);
  /* Neither itself, nor one that there is not; and what was is as it was. */
  g_autoptr(SpvPanel) own = referring(panel, 2, "c", "c");
  assert_null(own->layers[2]->on);
  assert_null(own->layers[2]->counterchange);
  g_autoptr(SpvPanel) lost = referring(panel, 2, "z", "z");
  assert_null(lost->layers[2]->on);
  assert_string_equal(panel->layers[2]->on, "b");
}

static void
which_kinds_bear_and_counterchange(void **state) {
  (void) state;
  for (guint i = 0; i < SPV_N_PATTERNS; i++) {
    SpvPatternKind kind = (SpvPatternKind) i;
    guint n_slots = spv_pattern_info(kind)->n_slots;
    assert_int_equal(spv_kind_can_bear(kind), n_slots == 1 && kind != SPV_PATTERN_FIELD);
    assert_int_equal(spv_kind_can_counterchange(kind), n_slots == 2);
  }
  assert_true(spv_kind_can_bear(SPV_PATTERN_BEND) && spv_kind_can_bear(SPV_PATTERN_FREE_PATH));
  assert_false(spv_kind_can_bear(SPV_PATTERN_QUARTERLY) || spv_kind_can_bear(SPV_PATTERN_FIELD));
  assert_true(spv_kind_can_counterchange(SPV_PATTERN_PALY));
  assert_false(spv_kind_can_counterchange(SPV_PATTERN_PER_PALL));
}

static void
a_design_mirrored_twice_is_itself(void **state) {
  (void) state;
  static const SpvPatternKind kinds[] = { SPV_PATTERN_PER_BEND, SPV_PATTERN_FESS, SPV_PATTERN_KEY };
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autoptr(SpvPanel) plain = panel_of(scheme, kinds, 3);
  g_autoptr(SpvPanel) panel = referring(plain, 2, "b", "a");
  const SpvPanel *other = scheme->panels[1];

  g_autoptr(SpvPanel) image = spv_panel_with_design_mirrored(other, panel);
  assert_string_equal(image->id, other->id);
  assert_int_equal(image->n_layers, 3);
  for (guint i = 0; i < 3; i++)
    assert_true(image->layers[i]->pattern.mirrored);
  assert_string_equal(image->layers[2]->on, "b");
  assert_string_equal(image->layers[2]->counterchange, "a");
  g_autoptr(SpvPanel) back = spv_panel_with_design_mirrored(panel, image);
  assert_ptr_equal(back, panel);
  g_autoptr(SpvPanel) turned = spv_panel_with_design_mirrored(panel, panel);
  assert_false(spv_panel_equal(turned, panel));
  g_autoptr(SpvPanel) again = spv_panel_with_design_mirrored(turned, turned);
  assert_true(spv_panel_equal(again, panel));
}

static void
an_edit_that_changes_nothing_gives_the_same_layer(void **state) {
  (void) state;
  g_autoptr(SpvLayer) bare = spv_layer_new("a", SPV_PATTERN_MULLET, "or", NULL);
  g_autoptr(SpvLayer) texted = spv_layer_with_text(bare, 0, "2, 1");
  g_autoptr(SpvLayer) laid = spv_layer_with_on(texted, "b");
  g_autoptr(SpvLayer) changed = spv_layer_with_counterchange(laid, "c");
  g_autoptr(SpvLayer) layer = spv_layer_with_mirrored(changed, TRUE);
#define SAME(expression)                                                                                     \
  {                                                                                                          \
    g_autoptr(SpvLayer) same = (expression);                                                                 \
    assert_ptr_equal(same, layer);                                                                           \
  }
  SAME(spv_layer_with_text(layer, 0, "2, 1"));
  SAME(spv_layer_with_on(layer, "b"));
  SAME(spv_layer_with_counterchange(layer, "c"));
  SAME(spv_layer_with_mirrored(layer, 5));
  SAME(spv_layer_with_kind(layer, SPV_PATTERN_MULLET));
#undef SAME
  /* Each of them counts, and copies share the strings of the rest. */
  SpvLayer *const steps[] = { bare, texted, laid, changed, layer };
  for (guint i = 0; i < G_N_ELEMENTS(steps); i++)
    for (guint j = 0; j < G_N_ELEMENTS(steps); j++)
      assert_int_equal(spv_layer_equal(steps[i], steps[j]), i == j);
  assert_ptr_equal(layer->pattern.texts[0], texted->pattern.texts[0]);
  assert_ptr_equal(layer->on, laid->on);
  assert_ptr_equal(layer->counterchange, changed->counterchange);
  g_autoptr(SpvLayer) untexted = spv_layer_with_text(layer, 0, NULL);
  assert_null(untexted->pattern.texts[0]);
}

static void
another_kind_keeps_what_it_shares(void **state) {
  (void) state;
  g_autoptr(SpvLayer) bare = spv_layer_new("a", SPV_PATTERN_PATH_CHARGE, "or", NULL);
  int path = spv_pattern_text_index(SPV_PATTERN_PATH_CHARGE, "path");
  int rows = spv_pattern_text_index(SPV_PATTERN_PATH_CHARGE, "rows");
  g_autoptr(SpvLayer) drawn = spv_layer_with_text(bare, (guint) path, "M 0 0 L 4 0 L 2 3 Z");
  g_autoptr(SpvLayer) rowed = spv_layer_with_text(drawn, (guint) rows, "2, 1");
  g_autoptr(SpvLayer) layer = spv_layer_with_mirrored(rowed, TRUE);

  g_autoptr(SpvLayer) mullet = spv_layer_with_kind(layer, SPV_PATTERN_MULLET);
  assert_string_equal(mullet->pattern.texts[0], "2, 1");
  assert_null(mullet->pattern.texts[1]);
  assert_true(mullet->pattern.mirrored);
  g_autoptr(SpvLayer) field = spv_layer_with_kind(mullet, SPV_PATTERN_FIELD);
  assert_null(field->pattern.texts[0]);
  g_autoptr(SpvLayer) thirds = spv_layer_new("b", SPV_PATTERN_PER_PALL, "or", "vert");
  g_autoptr(SpvLayer) third = spv_layer_with_tincture(thirds, 2, "sable");
  g_autoptr(SpvLayer) halves = spv_layer_with_kind(third, SPV_PATTERN_PER_PALE);
  assert_string_equal(halves->tinctures[1], "vert");
  assert_null(halves->tinctures[2]);
}

static void
a_text_has_a_limit_and_is_utf_8(void **state) {
  (void) state;
  const SpvTextSpec *words = &spv_pattern_info(SPV_PATTERN_LETTERING)->texts[0];
  GError *error = NULL;
  g_autofree char *endless = g_strnfill(SPV_PATTERN_TEXT_MAX + 1, 'I');
  assert_true(spv_layer_text_check(words, "VII", NULL));
  assert_false(spv_layer_text_check(words, endless, &error));
  assert_true(g_error_matches(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT));
  assert_string_equal(error->message, "The text is too long; use at most 262144 bytes");
  g_clear_error(&error);
  assert_false(spv_layer_text_check(words, "a\xff", &error));
  assert_string_equal(error->message, "The text is not UTF-8; type it anew");
  g_clear_error(&error);

  g_autoptr(SpvScheme) scheme = test_load("scheme-laid.scheme.json");
  g_autofree char *text = spv_scheme_to_text(scheme, NULL);
  g_autofree char *member = g_strdup_printf("\"text\": \"%s\"", endless);
  g_auto(GStrv) parts = g_strsplit(text, "\"text\": \"VII\"", 2);
  assert_non_null(parts[1]);
  g_autofree char *longer = g_strjoinv(member, parts);
  assert_null(spv_scheme_parse(longer, strlen(longer), "f", &error));
  assert_int_equal(error->code, SPV_SCHEME_ERROR_LIMIT);
  if (strstr(error->message, "“text” is too long; use at most 262144 bytes ($.designs") == NULL)
    fail_msg("%s", error->message);
  g_error_free(error);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(every_kind_comes_back_with_all_it_can_have),
    cmocka_unit_test(a_layer_lets_go_of_one_that_is_not_below_it),
    cmocka_unit_test(which_kinds_bear_and_counterchange),
    cmocka_unit_test(a_design_mirrored_twice_is_itself),
    cmocka_unit_test(an_edit_that_changes_nothing_gives_the_same_layer),
    cmocka_unit_test(another_kind_keeps_what_it_shares),
    cmocka_unit_test(a_text_has_a_limit_and_is_utf_8),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
