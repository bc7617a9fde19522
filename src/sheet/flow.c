/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/flow.h"

/* Where two columns would be too narrow for an enlargement beside its templates, there is one. */
#define TWO_COLUMNS_FROM 160.0

/* The ways to lay a card out that are tried: from ample to thrifty. */
static const SpvThrift thrifts[] = { { SPV_FIGURE_MOST, 1 }, { 64, 0.8 }, { 54, 0.6 }, { 46, 0.4 } };
#define N_THRIFTS G_N_ELEMENTS(thrifts)

/* One subject's cards, by thrift: the first, and where its tables go on the next ones. */
typedef struct {
  GPtrArray *cards[N_THRIFTS]; /* SpvCard */
  guint chosen;
} Choice;

typedef struct {
  cairo_t *measuring;
  SpvCardOptions options;
  SpvBox box;
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
add_page(const Flow *flow, GPtrArray *pages) {
  SpvPage *page = g_new0(SpvPage, 1);

  page->cards = g_ptr_array_new_with_free_func(placed_free);
  page->bottoms[0] = page->bottoms[1] = flow->box.y0;
  g_ptr_array_add(pages, page);
  return page;
}

static double
half_width(const Flow *flow) {
  return (spv_box_width(flow->box) - SPV_PAGE_GAP) / 2;
}

/* Puts CARD on PAGE, if there is room. */
static gboolean
place_on(const Flow *flow, SpvPage *page, SpvCard *card) {
  gboolean wide = card->width > half_width(flow) + 1e-6;
  guint column = !wide && page->bottoms[1] < page->bottoms[0] - 1e-6 ? 1 : 0;
  double y = wide ? MAX(page->bottoms[0], page->bottoms[1]) : page->bottoms[column];

  if (y + card->height > flow->box.y1 + 1e-6)
    return FALSE;
  SpvPlacedCard *placed = g_new(SpvPlacedCard, 1);
  placed->card = spv_card_ref(card);
  placed->at = spv_point(flow->box.x0 + column * (half_width(flow) + SPV_PAGE_GAP), y);
  g_ptr_array_add(page->cards, placed);
  if (wide)
    page->bottoms[0] = page->bottoms[1] = y + card->height + SPV_PAGE_GAP;
  else
    page->bottoms[column] = y + card->height + SPV_PAGE_GAP;
  return TRUE;
}

static void
place_on_new(const Flow *flow, GPtrArray *pages, SpvCard *card) {
  gboolean placed = place_on(flow, add_page(flow, pages), card);

  g_assert(placed); /* a card is never higher than an empty page */
}

static void
place_first_fit(const Flow *flow, GPtrArray *pages, SpvCard *card) {
  for (guint i = 0; i < pages->len; i++)
    if (place_on(flow, g_ptr_array_index(pages, i), card))
      return;
  place_on_new(flow, pages, card);
}

/* The card of SUBJECT in one column or across the page, whichever costs less paper; NULL when neither can be.
 */
static SpvCard *
choose_width(const Flow *flow, const SpvSubject *subject) {
  double width = spv_box_width(flow->box), height = spv_box_height(flow->box);
  g_autoptr(SpvCard) wide = spv_card_new(flow->measuring, subject, &flow->options, width, height);
  g_autoptr(SpvCard) narrow = NULL;

  if (width >= TWO_COLUMNS_FROM)
    narrow = spv_card_new(flow->measuring, subject, &flow->options, half_width(flow), height);
  if (narrow == NULL || !spv_card_is_complete(narrow))
    return g_steal_pointer(&wide);
  if (wide == NULL || !spv_card_is_complete(wide) || narrow->cost <= wide->cost)
    return g_steal_pointer(&narrow);
  return g_steal_pointer(&wide);
}

/* SUBJECT's card, and those on which its tables go on; NULL when it can't go on the paper. */
static GPtrArray *
make_cards(const Flow *flow, const SpvSubject *subject) {
  SpvCard *card = choose_width(flow, subject);
  GPtrArray *cards;

  if (card == NULL)
    return NULL;
  cards = g_ptr_array_new_with_free_func((GDestroyNotify) spv_card_free);
  g_ptr_array_add(cards, card);
  while (!spv_card_is_complete(card)) {
    card = spv_card_new_continued(flow->measuring, subject, spv_box_width(flow->box),
                                  spv_box_height(flow->box), card->after);
    g_ptr_array_add(cards, card);
  }
  return cards;
}

/* The pages of the cards chosen. A card that goes on has a sheet to itself, as has what follows of it. */
static GPtrArray *
place_all(const Flow *flow, const Choice *choices, guint n) {
  GPtrArray *pages = g_ptr_array_new_with_free_func((GDestroyNotify) spv_page_free);

  for (guint i = 0; i < n; i++) {
    GPtrArray *cards = choices[i].cards[choices[i].chosen];
    for (guint j = 0; j < cards->len; j++) {
      if (cards->len == 1)
        place_first_fit(flow, pages, g_ptr_array_index(cards, j));
      else
        place_on_new(flow, pages, g_ptr_array_index(cards, j));
    }
  }
  return pages;
}

static guint
count_pages(const Flow *flow, const Choice *choices, guint n) {
  g_autoptr(GPtrArray) pages = place_all(flow, choices, n);

  return pages->len;
}

/* The same thrift for all: the one with the fewest sheets, the most ample among equals. Returns their number.
 */
static guint
choose_one_thrift(const Flow *flow, Choice *choices, guint n) {
  guint best = 0, least = G_MAXUINT;

  for (guint thrift = 0; thrift < N_THRIFTS; thrift++) {
    for (guint i = 0; i < n; i++)
      choices[i].chosen = thrift;
    guint pages = count_pages(flow, choices, n);
    if (pages < least) {
      least = pages;
      best = thrift;
    }
  }
  for (guint i = 0; i < n; i++)
    choices[i].chosen = best;
  return least;
}

/* Makes one card after the other as ample as the sheets allow. */
static void
use_what_is_left(const Flow *flow, Choice *choices, guint n, guint pages) {
  for (guint i = 0; i < n; i++) {
    guint before = choices[i].chosen;
    for (choices[i].chosen = 0; choices[i].chosen < before; choices[i].chosen++)
      if (count_pages(flow, choices, n) <= pages)
        break;
  }
}

/* Makes every card in every thrift. FALSE, with MISFIT set, when one can't go on the paper. */
static gboolean
make_choices(Flow *flow, GPtrArray *subjects, Choice *choices, const SpvSubject **misfit) {
  for (guint i = 0; i < subjects->len; i++)
    for (guint thrift = 0; thrift < N_THRIFTS; thrift++) {
      flow->options.thrift = thrifts[thrift];
      choices[i].cards[thrift] = make_cards(flow, g_ptr_array_index(subjects, i));
      if (choices[i].cards[thrift] == NULL) {
        *misfit = g_ptr_array_index(subjects, i);
        return FALSE;
      }
    }
  return TRUE;
}

static void
free_choices(Choice *choices, guint n) {
  for (guint i = 0; i < n; i++)
    for (guint thrift = 0; thrift < N_THRIFTS; thrift++)
      g_clear_pointer(&choices[i].cards[thrift], g_ptr_array_unref);
  g_free(choices);
}

GPtrArray *
spv_flow(cairo_t *measuring, GPtrArray *subjects, const SpvCardOptions *options, SpvBox free_box,
         const SpvSubject **misfit) {
  Flow flow = { measuring, *options, free_box };
  Choice *choices = g_new0(Choice, subjects->len);
  GPtrArray *pages = NULL;

  if (make_choices(&flow, subjects, choices, misfit)) {
    guint least = choose_one_thrift(&flow, choices, subjects->len);
    use_what_is_left(&flow, choices, subjects->len, least);
    pages = place_all(&flow, choices, subjects->len);
  }
  free_choices(choices, subjects->len);
  return pages;
}
