/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `blazon`: a scheme from words. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "command/input.h"
#include "command/output.h"
#include "command/verb.h"
#include "scheme/heraldic.h"
#include "scheme/library.h"

/* The figure on which words are tried when no other is named. */
#define USUAL_HARNESS "knight-54"

typedef struct {
  char *harness, *file; /* what to lay on: the one or the other, or neither */
  char *title, *output;
  char **panels;
  gboolean force;
} Choices;

/* The scheme to lay on; NULL when it can't be had: the call has then failed. */
static SpvScheme *
start(SpvCall *call, const Choices *choices) {
  g_autoptr(GError) error = NULL;

  if (choices->file)
    return spv_input_scheme(call, choices->file);
  SpvScheme *scheme = spv_library_load_key(choices->harness ? choices->harness : USUAL_HARNESS, &error);
  if (!scheme)
    spv_call_fail(call, NULL, error->message);
  return scheme;
}

static int
lay(SpvCall *call, const char *words, const Choices *choices) {
  g_autoptr(SpvScheme) scheme = start(call, choices);
  const char *name = choices->file ? choices->file : choices->harness ? choices->harness : USUAL_HARNESS;
  g_autoptr(GArray) panels = scheme ? spv_input_panels(call, name, scheme, choices->panels, FALSE) : NULL;
  g_autoptr(GError) error = NULL;

  if (!panels)
    return SPV_EXIT_FAILED;
  for (guint i = 0; i < panels->len; i++) {
    SpvScheme *laid = spv_heraldic_lay(scheme, g_array_index(panels, guint, i), words, NULL, &error);
    if (!laid)
      return spv_call_fail(call, _("blazon"), error->message);
    spv_scheme_unref(scheme);
    scheme = laid;
  }
  if (choices->title) {
    SpvScheme *titled = spv_scheme_with_title(scheme, choices->title);
    spv_scheme_unref(scheme);
    scheme = titled;
  }
  return spv_output_scheme(call, scheme, choices->output ? choices->output : "-", choices->force);
}

static int
parse_and_lay(const SpvVerb *verb, SpvCall *call, char ***arguments, Choices *choices) {
  g_auto(GStrv) words = NULL;
  const GOptionEntry entries[] = {
    { "harness", 0, 0, G_OPTION_ARG_FILENAME, &choices->harness,
      N_("Lay it on this harness or template; preset: knight-54"), "NAME" },
    { "scheme", 0, 0, G_OPTION_ARG_FILENAME, &choices->file, N_("Lay it on this scheme instead"), "FILE" },
    { "panel", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &choices->panels,
      N_("Only on this one; may be repeated; preset: on every panel"), "ID" },
    { "title", 0, 0, G_OPTION_ARG_FILENAME, &choices->title,
      N_("The scheme's title; preset: that of what it is laid on"), "TEXT" },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &choices->output,
      N_("The file to write; preset: standard output"), "FILE" },
    { "force", 0, 0, G_OPTION_ARG_NONE, &choices->force, N_("Replace a file that is there"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &words, NULL, NULL },
    { NULL },
  };
  int status = SPV_EXIT_DONE;

  if (!spv_verb_parse(verb, call, entries, arguments, &status) ||
      !spv_verb_check_text(verb, call, "--title", choices->title, &status))
    return status;
  if (!words || !words[0])
    return spv_call_misuse(call, verb->name, _("say the blazon, in quotes"));
  if (choices->harness && choices->file)
    return spv_call_misuse(call, verb->name, _("take --harness or --scheme, not both"));
  g_autofree char *text = g_strjoinv(" ", words);
  if (!g_utf8_validate(text, -1, NULL))
    return spv_call_misuse(call, verb->name, _("the blazon isn't UTF-8"));
  return lay(call, text, choices);
}

static int
run(const SpvVerb *verb, SpvCall *call, char ***arguments) {
  Choices choices = { 0 };
  int status = parse_and_lay(verb, call, arguments, &choices);

  g_free(choices.harness);
  g_free(choices.file);
  g_free(choices.title);
  g_free(choices.output);
  g_strfreev(choices.panels);
  return status;
}

const SpvVerb spv_verb_blazon = {
  "blazon",
  "TEXT [OPTION…]",
  N_("Make a scheme from the words of a blazon"),
  N_("For example: \"Per bend wavy azure and or, on a chief sable three mullets\n"
     "argent\". Tinctures that the scheme doesn't have are added to it."),
  run,
};
