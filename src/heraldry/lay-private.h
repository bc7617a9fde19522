/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the kinds of pattern share when they lay themselves on an outline. */
#pragma once

#include "heraldry/pattern.h"

/* The box that an area must reach to cover the panel: its bounds and a margin, so that no edge of an area
 * shows at the outline. */
SpvBox spv_lay_box(const SpvOutline *outline);

/* A convex ring being cut by straight lines. */
typedef struct {
  SpvPoint points[12];
  guint n;
} SpvCut;

SpvCut spv_cut_box(SpvBox box);
/* Keeps what lies on the side of the line through AT to which NORMAL points. */
SpvCut spv_cut_keep(SpvCut cut, SpvPoint at, SpvPoint normal);
/* Adds the ring to BUILDER, clockwise; nothing when less than a triangle is left. */
void spv_cut_add(const SpvCut *cut, SpvPathBuilder *builder);

void spv_draft_add_line(SpvDraft *draft, SpvLineKind kind, guint number, SpvPoint from, SpvPoint to);

/* The downward slope of a bend, radians: as given, or the box's diagonal. */
double spv_lay_bend_angle(const SpvPattern *pattern, guint index, const SpvOutline *outline);

void spv_lay_field(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_per_pale(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_per_fess(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_per_bend(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_per_chevron(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_per_saltire(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_per_pall(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_quarterly(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_tierced_in_pale(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_tierced_in_fess(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_gyronny(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_stripes(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_chevronny(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_barry_bendy(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_paly_bendy(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_check(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_lozengy(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_fretty(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_masoned(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_jagged_border(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_bordure(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_orle(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_tressure(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_chief(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_fillet(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_fess(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_pale(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_bend(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_cotise(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_baton(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_chevron(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_cross(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_saltire(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_pile(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_pall(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_quarter(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_canton(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_gyron(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_flaunches(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_inescutcheon(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_label(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_charge(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_free_path(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
void spv_lay_lettering(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);

/* The measures of each kind, in the order of its table: the names by which the code knows them. */
enum { SPV_SHIFT_AT };
enum { SPV_BEND_ANGLE, SPV_BEND_SHIFT };
enum { SPV_CHEVRON_APEX, SPV_CHEVRON_ANGLE };
enum { SPV_SALTIRE_ANGLE };
enum { SPV_PALL_DOWN, SPV_PALL_ANGLE };
enum { SPV_QUARTERLY_ACROSS, SPV_QUARTERLY_DOWN };
enum { SPV_TIERCED_MIDDLE };
enum { SPV_GYRONNY_PIECES, SPV_GYRONNY_ACROSS, SPV_GYRONNY_DOWN };
enum { SPV_STRIPES_PIECES, SPV_STRIPES_ANGLE };
enum {
  SPV_CHECK_COLUMNS,
  SPV_CHECK_CELL,
  SPV_CHECK_ROWS,
  SPV_CHECK_CENTRE,
  SPV_CHECK_ACROSS,
  SPV_CHECK_DOWN,
  SPV_CHECK_TURN
};
enum { SPV_CENTRE_BEST, SPV_CENTRE_LINE, SPV_CENTRE_CELL };
enum { SPV_CROSSED_PIECES, SPV_CROSSED_BENDS, SPV_CROSSED_ANGLE };
enum { SPV_LOZENGY_COLUMNS, SPV_LOZENGY_ANGLE, SPV_LOZENGY_ACROSS, SPV_LOZENGY_DOWN };
enum { SPV_FRETTY_COLUMNS, SPV_FRETTY_WIDTH, SPV_FRETTY_ANGLE, SPV_FRETTY_LACES };
enum { SPV_LACES_INTERLACED, SPV_LACES_PLAIN };
enum { SPV_MASONED_COURSES, SPV_MASONED_STONE, SPV_MASONED_JOINT };
enum {
  SPV_JAGGED_EDGE,
  SPV_JAGGED_POINTS,
  SPV_JAGGED_PITCH,
  SPV_JAGGED_DEPTH,
  SPV_JAGGED_WIDTH,
  SPV_JAGGED_LEAN,
  SPV_JAGGED_ROW
};
