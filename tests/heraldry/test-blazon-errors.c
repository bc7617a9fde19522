/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is no blazon: what is said of it, and where; what could stand where something is being typed; and that
 * no soup of words is too much. */
#include "support/near.h"

#include <string.h>

#include "heraldry/blazon.h"
#include "heraldry/random-blazon.h"

static void
errors_name_the_word_and_what_could_stand_there(void **state) {
  static const struct {
    const char *text;
    guint start, length; /* characters */
    const char *message; /* a part of it */
  } errors[] = {
    { "azure, a mullt or", 9, 5, "Character 10, “mullt”: did you mean mullet?" },
    { "azure, a bnd or", 9, 3, "did you mean bend" },
    { "azur, a bend or", 0, 4, "Character 1, “azur”: did you mean azure?" },
    { "azure, a fess wavvy or", 14, 5, "did you mean wavy?" },
    { "\"Été\", a mullt or", 9, 5, "Character 10, “mullt”" },
    { "azure, six martlets or", 11, 8, "“martlets”: we draw no martlet; bring your own as a path charge" },
    { "azure, three eaglets displayed or", 13, 7, "we draw no eaglet" },
    { "azure, a bend between six lioncels rampant or", 26, 8, "we draw no lioncel" },
    { "azure, on a bend or semy of lions gules", 28, 5, "we draw no lion" },
    { "azure, a fess", 9, 4, "it has no tincture" },
    { "azure, on a bend three keys or", 10, 6, "it has no tincture" },
    { "azure, a fess or three mullets", 23, 7, "it has no tincture" },
    { "azure, mullets or", 7, 7, "say how many there are" },
    { "azure, two crosses or", 7, 11, "only one can be laid" },
    { "azure, 51 bars or", 7, 7, "no more than 50" },
    { "azure, 0 mullets or", 7, 1, "a whole number from 1 to 200" },
    { "azure, 2.5 mullets or", 7, 3, "a whole number from 1 to 200" },
    { "azure, a label of 99 points or", 18, 9, "a number from 1 to 50" },
    { "gyronny of seven or and gules", 11, 5, "8, 6, 10, 12, 16" },
    { "azure, a fess of six rays or", 14, 11, "nothing of which it has a number" },
    { "azure, six keys two and two or", 16, 11, "these make 4" },
    { "azure, a bend of the second", 14, 13, "only 1 tincture is named" },
    { "azure, a bend counterchanged", 14, 14, "nothing beneath has two tinctures" },
    { "per pall or, gules and vert, a key counterchanged across the per pall", 57, 12,
      "two tinctures to change" },
    { "azure, a bend or, on the fess a key sable", 21, 8, "there is none before this" },
    { "per pale or and gules, on the per pale a key sable", 26, 12, "nothing can be laid on this" },
    { "azure, in chief a bend or", 7, 8, "only charges can be put there" },
    { "azure, semy of bends or", 15, 5, "only charges can be strewn" },
    { "azure, a saltire cotised or", 17, 7, "can't be cotised" },
    { "azure, two bends cotised or", 17, 7, "can't be cotised" },
    { "azure, a cross or between three keys or", 26, 13, "can't be shared out evenly" },
    { "azure, a chief or between three keys or", 18, 7, "nothing can stand on its sides" },
    { "azure, a mullet [size 2 m] or", 24, 1, "did you mean mm?" },
    { "azure, a mullet [size -2 mm] or", 22, 5, "a length from 0 mm" },
    { "azure, a mullet [size 9] or", 22, 1, "a part of the panel from 0 to 2" },
    { "azure, a mullet [turn 200°] or", 22, 4, "an angle from -180° to 180°" },
    { "azure, a mullet [points 3.5] or", 24, 3, "a whole number from 3 to 16" },
    { "azure, a mullet [sise 2 mm] or", 17, 4, "did you mean size?" },
    { "azure, a mullet [rows \"3; 1\"] or", 22, 6, "Character 2 of the rows" },
    { "azure, a fess \"deep", 14, 5, "no closing quote" },
    { "azure, a fess or; ? a key", 18, 1, "here could stand" },
    { "vairy or gules", 9, 5, "“and”" },
    { "per pale or", 11, 0, "At its end: here could stand" },
    { "azure, a", 8, 0, "an ordinary or a charge" },
    { "azure, a bend or ] a key or", 17, 1, "here could stand" },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(errors); i++) {
    SpvBlazonPlace place = { 99, 99 };
    g_autoptr(GError) error = NULL;
    g_autoptr(GPtrArray) items = spv_blazon_parse(errors[i].text, &place, &error);

    if (items)
      fail_msg("“%s” is read", errors[i].text);
    assert_true(g_error_matches(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON));
    if (errors[i].message && !strstr(error->message, errors[i].message))
      fail_msg("“%s”: %s", errors[i].text, error->message);
    if (errors[i].start != place.start || errors[i].length != place.length)
      fail_msg("“%s”: at %u, %u characters: %s", errors[i].text, place.start, place.length, error->message);
  }
}

/* As many commas as there are candidates but one. */
static void
no_error_lists_more_than_eight_candidates(void **state) {
  static const char *const texts[] = { "azure, a qqqqqq or",         "azure qqqqqq",
                                       "azure, a fess qqqqqq",       "azure, a fess [qqqqqq",
                                       "azure, a fess or in qqqqqq", "qqqqqq" };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(texts); i++) {
    g_autoptr(GError) error = NULL;
    g_autoptr(GPtrArray) items = spv_blazon_parse(texts[i], NULL, &error);
    guint n = 1;
    int depth = 0;
    const char *list;

    assert_null(items);
    list = strstr(error->message, "here could stand");
    if (!list)
      fail_msg("“%s”: %s", texts[i], error->message);
    for (const char *p = list; *p != '\0'; p++) {
      depth += *p == '(' ? 1 : *p == ')' ? -1 : 0;
      n += depth == 0 && p[0] == ',' && p[1] == ' ';
    }
    assert_in_range(n, 1, 8);
  }
}

static void
what_is_no_text_is_told(void **state) {
  g_autoptr(GError) error = NULL;
  g_autofree char *long_text = g_strnfill(SPV_BLAZON_TEXT_MAX + 1, ' ');
  g_autoptr(GString) many = g_string_new("azure");
  SpvBlazonPlace place;

  (void) state;
  assert_null(spv_blazon_parse("azure\xff", &place, &error));
  g_clear_error(&error);
  assert_null(spv_blazon_parse(long_text, &place, &error));
  g_clear_error(&error);
  for (guint i = 0; i < SPV_BLAZON_MAX_ITEMS; i++)
    g_string_append(many, i + 1 < SPV_BLAZON_MAX_ITEMS ? " charged with a key or" + (i == 0 ? 13 : 0)
                                                       : ", a bend or");
  g_string_insert(many, 5, ", ");
  assert_null(spv_blazon_parse(many->str, &place, &error));
  assert_non_null(strstr(error->message, "256"));
}

static gboolean
offers(const char *text, const char *word, guint start) {
  static const char *const own[] = { "deep sea", "Ochre", NULL };
  guint from = 99;
  g_auto(GStrv) words = spv_blazon_complete(text, (guint) g_utf8_strlen(text, -1), own, &from);

  for (guint i = 0; words[i] && words[i + 1]; i++)
    if (strcmp(words[i], words[i + 1]) >= 0)
      fail_msg("“%s”: %s before %s", text, words[i], words[i + 1]);
  return from == start && g_strv_contains((const char *const *) words, word);
}

static void
words_are_completed(void **state) {
  (void) state;
  assert_true(offers("", "azure", 0));
  assert_true(offers("", "per bend", 0));
  assert_true(offers("", "\"deep sea\"", 0));
  assert_true(offers("az", "azure", 0));
  assert_true(offers("Az", "azure", 0));
  assert_false(offers("az", "argent", 0));
  assert_true(offers("per ", "bend sinister", 4));
  assert_true(offers("Azure, a b", "bend", 9));
  assert_true(offers("Azure, a bend ", "engrailed", 14));
  assert_true(offers("Azure, a bend ", "or", 14));
  assert_false(offers("Azure, a key ", "engrailed", 13));
  assert_true(offers("Azure, a bend or ", "between", 17));
  assert_true(offers("Azure, a bend or, on the ", "bend", 25));
  assert_true(offers("Azure, a key in ", "chief", 16));
  assert_true(offers("Azure, a key [", "size", 14));
  assert_false(offers("Azure, a key [", "depth", 14));
  assert_true(offers("Azure, a key [place ", "first quarter", 20));
  assert_true(offers("Azure, a key \"d", "\"deep sea\"", 13));
  assert_false(offers("Azure, a key \"d", "\"Ochre\"", 13));
  assert_true(offers("Azure, a key \"o", "\"Ochre\"", 13));
  /* Nothing where it went wrong before. */
  assert_false(offers("Azure, a kye ", "or", 13));
}

/* In the middle of a text, what comes after the cursor does not matter. */
static void
what_is_after_the_cursor_does_not_matter(void **state) {
  guint start = 0;
  g_auto(GStrv) words = spv_blazon_complete("Azure, a be gules ?", 11, NULL, &start);

  (void) state;
  assert_int_equal(start, 9);
  assert_true(g_strv_contains((const char *const *) words, "bend"));
  g_auto(GStrv) beyond = spv_blazon_complete("Azu", 99, NULL, &start);
  assert_int_equal(start, 0);
  assert_string_equal(beyond[0], "azure");
}

static char *
word_soup(GRand *rand) {
  static const char *const words[] = {
    "a",        "an",      "three",   "7",         "of",       "the",
    "on",       "in",      "and",     ",",         ";",        ".",
    "[",        "]",       "azure",   "or",        "ermine",   "vairy",
    "bare",     "\"own\"", "\"",      "per",       "pale",     "bend",
    "sinister", "fess",    "chief",   "mullet",    "mullets",  "cross",
    "potent",   "potenty", "plain",   "wavy",      "chequy",   "fretty",
    "semy",     "between", "charged", "with",      "cotised",  "each",
    "first",    "quarter", "two",     "one",       "orle",     "points",
    "lion",     "words",   "size",    "2.5",       "mm",       "°",
    "%",        "-3",      "auto",    "mirrored",  "reversed", "counterchanged",
    "across",   "overall", "cotises", "lettering", "shape",    "path",
    "barry",    "bendy",   "é",       "?",         "1e999",    "300",
    "tierced",  "gules",
  };
  GString *soup = g_string_new(NULL);

  for (int n = g_rand_int_range(rand, 0, 30); n > 0; n--)
    g_string_append_printf(soup, "%s%s", words[g_rand_int_range(rand, 0, G_N_ELEMENTS(words))],
                           g_rand_int_range(rand, 0, 8) == 0 ? "" : " ");
  return g_string_free(soup, FALSE);
}

static void
assert_sound(const char *text) {
  SpvBlazonPlace place = { 0, 0 };
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) items = spv_blazon_parse(text, &place, &error);
  guint length = (guint) g_utf8_strlen(text, -1), start = 0;
  g_auto(GStrv) words = spv_blazon_complete(text, length, NULL, &start);

  assert_true(start <= length);
  assert_true((items == NULL) == (error != NULL));
  if (error) {
    assert_true(place.start + place.length <= length);
    return;
  }
  /* What is read can be written, and is what it was. */
  g_autofree char *written = spv_blazon_write(items);
  g_autoptr(GPtrArray) again = spv_blazon_parse(written, NULL, &error);
  if (!again || again->len != items->len)
    fail_msg("“%s” is written as “%s”", text, written);
  for (guint i = 0; i < items->len; i++)
    if (!spv_blazon_item_equal(g_ptr_array_index(items, i), g_ptr_array_index(again, i)))
      fail_msg("“%s” is written as “%s”: item %u", text, written, i);
}

static void
no_soup_of_words_is_too_much(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(1894);

  (void) state;
  for (guint i = 0; i < 10000; i++) {
    g_autofree char *soup = word_soup(rand);
    assert_sound(soup);
  }
}

/* Blazons with a word taken out, doubled, or swapped: nearly right ones go further in than soup. */
static void
nearly_right_ones_are_no_harm(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(1909);

  (void) state;
  for (guint i = 0; i < 3000; i++) {
    g_autoptr(GPtrArray) items = random_items(rand);
    g_autofree char *text = spv_blazon_write(items);
    g_auto(GStrv) words = g_strsplit(text, " ", -1);
    guint n = g_strv_length(words);
    if (n == 0)
      continue;
    guint at = (guint) g_rand_int_range(rand, 0, (int) n), other = (guint) g_rand_int_range(rand, 0, (int) n);
    char *moved = words[at];
    words[at] = words[other];
    words[other] = moved;
    g_autofree char *changed = g_strjoinv(" ", words);
    assert_sound(changed);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(errors_name_the_word_and_what_could_stand_there),
    cmocka_unit_test(no_error_lists_more_than_eight_candidates),
    cmocka_unit_test(what_is_no_text_is_told),
    cmocka_unit_test(words_are_completed),
    cmocka_unit_test(what_is_after_the_cursor_does_not_matter),
    cmocka_unit_test(no_soup_of_words_is_too_much),
    cmocka_unit_test(nearly_right_ones_are_no_harm),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
