/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The jagged border, whose points stand on an edge. */
#include "heraldry/lay-private.h"

/* How far a border's outer side lies beyond the panel, so that it never shows, as a part of its smaller
 * measure. */
#define OVERLAP 0.02

/* The choices of the border's edge, in the order of the table in pattern.c. */
enum { ALL_ROUND = 4 };
static const SpvEdge edges[4] = { SPV_EDGE_CHIEF, SPV_EDGE_DEXTER, SPV_EDGE_BASE, SPV_EDGE_SINISTER };

/* The edge that a border stands on, and how the points are spread along it. */
typedef struct {
  SpvTrack *edge; /* clockwise */
  double start;   /* where it begins on the outline's track */
  double pitch;   /* mm from point to point along it */
  guint points;
  double width;    /* of the band under the points */
  double depth;    /* of the points over the band */
  double sideways; /* how far each tip leans along the edge */
  double outer;    /* how far the band reaches beyond the panel */
} Jagged;

static SpvPoint
inside(const Jagged *jagged, double s, double distance) {
  return spv_point_add(spv_track_at(jagged->edge, s),
                       spv_point_scale(spv_track_normal(jagged->edge, s), distance));
}

static SpvPoint
tip(const Jagged *jagged, guint i) {
  double s = (i + 0.5) * jagged->pitch;
  /* The normal turned back by a quarter is the direction of the edge. */
  SpvPoint normal = spv_track_normal(jagged->edge, s), along = { normal.y, -normal.x };
  return spv_point_add(inside(jagged, s, jagged->width + jagged->depth),
                       spv_point_scale(along, jagged->sideways));
}

static SpvPoint
root(const Jagged *jagged, guint i) {
  return inside(jagged, i * jagged->pitch, jagged->width);
}

/* One point with the band under it: out beyond the edge from root to root, then back over the tip. */
static void
add_point(const Jagged *jagged, guint i, SpvPathBuilder *builder) {
  double s0 = i * jagged->pitch, s1 = (i + 1) * jagged->pitch;
  gsize n;
  const SpvPoint *points = spv_track_points(jagged->edge, &n);
  double s = 0;

  spv_path_builder_move(builder, root(jagged, i));
  spv_path_builder_line(builder, inside(jagged, s0, -jagged->outer));
  for (gsize k = 0; k + 1 < n && s < s1; k++) {
    if (s > s0 + 1e-9 && s < s1 - 1e-9)
      spv_path_builder_line(builder, inside(jagged, s, -jagged->outer));
    s += spv_point_distance(points[k], points[k + 1]);
  }
  spv_path_builder_line(builder, inside(jagged, s1, -jagged->outer));
  spv_path_builder_line(builder, root(jagged, i + 1));
  if (jagged->depth > 0)
    spv_path_builder_line(builder, tip(jagged, i));
  spv_path_builder_close(builder);
}

/* The band runs on straight beyond the edge's ends, to where it meets the outline. */
static void
add_end(const Jagged *jagged, gboolean at_start, double reach, SpvPathBuilder *builder) {
  double s = at_start ? 0 : spv_track_length(jagged->edge);
  SpvPoint normal = spv_track_normal(jagged->edge, s);
  SpvPoint away = spv_point_scale(spv_point(normal.y, -normal.x), at_start ? -reach : reach);
  SpvPoint in = inside(jagged, s, jagged->width), out = inside(jagged, s, -jagged->outer);
  SpvPoint forward[4] = { out, spv_point_add(out, away), spv_point_add(in, away), in };
  SpvPoint backward[4] = { spv_point_add(out, away), out, in, spv_point_add(in, away) };

  spv_path_builder_polygon(builder, at_start ? backward : forward, 4);
}

static void
add_dot(SpvDraft *draft, SpvDotKind kind, SpvPoint at, double s, double spacing) {
  SpvDraftDot dot = { kind, at, s, spacing };
  g_array_append_val(draft->dots, dot);
}

static void
add_dots(const Jagged *jagged, gboolean all_round, SpvDraft *draft) {
  guint roots = all_round ? jagged->points : jagged->points + 1;

  if (jagged->depth <= 0)
    return;
  for (guint i = 0; i < jagged->points; i++)
    add_dot(draft, SPV_DOT_TIP, tip(jagged, i), jagged->start + (i + 0.5) * jagged->pitch, jagged->pitch);
  for (guint i = 0; i < roots; i++)
    add_dot(draft, SPV_DOT_ROOT, root(jagged, i), jagged->start + i * jagged->pitch, jagged->pitch);
}

static guint
count_points(const SpvPattern *pattern, const SpvOutline *outline, double length) {
  double pitch = spv_pattern_measure(pattern, SPV_JAGGED_PITCH, outline, 0);
  double points = pitch > 0 ? round(length / pitch)
                            : spv_pattern_measure(pattern, SPV_JAGGED_POINTS, outline, 6);

  return (guint) CLAMP(points, 1, SPV_PATTERN_MAX_COUNT);
}

/* How far a tight corner reaches into the edge from one of its ends: where the edge turns on a smaller circle
 * than the band is wide, the band's inner side would fold over, so the points start beyond it. At most a
 * quarter of the edge. */
static double
tight_end(const SpvTrack *edge, gboolean at_start, double width) {
  gsize n;
  const SpvPoint *points = spv_track_points(edge, &n);
  double s = 0, most = spv_track_length(edge) / 4, last_turn = 0;

  for (gsize k = 0; k + 2 < n; k++) {
    SpvPoint a = points[at_start ? k : n - 1 - k], b = points[at_start ? k + 1 : n - 2 - k];
    SpvPoint c = points[at_start ? k + 2 : n - 3 - k];
    SpvPoint in = spv_point_subtract(b, a), out = spv_point_subtract(c, b);
    double turn = fabs(atan2(spv_point_cross(in, out), spv_point_dot(in, out)));

    if (MAX(turn, last_turn) * width <= spv_point_length(in) || s + spv_point_length(in) > most)
      break;
    last_turn = turn;
    s += spv_point_length(in);
  }
  return s;
}

/* The part of the outline that is the edge, less tight corners at its ends; NULL where the outline has no
 * such edge. */
static SpvTrack *
curved_edge(const SpvOutline *outline, SpvEdge edge, double width, double *start) {
  double s0 = 0, s1 = 0;

  spv_outline_edge(outline, edge, &s0, &s1);
  if (s1 - s0 < SPV_CHORD_ERROR)
    return NULL;
  g_autoptr(SpvTrack) whole = spv_track_part(spv_outline_track(outline), s0, s1);
  *start = s0 + tight_end(whole, TRUE, width);
  return spv_track_part(spv_outline_track(outline), *start, s1 - tight_end(whole, FALSE, width));
}

/* A straight line along the panel's side, as long as the panel is where the points have their roots: on a
 * curved edge the points then stand in a level row. */
static SpvTrack *
straight_edge(const SpvOutline *outline, SpvEdge edge, double width) {
  SpvBox box = spv_outline_bounds(outline);
  gboolean level = edge == SPV_EDGE_CHIEF || edge == SPV_EDGE_BASE;
  SpvPoint middle = spv_box_centre(box), away = { 0, 0 };
  g_autoptr(GArray) crossings = NULL;
  SpvPoint roots, along;

  if (level)
    away.y = edge == SPV_EDGE_CHIEF ? -spv_box_height(box) / 2 : spv_box_height(box) / 2;
  else
    away.x = edge == SPV_EDGE_DEXTER ? -spv_box_width(box) / 2 : spv_box_width(box) / 2;
  /* Clockwise along the edge: the way outward, turned by a quarter. */
  along = spv_point_quarter_turn(spv_point_unit(away));
  middle = spv_point_add(middle, away);
  roots = spv_point_subtract(middle, spv_point_scale(spv_point_unit(away), MAX(width, 1e-6)));
  crossings = spv_track_crossings(spv_outline_track(outline), roots, spv_point_add(roots, along));

  double low = INFINITY, high = -INFINITY, half = (level ? spv_box_width(box) : spv_box_height(box)) / 2;
  for (guint i = 0; i < crossings->len; i++) {
    SpvPoint at = spv_track_at(spv_outline_track(outline), g_array_index(crossings, double, i));
    double d = spv_point_dot(spv_point_subtract(at, roots), along);
    low = MIN(low, d);
    high = MAX(high, d);
  }
  if (!(high - low > 1e-3)) {
    low = -half;
    high = half;
  }
  SpvPoint ends[2] = { spv_point_add(middle, spv_point_scale(along, low)),
                       spv_point_add(middle, spv_point_scale(along, high)) };
  return spv_track_new(ends, 2, FALSE);
}

/* Where on the outline a point of a level row stands: straight out from it, on the border's side. */
static double
standing_place(const SpvOutline *outline, SpvPoint at, SpvPoint outward) {
  const SpvTrack *track = spv_outline_track(outline);
  g_autoptr(GArray) crossings = spv_track_crossings(track, at, spv_point_add(at, outward));
  double best = spv_track_locate(track, at, NULL), farthest = -INFINITY;

  for (guint i = 0; i < crossings->len; i++) {
    double s = g_array_index(crossings, double, i);
    double d = spv_point_dot(spv_point_subtract(spv_track_at(track, s), at), outward);
    if (d > farthest) {
      farthest = d;
      best = s;
    }
  }
  return best;
}

static void
stand_dots(SpvDraft *draft, const SpvOutline *outline, const Jagged *jagged) {
  SpvPoint outward = spv_point_scale(spv_track_normal(jagged->edge, 0), -1);

  for (guint i = 0; i < draft->dots->len; i++) {
    SpvDraftDot *dot = &g_array_index(draft->dots, SpvDraftDot, i);
    dot->s = standing_place(outline, dot->at, outward);
  }
}

void
spv_lay_jagged_border(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  guint choice = (guint) spv_pattern_measure(pattern, SPV_JAGGED_EDGE, outline, 2);
  gboolean all_round = choice == ALL_ROUND;
  gboolean straight = !all_round && spv_pattern_measure(pattern, SPV_JAGGED_ROW, outline, 0) > 0;
  double reach = spv_outline_width(outline) + spv_outline_height(outline);
  /* Beyond the far side of the panel nothing more can show. */
  double width = MIN(spv_pattern_measure(pattern, SPV_JAGGED_WIDTH, outline, 0), reach);
  double depth = MIN(spv_pattern_measure(pattern, SPV_JAGGED_DEPTH, outline, 0), reach);
  double start = 0;
  g_autoptr(SpvTrack) edge = all_round  ? spv_track_ref(spv_outline_track(outline))
                             : straight ? straight_edge(outline, edges[choice], width)
                                        : curved_edge(outline, edges[choice], width, &start);
  if (edge == NULL) {
    draft->area[0] = spv_path_builder_build(spv_path_builder_new());
    return;
  }
  Jagged jagged = {
    .edge = edge,
    .start = start,
    .points = count_points(pattern, outline, spv_track_length(edge)),
    .width = width,
    .depth = depth,
    .sideways = depth * tan(spv_pattern_measure(pattern, SPV_JAGGED_LEAN, outline, 0)),
    .outer = OVERLAP * MIN(spv_outline_width(outline), spv_outline_height(outline)),
  };
  SpvPathBuilder *builder = spv_path_builder_new();

  jagged.pitch = spv_track_length(edge) / jagged.points;
  if (width > 0 || depth > 0)
    for (guint i = 0; i < jagged.points; i++)
      add_point(&jagged, i, builder);
  if (!all_round && width > 0) {
    add_end(&jagged, TRUE, reach, builder);
    add_end(&jagged, FALSE, reach, builder);
  }
  draft->area[0] = spv_path_builder_build(builder);
  draft->dots_all_round = all_round;
  draft->dots_edge = all_round ? SPV_EDGE_CHIEF : edges[choice];
  add_dots(&jagged, all_round, draft);
  if (straight)
    stand_dots(draft, outline, &jagged);
}
