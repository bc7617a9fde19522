/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is left of a sheet is used up: its enlargements grow. */
#include "sheet/packing.h"

#define NEXT_TO_NOTHING 1e-6
/* How much of its size an enlargement keeps at least, for its card to take both columns. */
#define WIDENED_LEAST 0.6

/* Gives ITEM the next larger enlargement with which SHEET still holds all its cards. A wide card stays wide.
 */
static gboolean
grow(const SpvPacking *packing, const GArray *sheet, SpvItem *item) {
  guint before = item->at;
  double size = spv_item_chosen(item)->size;
  gboolean wide = spv_item_is_wide(item);
  SpvShare share;

  for (guint i = before + 1; i < item->variants->len; i++) {
    item->at = i;
    if (spv_item_chosen(item)->size > size + NEXT_TO_NOTHING && spv_item_is_wide(item) >= wide &&
        spv_packing_share(packing, sheet, &share))
      return TRUE;
  }
  item->at = before;
  return FALSE;
}

/* The smallest first, again and again, until none can grow. */
static void
grow_all(const SpvPacking *packing, const GArray *sheet) {
  g_autofree gboolean *stuck = g_new0(gboolean, sheet->len);

  for (;;) {
    int smallest = -1;
    for (guint i = 0; i < sheet->len; i++) {
      const SpvItem *item = spv_packing_item(packing, g_array_index(sheet, guint, i));
      if (stuck[i] || item->variants == NULL)
        continue;
      if (smallest < 0 ||
          spv_item_chosen(item)->size <
              spv_item_chosen(spv_packing_item(packing, g_array_index(sheet, guint, (guint) smallest)))
                      ->size -
                  NEXT_TO_NOTHING)
        smallest = (int) i;
    }
    if (smallest < 0)
      return;
    stuck[smallest] = !grow(packing, sheet,
                            spv_packing_item(packing, g_array_index(sheet, guint, (guint) smallest)));
  }
}

/* Whether the panels are of one size, with as many marks: as dexter and sinister ones are. */
static gboolean
are_alike(const SpvSubject *a, const SpvSubject *b) {
  return a->guide->dots->len == b->guide->dots->len && a->guide->rulings->len == b->guide->rulings->len &&
         fabs(spv_box_width(a->bounds) - spv_box_width(b->bounds)) < NEXT_TO_NOTHING &&
         fabs(spv_box_height(a->bounds) - spv_box_height(b->bounds)) < NEXT_TO_NOTHING;
}

/* Makes ITEM's enlargement SIZE large, if SHEET then still holds all its cards. */
static void
shrink_to(const SpvPacking *packing, const GArray *sheet, SpvItem *item, double size) {
  guint before = item->at;
  gboolean wide = spv_item_chosen(item)->wide;
  SpvShare share;

  for (guint i = 0; i < before; i++) {
    item->at = i;
    if (spv_item_chosen(item)->wide == wide && fabs(spv_item_chosen(item)->size - size) < NEXT_TO_NOTHING &&
        spv_packing_share(packing, sheet, &share))
      return;
  }
  item->at = before;
}

/* A pair is drawn alike: of two such panels on one sheet the larger enlargement gets as small as the other.
 */
static void
match_pairs(const SpvPacking *packing, const GArray *sheet) {
  for (guint i = 0; i < sheet->len; i++)
    for (guint j = 0; j < sheet->len; j++) {
      SpvItem *one = spv_packing_item(packing, g_array_index(sheet, guint, i));
      const SpvItem *other = spv_packing_item(packing, g_array_index(sheet, guint, j));
      if (one->variants != NULL && other->variants != NULL && are_alike(one->subject, other->subject) &&
          spv_item_chosen(one)->size > spv_item_chosen(other)->size + NEXT_TO_NOTHING)
        shrink_to(packing, sheet, one, spv_item_chosen(other)->size);
    }
}

/* A card that would stand alone below wide ones, with the other column empty, goes across both if it can. */
static void
widen_lone_card(const SpvPacking *packing, const GArray *sheet) {
  SpvItem *lone = NULL;
  SpvShare share;

  for (guint i = 0; i < sheet->len; i++) {
    SpvItem *item = spv_packing_item(packing, g_array_index(sheet, guint, i));
    if (spv_item_is_wide(item))
      continue;
    if (lone != NULL)
      return;
    lone = item;
  }
  if (lone == NULL || sheet->len == 1)
    return;
  guint before = lone->at;
  double least = WIDENED_LEAST * spv_item_chosen(lone)->size;
  for (guint i = lone->variants->len; i-- > 0;) {
    lone->at = i;
    if (spv_item_is_wide(lone) && spv_item_chosen(lone)->size >= least &&
        spv_packing_share(packing, sheet, &share))
      return;
  }
  lone->at = before;
}

void
spv_packing_grow(const SpvPacking *packing, const GArray *sheet) {
  widen_lone_card(packing, sheet);
  grow_all(packing, sheet);
  match_pairs(packing, sheet);
}
