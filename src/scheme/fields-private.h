/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading one member of a JSON object with its rules, and saying where a rule is broken. */
#pragma once

#include <jansson.h>

#include "scheme/json-walk-private.h"
#include "scheme/scheme.h"

/* The text that is read, for the places in messages. */
typedef struct {
  const char *text;
  gsize length;
  const char *name; /* what messages call the file */
  GError **error;
} SpvReader;

/* Each sets the error "NAME:LINE:COLUMN: MESSAGE (PATH)" and returns FALSE: at the value, at its key, or at
 * the byte OFFSET. */
gboolean spv_reader_fail(SpvReader *reader, SpvSchemeError code, const SpvJsonPath *at, const char *format,
                         ...) G_GNUC_PRINTF(4, 5);
gboolean spv_reader_fail_key(SpvReader *reader, SpvSchemeError code, const SpvJsonPath *at,
                             const char *format, ...) G_GNUC_PRINTF(4, 5);
gboolean spv_reader_fail_offset(SpvReader *reader, SpvSchemeError code, gsize offset, const char *path,
                                const char *format, ...) G_GNUC_PRINTF(5, 6);

/* TEXT for a message: at most 40 characters, none of them control characters. Free with g_free(). */
char *spv_reader_excerpt(const char *text);

/* What a JSON value is, in words, for a message. */
const char *spv_json_type_name(const json_t *value);

/* VALUE, at AT, has to be an object or a list. */
gboolean spv_read_is_object(SpvReader *reader, const json_t *value, const SpvJsonPath *at);
gboolean spv_read_is_list(SpvReader *reader, const json_t *value, const SpvJsonPath *at);

/* The member KEY of the object OBJECT, which stands at AT. NULL, with the error set, when it is missing. */
json_t *spv_read_member(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key);

/* Likewise, with a type and rules. What is returned in a pointer belongs to OBJECT. FALSE with the
 * error set. */
gboolean spv_read_object(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
                         json_t **value);
/* A list of at most MAX items. */
gboolean spv_read_list(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
                       gsize max, json_t **value);
gboolean spv_read_string(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
                         const char **value);
gboolean spv_read_id(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char **value);
gboolean spv_read_name(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
                       const char **value);
/* From MIN to MAX mm. */
gboolean spv_read_length(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
                         double min, double max, double *value);

/* Members that may be missing: VALUE keeps what it holds. */
gboolean spv_read_note(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
                       const char **value);
gboolean spv_read_flag(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
                       gboolean *value);

/* A list of ids that were used, to refuse a second use. */
gboolean spv_read_id_is_new(SpvReader *reader, GHashTable *used, const char *id, const SpvJsonPath *at);

/* A new object with the members of OBJECT that KNOWN (NULL-terminated) does not name; NULL when there are
 * none. */
json_t *spv_read_unknown(const json_t *object, const char *const *known);
