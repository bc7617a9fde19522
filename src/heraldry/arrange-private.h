/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the ways of arranging charges share. */
#pragma once

#include "heraldry/arrange.h"

/* How much of the room between two charges, or from one to the edge, they take where no size is given. */
#define SPV_ARRANGE_NEIGHBOURS 0.8
#define SPV_ARRANGE_EDGE 0.85

/* Where charges may stand, and the figure that stands there. */
typedef struct {
  SpvShape *within; /* the part of the outline; a reference */
  SpvBox box;       /* its bounds */
  SpvPoint half;    /* half the width and height of the figure as it is turned, of its own size */
  GArray *points;   /* SpvPoint: of the figure's edge as it is turned, of its own size; a reference */
  double reach;     /* how far it reaches from its middle, of its own size */
  double cap;       /* mm: the largest size that looks right here */
  double spacing;   /* mm, as given; 0: not given */
  gboolean band; /* a long ordinary: charges stand in one line, off its ends, which the panel's edge cuts */
} SpvArrangeRoom;

/* The largest size that looks right for the figures at CENTRES (SpvPoint), each clear of the others and of
 * the edge; 0 or less where a centre lies outside. */
double spv_arrange_size(const SpvArrangeRoom *room, const GArray *centres);
/* How far POINT lies inside the edge, mm; negative outside. */
double spv_arrange_clearance(const SpvArrangeRoom *room, SpvPoint point);

/* The centres of charges in N_ROWS rows of ROWS charges each, from the top, as far apart as lets them be
 * large. */
GArray *spv_arrange_rows(const SpvArrangeRoom *room, const guint *rows, guint n_rows);
/* N charges from the upper to the lower end of the box's diagonal: from dexter, or from sinister. */
GArray *spv_arrange_diagonal(const SpvArrangeRoom *room, guint n, gboolean from_sinister);
/* N charges on arms that meet: as of a cross, a saltire, a chevron or a pall. */
GArray *spv_arrange_arms(const SpvArrangeRoom *room, SpvArrangement arrangement, guint n);
/* N charges on the SPINES (SpvTrack) of an ordinary. */
GArray *spv_arrange_spines(const SpvArrangeRoom *room, GPtrArray *spines, double breadth, guint n);
/* N charges round the edge, SIZE mm large, or as large as looks right where SIZE is 0. */
GArray *spv_arrange_orle(const SpvArrangeRoom *room, guint n, double size);
/* Charges of SIZE mm strewn PITCH mm apart, every second column dropped by half, with one at ORIGIN: all that
 * reach the part. */
GArray *spv_arrange_semy(const SpvArrangeRoom *room, double pitch, double size, SpvPoint origin);
