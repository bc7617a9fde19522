/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Paints the nodes of a free path. */
#include "window/canvas-paint.h"

#define NODE_SIDE 8.0
#define KNOB_RADIUS 3.5

typedef struct {
  cairo_t *cr;
  const SpvViewport *viewport;
  SpvTransform place; /* from the path's mm to the panel's */
} Painting;

static SpvPoint
to_px(const Painting *painting, SpvPoint mm) {
  return spv_viewport_to_px(painting->viewport, spv_transform_point(painting->place, mm));
}

static void
add_edges(const Painting *painting, const SpvPathNodes *nodes) {
  for (guint i = 0; i < nodes->nodes->len; i++) {
    const SpvPathNode *from = spv_path_nodes_get(nodes, i);
    const SpvPathNode *to = spv_path_nodes_get(nodes, spv_path_nodes_next(nodes, i));
    SpvPoint a = to_px(painting, from->at), c1 = to_px(painting, from->out), c2 = to_px(painting, to->in),
             b = to_px(painting, to->at);

    cairo_move_to(painting->cr, a.x, a.y);
    cairo_curve_to(painting->cr, c1.x, c1.y, c2.x, c2.y, b.x, b.y);
  }
}

/* White under the accent, so that it is seen on any tincture. */
static void
paint_edges(const Painting *painting, const SpvPathNodes *nodes) {
  add_edges(painting, nodes);
  cairo_set_source_rgba(painting->cr, 1, 1, 1, 0.8);
  cairo_set_line_width(painting->cr, 3);
  cairo_stroke_preserve(painting->cr);
  spv_set_rgb(painting->cr, spv_accent);
  cairo_set_line_width(painting->cr, 1);
  cairo_stroke(painting->cr);
}

static void
paint_mirror_image(const Painting *painting, const SpvPathNodes *nodes) {
  static const double dashes[] = { 4, 3 };
  Painting image = *painting;

  image.place = spv_transform_compose(painting->place, SPV_TRANSFORM_MIRROR);
  cairo_save(painting->cr);
  cairo_set_dash(painting->cr, dashes, G_N_ELEMENTS(dashes), 0);
  paint_edges(&image, nodes);
  cairo_restore(painting->cr);
}

static void
finish(cairo_t *cr, gboolean filled) {
  if (filled)
    spv_set_rgb(cr, spv_accent);
  else
    cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_fill_preserve(cr);
  spv_set_rgb(cr, spv_accent);
  cairo_set_line_width(cr, 1.5);
  cairo_stroke(cr);
}

static void
paint_knob(const Painting *painting, const SpvPathNode *node, SpvPoint knob) {
  SpvPoint at = to_px(painting, node->at), px = to_px(painting, knob);

  if (spv_point_distance(node->at, knob) < 1e-6)
    return;
  cairo_move_to(painting->cr, at.x, at.y);
  cairo_line_to(painting->cr, px.x, px.y);
  cairo_set_source_rgba(painting->cr, 1, 1, 1, 0.8);
  cairo_set_line_width(painting->cr, 3);
  cairo_stroke_preserve(painting->cr);
  spv_set_rgb(painting->cr, spv_ink);
  cairo_set_line_width(painting->cr, 1);
  cairo_stroke(painting->cr);
  cairo_arc(painting->cr, px.x, px.y, KNOB_RADIUS, 0, 2 * G_PI);
  finish(painting->cr, FALSE);
}

static void
paint_node(const Painting *painting, const SpvPathNodes *nodes, guint index, gboolean selected) {
  SpvPoint px = to_px(painting, spv_path_nodes_get(nodes, index)->at);
  double x = floor(px.x) + 0.5, y = floor(px.y) + 0.5, half = NODE_SIDE / 2;

  if (spv_path_nodes_is_smooth(nodes, index)) {
    cairo_new_sub_path(painting->cr);
    cairo_arc(painting->cr, x, y, half + 0.5, 0, 2 * G_PI);
  } else {
    cairo_rectangle(painting->cr, x - half, y - half, NODE_SIDE, NODE_SIDE);
  }
  finish(painting->cr, selected);
}

void
spv_canvas_paint_nodes(cairo_t *cr, const SpvViewport *viewport, const SpvPathNodes *nodes,
                       SpvTransform place, int selected, gboolean both_sides) {
  Painting painting = { cr, viewport, place };

  if (both_sides)
    paint_mirror_image(&painting, nodes);
  paint_edges(&painting, nodes);
  if (selected >= 0) {
    const SpvPathNode *node = spv_path_nodes_get(nodes, (guint) selected);

    paint_knob(&painting, node, node->in);
    paint_knob(&painting, node, node->out);
  }
  for (guint i = 0; i < nodes->nodes->len; i++)
    paint_node(&painting, nodes, i, (int) i == selected);
}
