/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Periods of a line of partition in a row: steps along (s) and across (v) a baseline of some length. */
#include "heraldry/profile-private.h"

/* How many teeth go on beyond either end of the whole ones. Further out, where no panel is, the baseline goes
 * on without. */
#define MAX_BEYOND (2 * SPV_PATTERN_MAX_COUNT)

/* mm; less than this is rounding. */
#define NOTHING 1e-9

/* Halvings of a curve at most. */
#define MAX_DEPTH 12

static void
add_line(GArray *run, SpvPoint to) {
  SpvRunStep step = { .to = to };
  g_array_append_val(run, step);
}

/* Adds one period of UNIT that begins at S. */
static void
add_period(GArray *run, const SpvProfileUnit *unit, double s, double pitch, double amplitude) {
  for (guint i = 0; i < unit->n_steps; i++) {
    SpvRunStep step = unit->steps[i];
    SpvPoint *points[] = { &step.c1, &step.c2, &step.to };
    for (guint k = 0; k < G_N_ELEMENTS(points); k++)
      *points[k] = spv_point(s + points[k]->x * pitch, points[k]->y * amplitude);
    g_array_append_val(run, step);
  }
}

static SpvPoint
point_on(SpvPoint from, const SpvRunStep *step, double t) {
  double u = 1 - t;

  if (!step->curved)
    return spv_point_between(from, step->to, t);
  return spv_point(
      u * u * u * from.x + 3 * u * u * t * step->c1.x + 3 * u * t * t * step->c2.x + t * t * t * step->to.x,
      u * u * u * from.y + 3 * u * u * t * step->c1.y + 3 * u * t * t * step->c2.y + t * t * t * step->to.y);
}

/* Adds what lies between T0 and T1 of STEP as lines. */
static void
flatten_between(GArray *flat, SpvPoint from, const SpvRunStep *step, double t0, double t1, double tolerance,
                int depth) {
  SpvPoint a = point_on(from, step, t0), b = point_on(from, step, t1);
  double middle = (t0 + t1) / 2;
  double stray = 0;

  for (int i = 1; i <= 3; i++)
    stray = MAX(stray, spv_point_to_segment(point_on(from, step, t0 + (t1 - t0) * i / 4), a, b));
  if (depth >= MAX_DEPTH || stray <= tolerance) {
    add_line(flat, b);
    return;
  }
  flatten_between(flat, from, step, t0, middle, tolerance, depth + 1);
  flatten_between(flat, from, step, middle, t1, tolerance, depth + 1);
}

GArray *
spv_run_flatten(const GArray *run, double tolerance) {
  GArray *flat = g_array_new(FALSE, FALSE, sizeof(SpvRunStep));

  for (guint i = 0; i < run->len; i++) {
    const SpvRunStep *step = &g_array_index(run, SpvRunStep, i);
    if (step->curved && i > 0)
      flatten_between(flat, g_array_index(run, SpvRunStep, i - 1).to, step, 0, 1, tolerance, 0);
    else
      add_line(flat, step->to);
  }
  return flat;
}

/* Where the straight way from A to B passes S. */
static SpvPoint
crossing(SpvPoint a, SpvPoint b, double s) {
  return spv_point(s, a.y + (b.y - a.y) * (s - a.x) / (b.x - a.x));
}

/* One period that begins at S, flattened, with its start. */
static GArray *
flat_period(const SpvProfileUnit *unit, double s, double pitch, double amplitude) {
  g_autoptr(GArray) period = g_array_new(FALSE, FALSE, sizeof(SpvRunStep));

  add_line(period, spv_point(s, unit->start * amplitude));
  add_period(period, unit, s, pitch, amplitude);
  return spv_run_flatten(period, SPV_CHORD_ERROR);
}

/* Adds what of the period at S comes after it has passed 0 for the last time. */
static void
add_tail(GArray *run, const SpvProfileUnit *unit, double s, double pitch, double amplitude) {
  g_autoptr(GArray) flat = flat_period(unit, s, pitch, amplitude);
  const SpvRunStep *steps = (const SpvRunStep *) flat->data;
  guint i = flat->len - 1;

  while (i > 0 && !(steps[i - 1].to.x < 0))
    i--;
  if (i > 0)
    add_line(run, crossing(steps[i - 1].to, steps[i].to, 0));
  g_array_append_vals(run, &steps[i], flat->len - i);
}

/* Adds what of the period at S comes before it passes LENGTH for the first time. */
static void
add_head(GArray *run, const SpvProfileUnit *unit, double s, double pitch, double amplitude, double length) {
  g_autoptr(GArray) flat = flat_period(unit, s, pitch, amplitude);

  for (guint i = 1; i < flat->len; i++) {
    SpvPoint from = g_array_index(flat, SpvRunStep, i - 1).to, to = g_array_index(flat, SpvRunStep, i).to;
    if (to.x > length) {
      add_line(run, crossing(from, to, length));
      return;
    }
    add_line(run, to);
  }
}

GArray *
spv_line_run(const SpvLine *line, double length, double s0, double s1) {
  const SpvProfileUnit *unit = spv_profile_unit(line->profile);
  GArray *run = g_array_new(FALSE, FALSE, sizeof(SpvRunStep));
  guint periods = spv_line_periods(line, s1 - s0, s1 - s0);
  double pitch = (s1 - s0) / MAX(periods, 1), amplitude = spv_line_amplitude(line, pitch);

  if (!(pitch > NOTHING) || !(amplitude > 0)) {
    add_line(run, spv_point(0, 0));
    add_line(run, spv_point(length, 0));
    return run;
  }
  /* Of the teeth numbered from S0 on, FIRST to LAST (not with it) lie whole on the baseline. */
  int first = (int) -floor(CLAMP(s0 / pitch + NOTHING, 0, MAX_BEYOND));
  int last = (int) (periods + floor(CLAMP((length - s1) / pitch + NOTHING, 0, MAX_BEYOND)));
  double before = s0 + first * pitch, after = length - (s0 + last * pitch);

  if (before > NOTHING && before < pitch) {
    add_tail(run, unit, before - pitch, pitch, amplitude);
  } else {
    if (before >= pitch)
      add_line(run, spv_point(0, unit->start * amplitude));
    add_line(run, spv_point(before, unit->start * amplitude));
  }
  for (int i = first; i < last; i++)
    add_period(run, unit, s0 + i * pitch, pitch, amplitude);
  if (after > NOTHING && after < pitch)
    add_head(run, unit, s0 + last * pitch, pitch, amplitude, length);
  else if (after >= pitch)
    add_line(run, spv_point(length, unit->start * amplitude));
  return run;
}

GArray *
spv_line_run_round(const SpvLine *line, double length, double s0) {
  const SpvProfileUnit *unit = spv_profile_unit(line->profile);
  GArray *run = g_array_new(FALSE, FALSE, sizeof(SpvRunStep));
  guint periods = MAX(spv_line_periods(line, length, length), 1);
  double pitch = length / periods, amplitude = spv_line_amplitude(line, pitch);

  add_line(run, spv_point(s0, unit->start * amplitude));
  for (guint i = 0; i < periods; i++)
    add_period(run, unit, s0 + i * pitch, pitch, amplitude);
  return run;
}
