/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A window: one scheme, or none yet. It only composes: what is shown and edited belongs to its panes and to
 * the session that they share. */
#pragma once

#include "window/application.h"
#include "window/recovery.h"
#include "window/session.h"

G_BEGIN_DECLS

#define SPV_TYPE_WINDOW (spv_window_get_type())
G_DECLARE_FINAL_TYPE(SpvWindow, spv_window, SPV, WINDOW, GtkApplicationWindow)

/* An empty window: it says what to do first. */
SpvWindow *spv_window_new(SpvApplication *application);

/* NULL while the window is empty. */
SpvSession *spv_window_session(SpvWindow *window);

/* Shows SCHEME, which FILE (may be NULL) holds: here when the window is empty, otherwise in another one.
 * Returns the window that shows it. */
SpvWindow *spv_window_show_scheme(SpvWindow *window, const SpvScheme *scheme, GFile *file);

/* Opens FILE: a window that has it already comes forward; a file that can't be read is reported here. */
void spv_window_open_file(SpvWindow *window, GFile *file);

/* Offers KEPT, one after another and after what is offered already; the SpvRecovery in it are taken out. */
void spv_window_offer_kept(SpvWindow *window, GPtrArray *kept);

/* Puts unsaved work on disk at once; when that fails the error says so and nothing is lost yet. */
gboolean spv_window_keep(SpvWindow *window, GError **error);

G_END_DECLS
