/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The passage to GEOS and back: one context a thread, rings to polygons, polygons to rings. */
#include "geometry/shape-private.h"

static void
ignore_message(const char *message, void *data) {
  (void) message;
  (void) data;
}

static void
free_context(gpointer context) {
  GEOS_finish_r(context);
}

GEOSContextHandle_t
spv_geos(void) {
  static GPrivate kept = G_PRIVATE_INIT(free_context);
  GEOSContextHandle_t context = g_private_get(&kept);
  if (context != NULL)
    return context;
  context = GEOS_init_r();
  GEOSContext_setNoticeMessageHandler_r(context, ignore_message, NULL);
  GEOSContext_setErrorMessageHandler_r(context, ignore_message, NULL);
  g_private_set(&kept, context);
  return context;
}

static GEOSGeometry *
linear_ring(const SpvRing *ring) {
  gsize n = ring->n_points;
  g_autofree double *xy = g_new(double, 2 * (n + 1));
  for (gsize i = 0; i <= n; i++) {
    xy[2 * i] = ring->points[i % n].x;
    xy[2 * i + 1] = ring->points[i % n].y;
  }
  return GEOSGeom_createLinearRing_r(
      spv_geos(), GEOSCoordSeq_copyFromBuffer_r(spv_geos(), xy, (unsigned) (n + 1), FALSE, FALSE));
}

GEOSGeometry *
spv_geos_polygon(SpvRing *const *rings, gsize n) {
  g_autofree GEOSGeometry **holes = g_new(GEOSGeometry *, n);
  for (gsize i = 1; i < n; i++)
    holes[i - 1] = linear_ring(rings[i]);
  return GEOSGeom_createPolygon_r(spv_geos(), linear_ring(rings[0]), holes, (unsigned) (n - 1));
}

GEOSGeometry *
spv_geos_collect(GPtrArray *polygons) {
  gsize n = 0;
  gpointer *moved = g_ptr_array_steal(polygons, &n);
  GEOSGeometry *collection = GEOSGeom_createCollection_r(spv_geos(), GEOS_MULTIPOLYGON,
                                                         (GEOSGeometry **) moved, (unsigned) n);
  g_free(moved);
  return collection;
}

GEOSGeometry *
spv_geos_from_shape(const SpvShape *shape) {
  gsize n = 0;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);
  g_autoptr(GPtrArray) polygons = g_ptr_array_sized_new((guint) n);
  for (gsize i = 0; i < n; i++)
    g_ptr_array_add(polygons, spv_geos_polygon(pieces[i].rings, pieces[i].n_rings));
  return spv_geos_collect(polygons);
}

static void
add_polygons(const GEOSGeometry *geometry, GPtrArray *polygons) {
  int type = GEOSGeomTypeId_r(spv_geos(), geometry);
  if (type == GEOS_POLYGON && !GEOSisEmpty_r(spv_geos(), geometry))
    g_ptr_array_add(polygons, (gpointer) geometry);
  if (type != GEOS_MULTIPOLYGON && type != GEOS_GEOMETRYCOLLECTION)
    return;
  int n = GEOSGetNumGeometries_r(spv_geos(), geometry);
  for (int i = 0; i < n; i++)
    add_polygons(GEOSGetGeometryN_r(spv_geos(), geometry, i), polygons);
}

GPtrArray *
spv_geos_polygons(const GEOSGeometry *geometry) {
  GPtrArray *polygons = g_ptr_array_new();
  if (geometry != NULL)
    add_polygons(geometry, polygons);
  return polygons;
}

/* LINE, a GEOS ring, as a ring of ours, turned so that it is clockwise on screen or not. */
static SpvRing *
ring_from_geos(const GEOSGeometry *line, gboolean clockwise) {
  const GEOSCoordSequence *sequence = GEOSGeom_getCoordSeq_r(spv_geos(), line);
  unsigned n = 0;
  GEOSCoordSeq_getSize_r(spv_geos(), sequence, &n);
  g_autofree double *xy = g_new(double, 2 * (gsize) n);
  GEOSCoordSeq_copyToBuffer_r(spv_geos(), sequence, xy, FALSE, FALSE);

  g_autofree SpvPoint *points = g_new(SpvPoint, n);
  for (unsigned i = 0; i < n; i++)
    points[i] = spv_point(xy[2 * i], xy[2 * i + 1]);
  SpvRing *ring = spv_ring_new(points, n > 0 ? n - 1 : 0);
  if ((spv_ring_area(ring) > 0) != clockwise)
    for (gsize i = 0, j = ring->n_points; i + 1 < j; i++) {
      SpvPoint p = ring->points[i];
      ring->points[i] = ring->points[--j];
      ring->points[j] = p;
    }
  return ring;
}

static SpvPiece
piece_from_geos(const GEOSGeometry *polygon) {
  int n_holes = GEOSGetNumInteriorRings_r(spv_geos(), polygon);
  SpvPiece piece = { g_new(SpvRing *, 1 + (gsize) n_holes), 1 + (gsize) n_holes };
  piece.rings[0] = ring_from_geos(GEOSGetExteriorRing_r(spv_geos(), polygon), TRUE);
  for (int i = 0; i < n_holes; i++)
    piece.rings[i + 1] = ring_from_geos(GEOSGetInteriorRingN_r(spv_geos(), polygon, i), FALSE);
  return piece;
}

SpvShape *
spv_geos_to_shape(const GEOSGeometry *geometry) {
  GArray *pieces = g_array_new(FALSE, FALSE, sizeof(SpvPiece));
  if (geometry != NULL) {
    g_autoptr(GEOSGeometry) ordered = GEOSGeom_clone_r(spv_geos(), geometry);
    GEOSNormalize_r(spv_geos(), ordered);
    g_autoptr(GPtrArray) polygons = spv_geos_polygons(ordered);
    for (guint i = 0; i < polygons->len; i++) {
      SpvPiece piece = piece_from_geos(g_ptr_array_index(polygons, i));
      g_array_append_val(pieces, piece);
    }
  }
  return spv_shape_new_take(pieces);
}

SpvRing *
spv_ring_snap(const SpvRing *ring) {
  const double scale = 1 / SPV_SNAP_GRID;
  g_autofree SpvPoint *points = g_new(SpvPoint, ring->n_points);
  gsize n = 0;
  for (gsize i = 0; i < ring->n_points; i++) {
    SpvPoint p = { round(ring->points[i].x * scale) / scale, round(ring->points[i].y * scale) / scale };
    if (n == 0 || spv_point_distance(p, points[n - 1]) > SPV_SNAP_GRID / 2)
      points[n++] = p;
  }
  while (n > 1 && spv_point_distance(points[0], points[n - 1]) <= SPV_SNAP_GRID / 2)
    n--;
  return n < 3 ? NULL : spv_ring_new(points, n);
}

GEOSGeometry *
spv_geos_join(const GEOSGeometry *geometry) {
  GEOSGeometry *joined = GEOSUnaryUnionPrec_r(spv_geos(), geometry, SPV_SNAP_GRID);
  if (joined != NULL)
    return joined;
  g_autoptr(GEOSGeometry) valid = GEOSMakeValid_r(spv_geos(), geometry);
  return valid == NULL ? NULL : GEOSUnaryUnionPrec_r(spv_geos(), valid, SPV_SNAP_GRID);
}
