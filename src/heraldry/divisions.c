/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The field and its divisions. A division's boundaries cross the whole panel; its two areas together cover
 * it. */
#include "heraldry/lay-private.h"

void
spv_lay_field(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  (void) pattern;
  draft->area[0] = spv_path_new_box(spv_lay_box(outline));
}

/* Parts the panel along the line through AT in DIRECTION: slot 0 lies on the side to which NORMAL points. */
static void
part(const SpvOutline *outline, SpvPoint at, SpvPoint direction, SpvPoint normal, SpvDraft *draft) {
  SpvCut whole = spv_cut_box(spv_lay_box(outline));
  double reach = spv_outline_width(outline) + spv_outline_height(outline);

  for (int slot = 0; slot < 2; slot++) {
    SpvPathBuilder *builder = spv_path_builder_new();
    SpvCut kept = spv_cut_keep(whole, at, slot == 0 ? normal : spv_point_scale(normal, -1));
    spv_cut_add(&kept, builder);
    draft->area[slot] = spv_path_builder_build(builder);
  }
  spv_draft_add_line(draft, SPV_LINE_DIVISION, 1, spv_point_subtract(at, spv_point_scale(direction, reach)),
                     spv_point_add(at, spv_point_scale(direction, reach)));
}

void
spv_lay_per_pale(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double x = spv_pattern_measure(pattern, SPV_SHIFT_AT, outline, 0);
  part(outline, spv_point(x, spv_outline_height(outline) / 2), spv_point(0, 1), spv_point(-1, 0), draft);
}

void
spv_lay_per_fess(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double y = spv_outline_height(outline) / 2 + spv_pattern_measure(pattern, SPV_SHIFT_AT, outline, 0);
  part(outline, spv_point(0, y), spv_point(1, 0), spv_point(0, -1), draft);
}

/* Per bend runs down from dexter chief (the viewer's upper left), per bend sinister from sinister chief. Slot
 * 0 is the upper part. */
void
spv_lay_per_bend(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double angle = spv_lay_bend_angle(pattern, SPV_BEND_ANGLE, outline);
  double across = pattern->kind == SPV_PATTERN_PER_BEND ? 1 : -1;
  SpvPoint at = { spv_pattern_measure(pattern, SPV_BEND_SHIFT, outline, 0), spv_outline_height(outline) / 2 };
  SpvPoint direction = { across * cos(angle), sin(angle) };

  part(outline, at, direction, spv_point(across * sin(angle), -cos(angle)), draft);
}

/* Per chevron: slot 1 is the wedge below the two legs. */
void
spv_lay_per_chevron(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  SpvPoint apex = { 0, spv_pattern_measure(pattern, SPV_CHEVRON_APEX, outline, 0) };
  double half = spv_pattern_measure(pattern, SPV_CHEVRON_ANGLE, outline, G_PI / 2) / 2;
  double reach = spv_outline_width(outline) + spv_outline_height(outline);
  SpvPoint legs[2] = { { -sin(half), cos(half) }, { sin(half), cos(half) } };
  SpvPoint left_of_right = { -cos(half), sin(half) }, right_of_left = { cos(half), sin(half) };
  SpvCut whole = spv_cut_box(spv_lay_box(outline));
  SpvCut under_left = spv_cut_keep(whole, apex, right_of_left);
  SpvCut parts[3] = { spv_cut_keep(under_left, apex, left_of_right),
                      spv_cut_keep(whole, apex, spv_point_scale(right_of_left, -1)),
                      spv_cut_keep(under_left, apex, spv_point_scale(left_of_right, -1)) };
  SpvPathBuilder *upper = spv_path_builder_new(), *wedge = spv_path_builder_new();

  spv_cut_add(&parts[0], wedge);
  spv_cut_add(&parts[1], upper);
  spv_cut_add(&parts[2], upper);
  draft->area[0] = spv_path_builder_build(upper);
  draft->area[1] = spv_path_builder_build(wedge);
  for (guint i = 0; i < 2; i++)
    spv_draft_add_line(draft, SPV_LINE_DIVISION, i + 1, apex,
                       spv_point_add(apex, spv_point_scale(legs[i], reach)));
}

/* Per saltire: slot 0 is the chief and the base, slot 1 the flanks. */
void
spv_lay_per_saltire(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double angle = spv_lay_bend_angle(pattern, SPV_SALTIRE_ANGLE, outline);
  SpvPoint centre = { 0, spv_outline_height(outline) / 2 };
  double reach = spv_outline_width(outline) + spv_outline_height(outline);
  SpvPoint over_bend = { sin(angle), -cos(angle) }, over_sinister = { -sin(angle), -cos(angle) };
  SpvPathBuilder *builders[2] = { spv_path_builder_new(), spv_path_builder_new() };

  for (int i = 0; i < 4; i++) {
    gboolean above_bend = i & 1, above_sinister = i & 2;
    SpvCut cut = spv_cut_box(spv_lay_box(outline));
    cut = spv_cut_keep(cut, centre, spv_point_scale(over_bend, above_bend ? 1 : -1));
    cut = spv_cut_keep(cut, centre, spv_point_scale(over_sinister, above_sinister ? 1 : -1));
    spv_cut_add(&cut, builders[above_bend == (above_sinister != 0) ? 0 : 1]);
  }
  for (guint i = 0; i < 2; i++) {
    SpvPoint step = { (i == 0 ? 1 : -1) * cos(angle) * reach, sin(angle) * reach };
    draft->area[i] = spv_path_builder_build(builders[i]);
    spv_draft_add_line(draft, SPV_LINE_DIVISION, i + 1, spv_point_subtract(centre, step),
                       spv_point_add(centre, step));
  }
}

/* Quarterly: slot 0 is the first and fourth quarter (dexter chief and sinister base). */
void
spv_lay_quarterly(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  SpvBox box = spv_lay_box(outline);
  SpvPoint at = { spv_pattern_measure(pattern, SPV_QUARTERLY_ACROSS, outline, 0),
                  spv_outline_height(outline) / 2 +
                      spv_pattern_measure(pattern, SPV_QUARTERLY_DOWN, outline, 0) };
  SpvPathBuilder *builders[2] = { spv_path_builder_new(), spv_path_builder_new() };

  for (int i = 0; i < 4; i++) {
    int right = i & 1, lower = i >> 1;
    SpvCut cut = spv_cut_keep(spv_cut_box(box), at, spv_point(right ? 1 : -1, 0));
    cut = spv_cut_keep(cut, at, spv_point(0, lower ? 1 : -1));
    spv_cut_add(&cut, builders[right != lower]);
  }
  for (int slot = 0; slot < 2; slot++)
    draft->area[slot] = spv_path_builder_build(builders[slot]);
  spv_draft_add_line(draft, SPV_LINE_DIVISION, 1, spv_point(at.x, box.y0), spv_point(at.x, box.y1));
  spv_draft_add_line(draft, SPV_LINE_DIVISION, 2, spv_point(box.x0, at.y), spv_point(box.x1, at.y));
}
