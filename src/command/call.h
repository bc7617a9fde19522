/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One call of the command line while it runs: what it has said so far, and how it fails. Nothing reaches
 * standard output before the verb is done, so a call that fails halfway has printed nothing. */
#pragma once

#include "command/command.h"

typedef struct {
  GString *out, *err;        /* UTF-8 text for standard output and standard error; never NULL */
  GCancellable *cancellable; /* may be NULL */
  gboolean shows_progress;   /* standard error is a terminal that a person looks at */
  int percent;               /* what the progress line says; -1 for no line */
} SpvCall;

/* Adds "spolvero-cli: WHERE: MESSAGE" to the call's errors, as one line whatever MESSAGE holds, and returns
 * SPV_EXIT_FAILED. WHERE (a file's name) may be NULL. */
int spv_call_fail(SpvCall *call, const char *where, const char *message);

/* The same for a call that was wrong: adds MESSAGE and where help is (that of VERB; NULL for the program's
 * own), and returns SPV_EXIT_USAGE. */
int spv_call_misuse(SpvCall *call, const char *verb, const char *message);

/* A progress function, with the call as its DATA: keeps one line on standard error up to date where
 * shows_progress is set, and does nothing otherwise. */
void spv_call_progress(double fraction, gpointer call);
/* Takes the progress line away again. */
void spv_call_progress_end(SpvCall *call);
