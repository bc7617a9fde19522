/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A blazon cut into words, numbers, signs and what stands in quotes. */
#include "heraldry/blazon-parse-private.h"

#include <string.h>

typedef struct {
  const char *p;
  guint at; /* characters before P */
  GArray *tokens;
} Cutter;

static void
token_clear(gpointer data) {
  g_free(((SpvToken *) data)->word);
}

char *
spv_blazon_fold(const char *word, gssize length) {
  g_autofree char *apart = g_utf8_normalize(word, length, G_NORMALIZE_NFD);
  GString *folded = g_string_new(NULL);

  for (const char *p = apart; *p != '\0'; p = g_utf8_next_char(p)) {
    gunichar c = g_utf8_get_char(p);
    if (!g_unichar_ismark(c))
      g_string_append_unichar(folded, g_unichar_tolower(c));
  }
  return g_string_free(folded, FALSE);
}

static gunichar
peek(const Cutter *cutter) {
  return g_utf8_get_char(cutter->p);
}

static void
step(Cutter *cutter) {
  cutter->p = g_utf8_next_char(cutter->p);
  cutter->at++;
}

static gboolean
is_letter(gunichar c) {
  return g_unichar_isalpha(c) || g_unichar_ismark(c);
}

static void
add(Cutter *cutter, SpvToken token, guint start) {
  token.place = (SpvBlazonPlace){ start, cutter->at - start };
  g_array_append_val(cutter->tokens, token);
}

static void
cut_word(Cutter *cutter) {
  const char *from = cutter->p;
  guint start = cutter->at;

  while (is_letter(peek(cutter)))
    step(cutter);
  add(cutter, (SpvToken){ .type = SPV_TOKEN_WORD, .word = spv_blazon_fold(from, cutter->p - from) }, start);
}

static void
cut_digits(Cutter *cutter) {
  while (g_ascii_isdigit(*cutter->p))
    step(cutter);
}

/* As in a file of JSON, with a minus sign of any kind. */
static void
cut_number(Cutter *cutter, gboolean negative) {
  const char *from = cutter->p;
  guint start = negative ? cutter->at - 1 : cutter->at;
  g_autofree char *digits = NULL;

  cut_digits(cutter);
  if (*cutter->p == '.' && g_ascii_isdigit(cutter->p[1])) {
    step(cutter);
    cut_digits(cutter);
  }
  if (*cutter->p == 'e' || *cutter->p == 'E') {
    const char *exponent = cutter->p + (cutter->p[1] == '-' || cutter->p[1] == '+' ? 2 : 1);
    if (g_ascii_isdigit(*exponent)) {
      while (cutter->p < exponent)
        step(cutter);
      cut_digits(cutter);
    }
  }
  digits = g_strndup(from, (gsize) (cutter->p - from));
  double number = g_ascii_strtod(digits, NULL);
  char *word = negative ? g_strconcat("-", digits, NULL) : g_steal_pointer(&digits);
  add(cutter, (SpvToken){ .type = SPV_TOKEN_NUMBER, .word = word, .number = negative ? -number : number },
      start);
}

static gunichar
closing_quote(gunichar c) {
  return c == 0x201C ? 0x201D : c == '"' ? '"' : 0;
}

/* After its opening quote. */
static void
cut_text(Cutter *cutter, gunichar closing) {
  GString *text = g_string_new(NULL);
  guint start = cutter->at;

  step(cutter);
  while (*cutter->p != '\0' && peek(cutter) != closing) {
    if (*cutter->p == '\\' && (cutter->p[1] == '"' || cutter->p[1] == '\\'))
      step(cutter);
    g_string_append_unichar(text, peek(cutter));
    step(cutter);
  }
  gboolean open = *cutter->p == '\0';
  if (!open)
    step(cutter);
  add(cutter, (SpvToken){ .type = SPV_TOKEN_TEXT, .word = g_string_free(text, FALSE), .open = open }, start);
}

/* A hyphen parts words as a blank does; before a digit it is a minus sign. Returns whether one was read. */
static gboolean
cut_hyphen(Cutter *cutter) {
  gunichar c = peek(cutter);

  if (c != '-' && c != 0x2010 && c != 0x2011 && c != 0x2212)
    return FALSE;
  const char *after = g_utf8_next_char(cutter->p);
  if (g_ascii_isdigit(*after)) {
    step(cutter);
    cut_number(cutter, TRUE);
    return TRUE;
  }
  if (c == 0x2212 || !is_letter(g_utf8_get_char(after)))
    return FALSE;
  step(cutter);
  return TRUE;
}

GArray *
spv_blazon_tokens(const char *text) {
  Cutter cutter = { text, 0, g_array_new(FALSE, FALSE, sizeof(SpvToken)) };

  g_array_set_clear_func(cutter.tokens, token_clear);
  while (*cutter.p != '\0') {
    gunichar c = peek(&cutter);
    if (g_unichar_isspace(c))
      step(&cutter);
    else if (is_letter(c))
      cut_word(&cutter);
    else if (g_ascii_isdigit(c))
      cut_number(&cutter, FALSE);
    else if (closing_quote(c) != 0)
      cut_text(&cutter, closing_quote(c));
    else if (!cut_hyphen(&cutter)) {
      step(&cutter);
      add(&cutter, (SpvToken){ .type = SPV_TOKEN_SIGN, .sign = c }, cutter.at - 1);
    }
  }
  add(&cutter, (SpvToken){ .type = SPV_TOKEN_END }, cutter.at);
  return cutter.tokens;
}
