/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Overlay of shapes, and the area that a path fills. GEOS nodes every overlay on the snapping grid, so that
 * two shapes that were cut along one line share that line to the last bit. */
#include "geometry/shape-private.h"

typedef GEOSGeometry *(*OverlayFunc)(GEOSContextHandle_t, const GEOSGeometry *, const GEOSGeometry *, double);

static void
free_geometry(gpointer geometry) {
  spv_geos_free(geometry);
}

/* A OPERATION B; NULL if it fails even on inputs made valid. */
static GEOSGeometry *
overlay(OverlayFunc operation, const GEOSGeometry *a, const GEOSGeometry *b) {
  GEOSGeometry *result = operation(spv_geos(), a, b, SPV_SNAP_GRID);
  if (result != NULL)
    return result;
  g_autoptr(GEOSGeometry) valid_a = GEOSMakeValid_r(spv_geos(), a);
  g_autoptr(GEOSGeometry) valid_b = GEOSMakeValid_r(spv_geos(), b);
  if (valid_a == NULL || valid_b == NULL)
    return NULL;
  return operation(spv_geos(), valid_a, valid_b, SPV_SNAP_GRID);
}

/* Adds the polygons of SHAPE. */
static void
add_pieces(GPtrArray *polygons, const SpvShape *shape) {
  gsize n = 0;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);
  for (gsize i = 0; i < n; i++)
    g_ptr_array_add(polygons, spv_geos_polygon(pieces[i].rings, pieces[i].n_rings));
}

/* Adds copies of the polygons in GEOMETRY, which may be NULL. */
static void
add_polygons(GPtrArray *polygons, const GEOSGeometry *geometry) {
  g_autoptr(GPtrArray) parts = spv_geos_polygons(geometry);
  for (guint i = 0; i < parts->len; i++)
    g_ptr_array_add(polygons, GEOSGeom_clone_r(spv_geos(), g_ptr_array_index(parts, i)));
}

static gboolean
shapes_are_apart(const SpvShape *a, const SpvShape *b) {
  return spv_shape_is_empty(a) || spv_shape_is_empty(b) ||
         !spv_box_overlaps(spv_shape_bounds(a), spv_shape_bounds(b));
}

/* The pieces of A sorted by how they lie to B. */
static SpvSorted
sort_pieces(const SpvShape *a, const SpvShape *b) {
  g_autoptr(GPtrArray) pieces = g_ptr_array_new();
  g_autoptr(GEOSGeometry) area = spv_geos_from_shape(b);
  add_pieces(pieces, a);
  return spv_geos_sort(pieces, area);
}

SpvShape *
spv_shape_intersection(const SpvShape *a, const SpvShape *b) {
  g_return_val_if_fail(a != NULL, NULL);
  g_return_val_if_fail(b != NULL, NULL);

  if (shapes_are_apart(a, b))
    return spv_shape_new_empty();
  g_auto(SpvSorted) sorted = sort_pieces(a, b);
  g_autoptr(GEOSGeometry) across = spv_geos_collect(sorted.across);
  g_autoptr(GEOSGeometry) common = overlay(GEOSIntersectionPrec_r, across, sorted.met);
  add_polygons(sorted.inside, common);
  g_autoptr(GEOSGeometry) all = spv_geos_collect(sorted.inside);
  return spv_geos_to_shape(all);
}

SpvShape *
spv_shape_difference(const SpvShape *a, const SpvShape *b) {
  g_return_val_if_fail(a != NULL, NULL);
  g_return_val_if_fail(b != NULL, NULL);

  if (shapes_are_apart(a, b))
    return spv_shape_ref(a);
  g_auto(SpvSorted) sorted = sort_pieces(a, b);
  g_autoptr(GEOSGeometry) across = spv_geos_collect(sorted.across);
  g_autoptr(GEOSGeometry) rest = overlay(GEOSDifferencePrec_r, across, sorted.met);
  if (rest == NULL)
    return spv_shape_ref(a);
  add_polygons(sorted.outside, rest);
  g_autoptr(GEOSGeometry) all = spv_geos_collect(sorted.outside);
  return spv_geos_to_shape(all);
}

/* The union of POLYGONS that meet along whole edges only, such as all cells of a grid: the edges that two
 * share are dropped, which is far quicker than to node them. NULL where the polygons meet in another way. */
static GEOSGeometry *
join_matching(const GEOSGeometry *polygons) {
  g_autoptr(GEOSGeometry) joined = GEOSCoverageUnion_r(spv_geos(), polygons);
  if (joined == NULL || GEOSisValid_r(spv_geos(), joined) != 1)
    return NULL;
  double parts = 0, whole = 0;
  GEOSArea_r(spv_geos(), polygons, &parts);
  GEOSArea_r(spv_geos(), joined, &whole);
  return fabs(whole - parts) <= 1e-12 * parts ? g_steal_pointer(&joined) : NULL;
}

/* The union of POLYGONS, each joined to what there is so far; one with which that fails is left out. */
static GEOSGeometry *
join_one_by_one(const GEOSGeometry *polygons) {
  GEOSGeometry *joined = NULL;
  g_autoptr(GPtrArray) parts = spv_geos_polygons(polygons);
  for (guint i = 0; i < parts->len; i++) {
    const GEOSGeometry *part = g_ptr_array_index(parts, i);
    GEOSGeometry *more = joined == NULL ? spv_geos_join(part) : overlay(GEOSUnionPrec_r, joined, part);
    if (more == NULL)
      continue;
    g_clear_pointer(&joined, spv_geos_free);
    joined = more;
  }
  return joined;
}

/* The union of POLYGONS, which are moved into it; NULL when there are none. Polygons that meet at corners at
 * most, as a check's cells do, are their own union: to know that is far quicker than to join them. */
static GEOSGeometry *
join(GPtrArray *polygons) {
  if (polygons->len == 0)
    return NULL;
  g_autoptr(GEOSGeometry) all = spv_geos_collect(polygons);
  if (GEOSisValid_r(spv_geos(), all) == 1)
    return g_steal_pointer(&all);
  GEOSGeometry *joined = join_matching(all);
  if (joined == NULL)
    joined = spv_geos_join(all);
  return joined != NULL ? joined : join_one_by_one(all);
}

/* One of the shapes to be joined, ready to be asked what meets it. */
typedef struct {
  SpvBox bounds;
  GEOSGeometry *area;
  const GEOSPreparedGeometry *prepared;
} Meeting;

static void
meeting_clear(gpointer data) {
  Meeting *meeting = data;

  GEOSPreparedGeom_destroy_r(spv_geos(), meeting->prepared);
  spv_geos_free(meeting->area);
}

static GArray *
meetings_new(const SpvShape *const *shapes, gsize n) {
  GArray *meetings = g_array_new(FALSE, FALSE, sizeof(Meeting));

  g_array_set_clear_func(meetings, meeting_clear);
  for (gsize i = 0; i < n; i++) {
    Meeting meeting = { spv_shape_bounds(shapes[i]), spv_geos_from_shape(shapes[i]), NULL };
    meeting.prepared = GEOSPrepare_r(spv_geos(), meeting.area);
    g_array_append_val(meetings, meeting);
  }
  return meetings;
}

/* Whether a shape other than the one at INDEX meets PIECE, which is POLYGON; or may, where GEOS can't say. */
static gboolean
meets_another(const GArray *meetings, gsize index, const SpvPiece *piece, const GEOSGeometry *polygon) {
  SpvBox box = spv_box_grow(spv_ring_bounds(piece->rings[0]), SPV_SNAP_GRID);

  for (guint i = 0; i < meetings->len; i++) {
    const Meeting *meeting = &g_array_index(meetings, Meeting, i);
    if (i != index && spv_box_overlaps(box, meeting->bounds) &&
        GEOSPreparedIntersects_r(spv_geos(), meeting->prepared, polygon) != 0)
      return TRUE;
  }
  return FALSE;
}

/* With more shapes than this, to ask each about each would cost more than to join them. */
#define MANY_SHAPES 64

/* Pieces that meet none of another shape are left as they are: most cells of a check are such, and to join
 * thousands of them would cost many seconds. */
SpvShape *
spv_shape_union(const SpvShape *const *shapes, gsize n) {
  g_return_val_if_fail(shapes != NULL || n == 0, NULL);

  gboolean many = n > MANY_SHAPES;
  g_autoptr(GArray) meetings = meetings_new(shapes, many ? 0 : n);
  g_autoptr(GPtrArray) alone = g_ptr_array_new_with_free_func(free_geometry);
  g_autoptr(GPtrArray) meeting = g_ptr_array_new_with_free_func(free_geometry);
  for (gsize i = 0; i < n; i++) {
    gsize n_pieces = 0;
    const SpvPiece *pieces = spv_shape_pieces(shapes[i], &n_pieces);
    for (gsize k = 0; k < n_pieces; k++) {
      GEOSGeometry *polygon = spv_geos_polygon(pieces[k].rings, pieces[k].n_rings);
      gboolean meets = many || meets_another(meetings, i, &pieces[k], polygon);
      g_ptr_array_add(meets ? meeting : alone, polygon);
    }
  }
  g_autoptr(GEOSGeometry) joined = join(meeting);
  add_polygons(alone, joined);
  g_autoptr(GEOSGeometry) all = spv_geos_collect(alone);
  return spv_geos_to_shape(all);
}

/* What RING, which crosses itself, fills by the non-zero rule: the faces of its linework round which it
 * winds. */
static GEOSGeometry *
untangle(const SpvRing *ring, const GEOSGeometry *polygon) {
  g_autoptr(GEOSGeometry) edge = GEOSBoundary_r(spv_geos(), polygon);
  g_autoptr(GEOSGeometry) noded = edge == NULL ? NULL : GEOSUnaryUnionPrec_r(spv_geos(), edge, SPV_SNAP_GRID);
  if (noded == NULL)
    return NULL;
  const GEOSGeometry *lines[] = { noded };
  g_autoptr(GEOSGeometry) faces = GEOSPolygonize_r(spv_geos(), lines, 1);
  g_autoptr(GPtrArray) all = spv_geos_polygons(faces);
  g_autoptr(GPtrArray) filled = g_ptr_array_new_with_free_func(free_geometry);
  for (guint i = 0; i < all->len; i++) {
    const GEOSGeometry *face = g_ptr_array_index(all, i);
    g_autoptr(GEOSGeometry) inside = GEOSPointOnSurface_r(spv_geos(), face);
    SpvPoint p = { 0, 0 };
    if (inside == NULL || !GEOSGeomGetX_r(spv_geos(), inside, &p.x) ||
        !GEOSGeomGetY_r(spv_geos(), inside, &p.y))
      continue;
    if (spv_ring_winding(ring, p) != 0)
      g_ptr_array_add(filled, GEOSGeom_clone_r(spv_geos(), face));
  }
  return join(filled);
}

/* What RING fills, its points on the snapping grid; NULL when that is nothing. */
static GEOSGeometry *
fill_ring(const SpvRing *ring) {
  g_autoptr(SpvRing) snapped = spv_ring_snap(ring);
  if (snapped == NULL)
    return NULL;
  g_autoptr(GEOSGeometry) polygon = spv_geos_polygon(&snapped, 1);
  if (polygon == NULL || GEOSisValid_r(spv_geos(), polygon) == 1)
    return g_steal_pointer(&polygon);
  return untangle(snapped, polygon);
}

SpvShape *
spv_shape_new_from_path(const SpvPath *path) {
  g_return_val_if_fail(path != NULL, NULL);

  g_autoptr(GPtrArray) rings = spv_path_flatten(path, SPV_CHORD_ERROR);
  g_autoptr(GPtrArray) added = g_ptr_array_new_with_free_func(free_geometry);
  g_autoptr(GPtrArray) cut = g_ptr_array_new_with_free_func(free_geometry);
  for (guint i = 0; i < rings->len; i++) {
    const SpvRing *ring = g_ptr_array_index(rings, i);
    g_autoptr(GEOSGeometry) filled = fill_ring(ring);
    /* A bow-tie's lobes cancel but for rounding: it adds. */
    gboolean adds = spv_ring_area(ring) > -SPV_SNAP_GRID * spv_ring_length(ring);
    add_polygons(adds ? added : cut, filled);
  }
  g_autoptr(GEOSGeometry) area = join(added);
  g_autoptr(GEOSGeometry) hole = join(cut);
  if (area == NULL || hole == NULL)
    return spv_geos_to_shape(area);
  g_autoptr(GEOSGeometry) rest = overlay(GEOSDifferencePrec_r, area, hole);
  return spv_geos_to_shape(rest != NULL ? rest : area);
}

SpvShape *
spv_shape_clip_cells(const SpvShape *outline, GPtrArray *cells) {
  g_return_val_if_fail(outline != NULL, NULL);
  g_return_val_if_fail(cells != NULL, NULL);

  if (spv_shape_is_empty(outline) || cells->len == 0)
    return spv_shape_new_empty();
  g_autoptr(GEOSGeometry) whole = spv_geos_from_shape(outline);
  g_autoptr(GPtrArray) polygons = g_ptr_array_new_with_free_func(free_geometry);
  for (guint i = 0; i < cells->len; i++) {
    const SpvRing *cell = g_ptr_array_index(cells, i);
    g_autoptr(SpvRing) snapped = spv_ring_snap(cell);
    if (snapped != NULL && spv_box_overlaps(spv_shape_bounds(outline), spv_ring_bounds(cell)))
      g_ptr_array_add(polygons, spv_geos_polygon(&snapped, 1));
  }
  g_auto(SpvSorted) sorted = spv_geos_sort(polygons, whole);
  g_autoptr(GEOSGeometry) joined = join(sorted.across);
  g_autoptr(GEOSGeometry) clipped = joined == NULL ? NULL
                                                   : overlay(GEOSIntersectionPrec_r, sorted.met, joined);
  add_polygons(sorted.inside, clipped);
  g_autoptr(GEOSGeometry) all = join(sorted.inside);
  return spv_geos_to_shape(all);
}
