/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which strokes are finer than the painter's line, whose they are, and what makes them so. */
#include "check/check-private.h"

#include <math.h>

/* Into so many equal parts a check's cells are divided to look at the cells between them. */
#define SAMPLES 8

/* A piece that is measured when first asked for. */
typedef struct {
  gboolean known; /* the rest is meaningless before */
  gboolean narrow;
  double width;
  SpvPoint place;
} Measured;

/* A shape with what is known of each of its pieces. */
typedef struct {
  SpvShape *shape;
  Measured *pieces;
} Pieces;

typedef struct {
  const SpvPartition *partition;
  double limit;
  SpvShape **joint;  /* one a tincture: where its shapes meet; made when first needed */
  SpvShape **eroded; /* that under a disc of the limit */
  GCancellable *cancellable;
} Scan;

/* One laid shape's visible part, as the scan goes over its pieces. What isn't asked for stays NULL. */
typedef struct {
  guint index; /* of the composition's shapes */
  const SpvLaidShape *laid;
  const SpvShape *visible;
  double whole;     /* width of each cell or stripe before anything cuts it, mm; 0 for what does not repeat */
  Pieces apart;     /* of VISIBLE, what lies well apart from other layers of its tincture */
  Pieces uncut;     /* what it lays before later layers cover it */
  SpvShape *eroded; /* UNCUT under a disc of the limit */
} Part;

static void
scan_init(Scan *scan, const SpvPartition *partition, double limit, GCancellable *cancellable) {
  scan->partition = partition;
  scan->limit = limit;
  scan->joint = g_new0(SpvShape *, partition->composition->scheme->n_tinctures);
  scan->eroded = g_new0(SpvShape *, partition->composition->scheme->n_tinctures);
  scan->cancellable = cancellable;
}

static void
scan_clear(Scan *scan) {
  for (guint i = 0; i < scan->partition->composition->scheme->n_tinctures; i++) {
    g_clear_pointer(&scan->joint[i], spv_shape_unref);
    g_clear_pointer(&scan->eroded[i], spv_shape_unref);
  }
  g_free(scan->joint);
  g_free(scan->eroded);
}

static Part
scan_part(const Scan *scan, guint index) {
  const SpvComposition *composition = scan->partition->composition;
  const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, index);

  return (Part){
    .index = index,
    .laid = laid,
    .visible = g_ptr_array_index(scan->partition->visible, index),
    .whole = spv_uncut_width(composition, index),
  };
}

/* Takes over SHAPE. */
static Pieces
pieces_of(SpvShape *shape) {
  gsize n;

  spv_shape_pieces(shape, &n);
  return (Pieces){ shape, g_new0(Measured, n) };
}

static void
pieces_clear(Pieces *pieces) {
  g_clear_pointer(&pieces->shape, spv_shape_unref);
  g_free(pieces->pieces);
}

static const Measured *
pieces_measure(Pieces *pieces, gsize index, double limit) {
  Measured *piece = &pieces->pieces[index];

  if (!piece->known)
    piece->narrow = spv_stroke_is_narrow(pieces->shape, index, limit, &piece->width, &piece->place);
  piece->known = TRUE;
  return piece;
}

static void
part_clear(Part *part) {
  pieces_clear(&part->apart);
  pieces_clear(&part->uncut);
  g_clear_pointer(&part->eroded, spv_shape_unref);
}

/* Whether the cells or stripes are wide enough, so that it is something else that makes one narrow. */
static gboolean
is_cut(const Scan *scan, const Part *part) {
  return part->whole >= scan->limit - SPV_CHECK_SAME;
}

/* Where TINCTURE's shapes meet; borrowed. */
static const SpvShape *
scan_joint(Scan *scan, guint tincture) {
  if (scan->joint[tincture] == NULL)
    scan->joint[tincture] = spv_joint_region(scan->partition, tincture);
  return scan->joint[tincture];
}

/* Whether a disc of the limit's size that stays in one tincture reaches PLACE: another layer of the same
 * tincture widens what is narrow in its own. */
static gboolean
scan_is_widened(Scan *scan, guint tincture, SpvPoint place) {
  const SpvShape *joint = scan_joint(scan, tincture);

  if (!spv_shape_contains(joint, place))
    return FALSE;
  if (scan->eroded[tincture] == NULL)
    scan->eroded[tincture] = spv_stroke_erode(joint, scan->limit);
  return spv_stroke_reaches(scan->eroded[tincture], scan->limit, place);
}

/* What of PART lies farther than the limit from other layers of its tincture. */
static Pieces *
scan_apart(Scan *scan, Part *part) {
  if (part->apart.shape == NULL) {
    g_autoptr(SpvShape) own = spv_joint_part(scan->partition, part->index);
    g_autoptr(SpvShape) others = spv_shape_difference(scan_joint(scan, part->laid->tincture), own);
    g_autoptr(SpvShape) beside = spv_shape_offset(others, scan->limit);

    part->apart = pieces_of(spv_shape_difference(own, beside));
  }
  return &part->apart;
}

/* As scan_is_stroke(), for a piece that another layer of its tincture widens where it is narrowest: looks at
 * what of PART lies apart from that. Only the place is taken from there; cutting it off makes slivers. */
static gboolean
scan_is_stroke_apart(Scan *scan, Part *part, const SpvRing *piece, SpvPoint *place) {
  Pieces *apart = scan_apart(scan, part);
  SpvBox box = spv_ring_bounds(piece);
  gsize n;
  const SpvPiece *rests = spv_shape_pieces(apart->shape, &n);

  for (gsize i = 0; i < n; i++) {
    if (!spv_box_overlaps(box, spv_ring_bounds(rests[i].rings[0])))
      continue;
    const Measured *rest = pieces_measure(apart, i, scan->limit);
    if (!rest->narrow || spv_ring_winding(piece, rest->place) == 0 ||
        scan_is_widened(scan, part->laid->tincture, rest->place))
      continue;
    *place = rest->place;
    return TRUE;
  }
  return FALSE;
}

/* Whether piece INDEX of PART is to be seen finer than the limit; how fine, and where, go to WIDTH and PLACE.
 */
static gboolean
scan_is_stroke(Scan *scan, Part *part, gsize index, double *width, SpvPoint *place) {
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(part->visible, &n);

  if (!spv_stroke_is_narrow(part->visible, index, scan->limit, width, place))
    return FALSE;
  if (!scan_is_widened(scan, part->laid->tincture, *place))
    return TRUE;
  /* A cut cell that is widened would make one note more among others: not worth the search. */
  return !is_cut(scan, part) && scan_is_stroke_apart(scan, part, pieces[index].rings[0], place);
}

/* The piece of UNCUT that holds PLACE, or the nearest. */
static gsize
find_piece(const SpvShape *uncut, SpvPoint place) {
  double least = INFINITY;
  gsize found = 0, n;
  const SpvPiece *pieces = spv_shape_pieces(uncut, &n);

  for (gsize i = 0; i < n; i++) {
    const SpvRing *ring = pieces[i].rings[0];
    double distance = spv_ring_winding(ring, place) != 0 ? 0 : spv_stroke_clearance(ring, place);

    if (distance < least) {
      least = distance;
      found = i;
    }
  }
  return found;
}

/* What PART lays at PLACE before later layers cover it; NULL when it lays nothing. */
static const Measured *
scan_uncut(const Scan *scan, Part *part, SpvPoint place) {
  if (part->uncut.shape == NULL)
    part->uncut = pieces_of(spv_uncut_shape(scan->partition->composition, part->index));
  if (spv_shape_is_empty(part->uncut.shape))
    return NULL;
  return pieces_measure(&part->uncut, find_piece(part->uncut.shape, place), scan->limit);
}

/* Whether ONE, of PART, is narrow only by what later layers cover: the painter lays it down whole, and them
 * over it. Where it isn't, ONE comes to tell of what is narrow before anything covers it. */
static gboolean
scan_is_covered(Scan *scan, Part *part, SpvNarrow *one) {
  if (spv_uncut_is_topmost(scan->partition->composition, part->laid->layer))
    return FALSE;
  const Measured *uncut = scan_uncut(scan, part, one->place);
  if (uncut == NULL)
    return FALSE;
  if (!uncut->narrow)
    return TRUE;
  if (spv_shape_contains(part->visible, uncut->place) &&
      !scan_is_widened(scan, part->laid->tincture, uncut->place)) {
    one->place = uncut->place;
    one->width = uncut->width;
    return FALSE;
  }
  if (part->eroded == NULL)
    part->eroded = spv_stroke_erode(part->uncut.shape, scan->limit);
  return spv_stroke_reaches(part->eroded, scan->limit, one->place);
}

/* Says what makes ONE, of PART, narrow. */
static void
scan_blame(Scan *scan, Part *part, SpvNarrow *one) {
  if (part->whole <= 0) {
    one->cause = scan_is_covered(scan, part, one) ? SPV_CAUSE_COVER : SPV_CAUSE_PATTERN;
  } else if (is_cut(scan, part)) {
    gboolean edge = spv_uncut_is_at_edge(scan->partition->composition, part->index, one->place,
                                         one->width / 2 + SPV_CHECK_EXACT);
    one->cause = edge ? SPV_CAUSE_EDGE : SPV_CAUSE_COVER;
  } else {
    /* What the edge leaves of a stripe says less than the stripe itself does. */
    one->cause = SPV_CAUSE_PATTERN;
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
  if (fabs(one->off - other->off) > SPV_CHECK_SAME)
    return one->off < other->off;
  return one->width < other->width;
}

/* Joins ONE to those of its layer and tincture. Where the pattern is at fault, what only cuts it isn't
 * counted. */
static void
join(GArray *found, const SpvNarrow *one) {
  for (guint i = 0; i < found->len; i++) {
    SpvNarrow *other = &g_array_index(found, SpvNarrow, i);

    if (other->layer != one->layer || other->tincture != one->tincture)
      continue;
    guint count = other->count + 1;
    if ((one->cause == SPV_CAUSE_PATTERN) != (other->cause == SPV_CAUSE_PATTERN))
      count = one->cause == SPV_CAUSE_PATTERN ? 1 : other->count;
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
    part_clear(&part);
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
    SpvNarrow one = { 0 };

    if (g_cancellable_set_error_if_cancelled(scan->cancellable, error))
      return FALSE;
    if (!scan_is_stroke(scan, part, i, &one.width, &one.place))
      continue;
    scan_blame(scan, part, &one);
    if (one.cause == SPV_CAUSE_PATTERN)
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
    part_clear(&part);
  }
  scan_clear(&scan);
  return clear;
}

/* Whether the tincture of shape INDEX is no other shape's. */
static gboolean
is_lone(const SpvComposition *composition, guint index) {
  const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, index);
  guint same = 0;

  for (guint i = 0; i < composition->shapes->len; i++)
    same += ((const SpvLaidShape *) g_ptr_array_index(composition->shapes, i))->tincture == laid->tincture;
  return same == 1;
}

/* Whether shape INDEX is to be seen at PLACE, and, unless it is LONE, no other of its tincture about there.
 */
static gboolean
is_plainly_seen(const SpvComposition *composition, guint index, double limit, gboolean lone, SpvPoint place) {
  const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, index);

  if (spv_composition_pick(composition, place) != (int) index)
    return FALSE;
  for (guint i = 0; !lone && i < 8; i++) {
    SpvPoint away = { limit * cos(i * G_PI_4), limit * sin(i * G_PI_4) };
    int there = spv_composition_pick(composition, spv_point_add(place, away));

    if (there < 0 || there == (int) index)
      continue;
    if (((const SpvLaidShape *) g_ptr_array_index(composition->shapes, there))->tincture == laid->tincture)
      return FALSE;
  }
  return TRUE;
}

/* As spv_narrow_alone(), for narrow CELLS, some of which are looked at. */
static SpvAlone
cells_alone(const SpvComposition *composition, guint index, double limit, const GPtrArray *cells) {
  gboolean lone = is_lone(composition, index);

  for (guint i = 1; i < SAMPLES; i++) {
    const SpvRing *cell = g_ptr_array_index(cells, (guint64) cells->len * i / SAMPLES);

    if (is_plainly_seen(composition, index, limit, lone, spv_box_centre(spv_ring_bounds(cell))))
      return SPV_ALONE_NARROW;
  }
  return SPV_ALONE_UNSURE;
}

SpvAlone
spv_narrow_alone(const SpvComposition *composition, guint index, double limit) {
  const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, index);
  const SpvDraft *draft = g_ptr_array_index(composition->drafts, laid->layer);
  double whole = spv_uncut_width(composition, index);
  SpvAlone alone = SPV_ALONE_WIDE;
  gsize n;

  if (whole >= limit - SPV_CHECK_SAME)
    return SPV_ALONE_WIDE;
  if (whole > 0 && draft->cells[laid->slot] != NULL && draft->cells[laid->slot]->len > 0)
    return cells_alone(composition, index, limit, draft->cells[laid->slot]);
  g_autoptr(SpvShape) uncut = spv_uncut_shape(composition, index);
  spv_shape_pieces(uncut, &n);
  for (gsize i = 0; i < n; i++) {
    SpvPoint place;
    double width;

    if (!spv_stroke_is_narrow(uncut, i, limit, &width, &place))
      continue;
    if (is_plainly_seen(composition, index, limit, is_lone(composition, index), place))
      return SPV_ALONE_NARROW;
    alone = SPV_ALONE_UNSURE;
  }
  return alone;
}

gboolean
spv_narrow_may_surface(const SpvComposition *composition, double limit, guint layer, const GArray *known) {
  for (guint i = 0; i < composition->shapes->len; i++) {
    const SpvLaidShape *laid = g_ptr_array_index(composition->shapes, i);

    if (laid->layer < layer && !is_known(known, laid->layer, laid->tincture) &&
        spv_narrow_alone(composition, i, limit) != SPV_ALONE_WIDE)
      return TRUE;
  }
  return FALSE;
}
