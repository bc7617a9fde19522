/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The measures and tinctures of the chosen layer. */
#pragma once

#include "window/pane.h"

G_BEGIN_DECLS

#define SPV_TYPE_MEASURES_PANE (spv_measures_pane_get_type())
G_DECLARE_FINAL_TYPE(SpvMeasuresPane, spv_measures_pane, SPV, MEASURES_PANE, SpvPane)

GtkWidget *spv_measures_pane_new(void);

G_END_DECLS
