/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which card goes on which sheet, and how large its enlargement is there: decided on the heights of cards
 * that are not made yet. Millimetres on the page. */
#pragma once

#include "sheet/page-frame.h"
#include "sheet/variant.h"

/* White between a card and the next below it. */
#define SPV_PAGE_GAP SPV_COLUMN_GAP

/* One card that has to go on some sheet. */
typedef struct {
  const SpvSubject *subject;
  GArray *variants; /* SpvVariant; NULL for a card that is made already */
  guint at;         /* the variant chosen */
  guint ways[2]; /* the variants of the size that all shall have: the lesser card, then the other way round */
  SpvCard *made;
  gboolean fresh; /* begins a new sheet */
} SpvItem;

typedef struct {
  const SpvPageFrame *frame;
  GArray *items; /* SpvItem, owned */
} SpvPacking;

/* How one sheet's cards stand: a bit a card of those that take one column, set for the second. */
typedef struct {
  guint64 second;
  double used[2]; /* of each column, with a gap after each card */
  double wide;    /* of the cards across both, likewise */
} SpvShare;

SpvPacking *spv_packing_new(const SpvPageFrame *frame);
void spv_packing_free(SpvPacking *packing);
SpvItem *spv_packing_item(const SpvPacking *packing, guint index);

/* The variant that ITEM has now; not of a card that was made already. */
const SpvVariant *spv_item_chosen(const SpvItem *item);
/* Whether ITEM takes both columns, as a card that was made already does. */
gboolean spv_item_is_wide(const SpvItem *item);

/* Shares the items of SHEET (indices) out over its columns as evenly as can be; FALSE when they do not fit.
 */
gboolean spv_packing_share(const SpvPacking *packing, const GArray *sheet, SpvShare *share);

/* The sheets, each a GArray of the indices of its items: as few as can be, all enlargements of the same size,
 * the largest with which they are as few; none much emptier than another. */
GPtrArray *spv_packing_sheets(const SpvPacking *packing);

/* Lets the enlargements of SHEET grow into what is left of it, the smallest first; a pair is drawn alike. */
void spv_packing_grow(const SpvPacking *packing, const GArray *sheet);
