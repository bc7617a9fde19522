/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The scheme's tinctures as a list that lists and drop-downs show: one item a tincture for as long as its id
 * lasts, so that a change of colour redraws a swatch and rebuilds nothing. */
#pragma once

#include <gio/gio.h>

#include "window/tincture-look.h"

G_BEGIN_DECLS

#define SPV_TYPE_TINCTURE_ITEM (spv_tincture_item_get_type())
G_DECLARE_FINAL_TYPE(SpvTinctureItem, spv_tincture_item, SPV, TINCTURE_ITEM, GObject)

/* Signal: "changed": the name, look or hatch is another. */

/* The item that stands for no tincture: what lies beneath shows. */
SpvTinctureItem *spv_tincture_item_new_none(void);

/* NULL for the item that stands for none. */
const char *spv_tincture_item_id(SpvTinctureItem *item);
const char *spv_tincture_item_name(SpvTinctureItem *item);
SpvTinctureLook spv_tincture_item_look(SpvTinctureItem *item);
SpvHatch spv_tincture_item_hatch(SpvTinctureItem *item);

/* Makes STORE's items from position FIRST on SCHEME's tinctures, keeping every item whose id is still there.
 */
void spv_tincture_items_sync(GListStore *store, guint first, const SpvScheme *scheme);

G_END_DECLS
