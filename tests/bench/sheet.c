/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writing an A4 sheet: our bands against the same page drawn on one cairo image surface and written by
 * cairo_surface_write_to_png_stream(), in the same run; then the most memory that each takes at 1200 dpi.
 * bench-sheet SCHEME-FILE, or nothing for a scheme made in code. Prints the raw samples. */
#define _DEFAULT_SOURCE /* wait4() */

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "scheme/scheme-file.h"
#include "sheet/coast.h"
#include "sheet/png-writer.h"
#include "sheet/sheet.h"

#define SAMPLES 5

typedef struct {
  SpvSheets *sheets;
  guint index;
  gsize bytes; /* written */
} Page;

static void
draw_page(cairo_t *cr, gpointer data) {
  const Page *page = data;

  spv_sheets_draw(page->sheets, page->index, cr);
}

static gboolean
count_bytes(const void *bytes, gsize length, gpointer data, GError **error) {
  (void) bytes, (void) error;
  ((Page *) data)->bytes += length;
  return TRUE;
}

static cairo_status_t
count_stream(void *data, const unsigned char *bytes, unsigned int length) {
  (void) bytes;
  ((Page *) data)->bytes += length;
  return CAIRO_STATUS_SUCCESS;
}

static void
write_in_bands(Page *page, int dpi) {
  const SpvPaper *paper = spv_sheets_paper(page->sheets);
  SpvPngPage png = { paper->width, paper->height, dpi, NULL, NULL, NULL };

  if (!spv_png_write(&png, draw_page, page, count_bytes, page, NULL, NULL, NULL, NULL))
    exit(1);
}

static void
write_on_one_surface(Page *page, int dpi) {
  const SpvPaper *paper = spv_sheets_paper(page->sheets);
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, spv_png_pixels(paper->width, dpi),
                                                        spv_png_pixels(paper->height, dpi));
  cairo_t *cr = cairo_create(surface);

  cairo_scale(cr, dpi / 25.4, dpi / 25.4);
  draw_page(cr, page);
  cairo_destroy(cr);
  if (cairo_surface_write_to_png_stream(surface, count_stream, page) != CAIRO_STATUS_SUCCESS)
    exit(1);
  cairo_surface_destroy(surface);
}

static int
compare(const void *a, const void *b) {
  double difference = *(const double *) a - *(const double *) b;

  return (difference > 0) - (difference < 0);
}

static double
median(double *samples) {
  qsort(samples, SAMPLES, sizeof *samples, compare);
  return samples[SAMPLES / 2];
}

/* Milliseconds that WRITE takes for the page. */
static double
sample(Page *page, void (*write)(Page *page, int dpi), int dpi) {
  gint64 start = g_get_monotonic_time();

  page->bytes = 0;
  write(page, dpi);
  return (double) (g_get_monotonic_time() - start) / 1000;
}

/* The most memory of a child process that does nothing but WRITE, kB. */
static long
peak_kb(Page *page, void (*write)(Page *page, int dpi), int dpi) {
  struct rusage usage;
  pid_t child = fork();

  if (child == 0) {
    write(page, dpi);
    _exit(0);
  }
  return child > 0 && wait4(child, NULL, 0, &usage) == child ? usage.ru_maxrss : -1;
}

static void
compare_times(Page *page) {
  double bands[SAMPLES], whole[SAMPLES];

  for (int i = 0; i < SAMPLES; i++) {
    whole[i] = sample(page, write_on_one_surface, 600);
    bands[i] = sample(page, write_in_bands, 600);
    printf("sheet %u, 600 dpi: one surface %.0f ms, bands %.0f ms (%zu bytes)\n", page->index + 1, whole[i],
           bands[i], page->bytes);
  }
  double one = median(whole), ours = median(bands);
  printf("median: one surface %.0f ms, bands %.0f ms, ratio %.3f (goal: at most 0.333)\n", one, ours,
         ours / one);
}

int
main(int argc, char **argv) {
  g_autoptr(GError) error = NULL;
  SpvSheetOptions options = spv_sheet_options_preset();
  g_autoptr(SpvScheme) scheme = argc > 1 ? spv_scheme_load(argv[1], &error) : coast_wardens();
  g_autoptr(SpvSheets) sheets = scheme != NULL ? spv_sheets_new(scheme, &options, NULL, &error) : NULL;

  if (sheets == NULL) {
    fprintf(stderr, "%s\n", error->message);
    return 1;
  }
  Page page = { sheets, 0, 0 };
  /* Memory first: a child starts with what its parent held. */
  printf("1200 dpi, most memory: bands %.1f MB (goal: at most 40 MB)",
         (double) peak_kb(&page, write_in_bands, 1200) / 1024);
  printf(", one surface %.1f MB\n", (double) peak_kb(&page, write_on_one_surface, 1200) / 1024);
  for (page.index = 0; page.index < MIN(spv_sheets_count(sheets), 2); page.index++)
    compare_times(&page);
  return 0;
}
