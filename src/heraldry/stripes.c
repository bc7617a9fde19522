/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Paly, barry and bendy: pieces of equal width across the panel, in turn of the first and the second
 * tincture. */
#include "heraldry/lay-private.h"

/* The direction in which the pieces follow one another: from dexter, from the chief, or from
 * sinister chief. */
static SpvPoint
counting_direction(const SpvPattern *pattern, const SpvOutline *outline) {
  if (pattern->kind == SPV_PATTERN_PALY)
    return spv_point(1, 0);
  if (pattern->kind == SPV_PATTERN_BARRY)
    return spv_point(0, 1);
  double angle = spv_lay_bend_angle(pattern, SPV_STRIPES_ANGLE, outline);
  return spv_point((pattern->kind == SPV_PATTERN_BENDY ? -1 : 1) * sin(angle), cos(angle));
}

/* How far the outline reaches along DIRECTION, so that the outermost pieces are as wide as the others where
 * they are widest. */
static void
extent_along(const SpvOutline *outline, SpvPoint direction, double *low, double *high) {
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);

  *low = INFINITY;
  *high = -INFINITY;
  for (gsize i = 0; i < n; i++) {
    double at = spv_point_dot(points[i], direction);
    *low = MIN(*low, at);
    *high = MAX(*high, at);
  }
}

void
spv_lay_stripes(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  guint pieces = (guint) spv_pattern_measure(pattern, SPV_STRIPES_PIECES, outline, 6);
  SpvPoint direction = counting_direction(pattern, outline);
  SpvPoint back = spv_point_scale(direction, -1), along = spv_point_quarter_turn(back);
  SpvBox box = spv_lay_box(outline);
  double reach = spv_outline_width(outline) + spv_outline_height(outline), low, high;
  SpvPathBuilder *builders[2] = { spv_path_builder_new(), spv_path_builder_new() };

  extent_along(outline, direction, &low, &high);
  for (guint i = 0; i < pieces; i++) {
    SpvPoint from = spv_point_scale(direction, low + (high - low) * i / pieces);
    SpvPoint to = spv_point_scale(direction, low + (high - low) * (i + 1) / pieces);
    SpvCut cut = spv_cut_box(box);

    if (i > 0) {
      SpvPoint middle = spv_point_add(from,
                                      spv_point_scale(along, spv_point_dot(along, spv_box_centre(box))));
      cut = spv_cut_keep(cut, from, direction);
      spv_draft_add_line(draft, SPV_LINE_DIVISION, i,
                         spv_point_subtract(middle, spv_point_scale(along, reach)),
                         spv_point_add(middle, spv_point_scale(along, reach)));
    }
    if (i + 1 < pieces)
      cut = spv_cut_keep(cut, to, back);
    spv_cut_add(&cut, builders[i % 2]);
  }
  for (int slot = 0; slot < 2; slot++)
    draft->area[slot] = spv_path_builder_build(builders[slot]);
}
