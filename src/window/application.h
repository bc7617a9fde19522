/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program: its windows, its keys, its style, and what the command line asks for. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPV_TYPE_APPLICATION (spv_application_get_type())
G_DECLARE_FINAL_TYPE(SpvApplication, spv_application, SPV, APPLICATION, GtkApplication)

SpvApplication *spv_application_new(void);

/* The program's settings, or NULL where its schema is not installed: it then runs without remembering. Owned
 * by the application. */
GSettings *spv_application_settings(SpvApplication *application);

G_END_DECLS
