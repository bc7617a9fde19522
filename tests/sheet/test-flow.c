/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How well cards fill their sheets: few sheets, no large hole but on the last, pairs alike. And what the
 * tables give up where there is little room. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "coast.h"
#include "sheet/offsets.h"
#include "sheet/sheet-private.h"
#include "sheet/wording.h"
#include "support/near.h"

static SpvSheets *
lay_out(const SpvScheme *scheme, const char *paper) {
  SpvSheetOptions options = spv_sheet_options_preset();
  g_autoptr(GError) error = NULL;

  options.paper = spv_paper_from_key(paper);
  SpvSheets *sheets = spv_sheets_new(scheme, &options, NULL, &error);
  if (sheets == NULL)
    fail_msg("%s", error->message);
  return sheets;
}

static const SpvPlacedCard *
card_at(const SpvSheets *sheets, guint page, guint card) {
  const SpvPage *of = g_ptr_array_index(sheets->pages, page);

  return card < of->cards->len ? g_ptr_array_index(of->cards, card) : NULL;
}

/* The part of PAGE's columns that its cards cover. */
static double
cover(const SpvSheets *sheets, guint page) {
  double paper = 0, cards = 0;

  for (int i = 0; i < 2; i++)
    paper += spv_box_width(sheets->frame->columns[i]) * spv_box_height(sheets->frame->columns[i]);
  for (guint i = 0; card_at(sheets, page, i) != NULL; i++)
    cards += card_at(sheets, page, i)->card->width * card_at(sheets, page, i)->card->height;
  return cards / paper;
}

/* The seven panels of the wardens, with enlargements of at least 28 mm: two or three on a sheet of A4, and on
 * A5 all but the checked pads share one. */
static void
small_panels_take_few_sheets(void **state) {
  static const struct {
    const char *paper;
    guint most;
  } papers[] = { { "a4", 3 }, { "letter", 3 }, { "a5", 5 } };
  g_autoptr(SpvScheme) scheme = coast_wardens();

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(papers); i++) {
    g_autoptr(SpvSheets) sheets = lay_out(scheme, papers[i].paper);
    assert_in_range(spv_sheets_count(sheets), 1, papers[i].most);
  }
}

static void
only_the_last_sheet_has_a_large_hole(void **state) {
  g_autoptr(SpvScheme) scheme = coast_wardens();
  guint n;
  const SpvPaper *papers = spv_papers(&n);

  (void) state;
  for (guint i = 0; i < n; i++) {
    g_autoptr(SpvSheets) sheets = lay_out(scheme, papers[i].key);
    for (guint j = 0; j + 1 < spv_sheets_count(sheets); j++)
      if (cover(sheets, j) < 0.8)
        fail_msg("sheet %u on %s is only covered by %.2f", j, papers[i].key, cover(sheets, j));
  }
}

static void
each_panel_is_on_one_sheet_once(void **state) {
  (void) state;
  for (guint32 seed = 20; seed < 30; seed++) {
    g_autoptr(SpvScheme) scheme = coast_by_chance(seed);
    g_autoptr(SpvSheets) sheets = lay_out(scheme, "a4");
    g_autoptr(GHashTable) seen = g_hash_table_new(NULL, NULL);
    for (guint i = 0; i < spv_sheets_count(sheets); i++)
      for (guint j = 0; card_at(sheets, i, j) != NULL; j++) {
        const SpvCard *card = card_at(sheets, i, j)->card;
        const SpvCardPiece *second = card->pieces->len > 1 ? g_ptr_array_index(card->pieces, 1) : NULL;
        gboolean continued = second == NULL || second->kind == SPV_PIECE_TABLE;
        if (!continued)
          assert_true(g_hash_table_add(seen, (gpointer) card->subject));
      }
    assert_int_equal(g_hash_table_size(seen), scheme->n_panels);
  }
}

static double
factor_of(const SpvCard *card) {
  for (guint i = 0; i < card->pieces->len; i++) {
    const SpvCardPiece *piece = g_ptr_array_index(card->pieces, i);
    if (piece->kind == SPV_PIECE_FIGURE)
      return piece->factor;
  }
  return 0;
}

static SpvScheme *
two_doors(guint columns) {
  Coast coast = coast_begin("Ashlar Guard", "Two doors");

  for (int i = 0; i < 2; i++) {
    SpvLayer *check[] = { coast_check(columns) };
    coast_add(&coast, i == 0 ? "dexter" : "sinister", "door", SPV_OUTLINE_RECTANGLE, 11, 14, 0, check, 1);
  }
  return coast_end(&coast);
}

/* One column of an A4 sheet is higher than the other, so that with some checks one of the pair could grow
 * larger. */
static void
a_pair_is_drawn_alike(void **state) {
  (void) state;
  for (guint columns = 3; columns < 12; columns++) {
    g_autoptr(SpvScheme) scheme = two_doors(columns);
    g_autoptr(SpvSheets) sheets = lay_out(scheme, "a4");
    assert_int_equal(spv_sheets_count(sheets), 1);
    assert_true(factor_of(card_at(sheets, 0, 0)->card) > 2);
    assert_near(factor_of(card_at(sheets, 0, 0)->card), factor_of(card_at(sheets, 0, 1)->card), 1e-9);
  }
}

/* A large panel has a card across the sheet and a picture larger than a column is wide. */
static void
a_large_panel_gets_the_whole_width(void **state) {
  Coast coast = coast_begin("Heron Ferry Guild", "One hull");
  SpvLayer *layers[] = { spv_layer_new("fess", SPV_PATTERN_PER_FESS, "vert", "argent") };
  coast_add(&coast, "hull", "hull side", SPV_OUTLINE_RECTANGLE, 58, 21, 0, layers, 1);
  g_autoptr(SpvScheme) scheme = coast_end(&coast);
  g_autoptr(SpvSheets) sheets = lay_out(scheme, "a4");
  const SpvCard *card = card_at(sheets, 0, 0)->card;

  (void) state;
  assert_near(card->width, spv_box_width(sheets->frame->free), 1e-6);
  assert_true(58 * factor_of(card) > spv_box_width(sheets->frame->columns[0]));
}

static const SpvOffsetTable *
last_table(GPtrArray *tables) {
  return g_ptr_array_index(tables, tables->len - 1);
}

/* From ample to narrow: first the names go, then the way round the edge; never the ends along the edges. */
static void
narrow_tables_keep_what_counts(void **state) {
  static const struct {
    double room;
    guint columns;
  } rooms[] = { { 200, 5 }, { 76, 4 }, { 55, 3 } };
  g_autoptr(SpvScheme) scheme = coast_wardens();
  cairo_t *cr = spv_measuring_context_new();
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 1);
  g_autoptr(SpvGuide) guide = spv_guide_new(composition);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(rooms); i++) {
    g_autoptr(GPtrArray) tables = spv_tables_new(cr, guide, rooms[i].room);
    const SpvOffsetTable *table = last_table(tables);
    assert_int_equal(table->n_columns, rooms[i].columns);
    assert_true(table->width <= rooms[i].room);
    const SpvTableLine *header = g_ptr_array_index(table->lines, table->header);
    assert_string_equal(header->cells[rooms[i].columns == 5 ? 2 : 1], "One end,\nalong edge");
  }
  cairo_destroy(cr);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(small_panels_take_few_sheets),
    cmocka_unit_test(only_the_last_sheet_has_a_large_hole),
    cmocka_unit_test(each_panel_is_on_one_sheet_once),
    cmocka_unit_test(a_pair_is_drawn_alike),
    cmocka_unit_test(a_large_panel_gets_the_whole_width),
    cmocka_unit_test(narrow_tables_keep_what_counts),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
