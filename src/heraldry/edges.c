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

SpvBox
spv_axis_reach(SpvAxis axis, const SpvOutline *outline) {
  SpvBox bounds;

  spv_axis_bounds(axis, outline, -INFINITY, INFINITY, &bounds);
  return spv_box_grow(bounds, 0.1 * MAX(spv_outline_width(outline), spv_outline_height(outline)));
}

SpvPath *
spv_edge_lay(const SpvLine *line, SpvPoint a, SpvPoint b, double s0, double s1, double side) {
  SpvPoint ends[2] = { a, b };
  g_autoptr(SpvTrack) track = spv_track_new(ends, 2, FALSE);

  if (!(s1 - s0 > 1e-6)) {
    s0 = 0;
    s1 = spv_track_length(track);
  }
  return spv_line_lay(line, track, s0, s1, side);
}

/* The line's first point lies off the baseline, so it meets the middle before or behind the corner. How far
 * depends on the pitch, and that on how much is left. */
double
spv_corner_lead(const SpvLine *line, double length, double half) {
  double lead = 0, most = MAX(length, 0) / 2;

  if (line->profile == SPV_PROFILE_PLAIN)
    return 0;
  for (int i = 0; i < 8; i++) {
    double left = MAX(length - lead, 1e-6), pitch = left / spv_line_periods(line, left, left);
    /* In a notch no crest may reach over the middle, whatever the line begins with. */
    double off = (half < 0 ? 0.5 : spv_profile_unit(line->profile)->start) * spv_line_amplitude(line, pitch);
    lead = CLAMP(-off / tan(half), -most, most);
  }
  return lead;
}

static SpvPoint
path_start(const SpvPath *path) {
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);

  return n > 0 ? steps[0].to : spv_point(0, 0);
}

/* PATH with a straight start, LENGTH mm long in DIRECTION. */
static SpvPath *
with_straight_start(const SpvPath *path, SpvPoint direction, double length) {
  SpvPathBuilder *builder = spv_path_builder_new();

  spv_path_builder_move(builder, spv_point_subtract(path_start(path), spv_point_scale(direction, length)));
  spv_path_builder_join(builder, path);
  return spv_path_builder_build(builder);
}

SpvPath *
spv_corner_edge(const SpvLine *line, const SpvOutline *outline, SpvPoint at, SpvPoint direction, double half,
                double side) {
  SpvAxis axis = { at, direction };
  SpvBox reach = spv_axis_reach(axis, outline), chord;
  double margin = spv_outline_width(outline) + spv_outline_height(outline);
  double end = MAX(reach.x1, 0.1 * margin), low, high;

  spv_axis_bounds(axis, outline, 0, 0, &chord);
  low = MAX(chord.x0, 0);
  high = chord.x1 > low ? chord.x1 : end;
  if (low <= 0)
    low = spv_corner_lead(line, high, half);
  /* Where the corner lies outside the panel the teeth begin at the edge. */
  g_autoptr(SpvPath) laid = spv_edge_lay(line, spv_axis_point(axis, low, 0), spv_axis_point(axis, end, 0), 0,
                                         high - low, side);
  return with_straight_start(laid, direction, MAX(low, 0) + MAX(-reach.x0, 0) + margin);
}

/* All between EDGE, which runs along AXIS, and a line as far from it as OUTLINE goes, to the side that lies
 * clockwise of it where SIDE is 1. */
static SpvShape *
side_of_edge(const SpvPath *edge, SpvAxis axis, const SpvOutline *outline, double side) {
  SpvBox reach = spv_axis_reach(axis, outline);
  double margin = spv_outline_width(outline) + spv_outline_height(outline);
  double far = side * (margin + MAX(fabs(reach.y0), fabs(reach.y1)));
  SpvPoint over = spv_point_scale(spv_point_quarter_turn(axis.along), far);
  g_autoptr(SpvPath) back = spv_path_reverse(edge);
  SpvPathBuilder *builder = spv_path_builder_new();
  const SpvPath *way = side > 0 ? edge : back, *other_way = side > 0 ? back : edge;

  spv_path_builder_join(builder, way);
  spv_path_builder_line(builder, spv_point_add(path_start(other_way), over));
  spv_path_builder_line(builder, spv_point_add(path_start(way), over));
  spv_path_builder_close(builder);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  return spv_shape_new_from_path(path);
}

SpvShape *
spv_corner_lay(const SpvLine *line, const SpvOutline *outline, SpvPoint at, SpvPoint in, SpvPoint out) {
  double half = (G_PI - atan2(spv_point_cross(in, out), spv_point_dot(in, out))) / 2;
  SpvAxis before = { at, spv_point_scale(in, -1) }, after = { at, out };
  g_autoptr(SpvPath) first = spv_corner_edge(line, outline, at, before.along, half, 1);
  g_autoptr(SpvPath) second = spv_corner_edge(line, outline, at, after.along, half, -1);
  g_autoptr(SpvShape) inside_first = side_of_edge(first, before, outline, -1);
  g_autoptr(SpvShape) inside_second = side_of_edge(second, after, outline, 1);

  return spv_shape_intersection(inside_first, inside_second);
}

void
spv_add_mirrored(SpvPathBuilder *builder, const SpvPath *area, double x) {
  SpvBox bounds = spv_path_bounds(area);
  g_autoptr(SpvPath)
      side = spv_path_new_box((SpvBox){ x, bounds.y0 - 1, MAX(bounds.x1, x) + 1, bounds.y1 + 1 });
  g_autoptr(SpvShape) whole = spv_shape_new_from_path(area), right = spv_shape_new_from_path(side);
  g_autoptr(SpvShape) half = spv_shape_intersection(whole, right);
  g_autoptr(SpvPath) there = spv_shape_to_path(half);
  g_autoptr(SpvPath) image = spv_path_transform(there, (SpvTransform){ -1, 0, 0, 1, 2 * x, 0 });

  spv_path_builder_path(builder, there);
  spv_path_builder_path(builder, image);
}

static gboolean
is_given(const SpvPattern *pattern, const char *key) {
  int index = spv_pattern_measure_index(pattern->kind, key);

  return index >= 0 && pattern->measures[index].unit != SPV_UNIT_AUTO;
}

SpvLine
spv_line_with_room(const SpvPattern *pattern, const SpvOutline *outline, double span, double deepest) {
  SpvLine line = spv_line_of(pattern, outline);
  double unit = MIN(spv_outline_width(outline), spv_outline_height(outline));

  if (line.profile == SPV_PROFILE_PLAIN || line.amplitude >= 0 || !(span > 0 && deepest > 0))
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

gboolean
spv_line_folds_back(SpvProfile profile) {
  const SpvProfileUnit *unit = spv_profile_unit(profile);
  double from = 0;

  for (guint i = 0; i < unit->n_steps; i++) {
    const SpvRunStep *step = &unit->steps[i];
    if (step->to.x < from || (step->curved && (step->c1.x < from || step->c2.x > step->to.x)))
      return TRUE;
    from = step->to.x;
  }
  return FALSE;
}

SpvLine
spv_line_on_band(const SpvPattern *pattern, const SpvOutline *outline, double span, double width) {
  SpvProfile profile = spv_line_of(pattern, outline).profile;
  gboolean has_room = spv_profile_runs_alike(profile) && !spv_line_folds_back(profile);

  return spv_line_with_room(pattern, outline, span, has_room ? INFINITY : width / 2);
}

SpvBand
spv_band_new(SpvAxis axis, const SpvOutline *outline, double v0, double v1, double v) {
  SpvBox reach = spv_axis_reach(axis, outline), chord;

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
  const SpvLine *line = bears_line ? &band->line : &plain;
  double low = band->blunt ? CLAMP(band->low, band->u0, band->u1) : band->u0;
  g_autoptr(SpvPath)
      laid = spv_edge_lay(line, spv_axis_point(band->axis, low, v), spv_axis_point(band->axis, band->u1, v),
                          band->low - low, band->high - low, side);

  return band->blunt ? with_straight_start(laid, band->axis.along, low - band->u0) : spv_path_ref(laid);
}

void
spv_band_add(const SpvBand *band, SpvPathBuilder *builder) {
  gboolean on_first = band->edges != SPV_EDGES_SECOND, on_second = band->edges != SPV_EDGES_FIRST;
  gboolean alike = on_first && on_second && !band->blunt && spv_profile_runs_alike(band->line.profile);
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

/* From where to where the band shows at its full width, or nearly: at a quarter and at three quarters of it.
 */
static void
clear_span(const SpvBand *band, const SpvOutline *outline, SpvBox box, double *low, double *high) {
  *low = box.x0;
  *high = box.x1;
  for (int i = 1; i <= 3; i += 2) {
    double v = box.y0 + i * spv_box_height(box) / 4;
    SpvBox chord;
    if (!spv_axis_bounds(band->axis, outline, v, v, &chord))
      continue;
    *low = MAX(*low, chord.x0);
    *high = MIN(*high, chord.x1);
  }
}

/* Where the panel's edge cuts the ends of a band aslant, charges stand on its middle between the cuts. The
 * frame is new, so nobody else sees it change. */
static SpvFrame *
with_spine(SpvFrame *frame, SpvPoint from, SpvPoint to, double length) {
  if (spv_point_distance(from, to) < length - 1e-6) {
    SpvTransform inwards;
    GPtrArray *spines = spv_spines_new();
    if (spv_transform_invert(frame->place, &inwards))
      spv_spines_add(spines, spv_transform_point(inwards, from), spv_transform_point(inwards, to));
    if (spines->len > 0)
      frame->spines = g_ptr_array_ref(spines);
    g_ptr_array_unref(spines);
  }
  return frame;
}

SpvFrame *
spv_band_frame(const SpvBand *band, const SpvOutline *outline) {
  SpvPoint along = band->axis.along;
  double low, high;
  SpvBox box;
  SpvFrame *frame;

  if (!spv_axis_bounds(band->axis, outline, band->v0, band->v1, &box))
    return NULL;
  if (!(box.x1 > box.x0 && box.y1 > box.y0))
    return NULL;
  if (fabs(along.x) < 1e-9) {
    SpvPoint a = spv_axis_point(band->axis, box.x0, box.y0), b = spv_axis_point(band->axis, box.x1, box.y1);
    frame = frame_of_box((SpvBox){ MIN(a.x, b.x), MIN(a.y, b.y), MAX(a.x, b.x), MAX(a.y, b.y) });
  } else {
    frame = spv_frame_new_box(spv_axis_point(band->axis, (box.x0 + box.x1) / 2, box.y0),
                              atan2(along.y, along.x), box.x1 - box.x0, box.y1 - box.y0);
  }
  clear_span(band, outline, box, &low, &high);
  if (frame == NULL || !(high > low))
    return frame;
  double v = (box.y0 + box.y1) / 2;
  return with_spine(frame, spv_axis_point(band->axis, low, v), spv_axis_point(band->axis, high, v),
                    box.x1 - box.x0);
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

SpvFrame *
spv_frame_in_box(const SpvOutline *outline, SpvBox box) {
  g_autoptr(SpvPath) path = spv_path_new_box(box);
  g_autoptr(SpvShape) area = spv_shape_new_from_path(path);
  g_autoptr(SpvShape) inside = spv_shape_intersection(spv_outline_shape(outline), area);
  SpvBox bounds = spv_shape_bounds(inside);
  SpvFrame *frame = spv_shape_is_empty(inside) ? NULL : frame_of_box(bounds);
  double radius;

  if (frame == NULL || spv_shape_area(inside) > 0.95 * spv_box_width(bounds) * spv_box_height(bounds))
    return frame;
  /* A row through the middle of what is left. */
  SpvPoint middle = spv_shape_middle(inside, &radius);
  SpvAxis axis = { { 0, middle.y }, { 1, 0 } };
  SpvBox chord;
  if (!spv_axis_bounds(axis, outline, 0, 0, &chord))
    return frame;
  frame->breadth = 2 * radius;
  return with_spine(frame, spv_point(MAX(chord.x0, bounds.x0), middle.y),
                    spv_point(MIN(chord.x1, bounds.x1), middle.y), INFINITY);
}
