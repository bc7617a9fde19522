/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words as outlines. */
#include "config.h"

#include "heraldry/lettering.h"

#include <glib/gi18n-lib.h>
#include <pango/pangocairo.h>
#include <string.h>

#include "geometry/transform.h"
#include "geometry/wind.h"

/* How large the fonts are that outlines are taken from, in cairo's units: cairo keeps a path to 1/256 of one.
 */
#define LAYOUT_SIZE 1000

#define MOST_CHARACTERS 200

gboolean
spv_lettering_text_check(const char *text, GError **error) {
  glong n = 0;
  gboolean visible = FALSE;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char(p)) {
    gunichar c = g_utf8_get_char(p);
    n++;
    if (g_unichar_iscntrl(c)) {
      g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT,
                  _("Character %ld of the words can't be written; write them in one line, without tabs"), n);
      return FALSE;
    }
    visible |= g_unichar_isgraph(c);
  }
  if (visible && n <= MOST_CHARACTERS)
    return TRUE;
  if (visible)
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT,
                _("There are %ld characters; write no more than %d"), n, MOST_CHARACTERS);
  else
    g_set_error_literal(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT,
                        _("There are no words; write at least one letter or numeral"));
  return FALSE;
}

gboolean
spv_lettering_font_check(const char *text, GError **error) {
  g_autoptr(PangoFontDescription) font = pango_font_description_from_string(text);
  const char *family = pango_font_description_get_family(font);

  if (family && *family != '\0' && g_utf8_strlen(text, -1) <= MOST_CHARACTERS)
    return TRUE;
  g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT,
              _("“%s” names no font; write a family and, after it, a style, as in DejaVu Sans Bold"), text);
  return FALSE;
}

gboolean
spv_lettering_font_is_installed(const char *font) {
  g_autoptr(PangoFontDescription) description = pango_font_description_from_string(font);
  const char *wanted = pango_font_description_get_family(description);
  PangoFontFamily **families = NULL;
  int n = 0;
  gboolean found = FALSE;

  if (!wanted)
    return FALSE;
  pango_font_map_list_families(pango_cairo_font_map_get_default(), &families, &n);
  for (int i = 0; i < n && !found; i++)
    found = g_ascii_strcasecmp(pango_font_family_get_name(families[i]), wanted) == 0;
  g_free(families);
  return found;
}

char *
spv_lettering_roman(guint number) {
  static const struct {
    guint value;
    const char *numeral;
  } signs[] = { { 1000, "M" }, { 900, "CM" }, { 500, "D" }, { 400, "CD" }, { 100, "C" },
                { 90, "XC" },  { 50, "L" },   { 40, "XL" }, { 10, "X" },   { 9, "IX" },
                { 5, "V" },    { 4, "IV" },   { 1, "I" } };
  GString *text = g_string_new(NULL);

  g_return_val_if_fail(number >= 1 && number <= 3999, g_string_free(text, FALSE));
  for (guint i = 0; i < G_N_ELEMENTS(signs); i++)
    for (; number >= signs[i].value; number -= signs[i].value)
      g_string_append(text, signs[i].numeral);
  return g_string_free(text, FALSE);
}

/* A layout of WORDS in FONT, without hinting and with nothing rounded. Pango's default font map is one for
 * each thread, so that words may be laid on any. */
static PangoLayout *
layout_new(const char *words, const char *font) {
  PangoContext *context = pango_font_map_create_context(pango_cairo_font_map_get_default());
  g_autoptr(PangoFontDescription) description = pango_font_description_from_string(font);
  cairo_font_options_t *options = cairo_font_options_create();

  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  pango_cairo_context_set_resolution(context, 72);
  pango_context_set_round_glyph_positions(context, FALSE);
  PangoLayout *layout = pango_layout_new(context);
  g_object_unref(context);
  pango_layout_set_single_paragraph_mode(layout, TRUE);
  pango_font_description_set_absolute_size(description, LAYOUT_SIZE * PANGO_SCALE);
  pango_layout_set_font_description(layout, description);
  pango_layout_set_text(layout, words, -1);
  return layout;
}

static SpvPoint
point_of(const cairo_path_data_t *data, double scale) {
  return spv_point(data->point.x * scale, data->point.y * scale);
}

/* The path that CR holds, SCALE times as large, wound as ours are. */
static SpvPath *
take_path(cairo_t *cr, double scale) {
  SpvPathBuilder *builder = spv_path_builder_new();
  cairo_path_t *path = cairo_copy_path(cr);

  for (int i = 0; i < path->num_data; i += path->data[i].header.length) {
    const cairo_path_data_t *data = &path->data[i];
    switch (data->header.type) {
    case CAIRO_PATH_MOVE_TO:
      spv_path_builder_move(builder, point_of(data + 1, scale));
      break;
    case CAIRO_PATH_LINE_TO:
      spv_path_builder_line(builder, point_of(data + 1, scale));
      break;
    case CAIRO_PATH_CURVE_TO:
      spv_path_builder_curve(builder, point_of(data + 1, scale), point_of(data + 2, scale),
                             point_of(data + 3, scale));
      break;
    case CAIRO_PATH_CLOSE_PATH:
      spv_path_builder_close(builder);
      break;
    }
  }
  cairo_path_destroy(path);
  cairo_new_path(cr);
  g_autoptr(SpvPath) raw = spv_path_builder_build(builder);
  return spv_path_wind(raw, SPV_FILL_NONZERO);
}

/* The letter (Pango's cluster) of glyphs FROM to TO of RUN, at X. Empty for a space. */
static SpvPath *
letter_path(cairo_t *cr, const PangoGlyphItem *run, int from, int to, double x, double scale) {
  PangoGlyphString *glyphs = pango_glyph_string_new();

  pango_glyph_string_set_size(glyphs, to - from);
  for (int i = from; i < to; i++) {
    glyphs->glyphs[i - from] = run->glyphs->glyphs[i];
    glyphs->log_clusters[i - from] = 0;
  }
  cairo_move_to(cr, x, -pango_units_to_double(run->y_offset));
  pango_cairo_glyph_string_path(cr, run->item->analysis.font, glyphs);
  pango_glyph_string_free(glyphs);
  return take_path(cr, scale);
}

/* How wide the glyphs FROM to TO of RUN are. */
static double
glyphs_width(const PangoGlyphItem *run, int from, int to) {
  double width = 0;

  for (int i = from; i < to; i++)
    width += pango_units_to_double(run->glyphs->glyphs[i].geometry.width);
  return width;
}

static void
unref_path(gpointer path) {
  spv_path_unref(path);
}

/* Adds the letters of RUN, which starts at X. Clusters come in the order of the text, glyphs from left to
 * right. */
static void
add_run(cairo_t *cr, PangoGlyphItem *run, const char *words, double x, double scale, GPtrArray *letters,
        GArray *middles) {
  PangoGlyphItemIter iter;

  for (gboolean more = pango_glyph_item_iter_init_start(&iter, run, words); more;
       more = pango_glyph_item_iter_next_cluster(&iter)) {
    gboolean onward = iter.start_glyph <= iter.end_glyph;
    int from = onward ? iter.start_glyph : iter.end_glyph + 1;
    int to = onward ? iter.end_glyph : iter.start_glyph + 1;
    double at = x + glyphs_width(run, 0, from);
    SpvPath *letter = letter_path(cr, run, from, to, at, scale);
    if (spv_path_is_empty(letter)) {
      spv_path_unref(letter);
      continue;
    }
    double middle = (at + glyphs_width(run, from, to) / 2) * scale;
    g_ptr_array_add(letters, letter);
    if (middles)
      g_array_append_val(middles, middle);
  }
}

/* The letters of WORDS, SCALE times as large as the font. */
static GPtrArray *
trace_words(const char *words, const char *font, double scale, GArray *middles, double *advance) {
  GPtrArray *letters = g_ptr_array_new_with_free_func(unref_path);
  PangoLayout *layout = layout_new(words, font);
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create(surface);
  double x = 0;

  for (GSList *l = pango_layout_get_line_readonly(layout, 0)->runs; l; l = l->next) {
    PangoGlyphItem *run = l->data;
    add_run(cr, run, pango_layout_get_text(layout), x, scale, letters, middles);
    x += glyphs_width(run, 0, run->glyphs->num_glyphs);
  }
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
  g_object_unref(layout);
  if (advance)
    *advance = x * scale;
  return letters;
}

/* How high a capital H of FONT is, measured on its outline. */
static double
capital_height(const char *font) {
  g_autoptr(GPtrArray) letters = trace_words("H", font, 1, NULL, NULL);
  double height = letters->len == 0 ? 0 : -spv_path_bounds(g_ptr_array_index(letters, 0)).y0;

  /* A font without outlines still has to come out at some size. */
  return height > 0 ? height : 0.7 * LAYOUT_SIZE;
}

GPtrArray *
spv_lettering_letters(const char *words, const char *font, GArray *middles, double *advance) {
  return trace_words(words, font, 1 / capital_height(font), middles, advance);
}
