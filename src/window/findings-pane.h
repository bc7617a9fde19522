/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the checks found, and the finest line that they go by. */
#pragma once

#include "window/pane.h"

G_BEGIN_DECLS

#define SPV_TYPE_FINDINGS_PANE (spv_findings_pane_get_type())
G_DECLARE_FINAL_TYPE(SpvFindingsPane, spv_findings_pane, SPV, FINDINGS_PANE, SpvPane)

GtkWidget *spv_findings_pane_new(void);

G_END_DECLS
