/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of this room share about shapes: how one is made, and its passage to GEOS and back. */
#pragma once

#include <geos_c.h>

#include "geometry/shape.h"

/* A part smaller than this, mm², is what rounding left over. */
#define SPV_DUST_AREA 1e-9

/* This thread's GEOS context. It prints nothing; a failed call returns NULL (or 2) and no more. */
GEOSContextHandle_t spv_geos(void);

static inline void
spv_geos_free(GEOSGeometry *geometry) {
  GEOSGeom_destroy_r(spv_geos(), geometry);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC(GEOSGeometry, spv_geos_free)

/* The polygon of the first ring with the others as its holes. */
GEOSGeometry *spv_geos_polygon(SpvRing *const *rings, gsize n);
/* A multipolygon of all of SHAPE's pieces; it may be empty. */
GEOSGeometry *spv_geos_from_shape(const SpvShape *shape);
/* Moves the polygons into one multipolygon, which need not be valid. */
GEOSGeometry *spv_geos_collect(GPtrArray *polygons);
/* Every polygon in GEOMETRY, however deep; lines and points are left out. Borrowed from GEOMETRY. */
GPtrArray *spv_geos_polygons(const GEOSGeometry *geometry);
/* The polygons of GEOMETRY as a shape, in a canonical order. NULL gives the empty shape. */
SpvShape *spv_geos_to_shape(const GEOSGeometry *geometry);
/* RING with its points on the snapping grid and none repeated; NULL if fewer than 3 are left. */
SpvRing *spv_ring_snap(const SpvRing *ring);
/* The union of the polygons in GEOMETRY, noded on the snapping grid. GEOS copies a polygon that meets no
 * other as it is, so their points must lie on the grid already. NULL if GEOS fails. */
GEOSGeometry *spv_geos_join(const GEOSGeometry *geometry);
/* GEOMETRY grown or shrunk (DISTANCE < 0), not snapped; joins and caps stray from the disc by at most
 * CHORD_ERROR mm. NULL if GEOS fails. */
GEOSGeometry *spv_geos_offset(const GEOSGeometry *geometry, double distance, double chord_error);
/* A point in the middle of GEOMETRY's largest polygon; (0, 0) if there is none. */
SpvPoint spv_geos_inner_point(const GEOSGeometry *geometry);
/* The radius and the centre of the largest disc in the polygon GEOMETRY, looked for between 0 and LIMIT mm
 * and found within PRECISION: the middle of what the deepest erosion leaves. */
double spv_geos_inscribed(const GEOSGeometry *geometry, double limit, double precision, SpvPoint *centre);

/* Polygons sorted by how they lie to an area; each array owns its own. */
typedef struct {
  GPtrArray *inside, *outside, *across;
  GEOSGeometry *met; /* the pieces of the area across whose edges some lie: all that those need to be overlaid
                        with */
} SpvSorted;

/* Sorts POLYGONS, which are moved, by how they lie to AREA, a valid multipolygon. */
SpvSorted spv_geos_sort(GPtrArray *polygons, const GEOSGeometry *area);
void spv_sorted_clear(SpvSorted *sorted);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(SpvSorted, spv_sorted_clear)

/* Takes over PIECES, an array of SpvPiece whose rings are oriented as the header says. */
SpvShape *spv_shape_new_take(GArray *pieces);
