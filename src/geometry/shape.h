/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A flat area as polygons with holes, and exact overlay of such areas (GEOS does the work). Sealed and
 * counted; safe to read from any thread. Every coordinate lies on the snapping grid, so no result holds a
 * sliver thinner than the grid. */
#pragma once

#include "geometry/path.h"

/* The grid on which overlays are noded, mm. Fine enough that a panel's regions add up to the panel within
 * 1e-9 of its area, coarse enough to close the cracks that double rounding leaves. */
#define SPV_SNAP_GRID 1e-10

typedef struct _SpvShape SpvShape;

/* One connected piece: the outer ring (positive area), then its holes (negative area). */
typedef struct {
  SpvRing **rings;
  gsize n_rings; /* at least 1 */
} SpvPiece;

SpvShape *spv_shape_new_empty(void);
/* The area that PATH fills. Runs may overlap and cross themselves: clockwise runs are joined, the others cut
 * from the result, each run taken by the non-zero rule (a run whose loops cancel, such as a bow-tie, is
 * joined). Runs without area fill nothing. */
SpvShape *spv_shape_new_from_path(const SpvPath *path);
SpvShape *spv_shape_ref(const SpvShape *shape);
void spv_shape_unref(SpvShape *shape);

/* Overlay. Where GEOS fails even on inputs made valid, the result is the nearest that can be had: the empty
 * shape for an intersection, A for a difference, a union without the shape that failed. */
SpvShape *spv_shape_intersection(const SpvShape *a, const SpvShape *b);
SpvShape *spv_shape_difference(const SpvShape *a, const SpvShape *b);
/* The union of N shapes (0 gives the empty shape). */
SpvShape *spv_shape_union(const SpvShape *const *shapes, gsize n);
/* The part of the many small convex cells (GPtrArray of SpvRing, disjoint but for touching edges and corners)
 * inside OUTLINE. The same as intersecting their union, but only cells that meet the outline's edge cost an
 * overlay. */
SpvShape *spv_shape_clip_cells(const SpvShape *outline, GPtrArray *cells);
/* Grown (DISTANCE > 0) or shrunk (< 0) by DISTANCE mm, as a disc of that radius would: round joins within
 * SPV_CHORD_ERROR. Where GEOS fails, a shape that should grow stays as it is and one that should shrink is
 * gone. */
SpvShape *spv_shape_offset(const SpvShape *shape, double distance);

gboolean spv_shape_is_empty(const SpvShape *shape);
/* mm². */
double spv_shape_area(const SpvShape *shape);
SpvBox spv_shape_bounds(const SpvShape *shape);
gboolean spv_shape_contains(const SpvShape *shape, SpvPoint point);
/* Connected pieces, owned by SHAPE; pieces that touch at a corner only are apart. */
const SpvPiece *spv_shape_pieces(const SpvShape *shape, gsize *n);
/* One piece as a shape of its own. */
SpvShape *spv_shape_piece(const SpvShape *shape, gsize index);
/* The same area as a path of straight runs, outer rings clockwise, holes the other way. */
SpvPath *spv_shape_to_path(const SpvShape *shape);
/* A place well inside: the centre of the largest inscribed circle of the largest piece; its radius, mm, goes
 * to RADIUS unless NULL. (0, 0) and 0 when empty. Exact within 0.001 mm. */
SpvPoint spv_shape_middle(const SpvShape *shape, double *radius);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvShape, spv_shape_unref)
