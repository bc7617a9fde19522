/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/roman-text.h"

#include "heraldry/lettering.h"

#define LARGEST 3999

char *
spv_roman_text(const char *words) {
  g_autoptr(GString) text = g_string_new(NULL);
  gboolean found = FALSE;

  while (*words) {
    const char *end = words;
    guint64 number = 0;
    for (; g_ascii_isdigit(*end); end++)
      number = MIN(number * 10 + (guint64) (*end - '0'), LARGEST + 1);
    if (end == words) {
      g_string_append_c(text, *words++);
    } else if (number < 1 || number > LARGEST) {
      g_string_append_len(text, words, end - words);
      words = end;
    } else {
      g_autofree char *roman = spv_lettering_roman((guint) number);
      g_string_append(text, roman);
      words = end;
      found = TRUE;
    }
  }
  return found ? g_string_free(g_steal_pointer(&text), FALSE) : NULL;
}
