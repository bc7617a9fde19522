/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The hues of the look, and how a path of ours goes onto a cairo context. */
#include "draw/draw.h"

const SpvRgb spv_ink = { 0x19, 0x21, 0x30 };
const SpvRgb spv_accent = { 0xdc, 0x4a, 0x2e };
const SpvRgb spv_grey = { 0x75, 0x7c, 0x86 };

void
spv_set_rgb(cairo_t *cr, SpvRgb colour) {
  cairo_set_source_rgb(cr, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0);
}

/* cairo joins an arc to the current point by a line, which is what spv_path_builder_arc() has already done;
 * a run that starts with an arc starts at its first point. */
static void
add_arc(cairo_t *cr, const SpvPathStep *step) {
  double end = step->start + step->sweep;

  if (step->sweep >= 0)
    cairo_arc(cr, step->centre.x, step->centre.y, step->radius, step->start, end);
  else
    cairo_arc_negative(cr, step->centre.x, step->centre.y, step->radius, step->start, end);
}

void
spv_draw_add_path(cairo_t *cr, const SpvPath *path) {
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);

  for (gsize i = 0; i < n; i++) {
    const SpvPathStep *step = &steps[i];

    switch (step->op) {
    case SPV_PATH_MOVE:
      cairo_move_to(cr, step->to.x, step->to.y);
      break;
    case SPV_PATH_LINE:
      cairo_line_to(cr, step->to.x, step->to.y);
      break;
    case SPV_PATH_CURVE:
      cairo_curve_to(cr, step->c1.x, step->c1.y, step->c2.x, step->c2.y, step->to.x, step->to.y);
      break;
    case SPV_PATH_ARC:
      add_arc(cr, step);
      break;
    case SPV_PATH_CLOSE:
      cairo_close_path(cr);
      break;
    }
  }
}
