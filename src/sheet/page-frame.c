/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/page-frame.h"

#include <glib/gi18n-lib.h>

#include "sheet/page-frame-private.h"
#include "sheet/wording.h"

#define PADDING 4.0
#define NARROW_PADDING 3.0 /* on paper too narrow for the other */
#define NARROW_PAPER 160.0
#define BAR_TICK 2.2
#define BAR_LONG_TICK 3.4
#define BAR_STEP 10.0
#define BAR_WORDS 3.6 /* their baseline below the bar */
#define GAP 3.0
#define CARD_WORDS 3.4 /* between the ID-1 outline and what stands in it */
#define WORDS_APART 1.6
#define MAX_LINES 6u

const char *
spv_scale_statement(void) {
  return _("1:1, print at 100\u2009%, no fitting");
}

static const char *
caution_words(void) {
  return _(
      "Fresh blade, cutting mat, cut away from the hand. Ventilate when you spray; wear the respirator that "
      "the product asks for. Labels, data sheets and local rules come first.");
}

/* TEXT in lines above BOTTOM, which moves up to their top. */
static char **
stack_lines(cairo_t *measuring, const char *text, double *bottom) {
  char **lines = spv_words_wrap(measuring, text, SPV_WORDS_BODY, FALSE, SPV_CARD_WIDTH - 2 * CARD_WORDS,
                                MAX_LINES);

  *bottom -= SPV_LINE_PITCH * g_strv_length(lines);
  return lines;
}

/* The ID-1 outline, and the words in it from its foot up. */
static void
place_card(cairo_t *measuring, SpvPageFrame *frame, const char *note, double left, double bottom) {
  double y = bottom - CARD_WORDS + SPV_LINE_PITCH - SPV_WORDS_BODY;

  frame->card = (SpvBox){ left, bottom - SPV_CARD_HEIGHT, left + SPV_CARD_WIDTH, bottom };
  frame->caution_lines = stack_lines(measuring, caution_words(), &y);
  frame->caution = spv_point(left + CARD_WORDS, y);
  y -= WORDS_APART;
  frame->note_lines = stack_lines(measuring, note != NULL ? note : "", &y);
  frame->notes = spv_point(left + CARD_WORDS, y);
  frame->legend = (SpvBox){ left + CARD_WORDS, frame->card.y0 + CARD_WORDS + SPV_LINE_PITCH + 0.6,
                            frame->card.x1 - CARD_WORDS, note != NULL ? y - WORDS_APART : y };
}

/* On wide paper the bar lies at the foot, below the card, and the title block stands beside both: its column
 * reaches further down than the other. On narrow paper the bar does not go beside the block, and lies above.
 */
SpvPageFrame *
spv_page_frame_new(cairo_t *measuring, const SpvPaper *paper, const char *note) {
  SpvPageFrame *frame = g_new0(SpvPageFrame, 1);
  gboolean narrow = paper->width < NARROW_PAPER;
  double padding = narrow ? NARROW_PADDING : PADDING;

  frame->frame = spv_box_grow((SpvBox){ 0, 0, paper->width, paper->height }, -SPV_FRAME_MARGIN);
  SpvBox inner = spv_box_grow(frame->frame, -padding);
  place_card(measuring, frame, note, inner.x0,
             narrow ? inner.y1 : inner.y1 - BAR_WORDS - BAR_LONG_TICK - GAP);
  frame->bar = spv_point(inner.x0, narrow ? frame->card.y0 - GAP / 2 - BAR_WORDS : inner.y1 - BAR_WORDS);
  double title_left = narrow ? frame->card.x1 + GAP
                             : MAX(inner.x0 + SPV_BAR_LENGTH + padding, frame->frame.x1 - 86);
  double title_top = narrow ? frame->card.y0 : frame->frame.y1 - spv_title_block_height();
  frame->title = (SpvBox){ title_left, title_top, frame->frame.x1, frame->frame.y1 };

  double left_foot = narrow ? frame->bar.y - BAR_LONG_TICK - padding : frame->card.y0 - padding;
  double right_foot = narrow ? left_foot : frame->title.y0 - padding;
  double middle = (inner.x0 + inner.x1) / 2;
  frame->columns[0] = (SpvBox){ inner.x0, inner.y0, middle - SPV_COLUMN_GAP / 2, left_foot };
  frame->columns[1] = (SpvBox){ middle + SPV_COLUMN_GAP / 2, inner.y0, inner.x1, right_foot };
  frame->free = (SpvBox){ inner.x0, inner.y0, inner.x1, MIN(left_foot, right_foot) };
  return frame;
}

void
spv_page_frame_free(SpvPageFrame *frame) {
  g_strfreev(frame->note_lines);
  g_strfreev(frame->caution_lines);
  g_free(frame);
}

static gboolean
is_shown(cairo_t *cr, SpvBox box) {
  SpvBox clip;

  cairo_clip_extents(cr, &clip.x0, &clip.y0, &clip.x1, &clip.y1);
  return spv_box_overlaps(clip, spv_box_grow(box, 1));
}

/* From end to end exactly 100 mm: the outer ticks stand within it, the others about their places. */
static void
draw_bar(cairo_t *cr, SpvPoint at) {
  static const char *const labels[] = { "0", "50", "100\u2009mm" };
  static const double aligns[] = { 0, 0.5, 1 };

  spv_set_rgb(cr, spv_ink);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_width(cr, 0.5);
  cairo_move_to(cr, at.x, at.y);
  cairo_rel_line_to(cr, SPV_BAR_LENGTH, 0);
  cairo_stroke(cr);
  cairo_set_line_width(cr, SPV_LINE_INK);
  for (int i = 0; i * BAR_STEP <= SPV_BAR_LENGTH; i++) {
    double inward = i == 0 ? SPV_LINE_INK / 2 : (i + 1) * BAR_STEP > SPV_BAR_LENGTH ? -SPV_LINE_INK / 2 : 0;
    cairo_move_to(cr, at.x + i * BAR_STEP + inward, at.y + 0.25);
    cairo_rel_line_to(cr, 0, i % 5 == 0 ? -BAR_LONG_TICK : -BAR_TICK);
  }
  cairo_stroke(cr);
  for (int i = 0; i < 3; i++)
    spv_draw_words(cr, labels[i], at.x + i * SPV_BAR_LENGTH / 2, at.y + BAR_WORDS, SPV_WORDS_BODY, aligns[i],
                   FALSE, 1);
}

static void
draw_card(cairo_t *cr, SpvBox box) {
  cairo_new_sub_path(cr);
  cairo_arc(cr, box.x1 - SPV_CARD_RADIUS, box.y0 + SPV_CARD_RADIUS, SPV_CARD_RADIUS, -G_PI_2, 0);
  cairo_arc(cr, box.x1 - SPV_CARD_RADIUS, box.y1 - SPV_CARD_RADIUS, SPV_CARD_RADIUS, 0, G_PI_2);
  cairo_arc(cr, box.x0 + SPV_CARD_RADIUS, box.y1 - SPV_CARD_RADIUS, SPV_CARD_RADIUS, G_PI_2, G_PI);
  cairo_arc(cr, box.x0 + SPV_CARD_RADIUS, box.y0 + SPV_CARD_RADIUS, SPV_CARD_RADIUS, G_PI, 3 * G_PI_2);
  cairo_close_path(cr);
  spv_set_rgb(cr, spv_ink);
  cairo_set_line_width(cr, SPV_LINE_INK);
  cairo_stroke(cr);
}

static void
draw_card_words(cairo_t *cr, SpvBox box) {
  g_autofree char *words = spv_words_shorten(cr, _("A bank card covers this frame when the scale is right."),
                                             SPV_WORDS_BODY, FALSE, spv_box_width(box) - 2 * CARD_WORDS);

  spv_set_rgb(cr, spv_grey);
  spv_draw_words(cr, words, box.x0 + CARD_WORDS, box.y0 + CARD_WORDS + SPV_WORDS_BODY, SPV_WORDS_BODY, 0,
                 FALSE, 1);
}

static void
draw_lines(cairo_t *cr, char *const *lines, SpvPoint at) {
  spv_set_rgb(cr, spv_grey);
  for (guint i = 0; lines[i] != NULL; i++)
    spv_draw_words(cr, lines[i], at.x, at.y + SPV_WORDS_BODY + i * SPV_LINE_PITCH, SPV_WORDS_BODY, 0, FALSE,
                   1);
}

void
spv_page_frame_draw(cairo_t *cr, const SpvPageFrame *frame, const SpvFrameWords *words) {
  SpvBox foot = { frame->frame.x0, frame->free.y1, frame->frame.x1, frame->frame.y1 };

  spv_set_rgb(cr, spv_ink);
  cairo_set_line_width(cr, SPV_LINE_FRAME);
  cairo_rectangle(cr, frame->frame.x0, frame->frame.y0, spv_box_width(frame->frame),
                  spv_box_height(frame->frame));
  cairo_stroke(cr);
  if (!is_shown(cr, foot))
    return;
  draw_bar(cr, frame->bar);
  draw_card(cr, frame->card);
  draw_card_words(cr, frame->card);
  spv_legend_draw(cr, frame->legend, words);
  draw_lines(cr, frame->note_lines, frame->notes);
  draw_lines(cr, frame->caution_lines, frame->caution);
  spv_title_block_draw(cr, frame->title, words);
}
