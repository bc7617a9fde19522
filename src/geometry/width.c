/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The narrowest place of a piece: of a convex one in closed form, of any other by erosion. */
#include "geometry/width.h"

#include "geometry/shape-private.h"

/* How closely the threshold is bracketed, and how far an erosion's arcs may stray, mm: below the 0.002 that
 * the header promises. */
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

/* What a disc leaves within this distance of what it reaches, mm, isn't looked at. */
#define SLACK 0.0025

/* The directions of a tip's edges lie within half a turn less this, radians: its sides part by 6 degrees or
 * more everywhere. */
#define PARTING 0.11

/* Points nearer than this, mm, are one corner of a convex ring. */
#define CORNER 1e-7
/* A side of a convex ring, as a line that moves inward evenly with all the others. */
typedef struct {
  SpvPoint from;  /* where it starts, before it moves */
  SpvPoint along; /* of length 1; the inside lies to its right as seen on screen */
} Side;

static GArray *
sides_of_ring(const SpvRing *ring) {
  GArray *sides = g_array_sized_new(FALSE, FALSE, sizeof(Side), (guint) ring->n_points);
  SpvPoint before = ring->points[ring->n_points - 1];
  for (gsize i = 0; i < ring->n_points; i++) {
    SpvPoint to = ring->points[i];
    if (spv_point_distance(before, to) < CORNER)
      continue;
    Side side = { before, spv_point_unit(spv_point_subtract(to, before)) };
    g_array_append_val(sides, side);
    before = to;
  }
  return sides;
}

/* Side INDEX of SIDES, which go round. */
static Side *
nth_side(const GArray *sides, guint index) {
  return &g_array_index(sides, Side, index % sides->len);
}

/* The tangent of half the turn from side A to side B. */
static double
half_turn(const Side *a, const Side *b) {
  return spv_point_cross(a->along, b->along) / (1 + spv_point_dot(a->along, b->along));
}

/* How far all sides have moved when side INDEX is gone: its neighbours run in over it from both ends. */
static double
vanishes_at(const GArray *sides, guint index) {
  const Side *side = nth_side(sides, index), *next = nth_side(sides, index + 1);
  double pace = half_turn(nth_side(sides, index + sides->len - 1), side) + half_turn(side, next);
  double length = spv_point_dot(spv_point_subtract(next->from, side->from), side->along);
  return pace > CORNER ? length / pace : INFINITY;
}

/* The middle of what is left of SIDES when all have moved by RADIUS. */
static SpvPoint
middle_of_sides(const GArray *sides, double radius) {
  SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };
  for (guint i = 0; i < sides->len; i++) {
    const Side *before = nth_side(sides, i + sides->len - 1), *side = nth_side(sides, i);
    SpvPoint inward = spv_point_quarter_turn(spv_point_add(before->along, side->along));
    double pace = radius / (1 + spv_point_dot(before->along, side->along));
    SpvPoint at = spv_point_add(side->from, spv_point_scale(inward, pace));
    box = (SpvBox){ MIN(box.x0, at.x), MIN(box.y0, at.y), MAX(box.x1, at.x), MAX(box.y1, at.y) };
  }
  return spv_box_centre(box);
}

/* Takes side INDEX away and lets its neighbours meet; FALSE when they would not. */
static gboolean
close_over(GArray *sides, guint index) {
  const Side *before = nth_side(sides, index + sides->len - 1);
  Side *after = nth_side(sides, index + 1);
  double sine = spv_point_cross(before->along, after->along);
  if (sides->len <= 3 || sine <= CORNER)
    return FALSE;
  SpvPoint gap = spv_point_subtract(after->from, before->from);
  after->from = spv_point_add(before->from,
                              spv_point_scale(before->along, spv_point_cross(gap, after->along) / sine));
  g_array_remove_index(sides, index);
  return TRUE;
}

/* The diameter of the largest disc in RING, which is convex and of positive area: its sides move inward, one
 * after the other is gone, until nothing is left. */
static double
measure_convex(const SpvRing *ring, SpvPoint *place) {
  g_autoptr(GArray) sides = sides_of_ring(ring);
  while (sides->len > 2) {
    guint first = 0;
    double radius = INFINITY;
    for (guint i = 0; i < sides->len; i++) {
      double at = vanishes_at(sides, i);
      first = at < radius ? i : first;
      radius = MIN(radius, at);
    }
    if (!isfinite(radius))
      break;
    if (!close_over(sides, first)) {
      *place = middle_of_sides(sides, radius);
      return 2 * radius;
    }
  }
  return 0;
}

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

/* The middle between the two nearest parts of BROKEN; where that lies outside WHOLE, which was in one part
 * just before, a point of WHOLE well away from BROKEN. */
static void
find_gap(const GEOSGeometry *whole, const GEOSGeometry *broken, SpvPoint *place) {
  g_autoptr(GPtrArray) parts = real_parts(broken);
  double nearest = INFINITY, outside = 0;
  for (guint i = 1; i < MIN(parts->len, MAX_PARTS); i++)
    for (guint j = 0; j < i; j++) {
      SpvPoint middle;
      double gap = gap_between(g_ptr_array_index(parts, i), g_ptr_array_index(parts, j), &middle);
      if (gap < nearest) {
        nearest = gap;
        *place = middle;
      }
    }
  g_autoptr(GEOSGeometry) point = GEOSGeom_createPointFromXY_r(spv_geos(), place->x, place->y);
  if (GEOSDistance_r(spv_geos(), whole, point, &outside) && outside < 2 * PRECISION)
    return;
  g_autoptr(GEOSGeometry) near = spv_geos_offset(broken, 2 * PRECISION, CHORD_ERROR);
  g_autoptr(GEOSGeometry) neck = near == NULL ? NULL : GEOSDifference_r(spv_geos(), whole, near);
  *place = spv_geos_inner_point(neck == NULL || GEOSisEmpty_r(spv_geos(), neck) ? whole : neck);
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
    *(count_parts(rest) > 1 ? &high : &low) = middle;
  }
  g_autoptr(GEOSGeometry) whole = erode(polygon, low);
  g_autoptr(GEOSGeometry) broken = erode(polygon, high);
  find_gap(whole, broken, place);
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
    gboolean there = left != NULL && perimeter(left) >= share * perimeter(arm);
    *(there ? &low : &high) = middle;
    if (there)
      *place = spv_geos_inner_point(left);
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

static int
compare_points(gconstpointer a, gconstpointer b) {
  const SpvPoint *p = a, *q = b;
  return p->x != q->x ? (p->x > q->x) - (p->x < q->x) : (p->y > q->y) - (p->y < q->y);
}

/* Every corner of POLYGON's rings, in an order in which one is quickly found. */
static GArray *
sorted_corners(const GEOSGeometry *polygon) {
  GArray *corners = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  g_autoptr(SpvShape) shape = spv_geos_to_shape(polygon);
  gsize n = 0;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);
  for (gsize i = 0; i < n; i++)
    for (gsize j = 0; j < pieces[i].n_rings; j++)
      g_array_append_vals(corners, pieces[i].rings[j]->points, (guint) pieces[i].rings[j]->n_points);
  g_array_sort(corners, compare_points);
  return corners;
}

/* Where the corners of the polygon in RING start: the first of their run. FALSE when they aren't one run,
 * from which the rest of the ring leads back. */
static gboolean
find_run(const SpvRing *ring, const GArray *corners, gsize *first, gsize *length) {
  guint runs = 0;
  *length = 0;
  gboolean before = g_array_binary_search((GArray *) corners, &ring->points[ring->n_points - 1],
                                          compare_points, NULL);
  for (gsize i = 0; i < ring->n_points; i++) {
    gboolean here = g_array_binary_search((GArray *) corners, &ring->points[i], compare_points, NULL);
    if (here && !before) {
      runs++;
      *first = i;
    }
    *length += here;
    before = here;
  }
  return runs == 1 && *length + 2 <= ring->n_points;
}

/* Whether RING, what a disc leaves of a polygon with CORNERS in one place, is a tip or several that draw back
 * evenly: the polygon's edge goes out from what the disc reaches and back to it once, with all its directions
 * within less than half a turn. What is left is then a hill without overhang, and no slope of it is steep. */
static gboolean
is_tip(const SpvRing *ring, const GArray *corners) {
  gsize first, length;
  if (!find_run(ring, corners, &first, &length))
    return FALSE;
  double turned = 0, least = 0, most = 0;
  SpvPoint before = { 0, 0 };
  for (gsize i = 0; i <= length; i++) {
    gsize from = first + ring->n_points - 1 + i;
    SpvPoint along = spv_point_subtract(ring->points[(from + 1) % ring->n_points],
                                        ring->points[from % ring->n_points]);
    if (i > 0)
      turned += atan2(spv_point_cross(before, along), spv_point_dot(before, along));
    least = MIN(least, turned);
    most = MAX(most, turned);
    before = along;
  }
  return most - least <= G_PI - PARTING;
}

/* Whether a disc of diameter WIDTH plainly reaches all of POLYGON but tips, without parting it: then no waist
 * or arm is as narrow. FALSE says nothing. Two buffers and a difference, where stepping takes a hundred. */
static gboolean
is_plainly_reached(const GEOSGeometry *polygon, double width) {
  g_autoptr(GEOSGeometry) rest = erode(polygon, width);
  g_autoptr(GPtrArray) parts = real_parts(rest);
  /* Where a wall opens, two holes become one or a hole joins the outside. */
  if (parts->len != 1 || GEOSGetNumInteriorRings_r(spv_geos(), g_ptr_array_index(parts, 0)) !=
                             GEOSGetNumInteriorRings_r(spv_geos(), polygon))
    return FALSE;
  g_autoptr(GEOSGeometry) reached = spv_geos_offset(rest, width / 2 + SLACK, SLACK / 10);
  g_autoptr(GEOSGeometry) left = reached == NULL ? NULL : GEOSDifference_r(spv_geos(), polygon, reached);
  if (left == NULL)
    return FALSE;
  g_autoptr(GArray) corners = sorted_corners(polygon);
  g_autoptr(SpvShape) shape = spv_geos_to_shape(left);
  gsize n = 0;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);
  for (gsize i = 0; i < n; i++)
    if (pieces[i].n_rings > 1 || !is_tip(pieces[i].rings[0], corners))
      return FALSE;
  return TRUE;
}

/* A disc that plainly reaches all of POLYGON but tips, within a step of the largest that does, where one of
 * diameter HIGH does not; 0 when none is found. */
static double
widest_reaching(const GEOSGeometry *polygon, double high) {
  double low = high / 2;
  while (low > FIRST && !is_plainly_reached(polygon, low)) {
    high = low;
    low /= 2;
  }
  while (low > FIRST && high > low * RATIO) {
    double middle = sqrt(low * high);
    *(is_plainly_reached(polygon, middle) ? &low : &high) = middle;
  }
  return low > FIRST ? low : 0;
}

/* The least disc, up to LIMIT, that breaks POLYGON into parts or takes an arm off it, and where; INFINITY if
 * none does. */
static double
narrowest_waist(const GEOSGeometry *polygon, double limit, SpvPoint *place) {
  double low = widest_reaching(polygon, limit), high = MIN(MAX(low * RATIO, FIRST), limit);
  g_autoptr(GEOSGeometry) before = erode(polygon, low);
  while (low < high) {
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

/* The narrowest stroke of one polygon that doesn't hang together by hairs. */
static double
measure_polygon(const GEOSGeometry *polygon, double enough, SpvPoint *place) {
  g_autoptr(SpvShape) shape = spv_geos_to_shape(polygon);
  gsize n = 0;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);
  if (n == 1 && pieces[0].n_rings == 1 && spv_ring_is_convex(pieces[0].rings[0]))
    return measure_convex(pieces[0].rings[0], place);
  double narrowest = widest_disc(polygon, enough, place);
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

/* As spv_piece_narrowest(), for a piece that isn't convex. */
static double
measure_piece(const SpvPiece *piece, double enough, SpvPoint *place) {
  g_autoptr(GEOSGeometry) polygon = spv_geos_polygon(piece->rings, piece->n_rings);
  *place = spv_geos_inner_point(polygon);
  if (isfinite(enough) && is_plainly_reached(polygon, enough))
    return enough;
  g_autoptr(GEOSGeometry) freed = erode(polygon, HAIR);
  g_autoptr(GPtrArray) parts = real_parts(freed);
  if (parts->len == 1)
    return measure_polygon(polygon, enough, place);
  double narrowest = 0;
  for (guint i = 0; i < parts->len; i++) {
    SpvPoint here;
    double width = HAIR + measure_polygon(g_ptr_array_index(parts, i), enough, &here);
    if (i == 0 || width < narrowest) {
      narrowest = width;
      *place = here;
    }
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
  gboolean convex = piece->n_rings == 1 && spv_ring_is_convex(piece->rings[0]);
  SpvPoint at = piece->rings[0]->points[0];
  double narrowest = convex ? measure_convex(piece->rings[0], &at) : measure_piece(piece, enough, &at);
  if (place != NULL)
    *place = at;
  return narrowest;
}
