/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where everything on the sampler stands: plates in rows under their headings, page by page. */
#pragma once

#include <cairo.h>

#include "sheet/chart-samples.h"

/* A plate with its words, or a heading. Millimetres on the page. */
typedef struct {
  const SpvSample *sample; /* NULL for a heading */
  SpvSampleGroup group;
  gboolean continued; /* a heading that says again what was begun on the page before */
  guint page;
  SpvBox box;   /* all that it takes up; a plate stands at its upper left corner */
  char **lines; /* the plate's word */
} SpvChartItem;

typedef struct {
  GPtrArray *items; /* SpvChartItem, in the order of the samples */
  guint n_pages;
  double beside; /* how wide the place beside each plate is where its charge stands at its smallest */
} SpvChartPlan;

/* SAMPLES in ROOM, which every page has, at least as wide as three plates and as high as one. MEASURING
 * serves to measure words by. */
SpvChartPlan *spv_chart_plan_new(cairo_t *measuring, const SpvSamples *samples, SpvBox room);
void spv_chart_plan_free(SpvChartPlan *plan);

/* From a plate's foot to the first line of its word, and from a heading's top to its baseline. */
#define SPV_CHART_WORD_BELOW 3.6
#define SPV_CHART_HEADING_BASELINE 3.2
/* Between a plate and the place beside it. */
#define SPV_CHART_BESIDE_GAP 1.4
/* A charge whose smallest size is greater is not drawn beside its plate. */
#define SPV_CHART_BESIDE_MOST SPV_SAMPLE_WIDTH

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvChartPlan, spv_chart_plan_free)
