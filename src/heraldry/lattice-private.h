/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Families of parallel lines, two of which make a lattice: what bars and bends, lozenges and laces share. */
#pragma once

#include "heraldry/lay-private.h"

/* Line i is where a point's component along NORMAL (of length 1) is FIRST + i · STEP. */
typedef struct {
  SpvPoint normal;
  double first, step;
} SpvParallels;

/* How far the outline reaches along DIRECTION. */
void spv_outline_extent(const SpvOutline *outline, SpvPoint direction, double *low, double *high);
/* The point with the component A_AT along A and B_AT along B, which are of length 1 and not parallel. The
 * same numbers give the same point to the last bit, so that cells which share a corner share it exactly. */
SpvPoint spv_lattice_corner(SpvPoint a, double a_at, SpvPoint b, double b_at);
/* The parallelogram between two lines of family A, at A0 < A1, and two of family B, clockwise. FALSE when no
 * part of it is within BOX. */
gboolean spv_lattice_cell(SpvPoint a, double a0, double a1, SpvPoint b, double b0, double b1, SpvBox box,
                          SpvPoint corners[4]);
/* Which lines of FAMILY cross the outline: those from *FROM to before *TO. */
void spv_parallels_range(const SpvParallels *family, const SpvOutline *outline, int *from, int *to);
/* Adds these lines to DRAFT, numbered from NUMBER + 1 on; returns the last number. */
guint spv_parallels_rule(const SpvParallels *family, const SpvOutline *outline, SpvLineKind kind,
                         guint number, SpvDraft *draft);

/* The two families in which the sides of lozenges lie, so many in a row across the panel with their sides
 * falling at ANGLE. They have the same step. Where the lozenges would be lower than a hand could paint them,
 * they are wider than asked for. The first line of each runs through ORIGIN. */
void spv_lattice_lozenges(const SpvOutline *outline, double columns, double angle, SpvParallels families[2]);
void spv_lattice_through(SpvParallels families[2], SpvPoint origin);
