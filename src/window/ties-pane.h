/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What ties the chosen layer to those below: what it is laid on, and counterchanged across; and whether it is
 * mirrored. */
#pragma once

#include "window/pane.h"

G_BEGIN_DECLS

#define SPV_TYPE_TIES_PANE (spv_ties_pane_get_type())
G_DECLARE_FINAL_TYPE(SpvTiesPane, spv_ties_pane, SPV, TIES_PANE, SpvPane)

G_END_DECLS
