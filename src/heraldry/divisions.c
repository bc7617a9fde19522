/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The field, and divisions by lines that cross the whole panel. The areas of a division together cover it. */
#include "heraldry/edges-private.h"

/* How deep the teeth of two lines may be, of the space between them, so that they do not meet. */
#define DEEPEST 0.9

void
spv_lay_field(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  (void) pattern;
  draft->area[0] = spv_path_new_box(spv_lay_box(outline));
}

/* A line right across the panel. */
typedef struct {
  SpvPoint at, direction; /* AT is where it passes the panel's middle */
  double reach;           /* how far it is laid to both sides of AT */
  double low, high;       /* between which, in mm from AT, its teeth are whole */
  double off;             /* how far AT is from the middle of the panel */
  SpvLine line;
} Crossing;

/* LINE through AT in DIRECTION, of length 1. Where it misses the panel, its teeth are whole beside it. */
static Crossing
crossing_of(const SpvLine *line, const SpvOutline *outline, SpvPoint at, SpvPoint direction) {
  SpvBox box = spv_lay_box(outline), chord;
  SpvPoint middle = spv_box_centre(box);
  double along = spv_point_dot(spv_point_subtract(middle, at), direction);
  Crossing crossing = { .direction = direction,
                        .reach = spv_box_width(box) + spv_box_height(box),
                        .line = *line };

  crossing.at = spv_point_add(at, spv_point_scale(direction, along));
  crossing.off = spv_point_distance(crossing.at, middle);
  if (spv_axis_bounds((SpvAxis){ crossing.at, direction }, outline, 0, 0, &chord) && chord.x1 > chord.x0) {
    crossing.low = chord.x0;
    crossing.high = chord.x1;
  } else {
    crossing.high = MIN(spv_outline_width(outline), spv_outline_height(outline)) / 2;
    crossing.low = -crossing.high;
  }
  return crossing;
}

/* How deep its teeth are. */
static double
depth_of(const Crossing *crossing) {
  double length = crossing->high - crossing->low;

  return spv_line_amplitude(&crossing->line,
                            length / MAX(spv_line_periods(&crossing->line, length, length), 1));
}

/* Crests stand clockwise of the line's direction where SIDE is 1, on its other side where it is -1. */
static SpvPath *
lay_crossing(const Crossing *crossing, double side) {
  SpvPoint step = spv_point_scale(crossing->direction, crossing->reach);
  SpvPoint ends[2] = { spv_point_subtract(crossing->at, step), spv_point_add(crossing->at, step) };
  g_autoptr(SpvTrack) track = spv_track_new(ends, 2, FALSE);

  return spv_line_lay(&crossing->line, track, crossing->reach + crossing->low,
                      crossing->reach + crossing->high, side);
}

/* All that lies to one side of RUN, which was laid on CROSSING: clockwise of its direction where SIDE is 1.
 */
static SpvPath *
area_beside(const SpvPath *run, const Crossing *crossing, double side) {
  double far = crossing->off + crossing->reach + depth_of(crossing);
  SpvPoint across = spv_point_scale(spv_point_quarter_turn(crossing->direction), side * far);
  SpvPoint step = spv_point_scale(crossing->direction, side * crossing->reach);
  SpvPathBuilder *builder = spv_path_builder_new();
  g_autoptr(SpvPath) along = side > 0 ? spv_path_ref(run) : spv_path_reverse(run);

  spv_path_builder_join(builder, along);
  spv_path_builder_line(builder, spv_point_add(crossing->at, spv_point_add(step, across)));
  spv_path_builder_line(builder, spv_point_add(crossing->at, spv_point_subtract(across, step)));
  spv_path_builder_close(builder);
  return spv_path_builder_build(builder);
}

static void
add_ruling(const SpvOutline *outline, guint number, SpvPoint at, SpvPoint direction, SpvDraft *draft) {
  SpvPoint step = spv_point_scale(direction, spv_outline_width(outline) + spv_outline_height(outline));

  spv_draft_add_line(draft, SPV_LINE_DIVISION, number, spv_point_subtract(at, step), spv_point_add(at, step));
}

/* Parts the panel along the line through AT in DIRECTION: slot 0 lies clockwise of it where SIDE is 1, on its
 * other side where it is -1. Crests stand in slot 0. */
static void
part(const SpvPattern *pattern, const SpvOutline *outline, SpvPoint at, SpvPoint direction, double side,
     SpvDraft *draft) {
  SpvLine line = spv_line_of(pattern, outline);
  Crossing crossing = crossing_of(&line, outline, at, direction);
  g_autoptr(SpvPath) run = lay_crossing(&crossing, side);

  draft->area[0] = area_beside(run, &crossing, side);
  draft->area[1] = area_beside(run, &crossing, -side);
  add_ruling(outline, 1, at, direction, draft);
}

void
spv_lay_per_pale(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double x = spv_pattern_measure(pattern, SPV_SHIFT_AT, outline, 0);
  part(pattern, outline, spv_point(x, spv_outline_height(outline) / 2), spv_point(0, 1), 1, draft);
}

void
spv_lay_per_fess(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double y = spv_outline_height(outline) / 2 + spv_pattern_measure(pattern, SPV_SHIFT_AT, outline, 0);
  part(pattern, outline, spv_point(0, y), spv_point(1, 0), -1, draft);
}

/* Per bend runs down from dexter chief (the viewer's upper left), per bend sinister from sinister chief. Slot
 * 0 is the upper part. */
void
spv_lay_per_bend(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double angle = spv_lay_bend_angle(pattern, SPV_BEND_ANGLE, outline);
  double across = pattern->kind == SPV_PATTERN_PER_BEND ? 1 : -1;
  SpvPoint at = { spv_pattern_measure(pattern, SPV_BEND_SHIFT, outline, 0), spv_outline_height(outline) / 2 };

  part(pattern, outline, at, spv_point(across * cos(angle), sin(angle)), -across, draft);
}

/* Below RUN, which comes up one leg from (-X, Y) below APEX and goes down the other, or above it. */
static SpvPath *
area_of_wedge(const SpvPath *run, SpvPoint apex, double reach, gboolean below) {
  SpvPathBuilder *builder = spv_path_builder_new();
  double right = apex.x + reach, left = apex.x - reach, top = apex.y - reach, bottom = apex.y + reach;
  g_autoptr(SpvPath) along = below ? spv_path_ref(run) : spv_path_reverse(run);

  spv_path_builder_join(builder, along);
  spv_path_builder_line(builder, spv_point(below ? right : left, bottom));
  if (!below) {
    spv_path_builder_line(builder, spv_point(left, top));
    spv_path_builder_line(builder, spv_point(right, top));
  }
  spv_path_builder_line(builder, spv_point(below ? left : right, bottom));
  spv_path_builder_close(builder);
  return spv_path_builder_build(builder);
}

/* Per chevron: slot 1 is the wedge below the two legs. The line is whole on each leg, with its crests in slot
 * 0, and cut where the legs meet. */
void
spv_lay_per_chevron(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  SpvPoint apex = { 0, spv_pattern_measure(pattern, SPV_CHEVRON_APEX, outline, 0) };
  double half = spv_pattern_measure(pattern, SPV_CHEVRON_ANGLE, outline, G_PI / 2) / 2;
  double ruled = spv_outline_width(outline) + spv_outline_height(outline);
  SpvBox box = spv_lay_box(outline), chord;
  double reach = 2 * (spv_box_width(box) + spv_box_height(box) + fabs(apex.y));
  SpvPoint legs[2] = { { -sin(half), cos(half) }, { sin(half), cos(half) } };
  SpvLine line = spv_line_of(pattern, outline);

  if (!spv_axis_bounds((SpvAxis){ apex, legs[1] }, outline, 0, 0, &chord) || !(chord.x1 > 1e-6))
    chord.x0 = chord.x1 = 0;
  /* No deeper than the legs are long: nobody paints such teeth, but they may be asked for. */
  line.amplitude = MIN(line.amplitude, reach / 2);
  g_autoptr(SpvPath)
      run = spv_line_lay_legs(&line, apex, legs[1], reach, MAX(chord.x0, 0), MAX(chord.x1, 0), -1);
  draft->area[0] = area_of_wedge(run, apex, reach, FALSE);
  draft->area[1] = area_of_wedge(run, apex, reach, TRUE);
  for (guint i = 0; i < 2; i++)
    spv_draft_add_line(draft, SPV_LINE_DIVISION, i + 1, apex,
                       spv_point_add(apex, spv_point_scale(legs[i], ruled)));
}

/* Between two lines on either side of AT, MIDDLE mm apart: slot 0 lies on the side of DIRECTION that SIDE
 * says (1: clockwise of it), 1 between them, 2 beyond. The second line has its crests on the same side as the
 * first where ALIKE, otherwise on the other. */
static void
part_in_three(const SpvPattern *pattern, const SpvOutline *outline, SpvPoint at, SpvPoint direction,
              double side, gboolean alike, SpvDraft *draft) {
  double middle = spv_pattern_measure(pattern, SPV_TIERCED_MIDDLE, outline, 0);
  SpvLine line = spv_line_of(pattern, outline);
  SpvPoint step = spv_point_scale(spv_point_quarter_turn(direction), side * middle / 2);
  SpvPoint places[2] = { spv_point_add(at, step), spv_point_subtract(at, step) };
  Crossing crossings[2];
  SpvPath *runs[2];
  SpvPathBuilder *builder = spv_path_builder_new();

  for (guint i = 0; i < 2; i++) {
    crossings[i] = crossing_of(&line, outline, places[i], direction);
    crossings[i].line.amplitude = MIN(depth_of(&crossings[i]), DEEPEST * middle);
    runs[i] = lay_crossing(&crossings[i], i == 0 || alike ? side : -side);
    add_ruling(outline, i + 1, places[i], direction, draft);
  }
  draft->area[0] = area_beside(runs[0], &crossings[0], side);
  draft->area[2] = area_beside(runs[1], &crossings[1], -side);
  if (middle > 0) {
    /* Clockwise: back along the line that lies clockwise of the other. */
    g_autoptr(SpvPath) back = spv_path_reverse(runs[side > 0 ? 0 : 1]);
    spv_path_builder_join(builder, runs[side > 0 ? 1 : 0]);
    spv_path_builder_join(builder, back);
    spv_path_builder_close(builder);
  }
  draft->area[1] = spv_path_builder_build(builder);
  for (guint i = 0; i < 2; i++)
    spv_path_unref(runs[i]);
}

/* The middle part bears the crests on both sides, but those of lines whose edges run alike. */
void
spv_lay_tierced_in_pale(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  gboolean alike = spv_profile_runs_alike(spv_line_of(pattern, outline).profile);

  part_in_three(pattern, outline, spv_point(0, spv_outline_height(outline) / 2), spv_point(0, 1), 1, alike,
                draft);
}

/* Battlements stand upright: both lines have their crests above. */
void
spv_lay_tierced_in_fess(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;

  part_in_three(pattern, outline, spv_point(0, spv_outline_height(outline) / 2), spv_point(1, 0), -1, TRUE,
                draft);
}
