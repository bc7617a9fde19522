/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How charges stand on a panel, or on an ordinary. */
#pragma once

#include "heraldry/pattern.h"

/* The first measures of every charge (and of the path charge). */
enum {
  SPV_CHARGE_ACROSS,
  SPV_CHARGE_DOWN,
  SPV_CHARGE_SIZE,
  SPV_CHARGE_TURN,
  SPV_CHARGE_PLACE,
  SPV_CHARGE_NUMBER,
  SPV_CHARGE_ARRANGEMENT,
  SPV_CHARGE_SPACING,
  SPV_CHARGE_OWN /* the first of the kind's own measures */
};

/* The part of what they are laid on: each is a box of it. */
typedef enum {
  SPV_PLACE_WHOLE,
  SPV_PLACE_CHIEF,  /* the upper third */
  SPV_PLACE_FESS,   /* the middle third */
  SPV_PLACE_BASE,   /* the lower third */
  SPV_PLACE_DEXTER, /* a third of the width */
  SPV_PLACE_SINISTER,
  SPV_PLACE_FIRST_QUARTER, /* dexter chief */
  SPV_PLACE_SECOND_QUARTER,
  SPV_PLACE_THIRD_QUARTER,
  SPV_PLACE_FOURTH_QUARTER
} SpvPlace;

typedef enum {
  SPV_ARRANGEMENT_USUAL, /* on a limb, along it; otherwise in rows: 2; 2 and 1; 3, 2 and 1 … */
  SPV_ARRANGEMENT_ROWS,  /* as the text "rows" says: "2, 1" */
  SPV_ARRANGEMENT_PALE,  /* under one another */
  SPV_ARRANGEMENT_FESS,  /* beside one another */
  SPV_ARRANGEMENT_BEND,
  SPV_ARRANGEMENT_BEND_SINISTER,
  SPV_ARRANGEMENT_CROSS,
  SPV_ARRANGEMENT_SALTIRE,
  SPV_ARRANGEMENT_CHEVRON,
  SPV_ARRANGEMENT_PALL,
  SPV_ARRANGEMENT_ORLE, /* round the edge */
  SPV_ARRANGEMENT_SEMY  /* strewn all over in half-drop rows, cut by the edge */
} SpvArrangement;

extern const char *const spv_place_keys[], *const spv_arrangement_keys[];

/* "3, 2, 1": the numbers of charges in each row, from the top. */
gboolean spv_rows_text_check(const char *text, GError **error);
#define SPV_ROWS_TEXT                                                                                        \
  { "rows", N_("Rows"), N_("How many stand in each row, from the top: 3, 2, 1"), NULL, spv_rows_text_check }

/* Where the charges of PATTERN stand on FRAME: SpvTransform in an array, each from the figure's own unit (see
 * spv_figure_path()) to the frame's mm. As many as PATTERN asks for, but rows, which have as many as their
 * text says, and semy, which has as many as reach the outline (its pitch is widened where that would be more
 * than about 2000). Empty where they have no size. What is not given is chosen so that charges keep clear of
 * one another and of the outline: across and down, where given, then move the middle of them all, and do not
 * change their size. */
GArray *spv_arrange(const SpvPattern *pattern, const SpvFrame *frame);
