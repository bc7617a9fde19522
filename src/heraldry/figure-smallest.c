/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How small a figure may be: its narrowest stroke, and the narrowest gap in it, which is a stroke of the
 * ground. */
#include "heraldry/figure.h"

#include "geometry/width.h"

/* The figure is measured at this size, mm: widths are exact within 0.002 mm, so within a thousandth of it. */
#define SIZE 2.0

/* What is wider than this, mm, isn't looked at, but for a figure of convex pieces alone: no other has
 * anything to show in less than four lines. */
#define ENOUGH (SIZE / 4)

/* A stub is a gap with even sides that is too short to be an arm for spv_piece_narrowest(), as the crenel
 * between two merlons. It is as wide as the largest disc in it, and is there as a whole or not at all: what a
 * disc as wide can't reach holds one this much as wide. In the tip of a wedge that would be one of less than
 * 16 degrees. */
#define STUB 0.75
/* Stubs narrower than this part of all else are not looked for. */
#define SHARE 0.2
/* Discs are tried from wide to narrow, each at most this part of the last. */
#define RATIO 0.9

/* The diameter of the largest disc in what a disc of diameter WIDTH does not reach of SHAPE. */
static double
unreached(const SpvShape *shape, double width) {
  g_autoptr(SpvShape) eroded = spv_shape_offset(shape, -width / 2);
  g_autoptr(SpvShape) reached = spv_shape_offset(eroded, width / 2 + 1e-3);
  g_autoptr(SpvShape) left = spv_shape_difference(shape, reached);
  double widest = 0, radius = 0;
  gsize n = 0;
  const SpvPiece *pieces = spv_shape_pieces(left, &n);
  for (gsize i = 0; i < n; i++) {
    if (spv_ring_area(pieces[i].rings[0]) < G_PI / 4 * widest * widest)
      continue;
    g_autoptr(SpvShape) piece = spv_shape_piece(left, i);
    spv_shape_middle(piece, &radius);
    widest = MAX(widest, 2 * radius);
  }
  return widest;
}

/* The width of the narrowest stub of SHAPE, or WIDEST if none is as narrow. What a disc leaves, every wider
 * one leaves too, so none between a disc and what it leaves need be tried. */
static double
narrowest_stub(const SpvShape *shape, double widest) {
  double narrowest = widest, width = widest;
  while (width > SHARE * widest) {
    double left = unreached(shape, width);
    if (left >= STUB * width)
      narrowest = MIN(left, width);
    width = MIN(RATIO * width, left / STUB);
  }
  return narrowest;
}

/* The narrowest stroke of SHAPE; of a piece that isn't convex, ENOUGH if it is wider. */
static double
narrowest_stroke(const SpvShape *shape, double enough) {
  double narrowest = INFINITY;
  gsize n = 0;
  spv_shape_pieces(shape, &n);
  for (gsize i = 0; i < n; i++)
    narrowest = MIN(narrowest, spv_piece_narrowest(shape, i, MIN(narrowest, enough), NULL));
  return narrowest;
}

double
spv_figure_smallest(const SpvPattern *pattern, double line) {
  g_return_val_if_fail(pattern != NULL, 0);

  g_autoptr(SpvPath) unit = spv_figure_path(pattern);
  g_autoptr(SpvPath) figure = spv_path_transform(unit, spv_transform_place(SIZE, 0, spv_point(0, 0)));
  g_autoptr(SpvShape) strokes = spv_shape_new_from_path(figure);
  if (spv_shape_is_empty(strokes))
    return 0;

  g_autoptr(SpvPath) around = spv_path_new_box(spv_box_grow(spv_shape_bounds(strokes), 2 * ENOUGH));
  g_autoptr(SpvShape) all = spv_shape_new_from_path(around);
  g_autoptr(SpvShape) ground = spv_shape_difference(all, strokes);
  double stroke = narrowest_stroke(strokes, ENOUGH);
  double enough = MIN(stroke, ENOUGH);
  double gap = narrowest_stub(ground, MIN(narrowest_stroke(ground, enough), enough));
  double narrowest = gap < enough ? gap : stroke;
  return narrowest > 0 ? line * SIZE / narrowest : INFINITY;
}
