/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `describe`: each panel in blazon. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "command/input.h"
#include "command/json-text.h"
#include "command/verb.h"
#include "scheme/heraldic.h"

static int
describe(SpvCall *call, const char *file, char *const *ids, gboolean as_json) {
  g_autoptr(SpvScheme) scheme = spv_input_scheme(call, file);
  g_autoptr(GArray) panels = scheme ? spv_input_panels(call, file, scheme, ids, TRUE) : NULL;

  if (!panels)
    return SPV_EXIT_FAILED;
  json_t *list = json_array();
  for (guint i = 0; i < panels->len; i++) {
    guint index = g_array_index(panels, guint, i);
    const SpvPanel *panel = scheme->panels[index];
    g_autofree char *words = spv_heraldic_describe(scheme, index);

    json_array_append_new(
        list, json_pack("{s:s, s:s, s:s}", "id", panel->id, "name", panel->name, "blazon", words));
    if (!as_json)
      g_string_append_printf(call->out, "%s: %s\n", panel->id, words);
  }
  json_t *root = json_pack("{s:s, s:o}", "scheme", scheme->title, "panels", list);
  if (as_json)
    spv_json_print(root, call->out);
  json_decref(root);
  return SPV_EXIT_DONE;
}

static int
run(const SpvVerb *verb, SpvCall *call, char ***arguments) {
  gboolean as_json = FALSE;
  g_auto(GStrv) files = NULL, panels = NULL;
  const GOptionEntry entries[] = {
    { "panel", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &panels,
      N_("Only this one; may be repeated; preset: all with a design"), "ID" },
    { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_("Print the blazons as JSON"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &files, NULL, NULL },
    { NULL },
  };
  int status = SPV_EXIT_DONE;

  if (!spv_verb_parse(verb, call, entries, arguments, &status))
    return status;
  const char *file = spv_verb_file(verb, call, files, &status);
  return file ? describe(call, file, panels, as_json) : status;
}

const SpvVerb spv_verb_describe = {
  "describe",
  "FILE [OPTION…]",
  N_("Say in blazon what lies on each panel"),
  N_("The blazon is English; “spolvero-cli blazon” reads it. FILE may be “-”, standard\n"
     "input."),
  run,
};
