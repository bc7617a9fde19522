/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a layer's draft dots to numbered ones, in the order in which the painter puts them down. */
#include "guide/guide-private.h"

#include <math.h>

/* How far inside the panel to look, mm, when asking what is laid over a dot on its edge. */
#define LOOK_INSIDE 1e-3

/* Two spacings, mm, that differ by less are one. */
#define SAME_SPACING 1e-6

/* One run of a laid shape, flattened, and the box of all that is on it or in it. */
typedef struct {
  SpvBox box;
  const SpvRing *ring;
} Run;

/* One laid shape. */
typedef struct {
  guint layer;
  GPtrArray *rings; /* SpvRing */
  GArray *runs;     /* Run, by the left ends of their boxes */
  double widest;    /* of their boxes, mm */
  GPtrArray *clips; /* Cover: what cuts it */
} Cover;

/* A draft's dots on their way into the guide. */
typedef struct {
  const SpvDraftDot *dot;
  double order; /* mm along the edge in the painter's direction */
  guint index;  /* in the draft: breaks ties */
} Candidate;

/* Where the dots of one layer stand. */
typedef struct {
  const SpvOutline *outline;
  double length;     /* of the outline's track, mm */
  gboolean one_edge; /* on EDGE, or else all round */
  SpvEdge edge;
  double s0, s1; /* of EDGE */
} Stand;

static void
cover_free(gpointer data) {
  Cover *cover = data;

  g_array_unref(cover->runs);
  g_ptr_array_unref(cover->rings);
  g_ptr_array_unref(cover->clips);
  g_free(cover);
}

static int
compare_runs(gconstpointer a, gconstpointer b) {
  double one = ((const Run *) a)->box.x0, other = ((const Run *) b)->box.x0;

  return (one > other) - (one < other);
}

/* A cover of AREA, of layer LAYER, that nothing cuts yet. */
static Cover *
cover_of(const SpvPath *area, guint layer) {
  Cover *cover = g_new0(Cover, 1);

  cover->layer = layer;
  cover->clips = g_ptr_array_new_with_free_func(cover_free);
  cover->rings = spv_path_flatten(area, SPV_CHORD_ERROR);
  cover->runs = g_array_new(FALSE, FALSE, sizeof(Run));
  for (guint i = 0; i < cover->rings->len; i++) {
    const SpvRing *ring = g_ptr_array_index(cover->rings, i);
    Run run = { spv_box_grow(spv_ring_bounds(ring), SPV_GUIDE_ON_EDGE), ring };

    g_array_append_val(cover->runs, run);
    cover->widest = MAX(cover->widest, spv_box_width(run.box));
  }
  g_array_sort(cover->runs, compare_runs);
  return cover;
}

static Cover *
cover_new(const SpvLaidShape *shape) {
  Cover *cover = cover_of(shape->area, shape->layer);

  for (guint i = 0; shape->clips != NULL && i < shape->clips->len; i++)
    g_ptr_array_add(cover->clips, cover_of(g_ptr_array_index(shape->clips, i), shape->layer));
  return cover;
}

static GPtrArray *
covers_new(const SpvComposition *composition) {
  GPtrArray *covers = g_ptr_array_new_with_free_func(cover_free);

  for (guint i = 0; i < composition->shapes->len; i++)
    g_ptr_array_add(covers, cover_new(g_ptr_array_index(composition->shapes, i)));
  return covers;
}

/* The index of the first run whose box starts at X or to the right of it. */
static guint
first_run_from(const GArray *runs, double x) {
  guint low = 0, high = runs->len;

  while (low < high) {
    guint middle = (low + high) / 2;

    if (g_array_index(runs, Run, middle).box.x0 < x)
      low = middle + 1;
    else
      high = middle;
  }
  return low;
}

static gboolean
ring_passes_near(const SpvRing *ring, SpvPoint point) {
  for (gsize i = 0; i < ring->n_points; i++) {
    SpvPoint a = ring->points[i];
    SpvPoint b = ring->points[i + 1 < ring->n_points ? i + 1 : 0];

    if (spv_point_to_segment(point, a, b) <= SPV_GUIDE_ON_EDGE)
      return TRUE;
  }
  return FALSE;
}

/* Whether POINT lies inside the area of COVER, and not on its edge. */
static gboolean
is_inside(const Cover *cover, SpvPoint point) {
  int winding = 0;

  for (guint i = first_run_from(cover->runs, point.x - cover->widest); i < cover->runs->len; i++) {
    const Run *run = &g_array_index(cover->runs, Run, i);

    if (run->box.x0 > point.x)
      break;
    if (run->box.x1 < point.x || run->box.y0 > point.y || run->box.y1 < point.y)
      continue;
    if (ring_passes_near(run->ring, point))
      return FALSE;
    winding += spv_ring_winding(run->ring, point);
  }
  return winding != 0;
}

/* Likewise inside all that cuts COVER. */
static gboolean
cover_hides(const Cover *cover, SpvPoint point) {
  if (!is_inside(cover, point))
    return FALSE;
  for (guint i = 0; i < cover->clips->len; i++)
    if (!is_inside(g_ptr_array_index(cover->clips, i), point))
      return FALSE;
  return TRUE;
}

static gboolean
is_hidden(GPtrArray *covers, guint layer, SpvPoint point) {
  for (guint i = 0; i < covers->len; i++) {
    const Cover *cover = g_ptr_array_index(covers, i);

    if (cover->layer > layer && cover_hides(cover, point))
      return TRUE;
  }
  return FALSE;
}

/* Whether AT lies on what LAYER is laid on. */
static gboolean
is_borne(const SpvComposition *composition, guint layer, SpvPoint at) {
  const GPtrArray *clips = g_ptr_array_index(composition->clips, layer);

  for (guint i = 0; clips != NULL && i < clips->len; i++)
    if (!spv_path_contains(g_ptr_array_index(clips, i), at))
      return FALSE;
  return TRUE;
}

/* Whether the painter sees AT: in the panel or on its edge, on what the layer is laid on, and not under a
 * later layer. */
static gboolean
is_seen(const SpvComposition *composition, GPtrArray *covers, guint layer, SpvPoint at) {
  if (!is_borne(composition, layer, at))
    return FALSE;
  const SpvTrack *track = spv_outline_track(composition->outline);
  double distance;
  double s = spv_track_locate(track, at, &distance);

  if (distance <= SPV_GUIDE_ON_EDGE) {
    /* A layer that runs along the panel's edge ends where the dot is; what counts is the panel beside it. */
    SpvPoint inward = spv_point_scale(spv_track_normal(track, s), LOOK_INSIDE);

    return !is_hidden(covers, layer, at) && !is_hidden(covers, layer, spv_point_add(at, inward));
  }
  return spv_path_contains(spv_outline_path(composition->outline), at) && !is_hidden(covers, layer, at);
}

static Stand
stand_of(const SpvOutline *outline, const SpvDraft *draft) {
  Stand stand = { .outline = outline, .length = spv_track_length(spv_outline_track(outline)) };

  stand.one_edge = !draft->dots_all_round;
  stand.edge = draft->dots_edge;
  if (stand.one_edge)
    spv_outline_edge(outline, stand.edge, &stand.s0, &stand.s1);
  return stand;
}

/* S moved by whole turns of the outline to within half a turn of the edge's middle. */
static double
stand_unwrap(const Stand *stand, double s) {
  double middle = (stand->s0 + stand->s1) / 2;

  return s - stand->length * round((s - middle) / stand->length);
}

/* Whether the painter reads EDGE against the outline's own, clockwise way: the base from the viewer's left,
 * the dexter side from the top. */
static gboolean
reads_backwards(SpvEdge edge) {
  return edge == SPV_EDGE_BASE || edge == SPV_EDGE_DEXTER;
}

static double
stand_order(const Stand *stand, double s) {
  if (stand->one_edge) {
    double unwrapped = stand_unwrap(stand, s);

    return reads_backwards(stand->edge) ? -unwrapped : unwrapped;
  }

  double turned = fmod(s, stand->length);
  if (turned < 0)
    turned += stand->length;
  /* A dot on the datum comes first, on whichever side of it rounding has put it. */
  return turned > stand->length - SPV_GUIDE_ON_EDGE ? turned - stand->length : turned;
}

/* The place of S in words that the painter can measure. */
static void
stand_place(const Stand *stand, double s, SpvDot *dot) {
  dot->edge = spv_outline_edge_at(stand->outline, s);
  dot->along = spv_outline_along_edge(stand->outline, s);
  dot->from_datum = spv_outline_from_datum(stand->outline, s);
  if (!stand->one_edge || dot->edge == stand->edge)
    return;

  /* The end of the run's own edge is measured on that edge, not on the one that starts there. */
  double unwrapped = stand_unwrap(stand, s);
  if (unwrapped < stand->s0 - SPV_GUIDE_ON_EDGE || unwrapped > stand->s1 + SPV_GUIDE_ON_EDGE)
    return;
  dot->edge = stand->edge;
  dot->along = reads_backwards(stand->edge) ? stand->s1 - unwrapped : unwrapped - stand->s0;
}

static int
compare_candidates(gconstpointer a, gconstpointer b) {
  const Candidate *one = a;
  const Candidate *other = b;

  if (one->order != other->order)
    return one->order < other->order ? -1 : 1;
  return one->index < other->index ? -1 : one->index > other->index;
}

/* The draft's dots of KIND, in the painter's order. */
static GArray *
candidates_new(const SpvDraft *draft, const Stand *stand, SpvDotKind kind) {
  GArray *candidates = g_array_new(FALSE, FALSE, sizeof(Candidate));

  for (guint i = 0; i < draft->dots->len; i++) {
    const SpvDraftDot *dot = &g_array_index(draft->dots, SpvDraftDot, i);
    Candidate candidate = { dot, stand_order(stand, dot->s), i };

    if (dot->kind == kind)
      g_array_append_val(candidates, candidate);
  }
  g_array_sort(candidates, compare_candidates);
  return candidates;
}

/* Closes RUN, if it is one: a lone dot has no neighbour to be spaced from. */
static void
end_run(SpvGuide *guide, SpvDotRun *run) {
  if (run->last > run->first)
    g_array_append_val(guide->runs, *run);
  run->first = run->last = 0;
}

/* Adds dot NUMBER to RUN, which is closed first where the spacing changes. */
static void
extend_run(SpvGuide *guide, SpvDotRun *run, guint number, double spacing) {
  if (run->first != 0 && fabs(run->spacing - spacing) > SAME_SPACING)
    end_run(guide, run);
  if (run->first == 0) {
    run->first = number;
    run->spacing = spacing;
  }
  run->last = number;
}

static void
add_kind(SpvGuide *guide, GPtrArray *covers, guint layer, const Stand *stand, SpvDotKind kind) {
  const SpvDraft *draft = g_ptr_array_index(guide->composition->drafts, layer);
  g_autoptr(GArray) candidates = candidates_new(draft, stand, kind);
  SpvDotRun run = { .layer = layer, .kind = kind };

  for (guint i = 0; i < candidates->len; i++) {
    const SpvDraftDot *from = g_array_index(candidates, Candidate, i).dot;

    if (!is_seen(guide->composition, covers, layer, from->at)) {
      end_run(guide, &run);
      continue;
    }
    SpvDot dot = { .number = guide->dots->len + 1, .layer = layer, .kind = kind, .at = from->at };
    stand_place(stand, from->s, &dot);
    g_array_append_val(guide->dots, dot);
    extend_run(guide, &run, dot.number, from->spacing);
  }
  end_run(guide, &run);
}

void
spv_guide_add_dots(SpvGuide *guide) {
  const SpvComposition *composition = guide->composition;
  g_autoptr(GPtrArray) covers = covers_new(composition);

  for (guint layer = 0; layer < composition->drafts->len; layer++) {
    const SpvDraft *draft = g_ptr_array_index(composition->drafts, layer);

    if (draft == NULL || draft->dots->len == 0 || !spv_guide_layer_is_laid(composition, layer))
      continue;
    Stand stand = stand_of(composition->outline, draft);
    add_kind(guide, covers, layer, &stand, SPV_DOT_TIP);
    add_kind(guide, covers, layer, &stand, SPV_DOT_ROOT);
  }
}
