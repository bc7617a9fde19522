/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a blazon's items to a panel's layers. */
#include "config.h"

#include "scheme/heraldic.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "scheme/heraldic-private.h"

static void
unref_layer(gpointer layer) {
  spv_layer_unref(layer);
}

/* A list of layers on its way onto a panel, with the ids that are taken. */
typedef struct {
  const SpvPanel *panel;
  const GPtrArray *items;       /* SpvBlazonItem */
  const char *const *tinctures; /* an id or NULL for each slot of each item */
  GPtrArray *shown;             /* SpvLayer: one an item */
  GHashTable *ids;              /* every id that is in use */
} Dressing;

/* The nth visible layer of KIND that PANEL has; NULL where there are fewer. */
static const SpvLayer *
nth_of_kind(const SpvPanel *panel, SpvPatternKind kind, guint n) {
  for (guint i = 0; i < panel->n_layers; i++)
    if (panel->layers[i]->pattern.kind == kind && !spv_heraldic_is_hidden(panel, i) && n-- == 0)
      return panel->layers[i];
  return NULL;
}

/* How many items before INDEX are of its kind. */
static guint
count_before(const GPtrArray *items, guint index) {
  const SpvBlazonItem *item = g_ptr_array_index(items, index);
  guint n = 0;

  for (guint i = 0; i < index; i++)
    n += ((const SpvBlazonItem *) g_ptr_array_index(items, i))->pattern.kind == item->pattern.kind;
  return n;
}

static char *
free_id(const Dressing *dressing, SpvPatternKind kind) {
  const char *key = spv_pattern_info(kind)->key;
  char *id = g_strdup(key);

  for (guint n = 2; g_hash_table_contains(dressing->ids, id); n++) {
    g_free(id);
    id = g_strdup_printf("%s-%u", key, n);
  }
  return id;
}

/* The layer that stands for item INDEX before it is told anything: the one that is there, or a new one. */
static SpvLayer *
first_layer(const Dressing *dressing, guint index) {
  const SpvBlazonItem *item = g_ptr_array_index(dressing->items, index);
  const SpvLayer *there = nth_of_kind(dressing->panel, item->pattern.kind,
                                      count_before(dressing->items, index));

  if (there != NULL)
    return spv_layer_ref(there);
  g_autofree char *id = free_id(dressing, item->pattern.kind);
  g_hash_table_add(dressing->ids, g_strdup(id));
  return spv_layer_new(id, item->pattern.kind, NULL, NULL);
}

/* LAYER, which is taken over, with CHANGED, which takes its place. */
static void
replace(SpvLayer **layer, SpvLayer *changed) {
  spv_layer_unref(*layer);
  *layer = changed;
}

/* The id of item INDEX's layer, or NULL for none. */
static const char *
id_of(const Dressing *dressing, int index) {
  return index < 0 ? NULL : ((const SpvLayer *) g_ptr_array_index(dressing->shown, (guint) index))->id;
}

/* VALUE as a blazon says it: what isn't given is the preset, and so is what a file's decimals made of it. */
static SpvMeasure
in_words(const SpvMeasureSpec *spec, SpvMeasure value) {
  gboolean preset = value.unit == SPV_UNIT_AUTO ||
                    (value.unit == spec->preset.unit && fabs(value.value - spec->preset.value) < 1e-9);

  return preset ? spec->preset : value;
}

static void
dress(Dressing *dressing, guint index) {
  const SpvBlazonItem *item = g_ptr_array_index(dressing->items, index);
  const SpvPatternInfo *info = spv_pattern_info(item->pattern.kind);
  SpvLayer *layer = first_layer(dressing, index);

  /* What was left to the preset stays so. */
  for (guint i = 0; i < info->n_measures; i++)
    if (!spv_measure_equal(in_words(&info->measures[i], layer->pattern.measures[i]),
                           item->pattern.measures[i]))
      replace(&layer, spv_layer_with_measure(layer, i, item->pattern.measures[i]));
  for (guint i = 0; i < info->n_texts; i++)
    replace(&layer, spv_layer_with_text(layer, i, item->texts[i]));
  /* A counterchanged layer shows no tincture of its own, and keeps the one that it will show again. */
  for (guint slot = 0; slot < info->n_slots && item->counterchange < 0; slot++)
    replace(&layer,
            spv_layer_with_tincture(layer, slot, dressing->tinctures[index * SPV_PATTERN_SLOTS + slot]));
  if (layer->pattern.kind != SPV_PATTERN_FIELD)
    replace(&layer, spv_layer_with_mirrored(layer, item->pattern.mirrored));
  replace(&layer, spv_layer_with_on(layer, id_of(dressing, item->on)));
  replace(&layer, spv_layer_with_counterchange(layer, id_of(dressing, item->counterchange)));
  g_ptr_array_add(dressing->shown, layer);
}

/* The shown layers with the panel's hidden ones between them, each over as many shown ones as before. */
static GPtrArray *
with_hidden(const SpvPanel *panel, const GPtrArray *shown) {
  GPtrArray *all = g_ptr_array_new_with_free_func(unref_layer);
  guint next = 0, before = 0;

  for (guint i = 0; i < panel->n_layers; i++) {
    if (!spv_heraldic_is_hidden(panel, i)) {
      before++;
      continue;
    }
    while (next < MIN(before, shown->len))
      g_ptr_array_add(all, spv_layer_ref(g_ptr_array_index(shown, next++)));
    g_ptr_array_add(all, spv_layer_ref(panel->layers[i]));
  }
  while (next < shown->len)
    g_ptr_array_add(all, spv_layer_ref(g_ptr_array_index(shown, next++)));
  return all;
}

/* PANEL with the layers of ITEMS; TINCTURES has an id or NULL for each slot of each. */
static SpvPanel *
dress_panel(const SpvPanel *panel, const GPtrArray *items, const char *const *tinctures) {
  g_autoptr(GPtrArray) shown = g_ptr_array_new_with_free_func(unref_layer);
  g_autoptr(GHashTable) ids = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
  Dressing dressing = { panel, items, tinctures, shown, ids };

  for (guint i = 0; i < panel->n_layers; i++)
    g_hash_table_add(ids, g_strdup(panel->layers[i]->id));
  for (guint i = 0; i < items->len; i++)
    dress(&dressing, i);
  g_autoptr(GPtrArray) all = with_hidden(panel, shown);
  return spv_panel_with_layers(panel, (SpvLayer *const *) all->pdata, all->len);
}

/* How many layers PANEL would have, its hidden ones among them. */
static guint
count_layers(const SpvPanel *panel, const GPtrArray *items) {
  guint n = items->len;

  for (guint i = 0; i < panel->n_layers; i++)
    n += spv_heraldic_is_hidden(panel, i);
  return n;
}

SpvScheme *
spv_heraldic_lay(const SpvScheme *scheme, guint panel_index, const char *text, SpvBlazonPlace *place,
                 GError **error) {
  g_return_val_if_fail(panel_index < scheme->n_panels, NULL);
  const SpvPanel *panel = scheme->panels[panel_index];
  g_autoptr(GPtrArray) items = spv_blazon_parse(text, place, error);

  if (items == NULL)
    return NULL;
  if (count_layers(panel, items) > SPV_PANEL_MAX_LAYERS) {
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON,
                _("that makes more than %d layers on one panel; leave some out"), SPV_PANEL_MAX_LAYERS);
    if (place != NULL)
      *place = (SpvBlazonPlace){ 0, 0 };
    return NULL;
  }
  g_autoptr(SpvScheme) tinged = spv_scheme_ref(scheme);
  g_autoptr(GPtrArray) ids = g_ptr_array_new_with_free_func(g_free);
  for (guint i = 0; i < items->len; i++) {
    const SpvBlazonItem *item = g_ptr_array_index(items, i);
    for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++) {
      char *id = NULL;
      if (item->tinctures[slot] != NULL &&
          !spv_heraldic_resolve(&tinged, item->tinctures[slot], &id, error)) {
        if (place != NULL)
          *place = item->tincture_places[slot].length > 0 ? item->tincture_places[slot] : item->place;
        return NULL;
      }
      g_ptr_array_add(ids, id);
    }
  }
  g_autoptr(SpvPanel)
      dressed = dress_panel(tinged->panels[panel_index], items, (const char *const *) ids->pdata);
  return spv_scheme_with_panel(tinged, panel_index, dressed);
}

char *
spv_heraldic_describe(const SpvScheme *scheme, guint panel_index) {
  g_return_val_if_fail(panel_index < scheme->n_panels, NULL);
  const SpvPanel *panel = scheme->panels[panel_index];
  g_autoptr(GPtrArray) items = g_ptr_array_new_with_free_func((GDestroyNotify) spv_blazon_item_free);
  g_autoptr(GHashTable) places = g_hash_table_new(g_str_hash, g_str_equal);

  for (guint i = 0; i < panel->n_layers; i++) {
    const SpvLayer *layer = panel->layers[i];
    const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);
    if (spv_heraldic_is_hidden(panel, i))
      continue;
    SpvBlazonItem *item = spv_blazon_item_new(layer->pattern.kind);
    for (guint k = 0; k < info->n_measures; k++)
      item->pattern.measures[k] = in_words(&info->measures[k], layer->pattern.measures[k]);
    item->pattern.mirrored = layer->pattern.mirrored && layer->pattern.kind != SPV_PATTERN_FIELD;
    for (guint k = 0; k < info->n_texts; k++)
      spv_blazon_item_set_text(item, k, layer->pattern.texts[k]);
    for (guint slot = 0; slot < info->n_slots; slot++)
      item->tinctures[slot] = spv_heraldic_words(scheme, layer->tinctures[slot]);
    item->on = layer->on ? GPOINTER_TO_INT(g_hash_table_lookup(places, layer->on)) - 1 : -1;
    item->counterchange = layer->counterchange
                              ? GPOINTER_TO_INT(g_hash_table_lookup(places, layer->counterchange)) - 1
                              : -1;
    g_ptr_array_add(items, item);
    g_hash_table_insert(places, (gpointer) layer->id, GINT_TO_POINTER((int) items->len));
  }
  return items->len > 0 ? spv_blazon_write(items) : g_strdup("");
}

char **
spv_heraldic_complete(const SpvScheme *scheme, const char *text, guint cursor, guint *start) {
  g_autofree const char **own = g_new0(const char *, scheme->n_tinctures + 1);

  for (guint i = 0; i < scheme->n_tinctures; i++)
    own[i] = scheme->tinctures[i].name;
  return spv_blazon_complete(text, cursor, own, start);
}
