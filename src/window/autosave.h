/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Keeps a session's unsaved work on disk (window/recovery.h): shortly after each change while there is any,
 * and no longer once a file holds it. */
#pragma once

#include "window/recovery.h"
#include "window/session.h"

/* Work is kept this long after the last change, and at the latest this long after the first one, ms. */
#define SPV_AUTOSAVE_DELAY 2000
#define SPV_AUTOSAVE_LIMIT 8000

typedef struct _SpvAutosave SpvAutosave;

/* Looks after SESSION, in FOLDER. FAILED (may be NULL) is told when work could not be kept. */
SpvAutosave *spv_autosave_new(SpvSession *session, const char *folder,
                              void (*failed)(const char *message, gpointer data), gpointer data);
/* Work that is unsaved stays on disk as it was kept last. */
void spv_autosave_free(SpvAutosave *autosave);

/* From now on the work is kept in RECOVERY, where the session's scheme came from. Takes RECOVERY. */
void spv_autosave_adopt(SpvAutosave *autosave, SpvRecovery *recovery);
/* Keeps what is unsaved at once. */
gboolean spv_autosave_flush(SpvAutosave *autosave, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvAutosave, spv_autosave_free)
