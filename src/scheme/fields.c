/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Members of JSON objects: types, ranges, and messages with their places. */
#include "config.h"

#include "scheme/fields-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "scheme/name-private.h"

#define EXCERPT_MAX 40 /* characters */

static void
set_error(SpvReader *reader, SpvSchemeError code, gsize offset, const char *path, const char *format,
          va_list arguments) {
  gsize line, column;
  g_autofree char *message = g_strdup_vprintf(format, arguments);
  spv_json_position(reader->text, offset, &line, &column);
  g_set_error(reader->error, SPV_SCHEME_ERROR, code, "%s:%" G_GSIZE_FORMAT ":%" G_GSIZE_FORMAT ": %s (%s)",
              reader->name, line, column, message, path);
}

gboolean
spv_reader_fail_offset(SpvReader *reader, SpvSchemeError code, gsize offset, const char *path,
                       const char *format, ...) {
  va_list arguments;
  va_start(arguments, format);
  set_error(reader, code, offset, path, format, arguments);
  va_end(arguments);
  return FALSE;
}

gboolean
spv_reader_fail(SpvReader *reader, SpvSchemeError code, const SpvJsonPath *at, const char *format, ...) {
  g_autofree char *path = spv_json_path_to_string(at);
  va_list arguments;
  va_start(arguments, format);
  set_error(reader, code, spv_json_find_value(reader->text, reader->length, at), path, format, arguments);
  va_end(arguments);
  return FALSE;
}

gboolean
spv_reader_fail_key(SpvReader *reader, SpvSchemeError code, const SpvJsonPath *at, const char *format, ...) {
  g_autofree char *path = spv_json_path_to_string(at);
  va_list arguments;
  va_start(arguments, format);
  set_error(reader, code, spv_json_find_key(reader->text, reader->length, at), path, format, arguments);
  va_end(arguments);
  return FALSE;
}

char *
spv_reader_excerpt(const char *text) {
  GString *out = g_string_new(NULL);
  const char *p = text;
  for (guint n = 0; *p != '\0' && n < EXCERPT_MAX; n++, p = g_utf8_next_char(p)) {
    gunichar c = g_utf8_get_char(p);
    g_string_append_unichar(out, g_unichar_iscntrl(c) ? ' ' : c);
  }
  if (*p != '\0')
    g_string_append(out, "…");
  return g_string_free(out, FALSE);
}

const char *
spv_json_type_name(const json_t *value) {
  switch (json_typeof(value)) {
  case JSON_OBJECT:
    return _("an object");
  case JSON_ARRAY:
    return _("a list");
  case JSON_STRING:
    return _("text");
  case JSON_INTEGER:
  case JSON_REAL:
    return _("a number");
  case JSON_TRUE:
    return "true";
  case JSON_FALSE:
    return "false";
  case JSON_NULL:
    return "null";
  }
  return "";
}

/* What messages call the value at AT: its key, or its place in its list. */
static char *
subject(const SpvJsonPath *at) {
  if (at->parent == NULL)
    return g_strdup(_("a scheme"));
  if (at->key == NULL)
    return g_strdup_printf(_("item %u"), (guint) at->index + 1);
  g_autofree char *key = spv_reader_excerpt(at->key);
  return g_strdup_printf(_("“%s”"), key);
}

static gboolean
fail_type(SpvReader *reader, const json_t *value, const SpvJsonPath *at, const char *wanted) {
  g_autofree char *what = subject(at);
  /* TRANSLATORS: the name of a member, what it must be, what it is. */
  return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, at, _("%s must be %s, not %s"), what, wanted,
                         spv_json_type_name(value));
}

gboolean
spv_read_is_object(SpvReader *reader, const json_t *value, const SpvJsonPath *at) {
  return json_is_object(value) || fail_type(reader, value, at, _("an object in { }"));
}

gboolean
spv_read_is_list(SpvReader *reader, const json_t *value, const SpvJsonPath *at) {
  return json_is_array(value) || fail_type(reader, value, at, _("a list in [ ]"));
}

json_t *
spv_read_member(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key) {
  json_t *value = json_object_get(object, key);
  if (value == NULL)
    spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, at, _("“%s” is missing; add it"), key);
  return value;
}

gboolean
spv_read_object(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
                json_t **value) {
  SpvJsonPath here = { at, key, 0 };
  *value = spv_read_member(reader, object, at, key);
  return *value != NULL && spv_read_is_object(reader, *value, &here);
}

gboolean
spv_read_list(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key, gsize max,
              json_t **value) {
  SpvJsonPath here = { at, key, 0 };
  *value = spv_read_member(reader, object, at, key);
  if (*value == NULL || !spv_read_is_list(reader, *value, &here))
    return FALSE;
  gsize n = json_array_size(*value);
  return n <= max || spv_reader_fail(reader, SPV_SCHEME_ERROR_LIMIT, &here,
                                     _("“%s” has %u items; at most %u are allowed: remove some"), key,
                                     (guint) n, (guint) max);
}

gboolean
spv_read_string(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
                const char **value) {
  SpvJsonPath here = { at, key, 0 };
  const json_t *member = spv_read_member(reader, object, at, key);
  if (member == NULL)
    return FALSE;
  if (!json_is_string(member))
    return fail_type(reader, member, &here, _("text in quotation marks"));
  *value = json_string_value(member);
  return TRUE;
}

gboolean
spv_read_id(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char **value) {
  SpvJsonPath here = { at, "id", 0 };
  if (!spv_read_string(reader, object, at, "id", value))
    return FALSE;
  if (spv_id_is_valid(*value))
    return TRUE;
  g_autofree char *excerpt = spv_reader_excerpt(*value);
  return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here,
                         _("“%s” is no id; use 1 to %d characters out of a-z, 0-9 and -"), excerpt,
                         SPV_ID_MAX);
}

static gboolean
check_words(SpvReader *reader, SpvNameFault fault, const SpvJsonPath *at, int max) {
  switch (fault) {
  case SPV_NAME_GOOD:
    return TRUE;
  case SPV_NAME_EMPTY:
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, at, _("“%s” is empty; give it a name"), at->key);
  case SPV_NAME_LONG:
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_LIMIT, at,
                           _("“%s” is too long; use at most %d characters"), at->key, max);
  case SPV_NAME_CONTROL:
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, at,
                           _("“%s” holds a control character; remove it"), at->key);
  }
  return FALSE;
}

gboolean
spv_read_name(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
              const char **value) {
  SpvJsonPath here = { at, key, 0 };
  return spv_read_string(reader, object, at, key, value) &&
         check_words(reader, spv_name_check(*value), &here, SPV_NAME_MAX);
}

gboolean
spv_read_note(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
              const char **value) {
  SpvJsonPath here = { at, key, 0 };
  if (json_object_get(object, key) == NULL)
    return TRUE;
  return spv_read_string(reader, object, at, key, value) &&
         check_words(reader, spv_note_check(*value), &here, SPV_NOTE_MAX);
}

gboolean
spv_read_flag(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
              gboolean *value) {
  SpvJsonPath here = { at, key, 0 };
  const json_t *member = json_object_get(object, key);
  if (member == NULL)
    return TRUE;
  if (!json_is_boolean(member))
    return fail_type(reader, member, &here, _("true or false"));
  *value = json_is_true(member) ? TRUE : FALSE;
  return TRUE;
}

gboolean
spv_read_length(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key, double min,
                double max, double *value) {
  SpvJsonPath here = { at, key, 0 };
  const json_t *member = spv_read_member(reader, object, at, key);
  if (member == NULL)
    return FALSE;
  if (!json_is_number(member))
    return fail_type(reader, member, &here, _("a number of mm"));
  *value = json_number_value(member);
  if (*value >= min && *value <= max)
    return TRUE;
  char is[G_ASCII_DTOSTR_BUF_SIZE], low[G_ASCII_DTOSTR_BUF_SIZE], high[G_ASCII_DTOSTR_BUF_SIZE];
  return spv_reader_fail(
      reader, SPV_SCHEME_ERROR_INVALID, &here, _("“%s” is %s; give a number from %s to %s\u2009mm"), key,
      g_ascii_formatd(is, sizeof is, "%.15g", *value), g_ascii_formatd(low, sizeof low, "%.6g", min),
      g_ascii_formatd(high, sizeof high, "%.6g", max));
}

gboolean
spv_read_id_is_new(SpvReader *reader, GHashTable *used, const char *id, const SpvJsonPath *at) {
  SpvJsonPath here = { at, "id", 0 };
  if (g_hash_table_add(used, (gpointer) id))
    return TRUE;
  return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here,
                         _("the id “%s” is used twice in this list; give this one another"), id);
}

json_t *
spv_read_unknown(const json_t *object, const char *const *known) {
  json_t *unknown = NULL;
  const char *key;
  json_t *value;
  json_object_foreach((json_t *) object, key, value) {
    if (g_strv_contains(known, key))
      continue;
    if (unknown == NULL)
      unknown = json_object();
    json_object_set(unknown, key, value);
  }
  return unknown;
}
