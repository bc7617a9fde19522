/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is wrong with a blazon, and what could stand instead; the same knowledge completes what is being
 * typed. */
#include "config.h"

#include "heraldry/blazon-parse-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "heraldry/spelling.h"

#define MOST_NEAR 3       /* words that are like the wrong one */
#define MOST_CANDIDATES 8 /* in one message */
#define MOST_SHOWN 60     /* characters of the wrong words */

static void
append(GString *list, const char *words) {
  g_string_append_printf(list, "%s%s", list->len > 0 ? ", " : "", words);
}

static gboolean
is_word(const SpvExpected *expected) {
  return expected->expect != SPV_EXPECT_SIGN && expected->expect != SPV_EXPECT_TEXT;
}

/* The expected words that are most like WORD, the likest first; none that differs in more than a third of it.
 */
static char *
near_words(const SpvBlazonParser *parser, const char *word) {
  GString *list = g_string_new(NULL);
  g_autoptr(GHashTable) said = g_hash_table_new(g_str_hash, g_str_equal);

  for (guint n = 0; n < MOST_NEAR; n++) {
    const char *best = NULL;
    guint best_away = MAX(1, (guint) strlen(word) / 3) + 1;
    for (guint i = 0; i < parser->expected->len; i++) {
      const SpvExpected *expected = &g_array_index(parser->expected, SpvExpected, i);
      guint away = is_word(expected) ? spv_spelling_distance(word, expected->words) : G_MAXUINT;
      if (away < best_away && !g_hash_table_contains(said, expected->words)) {
        best = expected->words;
        best_away = away;
      }
    }
    if (!best)
      break;
    g_hash_table_add(said, (gpointer) best);
    append(list, best);
  }
  return g_string_free(list, FALSE);
}

/* What EXPECT stands for, with examples; NULL where the words themselves are meant. */
static const char *
say_expect(SpvExpect expect) {
  switch (expect) {
  case SPV_EXPECT_TINCTURE:
    return _("a tincture (azure, or, “your own”)");
  case SPV_EXPECT_NOUN:
    return _("an ordinary or a charge (a bend, three mullets)");
  case SPV_EXPECT_VARIED:
    return _("a division (per pale, chequy)");
  case SPV_EXPECT_NUMBER:
    return _("a number");
  case SPV_EXPECT_LINE:
    return _("a line of partition (wavy, indented)");
  case SPV_EXPECT_POSITION:
    return _("a place (chief, base, pale)");
  case SPV_EXPECT_TEXT:
    return _("words in quotes");
  case SPV_EXPECT_SIGN:
  case SPV_EXPECT_KEYWORD:
  case SPV_EXPECT_SILENT:
    return NULL;
  }
  return NULL;
}

static gboolean
expects(const SpvBlazonParser *parser, SpvExpect expect) {
  for (guint i = 0; i < parser->expected->len; i++)
    if (g_array_index(parser->expected, SpvExpected, i).expect == expect)
      return TRUE;
  return FALSE;
}

/* All that could stand there, in a few words. */
static char *
say_candidates(const SpvBlazonParser *parser) {
  GString *list = g_string_new(NULL);
  g_autoptr(GHashTable) said = g_hash_table_new(g_str_hash, g_str_equal);
  guint n = 0;

  for (guint expect = 0; expect < SPV_N_EXPECTS; expect++)
    if (say_expect((SpvExpect) expect) && expects(parser, (SpvExpect) expect)) {
      append(list, say_expect((SpvExpect) expect));
      n++;
    }
  for (guint i = 0; i < parser->expected->len && n < MOST_CANDIDATES; i++) {
    const SpvExpected *expected = &g_array_index(parser->expected, SpvExpected, i);
    g_autofree char *quoted = g_strdup_printf(_("“%s”"), expected->words);
    if (say_expect(expected->expect) || !g_hash_table_add(said, (gpointer) expected->words))
      continue;
    append(list, quoted);
    n++;
  }
  return g_string_free(list, FALSE);
}

/* What is wrong where nothing more was said of it. */
static char *
say_unexpected(const SpvBlazonParser *parser, const SpvToken *token) {
  g_autofree char *near = token->type == SPV_TOKEN_WORD ? near_words(parser, token->word) : g_strdup("");
  g_autofree char *candidates = NULL;

  if (token->type == SPV_TOKEN_TEXT && token->open)
    return g_strdup(_("these words have no closing quote"));
  if (*near != '\0')
    return g_strdup_printf(_("did you mean %s?"), near);
  candidates = say_candidates(parser);
  if (*candidates == '\0')
    return g_strdup(_("nothing can stand here"));
  return g_strdup_printf(_("here could stand %s"), candidates);
}

/* The words at PLACE; of many, the first ones. */
static char *
words_at(const SpvBlazonParser *parser, SpvBlazonPlace place) {
  g_autofree char *words = g_utf8_substring(parser->text, place.start,
                                            place.start + MIN(place.length, MOST_SHOWN));

  return place.length > MOST_SHOWN ? g_strconcat(words, "…", NULL) : g_steal_pointer(&words);
}

GError *
spv_parser_error(SpvBlazonParser *parser, SpvBlazonPlace *place) {
  const SpvToken *token = &g_array_index(parser->tokens, SpvToken,
                                         MIN(parser->furthest, parser->tokens->len - 1));
  SpvBlazonPlace at = parser->error ? parser->place : token->place;
  g_autofree char *what = parser->error ? g_strdup(parser->error->message) : say_unexpected(parser, token);

  if (place)
    *place = at;
  if (at.length == 0)
    return g_error_new(SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON,
                       /* TRANSLATORS: of a blazon; the second part says what could stand there. */
                       _("At its end: %s"), what);
  g_autofree char *words = words_at(parser, at);
  return g_error_new(SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON,
                     /* TRANSLATORS: a number, the words that are wrong, what is wrong with them. */
                     _("Character %u, “%s”: %s"), at.start + 1, words, what);
}

/* Completion */

static int
compare_words(gconstpointer a, gconstpointer b) {
  return strcmp(*(const char *const *) a, *(const char *const *) b);
}

/* Where the word that is begun before the end of TEXT starts, bytes. */
static gsize
begun_at(const char *text) {
  const char *end = text + strlen(text), *p = end;

  while (p > text) {
    const char *before = g_utf8_prev_char(p);
    gunichar c = g_utf8_get_char(before);
    if (!g_unichar_isalpha(c) && !g_unichar_ismark(c))
      break;
    p = before;
  }
  return (gsize) (p - text);
}

/* Where the quote that is open at the end of TEXT starts, bytes; or -1. */
static gssize
quote_at(const char *text) {
  g_autoptr(GArray) tokens = spv_blazon_tokens(text);
  const SpvToken *last = tokens->len < 2 ? NULL : &g_array_index(tokens, SpvToken, tokens->len - 2);

  if (!last || last->type != SPV_TOKEN_TEXT || !last->open)
    return -1;
  return g_utf8_offset_to_pointer(text, last->place.start) - text;
}

/* Adds WORDS where they start with BEGUN. */
static void
offer(GPtrArray *words, char *offered, const char *begun) {
  g_autofree char *folded = spv_blazon_fold(offered, -1);

  for (guint i = 0; i < words->len; i++)
    if (g_str_equal(g_ptr_array_index(words, i), offered)) {
      g_free(offered);
      return;
    }
  if (g_str_has_prefix(folded, begun))
    g_ptr_array_add(words, offered);
  else
    g_free(offered);
}

char **
spv_blazon_complete(const char *text, guint cursor, const char *const *own, guint *start) {
  glong length = g_utf8_strlen(text, -1);
  g_autofree char *before = g_utf8_substring(text, 0, MIN((glong) cursor, length));
  gssize quote = quote_at(before);
  gsize from = quote >= 0 ? (gsize) quote : begun_at(before);
  g_autofree char *begun = spv_blazon_fold(before + from, -1);
  GPtrArray *words = g_ptr_array_new();
  SpvBlazonParser parser;

  before[from] = '\0';
  *start = (guint) g_utf8_strlen(before, -1);
  spv_blazon_parser_init(&parser, before);
  spv_parser_blazon(&parser);
  for (guint i = 0; parser.furthest == parser.tokens->len - 1 && i < parser.expected->len; i++) {
    const SpvExpected *expected = &g_array_index(parser.expected, SpvExpected, i);
    if (is_word(expected))
      offer(words, g_strdup(expected->words), begun);
  }
  if (parser.furthest == parser.tokens->len - 1 && expects(&parser, SPV_EXPECT_TINCTURE))
    for (guint i = 0; own && own[i]; i++)
      offer(words, spv_blazon_quote(own[i]), begun);
  spv_blazon_parser_clear(&parser);
  g_ptr_array_sort(words, compare_words);
  g_ptr_array_add(words, NULL);
  return (char **) g_ptr_array_free(words, FALSE);
}
