/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The engraver's hatches: families of parallel lines, or dots, that stand for tinctures without colour.
 * Directions: Fox-Davies (1909) pp. 76-77; Elvin (1889); Manual of Heraldry. */
#include "draw/draw.h"

/* The ink of a dot is that of a short piece of line. */
#define DOT_RADIUS 0.14

typedef enum {
  LINES_LEVEL = 1 << 0,
  LINES_UPRIGHT = 1 << 1,
  LINES_DOWN_RIGHT = 1 << 2, /* to the viewer's right */
  LINES_DOWN_LEFT = 1 << 3,
  DOTS = 1 << 4
} HatchParts;

static const guint hatch_parts[SPV_N_HATCHES] = {
  [SPV_HATCH_ARGENT] = 0,
  [SPV_HATCH_OR] = DOTS,
  [SPV_HATCH_GULES] = LINES_UPRIGHT,
  [SPV_HATCH_AZURE] = LINES_LEVEL,
  [SPV_HATCH_SABLE] = LINES_LEVEL | LINES_UPRIGHT,
  [SPV_HATCH_VERT] = LINES_DOWN_RIGHT,
  [SPV_HATCH_PURPURE] = LINES_DOWN_LEFT,
  [SPV_HATCH_TENNE] = LINES_DOWN_LEFT | LINES_LEVEL,
  [SPV_HATCH_SANGUINE] = LINES_DOWN_RIGHT | LINES_DOWN_LEFT,
};

/* The family of lines through BOX whose unit NORMAL is given, PITCH apart, one of them through the datum. */
static void
add_lines(cairo_t *cr, SpvBox box, SpvPoint normal, double pitch) {
  SpvPoint middle = spv_box_centre(box), along = spv_point_quarter_turn(normal);
  double reach = hypot(spv_box_width(box), spv_box_height(box)) / 2;
  double across = spv_point_dot(middle, normal), where = spv_point_dot(middle, along);
  /* Ends on the lattice as well, so that a line is rounded alike whichever area it is cut from. */
  double start = floor((where - reach) / pitch) * pitch, end = ceil((where + reach) / pitch) * pitch;
  long first = (long) ceil((across - reach) / pitch), last = (long) floor((across + reach) / pitch);

  for (long i = first; i <= last; i++) {
    SpvPoint foot = spv_point_scale(normal, (double) i * pitch);
    SpvPoint from = spv_point_add(foot, spv_point_scale(along, start));
    SpvPoint to = spv_point_add(foot, spv_point_scale(along, end));

    cairo_move_to(cr, from.x, from.y);
    cairo_line_to(cr, to.x, to.y);
  }
}

/* Every other place of the lattice, so that dots stand in quincunx. */
static void
add_dots(cairo_t *cr, SpvBox box, double pitch, double radius) {
  SpvBox grown = spv_box_grow(box, radius);
  double step = pitch * G_SQRT2 / 2;
  long x0 = (long) ceil(grown.x0 / step), x1 = (long) floor(grown.x1 / step);
  long y0 = (long) ceil(grown.y0 / step), y1 = (long) floor(grown.y1 / step);

  for (long y = y0; y <= y1; y++) {
    for (long x = x0; x <= x1; x++) {
      if (((x ^ y) & 1) != 0)
        continue;
      cairo_new_sub_path(cr);
      cairo_arc(cr, (double) x * step, (double) y * step, radius, 0, 2 * G_PI);
      cairo_close_path(cr);
    }
  }
}

void
spv_draw_hatch(cairo_t *cr, SpvHatch hatch, double paper_mm) {
  guint parts = hatch_parts[hatch];
  double pitch = SPV_HATCH_PITCH / paper_mm;
  SpvBox box;

  if (parts == 0) {
    cairo_new_path(cr);
    return;
  }
  cairo_save(cr);
  cairo_clip(cr);
  cairo_clip_extents(cr, &box.x0, &box.y0, &box.x1, &box.y1);
  cairo_set_source_rgb(cr, 0, 0, 0);
  cairo_set_line_width(cr, SPV_LINE_HATCH / paper_mm);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash(cr, NULL, 0, 0);
  if ((parts & LINES_LEVEL) != 0)
    add_lines(cr, box, spv_point(0, 1), pitch);
  if ((parts & LINES_UPRIGHT) != 0)
    add_lines(cr, box, spv_point(1, 0), pitch);
  if ((parts & LINES_DOWN_RIGHT) != 0)
    add_lines(cr, box, spv_point(-G_SQRT2 / 2, G_SQRT2 / 2), pitch);
  if ((parts & LINES_DOWN_LEFT) != 0)
    add_lines(cr, box, spv_point(G_SQRT2 / 2, G_SQRT2 / 2), pitch);
  cairo_stroke(cr);
  if ((parts & DOTS) != 0) {
    add_dots(cr, box, pitch, DOT_RADIUS / paper_mm);
    cairo_fill(cr);
  }
  cairo_restore(cr);
}
