/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The narrowest place of a piece, by erosion. */
#include "geometry/width.h"

#include "geometry/shape-private.h"

/* How closely the threshold is bracketed, and how far an erosion's arcs may stray, mm: together below the
 * 0.002 that the header promises. */
#define PRECISION 0.0005
#define CHORD_ERROR 1e-4

/* Parts that hang together by less than this touch at a corner only, mm. */
#define HAIR 1e-6

/* The search steps upward from FIRST mm, each disc RATIO times the last, before it looks closer. It isn't so
 * that every smaller disc leaves the piece whole and every larger one breaks it: past the waist the lesser
 * part may vanish, and what is left is whole again. */
#define FIRST 0.02
#define RATIO 1.08

/* What lies farther than this many steps' growth from all that a step left has vanished at once: an arm, not
 * the tip of a tooth, which draws back evenly (unless its sides meet at less than 6 degrees). */
#define REACH 10

/* An arm must be this even: half of it is still there at this part of the width where all but a tenth is
 * gone. */
#define EVEN 0.8

/* How many of the parts are held against each other for the place of the waist. */
#define MAX_PARTS 16

static int
compare_area(gconstpointer a, gconstpointer b) {
  double first = 0, second = 0;
  GEOSArea_r(spv_geos(), *(GEOSGeometry *const *) a, &first);
  GEOSArea_r(spv_geos(), *(GEOSGeometry *const *) b, &second);
  return (first < second) - (first > second);
}

/* The parts of GEOMETRY that aren't dust, largest first; borrowed. */
static GPtrArray *
real_parts(const GEOSGeometry *geometry) {
  GPtrArray *parts = spv_geos_polygons(geometry);
  for (guint i = parts->len; i > 0; i--) {
    double area = 0;
    GEOSArea_r(spv_geos(), g_ptr_array_index(parts, i - 1), &area);
    if (area < SPV_DUST_AREA)
      g_ptr_array_remove_index(parts, i - 1);
  }
  g_ptr_array_sort(parts, compare_area);
  return parts;
}

/* What is left of POLYGON under a disc of diameter WIDTH; the empty polygon if GEOS fails. */
static GEOSGeometry *
erode(const GEOSGeometry *polygon, double width) {
  GEOSGeometry *rest = spv_geos_offset(polygon, -width / 2, CHORD_ERROR);
  return rest != NULL ? rest : GEOSGeom_createEmptyPolygon_r(spv_geos());
}

static guint
count_parts(const GEOSGeometry *geometry) {
  g_autoptr(GPtrArray) parts = real_parts(geometry);
  return parts->len;
}

/* The distance between A and B; the middle of the gap goes to PLACE. */
static double
gap_between(const GEOSGeometry *a, const GEOSGeometry *b, SpvPoint *place) {
  GEOSCoordSequence *ends = GEOSNearestPoints_r(spv_geos(), a, b);
  if (ends == NULL)
    return INFINITY;
  SpvPoint p = { 0, 0 }, q = { 0, 0 };
  GEOSCoordSeq_getXY_r(spv_geos(), ends, 0, &p.x, &p.y);
  GEOSCoordSeq_getXY_r(spv_geos(), ends, 1, &q.x, &q.y);
  GEOSCoordSeq_destroy_r(spv_geos(), ends);
  *place = spv_point_between(p, q, 0.5);
  return spv_point_distance(p, q);
}

/* The middle between the two nearest parts of BROKEN. */
static void
find_gap(const GEOSGeometry *broken, SpvPoint *place) {
  g_autoptr(GPtrArray) parts = real_parts(broken);
  double nearest = INFINITY;
  for (guint i = 1; i < MIN(parts->len, MAX_PARTS); i++)
    for (guint j = 0; j < i; j++) {
      SpvPoint middle;
      double gap = gap_between(g_ptr_array_index(parts, i), g_ptr_array_index(parts, j), &middle);
      if (gap < nearest) {
        nearest = gap;
        *place = middle;
      }
    }
}

/* The thinnest wall round or between the holes of POLYGON: an erosion opens it when its disc is as wide.
 * Rings that touch at a corner leave no wall to paint. INFINITY without holes. */
static double
thinnest_wall(const GEOSGeometry *polygon, SpvPoint *place) {
  int n_holes = GEOSGetNumInteriorRings_r(spv_geos(), polygon);
  double thinnest = INFINITY;
  for (int i = 0; i < n_holes; i++)
    for (int j = -1; j < i; j++) {
      const GEOSGeometry *other = j < 0 ? GEOSGetExteriorRing_r(spv_geos(), polygon)
                                        : GEOSGetInteriorRingN_r(spv_geos(), polygon, j);
      SpvPoint middle;
      double wall = gap_between(GEOSGetInteriorRingN_r(spv_geos(), polygon, i), other, &middle);
      if (wall > HAIR && wall < thinnest) {
        thinnest = wall;
        *place = middle;
      }
    }
  return thinnest;
}

/* The least disc between LOW, which leaves POLYGON in one part, and HIGH, which does not. */
static double
split_width(const GEOSGeometry *polygon, double low, double high, SpvPoint *place) {
  while (high - low > PRECISION) {
    double middle = (low + high) / 2;
    g_autoptr(GEOSGeometry) rest = erode(polygon, middle);
    if (count_parts(rest) > 1)
      high = middle;
    else
      low = middle;
  }
  g_autoptr(GEOSGeometry) broken = erode(polygon, high);
  find_gap(broken, place);
  return (low + high) / 2;
}

static double
perimeter(const GEOSGeometry *geometry) {
  double length = 0;
  GEOSLength_r(spv_geos(), geometry, &length);
  return length;
}

/* The disc between LOW and HIGH under which SHARE of the length of ARM, a part of POLYGON under LOW, is left.
 */
static double
arm_width(const GEOSGeometry *polygon, const GEOSGeometry *arm, double share, double low, double high,
          SpvPoint *place) {
  while (high - low > PRECISION) {
    double middle = (low + high) / 2;
    g_autoptr(GEOSGeometry) rest = erode(polygon, middle);
    g_autoptr(GEOSGeometry) left = GEOSIntersection_r(spv_geos(), rest, arm);
    if (left != NULL && perimeter(left) >= share * perimeter(arm)) {
      low = middle;
      *place = spv_geos_inner_point(left);
    } else {
      high = middle;
    }
  }
  return (low + high) / 2;
}

/* The narrowest arm that is there in BEFORE, POLYGON under LOW, and gone in AFTER, POLYGON under HIGH;
 * INFINITY if no arm is. */
static double
vanished_arm(const GEOSGeometry *polygon, const GEOSGeometry *before, const GEOSGeometry *after, double low,
             double high, SpvPoint *place) {
  double reach = REACH * (high - low);
  if (perimeter(before) - perimeter(after) < 2 * reach)
    return INFINITY;
  g_autoptr(GEOSGeometry) near = spv_geos_offset(after, reach, reach / 100);
  g_autoptr(GEOSGeometry) gone = near == NULL ? NULL : GEOSDifference_r(spv_geos(), before, near);
  g_autoptr(GPtrArray) arms = spv_geos_polygons(gone);
  double narrowest = INFINITY;
  for (guint i = 0; i < arms->len; i++) {
    const GEOSGeometry *arm = g_ptr_array_index(arms, i);
    if (perimeter(arm) < 0.4 * high)
      continue;
    SpvPoint at = spv_geos_inner_point(arm), tip;
    double half = arm_width(polygon, arm, 0.5, low, high, &at);
    if (half >= narrowest || half < EVEN * arm_width(polygon, arm, 0.1, low, high, &tip))
      continue;
    narrowest = half;
    *place = at;
  }
  return narrowest;
}

/* The least disc, up to LIMIT, that breaks POLYGON into parts or takes an arm off it, and where; INFINITY if
 * none does. */
static double
narrowest_waist(const GEOSGeometry *polygon, double limit, SpvPoint *place) {
  g_autoptr(GEOSGeometry) before = GEOSGeom_clone_r(spv_geos(), polygon);
  for (double low = 0, high = MIN(FIRST, limit); low < high;) {
    g_autoptr(GEOSGeometry) after = erode(polygon, high);
    guint parts = count_parts(after);
    if (parts > 1)
      return split_width(polygon, low, high, place);
    if (parts == 0) {
      /* All at once: look just short of it. */
      limit = MIN(limit, high) - 2 * PRECISION;
      high = MIN((low + high) / 2, limit);
      continue;
    }
    double arm = vanished_arm(polygon, before, after, low, high, place);
    if (isfinite(arm))
      return arm;
    g_clear_pointer(&before, spv_geos_free);
    before = g_steal_pointer(&after);
    low = high;
    high = MIN(high * RATIO, limit);
  }
  return INFINITY;
}

/* The diameter of the largest disc in POLYGON, or ENOUGH if that is less. */
static double
widest_disc(const GEOSGeometry *polygon, double enough, SpvPoint *place) {
  double area = 0;
  GEOSArea_r(spv_geos(), polygon, &area);
  double limit = 2 * sqrt(area / G_PI) * (1 + 1e-9);
  if (enough < limit) {
    g_autoptr(GEOSGeometry) rest = erode(polygon, enough);
    if (count_parts(rest) > 0) {
      *place = spv_geos_inner_point(rest);
      return enough;
    }
    limit = enough;
  }
  return 2 * spv_geos_inscribed(polygon, limit / 2, PRECISION / 2, place);
}

static gboolean
is_convex(const GEOSGeometry *polygon) {
  if (GEOSGetNumInteriorRings_r(spv_geos(), polygon) > 0)
    return FALSE;
  g_autoptr(SpvShape) shape = spv_geos_to_shape(polygon);
  gsize n = 0;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);
  return n == 1 && spv_ring_is_convex(pieces[0].rings[0]);
}

/* The narrowest stroke of one polygon that doesn't hang together by hairs. */
static double
measure_polygon(const GEOSGeometry *polygon, double enough, SpvPoint *place) {
  double narrowest = widest_disc(polygon, enough, place);
  if (is_convex(polygon))
    return narrowest;
  SpvPoint at;
  double wall = thinnest_wall(polygon, &at);
  if (wall < narrowest) {
    narrowest = wall;
    *place = at;
  }
  double waist = narrowest_waist(polygon, narrowest, &at);
  if (waist < narrowest) {
    narrowest = waist;
    *place = at;
  }
  return narrowest;
}

double
spv_piece_narrowest(const SpvShape *shape, gsize piece_index, double enough, SpvPoint *place) {
  g_return_val_if_fail(shape != NULL, 0);
  g_return_val_if_fail(enough > 0, 0);
  gsize n = 0;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);
  g_return_val_if_fail(piece_index < n, 0);

  const SpvPiece *piece = &pieces[piece_index];
  g_autoptr(GEOSGeometry) polygon = spv_geos_polygon(piece->rings, piece->n_rings);
  g_autoptr(GEOSGeometry) freed = erode(polygon, HAIR);
  g_autoptr(GPtrArray) parts = real_parts(freed);
  SpvPoint at = spv_geos_inner_point(polygon);
  double narrowest = 0;
  if (parts->len == 1)
    narrowest = measure_polygon(polygon, enough, &at);
  for (guint i = 0; parts->len > 1 && i < parts->len; i++) {
    SpvPoint here;
    double width = HAIR + measure_polygon(g_ptr_array_index(parts, i), enough, &here);
    if (i == 0 || width < narrowest) {
      narrowest = width;
      at = here;
    }
  }
  if (place != NULL)
    *place = at;
  return narrowest;
}
