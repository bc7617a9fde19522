/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writing one item of a blazon: as much as plain words say, and the rest in brackets. */
#include "heraldry/blazon-write-private.h"

#include <string.h>

#include "heraldry/arrange.h"
#include "heraldry/profile.h"

/* An item on its way into words: IMPLIED is what the reader makes of the words so far. */
typedef struct {
  GString *out;
  const SpvPattern *pattern;
  SpvPattern implied;
} Saying;

static SpvMeasure
plain(double value) {
  return (SpvMeasure){ SPV_UNIT_PLAIN, value };
}

/* The index of the measure KEY where its value is a number or a choice that differs from what is implied; or
 * -1. */
static int
unsaid(const Saying *saying, const char *key) {
  int index = spv_pattern_measure_index(saying->pattern->kind, key);

  if (index < 0 || saying->pattern->measures[index].unit != SPV_UNIT_PLAIN ||
      spv_measure_equal(saying->pattern->measures[index], saying->implied.measures[index]))
    return -1;
  return index;
}

static void
say(Saying *saying, int index) {
  saying->implied.measures[index] = saying->pattern->measures[index];
}

static void
append_number(GString *out, guint n) {
  if (n >= 1 && n <= 12)
    g_string_append(out, spv_blazon_numbers[n - 1]);
  else
    g_string_append_printf(out, "%u", n);
}

gboolean
spv_blazon_is_semy(const SpvPattern *pattern) {
  return spv_pattern_measure_index(pattern->kind, "arrangement") == SPV_CHARGE_ARRANGEMENT &&
         spv_measure_equal(pattern->measures[SPV_CHARGE_ARRANGEMENT], plain(SPV_ARRANGEMENT_SEMY));
}

static gboolean
starts_with_vowel(const char *noun) {
  return strchr("aeiou", noun[0]) != NULL || g_str_has_prefix(noun, "hour");
}

/* "three mullets", "an axe", "cotises", "the words “VII”". */
static void
say_noun(Saying *saying) {
  SpvPatternKind kind = saying->pattern->kind;
  int number = spv_pattern_measure_index(kind, "number");
  guint n = 1;

  if (kind == SPV_PATTERN_LETTERING && saying->pattern->texts[0]) {
    g_autofree char *quoted = spv_blazon_quote(saying->pattern->texts[0]);
    g_string_append_printf(saying->out, " the words %s", quoted);
    saying->implied.texts[0] = saying->pattern->texts[0];
    return;
  }
  if (number >= 0 && saying->pattern->measures[number].unit == SPV_UNIT_PLAIN)
    n = (guint) saying->pattern->measures[number].value;
  if (number >= 0)
    saying->implied.measures[number] = plain(n);
  g_autofree char *noun = spv_blazon_noun(kind, n > 1 || spv_blazon_is_pair(kind));
  g_string_append_c(saying->out, ' ');
  if (kind == SPV_PATTERN_LETTERING || spv_blazon_is_pair(kind))
    g_string_append(saying->out, noun);
  else if (n == 1)
    g_string_append_printf(saying->out, "%s %s", starts_with_vowel(noun) ? "an" : "a", noun);
  else {
    append_number(saying->out, n);
    g_string_append_printf(saying->out, " %s", noun);
  }
}

/* "chequy", "semy of mullets", or a noun. */
static void
say_name(Saying *saying) {
  const char *varied = spv_blazon_varied_word(saying->pattern->kind);

  if (varied)
    g_string_append_printf(saying->out, " %s", varied);
  else if (spv_blazon_is_semy(saying->pattern)) {
    g_autofree char *noun = spv_blazon_noun(saying->pattern->kind, TRUE);
    g_string_append_printf(saying->out, " semy of %s", noun);
    say(saying, SPV_CHARGE_ARRANGEMENT);
  } else
    say_noun(saying);
}

static gboolean
say_line(Saying *saying) {
  int line = unsaid(saying, "line");

  if (line < 0)
    return FALSE;
  g_string_append_printf(saying->out, " %s",
                         spv_profile_key((SpvProfile) saying->pattern->measures[line].value));
  say(saying, line);
  return TRUE;
}

/* "of six", "of six points": pieces are always counted, as the handbooks ask; other numbers where they are
 * not the usual ones. */
static void
say_count(Saying *saying) {
  static const struct {
    const char *key, *unit;
  } counts[] = {
    { "pieces", "" }, { "points", " points" }, { "columns", " columns" }, { "courses", " courses" }
  };
  SpvPatternKind kind = saying->pattern->kind;
  gboolean striped = kind >= SPV_PATTERN_PALY && kind <= SPV_PATTERN_CHEVRONNY;

  for (guint i = 0; i < G_N_ELEMENTS(counts); i++) {
    int index = striped && i == 0 ? spv_pattern_measure_index(kind, "pieces") : unsaid(saying, counts[i].key);
    if (index < 0 || saying->pattern->measures[index].unit != SPV_UNIT_PLAIN)
      continue;
    const SpvMeasureSpec *spec = &spv_pattern_info(kind)->measures[index];
    double value = saying->pattern->measures[index].value;
    const char *unit = kind == SPV_PATTERN_WHEEL   ? " spokes"
                       : kind == SPV_PATTERN_COG   ? " teeth"
                       : kind == SPV_PATTERN_SUN   ? " rays"
                       : kind == SPV_PATTERN_TALLY ? " strokes"
                                                   : counts[i].unit;
    if (spec->type == SPV_MEASURE_CHOICE)
      value = g_ascii_strtod(spec->choices[(guint) value], NULL);
    g_string_append(saying->out, " of ");
    append_number(saying->out, (guint) value);
    g_string_append(saying->out, unit);
    say(saying, index);
  }
}

static void
say_attitude(Saying *saying) {
  static const struct {
    double degrees;
    const char *words;
  } turns[] = {
    { -90, "fesswise" },
    { 90, "fesswise reversed" },
    { -45, "bendwise" },
    { 45, "bendwise sinister" },
    { 135, "bendwise reversed" },
    { 180, "reversed" },
    { -135, "bendwise sinister reversed" },
  };
  int turn = spv_pattern_measure_index(saying->pattern->kind, "arrangement") < 0 ? -1 : SPV_CHARGE_TURN;
  int pierced = unsaid(saying, "pierced");

  if (pierced >= 0) {
    g_string_append(saying->out, " pierced");
    say(saying, pierced);
  }
  for (guint i = 0; turn >= 0 && i < G_N_ELEMENTS(turns); i++)
    if (spv_measure_equal(saying->pattern->measures[turn],
                          (SpvMeasure){ SPV_UNIT_DEGREES, turns[i].degrees })) {
      g_string_append_printf(saying->out, " %s", turns[i].words);
      say(saying, turn);
    }
  if (saying->pattern->mirrored) {
    g_string_append(saying->out, " mirrored");
    saying->implied.mirrored = TRUE;
  }
}

/* "in chief", by the measure INDEX. */
static void
say_position(Saying *saying, guint index) {
  if (unsaid(saying, index == SPV_CHARGE_PLACE ? "place" : "arrangement") != (int) index)
    return;
  for (guint i = 0; spv_blazon_positions[i].words; i++)
    if (spv_blazon_positions[i].measure == index &&
        spv_blazon_positions[i].choice == (guint) saying->pattern->measures[index].value) {
      g_string_append_printf(saying->out, " in %s", spv_blazon_positions[i].words);
      say(saying, (int) index);
      return;
    }
}

/* "three, two and one", where the text that says so is written as we write it and adds up. */
static void
say_rows(Saying *saying) {
  SpvPatternKind kind = saying->pattern->kind;
  int index = spv_pattern_text_index(kind, "rows");
  const char *text = index < 0 ? NULL : saying->pattern->texts[index];
  guint total = 0;

  if (!text ||
      !spv_measure_equal(saying->pattern->measures[SPV_CHARGE_ARRANGEMENT], plain(SPV_ARRANGEMENT_ROWS)))
    return;
  g_auto(GStrv) rows = g_strsplit(text, ", ", -1);
  guint n = g_strv_length(rows);
  for (guint i = 0; i < n; i++) {
    guint number = (guint) g_ascii_strtoull(rows[i], NULL, 10);
    g_autofree char *again = g_strdup_printf("%u", number);
    if (!g_str_equal(again, rows[i]))
      return;
    total += number;
  }
  if (n < 2 || !spv_measure_equal(saying->pattern->measures[SPV_CHARGE_NUMBER], plain(total)))
    return;
  for (guint i = 0; i < n; i++) {
    g_string_append(saying->out, i == 0 ? " " : i + 1 == n ? " and " : ", ");
    append_number(saying->out, (guint) g_ascii_strtoull(rows[i], NULL, 10));
  }
  say(saying, SPV_CHARGE_ARRANGEMENT);
  saying->implied.texts[index] = text;
}

/* The shortest figures that read as VALUE again. */
static void
append_figures(GString *out, double value) {
  static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };
  char figures[G_ASCII_DTOSTR_BUF_SIZE];

  for (guint i = 0; i < G_N_ELEMENTS(formats); i++) {
    g_ascii_formatd(figures, sizeof figures, formats[i], value);
    if (g_ascii_strtod(figures, NULL) == value)
      break;
  }
  g_string_append(out, figures);
}

static void
append_value(GString *out, const SpvMeasureSpec *spec, SpvMeasure value) {
  switch (value.unit) {
  case SPV_UNIT_AUTO:
    g_string_append(out, "auto");
    break;
  case SPV_UNIT_PLAIN:
    if (spec->type == SPV_MEASURE_CHOICE)
      g_string_append(out, spec->choices[(guint) value.value]);
    else
      append_figures(out, value.value);
    break;
  case SPV_UNIT_MM:
    append_figures(out, value.value);
    g_string_append(out, " mm");
    break;
  case SPV_UNIT_RELATIVE:
    append_figures(out, value.value);
    break;
  case SPV_UNIT_DEGREES:
    append_figures(out, value.value);
    g_string_append(out, "°");
    break;
  }
}

/* What the words did not say. */
static void
say_rest(Saying *saying) {
  const SpvPatternInfo *info = spv_pattern_info(saying->pattern->kind);
  const char *between = " [";

  for (guint i = 0; i < info->n_measures; i++) {
    if (spv_measure_equal(saying->pattern->measures[i], saying->implied.measures[i]))
      continue;
    g_string_append_printf(saying->out, "%s%s ", between, info->measures[i].key);
    append_value(saying->out, &info->measures[i], saying->pattern->measures[i]);
    between = ", ";
  }
  for (guint i = 0; i < info->n_texts; i++) {
    if (g_strcmp0(saying->pattern->texts[i], saying->implied.texts[i]) == 0)
      continue;
    g_autofree char *quoted = spv_blazon_quote(saying->pattern->texts[i]);
    g_string_append_printf(saying->out, "%s%s %s", between, info->texts[i].key, quoted);
    between = ", ";
  }
  if (*between == ',')
    g_string_append_c(saying->out, ']');
}

void
spv_blazon_write_words(SpvBlazonWriter *writer, guint index, const SpvPattern *pattern, gboolean before) {
  Saying saying = { writer->out, pattern, spv_pattern_preset(pattern->kind) };
  SpvMeasure *charged = spv_blazon_measure(&saying.implied, "charged");

  if (charged && spv_blazon_is_charged(writer->items, index))
    *charged = plain(1);
  if (before)
    say_position(&saying, SPV_CHARGE_PLACE);
  say_name(&saying);
  gsize named = writer->out->len;
  writer->lined = say_line(&saying);
  say_count(&saying);
  say_attitude(&saying);
  say_position(&saying, SPV_CHARGE_PLACE);
  say_position(&saying, SPV_CHARGE_ARRANGEMENT);
  say_rows(&saying);
  say_rest(&saying);
  writer->bare_noun = writer->out->len == named;
}

/* A cross of the fur potent is not a cross potent; a fess "potenty or and gules" is not one with that line.
 */
void
spv_blazon_write_plain(SpvBlazonWriter *writer, guint index) {
  const SpvBlazonItem *item = g_ptr_array_index(writer->items, index);
  const char *words = item->tinctures[0];
  int line = spv_pattern_measure_index(item->pattern.kind, "line");

  if (item->counterchange >= 0 || !words || line < 0)
    return;
  if (!(g_str_has_prefix(words, "potenty") && !writer->lined) &&
      !(g_str_equal(words, "potent") && writer->bare_noun))
    return;
  g_string_append(writer->out, " plain");
  if (item->pattern.measures[line].unit == SPV_UNIT_AUTO)
    g_string_append(writer->out, " [line auto]");
}
