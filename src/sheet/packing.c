/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/packing.h"

/* The sizes of enlargements that are tried for all of them, mm: from LEVEL_MOST down. */
#define LEVEL_MOST 80.0
#define LEVEL_LEAST 28.0
#define LEVEL_STEP 4.0
/* So many cards are shared out over the columns by trying all the ways, more by filling the emptier one. */
#define TRIED_MOST 10u
/* So many cards of a sheet are turned to make room for one more. */
#define TURNED_MOST 5u
#define NEXT_TO_NOTHING 1e-6

static void
item_clear(gpointer data) {
  SpvItem *item = data;

  g_clear_pointer(&item->variants, g_array_unref);
  g_clear_pointer(&item->made, spv_card_free);
}

SpvPacking *
spv_packing_new(const SpvPageFrame *frame) {
  SpvPacking *packing = g_new0(SpvPacking, 1);

  packing->frame = frame;
  packing->items = g_array_new(FALSE, FALSE, sizeof(SpvItem));
  g_array_set_clear_func(packing->items, item_clear);
  return packing;
}

void
spv_packing_free(SpvPacking *packing) {
  g_array_unref(packing->items);
  g_free(packing);
}

SpvItem *
spv_packing_item(const SpvPacking *packing, guint index) {
  return &g_array_index(packing->items, SpvItem, index);
}

const SpvVariant *
spv_item_chosen(const SpvItem *item) {
  return &g_array_index(item->variants, SpvVariant, item->at);
}

gboolean
spv_item_is_wide(const SpvItem *item) {
  return item->variants == NULL || spv_item_chosen(item)->wide;
}

static double
item_height(const SpvItem *item) {
  return (item->made != NULL ? item->made->height : spv_item_chosen(item)->height) + SPV_PAGE_GAP;
}

/* --- One sheet --- */

/* How full the fuller column is, as a part of it; more than 1 when it overflows. */
static double
fullness(const SpvPacking *packing, const SpvShare *share) {
  double most = 0;

  for (int i = 0; i < 2; i++)
    most = MAX(most,
               (share->wide + share->used[i]) / (spv_box_height(packing->frame->columns[i]) + SPV_PAGE_GAP));
  return most;
}

/* Shares the cards of heights HEIGHTS out by the bits of SECOND. */
static double
try_share(const SpvPacking *packing, const double *heights, guint n, guint64 second, SpvShare *share) {
  share->second = second;
  share->used[0] = share->used[1] = 0;
  for (guint i = 0; i < n; i++)
    share->used[(second >> i) & 1] += heights[i];
  return fullness(packing, share);
}

/* Each to the column that is then less full. */
static double
share_in_turn(const SpvPacking *packing, const double *heights, guint n, SpvShare *share) {
  guint64 second = 0;

  for (guint i = 0; i < n && i < 64; i++) {
    double left = try_share(packing, heights, i + 1, second, share);
    double right = try_share(packing, heights, i + 1, second | (guint64) 1 << i, share);
    if (right < left - NEXT_TO_NOTHING)
      second |= (guint64) 1 << i;
  }
  return try_share(packing, heights, n, second, share);
}

/* The evenest of all ways; of equal ones that in which the first cards stand in the first column. */
static double
share_as_evenly(const SpvPacking *packing, const double *heights, guint n, SpvShare *share) {
  guint64 best = 0;
  double least = INFINITY;

  for (guint64 second = (guint64) 1 << n; second-- > 0;) {
    double full = try_share(packing, heights, n, second, share);
    if (full >= least - NEXT_TO_NOTHING)
      continue;
    least = full;
    best = second;
  }
  return try_share(packing, heights, n, best, share);
}

gboolean
spv_packing_share(const SpvPacking *packing, const GArray *sheet, SpvShare *best) {
  g_autofree double *heights = g_new(double, sheet->len + 1);
  guint n = 0;
  SpvShare share = { 0 };

  for (guint i = 0; i < sheet->len; i++) {
    const SpvItem *item = spv_packing_item(packing, g_array_index(sheet, guint, i));
    if (spv_item_is_wide(item))
      share.wide += item_height(item);
    else
      heights[n++] = item_height(item);
  }
  double full = n <= TRIED_MOST ? share_as_evenly(packing, heights, n, &share)
                                : share_in_turn(packing, heights, n, &share);
  *best = share;
  return n < 64 && full <= 1 + NEXT_TO_NOTHING;
}

/* --- Which card on which sheet --- */

static void
put_on_new(GPtrArray *sheets, guint index) {
  GArray *sheet = g_array_new(FALSE, FALSE, sizeof(guint));

  g_array_append_val(sheet, index);
  g_ptr_array_add(sheets, sheet);
}

/* Whether SHEET holds its cards when those that may stand the other way, in one column or across both, do;
 * they are left standing as they fit. */
static gboolean
fits_somehow(const SpvPacking *packing, const GArray *sheet) {
  guint n = MIN(sheet->len, TURNED_MOST), first = sheet->len - n;
  SpvShare share;

  for (guint turns = 0; turns < 1u << n; turns++) {
    gboolean can = TRUE;
    for (guint i = 0; i < n; i++) {
      SpvItem *item = spv_packing_item(packing, g_array_index(sheet, guint, first + i));
      guint turn = (turns >> i) & 1;
      can = can && (turn == 0 || item->ways[1] != item->ways[0]);
      item->at = item->ways[turn];
    }
    if (can && spv_packing_share(packing, sheet, &share))
      return TRUE;
  }
  return FALSE;
}

/* Keeps how the items of SHEET stand, or puts them back as they stood. */
static void
save_turns(const SpvPacking *packing, const GArray *sheet, guint *turns, gboolean restore) {
  for (guint i = 0; i < sheet->len; i++) {
    SpvItem *item = spv_packing_item(packing, g_array_index(sheet, guint, i));
    if (restore)
      item->at = turns[i];
    else
      turns[i] = item->at;
  }
}

/* The first sheet that has room takes it, a new one if none has. */
static void
put_first_fit(const SpvPacking *packing, GPtrArray *sheets, guint index) {
  for (guint i = 0; i < sheets->len && !spv_packing_item(packing, index)->fresh; i++) {
    GArray *sheet = g_ptr_array_index(sheets, i);
    g_array_append_val(sheet, index);
    g_autofree guint *turns = g_new(guint, sheet->len);
    save_turns(packing, sheet, turns, FALSE);
    if (fits_somehow(packing, sheet))
      return;
    save_turns(packing, sheet, turns, TRUE);
    g_array_set_size(sheet, sheet->len - 1);
  }
  put_on_new(sheets, index);
}

/* The sheets, each a GArray of the items' indices. */
static GPtrArray *
put_all(const SpvPacking *packing) {
  GPtrArray *sheets = g_ptr_array_new_with_free_func((GDestroyNotify) g_array_unref);

  for (guint i = 0; i < packing->items->len; i++)
    put_first_fit(packing, sheets, i);
  return sheets;
}

static void
choose_level(const SpvPacking *packing, double level) {
  for (guint i = 0; i < packing->items->len; i++) {
    SpvItem *item = spv_packing_item(packing, i);
    if (item->variants == NULL)
      continue;
    spv_variants_choose(item->variants, MAX(level, spv_variants_legible(item->subject)), item->ways);
    item->at = item->ways[0];
  }
}

/* The same size of enlargement for all: the largest with the fewest sheets. */
static GPtrArray *
put_at_best_level(const SpvPacking *packing) {
  double best = LEVEL_MOST;
  guint least = G_MAXUINT;

  for (double level = LEVEL_MOST; level >= LEVEL_LEAST; level -= LEVEL_STEP) {
    choose_level(packing, level);
    g_autoptr(GPtrArray) sheets = put_all(packing);
    if (sheets->len >= least)
      continue;
    least = sheets->len;
    best = level;
  }
  choose_level(packing, best);
  return put_all(packing);
}

/* --- Sheets as full as each other --- */

/* The paper that the cards of SHEET take. */
static double
paper_used(const SpvPacking *packing, const GArray *sheet) {
  double used = 0;

  for (guint i = 0; i < sheet->len; i++) {
    const SpvItem *item = spv_packing_item(packing, g_array_index(sheet, guint, i));
    SpvBox across = spv_item_is_wide(item) ? packing->frame->free : packing->frame->columns[0];
    used += item_height(item) * spv_box_width(across);
  }
  return used;
}

/* Moves the item at PLACE of FROM to TO where TO is then not the fuller of the two. */
static gboolean
move_over(const SpvPacking *packing, GArray *from, guint place, GArray *to) {
  guint index = g_array_index(from, guint, place);
  double before = paper_used(packing, from);
  g_autofree guint *turns = g_new(guint, to->len + 1);

  if (spv_packing_item(packing, index)->variants == NULL)
    return FALSE;
  g_array_append_val(to, index);
  save_turns(packing, to, turns, FALSE);
  if (fits_somehow(packing, to) && paper_used(packing, to) < before - NEXT_TO_NOTHING) {
    g_array_remove_index(from, place);
    return TRUE;
  }
  save_turns(packing, to, turns, TRUE);
  g_array_set_size(to, to->len - 1);
  return FALSE;
}

/* Moves one item from a fuller sheet to the emptiest; FALSE when none can go. The last ones of the fullest
 * sheet go first. */
static gboolean
move_one(const SpvPacking *packing, GPtrArray *sheets) {
  GArray *emptiest = g_ptr_array_index(sheets, 0), *fullest = emptiest;

  for (guint i = 1; i < sheets->len; i++) {
    GArray *sheet = g_ptr_array_index(sheets, i);
    if (paper_used(packing, sheet) < paper_used(packing, emptiest) - NEXT_TO_NOTHING)
      emptiest = sheet;
    if (paper_used(packing, sheet) > paper_used(packing, fullest) + NEXT_TO_NOTHING)
      fullest = sheet;
  }
  for (guint i = fullest->len; fullest != emptiest && i-- > 0;)
    if (move_over(packing, fullest, i, emptiest))
      return TRUE;
  return FALSE;
}

GPtrArray *
spv_packing_sheets(const SpvPacking *packing) {
  GPtrArray *sheets = put_at_best_level(packing);

  /* Each move evens out, so there is an end; the bound is for what rounding could do. */
  for (guint i = 0; i < 2 * packing->items->len && move_one(packing, sheets); i++)
    continue;
  return sheets;
}
