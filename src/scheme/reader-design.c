/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A panel's design out of JSON: its layers, their tinctures, measures and texts, and what they are laid on.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "scheme/nearest-private.h"
#include "scheme/reader-private.h"

#define NEAREST 5 /* kinds that a message names */

static const char *
kind_key_at(guint index) {
  return spv_pattern_info((SpvPatternKind) index)->key;
}

static gboolean
read_kind(SpvReader *reader, const json_t *object, const SpvJsonPath *at, SpvPatternKind *kind) {
  SpvJsonPath here = { at, "kind", 0 };
  const char *key;
  if (!spv_read_string(reader, object, at, "kind", &key))
    return FALSE;
  if (spv_pattern_kind_from_key(key, kind))
    return TRUE;
  g_autofree char *excerpt = spv_reader_excerpt(key);
  g_autofree char *nearest = spv_nearest_words(key, kind_key_at, SPV_N_PATTERNS, NEAREST);
  if (nearest[0] == '\0')
    return spv_read_fail_no_such(reader, at, "kind", key, kind_key_at, SPV_N_PATTERNS);
  return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here,
                         _("“kind” can't be “%s”; of the %d kinds, the nearest: %s"), excerpt,
                         SPV_N_PATTERNS, nearest);
}

static gboolean
read_slots(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const SpvScheme *scheme,
           SpvPatternKind kind, const char **slots) {
  SpvJsonPath here = { at, "tinctures", 0 };
  const SpvPatternInfo *info = spv_pattern_info(kind);
  json_t *list;
  if (!spv_read_list(reader, object, at, "tinctures", G_MAXSIZE, &list))
    return FALSE;
  if (json_array_size(list) != info->n_slots)
    return spv_reader_fail(
        reader, SPV_SCHEME_ERROR_INVALID, &here,
        _("a layer of kind %s has %u in “tinctures”, not %u; give each an id, or null to leave what "
          "lies beneath"),
        info->key, info->n_slots, (guint) json_array_size(list));
  for (guint slot = 0; slot < info->n_slots; slot++) {
    SpvJsonPath slot_at = { &here, NULL, slot };
    const json_t *item = json_array_get(list, slot);
    if (json_is_null(item))
      continue;
    if (!json_is_string(item))
      return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &slot_at,
                             _("item %u must be a tincture's id or null, not %s"), slot + 1,
                             spv_json_type_name(item));
    slots[slot] = json_string_value(item);
    if (spv_scheme_find_tincture(scheme, slots[slot]) >= 0)
      continue;
    g_autofree char *excerpt = spv_reader_excerpt(slots[slot]);
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &slot_at,
                           _("there is no tincture “%s”; add it to “tinctures”, or use one that is there"),
                           excerpt);
  }
  return TRUE;
}

static char *
number_text(double value) {
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  return g_strdup(g_ascii_formatd(buffer, sizeof buffer, "%.15g", value));
}

/* Says which values a measure takes, and how they are written. */
static gboolean
fail_measure(SpvReader *reader, const SpvMeasureSpec *spec, const SpvJsonPath *at) {
  g_autofree char *min = number_text(spec->min);
  g_autofree char *max = number_text(spec->max);
  g_autofree char *low = number_text(spec->min < 0 ? -SPV_RELATIVE_MAX : 0);
  g_autofree char *high = number_text(SPV_RELATIVE_MAX);
  g_autofree char *choices = spec->choices != NULL ? g_strjoinv(", ", (char **) spec->choices) : g_strdup("");
  SpvSchemeError code = SPV_SCHEME_ERROR_INVALID;
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return spv_reader_fail(reader, code, at, _("“%s” is a count; give a whole number from %s to %s"),
                           spec->key, min, max);
  case SPV_MEASURE_LENGTH:
    return spv_reader_fail(
        reader, code, at,
        _("“%s” is a length; give {\"mm\": from %s to %s} or {\"relative\": from %s to %s}"), spec->key, min,
        max, low, high);
  case SPV_MEASURE_ANGLE:
    return spv_reader_fail(reader, code, at, _("“%s” is an angle; give {\"degrees\": from %s to %s}"),
                           spec->key, min, max);
  case SPV_MEASURE_CHOICE:
    return spv_reader_fail(reader, code, at, _("“%s” is a choice; take one of %s"), spec->key, choices);
  }
  return FALSE;
}

/* The number of an object with one member only, UNIT. */
static gboolean
number_with_unit(const json_t *json, const char *unit, double *value) {
  const json_t *number = json_object_get(json, unit);
  if (!json_is_number(number) || json_object_size(json) != 1)
    return FALSE;
  *value = json_number_value(number);
  return TRUE;
}

/* Reads the form only; whether the spec allows the value is checked after. */
static gboolean
measure_from_json(const SpvMeasureSpec *spec, const json_t *json, SpvMeasure *measure) {
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    *measure = (SpvMeasure){ SPV_UNIT_PLAIN, json_number_value(json) };
    return json_is_number(json);
  case SPV_MEASURE_LENGTH:
    measure->unit = SPV_UNIT_MM;
    if (number_with_unit(json, "mm", &measure->value))
      return TRUE;
    measure->unit = SPV_UNIT_RELATIVE;
    return number_with_unit(json, "relative", &measure->value);
  case SPV_MEASURE_ANGLE:
    measure->unit = SPV_UNIT_DEGREES;
    return number_with_unit(json, "degrees", &measure->value);
  case SPV_MEASURE_CHOICE:
    measure->unit = SPV_UNIT_PLAIN;
    for (guint i = 0; spec->choices[i] != NULL; i++)
      if (g_strcmp0(json_string_value(json), spec->choices[i]) == 0) {
        measure->value = i;
        return TRUE;
      }
    return FALSE;
  }
  return FALSE;
}

static gboolean
fail_no_measure(SpvReader *reader, const SpvPatternInfo *info, const char *key, const SpvJsonPath *at) {
  g_autofree char *excerpt = spv_reader_excerpt(key);
  if (info->n_measures == 0)
    return spv_reader_fail_key(reader, SPV_SCHEME_ERROR_INVALID, at,
                               _("a layer of kind %s has no measure “%s”, nor any other; remove it"),
                               info->key, excerpt);
  GString *all = g_string_new(NULL);
  for (guint i = 0; i < info->n_measures; i++)
    g_string_append_printf(all, "%s%s", i > 0 ? ", " : "", info->measures[i].key);
  spv_reader_fail_key(reader, SPV_SCHEME_ERROR_INVALID, at,
                      _("a layer of kind %s has no measure “%s”; remove it, or take one of %s"), info->key,
                      excerpt, all->str);
  g_string_free(all, TRUE);
  return FALSE;
}

/* All AUTO but those given. */
static gboolean
read_measures(SpvReader *reader, const json_t *object, const SpvJsonPath *at, SpvPattern *pattern) {
  SpvJsonPath here = { at, "measures", 0 };
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);
  json_t *measures, *value;
  const char *key;
  for (guint i = 0; i < SPV_PATTERN_MEASURES; i++)
    pattern->measures[i] = (SpvMeasure){ SPV_UNIT_AUTO, 0 };
  if (json_object_get(object, "measures") == NULL)
    return TRUE;
  if (!spv_read_object(reader, object, at, "measures", &measures))
    return FALSE;
  json_object_foreach(measures, key, value) {
    SpvJsonPath item_at = { &here, key, 0 };
    int index = spv_pattern_measure_index(pattern->kind, key);
    if (index < 0)
      return fail_no_measure(reader, info, key, &item_at);
    const SpvMeasureSpec *spec = &info->measures[index];
    SpvMeasure measure = { SPV_UNIT_AUTO, 0 };
    if (!measure_from_json(spec, value, &measure) || !spv_measure_is_valid(spec, measure))
      return fail_measure(reader, spec, &item_at);
    pattern->measures[index] = measure;
  }
  return TRUE;
}

static gboolean
fail_no_text(SpvReader *reader, const SpvPatternInfo *info, const char *key, const SpvJsonPath *at) {
  g_autofree char *excerpt = spv_reader_excerpt(key);
  if (info->n_texts == 0)
    return spv_reader_fail_key(reader, SPV_SCHEME_ERROR_INVALID, at,
                               _("a layer of kind %s has no text “%s”, nor any other; remove it"), info->key,
                               excerpt);
  GString *all = g_string_new(NULL);
  for (guint i = 0; i < info->n_texts; i++)
    g_string_append_printf(all, "%s%s", i > 0 ? ", " : "", info->texts[i].key);
  spv_reader_fail_key(reader, SPV_SCHEME_ERROR_INVALID, at,
                      _("a layer of kind %s has no text “%s”; remove it, or take one of %s"), info->key,
                      excerpt, all->str);
  g_string_free(all, TRUE);
  return FALSE;
}

static gboolean
read_text(SpvReader *reader, const json_t *texts, const SpvJsonPath *at, SpvPattern *pattern,
          const char *key) {
  SpvJsonPath here = { at, key, 0 };
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);
  g_autoptr(GError) wrong = NULL;
  int index = spv_pattern_text_index(pattern->kind, key);
  const char *text;
  if (index < 0)
    return fail_no_text(reader, info, key, &here);
  if (!spv_read_string(reader, texts, at, key, &text))
    return FALSE;
  if (strlen(text) > SPV_PATTERN_TEXT_MAX)
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_LIMIT, &here, _("“%s” is too long; use at most %d bytes"),
                           key, SPV_PATTERN_TEXT_MAX);
  if (!spv_layer_text_check(&info->texts[index], text, &wrong))
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here, "“%s”: %s", key, wrong->message);
  pattern->texts[index] = text;
  return TRUE;
}

/* NULL but those given. */
static gboolean
read_texts(SpvReader *reader, const json_t *object, const SpvJsonPath *at, SpvPattern *pattern) {
  SpvJsonPath here = { at, "texts", 0 };
  json_t *texts, *value;
  const char *key;
  if (json_object_get(object, "texts") == NULL)
    return TRUE;
  if (!spv_read_object(reader, object, at, "texts", &texts))
    return FALSE;
  json_object_foreach(texts, key, value) if (!read_text(reader, texts, &here, pattern, key)) return FALSE;
  return TRUE;
}

/* "bend, bordure": the ids of those LAYERS whose kind WANTED takes. Free with g_free(). */
static char *
join_ids(const GPtrArray *layers, gboolean (*wanted)(SpvPatternKind kind)) {
  GString *out = g_string_new(NULL);
  for (guint i = 0; i < layers->len; i++) {
    const SpvLayer *layer = g_ptr_array_index(layers, i);
    if (wanted(layer->pattern.kind))
      g_string_append_printf(out, "%s%s", out->len > 0 ? ", " : "", layer->id);
  }
  return g_string_free(out, FALSE);
}

/* The member KEY, which may be missing: the id of one of the layers BELOW, of a kind that WANTED takes. */
static gboolean
read_reference(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const char *key,
               const GPtrArray *below, gboolean (*wanted)(SpvPatternKind kind), const char **id) {
  SpvJsonPath here = { at, key, 0 };
  if (json_object_get(object, key) == NULL)
    return TRUE;
  if (!spv_read_string(reader, object, at, key, id))
    return FALSE;
  for (guint i = 0; i < below->len; i++) {
    const SpvLayer *layer = g_ptr_array_index(below, i);
    if (g_strcmp0(layer->id, *id) == 0 && wanted(layer->pattern.kind))
      return TRUE;
  }
  g_autofree char *excerpt = spv_reader_excerpt(*id);
  g_autofree char *fitting = join_ids(below, wanted);
  if (fitting[0] == '\0')
    return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here,
                           _("“%s” can't be “%s”, nor any other layer, for none that fits lies below this "
                             "one; remove it, or move this layer up"),
                           key, excerpt);
  return spv_reader_fail(reader, SPV_SCHEME_ERROR_INVALID, &here,
                         _("“%s” can't be “%s”; of the layers below this one, take %s"), key, excerpt,
                         fitting);
}

/* What the layer is laid on, and counterchanged across. */
static gboolean
read_references(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const GPtrArray *below,
                SpvPatternKind kind, const char **on, const char **counterchange) {
  const SpvPatternInfo *info = spv_pattern_info(kind);
  SpvJsonPath counterchange_at = { at, "counterchange", 0 };
  if (info->n_slots != 1 && json_object_get(object, "counterchange") != NULL)
    return spv_reader_fail_key(
        reader, SPV_SCHEME_ERROR_INVALID, &counterchange_at,
        _("a layer of kind %s can't be counterchanged, for it has %u tinctures; remove "
          "“counterchange”"),
        info->key, info->n_slots);
  return read_reference(reader, object, at, "on", below, spv_kind_can_bear, on) &&
         read_reference(reader, object, at, "counterchange", below, spv_kind_can_counterchange,
                        counterchange);
}

static SpvLayer *
layer_with_pattern(const SpvLayer *layer, const SpvPattern *pattern) {
  SpvLayer *result = spv_layer_ref(layer);
  for (guint i = 0; i < spv_pattern_info(pattern->kind)->n_measures; i++) {
    SpvLayer *next = spv_layer_with_measure(result, i, pattern->measures[i]);
    spv_layer_unref(result);
    result = next;
  }
  for (guint i = 0; i < spv_pattern_info(pattern->kind)->n_texts; i++) {
    SpvLayer *next = spv_layer_with_text(result, i, pattern->texts[i]);
    spv_layer_unref(result);
    result = next;
  }
  return result;
}

static SpvLayer *
new_layer(const char *id, SpvPatternKind kind, const char *const *slots) {
  SpvLayer *layer = spv_layer_new(id, kind, slots[0], slots[1]);
  for (guint slot = 2; slot < spv_pattern_info(kind)->n_slots; slot++) {
    SpvLayer *next = spv_layer_with_tincture(layer, slot, slots[slot]);
    spv_layer_unref(layer);
    layer = next;
  }
  return layer;
}

/* The layer that OBJECT is, above those BELOW. NULL with the error set. */
static SpvLayer *
read_layer(SpvReader *reader, const json_t *object, const SpvJsonPath *at, const SpvScheme *scheme,
           const GPtrArray *below) {
  static const char *const known[] = { "id", "kind",          "name",     "tinctures", "measures", "texts",
                                       "on", "counterchange", "mirrored", "hidden",    "locked",   NULL };
  const char *id, *name, *on = NULL, *counterchange = NULL, *slots[SPV_PATTERN_SLOTS] = { NULL };
  SpvPattern pattern = { 0 };
  gboolean mirrored = FALSE, hidden = FALSE, locked = FALSE;
  if (!spv_read_is_object(reader, object, at) || !spv_read_id(reader, object, at, &id) ||
      !read_kind(reader, object, at, &pattern.kind) || !spv_read_name(reader, object, at, "name", &name) ||
      !read_slots(reader, object, at, scheme, pattern.kind, slots) ||
      !read_measures(reader, object, at, &pattern) || !read_texts(reader, object, at, &pattern) ||
      !read_references(reader, object, at, below, pattern.kind, &on, &counterchange) ||
      !spv_read_flag(reader, object, at, "mirrored", &mirrored) ||
      !spv_read_flag(reader, object, at, "hidden", &hidden) ||
      !spv_read_flag(reader, object, at, "locked", &locked))
    return NULL;

  g_autoptr(SpvLayer) fresh = new_layer(id, pattern.kind, slots);
  g_autoptr(SpvLayer) named = spv_layer_with_name(fresh, name);
  g_autoptr(SpvLayer) measured = layer_with_pattern(named, &pattern);
  g_autoptr(SpvLayer) turned = spv_layer_with_mirrored(measured, mirrored);
  g_autoptr(SpvLayer) laid = spv_layer_with_on(turned, on);
  g_autoptr(SpvLayer) changed = spv_layer_with_counterchange(laid, counterchange);
  g_autoptr(SpvLayer) hid = spv_layer_with_hidden(changed, hidden);
  g_autoptr(SpvLayer) lock = spv_layer_with_locked(hid, locked);
  json_t *unknown = spv_read_unknown(object, known);
  SpvLayer *layer = spv_layer_with_unknown(lock, unknown);
  json_decref(unknown);
  return layer;
}

SpvPanel *
spv_read_design(SpvReader *reader, const json_t *design, const SpvJsonPath *at, const SpvScheme *scheme,
                const SpvPanel *panel) {
  static const char *const known[] = { "layers", NULL };
  SpvJsonPath here = { at, "layers", 0 };
  json_t *list;
  if (!spv_read_is_object(reader, design, at) ||
      !spv_read_list(reader, design, at, "layers", SPV_PANEL_MAX_LAYERS, &list))
    return NULL;

  g_autoptr(GHashTable) used = g_hash_table_new(g_str_hash, g_str_equal);
  g_autoptr(GPtrArray) layers = g_ptr_array_new_with_free_func((GDestroyNotify) spv_layer_unref);
  for (gsize i = 0; i < json_array_size(list); i++) {
    SpvJsonPath item_at = { &here, NULL, i };
    SpvLayer *layer = read_layer(reader, json_array_get(list, i), &item_at, scheme, layers);
    if (layer == NULL)
      return NULL;
    g_ptr_array_add(layers, layer);
    if (!spv_read_id_is_new(reader, used, layer->id, &item_at))
      return NULL;
  }
  g_autoptr(SpvPanel) dressed = spv_panel_with_layers(panel, (SpvLayer *const *) layers->pdata, layers->len);
  json_t *unknown = spv_read_unknown(design, known);
  SpvPanel *result = spv_panel_with_unknown(dressed, dressed->unknown, unknown);
  json_decref(unknown);
  return result;
}
