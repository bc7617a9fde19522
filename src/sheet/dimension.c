/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dimension.h"

#include "draw/draw.h"
#include "sheet/wording.h"

#define LINE 0.13
#define GAP 1.0  /* between what is measured and its extension line */
#define PAST 1.2 /* how far that goes beyond the dimension line */
#define ARROW_LENGTH 2.0
#define ARROW_HALF 0.35
#define TAIL 3.0 /* of an arrow that points inward from outside */
#define FIGURE_ABOVE 0.8

/* An arrowhead with its tip at (X, 0), pointing the way of SIGN. */
static void
add_arrow(cairo_t *cr, double x, double sign) {
  cairo_move_to(cr, x, 0);
  cairo_rel_line_to(cr, -sign * ARROW_LENGTH, -ARROW_HALF);
  cairo_rel_line_to(cr, 0, 2 * ARROW_HALF);
  cairo_close_path(cr);
}

/* A level dimension line from (0, 0) to (LENGTH, 0), measured at y = FROM. */
static void
draw_level(cairo_t *cr, double length, double from, const char *figure) {
  double words = spv_words_width(cr, figure, SPV_WORDS_BODY, FALSE, 1);
  gboolean roomy = length >= MAX(words, 2 * ARROW_LENGTH + 1);
  double side = from < 0 ? 1 : -1;

  cairo_set_line_width(cr, LINE);
  cairo_move_to(cr, 0, from + side * GAP);
  cairo_line_to(cr, 0, side * PAST);
  cairo_move_to(cr, length, from + side * GAP);
  cairo_line_to(cr, length, side * PAST);
  cairo_move_to(cr, roomy ? 0 : -TAIL, 0);
  cairo_line_to(cr, roomy ? length : length + TAIL, 0);
  cairo_stroke(cr);
  add_arrow(cr, 0, roomy ? -1 : 1);
  add_arrow(cr, length, roomy ? 1 : -1);
  cairo_fill(cr);
  if (roomy)
    spv_draw_words(cr, figure, length / 2, -FIGURE_ABOVE, SPV_WORDS_BODY, 0.5, FALSE, 1);
  else
    spv_draw_words(cr, figure, length + TAIL + 0.8, SPV_WORDS_BODY / 2, SPV_WORDS_BODY, 0, FALSE, 1);
}

void
spv_dimension_draw_across(cairo_t *cr, double x0, double x1, double from, double at, const char *figure) {
  cairo_save(cr);
  cairo_translate(cr, x0, at);
  draw_level(cr, x1 - x0, from - at, figure);
  cairo_restore(cr);
}

void
spv_dimension_draw_down(cairo_t *cr, double y0, double y1, double from, double at, const char *figure) {
  cairo_save(cr);
  cairo_translate(cr, at, y1);
  cairo_rotate(cr, -G_PI_2);
  draw_level(cr, y1 - y0, from - at, figure);
  cairo_restore(cr);
}
