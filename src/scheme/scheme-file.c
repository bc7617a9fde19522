/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The scheme file's bytes: what must hold before they are JSON, jansson's complaints in our words,
 * and files. */
#define _POSIX_C_SOURCE 200809L /* O_CLOEXEC */

#include "config.h"

#include "scheme/scheme-file.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "scheme/reader-private.h"
#include "scheme/save.h"
#include "scheme/writer-private.h"

#define MEBIBYTE (1024 * 1024)

/* What can be said of the bytes alone. */
static gboolean
check_bytes(SpvReader *reader) {
  const char *text = reader->text, *end;
  if (reader->length > SPV_FILE_MAX_BYTES)
    return spv_reader_fail_offset(reader, SPV_SCHEME_ERROR_LIMIT, 0, "$",
                                  _("the file is larger than %d MiB; a scheme is never that large: is it "
                                    "another kind of file?"),
                                  SPV_FILE_MAX_BYTES / MEBIBYTE);
  if (reader->length >= 3 && memcmp(text, "\xef\xbb\xbf", 3) == 0)
    return spv_reader_fail_offset(reader, SPV_SCHEME_ERROR_SYNTAX, 0, "$",
                                  _("the file starts with a byte order mark; save it as UTF-8 without one"));
  const char *nul = memchr(text, '\0', reader->length);
  gsize length = nul != NULL ? (gsize) (nul - text) : reader->length;
  if (!g_utf8_validate_len(text, length, &end))
    return spv_reader_fail_offset(reader, SPV_SCHEME_ERROR_SYNTAX, (gsize) (end - text), "$",
                                  _("not UTF-8 text; save the file as UTF-8"));
  if (nul != NULL)
    return spv_reader_fail_offset(reader, SPV_SCHEME_ERROR_SYNTAX, length, "$",
                                  _("a zero byte; remove it: is this another kind of file?"));
  gsize deep = spv_json_find_too_deep(text, reader->length, SPV_FILE_MAX_DEPTH);
  if (deep < reader->length)
    return spv_reader_fail_offset(reader, SPV_SCHEME_ERROR_LIMIT, deep, "$",
                                  _("more than %d levels of brackets; a scheme needs fewer: remove some"),
                                  SPV_FILE_MAX_DEPTH);
  return TRUE;
}

/* Whether TOKEN is a text that does not end, or that holds what JSON does not allow in one. */
static gboolean
is_broken_text(const char *token) {
  if (token[0] != '"')
    return FALSE;
  json_t *text = json_loads(token, JSON_DECODE_ANY, NULL);
  gboolean broken = text == NULL;
  json_decref(text);
  return broken;
}

/* jansson's complaint in our words, TOKEN being where it stopped and EXCERPT what to show of it. */
static char *
syntax_message(const json_error_t *problem, const char *token, const char *excerpt) {
  switch (json_error_code(problem)) {
  case json_error_duplicate_key:
    return g_strdup_printf(_("the member %s is there twice; remove one"), excerpt);
  case json_error_end_of_input_expected:
    return g_strdup_printf(_("there is more after the end of the scheme, from “%s” on; remove it"), excerpt);
  case json_error_numeric_overflow:
    return g_strdup_printf(_("the number %s is too large; give a smaller one"), excerpt);
  case json_error_null_character:
  case json_error_null_byte_in_key:
    return g_strdup(_("this text holds the character \\u0000; remove it"));
  case json_error_premature_end_of_input:
  case json_error_invalid_syntax:
  case json_error_invalid_format:
  case json_error_invalid_utf8:
  case json_error_invalid_argument:
  case json_error_wrong_type:
  case json_error_null_value:
  case json_error_out_of_memory:
  case json_error_stack_overflow:
  case json_error_item_not_found:
  case json_error_index_out_of_range:
  case json_error_cannot_open_file:
  case json_error_unknown:
    break;
  }
  if (token[0] == '\0')
    return g_strdup(_("the file ends too early; a value, a quotation mark or a closing bracket is missing"));
  if (is_broken_text(token))
    return g_strdup_printf(
        _("the text %s is broken; look for a missing quotation mark, a line feed or a wrong \\ in it"),
        excerpt);
  return g_strdup_printf(
      _("not JSON at “%s”; look for a missing or extra comma, quotation mark or bracket here or just before"),
      excerpt);
}

static void
fail_syntax(SpvReader *reader, const json_error_t *problem) {
  gsize end;
  g_autofree char *path = NULL;
  gsize stopped = problem->position > 0 ? (gsize) problem->position : 0;
  gsize start = spv_json_token_before(reader->text, reader->length, stopped, &end, NULL);
  g_autofree char *token = g_strndup(reader->text + start, end - start);
  if (json_error_code(problem) == json_error_premature_end_of_input && !is_broken_text(token)) {
    /* The last token is a good one; what should follow it is missing. */
    stopped = reader->length + 1;
    token[0] = '\0';
  }
  start = spv_json_token_before(reader->text, reader->length, stopped, NULL, &path);
  g_autofree char *excerpt = spv_reader_excerpt(token);
  g_autofree char *message = syntax_message(problem, token, excerpt);
  spv_reader_fail_offset(reader, SPV_SCHEME_ERROR_SYNTAX, start, path, "%s", message);
}

SpvScheme *
spv_scheme_parse(const char *text, gsize length, const char *name, GError **error) {
  SpvReader reader = { text != NULL ? text : "", length, name, error };
  json_error_t problem;
  if (!check_bytes(&reader))
    return NULL;
  json_t *root = json_loadb(reader.text, length, JSON_REJECT_DUPLICATES | JSON_DECODE_ANY, &problem);
  if (root == NULL) {
    fail_syntax(&reader, &problem);
    return NULL;
  }
  SpvScheme *scheme = spv_read_scheme(&reader, root);
  json_decref(root);
  return scheme;
}

/* The file's bytes, one more than allowed at most; NULL with errno set. */
static GByteArray *
read_bytes(const char *path) {
  g_autoptr(GByteArray) bytes = g_byte_array_new();
  guint8 block[65536];
  gssize n = 1;
  int fd = g_open(path, O_RDONLY | O_CLOEXEC, 0);
  if (fd < 0)
    return NULL;
  while (n > 0 && bytes->len <= SPV_FILE_MAX_BYTES) {
    do
      n = read(fd, block, sizeof block);
    while (n < 0 && errno == EINTR);
    if (n > 0)
      g_byte_array_append(bytes, block, (guint) n);
  }
  int number = errno;
  close(fd);
  errno = number;
  return n < 0 ? NULL : g_steal_pointer(&bytes);
}

SpvScheme *
spv_scheme_load(const char *path, GError **error) {
  g_autofree char *shown = g_filename_display_name(path);
  g_autoptr(GByteArray) bytes = read_bytes(path);
  if (bytes != NULL)
    return spv_scheme_parse((const char *) bytes->data, bytes->len, shown, error);
  int number = errno;
  if (number == EISDIR)
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_READ, _("%s: this is a folder; give a scheme file"),
                shown);
  else
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_READ, _("%s: could not be read: %s"), shown,
                g_strerror(number));
  return NULL;
}

char *
spv_scheme_to_text(const SpvScheme *scheme, gsize *length) {
  json_t *root = spv_write_scheme(scheme);
  char *json = json_dumps(root, JSON_INDENT(2) | JSON_SORT_KEYS | JSON_REAL_PRECISION(15));
  char *text = g_strconcat(json, "\n", NULL);
  if (length != NULL)
    *length = strlen(text);
  free(json);
  json_decref(root);
  return text;
}

gboolean
spv_scheme_save(const SpvScheme *scheme, const char *path, GError **error) {
  gsize length;
  g_autofree char *text = spv_scheme_to_text(scheme, &length);
  g_autofree char *shown = g_filename_display_name(path);

  /* Nothing is written that could not be read again: a mistake in an edit must not cost the painter
   * a file. */
  g_autoptr(SpvScheme) again = spv_scheme_parse(text, length, shown, error);
  if (again == NULL)
    return FALSE;

  SpvSave *save = spv_save_begin(path, error);
  if (save == NULL)
    return FALSE;
  if (!spv_save_write(save, text, length, error)) {
    spv_save_abandon(save);
    return FALSE;
  }
  return spv_save_commit(save, error);
}
