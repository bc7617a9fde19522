/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Paly, barry, bendy and chevronny: pieces of equal width, in turn of the first and the second tincture. */
#include "heraldry/lattice-private.h"
#include "heraldry/profile.h"

/* The boundaries between pieces, all alike, so that one fits into the next. */
typedef struct {
  SpvPath *run;       /* from the one side of the panel to the other, with what comes first to its left */
  SpvPoint direction; /* in which the boundaries follow one another */
  double first, step; /* how far along it RUN is moved for boundary 0, and from each to the next */
  int from, to;       /* the boundaries on the panel: FROM to before TO */
  double slack;       /* how far along it RUN strays from what it follows */
} Boundaries;

/* Teeth that are as deep as the painter leaves them are no deeper than this part of a piece, so that it still
 * reads as a stripe. */
#define USUAL_DEPTH (1.0 / 3)

/* The direction in which the pieces follow one another: from dexter, from the chief, from sinister chief or
 * from dexter chief. */
static SpvPoint
counting_direction(const SpvPattern *pattern, const SpvOutline *outline) {
  if (pattern->kind == SPV_PATTERN_PALY)
    return spv_point(1, 0);
  if (pattern->kind == SPV_PATTERN_BARRY)
    return spv_point(0, 1);
  double angle = spv_lay_bend_angle(pattern, SPV_STRIPES_ANGLE, outline);
  return spv_point((pattern->kind == SPV_PATTERN_BENDY ? -1 : 1) * sin(angle), cos(angle));
}

/* Pieces between straight lines. The outermost reach past the panel. */
static void
add_straight_pieces(const SpvParallels *lines, guint pieces, const SpvOutline *outline,
                    SpvPathBuilder *builders[2]) {
  SpvPoint direction = lines->normal, back = spv_point_scale(direction, -1);
  SpvBox box = spv_lay_box(outline);

  for (guint i = 0; i < pieces; i++) {
    SpvCut cut = spv_cut_box(box);
    if (i > 0)
      cut = spv_cut_keep(cut, spv_point_scale(direction, lines->first + i * lines->step), direction);
    if (i + 1 < pieces)
      cut = spv_cut_keep(cut, spv_point_scale(direction, lines->first + (i + 1) * lines->step), back);
    spv_cut_add(&cut, builders[i % 2]);
  }
}

/* Adds the boundary that is moved by OFFSET to the run that is open in BUILDER, or to a new one. */
static void
add_boundary(const Boundaries *boundaries, double offset, gboolean backwards, SpvPathBuilder *builder) {
  SpvPoint shift = spv_point_scale(boundaries->direction, offset);
  SpvTransform place = { 1, 0, 0, 1, shift.x, shift.y };
  g_autoptr(SpvPath) there = spv_path_transform(boundaries->run, place);

  if (backwards) {
    g_autoptr(SpvPath) back = spv_path_reverse(there);
    spv_path_builder_join(builder, back);
  } else {
    spv_path_builder_join(builder, there);
  }
}

/* Adds each piece: along one boundary, and back along the next. The outermost boundaries are moved past the
 * panel, MARGIN mm from what of it lies beyond the others. */
static void
add_pieces(const Boundaries *boundaries, double margin, SpvPathBuilder *builders[2]) {
  for (int i = boundaries->from - 1; i < boundaries->to; i++) {
    double upper = boundaries->first + i * boundaries->step, lower = upper + boundaries->step;

    if (i < boundaries->from)
      upper -= 2 * boundaries->slack + margin;
    if (i + 1 == boundaries->to)
      lower += 2 * boundaries->slack + margin;
    add_boundary(boundaries, upper, FALSE, builders[i & 1]);
    add_boundary(boundaries, lower, TRUE, builders[i & 1]);
    spv_path_builder_close(builders[i & 1]);
  }
}

/* LINE with no more whole teeth on SPAN mm than a pattern may draw. */
static SpvLine
bounded_line(SpvLine line, double span) {
  if (line.pitch > 0)
    line.pitch = MAX(line.pitch, span / SPV_PATTERN_MAX_COUNT);
  return line;
}

static GPtrArray *
flatten_run(const SpvPath *run) {
  return spv_path_flatten(run, SPV_CHORD_ERROR);
}

/* How far RUN strays to either side of the line through (0, 0) along ALONG; the greatest goes to SLACK. TRUE
 * when it also turns back on its way, as a nebuly line does. */
static gboolean
turns_back(const SpvPath *run, SpvPoint along, double *slack) {
  g_autoptr(GPtrArray) rings = flatten_run(run);
  SpvPoint across = spv_point_quarter_turn(along);
  double furthest = -INFINITY;
  gboolean back = FALSE;

  *slack = 0;
  for (guint i = 0; i < rings->len; i++) {
    const SpvRing *ring = g_ptr_array_index(rings, i);
    for (gsize k = 0; k < ring->n_points; k++) {
      double at = spv_point_dot(ring->points[k], along);
      *slack = MAX(*slack, fabs(spv_point_dot(ring->points[k], across)));
      back |= at < furthest - 1e-6;
      furthest = MAX(furthest, at);
    }
  }
  return back;
}

/* The boundaries of straight stripes with LINE, which is not plain. */
static Boundaries
lined_boundaries(const SpvParallels *lines, guint pieces, SpvLine line, const SpvOutline *outline) {
  SpvPoint along = spv_point_quarter_turn(spv_point_scale(lines->normal, -1));
  double low, high;

  spv_outline_extent(outline, along, &low, &high);
  double margin = 0.1 * (high - low);
  const SpvPoint ends[2] = { spv_point_scale(along, low - margin), spv_point_scale(along, high + margin) };
  g_autoptr(SpvTrack) baseline = spv_track_new(ends, 2, FALSE);
  Boundaries boundaries = { NULL, lines->normal, lines->first, lines->step, 1, (int) pieces, 0 };

  line = bounded_line(line, high - low);
  /* Crests point to the piece that comes first. */
  boundaries.run = spv_line_lay(&line, baseline, margin, margin + high - low, -1);
  gboolean back = turns_back(boundaries.run, along, &boundaries.slack);
  /* Boundaries that turn back would run into one another; those of a zigzag or of waves never do. */
  double deepest = back ? lines->step : INFINITY;
  if (line.amplitude < 0 && (back || !spv_profile_runs_alike(line.profile)))
    deepest = USUAL_DEPTH * lines->step;
  if (2 * boundaries.slack > deepest) {
    line.amplitude = deepest;
    spv_path_unref(boundaries.run);
    boundaries.run = spv_line_lay(&line, baseline, margin, margin + high - low, -1);
    turns_back(boundaries.run, along, &boundaries.slack);
  }
  return boundaries;
}

void
spv_lay_stripes(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  guint pieces = (guint) spv_pattern_measure(pattern, SPV_STRIPES_PIECES, outline, 6);
  SpvLine line = spv_line_of(pattern, outline);
  SpvParallels lines = { .normal = counting_direction(pattern, outline) };
  SpvPathBuilder *builders[2] = { spv_path_builder_new(), spv_path_builder_new() };
  double low, high;

  spv_outline_extent(outline, lines.normal, &low, &high);
  lines.first = low;
  lines.step = (high - low) / pieces;
  if (line.profile == SPV_PROFILE_PLAIN || line.amplitude == 0) {
    add_straight_pieces(&lines, pieces, outline, builders);
  } else {
    Boundaries boundaries = lined_boundaries(&lines, pieces, line, outline);
    add_pieces(&boundaries, high - low, builders);
    spv_path_unref(boundaries.run);
  }
  for (int slot = 0; slot < 2; slot++)
    draft->area[slot] = spv_path_builder_build(builders[slot]);
  spv_parallels_rule(&lines, outline, SPV_LINE_DIVISION, 0, draft);
}

/* The last place where STEP, from FROM on, comes over to the right of the centre line; the rest of it is
 * added to BUILDER from there. FALSE when it does not. */
static gboolean
comes_over(SpvPoint from, const SpvPathStep *step, SpvPathBuilder *builder) {
  SpvPathBuilder *alone = spv_path_builder_new();

  spv_path_builder_move(alone, from);
  spv_path_builder_step(alone, step);
  g_autoptr(SpvPath) path = spv_path_builder_build(alone);
  g_autoptr(GPtrArray) rings = flatten_run(path);
  const SpvPoint ends[2] = { from, step->to };
  const SpvRing *ring = rings->len > 0 ? g_ptr_array_index(rings, 0) : NULL;
  const SpvPoint *points = ring ? ring->points : ends;
  gsize n = ring ? ring->n_points : 2;

  for (gsize i = n - 1; i > 0; i--) {
    SpvPoint a = points[i - 1], b = points[i];
    if (a.x >= 0 || b.x < 0)
      continue;
    spv_path_builder_move(builder, spv_point(0, a.y + (b.y - a.y) * a.x / (a.x - b.x)));
    for (; i < n; i++)
      spv_path_builder_line(builder, points[i]);
    return TRUE;
  }
  return FALSE;
}

/* The part of RUN after it has come over to the right of the centre line for the last time; all of it if it
 * never was on the left. */
static SpvPath *
right_of_centre(const SpvPath *run) {
  SpvPathBuilder *builder = spv_path_builder_new();
  gsize n, first = 0;
  const SpvPathStep *steps = spv_path_steps(run, &n);

  for (gsize i = n; i > 1 && first == 0; i--)
    if (comes_over(steps[i - 2].to, &steps[i - 1], builder))
      first = i;
  for (gsize i = first; i < n; i++)
    spv_path_builder_step(builder, &steps[i]);
  return spv_path_builder_build(builder);
}

/* The right leg of a chevron with its apex at (0, 0), as far as the panel's side and a little further; HALF
 * is half the angle between the legs, STEP how far apart the apexes are. */
static SpvPath *
right_leg(const SpvLine *line, const SpvOutline *outline, double half, double step) {
  double leg = spv_outline_width(outline) / 2 / sin(half), over = 0.1 * leg + step;
  SpvPoint direction = { sin(half), cos(half) };
  /* It starts before the apex, so that it comes to the centre line in whatever way its teeth do. */
  const SpvPoint ends[2] = { spv_point_scale(direction, -over), spv_point_scale(direction, leg + over) };
  g_autoptr(SpvTrack) baseline = spv_track_new(ends, 2, FALSE);
  SpvLine bounded = bounded_line(*line, leg);
  g_autoptr(SpvPath) run = spv_line_lay(&bounded, baseline, over, over + leg, -1);

  return right_of_centre(run);
}

/* A boundary of chevronny, and how far it strays from the legs, measured upright. Where it would run into the
 * next one its teeth are flatter than asked for. */
static SpvPath *
chevron_run(SpvLine line, const SpvOutline *outline, double half, double step, double *slack) {
  SpvPoint along = { sin(half), cos(half) };
  double deepest = step * sin(half) * (line.amplitude < 0 ? USUAL_DEPTH : 1);
  SpvPath *right = right_leg(&line, outline, half, step);

  turns_back(right, along, slack);
  if (2 * *slack > deepest) {
    line.amplitude = deepest;
    spv_path_unref(right);
    right = right_leg(&line, outline, half, step);
    turns_back(right, along, slack);
  }
  *slack /= sin(half);
  g_autoptr(SpvPath) left = spv_path_transform(right, SPV_TRANSFORM_MIRROR);
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_join(builder, left);
  spv_path_builder_join(builder, right);
  spv_path_unref(right);
  return spv_path_builder_build(builder);
}

/* How far the outline reaches in chevrons: from the apex of the highest one that touches it to that of the
 * lowest. SLOPE is how far a leg falls for each mm outward. */
static void
chevron_extent(const SpvOutline *outline, double slope, double *low, double *high) {
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);

  *low = INFINITY;
  *high = -INFINITY;
  for (gsize i = 0; i < n; i++) {
    double apex = points[i].y - fabs(points[i].x) * slope;
    *low = MIN(*low, apex);
    *high = MAX(*high, apex);
  }
}

static void
rule_chevrons(const Boundaries *boundaries, const SpvOutline *outline, double half, SpvDraft *draft) {
  double reach = spv_outline_width(outline) + spv_outline_height(outline);
  guint number = 0;

  for (int i = boundaries->from; i < boundaries->to; i++)
    for (int side = -1; side <= 1; side += 2) {
      SpvPoint apex = { 0, boundaries->first + i * boundaries->step };
      SpvPoint leg = { side * reach, reach / tan(half) };
      spv_draft_add_line(draft, SPV_LINE_DIVISION, ++number, apex, spv_point_add(apex, leg));
    }
}

/* Chevrons are counted on the centre line. They go on over the corners in chief, where a panel is so wide
 * that its uppermost chevron leaves more than a piece of them. */
void
spv_lay_chevronny(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double half = spv_pattern_measure(pattern, SPV_STRIPES_ANGLE, outline, G_PI / 2) / 2;
  double pieces = spv_pattern_measure(pattern, SPV_STRIPES_PIECES, outline, 6);
  SpvLine line = spv_line_of(pattern, outline);
  SpvPathBuilder *builders[2] = { spv_path_builder_new(), spv_path_builder_new() };
  double low, high;

  chevron_extent(outline, 1 / tan(half), &low, &high);
  Boundaries boundaries = { .direction = { 0, 1 } };
  boundaries.step = MAX(spv_outline_height(outline) / pieces, (high - low) / SPV_PATTERN_MAX_COUNT);
  boundaries.from = (int) floor(low / boundaries.step + 1e-6) + 1;
  boundaries.to = (int) ceil(high / boundaries.step - 1e-6);
  boundaries.run = chevron_run(line, outline, half, boundaries.step, &boundaries.slack);
  add_pieces(&boundaries, high - low, builders);
  spv_path_unref(boundaries.run);
  for (int slot = 0; slot < 2; slot++)
    draft->area[slot] = spv_path_builder_build(builders[slot]);
  rule_chevrons(&boundaries, outline, half, draft);
}
