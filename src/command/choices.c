/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "command/choices.h"

#include <glib/gi18n-lib.h>

#include "command/json-text.h"

gboolean
spv_choose_paper(const char *key, const SpvPaper **paper, char **message) {
  g_autoptr(GString) known = g_string_new(NULL);
  guint n = 0;
  const SpvPaper *papers = spv_papers(&n);
  const SpvPaper *found = key ? spv_paper_from_key(key) : *paper;

  if (found) {
    *paper = found;
    return TRUE;
  }
  for (guint i = 0; i < n; i++)
    g_string_append_printf(known, "%s%s", i ? ", " : "", papers[i].key);
  *message = g_strdup_printf(_("no paper is called “%s”; take one of: %s"), key, known->str);
  return FALSE;
}

gboolean
spv_choose_dpi(int dpi, char **message) {
  if (dpi >= SPV_DPI_MIN && dpi <= SPV_DPI_MAX)
    return TRUE;
  *message = g_strdup_printf(_("%d dots an inch is out of range; take %d to %d"), dpi, SPV_DPI_MIN,
                             SPV_DPI_MAX);
  return FALSE;
}

void
spv_print_paths(SpvCall *call, const char *name, const GPtrArray *paths, gboolean as_json) {
  json_t *names = json_array();
  for (guint i = 0; i < paths->len; i++) {
    const char *path = paths->pdata[i];
    g_autofree char *valid = g_utf8_make_valid(path, -1);
    json_array_append_new(names, json_string(valid));
    if (!as_json)
      g_string_append_printf(call->out, "%s\n", path);
  }
  json_t *root = json_pack("{s:o}", name, names);
  if (as_json)
    spv_json_print(root, call->out);
  json_decref(root);
}
