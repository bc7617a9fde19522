/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `check`: what a hand could not paint. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "check/check.h"
#include "command/input.h"
#include "command/json-text.h"
#include "command/verb.h"

/* The findings (SpvFinding) on PANELS; NULL, with ERROR set, when cancelled. */
static GPtrArray *
find_all(SpvCall *call, const SpvScheme *scheme, const GArray *panels, GError **error) {
  if (panels->len == scheme->n_panels)
    return spv_check_scheme(scheme, call->cancellable, spv_call_progress, call, error);
  GPtrArray *all = NULL;
  for (guint i = 0; i < panels->len; i++) {
    GPtrArray *found = spv_check_panel(scheme, g_array_index(panels, guint, i), call->cancellable, error);
    if (!found) {
      g_clear_pointer(&all, g_ptr_array_unref);
      return NULL;
    }
    spv_call_progress((i + 1.0) / panels->len, call);
    if (all)
      g_ptr_array_extend_and_steal(all, found);
    else
      all = found;
  }
  return all ? all : g_ptr_array_new();
}

/* "mm", as a key of JSON; NULL where the number stands alone. */
static const char *
unit_key(SpvUnit unit) {
  switch (unit) {
  case SPV_UNIT_AUTO:
  case SPV_UNIT_PLAIN:
    return NULL;
  case SPV_UNIT_MM:
    return "mm";
  case SPV_UNIT_RELATIVE:
    return "relative";
  case SPV_UNIT_DEGREES:
    return "degrees";
  }
  g_return_val_if_reached(NULL);
}

/* VALUE, which is not AUTO, as the scheme file writes it: a count, the name of a choice, or a number with its
 * unit. */
static json_t *
measure_to_json(const SpvMeasureSpec *spec, SpvMeasure value) {
  if (spec->type == SPV_MEASURE_CHOICE)
    return json_string(spec->choices[(guint) value.value]);
  const char *unit = unit_key(value.unit);
  return unit ? json_pack("{s:f}", unit, value.value) : json_real(value.value);
}

static json_t *
remedy_to_json(const SpvRemedy *remedy, const SpvPanel *panel) {
  const SpvLayer *layer = panel->layers[remedy->layer];
  const SpvMeasureSpec *spec = &spv_pattern_info(layer->pattern.kind)->measures[remedy->measure];
  json_t *object = json_pack("{s:s, s:s}", "layer", layer->id, "measure", spec->key);
  if (remedy->value.unit != SPV_UNIT_AUTO)
    json_object_set_new(object, "value", measure_to_json(spec, remedy->value));
  return object;
}

static json_t *
finding_to_json(const SpvFinding *finding, const SpvScheme *scheme) {
  const SpvPanel *panel = scheme->panels[finding->panel];
  g_autofree char *message = spv_finding_message(finding, scheme);
  g_autofree char *remedy = spv_finding_remedy(finding, scheme);
  json_t *object = json_pack("{s:s, s:s, s:s}", "kind", spv_finding_key(finding->kind), "severity",
                             spv_severity_key(finding->severity), "panel", panel->id);
  if (finding->layer >= 0)
    json_object_set_new(object, "layer", json_string(panel->layers[finding->layer]->id));
  if (finding->tincture >= 0)
    json_object_set_new(object, "tincture", json_string(scheme->tinctures[finding->tincture].id));
  if (finding->kind == SPV_FINDING_NARROW_STROKE)
    json_object_set_new(object, "cause", json_string(spv_cause_key(finding->cause)));
  json_object_set_new(object, "place", json_pack("{s:f, s:f}", "x", finding->place.x, "y", finding->place.y));
  json_object_set_new(object, "width", json_real(finding->width));
  json_object_set_new(object, "limit", json_real(finding->limit));
  json_object_set_new(object, "count", json_integer(finding->count));
  json_object_set_new(object, "message", json_string(message));
  if (remedy)
    json_object_set_new(object, "remedy", json_string(remedy));
  if (finding->has_remedy)
    json_object_set_new(object, "fix", remedy_to_json(&finding->remedy, panel));
  return object;
}

static void
print_json(SpvCall *call, const SpvScheme *scheme, const GPtrArray *findings) {
  json_t *list = json_array();
  for (guint i = 0; i < findings->len; i++)
    json_array_append_new(list, finding_to_json(findings->pdata[i], scheme));
  json_t *root = json_pack("{s:o}", "findings", list);
  spv_json_print(root, call->out);
  json_decref(root);
}

static void
print_text(SpvCall *call, const SpvScheme *scheme, const GPtrArray *findings) {
  for (guint i = 0; i < findings->len; i++) {
    const SpvFinding *finding = findings->pdata[i];
    g_autofree char *message = spv_finding_message(finding, scheme);
    g_autofree char *remedy = spv_finding_remedy(finding, scheme);
    g_string_append_printf(call->out, "%s: %s: %s%s%s\n", scheme->panels[finding->panel]->id,
                           spv_severity_key(finding->severity), message, remedy ? " " : "",
                           remedy ? remedy : "");
  }
}

static gboolean
any_warning(const GPtrArray *findings) {
  for (guint i = 0; i < findings->len; i++)
    if (((const SpvFinding *) findings->pdata[i])->severity == SPV_SEVERITY_WARNING)
      return TRUE;
  return FALSE;
}

static int
check(SpvCall *call, const char *file, char *const *ids, gboolean as_json) {
  g_autoptr(SpvScheme) scheme = spv_input_scheme(call, file);
  if (!scheme)
    return SPV_EXIT_FAILED;
  g_autoptr(GArray) panels = spv_input_panels(call, file, scheme, ids, FALSE);
  if (!panels)
    return SPV_EXIT_FAILED;
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) findings = find_all(call, scheme, panels, &error);
  spv_call_progress_end(call);
  if (!findings)
    return spv_call_fail(call, NULL, _("stopped before the check was done"));
  if (as_json)
    print_json(call, scheme, findings);
  else
    print_text(call, scheme, findings);
  return any_warning(findings) ? SPV_EXIT_FINDINGS : SPV_EXIT_DONE;
}

static int
run(const SpvVerb *verb, SpvCall *call, char ***arguments) {
  gboolean as_json = FALSE;
  g_auto(GStrv) files = NULL, panels = NULL;
  const GOptionEntry entries[] = {
    { "panel", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &panels, N_("Only this one; may be repeated; preset: all"),
      "ID" },
    { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_("Print the findings as JSON"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &files, NULL, NULL },
    { NULL },
  };
  int status = SPV_EXIT_DONE;
  if (!spv_verb_parse(verb, call, entries, arguments, &status))
    return status;
  const char *file = spv_verb_file(verb, call, files, &status);
  return file ? check(call, file, panels, as_json) : status;
}

const SpvVerb spv_verb_check = {
  "check",
  "FILE [OPTION…]",
  N_("Find what your finest line can't paint, and what would mend it"),
  N_("Prints one line a finding, and nothing when there is none. Exit status 3 means\n"
     "at least one warning; notes alone give 0. FILE may be “-”, standard input."),
  run,
};
