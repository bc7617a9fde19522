/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The layers of the chosen panel, topmost first. */
#pragma once

#include "window/pane.h"

G_BEGIN_DECLS

#define SPV_TYPE_LAYERS_PANE (spv_layers_pane_get_type())
G_DECLARE_FINAL_TYPE(SpvLayersPane, spv_layers_pane, SPV, LAYERS_PANE, SpvPane)

GtkWidget *spv_layers_pane_new(void);

/* Lets the painter rename the chosen layer in its row; nothing when none is chosen. */
void spv_layers_pane_rename(SpvLayersPane *pane);
/* Opens the popover of kinds. */
void spv_layers_pane_choose_kind(SpvLayersPane *pane);

G_END_DECLS
