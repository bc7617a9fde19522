/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a hand could not paint: findings, each with its place, its number and what would mend it. */
#pragma once

#include "compose/compose.h"

typedef enum {
  SPV_SEVERITY_NOTE,   /* worth knowing */
  SPV_SEVERITY_WARNING /* finer than the painter's line */
} SpvSeverity;

typedef enum {
  SPV_FINDING_NARROW_STROKE, /* a region's narrowest stroke is finer than the painter's finest line */
  SPV_FINDING_BARE,          /* the panel has a visible layer, but part of it has no tincture */
  SPV_FINDING_NOT_MEASURED   /* the panel still has the harness's typical sizes */
} SpvFindingKind;

/* What makes a stroke narrow. */
typedef enum {
  SPV_CAUSE_PATTERN, /* the pattern itself is that fine: a warning */
  SPV_CAUSE_EDGE,    /* cells or stripes are wide enough; the panel's edge cuts one here: a note */
  SPV_CAUSE_COVER /* it is wide enough to be painted whole; later layers, that are painted over it, leave no
                     more of it to be seen: a note */
} SpvCause;

/* One change that would clear the finding. */
typedef struct {
  guint layer;      /* index into the panel's layers */
  guint measure;    /* index into the layer's measures */
  SpvMeasure value; /* what to set it to */
} SpvRemedy;

typedef struct {
  SpvFindingKind kind;
  SpvSeverity severity;
  guint panel;    /* index into the scheme's panels */
  int layer;      /* index into the panel's layers, or -1 */
  int tincture;   /* index into the scheme's tinctures, or -1 */
  SpvPoint place; /* mm on the panel */
  double width;   /* mm: what was measured; 0 where there is nothing to measure */
  double limit;   /* mm: what it was held against */
  guint count;    /* how many pieces of this layer and tincture are finer than LIMIT for the like cause */
  SpvCause cause; /* NARROW_STROKE */
  double share;   /* BARE: of the panel's area, above 0 to 1 */
  gboolean has_remedy;
  SpvRemedy remedy; /* when HAS_REMEDY: tried out, and found to clear the finding */
} SpvFinding;

/* The findings on panel PANEL of SCHEME, worst first; SpvFinding in a GPtrArray. NULL, with ERROR set, only
 * when cancelled. */
GPtrArray *spv_check_panel(const SpvScheme *scheme, guint panel, GCancellable *cancellable, GError **error);

/* All panels, in the harness's order. PROGRESS (may be NULL) is told the fraction done, 0 to 1. */
GPtrArray *spv_check_scheme(const SpvScheme *scheme, GCancellable *cancellable,
                            void (*progress)(double fraction, gpointer data), gpointer data, GError **error);

/* "Cells are 0.21 mm wide; your line is 0.25 mm." One sentence, translated; free with g_free(). */
char *spv_finding_message(const SpvFinding *finding, const SpvScheme *scheme);
/* "Four columns would do." What to do, or NULL when there is no more to say; translated; free with g_free().
 */
char *spv_finding_remedy(const SpvFinding *finding, const SpvScheme *scheme);
/* "narrow-stroke", as in JSON. */
const char *spv_finding_key(SpvFindingKind kind);
/* "warning", as in JSON. */
const char *spv_severity_key(SpvSeverity severity);
/* "pattern", "edge" or "cover", as in JSON. */
const char *spv_cause_key(SpvCause cause);

/* The scheme with the remedy carried out. */
SpvScheme *spv_finding_apply(const SpvFinding *finding, const SpvScheme *scheme);
