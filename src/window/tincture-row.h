/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One tincture in the list of the scheme's tinctures: colour, name, hatch, and its removal. */
#pragma once

#include <gtk/gtk.h>

#include "window/session.h"
#include "window/tincture-item.h"

G_BEGIN_DECLS

#define SPV_TYPE_TINCTURE_ROW (spv_tincture_row_get_type())
G_DECLARE_FINAL_TYPE(SpvTinctureRow, spv_tincture_row, SPV, TINCTURE_ROW, GtkListBoxRow)

/* The row takes a reference to both. */
GtkWidget *spv_tincture_row_new(SpvTinctureItem *item, SpvSession *session);
/* Shows the session's scheme of now; a name that is being typed stays while it still means the same. */
void spv_tincture_row_refill(SpvTinctureRow *row);

G_END_DECLS
