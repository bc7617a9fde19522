/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Layers: making, copying, comparing; each edit is a copy with one field changed. */
#include "config.h"

#include "scheme/layer.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>
#include <string.h>

#include "scheme/equal-private.h"
#include "scheme/name-private.h"

SpvLayer *
spv_layer_new(const char *id, SpvPatternKind kind, const char *first, const char *second) {
  g_return_val_if_fail(spv_id_is_valid(id), NULL);
  g_return_val_if_fail((guint) kind < SPV_N_PATTERNS, NULL);
  const SpvPatternInfo *info = spv_pattern_info(kind);
  const char *tinctures[SPV_PATTERN_SLOTS] = { first, second };

  SpvLayer *layer = g_new0(SpvLayer, 1);
  g_atomic_ref_count_init(&layer->refs);
  layer->id = spv_shared_new(id);
  layer->name = spv_shared_new(_(info->label));
  layer->pattern = spv_pattern_preset(kind);
  for (guint slot = 0; slot < info->n_slots; slot++)
    layer->tinctures[slot] = spv_shared_new(tinctures[slot]);
  return layer;
}

SpvLayer *
spv_layer_ref(const SpvLayer *layer) {
  SpvLayer *self = (SpvLayer *) layer;
  g_atomic_ref_count_inc(&self->refs);
  return self;
}

void
spv_layer_unref(SpvLayer *layer) {
  if (layer == NULL || !g_atomic_ref_count_dec(&layer->refs))
    return;
  spv_shared_unref(layer->id);
  spv_shared_unref(layer->name);
  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    spv_shared_unref(layer->tinctures[slot]);
  json_decref(layer->unknown);
  g_free(layer);
}

gboolean
spv_layer_equal(const SpvLayer *a, const SpvLayer *b) {
  if (a == b)
    return TRUE;
  for (guint i = 0; i < SPV_PATTERN_MEASURES; i++)
    if (!spv_measure_equal(a->pattern.measures[i], b->pattern.measures[i]))
      return FALSE;
  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    if (g_strcmp0(a->tinctures[slot], b->tinctures[slot]) != 0)
      return FALSE;
  return a->pattern.kind == b->pattern.kind && strcmp(a->id, b->id) == 0 && strcmp(a->name, b->name) == 0 &&
         !a->hidden == !b->hidden && !a->locked == !b->locked && spv_json_same(a->unknown, b->unknown);
}

/* A copy with one reference, to be changed before anyone else sees it. */
static SpvLayer *
layer_copy(const SpvLayer *layer) {
  SpvLayer *copy = g_new0(SpvLayer, 1);
  /* Everything but the count, which another thread may be changing. */
  memcpy(copy, layer, offsetof(SpvLayer, refs));
  g_atomic_ref_count_init(&copy->refs);
  spv_shared_ref(copy->id);
  spv_shared_ref(copy->name);
  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    spv_shared_ref(copy->tinctures[slot]);
  json_incref(copy->unknown);
  return copy;
}

SpvLayer *
spv_layer_with_id(const SpvLayer *layer, const char *id) {
  g_return_val_if_fail(spv_id_is_valid(id), spv_layer_ref(layer));
  if (strcmp(layer->id, id) == 0)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  spv_shared_replace(&copy->id, id);
  return copy;
}

SpvLayer *
spv_layer_with_name(const SpvLayer *layer, const char *name) {
  g_autofree char *clean = spv_name_clean(name);
  if (clean == NULL || strcmp(layer->name, clean) == 0)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  spv_shared_replace(&copy->name, clean);
  return copy;
}

SpvLayer *
spv_layer_with_measure(const SpvLayer *layer, guint index, SpvMeasure value) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);
  g_return_val_if_fail(index < info->n_measures, spv_layer_ref(layer));
  g_return_val_if_fail(spv_measure_is_valid(&info->measures[index], value), spv_layer_ref(layer));
  if (spv_measure_equal(layer->pattern.measures[index], value))
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  copy->pattern.measures[index] = value;
  return copy;
}

SpvLayer *
spv_layer_with_tincture(const SpvLayer *layer, guint slot, const char *tincture) {
  g_return_val_if_fail(slot < spv_pattern_info(layer->pattern.kind)->n_slots, spv_layer_ref(layer));
  if (g_strcmp0(layer->tinctures[slot], tincture) == 0)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  spv_shared_replace(&copy->tinctures[slot], tincture);
  return copy;
}

SpvLayer *
spv_layer_with_hidden(const SpvLayer *layer, gboolean hidden) {
  if (!layer->hidden == !hidden)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  copy->hidden = hidden ? TRUE : FALSE;
  return copy;
}

SpvLayer *
spv_layer_with_locked(const SpvLayer *layer, gboolean locked) {
  if (!layer->locked == !locked)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  copy->locked = locked ? TRUE : FALSE;
  return copy;
}

SpvLayer *
spv_layer_with_unknown(const SpvLayer *layer, json_t *unknown) {
  if (spv_json_same(layer->unknown, unknown))
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  json_decref(copy->unknown);
  copy->unknown = json_incref(unknown);
  return copy;
}
