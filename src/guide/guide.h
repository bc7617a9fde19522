/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the painter measures and marks before the first stroke: dots and rulings, with offsets that calipers
 * can set. Millimetres on the flat panel; exact here, rounded to 0.05 mm where they are said
 * (spv_guide_round()). */
#pragma once

#include "compose/compose.h"

typedef struct {
  guint number; /* 1, 2, … over the whole panel, in the order in which the dots are put down */
  guint layer;  /* index into the panel's layers */
  SpvDotKind kind;
  SpvPoint at;       /* x from the centre line (positive: to the viewer's right), y below the datum */
  SpvEdge edge;      /* the edge that it stands on */
  double along;      /* along that edge, from its dexter or upper end */
  double from_datum; /* along the outline from the datum, positive towards the wearer's sinister */
} SpvDot;

typedef struct {
  SpvPoint at;
  SpvEdge edge;
  double along, from_datum; /* as in SpvDot */
} SpvRulingEnd;

typedef struct {
  guint number; /* 1, 2, … over the whole panel */
  guint layer;
  SpvLineKind kind;
  guint index;          /* which column, row or boundary of its layer: 1, 2, … */
  SpvRulingEnd ends[2]; /* dexter end first; the upper one where the ruling is upright */
} SpvRuling;

/* The even spacing of one run of dots. */
typedef struct {
  guint layer;
  SpvDotKind kind;
  guint first, last; /* numbers of its dots */
  double spacing;    /* between neighbours along the edge, mm */
} SpvDotRun;

typedef struct {
  SpvComposition *composition;
  GArray *dots;    /* SpvDot */
  GArray *rulings; /* SpvRuling */
  GArray *runs;    /* SpvDotRun */
} SpvGuide;

/* The guide of one panel: for each visible layer, bottom first, the dots of its tips, then of its roots, from
 * dexter to sinister; the rulings of its straight boundaries, cut at the outline. Dots outside the panel, or
 * under a later layer, are left out. */
SpvGuide *spv_guide_new(const SpvComposition *composition);
void spv_guide_free(SpvGuide *guide);

/* MM to the nearest 0.05, what calipers and dividers can set. */
double spv_guide_round(double mm);

/* "1.40": a length for the painter, rounded by spv_guide_round(), with a point whatever the locale. Free with
 * g_free(). */
char *spv_guide_format(double mm);

/* What the ruling is called: "column 3", "row 2", "division 1". Translated; free with g_free(). */
char *spv_ruling_name(const SpvRuling *ruling);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvGuide, spv_guide_free)
