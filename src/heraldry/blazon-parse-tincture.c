/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading tinctures: by heraldic name, in quotes, furs, "of the first", and "counterchanged". */
#include "config.h"

#include "heraldry/blazon-parse-private.h"

#include <glib/gi18n-lib.h>

static const char *
heraldic_at(SpvBlazonParser *parser) {
  for (guint i = 0; spv_blazon_tinctures[i]; i++)
    if (spv_parser_match(parser, parser->at, spv_blazon_tinctures[i], SPV_EXPECT_TINCTURE) > 0)
      return spv_blazon_tinctures[i];
  for (guint i = 0; spv_blazon_tincture_words[i].words; i++)
    if (spv_parser_match(parser, parser->at, spv_blazon_tincture_words[i].words, SPV_EXPECT_TINCTURE) > 0)
      return spv_blazon_tincture_words[i].means;
  return NULL;
}

/* A plain tincture, into part PART. */
static SpvParsed
read_plain(SpvBlazonParser *parser, SpvBlazonTincture *tincture, guint part) {
  const SpvToken *token = spv_parser_token(parser);
  const char *word;

  if (token->type == SPV_TOKEN_TEXT && !token->open && *token->word != '\0') {
    tincture->parts[part] = g_strdup(token->word);
    tincture->own[part] = TRUE;
    parser->at++;
    return SPV_PARSED;
  }
  word = heraldic_at(parser);
  if (!word)
    return SPV_PARSED_NOTHING;
  tincture->parts[part] = g_strdup(word);
  parser->at++;
  return SPV_PARSED;
}

/* "or and gules", after "vairy". */
static SpvParsed
read_pair(SpvBlazonParser *parser, SpvBlazonTincture *tincture) {
  if (read_plain(parser, tincture, 0) != SPV_PARSED || !spv_parser_take(parser, "and") ||
      read_plain(parser, tincture, 1) != SPV_PARSED)
    return SPV_PARSED_WRONG;
  return SPV_PARSED;
}

/* Reads a fur that has a word of its own. */
static gboolean
read_fur(SpvBlazonParser *parser, SpvBlazonTincture *tincture) {
  for (guint i = 0; spv_blazon_furs[i].words; i++) {
    guint n = spv_parser_match(parser, parser->at, spv_blazon_furs[i].words, SPV_EXPECT_TINCTURE);
    if (n == 0)
      continue;
    parser->at += n;
    tincture->fur = spv_blazon_furs[i].fur;
    tincture->parts[0] = g_strdup(spv_blazon_furs[i].ground);
    tincture->parts[1] = g_strdup(spv_blazon_furs[i].spots);
    return TRUE;
  }
  return FALSE;
}

static SpvParsed
read_tincture(SpvBlazonParser *parser, SpvBlazonTincture *tincture) {
  if (read_fur(parser, tincture))
    return SPV_PARSED;
  for (guint i = 0; spv_blazon_fur_makers[i].words; i++) {
    guint n = spv_parser_match(parser, parser->at, spv_blazon_fur_makers[i].words, SPV_EXPECT_TINCTURE);
    if (n == 0)
      continue;
    parser->at += n;
    tincture->fur = spv_blazon_fur_makers[i].fur;
    return read_pair(parser, tincture);
  }
  if (read_plain(parser, tincture, 0) != SPV_PARSED)
    return SPV_PARSED_NOTHING;
  if (!spv_parser_take(parser, "ermined"))
    return SPV_PARSED;
  tincture->fur = SPV_FUR_ERMINE;
  return read_plain(parser, tincture, 1) == SPV_PARSED ? SPV_PARSED : SPV_PARSED_WRONG;
}

/* "of the first", "of the field", "of the last": one that was named before. */
static SpvParsed
read_mention(SpvBlazonParser *parser, char **words) {
  static const char *const lasts[] = { "last", "same" };
  guint from = parser->at, n = spv_parser_match(parser, from, "of the", SPV_EXPECT_KEYWORD),
        index = G_MAXUINT;

  if (n == 0)
    return SPV_PARSED_NOTHING;
  if (spv_parser_match(parser, from + n, "field", SPV_EXPECT_KEYWORD) > 0)
    index = 0;
  for (guint i = 0; i < G_N_ELEMENTS(lasts); i++)
    if (spv_parser_match(parser, from + n, lasts[i], SPV_EXPECT_KEYWORD) > 0)
      index = parser->mentions->len - 1;
  for (guint i = 0; spv_blazon_ordinals[i] && index == G_MAXUINT; i++)
    if (spv_parser_match(parser, from + n, spv_blazon_ordinals[i], SPV_EXPECT_NUMBER) > 0)
      index = i;
  if (index == G_MAXUINT && parser->mentions->len > 0)
    return SPV_PARSED_NOTHING;
  parser->at += n + 1;
  if (index >= parser->mentions->len)
    return spv_parser_wrong(
        parser, from, parser->at,
        g_strdup_printf(ngettext("only %u tincture is named before this",
                                 "only %u tinctures are named before this", parser->mentions->len),
                        parser->mentions->len));
  *words = g_strdup(g_ptr_array_index(parser->mentions, index));
  return SPV_PARSED;
}

/* What is in words of the tincture that stands next, to WORDS; NULL for "bare". */
static SpvParsed
read_words(SpvBlazonParser *parser, char **words) {
  g_auto(SpvBlazonTincture) tincture = { .fur = SPV_FUR_NONE };
  SpvParsed parsed;

  *words = NULL;
  if (spv_parser_take(parser, "bare"))
    return SPV_PARSED;
  parsed = read_mention(parser, words);
  if (parsed != SPV_PARSED_NOTHING)
    return parsed;
  parsed = read_tincture(parser, &tincture);
  if (parsed != SPV_PARSED)
    return parsed;
  *words = spv_blazon_tincture_write(&tincture);
  for (guint i = 0; i < parser->mentions->len; i++)
    if (g_str_equal(g_ptr_array_index(parser->mentions, i), *words))
      return SPV_PARSED;
  g_ptr_array_add(parser->mentions, g_strdup(*words));
  return SPV_PARSED;
}

SpvParsed
spv_parser_tincture(SpvBlazonParser *parser, char **words) {
  SpvBlazonPlace first = spv_parser_token(parser)->place, last;
  SpvParsed parsed = read_words(parser, words);

  if (parsed != SPV_PARSED)
    return parsed;
  last = g_array_index(parser->tokens, SpvToken, parser->at - 1).place;
  parser->named = (SpvBlazonPlace){ first.start, last.start + last.length - first.start };
  return SPV_PARSED;
}

void
spv_parser_give(SpvBlazonParser *parser, guint index, guint slot, const char *words) {
  SpvBlazonItem *item = spv_parser_item(parser, index);

  g_free(item->tinctures[slot]);
  item->tinctures[slot] = g_strdup(words);
  item->tincture_places[slot] = parser->named;
}

void
spv_parser_give_pending(SpvBlazonParser *parser, const char *words) {
  for (guint i = 0; i < parser->pending->len; i++)
    spv_parser_give(parser, g_array_index(parser->pending, guint, i), 0, words);
  g_array_set_size(parser->pending, 0);
}

/* Counterchanges item INDEX across what is named after it, or across what is usual; the word is token FROM.
 */
static SpvParsed
counterchange(SpvBlazonParser *parser, guint index, int across, guint from) {
  SpvBlazonItem *item = spv_parser_item(parser, index);

  item->counterchange = across >= 0 ? across : spv_blazon_counterchange(parser->items, index);
  if (item->counterchange >= 0 && item->counterchange < (int) index)
    return SPV_PARSED;
  return spv_parser_wrong(
      parser, from, from + 1,
      g_strdup(_("nothing beneath has two tinctures to change; name a tincture instead")));
}

/* "counterchanged", "counterchanged across the quarterly"; also for all that wait for a tincture. */
static SpvParsed
read_counterchanged(SpvBlazonParser *parser, guint index) {
  guint from = parser->at, across = 0;
  gboolean given = FALSE;

  if (!spv_parser_take(parser, "counterchanged") && !spv_parser_take_silently(parser, "counter-changed"))
    return SPV_PARSED_NOTHING;
  if (spv_parser_take(parser, "across")) {
    guint at = parser->at;
    if (spv_parser_reference(parser, index, TRUE, &across) != SPV_PARSED)
      return SPV_PARSED_WRONG;
    if (spv_pattern_info(spv_parser_item(parser, across)->pattern.kind)->n_slots != 2)
      return spv_parser_wrong(parser, at, parser->at,
                              g_strdup(_("this has not two tinctures to change; name a division that has")));
    given = TRUE;
  }
  for (guint i = 0; i < parser->pending->len; i++)
    if (counterchange(parser, g_array_index(parser->pending, guint, i), given ? (int) across : -1, from) !=
        SPV_PARSED)
      return SPV_PARSED_WRONG;
  g_array_set_size(parser->pending, 0);
  return counterchange(parser, index, given ? (int) across : -1, from);
}

/* The tincture of an item of one slot; "a fess chequy azure and argent" is bare, with a check laid on it. */
static SpvParsed
read_single(SpvBlazonParser *parser, guint index) {
  SpvBlazonItem *item = spv_parser_item(parser, index);
  guint length, varied_index;
  g_autofree char *words = NULL;
  SpvParsed parsed;

  const SpvBlazonVaried *varied = spv_parser_varied_at(parser, parser->at, &length);
  if (varied && spv_blazon_can_bear(item->pattern.kind) && spv_pattern_info(varied->kind)->n_slots > 1)
    return spv_parser_varied(parser, (int) index, &varied_index);
  parsed = spv_parser_tincture(parser, &words);
  if (parsed == SPV_PARSED_WRONG)
    return parsed;
  if (parsed == SPV_PARSED_NOTHING) {
    if (!item->tinctures[0])
      g_array_append_val(parser->pending, index);
    return SPV_PARSED;
  }
  spv_parser_give(parser, index, 0, words);
  spv_parser_give_pending(parser, words);
  return SPV_PARSED;
}

SpvParsed
spv_parser_tinctures(SpvBlazonParser *parser, guint index) {
  SpvBlazonItem *item = spv_parser_item(parser, index);
  guint n = spv_pattern_info(item->pattern.kind)->n_slots;
  guint at = parser->at;
  SpvParsed parsed;

  /* After rows, and wherever it is clear what is meant: "six mullets, three, two, one, counterchanged". */
  if (spv_parser_take_sign(parser, ',')) {
    guint comma = parser->at;
    gboolean follows = (n == 1 && spv_parser_mark(parser, index)->placed && heraldic_at(parser)) ||
                       spv_parser_match(parser, comma, "counterchanged", SPV_EXPECT_KEYWORD) > 0;
    parser->at = follows ? comma : at;
  }
  parsed = read_counterchanged(parser, index);
  if (parsed != SPV_PARSED_NOTHING)
    return parsed;
  if (n == 1)
    return read_single(parser, index);
  for (guint slot = 0; slot < n; slot++) {
    if (slot > 0 && !spv_parser_take_sign(parser, ',') && !spv_parser_take(parser, "and"))
      return SPV_PARSED_WRONG;
    if (slot > 0)
      spv_parser_take(parser, "and");
    g_autofree char *words = NULL;
    if (spv_parser_tincture(parser, &words) != SPV_PARSED)
      return SPV_PARSED_WRONG;
    spv_parser_give(parser, index, slot, words);
  }
  return SPV_PARSED;
}

gboolean
spv_blazon_tincture_read(const char *words, SpvBlazonTincture *tincture) {
  SpvBlazonParser parser;
  gboolean good;

  *tincture = (SpvBlazonTincture){ .fur = SPV_FUR_NONE };
  spv_blazon_parser_init(&parser, words);
  good = read_tincture(&parser, tincture) == SPV_PARSED && spv_parser_token(&parser)->type == SPV_TOKEN_END;
  spv_blazon_parser_clear(&parser);
  if (!good)
    spv_blazon_tincture_clear(tincture);
  return good;
}
