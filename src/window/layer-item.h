/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A panel's layers as a list, topmost first: one item a layer for as long as its id lasts, so that only the
 * rows whose layer changed are told. */
#pragma once

#include <gio/gio.h>

#include "window/tincture-look.h"

G_BEGIN_DECLS

#define SPV_TYPE_LAYER_ITEM (spv_layer_item_get_type())
G_DECLARE_FINAL_TYPE(SpvLayerItem, spv_layer_item, SPV, LAYER_ITEM, GObject)

/* Signal: "changed": what a row shows of the layer is another. */

const SpvLayer *spv_layer_item_layer(SpvLayerItem *item);
/* The layer's place in its panel, 0 at the bottom. */
guint spv_layer_item_index(SpvLayerItem *item);
/* The looks of its tinctures, owned by the item; their number goes to N. */
const SpvTinctureLook *spv_layer_item_looks(SpvLayerItem *item, guint *n);
/* "base, 6 points, sea green" or "× 3, on Bend, bone"; owned by the item. */
const char *spv_layer_item_summary(SpvLayerItem *item);
/* The list that the item stands in; not to be followed once that is gone. */
gconstpointer spv_layer_item_owner(SpvLayerItem *item);

/* Makes STORE the layers of PANEL, which may be NULL. */
void spv_layer_items_sync(GListStore *store, const SpvScheme *scheme, const SpvPanel *panel);

G_END_DECLS
