/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sampler: every line of partition, division, varied field, ordinary, border, charge, arrangement and fur
 * that the program knows, each on a small plate with its word, to hang over the bench. It goes over the
 * tables of kinds, so what is added there comes to be on it. */
#pragma once

#include "sheet/document.h"

typedef struct {
  const SpvPaper *paper;
  gboolean hatch;     /* hatch instead of colour */
  double finest_line; /* mm: for this the smallest sizes of charges are said */
} SpvChartOptions;

typedef struct _SpvChart SpvChart;

/* A4, in colour, for SPV_FINEST_LINE_PRESET. */
SpvChartOptions spv_chart_options_preset(void);

SpvChart *spv_chart_new(const SpvChartOptions *options);
void spv_chart_free(SpvChart *chart);

guint spv_chart_count(const SpvChart *chart);
/* The samples as a scheme, a panel each: what is drawn is what the program would draw of it. */
const SpvScheme *spv_chart_scheme(const SpvChart *chart);

/* Draws page INDEX in page millimetres. */
void spv_chart_draw(const SpvChart *chart, guint index, cairo_t *cr);

/* Writes the chart at PATH: a PDF whole; pages of PNG and SVG as PATH with -1, -2 … before its suffix. The
 * suffix names the format; fails (SPV_SHEET_ERROR_OPTION) where it names none. As spv_sheets_export() in all
 * else. */
GPtrArray *spv_chart_export(const SpvChart *chart, const char *path, int dpi, GCancellable *cancellable,
                            void (*progress)(double fraction, gpointer data), gpointer data, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvChart, spv_chart_free)
