/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A column beside the canvas: as wide as its contents must have, as its own width request and, where there is
 * room, as a number of letters, so that it grows with the words; never as wide as the contents would like, so
 * that long words wrap or are cut short instead of pushing the canvas aside. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPV_TYPE_COLUMN (spv_column_get_type())
G_DECLARE_FINAL_TYPE(SpvColumn, spv_column, SPV, COLUMN, GtkWidget)

/* Properties: "child" (GtkWidget), "chars" (unsigned): for how many letters of the average width it asks. */

G_END_DECLS
