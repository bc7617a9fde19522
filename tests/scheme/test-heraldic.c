/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Blazon and schemes: which tincture a word means, what is added, and what a panel's layers keep. */
#include "support/near.h"

#include <string.h>

#include "scheme/heraldic.h"

/* A scheme with a bare panel and TINCTURES. */
static SpvScheme *
scheme_of(const SpvTincture *tinctures, guint n) {
  SpvScheme *scheme = spv_scheme_new("Heron Ferry Guild", "A hull");
  SpvOutlineSpec outline = { .family = SPV_OUTLINE_RECTANGLE, .width = 20, .height = 24 };
  g_autoptr(SpvPanel) panel = spv_panel_new("hull", "Hull", SPV_SIDE_CENTRE, &outline,
                                            &(SpvSurface){ SPV_SURFACE_FLAT, 0 }, spv_point(0, 0));
  SpvPanel *panels[] = { panel };
  SpvScheme *next = spv_scheme_with_panels(scheme, panels, 1);

  spv_scheme_unref(scheme);
  for (guint i = 0; i < n; i++) {
    scheme = next;
    next = spv_scheme_with_tincture_added(scheme, &tinctures[i]);
    spv_scheme_unref(scheme);
  }
  return next;
}

static SpvScheme *
lay(const SpvScheme *scheme, const char *text) {
  g_autoptr(GError) error = NULL;
  SpvScheme *laid = spv_heraldic_lay(scheme, 0, text, NULL, &error);

  if (!laid)
    fail_msg("“%s”: %s", text, error->message);
  return laid;
}

static void
assert_tincture(const SpvScheme *scheme, guint layer, guint slot, const char *id) {
  assert_string_equal(scheme->panels[0]->layers[layer]->tinctures[slot], id);
}

static const SpvTincture guild[] = {
  { .id = "reed", .name = "reed green", .hatch = SPV_HATCH_VERT },
  { .id = "moss", .name = "moss", .hatch = SPV_HATCH_VERT },
  { .id = "argent", .name = "chalk", .hatch = SPV_HATCH_SABLE },
  { .id = "night", .name = "night \"sky\"", .hatch = SPV_HATCH_AZURE },
  { .id = "twin", .name = "reed green", .hatch = SPV_HATCH_OR },
  { .id = "coat", .name = "winter coat", .fur = SPV_FUR_ERMINE, .of = { "argent", "night" } },
};

static void
a_word_is_the_id_then_the_hatch_then_a_new_tincture(void **state) {
  g_autoptr(SpvScheme) scheme = scheme_of(guild, G_N_ELEMENTS(guild));
  g_autoptr(SpvScheme) laid = lay(scheme, "Per pale vert and argent, a fess azure, a chief sable");

  (void) state;
  assert_tincture(laid, 0, 0, "reed");   /* the first with that hatch */
  assert_tincture(laid, 0, 1, "argent"); /* that id, whatever its hatch */
  assert_tincture(laid, 1, 0, "night");
  assert_tincture(laid, 2, 0, "sable"); /* a new one: the one with its hatch goes by another word */
  assert_int_equal(laid->n_tinctures, scheme->n_tinctures + 1);
}

static void
what_is_missing_is_added_once(void **state) {
  g_autoptr(SpvScheme) scheme = scheme_of(guild, G_N_ELEMENTS(guild));
  g_autoptr(SpvScheme) laid = lay(scheme, "Gules, a bend proper, a chief gules");
  int gules = spv_scheme_find_tincture(laid, "gules"), proper = spv_scheme_find_tincture(laid, "proper");

  (void) state;
  assert_int_equal(laid->n_tinctures, scheme->n_tinctures + 2);
  assert_true(gules >= 0 && proper >= 0);
  assert_int_equal(laid->tinctures[gules].hatch, SPV_HATCH_GULES);
  assert_string_equal(laid->tinctures[gules].name, "gules");
  assert_tincture(laid, 2, 0, "gules");
}

static void
a_name_in_quotes_is_the_name_then_the_id(void **state) {
  g_autoptr(SpvScheme) scheme = scheme_of(guild, G_N_ELEMENTS(guild));
  g_autoptr(SpvScheme) laid = lay(
      scheme, "Per pale \"chalk\" and \"twin\", a fess \"night \\\"sky\\\"\", a chief \"winter coat\"");

  (void) state;
  assert_tincture(laid, 0, 0, "argent");
  assert_tincture(laid, 0, 1, "twin");
  assert_tincture(laid, 1, 0, "night");
  assert_tincture(laid, 2, 0, "coat");
}

static void
furs_are_found_or_made(void **state) {
  g_autoptr(SpvScheme) scheme = scheme_of(guild, G_N_ELEMENTS(guild));
  g_autoptr(SpvScheme)
      laid = lay(scheme, "Argent ermined azure, a fess ermine, a chief vairy or and \"moss\", a pale ermine");
  const char *ermine = laid->panels[0]->layers[1]->tinctures[0];
  int index = spv_scheme_find_tincture(laid, ermine);

  (void) state;
  assert_tincture(laid, 0, 0, "coat");
  assert_string_equal(ermine, "ermine");
  assert_int_equal(laid->tinctures[index].fur, SPV_FUR_ERMINE);
  assert_string_equal(laid->tinctures[index].of[0], "argent");
  assert_tincture(laid, 3, 0, "ermine");
  index = spv_scheme_find_tincture(laid, laid->panels[0]->layers[2]->tinctures[0]);
  assert_int_equal(laid->tinctures[index].fur, SPV_FUR_VAIR);
  assert_string_equal(laid->tinctures[index].of[1], "moss");
}

/* A word only where it means the same tincture. */
static void
each_tincture_is_said_so_that_it_is_found_again(void **state) {
  static const struct {
    const char *id, *said;
  } rows[] = {
    { "reed", "Vert" },   { "moss", "\"moss\"" }, { "argent", "Argent" },
    { "night", "Azure" }, { "twin", "Or" },       { "coat", "Argent ermined azure" },
  };
  g_autoptr(SpvScheme) scheme = scheme_of(guild, G_N_ELEMENTS(guild));

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autoptr(SpvLayer) field = spv_layer_new("field", SPV_PATTERN_FIELD, rows[i].id, NULL);
    SpvLayer *layers[] = { field };
    g_autoptr(SpvPanel) panel = spv_panel_with_layers(scheme->panels[0], layers, 1);
    g_autoptr(SpvScheme) dressed = spv_scheme_with_panel(scheme, 0, panel);
    g_autofree char *said = spv_heraldic_describe(dressed, 0);
    g_autoptr(SpvScheme) again = lay(dressed, said);

    assert_string_equal(said, rows[i].said);
    assert_ptr_equal(again, dressed);
  }
}

static void
a_tincture_that_is_not_there_is_told_where_it_stands(void **state) {
  static const struct {
    const char *text, *message;
    guint start, length; /* characters */
  } rows[] = {
    { "Azure, a fess \"moonlight\"", "no tincture “moonlight”", 14, 11 },
    { "Per pale azure and \"moonlight\"", "no tincture “moonlight”", 19, 11 },
    { "Azure, a fess cotised \"moonlight\"", "no tincture “moonlight”", 22, 11 },
    { "Azure, a fess between three keys \"moonlight\"", "no tincture “moonlight”", 33, 11 },
    { "Azure, a fess vairy or and \"moonlight\"", "no tincture “moonlight”", 14, 24 },
    { "Azure, a fess vairy or and \"winter coat\"", "made of two tinctures that are no furs", 14, 26 },
    { "Azure, a fess or ermined or", "made of two tinctures that are no furs", 14, 13 },
    { "Azure, a fess of the moon", "Character 22, “moon”", 21, 4 },
  };
  g_autoptr(SpvScheme) scheme = scheme_of(guild, G_N_ELEMENTS(guild));

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    SpvBlazonPlace place = { 99, 99 };
    g_autoptr(GError) error = NULL;
    g_autoptr(SpvScheme) laid = spv_heraldic_lay(scheme, 0, rows[i].text, &place, &error);

    assert_null(laid);
    assert_true(g_error_matches(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON));
    if (!strstr(error->message, rows[i].message))
      fail_msg("“%s”: %s", rows[i].text, error->message);
    if (place.start != rows[i].start || place.length != rows[i].length)
      fail_msg("“%s”: at %u, %u characters: %s", rows[i].text, place.start, place.length, error->message);
  }
}

static void
a_full_scheme_takes_no_more(void **state) {
  g_autoptr(SpvScheme) scheme = scheme_of(guild, G_N_ELEMENTS(guild));
  g_autoptr(GError) error = NULL;

  (void) state;
  while (scheme->n_tinctures < SPV_SCHEME_MAX_TINCTURES) {
    g_autofree char *id = g_strdup_printf("t-%u", scheme->n_tinctures);
    SpvTincture more = { .id = id, .name = id, .hatch = SPV_HATCH_VERT };
    SpvScheme *next = spv_scheme_with_tincture_added(scheme, &more);
    spv_scheme_unref(scheme);
    scheme = next;
  }
  assert_null(spv_heraldic_lay(scheme, 0, "Gules", NULL, &error));
  assert_non_null(strstr(error->message, "64"));
  g_autoptr(SpvScheme) laid = lay(scheme, "Vert, a fess azure");
  assert_int_equal(laid->panels[0]->n_layers, 2);
}

/* The nth of a kind stays the nth of that kind, whatever comes between. */
static void
layers_keep_what_no_blazon_says(void **state) {
  g_autoptr(SpvScheme) scheme = scheme_of(guild, G_N_ELEMENTS(guild));
  g_autoptr(SpvScheme) first = lay(scheme, "Vert, a fess azure, a mullet or, a mullet argent");
  g_autoptr(SpvLayer) named = spv_layer_with_name(first->panels[0]->layers[3], "Ferry star");
  g_autoptr(SpvLayer) locked = spv_layer_with_locked(named, TRUE);
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(first->panels[0], 3, locked);
  g_autoptr(SpvScheme) before = spv_scheme_with_panel(first, 0, panel);
  g_autoptr(SpvScheme)
      after = lay(before, "Vert, a chief or, a mullet or, on a fess azure two mullets argent");
  const SpvPanel *dressed = after->panels[0];

  (void) state;
  assert_int_equal(dressed->n_layers, 5);
  assert_string_equal(dressed->layers[2]->id, first->panels[0]->layers[2]->id);
  assert_string_equal(dressed->layers[3]->id, first->panels[0]->layers[1]->id);
  assert_string_equal(dressed->layers[4]->id, first->panels[0]->layers[3]->id);
  assert_string_equal(dressed->layers[4]->name, "Ferry star");
  assert_true(dressed->layers[4]->locked);
  assert_string_equal(dressed->layers[4]->on, dressed->layers[3]->id);
  g_autoptr(SpvScheme) bare = lay(after, "");
  assert_int_equal(bare->panels[0]->n_layers, 0);
}

static void
its_own_tinctures_are_offered(void **state) {
  g_autoptr(SpvScheme) scheme = scheme_of(guild, G_N_ELEMENTS(guild));
  guint start = 99;
  g_auto(GStrv) words = spv_heraldic_complete(scheme, "Azure, a fess \"wi", 17, &start);

  (void) state;
  assert_int_equal(start, 14);
  assert_string_equal(words[0], "\"winter coat\"");
  assert_null(words[1]);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(a_word_is_the_id_then_the_hatch_then_a_new_tincture),
    cmocka_unit_test(what_is_missing_is_added_once),
    cmocka_unit_test(a_name_in_quotes_is_the_name_then_the_id),
    cmocka_unit_test(furs_are_found_or_made),
    cmocka_unit_test(each_tincture_is_said_so_that_it_is_found_again),
    cmocka_unit_test(a_tincture_that_is_not_there_is_told_where_it_stands),
    cmocka_unit_test(a_full_scheme_takes_no_more),
    cmocka_unit_test(layers_keep_what_no_blazon_says),
    cmocka_unit_test(its_own_tinctures_are_offered),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
