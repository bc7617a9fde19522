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
 * between two merlons. Discs are tried from wide to narrow, each RATIO of the last: one that is wider than
 * the stub leaves most of it, which holds a disc LARGE as wide as itself; the next reaches all of it but
 * corners, which hold none REST as wide. Of a wedge, which any disc can only reach so far into, the next
 * leaves nearly as much. */
#define RATIO 0.9
#define LARGE 0.6
#define REST 0.3
/* Stubs narrower than this part of all else are not looked for. */
#define SHARE 0.2

/* What a disc of diameter WIDTH does not reach of SHAPE. */
static SpvShape *
unreached(const SpvShape *shape, double width) {
  g_autoptr(SpvShape) eroded = spv_shape_offset(shape, -width / 2);
  g_autoptr(SpvShape) reached = spv_shape_offset(eroded, width / 2 + 1e-3);
  return spv_shape_difference(shape, reached);
}

/* Where in SHAPE a disc of diameter WIDTH may have its middle. */
static SpvShape *
middles(const SpvShape *shape, double width) {
  return spv_shape_offset(shape, -width / 2);
}

static gboolean
touch(const SpvShape *a, const SpvShape *b) {
  g_autoptr(SpvShape) both = spv_shape_intersection(a, b);
  return !spv_shape_is_empty(both);
}

/* The part of LARGEST, where discs of diameter LARGE of WIDTH find room in what a disc of diameter WIDTH
 * leaves, in which LEFT, what a narrower one leaves, has next to none; NULL if there is no such part. */
static SpvShape *
reached_at_once(const SpvShape *largest, const SpvShape *left, double width) {
  g_autoptr(SpvShape) rest = middles(left, REST * width);
  SpvShape *found = NULL;
  gsize n = 0;
  spv_shape_pieces(largest, &n);
  for (gsize i = 0; i < n; i++) {
    g_autoptr(SpvShape) piece = spv_shape_piece(largest, i);
    g_autoptr(SpvShape) room = spv_shape_offset(piece, LARGE * width / 2);
    if (touch(room, rest))
      continue;
    if (found == NULL)
      found = g_steal_pointer(&room);
    else {
      const SpvShape *both[] = { found, room };
      SpvShape *joined = spv_shape_union(both, 2);
      spv_shape_unref(found);
      found = joined;
    }
  }
  return found;
}

/* The width of the narrowest stub of SHAPE at STUBS, all of which a disc of diameter WIDTH leaves and the
 * next reaches. */
static double
stub_width(const SpvShape *shape, const SpvShape *stubs, double width) {
  double low = RATIO * width, high = width;
  while (high - low > SIZE / 1000) {
    double middle = (low + high) / 2;
    g_autoptr(SpvShape) left = unreached(shape, middle);
    g_autoptr(SpvShape) rest = middles(left, REST * width);
    *(touch(stubs, rest) ? &high : &low) = middle;
  }
  return (low + high) / 2;
}

/* The width of the narrowest stub of SHAPE, or WIDEST if none is as narrow. */
static double
narrowest_stub(const SpvShape *shape, double widest) {
  g_autoptr(SpvShape) stubs = NULL;
  g_autoptr(SpvShape) left = unreached(shape, widest);
  double left_by = widest, found_at = widest;
  for (double width = widest; width > SHARE * widest;) {
    /* What a disc leaves, every wider one left too: where that has no room, it need not be tried. */
    g_autoptr(SpvShape) largest = middles(left, LARGE * width);
    if (spv_shape_is_empty(largest)) {
      width *= RATIO;
      continue;
    }
    double next = left_by > width ? width : RATIO * width;
    SpvShape *less = unreached(shape, next);
    SpvShape *found = next < width ? reached_at_once(largest, less, width) : NULL;
    if (found != NULL) {
      g_clear_pointer(&stubs, spv_shape_unref);
      stubs = found;
      found_at = width;
    }
    spv_shape_unref(left);
    left = less;
    left_by = width = next;
  }
  return stubs == NULL ? widest : stub_width(shape, stubs, found_at);
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
