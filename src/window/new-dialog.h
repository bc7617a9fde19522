/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a new scheme comes from: a harness, an example, or one of the painter's own templates. */
#pragma once

#include <gtk/gtk.h>

#include "scheme/scheme.h"

G_BEGIN_DECLS

#define SPV_TYPE_NEW_DIALOG (spv_new_dialog_get_type())
G_DECLARE_FINAL_TYPE(SpvNewDialog, spv_new_dialog, SPV, NEW_DIALOG, GtkWindow)

/* Shows the dialog over PARENT; CREATED is called with the scheme that was chosen and titled, unless the
 * painter thinks better of it. Owned by PARENT. */
SpvNewDialog *spv_new_dialog_present(GtkWindow *parent,
                                     void (*created)(const SpvScheme *scheme, gpointer data), gpointer data);

G_END_DECLS
