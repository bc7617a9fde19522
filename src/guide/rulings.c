/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a draft's straight boundaries to rulings that end at the panel's edge. */
#include "guide/guide-private.h"

#include <math.h>

/* A chord shorter than this, mm, is no line to rule. */
#define SHORTEST_CHORD 0.01

/* Where a ruling could start or stop: a fraction of the way along the draft's line, and the place on the
 * outline's track; NAN where it is what the layer is laid on that ends there. */
typedef struct {
  double t, s;
} Cut;

/* Adds where the draft's LINE crosses TRACK, which may be the OUTLINE's. */
static void
add_cuts(GArray *cuts, const SpvTrack *track, gboolean outline, const SpvDraftLine *line) {
  g_autoptr(GArray) crossings = spv_track_crossings(track, line->from, line->to);
  SpvPoint along = spv_point_subtract(line->to, line->from);
  double squared = spv_point_dot(along, along);

  for (guint i = 0; i < crossings->len; i++) {
    double s = g_array_index(crossings, double, i);
    SpvPoint from_start = spv_point_subtract(spv_track_at(track, s), line->from);
    Cut cut = { spv_point_dot(from_start, along) / squared, outline ? s : NAN };

    g_array_append_val(cuts, cut);
  }
}

static int
compare_cuts(gconstpointer a, gconstpointer b) {
  double one = ((const Cut *) a)->t, other = ((const Cut *) b)->t;

  return (one > other) - (one < other);
}

/* Where LINE crosses the outline and the edges of what its layer is laid on (CLIPS, SpvPath; or NULL), in
 * order from its first end to its last. */
static GArray *
cuts_new(const SpvTrack *track, const GPtrArray *clips, const SpvDraftLine *line) {
  GArray *cuts = g_array_new(FALSE, FALSE, sizeof(Cut));

  add_cuts(cuts, track, TRUE, line);
  for (guint i = 0; clips != NULL && i < clips->len; i++) {
    g_autoptr(GPtrArray) rings = spv_path_flatten(g_ptr_array_index(clips, i), SPV_CHORD_ERROR);

    for (guint k = 0; k < rings->len; k++) {
      const SpvRing *ring = g_ptr_array_index(rings, k);
      g_autoptr(SpvTrack) edge = spv_track_new(ring->points, ring->n_points, TRUE);
      add_cuts(cuts, edge, FALSE, line);
    }
  }
  g_array_sort(cuts, compare_cuts);
  return cuts;
}

/* Whether the middle of the stretch from A to B lies inside the panel, off its edge, and on what its layer is
 * laid on. */
static gboolean
stretch_is_inside(const SpvOutline *outline, const GPtrArray *clips, const SpvDraftLine *line, Cut a, Cut b) {
  SpvPoint middle = spv_point_between(line->from, line->to, (a.t + b.t) / 2);
  double distance;

  if (!spv_path_contains(spv_outline_path(outline), middle))
    return FALSE;
  for (guint i = 0; clips != NULL && i < clips->len; i++)
    if (!spv_path_contains(g_ptr_array_index(clips, i), middle))
      return FALSE;
  spv_track_locate(spv_outline_track(outline), middle, &distance);
  return distance > SPV_GUIDE_ON_EDGE;
}

/* The end at CUT, or at the line's own end T where that comes first. */
static SpvRulingEnd
ruling_end(const SpvOutline *outline, const SpvDraftLine *line, Cut cut, double t) {
  const SpvTrack *track = spv_outline_track(outline);
  SpvRulingEnd end;
  double s = cut.s;

  if (t == cut.t && !isnan(s)) {
    end.at = spv_track_at(track, s);
  } else {
    end.at = spv_point_between(line->from, line->to, t);
    s = spv_track_locate(track, end.at, NULL);
  }
  end.edge = spv_outline_edge_at(outline, s);
  end.along = spv_outline_along_edge(outline, s);
  end.from_datum = spv_outline_from_datum(outline, s);
  return end;
}

/* Whether A to B runs as a ruling is read: from dexter, or down where it is upright. */
static gboolean
reads_forwards(SpvPoint a, SpvPoint b) {
  if (fabs(a.x - b.x) > SPV_GUIDE_ON_EDGE)
    return a.x < b.x;
  return a.y <= b.y;
}

static void
add_line(SpvGuide *guide, guint layer, const SpvDraftLine *given) {
  const SpvOutline *outline = guide->composition->outline;
  const SpvTrack *track = spv_outline_track(outline);
  SpvDraftLine line = *given;

  if (spv_point_distance(line.from, line.to) < SHORTEST_CHORD)
    return;
  if (!reads_forwards(line.from, line.to)) {
    line.from = given->to;
    line.to = given->from;
  }

  const GPtrArray *clips = g_ptr_array_index(guide->composition->clips, layer);
  g_autoptr(GArray) cuts = cuts_new(track, clips, &line);
  for (guint i = 0; i + 1 < cuts->len; i++) {
    Cut a = g_array_index(cuts, Cut, i);
    Cut b = g_array_index(cuts, Cut, i + 1);
    double from = MAX(a.t, 0);
    double to = MIN(b.t, 1);

    if (from >= to || !stretch_is_inside(outline, clips, &line, a, b))
      continue;
    SpvRuling ruling = {
      .number = guide->rulings->len + 1,
      .layer = layer,
      .kind = line.kind,
      .index = line.number,
      .ends = { ruling_end(outline, &line, a, from), ruling_end(outline, &line, b, to) },
    };
    if (spv_point_distance(ruling.ends[0].at, ruling.ends[1].at) >= SHORTEST_CHORD)
      g_array_append_val(guide->rulings, ruling);
  }
}

void
spv_guide_add_rulings(SpvGuide *guide) {
  const SpvComposition *composition = guide->composition;

  for (guint layer = 0; layer < composition->drafts->len; layer++) {
    const SpvDraft *draft = g_ptr_array_index(composition->drafts, layer);

    if (draft == NULL || !spv_guide_layer_is_laid(composition, layer))
      continue;
    for (guint i = 0; i < draft->lines->len; i++)
      add_line(guide, layer, &g_array_index(draft->lines, SpvDraftLine, i));
  }
}
