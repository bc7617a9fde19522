/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A page as a PNG, drawn and written in bands, so that memory does not grow with the page's height. cairo's
 * own writer needs the whole page at once and stores no pHYs. */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

/* Takes the file's bytes, in order. FALSE, with ERROR set, stops the writing. */
typedef gboolean (*SpvWriteFunc)(const void *bytes, gsize length, gpointer data, GError **error);

/* Draws the page, in mm; called once a band with the context clipped to it. */
typedef void (*SpvPageFunc)(cairo_t *cr, gpointer data);

typedef struct {
  double width, height; /* mm */
  int dpi;
  const char *title, *software, *description; /* text chunks, UTF-8; NULL to leave out */
} SpvPngPage;

/* Pixels of MM at DPI, rounded to the nearest. */
int spv_png_pixels(double mm, int dpi);

/* Writes PAGE as an 8-bit RGB PNG with pHYs, sRGB and text chunks. */
gboolean spv_png_write(const SpvPngPage *page, SpvPageFunc draw, gpointer draw_data, SpvWriteFunc write,
                       gpointer write_data, GCancellable *cancellable,
                       void (*progress)(double fraction, gpointer data), gpointer progress_data,
                       GError **error);
