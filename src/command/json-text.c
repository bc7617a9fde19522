/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writing JSON values as text. */
#include "command/json-text.h"

#include <stdlib.h>

void
spv_json_print_number(double number, GString *out) {
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  /* 15 digits are always kept by a double, and 17 always tell two apart. */
  for (int digits = 15; digits <= 17; digits++) {
    char format[8];
    g_snprintf(format, sizeof format, "%%.%dg", digits);
    g_ascii_formatd(text, sizeof text, format, number == 0 ? 0 : number);
    if (g_ascii_strtod(text, NULL) == number)
      break;
  }
  g_string_append(out, text);
}

static gboolean
holds_others(const json_t *value) {
  const char *key;
  json_t *member;
  json_object_foreach((json_t *) value, key, member) {
    if (json_is_object(member) || json_is_array(member))
      return TRUE;
  }
  for (size_t i = 0; i < json_array_size(value); i++) {
    const json_t *item = json_array_get(value, i);
    if (json_is_object(item) || json_is_array(item))
      return TRUE;
  }
  return FALSE;
}

static void
print_scalar(const json_t *value, GString *out) {
  if (json_is_real(value)) {
    spv_json_print_number(json_real_value(value), out);
    return;
  }
  char *text = json_dumps(value, JSON_ENCODE_ANY);
  g_string_append(out, text);
  free(text);
}

/* What goes before member I of a container: a comma, and a new line or a blank. */
static void
print_gap(GString *out, size_t i, gboolean lines, guint depth) {
  if (i)
    g_string_append_c(out, ',');
  if (lines)
    g_string_append_printf(out, "\n%*s", (int) (2 * depth), "");
  else if (i)
    g_string_append_c(out, ' ');
}

static void
print_value(const json_t *value, GString *out, guint depth) {
  if (!json_is_object(value) && !json_is_array(value)) {
    print_scalar(value, out);
    return;
  }
  gboolean lines = holds_others(value);
  g_string_append_c(out, json_is_object(value) ? '{' : '[');
  const char *key;
  json_t *member;
  size_t n = 0;
  json_object_foreach((json_t *) value, key, member) {
    print_gap(out, n++, lines, depth + 1);
    json_t *name = json_string(key);
    print_scalar(name, out);
    json_decref(name);
    g_string_append(out, ": ");
    print_value(member, out, depth + 1);
  }
  for (size_t i = 0; i < json_array_size(value); i++) {
    print_gap(out, n++, lines, depth + 1);
    print_value(json_array_get(value, i), out, depth + 1);
  }
  if (lines)
    g_string_append_printf(out, "\n%*s", (int) (2 * depth), "");
  g_string_append_c(out, json_is_object(value) ? '}' : ']');
}

void
spv_json_print(const json_t *value, GString *out) {
  print_value(value, out, 0);
  g_string_append_c(out, '\n');
}
