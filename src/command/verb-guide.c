/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `guide`: every dot and ruling, in mm. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "command/guide-text.h"
#include "command/input.h"
#include "command/json-text.h"
#include "command/verb.h"

static SpvGuide *
guide_of(const SpvScheme *scheme, guint panel) {
  g_autoptr(SpvComposition) composition = spv_compose(scheme, panel);
  return spv_guide_new(composition);
}

static void
print_json(SpvCall *call, const SpvScheme *scheme, const GArray *panels) {
  json_t *list = json_array();
  for (guint i = 0; i < panels->len; i++) {
    g_autoptr(SpvGuide) guide = guide_of(scheme, g_array_index(panels, guint, i));
    json_array_append_new(list, spv_guide_to_json(guide));
  }
  json_t *root = json_pack("{s:i, s:s, s:o}", "spolvero", 1, "scheme", scheme->title, "panels", list);
  spv_json_print(root, call->out);
  json_decref(root);
}

static void
print_text(SpvCall *call, const SpvScheme *scheme, const GArray *panels) {
  g_string_append_printf(call->out, "%s\n", scheme->title);
  if (!panels->len) {
    g_string_append_printf(call->out, "%s\n", _("No panel has a design yet."));
    return;
  }
  g_string_append_printf(call->out, "%s\n",
                         _("All in mm, to 0.05. x: from the centre line, + towards the wearer's sinister.\n"
                           "y: down from the datum. along: along that edge, from its dexter or upper end.\n"
                           "from datum: along the outline, + towards sinister."));
  for (guint i = 0; i < panels->len; i++) {
    g_autoptr(SpvGuide) guide = guide_of(scheme, g_array_index(panels, guint, i));
    g_string_append_c(call->out, '\n');
    spv_guide_print_text(guide, call->out);
  }
}

static int
print_guide(SpvCall *call, const char *file, char *const *ids, gboolean as_json) {
  g_autoptr(SpvScheme) scheme = spv_input_scheme(call, file);
  if (!scheme)
    return SPV_EXIT_FAILED;
  g_autoptr(GArray) panels = spv_input_panels(call, file, scheme, ids, TRUE);
  if (!panels)
    return SPV_EXIT_FAILED;
  if (as_json)
    print_json(call, scheme, panels);
  else
    print_text(call, scheme, panels);
  return SPV_EXIT_DONE;
}

static int
run(const SpvVerb *verb, SpvCall *call, char ***arguments) {
  gboolean as_json = FALSE;
  g_auto(GStrv) files = NULL, panels = NULL;
  const GOptionEntry entries[] = {
    { "panel", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &panels,
      N_("Only this one; may be repeated; preset: all with a design"), "ID" },
    { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_("Print the guide as JSON"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &files, NULL, NULL },
    { NULL },
  };
  int status = SPV_EXIT_DONE;
  if (!spv_verb_parse(verb, call, entries, arguments, &status))
    return status;
  const char *file = spv_verb_file(verb, call, files, &status);
  return file ? print_guide(call, file, panels, as_json) : status;
}

const SpvVerb spv_verb_guide = {
  "guide",
  "FILE [OPTION…]",
  N_("Say where every dot and ruling goes, in mm"),
  N_("Dots are numbered in the order in which they are put down. FILE may be “-”,\n"
     "standard input."),
  run,
};
