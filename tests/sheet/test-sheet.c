/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Laying sheets out: true size, no overlap, nothing lost, and errors that say what would do. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "coast.h"
#include "sheet/figure.h"
#include "sheet/offsets.h"
#include "sheet/sheet-private.h"
#include "sheet/wording.h"
#include "support/near.h"

/* Looser than any rounding in the layout, tighter than anything an eye can see. */
#define NEAR 1e-6

static SpvSheets *
lay_out(const SpvScheme *scheme, const char *paper, guint content) {
  SpvSheetOptions options = spv_sheet_options_preset();
  g_autoptr(GError) error = NULL;

  options.paper = spv_paper_from_key(paper);
  options.content = content;
  SpvSheets *sheets = spv_sheets_new(scheme, &options, NULL, &error);
  if (sheets == NULL)
    fail_msg("%s", error->message);
  return sheets;
}

static SpvBox
card_box(const SpvPlacedCard *placed) {
  return (SpvBox){ placed->at.x, placed->at.y, placed->at.x + placed->card->width,
                   placed->at.y + placed->card->height };
}

static gboolean
is_within(SpvBox inner, SpvBox outer) {
  return inner.x0 >= outer.x0 - NEAR && inner.y0 >= outer.y0 - NEAR && inner.x1 <= outer.x1 + NEAR &&
         inner.y1 <= outer.y1 + NEAR;
}

static const SpvCardPiece *
piece_at(const SpvCard *card, guint index) {
  return g_ptr_array_index(card->pieces, index);
}

/* What a piece must keep for itself: a template has white round it. */
static SpvBox
piece_room(const SpvCardPiece *piece) {
  return piece->kind == SPV_PIECE_TEMPLATE ? spv_box_grow(piece->box, SPV_TEMPLATE_CLEAR) : piece->box;
}

static void
check_card(const SpvCard *card) {
  SpvBox whole = { 0, 0, card->width, card->height };

  for (guint i = 0; i < card->pieces->len; i++) {
    assert_true(is_within(piece_room(piece_at(card, i)), whole));
    for (guint j = i + 1; j < card->pieces->len; j++) {
      SpvBox a = spv_box_grow(piece_room(piece_at(card, i)), -NEAR);
      /* Two templates may share the white between them. */
      SpvBox b = spv_box_grow(piece_at(card, j)->box, -NEAR);
      if (spv_box_overlaps(a, b))
        fail_msg("%s: pieces %u and %u of the card overlap", card->subject->title, i, j);
      SpvBox c = spv_box_grow(piece_at(card, i)->box, -NEAR),
             d = spv_box_grow(piece_room(piece_at(card, j)), -NEAR);
      if (spv_box_overlaps(c, d))
        fail_msg("%s: pieces %u and %u of the card overlap", card->subject->title, i, j);
    }
  }
}

static void
check_page(const SpvSheets *sheets, const SpvPage *page) {
  for (guint i = 0; i < page->cards->len; i++) {
    const SpvPlacedCard *a = g_ptr_array_index(page->cards, i);
    assert_true(is_within(card_box(a), sheets->frame->columns[0]) ||
                is_within(card_box(a), sheets->frame->columns[1]) ||
                is_within(card_box(a), sheets->frame->free));
    check_card(a->card);
    for (guint j = i + 1; j < page->cards->len; j++)
      assert_false(spv_box_overlaps(card_box(a), card_box(g_ptr_array_index(page->cards, j))));
  }
}

/* Every line of every table of SUBJECT is on some card, once, in order. */
static void
check_tables(const SpvSheets *sheets, const SpvSubject *subject) {
  SpvTablePlace next = { 0, 0 };

  for (guint i = 0; i < sheets->pages->len; i++) {
    const SpvPage *page = g_ptr_array_index(sheets->pages, i);
    for (guint j = 0; j < page->cards->len; j++) {
      const SpvCard *card = ((const SpvPlacedCard *) g_ptr_array_index(page->cards, j))->card;
      for (guint k = 0; card->subject == subject && k < card->pieces->len; k++) {
        const SpvTablePart *part = &piece_at(card, k)->table;
        if (piece_at(card, k)->kind != SPV_PIECE_TABLE)
          continue;
        assert_ptr_equal(part->table, g_ptr_array_index(subject->tables, next.table));
        assert_int_equal(part->first, next.line);
        assert_true(part->last > part->first);
        next.line = part->last;
        if (next.line == part->table->lines->len)
          next = (SpvTablePlace){ next.table + 1, 0 };
      }
    }
  }
  assert_int_equal(next.table, subject->tables->len);
}

static void
check_sheets(const SpvSheets *sheets, gboolean tables) {
  for (guint i = 0; i < sheets->pages->len; i++)
    check_page(sheets, g_ptr_array_index(sheets->pages, i));
  for (guint i = 0; tables && i < sheets->subjects->len; i++)
    check_tables(sheets, g_ptr_array_index(sheets->subjects, i));
}

static void
nothing_overlaps_and_no_line_is_lost_whatever_the_harness(void **state) {
  guint n;
  const SpvPaper *papers = spv_papers(&n);

  (void) state;
  for (guint32 seed = 0; seed < 14; seed++) {
    g_autoptr(SpvScheme) scheme = coast_by_chance(seed);
    for (guint i = 0; i < n; i++) {
      g_autoptr(SpvSheets) sheets = lay_out(scheme, papers[i].key, SPV_CONTENT_ALL);
      check_sheets(sheets, TRUE);
    }
  }
}

/* LINES from AT on end above FOOT, and stay within CARD. */
static void
check_lines(cairo_t *cr, char *const *lines, SpvPoint at, double foot, SpvBox card) {
  double bottom = at.y + (g_strv_length((char **) lines) - 1) * SPV_LINE_PITCH + SPV_WORDS_BODY;

  assert_true(bottom < foot);
  for (guint i = 0; lines[i] != NULL; i++) {
    double right = at.x + spv_words_width(cr, lines[i], SPV_WORDS_BODY, FALSE, 1);
    assert_true(is_within((SpvBox){ at.x, at.y, right, bottom }, card));
    /* Nothing was left out. */
    assert_null(strstr(lines[i], "\u2026"));
  }
}

static void
the_frame_holds_its_parts_apart_on_every_paper(void **state) {
  guint n;
  const SpvPaper *papers = spv_papers(&n);
  cairo_t *cr = spv_measuring_context_new();

  (void) state;
  for (guint i = 0; i < n; i++) {
    g_autoptr(SpvPageFrame) frame = spv_page_frame_new(cr, &papers[i], spv_tables_note());
    SpvBox bar = { frame->bar.x, frame->bar.y - 4, frame->bar.x + SPV_BAR_LENGTH, frame->bar.y + 4 };
    assert_near(spv_box_width(frame->card), SPV_CARD_WIDTH, NEAR);
    assert_near(spv_box_height(frame->card), SPV_CARD_HEIGHT, NEAR);
    const SpvBox parts[] = { frame->columns[0], frame->columns[1], bar, frame->card, frame->title };
    for (gsize j = 0; j < G_N_ELEMENTS(parts); j++) {
      assert_true(is_within(parts[j], frame->frame));
      for (gsize k = j + 1; k < G_N_ELEMENTS(parts); k++)
        assert_false(spv_box_overlaps(parts[j], parts[k]));
    }
    for (gsize j = 0; j < 2; j++)
      assert_true(frame->free.y1 <= frame->columns[j].y1 + NEAR);
    check_lines(cr, frame->note_lines, frame->notes, frame->caution.y, frame->card);
    check_lines(cr, frame->caution_lines, frame->caution, frame->card.y1, frame->card);
    assert_true(is_within(frame->legend, frame->card));
    assert_true(frame->legend.y1 <= frame->notes.y);
    assert_true(spv_box_height(frame->legend) >= 14); /* the heading and two rows */
    assert_true(spv_box_height(frame->free) >= 115);
  }
  cairo_destroy(cr);
}

static void
each_panel_has_some_templates_at_true_size(void **state) {
  g_autoptr(SpvScheme) scheme = coast_wardens();
  g_autoptr(SpvSheets) sheets = lay_out(scheme, "a4", SPV_CONTENT_ALL);
  SpvBox box;
  guint sheet;

  (void) state;
  for (guint i = 0; i < scheme->n_panels; i++) {
    const SpvPanel *panel = scheme->panels[i];
    guint n = 0;
    while (spv_sheets_find_template(sheets, panel->id, n, &sheet, &box)) {
      assert_true(sheet < spv_sheets_count(sheets));
      assert_near(spv_box_width(box), panel->outline.width, 2e-3);
      assert_near(spv_box_height(box), panel->outline.height, 2e-3);
      n++;
    }
    assert_in_range(n, 3, SPV_TEMPLATES_MOST); /* panels as small as these can be spoilt more than once */
  }
  assert_false(spv_sheets_find_template(sheets, "tail", 0, &sheet, &box));
}

static guint
count_pieces(const SpvSheets *sheets, SpvCardPieceKind kind) {
  guint n = 0;

  for (guint i = 0; i < sheets->pages->len; i++) {
    const SpvPage *page = g_ptr_array_index(sheets->pages, i);
    for (guint j = 0; j < page->cards->len; j++) {
      const SpvCard *card = ((const SpvPlacedCard *) g_ptr_array_index(page->cards, j))->card;
      for (guint k = 0; k < card->pieces->len; k++)
        n += piece_at(card, k)->kind == kind ? 1 : 0;
    }
  }
  return n;
}

static void
only_the_chosen_content_is_there(void **state) {
  g_autoptr(SpvScheme) scheme = coast_wardens();

  (void) state;
  for (guint content = 1; content <= SPV_CONTENT_ALL; content++) {
    g_autoptr(SpvSheets) sheets = lay_out(scheme, "a4", content);
    gboolean tables = (content & SPV_CONTENT_OFFSETS) != 0;
    if ((content & SPV_CONTENT_TEMPLATES) != 0)
      assert_true(count_pieces(sheets, SPV_PIECE_TEMPLATE) >= 2 * scheme->n_panels);
    else
      assert_int_equal(count_pieces(sheets, SPV_PIECE_TEMPLATE), 0);
    assert_int_equal(count_pieces(sheets, SPV_PIECE_FIGURE),
                     (content & SPV_CONTENT_ENLARGEMENTS) != 0 ? scheme->n_panels : 0);
    assert_int_equal(count_pieces(sheets, SPV_PIECE_TABLE) > 0, tables);
    check_sheets(sheets, tables);
  }
}

static void
a_large_panel_carries_its_marks_at_true_size(void **state) {
  g_autoptr(SpvScheme) scheme = coast_disc(120);
  g_autoptr(SpvSheets) sheets = lay_out(scheme, "a4", SPV_CONTENT_ALL);
  const SpvPage *page = g_ptr_array_index(sheets->pages, 0);
  const SpvCard *card = ((const SpvPlacedCard *) g_ptr_array_index(page->cards, 0))->card;
  gboolean marked = FALSE;

  (void) state;
  assert_int_equal(count_pieces(sheets, SPV_PIECE_FIGURE), 0);
  for (guint i = 0; i < card->pieces->len; i++)
    marked |= piece_at(card, i)->kind == SPV_PIECE_TEMPLATE && piece_at(card, i)->marked;
  assert_true(marked);
  check_sheets(sheets, TRUE);
}

static void
a_long_table_goes_on_over_several_sheets(void **state) {
  Coast coast = coast_begin("Quarry Row Pikes", "One banner");
  SpvLayer *layers[] = { coast_check(150), coast_border(180, 2, "gules") };
  coast_add(&coast, "banner", "banner", SPV_OUTLINE_BANNER, 60, 60, 0, layers, 2);
  g_autoptr(SpvScheme) scheme = coast_end(&coast);
  g_autoptr(SpvSheets) sheets = lay_out(scheme, "a5", SPV_CONTENT_ALL);
  const SpvPage *second = g_ptr_array_index(sheets->pages, 1);
  const SpvCard *card = ((const SpvPlacedCard *) g_ptr_array_index(second->cards, 0))->card;

  (void) state;
  assert_true(spv_sheets_count(sheets) > 3);
  assert_string_equal(piece_at(card, 0)->words, "Banner, continued");
  check_sheets(sheets, TRUE);
}

static void
small_cards_share_a_row(void **state) {
  Coast coast = coast_begin("Ashlar Guard", "Two gauntlets");
  for (int i = 0; i < 2; i++) {
    SpvLayer *field[] = { spv_layer_new("field", SPV_PATTERN_FIELD, "vert", NULL) };
    coast_add(&coast, i == 0 ? "dexter" : "sinister", "gauntlet", SPV_OUTLINE_RECTANGLE, 3, 3, 0, field, 1);
  }
  g_autoptr(SpvScheme) scheme = coast_end(&coast);
  g_autoptr(SpvSheets) sheets = lay_out(scheme, "a4", SPV_CONTENT_ALL);
  SpvBox a, b;
  guint on_a, on_b;

  (void) state;
  assert_true(spv_sheets_find_template(sheets, "dexter", 0, &on_a, &a));
  assert_true(spv_sheets_find_template(sheets, "sinister", 0, &on_b, &b));
  assert_int_equal(spv_sheets_count(sheets), 1);
  assert_near(a.y0, b.y0, NEAR);
  assert_true(b.x0 > a.x1);
}

static void
assert_refused(const SpvScheme *scheme, const SpvSheetOptions *options, SpvSheetError code,
               const char *words) {
  g_autoptr(GError) error = NULL;
  g_autoptr(SpvSheets) sheets = spv_sheets_new(scheme, options, NULL, &error);

  assert_null(sheets);
  assert_true(g_error_matches(error, SPV_SHEET_ERROR, (int) code));
  if (strstr(error->message, words) == NULL)
    fail_msg("\"%s\" does not say \"%s\"", error->message, words);
}

static void
an_unknown_panel_is_named_with_those_there_are(void **state) {
  g_autoptr(SpvScheme) scheme = coast_wardens();
  SpvSheetOptions options = spv_sheet_options_preset();
  const char *const panels[] = { "helm", "tail", NULL };

  (void) state;
  options.panels = panels;
  assert_refused(scheme, &options, SPV_SHEET_ERROR_PANEL, "\"tail\"");
  assert_refused(scheme, &options, SPV_SHEET_ERROR_PANEL, "kneepad-dexter, pad-sinister");
}

static void
a_scheme_without_a_design_has_nothing_to_print(void **state) {
  Coast coast = coast_begin("Ashlar Guard", "Bare");
  SpvLayer *hidden[] = { spv_layer_new("field", SPV_PATTERN_FIELD, "vert", NULL) };
  SpvLayer *shown = hidden[0];
  SpvSheetOptions options = spv_sheet_options_preset();
  const char *const panels[] = { "helm", NULL };

  (void) state;
  hidden[0] = spv_layer_with_hidden(shown, TRUE);
  spv_layer_unref(shown);
  coast_add(&coast, "helm", "helm", SPV_OUTLINE_STRIP, 2, 6, 0, hidden, 1);
  g_autoptr(SpvScheme) scheme = coast_end(&coast);
  assert_refused(scheme, &options, SPV_SHEET_ERROR_EMPTY, "Add a layer");
  options.panels = panels;
  assert_refused(scheme, &options, SPV_SHEET_ERROR_EMPTY, "Add a layer");
  options.content = 0;
  assert_refused(scheme, &options, SPV_SHEET_ERROR_OPTION, "choose templates");
}

static void
only_the_chosen_panels_are_printed(void **state) {
  g_autoptr(SpvScheme) scheme = coast_wardens();
  SpvSheetOptions options = spv_sheet_options_preset();
  const char *const panels[] = { "helm", "gauntlet", "helm", NULL };

  (void) state;
  options.panels = panels;
  g_autoptr(SpvSheets) sheets = spv_sheets_new(scheme, &options, NULL, NULL);
  assert_int_equal(count_pieces(sheets, SPV_PIECE_FIGURE), 2);
}

static void
a_panel_too_large_is_named_with_the_paper_that_would_do(void **state) {
  g_autoptr(SpvScheme) larger = coast_disc(150);
  g_autoptr(SpvScheme) largest = coast_disc(400);
  SpvSheetOptions options = spv_sheet_options_preset();

  (void) state;
  options.paper = spv_paper_from_key("a5");
  assert_refused(larger, &options, SPV_SHEET_ERROR_FIT, "Shield (150.0 × 150.0\u2009mm) is too large for A5");
  assert_refused(larger, &options, SPV_SHEET_ERROR_FIT, "would do: A4");
  assert_refused(largest, &options, SPV_SHEET_ERROR_FIT, "leave it out");
}

/* The promise of the error's message, at the edge: what fits by it is laid out. */
static void
the_largest_panel_that_fits_is_laid_out(void **state) {
  SpvSheetOptions options = spv_sheet_options_preset();
  double low = 50, high = 297;

  (void) state;
  while (high - low > 0.01) {
    double middle = (low + high) / 2;
    g_autoptr(SpvScheme) scheme = coast_disc(middle);
    g_autoptr(SpvSheets) sheets = spv_sheets_new(scheme, &options, NULL, NULL);
    if (sheets != NULL)
      low = middle;
    else
      high = middle;
  }
  g_autoptr(SpvScheme) scheme = coast_disc(low);
  g_autoptr(SpvSheets) sheets = lay_out(scheme, "a4", SPV_CONTENT_ALL);
  check_sheets(sheets, TRUE);
  assert_true(low > 150);
}

static void
a_cancelled_layout_ends(void **state) {
  g_autoptr(SpvScheme) scheme = coast_wardens();
  g_autoptr(GCancellable) cancellable = g_cancellable_new();
  g_autoptr(GError) error = NULL;
  SpvSheetOptions options = spv_sheet_options_preset();

  (void) state;
  g_cancellable_cancel(cancellable);
  assert_null(spv_sheets_new(scheme, &options, cancellable, &error));
  assert_true(g_error_matches(error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
}

/* The sheet on one surface of its own. */
static cairo_surface_t *
draw_whole(const SpvSheets *sheets, guint index, double scale) {
  const SpvPaper *paper = spv_sheets_paper(sheets);
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int) (paper->width * scale),
                                                        (int) (paper->height * scale));
  cairo_t *cr = cairo_create(surface);

  cairo_scale(cr, scale, scale);
  spv_sheets_draw(sheets, index, cr);
  assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy(cr);
  cairo_surface_flush(surface);
  return surface;
}

static guint32
pixel_at(cairo_surface_t *surface, double x, double y, double scale) {
  const guint8 *data = cairo_image_surface_get_data(surface);
  const guint32 *row = (const void *) (data +
                                       (gsize) (y * scale) * (gsize) cairo_image_surface_get_stride(surface));

  return row[(gsize) (x * scale)] & 0xffffff;
}

/* The shield's field is sable, #2b2f45 in coast.h. */
static void
a_template_shows_its_tincture_where_it_was_found(void **state) {
  g_autoptr(SpvScheme) scheme = coast_disc(20);
  g_autoptr(SpvSheets) sheets = lay_out(scheme, "a5", SPV_CONTENT_ALL);
  SpvBox box;
  guint sheet;

  (void) state;
  assert_true(spv_sheets_find_template(sheets, "shield", 0, &sheet, &box));
  cairo_surface_t *surface = draw_whole(sheets, sheet, 10);
  SpvPoint middle = spv_box_centre(box);
  assert_int_equal(pixel_at(surface, middle.x, middle.y, 10), 0x2b2f45);
  assert_int_equal(pixel_at(surface, box.x0 - 1, middle.y, 10), 0xffffff);
  for (guint n = 1; spv_sheets_find_template(sheets, "shield", n, &sheet, &box); n++)
    continue; /* the last copy is an outline to try on */
  middle = spv_box_centre(box);
  assert_int_equal(pixel_at(surface, middle.x, middle.y, 10), 0xffffff);
  cairo_surface_destroy(surface);
}

/* Outside of the frame, which is 0.25 mm wide about 8 mm from the edge, a printer may leave out anything. */
static void
nothing_is_drawn_outside_of_the_frame(void **state) {
  guint n;
  const SpvPaper *papers = spv_papers(&n);
  g_autoptr(SpvScheme) scheme = coast_wardens();

  (void) state;
  for (guint i = 0; i < n; i++) {
    g_autoptr(SpvSheets) sheets = lay_out(scheme, papers[i].key, SPV_CONTENT_ALL);
    for (guint j = 0; j < spv_sheets_count(sheets); j++) {
      cairo_surface_t *surface = draw_whole(sheets, j, 4);
      for (double y = 0.1; y < papers[i].height - 0.5; y += 0.25)
        for (double x = 0.1; x < papers[i].width - 0.5; x += 0.25) {
          gboolean inside = x > 7 && x < papers[i].width - 7 && y > 7 && y < papers[i].height - 7;
          if (!inside && pixel_at(surface, x, y, 4) != 0xffffff)
            fail_msg("ink at %g, %g of sheet %u on %s", x, y, j, papers[i].key);
        }
      cairo_surface_destroy(surface);
    }
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(nothing_overlaps_and_no_line_is_lost_whatever_the_harness),
    cmocka_unit_test(the_frame_holds_its_parts_apart_on_every_paper),
    cmocka_unit_test(each_panel_has_some_templates_at_true_size),
    cmocka_unit_test(only_the_chosen_content_is_there),
    cmocka_unit_test(a_large_panel_carries_its_marks_at_true_size),
    cmocka_unit_test(a_long_table_goes_on_over_several_sheets),
    cmocka_unit_test(small_cards_share_a_row),
    cmocka_unit_test(an_unknown_panel_is_named_with_those_there_are),
    cmocka_unit_test(a_scheme_without_a_design_has_nothing_to_print),
    cmocka_unit_test(only_the_chosen_panels_are_printed),
    cmocka_unit_test(a_panel_too_large_is_named_with_the_paper_that_would_do),
    cmocka_unit_test(the_largest_panel_that_fits_is_laid_out),
    cmocka_unit_test(a_cancelled_layout_ends),
    cmocka_unit_test(a_template_shows_its_tincture_where_it_was_found),
    cmocka_unit_test(nothing_is_drawn_outside_of_the_frame),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
