/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What an id and a name may hold, and strings that are shared. */
#include "scheme/name-private.h"

#include <string.h>

gboolean
spv_id_is_valid(const char *text) {
  gsize length = text != NULL ? strspn(text, "abcdefghijklmnopqrstuvwxyz0123456789-") : 0;
  return length > 0 && length <= SPV_ID_MAX && text[length] == '\0';
}

static gboolean
is_line_mark(gunichar c) {
  return c == '\n' || c == '\t';
}

static gboolean
is_blank(const char *text) {
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char(p))
    if (!g_unichar_isspace(g_utf8_get_char(p)))
      return FALSE;
  return TRUE;
}

SpvNameFault
spv_name_check(const char *text) {
  if (g_utf8_strlen(text, -1) > SPV_NAME_MAX)
    return SPV_NAME_LONG;
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char(p))
    if (g_unichar_iscntrl(g_utf8_get_char(p)))
      return SPV_NAME_CONTROL;
  return is_blank(text) ? SPV_NAME_EMPTY : SPV_NAME_GOOD;
}

SpvNameFault
spv_note_check(const char *text) {
  if (g_utf8_strlen(text, -1) > SPV_NOTE_MAX)
    return SPV_NAME_LONG;
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char(p))
    if (g_unichar_iscntrl(g_utf8_get_char(p)) && !is_line_mark(g_utf8_get_char(p)))
      return SPV_NAME_CONTROL;
  return SPV_NAME_GOOD;
}

/* The first MAX characters of TEXT made valid UTF-8, control characters made spaces; notes keep their line
 * marks. */
static char *
without_control(const char *text, glong max, gboolean keep_line_marks) {
  g_autofree char *valid = g_utf8_make_valid(text, -1);
  GString *out = g_string_new(NULL);
  const char *p = valid;
  for (glong n = 0; *p != '\0' && n < max; n++, p = g_utf8_next_char(p)) {
    gunichar c = g_utf8_get_char(p);
    gboolean keep = !g_unichar_iscntrl(c) || (keep_line_marks && is_line_mark(c));
    g_string_append_unichar(out, keep ? c : ' ');
  }
  return g_string_free(out, FALSE);
}

char *
spv_name_clean(const char *text) {
  g_autofree char *clean = without_control(text, SPV_NAME_MAX, FALSE);
  return is_blank(clean) ? NULL : g_steal_pointer(&clean);
}

char *
spv_note_clean(const char *text) {
  return without_control(text, SPV_NOTE_MAX, TRUE);
}

const char *
spv_shared_new(const char *text) {
  return text != NULL ? g_ref_string_new(text) : NULL;
}

const char *
spv_shared_ref(const char *shared) {
  return shared != NULL ? g_ref_string_acquire((char *) shared) : NULL;
}

void
spv_shared_unref(const char *shared) {
  if (shared != NULL)
    g_ref_string_release((char *) shared);
}

void
spv_shared_replace(const char **place, const char *text) {
  const char *old = *place;
  *place = spv_shared_new(text);
  spv_shared_unref(old);
}
