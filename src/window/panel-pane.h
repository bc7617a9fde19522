/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The chosen panel's name and measures, as the painter takes them from the figure. */
#pragma once

#include "window/pane.h"

G_BEGIN_DECLS

#define SPV_TYPE_PANEL_PANE (spv_panel_pane_get_type())
G_DECLARE_FINAL_TYPE(SpvPanelPane, spv_panel_pane, SPV, PANEL_PANE, SpvPane)

GtkWidget *spv_panel_pane_new(void);

G_END_DECLS
