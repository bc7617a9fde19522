/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cards that one subject could have: in one column or across the page, by the size of the enlargement. */
#pragma once

#include "sheet/card.h"

typedef struct {
  gboolean wide;
  double width, height; /* of the card */
  double size;          /* of the enlargement, its larger measure; 0: none */
  SpvPlan plan;
} SpvVariant;

/* Where cards may go: so wide and so high, at most. */
typedef struct {
  double narrow_width, narrow_height;
  double wide_width, wide_height;
} SpvRoom;

/* Every variant (SpvVariant) of SUBJECT that goes on one sheet with all its tables, the smallest enlargement
 * first, the lesser card first among equals. Without an enlargement only where no enlargement fits. */
GArray *spv_variants_new(cairo_t *measuring, const SpvSubject *subject, guint content, const SpvRoom *room);

/* Of the variants whose enlargement measures SIZE or more, or of the largest ones where none does: the index
 * of that with the least paper goes to WAYS[0], and to WAYS[1] that of the least one in the other width (the
 * same again where there is none). */
void spv_variants_choose(const GArray *variants, double size, guint ways[2]);

/* The wide variant whose tables go on elsewhere, as its PLAN; FALSE when not even its templates fit. */
gboolean spv_variant_find_cut(cairo_t *measuring, const SpvSubject *subject, guint content,
                              const SpvRoom *room, SpvPlan *plan);

/* The size from which the marks of SUBJECT's enlargement stand well apart, mm. */
double spv_variants_legible(const SpvSubject *subject);
