/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The export of the sampler as the window does it, on a thread of its own. No widgets, so it is tested
 * without a display. */
#pragma once

#include "scheme/scheme.h"
#include "sheet/chart.h"
#include "window/export.h"

/* The paper and the hatch of CHOICES, and the finest line of SCHEME; its preset where SCHEME is NULL. */
SpvChartOptions spv_chart_export_options(const SpvExportChoices *choices, const SpvScheme *scheme);

/* NAME as the file to write: it names a format by its suffix, or gets that of a PDF. Free with g_free(). */
char *spv_chart_export_name(const char *name);
/* The first file that writing PATH writes: pages of PNG and SVG are numbered. Free with g_free(). */
char *spv_chart_export_first(const char *path);

typedef struct {
  GPtrArray *paths; /* char*, what was written */
  guint n_pages;    /* a PDF holds several in one file */
} SpvChartExportResult;
void spv_chart_export_result_free(SpvChartExportResult *result);

/* Writes the sampler at PATH, with DPI dots an inch in a PNG. CALLBACK is called on this thread when that has
 * ended; CANCELLABLE may be NULL. */
void spv_chart_export_async(const SpvChartOptions *options, const char *path, int dpi,
                            GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data);
/* NULL with ERROR set where it could not be written. */
SpvChartExportResult *spv_chart_export_finish(GAsyncResult *result, GError **error);
/* "4 pages of the sampler written to ~/sampler.pdf." Free with g_free(). */
char *spv_chart_export_words(const SpvChartExportResult *result);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvChartExportResult, spv_chart_export_result_free)
