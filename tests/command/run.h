/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs the command line inside a test, and keeps what it says. */
#pragma once

#include "command/command.h"

typedef struct {
  int status;
  GString *out, *err;
} SpvRun;

/* Runs `spolvero-cli ARGUMENTS…`; the last argument must be NULL. */
SpvRun *spv_run(const char *first, ...) G_GNUC_NULL_TERMINATED;
/* The same with a NULL-terminated vector, and a cancellable that may be NULL. */
SpvRun *spv_run_with(const char *const *arguments, GCancellable *cancellable);
void spv_run_free(SpvRun *run);

/* A new folder that only this test uses; its path, free with g_free(). */
char *spv_run_folder(void);
/* Removes it and all the files in it. */
void spv_run_folder_remove(const char *folder);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvRun, spv_run_free)
