/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What runs round inside the panel's edge: bordure, orle and tressure. */
#include "heraldry/edges-private.h"

/* How much of the panel's area a bordure covers that sets the measure of orle and tressure: a fifth of the
 * shield, read as area; Fox-Davies p. 138 gives no fixed size. */
#define USUAL_SHARE 0.2
/* An orle is half as wide as a bordure: Fox-Davies p. 141. A tressure is half as wide as an orle: common
 * practice, no source. */
#define ORLE_OF_BORDURE (1.0 / 2)
#define TRESSURE_OF_BORDURE (1.0 / 4)

/* How near the solved share comes to the asked one. */
#define SHARE_ERROR 2e-10

static double
shape_edge_length(const SpvShape *shape) {
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);
  double length = 0;

  for (gsize i = 0; i < n; i++)
    for (gsize k = 0; k < pieces[i].n_rings; k++)
      length += spv_ring_length(pieces[i].rings[k]);
  return length;
}

/* How wide a bordure is that covers SHARE (above 0, below 1) of the panel's area: Newton's method, for what
 * is left shrinks as fast as its edge is long, kept between bounds by bisection. */
static double
width_of_share(const SpvOutline *outline, double share) {
  const SpvShape *panel = spv_outline_shape(outline);
  double whole = spv_shape_area(panel), target = whole * (1 - share);
  double low = 0, high = MIN(spv_outline_width(outline), spv_outline_height(outline)) / 2;
  double width = (whole - target) / shape_edge_length(panel);

  for (int i = 0; i < 60 && high - low > 1e-12; i++) {
    if (!(width > low && width < high))
      width = (low + high) / 2;
    g_autoptr(SpvShape) inner = spv_shape_offset(panel, -width);
    double excess = spv_shape_area(inner) - target, edge = shape_edge_length(inner);

    if (fabs(excess) <= SHARE_ERROR * whole)
      break;
    if (excess > 0)
      low = width;
    else
      high = width;
    width = edge > 0 ? width + excess / edge : (low + high) / 2;
  }
  return width;
}

/* The ring as a closed track that starts where the centre line crosses it first from above, so that a line
 * on it is the same on either side; at its own start where the line doesn't cross it. */
static SpvTrack *
track_from_top(const SpvRing *ring) {
  gsize n = ring->n_points, start = n;
  SpvPoint top = { 0, INFINITY };

  for (gsize i = 0; i < n; i++) {
    SpvPoint a = ring->points[i], b = ring->points[(i + 1) % n];
    if (!(a.x <= 0 && b.x > 0))
      continue;
    SpvPoint crossing = spv_point_between(a, b, a.x / (a.x - b.x));
    if (crossing.y < top.y) {
      top = crossing;
      start = i;
    }
  }
  if (start == n)
    return spv_track_new(ring->points, n, TRUE);

  g_autofree SpvPoint *points = g_new(SpvPoint, n + 1);
  points[0] = spv_point(0, top.y);
  for (gsize i = 0; i < n; i++)
    points[i + 1] = ring->points[(start + 1 + i) % n];
  return spv_track_new(points, n + 1, TRUE);
}

/* The edges of the panel less INSET mm all round, each a closed SpvTrack. */
static GPtrArray *
tracks_inside(const SpvOutline *outline, double inset) {
  GPtrArray *tracks = spv_spines_new();
  g_autoptr(SpvShape) inner = inset > 0 ? spv_shape_offset(spv_outline_shape(outline), -inset)
                                        : spv_shape_ref(spv_outline_shape(outline));
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(inner, &n);

  for (gsize i = 0; i < n; i++)
    g_ptr_array_add(tracks, track_from_top(pieces[i].rings[0]));
  return tracks;
}

/* Adds LINE round TRACK, crests inward where SIDE is 1; against the clock, to cut a hole, where HOLE. */
static void
add_round(SpvPathBuilder *builder, const SpvLine *line, const SpvTrack *track, double side, gboolean hole) {
  g_autoptr(SpvPath) laid = spv_line_lay(line, track, 0, spv_track_length(track), side);
  g_autoptr(SpvPath) run = hole ? spv_path_reverse(laid) : spv_path_ref(laid);

  spv_path_builder_join(builder, run);
  spv_path_builder_close(builder);
}

/* The frame whose limbs are what runs round at the insets (double) MIDDLES. */
static SpvFrame *
frame_round(const SpvOutline *outline, const double *middles, guint n, double breadth) {
  GPtrArray *spines = spv_spines_new();

  for (guint i = 0; i < n; i++) {
    g_autoptr(GPtrArray) tracks = tracks_inside(outline, middles[i]);
    for (guint k = 0; k < tracks->len; k++)
      g_ptr_array_add(spines, spv_track_ref(g_ptr_array_index(tracks, k)));
  }
  return spv_frame_of_limbs(outline, spines, breadth);
}

/* The box less what is left of the panel when a disc as wide as the bordure has run round inside its edge. */
void
spv_lay_bordure(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double width = spv_lay_measure(pattern, outline, "width", -1);
  SpvPathBuilder *builder = spv_path_builder_new();

  if (width < 0)
    width = width_of_share(outline, spv_lay_measure(pattern, outline, "share", 100 * USUAL_SHARE) / 100);
  if (width > 0) {
    g_autoptr(GPtrArray) inner = tracks_inside(outline, width);
    g_autoptr(SpvPath) whole = spv_path_new_box(spv_lay_box(outline));
    double middle = width / 2, length = 0;

    if (inner->len > 0)
      length = spv_track_length(g_ptr_array_index(inner, 0));
    SpvLine line = spv_line_with_room(pattern, outline, length, width);
    spv_path_builder_path(builder, whole);
    for (guint i = 0; i < inner->len; i++)
      add_round(builder, &line, g_ptr_array_index(inner, i), 1, TRUE);
    draft->frame = frame_round(outline, &middle, 1, width);
  }
  draft->area[0] = spv_path_builder_build(builder);
}

/* A band that runs round from INSET to INSET + WIDTH mm inside the edge. Both its edges bear as many teeth,
 * unless it falls into several: as many as PERIODS says, which is set where it is 0. */
static SpvPath *
lay_round(const SpvPattern *pattern, const SpvOutline *outline, double inset, double width, guint *periods) {
  g_autoptr(GPtrArray) outer = tracks_inside(outline, inset), inner = tracks_inside(outline, inset + width);
  double unit = MIN(spv_outline_width(outline), spv_outline_height(outline));
  double length = outer->len > 0 ? spv_track_length(g_ptr_array_index(outer, 0)) : 0;
  SpvLine line = spv_line_on_band(pattern, outline, length, width);
  double inward = spv_profile_runs_alike(line.profile) ? -1 : 1;
  SpvPathBuilder *builder = spv_path_builder_new();

  /* Deeper than this, edges that run alike would not keep apart round a corner. */
  if (inward < 0 && line.amplitude < 0 && length > 0)
    line.amplitude = MIN(2 * width,
                         spv_line_amplitude(&line, length / spv_line_periods(&line, length, unit)));
  if (outer->len == 1 && line.profile != SPV_PROFILE_PLAIN) {
    if (*periods == 0)
      *periods = spv_line_periods(&line, length, unit);
    line.periods = *periods;
    line.pitch = 0;
  }
  for (guint i = 0; i < outer->len; i++)
    add_round(builder, &line, g_ptr_array_index(outer, i), -1, FALSE);
  for (guint i = 0; i < inner->len; i++)
    add_round(builder, &line, g_ptr_array_index(inner, i), inward, TRUE);
  return spv_path_builder_build(builder);
}

void
spv_lay_orle(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double width = spv_lay_measure(pattern, outline, "width", -1);
  double inset = spv_lay_measure(pattern, outline, "inset", -1);
  double bordure = width < 0 || inset < 0 ? width_of_share(outline, USUAL_SHARE) : 0;

  if (width < 0)
    width = ORLE_OF_BORDURE * bordure;
  if (inset < 0)
    inset = bordure;
  if (width > 0) {
    double middle = inset + width / 2;
    guint periods = 0;
    draft->area[0] = lay_round(pattern, outline, inset, width, &periods);
    draft->frame = frame_round(outline, &middle, 1, width);
  } else {
    draft->area[0] = spv_lay_nothing();
  }
}

/* Adds RING in two halves that meet on the centre line: in one path, the hole of a ring would cut what lies
 * in it. */
static void
add_halves(SpvPathBuilder *builder, const SpvPath *ring, const SpvOutline *outline) {
  g_autoptr(SpvShape) whole = spv_shape_new_from_path(ring);
  SpvBox box = spv_lay_box(outline);

  for (int across = -1; across <= 1; across += 2) {
    SpvBox side = { across < 0 ? box.x0 : 0, box.y0, across < 0 ? 0 : box.x1, box.y1 };
    g_autoptr(SpvPath) path = spv_path_new_box(side);
    g_autoptr(SpvShape) half = spv_shape_new_from_path(path);
    g_autoptr(SpvShape) part = spv_shape_intersection(whole, half);
    g_autoptr(SpvPath) area = spv_shape_to_path(part);
    spv_path_builder_path(builder, area);
  }
}

void
spv_lay_tressure(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double bordure = width_of_share(outline, USUAL_SHARE);
  double width = spv_lay_measure(pattern, outline, "width", TRESSURE_OF_BORDURE * bordure);
  double apart = spv_lay_measure(pattern, outline, "apart", width);
  double inset = spv_lay_measure(pattern, outline, "inset", bordure);
  double deepest = MIN(spv_outline_width(outline), spv_outline_height(outline)) / 2;
  guint n = (guint) spv_lay_measure(pattern, outline, "number", 1);
  SpvPathBuilder *builder = spv_path_builder_new();
  g_autofree double *middles = g_new(double, n);
  guint laid = 0, periods = 0;

  for (guint i = 0; width > 0 && i < n; i++) {
    double at = inset + i * (width + apart);
    if (at >= deepest)
      break;
    g_autoptr(SpvPath) ring = lay_round(pattern, outline, at, width, &periods);
    if (n == 1)
      spv_path_builder_path(builder, ring);
    else
      add_halves(builder, ring, outline);
    middles[laid++] = at + width / 2;
  }
  draft->area[0] = spv_path_builder_build(builder);
  draft->frame = frame_round(outline, middles, laid, width);
}
