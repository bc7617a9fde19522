/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the ordinaries share: straight edges and bands that may bear a line of partition, and the frames in
 * which charges stand on them. */
#pragma once

#include "heraldry/lay-private.h"
#include "heraldry/profile-private.h"

/* The measure called KEY of PATTERN in the core's units, or FALLBACK where its kind has none such or it is
 * not given. */
double spv_lay_measure(const SpvPattern *pattern, const SpvOutline *outline, const char *key,
                       double fallback);
/* Whether PATTERN has the choice "charged", and it is chosen. */
gboolean spv_lay_charged(const SpvPattern *pattern, const SpvOutline *outline);

/* A direction to measure along (u, from AT) and across (v: a quarter turn clockwise on screen from it). */
typedef struct {
  SpvPoint at, along; /* ALONG has length 1 */
} SpvAxis;

SpvPoint spv_axis_point(SpvAxis axis, double u, double v);
/* The bounds, x being u and y being v, of the part of OUTLINE where v lies from V0 to V1 (which may be one:
 * then it is a chord). FALSE, and an empty box at V0, where no part does. */
gboolean spv_axis_bounds(SpvAxis axis, const SpvOutline *outline, double v0, double v1, SpvBox *bounds);

/* LINE laid from A to B, whole from S0 to S1 mm from A. Crests to the side that lies clockwise of the way
 * where SIDE is 1, to the other where it is -1. */
SpvPath *spv_edge_lay(const SpvLine *line, SpvPoint a, SpvPoint b, double s0, double s1, double side);
/* How far from a corner, along its edge of LENGTH mm, LINE has to begin to meet its mirror image on the
 * corner's middle, which lies at HALF (radians) to the edge; or, where the corner is a notch and HALF is
 * below 0, to keep clear of it. */
double spv_corner_lead(const SpvLine *line, double length, double half);
/* One edge of such a corner: LINE from AT straight on in DIRECTION (of length 1) until it is past OUTLINE,
 * whole from the corner to where it leaves OUTLINE; before the corner it runs straight back, to be cut. */
SpvPath *spv_corner_edge(const SpvLine *line, const SpvOutline *outline, SpvPoint at, SpvPoint direction,
                         double half, double side);
/* The corner at AT of an area that lies clockwise of the way IN to it and the way OUT from it (of length 1),
 * which turn clockwise; with LINE on both edges, crests outside. */
SpvShape *spv_corner_lay(const SpvLine *line, const SpvOutline *outline, SpvPoint at, SpvPoint in,
                         SpvPoint out);
/* Adds to BUILDER what of AREA lies to the viewer's right of X, and its mirror image in that line. */
void spv_add_mirrored(SpvPathBuilder *builder, const SpvPath *area, double x);

/* The line of PATTERN on an edge SPAN mm long that has room for teeth DEEPEST mm deep: where the painter left
 * their depth open they are no deeper, and where the pitch was left open, too, they keep their shape. */
SpvLine spv_line_with_room(const SpvPattern *pattern, const SpvOutline *outline, double span, double deepest);
/* Whether PROFILE goes back over itself, as nebuly does at its necks. */
gboolean spv_line_folds_back(SpvProfile profile);
/* The same on both edges of a band WIDTH mm wide, half of which stays whole. A line whose two edges run alike
 * has all the room it wants, unless it folds back over itself. */
SpvLine spv_line_on_band(const SpvPattern *pattern, const SpvOutline *outline, double span, double width);

/* A straight band along an axis. */
typedef struct {
  SpvAxis axis;
  double v0, v1;    /* its first and its second edge */
  double u0, u1;    /* where it begins and ends */
  double low, high; /* between which its line is whole */
  SpvLine line;
  SpvBandEdges edges; /* not USUAL */
  gboolean
      blunt; /* before LOW it runs straight, without teeth; its edges mirror each other, whatever the line */
} SpvBand;

/* How far OUTLINE reaches along AXIS and across it, with a margin so that no end of an area shows. */
SpvBox spv_axis_reach(SpvAxis axis, const SpvOutline *outline);
/* The band from V0 to V1 right across OUTLINE; its line is whole on the chord at V. */
SpvBand spv_band_new(SpvAxis axis, const SpvOutline *outline, double v0, double v1, double v);
/* Adds its area, clockwise; nothing where it has no width or no length. */
void spv_band_add(const SpvBand *band, SpvPathBuilder *builder);
/* Adds its two edges to the draft's lines, with the numbers NUMBER and NUMBER + 1. */
void spv_band_add_lines(const SpvBand *band, guint number, SpvDraft *draft);
/* What charges are laid on: the rectangle along the band over its part inside OUTLINE; upright on an upright
 * band. Where the ends are cut aslant it has a spine, too, on which charges keep clear of the cuts. NULL
 * where no part is inside. */
SpvFrame *spv_band_frame(const SpvBand *band, const SpvOutline *outline);

/* The chosen edges, or USUAL where none are. */
SpvBandEdges spv_lay_edges(const SpvPattern *pattern, const SpvOutline *outline, SpvBandEdges usual);

/* An upright frame over the part of BOX that lies inside OUTLINE, with a spine where the edge cuts off a
 * corner that charges have to keep clear of; NULL where none does. */
SpvFrame *spv_frame_in_box(const SpvOutline *outline, SpvBox box);
/* An array for the spines of spv_frame_new_limbs(). */
GPtrArray *spv_spines_new(void);
/* Adds a spine from FROM to TO. Charges stand along it in even spaces. Where several spines begin in one
 * point, as on a cross, that point is a place too: one charge stands there and the rest along the limbs. */
void spv_spines_add(GPtrArray *spines, SpvPoint from, SpvPoint to);
/* The frame of the limbs with SPINES, which is consumed; NULL where there are none. */
SpvFrame *spv_frame_of_limbs(const SpvOutline *outline, GPtrArray *spines, double breadth);

/* An area without anything. */
SpvPath *spv_lay_nothing(void);
