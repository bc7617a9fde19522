/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Furs: made of two plain tinctures that there are, whatever is edited or read. */
#include "scheme-test.h"

#include <math.h>
#include <string.h>

#include "scheme/equal-private.h"

/* The parsed sample has the tinctures azure and argent. */
static SpvTincture
fur_of(const char *id, const char *ground, const char *spots, double pitch) {
  return (SpvTincture){ id, id, { 1, 2, 3 }, SPV_HATCH_VERT, SPV_FUR_ERMINE, { ground, spots }, pitch };
}

static SpvScheme *
with_coat(void) {
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  SpvTincture coat = fur_of("coat", "argent", "azure", 1.5);
  SpvScheme *more = spv_scheme_with_tincture_added(scheme, &coat);
  assert_ptr_not_equal(more, scheme);
  return more;
}

static SpvTincture
tincture_of(const SpvScheme *scheme, const char *id) {
  int index = spv_scheme_find_tincture(scheme, id);
  assert_true(index >= 0);
  return scheme->tinctures[index];
}

static SpvScheme *
replaced(const SpvScheme *scheme, const char *id, const SpvTincture *tincture) {
  return spv_scheme_with_tincture(scheme, (guint) spv_scheme_find_tincture(scheme, id), tincture);
}

static void
a_fur_has_its_grounds_colour(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = with_coat();
  SpvTincture argent = tincture_of(scheme, "argent"), coat = tincture_of(scheme, "coat");
  assert_true(spv_rgb_equal(coat.colour, argent.colour));
  assert_int_equal(coat.hatch, SPV_HATCH_ARGENT);
  assert_true(coat.pitch == 1.5);

  argent.colour.red = 0x10;
  argent.hatch = SPV_HATCH_OR;
  g_autoptr(SpvScheme) darker = replaced(scheme, "argent", &argent);
  coat = tincture_of(darker, "coat");
  assert_int_equal(coat.colour.red, 0x10);
  assert_int_equal(coat.hatch, SPV_HATCH_OR);
  /* What is not used makes no difference. */
  coat.colour.blue ^= 0xff;
  coat.hatch = SPV_HATCH_VERT;
  g_autoptr(SpvScheme) same = replaced(darker, "coat", &coat);
  assert_ptr_equal(same, darker);
}

static void
a_plain_tincture_keeps_nothing_of_a_fur(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = with_coat();
  SpvTincture coat = tincture_of(scheme, "coat");
  coat.fur = SPV_FUR_NONE;
  g_autoptr(SpvScheme) shorn = replaced(scheme, "coat", &coat);
  coat = tincture_of(shorn, "coat");
  assert_null(coat.of[0]);
  assert_null(coat.of[1]);
  assert_true(coat.pitch == 0);
  assert_int_equal(spv_scheme_find_fur_of(shorn, "argent"), -1);
  g_autofree char *text = spv_scheme_to_text(shorn, NULL);
  g_autoptr(SpvScheme) again = test_parse(text);
  assert_true(spv_scheme_equal(shorn, again));
}

static void
a_renamed_tincture_is_followed_by_its_furs(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = with_coat();
  SpvTincture azure = tincture_of(scheme, "azure");
  azure.id = "river";
  g_autoptr(SpvScheme) renamed = replaced(scheme, "azure", &azure);
  assert_string_equal(tincture_of(renamed, "coat").of[1], "river");
  assert_string_equal(tincture_of(scheme, "coat").of[1], "azure");
  assert_int_equal(spv_scheme_find_fur_of(renamed, "river"), spv_scheme_find_tincture(renamed, "coat"));
  assert_int_equal(spv_scheme_find_fur_of(renamed, "azure"), -1);
  assert_int_equal(spv_scheme_find_fur_of(renamed, NULL), -1);
}

static void
a_renamed_fur_is_followed_by_its_layers(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = with_coat();
  g_autoptr(SpvLayer) furred = spv_layer_with_tincture(scheme->panels[0]->layers[1], 0, "coat");
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(scheme->panels[0], 1, furred);
  g_autoptr(SpvScheme) worn = spv_scheme_with_panel(scheme, 0, panel);
  SpvTincture coat = tincture_of(worn, "coat");
  coat.id = "winter-coat";
  g_autoptr(SpvScheme) renamed = replaced(worn, "coat", &coat);
  assert_string_equal(renamed->panels[0]->layers[1]->tinctures[0], "winter-coat");
  g_autofree char *text = spv_scheme_to_text(renamed, NULL);
  g_autoptr(SpvScheme) again = test_parse(text);
  assert_true(spv_scheme_equal(renamed, again));
}

static void
a_part_of_a_fur_is_not_removed(void **state) {
  (void) state;
  GError *error = NULL;
  g_autoptr(SpvScheme) worn = with_coat();
  g_autoptr(SpvPanel) bare = spv_panel_with_layers(worn->panels[0], NULL, 0);
  g_autoptr(SpvScheme) scheme = spv_scheme_with_panel(worn, 0, bare);
  assert_null(spv_scheme_with_tincture_removed(scheme, 0, &error));
  assert_int_equal(error->code, SPV_SCHEME_ERROR_IN_USE);
  assert_string_equal(error->message, "“river blue” is part of the fur “coat”: make that fur of another "
                                      "tincture first");
  g_error_free(error);
  g_autoptr(SpvScheme) without = spv_scheme_with_tincture_removed(scheme, 2, NULL);
  g_autoptr(SpvScheme) fewer = spv_scheme_with_tincture_removed(without, 0, NULL);
  assert_int_equal(fewer->n_tinctures, 1);
}

static void
what_breaks_a_fur_changes_nothing(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = with_coat();
  const SpvTincture broken[] = {
    fur_of("cape", "argent", "murrey", 1), /* there is none such */
    fur_of("cape", "argent", NULL, 1),        fur_of("cape", NULL, "argent", 1),
    fur_of("cape", "coat", "argent", 1), /* a fur */
    fur_of("cape", "argent", "cape", 1), /* itself */
    fur_of("cape", "argent", "azure", 0.049), fur_of("cape", "argent", "azure", 500.1),
    fur_of("cape", "argent", "azure", -1),    fur_of("cape", "argent", "azure", NAN),
  };
  for (guint i = 0; i < G_N_ELEMENTS(broken); i++) {
    g_autoptr(SpvScheme) added = spv_scheme_with_tincture_added(scheme, &broken[i]);
    assert_ptr_equal(added, scheme);
    SpvTincture coat = broken[i];
    coat.id = "coat";
    g_autoptr(SpvScheme) changed = replaced(scheme, "coat", &coat);
    assert_ptr_equal(changed, scheme);
  }
  /* A fur can't be made of what becomes one. */
  SpvTincture argent = fur_of("argent", "azure", "azure", 1);
  g_autoptr(SpvScheme) same = replaced(scheme, "argent", &argent);
  assert_ptr_equal(same, scheme);
}

static void
each_part_of_a_fur_counts_when_furs_are_compared(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = with_coat();
  SpvTincture coat = tincture_of(scheme, "coat");
  SpvTincture others[5] = { coat, coat, coat, coat, coat };
  others[0].fur = SPV_FUR_VAIR;
  others[1].of[0] = "azure";
  others[2].of[1] = "argent";
  others[3].pitch = 0;
  others[4].name = "cape";
  assert_true(spv_tincture_equal(&coat, &coat));
  for (guint i = 0; i < G_N_ELEMENTS(others); i++) {
    assert_false(spv_tincture_equal(&coat, &others[i]));
    g_autoptr(SpvScheme) other = replaced(scheme, "coat", &others[i]);
    assert_false(spv_scheme_equal(scheme, other));
  }
}

/* A fur that stands before what it is made of reads as one after it, but for the order. */
static void
a_fur_may_stand_first(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = with_coat();
  g_autofree char *text = spv_scheme_to_text(scheme, NULL);
  const char *start = strstr(text, "\"tinctures\": [\n    {\n");
  json_t *root = json_loads(text, 0, NULL);
  json_t *list = json_object_get(root, "tinctures");
  assert_non_null(start);
  json_array_insert(list, 0, json_array_get(list, 2));
  json_array_remove(list, 3);
  char *turned = json_dumps(root, 0);
  g_autoptr(SpvScheme) first = test_parse(turned);
  assert_string_equal(first->tinctures[0].id, "coat");
  SpvTincture a = tincture_of(first, "coat"), b = tincture_of(scheme, "coat");
  assert_true(spv_tincture_equal(&a, &b));
  g_autofree char *once = spv_scheme_to_text(first, NULL);
  g_autoptr(SpvScheme) again = test_parse(once);
  assert_true(spv_scheme_equal(first, again));
  free(turned);
  json_decref(root);
}

static void
every_fur_comes_back_and_keeps_what_is_unknown(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = with_coat();
  for (guint fur = SPV_FUR_NONE + 1; fur < SPV_N_FURS; fur++) {
    SpvFur found;
    SpvTincture coat = tincture_of(scheme, "coat");
    coat.fur = (SpvFur) fur;
    coat.pitch = fur % 2 == 0 ? 0 : SPV_FUR_PITCH_MIN;
    assert_true(spv_fur_from_key(spv_fur_key(coat.fur), &found) && found == coat.fur);
    g_autoptr(SpvScheme) changed = replaced(scheme, "coat", &coat);
    g_autofree char *text = spv_scheme_to_text(changed, NULL);
    g_autoptr(SpvScheme) again = test_parse(text);
    assert_true(spv_scheme_equal(changed, again));
  }
  SpvFur none;
  assert_false(spv_fur_from_key("", &none));
  assert_false(spv_fur_from_key(NULL, &none));

  g_autoptr(SpvScheme) laid = test_load("scheme-laid.scheme.json");
  g_autofree char *text = spv_scheme_to_text(laid, NULL);
  assert_non_null(strstr(text, "\"brush\": \"old\""));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(a_fur_has_its_grounds_colour),
    cmocka_unit_test(a_plain_tincture_keeps_nothing_of_a_fur),
    cmocka_unit_test(a_renamed_tincture_is_followed_by_its_furs),
    cmocka_unit_test(a_renamed_fur_is_followed_by_its_layers),
    cmocka_unit_test(a_part_of_a_fur_is_not_removed),
    cmocka_unit_test(what_breaks_a_fur_changes_nothing),
    cmocka_unit_test(each_part_of_a_fur_counts_when_furs_are_compared),
    cmocka_unit_test(a_fur_may_stand_first),
    cmocka_unit_test(every_fur_comes_back_and_keeps_what_is_unknown),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
