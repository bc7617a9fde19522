/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/card-plan.h"

#include "sheet/figure.h"
#include "sheet/sheet.h"
#include "sheet/wording.h"

/* The caption of the templates must have room. */
#define TEMPLATES_LEAST 24.0
/* What makes a plan dear whatever the thrift, as factors on the paper; an enlargement is too small when it
 * could be more than DEARTH_MOST times larger. */
#define DEARTH_MOST 2.0
#define COST_TOO_SMALL 3.0
#define COST_NO_FIGURE 50.0
#define COST_ONE_TEMPLATE 1.6
#define COST_INCOMPLETE 3.0
#define COST_CUT 9.0
#define COLUMN_GAP 6.0
#define HEIGHT_STEP 1.0

/* What a plan is asked for. */
typedef struct {
  const SpvSubject *subject;
  guint content;
  const SpvThrift *thrift;
  double width, max_height;
  gboolean has_tables;
} Ask;

static gboolean
columns_take_all(const SpvSubject *subject, SpvTablePlace place, guint n, double height) {
  for (guint i = 0; i < n && !spv_tables_at_end(subject->tables, place); i++)
    spv_tables_fill(subject->tables, &place, height, NULL);
  return spv_tables_at_end(subject->tables, place);
}

void
spv_columns_find(const SpvSubject *subject, SpvTablePlace place, double width, double max_height,
                 SpvColumns *columns) {
  *columns = (SpvColumns){ 0 };
  if (spv_tables_at_end(subject->tables, place) || max_height <= 0)
    return;

  columns->pitch = subject->table_width + COLUMN_GAP;
  columns->n = (guint) MAX(1, floor((width + COLUMN_GAP) / columns->pitch));
  columns->height = max_height;
  if (!columns_take_all(subject, place, columns->n, max_height))
    return;
  /* The least height is found by halving: what fits in some height fits in any greater one. */
  double low = 0, high = max_height;
  while (high - low > HEIGHT_STEP) {
    double middle = (low + high) / 2;
    if (columns_take_all(subject, place, columns->n, middle))
      high = middle;
    else
      low = middle;
  }
  columns->height = high;
}

/* The size of the block of templates with its caption. */
static void
measure_templates(const SpvSubject *subject, const SpvPlan *plan, double *width, double *height) {
  double one_width = spv_box_width(subject->bounds) + 2 * SPV_TEMPLATE_CLEAR;
  double one_height = spv_box_height(subject->bounds) + 2 * SPV_TEMPLATE_CLEAR;
  guint across = plan->beside ? plan->n_templates : MIN(plan->n_templates, 1);
  guint down = plan->beside ? MIN(plan->n_templates, 1) : plan->n_templates;

  *width = across > 0 ? MAX(across * one_width, TEMPLATES_LEAST) : 0;
  *height = down > 0 ? down * one_height + SPV_CAPTION_HEIGHT : 0;
}

/* The largest factor that keeps the outline within MOST either way, and all the marks within ROOM. */
static double
largest_factor(const SpvSubject *subject, double most, double room_width, double room_height) {
  double width = spv_box_width(subject->bounds), height = spv_box_height(subject->bounds);
  double factor = spv_figure_factor(width, height, MIN(room_width, most), MIN(room_height, most));

  while (factor > 0) {
    SpvBox extent = spv_figure_extent(subject, factor);
    if (spv_box_width(extent) <= room_width && spv_box_height(extent) <= room_height)
      return factor;
    double smaller = factor * 0.999; /* the next of the series */
    factor = spv_figure_factor(width, height, width * smaller, height * smaller);
  }
  return 0;
}

/* Puts the enlargement beside the templates, or below them, as large as it can be, in the middle of the room
 * there. */
static void
place_figure(const Ask *ask, double width, SpvPlan *plan) {
  double templates_width, templates_height;

  measure_templates(ask->subject, plan, &templates_width, &templates_height);
  plan->figure_x = plan->below ? 0 : templates_width;
  plan->figure_y = plan->below ? templates_height : 0;
  plan->factor = largest_factor(ask->subject, ask->thrift->figure_most, width - plan->figure_x,
                                ask->max_height - plan->figure_y - SPV_CAPTION_HEIGHT);
  plan->width = templates_width;
  plan->height = templates_height;
  if (plan->factor == 0)
    return;
  SpvBox extent = spv_figure_extent(ask->subject, plan->factor);
  plan->width = MAX(plan->width, plan->figure_x + spv_box_width(extent));
  plan->height = MAX(plan->height, plan->figure_y + SPV_CAPTION_HEIGHT + spv_box_height(extent));
  if (!plan->side)
    plan->figure_x += (width - plan->figure_x - spv_box_width(extent)) / 2;
}

static void
place_tables(const Ask *ask, SpvPlan *plan) {
  SpvTablePlace place = { 0, 0 };

  if (plan->side) {
    plan->side_x = plan->width + SPV_CARD_GAP;
    plan->side_height = MAX(plan->height, MIN(ask->max_height, ask->thrift->figure_most));
    plan->side_used = spv_tables_fill(ask->subject->tables, &place, plan->side_height, NULL);
  }
  plan->total = MAX(plan->height, plan->side_used);
  double top = plan->total + (plan->total > 0 ? SPV_CARD_GAP : 0);
  spv_columns_find(ask->subject, place, ask->width, ask->max_height - top, &plan->columns);
  if (plan->columns.n == 0) {
    plan->complete = spv_tables_at_end(ask->subject->tables, place);
    return;
  }
  plan->total = top + plan->columns.height;
  plan->complete = columns_take_all(ask->subject, place, plan->columns.n, plan->columns.height);
}

/* How much smaller the enlargement is than it could be. */
static double
dearth_of(const Ask *ask, const SpvPlan *plan) {
  double best = spv_figure_factor(spv_box_width(ask->subject->bounds), spv_box_height(ask->subject->bounds),
                                  SPV_FIGURE_MOST, SPV_FIGURE_MOST);

  return plan->factor > 0 ? best / plan->factor : 1;
}

/* What PLAN costs: its height, dearer for what is given up, and much dearer when there is no enlargement,
 * or tables are cut or go on elsewhere. */
static double
cost_of(const Ask *ask, const SpvPlan *plan) {
  double cost = plan->total * pow(plan->dearth, ask->thrift->weight);

  if (plan->dearth > DEARTH_MOST)
    cost *= COST_TOO_SMALL;
  if (plan->marked)
    cost *= COST_NO_FIGURE;
  if ((ask->content & SPV_CONTENT_TEMPLATES) != 0 && plan->n_templates < 2)
    cost *= COST_ONE_TEMPLATE;
  if (!plan->complete)
    cost *= COST_INCOMPLETE;
  if (ask->has_tables && ask->subject->table_width > ask->width)
    cost *= COST_CUT;
  return cost;
}

/* Works out one arrangement, of which the templates, and what stands beside or below, are given. FALSE when
 * it does not fit. */
static gboolean
try_plan(const Ask *ask, SpvPlan *plan) {
  double side_width = plan->side ? ask->subject->table_width + SPV_CARD_GAP : 0;
  double width = ask->width - side_width;

  if (width <= 0 || (plan->side && !ask->has_tables))
    return FALSE;
  if ((ask->content & SPV_CONTENT_ENLARGEMENTS) != 0)
    place_figure(ask, width, plan);
  else
    measure_templates(ask->subject, plan, &plan->width, &plan->height);
  plan->marked = (ask->content & SPV_CONTENT_ENLARGEMENTS) != 0 && plan->factor == 0;
  if ((plan->marked && plan->n_templates == 0) || plan->width > width || plan->height > ask->max_height)
    return FALSE;
  plan->total = plan->height;
  plan->complete = TRUE;
  if (ask->has_tables)
    place_tables(ask, plan);
  plan->dearth = dearth_of(ask, plan);
  plan->cost = cost_of(ask, plan);
  return TRUE;
}

/* The best arrangement with N templates; replaces PLAN where it is better, or where there was none. */
static gboolean
find_with_templates(const Ask *ask, guint n, gboolean found, SpvPlan *plan) {
  for (guint way = 0; way < 8; way++) {
    SpvPlan next = {
      .n_templates = n, .beside = (way & 1) != 0, .side = (way & 2) != 0, .below = (way & 4) != 0
    };
    if (!try_plan(ask, &next))
      continue;
    if (!found || next.cost < plan->cost - 1e-9)
      *plan = next;
    found = TRUE;
  }
  return found;
}

gboolean
spv_plan_find(const SpvSubject *subject, guint content, const SpvThrift *thrift, double width,
              double max_height, SpvPlan *plan) {
  gboolean has_tables = (content & SPV_CONTENT_OFFSETS) != 0 && subject->table_width > 0;
  Ask ask = { subject, content, thrift, width, max_height, has_tables };
  gboolean found = FALSE;

  if ((content & SPV_CONTENT_TEMPLATES) != 0) {
    found = find_with_templates(&ask, 2, found, plan);
    return find_with_templates(&ask, 1, found, plan);
  }
  /* An enlargement that would not be one: the panel at true size stands in for it. */
  found = find_with_templates(&ask, 0, found, plan);
  return found || find_with_templates(&ask, 1, found, plan);
}
