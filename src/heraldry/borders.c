/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Borders: the jagged border, whose points stand on an edge, and the plain bordure. */
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

void
spv_lay_jagged_border(const SpvPattern *pattern, const SpvOutline *outline, SpvDraft *draft) {
  int choice = (int) spv_pattern_measure(pattern, SPV_JAGGED_EDGE, outline, 2);
  const SpvTrack *track = spv_outline_track(outline);
  double smaller = MIN(spv_outline_width(outline), spv_outline_height(outline));
  double reach = spv_outline_width(outline) + spv_outline_height(outline);
  double s0 = 0, s1 = spv_track_length(track);
  g_autoptr(SpvTrack) edge = NULL;
  SpvPathBuilder *builder = spv_path_builder_new();
  Jagged jagged;

  if (choice != ALL_ROUND)
    spv_outline_edge(outline, edges[choice], &s0, &s1);
  edge = choice == ALL_ROUND ? spv_track_ref(track) : spv_track_part(track, s0, s1);
  jagged = (Jagged){
    .edge = edge,
    .start = s0,
    .points = count_points(pattern, outline, spv_track_length(edge)),
    /* Beyond the far side of the panel nothing more can show. */
    .width = MIN(spv_pattern_measure(pattern, SPV_JAGGED_WIDTH, outline, 0), reach),
    .depth = MIN(spv_pattern_measure(pattern, SPV_JAGGED_DEPTH, outline, 0), reach),
    .outer = OVERLAP * smaller,
  };
  jagged.pitch = spv_track_length(edge) / jagged.points;
  jagged.sideways = jagged.depth * tan(spv_pattern_measure(pattern, SPV_JAGGED_LEAN, outline, 0));
  if (jagged.width > 0 || jagged.depth > 0)
    for (guint i = 0; i < jagged.points; i++)
      add_point(&jagged, i, builder);
  if (choice != ALL_ROUND && jagged.width > 0) {
    add_end(&jagged, TRUE, reach, builder);
    add_end(&jagged, FALSE, reach, builder);
  }
  draft->area[0] = spv_path_builder_build(builder);
  add_dots(&jagged, choice == ALL_ROUND, draft);
}

/* The box less what is left of the panel when a disc as wide as the bordure has run round inside its edge. */
void
spv_lay_bordure(const SpvPattern *pattern, const SpvOutline *outline, SpvDraft *draft) {
  double width = spv_pattern_measure(pattern, SPV_BORDURE_WIDTH, outline, 0);
  SpvPathBuilder *builder = spv_path_builder_new();

  if (width > 0) {
    g_autoptr(SpvShape) inner = spv_shape_offset(spv_outline_shape(outline), -width);
    SpvCut box = spv_cut_box(spv_lay_box(outline));
    gsize n_pieces;
    const SpvPiece *pieces = spv_shape_pieces(inner, &n_pieces);

    spv_cut_add(&box, builder);
    for (gsize i = 0; i < n_pieces; i++) {
      const SpvRing *ring = pieces[i].rings[0];
      g_autofree SpvPoint *reversed = g_new(SpvPoint, ring->n_points);
      for (gsize k = 0; k < ring->n_points; k++)
        reversed[k] = ring->points[ring->n_points - 1 - k];
      spv_path_builder_polygon(builder, reversed, ring->n_points);
    }
  }
  draft->area[0] = spv_path_builder_build(builder);
}
