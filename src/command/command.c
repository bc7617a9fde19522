/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of verbs, the program's own help, and the output once a verb is done. */
#include "config.h"

#include "command/command.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <unistd.h>

#include "command/table.h"
#include "command/verb.h"

static const SpvVerb *const verbs[] = { &spv_verb_new,   &spv_verb_blazon, &spv_verb_describe,
                                        &spv_verb_check, &spv_verb_guide,  &spv_verb_sheet,
                                        &spv_verb_chart };

static const SpvVerb *
find_verb(const char *name) {
  for (gsize i = 0; i < G_N_ELEMENTS(verbs); i++)
    if (g_str_equal(verbs[i]->name, name))
      return verbs[i];
  return NULL;
}

static void
print_help(SpvCall *call) {
  g_string_append(call->out, _("Usage: spolvero-cli VERB [ARGUMENT…]"));
  g_string_append_printf(call->out, "\n\n%s\n\n",
                         _("Plan freehand heraldry on scale figures: from a scheme file to guide sheets."));
  g_autoptr(SpvTable) table = spv_table_new("ll");
  for (gsize i = 0; i < G_N_ELEMENTS(verbs); i++)
    spv_table_add(table, (const char *const[]){ verbs[i]->name, _(verbs[i]->summary) });
  spv_table_print(table, call->out, 2);
  g_string_append_c(call->out, '\n');
  g_autoptr(SpvTable) options = spv_table_new("ll");
  spv_table_add(options, (const char *const[]){ "-h, --help", _("Show this help") });
  spv_table_add(options, (const char *const[]){ "    --version", _("Show the version") });
  spv_table_print(options, call->out, 2);
  g_string_append_printf(call->out, "\n%s\n", _("“spolvero-cli VERB --help” tells more of each."));
}

static int
dispatch(SpvCall *call, int argc, char **argv) {
  const char *word = argc > 1 ? argv[1] : NULL;
  if (!word)
    return spv_call_misuse(call, NULL, _("say what to do: name a verb"));
  if (g_str_equal(word, "--help") || g_str_equal(word, "-h")) {
    print_help(call);
    return SPV_EXIT_DONE;
  }
  if (g_str_equal(word, "--version")) {
    g_string_append(call->out, "spolvero-cli " SPV_VERSION "\n");
    return SPV_EXIT_DONE;
  }
  const SpvVerb *verb = find_verb(word);
  if (!verb) {
    g_autofree char *message = g_strdup_printf(_("there is no verb “%s”"), word);
    return spv_call_misuse(call, NULL, message);
  }
  g_autoptr(GStrvBuilder) builder = g_strv_builder_new();
  g_strv_builder_add(builder, argv[0]);
  g_strv_builder_addv(builder, (const char **) argv + 2);
  g_auto(GStrv) arguments = g_strv_builder_end(builder);
  return verb->run(verb, call, &arguments);
}

/* Writes TEXT whole, and says so when the disk is full or the other end is gone. */
static gboolean
write_out(FILE *stream, const GString *text) {
  return fwrite(text->str, 1, text->len, stream) == text->len && fflush(stream) == 0;
}

int
spv_command_run(SpvCommandContext *context, int argc, char **argv) {
  g_autoptr(GString) out = g_string_new(NULL);
  g_autoptr(GString) err = g_string_new(NULL);
  SpvCall call = {
    .out = context->out ? context->out : out,
    .err = context->err ? context->err : err,
    .cancellable = context->cancellable,
    .shows_progress = !context->err && isatty(STDERR_FILENO),
    .percent = -1,
  };
  int status = dispatch(&call, argc, argv);
  spv_call_progress_end(&call);
  if (out->len && !write_out(stdout, out)) {
    g_autofree char *message = g_strdup_printf(_("%s; send the output elsewhere"), g_strerror(errno));
    status = spv_call_fail(&call, _("standard output"), message);
  }
  write_out(stderr, err);
  return status;
}
