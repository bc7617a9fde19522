/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The banded PNG writer: what stands in the file, no seam between bands, and no way to fail quietly. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include <math.h>
#include <pango/pangocairo.h>
#include <stdio.h>
#include <sys/wait.h>
#include <unistd.h>

#include "png-chunks.h"
#include "sheet/png-writer.h"
#include "sheet/sheet.h"

/* A writer that takes ROOM bytes and then reports a full disk. */
typedef struct {
  GByteArray *bytes;
  gsize room;
  guint calls_after_failure;
  gboolean failed;
} Sink;

static gboolean
sink_take(const void *bytes, gsize length, gpointer data, GError **error) {
  Sink *sink = data;

  if (sink->failed)
    sink->calls_after_failure++;
  if (sink->bytes->len + length > sink->room) {
    sink->failed = TRUE;
    g_set_error_literal(error, G_IO_ERROR, G_IO_ERROR_NO_SPACE, "the disk is full");
    return FALSE;
  }
  g_byte_array_append(sink->bytes, bytes, (guint) length);
  return TRUE;
}

/* Slanted lines of every width, circles, a curve and words: what would show a seam. */
static void
draw_scene(cairo_t *cr, gpointer data) {
  (void) data;
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_paint(cr);
  for (int i = 0; i < 24; i++) {
    cairo_set_source_rgb(cr, i / 24.0, 0.2, 1 - i / 24.0);
    cairo_set_line_width(cr, 0.05 + i * 0.03);
    cairo_move_to(cr, i * 1.7, 0.3 * i);
    cairo_line_to(cr, 40 - i * 1.1, 60 - 0.7 * i);
    cairo_stroke(cr);
    cairo_arc(cr, 20, i * 2.63, 1.0 + i * 0.31, 0, 2 * G_PI);
    cairo_stroke(cr);
  }
  cairo_move_to(cr, 1, 1);
  cairo_curve_to(cr, 60, 20, -20, 40, 39, 59);
  cairo_set_source_rgba(cr, 0, 0.4, 0.2, 0.6);
  cairo_fill(cr);

  g_autoptr(PangoLayout) layout = pango_cairo_create_layout(cr);
  PangoFontDescription *font = pango_font_description_from_string("DejaVu Sans 3");
  pango_layout_set_font_description(layout, font);
  pango_font_description_free(font);
  pango_layout_set_text(layout, "Saltmarsh Wardens, kneepad, dexter", -1);
  cairo_set_source_rgb(cr, 0, 0, 0);
  for (int i = 0; i < 20; i++) {
    cairo_move_to(cr, 1, i * 3.1);
    pango_cairo_show_layout(cr, layout);
  }
}

static const SpvPngPage scene_page = { 40, 60, 300, "Saltmarsh Wardens", "Spolvero", "1:1, print at 100 %" };

static GByteArray *
write_scene(const SpvPngPage *page) {
  Sink sink = { g_byte_array_new(), G_MAXSIZE, 0, FALSE };
  g_autoptr(GError) error = NULL;

  assert_true(spv_png_write(page, draw_scene, NULL, sink_take, &sink, NULL, NULL, NULL, &error));
  assert_null(error);
  return sink.bytes;
}

typedef struct {
  const GByteArray *bytes;
  gsize at;
} Source;

static cairo_status_t
source_read(void *data, unsigned char *out, unsigned int length) {
  Source *source = data;

  if (source->bytes->len - source->at < length)
    return CAIRO_STATUS_READ_ERROR;
  memcpy(out, source->bytes->data + source->at, length);
  source->at += length;
  return CAIRO_STATUS_SUCCESS;
}

static void
bands_leave_no_seam(void **state) {
  g_autoptr(GByteArray) png = write_scene(&scene_page);
  Source source = { png, 0 };
  cairo_surface_t *read = cairo_image_surface_create_from_png_stream(source_read, &source);
  int width = cairo_image_surface_get_width(read), height = cairo_image_surface_get_height(read);
  cairo_surface_t *whole = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create(whole);

  (void) state;
  assert_int_equal(width, 472); /* 40 mm at 300 dpi is 472.4 px */
  assert_int_equal(height, 709);
  cairo_scale(cr, 300 / 25.4, 300 / 25.4);
  draw_scene(cr, NULL);
  cairo_destroy(cr);
  cairo_surface_flush(whole);
  for (int y = 0; y < height; y++) {
    const guint32 *a = (const void *) (cairo_image_surface_get_data(read) +
                                       (gsize) y * cairo_image_surface_get_stride(read));
    const guint32 *b = (const void *) (cairo_image_surface_get_data(whole) +
                                       (gsize) y * cairo_image_surface_get_stride(whole));
    for (int x = 0; x < width; x++)
      if ((a[x] & 0xffffff) != (b[x] & 0xffffff))
        fail_msg("pixel %d, %d is %06x in bands and %06x on one surface", x, y, a[x] & 0xffffff,
                 b[x] & 0xffffff);
  }
  cairo_surface_destroy(read);
  cairo_surface_destroy(whole);
}

/* Counts from tests/reference/README.md: "px per metre", PNG specification. */
static void
phys_tells_the_resolution(void **state) {
  static const struct {
    int dpi;
    guint32 per_metre;
  } rows[] = { { 150, 5906 }, { 300, 11811 }, { 600, 23622 }, { 1200, 47244 } };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
    SpvPngPage page = { 12, 9, rows[i].dpi, NULL, NULL, NULL };
    g_autoptr(GByteArray) png = write_scene(&page);
    guint32 length = 0;
    const guint8 *phys = png_chunk(png, "pHYs", 0, &length);
    assert_non_null(phys);
    assert_int_equal(length, 9);
    assert_int_equal(png_number(phys), rows[i].per_metre);
    assert_int_equal(png_number(phys + 4), rows[i].per_metre);
    assert_int_equal(phys[8], 1);
  }
}

static void
the_head_says_rgb_and_srgb_and_no_time(void **state) {
  g_autoptr(GByteArray) png = write_scene(&scene_page);
  guint32 length = 0;
  const guint8 *head = png_chunk(png, "IHDR", 0, &length);

  (void) state;
  assert_non_null(head);
  assert_int_equal(head[8], 8);  /* bits a channel */
  assert_int_equal(head[9], 2);  /* RGB */
  assert_int_equal(head[12], 0); /* not interlaced */
  const guint8 *srgb = png_chunk(png, "sRGB", 0, &length);
  assert_non_null(srgb);
  assert_int_equal(srgb[0], 0); /* perceptual */
  assert_null(png_chunk(png, "tIME", 0, &length));
}

static void
plain_words_go_in_a_text_chunk(void **state) {
  SpvPngPage page = scene_page;
  page.title = "Garde d\u2019\u00e9t\u00e9"; /* the apostrophe isn't Latin-1 */
  page.description = "\u00c9cu 1:1";
  g_autoptr(GByteArray) png = write_scene(&page);
  g_autofree char *software = png_text(png, "tEXt", "Software");
  g_autofree char *description = png_text(png, "tEXt", "Description");
  g_autofree char *title = png_text(png, "iTXt", "Title");

  (void) state;
  assert_string_equal(software, "Spolvero");
  assert_string_equal(description, "\xc9"
                                   "cu 1:1");
  assert_string_equal(title, page.title);
  assert_null(png_text(png, "tEXt", "Title"));
}

static void
broken_words_do_not_break_the_file(void **state) {
  SpvPngPage page = scene_page;
  page.title = "Heron\xff Ferry";
  g_autoptr(GByteArray) png = write_scene(&page);
  g_autofree char *title = png_text(png, "iTXt", "Title");

  (void) state;
  assert_true(g_utf8_validate(title, -1, NULL));
}

static void
the_same_page_gives_the_same_bytes(void **state) {
  g_autoptr(GByteArray) a = write_scene(&scene_page);
  g_autoptr(GByteArray) b = write_scene(&scene_page);

  (void) state;
  assert_int_equal(a->len, b->len);
  assert_memory_equal(a->data, b->data, a->len);
}

static void
a_full_disk_at_any_byte_is_reported_and_ends_the_writing(void **state) {
  SpvPngPage page = { 12, 30, 300, "Heron Ferry Guild", "Spolvero", "1:1" };
  g_autoptr(GByteArray) whole = write_scene(&page);

  (void) state;
  for (gsize room = 0; room < whole->len; room += 1 + room / 40) {
    Sink sink = { g_byte_array_new(), room, 0, FALSE };
    g_autoptr(GError) error = NULL;
    assert_false(spv_png_write(&page, draw_scene, NULL, sink_take, &sink, NULL, NULL, NULL, &error));
    assert_true(g_error_matches(error, G_IO_ERROR, G_IO_ERROR_NO_SPACE));
    assert_int_equal(sink.calls_after_failure, 0);
    g_byte_array_unref(sink.bytes);
  }
}

typedef struct {
  GCancellable *cancellable;
  guint calls, cancel_at;
  double last;
} Watch;

static void
watch_progress(double fraction, gpointer data) {
  Watch *watch = data;

  assert_true(fraction > watch->last && fraction <= 1);
  watch->last = fraction;
  if (++watch->calls == watch->cancel_at)
    g_cancellable_cancel(watch->cancellable);
}

static void
progress_rises_to_one(void **state) {
  Sink sink = { g_byte_array_new(), G_MAXSIZE, 0, FALSE };
  Watch watch = { NULL, 0, 0, 0 };

  (void) state;
  assert_true(
      spv_png_write(&scene_page, draw_scene, NULL, sink_take, &sink, NULL, watch_progress, &watch, NULL));
  assert_int_equal(watch.calls, 3); /* 709 rows in bands of 256 */
  assert_true(fabs(watch.last - 1) < 1e-12);
  g_byte_array_unref(sink.bytes);
}

static void
a_cancel_ends_the_writing_at_the_next_band(void **state) {
  (void) state;
  for (guint at = 1; at <= 2; at++) {
    g_autoptr(GCancellable) cancellable = g_cancellable_new();
    g_autoptr(GError) error = NULL;
    Sink sink = { g_byte_array_new(), G_MAXSIZE, 0, FALSE };
    Watch watch = { cancellable, 0, at, 0 };
    assert_false(spv_png_write(&scene_page, draw_scene, NULL, sink_take, &sink, cancellable, watch_progress,
                               &watch, &error));
    assert_true(g_error_matches(error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
    assert_int_equal(watch.calls, at);
    g_byte_array_unref(sink.bytes);
  }
}

static void
draw_broken(cairo_t *cr, gpointer data) {
  cairo_matrix_t flat = { 0 };

  (void) data;
  cairo_transform(cr, &flat);
}

static void
a_drawing_that_fails_fails_the_file(void **state) {
  Sink sink = { g_byte_array_new(), G_MAXSIZE, 0, FALSE };
  g_autoptr(GError) error = NULL;

  (void) state;
  assert_false(spv_png_write(&scene_page, draw_broken, NULL, sink_take, &sink, NULL, NULL, NULL, &error));
  assert_true(g_error_matches(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE));
  g_byte_array_unref(sink.bytes);
}

static void
a_page_beyond_all_bounds_is_refused(void **state) {
  SpvPngPage page = { 1e6, 10, 2400, NULL, NULL, NULL };
  Sink sink = { g_byte_array_new(), G_MAXSIZE, 0, FALSE };
  g_autoptr(GError) error = NULL;

  (void) state;
  assert_false(spv_png_write(&page, draw_scene, NULL, sink_take, &sink, NULL, NULL, NULL, &error));
  assert_true(g_error_matches(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE));
  g_byte_array_unref(sink.bytes);
}

static gboolean
drop_bytes(const void *bytes, gsize length, gpointer data, GError **error) {
  (void) bytes, (void) length, (void) data, (void) error;
  return TRUE;
}

static void
draw_white(cairo_t *cr, gpointer data) {
  (void) data;
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_paint(cr);
}

/* The most memory, kB, that a child process held while it wrote a page HEIGHT mm high (Linux: VmHWM). */
static long
peak_kb(double height) {
  int ends[2];
  long peak = 0;

  assert_int_equal(pipe(ends), 0);
  pid_t child = fork();
  assert_true(child >= 0);
  if (child == 0) {
    SpvPngPage page = { 100, height, 300, NULL, NULL, NULL };
    g_autofree char *status = NULL;
    long kb = -1;
    if (spv_png_write(&page, draw_white, NULL, drop_bytes, NULL, NULL, NULL, NULL, NULL) &&
        g_file_get_contents("/proc/self/status", &status, NULL, NULL)) {
      const char *line = strstr(status, "VmHWM:");
      kb = line != NULL ? strtol(line + 6, NULL, 10) : -1;
    }
    _exit(write(ends[1], &kb, sizeof kb) == (ssize_t) sizeof kb ? 0 : 1);
  }
  assert_int_equal(read(ends[0], &peak, sizeof peak), sizeof peak);
  assert_int_equal(waitpid(child, NULL, 0), child);
  close(ends[0]);
  close(ends[1]);
  assert_true(peak > 0);
  return peak;
}

/* On one surface the taller page would take 56 MB more: 1181 x 11811 px of 4 bytes. */
static void
memory_does_not_grow_with_the_page(void **state) {
  (void) state;
  assert_true(peak_kb(1000) - peak_kb(50) < 8 * 1024);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(bands_leave_no_seam),
    cmocka_unit_test(phys_tells_the_resolution),
    cmocka_unit_test(the_head_says_rgb_and_srgb_and_no_time),
    cmocka_unit_test(plain_words_go_in_a_text_chunk),
    cmocka_unit_test(broken_words_do_not_break_the_file),
    cmocka_unit_test(the_same_page_gives_the_same_bytes),
    cmocka_unit_test(a_full_disk_at_any_byte_is_reported_and_ends_the_writing),
    cmocka_unit_test(progress_rises_to_one),
    cmocka_unit_test(a_cancel_ends_the_writing_at_the_next_band),
    cmocka_unit_test(a_drawing_that_fails_fails_the_file),
    cmocka_unit_test(a_page_beyond_all_bounds_is_refused),
    cmocka_unit_test(memory_does_not_grow_with_the_page),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
