/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/screen-text.h"

#include <glib/gi18n-lib.h>

#define THIN_SPACE 0x2009
#define NARROW_NO_BREAK_SPACE 0x202f

char *
spv_screen_text_name(const char *text) {
  g_autoptr(GString) name = g_string_new(NULL);

  for (guint n = 0; *text && n < SPV_SCREEN_TEXT_NAME_MAX; text = g_utf8_next_char(text), n++) {
    gunichar c = g_utf8_get_char(text);
    g_string_append_unichar(name, g_unichar_iscntrl(c) ? ' ' : c);
  }
  return g_strstrip(g_string_free(g_steal_pointer(&name), FALSE));
}

char *
spv_screen_text_sentence(const char *message) {
  g_autofree char *unbroken = spv_screen_text_unbroken(message);
  g_autoptr(GString) sentence = g_string_new(NULL);

  if (*unbroken == '\0')
    return g_strdup("");
  g_string_append_unichar(sentence, g_unichar_totitle(g_utf8_get_char(unbroken)));
  g_string_append(sentence, g_utf8_next_char(unbroken));
  if (!g_str_has_suffix(unbroken, ".") && !g_str_has_suffix(unbroken, "?"))
    g_string_append_c(sentence, '.');
  return g_string_free(g_steal_pointer(&sentence), FALSE);
}

char *
spv_screen_text_inside(const char *words) {
  /* Translators: no words but a choice. "nouns:small": "Depth" becomes "depth" inside a sentence.
   * "nouns:capital": it stays as it is, as in German. */
  gboolean capital = g_str_equal(_("nouns:small"), "nouns:capital");

  return capital ? g_strdup(words) : g_utf8_strdown(words, -1);
}

char *
spv_screen_text_unbroken(const char *text) {
  g_autoptr(GString) unbroken = g_string_new(NULL);

  for (; *text; text = g_utf8_next_char(text)) {
    gunichar c = g_utf8_get_char(text);
    g_string_append_unichar(unbroken, c == THIN_SPACE ? NARROW_NO_BREAK_SPACE : c);
  }
  return g_string_free(g_steal_pointer(&unbroken), FALSE);
}
