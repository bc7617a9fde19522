/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A run of teeth laid along a track, straight or curved. */
#include "heraldry/profile-private.h"

/* A turn of the baseline sharper than this is a corner, where teeth are mitred, rather than a step of a
 * flattened curve. As in geometry/track.c. */
#define CORNER (20 * G_PI / 180)
/* A mitre is left off where it would reach further than this many times the tooth's height. */
#define LONGEST_MITRE 4
/* mm: nearer to a corner than this, a track's normal is the corner's own. */
#define OFF_CORNER 1e-8
/* Halvings of a step at most. */
#define MAX_DEPTH 10

typedef struct {
  double s;        /* where it is; beyond a closed track's length on a second round */
  double half_tan; /* of half the turn: positive where the normal's side is the inner one */
  double half_cos; /* likewise */
  SpvPoint at, bisector;
} Corner;

/* A baseline and how v is laid on it. */
typedef struct {
  const SpvTrack *track;
  double side;
  GArray *corners; /* Corner, in the order of s, over all that the run covers */
  SpvPathBuilder *builder;
} Laying;

/* The corners of TRACK, SHIFT mm on, from S0 (not with it, where it is closed) to S1. */
static void
find_corners(const SpvTrack *track, double shift, double s0, double s1, GArray *corners) {
  gsize n;
  const SpvPoint *points = spv_track_points(track, &n);
  gboolean closed = spv_track_is_closed(track);
  double s = shift;

  for (gsize i = 0; i < n; i++) {
    SpvPoint at = points[i], before = points[(i + n - 1) % n], after = points[(i + 1) % n];
    SpvPoint into = spv_point_unit(spv_point_subtract(at, before));
    SpvPoint out = spv_point_unit(spv_point_subtract(after, at));
    double turn = atan2(spv_point_cross(into, out), spv_point_dot(into, out));
    gboolean turns = closed || (i > 0 && i + 1 < n);

    if (turns && fabs(turn) > CORNER && s > s0 + OFF_CORNER && s <= s1 + OFF_CORNER) {
      SpvPoint bisector = spv_point_unit(spv_point_quarter_turn(spv_point_add(into, out)));
      Corner corner = { s, tan(turn / 2), cos(turn / 2), at, bisector };
      g_array_append_val(corners, corner);
    }
    s += spv_point_distance(at, after);
  }
}

static const Corner *
corner_at(const Laying *laying, guint i) {
  return &g_array_index(laying->corners, Corner, i);
}

/* How many corners lie before S: the number of the piece of the baseline that S lies on. */
static guint
piece_of(const Laying *laying, double s) {
  guint piece = 0;

  while (piece < laying->corners->len && corner_at(laying, piece)->s < s)
    piece++;
  return piece;
}

/* The place on CORNER's bisector that lies V to the normal's side of both of its legs. */
static SpvPoint
mitre_point(const Corner *corner, double v) {
  return spv_point_add(corner->at, spv_point_scale(corner->bisector, v / corner->half_cos));
}

/* Where (s, v) lies, taken as on piece number PIECE of the baseline. Inside a corner, what would reach past
 * its bisector is held on it. */
static SpvPoint
place(const Laying *laying, guint piece, SpvPoint p) {
  const Corner *before = piece > 0 ? corner_at(laying, piece - 1) : NULL;
  const Corner *after = piece < laying->corners->len ? corner_at(laying, piece) : NULL;
  double v = p.y * laying->side, s = p.x;
  double low = before ? before->s + MAX(v * before->half_tan, OFF_CORNER) : -INFINITY;
  double high = after ? after->s - MAX(v * after->half_tan, OFF_CORNER) : INFINITY;

  if (low > high) {
    /* Too short for both. */
    s = (before->s + after->s) / 2;
  } else if (s < low) {
    if (v * before->half_tan > OFF_CORNER)
      return mitre_point(before, v);
    s = low;
  } else if (s > high) {
    if (v * after->half_tan > OFF_CORNER)
      return mitre_point(after, v);
    s = high;
  }
  return spv_point_add(spv_track_at(laying->track, s),
                       spv_point_scale(spv_track_normal(laying->track, s), v));
}

/* Adds the straight way in (s, v) from A, where the run is, to B, both on one piece. */
static void
add_straight(const Laying *laying, guint piece, SpvPoint a, SpvPoint b, int depth) {
  SpvPoint from = place(laying, piece, a), to = place(laying, piece, b);
  double stray = 0;

  for (int i = 1; i <= 3; i++)
    stray = MAX(stray,
                spv_point_to_segment(place(laying, piece, spv_point_between(a, b, i / 4.0)), from, to));
  if (stray <= SPV_CHORD_ERROR / 2 || depth >= MAX_DEPTH) {
    spv_path_builder_line(laying->builder, to);
    return;
  }
  SpvPoint middle = spv_point_between(a, b, 0.5);
  add_straight(laying, piece, a, middle, depth + 1);
  add_straight(laying, piece, middle, b, depth + 1);
}

/* Adds the outer point of a corner for V. */
static void
add_mitre(const Laying *laying, const Corner *corner, double v) {
  v *= laying->side;
  if (v * corner->half_tan < 0 && corner->half_cos * LONGEST_MITRE > 1)
    spv_path_builder_line(laying->builder, mitre_point(corner, v));
}

/* Adds the straight way in (s, v) from A to B, over any corners between. */
static void
add_over_corners(const Laying *laying, SpvPoint a, SpvPoint b, guint *piece) {
  guint last = piece_of(laying, b.x);

  while (*piece != last) {
    gboolean onward = *piece < last;
    const Corner *corner = corner_at(laying, onward ? *piece : *piece - 1);
    double t = b.x != a.x ? CLAMP((corner->s - a.x) / (b.x - a.x), 0, 1) : 1;
    SpvPoint at = { corner->s, a.y + (b.y - a.y) * t };

    add_straight(laying, *piece, a, at, 0);
    add_mitre(laying, corner, at.y);
    *piece += onward ? 1 : -1;
    spv_path_builder_line(laying->builder, place(laying, *piece, at));
    a = at;
  }
  add_straight(laying, *piece, a, b, 0);
}

/* Adds RUN, whose steps are straight. */
static void
add_along_track(const Laying *laying, const GArray *run) {
  SpvPoint at = g_array_index(run, SpvRunStep, 0).to;
  guint piece = piece_of(laying, at.x);

  spv_path_builder_move(laying->builder, place(laying, piece, at));
  for (guint i = 1; i < run->len; i++) {
    SpvPoint to = g_array_index(run, SpvRunStep, i).to;
    add_over_corners(laying, at, to, &piece);
    at = to;
  }
}

/* Adds STEP of a run, moved by T. */
static void
add_step(SpvPathBuilder *builder, const SpvRunStep *step, SpvTransform t) {
  if (step->curved)
    spv_path_builder_curve(builder, spv_transform_point(t, step->c1), spv_transform_point(t, step->c2),
                           spv_transform_point(t, step->to));
  else
    spv_path_builder_line(builder, spv_transform_point(t, step->to));
}

/* RUN on the straight line from A to B. */
static SpvPath *
lay_straight(const GArray *run, SpvPoint a, SpvPoint b, double side) {
  SpvPoint along = spv_point_unit(spv_point_subtract(b, a));
  SpvPoint across = spv_point_scale(spv_point_quarter_turn(along), side);
  SpvTransform t = { along.x, along.y, across.x, across.y, a.x, a.y };
  SpvPathBuilder *builder = spv_path_builder_new();

  for (guint i = 0; i < run->len; i++) {
    const SpvRunStep *step = &g_array_index(run, SpvRunStep, i);
    if (i == 0)
      spv_path_builder_move(builder, spv_transform_point(t, step->to));
    else
      add_step(builder, step, t);
  }
  return spv_path_builder_build(builder);
}

static SpvPath *
lay_curved(const GArray *run, const SpvTrack *baseline, double s0, double side) {
  g_autoptr(GArray) flat = spv_run_flatten(run, SPV_CHORD_ERROR / 2);
  g_autoptr(GArray) corners = g_array_new(FALSE, FALSE, sizeof(Corner));
  double length = spv_track_length(baseline);
  gboolean closed = spv_track_is_closed(baseline);
  Laying laying = { baseline, side, corners, spv_path_builder_new() };

  if (closed) {
    double round = floor(s0 / length) * length;
    find_corners(baseline, round, s0, s0 + length, corners);
    find_corners(baseline, round + length, s0, s0 + length, corners);
  } else {
    find_corners(baseline, 0, 0, length, corners);
  }
  add_along_track(&laying, flat);
  if (closed && corners->len > 0) {
    /* Where it began in a corner. */
    const Corner *last = corner_at(&laying, corners->len - 1);
    if (fabs(last->s - s0 - length) <= OFF_CORNER)
      add_mitre(&laying, last, g_array_index(flat, SpvRunStep, flat->len - 1).to.y);
  }
  if (closed)
    spv_path_builder_close(laying.builder);
  return spv_path_builder_build(laying.builder);
}

/* BASELINE itself. */
static SpvPath *
lay_plain(const SpvTrack *baseline) {
  gsize n;
  const SpvPoint *points = spv_track_points(baseline, &n);
  SpvPathBuilder *builder = spv_path_builder_new();

  spv_path_builder_move(builder, points[0]);
  for (gsize i = 1; i < n; i++)
    spv_path_builder_line(builder, points[i]);
  if (spv_track_is_closed(baseline))
    spv_path_builder_close(builder);
  return spv_path_builder_build(builder);
}

SpvPath *
spv_line_lay(const SpvLine *line, const SpvTrack *baseline, double s0, double s1, double side) {
  g_return_val_if_fail(line != NULL && baseline != NULL, NULL);
  gsize n;
  const SpvPoint *points = spv_track_points(baseline, &n);
  double length = spv_track_length(baseline);

  if (line->profile == SPV_PROFILE_PLAIN || line->amplitude == 0 || !(s1 > s0) || !(length > 0))
    return lay_plain(baseline);
  side = side < 0 ? -1 : 1;
  if (spv_track_is_closed(baseline)) {
    g_autoptr(GArray) round = spv_line_run_round(line, length, s0);
    return lay_curved(round, baseline, s0, side);
  }
  g_autoptr(GArray) run = spv_line_run(line, length, s0, s1);
  return n == 2 ? lay_straight(run, points[0], points[1], side) : lay_curved(run, baseline, 0, side);
}

/* Begins a run in BUILDER where STEP, moved by T, comes from FROM over to the right of x for the last time,
 * and adds the rest of it. FALSE, and nothing, where it doesn't. */
static gboolean
add_from_axis(SpvPathBuilder *builder, SpvPoint from, const SpvRunStep *step, SpvTransform t, double x) {
  g_autoptr(GArray) alone = g_array_new(FALSE, FALSE, sizeof(SpvRunStep));
  SpvRunStep start = { .to = from };

  g_array_append_val(alone, start);
  g_array_append_vals(alone, step, 1);
  g_autoptr(GArray) flat = spv_run_flatten(alone, SPV_CHORD_ERROR / 2);
  for (guint i = flat->len - 1; i > 0; i--) {
    SpvPoint a = spv_transform_point(t, g_array_index(flat, SpvRunStep, i - 1).to);
    SpvPoint b = spv_transform_point(t, g_array_index(flat, SpvRunStep, i).to);
    if (a.x >= x || b.x < x)
      continue;
    spv_path_builder_move(builder, spv_point(x, a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)));
    for (; i < flat->len; i++)
      spv_path_builder_line(builder, spv_transform_point(t, g_array_index(flat, SpvRunStep, i).to));
    return TRUE;
  }
  return FALSE;
}

/* What of RUN, moved by T, comes after it is right of x = AXIS.x for good. Where it starts there, it is first
 * led to the axis along ALONG. */
static SpvPath *
right_part(const GArray *run, SpvTransform t, SpvPoint axis, SpvPoint along) {
  const SpvRunStep *steps = (const SpvRunStep *) run->data;
  SpvPathBuilder *builder = spv_path_builder_new();
  SpvPoint start = spv_transform_point(t, steps[0].to);
  guint i = run->len - 1;

  if (!(spv_transform_point(t, steps[i].to).x > axis.x)) {
    /* Teeth so deep that nothing is left of them. */
    spv_path_builder_move(builder, axis);
    spv_path_builder_line(builder, spv_transform_point(t, spv_point(steps[i].to.x, 0)));
    return spv_path_builder_build(builder);
  }
  while (i > 0 && !add_from_axis(builder, steps[i - 1].to, &steps[i], t, axis.x))
    i--;
  if (i == 0) {
    spv_path_builder_move(builder, spv_point(axis.x, start.y - along.y / along.x * (start.x - axis.x)));
    spv_path_builder_line(builder, start);
  }
  for (i++; i < run->len; i++)
    add_step(builder, &steps[i], t);
  return spv_path_builder_build(builder);
}

/* A leg's run: where on the leg it begins, and its steps from there. */
typedef struct {
  double base;
  GArray *run;
} Leg;

/* LINE on a leg of LENGTH mm, whole up to S1: it begins in a trough that lies just where the other leg's
 * does, LEAN mm along the leg from the apex for each mm of its depth. */
static Leg
leg_from_apex(const SpvLine *line, double length, double s1, double lean) {
  const SpvProfileUnit *unit = spv_profile_unit(line->profile);
  guint n = MAX(spv_line_periods(line, s1, s1), 1);
  SpvLine whole = *line;
  /* How far out it begins goes by the depth, which may go by the pitch, which goes by how far out it begins.
   */
  double of_pitch = line->amplitude < 0 ? unit->part_of_pitch / 2 * lean : 0;
  double fixed = MAX(line->amplitude, 0) / 2 * lean;
  double base = CLAMP(fixed + of_pitch * s1 / MAX(n + of_pitch, 0.5 * n), -s1 / 2, s1 / 2);
  double pitch = (s1 - base) / n, shift = unit->start > 0 ? pitch / 2 : 0;

  whole.periods = n;
  return (Leg){ base, spv_line_run(&whole, length - base, shift, shift + n * pitch) };
}

SpvPath *
spv_line_lay_legs(const SpvLine *line, SpvPoint apex, SpvPoint direction, double length, double s0, double s1,
                  double side) {
  g_return_val_if_fail(line != NULL && direction.x > 0 && length > 0, NULL);
  gboolean meets = s0 <= 0 && s1 > 0 && line->profile != SPV_PROFILE_PLAIN && line->amplitude != 0;
  double lean = (side < 0 ? 1 : -1) * direction.y / direction.x;
  Leg leg = meets ? leg_from_apex(line, length, s1, lean) : (Leg){ 0, spv_line_run(line, length, s0, s1) };
  g_autoptr(GArray) run = leg.run;
  SpvPoint across = spv_point_scale(spv_point_quarter_turn(direction), side < 0 ? -1 : 1);
  SpvPoint start = spv_point_add(apex, spv_point_scale(direction, leg.base));
  SpvTransform t = { direction.x, direction.y, across.x, across.y, start.x, start.y };
  g_autoptr(SpvPath) right = right_part(run, t, apex, direction);
  g_autoptr(SpvPath) left = spv_path_transform(right, (SpvTransform){ -1, 0, 0, 1, 2 * apex.x, 0 });
  SpvPathBuilder *builder = spv_path_builder_new();

  spv_path_builder_join(builder, left);
  spv_path_builder_join(builder, right);
  return spv_path_builder_build(builder);
}
