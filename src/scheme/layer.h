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
  /* Ids of layers below it, or NULL. */
  const char *on; /* what it is laid on, and cut to: an ordinary, a border or a charge; otherwise the panel */
  const char *counterchange; /* a layer of two tinctures: it shows each of them where that one shows the
                                other, and not its own */
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
/* Whether other layers can be laid on KIND: it covers one part of the panel. */
gboolean spv_kind_can_bear(SpvPatternKind kind);
/* Whether other layers can be counterchanged across KIND: it has two tinctures. */
gboolean spv_kind_can_counterchange(SpvPatternKind kind);
gboolean spv_layer_equal(const SpvLayer *a, const SpvLayer *b);

/* Each returns a new reference: LAYER itself where nothing would change. */
SpvLayer *spv_layer_with_id(const SpvLayer *layer, const char *id);
SpvLayer *spv_layer_with_name(const SpvLayer *layer, const char *name);
SpvLayer *spv_layer_with_measure(const SpvLayer *layer, guint index, SpvMeasure value);
SpvLayer *spv_layer_with_tincture(const SpvLayer *layer, guint slot, const char *tincture);
/* Whether TEXT can be one of SPEC: short enough, UTF-8, and passing its check; ERROR (SPV_PATTERN_ERROR) says
 * what is wrong. */
gboolean spv_layer_text_check(const SpvTextSpec *spec, const char *text, GError **error);
/* TEXT must pass that check with the kind's text INDEX; NULL takes it away. */
SpvLayer *spv_layer_with_text(const SpvLayer *layer, guint index, const char *text);
SpvLayer *spv_layer_with_mirrored(const SpvLayer *layer, gboolean mirrored);
/* The id of a layer, or NULL; the panel that the layer is put in drops it where it has no such layer below.
 */
SpvLayer *spv_layer_with_on(const SpvLayer *layer, const char *id);
SpvLayer *spv_layer_with_counterchange(const SpvLayer *layer, const char *id);
/* The same layer as another kind: tinctures, and what measures and texts both kinds have under one key and
 * allow, are kept; a name that was the old kind's label becomes the new one's. */
SpvLayer *spv_layer_with_kind(const SpvLayer *layer, SpvPatternKind kind);
SpvLayer *spv_layer_with_hidden(const SpvLayer *layer, gboolean hidden);
SpvLayer *spv_layer_with_locked(const SpvLayer *layer, gboolean locked);
SpvLayer *spv_layer_with_unknown(const SpvLayer *layer, json_t *unknown);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvLayer, spv_layer_unref)
