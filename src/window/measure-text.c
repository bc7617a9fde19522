/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/measure-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define THIN_SPACE "\u2009"

/* clang-format off */
G_DEFINE_QUARK(spv_measure_text_error, spv_measure_text_error)
/* clang-format on */

static const struct {
  const char *text;
  SpvUnit unit;
} unit_words[] = {
  { "mm", SPV_UNIT_MM },       { "%", SPV_UNIT_RELATIVE }, { "°", SPV_UNIT_DEGREES },
  { "deg", SPV_UNIT_DEGREES }, { "", SPV_UNIT_PLAIN },
};

/* Skips blanks of every width: U+2009 and U+202F stand before units in print, U+00A0 comes by pasting. */
static const char *
skip_blanks(const char *text) {
  while (*text && g_unichar_isspace(g_utf8_get_char(text)))
    text = g_utf8_next_char(text);
  return text;
}

/* Reads a plain decimal number: a sign, digits, one point or comma. No exponents and no digit groups: "1.000"
 * is one, and a painter who meant a thousand is told the range. */
static gboolean
read_number(const char **text, double *number) {
  const char *at = *text;
  gboolean negative = FALSE;
  char digits[64];
  gsize n = 0;
  guint marks = 0, figures = 0;

  if (g_utf8_get_char(at) == 0x2212 || *at == '-' || *at == '+') {
    negative = *at != '+';
    at = g_utf8_next_char(at);
  }
  for (; n < sizeof digits - 1; at++) {
    if (g_ascii_isdigit(*at))
      figures++;
    else if (*at == '.' || *at == ',')
      marks++;
    else
      break;
    digits[n++] = *at == ',' ? '.' : *at;
  }
  digits[n] = '\0';
  if (figures == 0 || marks > 1 || n == sizeof digits - 1)
    return FALSE;
  *number = g_ascii_strtod(digits, NULL);
  if (negative)
    *number = -*number;
  *text = at;
  return TRUE;
}

static gboolean
read_unit(const char *text, SpvUnit *unit) {
  gsize length = strlen(text);

  while (length > 0) {
    const char *last = g_utf8_prev_char(text + length);
    if (!g_unichar_isspace(g_utf8_get_char(last)))
      break;
    length = last - text;
  }
  for (guint i = 0; i < G_N_ELEMENTS(unit_words); i++) {
    const char *word = unit_words[i].text;
    if (strlen(word) == length && g_ascii_strncasecmp(word, text, length) == 0) {
      *unit = unit_words[i].unit;
      return TRUE;
    }
  }
  return FALSE;
}

/* What NUMBER with the unit that was typed (PLAIN: none) means for SPEC. */
static gboolean
take_unit(const SpvMeasureSpec *spec, double number, SpvUnit typed, SpvUnit unit, SpvMeasure *value) {
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    *value = (SpvMeasure){ SPV_UNIT_PLAIN, number };
    return typed == SPV_UNIT_PLAIN;
  case SPV_MEASURE_ANGLE:
    *value = (SpvMeasure){ SPV_UNIT_DEGREES, number };
    return typed == SPV_UNIT_PLAIN || typed == SPV_UNIT_DEGREES;
  case SPV_MEASURE_LENGTH:
    if (typed == SPV_UNIT_PLAIN)
      typed = unit;
    if (typed == SPV_UNIT_RELATIVE && spec->basis == SPV_BASIS_NONE)
      return FALSE;
    *value = (SpvMeasure){ typed, typed == SPV_UNIT_RELATIVE ? number / 100 : number };
    return typed == SPV_UNIT_MM || typed == SPV_UNIT_RELATIVE;
  case SPV_MEASURE_CHOICE:
    break;
  }
  return FALSE;
}

static SpvUnit
plain_unit(const SpvMeasureSpec *spec, SpvUnit unit) {
  switch (spec->type) {
  case SPV_MEASURE_LENGTH:
    return unit == SPV_UNIT_RELATIVE ? SPV_UNIT_RELATIVE : SPV_UNIT_MM;
  case SPV_MEASURE_ANGLE:
    return SPV_UNIT_DEGREES;
  case SPV_MEASURE_COUNT:
  case SPV_MEASURE_CHOICE:
    break;
  }
  return SPV_UNIT_PLAIN;
}

gboolean
spv_measure_text_parse(const SpvMeasureSpec *spec, const char *text, SpvUnit unit, SpvMeasure *value,
                       GError **error) {
  const char *at = skip_blanks(text);
  SpvUnit own = plain_unit(spec, unit), typed;
  SpvMeasure read;
  double number;
  g_autofree char *range = NULL;

  if (*at == '\0' || g_ascii_strcasecmp(at, "auto") == 0 || strcmp(at, _("auto")) == 0) {
    *value = (SpvMeasure){ SPV_UNIT_AUTO, 0 };
    return TRUE;
  }
  if (!read_number(&at, &number) || !read_unit(skip_blanks(at), &typed) ||
      !take_unit(spec, number, typed, own, &read)) {
    range = spv_measure_text_range(spec, own);
    /* Translators: %s is a sentence such as "From 0.05 mm to 5.00 mm." */
    g_set_error(error, SPV_MEASURE_TEXT_ERROR, SPV_MEASURE_TEXT_ERROR_UNREADABLE, _("Type a number. %s"),
                range);
    return FALSE;
  }
  if (!spv_measure_is_valid(spec, read)) {
    range = spv_measure_text_range(spec, read.unit);
    g_set_error_literal(error, SPV_MEASURE_TEXT_ERROR, SPV_MEASURE_TEXT_ERROR_RANGE, range);
    return FALSE;
  }
  *value = read;
  return TRUE;
}

/* NUMBER with DECIMALS decimals and those of its last zeros beyond KEEP decimals dropped. */
static char *
decimal(double number, int decimals, int keep) {
  char text[G_ASCII_DTOSTR_BUF_SIZE], format[8];
  char *mark;

  g_snprintf(format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd(text, sizeof text, format, number);
  mark = strchr(text, '.');
  if (mark) {
    char *end = text + strlen(text);
    while (end[-1] == '0' && end - 1 - mark > keep)
      *--end = '\0';
    if (end - 1 == mark)
      *mark = '\0';
  }
  return g_strdup(strcmp(text, "-0") == 0 ? "0" : text);
}

/* Whether MM is meant to five thousandths ("0.125"): anything else beyond hundredths was worked out, and no
 * calipers show it. */
static gboolean
has_half_hundredth(double mm) {
  double thousandths = mm * 1000;

  return fabs(thousandths - round(thousandths)) < 1e-6 && fmod(fabs(round(thousandths)), 10) == 5;
}

char *
spv_measure_text_number(SpvMeasure value) {
  switch (value.unit) {
  case SPV_UNIT_PLAIN:
    return decimal(value.value, 0, 0);
  case SPV_UNIT_MM:
    return decimal(value.value, has_half_hundredth(value.value) ? 3 : 2, 2);
  case SPV_UNIT_RELATIVE:
    return decimal(value.value * 100, 2, 0);
  case SPV_UNIT_DEGREES:
    return decimal(value.value, 2, 0);
  case SPV_UNIT_AUTO:
    break;
  }
  return g_strdup("");
}

const char *
spv_measure_text_unit(SpvUnit unit) {
  switch (unit) {
  case SPV_UNIT_MM:
    return "mm";
  case SPV_UNIT_RELATIVE:
    return "%";
  case SPV_UNIT_DEGREES:
    return "°";
  case SPV_UNIT_AUTO:
    return _("auto");
  case SPV_UNIT_PLAIN:
    break;
  }
  return "";
}

char *
spv_measure_text_with_unit(SpvMeasure value) {
  g_autofree char *number = spv_measure_text_number(value);
  gboolean spaced = value.unit == SPV_UNIT_MM || value.unit == SPV_UNIT_RELATIVE;

  return g_strconcat(number, spaced ? THIN_SPACE : "", spv_measure_text_unit(value.unit), NULL);
}

void
spv_measure_text_limits(const SpvMeasureSpec *spec, SpvUnit unit, double *min, double *max) {
  if (unit == SPV_UNIT_RELATIVE) {
    *min = spec->min < 0 ? -SPV_RELATIVE_MAX : 0;
    *max = SPV_RELATIVE_MAX;
  } else {
    *min = spec->min;
    *max = spec->max;
  }
}

char *
spv_measure_text_range(const SpvMeasureSpec *spec, SpvUnit unit) {
  g_autofree char *low = NULL, *high = NULL;
  double min, max;

  unit = plain_unit(spec, unit);
  spv_measure_text_limits(spec, unit, &min, &max);
  low = spv_measure_text_with_unit((SpvMeasure){ unit, min });
  high = spv_measure_text_with_unit((SpvMeasure){ unit, max });
  if (spec->type == SPV_MEASURE_COUNT)
    return g_strdup_printf(_("A whole number from %s to %s."), low, high);
  return g_strdup_printf(_("From %s to %s."), low, high);
}

SpvMeasure
spv_measure_text_step(const SpvMeasureSpec *spec, SpvMeasure value, int steps) {
  /* Each sum is rounded a good deal finer than its step, so that 0.7 and 0.05 make 0.75 and stay so after a
   * hundred steps. */
  double min, max, sum = value.value;

  spv_measure_text_limits(spec, value.unit, &min, &max);
  switch (value.unit) {
  case SPV_UNIT_MM:
    sum = round((value.value + 0.05 * steps) * 1000) / 1000;
    break;
  case SPV_UNIT_RELATIVE:
    sum = round((value.value + 0.01 * steps) * 10000) / 10000;
    break;
  case SPV_UNIT_DEGREES:
    sum = round((value.value + steps) * 100) / 100;
    break;
  case SPV_UNIT_PLAIN:
    sum = round(value.value + steps);
    break;
  case SPV_UNIT_AUTO:
    return value;
  }
  return (SpvMeasure){ value.unit, CLAMP(sum, min, max) };
}

double
spv_measure_text_basis(const SpvMeasureSpec *spec, double width, double height) {
  switch (spec->basis) {
  case SPV_BASIS_WIDTH:
    return width;
  case SPV_BASIS_HEIGHT:
    return height;
  case SPV_BASIS_SMALLER:
    return MIN(width, height);
  case SPV_BASIS_NONE:
    break;
  }
  return 0;
}

SpvMeasure
spv_measure_text_convert(SpvMeasure value, SpvUnit unit, double basis) {
  if (value.unit == unit || basis <= 0)
    return value;
  return (SpvMeasure){ unit, unit == SPV_UNIT_RELATIVE ? value.value / basis : value.value * basis };
}
