/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/tincture-item.h"

#include <glib/gi18n-lib.h>

struct _SpvTinctureItem {
  GObject parent_instance;
  char *id, *name;
  SpvTinctureLook look;
  SpvHatch hatch;
};

G_DEFINE_FINAL_TYPE(SpvTinctureItem, spv_tincture_item, G_TYPE_OBJECT)

static guint changed_signal;

static SpvTinctureItem *
item_new(const SpvScheme *scheme, const SpvTincture *tincture) {
  SpvTinctureItem *item = g_object_new(SPV_TYPE_TINCTURE_ITEM, NULL);

  item->id = g_strdup(tincture->id);
  item->name = g_strdup(tincture->name);
  item->look = spv_tincture_look(scheme, tincture);
  item->hatch = tincture->hatch;
  return item;
}

static void
item_update(SpvTinctureItem *item, const SpvScheme *scheme, const SpvTincture *tincture) {
  SpvTinctureLook look = spv_tincture_look(scheme, tincture);

  if (g_str_equal(item->name, tincture->name) && spv_tincture_look_equal(item->look, look) &&
      item->hatch == tincture->hatch)
    return;
  g_free(item->name);
  item->name = g_strdup(tincture->name);
  item->look = look;
  item->hatch = tincture->hatch;
  g_signal_emit(item, changed_signal, 0);
}

SpvTinctureItem *
spv_tincture_item_new_none(void) {
  SpvTinctureItem *item = g_object_new(SPV_TYPE_TINCTURE_ITEM, NULL);

  item->name = g_strdup(_("none: leaves what lies beneath"));
  return item;
}

const char *
spv_tincture_item_id(SpvTinctureItem *item) {
  return item->id;
}

const char *
spv_tincture_item_name(SpvTinctureItem *item) {
  return item->name;
}

SpvTinctureLook
spv_tincture_item_look(SpvTinctureItem *item) {
  return item->look;
}

SpvHatch
spv_tincture_item_hatch(SpvTinctureItem *item) {
  return item->hatch;
}

/* How many items from FIRST on have the ids of SCHEME's first tinctures. */
static guint
common_start(GListModel *items, guint first, const SpvScheme *scheme) {
  guint n = 0;

  for (; n < scheme->n_tinctures; n++) {
    g_autoptr(SpvTinctureItem) item = g_list_model_get_item(items, first + n);
    if (!item || !g_str_equal(item->id, scheme->tinctures[n].id))
      break;
  }
  return n;
}

/* How many of the last items have the ids of SCHEME's last tinctures, leaving the first START alone. */
static guint
common_end(GListModel *items, guint first, guint start, const SpvScheme *scheme) {
  guint n_items = g_list_model_get_n_items(items) - first, n = 0;

  while (start + n < n_items && start + n < scheme->n_tinctures) {
    g_autoptr(SpvTinctureItem) item = g_list_model_get_item(items, first + n_items - 1 - n);
    if (!g_str_equal(item->id, scheme->tinctures[scheme->n_tinctures - 1 - n].id))
      break;
    n++;
  }
  return n;
}

void
spv_tincture_items_sync(GListStore *store, guint first, const SpvScheme *scheme) {
  GListModel *items = G_LIST_MODEL(store);
  guint n_items = g_list_model_get_n_items(items) - first;
  guint start = common_start(items, first, scheme), end = common_end(items, first, start, scheme);
  guint n_new = scheme->n_tinctures - start - end;

  if (start + end < n_items || n_new > 0) {
    g_autoptr(GPtrArray) fresh = g_ptr_array_new_with_free_func(g_object_unref);
    for (guint i = 0; i < n_new; i++)
      g_ptr_array_add(fresh, item_new(scheme, &scheme->tinctures[start + i]));
    g_list_store_splice(store, first + start, n_items - start - end, fresh->pdata, n_new);
  }
  for (guint i = 0; i < scheme->n_tinctures; i++) {
    g_autoptr(SpvTinctureItem) item = g_list_model_get_item(items, first + i);
    item_update(item, scheme, &scheme->tinctures[i]);
  }
}

static void
spv_tincture_item_finalize(GObject *object) {
  SpvTinctureItem *item = SPV_TINCTURE_ITEM(object);

  g_free(item->id);
  g_free(item->name);
  G_OBJECT_CLASS(spv_tincture_item_parent_class)->finalize(object);
}

static void
spv_tincture_item_class_init(SpvTinctureItemClass *klass) {
  G_OBJECT_CLASS(klass)->finalize = spv_tincture_item_finalize;
  changed_signal = g_signal_new("changed", G_TYPE_FROM_CLASS(klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
}

static void
spv_tincture_item_init(SpvTinctureItem *item) {
  (void) item;
}
