/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `new`: a scheme to start from. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "command/output.h"
#include "command/table.h"
#include "command/verb.h"
#include "scheme/library.h"

static void
add_entries(SpvTable *table, SpvLibraryKind kind, const char *label) {
  g_autoptr(GPtrArray) entries = spv_library_list(kind);
  for (guint i = 0; i < entries->len; i++) {
    const SpvLibraryEntry *entry = entries->pdata[i];
    spv_table_add(table, (const char *const[]){ entry->key, label, entry->title });
  }
}

static int
list(SpvCall *call) {
  g_autoptr(SpvTable) table = spv_table_new("lll");
  add_entries(table, SPV_LIBRARY_HARNESS, _("harness"));
  add_entries(table, SPV_LIBRARY_EXAMPLE, _("example"));
  add_entries(table, SPV_LIBRARY_TEMPLATE, _("template"));
  spv_table_print(table, call->out, 0);
  return SPV_EXIT_DONE;
}

static int
start(SpvCall *call, const char *harness, const char *title, const char *output, gboolean force) {
  g_autoptr(GError) error = NULL;
  g_autoptr(SpvScheme) scheme = spv_library_load_key(harness, &error);
  if (!scheme)
    return spv_call_fail(call, NULL, error->message);
  if (title) {
    SpvScheme *titled = spv_scheme_with_title(scheme, title);
    spv_scheme_unref(scheme);
    scheme = titled;
  }
  return spv_output_scheme(call, scheme, output, force);
}

static int
run(const SpvVerb *verb, SpvCall *call, char ***arguments) {
  gboolean listing = FALSE, force = FALSE;
  g_autofree char *harness = NULL, *title = NULL, *output = NULL;
  g_auto(GStrv) files = NULL;
  const GOptionEntry entries[] = {
    { "harness", 0, 0, G_OPTION_ARG_FILENAME, &harness, N_("Start from this harness, example or template"),
      "NAME" },
    { "title", 0, 0, G_OPTION_ARG_FILENAME, &title,
      N_("The scheme's title; preset: that of what it starts from"), "TEXT" },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_("The file to write; “-” is standard output"),
      "FILE" },
    { "force", 0, 0, G_OPTION_ARG_NONE, &force, N_("Replace a file that is there"), NULL },
    { "list", 0, 0, G_OPTION_ARG_NONE, &listing, N_("List what there is to start from: name, kind, title"),
      NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &files, NULL, NULL },
    { NULL },
  };
  int status = SPV_EXIT_DONE;
  if (!spv_verb_parse(verb, call, entries, arguments, &status) ||
      !spv_verb_check_text(verb, call, "--title", title, &status))
    return status;
  if (files && files[0]) {
    g_autofree char *message = g_strdup_printf(_("“%s” is one word too many; name the file with -o"),
                                               files[0]);
    return spv_call_misuse(call, verb->name, message);
  }
  if (listing && (harness || title || output || force))
    return spv_call_misuse(call, verb->name, _("--list goes with no other option"));
  if (listing)
    return list(call);
  if (!harness || !*harness)
    return spv_call_misuse(call, verb->name,
                           _("name a harness with --harness; --list tells which there are"));
  if (!output || !*output)
    return spv_call_misuse(call, verb->name, _("name the new file with -o"));
  return start(call, harness, title, output, force);
}

const SpvVerb spv_verb_new = {
  "new",
  "--harness NAME [--title TEXT] -o FILE",
  N_("Start a scheme from a harness, an example or a template"),
  N_("A harness has typical sizes: measure your own figure with calipers, and set its\n"
     "panels' measures."),
  run,
};
