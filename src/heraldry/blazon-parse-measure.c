/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading measures and texts in brackets, by the keys of their kind: [width 2.5 mm, line wavy]. */
#include "config.h"

#include "heraldry/blazon-parse-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What may be written in place of VALUE, which does not suit SPEC. */
static char *
say_range(const SpvMeasureSpec *spec, SpvUnit unit) {
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return g_strdup_printf(_("a whole number from %d to %d should stand, or auto"), (int) spec->min,
                           (int) spec->max);
  case SPV_MEASURE_ANGLE:
    return g_strdup_printf(_("an angle from %g° to %g° should stand, or auto"), spec->min, spec->max);
  case SPV_MEASURE_LENGTH:
    if (unit == SPV_UNIT_RELATIVE)
      return g_strdup_printf(_("a part of the panel from %g to %g should stand, a length in mm, or auto"),
                             spec->min < 0 ? -SPV_RELATIVE_MAX : 0, SPV_RELATIVE_MAX);
    return g_strdup_printf(_("a length from %g mm to %g mm should stand, a part of the panel, or auto"),
                           spec->min, spec->max);
  case SPV_MEASURE_CHOICE:
    break;
  }
  return g_strdup(_("this can't stand here"));
}

/* The unit after the number of a measure of SPEC. */
static SpvUnit
read_unit(SpvBlazonParser *parser, const SpvMeasureSpec *spec, double *number) {
  const SpvToken *token = spv_parser_token(parser);
  gunichar sign = token->type == SPV_TOKEN_SIGN ? token->sign : 0;

  switch (spec->type) {
  case SPV_MEASURE_COUNT:
  case SPV_MEASURE_CHOICE:
    return SPV_UNIT_PLAIN;
  case SPV_MEASURE_ANGLE:
    if (sign == 0xB0)
      parser->at++;
    else if (!spv_parser_take_silently(parser, "degrees"))
      spv_parser_take_silently(parser, "deg");
    return SPV_UNIT_DEGREES;
  case SPV_MEASURE_LENGTH:
    if (sign == '%') {
      parser->at++;
      *number /= 100;
      return SPV_UNIT_RELATIVE;
    }
    return spv_parser_take(parser, "mm") ? SPV_UNIT_MM : SPV_UNIT_RELATIVE;
  }
  return SPV_UNIT_PLAIN;
}

static SpvParsed
read_choice(SpvBlazonParser *parser, const SpvMeasureSpec *spec, SpvMeasure *value) {
  guint best = 0;

  for (guint i = 0; spec->choices[i]; i++) {
    guint n = spv_parser_match(parser, parser->at, spec->choices[i], SPV_EXPECT_KEYWORD);
    if (n > best) {
      best = n;
      *value = (SpvMeasure){ SPV_UNIT_PLAIN, i };
    }
  }
  parser->at += best;
  return best > 0 ? SPV_PARSED : SPV_PARSED_WRONG;
}

static SpvParsed
read_value(SpvBlazonParser *parser, const SpvMeasureSpec *spec, SpvMeasure *value) {
  const SpvToken *token = spv_parser_token(parser);
  guint from = parser->at;
  double number = token->number;

  if (spv_parser_take(parser, "auto")) {
    *value = (SpvMeasure){ SPV_UNIT_AUTO, 0 };
    return SPV_PARSED;
  }
  if (spec->type == SPV_MEASURE_CHOICE)
    return read_choice(parser, spec, value);
  if (token->type != SPV_TOKEN_NUMBER)
    return spv_parser_wrong(parser, from, from + 1, say_range(spec, SPV_UNIT_MM));
  parser->at++;
  value->unit = read_unit(parser, spec, &number);
  value->value = number;
  if (!spv_measure_is_valid(spec, *value))
    return spv_parser_wrong(parser, from, parser->at, say_range(spec, value->unit));
  return SPV_PARSED;
}

/* What a measure that is given says of its item. */
static void
note(SpvBlazonParser *parser, guint index, const char *key) {
  SpvBlazonMark *mark = spv_parser_mark(parser, index);

  if (g_str_equal(key, "charged"))
    mark->charged_given = TRUE;
  if (g_str_equal(key, "place") || g_str_equal(key, "arrangement") || g_str_equal(key, "number"))
    mark->placed = TRUE;
}

static SpvParsed
read_measure(SpvBlazonParser *parser, guint index) {
  SpvPattern *pattern = &spv_parser_item(parser, index)->pattern;
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);

  for (guint i = 0; i < info->n_measures; i++)
    if (spv_parser_take(parser, info->measures[i].key)) {
      note(parser, index, info->measures[i].key);
      return read_value(parser, &info->measures[i], &pattern->measures[i]);
    }
  return SPV_PARSED_NOTHING;
}

static SpvParsed
read_text(SpvBlazonParser *parser, guint index) {
  SpvBlazonItem *item = spv_parser_item(parser, index);
  const SpvPatternInfo *info = spv_pattern_info(item->pattern.kind);

  for (guint i = 0; i < info->n_texts; i++) {
    g_autoptr(GError) error = NULL;
    if (!spv_parser_take(parser, info->texts[i].key))
      continue;
    const SpvToken *token = spv_parser_token(parser);
    if (token->type != SPV_TOKEN_TEXT || token->open) {
      spv_parser_expect(parser, parser->at, "\"…\"", SPV_EXPECT_TEXT);
      return SPV_PARSED_WRONG;
    }
    gboolean too_long = strlen(token->word) > SPV_PATTERN_TEXT_MAX;
    if (too_long || !info->texts[i].check(token->word, &error))
      return spv_parser_wrong(parser, parser->at, parser->at + 1,
                              g_strdup(too_long ? _("the text is too long") : error->message));
    spv_blazon_item_set_text(item, i, token->word);
    parser->at++;
    return SPV_PARSED;
  }
  return SPV_PARSED_NOTHING;
}

SpvParsed
spv_parser_bracket(SpvBlazonParser *parser, guint index) {
  if (!spv_parser_take_sign(parser, '['))
    return SPV_PARSED_NOTHING;
  do {
    SpvParsed parsed = read_measure(parser, index);
    if (parsed == SPV_PARSED_NOTHING)
      parsed = read_text(parser, index);
    if (parsed == SPV_PARSED_NOTHING && spv_parser_take(parser, "mirrored")) {
      spv_parser_item(parser, index)->pattern.mirrored = TRUE;
      parsed = SPV_PARSED;
    }
    if (parsed != SPV_PARSED)
      return SPV_PARSED_WRONG;
  } while (spv_parser_take_sign(parser, ','));
  return spv_parser_take_sign(parser, ']') ? SPV_PARSED : SPV_PARSED_WRONG;
}
