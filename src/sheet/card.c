/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of all the ways to lay a card out (templates side by side or one below the other, the enlargement beside or
 * below them, the tables beside or below all that) the one is taken that uses least paper for what it shows.
 */
#include "config.h"

#include "sheet/card.h"

#include <glib/gi18n-lib.h>

#include "sheet/card-plan.h"
#include "sheet/figure.h"
#include "sheet/sheet.h"
#include "sheet/wording.h"

#define DETAIL_PITCH SPV_LINE_PITCH
#define HEAD_TITLE 4.6
#define HEAD_BELOW 2.2

static void
piece_free(gpointer data) {
  SpvCardPiece *piece = data;

  g_free(piece->words);
  g_free(piece);
}

static SpvCardPiece *
add_piece(SpvCard *card, SpvCardPieceKind kind, SpvBox box) {
  SpvCardPiece *piece = g_new0(SpvCardPiece, 1);

  piece->kind = kind;
  piece->box = box;
  g_ptr_array_add(card->pieces, piece);
  return piece;
}

/* Words on the baseline at the bottom of a box that starts at (X, Y). */
static void
add_words(SpvCard *card, cairo_t *measuring, const char *text, double x, double y, double size,
          gboolean bold) {
  double width = spv_words_width(measuring, text, size, bold, 1);
  SpvCardPiece *piece = add_piece(card, SPV_PIECE_WORDS, (SpvBox){ x, y, x + width, y + size });

  piece->words = g_strdup(text);
  piece->size = size;
  piece->bold = bold;
}

static SpvCard *
card_new(const SpvSubject *subject, double width) {
  SpvCard *card = g_rc_box_new0(SpvCard);

  card->subject = subject;
  card->width = width;
  card->pieces = g_ptr_array_new_with_free_func(piece_free);
  return card;
}

static void
card_clear(gpointer data) {
  g_ptr_array_unref(((SpvCard *) data)->pieces);
}

SpvCard *
spv_card_ref(SpvCard *card) {
  return g_rc_box_acquire(card);
}

void
spv_card_free(SpvCard *card) {
  g_rc_box_release_full(card, card_clear);
}

gboolean
spv_card_is_complete(const SpvCard *card) {
  return spv_tables_at_end(card->subject->tables, card->after);
}

/* The card's name, and DETAIL below it unless NULL. Returns where the head ends. */
static double
add_head(SpvCard *card, cairo_t *measuring, const char *title, const char *detail) {
  double inner = card->width - 2 * SPV_CARD_PADDING, y = SPV_CARD_PADDING;
  g_autofree char *shown = spv_words_shorten(measuring, title, SPV_WORDS_CARD_TITLE, TRUE, inner);

  add_words(card, measuring, shown, SPV_CARD_PADDING, y, SPV_WORDS_CARD_TITLE, TRUE);
  y += HEAD_TITLE;
  if (detail != NULL) {
    g_auto(GStrv) lines = spv_words_wrap(measuring, detail, SPV_WORDS_BODY, FALSE, inner, 2);
    for (guint i = 0; lines[i] != NULL; i++, y += DETAIL_PITCH) {
      add_words(card, measuring, lines[i], SPV_CARD_PADDING, y, SPV_WORDS_BODY, FALSE);
      ((SpvCardPiece *) g_ptr_array_index(card->pieces, card->pieces->len - 1))->grey = TRUE;
    }
  }
  return y + HEAD_BELOW;
}

static void
add_parts(SpvCard *card, GArray *parts, double x, double y) {
  for (guint i = 0; i < parts->len; i++) {
    const SpvTablePart *part = &g_array_index(parts, SpvTablePart, i);
    double top = y + part->y;
    SpvCardPiece *piece = add_piece(
        card, SPV_PIECE_TABLE, (SpvBox){ x, top, x + part->table->width, top + spv_table_part_height(part) });
    piece->table = *part;
  }
}

/* Adds the tables from PLACE on below TOP, in the columns of COLUMNS. Returns where they end. */
static double
add_columns(SpvCard *card, SpvTablePlace *place, const SpvColumns *columns, double top) {
  double bottom = top;

  for (guint i = 0; i < columns->n; i++) {
    g_autoptr(GArray) parts = g_array_new(FALSE, FALSE, sizeof(SpvTablePart));
    double used = spv_tables_fill(card->subject->tables, place, columns->height, parts);
    add_parts(card, parts, SPV_CARD_PADDING + i * columns->pitch, top);
    bottom = MAX(bottom, top + used);
  }
  return bottom;
}

static void
add_template(SpvCard *card, const SpvPlan *plan, guint index, double top, const SpvCardOptions *options) {
  double width = spv_box_width(card->subject->bounds), height = spv_box_height(card->subject->bounds);
  double x = SPV_CARD_PADDING + SPV_TEMPLATE_CLEAR;
  double y = top + SPV_CAPTION_HEIGHT + SPV_TEMPLATE_CLEAR;

  if (plan->beside)
    x += index * (width + 2 * SPV_TEMPLATE_CLEAR);
  else
    y += index * (height + 2 * SPV_TEMPLATE_CLEAR);
  SpvCardPiece *piece = add_piece(card, SPV_PIECE_TEMPLATE, (SpvBox){ x, y, x + width, y + height });
  piece->at = spv_point(x, y);
  piece->mode = index == 0 ? options->mode : SPV_DRAW_LINES;
  piece->marked = plan->marked && index + 1 == plan->n_templates;
}

static void
add_templates(SpvCard *card, cairo_t *measuring, const SpvPlan *plan, double top,
              const SpvCardOptions *options) {
  if (plan->n_templates == 0)
    return;
  add_words(card, measuring, _("1:1, to cut out"), SPV_CARD_PADDING, top, SPV_WORDS_BODY, FALSE);
  for (guint i = 0; i < plan->n_templates; i++)
    add_template(card, plan, i, top, options);
}

static void
add_figure(SpvCard *card, cairo_t *measuring, const SpvPlan *plan, double top, SpvDrawMode mode) {
  SpvBox extent = spv_figure_extent(card->subject, plan->factor);
  double x = SPV_CARD_PADDING + plan->figure_x, y = top + plan->figure_y;

  if (plan->factor == 0)
    return;
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *caption = g_strdup_printf("\u00d7\u2009%s",
                                             g_ascii_dtostr(number, sizeof number, plan->factor));
  add_words(card, measuring, caption, x, y, SPV_WORDS_BODY, FALSE);
  y += SPV_CAPTION_HEIGHT;
  SpvCardPiece *piece = add_piece(card, SPV_PIECE_FIGURE,
                                  (SpvBox){ x, y, x + spv_box_width(extent), y + spv_box_height(extent) });
  piece->at = spv_point(x - extent.x0, y - extent.y0);
  piece->factor = plan->factor;
  piece->mode = mode;
}

SpvCard *
spv_card_new(cairo_t *measuring, const SpvSubject *subject, const SpvCardOptions *options, double width,
             double max_height) {
  g_autoptr(SpvCard) card = card_new(subject, width);
  double top = add_head(card, measuring, subject->title, subject->detail);
  gboolean tables = (options->content & SPV_CONTENT_OFFSETS) != 0;
  SpvPlan plan;

  if (!spv_plan_find(subject, options->content, &options->thrift, width - 2 * SPV_CARD_PADDING,
                     max_height - top - SPV_CARD_PADDING, &plan))
    return NULL;
  add_templates(card, measuring, &plan, top, options);
  add_figure(card, measuring, &plan, top, options->mode);
  double bottom = top + plan.height;
  card->after = (SpvTablePlace){ tables ? 0 : subject->tables->len, 0 };
  if (plan.side) {
    g_autoptr(GArray) parts = g_array_new(FALSE, FALSE, sizeof(SpvTablePart));
    spv_tables_fill(subject->tables, &card->after, plan.side_height, parts);
    add_parts(card, parts, SPV_CARD_PADDING + plan.side_x, top);
    bottom = MAX(bottom, top + plan.side_used);
  }
  if (plan.columns.n > 0)
    bottom = add_columns(card, &card->after, &plan.columns, bottom + (plan.height > 0 ? SPV_CARD_GAP : 0));
  card->height = bottom + SPV_CARD_PADDING;
  card->cost = width * plan.cost;
  return g_steal_pointer(&card);
}

SpvCard *
spv_card_new_continued(cairo_t *measuring, const SpvSubject *subject, double width, double max_height,
                       SpvTablePlace place) {
  SpvCard *card = card_new(subject, width);
  g_autofree char *title = g_strdup_printf(_("%s, continued"), subject->title);
  double top = add_head(card, measuring, title, NULL);
  SpvColumns columns;

  spv_columns_find(subject, place, width - 2 * SPV_CARD_PADDING, max_height - top - SPV_CARD_PADDING,
                   &columns);
  card->after = place;
  card->height = add_columns(card, &card->after, &columns, top) + SPV_CARD_PADDING;
  return card;
}

void
spv_card_least(const SpvSubject *subject, double *width, double *height) {
  double head = SPV_CARD_PADDING + HEAD_TITLE + 2 * DETAIL_PITCH + HEAD_BELOW;

  *width = spv_box_width(subject->bounds) + 2 * SPV_TEMPLATE_CLEAR + 2 * SPV_CARD_PADDING;
  *height = head + SPV_CAPTION_HEIGHT + spv_box_height(subject->bounds) + 2 * SPV_TEMPLATE_CLEAR +
            SPV_CARD_PADDING;
}

static void
draw_piece(cairo_t *cr, const SpvCard *card, const SpvCardPiece *piece) {
  switch (piece->kind) {
  case SPV_PIECE_WORDS:
    spv_set_rgb(cr, piece->grey ? spv_grey : spv_ink);
    spv_draw_words(cr, piece->words, piece->box.x0, piece->box.y1, piece->size, 0, piece->bold, 1);
    break;
  case SPV_PIECE_TEMPLATE:
    spv_template_draw(cr, card->subject, piece->at, piece->mode, piece->marked);
    break;
  case SPV_PIECE_FIGURE:
    spv_figure_draw(cr, card->subject, piece->at, piece->factor, piece->mode);
    break;
  case SPV_PIECE_TABLE:
    spv_table_part_draw(cr, &piece->table, piece->box.x0, piece->box.y0);
    break;
  }
}

void
spv_card_draw(cairo_t *cr, const SpvCard *card, SpvPoint at) {
  SpvBox clip;

  cairo_save(cr);
  cairo_translate(cr, at.x, at.y);
  spv_set_rgb(cr, spv_grey);
  cairo_set_line_width(cr, SPV_LINE_HATCH);
  cairo_rectangle(cr, 0, 0, card->width, card->height);
  cairo_stroke(cr);
  cairo_clip_extents(cr, &clip.x0, &clip.y0, &clip.x1, &clip.y1);
  for (guint i = 0; i < card->pieces->len; i++) {
    const SpvCardPiece *piece = g_ptr_array_index(card->pieces, i);
    if (spv_box_overlaps(clip, spv_box_grow(piece->box, 2)))
      draw_piece(cr, card, piece);
  }
  cairo_restore(cr);
}
