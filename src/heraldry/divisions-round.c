/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Divisions whose lines meet in one point: per saltire, quarterly, per pall, gyronny. */
#include "heraldry/sectors-private.h"

/* Adds the straight line from FROM past the panel in DIRECTION, and as far the other way where THROUGH. */
static void
add_ruling(SpvDraft *draft, const SpvOutline *outline, guint number, SpvPoint from, SpvPoint direction,
           gboolean through) {
  double reach = spv_outline_width(outline) + spv_outline_height(outline);
  SpvPoint step = spv_point_scale(direction, reach);

  spv_draft_add_line(draft, SPV_LINE_DIVISION, number, through ? spv_point_subtract(from, step) : from,
                     spv_point_add(from, step));
}

/* Slot 0 is the chief and the base, slot 1 the flanks; crests stand in slot 0. */
void
spv_lay_per_saltire(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double angle = spv_lay_bend_angle(pattern, SPV_SALTIRE_ANGLE, outline), x = cos(angle), y = sin(angle);
  SpvLine line = spv_line_of(pattern, outline);
  SpvSectors sectors = { .centre = { 0, spv_outline_height(outline) / 2 },
                         .n = 4,
                         .directions = { { -x, -y }, { x, -y }, { x, y }, { -x, y } },
                         .slots = { 0, 1, 0, 1 },
                         .sides = { 1, -1, 1, -1 } };

  spv_sectors_lay(&sectors, &line, outline, 2, draft);
  add_ruling(draft, outline, 1, sectors.centre, spv_point(x, y), TRUE);
  add_ruling(draft, outline, 2, sectors.centre, spv_point(-x, y), TRUE);
}

/* Slot 0 is the first and fourth quarter (dexter chief and sinister base). The crests of all arms stand on
 * the same side, going round, so that each line runs on through the centre and the quarters are all alike. */
void
spv_lay_quarterly(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  SpvBox box = spv_lay_box(outline);
  SpvLine line = spv_line_of(pattern, outline);
  SpvPoint at = { spv_pattern_measure(pattern, SPV_QUARTERLY_ACROSS, outline, 0),
                  spv_outline_height(outline) / 2 +
                      spv_pattern_measure(pattern, SPV_QUARTERLY_DOWN, outline, 0) };
  SpvSectors sectors = { .centre = at,
                         .n = 4,
                         .directions = { { 0, -1 }, { 1, 0 }, { 0, 1 }, { -1, 0 } },
                         .slots = { 1, 0, 1, 0 },
                         .sides = { 1, 1, 1, 1 } };

  spv_sectors_lay(&sectors, &line, outline, 2, draft);
  spv_draft_add_line(draft, SPV_LINE_DIVISION, 1, spv_point(at.x, box.y0), spv_point(at.x, box.y1));
  spv_draft_add_line(draft, SPV_LINE_DIVISION, 2, spv_point(box.x0, at.y), spv_point(box.x1, at.y));
}

/* Up to the two upper corners, or as steeply as asked, and straight down. Slot 0 is the chief, 1 the dexter
 * part, 2 the sinister one; crests stand in the chief, and on the upright line to dexter. */
void
spv_lay_per_pall(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double down = spv_pattern_measure(pattern, SPV_PALL_DOWN, outline, 0);
  double corners = CLAMP(2 * atan2(spv_outline_width(outline) / 2, down), G_PI / 18, G_PI * 17 / 18);
  double half = spv_pattern_measure(pattern, SPV_PALL_ANGLE, outline, corners) / 2;
  SpvLine line = spv_line_of(pattern, outline);
  SpvSectors sectors = { .centre = { 0, down },
                         .n = 3,
                         .directions = { { -sin(half), -cos(half) }, { sin(half), -cos(half) }, { 0, 1 } },
                         .slots = { 0, 2, 1 },
                         .sides = { 1, -1, 1 } };

  spv_sectors_lay(&sectors, &line, outline, 3, draft);
  for (guint i = 0; i < sectors.n; i++)
    add_ruling(draft, outline, i + 1, sectors.centre, sectors.directions[i], FALSE);
}

/* The point that lies T of the way round the unit square about (0, 0): clockwise, from the middle of its
 * upper side. */
static SpvPoint
round_square(double t) {
  double side = 4 * t + 0.5, along = side - floor(side) - 0.5;

  switch ((int) floor(side) % 4) {
  case 0:
    return spv_point(along, -0.5);
  case 1:
    return spv_point(0.5, along);
  case 2:
    return spv_point(-along, 0.5);
  default:
    return spv_point(-0.5, -along);
  }
}

/* The lines go to points spaced evenly round the panel's box, stretched to a square: so those of eight go to
 * its corners and to the middles of its sides, and on a rectangle all pieces are equal whatever their number.
 * When the point where they meet is moved, they move with it, so that each line stays straight. The first
 * piece lies in dexter chief, beside the upright line. */
void
spv_lay_gyronny(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  static const guint pieces[] = { 8, 6, 10, 12, 16 };
  const SpvOutline *outline = frame->outline;
  guint choice = (guint) spv_pattern_measure(pattern, SPV_GYRONNY_PIECES, outline, 0);
  SpvLine line = spv_line_of(pattern, outline);
  SpvSectors sectors = { .centre = { spv_pattern_measure(pattern, SPV_GYRONNY_ACROSS, outline, 0),
                                     spv_outline_height(outline) / 2 +
                                         spv_pattern_measure(pattern, SPV_GYRONNY_DOWN, outline, 0) },
                         .n = pieces[MIN(choice, G_N_ELEMENTS(pieces) - 1)] };

  for (guint i = 0; i < sectors.n; i++) {
    SpvPoint p = round_square((double) i / sectors.n);
    p.x *= spv_outline_width(outline);
    p.y *= spv_outline_height(outline);
    sectors.directions[i] = spv_point_unit(p);
    sectors.slots[i] = (i + 1) % 2;
    sectors.sides[i] = 1;
  }
  spv_sectors_lay(&sectors, &line, outline, 2, draft);
  for (guint i = 0; i < sectors.n / 2; i++)
    add_ruling(draft, outline, i + 1, sectors.centre, sectors.directions[i], TRUE);
}
