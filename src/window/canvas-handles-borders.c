/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles of what runs along the edge: each measure stands on another side, square on the edge. */
#include "window/canvas-handles-private.h"

static double
middle_of_edge(const SpvHandleMaking *making, SpvEdge edge) {
  double s0, s1;

  spv_outline_edge(making->outline, edge, &s0, &s1);
  return (s0 + s1) / 2;
}

/* The edge that a border stands on; one that runs all round is shown at the base. */
static SpvEdge
border_edge(const SpvHandleMaking *making) {
  static const SpvEdge edges[] = { SPV_EDGE_CHIEF, SPV_EDGE_DEXTER, SPV_EDGE_BASE, SPV_EDGE_SINISTER };
  guint choice = (guint) spv_making_value(making, "edge", 2);

  return choice < G_N_ELEMENTS(edges) ? edges[choice] : SPV_EDGE_BASE;
}

/* Whether the points stand in a straight row rather than square on the outline. */
static gboolean
in_a_row(const SpvHandleMaking *making) {
  return spv_making_value(making, "row", 0) > 0 && spv_making_value(making, "edge", 2) < SPV_N_EDGES;
}

/* The way inward, in which the points stand, at S along the outline. */
static SpvPoint
point_direction(const SpvHandleMaking *making, double s) {
  static const SpvPoint inward[SPV_N_EDGES] = {
    [SPV_EDGE_CHIEF] = { 0, 1 },
    [SPV_EDGE_SINISTER] = { -1, 0 },
    [SPV_EDGE_BASE] = { 0, -1 },
    [SPV_EDGE_DEXTER] = { 1, 0 },
  };

  return in_a_row(making) ? inward[border_edge(making)]
                          : spv_track_normal(spv_outline_track(making->outline), s);
}

static const SpvDraftDot *
dot_at(const SpvHandleMaking *making, guint index) {
  return &g_array_index(making->draft->dots, SpvDraftDot, index);
}

/* The index of the first root: the tips come before. */
static guint
count_tips(const SpvHandleMaking *making) {
  guint n = 0;

  while (n < making->draft->dots->len && dot_at(making, n)->kind == SPV_DOT_TIP)
    n++;
  return n;
}

/* The index of the root nearest to AT, from FIRST on. */
static guint
root_near(const SpvHandleMaking *making, guint first, SpvPoint at) {
  guint found = first;

  for (guint i = first; i < making->draft->dots->len; i++)
    if (spv_point_distance(dot_at(making, i)->at, at) < spv_point_distance(dot_at(making, found)->at, at))
      found = i;
  return found;
}

/* The point under a tip, where the border's width ends. */
static SpvPoint
under_tip(const SpvHandleMaking *making, const SpvDraftDot *tip, double depth, double lean) {
  SpvPoint normal = point_direction(making, tip->s), along = spv_point(normal.y, -normal.x);
  SpvPoint rise = spv_point_add(normal, spv_point_scale(along, tan(lean)));

  return spv_point_subtract(tip->at, spv_point_scale(rise, depth));
}

/* Without depth there are no dots to go by: the handles stand at the middle of the edge. */
static void
add_blunt_border(SpvHandleMaking *making, double s, double width) {
  SpvPoint edge = spv_track_at(spv_outline_track(making->outline), s), normal = point_direction(making, s);

  spv_making_slide(making, "width", edge, normal, width);
  spv_making_slide(making, "depth", spv_point_add(edge, spv_point_scale(normal, width)), normal, 0);
}

/* From one tip to another. */
static void
add_pitch(SpvHandleMaking *making, const SpvDraftDot *tip, const SpvDraftDot *next, guint n_tips) {
  double pitch = spv_making_value(making, "pitch", tip->spacing);

  if (n_tips > 1 && pitch > 0)
    spv_making_slide(making, "pitch", tip->at,
                     spv_point_scale(spv_point_subtract(next->at, tip->at), 1 / pitch), pitch);
}

/* The width's handle stands under a tip and the depth's between two tips, level with them: neither hides a
 * dot. The lean's stands beyond the next tip. */
static void
add_jagged(SpvHandleMaking *making) {
  double s = middle_of_edge(making, border_edge(making)), width = spv_making_value(making, "width", 0);
  double depth = spv_making_value(making, "depth", 0), lean = spv_making_value(making, "lean", 0);
  SpvPoint middle = spv_track_at(spv_outline_track(making->outline), s), foot, normal;
  const SpvDraftDot *root, *tip, *other;
  guint n_tips = count_tips(making), index;

  if (n_tips == 0 || n_tips == making->draft->dots->len) {
    add_blunt_border(making, s, width);
    return;
  }
  index = root_near(making, n_tips, middle);
  root = dot_at(making, index);
  /* Tip i stands between the roots i and i + 1. */
  index = MIN(index - n_tips, n_tips - 1);
  tip = dot_at(making, index);
  other = dot_at(making, index > 0 ? index - 1 : MIN(1, n_tips - 1));
  normal = point_direction(making, tip->s);
  foot = spv_point_subtract(under_tip(making, tip, depth, lean), spv_point_scale(normal, width));
  spv_making_slide(making, "width", foot, normal, width);
  spv_making_slide(making, "depth", root->at, point_direction(making, root->s), depth);
  normal = spv_point_scale(point_direction(making, other->s), depth + 0.1 * making->smaller);
  /* The inward normal, turned anticlockwise, is the way along the edge. */
  spv_making_turn(making, "lean", under_tip(making, other, depth, lean), normal, -1, 1, lean);
  add_pitch(making, tip, dot_at(making, index + 1 < n_tips ? index + 1 : 0), n_tips);
}

/* --- What runs all round --- */

/* AMOUNT mm inside the middle of EDGE, to be measured from FROM mm inside. */
static void
add_inward(SpvHandleMaking *making, const char *key, SpvEdge edge, double from, double amount) {
  const SpvTrack *track = spv_outline_track(making->outline);
  double s = middle_of_edge(making, edge);
  SpvPoint inward = spv_track_normal(track, s);

  spv_making_slide(making, key, spv_point_add(spv_track_at(track, s), spv_point_scale(inward, from)), inward,
                   amount);
}

/* The line of partition AT mm inside the edge, in the upper part of the dexter side. */
static void
add_round_line(SpvHandleMaking *making, double at, double deepest) {
  const SpvTrack *track = spv_outline_track(making->outline);
  double s0, s1, s;
  SpvPoint inward;

  spv_outline_edge(making->outline, SPV_EDGE_DEXTER, &s0, &s1);
  s = s0 + 0.75 * (s1 - s0);
  inward = spv_track_normal(track, s);
  spv_making_profile(making, spv_point_add(spv_track_at(track, s), spv_point_scale(inward, at)),
                     spv_point(inward.y, -inward.x), spv_track_length(track) - 2 * G_PI * at, deepest);
}

/* How wide what runs round came out, mm. */
static double
laid_width(const SpvHandleMaking *making) {
  return making->draft->frame == NULL ? 0 : making->draft->frame->breadth;
}

/* How far inside the edge its outer side came to lie, mm. */
static double
laid_inset(const SpvHandleMaking *making, double width) {
  const GPtrArray *spines = making->draft->frame == NULL ? NULL : making->draft->frame->spines;
  double distance = width / 2;

  if (spines != NULL && spines->len > 0)
    spv_track_locate(spv_outline_track(making->outline), spv_track_at(g_ptr_array_index(spines, 0), 0),
                     &distance);
  return distance - width / 2;
}

static void
add_bordure(SpvHandleMaking *making) {
  double width = spv_making_value(making, "width", laid_width(making));

  add_inward(making, "width", SPV_EDGE_SINISTER, 0, width);
  add_round_line(making, width, width / 2);
}

static void
add_orle(SpvHandleMaking *making) {
  double width = spv_making_value(making, "width", laid_width(making));
  double inset = spv_making_value(making, "inset", laid_inset(making, width));

  add_inward(making, "width", SPV_EDGE_SINISTER, inset, width);
  add_inward(making, "inset", SPV_EDGE_BASE, 0, inset);
  add_round_line(making, inset, width / 2);
}

static void
add_tressure(SpvHandleMaking *making) {
  double width = spv_making_value(making, "width", laid_width(making));

  add_orle(making);
  if (spv_making_value(making, "number", 1) > 1)
    add_inward(making, "apart", SPV_EDGE_DEXTER,
               spv_making_value(making, "inset", laid_inset(making, width)) + width,
               spv_making_value(making, "apart", width));
}

const SpvHandleMaker spv_handles_of_borders[] = {
  { SPV_PATTERN_JAGGED_BORDER, SPV_PATTERN_JAGGED_BORDER, add_jagged },
  { SPV_PATTERN_BORDURE, SPV_PATTERN_BORDURE, add_bordure },
  { SPV_PATTERN_ORLE, SPV_PATTERN_ORLE, add_orle },
  { SPV_PATTERN_TRESSURE, SPV_PATTERN_TRESSURE, add_tressure },
  { 0, 0, NULL },
};
