/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/flow.h"

#include "sheet/variant.h"

/* The sizes of enlargements that are tried for all of them, mm: from LEVEL_MOST down. */
#define LEVEL_MOST 80.0
#define LEVEL_LEAST 28.0
#define LEVEL_STEP 4.0
/* So many cards are shared out over the columns by trying all the ways, more by filling the emptier one. */
#define TRIED_MOST 10u
/* So many cards of a sheet are turned to make room for one more. */
#define TURNED_MOST 5u
/* A card is made at most so much higher, mm, for its column to end at the foot. */
#define STRETCH_MOST 45.0
#define NEXT_TO_NOTHING 1e-6

/* One card that has to go on some sheet. */
typedef struct {
  const SpvSubject *subject;
  GArray *variants; /* SpvVariant; NULL for a card that is made already */
  guint at;         /* the variant chosen */
  guint ways[2]; /* the variants of the size that all shall have: the lesser card, then the other way round */
  SpvCard *made;
  gboolean fresh; /* begins a new sheet */
} Item;

typedef struct {
  cairo_t *measuring;
  const SpvCardOptions *options;
  const SpvFrame *frame;
  SpvRoom room;
  GArray *items;
} Flow;

/* How one sheet's cards stand: a bit a card of those that take one column, set for the second. */
typedef struct {
  guint64 second;
  double used[2]; /* of each column, with a gap after each card */
  double wide;    /* of the cards across both, likewise */
} Share;

void
spv_page_free(SpvPage *page) {
  g_ptr_array_unref(page->cards);
  g_free(page);
}

static void
placed_free(gpointer data) {
  SpvPlacedCard *placed = data;

  spv_card_free(placed->card);
  g_free(placed);
}

static void
item_clear(gpointer data) {
  Item *item = data;

  g_clear_pointer(&item->variants, g_array_unref);
  g_clear_pointer(&item->made, spv_card_free);
}

static Item *
item_at(const Flow *flow, guint index) {
  return &g_array_index(flow->items, Item, index);
}

static const SpvVariant *
chosen(const Item *item) {
  return &g_array_index(item->variants, SpvVariant, item->at);
}

static gboolean
is_wide(const Item *item) {
  return item->variants == NULL || chosen(item)->wide;
}

static double
item_height(const Item *item) {
  return (item->made != NULL ? item->made->height : chosen(item)->height) + SPV_PAGE_GAP;
}

/* --- One sheet --- */

/* How full the fuller column is, as a part of it; more than 1 when it overflows. */
static double
fullness(const Flow *flow, const Share *share) {
  double most = 0;

  for (int i = 0; i < 2; i++)
    most = MAX(most,
               (share->wide + share->used[i]) / (spv_box_height(flow->frame->columns[i]) + SPV_PAGE_GAP));
  return most;
}

/* Shares the cards of heights HEIGHTS out by the bits of SECOND. */
static double
try_share(const Flow *flow, const double *heights, guint n, guint64 second, Share *share) {
  share->second = second;
  share->used[0] = share->used[1] = 0;
  for (guint i = 0; i < n; i++)
    share->used[(second >> i) & 1] += heights[i];
  return fullness(flow, share);
}

/* Each to the column that is then less full. */
static double
share_in_turn(const Flow *flow, const double *heights, guint n, Share *share) {
  guint64 second = 0;

  for (guint i = 0; i < n && i < 64; i++) {
    double left = try_share(flow, heights, i + 1, second, share);
    double right = try_share(flow, heights, i + 1, second | (guint64) 1 << i, share);
    if (right < left - NEXT_TO_NOTHING)
      second |= (guint64) 1 << i;
  }
  return try_share(flow, heights, n, second, share);
}

/* The evenest of all ways; of equal ones that in which the first cards stand in the first column. */
static double
share_as_evenly(const Flow *flow, const double *heights, guint n, Share *share) {
  guint64 best = 0;
  double least = INFINITY;

  for (guint64 second = (guint64) 1 << n; second-- > 0;) {
    double full = try_share(flow, heights, n, second, share);
    if (full >= least - NEXT_TO_NOTHING)
      continue;
    least = full;
    best = second;
  }
  return try_share(flow, heights, n, best, share);
}

/* Shares the items of INDICES out over a sheet's columns as evenly as can be; FALSE when they do not fit. */
static gboolean
share_out(const Flow *flow, const GArray *indices, Share *best) {
  g_autofree double *heights = g_new(double, indices->len + 1);
  guint n = 0;
  Share share = { 0 };

  for (guint i = 0; i < indices->len; i++) {
    const Item *item = item_at(flow, g_array_index(indices, guint, i));
    if (is_wide(item))
      share.wide += item_height(item);
    else
      heights[n++] = item_height(item);
  }
  double full = n <= TRIED_MOST ? share_as_evenly(flow, heights, n, &share)
                                : share_in_turn(flow, heights, n, &share);
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
fits_somehow(const Flow *flow, const GArray *sheet) {
  guint n = MIN(sheet->len, TURNED_MOST), first = sheet->len - n;
  Share share;

  for (guint turns = 0; turns < 1u << n; turns++) {
    gboolean can = TRUE;
    for (guint i = 0; i < n; i++) {
      Item *item = item_at(flow, g_array_index(sheet, guint, first + i));
      guint turn = (turns >> i) & 1;
      can = can && (turn == 0 || item->ways[1] != item->ways[0]);
      item->at = item->ways[turn];
    }
    if (can && share_out(flow, sheet, &share))
      return TRUE;
  }
  return FALSE;
}

/* Keeps how the items of SHEET stand, or puts them back as they stood. */
static void
save_turns(const Flow *flow, const GArray *sheet, guint *turns, gboolean restore) {
  for (guint i = 0; i < sheet->len; i++) {
    Item *item = item_at(flow, g_array_index(sheet, guint, i));
    if (restore)
      item->at = turns[i];
    else
      turns[i] = item->at;
  }
}

/* The first sheet that has room takes it, a new one if none has. */
static void
put_first_fit(const Flow *flow, GPtrArray *sheets, guint index) {
  for (guint i = 0; i < sheets->len && !item_at(flow, index)->fresh; i++) {
    GArray *sheet = g_ptr_array_index(sheets, i);
    g_array_append_val(sheet, index);
    g_autofree guint *turns = g_new(guint, sheet->len);
    save_turns(flow, sheet, turns, FALSE);
    if (fits_somehow(flow, sheet))
      return;
    save_turns(flow, sheet, turns, TRUE);
    g_array_set_size(sheet, sheet->len - 1);
  }
  put_on_new(sheets, index);
}

/* The sheets, each a GArray of the items' indices. */
static GPtrArray *
put_all(const Flow *flow) {
  GPtrArray *sheets = g_ptr_array_new_with_free_func((GDestroyNotify) g_array_unref);

  for (guint i = 0; i < flow->items->len; i++)
    put_first_fit(flow, sheets, i);
  return sheets;
}

static void
choose_level(const Flow *flow, double level) {
  for (guint i = 0; i < flow->items->len; i++) {
    Item *item = item_at(flow, i);
    if (item->variants == NULL)
      continue;
    spv_variants_choose(item->variants, MAX(level, spv_variants_legible(item->subject)), item->ways);
    item->at = item->ways[0];
  }
}

/* The same size of enlargement for all: the largest with the fewest sheets. */
static GPtrArray *
put_at_best_level(const Flow *flow) {
  double best = LEVEL_MOST;
  guint least = G_MAXUINT;

  for (double level = LEVEL_MOST; level >= LEVEL_LEAST; level -= LEVEL_STEP) {
    choose_level(flow, level);
    g_autoptr(GPtrArray) sheets = put_all(flow);
    if (sheets->len >= least)
      continue;
    least = sheets->len;
    best = level;
  }
  choose_level(flow, best);
  return put_all(flow);
}

/* --- What is left of a sheet --- */

/* Gives ITEM the next larger enlargement with which SHEET still holds all its cards. */
static gboolean
grow(const Flow *flow, const GArray *sheet, Item *item) {
  guint before = item->at;
  double size = chosen(item)->size;
  Share share;

  for (guint i = before + 1; i < item->variants->len; i++) {
    item->at = i;
    if (chosen(item)->size > size + NEXT_TO_NOTHING && share_out(flow, sheet, &share))
      return TRUE;
  }
  item->at = before;
  return FALSE;
}

/* The smallest first, again and again, until none can grow. */
static void
grow_all(const Flow *flow, const GArray *sheet) {
  g_autofree gboolean *stuck = g_new0(gboolean, sheet->len);

  for (;;) {
    int smallest = -1;
    for (guint i = 0; i < sheet->len; i++) {
      const Item *item = item_at(flow, g_array_index(sheet, guint, i));
      if (stuck[i] || item->variants == NULL)
        continue;
      if (smallest < 0 ||
          chosen(item)->size <
              chosen(item_at(flow, g_array_index(sheet, guint, (guint) smallest)))->size - NEXT_TO_NOTHING)
        smallest = (int) i;
    }
    if (smallest < 0)
      return;
    stuck[smallest] = !grow(flow, sheet, item_at(flow, g_array_index(sheet, guint, (guint) smallest)));
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
shrink_to(const Flow *flow, const GArray *sheet, Item *item, double size) {
  guint before = item->at;
  gboolean wide = chosen(item)->wide;
  Share share;

  for (guint i = 0; i < before; i++) {
    item->at = i;
    if (chosen(item)->wide == wide && fabs(chosen(item)->size - size) < NEXT_TO_NOTHING &&
        share_out(flow, sheet, &share))
      return;
  }
  item->at = before;
}

/* A pair is drawn alike: of two such panels on one sheet the larger enlargement gets as small as the other.
 */
static void
match_pairs(const Flow *flow, const GArray *sheet) {
  for (guint i = 0; i < sheet->len; i++)
    for (guint j = 0; j < sheet->len; j++) {
      Item *one = item_at(flow, g_array_index(sheet, guint, i));
      const Item *other = item_at(flow, g_array_index(sheet, guint, j));
      if (one->variants != NULL && other->variants != NULL && are_alike(one->subject, other->subject) &&
          chosen(one)->size > chosen(other)->size + NEXT_TO_NOTHING)
        shrink_to(flow, sheet, one, chosen(other)->size);
    }
}

/* --- Cards in their places --- */

static SpvPlacedCard *
place(const Flow *flow, SpvPage *page, Item *item, double x, double y) {
  SpvPlacedCard *placed = g_new(SpvPlacedCard, 1);

  placed->card = item->made != NULL ? g_steal_pointer(&item->made)
                                    : spv_card_new(flow->measuring, item->subject, flow->options,
                                                   chosen(item)->width, &chosen(item)->plan);
  placed->at = spv_point(x, y);
  g_ptr_array_add(page->cards, placed);
  return placed;
}

/* Lets the cards of PAGE from FIRST on, which end at Y with a gap, reach down to FOOT where little is
 * missing. */
static void
stretch(SpvPage *page, guint first, double y, double foot) {
  guint n = page->cards->len - first;
  double more = n > 0 ? (foot + SPV_PAGE_GAP - y) / n : 0;

  for (guint i = 0; i < n && more > 0 && more <= STRETCH_MOST; i++) {
    SpvPlacedCard *placed = g_ptr_array_index(page->cards, first + i);
    placed->at.y += i * more;
    spv_card_stretch(placed->card, more);
  }
}

/* Places the cards that take both columns; returns where the columns are free from. */
static double
place_wide(const Flow *flow, const GArray *sheet, SpvPage *page) {
  double y = flow->frame->free.y0;

  for (guint i = 0; i < sheet->len; i++) {
    Item *item = item_at(flow, g_array_index(sheet, guint, i));
    if (is_wide(item))
      y += place(flow, page, item, flow->frame->free.x0, y)->card->height + SPV_PAGE_GAP;
  }
  if (page->cards->len == sheet->len)
    stretch(page, 0, y, flow->frame->free.y1);
  return y;
}

/* Places the cards of one COLUMN from Y on. */
static void
place_column(const Flow *flow, const GArray *sheet, const Share *share, int column, double y, SpvPage *page) {
  SpvBox box = flow->frame->columns[column];
  guint first = page->cards->len, narrow = 0;

  for (guint i = 0; i < sheet->len; i++) {
    Item *item = item_at(flow, g_array_index(sheet, guint, i));
    if (is_wide(item) || (int) ((share->second >> narrow++) & 1) != column)
      continue;
    y += place(flow, page, item, box.x0, y)->card->height + SPV_PAGE_GAP;
  }
  stretch(page, first, y, box.y1);
}

static SpvPage *
make_page(const Flow *flow, const GArray *sheet) {
  SpvPage *page = g_new0(SpvPage, 1);
  Share share;

  page->cards = g_ptr_array_new_with_free_func(placed_free);
  share_out(flow, sheet, &share);
  double y = place_wide(flow, sheet, page);
  for (int column = 0; column < 2; column++)
    place_column(flow, sheet, &share, column, y, page);
  return page;
}

/* --- Items --- */

/* The cards of a subject whose tables do not go on one sheet. FALSE when not even its templates do. */
static gboolean
add_chain(Flow *flow, const SpvSubject *subject) {
  SpvPlan plan;

  if (!spv_variant_find_cut(flow->measuring, subject, flow->options->content, &flow->room, &plan))
    return FALSE;
  SpvCard *card = spv_card_new(flow->measuring, subject, flow->options, flow->room.wide_width, &plan);
  for (;;) {
    Item item = { .subject = subject, .made = card, .fresh = TRUE };
    g_array_append_val(flow->items, item);
    if (spv_card_is_complete(card))
      return TRUE;
    card = spv_card_new_continued(flow->measuring, subject, flow->room.wide_width, flow->room.wide_height,
                                  card->after);
  }
}

static gboolean
add_items(Flow *flow, const SpvSubject *subject) {
  GArray *variants = spv_variants_new(flow->measuring, subject, flow->options->content, &flow->room);
  Item item = { .subject = subject, .variants = variants };

  if (variants->len == 0) {
    g_array_unref(variants);
    return add_chain(flow, subject);
  }
  g_array_append_val(flow->items, item);
  return TRUE;
}

static GPtrArray *
make_pages(const Flow *flow) {
  g_autoptr(GPtrArray) sheets = put_at_best_level(flow);
  GPtrArray *pages = g_ptr_array_new_with_free_func((GDestroyNotify) spv_page_free);

  for (guint i = 0; i < sheets->len; i++) {
    const GArray *sheet = g_ptr_array_index(sheets, i);
    grow_all(flow, sheet);
    match_pairs(flow, sheet);
    g_ptr_array_add(pages, make_page(flow, sheet));
  }
  return pages;
}

GPtrArray *
spv_flow(cairo_t *measuring, GPtrArray *subjects, const SpvCardOptions *options, const SpvFrame *frame,
         const SpvSubject **misfit) {
  const SpvBox *columns = frame->columns;
  Flow flow = { measuring,
                options,
                frame,
                { spv_box_width(columns[0]), MAX(spv_box_height(columns[0]), spv_box_height(columns[1])),
                  spv_box_width(frame->free), spv_box_height(frame->free) },
                g_array_new(FALSE, FALSE, sizeof(Item)) };
  GPtrArray *pages = NULL;

  g_array_set_clear_func(flow.items, item_clear);
  for (guint i = 0; i < subjects->len && *misfit == NULL; i++)
    if (!add_items(&flow, g_ptr_array_index(subjects, i)))
      *misfit = g_ptr_array_index(subjects, i);
  if (*misfit == NULL)
    pages = make_pages(&flow);
  g_array_unref(flow.items);
  return pages;
}
