/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Comparing pictures: how much of a rectangle differs, a picture of what does, and a page for eyes that shows
 * got, wanted and difference. */
#pragma once

#include <cairo.h>
#include <gio/gio.h>
#include <math.h>

/* How far a pixel's red, green or blue may be off before it counts as another, of 255: what another version
 * of a library makes of the edge of a shape. */
#define PICTURES_TOLERANCE 48

static inline guint32
pictures_pixel(cairo_surface_t *picture, int x, int y) {
  const guchar *row = cairo_image_surface_get_data(picture) + y * cairo_image_surface_get_stride(picture);

  return ((const guint32 *) (gconstpointer) row)[x];
}

static inline gboolean
pictures_pixels_differ(guint32 a, guint32 b) {
  for (int shift = 0; shift < 24; shift += 8)
    if (ABS((int) (a >> shift & 0xff) - (int) (b >> shift & 0xff)) > PICTURES_TOLERANCE)
      return TRUE;
  return FALSE;
}

static inline gboolean
pictures_have_one_size(cairo_surface_t *a, cairo_surface_t *b) {
  return cairo_image_surface_get_width(a) == cairo_image_surface_get_width(b) &&
         cairo_image_surface_get_height(a) == cairo_image_surface_get_height(b);
}

/* The share of the pixels of GOT in RECTANGLE that are other than WANTED's; 1 where the pictures are not of
 * one size, or the rectangle has no pixels in them. Both are RGB24 or ARGB32. */
static inline double
pictures_difference(cairo_surface_t *got, cairo_surface_t *wanted, cairo_rectangle_int_t rectangle) {
  int x1 = MIN(rectangle.x + rectangle.width, cairo_image_surface_get_width(got));
  int y1 = MIN(rectangle.y + rectangle.height, cairo_image_surface_get_height(got));
  guint all = 0, other = 0;

  if (!pictures_have_one_size(got, wanted))
    return 1;
  cairo_surface_flush(got);
  cairo_surface_flush(wanted);
  for (int y = MAX(rectangle.y, 0); y < y1; y++)
    for (int x = MAX(rectangle.x, 0); x < x1; x++, all++)
      other += pictures_pixels_differ(pictures_pixel(got, x, y), pictures_pixel(wanted, x, y)) ? 1 : 0;
  return all > 0 ? (double) other / all : 1;
}

/* The whole of PICTURE. */
static inline cairo_rectangle_int_t
pictures_whole(cairo_surface_t *picture) {
  return (cairo_rectangle_int_t){ 0, 0, cairo_image_surface_get_width(picture),
                                  cairo_image_surface_get_height(picture) };
}

/* A new picture: WANTED, pale, with red where GOT is other. Of one size only. */
static inline cairo_surface_t *
pictures_marked(cairo_surface_t *got, cairo_surface_t *wanted) {
  cairo_rectangle_int_t whole = pictures_whole(wanted);
  cairo_surface_t *marked = cairo_image_surface_create(CAIRO_FORMAT_RGB24, whole.width, whole.height);

  cairo_surface_flush(marked);
  for (int y = 0; y < whole.height; y++) {
    guchar *row = cairo_image_surface_get_data(marked) + y * cairo_image_surface_get_stride(marked);
    for (int x = 0; x < whole.width; x++) {
      guint32 pixel = pictures_pixel(wanted, x, y);
      guint32 pale = 0xc0c0c0u + ((pixel >> 2) & 0x3f3f3fu);
      gboolean other = pictures_pixels_differ(pictures_pixel(got, x, y), pixel);
      ((guint32 *) (gpointer) row)[x] = other ? 0xd00000u : pale;
    }
  }
  cairo_surface_mark_dirty(marked);
  return marked;
}

/* Writes PICTURE into FOLDER as NAME; FALSE where that could not be. */
static inline gboolean
pictures_write(cairo_surface_t *picture, const char *folder, const char *name) {
  g_autofree char *path = g_build_filename(folder, name, NULL);

  return cairo_surface_write_to_png(picture, path) == CAIRO_STATUS_SUCCESS;
}

/* Puts got, wanted (NULL where there is none) and difference of picture NAME into FOLDER, and into PAGE,
 * which is HTML, with WORDS, which say what is wrong. */
static inline void
pictures_report(GString *page, const char *folder, const char *name, cairo_surface_t *got,
                cairo_surface_t *wanted, const char *words) {
  static const char *const kinds[] = { "got", "wanted", "difference" };
  gboolean comparable = wanted != NULL && pictures_have_one_size(got, wanted);
  cairo_surface_t *marked = comparable ? pictures_marked(got, wanted) : NULL;
  cairo_surface_t *const pictures[] = { got, wanted, marked };
  g_autofree char *escaped = g_markup_escape_text(words, -1);

  g_string_append_printf(page, "<h2>%s</h2>\n<p>%s</p>\n<div>\n", name, escaped);
  for (gsize i = 0; i < G_N_ELEMENTS(kinds); i++) {
    g_autofree char *file = g_strdup_printf("%s-%s.png", name, kinds[i]);
    if (pictures[i] != NULL && pictures_write(pictures[i], folder, file))
      g_string_append_printf(page,
                             "<figure><figcaption>%s</figcaption><img src=\"%s\" alt=\"%s\"></figure>\n",
                             kinds[i], file, kinds[i]);
  }
  g_string_append(page, "</div>\n");
  if (marked != NULL)
    cairo_surface_destroy(marked);
}

/* Writes PAGE, what reports have been put into, as an HTML file into FOLDER; returns its path, free with
 * g_free(). */
static inline char *
pictures_write_page(const GString *page, const char *folder, const char *title) {
  char *path = g_build_filename(folder, "index.html", NULL);
  g_autofree char *html = g_strdup_printf(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<meta charset=\"utf-8\">\n<title>%s</title>\n"
      "<style>body { font-family: sans-serif } div { display: flex; gap: 1em } figure { margin: 0; flex: 1 "
      "}\n"
      "img { width: 100%%; border: 1px solid #888 }</style>\n<h1>%s</h1>\n%s</html>\n",
      title, title, page->str);

  return g_file_set_contents(path, html, -1, NULL) ? path : (g_free(path), NULL);
}
