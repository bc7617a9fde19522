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

/* How exactly a width is measured, mm (see spv_piece_narrowest()). */
#define EXACT 0.002

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
  GArray *measured; /* Measured */
  GCancellable *cancellable;
} Scan;

static void
scan_init(Scan *scan, const SpvPartition *partition, double limit, GCancellable *cancellable) {
  scan->partition = partition;
  scan->limit = limit;
  scan->measured = g_array_new(FALSE, FALSE, sizeof(Measured));
  scan->cancellable = cancellable;
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

/* Whether something other than LAYER's own pattern makes it narrow. */
static gboolean
is_cut(const Scan *scan, int layer) {
  return width_uncut(scan->partition->composition, (guint) layer) >= scan->limit - SAME;
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
  /* A convex piece that is just wide enough has been found so by its middle; any other may measure a hair
   * less than it is. */
  return *width < scan->limit - (convex != NULL ? SAME : EXACT);
}

static SpvCause
scan_cause(const Scan *scan, int layer, SpvPoint place, double width) {
  const SpvTrack *track = spv_outline_track(scan->partition->composition->outline);
  double distance;

  if (!is_cut(scan, layer))
    return SPV_CAUSE_PATTERN;
  spv_track_locate(track, place, &distance);
  return distance <= width / 2 + EXACT ? SPV_CAUSE_EDGE : SPV_CAUSE_COVER;
}

/* Joins ONE to those of its layer and tincture. What the pattern itself does outweighs what cuts it, however
 * narrow. */
static void
join(GArray *found, const SpvNarrow *one) {
  for (guint i = 0; i < found->len; i++) {
    SpvNarrow *other = &g_array_index(found, SpvNarrow, i);
    gboolean pattern = one->cause == SPV_CAUSE_PATTERN;
    gboolean other_pattern = other->cause == SPV_CAUSE_PATTERN;

    if (other->layer != one->layer || other->tincture != one->tincture)
      continue;
    guint count = other->count + 1;
    if (pattern != other_pattern ? pattern : one->width < other->width)
      *other = *one;
    other->count = count;
    return;
  }
  g_array_append_val(found, *one);
}

/* Joins what is narrow in REGION to FOUND. */
static gboolean
scan_region(Scan *scan, const SpvRegion *region, GArray *found, GError **error) {
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(region->shape, &n);

  for (gsize i = 0; i < n; i++) {
    const SpvRing *convex = piece_convex_ring(&pieces[i]);
    SpvNarrow one = { .tincture = region->tincture, .count = 1 };

    if (g_cancellable_set_error_if_cancelled(scan->cancellable, error))
      return FALSE;
    if (piece_area(&pieces[i]) < DUST || is_plainly_wide(convex, scan->limit) ||
        !scan_is_narrow(scan, region->shape, i, convex, &one.width, &one.place))
      continue;
    one.layer = spv_partition_layer_at(scan->partition, one.place);
    if (one.layer < 0)
      continue;
    one.cause = scan_cause(scan, one.layer, one.place, one.width);
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
  for (guint i = 0; whole && i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);

    if (region->tincture >= 0)
      whole = scan_region(&scan, region, found, error);
  }
  g_array_unref(scan.measured);
  return whole ? g_steal_pointer(&found) : NULL;
}

static gboolean
is_known(const GArray *known, int layer, int tincture) {
  for (guint i = 0; i < known->len; i++) {
    const SpvNarrow *one = &g_array_index(known, SpvNarrow, i);

    if (one->layer == layer && one->tincture == tincture && one->cause == SPV_CAUSE_PATTERN)
      return TRUE;
  }
  return FALSE;
}

/* Whether piece INDEX of REGION may stay: wide enough, or cut, or known of another layer than LAYER. */
static gboolean
scan_piece_is_clear(Scan *scan, const SpvRegion *region, const SpvPiece *piece, gsize index, guint layer,
                    const GArray *known) {
  const SpvRing *convex = piece_convex_ring(piece);
  SpvPoint place;
  double width;
  int its;

  if (piece_area(piece) < DUST || is_plainly_wide(convex, scan->limit))
    return TRUE;
  if (convex != NULL) {
    /* Cut cells are many, and no fault of the pattern: don't measure them. */
    SpvPoint centre = spv_convex_centre(convex);

    its = spv_partition_layer_at(scan->partition, centre);
    if (its < 0 || is_cut(scan, its))
      return TRUE;
  }
  if (!scan_is_narrow(scan, region->shape, index, convex, &width, &place))
    return TRUE;
  its = spv_partition_layer_at(scan->partition, place);
  if (its < 0 || is_cut(scan, its))
    return TRUE;
  return its != (int) layer && is_known(known, its, region->tincture);
}

gboolean
spv_narrow_is_clear(const SpvPartition *partition, double limit, guint layer, const GArray *known,
                    GCancellable *cancellable, GError **error) {
  gboolean clear = TRUE;
  Scan scan;

  scan_init(&scan, partition, limit, cancellable);
  for (guint i = 0; clear && i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);
    gsize n;
    const SpvPiece *pieces = spv_shape_pieces(region->shape, &n);

    for (gsize j = 0; region->tincture >= 0 && clear && j < n; j++)
      clear = !g_cancellable_set_error_if_cancelled(cancellable, error) &&
              scan_piece_is_clear(&scan, region, &pieces[j], j, layer, known);
  }
  g_array_unref(scan.measured);
  return clear;
}
