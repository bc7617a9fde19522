/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The panel on the wearer's other side, and what the chosen one can give it. */
#pragma once

#include "window/pane.h"

G_BEGIN_DECLS

#define SPV_TYPE_PAIR_PANE (spv_pair_pane_get_type())
G_DECLARE_FINAL_TYPE(SpvPairPane, spv_pair_pane, SPV, PAIR_PANE, SpvPane)

G_END_DECLS
