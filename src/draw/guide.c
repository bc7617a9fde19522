/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The guide on the panel: dots with their numbers, rulings with theirs. */
#include "draw/draw.h"
#include "draw/marks-private.h"

static void
draw_rulings(cairo_t *cr, const SpvGuide *guide, int layer, double paper_mm) {
  spv_set_rgb(cr, spv_accent);
  cairo_set_line_width(cr, SPV_LINE_RULING / paper_mm);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  for (guint i = 0; i < guide->rulings->len; i++) {
    const SpvRuling *ruling = &g_array_index(guide->rulings, SpvRuling, i);
    SpvPoint ends[2];

    if (layer >= 0 && ruling->layer != (guint) layer)
      continue;
    spv_mark_ruling_ends(ruling, paper_mm, ends);
    cairo_move_to(cr, ends[0].x, ends[0].y);
    cairo_line_to(cr, ends[1].x, ends[1].y);
  }
  cairo_stroke(cr);
}

static void
fill_disc(cairo_t *cr, SpvPoint centre, double radius) {
  cairo_new_sub_path(cr);
  cairo_arc(cr, centre.x, centre.y, radius, 0, 2 * G_PI);
  cairo_fill(cr);
}

static void
draw_dots(cairo_t *cr, const SpvGuide *guide, int layer, const double *radii) {
  for (guint i = 0; i < guide->dots->len; i++) {
    const SpvDot *dot = &g_array_index(guide->dots, SpvDot, i);

    if (layer >= 0 && dot->layer != (guint) layer)
      continue;
    cairo_set_source_rgb(cr, 1, 1, 1);
    fill_disc(cr, dot->at, radii[i] * (1 + SPV_DOT_RING));
    spv_set_rgb(cr, spv_accent);
    fill_disc(cr, dot->at, radii[i]);
  }
}

static void
draw_numbers(cairo_t *cr, const GArray *numbers, double paper_mm) {
  for (guint i = 0; i < numbers->len; i++) {
    const SpvPlacedNumber *placed = &g_array_index(numbers, SpvPlacedNumber, i);
    char words[16];

    g_snprintf(words, sizeof words, "%u", placed->number);
    spv_set_rgb(cr, spv_ink);
    spv_draw_words_haloed(cr, words, placed->at.x, placed->box.y1, SPV_NUMBER_SIZE, 0.5, TRUE, paper_mm);
  }
}

static void
draw_guide(cairo_t *cr, const SpvGuide *guide, int layer, double paper_mm) {
  double digit = spv_words_width(cr, "0", SPV_NUMBER_SIZE, TRUE, paper_mm);
  g_autofree double *radii = spv_mark_radii(guide, layer, paper_mm);
  g_autoptr(GArray) numbers = spv_mark_numbers(guide, layer, radii, digit, paper_mm);

  cairo_save(cr);
  cairo_new_path(cr);
  draw_rulings(cr, guide, layer, paper_mm);
  draw_dots(cr, guide, layer, radii);
  draw_numbers(cr, numbers, paper_mm);
  cairo_restore(cr);
}

void
spv_draw_guide(cairo_t *cr, const SpvGuide *guide, double paper_mm) {
  draw_guide(cr, guide, -1, paper_mm);
}

void
spv_draw_guide_of_layer(cairo_t *cr, const SpvGuide *guide, guint layer, double paper_mm) {
  draw_guide(cr, guide, (int) layer, paper_mm);
}
