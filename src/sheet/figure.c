/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/figure.h"

#include <glib/gi18n-lib.h>

#include "sheet/dimension.h"
#include "sheet/wording.h"

#define LINE_CUT 0.1
#define LINE_OUTLINE 0.25
#define TINT 0.4 /* how strong the colours of an enlargement are: marks and names stay legible on them */
#define CENTRE_ABOVE 4.8
#define CENTRE_RAISED 7.4 /* above numbers that stand at the datum */
#define CENTRE_BELOW 2.0
#define DATUM_SIZE 1.6
#define DATUM_GAP 0.8
#define DIMENSION_AWAY 7.6
#define ROOM_BARE 1.0  /* left of a panel without marks */
#define ROOM_MARKS 6.4 /* with them */
#define ROOM_OTHER 9.2
#define SHORT 10.0       /* a dimension line that may be too short for its figure */
#define ROOM_FIGURE 16.0 /* for a figure that stands beyond its dimension line */
#define ROOM_FACTOR 9.5  /* for the words that say the factor */
#define ROOM_DATUM 6.5   /* for half of the word */
#define NEAR_DATUM 9.0   /* what stands nearer is in the word's way */

static const double factors[] = { 40, 36, 32, 30, 28, 26, 24,  22, 20,  18, 16,  15, 14,  13, 12,
                                  11, 10, 9,  8,  7,  6,  5.5, 5,  4.5, 4,  3.5, 3,  2.5, 2,  1.5 };

const double *
spv_figure_factors(guint *n) {
  *n = G_N_ELEMENTS(factors);
  return factors;
}

static gboolean
is_near_datum(SpvPoint at, double factor) {
  return fabs(at.x) * factor < NEAR_DATUM && fabs(at.y) * factor < NEAR_DATUM / 2;
}

/* How far above the datum its centre line starts: beyond the numbers of dots and of upright rulings there. */
static double
centre_above(const SpvGuide *guide, double factor) {
  for (guint i = 0; i < guide->dots->len; i++)
    if (is_near_datum(g_array_index(guide->dots, SpvDot, i).at, factor))
      return CENTRE_RAISED;
  for (guint i = 0; i < guide->rulings->len; i++) {
    const SpvRulingEnd *ends = g_array_index(guide->rulings, SpvRuling, i).ends;
    SpvPoint along = spv_point_subtract(ends[1].at, ends[0].at);
    if (is_near_datum(ends[0].at, factor) && along.y > fabs(along.x) / 2)
      return CENTRE_RAISED;
  }
  return CENTRE_ABOVE;
}

SpvBox
spv_figure_extent(const SpvSubject *subject, double factor) {
  double width = spv_box_width(subject->bounds) * factor, height = spv_box_height(subject->bounds) * factor;
  gboolean bare = subject->guide->dots->len == 0 && subject->guide->rulings->len == 0;
  double left = MAX(bare ? ROOM_BARE : ROOM_MARKS, ROOM_FACTOR + ROOM_DATUM + subject->bounds.x0 * factor);
  double above = centre_above(subject->guide, factor) + DATUM_GAP + SPV_WORDS_BODY + 0.2;
  double top = MAX(above + subject->bounds.y0 * factor, ROOM_MARKS);

  return (SpvBox){ -left, height < SHORT ? -ROOM_FIGURE : -top,
                   width + (width < SHORT ? ROOM_FIGURE + ROOM_OTHER / 2 : ROOM_OTHER), height + ROOM_OTHER };
}

SpvBox
spv_figure_datum_words(cairo_t *measuring, const SpvSubject *subject, double factor) {
  double half = spv_words_width(measuring, _("datum"), SPV_WORDS_BODY, FALSE, 1) / 2;
  double baseline = -centre_above(subject->guide, factor) - DATUM_GAP;

  return (SpvBox){ -half, baseline - SPV_WORDS_BODY, half, baseline };
}

static void
enter_panel(cairo_t *cr, const SpvSubject *subject, SpvPoint at, double factor) {
  cairo_save(cr);
  cairo_translate(cr, at.x - subject->bounds.x0 * factor, at.y - subject->bounds.y0 * factor);
  cairo_scale(cr, factor, factor);
}

void
spv_template_draw(cairo_t *cr, const SpvSubject *subject, SpvPoint at, SpvDrawMode mode,
                  const GArray *marked_labels) {
  enter_panel(cr, subject, at, 1);
  if (mode != SPV_DRAW_LINES || marked_labels != NULL)
    spv_draw_panel(cr, subject->composition, mode, 1);
  if (marked_labels != NULL) {
    spv_draw_guide(cr, subject->guide, 1);
    spv_labels_draw(cr, marked_labels);
  }
  cairo_set_source_rgb(cr, 0, 0, 0);
  spv_draw_outline(cr, subject->composition->outline, LINE_CUT, 1);
  cairo_restore(cr);
}

/* Pale, so that what is written on it can be read, with a line where two tinctures meet. A hatch is as pale
 * as it has to be already. */
static void
draw_panel(cairo_t *cr, const SpvSubject *subject, double factor, SpvDrawMode mode) {
  if (mode != SPV_DRAW_COLOUR) {
    spv_draw_panel(cr, subject->composition, mode, factor);
    return;
  }
  spv_draw_panel(cr, subject->composition, mode, factor);
  cairo_new_path(cr);
  cairo_set_source_rgba(cr, 1, 1, 1, 1 - TINT);
  spv_draw_add_path(cr, spv_outline_path(subject->composition->outline));
  cairo_fill(cr);
  spv_set_rgb(cr, spv_ink);
  cairo_set_line_width(cr, SPV_LINE_HATCH / factor);
  spv_draw_add_path(cr, subject->boundaries);
  cairo_stroke(cr);
}

/* A chain line down the middle, and the cross where it meets the top edge: all offsets start there. */
static void
draw_datum(cairo_t *cr, SpvPoint datum, double above, double bottom) {
  static const double chain[] = { 3, 0.8, 0.5, 0.8 };

  cairo_save(cr);
  cairo_set_line_width(cr, SPV_LINE_HATCH);
  cairo_set_dash(cr, chain, G_N_ELEMENTS(chain), 0);
  spv_set_rgb(cr, spv_grey);
  cairo_move_to(cr, datum.x, datum.y - above);
  cairo_line_to(cr, datum.x, bottom + CENTRE_BELOW);
  cairo_stroke(cr);
  cairo_set_dash(cr, NULL, 0, 0);
  cairo_set_line_width(cr, LINE_OUTLINE);
  spv_set_rgb(cr, spv_accent);
  cairo_move_to(cr, datum.x - DATUM_SIZE, datum.y);
  cairo_rel_line_to(cr, 2 * DATUM_SIZE, 0);
  cairo_move_to(cr, datum.x, datum.y - DATUM_SIZE);
  cairo_rel_line_to(cr, 0, 2 * DATUM_SIZE);
  cairo_stroke(cr);
  spv_draw_words(cr, _("datum"), datum.x, datum.y - above - DATUM_GAP, SPV_WORDS_BODY, 0.5, FALSE, 1);
  cairo_restore(cr);
}

static void
draw_dimensions(cairo_t *cr, const SpvSubject *subject, SpvBox box) {
  g_autofree char *width = spv_measure_words(spv_box_width(subject->bounds));
  g_autofree char *height = spv_measure_words(spv_box_height(subject->bounds));

  spv_set_rgb(cr, spv_ink);
  spv_dimension_draw_across(cr, box.x0, box.x1, box.y1, box.y1 + DIMENSION_AWAY, width);
  spv_dimension_draw_down(cr, box.y0, box.y1, box.x1, box.x1 + DIMENSION_AWAY, height);
}

static void
draw_factor(cairo_t *cr, double factor, double x, double y) {
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *words = g_strdup_printf("\u00d7\u2009%s", g_ascii_dtostr(number, sizeof number, factor));

  spv_set_rgb(cr, spv_ink);
  spv_draw_words(cr, words, x, y + SPV_WORDS_BODY, SPV_WORDS_BODY, 0, TRUE, 1);
}

void
spv_figure_draw(cairo_t *cr, const SpvSubject *subject, SpvPoint at, double factor, SpvDrawMode mode,
                const GArray *labels) {
  SpvBox box = { at.x, at.y, at.x + spv_box_width(subject->bounds) * factor,
                 at.y + spv_box_height(subject->bounds) * factor };
  SpvPoint datum = { at.x - subject->bounds.x0 * factor, at.y - subject->bounds.y0 * factor };
  SpvBox extent = spv_figure_extent(subject, factor);

  enter_panel(cr, subject, at, factor);
  draw_panel(cr, subject, factor, mode);
  cairo_restore(cr);
  draw_datum(cr, datum, centre_above(subject->guide, factor), box.y1);
  enter_panel(cr, subject, at, factor);
  spv_set_rgb(cr, spv_ink);
  spv_draw_outline(cr, subject->composition->outline, LINE_OUTLINE, factor);
  spv_draw_guide(cr, subject->guide, factor);
  cairo_restore(cr);
  cairo_save(cr);
  cairo_translate(cr, datum.x, datum.y);
  spv_labels_draw(cr, labels);
  cairo_restore(cr);
  draw_dimensions(cr, subject, box);
  draw_factor(cr, factor, at.x + extent.x0, at.y + extent.y0);
}
