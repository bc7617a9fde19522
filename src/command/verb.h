/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A verb of the command line: its name, its words of help, and what runs it. Each has a file of its own. */
#pragma once

#include "command/call.h"

typedef struct _SpvVerb SpvVerb;
struct _SpvVerb {
  const char *name;
  const char *arguments; /* after the name in the line of usage: "FILE -o DIR" */
  const char *summary;   /* one line, untranslated: shown through _() */
  const char *notes;     /* a paragraph after the options, untranslated; or NULL */
  /* ARGUMENTS is a NULL-terminated vector, the program's name first; the verb may change it. Returns the exit
   * status. */
  int (*run)(const SpvVerb *verb, SpvCall *call, char ***arguments);
};

extern const SpvVerb spv_verb_blazon, spv_verb_chart, spv_verb_check, spv_verb_describe, spv_verb_guide,
    spv_verb_new, spv_verb_sheet;

/* Reads ARGUMENTS by ENTRIES, which end in { NULL } and put their values where they say; file names and texts
 * are G_OPTION_ARG_FILENAME, taken as they come whatever the locale. TRUE when the verb may go on; otherwise
 * STATUS is the call's exit status: help was asked for and given, or the call was wrong. */
gboolean spv_verb_parse(const SpvVerb *verb, SpvCall *call, const GOptionEntry *entries, char ***arguments,
                        int *status);

/* The one FILE that FILES must hold; NULL, with STATUS set, when there is none or more than one. */
const char *spv_verb_file(const SpvVerb *verb, SpvCall *call, char *const *files, int *status);

/* Whether TEXT, the value of OPTION ("--title"), is UTF-8 with something in it; sets STATUS if not. NULL, for
 * an option that was not given, is fine. */
gboolean spv_verb_check_text(const SpvVerb *verb, SpvCall *call, const char *option, const char *text,
                             int *status);
