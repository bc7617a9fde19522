/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A layer: one pattern laid on a panel, with its tinctures. A sealed, counted value: read its fields, never
 * write them; each edit makes a new value. */
#pragma once

#include <jansson.h>

#include "heraldry/pattern.h"

typedef struct {
  const char *id;   /* unique within the panel's design */
  const char *name; /* what the painter calls it; never empty */
  SpvPattern pattern;
  const char *tinctures[SPV_PATTERN_SLOTS]; /* ids; NULL leaves what lies beneath (and where the kind has no
                                               such slot) */
  gboolean hidden;
  gboolean locked;
  /* private */
  json_t *unknown; /* members of a newer file, kept and written back; or NULL */
  gatomicrefcount refs;
} SpvLayer;

/* A layer of KIND at its presets, called by the kind's label; tinctures are ids or NULL. */
SpvLayer *spv_layer_new(const char *id, SpvPatternKind kind, const char *first, const char *second);
SpvLayer *spv_layer_ref(const SpvLayer *layer);
void spv_layer_unref(SpvLayer *layer);
gboolean spv_layer_equal(const SpvLayer *a, const SpvLayer *b);

/* Each returns a new reference: LAYER itself where nothing would change. */
SpvLayer *spv_layer_with_id(const SpvLayer *layer, const char *id);
SpvLayer *spv_layer_with_name(const SpvLayer *layer, const char *name);
SpvLayer *spv_layer_with_measure(const SpvLayer *layer, guint index, SpvMeasure value);
SpvLayer *spv_layer_with_tincture(const SpvLayer *layer, guint slot, const char *tincture);
SpvLayer *spv_layer_with_hidden(const SpvLayer *layer, gboolean hidden);
SpvLayer *spv_layer_with_locked(const SpvLayer *layer, gboolean locked);
SpvLayer *spv_layer_with_unknown(const SpvLayer *layer, json_t *unknown);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvLayer, spv_layer_unref)
