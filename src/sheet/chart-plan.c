/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/chart-plan.h"

#include <math.h>

#include "sheet/wording.h"

#define WORDS_LEAST 23.2 /* room for a plate's word, at least */
#define WORDS_APART 1.8
#define PLATES_APART 4.0 /* between a plate and what stands beside the one before */
#define LINES_MOST 2u
#define CELL_FOOT 3.0 /* white under the words */
#define HEADING_ABOVE 2.4
#define HEADING_HEIGHT 6.4
#define STRETCH_MOST 3.4 /* how much lower each row may stand so that a page is full */

typedef struct {
  SpvChartPlan *plan;
  cairo_t *measuring;
  SpvBox room;
  guint n_columns;
  double width, pitch; /* of what belongs to a plate, and from one plate to the next */
  double y;            /* where the next row goes */
  guint page_start;    /* the first item on the page at hand */
} Flow;

static void
item_free(gpointer data) {
  SpvChartItem *item = data;

  g_strfreev(item->lines);
  g_free(item);
}

static SpvChartItem *
add_item(Flow *flow, SpvSampleGroup group, SpvBox box) {
  SpvChartItem *item = g_new0(SpvChartItem, 1);

  item->group = group;
  item->page = flow->plan->n_pages - 1;
  item->box = box;
  g_ptr_array_add(flow->plan->items, item);
  return item;
}

/* What is left at the foot of the page at hand goes between its rows, where that is not much. */
static void
fill_page(Flow *flow) {
  GPtrArray *items = flow->plan->items;
  guint n_rows = 0;
  double last = -INFINITY;

  for (guint i = flow->page_start; i < items->len; i++) {
    const SpvChartItem *item = g_ptr_array_index(items, i);
    if (item->sample != NULL && item->box.y0 > last)
      n_rows++;
    last = MAX(last, item->box.y0);
  }
  double stretch = n_rows > 1 ? MIN((flow->room.y1 - flow->y + CELL_FOOT) / (n_rows - 1), STRETCH_MOST) : 0;
  double down = -stretch;
  last = -INFINITY;
  for (guint i = flow->page_start; i < items->len; i++) {
    SpvChartItem *item = g_ptr_array_index(items, i);
    double y = item->box.y0;
    /* A heading moves with the row under it. */
    gboolean heading_before = i > flow->page_start &&
                              ((SpvChartItem *) g_ptr_array_index(items, i - 1))->sample == NULL;
    if (y > last && !heading_before)
      down += stretch;
    last = y;
    item->box.y0 += down;
    item->box.y1 += down;
  }
}

static void
new_page(Flow *flow) {
  if (flow->plan->n_pages > 0)
    fill_page(flow);
  flow->plan->n_pages++;
  flow->page_start = flow->plan->items->len;
  flow->y = flow->room.y0;
}

static double
row_height(char ***lines, guint n, gboolean charges) {
  guint most = 1;

  for (guint i = 0; i < n; i++)
    most = MAX(most, g_strv_length(lines[i]));
  return SPV_SAMPLE_HEIGHT + SPV_CHART_WORD_BELOW + (most - 1 + (charges ? 1 : 0)) * SPV_LINE_PITCH +
         CELL_FOOT;
}

static void
add_heading(Flow *flow, SpvSampleGroup group, gboolean continued) {
  flow->y += flow->y > flow->room.y0 ? HEADING_ABOVE : 0;
  SpvBox box = { flow->room.x0, flow->y, flow->room.x1, flow->y + HEADING_HEIGHT };
  add_item(flow, group, box)->continued = continued;
  flow->y += HEADING_HEIGHT;
}

/* The N samples from FIRST on, all of one group, which begins with them where BEGINS. */
static void
add_row(Flow *flow, SpvSample *const *first, guint n, gboolean begins) {
  g_autofree char ***lines = g_new0(char **, n);

  for (guint i = 0; i < n; i++) {
    g_autofree char *capital = spv_words_capitalise(first[i]->word);
    lines[i] = spv_words_wrap(flow->measuring, capital, SPV_WORDS_BODY, FALSE, flow->width, LINES_MOST);
  }
  double height = row_height(lines, n, first[0]->smallest > 0);
  double heading = begins ? HEADING_HEIGHT + (flow->y > flow->room.y0 ? HEADING_ABOVE : 0) : 0;
  gboolean breaks = flow->y + heading + height - CELL_FOOT > flow->room.y1;
  if (breaks)
    new_page(flow);
  if (begins || breaks)
    add_heading(flow, first[0]->group, !begins);
  for (guint i = 0; i < n; i++) {
    double x = flow->room.x0 + i * flow->pitch;
    SpvBox box = { x, flow->y, x + flow->width, flow->y + height - CELL_FOOT };
    SpvChartItem *item = add_item(flow, first[i]->group, box);
    item->sample = first[i];
    item->lines = lines[i];
  }
  flow->y += height;
}

/* The width of the greatest of the smallest charges that are drawn. */
static double
beside_plates(const SpvSamples *samples) {
  double most = 0;

  for (guint i = 0; i < samples->samples->len; i++) {
    const SpvSample *sample = g_ptr_array_index(samples->samples, i);
    if (sample->smallest <= SPV_CHART_BESIDE_MOST)
      most = MAX(most, sample->smallest);
  }
  return most;
}

/* The last column ends at the room's edge with what belongs to its plate. */
static void
set_columns(Flow *flow) {
  double plate = SPV_SAMPLE_WIDTH + (flow->plan->beside > 0 ? SPV_CHART_BESIDE_GAP + flow->plan->beside : 0);
  double least = MAX(WORDS_LEAST + WORDS_APART, plate + PLATES_APART);

  flow->width = MAX(WORDS_LEAST, plate);
  double left = spv_box_width(flow->room) - flow->width;
  flow->n_columns = (guint) MAX(floor(left / least), 1) + 1;
  flow->pitch = left / (flow->n_columns - 1);
}

SpvChartPlan *
spv_chart_plan_new(cairo_t *measuring, const SpvSamples *samples, SpvBox room) {
  SpvChartPlan *plan = g_new0(SpvChartPlan, 1);
  Flow flow = { .plan = plan, .measuring = measuring, .room = room };
  SpvSample **all = (SpvSample **) samples->samples->pdata;
  guint n = samples->samples->len;

  plan->items = g_ptr_array_new_with_free_func(item_free);
  plan->beside = beside_plates(samples);
  set_columns(&flow);
  new_page(&flow);
  for (guint i = 0, row; i < n; i += row) {
    for (row = 1; row < flow.n_columns && i + row < n && all[i + row]->group == all[i]->group;)
      row++;
    add_row(&flow, all + i, row, i == 0 || all[i - 1]->group != all[i]->group);
  }
  return plan;
}

void
spv_chart_plan_free(SpvChartPlan *plan) {
  g_ptr_array_unref(plan->items);
  g_free(plan);
}
