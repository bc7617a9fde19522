/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The findings as a list, those of the chosen panel first: an item stays while what it says stays, so that a
 * list of findings does not flicker while the painter drags. */
#pragma once

#include "window/session.h"

G_BEGIN_DECLS

#define SPV_TYPE_FINDING_ITEM (spv_finding_item_get_type())
G_DECLARE_FINAL_TYPE(SpvFindingItem, spv_finding_item, SPV, FINDING_ITEM, GObject)

const SpvFinding *spv_finding_item_finding(SpvFindingItem *item);
/* "Cells are 0.21 mm wide; your line is 0.25 mm." */
const char *spv_finding_item_message(SpvFindingItem *item);
/* "Four columns would do.", or NULL. */
const char *spv_finding_item_remedy(SpvFindingItem *item);
/* "Use four", or NULL where nothing can be applied. */
const char *spv_finding_item_use(SpvFindingItem *item);
/* Whether the remedy is for a layer that is locked. */
gboolean spv_finding_item_is_locked(SpvFindingItem *item);
/* The name of the panel that it is about, where that is not the chosen one; otherwise NULL. */
const char *spv_finding_item_panel(SpvFindingItem *item);

/* Makes STORE the session's findings, which must be of the scheme of now. */
void spv_finding_items_sync(GListStore *store, SpvSession *session);

G_END_DECLS
