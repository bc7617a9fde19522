/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/card-plan.h"

#include "sheet/figure.h"
#include "sheet/sheet.h"

/* The caption of the templates must have room. */
#define TEMPLATES_LEAST 24.0
/* What a copy of the template is worth, in mm of the card's height; the second one is worth more. */
#define COPY_WORTH 4.0
#define SECOND_WORTH 40.0
#define COST_INCOMPLETE 1e4
#define COLUMN_GAP 5.0
#define HEIGHT_STEP 1.0

/* Where the enlargement stands to the templates. */
typedef enum { WAY_BELOW, WAY_RIGHT, WAY_LEFT } Way;
#define N_WAYS 3u

/* What a plan is asked for. */
typedef struct {
  const SpvSubject *subject;
  guint content;
  double width, max_height;
  gboolean has_tables;
} Ask;

/* Moves PLACE on past what COLUMNS take. */
static void
skip_columns(const SpvSubject *subject, const SpvColumns *columns, SpvTablePlace *place) {
  for (guint i = 0; i < columns->n && !spv_tables_at_end(subject->tables, *place); i++)
    spv_tables_fill(subject->tables, place, columns->height, NULL);
}

static gboolean
columns_take_all(const SpvSubject *subject, SpvTablePlace place, const SpvColumns *columns) {
  skip_columns(subject, columns, &place);
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
  if (!columns_take_all(subject, place, columns))
    return;
  /* The least height is found by halving: what fits in some height fits in any greater one. */
  double low = 0, high = max_height;
  while (high - low > HEIGHT_STEP) {
    columns->height = (low + high) / 2;
    if (columns_take_all(subject, place, columns))
      high = columns->height;
    else
      low = columns->height;
  }
  columns->height = high;
}

/* The size of the block of templates with its caption. */
static SpvPoint
templates_size(const SpvSubject *subject, const SpvPlan *plan) {
  double width = spv_box_width(subject->bounds), height = spv_box_height(subject->bounds);
  guint more = plan->n_templates - 1;

  if (plan->n_templates == 0)
    return spv_point(0, 0);
  if (plan->row)
    width += more * (width + SPV_TEMPLATE_APART);
  else
    height += more * (height + SPV_TEMPLATE_APART);
  return spv_point(MAX(width + 2 * SPV_TEMPLATE_CLEAR, TEMPLATES_LEAST),
                   height + 2 * SPV_TEMPLATE_CLEAR + SPV_CAPTION_HEIGHT);
}

/* Places the pictures; what they take up together goes to SIZE. */
static void
place_pictures(const Ask *ask, Way way, SpvPlan *plan, SpvPoint *size) {
  SpvPoint templates = templates_size(ask->subject, plan), figure = { 0, 0 };

  if (plan->factor > 0) {
    SpvBox extent = spv_figure_extent(ask->subject, plan->factor);
    figure = spv_point(spv_box_width(extent), spv_box_height(extent));
  }
  *size = spv_point(MAX(templates.x, figure.x), MAX(templates.y, figure.y));
  switch (way) {
  case WAY_BELOW:
    plan->figure = spv_point(0, templates.y);
    size->y = templates.y + figure.y;
    break;
  case WAY_RIGHT:
    plan->figure = spv_point(templates.x, 0);
    size->x = templates.x + figure.x;
    break;
  case WAY_LEFT: /* the tables follow below the templates */
    plan->templates = spv_point(figure.x + SPV_CARD_GAP, 0);
    size->x = figure.x + SPV_CARD_GAP + templates.x;
    break;
  }
}

/* Where the tables beside the pictures start, and how wide they may be; whether there is room for any. */
static gboolean
find_side(const Ask *ask, Way way, const SpvPlan *plan, SpvPoint size, SpvPoint *at, double *width) {
  SpvPoint templates = templates_size(ask->subject, plan);

  *at = way == WAY_LEFT ? spv_point(plan->templates.x, templates.y) : spv_point(size.x + SPV_CARD_GAP, 0);
  *width = ask->width - at->x;
  return *width >= ask->subject->table_width;
}

/* The tables: beside the pictures, as high as these or, when TALL, as the card may be; the rest below. FALSE
 * when there is no room beside them. */
static gboolean
place_tables(const Ask *ask, Way way, gboolean tall, SpvPoint size, SpvPlan *plan) {
  SpvTablePlace place = { 0, 0 };
  double width, bottom = size.y;

  if (!find_side(ask, way, plan, size, &plan->side_at, &width))
    return FALSE;
  spv_columns_find(ask->subject, place, width, (tall ? ask->max_height : size.y) - plan->side_at.y,
                   &plan->side);
  skip_columns(ask->subject, &plan->side, &place);
  if (plan->side.n > 0)
    bottom = MAX(bottom, plan->side_at.y + plan->side.height);
  plan->below_y = bottom + SPV_CARD_GAP;
  spv_columns_find(ask->subject, place, ask->width, ask->max_height - plan->below_y, &plan->below);
  skip_columns(ask->subject, &plan->below, &place);
  plan->height = plan->below.n > 0 ? plan->below_y + plan->below.height : bottom;
  plan->complete = spv_tables_at_end(ask->subject->tables, place);
  return TRUE;
}

static void
place_tables_below(const Ask *ask, SpvPoint size, SpvPlan *plan) {
  SpvTablePlace place = { 0, 0 };

  plan->below_y = size.y + (size.y > 0 ? SPV_CARD_GAP : 0);
  spv_columns_find(ask->subject, place, ask->width, ask->max_height - plan->below_y, &plan->below);
  skip_columns(ask->subject, &plan->below, &place);
  plan->height = plan->below.n > 0 ? plan->below_y + plan->below.height : size.y;
  plan->complete = spv_tables_at_end(ask->subject->tables, place);
}

/* Without tables beside it a picture stands in the middle of the card. */
static void
centre_figure(const Ask *ask, SpvPlan *plan) {
  if (plan->factor > 0)
    plan->figure.x += (ask->width - plan->figure.x -
                       spv_box_width(spv_figure_extent(ask->subject, plan->factor))) /
                      2;
}

/* How the tables stand to the pictures. */
typedef enum { TABLES_BELOW, TABLES_BESIDE, TABLES_BESIDE_TALL } TableWay;
#define N_TABLE_WAYS 3u

/* Works out one arrangement, of which the number of templates, how they stand and the factor are given. FALSE
 * when it does not fit. */
static gboolean
try_plan(const Ask *ask, Way way, TableWay tables, SpvPlan *plan) {
  SpvPoint size;

  place_pictures(ask, way, plan, &size);
  if (size.x > ask->width || size.y > ask->max_height)
    return FALSE;
  plan->height = size.y;
  plan->complete = TRUE;
  if (tables != TABLES_BELOW)
    return ask->has_tables && place_tables(ask, way, tables == TABLES_BESIDE_TALL, size, plan);
  if (ask->has_tables)
    place_tables_below(ask, size, plan);
  if (way != WAY_LEFT)
    centre_figure(ask, plan);
  return TRUE;
}

static double
cost_of(const SpvPlan *plan) {
  double cost = plan->height - COPY_WORTH * plan->n_templates;

  if (plan->n_templates < 2)
    cost += SECOND_WORTH;
  return plan->complete ? cost : cost + COST_INCOMPLETE;
}

/* Replaces PLAN by the best arrangement with N templates where that is better, or where there was none. */
static gboolean
find_with_templates(const Ask *ask, guint n, double factor, gboolean found, SpvPlan *plan) {
  gboolean marked = (ask->content & SPV_CONTENT_ENLARGEMENTS) != 0 && factor == 0;

  for (guint try = 0; try < 2 * N_WAYS * N_TABLE_WAYS; try++) {
    SpvPlan next = { .n_templates = n, .row = try % 2 == 0, .marked = marked, .factor = factor };
    Way way = (Way) (try / 2 % N_WAYS);
    if ((n < 2 && !next.row) || ((n == 0 || factor == 0) && way != WAY_BELOW))
      continue;
    if (!try_plan(ask, way, (TableWay) (try / 2 / N_WAYS), &next))
      continue;
    if (!found || cost_of(&next) < cost_of(plan) - 1e-9)
      *plan = next;
    found = TRUE;
  }
  return found;
}

gboolean
spv_plan_find(const SpvSubject *subject, guint content, double factor, double width, double max_height,
              SpvPlan *plan) {
  gboolean has_tables = (content & SPV_CONTENT_OFFSETS) != 0 && subject->table_width > 0;
  Ask ask = { subject, content, width, max_height, has_tables };
  gboolean found = FALSE;

  if (has_tables && subject->table_width > width)
    return FALSE;
  if ((content & SPV_CONTENT_TEMPLATES) != 0) {
    for (guint n = SPV_TEMPLATES_MOST; n > 0; n--)
      found = find_with_templates(&ask, n, factor, found, plan);
    return found;
  }
  /* Where an enlargement would not be one, the panel at true size stands in for it. */
  gboolean stands_in = (content & SPV_CONTENT_ENLARGEMENTS) != 0 && factor == 0;
  return find_with_templates(&ask, stands_in ? 1 : 0, factor, found, plan);
}
