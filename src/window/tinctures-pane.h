/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The scheme's tinctures. */
#pragma once

#include "window/pane.h"

G_BEGIN_DECLS

#define SPV_TYPE_TINCTURES_PANE (spv_tinctures_pane_get_type())
G_DECLARE_FINAL_TYPE(SpvTincturesPane, spv_tinctures_pane, SPV, TINCTURES_PANE, SpvPane)

GtkWidget *spv_tinctures_pane_new(void);

G_END_DECLS
