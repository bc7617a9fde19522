/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading a blazon: looking at its words, and its parts in their order. */
#include "config.h"

#include "heraldry/blazon-parse-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

void
spv_blazon_parser_init(SpvBlazonParser *parser, const char *text) {
  *parser = (SpvBlazonParser){ .text = text, .tokens = spv_blazon_tokens(text) };
  parser->nouns = spv_blazon_nouns_new();
  parser->items = g_ptr_array_new_with_free_func((GDestroyNotify) spv_blazon_item_free);
  parser->marks = g_array_new(FALSE, TRUE, sizeof(SpvBlazonMark));
  parser->pending = g_array_new(FALSE, FALSE, sizeof(guint));
  parser->mentions = g_ptr_array_new_with_free_func(g_free);
  parser->expected = g_array_new(FALSE, FALSE, sizeof(SpvExpected));
}

void
spv_blazon_parser_clear(SpvBlazonParser *parser) {
  g_array_unref(parser->tokens);
  g_ptr_array_unref(parser->nouns);
  g_ptr_array_unref(parser->items);
  g_array_unref(parser->marks);
  g_array_unref(parser->pending);
  g_ptr_array_unref(parser->mentions);
  g_array_unref(parser->expected);
  g_clear_error(&parser->error);
}

/* The token AT, or the last one. */
static const SpvToken *
token_at(const SpvBlazonParser *parser, guint at) {
  return &g_array_index(parser->tokens, SpvToken, MIN(at, parser->tokens->len - 1));
}

const SpvToken *
spv_parser_token(const SpvBlazonParser *parser) {
  return token_at(parser, parser->at);
}

SpvBlazonItem *
spv_parser_item(const SpvBlazonParser *parser, guint index) {
  return g_ptr_array_index(parser->items, index);
}

SpvBlazonMark *
spv_parser_mark(const SpvBlazonParser *parser, guint index) {
  return &g_array_index(parser->marks, SpvBlazonMark, index);
}

SpvParsed
spv_parser_wrong(SpvBlazonParser *parser, guint from, guint to, char *message) {
  SpvBlazonPlace first = token_at(parser, from)->place,
                 last = token_at(parser, to > from ? to - 1 : from)->place;

  if (!parser->error) {
    parser->place = (SpvBlazonPlace){ first.start, last.start + last.length - first.start };
    parser->error = g_error_new_literal(SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON, message);
  }
  g_free(message);
  return SPV_PARSED_WRONG;
}

void
spv_parser_expect(SpvBlazonParser *parser, guint at, const char *words, SpvExpect expect) {
  SpvExpected expected = { expect, words };

  if (at < parser->furthest || expect == SPV_EXPECT_SILENT)
    return;
  if (at > parser->furthest) {
    parser->furthest = at;
    g_array_set_size(parser->expected, 0);
  }
  g_array_append_val(parser->expected, expected);
}

guint
spv_parser_match(SpvBlazonParser *parser, guint at, const char *words, SpvExpect expect) {
  const char *p = words;
  guint n = 0;

  for (;;) {
    const SpvToken *token = token_at(parser, at + n);
    gsize length = strcspn(p, " -");
    gboolean plain = token->type == SPV_TOKEN_WORD || token->type == SPV_TOKEN_NUMBER;
    if (!plain || strncmp(token->word, p, length) != 0 || token->word[length] != '\0') {
      spv_parser_expect(parser, at + n, p, expect);
      return 0;
    }
    n++;
    p += length;
    if (*p == '\0')
      return n;
    p++;
  }
}

gboolean
spv_parser_take(SpvBlazonParser *parser, const char *words) {
  guint n = spv_parser_match(parser, parser->at, words, SPV_EXPECT_KEYWORD);

  parser->at += n;
  return n > 0;
}

gboolean
spv_parser_take_silently(SpvBlazonParser *parser, const char *words) {
  guint n = spv_parser_match(parser, parser->at, words, SPV_EXPECT_SILENT);

  parser->at += n;
  return n > 0;
}

gboolean
spv_parser_take_sign(SpvBlazonParser *parser, gunichar sign) {
  const SpvToken *token = spv_parser_token(parser);
  const char *words = sign == '[' ? "[" : sign == ']' ? "]" : ",";

  if (token->type != SPV_TOKEN_SIGN || token->sign != sign) {
    spv_parser_expect(parser, parser->at, words, SPV_EXPECT_SIGN);
    return FALSE;
  }
  parser->at++;
  return TRUE;
}

guint
spv_parser_number(SpvBlazonParser *parser, guint at, SpvParsed *result) {
  const SpvToken *token = token_at(parser, at);

  *result = SPV_PARSED;
  if (token->type == SPV_TOKEN_NUMBER) {
    if (token->number >= 1 && token->number <= SPV_PATTERN_MAX_COUNT && token->number == floor(token->number))
      return (guint) token->number;
    *result = spv_parser_wrong(
        parser, at, at + 1,
        g_strdup_printf(_("a whole number from 1 to %d should stand"), SPV_PATTERN_MAX_COUNT));
    return 0;
  }
  for (guint i = 0; spv_blazon_numbers[i]; i++)
    if (spv_parser_match(parser, at, spv_blazon_numbers[i], SPV_EXPECT_NUMBER) > 0)
      return i + 1;
  *result = SPV_PARSED_NOTHING;
  return 0;
}

SpvParsed
spv_parser_add(SpvBlazonParser *parser, SpvPatternKind kind, int on, guint from, guint *index) {
  SpvBlazonMark mark = { .cotises = -1 };
  SpvBlazonItem *item;
  SpvBlazonPlace first = token_at(parser, from)->place;
  SpvBlazonPlace last = token_at(parser, parser->at > from ? parser->at - 1 : from)->place;

  if (parser->items->len >= SPV_BLAZON_MAX_ITEMS)
    return spv_parser_wrong(parser, from, parser->at,
                            g_strdup_printf(_("a panel bears no more than %d layers"), SPV_BLAZON_MAX_ITEMS));
  item = spv_blazon_item_new(kind);
  item->on = on;
  item->place = (SpvBlazonPlace){ first.start, last.start + last.length - first.start };
  *index = parser->items->len;
  g_ptr_array_add(parser->items, item);
  g_array_append_val(parser->marks, mark);
  return SPV_PARSED;
}

/* The field: "Azure", "Per bend azure and or". */
static SpvParsed
read_field(SpvBlazonParser *parser) {
  guint index, from = parser->at, length;
  g_autofree char *words = NULL;
  SpvParsed parsed;

  if (spv_parser_varied_at(parser, parser->at, &length)) {
    parsed = spv_parser_varied(parser, -1, &index);
    return parsed == SPV_PARSED ? spv_parser_tail(parser, index, FALSE) : parsed;
  }
  parsed = spv_parser_tincture(parser, &words);
  if (parsed != SPV_PARSED)
    return parsed;
  if (spv_parser_add(parser, SPV_PATTERN_FIELD, -1, from, &index) != SPV_PARSED)
    return SPV_PARSED_WRONG;
  spv_parser_give(parser, index, 0, words);
  return spv_parser_tail(parser, index, TRUE);
}

/* Reads one of the signs that part phrases and are seldom used. */
static gboolean
take_seldom_sign(SpvBlazonParser *parser) {
  const SpvToken *token = spv_parser_token(parser);

  if (token->type != SPV_TOKEN_SIGN || !(token->sign == ';' || token->sign == ':' || token->sign == '.'))
    return FALSE;
  parser->at++;
  return TRUE;
}

/* Reads what may stand before a charge that lies on the panel, and means nothing more; whether there was any.
 */
static gboolean
skip_joints(SpvBlazonParser *parser) {
  static const char *const joints[] = { "with", "also", "over all", "all within", "within" };
  guint from = parser->at;
  gboolean again = TRUE;

  while (again) {
    again = spv_parser_take_sign(parser, ',') || take_seldom_sign(parser) || spv_parser_take(parser, "and") ||
            spv_parser_take(parser, "overall");
    for (guint i = 0; i < G_N_ELEMENTS(joints); i++)
      again |= spv_parser_take_silently(parser, joints[i]);
  }
  return parser->at > from;
}

/* What is only known once all is read: what is charged, and how far cotises stand apart. */
static void
settle(SpvBlazonParser *parser) {
  for (guint i = 0; i < parser->items->len; i++) {
    SpvMeasure *charged = spv_blazon_measure(&spv_parser_item(parser, i)->pattern, "charged");
    if (charged && !spv_parser_mark(parser, i)->charged_given && spv_blazon_is_charged(parser->items, i))
      *charged = (SpvMeasure){ SPV_UNIT_PLAIN, 1 };
  }
  for (guint i = 0; i < parser->items->len; i++) {
    int beside = spv_parser_mark(parser, i)->cotises;
    SpvPattern cotise;
    if (beside >= 0 && spv_blazon_cotise(&spv_parser_item(parser, (guint) beside)->pattern, &cotise))
      spv_parser_item(parser, i)->pattern = cotise;
  }
}

/* Nothing waits for a tincture any more. */
static SpvParsed
check_pending(SpvBlazonParser *parser) {
  if (parser->pending->len == 0)
    return SPV_PARSED;
  const SpvBlazonItem *item = spv_parser_item(parser, g_array_index(parser->pending, guint, 0));
  if (!parser->error) {
    parser->error = g_error_new_literal(SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON,
                                        _("it has no tincture; name one after it: azure, or, gules"));
    parser->place = item->place;
  }
  return SPV_PARSED_WRONG;
}

gboolean
spv_parser_blazon(SpvBlazonParser *parser) {
  SpvParsed parsed = read_field(parser);

  while (parsed != SPV_PARSED_WRONG) {
    gboolean joined = skip_joints(parser);
    gboolean ended = spv_parser_token(parser)->type == SPV_TOKEN_END;
    /* After a comma at the end, too, so as to know what could be typed there. */
    if (!ended || joined || parser->items->len == 0)
      parsed = spv_parser_charge(parser, -1);
    if (ended)
      break;
    if (parsed == SPV_PARSED_NOTHING)
      parsed = spv_parser_no_noun(parser);
  }
  if (parsed == SPV_PARSED_WRONG || check_pending(parser) == SPV_PARSED_WRONG)
    return FALSE;
  settle(parser);
  return TRUE;
}

GPtrArray *
spv_blazon_parse(const char *text, SpvBlazonPlace *place, GError **error) {
  SpvBlazonParser parser;
  GPtrArray *items = NULL;

  if (strlen(text) > SPV_BLAZON_TEXT_MAX || !g_utf8_validate(text, -1, NULL)) {
    g_set_error_literal(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON,
                        _("this is no UTF-8 text of at most 1 MiB; type it anew"));
    if (place)
      *place = (SpvBlazonPlace){ 0, 0 };
    return NULL;
  }
  spv_blazon_parser_init(&parser, text);
  if (spv_parser_blazon(&parser))
    items = g_ptr_array_ref(parser.items);
  else
    g_propagate_error(error, spv_parser_error(&parser, place));
  spv_blazon_parser_clear(&parser);
  return items;
}
