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
  for (guint i = 0; i < SPV_PATTERN_TEXTS; i++)
    spv_shared_unref(layer->pattern.texts[i]);
  spv_shared_unref(layer->on);
  spv_shared_unref(layer->counterchange);
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
  for (guint i = 0; i < SPV_PATTERN_TEXTS; i++)
    if (g_strcmp0(a->pattern.texts[i], b->pattern.texts[i]) != 0)
      return FALSE;
  return a->pattern.kind == b->pattern.kind && !a->pattern.mirrored == !b->pattern.mirrored &&
         g_strcmp0(a->on, b->on) == 0 && g_strcmp0(a->counterchange, b->counterchange) == 0 &&
         strcmp(a->id, b->id) == 0 && strcmp(a->name, b->name) == 0 && !a->hidden == !b->hidden &&
         !a->locked == !b->locked && spv_json_same(a->unknown, b->unknown);
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
  for (guint i = 0; i < SPV_PATTERN_TEXTS; i++)
    spv_shared_ref(copy->pattern.texts[i]);
  spv_shared_ref(copy->on);
  spv_shared_ref(copy->counterchange);
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

gboolean
spv_layer_text_check(const SpvTextSpec *spec, const char *text, GError **error) {
  if (strlen(text) > SPV_PATTERN_TEXT_MAX) {
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT,
                _("The text is too long; use at most %d bytes"), SPV_PATTERN_TEXT_MAX);
    return FALSE;
  }
  if (!g_utf8_validate(text, -1, NULL)) {
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT, _("The text is not UTF-8; type it anew"));
    return FALSE;
  }
  return spec->check(text, error);
}

SpvLayer *
spv_layer_with_text(const SpvLayer *layer, guint index, const char *text) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);
  g_return_val_if_fail(index < info->n_texts, spv_layer_ref(layer));
  g_return_val_if_fail(text == NULL || spv_layer_text_check(&info->texts[index], text, NULL),
                       spv_layer_ref(layer));
  if (g_strcmp0(layer->pattern.texts[index], text) == 0)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  spv_shared_replace(&copy->pattern.texts[index], text);
  return copy;
}

SpvLayer *
spv_layer_with_mirrored(const SpvLayer *layer, gboolean mirrored) {
  if (!layer->pattern.mirrored == !mirrored)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  copy->pattern.mirrored = mirrored ? TRUE : FALSE;
  return copy;
}

SpvLayer *
spv_layer_with_on(const SpvLayer *layer, const char *id) {
  if (g_strcmp0(layer->on, id) == 0)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  spv_shared_replace(&copy->on, id);
  return copy;
}

SpvLayer *
spv_layer_with_counterchange(const SpvLayer *layer, const char *id) {
  if (g_strcmp0(layer->counterchange, id) == 0)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  spv_shared_replace(&copy->counterchange, id);
  return copy;
}

/* Puts into COPY, at its new kind's presets, what OLD has under the same keys. */
static void
carry_over(SpvLayer *copy, const SpvLayer *old) {
  const SpvPatternInfo *from = spv_pattern_info(old->pattern.kind);
  const SpvPatternInfo *to = spv_pattern_info(copy->pattern.kind);

  for (guint i = 0; i < to->n_measures; i++) {
    int same = spv_pattern_measure_index(old->pattern.kind, to->measures[i].key);
    if (same >= 0 && from->measures[same].choices == to->measures[i].choices &&
        spv_measure_is_valid(&to->measures[i], old->pattern.measures[same]))
      copy->pattern.measures[i] = old->pattern.measures[same];
  }
  for (guint i = 0; i < to->n_texts; i++) {
    int same = spv_pattern_text_index(old->pattern.kind, to->texts[i].key);
    if (same >= 0 && from->texts[same].check == to->texts[i].check)
      copy->pattern.texts[i] = spv_shared_ref(old->pattern.texts[same]);
  }
}

SpvLayer *
spv_layer_with_kind(const SpvLayer *layer, SpvPatternKind kind) {
  const SpvPatternInfo *info = spv_pattern_info(kind);
  if (layer->pattern.kind == kind)
    return spv_layer_ref(layer);
  SpvLayer *copy = layer_copy(layer);
  for (guint i = 0; i < SPV_PATTERN_TEXTS; i++)
    spv_shared_unref(copy->pattern.texts[i]);
  copy->pattern = spv_pattern_preset(kind);
  copy->pattern.mirrored = layer->pattern.mirrored;
  carry_over(copy, layer);
  for (guint slot = info->n_slots; slot < SPV_PATTERN_SLOTS; slot++)
    spv_shared_replace(&copy->tinctures[slot], NULL);
  if (strcmp(layer->name, _(spv_pattern_info(layer->pattern.kind)->label)) == 0)
    spv_shared_replace(&copy->name, _(info->label));
  return copy;
}

gboolean
spv_kind_can_bear(SpvPatternKind kind) {
  return kind != SPV_PATTERN_FIELD && spv_pattern_info(kind)->n_slots == 1;
}

gboolean
spv_kind_can_counterchange(SpvPatternKind kind) {
  return spv_pattern_info(kind)->n_slots == 2;
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
