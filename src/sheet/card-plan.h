/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The choice of a card's arrangement. Millimetres; (0, 0) is the upper left corner below the card's head. */
#pragma once

#include "sheet/subject.h"
#include "sheet/table.h"

#define SPV_CARD_PADDING 3.0
#define SPV_CARD_GAP 4.0       /* between pictures and tables */
#define SPV_CAPTION_HEIGHT 3.0 /* the words above a picture */

/* Columns of tables below the pictures. */
typedef struct {
  guint n;
  double pitch, height;
} SpvColumns;

/* An enlargement is never larger than this either way, mm: it would take paper and show no more. */
#define SPV_FIGURE_MOST 76.0

/* How much is given up to save paper. */
typedef struct {
  double figure_most; /* the most that an enlargement may measure either way, mm */
  double weight;      /* 1: what is given up counts as much as paper; 0: only paper counts */
} SpvThrift;

typedef struct {
  guint n_templates;
  gboolean below;            /* the enlargement stands below the templates, not beside them */
  gboolean beside;           /* the templates stand side by side */
  gboolean marked;           /* the last of them carries the marks, for there is no enlargement */
  double factor;             /* of the enlargement; 0: none */
  double figure_x, figure_y; /* of its box, with the caption */
  double width, height;      /* of the pictures together */
  gboolean side;             /* tables start beside the pictures */
  double side_x, side_height, side_used;
  SpvColumns columns; /* of the tables that are left over */
  double total;       /* height of everything */
  gboolean complete;  /* all the tables are on it */
  double dearth;      /* how much smaller the enlargement is than it could be; 1: not at all */
  double cost;        /* height, dearer for what is given up */
} SpvPlan;

/* The best arrangement within WIDTH by MAX_HEIGHT; tables that do not fit are left over. FALSE when the
 * pictures that must be there do not fit. */
gboolean spv_plan_find(const SpvSubject *subject, guint content, const SpvThrift *thrift, double width,
                       double max_height, SpvPlan *plan);

/* Columns WIDTH mm wide in all that take the tables from PLACE on in the least height, or, when MAX_HEIGHT is
 * not enough, as much as fits. */
void spv_columns_find(const SpvSubject *subject, SpvTablePlace place, double width, double max_height,
                      SpvColumns *columns);
