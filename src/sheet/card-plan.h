/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The choice of a card's arrangement. Millimetres; (0, 0) is the upper left corner below the card's head. */
#pragma once

#include "sheet/subject.h"
#include "sheet/table.h"

#define SPV_CARD_PADDING 3.0
#define SPV_CARD_GAP 3.0       /* between pictures and tables */
#define SPV_CAPTION_HEIGHT 3.0 /* the words above the templates */

/* White round a template, so that scissors can reach it. */
#define SPV_TEMPLATE_CLEAR 4.0
/* White between one template and the next. */
#define SPV_TEMPLATE_APART 5.0
/* More copies than this are of no use: some in colour, some to try on. */
#define SPV_TEMPLATES_MOST 5u

/* Columns of tables, one beside the other. */
typedef struct {
  guint n;
  double pitch, height;
} SpvColumns;

typedef struct {
  guint n_templates;
  gboolean row;       /* they stand side by side, not one below the other */
  gboolean marked;    /* the last of them carries the marks, for there is no enlargement */
  SpvPoint templates; /* of their block, with the caption */
  double factor;      /* of the enlargement; 0: none */
  SpvPoint figure;    /* of everything that is drawn of it */
  SpvPoint side_at;
  SpvColumns side; /* of the tables beside the pictures */
  double below_y;
  SpvColumns below;  /* of the tables that are left over */
  double height;     /* of everything */
  gboolean complete; /* all the tables are on it */
} SpvPlan;

/* The best arrangement within WIDTH by MAX_HEIGHT with an enlargement by FACTOR (0: none), tables that do not
 * fit left over: the lowest, where each further copy of the template is worth some height. FALSE when what
 * must be there does not fit. */
gboolean spv_plan_find(const SpvSubject *subject, guint content, double factor, double width,
                       double max_height, SpvPlan *plan);

/* Columns WIDTH mm wide in all that take the tables from PLACE on in the least height, or, when MAX_HEIGHT is
 * not enough, as much as fits. */
void spv_columns_find(const SpvSubject *subject, SpvTablePlace place, double width, double max_height,
                      SpvColumns *columns);
