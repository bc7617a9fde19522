/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/name-text.h"

char *
spv_name_text_clean(const char *text) {
  g_autoptr(GString) clean = g_string_new(NULL);
  guint n = 0;

  for (; *text && n < SPV_NAME_TEXT_MAX; text = g_utf8_next_char(text), n++) {
    gunichar c = g_utf8_get_char(text);
    g_string_append_unichar(clean, g_unichar_iscntrl(c) ? ' ' : c);
  }
  return g_strstrip(g_string_free(g_steal_pointer(&clean), FALSE));
}

char *
spv_name_text_sentence(const char *message) {
  g_autoptr(GString) sentence = g_string_new(NULL);

  if (*message == '\0')
    return g_strdup("");
  g_string_append_unichar(sentence, g_unichar_totitle(g_utf8_get_char(message)));
  g_string_append(sentence, g_utf8_next_char(message));
  if (!g_str_has_suffix(message, ".") && !g_str_has_suffix(message, ":"))
    g_string_append_c(sentence, '.');
  return g_string_free(g_steal_pointer(&sentence), FALSE);
}
