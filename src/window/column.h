/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A column beside the canvas: as wide as its contents must have (and its own width request), never as wide as
 * they would like, so that long words wrap or are cut short instead of pushing the canvas aside. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPV_TYPE_COLUMN (spv_column_get_type())
G_DECLARE_FINAL_TYPE(SpvColumn, spv_column, SPV, COLUMN, GtkWidget)

/* Property: "child" (GtkWidget). */

G_END_DECLS
