/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which strokes are finer than the painter's line, whose they are, and what makes them so. */
#include "check/check-private.h"
#include "check/convex.h"
#include "geometry/width.h"

#include <math.h>

/* A piece smaller than this, mm², is dust that no eye sees. */
#define DUST 1e-6

/* Widths that differ by less, mm, are one. */
#define SAME 1e-6

/* How exactly a width is measured, mm: a flattened curve lies inside its curve by SPV_CHORD_ERROR on either
 * side, and spv_piece_narrowest() has an error of its own. */
#define EXACT (2 * SPV_CHORD_ERROR + 0.0005)

/* A convex piece with more corners than this has a flattened curve for a side. */
#define STRAIGHT_CORNERS 8

/* A convex piece that has been measured; another of the same size is not measured again. */
typedef struct {
  gsize n_points;
  double width, height, area; /* of the piece */
  SpvPoint centre;            /* from its box's corner */
  double narrowest;
  SpvPoint place; /* from its box's corner */
} Measured;

typedef struct {
  const SpvPartition *partition;
  double limit;
  GArray *measured;  /* Measured */
  SpvShape **eroded; /* one a tincture: its region under a disc of the limit; made when first needed */
  GCancellable *cancellable;
} Scan;

/* One laid shape's visible part, as the scan goes over its pieces. */
typedef struct {
  const SpvLaidShape *laid;
  const SpvShape *visible;
  double whole;    /* width of each cell or stripe before anything cuts it, mm; 0 for what does not repeat */
  SpvShape *apart; /* of VISIBLE, what lies well apart from other layers of its tincture; or NULL so far */
} Part;

static void
scan_init(Scan *scan, const SpvPartition *partition, double limit, GCancellable *cancellable) {
  scan->partition = partition;
  scan->limit = limit;
  scan->measured = g_array_new(FALSE, FALSE, sizeof(Measured));
  scan->eroded = g_new0(SpvShape *, partition->composition->scheme->n_tinctures);
  scan->cancellable = cancellable;
}

static void
scan_clear(Scan *scan) {
  for (guint i = 0; i < scan->partition->composition->scheme->n_tinctures; i++)
    g_clear_pointer(&scan->eroded[i], spv_shape_unref);
  g_free(scan->eroded);
  g_array_unref(scan->measured);
}

static double
piece_area(const SpvPiece *piece) {
  double area = 0;

  for (gsize i = 0; i < piece->n_rings; i++)
    area += spv_ring_area(piece->rings[i]);
  return area;
}

/* The measured piece of the same size as ONE, or NULL. */
static const Measured *
scan_lookup(const Scan *scan, const Measured *one) {
  for (guint i = 0; i < scan->measured->len; i++) {
    const Measured *other = &g_array_index(scan->measured, Measured, i);

    if (one->n_points == other->n_points && fabs(one->width - other->width) < SAME &&
        fabs(one->height - other->height) < SAME && fabs(one->area - other->area) < SAME &&
        spv_point_distance(one->centre, other->centre) < SAME)
      return other;
  }
  return NULL;
}

/* The narrowest of a convex piece, which is one ring; measured once for all pieces of its size. */
static double
scan_measure_convex(Scan *scan, const SpvShape *shape, gsize index, const SpvRing *ring, SpvPoint *place) {
  SpvBox box = spv_ring_bounds(ring);
  SpvPoint corner = { box.x0, box.y0 };
  Measured one = {
    .n_points = ring->n_points,
    .width = spv_box_width(box),
    .height = spv_box_height(box),
    .area = spv_ring_area(ring),
    .centre = spv_point_subtract(spv_convex_centre(ring), corner),
  };
  const Measured *same = scan_lookup(scan, &one);

  if (same == NULL) {
    SpvPoint at;

    one.narrowest = spv_piece_narrowest(shape, index, scan->limit, &at);
    one.place = spv_point_subtract(at, corner);
    g_array_append_val(scan->measured, one);
    same = &one;
  }
  *place = spv_point_add(same->place, corner);
  return same->narrowest;
}

/* How far the outline reaches across LINE, mm. */
static double
reach_across(const SpvOutline *outline, const SpvDraftLine *line) {
  SpvPoint across = spv_point_quarter_turn(spv_point_unit(spv_point_subtract(line->to, line->from)));
  double low = INFINITY, high = -INFINITY;
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);

  for (gsize i = 0; i < n; i++) {
    low = MIN(low, spv_point_dot(points[i], across));
    high = MAX(high, spv_point_dot(points[i], across));
  }
  return high - low;
}

/* Stripes share the panel evenly, with a boundary between each two of them. */
static double
stripe_width(const SpvOutline *outline, const SpvDraft *draft) {
  if (draft->lines->len == 0)
    return 0;
  return reach_across(outline, &g_array_index(draft->lines, SpvDraftLine, 0)) / (draft->lines->len + 1);
}

/* The cells of a check are all of one size. */
static double
cell_width(const SpvDraft *draft) {
  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    if (draft->cells[slot] != NULL && draft->cells[slot]->len > 0) {
      SpvBox box = spv_ring_bounds(g_ptr_array_index(draft->cells[slot], 0));

      return MIN(spv_box_width(box), spv_box_height(box));
    }
  return 0;
}

/* How wide every cell or stripe of LAYER is before anything cuts it, mm. 0 for what does not repeat: there,
 * what is left of it is what counts. */
static double
width_uncut(const SpvComposition *composition, guint layer) {
  const SpvDraft *draft = g_ptr_array_index(composition->drafts, layer);

  if (draft == NULL)
    return 0;
  switch (composition->panel->layers[layer]->pattern.kind) {
  case SPV_PATTERN_PALY:
  case SPV_PATTERN_BARRY:
  case SPV_PATTERN_BENDY:
    return stripe_width(composition->outline, draft);
  case SPV_PATTERN_CHECK:
    return cell_width(draft);
  case SPV_PATTERN_FIELD:
  case SPV_PATTERN_PER_PALE:
  case SPV_PATTERN_PER_FESS:
  case SPV_PATTERN_PER_BEND:
  case SPV_PATTERN_PER_BEND_SINISTER:
  case SPV_PATTERN_PER_CHEVRON:
  case SPV_PATTERN_PER_SALTIRE:
  case SPV_PATTERN_QUARTERLY:
  case SPV_PATTERN_JAGGED_BORDER:
  case SPV_PATTERN_BORDURE:
  case SPV_PATTERN_CHIEF:
  case SPV_PATTERN_ROUNDEL:
    return 0;
  }
  return 0;
}

static Part
scan_part(const Scan *scan, guint index) {
  const SpvComposition *composition = scan->partition->composition;
  const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, index);

  return (Part){ laid, g_ptr_array_index(scan->partition->visible, index),
                 width_uncut(composition, laid->layer), NULL };
}

/* Whether the cells or stripes are wide enough, so that it is something else that makes one narrow. */
static gboolean
is_cut(const Scan *scan, const Part *part) {
  return part->whole >= scan->limit - SAME;
}

/* What shows of TINCTURE, when more than one laid shape has a part in it; otherwise NULL. */
static const SpvShape *
joint_region(const SpvPartition *partition, guint tincture) {
  const GPtrArray *shapes = partition->composition->shapes;
  guint parts = 0;

  for (guint i = 0; i < shapes->len; i++) {
    const SpvLaidShape *laid = g_ptr_array_index(shapes, i);

    parts += laid->tincture == tincture && !spv_shape_is_empty(g_ptr_array_index(partition->visible, i));
  }
  for (guint i = 0; parts > 1 && i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);

    if (region->tincture == (int) tincture)
      return region->shape;
  }
  return NULL;
}

/* Whether a disc of the limit's size that stays in one tincture reaches PLACE: another layer of the same
 * tincture widens what is narrow in its own. */
static gboolean
scan_is_widened(Scan *scan, guint tincture, SpvPoint place) {
  const SpvShape *region = joint_region(scan->partition, tincture);
  gsize n;

  if (region == NULL)
    return FALSE;
  if (scan->eroded[tincture] == NULL)
    scan->eroded[tincture] = spv_shape_offset(region, -(scan->limit - EXACT) / 2);
  if (spv_shape_contains(scan->eroded[tincture], place))
    return TRUE;

  const SpvPiece *pieces = spv_shape_pieces(scan->eroded[tincture], &n);
  for (gsize i = 0; i < n; i++)
    for (gsize j = 0; j < pieces[i].n_rings; j++)
      if (spv_convex_clearance(pieces[i].rings[j], place) <= scan->limit / 2)
        return TRUE;
  return FALSE;
}

/* Whether a piece is plainly wide enough: CONVEX is its ring, and a disc of that size fits in the middle. */
static gboolean
is_plainly_wide(const SpvRing *convex, double limit) {
  return convex != NULL && 2 * spv_convex_clearance(convex, spv_convex_centre(convex)) >= limit - SAME;
}

/* The one ring of PIECE when it is convex, otherwise NULL. */
static const SpvRing *
piece_convex_ring(const SpvPiece *piece) {
  return piece->n_rings == 1 && spv_ring_is_convex(piece->rings[0]) ? piece->rings[0] : NULL;
}

/* Whether piece INDEX of SHAPE is finer than the limit; how fine, and where, go to WIDTH and PLACE. */
static gboolean
scan_is_narrow(Scan *scan, const SpvShape *shape, gsize index, const SpvRing *convex, double *width,
               SpvPoint *place) {
  if (convex != NULL)
    *width = scan_measure_convex(scan, shape, index, convex, place);
  else
    *width = spv_piece_narrowest(shape, index, scan->limit, place);
  /* What is just wide enough may measure a hair less, unless all its sides are straight. */
  gboolean straight = convex != NULL && convex->n_points <= STRAIGHT_CORNERS;
  return *width < scan->limit - (straight ? SAME : EXACT);
}

/* What of PART lies farther than the limit from other layers of its tincture. */
static const SpvShape *
scan_apart(const Scan *scan, Part *part) {
  const SpvShape *region = joint_region(scan->partition, part->laid->tincture);

  if (part->apart == NULL && region != NULL) {
    g_autoptr(SpvShape) others = spv_shape_difference(region, part->visible);
    g_autoptr(SpvShape) beside = spv_shape_offset(others, scan->limit);

    part->apart = spv_shape_difference(part->visible, beside);
  }
  return part->apart;
}

/* As scan_is_stroke(), for a piece that another layer of its tincture widens where it is narrowest: looks at
 * what of PART lies apart from that. Only the place is taken from there; cutting it off makes slivers. */
static gboolean
scan_is_stroke_apart(Scan *scan, Part *part, const SpvRing *piece, SpvPoint *place) {
  const SpvShape *apart = scan_apart(scan, part);
  double width;
  gsize n;
  const SpvPiece *rests = spv_shape_pieces(apart, &n);

  for (gsize i = 0; i < n; i++) {
    if (piece_area(&rests[i]) < DUST || spv_ring_winding(piece, rests[i].rings[0]->points[0]) == 0)
      continue;
    if (scan_is_narrow(scan, apart, i, piece_convex_ring(&rests[i]), &width, place) &&
        !scan_is_widened(scan, part->laid->tincture, *place))
      return TRUE;
  }
  return FALSE;
}

/* Whether piece INDEX of PART has to be painted finer than the limit; how fine, and where, go to WIDTH and
 * PLACE. */
static gboolean
scan_is_stroke(Scan *scan, Part *part, gsize index, double *width, SpvPoint *place) {
  gsize n;
  const SpvPiece *piece = &spv_shape_pieces(part->visible, &n)[index];
  const SpvRing *convex = piece_convex_ring(piece);

  if (piece_area(piece) < DUST || is_plainly_wide(convex, scan->limit) ||
      !scan_is_narrow(scan, part->visible, index, convex, width, place))
    return FALSE;
  return !scan_is_widened(scan, part->laid->tincture, *place) ||
         scan_is_stroke_apart(scan, part, piece->rings[0], place);
}

/* Says what makes ONE, of PART, narrow. */
static void
scan_blame(const Scan *scan, const Part *part, SpvNarrow *one) {
  double distance;

  if (is_cut(scan, part)) {
    spv_track_locate(spv_outline_track(scan->partition->composition->outline), one->place, &distance);
    one->cause = distance <= one->width / 2 + EXACT ? SPV_CAUSE_EDGE : SPV_CAUSE_COVER;
    return;
  }
  one->cause = SPV_CAUSE_PATTERN;
  if (part->whole > 0) {
    /* What the edge leaves of a stripe says less than the stripe itself does. */
    one->off = fabs(one->width - part->whole);
    one->width = MAX(one->width, part->whole);
  }
}

/* Whether ONE speaks for its layer and tincture rather than OTHER: what the pattern itself does outweighs
 * what cuts it, then a whole cell or stripe a part of one, then the narrower. */
static gboolean
speaks_before(const SpvNarrow *one, const SpvNarrow *other) {
  gboolean pattern = one->cause == SPV_CAUSE_PATTERN;

  if (pattern != (other->cause == SPV_CAUSE_PATTERN))
    return pattern;
  if (fabs(one->off - other->off) > SAME)
    return one->off < other->off;
  return one->width < other->width;
}

/* Joins ONE to those of its layer and tincture. */
static void
join(GArray *found, const SpvNarrow *one) {
  for (guint i = 0; i < found->len; i++) {
    SpvNarrow *other = &g_array_index(found, SpvNarrow, i);

    if (other->layer != one->layer || other->tincture != one->tincture)
      continue;
    guint count = other->count + 1;
    if (speaks_before(one, other))
      *other = *one;
    other->count = count;
    return;
  }
  g_array_append_val(found, *one);
}

/* Joins what is narrow in PART to FOUND. */
static gboolean
scan_part_find(Scan *scan, Part *part, GArray *found, GError **error) {
  gsize n;

  spv_shape_pieces(part->visible, &n);
  for (gsize i = 0; i < n; i++) {
    SpvNarrow one = { .layer = (int) part->laid->layer, .tincture = (int) part->laid->tincture, .count = 1 };

    if (g_cancellable_set_error_if_cancelled(scan->cancellable, error))
      return FALSE;
    if (!scan_is_stroke(scan, part, i, &one.width, &one.place))
      continue;
    scan_blame(scan, part, &one);
    join(found, &one);
  }
  return TRUE;
}

GArray *
spv_narrow_find(const SpvPartition *partition, double limit, GCancellable *cancellable, GError **error) {
  g_autoptr(GArray) found = g_array_new(FALSE, FALSE, sizeof(SpvNarrow));
  gboolean whole = TRUE;
  Scan scan;

  scan_init(&scan, partition, limit, cancellable);
  for (guint i = 0; whole && i < partition->visible->len; i++) {
    Part part = scan_part(&scan, i);

    whole = scan_part_find(&scan, &part, found, error);
    g_clear_pointer(&part.apart, spv_shape_unref);
  }
  scan_clear(&scan);
  return whole ? g_steal_pointer(&found) : NULL;
}

static gboolean
is_known(const GArray *known, guint layer, guint tincture) {
  for (guint i = 0; i < known->len; i++) {
    const SpvNarrow *one = &g_array_index(known, SpvNarrow, i);

    if (one->layer == (int) layer && one->tincture == (int) tincture && one->cause == SPV_CAUSE_PATTERN)
      return TRUE;
  }
  return FALSE;
}

/* Whether PART has no stroke that is its own pattern's fault. FALSE, with ERROR set, when cancelled. */
static gboolean
scan_part_is_clear(Scan *scan, Part *part, GError **error) {
  gsize n;

  spv_shape_pieces(part->visible, &n);
  for (gsize i = 0; !is_cut(scan, part) && i < n; i++) {
    SpvPoint place;
    double width;

    if (g_cancellable_set_error_if_cancelled(scan->cancellable, error) ||
        scan_is_stroke(scan, part, i, &width, &place))
      return FALSE;
  }
  return TRUE;
}

gboolean
spv_narrow_is_clear(const SpvPartition *partition, double limit, guint layer, const GArray *known,
                    GCancellable *cancellable, GError **error) {
  gboolean clear = TRUE;
  Scan scan;

  scan_init(&scan, partition, limit, cancellable);
  /* From the layer itself, where the fault is most likely, down to those that it cuts. */
  for (guint i = partition->visible->len; clear && i-- > 0;) {
    Part part = scan_part(&scan, i);

    if (part.laid->layer > layer ||
        (part.laid->layer < layer && is_known(known, part.laid->layer, part.laid->tincture)))
      continue;
    clear = scan_part_is_clear(&scan, &part, error);
    g_clear_pointer(&part.apart, spv_shape_unref);
  }
  scan_clear(&scan);
  return clear;
}
