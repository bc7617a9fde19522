/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading the nouns of a blazon: how many of what, and which of those that are there already. */
#include "config.h"

#include "heraldry/blazon-parse-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "heraldry/arrange.h"

const SpvBlazonNoun *
spv_parser_noun_at(SpvBlazonParser *parser, guint at, guint *length) {
  const SpvBlazonNoun *best = NULL;

  *length = 0;
  for (guint i = 0; i < parser->nouns->len; i++) {
    const SpvBlazonNoun *noun = g_ptr_array_index(parser->nouns, i);
    guint n = spv_parser_match(parser, at, noun->words, SPV_EXPECT_NOUN);
    if (n > *length) {
      best = noun;
      *length = n;
    }
  }
  return best;
}

const SpvBlazonVaried *
spv_parser_varied_at(SpvBlazonParser *parser, guint at, guint *length) {
  const SpvBlazonVaried *best = NULL;

  *length = 0;
  for (guint i = 0; spv_blazon_varied[i].words; i++) {
    guint n = spv_parser_match(parser, at, spv_blazon_varied[i].words, SPV_EXPECT_VARIED);
    if (n > *length) {
      best = &spv_blazon_varied[i];
      *length = n;
    }
  }
  return best;
}

const SpvBlazonPosition *
spv_parser_position_at(SpvBlazonParser *parser, guint at, guint *length) {
  const SpvBlazonPosition *best = NULL;
  guint in = spv_parser_match(parser, at, "in", SPV_EXPECT_KEYWORD);

  *length = 0;
  for (guint i = 0; in > 0 && spv_blazon_positions[i].words; i++) {
    guint n = spv_parser_match(parser, at + in, spv_blazon_positions[i].words, SPV_EXPECT_POSITION);
    if (n + in > *length && n > 0) {
      best = &spv_blazon_positions[i];
      *length = n + in;
    }
  }
  return best;
}

gboolean
spv_parser_quantity_at(SpvBlazonParser *parser, guint at, SpvQuantity *quantity, guint *length) {
  SpvParsed result;
  guint n;

  *quantity = (SpvQuantity){ .given = TRUE, .n = 1 };
  *length = spv_parser_match(parser, at, "a", SPV_EXPECT_KEYWORD);
  if (*length == 0)
    *length = spv_parser_match(parser, at, "an", SPV_EXPECT_KEYWORD);
  if (*length > 0) {
    n = spv_parser_match(parser, at + 1, "pair of", SPV_EXPECT_KEYWORD);
    *length += n;
    quantity->n = n > 0 ? 2 : 1;
    return TRUE;
  }
  quantity->n = spv_parser_number(parser, at, &result);
  *length = quantity->n > 0 ? 1 : 0;
  return quantity->n > 0;
}

/* Makes item INDEX, named by NOUN at token FROM, so many. */
static SpvParsed
count(SpvBlazonParser *parser, guint index, const SpvBlazonNoun *noun, SpvQuantity quantity, guint from) {
  SpvPattern *pattern = &spv_parser_item(parser, index)->pattern;
  int number = spv_pattern_measure_index(noun->kind, "number");
  guint n = quantity.given && noun->number > 0 ? noun->number * quantity.n : quantity.n;
  gboolean in_pairs = spv_blazon_is_pair(noun->kind);

  if (!quantity.given && noun->plural && !in_pairs && noun->kind != SPV_PATTERN_LETTERING)
    return spv_parser_wrong(parser, from, parser->at,
                            g_strdup(_("say how many there are, as in three mullets")));
  if (!quantity.given)
    n = noun->number > 0 ? noun->number : 1;
  if (number < 0) {
    if (n == 1 || (in_pairs && n == 2))
      return SPV_PARSED;
    return spv_parser_wrong(parser, from, parser->at,
                            g_strdup(_("only one can be laid; name each of them by itself")));
  }
  const SpvMeasureSpec *spec = &spv_pattern_info(noun->kind)->measures[number];
  SpvMeasure value = { SPV_UNIT_PLAIN, n };
  if (!spv_measure_is_valid(spec, value))
    return spv_parser_wrong(parser, from, parser->at,
                            g_strdup_printf(_("no more than %d can be laid"), (int) spec->max));
  pattern->measures[number] = value;
  return SPV_PARSED;
}

/* Adds an item for NOUN, which the next LENGTH tokens are. */
static SpvParsed
add(SpvBlazonParser *parser, const SpvBlazonNoun *noun, guint length, int on, guint *index) {
  guint at = parser->at;

  parser->at += length;
  if (spv_parser_add(parser, noun->kind, on, at, index) != SPV_PARSED)
    return SPV_PARSED_WRONG;
  if (noun->tincture)
    spv_parser_item(parser, *index)->tinctures[0] = g_strdup(noun->tincture);
  return SPV_PARSED;
}

/* The words after "the words". */
static SpvParsed
read_words(SpvBlazonParser *parser, guint index) {
  const SpvToken *token = spv_parser_token(parser);
  const SpvTextSpec *spec = &spv_pattern_info(SPV_PATTERN_LETTERING)->texts[0];
  g_autoptr(GError) error = NULL;

  if (token->type != SPV_TOKEN_TEXT || token->open) {
    spv_parser_expect(parser, parser->at, "\"VII\"", SPV_EXPECT_TEXT);
    return SPV_PARSED_WRONG;
  }
  if (!spec->check(token->word, &error))
    return spv_parser_wrong(parser, parser->at, parser->at + 1, g_strdup(error->message));
  spv_blazon_item_set_text(spv_parser_item(parser, index), 0, token->word);
  parser->at++;
  return SPV_PARSED;
}

SpvParsed
spv_parser_noun(SpvBlazonParser *parser, int on, guint *index) {
  SpvQuantity quantity = { FALSE, 1 };
  guint from = parser->at, length = 0, n;

  if (!spv_parser_quantity_at(parser, from, &quantity, &length)) {
    if (parser->error)
      return SPV_PARSED_WRONG;
    quantity = (SpvQuantity){ FALSE, 1 };
    length = 0;
  }
  const SpvBlazonNoun *noun = spv_parser_noun_at(parser, from + length, &n);
  if (!noun && !quantity.given)
    return SPV_PARSED_NOTHING;
  parser->at += length;
  if (!noun)
    return spv_parser_no_noun(parser);
  if (add(parser, noun, n, on, index) != SPV_PARSED)
    return SPV_PARSED_WRONG;
  if (count(parser, *index, noun, quantity, from) != SPV_PARSED)
    return SPV_PARSED_WRONG;
  /* "lettering" alone has words already. */
  if (noun->kind == SPV_PATTERN_LETTERING && !g_str_equal(noun->words, "lettering"))
    return read_words(parser, *index);
  return SPV_PARSED;
}

SpvParsed
spv_parser_strewn(SpvBlazonParser *parser, int on, guint *index) {
  guint n;
  const SpvBlazonNoun *noun = spv_parser_noun_at(parser, parser->at, &n);
  int arrangement;

  if (!noun)
    return spv_parser_no_noun(parser);
  arrangement = spv_pattern_measure_index(noun->kind, "arrangement");
  if (arrangement < 0)
    return spv_parser_wrong(parser, parser->at, parser->at + n,
                            g_strdup(_("only charges can be strewn, as in semy of mullets")));
  if (add(parser, noun, n, on, index) != SPV_PARSED)
    return SPV_PARSED_WRONG;
  spv_parser_item(parser, *index)->pattern.measures[arrangement] = (SpvMeasure){ SPV_UNIT_PLAIN,
                                                                                 SPV_ARRANGEMENT_SEMY };
  return SPV_PARSED;
}

/* Which of those of a kind is meant at token AT: "second"; 0 where it isn't said. */
static guint
ordinal_at(SpvBlazonParser *parser, guint at, guint *length) {
  const SpvToken *token = &g_array_index(parser->tokens, SpvToken, MIN(at, parser->tokens->len - 1));
  static const char *const endings[] = { "st", "nd", "rd", "th" };

  *length = 1;
  for (guint i = 0; spv_blazon_ordinals[i]; i++)
    if (spv_parser_match(parser, at, spv_blazon_ordinals[i], SPV_EXPECT_NUMBER) > 0)
      return i + 1;
  for (guint i = 0; token->type == SPV_TOKEN_NUMBER && i < G_N_ELEMENTS(endings); i++)
    if (spv_parser_match(parser, at + 1, endings[i], SPV_EXPECT_NUMBER) > 0) {
      *length = 2;
      return token->number >= 1 && token->number <= SPV_BLAZON_MAX_ITEMS ? (guint) token->number : G_MAXUINT;
    }
  *length = 0;
  return 0;
}

/* The kind that is named at token AT, whatever it is. */
static gboolean
kind_at(SpvBlazonParser *parser, guint at, SpvPatternKind *kind, guint *length) {
  guint n_noun, n_varied;
  const SpvBlazonNoun *noun = spv_parser_noun_at(parser, at, &n_noun);
  const SpvBlazonVaried *varied = spv_parser_varied_at(parser, at, &n_varied);

  *length = MAX(n_noun, n_varied);
  if (*length == 0)
    return FALSE;
  *kind = n_noun > n_varied ? noun->kind : varied->kind;
  return TRUE;
}

/* Whether one of the first BEFORE items is of KIND. */
static gboolean
has_kind(SpvBlazonParser *parser, guint before, SpvPatternKind kind) {
  for (guint i = 0; i < before; i++)
    if (spv_parser_item(parser, i)->pattern.kind == kind)
      return TRUE;
  return FALSE;
}

/* As kind_at(), for one of the first BEFORE items: without a paly-bendy, "the paly bendy" is the paly, with a
 * bendy on what it says this of. */
static gboolean
kind_there(SpvBlazonParser *parser, guint at, guint before, SpvPatternKind *kind, guint *length) {
  if (!kind_at(parser, at, kind, length))
    return FALSE;
  if (*length == 2 && (*kind == SPV_PATTERN_PALY_BENDY || *kind == SPV_PATTERN_BARRY_BENDY) &&
      !has_kind(parser, before, *kind)) {
    *kind = *kind == SPV_PATTERN_PALY_BENDY ? SPV_PATTERN_PALY : SPV_PATTERN_BARRY;
    *length = 1;
  }
  return TRUE;
}

SpvParsed
spv_parser_reference(SpvBlazonParser *parser, guint before, gboolean all, guint *index) {
  guint from = parser->at, n_ordinal, n_kind, found = 0;
  guint the = spv_parser_match(parser, from, "the", SPV_EXPECT_KEYWORD);
  SpvPatternKind kind;

  if (the == 0)
    return SPV_PARSED_NOTHING;
  guint ordinal = ordinal_at(parser, from + the, &n_ordinal);
  if (!kind_there(parser, from + the + n_ordinal, before, &kind, &n_kind))
    return SPV_PARSED_NOTHING;
  parser->at += the + n_ordinal + n_kind;
  for (guint i = 0; i < before && (ordinal == 0 || found < ordinal); i++)
    if (spv_parser_item(parser, i)->pattern.kind == kind) {
      found++;
      *index = i;
    }
  if (found == 0 || found < ordinal)
    return spv_parser_wrong(parser, from, parser->at,
                            g_strdup(_("there is none before this; name it first, or write a for the")));
  if (!all && !spv_blazon_can_bear(kind))
    return spv_parser_wrong(parser, from, parser->at,
                            g_strdup(_("nothing can be laid on this; lay it on the panel, after a comma")));
  return SPV_PARSED;
}

/* Whether WORD, maybe in the plural, is one of those that we don't draw; that goes to SINGULAR. */
static gboolean
is_undrawn(const char *word, const char **singular) {
  static const char *const endings[] = { "", "s", "es" };

  for (guint i = 0; spv_blazon_undrawn[i]; i++)
    for (guint k = 0; k < G_N_ELEMENTS(endings); k++) {
      gsize length = strlen(spv_blazon_undrawn[i]);
      if (strncmp(word, spv_blazon_undrawn[i], length) == 0 && g_str_equal(word + length, endings[k])) {
        *singular = spv_blazon_undrawn[i];
        return TRUE;
      }
    }
  return FALSE;
}

SpvParsed
spv_parser_no_noun(SpvBlazonParser *parser) {
  const SpvToken *token = spv_parser_token(parser);
  const char *singular;

  if (parser->error || token->type != SPV_TOKEN_WORD || !is_undrawn(token->word, &singular))
    return SPV_PARSED_WRONG;
  return spv_parser_wrong(parser, parser->at, parser->at + 1,
                          /* TRANSLATORS: a beast, a bird, or the like, as English heraldry calls it. */
                          g_strdup_printf(_("we draw no %s; bring your own as a path charge"), singular));
}
