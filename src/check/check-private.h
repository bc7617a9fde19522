/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The parts of a check: measuring strokes, trying out remedies, and the measures that can mend. */
#pragma once

#include "check/check.h"

/* Widths that differ by less, mm, are one. */
#define SPV_CHECK_SAME 1e-6

/* How exactly a width is measured, mm: a flattened curve lies inside its curve by SPV_CHORD_ERROR on either
 * side, and spv_piece_narrowest() has an error of its own. */
#define SPV_CHECK_EXACT (2 * SPV_CHORD_ERROR + 0.0005)

/* Whether piece INDEX of SHAPE is finer than LIMIT mm; how fine, mm, and where then go to WIDTH and PLACE.
 * Dust is not. */
gboolean spv_stroke_is_narrow(const SpvShape *shape, gsize index, double limit, double *width,
                              SpvPoint *place);
/* How far POINT lies from RING's edge, mm, whichever side of it. */
double spv_stroke_clearance(const SpvRing *ring, SpvPoint point);
/* What is left of SHAPE under a disc of diameter LIMIT mm, or a hair less. */
SpvShape *spv_stroke_erode(const SpvShape *shape, double limit);
/* Whether a disc of diameter LIMIT reaches PLACE from what is left, ERODED by spv_stroke_erode(). */
gboolean spv_stroke_reaches(const SpvShape *eroded, double limit, SpvPoint place);

/* How wide every cell, stripe or spot of shape INDEX of COMPOSITION is before anything cuts it, mm. 0 for what
 * does not repeat: there, what the edge leaves of it is what counts. */
double spv_uncut_width(const SpvComposition *composition, guint index);
/* Whether PLACE lies within MM of the panel's edge, or of an edge of what shape INDEX is laid on. */
gboolean spv_uncut_is_at_edge(const SpvComposition *composition, guint index, SpvPoint place, double mm);
/* What shape INDEX of COMPOSITION covers of the panel before later layers cover it. */
SpvShape *spv_uncut_shape(const SpvComposition *composition, guint index);
/* Whether no later layer lies over LAYER, which lays something. */
gboolean spv_uncut_is_topmost(const SpvComposition *composition, guint layer);

/* The pieces of TINCTURE's region in which parts of several shapes meet; empty when there are none. */
SpvShape *spv_joint_region(const SpvPartition *partition, guint tincture);
/* The pieces of what shows of shape INDEX that are no piece of its tincture's region by themselves. */
SpvShape *spv_joint_part(const SpvPartition *partition, guint index);

/* The narrow pieces of one layer, tincture and kind of cause. */
typedef struct {
  int layer;    /* index into the panel's layers */
  int tincture; /* index into the scheme's tinctures */
  SpvCause cause;
  SpvPoint place; /* of the narrowest */
  double width;   /* mm, of the narrowest; of the whole cell or stripe where that is at fault */
  double off;     /* mm, how far the piece at PLACE is from a whole cell or stripe; otherwise 0 */
  guint count;
} SpvNarrow;

/* Everything on PARTITION that is finer than LIMIT mm: SpvNarrow, at most one a layer and tincture. NULL,
 * with ERROR set, only when cancelled. */
GArray *spv_narrow_find(const SpvPartition *partition, double limit, GCancellable *cancellable,
                        GError **error);

/* Whether PARTITION has no pattern of LAYER finer than LIMIT, and none of a layer below it but those in KNOWN
 * (SpvNarrow); what lies above can't have changed. FALSE, with ERROR set, when cancelled. */
gboolean spv_narrow_is_clear(const SpvPartition *partition, double limit, guint layer, const GArray *known,
                             GCancellable *cancellable, GError **error);

/* What can be said of a shape before the partition is known. */
typedef enum {
  SPV_ALONE_WIDE,   /* its pattern is as wide as the line: no warning */
  SPV_ALONE_NARROW, /* finer, and to be seen: a warning */
  SPV_ALONE_UNSURE  /* finer, but covered, or another shape of its tincture may widen it */
} SpvAlone;

/* What can be said of shape INDEX by what it lays. Much quicker than a partition. */
SpvAlone spv_narrow_alone(const SpvComposition *composition, guint index, double limit);

/* Whether a change of LAYER may bring to light a pattern of a layer below that is finer than LIMIT, and not
 * in KNOWN (SpvNarrow). */
gboolean spv_narrow_may_surface(const SpvComposition *composition, double limit, guint layer,
                                const GArray *known);

/* Searches for the smallest change of one measure that clears the layer of NARROW, one of the warnings in
 * KNOWN (SpvNarrow), and tries it out. FOUND says whether there is one; it then goes to REMEDY. FALSE, with
 * ERROR set, when cancelled. */
gboolean spv_remedy_find(const SpvPartition *partition, const SpvNarrow *narrow, const GArray *known,
                         GCancellable *cancellable, SpvRemedy *remedy, gboolean *found, GError **error);

/* SCHEME with REMEDY carried out on panel PANEL. */
SpvScheme *spv_remedy_apply(const SpvRemedy *remedy, guint panel, const SpvScheme *scheme);

/* Whether measure KEY is one whose size a remedy may change, rather than a place or a choice. */
gboolean spv_words_can_mend(const char *key);

/* The key of the measure that takes KEY's place where it is given, or NULL. */
const char *spv_words_overruled_by(const char *key);
