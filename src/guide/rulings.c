/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a draft's straight boundaries to rulings that end at the panel's edge. */
#include "guide/guide-private.h"

#include <math.h>

/* A chord shorter than this, mm, is no line to rule. */
#define SHORTEST_CHORD 0.01

/* Where a ruling could start or stop: a fraction of the way along the draft's line, and the place on the
 * outline's track. */
typedef struct {
  double t, s;
} Cut;

/* Where the draft's LINE crosses the outline, in order from its first end to its last. */
static GArray *
cuts_new(const SpvTrack *track, const SpvDraftLine *line) {
  g_autoptr(GArray) crossings = spv_track_crossings(track, line->from, line->to);
  SpvPoint along = spv_point_subtract(line->to, line->from);
  double squared = spv_point_dot(along, along);
  GArray *cuts = g_array_new(FALSE, FALSE, sizeof(Cut));

  for (guint i = 0; i < crossings->len; i++) {
    double s = g_array_index(crossings, double, i);
    SpvPoint from_start = spv_point_subtract(spv_track_at(track, s), line->from);
    Cut cut = { spv_point_dot(from_start, along) / squared, s };

    g_array_append_val(cuts, cut);
  }
  return cuts;
}

/* Whether the middle of the stretch from A to B lies inside the panel, off its edge. */
static gboolean
stretch_is_inside(const SpvOutline *outline, const SpvDraftLine *line, Cut a, Cut b) {
  SpvPoint middle = spv_point_between(line->from, line->to, (a.t + b.t) / 2);
  double distance;

  if (!spv_path_contains(spv_outline_path(outline), middle))
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

  if (t == cut.t) {
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

  g_autoptr(GArray) cuts = cuts_new(track, &line);
  for (guint i = 0; i + 1 < cuts->len; i++) {
    Cut a = g_array_index(cuts, Cut, i);
    Cut b = g_array_index(cuts, Cut, i + 1);
    double from = MAX(a.t, 0);
    double to = MIN(b.t, 1);

    if (from >= to || !stretch_is_inside(outline, &line, a, b))
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
