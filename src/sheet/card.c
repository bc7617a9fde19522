/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/card.h"

#include <glib/gi18n-lib.h>

#include "sheet/card-plan.h"
#include "sheet/figure.h"
#include "sheet/label.h"
#include "sheet/sheet.h"
#include "sheet/wording.h"

#define DETAIL_PITCH SPV_LINE_PITCH
#define HEAD_TITLE 4.6
#define HEAD_BELOW 2.2

static void
piece_free(gpointer data) {
  SpvCardPiece *piece = data;

  g_clear_pointer(&piece->labels, g_array_unref);
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
  SpvCard *card = g_new0(SpvCard, 1);

  card->subject = subject;
  card->width = width;
  card->pieces = g_ptr_array_new_with_free_func(piece_free);
  return card;
}

void
spv_card_free(SpvCard *card) {
  g_ptr_array_unref(card->pieces);
  g_free(card);
}

gboolean
spv_card_is_complete(const SpvCard *card) {
  return spv_tables_at_end(card->subject->tables, card->after);
}

/* The lines of a head's detail at WIDTH. */
static char **
wrap_detail(cairo_t *measuring, const char *detail, double width) {
  return spv_words_wrap(measuring, detail, SPV_WORDS_BODY, FALSE, width - 2 * SPV_CARD_PADDING, 2);
}

/* The card's name, and DETAIL below it unless NULL. Returns where the head ends. */
static double
add_head(SpvCard *card, cairo_t *measuring, const char *title, const char *detail) {
  double inner = card->width - 2 * SPV_CARD_PADDING, y = SPV_CARD_PADDING;
  g_autofree char *shown = spv_words_shorten(measuring, title, SPV_WORDS_CARD_TITLE, TRUE, inner);

  add_words(card, measuring, shown, SPV_CARD_PADDING, y, SPV_WORDS_CARD_TITLE, TRUE);
  y += HEAD_TITLE;
  if (detail != NULL) {
    g_auto(GStrv) lines = wrap_detail(measuring, detail, card->width);
    for (guint i = 0; lines[i] != NULL; i++, y += DETAIL_PITCH) {
      add_words(card, measuring, lines[i], SPV_CARD_PADDING, y, SPV_WORDS_BODY, FALSE);
      ((SpvCardPiece *) g_ptr_array_index(card->pieces, card->pieces->len - 1))->grey = TRUE;
    }
  }
  return y + HEAD_BELOW;
}

double
spv_card_surround(cairo_t *measuring, const SpvSubject *subject, double width) {
  g_auto(GStrv) lines = wrap_detail(measuring, subject->detail, width);

  return 2 * SPV_CARD_PADDING + HEAD_TITLE + g_strv_length(lines) * DETAIL_PITCH + HEAD_BELOW;
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

/* Adds the tables from PLACE on in the columns of COLUMNS, from (X, Y). Returns where they end. */
static double
add_columns(SpvCard *card, SpvTablePlace *place, const SpvColumns *columns, double x, double y) {
  double bottom = y;

  for (guint i = 0; i < columns->n; i++) {
    g_autoptr(GArray) parts = g_array_new(FALSE, FALSE, sizeof(SpvTablePart));
    double used = spv_tables_fill(card->subject->tables, place, columns->height, parts);
    add_parts(card, parts, x + i * columns->pitch, y);
    bottom = MAX(bottom, y + used);
  }
  return bottom;
}

/* How many of N copies are in colour; the others are outlines to try on. */
static guint
count_coloured(guint n) {
  return n >= 3 ? 2 : 1;
}

static void
add_template(SpvCard *card, cairo_t *measuring, const SpvPlan *plan, guint index, double top,
             const SpvCardOptions *options) {
  double width = spv_box_width(card->subject->bounds), height = spv_box_height(card->subject->bounds);
  double x = SPV_CARD_PADDING + plan->templates.x + SPV_TEMPLATE_CLEAR;
  double y = top + plan->templates.y + SPV_CAPTION_HEIGHT + SPV_TEMPLATE_CLEAR;

  if (plan->row)
    x += index * (width + SPV_TEMPLATE_APART);
  else
    y += index * (height + SPV_TEMPLATE_APART);
  SpvCardPiece *piece = add_piece(card, SPV_PIECE_TEMPLATE, (SpvBox){ x, y, x + width, y + height });
  piece->at = spv_point(x, y);
  piece->mode = index < count_coloured(plan->n_templates) ? options->mode : SPV_DRAW_LINES;
  piece->marked = plan->marked && index + 1 == plan->n_templates;
  if (piece->marked)
    piece->labels = spv_labels_new(measuring, card->subject, 1);
}

static void
add_templates(SpvCard *card, cairo_t *measuring, const SpvPlan *plan, double top,
              const SpvCardOptions *options) {
  if (plan->n_templates == 0)
    return;
  add_words(card, measuring, _("1:1, to cut out"), SPV_CARD_PADDING + plan->templates.x,
            top + plan->templates.y, SPV_WORDS_BODY, FALSE);
  for (guint i = 0; i < plan->n_templates; i++)
    add_template(card, measuring, plan, i, top, options);
}

static void
add_figure(SpvCard *card, cairo_t *measuring, const SpvPlan *plan, double top, SpvDrawMode mode) {
  SpvBox extent = spv_figure_extent(card->subject, plan->factor);
  double x = SPV_CARD_PADDING + plan->figure.x, y = top + plan->figure.y;

  if (plan->factor == 0)
    return;
  SpvCardPiece *piece = add_piece(card, SPV_PIECE_FIGURE,
                                  (SpvBox){ x, y, x + spv_box_width(extent), y + spv_box_height(extent) });
  piece->at = spv_point(x - extent.x0, y - extent.y0);
  piece->factor = plan->factor;
  piece->mode = mode;
  piece->labels = spv_labels_new(measuring, card->subject, plan->factor);
}

SpvCard *
spv_card_new(cairo_t *measuring, const SpvSubject *subject, const SpvCardOptions *options, double width,
             const SpvPlan *plan) {
  SpvCard *card = card_new(subject, width);
  double top = add_head(card, measuring, subject->title, subject->detail);
  gboolean tables = (options->content & SPV_CONTENT_OFFSETS) != 0;

  add_templates(card, measuring, plan, top, options);
  add_figure(card, measuring, plan, top, options->mode);
  card->after = (SpvTablePlace){ tables ? 0 : subject->tables->len, 0 };
  add_columns(card, &card->after, &plan->side, SPV_CARD_PADDING + plan->side_at.x, top + plan->side_at.y);
  add_columns(card, &card->after, &plan->below, SPV_CARD_PADDING, top + plan->below_y);
  card->height = top + plan->height + SPV_CARD_PADDING;
  return card;
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
  card->height = add_columns(card, &card->after, &columns, SPV_CARD_PADDING, top) + SPV_CARD_PADDING;
  return card;
}

static void
move_down(SpvCardPiece *piece, double by) {
  piece->box.y0 += by;
  piece->box.y1 += by;
  piece->at.y += by;
}

/* The enlargement, if it has no other piece beside it. */
static SpvCardPiece *
lone_figure(const SpvCard *card) {
  SpvCardPiece *figure = NULL;

  for (guint i = 0; i < card->pieces->len && figure == NULL; i++) {
    SpvCardPiece *piece = g_ptr_array_index(card->pieces, i);
    figure = piece->kind == SPV_PIECE_FIGURE ? piece : NULL;
  }
  for (guint i = 0; i < card->pieces->len && figure != NULL; i++) {
    const SpvCardPiece *piece = g_ptr_array_index(card->pieces, i);
    if (piece != figure && piece->box.y0 < figure->box.y1 && piece->box.y1 > figure->box.y0)
      return NULL;
  }
  return figure;
}

void
spv_card_stretch(SpvCard *card, double more) {
  SpvCardPiece *figure = lone_figure(card);

  card->height += more;
  if (figure == NULL)
    return;
  for (guint i = 0; i < card->pieces->len; i++) {
    SpvCardPiece *piece = g_ptr_array_index(card->pieces, i);
    if (piece->kind == SPV_PIECE_TABLE && piece->box.y0 >= figure->box.y1)
      move_down(piece, more);
  }
  move_down(figure, more / 2);
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
    spv_template_draw(cr, card->subject, piece->at, piece->mode, piece->labels);
    break;
  case SPV_PIECE_FIGURE:
    spv_figure_draw(cr, card->subject, piece->at, piece->factor, piece->mode, piece->labels);
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
