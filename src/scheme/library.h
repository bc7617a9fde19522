/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a new scheme can start from: the harnesses and examples that the program ships (kept inside it as
 * resources), and the painter's own templates in the user's data directory. */
#pragma once

#include "scheme/scheme.h"

typedef enum {
  SPV_LIBRARY_HARNESS, /* shipped: panels, no designs */
  SPV_LIBRARY_EXAMPLE, /* shipped: a whole scheme */
  SPV_LIBRARY_TEMPLATE /* the painter's own */
} SpvLibraryKind;

typedef struct {
  SpvLibraryKind kind;
  char *key;   /* what the command line calls it: "armoured-trooper-32" */
  char *title; /* what the screen calls it */
  char *path;  /* TEMPLATE: the file; otherwise NULL */
} SpvLibraryEntry;

void spv_library_entry_free(SpvLibraryEntry *entry);

/* The entries of one kind: shipped ones in their own order, templates by title. A template file that can't be
 * read is listed with its file name as title; loading it says why. Returns a GPtrArray of SpvLibraryEntry. */
GPtrArray *spv_library_list(SpvLibraryKind kind);

/* The scheme that ENTRY names. */
SpvScheme *spv_library_load(const SpvLibraryEntry *entry, GError **error);

/* The harness or example called KEY, or a template with that key; the error lists what there is. */
SpvScheme *spv_library_load_key(const char *key, GError **error);

/* Saves SCHEME as a template called TITLE and gives its path (free with g_free()); one of the same title is
 * replaced. */
char *spv_library_save_template(const SpvScheme *scheme, const char *title, GError **error);

/* The folder of templates: "spolvero/templates" in the user's data directory. Free with g_free(). */
char *spv_library_folder(void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvLibraryEntry, spv_library_entry_free)
