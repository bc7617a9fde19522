/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which polygons lie in an area, which outside, and which across its edge. Each is held against the pieces of
 * the area near it only: GEOS's own question to the whole area, where edges touch, costs as much as the area
 * has points, for every polygon. */
#include "geometry/shape-private.h"

/* A piece of the area. */
typedef struct {
  const GEOSGeometry *polygon;
  const GEOSPreparedGeometry *prepared;
  gboolean met; /* a polygon lies across its edge */
} Piece;

typedef enum { OUTSIDE, ACROSS, INSIDE } Place;

static void
free_piece(gpointer data) {
  Piece *piece = data;
  GEOSPreparedGeom_destroy_r(spv_geos(), piece->prepared);
  g_free(piece);
}

static void
free_geometry(gpointer geometry) {
  spv_geos_free(geometry);
}

static GPtrArray *
pieces_new(const GEOSGeometry *area) {
  GPtrArray *pieces = g_ptr_array_new_with_free_func(free_piece);
  g_autoptr(GPtrArray) polygons = spv_geos_polygons(area);
  for (guint i = 0; i < polygons->len; i++) {
    Piece *piece = g_new0(Piece, 1);
    piece->polygon = g_ptr_array_index(polygons, i);
    piece->prepared = GEOSPrepare_r(spv_geos(), piece->polygon);
    g_ptr_array_add(pieces, piece);
  }
  return pieces;
}

static Place
place_at_piece(const Piece *piece, const GEOSGeometry *polygon) {
  if (GEOSPreparedIntersects_r(spv_geos(), piece->prepared, polygon) == 0)
    return OUTSIDE;
  if (GEOSPreparedCovers_r(spv_geos(), piece->prepared, polygon) == 1)
    return INSIDE;
  return GEOSPreparedTouches_r(spv_geos(), piece->prepared, polygon) == 1 ? OUTSIDE : ACROSS;
}

static void
note_near(void *piece, void *near) {
  g_ptr_array_add(near, piece);
}

/* Where POLYGON lies. It is connected and the pieces touch at points at most, so it is inside when one of
 * them holds it. */
static Place
place_of(GEOSSTRtree *tree, const GEOSGeometry *polygon) {
  g_autoptr(GPtrArray) near = g_ptr_array_new();
  Place place = OUTSIDE;

  GEOSSTRtree_query_r(spv_geos(), tree, polygon, note_near, near);
  for (guint i = 0; i < near->len; i++) {
    Piece *piece = g_ptr_array_index(near, i);
    Place here = place_at_piece(piece, polygon);
    if (here == INSIDE)
      return INSIDE;
    if (here == OUTSIDE)
      continue;
    piece->met = TRUE;
    place = ACROSS;
  }
  return place;
}

SpvSorted
spv_geos_sort(GPtrArray *polygons, const GEOSGeometry *area) {
  SpvSorted sorted = { g_ptr_array_new_with_free_func(free_geometry),
                       g_ptr_array_new_with_free_func(free_geometry),
                       g_ptr_array_new_with_free_func(free_geometry), NULL };
  GPtrArray *const where[] = {
    [OUTSIDE] = sorted.outside, [ACROSS] = sorted.across, [INSIDE] = sorted.inside
  };
  g_autoptr(GPtrArray) pieces = pieces_new(area);
  g_autoptr(GPtrArray) met = g_ptr_array_new_with_free_func(free_geometry);
  GEOSSTRtree *tree = GEOSSTRtree_create_r(spv_geos(), 10);
  gsize n = 0;
  gpointer *moved = g_ptr_array_steal(polygons, &n);

  for (guint i = 0; i < pieces->len; i++) {
    Piece *piece = g_ptr_array_index(pieces, i);
    GEOSSTRtree_insert_r(spv_geos(), tree, piece->polygon, piece);
  }
  for (gsize i = 0; i < n; i++)
    g_ptr_array_add(where[place_of(tree, moved[i])], moved[i]);
  g_free(moved);
  GEOSSTRtree_destroy_r(spv_geos(), tree);

  for (guint i = 0; i < pieces->len; i++) {
    const Piece *piece = g_ptr_array_index(pieces, i);
    if (piece->met)
      g_ptr_array_add(met, GEOSGeom_clone_r(spv_geos(), piece->polygon));
  }
  sorted.met = spv_geos_collect(met);
  return sorted;
}

void
spv_sorted_clear(SpvSorted *sorted) {
  g_ptr_array_unref(sorted->inside);
  g_ptr_array_unref(sorted->outside);
  g_ptr_array_unref(sorted->across);
  spv_geos_free(sorted->met);
}
