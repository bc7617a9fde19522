/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The parts of a check: measuring strokes, trying out remedies, and the measures that can mend. */
#pragma once

#include "check/check.h"

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
