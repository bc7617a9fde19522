/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/png-writer.h"

#include <math.h>
#include <png.h>
#include <setjmp.h>

#include <glib/gi18n-lib.h>

#include "sheet/sheet.h"

/* Rows drawn at a time: enough to spread what a drawing costs over many rows, and 10 MB at 1200 dpi on A4. */
#define BAND_ROWS 256

/* zlib's fast end: a sheet is mostly white, so a higher level costs time and saves little. */
#define COMPRESSION_LEVEL 3

/* Bytes handed on at a time. */
#define CHUNK_BYTES 65536

typedef struct {
  const SpvPngPage *page;
  int width, height; /* px */
  SpvPageFunc draw;
  gpointer draw_data;
  SpvWriteFunc write;
  gpointer write_data;
  GCancellable *cancellable;
  void (*progress)(double fraction, gpointer data);
  gpointer progress_data;
  cairo_surface_t *band;
  guint8 *row; /* one row as the file holds it */
  png_structp png;
  png_infop info;
  GError *error; /* the first one; libpng's way out leads past here */
} Writer;

int
spv_png_pixels(double mm, int dpi) {
  return (int) lround(mm * dpi / 25.4);
}

static void
take_bytes(png_structp png, png_bytep bytes, png_size_t length) {
  Writer *writer = png_get_io_ptr(png);

  if (!writer->write(bytes, length, writer->write_data, &writer->error))
    png_error(png, "the bytes were not taken");
}

static void
flush_bytes(png_structp png) {
  (void) png;
}

static G_GNUC_NORETURN void
fail(png_structp png, png_const_charp message) {
  Writer *writer = png_get_error_ptr(png);

  if (writer->error == NULL)
    g_set_error(&writer->error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE,
                _("The PNG could not be written: %s. Try a lower resolution."), message);
  png_longjmp(png, 1);
}

static void
ignore_warning(png_structp png, png_const_charp message) {
  (void) png;
  (void) message;
}

/* TEXT in Latin-1, which a plain text chunk holds; NULL when it has other characters. */
static char *
to_latin1(const char *text) {
  GString *latin1 = g_string_new(NULL);

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char(at)) {
    gunichar c = g_utf8_get_char(at);
    gboolean printable = c == '\n' || (c >= 0x20 && c < 0x7f) || (c >= 0xa0 && c <= 0xff);
    if (!printable) {
      g_string_free(latin1, TRUE);
      return NULL;
    }
    g_string_append_c(latin1, (char) c);
  }
  return g_string_free(latin1, FALSE);
}

/* libpng copies what it needs. */
static void
add_text(Writer *writer, const char *keyword, const char *words) {
  if (words == NULL)
    return;

  char *utf8 = g_utf8_make_valid(words, -1);
  char *latin1 = to_latin1(utf8);
  char key[16], language[1] = "", translated[1] = "";
  png_text text = { 0 };

  g_strlcpy(key, keyword, sizeof key);
  text.key = key;
  if (latin1 != NULL) {
    text.compression = PNG_TEXT_COMPRESSION_NONE;
    text.text = latin1;
    text.text_length = strlen(latin1);
  } else {
    text.compression = PNG_ITXT_COMPRESSION_NONE;
    text.text = utf8;
    text.itxt_length = strlen(utf8);
    text.lang = language;
    text.lang_key = translated;
  }
  png_set_text(writer->png, writer->info, &text, 1);
  g_free(latin1);
  g_free(utf8);
}

static void
write_head(Writer *writer) {
  png_structp png = writer->png;
  png_infop info = writer->info;
  png_uint_32 per_metre = (png_uint_32) lround(writer->page->dpi / 0.0254);

  png_set_write_fn(png, writer, take_bytes, flush_bytes);
  png_set_compression_buffer_size(png, CHUNK_BYTES);
  png_set_compression_level(png, COMPRESSION_LEVEL);
  png_set_filter(png, PNG_FILTER_TYPE_BASE, PNG_FILTER_SUB);
  png_set_IHDR(png, info, (png_uint_32) writer->width, (png_uint_32) writer->height, 8, PNG_COLOR_TYPE_RGB,
               PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  png_set_sRGB(png, info, PNG_sRGB_INTENT_PERCEPTUAL);
  png_set_pHYs(png, info, per_metre, per_metre, PNG_RESOLUTION_METER);
  add_text(writer, "Title", writer->page->title);
  add_text(writer, "Software", writer->page->software);
  add_text(writer, "Description", writer->page->description);
  png_write_info(png, info);
}

/* Draws rows FIRST to FIRST + ROWS - 1 of the page into the band. */
static void
draw_band(Writer *writer, int first, int rows) {
  cairo_t *cr = cairo_create(writer->band);

  cairo_rectangle(cr, 0, 0, writer->width, rows);
  cairo_clip(cr);
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_paint(cr);
  cairo_translate(cr, 0, -first);
  cairo_scale(cr, writer->page->dpi / 25.4, writer->page->dpi / 25.4);
  writer->draw(cr, writer->draw_data);
  if (cairo_status(cr) != CAIRO_STATUS_SUCCESS)
    g_set_error(&writer->error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE, _("The page could not be drawn: %s"),
                cairo_status_to_string(cairo_status(cr)));
  cairo_destroy(cr);
  cairo_surface_flush(writer->band);
}

static void
write_row(Writer *writer, const guint32 *pixels) {
  guint8 *out = writer->row;

  for (int x = 0; x < writer->width; x++) {
    guint32 pixel = pixels[x];
    *out++ = (guint8) (pixel >> 16);
    *out++ = (guint8) (pixel >> 8);
    *out++ = (guint8) pixel;
  }
  png_write_row(writer->png, writer->row);
}

static gboolean
write_band(Writer *writer, int first) {
  int rows = MIN(BAND_ROWS, writer->height - first);

  if (g_cancellable_set_error_if_cancelled(writer->cancellable, &writer->error))
    return FALSE;
  draw_band(writer, first, rows);
  if (writer->error != NULL)
    return FALSE;

  const guint8 *data = cairo_image_surface_get_data(writer->band);
  int stride = cairo_image_surface_get_stride(writer->band);
  for (int y = 0; y < rows; y++)
    write_row(writer, (const guint32 *) (const void *) (data + (gsize) y * (gsize) stride));
  if (writer->progress != NULL)
    writer->progress((double) (first + rows) / writer->height, writer->progress_data);
  return TRUE;
}

/* Everything that libpng may jump out of. What has to be freed hangs on WRITER, never on this frame. */
static gboolean
write_all(Writer *writer) {
  if (setjmp(png_jmpbuf(writer->png)))
    return FALSE;
  write_head(writer);
  for (int first = 0; first < writer->height; first += BAND_ROWS)
    if (!write_band(writer, first))
      return FALSE;
  png_write_end(writer->png, writer->info);
  return TRUE;
}

static gboolean
open_writer(Writer *writer) {
  writer->png = png_create_write_struct(PNG_LIBPNG_VER_STRING, writer, fail, ignore_warning);
  if (writer->png != NULL)
    writer->info = png_create_info_struct(writer->png);
  writer->band = cairo_image_surface_create(CAIRO_FORMAT_RGB24, writer->width,
                                            MIN(BAND_ROWS, writer->height));
  writer->row = g_try_malloc_n((gsize) writer->width, 3);
  if (writer->info != NULL && writer->row != NULL &&
      cairo_surface_status(writer->band) == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error(&writer->error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE,
              _("There is no room for a page %d pixels wide. Try a lower resolution."), writer->width);
  return FALSE;
}

static void
close_writer(Writer *writer) {
  png_destroy_write_struct(&writer->png, &writer->info);
  cairo_surface_destroy(writer->band);
  g_free(writer->row);
}

gboolean
spv_png_write(const SpvPngPage *page, SpvPageFunc draw, gpointer draw_data, SpvWriteFunc write,
              gpointer write_data, GCancellable *cancellable,
              void (*progress)(double fraction, gpointer data), gpointer progress_data, GError **error) {
  Writer writer = {
    .page = page,
    .width = MAX(spv_png_pixels(page->width, page->dpi), 1),
    .height = MAX(spv_png_pixels(page->height, page->dpi), 1),
    .draw = draw,
    .draw_data = draw_data,
    .write = write,
    .write_data = write_data,
    .cancellable = cancellable,
    .progress = progress,
    .progress_data = progress_data,
  };
  gboolean written = open_writer(&writer) && write_all(&writer);

  close_writer(&writer);
  if (!written)
    g_propagate_error(error, writer.error);
  return written;
}
