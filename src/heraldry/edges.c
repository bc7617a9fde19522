/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Straight edges and bands, with or without a line of partition. */
#include "heraldry/edges-private.h"

double
spv_lay_measure(const SpvPattern *pattern, const SpvOutline *outline, const char *key, double fallback) {
  int index = spv_pattern_measure_index(pattern->kind, key);

  return index < 0 ? fallback : spv_pattern_measure(pattern, (guint) index, outline, fallback);
}

gboolean
spv_lay_charged(const SpvPattern *pattern, const SpvOutline *outline) {
  return spv_lay_measure(pattern, outline, "charged", 0) > 0;
}

SpvBandEdges
spv_lay_edges(const SpvPattern *pattern, const SpvOutline *outline, SpvBandEdges usual) {
  SpvBandEdges edges = (SpvBandEdges) spv_lay_measure(pattern, outline, "edges", SPV_EDGES_USUAL);

  return edges == SPV_EDGES_USUAL ? usual : edges;
}

SpvPath *
spv_lay_nothing(void) {
  return spv_path_builder_build(spv_path_builder_new());
}

SpvPoint
spv_axis_point(SpvAxis axis, double u, double v) {
  SpvPoint across = spv_point_quarter_turn(axis.along);

  return spv_point(axis.at.x + u * axis.along.x + v * across.x, axis.at.y + u * axis.along.y + v * across.y);
}

/* P as (u, v). */
static SpvPoint
on_axis(SpvAxis axis, SpvPoint p) {
  SpvPoint from = spv_point_subtract(p, axis.at);

  return spv_point(spv_point_dot(from, axis.along), spv_point_cross(axis.along, from));
}

/* Cuts the segment from A to B to where V0 <= y <= V1; FALSE where nothing is left. */
static gboolean
cut_segment(SpvPoint *a, SpvPoint *b, double v0, double v1) {
  SpvPoint from = *a, to = *b;
  double low = MIN(from.y, to.y), high = MAX(from.y, to.y), rise = to.y - from.y;

  if (high < v0 || low > v1)
    return FALSE;
  if (rise != 0) {
    double t0 = CLAMP((v0 - from.y) / rise, 0, 1), t1 = CLAMP((v1 - from.y) / rise, 0, 1);
    *a = spv_point_between(from, to, MIN(t0, t1));
    *b = spv_point_between(from, to, MAX(t0, t1));
  }
  return TRUE;
}

/* The part of the outline's edge between the two lines says it all: where the panel has a part between them,
 * each of that part's extremes lies on the edge, too. */
gboolean
spv_axis_bounds(SpvAxis axis, const SpvOutline *outline, double v0, double v1, SpvBox *bounds) {
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);
  SpvBox found = { INFINITY, INFINITY, -INFINITY, -INFINITY };

  for (gsize i = 0; i < n; i++) {
    SpvPoint a = on_axis(axis, points[i]), b = on_axis(axis, points[(i + 1) % n]);
    if (!cut_segment(&a, &b, v0, v1))
      continue;
    found = spv_box_join(found, (SpvBox){ MIN(a.x, b.x), MIN(a.y, b.y), MAX(a.x, b.x), MAX(a.y, b.y) });
  }
  *bounds = found.x0 <= found.x1 ? found : (SpvBox){ 0, v0, 0, v0 };
  return found.x0 <= found.x1;
}

/* The whole outline on AXIS, with a margin so that no end of a band shows. */
static SpvBox
reach_on(SpvAxis axis, const SpvOutline *outline) {
  SpvBox bounds;

  spv_axis_bounds(axis, outline, -INFINITY, INFINITY, &bounds);
  return spv_box_grow(bounds, 0.1 * MAX(spv_outline_width(outline), spv_outline_height(outline)));
}

/* LINE from A to B, whole from S0 to S1 mm from A. */
static SpvPath *
lay_straight(const SpvLine *line, SpvPoint a, SpvPoint b, double s0, double s1, double side) {
  SpvPoint ends[2] = { a, b };
  g_autoptr(SpvTrack) track = spv_track_new(ends, 2, FALSE);

  if (!(s1 - s0 > 1e-6)) {
    s0 = 0;
    s1 = spv_track_length(track);
  }
  return spv_line_lay(line, track, s0, s1, side);
}

SpvPath *
spv_edge_lay_between(const SpvLine *line, const SpvOutline *outline, SpvPoint from, SpvPoint direction,
                     double u0, double u1, double side) {
  SpvAxis axis = { from, direction };
  SpvBox reach = reach_on(axis, outline);
  /* Where it runs away from the panel, it still has to be a line. */
  double margin = 0.1 * MAX(spv_outline_width(outline), spv_outline_height(outline));
  SpvPoint end = spv_axis_point(axis, MAX(reach.x1, margin), 0);

  return lay_straight(line, from, end, u0, u1, side);
}

SpvPath *
spv_edge_lay(const SpvLine *line, const SpvOutline *outline, SpvPoint from, SpvPoint direction, double side) {
  SpvAxis axis = { from, direction };
  SpvBox chord;

  spv_axis_bounds(axis, outline, 0, 0, &chord);
  return spv_edge_lay_between(line, outline, from, direction, MAX(chord.x0, 0), MAX(chord.x1, 0), side);
}

static gboolean
is_given(const SpvPattern *pattern, const char *key) {
  int index = spv_pattern_measure_index(pattern->kind, key);

  return index >= 0 && pattern->measures[index].unit != SPV_UNIT_AUTO;
}

SpvLine
spv_line_on_band(const SpvPattern *pattern, const SpvOutline *outline, double span, double width) {
  SpvLine line = spv_line_of(pattern, outline);
  double unit = MIN(spv_outline_width(outline), spv_outline_height(outline)), deepest = width / 2;

  if (line.profile == SPV_PROFILE_PLAIN || line.amplitude >= 0 || spv_profile_runs_alike(line.profile) ||
      !(span > 0 && width > 0))
    return line;

  double pitch = span / spv_line_periods(&line, span, unit), depth = spv_line_amplitude(&line, pitch);
  if (depth <= deepest)
    return line;
  if (is_given(pattern, "pitch") || is_given(pattern, "periods")) {
    line.amplitude = deepest;
  } else {
    line.pitch = pitch * deepest / depth;
    line.periods = 0;
  }
  return line;
}

SpvBand
spv_band_new(SpvAxis axis, const SpvOutline *outline, double v0, double v1, double v) {
  SpvBox reach = reach_on(axis, outline), chord;

  if (!spv_axis_bounds(axis, outline, v, v, &chord)) {
    chord.x0 = reach.x0;
    chord.x1 = reach.x1;
  }
  return (SpvBand){ .axis = axis,
                    .v0 = v0,
                    .v1 = v1,
                    .u0 = reach.x0,
                    .u1 = reach.x1,
                    .low = chord.x0,
                    .high = chord.x1,
                    .edges = SPV_EDGES_BOTH };
}

static SpvPath *
lay_band_edge(const SpvBand *band, double v, gboolean bears_line, double side) {
  static const SpvLine plain = { .profile = SPV_PROFILE_PLAIN };

  return lay_straight(bears_line ? &band->line : &plain, spv_axis_point(band->axis, band->u0, v),
                      spv_axis_point(band->axis, band->u1, v), band->low - band->u0, band->high - band->u0,
                      side);
}

void
spv_band_add(const SpvBand *band, SpvPathBuilder *builder) {
  gboolean on_first = band->edges != SPV_EDGES_SECOND, on_second = band->edges != SPV_EDGES_FIRST;
  gboolean alike = on_first && on_second && spv_profile_runs_alike(band->line.profile);
  g_autoptr(SpvPath) first = NULL, second = NULL, back = NULL;

  if (!(band->v1 > band->v0) || !(band->u1 > band->u0))
    return;
  first = lay_band_edge(band, band->v0, on_first, -1);
  if (alike) {
    /* The very same edge once more, so that one fits into the other. */
    SpvPoint across = spv_point_scale(spv_point_quarter_turn(band->axis.along), band->v1 - band->v0);
    second = spv_path_transform(first, spv_transform_turn(0, across));
  } else {
    second = lay_band_edge(band, band->v1, on_second, 1);
  }
  back = spv_path_reverse(second);
  spv_path_builder_join(builder, first);
  spv_path_builder_join(builder, back);
  spv_path_builder_close(builder);
}

void
spv_band_add_lines(const SpvBand *band, guint number, SpvDraft *draft) {
  double v[2] = { band->v0, band->v1 };

  for (guint i = 0; i < 2; i++)
    spv_draft_add_line(draft, SPV_LINE_DIVISION, number + i, spv_axis_point(band->axis, band->u0, v[i]),
                       spv_axis_point(band->axis, band->u1, v[i]));
}

static SpvFrame *
frame_of_box(SpvBox box) {
  if (!(spv_box_width(box) > 0 && spv_box_height(box) > 0))
    return NULL;
  return spv_frame_new_box(spv_point((box.x0 + box.x1) / 2, box.y0), 0, spv_box_width(box),
                           spv_box_height(box));
}

SpvFrame *
spv_band_frame(const SpvBand *band, const SpvOutline *outline) {
  SpvPoint along = band->axis.along;
  SpvBox box;

  if (!spv_axis_bounds(band->axis, outline, band->v0, band->v1, &box))
    return NULL;
  box.x0 = MAX(box.x0, band->u0);
  box.x1 = MIN(box.x1, band->u1);
  if (!(box.x1 > box.x0 && box.y1 > box.y0))
    return NULL;
  if (fabs(along.x) < 1e-9) {
    SpvPoint a = spv_axis_point(band->axis, box.x0, box.y0), b = spv_axis_point(band->axis, box.x1, box.y1);
    return frame_of_box((SpvBox){ MIN(a.x, b.x), MIN(a.y, b.y), MAX(a.x, b.x), MAX(a.y, b.y) });
  }
  return spv_frame_new_box(spv_axis_point(band->axis, (box.x0 + box.x1) / 2, box.y0), atan2(along.y, along.x),
                           box.x1 - box.x0, box.y1 - box.y0);
}

SpvFrame *
spv_frame_in_box(const SpvOutline *outline, SpvBox box) {
  g_autoptr(SpvPath) path = spv_path_new_box(box);
  g_autoptr(SpvShape) area = spv_shape_new_from_path(path);
  g_autoptr(SpvShape) inside = spv_shape_intersection(spv_outline_shape(outline), area);

  return spv_shape_is_empty(inside) ? NULL : frame_of_box(spv_shape_bounds(inside));
}

static void
unref_track(gpointer track) {
  spv_track_unref(track);
}

GPtrArray *
spv_spines_new(void) {
  return g_ptr_array_new_with_free_func(unref_track);
}

void
spv_spines_add(GPtrArray *spines, SpvPoint from, SpvPoint to) {
  SpvPoint ends[2] = { from, to };

  if (spv_point_distance(from, to) > 1e-9)
    g_ptr_array_add(spines, spv_track_new(ends, 2, FALSE));
}

SpvFrame *
spv_frame_of_limbs(const SpvOutline *outline, GPtrArray *spines, double breadth) {
  SpvFrame *frame = spines->len > 0 ? spv_frame_new_limbs(outline, spines, breadth) : NULL;

  g_ptr_array_unref(spines);
  return frame;
}
