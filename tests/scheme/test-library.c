/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The library: what is shipped can be loaded, templates are kept in the painter's own folder. */
#include "scheme-test.h"

#include <string.h>

#include "scheme/library.h"

/* The user's data directory of this test, and the templates in it. */
static int
make_home(void **state) {
  *state = test_new_folder();
  g_setenv("XDG_DATA_HOME", *state, TRUE);
  return 0;
}

static int
remove_home(void **state) {
  g_autofree char *middle = g_build_filename(*state, "spolvero", NULL);
  test_remove_folder(spv_library_folder());
  g_rmdir(middle);
  test_remove_folder(*state);
  return 0;
}

/* GLib remembers the user's data directory, so each test finds the same folder, emptied. */
static int
empty_folder(void **state) {
  (void) state;
  test_remove_folder(spv_library_folder());
  return 0;
}

static char *
save_template(const SpvScheme *scheme, const char *title) {
  GError *error = NULL;
  char *path = spv_library_save_template(scheme, title, &error);
  if (path == NULL)
    fail_msg("%s", error->message);
  return path;
}

static const SpvLibraryEntry *
entry_at(GPtrArray *entries, guint index) {
  assert_true(index < entries->len);
  return g_ptr_array_index(entries, index);
}

static void
assert_template(GPtrArray *entries, guint index, const char *key, const char *title) {
  const SpvLibraryEntry *entry = entry_at(entries, index);
  assert_int_equal(entry->kind, SPV_LIBRARY_TEMPLATE);
  assert_string_equal(entry->key, key);
  assert_string_equal(entry->title, title);
  g_autofree char *file = g_path_get_basename(entry->path);
  g_autofree char *expected = g_strconcat(key, ".scheme.json", NULL);
  assert_string_equal(file, expected);
}

static void
templates_are_listed_by_title(void **state) {
  g_autoptr(GPtrArray) none = spv_library_list(SPV_LIBRARY_TEMPLATE);
  assert_int_equal(none->len, 0);

  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autofree char *first = save_template(scheme, "Ferry, second squad");
  g_autofree char *second = save_template(scheme, "Ähren & Söhne!");
  g_autofree char *third = save_template(scheme, "盾");
  assert_true(g_str_has_prefix(first, *state));

  g_autoptr(GPtrArray) entries = spv_library_list(SPV_LIBRARY_TEMPLATE);
  assert_int_equal(entries->len, 3);
  guint shift = 0;
  if (strcmp(entry_at(entries, 0)->title, "Ferry, second squad") != 0)
    shift = 1; /* as the locale sorts an umlaut */
  assert_template(entries, shift, "ferry-second-squad", "Ferry, second squad");
  assert_template(entries, 1 - shift, "ahren-sohne", "Ähren & Söhne!");
  assert_template(entries, 2, "template", "盾");

  g_autoptr(SpvScheme) loaded = spv_library_load(entry_at(entries, shift), NULL);
  assert_string_equal(loaded->title, "Ferry, second squad");
  assert_int_equal(loaded->n_panels, scheme->n_panels);
  g_autoptr(SpvScheme) by_key = spv_library_load_key("ferry-second-squad", NULL);
  assert_string_equal(by_key->title, "Ferry, second squad");
}

static void
a_template_of_the_same_title_is_replaced(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autofree char *first = save_template(scheme, "Squad");
  g_autoptr(SpvScheme) noted = spv_scheme_with_note(scheme, "second");
  g_autofree char *again = save_template(noted, "Squad");
  assert_string_equal(first, again);
  g_autoptr(SpvScheme) loaded = spv_scheme_load(first, NULL);
  assert_string_equal(loaded->note, "second");

  /* Another title that comes to the same file name gets a file of its own. */
  g_autofree char *other = save_template(scheme, "squad!");
  assert_string_not_equal(first, other);
  assert_true(g_str_has_suffix(other, "/squad-2.scheme.json"));
  g_autoptr(GPtrArray) entries = spv_library_list(SPV_LIBRARY_TEMPLATE);
  assert_int_equal(entries->len, 2);
}

static void
a_title_that_looks_like_a_path_stays_in_the_folder(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autofree char *folder = spv_library_folder();
  g_autofree char *path = save_template(scheme, "../../etc/Passwd");
  g_autofree char *expected = g_build_filename(folder, "etc-passwd.scheme.json", NULL);
  assert_string_equal(path, expected);
  g_autofree char *long_title = g_strnfill(200, 'W');
  g_autofree char *long_path = save_template(scheme, long_title);
  assert_true(strlen(long_path) - strlen(folder) < 100);
  GError *error = NULL;
  assert_null(spv_library_save_template(scheme, " ", &error));
  assert_string_equal(error->message, "the template has no name; give it one");
  g_error_free(error);
}

static void
a_broken_template_is_listed_and_says_why(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autofree char *good = save_template(scheme, "Good");
  g_autofree char *folder = spv_library_folder();
  g_autofree char *bad = g_build_filename(folder, "bad.scheme.json", NULL);
  g_autofree char *notes = g_build_filename(folder, "notes.txt", NULL);
  assert_true(g_file_set_contents(bad, "{", -1, NULL));
  assert_true(g_file_set_contents(notes, "{", -1, NULL));
  g_autoptr(GPtrArray) entries = spv_library_list(SPV_LIBRARY_TEMPLATE);
  assert_int_equal(entries->len, 2);
  guint index = strcmp(entry_at(entries, 0)->key, "bad") == 0 ? 0 : 1;
  assert_template(entries, index, "bad", "bad");
  GError *error = NULL;
  assert_null(spv_library_load(entry_at(entries, index), &error));
  g_autofree char *start = g_strdup_printf("%s:1:2: the file ends too early", bad);
  assert_true(g_str_has_prefix(error->message, start));
  g_error_free(error);
}

static void
an_unknown_key_lists_what_there_is(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autofree char *path = save_template(scheme, "Only one");
  GError *error = NULL;
  assert_null(spv_library_load_key("nothing-like-it", &error));
  assert_int_equal(error->code, SPV_SCHEME_ERROR_UNKNOWN);
  assert_true(g_str_has_prefix(error->message, "there is no harness, example or template “nothing-like-it”; "
                                               "there are: "));
  assert_true(g_str_has_suffix(error->message, "only-one"));
  g_autoptr(GPtrArray) harnesses = spv_library_list(SPV_LIBRARY_HARNESS);
  for (guint i = 0; i < harnesses->len; i++)
    assert_non_null(strstr(error->message, entry_at(harnesses, i)->key));
  g_error_free(error);
}

/* Everything in the index loads, by entry and by key, under a title of its own; harnesses have panels and no
 * designs. */
static void
whatever_is_shipped_loads(void **state) {
  (void) state;
  for (guint kind = SPV_LIBRARY_HARNESS; kind <= SPV_LIBRARY_EXAMPLE; kind++) {
    g_autoptr(GPtrArray) entries = spv_library_list((SpvLibraryKind) kind);
    assert_true(entries->len >= 3);
    for (guint i = 0; i < entries->len; i++) {
      const SpvLibraryEntry *entry = entry_at(entries, i);
      GError *error = NULL;
      g_autoptr(SpvScheme) scheme = spv_library_load(entry, &error);
      if (scheme == NULL)
        fail_msg("%s", error->message);
      assert_null(entry->path);
      assert_string_equal(entry->title, kind == SPV_LIBRARY_HARNESS ? scheme->harness : scheme->title);
      assert_true(scheme->n_panels > 0);
      for (guint j = 0; kind == SPV_LIBRARY_HARNESS && j < scheme->n_panels; j++)
        assert_int_equal(scheme->panels[j]->n_layers, 0);
      g_autoptr(SpvScheme) by_key = spv_library_load_key(entry->key, NULL);
      g_autofree char *one = spv_scheme_to_text(scheme, NULL);
      g_autofree char *other = spv_scheme_to_text(by_key, NULL);
      assert_string_equal(one, other);
    }
  }
}

#define TEST(function) cmocka_unit_test_teardown(function, empty_folder)

int
main(void) {
  const struct CMUnitTest tests[] = {
    TEST(templates_are_listed_by_title),
    TEST(a_template_of_the_same_title_is_replaced),
    TEST(a_title_that_looks_like_a_path_stays_in_the_folder),
    TEST(a_broken_template_is_listed_and_says_why),
    TEST(an_unknown_key_lists_what_there_is),
    TEST(whatever_is_shipped_loads),
  };
  return cmocka_run_group_tests(tests, make_home, remove_home);
}
