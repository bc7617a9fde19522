/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One finding: an edge coloured by severity, one sentence, one remedy. */
#pragma once

#include <gtk/gtk.h>

#include "window/finding-item.h"

G_BEGIN_DECLS

#define SPV_TYPE_FINDING_ROW (spv_finding_row_get_type())
G_DECLARE_FINAL_TYPE(SpvFindingRow, spv_finding_row, SPV, FINDING_ROW, GtkListBoxRow)

/* The row takes a reference to both. */
GtkWidget *spv_finding_row_new(SpvFindingItem *item, SpvSession *session);
SpvFindingItem *spv_finding_row_item(SpvFindingRow *row);

G_END_DECLS
