/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the verbs share: options, help, and the words of a call. */
#include "config.h"

#include "command/verb.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "command/table.h"

/* "-o, --output=DIR", as help names an option; free with g_free(). */
static char *
option_name(const GOptionEntry *entry) {
  g_autofree char *abbreviation = entry->short_name ? g_strdup_printf("-%c, ", entry->short_name)
                                                    : g_strdup("    ");
  return g_strconcat(abbreviation, "--", entry->long_name, entry->arg_description ? "=" : NULL,
                     entry->arg_description, NULL);
}

/* GLib could write this too, but with the process's name, not the verb's, and with its own options. */
static void
print_help(const SpvVerb *verb, SpvCall *call, const GOptionEntry *entries) {
  g_string_append_printf(call->out, _("Usage: spolvero-cli %s %s"), verb->name, verb->arguments);
  g_string_append_printf(call->out, "\n\n%s\n\n", _(verb->summary));
  g_autoptr(SpvTable) table = spv_table_new("ll");
  for (const GOptionEntry *entry = entries; entry->long_name; entry++) {
    if (!*entry->long_name)
      continue; /* G_OPTION_REMAINING: the files, which the line of usage shows */
    g_autofree char *name = option_name(entry);
    spv_table_add(table, (const char *const[]){ name, _(entry->description) });
  }
  spv_table_add(table, (const char *const[]){ "-h, --help", _("Show this help") });
  spv_table_print(table, call->out, 2);
  if (verb->notes)
    g_string_append_printf(call->out, "\n%s\n", _(verb->notes));
}

gboolean
spv_verb_parse(const SpvVerb *verb, SpvCall *call, const GOptionEntry *entries, char ***arguments,
               int *status) {
  gboolean help = FALSE;
  const GOptionEntry help_entries[] = {
    { "help", 'h', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &help, NULL, NULL },
    { NULL },
  };
  g_autoptr(GOptionContext) context = g_option_context_new(NULL);
  g_option_context_set_help_enabled(context, FALSE);
  g_option_context_add_main_entries(context, entries, NULL);
  g_option_context_add_main_entries(context, help_entries, NULL);
  g_autoptr(GError) error = NULL;
  if (!g_option_context_parse_strv(context, arguments, &error)) {
    *status = spv_call_misuse(call, verb->name, error->message);
    return FALSE;
  }
  if (help) {
    print_help(verb, call, entries);
    *status = SPV_EXIT_DONE;
    return FALSE;
  }
  return TRUE;
}

const char *
spv_verb_file(const SpvVerb *verb, SpvCall *call, char *const *files, int *status) {
  if (files && files[0] && !files[1])
    return files[0];
  if (files && files[0]) {
    g_autofree char *message = g_strdup_printf(_("one scheme file at a time; “%s” is one too many"),
                                               files[1]);
    *status = spv_call_misuse(call, verb->name, message);
  } else {
    *status = spv_call_misuse(call, verb->name, _("name a scheme file, or “-” for standard input"));
  }
  return NULL;
}

gboolean
spv_verb_check_text(const SpvVerb *verb, SpvCall *call, const char *option, const char *text, int *status) {
  gboolean is_utf8 = !text || g_utf8_validate(text, -1, NULL);
  gboolean is_blank = text && !text[strspn(text, " \t\r\n")];
  if (is_utf8 && !is_blank)
    return TRUE;
  g_autofree char *message = !is_utf8 ? g_strdup_printf(_("the text of %s is not UTF-8"), option)
                                      : g_strdup_printf(_("the text of %s is empty"), option);
  *status = spv_call_misuse(call, verb->name, message);
  return FALSE;
}
