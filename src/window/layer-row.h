/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One layer in the list: swatch, name, summary, and what can be done with it. */
#pragma once

#include <gtk/gtk.h>

#include "window/layer-item.h"
#include "window/session.h"

G_BEGIN_DECLS

#define SPV_TYPE_LAYER_ROW (spv_layer_row_get_type())
G_DECLARE_FINAL_TYPE(SpvLayerRow, spv_layer_row, SPV, LAYER_ROW, GtkListBoxRow)

/* The row takes a reference to both. */
GtkWidget *spv_layer_row_new(SpvLayerItem *item, SpvSession *session);
SpvLayerItem *spv_layer_row_item(SpvLayerRow *row);

/* Lets the painter type another name in place; Enter or leaving the field takes it, Escape doesn't. */
void spv_layer_row_rename(SpvLayerRow *row);
/* Ends that without taking the name. */
void spv_layer_row_cancel_rename(SpvLayerRow *row);

G_END_DECLS
