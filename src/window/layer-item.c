/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/layer-item.h"

#include <glib/gi18n-lib.h>

#include "window/screen-text.h"

struct _SpvLayerItem {
  GObject parent_instance;
  SpvLayer *layer;
  guint index;
  SpvTinctureLook looks[SPV_PATTERN_SLOTS];
  guint n_looks;
  char *summary;
  gconstpointer owner;
};

G_DEFINE_FINAL_TYPE(SpvLayerItem, spv_layer_item, G_TYPE_OBJECT)

static guint changed_signal;

const SpvLayer *
spv_layer_item_layer(SpvLayerItem *item) {
  return item->layer;
}

guint
spv_layer_item_index(SpvLayerItem *item) {
  return item->index;
}

const SpvTinctureLook *
spv_layer_item_looks(SpvLayerItem *item, guint *n) {
  *n = item->n_looks;
  return item->looks;
}

const char *
spv_layer_item_summary(SpvLayerItem *item) {
  return item->summary;
}

gconstpointer
spv_layer_item_owner(SpvLayerItem *item) {
  return item->owner;
}

/* A whole number with what it counts. */
static char *
count_words(const SpvMeasureSpec *spec, double n) {
  g_autofree char *lower = spv_screen_text_inside(_(spec->label));

  /* "× 3": the layer's name says of what. */
  if (g_str_equal(spec->key, "number"))
    return n > 1 ? g_strdup_printf("×\u2009%.0f", n) : NULL;
  /* Translators: a number and the measure that it counts: "6 points". */
  return g_strdup_printf(_("%.0f %s"), n, lower);
}

/* A choice by its word, or by its number and what that counts. */
static char *
choice_words(const SpvMeasureSpec *spec, guint choice) {
  if (g_ascii_isdigit(*spec->choices[choice]))
    return count_words(spec, g_ascii_strtod(spec->choices[choice], NULL));
  return g_strdup(_(spec->choices[choice]));
}

/* Whether the row has room for measure INDEX of LAYER: of the choices only the first measure's and those that
 * the painter made, of the counts no shares of something. */
static gboolean
is_telling(const SpvLayer *layer, guint index) {
  const SpvMeasureSpec *spec = &spv_pattern_info(layer->pattern.kind)->measures[index];
  SpvMeasure value = layer->pattern.measures[index];

  if (value.unit != SPV_UNIT_PLAIN || !spv_pattern_measure_counts(&layer->pattern, index))
    return FALSE;
  if (spec->type == SPV_MEASURE_CHOICE)
    return index == 0 || !spv_measure_equal(value, spec->preset);
  return strchr(spec->label, '%') == NULL;
}

/* Adds what stands in whole numbers and words: "base", "6 points". */
static void
add_measures(GPtrArray *parts, const SpvLayer *layer) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);

  for (guint i = 0; i < info->n_measures; i++) {
    const SpvMeasureSpec *spec = &info->measures[i];
    double value = layer->pattern.measures[i].value;
    char *words;
    if (!is_telling(layer, i))
      continue;
    words = spec->type == SPV_MEASURE_CHOICE ? choice_words(spec, (guint) value) : count_words(spec, value);
    if (words)
      g_ptr_array_add(parts, words);
  }
}

/* Adds the words that are written. */
static void
add_lettering(GPtrArray *parts, const SpvLayer *layer) {
  if (layer->pattern.kind == SPV_PATTERN_LETTERING)
    g_ptr_array_add(parts, g_strdup_printf("“%s”", spv_pattern_text(&layer->pattern, 0)));
}

/* Adds what LAYER is laid on, and whether it is counterchanged. */
static void
add_ties(GPtrArray *parts, const SpvPanel *panel, const SpvLayer *layer) {
  int on = layer->on ? spv_panel_find_layer(panel, layer->on) : -1;

  if (on >= 0) /* Translators: %s is the name of the layer that this one is laid on. */
    g_ptr_array_add(parts, g_strdup_printf(_("on “%s”"), panel->layers[on]->name));
  if (layer->counterchange)
    g_ptr_array_add(parts, g_strdup(_("counterchanged")));
  if (layer->pattern.mirrored)
    g_ptr_array_add(parts, g_strdup(_("mirrored")));
}

static char *
join_tinctures(const SpvScheme *scheme, const SpvLayer *layer) {
  g_autoptr(GString) text = g_string_new(NULL);

  for (guint i = 0; i < SPV_PATTERN_SLOTS; i++) {
    int index = spv_scheme_find_tincture(scheme, layer->tinctures[i]);
    if (index >= 0)
      g_string_append_printf(text, "%s%s", text->len ? " · " : "", scheme->tinctures[index].name);
  }
  return g_string_free(g_steal_pointer(&text), FALSE);
}

static char *
summary_of(const SpvScheme *scheme, const SpvPanel *panel, const SpvLayer *layer) {
  g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func(g_free);
  g_autofree char *tinctures = join_tinctures(scheme, layer);

  add_lettering(parts, layer);
  add_measures(parts, layer);
  add_ties(parts, panel, layer);
  if (*tinctures && !layer->counterchange)
    g_ptr_array_add(parts, g_steal_pointer(&tinctures));
  g_ptr_array_add(parts, NULL);
  return g_strjoinv(", ", (char **) parts->pdata);
}

/* The layer whose tinctures LAYER of PANEL shows: the one across which it is counterchanged, or itself. */
static const SpvLayer *
shown_layer(const SpvPanel *panel, const SpvLayer *layer) {
  int across = layer->counterchange ? spv_panel_find_layer(panel, layer->counterchange) : -1;

  return across >= 0 ? panel->layers[across] : layer;
}

/* Returns whether anything is new. */
static gboolean
take_looks(SpvLayerItem *item, const SpvScheme *scheme, const SpvLayer *layer) {
  guint n = 0;
  gboolean changed = FALSE;

  for (guint i = 0; i < SPV_PATTERN_SLOTS; i++) {
    int index = spv_scheme_find_tincture(scheme, layer->tinctures[i]);
    if (index < 0)
      continue;
    SpvTinctureLook look = spv_tincture_look(scheme, &scheme->tinctures[index]);
    changed |= n >= item->n_looks || !spv_tincture_look_equal(item->looks[n], look);
    item->looks[n++] = look;
  }
  changed |= n != item->n_looks;
  item->n_looks = n;
  return changed;
}

/* Takes the layer INDEX of PANEL. */
static void
item_update(SpvLayerItem *item, const SpvScheme *scheme, const SpvPanel *panel, guint index) {
  const SpvLayer *layer = panel->layers[index];
  g_autofree char *summary = summary_of(scheme, panel, layer);
  gboolean changed = take_looks(item, scheme, shown_layer(panel, layer));

  item->index = index;
  if (item->layer != layer) {
    g_clear_pointer(&item->layer, spv_layer_unref);
    item->layer = spv_layer_ref(layer);
    changed = TRUE;
  }
  if (g_strcmp0(item->summary, summary) != 0) {
    g_free(item->summary);
    item->summary = g_steal_pointer(&summary);
    changed = TRUE;
  }
  if (changed)
    g_signal_emit(item, changed_signal, 0);
}

/* The ids of the layers in the order of the list. */
static const char *
id_at(const SpvPanel *panel, guint position) {
  return panel->layers[panel->n_layers - 1 - position]->id;
}

static gboolean
stands_at(GListModel *items, guint position, const char *id) {
  g_autoptr(SpvLayerItem) item = g_list_model_get_item(items, position);

  return item && g_str_equal(item->layer->id, id);
}

/* The item called ID, wherever in STORE it stands, or a new one. */
static SpvLayerItem *
find_or_make(GListStore *store, const char *id) {
  guint n = g_list_model_get_n_items(G_LIST_MODEL(store));
  SpvLayerItem *fresh;

  for (guint i = 0; i < n; i++) {
    g_autoptr(SpvLayerItem) item = g_list_model_get_item(G_LIST_MODEL(store), i);
    if (g_str_equal(item->layer->id, id))
      return g_steal_pointer(&item);
  }
  fresh = g_object_new(SPV_TYPE_LAYER_ITEM, NULL);
  fresh->owner = store;
  return fresh;
}

void
spv_layer_items_sync(GListStore *store, const SpvScheme *scheme, const SpvPanel *panel) {
  GListModel *items = G_LIST_MODEL(store);
  guint n_old = g_list_model_get_n_items(items), n_new = panel ? panel->n_layers : 0;
  guint start = 0, end = 0;
  g_autoptr(GPtrArray) fresh = g_ptr_array_new_with_free_func(g_object_unref);

  while (start < n_old && start < n_new && stands_at(items, start, id_at(panel, start)))
    start++;
  while (start + end < n_old && start + end < n_new &&
         stands_at(items, n_old - 1 - end, id_at(panel, n_new - 1 - end)))
    end++;
  for (guint i = start; i < n_new - end; i++) {
    SpvLayerItem *item = find_or_make(store, id_at(panel, i));
    guint index = n_new - 1 - i;
    g_ptr_array_add(fresh, item);
    item_update(item, scheme, panel, index);
  }
  if (start + end < n_old || fresh->len > 0)
    g_list_store_splice(store, start, n_old - start - end, fresh->pdata, fresh->len);
  for (guint i = 0; i < n_new; i++) {
    g_autoptr(SpvLayerItem) item = g_list_model_get_item(items, i);
    item_update(item, scheme, panel, n_new - 1 - i);
  }
}

static void
spv_layer_item_finalize(GObject *object) {
  SpvLayerItem *item = SPV_LAYER_ITEM(object);

  g_clear_pointer(&item->layer, spv_layer_unref);
  g_free(item->summary);
  G_OBJECT_CLASS(spv_layer_item_parent_class)->finalize(object);
}

static void
spv_layer_item_class_init(SpvLayerItemClass *klass) {
  G_OBJECT_CLASS(klass)->finalize = spv_layer_item_finalize;
  changed_signal = g_signal_new("changed", G_TYPE_FROM_CLASS(klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
}

static void
spv_layer_item_init(SpvLayerItem *item) {
  (void) item;
}
