/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command line: one verb a file, a table of them, and a dispatcher that a test can call without running a
 * process. */
#pragma once

#include <gio/gio.h>

typedef struct {
  GString *out, *err; /* when set (tests), text goes here; otherwise to standard output and standard error */
  GCancellable *cancellable; /* SIGINT */
} SpvCommandContext;

typedef enum {
  SPV_EXIT_DONE = 0,
  SPV_EXIT_FAILED = 1,  /* one line on standard error */
  SPV_EXIT_USAGE = 2,   /* the call was wrong */
  SPV_EXIT_FINDINGS = 3 /* `check` has findings */
} SpvExit;

/* Runs `spolvero-cli ARGV[1] …` and returns its exit status. */
int spv_command_run(SpvCommandContext *context, int argc, char **argv);
