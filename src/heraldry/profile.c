/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lines of partition: the table of profiles, and how one is laid along a baseline. */
#include "heraldry/profile.h"

/* One step of a profile, in its unit: x runs along one period from 0 to 1, y from -1/2 at the trough to 1/2
 * at the crest. */
typedef struct {
  SpvPathOp op; /* LINE or CURVE */
  SpvPoint c1, c2, to;
} Step;

#define MOST_STEPS 12

typedef struct {
  double pitch;     /* the usual one, of the panel's lesser side */
  double amplitude; /* the usual one, of the pitch */
  gboolean runs_alike, symmetrical;
  SpvPoint start; /* where a period starts; it ends there, one further along */
  Step steps[MOST_STEPS];
  guint n_steps;
} Profile;

#define LINE(x, y)                                                                                           \
  {                                                                                                          \
    SPV_PATH_LINE, { 0, 0 }, { 0, 0 }, {                                                                     \
      x, y                                                                                                   \
    }                                                                                                        \
  }
#define CURVE(x1, y1, x2, y2, x, y)                                                                          \
  {                                                                                                          \
    SPV_PATH_CURVE, { x1, y1 }, { x2, y2 }, {                                                                \
      x, y                                                                                                   \
    }                                                                                                        \
  }

/* The handle of a cubic that stands for a quarter of a circle, of its radius: 4/3 (√2 - 1), from memory. */
#define QUARTER 0.5522847498307936

/* A half circle from (0, FROM) by (1/2, TO) to (1, FROM), where the amplitude is half the pitch. */
#define HALF_CIRCLE(from, to)                                                                                \
  CURVE(0, from + QUARTER * (to - from), 0.5 - QUARTER / 2, to, 0.5, to),                                    \
      CURVE(0.5 + QUARTER / 2, to, 1, from + QUARTER * (to - from), 1, from)

/* Shapes after Fox-Davies, A Complete Guide to Heraldry (1909) pp. 91-96; pitches and depths are common
 * practice, no source, but for the three teeth of dancetty (p. 93) and the half circles (pp. 91-92). */
static const Profile profiles[SPV_N_PROFILES] = {
  [SPV_PROFILE_PLAIN] = { 1, 0, TRUE, TRUE, { 0, 0 }, { LINE(1, 0) }, 1 },
  [SPV_PROFILE_INDENTED] = { 1.0 / 7, 0.6, FALSE, TRUE, { 0, -0.5 }, { LINE(0.5, 0.5), LINE(1, -0.5) }, 2 },
  [SPV_PROFILE_DANCETTY] = { 1.0 / 3, 0.5, TRUE, TRUE, { 0, -0.5 }, { LINE(0.5, 0.5), LINE(1, -0.5) }, 2 },
  [SPV_PROFILE_EMBATTLED] = { 1.0 / 5,
                              0.5,
                              FALSE,
                              TRUE,
                              { 0, -0.5 },
                              { LINE(0.25, -0.5), LINE(0.25, 0.5), LINE(0.75, 0.5), LINE(0.75, -0.5),
                                LINE(1, -0.5) },
                              5 },
  [SPV_PROFILE_ENGRAILED] = { 1.0 / 6, 0.5, FALSE, TRUE, { 0, 0.5 }, { HALF_CIRCLE(0.5, -0.5) }, 2 },
  [SPV_PROFILE_INVECTED] = { 1.0 / 6, 0.5, FALSE, TRUE, { 0, -0.5 }, { HALF_CIRCLE(-0.5, 0.5) }, 2 },
  /* Each half is the cubic nearest to a sine's. */
  [SPV_PROFILE_WAVY] = { 1.0 / 4,
                         0.35,
                         TRUE,
                         TRUE,
                         { 0, -0.5 },
                         { CURVE(0.1817, -0.5, 0.3183, 0.5, 0.5, 0.5),
                           CURVE(0.6817, 0.5, 0.8183, -0.5, 1, -0.5) },
                         2 },
  [SPV_PROFILE_NEBULY] = { 1.0 / 4,
                           0.7,
                           TRUE,
                           TRUE,
                           { 0, -0.5 },
                           { CURVE(0.26, -0.5, 0.42, -0.2, 0.25, 0), CURVE(0.08, 0.2, 0.24, 0.5, 0.5, 0.5),
                             CURVE(0.76, 0.5, 0.92, 0.2, 0.75, 0), CURVE(0.58, -0.2, 0.74, -0.5, 1, -0.5) },
                           4 },
  [SPV_PROFILE_DOVETAILED] = { 1.0 / 5,
                               0.5,
                               FALSE,
                               TRUE,
                               { 0, -0.5 },
                               { LINE(0.32, -0.5), LINE(0.18, 0.5), LINE(0.82, 0.5), LINE(0.68, -0.5),
                                 LINE(1, -0.5) },
                               5 },
  [SPV_PROFILE_RAGULY] = { 1.0 / 5,
                           0.5,
                           FALSE,
                           FALSE,
                           { 0, -0.5 },
                           { LINE(0.15, -0.5), LINE(0.35, 0.5), LINE(0.85, 0.5), LINE(0.65, -0.5),
                             LINE(1, -0.5) },
                           5 },
  [SPV_PROFILE_POTENTY] = { 1.0 / 4,
                            0.5,
                            FALSE,
                            TRUE,
                            { 0, -0.5 },
                            { LINE(0.375, -0.5), LINE(0.375, 0), LINE(0.125, 0), LINE(0.125, 0.5),
                              LINE(0.875, 0.5), LINE(0.875, 0), LINE(0.625, 0), LINE(0.625, -0.5),
                              LINE(1, -0.5) },
                            9 },
  [SPV_PROFILE_URDY] = { 1.0 / 5,
                         0.8,
                         FALSE,
                         TRUE,
                         { 0, -0.5 },
                         { LINE(0.25, -0.2), LINE(0.25, 0.2), LINE(0.5, 0.5), LINE(0.75, 0.2),
                           LINE(0.75, -0.2), LINE(1, -0.5) },
                         6 },
  [SPV_PROFILE_RAYONNY] = { 1.0 / 5,
                            0.9,
                            FALSE,
                            FALSE,
                            { 0, -0.5 },
                            { CURVE(0.36, -0.2, 0.14, 0.2, 0.5, 0.5), CURVE(0.47, 0.2, 1.03, -0.2, 1, -0.5) },
                            2 },
};

/* Chords of a profile that follows a curve are about this long, mm, and of each step at least so many. */
#define CHORD 0.05
#define LEAST_CHORDS 6
#define MOST_CHORDS 64

const char *
spv_profile_key(SpvProfile profile) {
  g_return_val_if_fail((guint) profile < SPV_N_PROFILES, NULL);
  int line = spv_pattern_measure_index(SPV_PATTERN_PER_PALE, "line");

  return spv_pattern_info(SPV_PATTERN_PER_PALE)->measures[line].choices[profile];
}

gboolean
spv_profile_from_key(const char *key, SpvProfile *profile) {
  for (guint i = 0; i < SPV_N_PROFILES; i++)
    if (g_strcmp0(key, spv_profile_key((SpvProfile) i)) == 0) {
      *profile = (SpvProfile) i;
      return TRUE;
    }
  return FALSE;
}

gboolean
spv_profile_runs_alike(SpvProfile profile) {
  return profiles[profile].runs_alike;
}

gboolean
spv_profile_is_symmetrical(SpvProfile profile) {
  return profiles[profile].symmetrical;
}

/* The measure called KEY, or FALLBACK where it is not given, or the kind has none such. */
static double
measure_of(const SpvPattern *pattern, const SpvOutline *outline, const char *key, double fallback) {
  int index = spv_pattern_measure_index(pattern->kind, key);

  return index < 0 ? fallback : spv_pattern_measure(pattern, (guint) index, outline, fallback);
}

SpvLine
spv_line_of(const SpvPattern *pattern, const SpvOutline *outline) {
  double smaller = MIN(spv_outline_width(outline), spv_outline_height(outline));
  gboolean has_line = spv_pattern_measure_index(pattern->kind, "line") >= 0;
  SpvLine line = { .profile = SPV_PROFILE_PLAIN };

  if (!has_line)
    return line;
  line.profile = (SpvProfile) measure_of(pattern, outline, "line", SPV_PROFILE_PLAIN);
  line.pitch = measure_of(pattern, outline, "pitch", 0);
  line.periods = line.pitch > 0 ? 0 : (guint) measure_of(pattern, outline, "periods", 0);
  line.amplitude = measure_of(pattern, outline, "amplitude", -1);
  if (line.pitch <= 0 && line.periods == 0)
    line.pitch = profiles[line.profile].pitch * smaller;
  return line;
}

guint
spv_line_periods(const SpvLine *line, double length, double unit) {
  double pitch = line->pitch > 0 ? line->pitch : profiles[line->profile].pitch * unit;

  if (line->profile == SPV_PROFILE_PLAIN)
    return 0;
  if (line->periods > 0)
    return MIN(line->periods, SPV_PATTERN_MAX_COUNT);
  return (guint) CLAMP(round(length / MAX(pitch, 1e-9)), 1, SPV_PATTERN_MAX_COUNT);
}

/* A line on its way along a baseline. */
typedef struct {
  const Profile *profile;
  const SpvTrack *track;
  double start, pitch, height; /* of the first period; HEIGHT is below 0 on the other side of the normal */
  gboolean straight;
  SpvPathBuilder *builder;
} Run;

/* Where P, in the unit of period K, lies. */
static SpvPoint
run_point(const Run *run, int k, SpvPoint p) {
  double s = run->start + (k + p.x) * run->pitch;

  return spv_point_add(
      spv_track_at(run->track, s),
      spv_point_scale(spv_track_normal(run->track, run->straight ? 0 : s), p.y * run->height));
}

static SpvPoint
cubic(SpvPoint a, const Step *step, double t) {
  SpvPoint ab = spv_point_between(a, step->c1, t), bc = spv_point_between(step->c1, step->c2, t);
  SpvPoint cd = spv_point_between(step->c2, step->to, t);

  return spv_point_between(spv_point_between(ab, bc, t), spv_point_between(bc, cd, t), t);
}

/* Adds STEP, which starts at FROM, along a curved baseline: as chords. */
static void
add_bent(const Run *run, int k, SpvPoint from, const Step *step) {
  double length = hypot((step->to.x - from.x) * run->pitch, (step->to.y - from.y) * run->height);
  guint n = (guint) CLAMP(ceil(length / CHORD), LEAST_CHORDS, MOST_CHORDS);

  for (guint i = 1; i <= n; i++) {
    double t = (double) i / n;
    SpvPoint at = step->op == SPV_PATH_LINE ? spv_point_between(from, step->to, t) : cubic(from, step, t);
    spv_path_builder_line(run->builder, run_point(run, k, at));
  }
}

static void
add_period(const Run *run, int k) {
  SpvPoint from = run->profile->start;

  for (guint i = 0; i < run->profile->n_steps; i++) {
    const Step *step = &run->profile->steps[i];
    if (!run->straight)
      add_bent(run, k, from, step);
    else if (step->op == SPV_PATH_LINE)
      spv_path_builder_line(run->builder, run_point(run, k, step->to));
    else
      spv_path_builder_curve(run->builder, run_point(run, k, step->c1), run_point(run, k, step->c2),
                             run_point(run, k, step->to));
    from = step->to;
  }
}

static SpvPath *
baseline_path(const SpvTrack *track) {
  SpvPathBuilder *builder = spv_path_builder_new();
  gsize n;
  const SpvPoint *points = spv_track_points(track, &n);

  for (gsize i = 0; i < n; i++)
    spv_path_builder_line(builder, points[i]);
  if (spv_track_is_closed(track))
    spv_path_builder_line(builder, points[0]);
  return spv_path_builder_build(builder);
}

/* How many whole periods cover LENGTH mm, and no more than a hand could count. */
static int
periods_over(double length, double pitch) {
  return length > 1e-9 ? (int) MIN(ceil(length / pitch - 1e-9), SPV_PATTERN_MAX_COUNT) : 0;
}

SpvPath *
spv_line_lay(const SpvLine *line, const SpvTrack *baseline, double s0, double s1, double side) {
  const Profile *profile = &profiles[line->profile];
  guint n = spv_line_periods(line, s1 - s0, s1 - s0), n_points;
  double length = spv_track_length(baseline), pitch = (s1 - s0) / MAX(n, 1);
  double amplitude = line->amplitude < 0 ? profile->amplitude * pitch : line->amplitude;
  gboolean closed = spv_track_is_closed(baseline);
  gsize points;

  spv_track_points(baseline, &points);
  n_points = (guint) points;
  if (n == 0 || amplitude <= 0 || !(pitch > 0) || !(length > 0))
    return baseline_path(baseline);

  int before = closed ? 0 : periods_over(s0, pitch), after = closed ? 0 : periods_over(length - s1, pitch);
  Run run = {
    profile, baseline, s0, pitch, side * amplitude, !closed && n_points == 2, spv_path_builder_new()
  };
  spv_path_builder_move(run.builder, run_point(&run, -before, profile->start));
  for (int k = -before; k < (int) n + after; k++)
    add_period(&run, k);
  return spv_path_builder_build(run.builder);
}
