/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can be laid on a panel: a table of kinds, each with its measures, and the draft that one makes on an
 * outline. */
#pragma once

#include "heraldry/frame.h"
#include "heraldry/kinds.h"
#include "heraldry/measure.h"

#define SPV_PATTERN_MEASURES 12 /* the most that a kind has */
#define SPV_PATTERN_SLOTS 3     /* the most tinctures that a kind has */
#define SPV_PATTERN_TEXTS 2     /* the most texts that a kind has */

/* The most pieces, cells in a row or points that a pattern draws: more than a hand could put on a panel of
 * any size. */
#define SPV_PATTERN_MAX_COUNT 200

typedef struct {
  SpvPatternKind kind;
  gboolean mirrored; /* laid as its own mirror image in the centre line of what it is laid on */
  SpvMeasure measures[SPV_PATTERN_MEASURES]; /* in the order of the kind's info; unused ones AUTO */
  const char *texts[SPV_PATTERN_TEXTS];      /* likewise; borrowed; NULL where none is given */
} SpvPattern;

/* What a kind says of each of its texts: words, a path, how charges stand in rows. */
typedef struct {
  const char *key;    /* in the file */
  const char *label;  /* on screen, untranslated */
  const char *hint;   /* likewise */
  const char *preset; /* what stands for a text that is not given; NULL: none */
  /* Whether TEXT (valid UTF-8, at most SPV_PATTERN_TEXT_MAX bytes) can be laid. Sets ERROR
   * (SPV_PATTERN_ERROR) with what is wrong, where in the text, and what would do. */
  gboolean (*check)(const char *text, GError **error);
} SpvTextSpec;

#define SPV_PATTERN_TEXT_MAX (256 * 1024) /* bytes */

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
  /* The area of each slot; NULL where the kind has no such slot. Areas of different slots do not overlap. */
  SpvPath *area[SPV_PATTERN_SLOTS];
  /* Where a slot is made of many disjoint convex cells, the same area as an array of SpvRing; otherwise NULL.
   * A kind of two slots has cells for both, which cover the panel between them, or for neither. */
  GPtrArray *cells[SPV_PATTERN_SLOTS];
  GArray *dots;            /* SpvDraftDot */
  gboolean dots_all_round; /* the dots go all round the outline; otherwise they belong to DOTS_EDGE */
  SpvEdge dots_edge;
  GArray *lines;           /* SpvDraftLine */
  double smallest_partial; /* check: the narrower side of the narrowest cell that the edge cuts, mm; 0 when
                              none is cut */
  SpvFrame *frame; /* what another layer is laid on that is laid on this one; NULL: the panel, whole */
} SpvDraft;

typedef struct {
  const char *key;   /* in the file */
  const char *label; /* on screen, untranslated: the word of a blazon */
  guint n_slots;
  const char *slots[SPV_PATTERN_SLOTS]; /* what each tincture covers, untranslated */
  guint n_measures;
  const SpvMeasureSpec *measures;
  /* Lays PATTERN on FRAME's outline, in FRAME's mm. */
  void (*lay)(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft);
  guint n_texts;
  const SpvTextSpec *texts;
} SpvPatternInfo;

const SpvPatternInfo *spv_pattern_info(SpvPatternKind kind);
gboolean spv_pattern_kind_from_key(const char *key, SpvPatternKind *kind);
/* The index of the measure or the text called KEY, or -1. */
int spv_pattern_measure_index(SpvPatternKind kind, const char *key);
int spv_pattern_text_index(SpvPatternKind kind, const char *key);

/* KIND with every measure at its preset, and no texts. */
SpvPattern spv_pattern_preset(SpvPatternKind kind);

/* Measure INDEX of PATTERN in the core's units on OUTLINE (see spv_measure_resolve()). */
double spv_pattern_measure(const SpvPattern *pattern, guint index, const SpvOutline *outline,
                           double fallback);
/* Text INDEX of PATTERN, or its preset, or NULL; borrowed. */
const char *spv_pattern_text(const SpvPattern *pattern, guint index);
/* Whether measure INDEX has any effect on PATTERN as it stands: one that belongs to a choice (its spec's
 * `when`) has none while the choice is its first. */
gboolean spv_pattern_measure_counts(const SpvPattern *pattern, guint index);

/* Lays PATTERN on a panel. Measures that are valid for their spec but make no sense together (no depth, more
 * points than fit, a place outside the panel) give a draft that is empty or crowded, never a failure. Free
 * with spv_draft_free(). */
SpvDraft *spv_pattern_lay(const SpvPattern *pattern, const SpvOutline *outline);
/* Lays PATTERN on FRAME; the draft is in the panel's mm, and not clipped to FRAME. Its dots stand on OUTLINE,
 * the panel's. */
SpvDraft *spv_pattern_lay_on(const SpvPattern *pattern, const SpvFrame *frame, const SpvOutline *outline);
void spv_draft_free(SpvDraft *draft);

typedef enum {
  SPV_PATTERN_ERROR_TEXT,  /* a text that can't be laid: a path that is none, rows that are none */
  SPV_PATTERN_ERROR_BLAZON /* see heraldry/blazon.h */
} SpvPatternError;
#define SPV_PATTERN_ERROR (spv_pattern_error_quark())
GQuark spv_pattern_error_quark(void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvDraft, spv_draft_free)
