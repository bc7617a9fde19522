/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words of a stated size in millimetres. They are laid out large, unhinted and unrounded, and scaled down by
 * cairo, so that a word is as wide on paper as on any screen, and the same on every machine with the font. */
#include "draw/draw.h"

/* Named outright, for "Sans" alone is another font on every machine, and a sheet would break its lines
 * elsewhere; "Sans" stands in where the font is missing. */
#define FAMILIES "DejaVu Sans,Sans"
/* The font size of the layout, in its own units. Pango counts in 1/1024 of these, so rounding is far below
 * what a printer shows. */
#define LAYOUT_SIZE 100
#define HALO 0.35 /* mm on paper */

/* Kept with the cairo context that they suit: the Pango context, a layout and the height of capitals. */
typedef struct {
  PangoLayout *layout;
  PangoFontDescription *fonts[2]; /* plain, bold */
  double capital[2];              /* height of a capital, in layout units */
} Lettering;

static const cairo_user_data_key_t lettering_key;

static void
lettering_free(void *data) {
  Lettering *lettering = data;

  g_object_unref(lettering->layout);
  pango_font_description_free(lettering->fonts[0]);
  pango_font_description_free(lettering->fonts[1]);
  g_free(lettering);
}

static double
measure_capital(PangoLayout *layout, const PangoFontDescription *font) {
  PangoRectangle ink;

  pango_layout_set_font_description(layout, font);
  pango_layout_set_text(layout, "H", 1);
  pango_layout_get_extents(layout, &ink, NULL);
  /* A font without an H still has to come out at some size. */
  return ink.height > 0 ? (double) ink.height / PANGO_SCALE : LAYOUT_SIZE * 0.7;
}

/* The Pango context knows nothing of the cairo context's scale, which would only make it load fonts of that
 * size: cairo scales the outlines. */
static Lettering *
lettering_new(void) {
  Lettering *lettering = g_new0(Lettering, 1);
  cairo_font_options_t *options = cairo_font_options_create();
  PangoAttrList *attributes = pango_attr_list_new();
  PangoContext *context = pango_font_map_create_context(pango_cairo_font_map_get_default());

  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context, options);
  pango_cairo_context_set_resolution(context, 72);
  pango_context_set_round_glyph_positions(context, FALSE);
  pango_attr_list_insert(attributes, pango_attr_font_features_new("tnum=1"));
  lettering->layout = pango_layout_new(context);
  pango_layout_set_single_paragraph_mode(lettering->layout, TRUE);
  pango_layout_set_attributes(lettering->layout, attributes);
  for (int bold = 0; bold < 2; bold++) {
    PangoFontDescription *font = pango_font_description_new();

    pango_font_description_set_family_static(font, FAMILIES);
    pango_font_description_set_absolute_size(font, LAYOUT_SIZE * PANGO_SCALE);
    pango_font_description_set_weight(font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    lettering->fonts[bold] = font;
    lettering->capital[bold] = measure_capital(lettering->layout, font);
  }
  pango_attr_list_unref(attributes);
  g_object_unref(context);
  cairo_font_options_destroy(options);
  return lettering;
}

/* The context's lettering, loaded with WORDS. The scale of the layout goes to SCALE. NULL when the context
 * is in error and can keep nothing. */
static Lettering *
lettering_for(cairo_t *cr, const char *words, double size, gboolean bold, double paper_mm, double *scale) {
  Lettering *lettering = cairo_get_user_data(cr, &lettering_key);

  if (lettering == NULL) {
    lettering = lettering_new();
    if (cairo_set_user_data(cr, &lettering_key, lettering, lettering_free) != CAIRO_STATUS_SUCCESS) {
      lettering_free(lettering);
      return NULL;
    }
  }
  pango_layout_set_font_description(lettering->layout, lettering->fonts[bold ? 1 : 0]);
  pango_layout_set_text(lettering->layout, words, -1);
  *scale = size / paper_mm / lettering->capital[bold ? 1 : 0];
  return lettering;
}

/* Without the context's scale, so that the width is that of the large layout. */
static double
layout_width(PangoLayout *layout) {
  PangoRectangle logical;

  pango_layout_get_extents(layout, NULL, &logical);
  return (double) logical.width / PANGO_SCALE;
}

static void
draw_halo(cairo_t *cr, PangoLayoutLine *line, double reach) {
  cairo_save(cr);
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_set_line_width(cr, 2 * reach);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  cairo_move_to(cr, 0, 0);
  pango_cairo_layout_line_path(cr, line);
  cairo_stroke(cr);
  cairo_restore(cr);
}

static double
draw_words(cairo_t *cr, const char *words, double x, double y, double size, double align, gboolean bold,
           double paper_mm, double halo) {
  double scale, width;
  Lettering *lettering = lettering_for(cr, words, size, bold, paper_mm, &scale);
  PangoLayoutLine *line;

  if (lettering == NULL)
    return 0;
  width = layout_width(lettering->layout) * scale;
  line = pango_layout_get_line_readonly(lettering->layout, 0);
  cairo_save(cr);
  cairo_translate(cr, x - align * width, y);
  cairo_scale(cr, scale, scale);
  cairo_new_path(cr);
  if (halo > 0)
    draw_halo(cr, line, halo / scale);
  cairo_move_to(cr, 0, 0);
  pango_cairo_show_layout_line(cr, line);
  cairo_restore(cr);
  return width;
}

double
spv_draw_words(cairo_t *cr, const char *words, double x, double y, double size, double align, gboolean bold,
               double paper_mm) {
  return draw_words(cr, words, x, y, size, align, bold, paper_mm, 0);
}

double
spv_draw_words_haloed(cairo_t *cr, const char *words, double x, double y, double size, double align,
                      gboolean bold, double paper_mm) {
  return draw_words(cr, words, x, y, size, align, bold, paper_mm, HALO / paper_mm);
}

double
spv_words_width(cairo_t *cr, const char *words, double size, gboolean bold, double paper_mm) {
  double scale;
  Lettering *lettering = lettering_for(cr, words, size, bold, paper_mm, &scale);

  return lettering == NULL ? 0 : layout_width(lettering->layout) * scale;
}
