/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A polyline measured along its length: the painter's string laid on an edge. Sealed and counted. */
#pragma once

#include "geometry/path.h"

typedef struct _SpvTrack SpvTrack;

/* A track through N points (at least 2), closed or open; repeated points are dropped. Where
 * all are one point the track has no length: every S is that point, and the tangent is taken to run to the
 * right. */
SpvTrack *spv_track_new(const SpvPoint *points, gsize n, gboolean closed);
SpvTrack *spv_track_ref(const SpvTrack *track);
void spv_track_unref(SpvTrack *track);

double spv_track_length(const SpvTrack *track);
gboolean spv_track_is_closed(const SpvTrack *track);
const SpvPoint *spv_track_points(const SpvTrack *track, gsize *n);

/* The point S mm along. A closed track wraps; an open one runs on straight past its ends. */
SpvPoint spv_track_at(const SpvTrack *track, double s);

/* The unit normal at S: the tangent turned by a quarter clockwise on screen, so it points inward on a ring of
 * positive area. It turns evenly about the point between two segments, over half of the shorter one on either
 * side, so that a flattened curve has the curve's own normals and a long straight keeps its own; at a corner
 * sharper than 20 degrees the segment's own normal holds up to the corner, and the corner itself takes the
 * bisector. */
SpvPoint spv_track_normal(const SpvTrack *track, double s);

/* How far along the nearest place to POINT lies; its distance goes to DISTANCE unless NULL. The first of
 * equals wins. */
double spv_track_locate(const SpvTrack *track, SpvPoint point, double *distance);

/* The part from S0 to S1 (S1 > S0; a closed track wraps) as an open track with the same points between. */
SpvTrack *spv_track_part(const SpvTrack *track, double s0, double s1);

/* Where the straight line through A and B crosses the track: an array of doubles, distances along, in the
 * order in which they come along the line from A towards B (before A and after B too). A touch without a
 * crossing isn't counted; a crossing that runs along the line for a while counts once, at its middle. Empty
 * when A and B are one point. */
GArray *spv_track_crossings(const SpvTrack *track, SpvPoint a, SpvPoint b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvTrack, spv_track_unref)
