/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Safe replacement of a file: used for schemes, sheets and whatever else is written whole. */
#pragma once

#include <glib.h>

typedef struct _SpvSave SpvSave;

/* Starts a new file beside PATH (same folder, hidden name); links are followed. NULL, with ERROR
 * (SPV_SCHEME_ERROR_WRITE) set, on failure. */
SpvSave *spv_save_begin(const char *path, GError **error);
/* Appends. The first failure is kept and comes back from every later call. */
gboolean spv_save_write(SpvSave *save, const void *bytes, gsize length, GError **error);
/* Flushes to the disk, keeps the mode of a file that was there, renames over PATH, flushes the folder.
 * Consumes SAVE, whatever the result. */
gboolean spv_save_commit(SpvSave *save, GError **error);
/* Removes the unfinished file; PATH was not touched. Consumes SAVE. */
void spv_save_abandon(SpvSave *save);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvSave, spv_save_abandon)
