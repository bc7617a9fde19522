/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/wording.h"

#include <string.h>

#include "draw/draw.h"

#define ELLIPSIS "\u2026"

cairo_t *
spv_measuring_context_new(void) {
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create(surface);

  cairo_surface_destroy(surface);
  return cr;
}

static gboolean
fits(cairo_t *cr, const char *text, double size, gboolean bold, double width) {
  return spv_words_width(cr, text, size, bold, 1) <= width;
}

char *
spv_words_shorten(cairo_t *cr, const char *text, double size, gboolean bold, double width) {
  if (fits(cr, text, size, bold, width))
    return g_strdup(text);

  /* The most characters that fit with the ellipsis, by halving. */
  glong low = 0, high = g_utf8_strlen(text, -1);
  while (low < high) {
    glong middle = (low + high + 1) / 2;
    g_autofree char *start = g_utf8_substring(text, 0, middle);
    g_autofree char *shortened = g_strconcat(g_strchomp(start), ELLIPSIS, NULL);
    if (fits(cr, shortened, size, bold, width))
      low = middle;
    else
      high = middle - 1;
  }
  g_autofree char *start = g_utf8_substring(text, 0, low);
  return g_strconcat(g_strchomp(start), ELLIPSIS, NULL);
}

char **
spv_words_wrap(cairo_t *cr, const char *text, double size, gboolean bold, double width, guint max_lines) {
  g_auto(GStrv) words = g_strsplit_set(text, " \n\t", -1);
  g_autoptr(GPtrArray) lines = g_ptr_array_new_with_free_func(g_free);
  g_autoptr(GString) line = g_string_new(NULL);

  for (gsize i = 0; words[i] != NULL; i++) {
    if (words[i][0] == '\0')
      continue;
    g_autofree char *longer = line->len > 0 ? g_strconcat(line->str, " ", words[i], NULL)
                                            : g_strdup(words[i]);
    gboolean last = lines->len + 1 >= max_lines;
    if (line->len == 0 || last || fits(cr, longer, size, bold, width)) {
      g_string_assign(line, longer);
    } else {
      g_ptr_array_add(lines, spv_words_shorten(cr, line->str, size, bold, width));
      g_string_assign(line, words[i]);
    }
  }
  if (line->len > 0)
    g_ptr_array_add(lines, spv_words_shorten(cr, line->str, size, bold, width));
  g_ptr_array_add(lines, NULL);
  return (char **) g_ptr_array_free(g_steal_pointer(&lines), FALSE);
}

char *
spv_measure_words(double mm) {
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  gsize length;

  g_ascii_formatd(text, sizeof text, "%.2f", mm);
  length = strlen(text);
  if (length > 0 && text[length - 1] == '0')
    text[length - 1] = '\0';
  return g_strdup(text);
}

char *
spv_words_capitalise(const char *text) {
  if (*text == '\0')
    return g_strdup(text);

  g_autofree char *first = g_utf8_strup(text, (gssize) (g_utf8_next_char(text) - text));
  return g_strconcat(first, g_utf8_next_char(text), NULL);
}
