/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/layer-item.h"

#include <glib/gi18n-lib.h>

#include "window/screen-text.h"

struct _SpvLayerItem {
  GObject parent_instance;
  SpvLayer *layer;
  guint index;
  SpvRgb colours[SPV_PATTERN_SLOTS];
  guint n_colours;
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

const SpvRgb *
spv_layer_item_colours(SpvLayerItem *item, guint *n) {
  *n = item->n_colours;
  return item->colours;
}

const char *
spv_layer_item_summary(SpvLayerItem *item) {
  return item->summary;
}

gconstpointer
spv_layer_item_owner(SpvLayerItem *item) {
  return item->owner;
}

/* Adds what stands in whole numbers and words: "base", "6 points". Of the choices only the first measure's
 * and those that the painter made. */
static void
add_measures(GPtrArray *parts, const SpvLayer *layer) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);

  for (guint i = 0; i < info->n_measures; i++) {
    const SpvMeasureSpec *spec = &info->measures[i];
    SpvMeasure value = layer->pattern.measures[i];
    if (value.unit != SPV_UNIT_PLAIN)
      continue;
    if (spec->type == SPV_MEASURE_CHOICE && (i == 0 || !spv_measure_equal(value, spec->preset))) {
      g_ptr_array_add(parts, g_strdup(_(spec->choices[(guint) value.value])));
    } else if (spec->type == SPV_MEASURE_COUNT) {
      g_autofree char *lower = spv_screen_text_inside(_(spec->label));
      /* Translators: a number and the measure that it counts: "6 points". */
      g_ptr_array_add(parts, g_strdup_printf(_("%.0f %s"), value.value, lower));
    }
  }
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
summary_of(const SpvScheme *scheme, const SpvLayer *layer) {
  g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func(g_free);
  g_autofree char *tinctures = join_tinctures(scheme, layer);

  add_measures(parts, layer);
  if (*tinctures)
    g_ptr_array_add(parts, g_steal_pointer(&tinctures));
  g_ptr_array_add(parts, NULL);
  return g_strjoinv(", ", (char **) parts->pdata);
}

/* Returns whether anything is new. */
static gboolean
take_colours(SpvLayerItem *item, const SpvScheme *scheme, const SpvLayer *layer) {
  guint n = 0;
  gboolean changed = FALSE;

  for (guint i = 0; i < SPV_PATTERN_SLOTS; i++) {
    int index = spv_scheme_find_tincture(scheme, layer->tinctures[i]);
    if (index < 0)
      continue;
    changed |= n >= item->n_colours || !spv_rgb_equal(item->colours[n], scheme->tinctures[index].colour);
    item->colours[n++] = scheme->tinctures[index].colour;
  }
  changed |= n != item->n_colours;
  item->n_colours = n;
  return changed;
}

static void
item_update(SpvLayerItem *item, const SpvScheme *scheme, const SpvLayer *layer, guint index) {
  g_autofree char *summary = summary_of(scheme, layer);
  gboolean changed = take_colours(item, scheme, layer);

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
    item_update(item, scheme, panel->layers[index], index);
  }
  if (start + end < n_old || fresh->len > 0)
    g_list_store_splice(store, start, n_old - start - end, fresh->pdata, fresh->len);
  for (guint i = 0; i < n_new; i++) {
    g_autoptr(SpvLayerItem) item = g_list_model_get_item(items, i);
    item_update(item, scheme, panel->layers[n_new - 1 - i], n_new - 1 - i);
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
