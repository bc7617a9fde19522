/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can be laid on a panel: a table of kinds, each with its measures, and the draft that one makes on an
 * outline. */
#pragma once

#include "heraldry/measure.h"
#include "heraldry/outline.h"

typedef enum {
  SPV_PATTERN_FIELD,
  SPV_PATTERN_PER_PALE,
  SPV_PATTERN_PER_FESS,
  SPV_PATTERN_PER_BEND,
  SPV_PATTERN_PER_BEND_SINISTER,
  SPV_PATTERN_PER_CHEVRON,
  SPV_PATTERN_PER_SALTIRE,
  SPV_PATTERN_QUARTERLY,
  SPV_PATTERN_PALY,
  SPV_PATTERN_BARRY,
  SPV_PATTERN_BENDY,
  SPV_PATTERN_CHECK,
  SPV_PATTERN_JAGGED_BORDER,
  SPV_PATTERN_BORDURE,
  SPV_PATTERN_CHIEF,
  SPV_PATTERN_ROUNDEL
} SpvPatternKind;
#define SPV_N_PATTERNS 16

#define SPV_PATTERN_MEASURES 7 /* the most that a kind has */
#define SPV_PATTERN_SLOTS 2    /* the most tinctures that a kind has */

/* The most pieces, cells in a row or points that a pattern draws: more than a hand could put on a panel of
 * any size. */
#define SPV_PATTERN_MAX_COUNT 200

typedef struct {
  SpvPatternKind kind;
  SpvMeasure measures[SPV_PATTERN_MEASURES]; /* in the order of the kind's info; unused ones AUTO */
} SpvPattern;

typedef enum { SPV_DOT_TIP, SPV_DOT_ROOT } SpvDotKind;

/* A place where the brush tip goes down. */
typedef struct {
  SpvDotKind kind;
  SpvPoint at;    /* mm; may lie outside the panel: the guide drops those */
  double s;       /* where on the outline's track it stands, mm from the datum, clockwise */
  double spacing; /* mm between neighbours along the edge */
} SpvDraftDot;

typedef enum { SPV_LINE_DIVISION, SPV_LINE_COLUMN, SPV_LINE_ROW } SpvLineKind;

/* A straight boundary, long enough to cross the panel, or ending where the pattern ends it. */
typedef struct {
  SpvLineKind kind;
  guint number; /* 1, 2, …: from dexter to sinister, or from the top down */
  SpvPoint from, to;
} SpvDraftLine;

/* A pattern laid on an outline, not yet clipped to it. */
typedef struct {
  /* The area of each slot; NULL where the kind has no such slot. Areas of the two slots do not overlap. */
  SpvPath *area[SPV_PATTERN_SLOTS];
  /* Where a slot is made of many disjoint convex cells, the same area as an array of SpvRing;
   * otherwise NULL. */
  GPtrArray *cells[SPV_PATTERN_SLOTS];
  GArray *dots;            /* SpvDraftDot */
  gboolean dots_all_round; /* the dots go all round the outline; otherwise they belong to DOTS_EDGE */
  SpvEdge dots_edge;
  GArray *lines;           /* SpvDraftLine */
  double smallest_partial; /* check: the narrower side of the narrowest cell that the edge cuts, mm; 0 when
                              none is cut */
} SpvDraft;

typedef struct {
  const char *key;   /* in the file */
  const char *label; /* on screen, untranslated */
  guint n_slots;
  const char *slots[SPV_PATTERN_SLOTS]; /* what each tincture covers, untranslated */
  guint n_measures;
  const SpvMeasureSpec *measures;
  void (*lay)(const SpvPattern *pattern, const SpvOutline *outline, SpvDraft *draft);
} SpvPatternInfo;

const SpvPatternInfo *spv_pattern_info(SpvPatternKind kind);
gboolean spv_pattern_kind_from_key(const char *key, SpvPatternKind *kind);
/* The index of the measure called KEY, or -1. */
int spv_pattern_measure_index(SpvPatternKind kind, const char *key);

/* KIND with every measure at its preset. */
SpvPattern spv_pattern_preset(SpvPatternKind kind);

/* Measure INDEX of PATTERN in the core's units on OUTLINE (see spv_measure_resolve()). */
double spv_pattern_measure(const SpvPattern *pattern, guint index, const SpvOutline *outline,
                           double fallback);

/* Lays PATTERN on OUTLINE. Measures that are valid for their spec but make no sense together (no depth, more
 * points than fit, a place outside the panel) give a draft that is empty or crowded, never a failure. Free
 * with spv_draft_free(). */
SpvDraft *spv_pattern_lay(const SpvPattern *pattern, const SpvOutline *outline);
void spv_draft_free(SpvDraft *draft);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvDraft, spv_draft_free)
