/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/flow.h"

#include "sheet/packing.h"

/* A card is made at most so much higher, mm, for its column to end at the foot. */
#define STRETCH_MOST 45.0

typedef struct {
  cairo_t *measuring;
  const SpvCardOptions *options;
  const SpvPageFrame *frame;
  SpvRoom room;
  SpvPacking *packing;
} Flow;

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

/* --- Cards in their places --- */

static SpvPlacedCard *
place(const Flow *flow, SpvPage *page, SpvItem *item, double x, double y) {
  SpvPlacedCard *placed = g_new(SpvPlacedCard, 1);

  placed->card = item->made != NULL
                     ? g_steal_pointer(&item->made)
                     : spv_card_new(flow->measuring, item->subject, flow->options,
                                    spv_item_chosen(item)->width, &spv_item_chosen(item)->plan);
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
    SpvItem *item = spv_packing_item(flow->packing, g_array_index(sheet, guint, i));
    if (spv_item_is_wide(item))
      y += place(flow, page, item, flow->frame->free.x0, y)->card->height + SPV_PAGE_GAP;
  }
  if (page->cards->len == sheet->len)
    stretch(page, 0, y, flow->frame->free.y1);
  return y;
}

/* Places the cards of one COLUMN from Y on. */
static void
place_column(const Flow *flow, const GArray *sheet, const SpvShare *share, int column, double y,
             SpvPage *page) {
  SpvBox box = flow->frame->columns[column];
  guint first = page->cards->len, narrow = 0;

  for (guint i = 0; i < sheet->len; i++) {
    SpvItem *item = spv_packing_item(flow->packing, g_array_index(sheet, guint, i));
    if (spv_item_is_wide(item) || (int) ((share->second >> narrow++) & 1) != column)
      continue;
    y += place(flow, page, item, box.x0, y)->card->height + SPV_PAGE_GAP;
  }
  stretch(page, first, y, box.y1);
}

static SpvPage *
make_page(const Flow *flow, const GArray *sheet) {
  SpvPage *page = g_new0(SpvPage, 1);
  SpvShare share;

  page->cards = g_ptr_array_new_with_free_func(placed_free);
  spv_packing_share(flow->packing, sheet, &share);
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
    SpvItem item = { .subject = subject, .made = card, .fresh = TRUE };
    g_array_append_val(flow->packing->items, item);
    if (spv_card_is_complete(card))
      return TRUE;
    card = spv_card_new_continued(flow->measuring, subject, flow->room.wide_width, flow->room.wide_height,
                                  card->after);
  }
}

static gboolean
add_items(Flow *flow, const SpvSubject *subject) {
  GArray *variants = spv_variants_new(flow->measuring, subject, flow->options->content, &flow->room);
  SpvItem item = { .subject = subject, .variants = variants };

  if (variants->len == 0) {
    g_array_unref(variants);
    return add_chain(flow, subject);
  }
  g_array_append_val(flow->packing->items, item);
  return TRUE;
}

static GPtrArray *
make_pages(const Flow *flow) {
  g_autoptr(GPtrArray) sheets = spv_packing_sheets(flow->packing);
  GPtrArray *pages = g_ptr_array_new_with_free_func((GDestroyNotify) spv_page_free);

  for (guint i = 0; i < sheets->len; i++) {
    const GArray *sheet = g_ptr_array_index(sheets, i);
    spv_packing_grow(flow->packing, sheet);
    g_ptr_array_add(pages, make_page(flow, sheet));
  }
  return pages;
}

GPtrArray *
spv_flow(cairo_t *measuring, GPtrArray *subjects, const SpvCardOptions *options, const SpvPageFrame *frame,
         const SpvSubject **misfit) {
  const SpvBox *columns = frame->columns;
  Flow flow = { measuring,
                options,
                frame,
                { spv_box_width(columns[0]), MAX(spv_box_height(columns[0]), spv_box_height(columns[1])),
                  spv_box_width(frame->free), spv_box_height(frame->free) },
                spv_packing_new(frame) };
  GPtrArray *pages = NULL;

  for (guint i = 0; i < subjects->len && *misfit == NULL; i++)
    if (!add_items(&flow, g_ptr_array_index(subjects, i)))
      *misfit = g_ptr_array_index(subjects, i);
  if (*misfit == NULL)
    pages = make_pages(&flow);
  spv_packing_free(flow.packing);
  return pages;
}
