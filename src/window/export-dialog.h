/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The dialog that writes guide sheets: what, on which paper, where; then how far it is; then
 * where they are. */
#pragma once

#include <gtk/gtk.h>

#include "scheme/scheme.h"

G_BEGIN_DECLS

#define SPV_TYPE_EXPORT_DIALOG (spv_export_dialog_get_type())
G_DECLARE_FINAL_TYPE(SpvExportDialog, spv_export_dialog, SPV, EXPORT_DIALOG, GtkWindow)

/* Shows the dialog for SCHEME over PARENT, with the choices of last time from SETTINGS (may be NULL). Owned
 * by PARENT. */
SpvExportDialog *spv_export_dialog_present(GtkWindow *parent, const SpvScheme *scheme, GSettings *settings);

G_END_DECLS
