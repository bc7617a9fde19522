/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ordinaries that are no bands: pile, quarter, canton, gyron, flaunches, inescutcheon, label. */
#include "heraldry/edges-private.h"

/* Very nearly the whole chief line: Fox-Davies p. 124. */
#define PILE_TOP 0.9
/* Each side of a ninth of the panel: Fox-Davies p. 135; of three quarters of a quarter when charged: Boutell
 * ch. VII. */
#define CANTON_SIDE (1.0 / 3)
#define CHARGED_CANTON_SIDE sqrt(3.0 / 16)

/* One pile with its point at (X, LENGTH): its right half, and its mirror image. */
static void
add_pile(SpvPathBuilder *builder, const SpvLine *line, const SpvOutline *outline, double x, double width,
         double length) {
  SpvPoint point = { x, length }, up = spv_point_unit(spv_point(width / 2, -length));
  g_autoptr(SpvPath) edge = spv_corner_edge(line, outline, point, up, atan2(width / 2, length), 1);
  g_autoptr(SpvPath) back = spv_path_reverse(edge);
  SpvBox bounds = spv_path_bounds(edge);
  double over = MIN(bounds.y0, spv_lay_box(outline).y0);
  SpvPathBuilder *half = spv_path_builder_new();

  spv_path_builder_join(half, back);
  spv_path_builder_line(half, spv_point(bounds.x0, over));
  spv_path_builder_line(half, spv_point(bounds.x1, over));
  spv_path_builder_close(half);
  g_autoptr(SpvPath) right = spv_path_builder_build(half);
  spv_add_mirrored(builder, right, x);
}

/* Several stand side by side, each with its point in base: Fox-Davies p. 124. */
void
spv_lay_pile(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  guint n = (guint) spv_lay_measure(pattern, outline, "number", 1);
  double share = spv_outline_width(outline) / n;
  double width = spv_lay_measure(pattern, outline, "width", PILE_TOP * share);
  double length = spv_lay_measure(pattern, outline, "length", 0);
  SpvLine line = spv_line_of(pattern, outline);
  SpvPathBuilder *builder = spv_path_builder_new();
  GPtrArray *spines = spv_spines_new();

  for (guint i = 0; width > 0 && length > 0 && i < n; i++) {
    double x = (i - (n - 1) / 2.0) * share;
    add_pile(builder, &line, outline, x, width, length);
    for (guint k = 0; k < 2; k++)
      spv_draft_add_line(draft, SPV_LINE_DIVISION, 2 * i + k + 1,
                         spv_point(x + (k == 0 ? -0.5 : 0.5) * width, 0), spv_point(x, length));
    /* Charges stand where there is room for them. */
    spv_spines_add(spines, spv_point(x, 0), spv_point(x, 0.7 * length));
  }
  draft->area[0] = spv_path_builder_build(builder);
  draft->frame = spv_frame_of_limbs(outline, spines, 0.4 * width);
}

static void
add_corner_lines(const SpvOutline *outline, SpvPoint at, SpvPoint in, SpvPoint out, SpvDraft *draft) {
  SpvAxis towards = { at, in }, away = { at, out };
  SpvBox before = spv_axis_reach(towards, outline), after = spv_axis_reach(away, outline);

  spv_draft_add_line(draft, SPV_LINE_DIVISION, 1, spv_axis_point(towards, MIN(before.x0, 0), 0), at);
  spv_draft_add_line(draft, SPV_LINE_DIVISION, 2, spv_axis_point(away, MAX(after.x1, 0), 0), at);
}

/* What lies in dexter chief of the corner WIDTH and HEIGHT mm in. */
static void
lay_quarter(const SpvPattern *pattern, const SpvOutline *outline, double width, double height,
            SpvDraft *draft) {
  double left = -spv_outline_width(outline) / 2;
  SpvPoint corner = { left + width, height }, down = { 0, 1 }, to_dexter = { -1, 0 };
  SpvLine line = spv_line_of(pattern, outline);

  if (!(width > 0 && height > 0)) {
    draft->area[0] = spv_lay_nothing();
    return;
  }
  g_autoptr(SpvShape) area = spv_corner_lay(&line, outline, corner, down, to_dexter);
  draft->area[0] = spv_shape_to_path(area);
  add_corner_lines(outline, corner, down, to_dexter, draft);
  draft->frame = spv_frame_in_box(outline, (SpvBox){ left, 0, corner.x, corner.y });
}

void
spv_lay_quarter(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;

  lay_quarter(pattern, outline, spv_lay_measure(pattern, outline, "width", 0),
              spv_lay_measure(pattern, outline, "height", 0), draft);
}

void
spv_lay_canton(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double side = spv_lay_charged(pattern, outline) ? CHARGED_CANTON_SIDE : CANTON_SIDE;

  lay_quarter(pattern, outline, spv_lay_measure(pattern, outline, "width", side * spv_outline_width(outline)),
              spv_lay_measure(pattern, outline, "height", side * spv_outline_height(outline)), draft);
}

/* The lower half of the first quarter parted per bend: between the panel's middle, dexter chief and
 * dexter. */
void
spv_lay_gyron(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  SpvPoint middle = { 0, spv_outline_height(outline) / 2 };
  SpvPoint corner = { -spv_outline_width(outline) / 2, 0 }, side = { corner.x, middle.y };
  SpvPoint in = spv_point_unit(spv_point_subtract(middle, corner)), out = { -1, 0 };
  SpvLine line = spv_line_of(pattern, outline);
  g_autoptr(SpvShape) area = spv_corner_lay(&line, outline, middle, in, out);
  GPtrArray *spines = spv_spines_new();
  /* Charges stand where there is room for them. */
  SpvPoint root = spv_point_between(corner, side, 0.6);

  draft->area[0] = spv_shape_to_path(area);
  add_corner_lines(outline, middle, in, out, draft);
  spv_spines_add(spines, root, spv_point_between(root, middle, 0.6));
  draft->frame = spv_frame_of_limbs(outline, spines, 0.4 * middle.y);
}

/* The arc that bounds the dexter flaunch, from the upper corner down to the lower one. */
typedef struct {
  SpvPoint centre;
  double radius, start, sweep;
} Arc;

static Arc
flaunch_arc(const SpvOutline *outline, double width) {
  double height = spv_outline_height(outline), left = -spv_outline_width(outline) / 2;
  /* A segment WIDTH high over a chord as long as the panel is high. */
  double radius = (height * height / 4 + width * width) / (2 * width);
  Arc arc = { .centre = { left + width - radius, height / 2 }, .radius = radius };

  arc.start = atan2(-height / 2, left - arc.centre.x);
  arc.sweep = -2 * arc.start;
  return arc;
}

/* Crests stand towards the panel's middle. */
static SpvPath *
lay_flaunch(const SpvOutline *outline, const SpvLine *line, const Arc *arc) {
  SpvBox box = spv_lay_box(outline);
  SpvPathBuilder *builder = spv_path_builder_new();
  SpvPoint top = { -spv_outline_width(outline) / 2, 0 }, foot = { top.x, spv_outline_height(outline) };

  spv_path_builder_move(builder, spv_point(box.x0, top.y));
  spv_path_builder_line(builder, top);
  if (line->profile == SPV_PROFILE_PLAIN) {
    spv_path_builder_arc(builder, arc->centre, arc->radius, arc->start, arc->sweep);
  } else {
    g_autoptr(SpvPathBuilder) curve = spv_path_builder_new();
    spv_path_builder_arc(curve, arc->centre, arc->radius, arc->start, arc->sweep);
    g_autoptr(SpvPath) path = spv_path_builder_build(g_steal_pointer(&curve));
    g_autoptr(GPtrArray) rings = spv_path_flatten(path, SPV_CHORD_ERROR);
    if (rings->len > 0) {
      const SpvRing *ring = g_ptr_array_index(rings, 0);
      g_autoptr(SpvTrack) track = spv_track_new(ring->points, ring->n_points, FALSE);
      g_autoptr(SpvPath) laid = spv_line_lay(line, track, 0, spv_track_length(track), -1);
      spv_path_builder_join(builder, laid);
    }
  }
  spv_path_builder_line(builder, foot);
  spv_path_builder_line(builder, spv_point(box.x0, foot.y));
  spv_path_builder_close(builder);
  return spv_path_builder_build(builder);
}

void
spv_lay_flaunches(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double width = spv_lay_measure(pattern, outline, "width", 0);
  SpvLine line = spv_line_of(pattern, outline);
  SpvPathBuilder *builder = spv_path_builder_new();

  /* Thinner than this there is nothing to see, and the circle would be endless. */
  if (width > 1e-4) {
    Arc arc = flaunch_arc(outline, width);
    g_autoptr(SpvPath) dexter = lay_flaunch(outline, &line, &arc);
    g_autoptr(SpvPath) sinister = spv_path_transform(dexter, SPV_TRANSFORM_MIRROR);
    GPtrArray *spines = spv_spines_new();
    double x = (spv_outline_width(outline) - width) / 2, dx = -x - arc.centre.x;
    double reach = sqrt(MAX(0, arc.radius * arc.radius - dx * dx));

    spv_path_builder_path(builder, dexter);
    spv_path_builder_path(builder, sinister);
    reach = MIN(reach, spv_outline_height(outline) / 2);
    for (int across = -1; across <= 1; across += 2)
      spv_spines_add(spines, spv_point(across * x, arc.centre.y - reach),
                     spv_point(across * x, arc.centre.y + reach));
    draft->frame = spv_frame_of_limbs(outline, spines, width);
  }
  draft->area[0] = spv_path_builder_build(builder);
}

/* The panel's own outline, smaller. */
void
spv_lay_inescutcheon(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double width = spv_lay_measure(pattern, outline, "width", 0);
  double factor = width / spv_outline_width(outline), height = factor * spv_outline_height(outline);
  SpvPoint datum = { spv_lay_measure(pattern, outline, "across", 0),
                     (spv_outline_height(outline) - height) / 2 +
                         spv_lay_measure(pattern, outline, "down", 0) };
  SpvTransform place = spv_transform_place(factor, 0, datum);
  SpvLine line = spv_line_with_room(pattern, outline, 2 * (width + height), MIN(width, height) / 8);

  if (!(width > 1e-4)) {
    draft->area[0] = spv_lay_nothing();
    return;
  }
  g_autoptr(SpvPath) plain = spv_path_transform(spv_outline_path(outline), place);
  if (line.profile == SPV_PROFILE_PLAIN) {
    draft->area[0] = spv_path_ref(plain);
  } else {
    g_autoptr(GPtrArray) rings = spv_path_flatten(plain, SPV_CHORD_ERROR);
    const SpvRing *ring = rings->len > 0 ? g_ptr_array_index(rings, 0) : NULL;
    SpvPathBuilder *builder = spv_path_builder_new();
    if (ring) {
      g_autoptr(SpvTrack) track = spv_track_new(ring->points, ring->n_points, TRUE);
      g_autoptr(SpvPath) laid = spv_line_lay(&line, track, 0, spv_track_length(track), -1);
      spv_path_builder_join(builder, laid);
      spv_path_builder_close(builder);
    }
    draft->area[0] = spv_path_builder_build(builder);
  }
  draft->frame = spv_frame_new_box(datum, 0, width, height);
}

/* A strap, from side to side or as long as asked, with points that hang from it in even spaces: from end to
 * end where it stands free, half a space from each side where it doesn't. */
void
spv_lay_label(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  guint n = (guint) spv_lay_measure(pattern, outline, "points", 3);
  double width = spv_lay_measure(pattern, outline, "width", 0);
  double depth = spv_lay_measure(pattern, outline, "depth", 0);
  double level = spv_lay_measure(pattern, outline, "level", 0);
  double length = spv_lay_measure(pattern, outline, "length", -1);
  SpvAxis axis = { { 0, level }, { 1, 0 } };
  SpvPathBuilder *builder = spv_path_builder_new();
  GPtrArray *spines = spv_spines_new();
  SpvBox chord = { -length / 2, 0, length / 2, 0 }, strap = { chord.x0, level, chord.x1, level + width };

  if (length < 0) {
    SpvBox box = spv_lay_box(outline);
    spv_axis_bounds(axis, outline, width / 2, width / 2, &chord);
    strap.x0 = box.x0;
    strap.x1 = box.x1;
  }
  if (width > 0 && strap.x1 > strap.x0) {
    g_autoptr(SpvPath) band = spv_path_new_box(strap);
    spv_path_builder_path(builder, band);
    for (guint i = 0; i < n && depth > width; i++) {
      double space = chord.x1 - chord.x0;
      double x = length < 0 ? chord.x0 + space * (i + 0.5) / n
                 : n > 1    ? chord.x0 + width / 2 + (space - width) * i / (n - 1)
                            : 0;
      /* From the strap's upper edge, so that no hair shows between the two. */
      g_autoptr(SpvPath)
          point = spv_path_new_box((SpvBox){ x - width / 2, level, x + width / 2, level + depth });
      spv_path_builder_path(builder, point);
      spv_spines_add(spines, spv_point(x, level + width), spv_point(x, level + depth));
    }
    for (guint i = 0; i < 2; i++)
      spv_draft_add_line(draft, SPV_LINE_DIVISION, i + 1, spv_point(strap.x0, level + i * width),
                         spv_point(strap.x1, level + i * width));
  }
  draft->area[0] = spv_path_builder_build(builder);
  draft->frame = spv_frame_of_limbs(outline, spines, width);
}
