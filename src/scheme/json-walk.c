/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A tokeniser that keeps track of the place it is at. */
#include "scheme/json-walk-private.h"

#include <jansson.h>
#include <string.h>

/* Levels below this are counted, but their places are not kept: the reader refuses such files before. */
#define KEPT_LEVELS 64

typedef enum { TOKEN_END, TOKEN_OPEN, TOKEN_CLOSE, TOKEN_MARK, TOKEN_KEY, TOKEN_VALUE } Token;

typedef struct {
  gboolean is_object;
  gboolean expects_key;
  gsize key, key_end; /* the key of now, with its quotation marks; both 0 before the first */
  gsize index;
} Level;

typedef struct {
  const char *text;
  gsize length, at;
  Token token;
  gsize start, end; /* of the token */
  guint depth;      /* levels open around the token */
  Level levels[KEPT_LEVELS];
} Walk;

static Level *
walk_level(Walk *walk) {
  return walk->depth > 0 && walk->depth <= KEPT_LEVELS ? &walk->levels[walk->depth - 1] : NULL;
}

static gboolean
is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/* The end of the string that starts at the quotation mark at START; a line feed ends it too. */
static gsize
string_end(const Walk *walk, gsize start) {
  for (gsize i = start + 1; i < walk->length; i++) {
    if (walk->text[i] == '"')
      return i + 1;
    if (walk->text[i] == '\n')
      return i;
    if (walk->text[i] == '\\')
      i++;
  }
  return walk->length;
}

/* The end of the word (a number, true, anything unquoted) at START. */
static gsize
word_end(const Walk *walk, gsize start) {
  gsize i = start + 1;
  while (i < walk->length && !is_space(walk->text[i]) && strchr("{}[],:\"", walk->text[i]) == NULL)
    i++;
  return i;
}

/* The level that an opening bracket opened is entered only now, so that the bracket itself stands outside. */
static void
enter_opened(Walk *walk) {
  if (walk->token != TOKEN_OPEN)
    return;
  gboolean is_object = walk->text[walk->start] == '{';
  walk->depth++;
  Level *level = walk_level(walk);
  if (level != NULL)
    *level = (Level){ .is_object = is_object, .expects_key = is_object };
}

static void
read_string(Walk *walk) {
  Level *level = walk_level(walk);
  walk->end = string_end(walk, walk->start);
  walk->token = TOKEN_VALUE;
  if (level == NULL || !level->expects_key)
    return;
  walk->token = TOKEN_KEY;
  level->expects_key = FALSE;
  level->key = walk->start;
  level->key_end = walk->end;
}

static void
read_comma(Walk *walk) {
  Level *level = walk_level(walk);
  walk->token = TOKEN_MARK;
  if (level == NULL)
    return;
  level->index++;
  level->expects_key = level->is_object;
}

static Token
walk_next(Walk *walk) {
  enter_opened(walk);
  while (walk->at < walk->length && is_space(walk->text[walk->at]))
    walk->at++;
  walk->start = walk->at;
  walk->end = walk->at + 1;
  char c = walk->at < walk->length ? walk->text[walk->at] : '\0';

  if (walk->at >= walk->length) {
    walk->token = TOKEN_END;
    walk->end = walk->length;
  } else if (c == '{' || c == '[') {
    walk->token = TOKEN_OPEN;
  } else if (c == '}' || c == ']') {
    walk->token = TOKEN_CLOSE;
    walk->depth -= walk->depth > 0 ? 1 : 0;
  } else if (c == ',') {
    read_comma(walk);
  } else if (c == ':') {
    walk->token = TOKEN_MARK;
  } else if (c == '"') {
    read_string(walk);
  } else {
    walk->token = TOKEN_VALUE;
    walk->end = word_end(walk, walk->start);
  }
  walk->at = walk->end;
  return walk->token;
}

/* The key of LEVEL, without marks and escapes; NULL before the first and where it is broken. */
static char *
level_key(const Walk *walk, const Level *level) {
  if (level->key_end < level->key + 2)
    return NULL;
  json_t *key = json_loadb(walk->text + level->key, level->key_end - level->key, JSON_DECODE_ANY, NULL);
  char *copy = g_strdup(json_string_value(key));
  json_decref(key);
  return copy;
}

static gboolean
level_is_at(const Walk *walk, const Level *level, const SpvJsonPath *step) {
  if (step->key == NULL)
    return !level->is_object && level->index == step->index;
  if (!level->is_object || level->key_end < level->key + 2)
    return FALSE;
  const char *raw = walk->text + level->key + 1;
  gsize raw_length = level->key_end - level->key - 2;
  if (memchr(raw, '\\', raw_length) == NULL)
    return strlen(step->key) == raw_length && memcmp(raw, step->key, raw_length) == 0;
  g_autofree char *key = level_key(walk, level);
  return g_strcmp0(key, step->key) == 0;
}

static guint
path_depth(const SpvJsonPath *path) {
  guint depth = 0;
  for (; path->parent != NULL; path = path->parent)
    depth++;
  return depth;
}

static gboolean
walk_is_at(const Walk *walk, const SpvJsonPath *path, guint depth) {
  if (walk->depth != depth || depth > KEPT_LEVELS)
    return FALSE;
  for (guint i = depth; i > 0; i--, path = path->parent)
    if (!level_is_at(walk, &walk->levels[i - 1], path))
      return FALSE;
  return TRUE;
}

/* The start of the first token at PATH that is a key, or that is a value; LENGTH when there is none. */
static gsize
find_token(const char *text, gsize length, const SpvJsonPath *path, gboolean is_key) {
  Walk walk = { .text = text, .length = length, .token = TOKEN_MARK };
  guint depth = path_depth(path);
  while (walk_next(&walk) != TOKEN_END) {
    gboolean fits = is_key ? walk.token == TOKEN_KEY : walk.token == TOKEN_OPEN || walk.token == TOKEN_VALUE;
    if (fits && walk_is_at(&walk, path, depth))
      return walk.start;
  }
  return length;
}

gsize
spv_json_find_value(const char *text, gsize length, const SpvJsonPath *path) {
  return find_token(text, length, path, FALSE);
}

gsize
spv_json_find_key(const char *text, gsize length, const SpvJsonPath *path) {
  return find_token(text, length, path, TRUE);
}

gsize
spv_json_find_too_deep(const char *text, gsize length, guint max_depth) {
  Walk walk = { .text = text, .length = length, .token = TOKEN_MARK };
  while (walk_next(&walk) != TOKEN_END)
    if (walk.token == TOKEN_OPEN && walk.depth >= max_depth)
      return walk.start;
  return length;
}

static void
append_key(GString *out, const char *key) {
  gboolean plain = key[0] != '\0';
  for (const char *p = key; *p != '\0'; p++)
    plain = plain && (g_ascii_isalnum(*p) || *p == '-' || *p == '_');
  if (plain) {
    g_string_append_printf(out, ".%s", key);
    return;
  }
  g_string_append(out, "['");
  for (const char *p = key; *p != '\0'; p++) {
    if (*p == '\'' || *p == '\\')
      g_string_append_c(out, '\\');
    g_string_append_c(out, g_ascii_iscntrl(*p) ? ' ' : *p);
  }
  g_string_append(out, "']");
}

static void
append_path(GString *out, const SpvJsonPath *path) {
  if (path->parent == NULL) {
    g_string_append_c(out, '$');
    return;
  }
  append_path(out, path->parent);
  if (path->key != NULL)
    append_key(out, path->key);
  else
    g_string_append_printf(out, "[%" G_GSIZE_FORMAT "]", path->index);
}

char *
spv_json_path_to_string(const SpvJsonPath *path) {
  GString *out = g_string_new(NULL);
  append_path(out, path);
  return g_string_free(out, FALSE);
}

static char *
walk_path(const Walk *walk) {
  GString *out = g_string_new("$");
  for (guint i = 0; i < MIN(walk->depth, KEPT_LEVELS); i++) {
    const Level *level = &walk->levels[i];
    g_autofree char *key = level->is_object && !level->expects_key ? level_key(walk, level) : NULL;
    if (key != NULL)
      append_key(out, key);
    else if (!level->is_object)
      g_string_append_printf(out, "[%" G_GSIZE_FORMAT "]", level->index);
  }
  return g_string_free(out, FALSE);
}

gsize
spv_json_token_before(const char *text, gsize length, gsize end, gsize *token_end, char **path) {
  Walk walk = { .text = text, .length = length, .token = TOKEN_MARK };
  while (walk_next(&walk) != TOKEN_END && walk.end < end)
    ;
  if (token_end != NULL)
    *token_end = walk.end;
  if (path != NULL)
    *path = walk_path(&walk);
  return walk.start;
}

void
spv_json_position(const char *text, gsize offset, gsize *line, gsize *column) {
  gsize n_lines = 1, n_columns = 1;
  for (gsize i = 0; i < offset; i++) {
    if (text[i] == '\n') {
      n_lines++;
      n_columns = 1;
    } else if (((guchar) text[i] & 0xc0) != 0x80) {
      n_columns++;
    }
  }
  *line = n_lines;
  *column = n_columns;
}
