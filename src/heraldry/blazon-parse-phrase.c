/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading the phrases of a blazon: a charge with what lies on it, beside it and about it. */
#include "config.h"

#include "heraldry/blazon-parse-private.h"

#include <glib/gi18n-lib.h>

#include "heraldry/arrange.h"

/* Whether what is laid on ON, if it is an item, can be. */
static SpvParsed
check_bearer(SpvBlazonParser *parser, guint index, guint from) {
  if (spv_blazon_can_bear(spv_parser_item(parser, index)->pattern.kind))
    return SPV_PARSED;
  return spv_parser_wrong(parser, from, parser->at,
                          g_strdup(_("nothing can be laid on this; lay it on the panel, after a comma")));
}

SpvParsed
spv_parser_varied(SpvBlazonParser *parser, int on, guint *index) {
  guint length, from = parser->at;
  const SpvBlazonVaried *varied = spv_parser_varied_at(parser, from, &length);

  if (!varied)
    return SPV_PARSED_NOTHING;
  parser->at += length;
  if (spv_parser_add(parser, varied->kind, on, from, index) != SPV_PARSED)
    return SPV_PARSED_WRONG;
  if (varied->semy)
    spv_parser_item(parser, *index)->pattern.measures[SPV_CHARGE_ARRANGEMENT] = (SpvMeasure){
      SPV_UNIT_PLAIN, SPV_ARRANGEMENT_SEMY
    };
  if (spv_parser_modifiers(parser, *index) == SPV_PARSED_WRONG)
    return SPV_PARSED_WRONG;
  return spv_parser_tinctures(parser, *index);
}

static gboolean
take_semy(SpvBlazonParser *parser) {
  static const char *const others[] = { "seme of", "semee of", "strewn with", "powdered with" };

  if (spv_parser_take(parser, "semy of"))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS(others); i++)
    if (spv_parser_take_silently(parser, others[i]))
      return TRUE;
  return FALSE;
}

/* A noun, or "semy of" one, with its modifiers and its tincture. */
static SpvParsed
read_item(SpvBlazonParser *parser, int on, guint *index) {
  SpvParsed parsed = take_semy(parser) ? spv_parser_strewn(parser, on, index)
                                       : spv_parser_noun(parser, on, index);

  if (parsed != SPV_PARSED)
    return parsed;
  if (spv_parser_modifiers(parser, *index) == SPV_PARSED_WRONG)
    return SPV_PARSED_WRONG;
  return spv_parser_tinctures(parser, *index);
}

/* Whether a charge is named at token AT, so that "and" goes on with what was begun. */
static gboolean
charge_follows(SpvBlazonParser *parser, guint at) {
  SpvQuantity quantity;
  guint n_quantity, n_noun;
  const SpvBlazonNoun *noun;

  if (!spv_parser_quantity_at(parser, at, &quantity, &n_quantity))
    return FALSE;
  noun = spv_parser_noun_at(parser, at + n_quantity, &n_noun);
  if (!noun)
    return FALSE;
  SpvPatternGroup group = spv_pattern_group(noun->kind);
  return group == SPV_GROUP_CHARGE || group == SPV_GROUP_OWN;
}

/* Reads "and" where another charge follows it. */
static gboolean
take_and(SpvBlazonParser *parser) {
  guint n = spv_parser_match(parser, parser->at, "and", SPV_EXPECT_KEYWORD);

  if (n == 0 || !charge_follows(parser, parser->at + n))
    return FALSE;
  parser->at += n;
  return TRUE;
}

static SpvParsed
required(SpvBlazonParser *parser, SpvParsed parsed) {
  return parsed == SPV_PARSED_NOTHING ? spv_parser_no_noun(parser) : parsed;
}

/* Beside */

/* "cotised", "cotised or", after item INDEX. */
static SpvParsed
read_cotised(SpvBlazonParser *parser, guint index, guint from) {
  SpvBlazonItem *item = spv_parser_item(parser, index), *beside;
  guint at;
  SpvPattern cotise;
  g_autofree char *words = NULL;
  SpvParsed parsed;

  if (!spv_blazon_cotise(&item->pattern, &cotise))
    return spv_parser_wrong(parser, from, parser->at,
                            g_strdup(_("this can't be cotised; one fess, pale, bend or chevron can be")));
  if (spv_parser_add(parser, cotise.kind, item->on, from, &at) != SPV_PARSED)
    return SPV_PARSED_WRONG;
  beside = spv_parser_item(parser, at);
  beside->pattern = cotise;
  spv_parser_mark(parser, at)->cotises = (int) index;
  parsed = spv_parser_tincture(parser, &words);
  if (parsed == SPV_PARSED_WRONG)
    return parsed;
  if (parsed == SPV_PARSED) {
    spv_parser_give(parser, at, 0, words);
    spv_parser_give_pending(parser, words);
    return SPV_PARSED;
  }
  beside->tinctures[0] = g_strdup(item->tinctures[0]);
  beside->tincture_places[0] = item->tincture_places[0];
  beside->counterchange = item->counterchange;
  for (guint i = 0; i < parser->pending->len; i++)
    if (g_array_index(parser->pending, guint, i) == index) {
      g_array_append_val(parser->pending, at);
      break;
    }
  return SPV_PARSED;
}

/* Adds a copy of item INDEX. */
static SpvParsed
add_copy(SpvBlazonParser *parser, guint index, guint *copy_index) {
  const SpvBlazonItem *item = spv_parser_item(parser, index);
  SpvBlazonItem *copy;

  if (spv_parser_add(parser, item->pattern.kind, item->on, parser->at, copy_index) != SPV_PARSED)
    return SPV_PARSED_WRONG;
  copy = spv_parser_item(parser, *copy_index);
  copy->pattern = item->pattern;
  copy->place = item->place;
  copy->counterchange = item->counterchange;
  for (guint i = 0; i < SPV_PATTERN_TEXTS; i++)
    spv_blazon_item_set_text(copy, i, item->texts[i]);
  copy->tinctures[0] = g_strdup(item->tinctures[0]);
  copy->tincture_places[0] = item->tincture_places[0];
  *spv_parser_mark(parser, *copy_index) = *spv_parser_mark(parser, index);
  for (guint i = 0, n = parser->pending->len; i < n; i++)
    if (g_array_index(parser->pending, guint, i) == index)
      g_array_append_val(parser->pending, *copy_index);
  return SPV_PARSED;
}

/* Charges that can be put in places. */
static gboolean
is_charge(const SpvPattern *pattern) {
  return spv_pattern_measure_index(pattern->kind, "place") == SPV_CHARGE_PLACE;
}

/* Shares the charges of item INDEX out on the sides of an ordinary of KIND; the tokens from FROM on name
 * them. */
static SpvParsed
share_out(SpvBlazonParser *parser, SpvPatternKind kind, guint index, guint from) {
  SpvPattern pattern = spv_parser_item(parser, index)->pattern;
  SpvBlazonBetween between;
  guint n;

  if (!is_charge(&pattern) || spv_parser_mark(parser, index)->placed)
    return SPV_PARSED;
  n = (guint) pattern.measures[SPV_CHARGE_NUMBER].value;
  if (!spv_blazon_between(kind, n, &between))
    return spv_parser_wrong(parser, from, parser->at,
                            g_strdup(_("so many can't be shared out evenly; say where each of them stands")));
  spv_parser_item(parser, index)->pattern = spv_blazon_between_part(&between, 0, &pattern);
  for (guint part = 1; part < between.n_parts; part++) {
    guint copy;
    if (add_copy(parser, index, &copy) != SPV_PARSED)
      return SPV_PARSED_WRONG;
    SpvBlazonItem *item = spv_parser_item(parser, copy);
    const char *rows = item->pattern.texts[0], *second = item->pattern.texts[1];
    item->pattern = spv_blazon_between_part(&between, part, &pattern);
    item->pattern.texts[0] = rows;
    item->pattern.texts[1] = second;
  }
  return SPV_PARSED;
}

/* Puts item INDEX in the first or the second place beside an ordinary of KIND. */
static void
put_beside(SpvBlazonParser *parser, SpvPatternKind kind, guint index, guint part) {
  SpvBlazonItem *item = spv_parser_item(parser, index);
  SpvBlazonBetween between;

  if (!is_charge(&item->pattern) || spv_parser_mark(parser, index)->placed)
    return;
  for (guint n = 2; n <= 4; n++)
    if (spv_blazon_between(kind, n, &between)) {
      item->pattern.measures[SPV_CHARGE_PLACE] = (SpvMeasure){ SPV_UNIT_PLAIN, between.parts[part].place };
      return;
    }
}

/* "between three mullets", "between a key and a sword", about item INDEX. */
static SpvParsed
read_between(SpvBlazonParser *parser, guint index, guint word) {
  const SpvBlazonItem *item = spv_parser_item(parser, index);
  SpvPatternKind kind = item->pattern.kind;
  int on = item->on;
  SpvBlazonBetween unused;
  guint from = parser->at, first, second;
  SpvParsed parsed;

  if (!spv_blazon_between(kind, 12, &unused))
    return spv_parser_wrong(parser, word, from,
                            g_strdup(_("nothing can stand on its sides; say where each charge stands")));
  parsed = required(parser, read_item(parser, on, &first));
  if (parsed != SPV_PARSED)
    return parsed;
  if (!take_and(parser))
    return share_out(parser, kind, first, from);
  parsed = required(parser, read_item(parser, on, &second));
  put_beside(parser, kind, first, 0);
  if (parsed == SPV_PARSED)
    put_beside(parser, kind, second, 1);
  return parsed;
}

/* On */

/* What is laid on item INDEX: one charge, or several with "and". */
static SpvParsed
read_laid_on(SpvBlazonParser *parser, guint index) {
  SpvParsed parsed = SPV_PARSED;

  do
    parsed = required(parser, spv_parser_charge(parser, (int) index));
  while (parsed == SPV_PARSED && take_and(parser));
  return parsed;
}

/* After the tincture: "in chief", where no other charge is put there. */
static SpvParsed
read_position(SpvBlazonParser *parser, guint index) {
  static const char *const after[] = { "and",  "with",    "between", "charged",
                                       "each", "overall", "within",  "cotised" };
  guint length, from = parser->at;
  const SpvBlazonPosition *position = spv_parser_position_at(parser, from, &length);
  gboolean alone;

  if (!position || !is_charge(&spv_parser_item(parser, index)->pattern))
    return SPV_PARSED_NOTHING;
  const SpvToken *next = &g_array_index(parser->tokens, SpvToken, from + length);
  alone = next->type == SPV_TOKEN_SIGN || next->type == SPV_TOKEN_END;
  for (guint i = 0; i < G_N_ELEMENTS(after); i++)
    alone |= next->type == SPV_TOKEN_WORD && g_str_equal(next->word, after[i]);
  if (!alone)
    return SPV_PARSED_NOTHING;
  parser->at += length;
  return spv_parser_put(parser, index, position, from);
}

/* "fretty or", "semy of mullets or": what lies on the same, or on the item itself. */
static SpvParsed
read_varied_tail(SpvBlazonParser *parser, guint index) {
  int on = spv_blazon_beneath(parser->items, index);
  guint length, at = 0;
  SpvParsed parsed = SPV_PARSED_NOTHING;
  const SpvBlazonVaried *varied = spv_parser_varied_at(parser, parser->at, &length);

  if (varied && spv_pattern_info(varied->kind)->n_slots == 1)
    parsed = spv_parser_varied(parser, on, &at);
  else if (take_semy(parser)) {
    parsed = spv_parser_strewn(parser, on, &at);
    if (parsed == SPV_PARSED && spv_parser_modifiers(parser, at) == SPV_PARSED_WRONG)
      return SPV_PARSED_WRONG;
    if (parsed == SPV_PARSED)
      parsed = spv_parser_tinctures(parser, at);
  }
  return parsed == SPV_PARSED ? spv_parser_tail(parser, at, TRUE) : parsed;
}

/* What may stand after a comma, and belongs to the item nevertheless. */
static SpvParsed
read_belonging(SpvBlazonParser *parser, guint index) {
  guint at = parser->at;
  SpvParsed parsed = spv_parser_rows(parser, index);

  if (parsed != SPV_PARSED_NOTHING)
    return parsed;
  spv_parser_take_sign(parser, ',');
  guint word = parser->at;
  if (spv_parser_take(parser, "cotised") || spv_parser_take_silently(parser, "cottised") ||
      spv_parser_take_silently(parser, "endorsed"))
    return read_cotised(parser, index, word);
  if (spv_parser_take(parser, "between"))
    return read_between(parser, index, word);
  if (spv_parser_take(parser, "charged with") || spv_parser_take(parser, "each charged with"))
    return check_bearer(parser, index, word) == SPV_PARSED ? read_laid_on(parser, index) : SPV_PARSED_WRONG;
  parser->at = at;
  return SPV_PARSED_NOTHING;
}

SpvParsed
spv_parser_tail(SpvBlazonParser *parser, guint index, gboolean inner) {
  SpvParsed parsed;

  do {
    parsed = spv_parser_bracket(parser, index);
    if (parsed == SPV_PARSED_NOTHING)
      parsed = read_varied_tail(parser, index);
    if (parsed == SPV_PARSED_NOTHING && !inner)
      parsed = read_position(parser, index);
    if (parsed == SPV_PARSED_NOTHING && !inner)
      parsed = read_belonging(parser, index);
  } while (parsed == SPV_PARSED);
  return parsed == SPV_PARSED_WRONG ? parsed : SPV_PARSED;
}

/* "on a bend gules three mullets or", after "on". */
static SpvParsed
read_on(SpvBlazonParser *parser, int on) {
  guint index, from = parser->at;
  SpvParsed parsed = required(parser, read_item(parser, on, &index));

  if (parsed == SPV_PARSED)
    parsed = check_bearer(parser, index, from);
  if (parsed == SPV_PARSED)
    parsed = spv_parser_tail(parser, index, FALSE);
  if (parsed != SPV_PARSED)
    return parsed;
  if (parser->pending->len > 0) {
    /* The next tincture is that of what lies on it. */
    spv_parser_expect(parser, parser->at, "azure", SPV_EXPECT_TINCTURE);
    return spv_parser_wrong(parser, from, parser->at,
                            g_strdup(_("it has no tincture; name one before what lies on it")));
  }
  spv_parser_take_sign(parser, ',');
  return read_laid_on(parser, index);
}

/* "an orle of eight mullets". */
static SpvParsed
read_orle_of(SpvBlazonParser *parser, int on, guint *index) {
  guint article = spv_parser_match(parser, parser->at, "an", SPV_EXPECT_KEYWORD);
  guint orle = spv_parser_match(parser, parser->at + article, "orle of", SPV_EXPECT_KEYWORD);
  const SpvBlazonPosition in_orle = { "orle", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_ORLE };
  SpvParsed parsed;
  guint from = parser->at;

  if (orle == 0)
    return SPV_PARSED_NOTHING;
  parser->at += article + orle;
  parsed = required(parser, spv_parser_noun(parser, on, index));
  if (parsed == SPV_PARSED)
    parsed = spv_parser_put(parser, *index, &in_orle, from);
  if (parsed != SPV_PARSED || spv_parser_modifiers(parser, *index) == SPV_PARSED_WRONG)
    return SPV_PARSED_WRONG;
  return spv_parser_tinctures(parser, *index);
}

/* What stands before a charge: "on the bend", "in chief". */
typedef struct {
  int on;
  const SpvBlazonPosition *position; /* or NULL */
  guint from, length;                /* the tokens that say the position */
} Before;

/* "on the second fess", an item that is there already. */
static SpvParsed
read_on_the(SpvBlazonParser *parser, Before *before) {
  guint at = parser->at, bearer;
  SpvParsed parsed;

  if (!spv_parser_take(parser, "on"))
    return SPV_PARSED_NOTHING;
  guint the_words = spv_parser_match(parser, parser->at, "the words", SPV_EXPECT_NOUN);
  /* "on the words “VII” or": new ones. */
  if (the_words > 0 && g_array_index(parser->tokens, SpvToken, parser->at + the_words).type == SPV_TOKEN_TEXT)
    parsed = SPV_PARSED_NOTHING;
  else
    parsed = spv_parser_reference(parser, parser->items->len, FALSE, &bearer);
  if (parsed == SPV_PARSED_NOTHING)
    parser->at = at;
  if (parsed != SPV_PARSED)
    return parsed;
  before->on = (int) bearer;
  spv_parser_take_sign(parser, ',');
  return SPV_PARSED;
}

static SpvParsed
read_in(SpvBlazonParser *parser, Before *before) {
  guint length;
  const SpvBlazonPosition *position = before->position ? NULL
                                                       : spv_parser_position_at(parser, parser->at, &length);

  if (!position)
    return SPV_PARSED_NOTHING;
  before->position = position;
  before->from = parser->at;
  before->length = length;
  parser->at += length;
  spv_parser_take_sign(parser, ',');
  return SPV_PARSED;
}

static SpvParsed
read_before(SpvBlazonParser *parser, Before *before) {
  SpvParsed parsed;

  do {
    spv_parser_take(parser, "overall");
    parsed = read_on_the(parser, before);
    if (parsed == SPV_PARSED_NOTHING)
      parsed = read_in(parser, before);
  } while (parsed == SPV_PARSED);
  return parsed;
}

/* Puts item INDEX where BEFORE says. */
static SpvParsed
put_there(SpvBlazonParser *parser, guint index, const Before *before) {
  guint at = parser->at;
  SpvParsed parsed;

  if (!before->position)
    return SPV_PARSED;
  parser->at = before->from + before->length;
  parsed = spv_parser_put(parser, index, before->position, before->from);
  parser->at = at;
  return parsed;
}

SpvParsed
spv_parser_charge(SpvBlazonParser *parser, int on) {
  Before before = { .on = on };
  guint index, from = parser->at;
  SpvParsed parsed = read_before(parser, &before);

  if (parsed == SPV_PARSED_WRONG)
    return parsed;
  if (!before.position && spv_parser_take(parser, "on"))
    return read_on(parser, before.on);
  parsed = read_orle_of(parser, before.on, &index);
  if (parsed == SPV_PARSED_NOTHING)
    parsed = spv_parser_varied(parser, before.on, &index);
  if (parsed == SPV_PARSED_NOTHING)
    parsed = read_item(parser, before.on, &index);
  if (parsed == SPV_PARSED_NOTHING && parser->at > from)
    return spv_parser_no_noun(parser);
  if (parsed == SPV_PARSED)
    parsed = put_there(parser, index, &before);
  return parsed == SPV_PARSED ? spv_parser_tail(parser, index, FALSE) : parsed;
}
