/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a layer lays before the panel's edge or a later layer cuts it. */
#include "check/check-private.h"

#include <math.h>

/* How far the outline reaches across LINE, mm. */
static double
reach_across(const SpvOutline *outline, const SpvDraftLine *line) {
  SpvPoint across = spv_point_quarter_turn(spv_point_unit(spv_point_subtract(line->to, line->from)));
  double low = INFINITY, high = -INFINITY;
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);

  for (gsize i = 0; i < n; i++) {
    low = MIN(low, spv_point_dot(points[i], across));
    high = MAX(high, spv_point_dot(points[i], across));
  }
  return high - low;
}

/* Stripes share the panel evenly, with a boundary between each two of them. */
static double
stripe_width(const SpvOutline *outline, const SpvDraft *draft) {
  if (draft->lines->len == 0)
    return 0;
  return reach_across(outline, &g_array_index(draft->lines, SpvDraftLine, 0)) / (draft->lines->len + 1);
}

/* The cells of a check are all of one size, but the outermost reach past the panel, or only part of one lies
 * on it: the widest and highest that the panel's bounds leave is a whole one. */
static double
cell_width(const SpvOutline *outline, const SpvDraft *draft) {
  SpvBox bounds = spv_outline_bounds(outline);
  double width = 0, height = 0;

  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    for (guint i = 0; draft->cells[slot] != NULL && i < draft->cells[slot]->len; i++) {
      SpvBox box = spv_ring_bounds(g_ptr_array_index(draft->cells[slot], i));

      width = MAX(width, MIN(box.x1, bounds.x1) - MAX(box.x0, bounds.x0));
      height = MAX(height, MIN(box.y1, bounds.y1) - MAX(box.y0, bounds.y0));
    }
  return MIN(width, height);
}

/* How wide the convex CELL is where it is narrowest: across one of its sides. */
static double
convex_width(const SpvRing *cell) {
  double least = INFINITY;

  for (gsize i = 0; i < cell->n_points; i++) {
    SpvPoint from = cell->points[i], to = cell->points[(i + 1) % cell->n_points];
    SpvPoint across = spv_point_quarter_turn(spv_point_unit(spv_point_subtract(to, from)));
    double reach = 0;

    for (gsize k = 0; k < cell->n_points; k++)
      reach = MAX(reach, fabs(spv_point_dot(spv_point_subtract(cell->points[k], from), across)));
    least = MIN(least, reach);
  }
  return least;
}

static int
compare_widths(gconstpointer a, gconstpointer b) {
  double one = *(const double *) a, other = *(const double *) b;

  return (one > other) - (one < other);
}

/* Most cells are whole ones: the width in the middle of all their widths is a whole cell's. */
static double
usual_cell_width(const SpvDraft *draft) {
  g_autoptr(GArray) widths = g_array_new(FALSE, FALSE, sizeof(double));

  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    for (guint i = 0; draft->cells[slot] != NULL && i < draft->cells[slot]->len; i++) {
      double width = convex_width(g_ptr_array_index(draft->cells[slot], i));
      g_array_append_val(widths, width);
    }
  g_array_sort(widths, compare_widths);
  return widths->len > 0 ? g_array_index(widths, double, widths->len / 2) : 0;
}

/* Whether every stripe of LAYER lies between two straight lines. */
static gboolean
has_straight_stripes(const SpvLayer *layer) {
  SpvPatternKind kind = layer->pattern.kind;
  int line = spv_pattern_measure_index(kind, "line");

  if (kind != SPV_PATTERN_PALY && kind != SPV_PATTERN_BARRY && kind != SPV_PATTERN_BENDY &&
      kind != SPV_PATTERN_BENDY_SINISTER)
    return FALSE;
  return line < 0 || layer->pattern.measures[line].unit == SPV_UNIT_AUTO ||
         layer->pattern.measures[line].value == 0;
}

static gboolean
is_turned(const SpvLayer *layer) {
  int turn = spv_pattern_measure_index(layer->pattern.kind, "turn");

  return turn >= 0 && layer->pattern.measures[turn].value != 0;
}

/* Likewise of a layer whose tincture is no fur. */
static double
layer_width(const SpvComposition *composition, guint layer) {
  const SpvDraft *draft = g_ptr_array_index(composition->drafts, layer);
  const SpvLayer *laid = composition->panel->layers[layer];

  if (draft == NULL || spv_pattern_group(laid->pattern.kind) != SPV_GROUP_VARIED)
    return 0;
  if (laid->pattern.kind == SPV_PATTERN_CHECK && laid->on == NULL && draft->cells[0] != NULL &&
      !is_turned(laid))
    return cell_width(composition->outline, draft);
  if (draft->cells[0] != NULL)
    return usual_cell_width(draft);
  return laid->on == NULL && has_straight_stripes(laid) ? stripe_width(composition->outline, draft) : 0;
}

double
spv_uncut_width(const SpvComposition *composition, guint index) {
  const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, index);

  if (laid->fur < 0)
    return layer_width(composition, laid->layer);
  /* A fur's strokes grow as its pitch does. */
  const SpvTincture *fur = &composition->scheme->tinctures[laid->fur];
  return spv_fur_pitch_in_effect(composition->scheme, fur) / spv_fur_smallest_pitch(fur->fur, 1);
}

gboolean
spv_uncut_is_at_edge(const SpvComposition *composition, guint index, SpvPoint place, double mm) {
  const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, index);
  double distance;

  spv_track_locate(spv_outline_track(composition->outline), place, &distance);
  for (guint i = 0; laid->clips != NULL && i < laid->clips->len; i++) {
    g_autoptr(GPtrArray) rings = spv_path_flatten(g_ptr_array_index(laid->clips, i), SPV_CHORD_ERROR);
    for (guint k = 0; k < rings->len; k++)
      distance = MIN(distance, spv_stroke_clearance(g_ptr_array_index(rings, k), place));
  }
  return distance <= mm;
}

SpvShape *
spv_uncut_shape(const SpvComposition *composition, guint index) {
  const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, index);
  const SpvDraft *draft = g_ptr_array_index(composition->drafts, laid->layer);
  /* The one that covers the panel under its layer's others is to show its own slot's area only. */
  const SpvPath *path = laid->covers ? draft->area[laid->slot] : laid->area;
  GPtrArray *cells = laid->covers ? draft->cells[laid->slot] : laid->cells;
  SpvShape *area = spv_shape_ref(spv_outline_shape(composition->outline));

  for (guint i = 0; laid->clips != NULL && i < laid->clips->len; i++) {
    g_autoptr(SpvShape) clip = spv_shape_new_from_path(g_ptr_array_index(laid->clips, i));
    SpvShape *cut = spv_shape_intersection(area, clip);
    spv_shape_unref(area);
    area = cut;
  }
  g_autoptr(SpvShape) within = area;
  if (cells != NULL)
    return spv_shape_clip_cells(within, cells);
  g_autoptr(SpvShape) whole = spv_shape_new_from_path(path);
  return spv_shape_intersection(within, whole);
}

gboolean
spv_uncut_is_topmost(const SpvComposition *composition, guint layer) {
  const SpvLaidShape *last = g_ptr_array_index(composition->shapes, composition->shapes->len - 1);

  return last->layer == layer;
}
