/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/flow.h"

/* Where two columns would be too narrow for an enlargement beside its templates, there is one. */
#define TWO_COLUMNS_FROM 160.0

typedef struct {
  cairo_t *measuring;
  const SpvCardOptions *options;
  SpvBox box;
  GPtrArray *pages;
  double dearth; /* what was given up, all together: the logarithm of its product */
} Flow;

static void
placed_free(gpointer data) {
  SpvPlacedCard *placed = data;

  spv_card_free(placed->card);
  g_free(placed);
}

void
spv_page_free(SpvPage *page) {
  g_ptr_array_unref(page->cards);
  g_free(page);
}

static SpvPage *
add_page(Flow *flow) {
  SpvPage *page = g_new0(SpvPage, 1);

  page->cards = g_ptr_array_new_with_free_func(placed_free);
  page->bottoms[0] = page->bottoms[1] = flow->box.y0;
  g_ptr_array_add(flow->pages, page);
  return page;
}

static double
half_width(const Flow *flow) {
  return (spv_box_width(flow->box) - SPV_PAGE_GAP) / 2;
}

/* Puts CARD on PAGE and takes it over, if there is room. */
static gboolean
place_on(const Flow *flow, SpvPage *page, SpvCard *card) {
  gboolean wide = card->width > half_width(flow) + 1e-6;
  guint column = !wide && page->bottoms[1] < page->bottoms[0] - 1e-6 ? 1 : 0;
  double y = wide ? MAX(page->bottoms[0], page->bottoms[1]) : page->bottoms[column];

  if (y + card->height > flow->box.y1 + 1e-6)
    return FALSE;
  SpvPlacedCard *placed = g_new(SpvPlacedCard, 1);
  placed->card = card;
  placed->at = spv_point(flow->box.x0 + column * (half_width(flow) + SPV_PAGE_GAP), y);
  g_ptr_array_add(page->cards, placed);
  if (wide)
    page->bottoms[0] = page->bottoms[1] = y + card->height + SPV_PAGE_GAP;
  else
    page->bottoms[column] = y + card->height + SPV_PAGE_GAP;
  return TRUE;
}

static void
place_on_new(Flow *flow, SpvCard *card) {
  gboolean placed = place_on(flow, add_page(flow), card);

  g_assert(placed); /* a card is never higher than an empty page */
}

static void
place_first_fit(Flow *flow, SpvCard *card) {
  for (guint i = 0; i < flow->pages->len; i++)
    if (place_on(flow, g_ptr_array_index(flow->pages, i), card))
      return;
  place_on_new(flow, card);
}

/* The card of SUBJECT in one column or across the page, whichever costs less paper; NULL when neither can be.
 */
static SpvCard *
choose_card(const Flow *flow, const SpvSubject *subject) {
  double width = spv_box_width(flow->box), height = spv_box_height(flow->box);
  g_autoptr(SpvCard) wide = spv_card_new(flow->measuring, subject, flow->options, width, height);
  g_autoptr(SpvCard) narrow = NULL;

  if (width >= TWO_COLUMNS_FROM)
    narrow = spv_card_new(flow->measuring, subject, flow->options, half_width(flow), height);
  if (narrow == NULL || !spv_card_is_complete(narrow))
    return g_steal_pointer(&wide);
  if (wide == NULL || !spv_card_is_complete(wide) || narrow->cost <= wide->cost)
    return g_steal_pointer(&narrow);
  return g_steal_pointer(&wide);
}

/* The rest of a card's tables, each part on a sheet of its own. */
static void
place_continued(Flow *flow, const SpvCard *first) {
  const SpvCard *before = first;

  while (!spv_card_is_complete(before)) {
    SpvCard *card = spv_card_new_continued(flow->measuring, before->subject, spv_box_width(flow->box),
                                           spv_box_height(flow->box), before->after);
    place_on_new(flow, card);
    before = card;
  }
}

/* Lays all SUBJECTS out; FALSE, with MISFIT set, when one can't go on the paper. */
static gboolean
place_all(Flow *flow, GPtrArray *subjects, const SpvSubject **misfit) {
  for (guint i = 0; i < subjects->len; i++) {
    const SpvSubject *subject = g_ptr_array_index(subjects, i);
    SpvCard *card = choose_card(flow, subject);
    if (card == NULL) {
      *misfit = subject;
      return FALSE;
    }
    flow->dearth += log(card->dearth);
    if (spv_card_is_complete(card)) {
      place_first_fit(flow, card);
    } else {
      place_on_new(flow, card);
      place_continued(flow, card);
    }
  }
  return TRUE;
}

/* The fewest sheets win; among equals the layout that gives up least. */
GPtrArray *
spv_flow(cairo_t *measuring, GPtrArray *subjects, const SpvCardOptions *options, SpvBox free_box,
         const SpvSubject **misfit) {
  static const double figures[] = { SPV_FIGURE_MOST, 64, 54, 46 }, weights[] = { 1, 0.5, 0 };
  g_autoptr(GPtrArray) best = NULL;
  double best_dearth = 0;

  for (guint i = 0; i < G_N_ELEMENTS(figures) * G_N_ELEMENTS(weights); i++) {
    SpvCardOptions thrifty = *options;
    g_autoptr(GPtrArray) pages = g_ptr_array_new_with_free_func((GDestroyNotify) spv_page_free);
    thrifty.thrift = (SpvThrift){ figures[i / G_N_ELEMENTS(weights)], weights[i % G_N_ELEMENTS(weights)] };
    Flow flow = { measuring, &thrifty, free_box, pages, 0 };
    if (!place_all(&flow, subjects, misfit))
      return NULL;
    if (best != NULL &&
        (pages->len > best->len || (pages->len == best->len && flow.dearth >= best_dearth - 1e-9)))
      continue;
    g_clear_pointer(&best, g_ptr_array_unref);
    best = g_steal_pointer(&pages);
    best_dearth = flow.dearth;
  }
  return g_steal_pointer(&best);
}
