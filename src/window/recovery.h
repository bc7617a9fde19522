/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Unsaved work, kept on disk: one scheme file for each document that has changes no file of the painter's
 * holds, and beside it a small file that says which file the work belongs to. Whoever has a piece of kept
 * work holds a lock on it, so that a second program does not offer what a living one is still writing; the
 * lock goes when the program ends, however it ends. */
#pragma once

#include "scheme/scheme.h"

typedef struct {
  char *path;   /* the kept scheme */
  char *origin; /* the painter's own file, or NULL when the work has none yet */
  gint64 time;  /* when it was kept: seconds since 1970 */
  /* private */
  char *origin_path;
  int lock;
} SpvRecovery;

/* "spolvero/recovery" in the user's state directory. Free with g_free(). */
char *spv_recovery_folder(void);

/* A place in FOLDER (made if missing) for work that belongs to ORIGIN (may be NULL). Nothing is
 * kept until spv_recovery_write(). */
SpvRecovery *spv_recovery_new(const char *folder, const char *origin, GError **error);
/* Keeps SCHEME there, instead of what was kept. */
gboolean spv_recovery_write(SpvRecovery *recovery, const SpvScheme *scheme, GError **error);
/* The work is safe elsewhere: its files go. Consumes RECOVERY. */
void spv_recovery_remove(SpvRecovery *recovery);
/* The painter does not want it: to the trash, or where there is none, away. Consumes RECOVERY. */
void spv_recovery_discard(SpvRecovery *recovery);
/* Lets go of it and leaves the files. */
void spv_recovery_free(SpvRecovery *recovery);

/* The kept work in FOLDER that nobody holds, the newest first; holds it from now on. SpvRecovery in a
 * GPtrArray that frees them; empty when there is none. */
GPtrArray *spv_recovery_list(const char *folder);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvRecovery, spv_recovery_free)
