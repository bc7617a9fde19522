/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where things stand in a JSON text: jansson gives no positions of values, so this walks the text once more
 * when an error needs one. It does not judge the text: on broken JSON it walks on as well as it can. */
#pragma once

#include <glib.h>

/* The place of a value, as a chain on the reader's own stack: an object's member (KEY) or a list's item (KEY
 * is NULL, INDEX from 0). The root has no parent. */
typedef struct _SpvJsonPath SpvJsonPath;
struct _SpvJsonPath {
  const SpvJsonPath *parent;
  const char *key;
  gsize index;
};

/* "$.harness.panels[0].id"; keys with other characters than letters, digits, "-" and "_" as "['a key']". Free
 * with g_free(). */
char *spv_json_path_to_string(const SpvJsonPath *path);

/* The byte offset of the value at PATH, or of the key before it; LENGTH when there is none. */
gsize spv_json_find_value(const char *text, gsize length, const SpvJsonPath *path);
gsize spv_json_find_key(const char *text, gsize length, const SpvJsonPath *path);

/* The start of the token that holds the byte before END (where a parser stopped), or LENGTH when the text
 * ends there; TOKEN_END, unless NULL, gets the token's end, and PATH the place in words (free
 * with g_free()). */
gsize spv_json_token_before(const char *text, gsize length, gsize end, gsize *token_end, char **path);

/* The offset of the bracket that opens more than MAX_DEPTH levels, or LENGTH when none does. */
gsize spv_json_find_too_deep(const char *text, gsize length, guint max_depth);

/* Line and column of OFFSET, from 1; columns are characters, lines end with a line feed. */
void spv_json_position(const char *text, gsize offset, gsize *line, gsize *column);
