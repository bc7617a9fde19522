/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sectors about a point. Each arm keeps within its own wedge, so that whatever its line, the sectors part the
 * plane without overlaps. */
#include "heraldry/sectors-private.h"

#include "heraldry/edges-private.h"
#include "heraldry/profile-private.h"

/* How much of its half of a sector the teeth of an arm may fill. */
#define ROOM 0.6
/* Where in a period a line first comes near its full depth, of the pitch; no profile does earlier. */
#define FIRST_RISE 0.1
/* The most that an arc between two corners of the far polygon may be, radians. */
#define FAR_ARC (G_PI / 4)

/* From arm I of SECTORS to the next one clockwise, radians. */
static double
angle_after(const SpvSectors *sectors, guint i) {
  SpvPoint a = sectors->directions[i % sectors->n], b = sectors->directions[(i + 1) % sectors->n];
  double angle = atan2(spv_point_cross(a, b), spv_point_dot(a, b));

  return angle <= 0 ? angle + 2 * G_PI : angle;
}

/* How far the teeth of arm I may stand off it, of the distance from the centre. */
static double
room_beside(const SpvSectors *sectors, guint i) {
  double narrower = MIN(angle_after(sectors, i), angle_after(sectors, i + sectors->n - 1));

  return ROOM * tan(MIN(narrower / 2, G_PI / 3));
}

/* Where an arm with teeth is whole, and their depth. */
typedef struct {
  double s0, s1;
  SpvLine line;
} ArmSpan;

/* LINE between LOW and HIGH mm from the centre, where for each mm out there are ROOM mm beside the arm. */
static ArmSpan
fit_arm(const SpvLine *line, double low, double high, double room) {
  ArmSpan span = { low, high, *line };
  double pitch = (high - low) / MAX(spv_line_periods(line, high - low, high - low), 1);
  double deep = MIN(spv_line_amplitude(line, pitch) / 2, room * (low + high) / 2);
  double least = deep / room - FIRST_RISE * pitch;

  if (least > low) {
    span.s0 = MIN(least, (low + high) / 2);
    pitch = (high - span.s0) / MAX(spv_line_periods(line, high - span.s0, high - span.s0), 1);
    deep = MIN(deep, room * (span.s0 + FIRST_RISE * pitch));
  }
  if (span.line.amplitude >= 0 || 2 * deep < spv_line_amplitude(line, pitch))
    span.line.amplitude = 2 * deep;
  return span;
}

/* Lets RUN go along the baseline to where, past FROM, it first crosses it; FALSE where it never does. */
static gboolean
start_on_baseline(GArray *run, double from) {
  for (guint i = 1; i < run->len; i++) {
    SpvPoint a = g_array_index(run, SpvRunStep, i - 1).to, b = g_array_index(run, SpvRunStep, i).to;
    if (b.x < from || a.y * b.y > 0 || a.y == b.y)
      continue;
    double t = a.y / (a.y - b.y);
    SpvRunStep start[2] = { { .to = { 0, 0 } }, { .to = spv_point_between(a, b, t) } };
    g_array_remove_range(run, 0, i);
    g_array_prepend_vals(run, start, 2);
    return TRUE;
  }
  return FALSE;
}

/* Arm I from the centre out to LENGTH mm. */
static SpvPath *
lay_arm(const SpvSectors *sectors, guint i, const SpvLine *line, const SpvOutline *outline, double length) {
  SpvAxis axis = { sectors->centre, sectors->directions[i] };
  SpvPoint end = spv_axis_point(axis, length, 0);
  SpvPathBuilder *builder = spv_path_builder_new();
  SpvBox chord;

  spv_path_builder_move(builder, sectors->centre);
  if (line->profile != SPV_PROFILE_PLAIN && spv_axis_bounds(axis, outline, 0, 0, &chord) && chord.x1 > 1e-6) {
    ArmSpan span = fit_arm(line, MAX(chord.x0, 0), chord.x1, room_beside(sectors, i));
    g_autoptr(GArray) curved = spv_line_run(&span.line, length, span.s0, span.s1);
    g_autoptr(GArray) run = spv_run_flatten(curved, SPV_CHORD_ERROR / 2);
    if (start_on_baseline(run, span.s0)) {
      for (guint k = 1; k < run->len; k++) {
        SpvPoint p = g_array_index(run, SpvRunStep, k).to;
        spv_path_builder_line(builder, spv_axis_point(axis, p.x, p.y * sectors->sides[i]));
      }
      return spv_path_builder_build(builder);
    }
  }
  spv_path_builder_line(builder, end);
  return spv_path_builder_build(builder);
}

/* Adds the corners of a polygon about the centre that lie between arm I and the next one. */
static void
add_far_corners(const SpvSectors *sectors, guint i, double length, SpvPathBuilder *builder) {
  SpvPoint along = sectors->directions[i];
  double between = angle_after(sectors, i), start = atan2(along.y, along.x);
  guint n = (guint) ceil(between / FAR_ARC - 1e-9);

  for (guint k = 1; k < n; k++) {
    double angle = start + between * k / n;
    SpvPoint corner = { cos(angle), sin(angle) };
    spv_path_builder_line(builder, spv_point_add(sectors->centre, spv_point_scale(corner, length)));
  }
}

void
spv_sectors_lay(const SpvSectors *sectors, const SpvLine *line, const SpvOutline *outline, guint n_slots,
                SpvDraft *draft) {
  g_return_if_fail(sectors->n >= 3 && sectors->n <= SPV_MOST_ARMS && n_slots <= SPV_PATTERN_SLOTS);
  SpvBox box = spv_lay_box(outline);
  /* So far that the polygon's sides, and teeth at its corners, lie outside the panel. */
  double length = 2 * (spv_point_distance(sectors->centre, spv_box_centre(box)) +
                       hypot(spv_box_width(box), spv_box_height(box)));
  SpvPath *arms[SPV_MOST_ARMS];
  SpvPathBuilder *builders[SPV_PATTERN_SLOTS];

  for (guint i = 0; i < sectors->n; i++)
    arms[i] = lay_arm(sectors, i, line, outline, length);
  for (guint slot = 0; slot < n_slots; slot++)
    builders[slot] = spv_path_builder_new();
  for (guint i = 0; i < sectors->n; i++) {
    SpvPathBuilder *builder = builders[sectors->slots[i]];
    g_autoptr(SpvPath) back = spv_path_reverse(arms[(i + 1) % sectors->n]);
    spv_path_builder_join(builder, arms[i]);
    add_far_corners(sectors, i, length, builder);
    spv_path_builder_join(builder, back);
    spv_path_builder_close(builder);
  }
  for (guint slot = 0; slot < n_slots; slot++)
    draft->area[slot] = spv_path_builder_build(builders[slot]);
  for (guint i = 0; i < sectors->n; i++)
    spv_path_unref(arms[i]);
}
