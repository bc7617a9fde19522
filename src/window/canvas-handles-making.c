/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The parts from which the handles of every kind are made. */
#include "heraldry/profile.h"
#include "window/canvas-handles-private.h"

static int
index_of(const SpvHandleMaking *making, const char *key) {
  int index = spv_pattern_measure_index(making->pattern->kind, key);

  return index >= 0 && spv_pattern_measure_counts(making->pattern, (guint) index) ? index : -1;
}

double
spv_making_value(const SpvHandleMaking *making, const char *key, double fallback) {
  int index = spv_pattern_measure_index(making->pattern->kind, key);

  return index < 0 ? fallback
                   : spv_pattern_measure(making->pattern, (guint) index, making->outline, fallback);
}

gboolean
spv_making_is_given(const SpvHandleMaking *making, const char *key) {
  int index = index_of(making, key);

  /* A preset that is no choice of the pattern's own is as good as given. */
  return index >= 0 &&
         (making->pattern->measures[index].unit != SPV_UNIT_AUTO ||
          spv_pattern_info(making->pattern->kind)->measures[index].preset.unit != SPV_UNIT_AUTO);
}

static void
add(SpvHandleMaking *making, SpvHandle handle, const char *key, const char *second) {
  int first_index = index_of(making, key);
  int second_index = second == NULL ? first_index : index_of(making, second);

  if (first_index < 0 || second_index < 0)
    return;
  handle.owner = SPV_HANDLE_OF_LAYER;
  handle.n_measures = second == NULL ? 1 : 2;
  handle.measures[0] = (guint) first_index;
  handle.measures[1] = (guint) second_index;
  handle.basis = spv_point(making->width, making->height);
  g_array_append_val(making->handles, handle);
}

void
spv_making_slide(SpvHandleMaking *making, const char *key, SpvPoint foot, SpvPoint direction, double value) {
  SpvHandle handle = { .motion = SPV_MOTION_SLIDE, .foot = foot, .direction = direction };

  handle.values[0] = value;
  handle.at = spv_point_add(foot, spv_point_scale(direction, value));
  add(making, handle, key, NULL);
}

void
spv_making_slide_at(SpvHandleMaking *making, const char *key, SpvPoint at, SpvPoint direction, double value) {
  spv_making_slide(making, key, spv_point_subtract(at, spv_point_scale(direction, value)), direction, value);
}

void
spv_making_move(SpvHandleMaking *making, const char *across, const char *down, SpvPoint foot,
                SpvPoint values) {
  SpvHandle handle = { .motion = SPV_MOTION_MOVE,
                       .foot = foot,
                       .direction = { 1, 0 },
                       .second = { 0, 1 },
                       .values = { values.x, values.y } };

  handle.at = spv_point_add(foot, values);
  add(making, handle, across, down);
}

void
spv_making_turn(SpvHandleMaking *making, const char *key, SpvPoint foot, SpvPoint zero, double sense,
                double factor, double value) {
  SpvHandle handle = { .motion = SPV_MOTION_TURN, .foot = foot, .direction = zero };
  SpvTransform turn = spv_transform_turn(sense * value / factor, foot);

  handle.turn_sense = sense;
  handle.turn_factor = factor;
  handle.values[0] = value;
  handle.at = spv_transform_point(turn, zero);
  add(making, handle, key, NULL);
}

void
spv_making_divide(SpvHandleMaking *making, const char *key, SpvPoint foot, SpvPoint whole, double count) {
  SpvHandle handle = { .motion = SPV_MOTION_DIVIDE, .foot = foot, .direction = whole };

  handle.values[0] = count;
  handle.at = spv_point_add(foot, spv_point_scale(whole, 1 / count));
  add(making, handle, key, NULL);
}

/* --- What the pattern ruled --- */

const SpvDraftLine *
spv_making_line(const SpvHandleMaking *making, SpvLineKind kind, guint number) {
  for (guint i = 0; making->draft != NULL && i < making->draft->lines->len; i++) {
    const SpvDraftLine *line = &g_array_index(making->draft->lines, SpvDraftLine, i);

    if (line->kind == kind && line->number == number)
      return line;
  }
  return NULL;
}

double
spv_making_between(const SpvHandleMaking *making, guint first, guint second, double fallback) {
  const SpvDraftLine *a = spv_making_line(making, SPV_LINE_DIVISION, first);
  const SpvDraftLine *b = spv_making_line(making, SPV_LINE_DIVISION, second);

  if (a == NULL || b == NULL)
    return fallback;
  return fabs(spv_point_cross(spv_point_unit(spv_point_subtract(a->to, a->from)),
                              spv_point_subtract(b->from, a->from)));
}

double
spv_making_slope(const SpvHandleMaking *making) {
  const SpvDraftLine *line = spv_making_line(making, SPV_LINE_DIVISION, 1);
  SpvPoint run;

  if (line == NULL)
    return spv_making_value(making, "angle", atan2(making->height, making->width));
  run = spv_point_subtract(line->to, line->from);
  return atan2(fabs(run.y), fabs(run.x));
}

void
spv_making_extent(const SpvHandleMaking *making, SpvPoint direction, double *low, double *high) {
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(making->outline), &n);

  *low = INFINITY;
  *high = -INFINITY;
  for (gsize i = 0; i < n; i++) {
    double at = spv_point_dot(points[i], direction);

    *low = MIN(*low, at);
    *high = MAX(*high, at);
  }
}

/* --- Lines of partition --- */

void
spv_making_profile(SpvHandleMaking *making, SpvPoint at, SpvPoint along, double length, double deepest) {
  SpvLine line = spv_line_of(making->pattern, making->outline);
  SpvPoint across = spv_point_quarter_turn(along);
  double pitch, amplitude;

  if (line.profile == SPV_PROFILE_PLAIN)
    return;
  pitch = length / spv_line_periods(&line, length, making->smaller);
  amplitude = spv_line_amplitude(&line, pitch);
  /* As a band brings teeth to its width. */
  if (line.amplitude < 0 && amplitude > deepest && !spv_profile_runs_alike(line.profile)) {
    if (!spv_making_is_given(making, "pitch") && !spv_making_is_given(making, "periods"))
      pitch *= deepest / amplitude;
    amplitude = deepest;
  }
  spv_making_slide(making, "amplitude", at, spv_point_scale(across, 0.5), amplitude);
  spv_making_slide(making, "pitch", at, along, spv_making_value(making, "pitch", pitch));
}

void
spv_making_profile_on(SpvHandleMaking *making, guint number, double part, double deepest) {
  const SpvDraftLine *line = spv_making_line(making, SPV_LINE_DIVISION, number);
  SpvPoint along;

  if (line == NULL)
    return;
  along = spv_point_unit(spv_point_subtract(line->to, line->from));

  /* The part of the line that lies on the outline. */
  g_autoptr(GArray) crossings = spv_track_crossings(spv_outline_track(making->outline), line->from, line->to);
  double low = INFINITY, high = -INFINITY, whole = spv_point_distance(line->from, line->to);

  for (guint i = 0; i < crossings->len; i++) {
    SpvPoint p = spv_track_at(spv_outline_track(making->outline), g_array_index(crossings, double, i));
    double t = spv_point_dot(spv_point_subtract(p, line->from), along);

    low = MIN(low, t);
    high = MAX(high, t);
  }
  low = CLAMP(low, 0, whole);
  high = CLAMP(high, 0, whole);
  if (!(high > low)) {
    low = 0;
    high = MIN(whole, making->smaller);
  }
  spv_making_profile(making, spv_point_add(line->from, spv_point_scale(along, low + part * (high - low))),
                     along, high - low, deepest);
}
