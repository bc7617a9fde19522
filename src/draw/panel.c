/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A panel and what lies on it, in painter's order. */
#include "draw/draw.h"

/* Strokes each boundary of AREA, LINE wide on paper. */
static void
stroke_boundary(cairo_t *cr, const SpvPath *area, double line, double paper_mm) {
  cairo_set_source_rgb(cr, 0, 0, 0);
  cairo_set_line_width(cr, line / paper_mm);
  spv_draw_add_path(cr, area);
  cairo_stroke(cr);
}

/* Strokes the edges of SHAPE that its clips make, where it lies along them. */
static void
stroke_clips(cairo_t *cr, const SpvLaidShape *shape, double paper_mm) {
  for (guint i = 0; i < shape->clips->len; i++) {
    cairo_save(cr);
    spv_draw_add_path(cr, shape->area);
    cairo_clip(cr);
    stroke_boundary(cr, g_ptr_array_index(shape->clips, i), SPV_LINE_INK, paper_mm);
    cairo_restore(cr);
  }
}

static void
fill_shape(cairo_t *cr, const SpvScheme *scheme, const SpvLaidShape *shape, SpvDrawMode mode,
           double paper_mm) {
  const SpvTincture *tincture = &scheme->tinctures[shape->tincture];

  /* The line goes down first and the area over it: what is left is outside, whatever runs the area is made
   * of, which may overlap. */
  if (mode != SPV_DRAW_COLOUR)
    stroke_boundary(cr, shape->area, 2 * SPV_LINE_INK, paper_mm);
  spv_draw_add_path(cr, shape->area);
  switch (mode) {
  case SPV_DRAW_COLOUR:
    spv_set_rgb(cr, tincture->colour);
    cairo_fill(cr);
    break;
  case SPV_DRAW_HATCH:
    cairo_set_source_rgb(cr, 1, 1, 1);
    cairo_fill_preserve(cr);
    spv_draw_hatch(cr, tincture->hatch, paper_mm);
    break;
  case SPV_DRAW_LINES:
    cairo_set_source_rgb(cr, 1, 1, 1);
    cairo_fill(cr);
    break;
  }
  if (shape->clips && mode != SPV_DRAW_COLOUR)
    stroke_clips(cr, shape, paper_mm);
}

static void
draw_shape(cairo_t *cr, const SpvScheme *scheme, const SpvLaidShape *shape, SpvDrawMode mode,
           double paper_mm) {
  cairo_save(cr);
  for (guint i = 0; shape->clips && i < shape->clips->len; i++) {
    spv_draw_add_path(cr, g_ptr_array_index(shape->clips, i));
    cairo_clip(cr);
  }
  fill_shape(cr, scheme, shape, mode, paper_mm);
  cairo_restore(cr);
}

void
spv_draw_panel(cairo_t *cr, const SpvComposition *composition, SpvDrawMode mode, double paper_mm) {
  cairo_save(cr);
  cairo_new_path(cr);
  spv_draw_add_path(cr, spv_outline_path(composition->outline));
  cairo_clip(cr);
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_paint(cr);
  /* Square corners come out square; sharper ones, where two runs of one area may meet, grow no spikes. */
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_miter_limit(cr, 1.5);
  for (guint i = 0; i < composition->shapes->len; i++)
    draw_shape(cr, composition->scheme, g_ptr_array_index(composition->shapes, i), mode, paper_mm);
  cairo_restore(cr);
}

void
spv_draw_outline(cairo_t *cr, const SpvOutline *outline, double line, double paper_mm) {
  cairo_save(cr);
  cairo_new_path(cr);
  spv_draw_add_path(cr, spv_outline_path(outline));
  cairo_set_line_width(cr, line / paper_mm);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke(cr);
  cairo_restore(cr);
}
