/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading what stands between a noun and its tincture: lines, numbers of points, turns, places, rows. */
#include "config.h"

#include "heraldry/blazon-parse-private.h"

#include <glib/gi18n-lib.h>

#include "heraldry/arrange.h"
#include "heraldry/profile.h"

/* What "of six points" counts, by the word after the number; the first key that the kind has. NULL: no word.
 */
static const struct {
  const char *word, *keys[3];
} units[] = {
  { "points", { "points", "periods" } },
  { "spokes", { "points" } },
  { "teeth", { "points", "periods" } },
  { "rays", { "points" } },
  { "strokes", { "points" } },
  { "waves", { "periods" } },
  { "pieces", { "pieces" } },
  { "columns", { "columns" } },
  { "rows", { "rows" } },
  { "courses", { "courses" } },
  { "bends", { "bends" } },
  { NULL, { "pieces", "points", "columns" } },
};

static SpvMeasure *
measure_of(SpvBlazonParser *parser, guint index, const char *key) {
  return spv_blazon_measure(&spv_parser_item(parser, index)->pattern, key);
}

static const char *
line_at(SpvBlazonParser *parser, guint *length) {
  for (guint i = 0; i < SPV_N_PROFILES; i++) {
    const char *key = spv_profile_key((SpvProfile) i);
    *length = spv_parser_match(parser, parser->at, key, SPV_EXPECT_LINE);
    if (*length > 0)
      return key;
  }
  for (guint i = 0; spv_blazon_line_words[i].words; i++) {
    *length = spv_parser_match(parser, parser->at, spv_blazon_line_words[i].words, SPV_EXPECT_LINE);
    if (*length > 0)
      return spv_blazon_line_words[i].means;
  }
  return NULL;
}

/* One line of partition, for a kind that has one. */
static SpvParsed
read_line(SpvBlazonParser *parser, guint index, gboolean *given) {
  SpvMeasure *line = measure_of(parser, index, "line");
  SpvProfile profile = SPV_PROFILE_PLAIN;
  guint length;
  const char *key;

  if (!line || *given)
    return SPV_PARSED_NOTHING;
  key = line_at(parser, &length);
  if (!key || !spv_profile_from_key(key, &profile))
    return SPV_PARSED_NOTHING;
  parser->at += length;
  *line = (SpvMeasure){ SPV_UNIT_PLAIN, profile };
  *given = TRUE;
  return SPV_PARSED;
}

/* Gives the measure KEY of item INDEX the value N; the tokens from FROM on say so. */
static SpvParsed
set_count(SpvBlazonParser *parser, guint index, const char *key, guint n, guint from) {
  SpvPattern *pattern = &spv_parser_item(parser, index)->pattern;
  int measure = spv_pattern_measure_index(pattern->kind, key);
  const SpvMeasureSpec *spec = &spv_pattern_info(pattern->kind)->measures[measure];
  SpvMeasure value = { SPV_UNIT_PLAIN, n };

  if (spec->type == SPV_MEASURE_CHOICE) {
    g_autofree char *figures = g_strdup_printf("%u", n), *all = g_strjoinv(", ", (char **) spec->choices);
    guint choice = 0;
    while (spec->choices[choice] && !g_str_equal(spec->choices[choice], figures))
      choice++;
    if (!spec->choices[choice])
      return spv_parser_wrong(parser, from, parser->at,
                              g_strdup_printf(_("one of these should stand: %s"), all));
    value.value = choice;
  }
  if (!spv_measure_is_valid(spec, value))
    return spv_parser_wrong(
        parser, from, parser->at,
        g_strdup_printf(_("a number from %d to %d should stand"), (int) spec->min, (int) spec->max));
  pattern->measures[measure] = value;
  return SPV_PARSED;
}

/* "of six", "of six points". */
static SpvParsed
read_of(SpvBlazonParser *parser, guint index) {
  guint from = parser->at, of = spv_parser_match(parser, from, "of", SPV_EXPECT_KEYWORD), n, unit = 0,
        length = 0;
  SpvParsed result;

  if (of == 0)
    return SPV_PARSED_NOTHING;
  n = spv_parser_number(parser, from + of, &result);
  if (result != SPV_PARSED)
    return result;
  for (; units[unit].word; unit++) {
    length = spv_parser_match(parser, from + of + 1, units[unit].word, SPV_EXPECT_KEYWORD);
    if (length > 0)
      break;
  }
  for (guint i = 0; i < G_N_ELEMENTS(units[unit].keys) && units[unit].keys[i]; i++)
    if (measure_of(parser, index, units[unit].keys[i])) {
      parser->at += of + 1 + length;
      return set_count(parser, index, units[unit].keys[i], n, from + of);
    }
  return spv_parser_wrong(parser, from, from + of + 1 + length,
                          g_strdup(_("there is nothing of which it has a number")));
}

/* A turn or a mirror image, and the hole of a mullet. */
static SpvParsed
read_attitude(SpvBlazonParser *parser, guint index) {
  static const struct {
    const char *words;
    double degrees; /* clockwise, of a figure that stands upright: its top goes to dexter */
  } turns[] = { { "palewise", 0 }, { "fesswise", -90 }, { "bendwise sinister", 45 }, { "bendwise", -45 } };
  SpvMeasure *turn = measure_of(parser, index, "turn"), *pierced = measure_of(parser, index, "pierced");
  gboolean figure = turn && measure_of(parser, index, "arrangement");

  if (spv_parser_take(parser, "mirrored")) {
    spv_parser_item(parser, index)->pattern.mirrored = TRUE;
    return SPV_PARSED;
  }
  if (pierced && spv_parser_take(parser, "pierced")) {
    *pierced = (SpvMeasure){ SPV_UNIT_PLAIN, 1 };
    return SPV_PARSED;
  }
  if (!figure)
    return SPV_PARSED_NOTHING;
  for (guint i = 0; i < G_N_ELEMENTS(turns); i++)
    if (spv_parser_take(parser, turns[i].words)) {
      *turn = (SpvMeasure){ SPV_UNIT_DEGREES, turns[i].degrees };
      return SPV_PARSED;
    }
  if (!spv_parser_take(parser, "reversed") && !spv_parser_take_silently(parser, "inverted"))
    return SPV_PARSED_NOTHING;
  *turn = (SpvMeasure){ SPV_UNIT_DEGREES, turn->value > 0 ? turn->value - 180 : turn->value + 180 };
  return SPV_PARSED;
}

SpvParsed
spv_parser_put(SpvBlazonParser *parser, guint index, const SpvBlazonPosition *position, guint from) {
  SpvBlazonItem *item = spv_parser_item(parser, index);
  const char *key = position->measure == SPV_CHARGE_PLACE ? "place" : "arrangement";
  SpvMeasure *measure = spv_blazon_measure(&item->pattern, key);

  if (!measure)
    return spv_parser_wrong(
        parser, from, parser->at,
        g_strdup(_("only charges can be put there; move this one by its measures in brackets")));
  *measure = (SpvMeasure){ SPV_UNIT_PLAIN, position->choice };
  spv_parser_mark(parser, index)->placed = TRUE;
  return SPV_PARSED;
}

/* "in chief", "in pale", for a kind that can be put there. */
static SpvParsed
read_position(SpvBlazonParser *parser, guint index) {
  guint length, from = parser->at;
  const SpvBlazonPosition *position;

  if (!measure_of(parser, index, "place"))
    return SPV_PARSED_NOTHING;
  position = spv_parser_position_at(parser, from, &length);
  if (!position)
    return SPV_PARSED_NOTHING;
  parser->at += length;
  return spv_parser_put(parser, index, position, from);
}

/* The numbers at token AT, parted by commas or "and", into ROWS; returns how many tokens they are. */
static guint
rows_at(SpvBlazonParser *parser, guint at, GString *rows, guint *total) {
  guint start = at, n = 0;

  for (;;) {
    SpvParsed result;
    guint number = spv_parser_number(parser, at, &result), sign;
    if (number == 0)
      return 0;
    g_string_append_printf(rows, "%s%u", n > 0 ? ", " : "", number);
    *total += number;
    n++;
    at++;
    const SpvToken *token = &g_array_index(parser->tokens, SpvToken, MIN(at, parser->tokens->len - 1));
    sign = token->type == SPV_TOKEN_SIGN && token->sign == ',' ? 1 : 0;
    sign += spv_parser_match(parser, at + sign, "and", SPV_EXPECT_KEYWORD);
    const SpvToken *next = &g_array_index(parser->tokens, SpvToken, MIN(at + sign, parser->tokens->len - 1));
    gboolean number_follows = next->type == SPV_TOKEN_NUMBER;
    for (guint i = 0; spv_blazon_numbers[i] && !number_follows; i++)
      number_follows = next->type == SPV_TOKEN_WORD && g_str_equal(next->word, spv_blazon_numbers[i]);
    if (sign == 0 || !number_follows)
      return n > 1 ? at - start : 0;
    at += sign;
  }
}

SpvParsed
spv_parser_rows(SpvBlazonParser *parser, guint index) {
  SpvBlazonItem *item = spv_parser_item(parser, index);
  int text = spv_pattern_text_index(item->pattern.kind, "rows");
  const SpvToken *token = spv_parser_token(parser);
  guint comma = token->type == SPV_TOKEN_SIGN && token->sign == ',' ? 1 : 0, total = 0, length;
  g_autoptr(GString) rows = g_string_new(NULL);

  if (text < 0 || item->texts[text])
    return SPV_PARSED_NOTHING;
  length = rows_at(parser, parser->at + comma, rows, &total);
  if (length == 0)
    return parser->error ? SPV_PARSED_WRONG : SPV_PARSED_NOTHING;
  if (total != (guint) item->pattern.measures[SPV_CHARGE_NUMBER].value)
    return spv_parser_wrong(parser, parser->at + comma, parser->at + comma + length,
                            g_strdup_printf(_("these make %u, and not the number of the charges"), total));
  parser->at += comma + length;
  spv_blazon_item_set_text(item, (guint) text, rows->str);
  item->pattern.measures[SPV_CHARGE_ARRANGEMENT] = (SpvMeasure){ SPV_UNIT_PLAIN, SPV_ARRANGEMENT_ROWS };
  spv_parser_mark(parser, index)->placed = TRUE;
  return SPV_PARSED;
}

SpvParsed
spv_parser_modifiers(SpvBlazonParser *parser, guint index) {
  gboolean line = FALSE;
  SpvParsed parsed;

  do {
    parsed = read_line(parser, index, &line);
    if (parsed == SPV_PARSED_NOTHING)
      parsed = read_attitude(parser, index);
    if (parsed == SPV_PARSED_NOTHING)
      parsed = read_of(parser, index);
    if (parsed == SPV_PARSED_NOTHING)
      parsed = read_position(parser, index);
    if (parsed == SPV_PARSED_NOTHING)
      parsed = spv_parser_rows(parser, index);
    if (parsed == SPV_PARSED_NOTHING)
      parsed = spv_parser_bracket(parser, index);
  } while (parsed == SPV_PARSED);
  return parsed;
}
