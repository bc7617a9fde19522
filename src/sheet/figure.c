/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/figure.h"

#include <glib/gi18n-lib.h>

#include "sheet/dimension.h"
#include "sheet/wording.h"

#define LINE_CUT 0.1
#define LINE_OUTLINE 0.25
#define TINT 0.4 /* how strong the colours of an enlargement are: marks and names stay legible on them */
#define CENTRE_ABOVE 5.4
#define CENTRE_BELOW 2.0
#define DATUM_SIZE 1.6
#define DIMENSION_AWAY 8.0
#define ROOM_LEFT 6.0
#define ROOM_TOP 8.6
#define ROOM_OTHER 9.8
#define SHORT 10.0       /* a dimension line that may be too short for its figure */
#define ROOM_FIGURE 16.0 /* for a figure that stands beyond its dimension line */

static const double factors[] = { 40, 30, 24, 20, 16, 12, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5 };

double
spv_figure_factor(double width, double height, double room_width, double room_height) {
  for (gsize i = 0; i < G_N_ELEMENTS(factors); i++)
    if (width * factors[i] <= room_width && height * factors[i] <= room_height)
      return factors[i];
  return 0;
}

SpvBox
spv_figure_extent(const SpvSubject *subject, double factor) {
  double width = spv_box_width(subject->bounds) * factor, height = spv_box_height(subject->bounds) * factor;

  return (SpvBox){ -ROOM_LEFT, height < SHORT ? -ROOM_FIGURE : -ROOM_TOP,
                   width + (width < SHORT ? ROOM_FIGURE + ROOM_OTHER / 2 : ROOM_OTHER), height + ROOM_OTHER };
}

static void
enter_panel(cairo_t *cr, const SpvSubject *subject, SpvPoint at, double factor) {
  cairo_save(cr);
  cairo_translate(cr, at.x - subject->bounds.x0 * factor, at.y - subject->bounds.y0 * factor);
  cairo_scale(cr, factor, factor);
}

void
spv_template_draw(cairo_t *cr, const SpvSubject *subject, SpvPoint at, SpvDrawMode mode, gboolean marked) {
  enter_panel(cr, subject, at, 1);
  if (mode != SPV_DRAW_LINES || marked)
    spv_draw_panel(cr, subject->composition, mode, 1);
  if (marked) {
    spv_draw_guide(cr, subject->guide, 1);
    spv_draw_tincture_names(cr, subject->partition, 1);
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
draw_datum(cairo_t *cr, SpvPoint datum, double height) {
  static const double chain[] = { 3, 0.8, 0.5, 0.8 };

  cairo_save(cr);
  cairo_set_line_width(cr, SPV_LINE_HATCH);
  cairo_set_dash(cr, chain, G_N_ELEMENTS(chain), 0);
  spv_set_rgb(cr, spv_grey);
  cairo_move_to(cr, datum.x, datum.y - CENTRE_ABOVE);
  cairo_line_to(cr, datum.x, datum.y + height + CENTRE_BELOW);
  cairo_stroke(cr);
  cairo_set_dash(cr, NULL, 0, 0);
  cairo_set_line_width(cr, LINE_OUTLINE);
  spv_set_rgb(cr, spv_accent);
  cairo_move_to(cr, datum.x - DATUM_SIZE, datum.y);
  cairo_rel_line_to(cr, 2 * DATUM_SIZE, 0);
  cairo_move_to(cr, datum.x, datum.y - DATUM_SIZE);
  cairo_rel_line_to(cr, 0, 2 * DATUM_SIZE);
  cairo_stroke(cr);
  spv_draw_words(cr, _("datum"), datum.x, datum.y - CENTRE_ABOVE - 0.8, SPV_WORDS_BODY, 0.5, FALSE, 1);
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

void
spv_figure_draw(cairo_t *cr, const SpvSubject *subject, SpvPoint at, double factor, SpvDrawMode mode) {
  SpvBox box = { at.x, at.y, at.x + spv_box_width(subject->bounds) * factor,
                 at.y + spv_box_height(subject->bounds) * factor };
  SpvPoint datum = { at.x - subject->bounds.x0 * factor, at.y - subject->bounds.y0 * factor };

  enter_panel(cr, subject, at, factor);
  draw_panel(cr, subject, factor, mode);
  cairo_restore(cr);
  draw_datum(cr, datum, spv_box_height(box));
  enter_panel(cr, subject, at, factor);
  spv_set_rgb(cr, spv_ink);
  spv_draw_outline(cr, subject->composition->outline, LINE_OUTLINE, factor);
  spv_draw_tincture_names(cr, subject->partition, factor);
  spv_draw_guide(cr, subject->guide, factor);
  cairo_restore(cr);
  draw_dimensions(cr, subject, box);
}
