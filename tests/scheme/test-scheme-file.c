/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Schemes survive the way to the file and back, byte for byte, with all that a newer version wrote. */
#include "scheme-test.h"

#include <locale.h>
#include <string.h>

static const char *const samples[] = { "scheme-full.scheme.json", "scheme-small.scheme.json",
                                       "scheme-newer.scheme.json", "scheme-laid.scheme.json",
                                       "scheme-bare.harness.json" };

/* Like assert_string_equal(), but says where the texts part. */
static void
assert_same_text(const char *actual, const char *expected) {
  gsize i = 0;
  while (actual[i] != '\0' && actual[i] == expected[i])
    i++;
  if (actual[i] != expected[i])
    fail_msg("at byte %" G_GSIZE_FORMAT ": \"%.60s\" instead of \"%.60s\"", i, actual + i, expected + i);
}

static void
samples_come_back_byte_for_byte(void **state) {
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(samples); i++) {
    g_autofree char *path = test_data(samples[i]);
    g_autofree char *text = test_read(path);
    g_autoptr(SpvScheme) scheme = test_load(samples[i]);
    gsize length;
    g_autofree char *again = spv_scheme_to_text(scheme, &length);
    assert_same_text(again, text);
    assert_int_equal(length, strlen(text));
  }
}

static void
values_are_what_the_file_says(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-full.scheme.json");
  assert_string_equal(scheme->title, "Saltmarsh Wardens");
  assert_string_equal(scheme->note, "Every family, kind and unit once.\nSecond line\twith a tab, ß and 盾.");
  assert_true(scheme->finest_line == 0.25);
  assert_int_equal(scheme->n_tinctures, SPV_N_HATCHES);
  assert_string_equal(scheme->tinctures[5].id, "vert");
  assert_string_equal(scheme->tinctures[5].name, "deep sea green");
  assert_int_equal(scheme->tinctures[5].hatch, SPV_HATCH_VERT);
  assert_int_equal(scheme->tinctures[5].colour.green, 0x4a);
  assert_int_equal(scheme->n_panels, SPV_N_OUTLINE_FAMILIES);

  const SpvPanel *pad = scheme->panels[spv_scheme_find_panel(scheme, "pauldron-dexter")];
  assert_string_equal(pad->name, "shoulder pad, dexter");
  assert_int_equal(pad->side, SPV_SIDE_DEXTER);
  assert_int_equal(pad->outline.family, SPV_OUTLINE_ROUND_PAD);
  assert_true(pad->outline.width == 13.5 && pad->outline.height == 12 && pad->outline.own[0] == 1.5);
  assert_int_equal(pad->surface.kind, SPV_SURFACE_DOME);
  assert_true(pad->surface.depth == 4.2 && pad->place.x == -20 && pad->place.y == -40);
  assert_true(pad->measured);
  assert_false(scheme->panels[1]->measured);

  assert_int_equal(pad->n_layers, 3);
  const SpvLayer *diagonal = pad->layers[1];
  assert_int_equal(diagonal->pattern.kind, SPV_PATTERN_PER_BEND);
  assert_string_equal(diagonal->name, "Diagonal");
  assert_string_equal(diagonal->tinctures[0], "or");
  assert_null(diagonal->tinctures[1]);
  assert_int_equal(diagonal->pattern.measures[0].unit, SPV_UNIT_DEGREES);
  assert_true(diagonal->pattern.measures[0].value == 33.5);
  assert_int_equal(diagonal->pattern.measures[1].unit, SPV_UNIT_RELATIVE);
  assert_true(diagonal->pattern.measures[1].value == -0.125);
  const SpvLayer *reeds = pad->layers[2];
  int pitch = spv_pattern_measure_index(SPV_PATTERN_JAGGED_BORDER, "pitch");
  int depth = spv_pattern_measure_index(SPV_PATTERN_JAGGED_BORDER, "depth");
  int points = spv_pattern_measure_index(SPV_PATTERN_JAGGED_BORDER, "points");
  assert_int_equal(reeds->pattern.measures[pitch].unit, SPV_UNIT_AUTO);
  assert_int_equal(reeds->pattern.measures[depth].unit, SPV_UNIT_MM);
  assert_true(reeds->pattern.measures[depth].value == 0.7);
  assert_true(reeds->pattern.measures[points].value == 9);

  const SpvPanel *knee = scheme->panels[1];
  assert_true(knee->layers[1]->hidden && !knee->layers[1]->locked);
  assert_true(knee->layers[2]->locked && !knee->layers[2]->hidden);
}

/* JSON says what the value is, not how it is written: order, space, escapes and forms of numbers
 * don't count. */
static void
the_same_scheme_written_otherwise_gives_the_same_bytes(void **state) {
  (void) state;
  g_autofree char *path = test_data("scheme-strict.scheme.json");
  g_autofree char *strict = test_read(path);
  g_autoptr(SpvScheme) scheme = test_load("scheme-loose.scheme.json");
  g_autofree char *text = spv_scheme_to_text(scheme, NULL);
  assert_same_text(text, strict);
}

static void
what_a_newer_version_wrote_outlives_an_edit(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-newer.scheme.json");
  g_autoptr(SpvScheme) renamed = spv_scheme_with_title(scheme, "Other");
  const SpvPanel *knee = renamed->panels[0];
  SpvOutlineSpec wider = knee->outline;
  wider.width = 5.5;
  g_autoptr(SpvPanel) outlined = spv_panel_with_outline(knee, &wider);
  g_autoptr(SpvLayer) hidden = spv_layer_with_hidden(outlined->layers[0], TRUE);
  g_autoptr(SpvPanel) edited = spv_panel_with_layer(outlined, 0, hidden);
  g_autoptr(SpvScheme) result = spv_scheme_with_panel(renamed, 0, edited);
  g_autofree char *text = spv_scheme_to_text(result, NULL);
  const char *const kept[] = { "\"paints\"",  "\"lustre\": 0.5",    "\"coats\": 2",    "\"weight\": 12.5",
                               "\"texture\"", "\"bevel\": 0.1",     "\"seam\"",        "\"z\": 3",
                               "\"deeper\"",  "\"mood\": \"calm\"", "\"turn\": 1e300", "\"texture\": 1.5" };
  for (guint i = 0; i < G_N_ELEMENTS(kept); i++)
    if (strstr(text, kept[i]) == NULL)
      fail_msg("%s got lost in\n%s", kept[i], text);
}

/* Random numbers, written and read back: the second writing gives the bytes of the first. */
static void
any_value_is_stable_from_the_first_saving_on(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(20240);
  g_autoptr(SpvScheme) scheme = test_load("scheme-full.scheme.json");
  for (guint i = 0; i < 500; i++) {
    SpvOutlineSpec outline = scheme->panels[4]->outline;
    outline.width = g_rand_double_range(random, 3, 400);
    outline.height = 100 / g_rand_double_range(random, 1, 30);
    outline.own[0] = g_rand_double_range(random, 0, 1);
    g_autoptr(SpvPanel) panel = spv_panel_with_outline(scheme->panels[4], &outline);
    SpvMeasure cell = { SPV_UNIT_RELATIVE, g_rand_double(random) / g_rand_double_range(random, 0.5, 1000) };
    g_autoptr(SpvLayer) layer = spv_layer_with_measure(panel->layers[0], 1, cell);
    g_autoptr(SpvPanel) dressed = spv_panel_with_layer(panel, 0, layer);
    g_autoptr(SpvScheme) edited = spv_scheme_with_panel(scheme, 4, dressed);
    g_autofree char *first = spv_scheme_to_text(edited, NULL);
    g_autoptr(SpvScheme) again = test_parse(first);
    g_autofree char *second = spv_scheme_to_text(again, NULL);
    assert_same_text(second, first);
  }
}

/* A narrowed dome is made shallower, to a depth that the file can hold. */
static void
a_narrowed_dome_can_be_read_back(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-full.scheme.json");
  for (guint i = 1; i < 400; i++) {
    const SpvPanel *panel = scheme->panels[0];
    SpvOutlineSpec outline = panel->outline;
    outline.width = 0.5 + i / 61.0;
    g_autoptr(SpvPanel) narrow = spv_panel_with_outline(panel, &outline);
    assert_true(spv_surface_check(&narrow->surface, outline.width, NULL));
    g_autoptr(SpvScheme) edited = spv_scheme_with_panel(scheme, 0, narrow);
    g_autofree char *text = spv_scheme_to_text(edited, NULL);
    g_autoptr(SpvScheme) again = test_parse(text);
    assert_int_equal(again->panels[0]->surface.kind, SPV_SURFACE_DOME);
  }
}

/* Under a locale that writes 1,5 for 1.5, made into the build folder so that it is there on every machine. */
static void
the_locale_does_not_change_the_file(void **state) {
  (void) state;
  g_autofree char *folder = g_build_filename(g_getenv("SPV_TEST_BUILD_DIR"), "test-locale", NULL);
  g_autofree char *target = g_build_filename(folder, "de_DE.UTF-8", NULL);
  const char *command[] = { "localedef", "-i", "de_DE", "-f", "UTF-8", target, NULL };
  g_mkdir_with_parents(folder, 0755);
  if (!g_file_test(target, G_FILE_TEST_EXISTS))
    assert_true(g_spawn_sync(NULL, (char **) command, NULL,
                             G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL,
                             NULL, NULL, NULL, NULL, NULL, NULL));
  g_setenv("LOCPATH", folder, TRUE);
  assert_non_null(setlocale(LC_ALL, "de_DE.UTF-8"));
  char number[16];
  g_snprintf(number, sizeof number, "%.1f", 1.5);
  assert_string_equal(number, "1,5");

  samples_come_back_byte_for_byte(state);
  values_are_what_the_file_says(state);
  g_autofree char *broken = g_strdup("{\"spolvero\": 1, \"title\": \"T\", \"finest-line\": 7.5}");
  GError *error = NULL;
  assert_null(spv_scheme_parse(broken, strlen(broken), "f", &error));
  assert_string_equal(error->message, "f:1:46: “finest-line” is 7.5; give a number from 0.05 to 5\u2009mm "
                                      "($.finest-line)");
  g_error_free(error);
}

static int
back_to_c(void **state) {
  (void) state;
  return setlocale(LC_ALL, "C.UTF-8") != NULL ? 0 : -1;
}

static void
assert_fails(const char *text, gsize length, const char *expected, int code) {
  GError *error = NULL;
  assert_null(spv_scheme_parse(text, length, "f", &error));
  assert_string_equal(error->message, expected);
  assert_int_equal(error->domain, SPV_SCHEME_ERROR);
  assert_int_equal(error->code, code);
  g_error_free(error);
}

/* The small sample grown with spaces to LENGTH bytes. */
static char *
padded_sample(gsize length) {
  g_autofree char *path = test_data("scheme-small.scheme.json");
  g_autofree char *text = test_read(path);
  char *padded = g_malloc(length);
  memset(padded, ' ', length);
  memcpy(padded, text, strlen(text));
  return padded;
}

static void
sixteen_mebibytes_are_read_and_one_byte_more_is_not(void **state) {
  (void) state;
  g_autofree char *text = padded_sample(SPV_FILE_MAX_BYTES + 1);
  g_autoptr(SpvScheme) scheme = spv_scheme_parse(text, SPV_FILE_MAX_BYTES, "f", NULL);
  assert_non_null(scheme);
  assert_fails(text, SPV_FILE_MAX_BYTES + 1,
               "f:1:1: the file is larger than 16 MiB; a scheme is never that large: is it another kind of "
               "file? ($)",
               SPV_SCHEME_ERROR_LIMIT);
}

/* The small sample with an unknown member of DEPTH levels: one of them is the scheme's own. */
static char *
deep_sample(guint depth) {
  GString *text = g_string_new("{\"deep\": ");
  for (guint i = 1; i < depth; i++)
    g_string_append_c(text, '[');
  for (guint i = 1; i < depth; i++)
    g_string_append_c(text, ']');
  g_autofree char *path = test_data("scheme-small.scheme.json");
  g_autofree char *small = test_read(path);
  g_string_append_printf(text, ",%s", small + 1);
  return g_string_free(text, FALSE);
}

static void
thirty_two_levels_are_read_and_one_more_is_not(void **state) {
  (void) state;
  g_autofree char *allowed = deep_sample(SPV_FILE_MAX_DEPTH);
  g_autoptr(SpvScheme) scheme = test_parse(allowed);
  g_autofree char *deeper = deep_sample(SPV_FILE_MAX_DEPTH + 1);
  assert_fails(deeper, strlen(deeper),
               "f:1:41: more than 32 levels of brackets; a scheme needs fewer: remove some ($)",
               SPV_SCHEME_ERROR_LIMIT);
  /* Far beyond what the walk keeps places of. */
  g_autofree char *abyss = g_strnfill(1000000, '[');
  assert_fails(abyss, 1000000,
               "f:1:33: more than 32 levels of brackets; a scheme needs fewer: remove some ($)",
               SPV_SCHEME_ERROR_LIMIT);
}

static SpvScheme *
scheme_with_counts(guint n_tinctures, guint n_panels, guint n_layers, GError **error) {
  GString *text = g_string_new("{\"spolvero\":1,\"title\":\"T\",\"finest-line\":1,\"tinctures\":[");
  for (guint i = 0; i < n_tinctures; i++)
    g_string_append_printf(text, "%s{\"id\":\"t%u\",\"name\":\"t\",\"colour\":\"#000000\",\"hatch\":\"or\"}",
                           i > 0 ? "," : "", i);
  g_string_append(text, "],\"harness\":{\"name\":\"H\",\"panels\":[");
  for (guint i = 0; i < n_panels; i++)
    g_string_append_printf(text,
                           "%s{\"id\":\"p%u\",\"name\":\"p\",\"side\":\"centre\",\"outline\":{\"family\":"
                           "\"strip\",\"width\":1,\"height\":1},\"surface\":{\"kind\":\"flat\"},\"place\":{"
                           "\"x\":0,\"y\":0}}",
                           i > 0 ? "," : "", i);
  g_string_append(text, "]},\"designs\":{\"p0\":{\"layers\":[");
  for (guint i = 0; i < n_layers; i++)
    g_string_append_printf(text, "%s{\"id\":\"l%u\",\"kind\":\"field\",\"name\":\"l\",\"tinctures\":[null]}",
                           i > 0 ? "," : "", i);
  g_string_append(text, "]}}}");
  SpvScheme *scheme = spv_scheme_parse(text->str, text->len, "f", error);
  g_string_free(text, TRUE);
  return scheme;
}

static void
counts_are_read_up_to_their_limits(void **state) {
  (void) state;
  const guint most[3] = { SPV_SCHEME_MAX_TINCTURES, SPV_SCHEME_MAX_PANELS, SPV_PANEL_MAX_LAYERS };
  const char *const say[3] = { "“tinctures” has 65 items; at most 64 are allowed: remove some ($.tinctures)",
                               "“panels” has 257 items; at most 256 are allowed: remove some "
                               "($.harness.panels)",
                               "“layers” has 257 items; at most 256 are allowed: remove some "
                               "($.designs.p0.layers)" };
  g_autoptr(SpvScheme) scheme = scheme_with_counts(most[0], most[1], most[2], NULL);
  assert_non_null(scheme);
  assert_int_equal(scheme->n_panels, most[1]);
  assert_int_equal(scheme->panels[0]->n_layers, most[2]);
  for (guint i = 0; i < 3; i++) {
    GError *error = NULL;
    assert_null(scheme_with_counts(most[0] + (i == 0), most[1] + (i == 1), most[2] + (i == 2), &error));
    assert_int_equal(error->code, SPV_SCHEME_ERROR_LIMIT);
    assert_true(g_str_has_suffix(error->message, say[i]));
    g_error_free(error);
  }
}

static void
bytes_that_are_no_text_are_refused(void **state) {
  (void) state;
  assert_fails(
      "", 0, "f:1:1: the file ends too early; a value, a quotation mark or a closing bracket is missing ($)",
      SPV_SCHEME_ERROR_SYNTAX);
  assert_fails("{\n  \"a\": \"b\0c\"}", 16,
               "f:2:10: a zero byte; remove it: is this another kind of file? ($)", SPV_SCHEME_ERROR_SYNTAX);
  assert_fails("\xff\xfe{", 3, "f:1:1: not UTF-8 text; save the file as UTF-8 ($)", SPV_SCHEME_ERROR_SYNTAX);
}

static void
what_is_no_file_is_said_to_be_none(void **state) {
  (void) state;
  GError *error = NULL;
  assert_null(spv_scheme_load("/nonexistent/a.scheme.json", &error));
  assert_int_equal(error->code, SPV_SCHEME_ERROR_READ);
  assert_string_equal(error->message,
                      "/nonexistent/a.scheme.json: could not be read: No such file or directory");
  g_clear_error(&error);
  assert_null(spv_scheme_load("/", &error));
  assert_string_equal(error->message, "/: this is a folder; give a scheme file");
  g_clear_error(&error);
  /* A file without end is left after 16 MiB. */
  assert_null(spv_scheme_load("/dev/zero", &error));
  assert_int_equal(error->code, SPV_SCHEME_ERROR_LIMIT);
  g_clear_error(&error);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(samples_come_back_byte_for_byte),
    cmocka_unit_test(values_are_what_the_file_says),
    cmocka_unit_test(the_same_scheme_written_otherwise_gives_the_same_bytes),
    cmocka_unit_test(what_a_newer_version_wrote_outlives_an_edit),
    cmocka_unit_test(any_value_is_stable_from_the_first_saving_on),
    cmocka_unit_test(a_narrowed_dome_can_be_read_back),
    cmocka_unit_test_teardown(the_locale_does_not_change_the_file, back_to_c),
    cmocka_unit_test(sixteen_mebibytes_are_read_and_one_byte_more_is_not),
    cmocka_unit_test(thirty_two_levels_are_read_and_one_more_is_not),
    cmocka_unit_test(counts_are_read_up_to_their_limits),
    cmocka_unit_test(bytes_that_are_no_text_are_refused),
    cmocka_unit_test(what_is_no_file_is_said_to_be_none),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
