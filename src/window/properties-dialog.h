/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What belongs to the whole scheme: its title, the painter's note, and the finest line of
 * the painter's brush. */
#pragma once

#include <gtk/gtk.h>

#include "window/session.h"

G_BEGIN_DECLS

#define SPV_TYPE_PROPERTIES_DIALOG (spv_properties_dialog_get_type())
G_DECLARE_FINAL_TYPE(SpvPropertiesDialog, spv_properties_dialog, SPV, PROPERTIES_DIALOG, GtkWindow)

/* Shows the dialog over PARENT; what is applied is one step of SESSION's history. Owned by PARENT. */
SpvPropertiesDialog *spv_properties_dialog_present(GtkWindow *parent, SpvSession *session);

G_END_DECLS
