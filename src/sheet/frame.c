/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/frame.h"

#include <glib/gi18n-lib.h>

#include "sheet/frame-private.h"
#include "sheet/wording.h"

#define PADDING 4.0
#define NARROW_PADDING 3.0 /* on paper too narrow for the other */
#define NARROW_PAPER 160.0
#define BAR_HEIGHT 9.0 /* with its words */
#define BAR_TICK 2.2
#define BAR_LONG_TICK 3.4
#define BAR_STEP 10.0
#define GAP 3.0
#define MAX_CAUTION_LINES 6

const char *
spv_scale_statement(void) {
  return _("1:1, print at 100\u2009%, no fitting");
}

static const char *
caution_words(void) {
  return _(
      "Fresh blade, cutting mat, cut away from the hand. Ventilate when you spray, and wear the respirator "
      "that the product asks for. Labels, data sheets and local rules come first.");
}

SpvFrame *
spv_frame_new(cairo_t *measuring, const SpvPaper *paper) {
  SpvFrame *frame = g_new0(SpvFrame, 1);
  double padding = paper->width < NARROW_PAPER ? NARROW_PADDING : PADDING;

  frame->frame = spv_box_grow((SpvBox){ 0, 0, paper->width, paper->height }, -SPV_FRAME_MARGIN);
  double left = frame->frame.x0 + padding;
  double caution_width = MAX(SPV_CARD_WIDTH, MIN(SPV_BAR_LENGTH, spv_box_width(frame->frame) / 2));
  frame->cautions = spv_words_wrap(measuring, caution_words(), SPV_WORDS_BODY, FALSE, caution_width,
                                   MAX_CAUTION_LINES);
  frame->caution = spv_point(left,
                             frame->frame.y1 - padding - SPV_LINE_PITCH * g_strv_length(frame->cautions));
  double card_bottom = frame->caution.y - GAP / 2;
  frame->card = (SpvBox){ left, card_bottom - SPV_CARD_HEIGHT, left + SPV_CARD_WIDTH, card_bottom };
  frame->bar = spv_point(left, frame->card.y0 - GAP - BAR_HEIGHT + BAR_LONG_TICK);
  double title_left = MAX(left + MAX(SPV_CARD_WIDTH, caution_width) + padding, frame->frame.x1 - 84);
  frame->title = (SpvBox){ title_left, frame->card.y0, frame->frame.x1, frame->frame.y1 };
  frame->free = (SpvBox){ left, frame->frame.y0 + padding, frame->frame.x1 - padding,
                          frame->bar.y - BAR_LONG_TICK - padding };
  return frame;
}

void
spv_frame_free(SpvFrame *frame) {
  g_strfreev(frame->cautions);
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
    spv_draw_words(cr, labels[i], at.x + i * SPV_BAR_LENGTH / 2, at.y + 3.6, SPV_WORDS_BODY, aligns[i], FALSE,
                   1);
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
  g_auto(GStrv) lines = spv_words_wrap(cr, _("A bank card covers this frame when the scale is right."),
                                       SPV_WORDS_BODY, FALSE, spv_box_width(box) - 2 * SPV_CARD_RADIUS, 2);

  spv_set_rgb(cr, spv_grey);
  for (guint i = 0; lines[i] != NULL; i++)
    spv_draw_words(cr, lines[i], box.x0 + SPV_CARD_RADIUS, box.y0 + 5.2 + i * SPV_LINE_PITCH, SPV_WORDS_BODY,
                   0, FALSE, 1);
}

static void
draw_caution(cairo_t *cr, const SpvFrame *frame) {
  spv_set_rgb(cr, spv_grey);
  for (guint i = 0; frame->cautions[i] != NULL; i++)
    spv_draw_words(cr, frame->cautions[i], frame->caution.x, frame->caution.y + 2.7 + i * SPV_LINE_PITCH,
                   SPV_WORDS_BODY, 0, FALSE, 1);
}

void
spv_frame_draw(cairo_t *cr, const SpvFrame *frame, const SpvFrameWords *words) {
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
  SpvBox legend = { frame->card.x0 + SPV_CARD_RADIUS, frame->card.y0 + 8.5, frame->card.x1 - SPV_CARD_RADIUS,
                    frame->card.y1 - SPV_CARD_RADIUS };
  spv_legend_draw(cr, legend, words);
  draw_caution(cr, frame);
  spv_title_block_draw(cr, frame->title, words);
}
