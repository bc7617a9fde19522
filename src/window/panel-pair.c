/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/panel-pair.h"

#include <string.h>

/* The id of the panel on the other side, or NULL. Free with g_free(). */
static char *
opposite_id(const char *id) {
  if (g_str_has_suffix(id, "-dexter"))
    return g_strdup_printf("%.*s-sinister", (int) (strlen(id) - strlen("-dexter")), id);
  if (g_str_has_suffix(id, "-sinister"))
    return g_strdup_printf("%.*s-dexter", (int) (strlen(id) - strlen("-sinister")), id);
  return NULL;
}

int
spv_panel_pair_find(const SpvScheme *scheme, guint index) {
  g_autofree char *id = opposite_id(scheme->panels[index]->id);
  int other = id ? spv_scheme_find_panel(scheme, id) : -1;

  if (other < 0 || scheme->panels[other]->side == scheme->panels[index]->side)
    return -1;
  return other;
}

SpvScheme *
spv_panel_pair_copy_size(const SpvScheme *scheme, guint from, guint to) {
  const SpvPanel *source = scheme->panels[from];
  g_autoptr(SpvPanel) outlined = spv_panel_with_outline(scheme->panels[to], &source->outline);
  g_autoptr(SpvPanel) surfaced = spv_panel_with_surface(outlined, &source->surface);
  g_autoptr(SpvPanel) measured = spv_panel_with_measured(surfaced, source->measured);

  return spv_scheme_with_panel(scheme, to, measured);
}

static gboolean
same_design(const SpvPanel *a, const SpvPanel *b) {
  if (a->n_layers != b->n_layers)
    return FALSE;
  for (guint i = 0; i < a->n_layers; i++) {
    if (!spv_layer_equal(a->layers[i], b->layers[i]))
      return FALSE;
  }
  return TRUE;
}

static gboolean
has_locked_layer(const SpvPanel *panel) {
  for (guint i = 0; i < panel->n_layers; i++)
    if (panel->layers[i]->locked)
      return TRUE;
  return FALSE;
}

/* SCHEME with DESIGNED for panel TO, unless that is so already, or may not be. */
static SpvScheme *
put_design(const SpvScheme *scheme, guint to, const SpvPanel *designed) {
  if (same_design(designed, scheme->panels[to]))
    return spv_scheme_ref(scheme);
  return has_locked_layer(scheme->panels[to]) ? NULL : spv_scheme_with_panel(scheme, to, designed);
}

SpvScheme *
spv_panel_pair_copy_design(const SpvScheme *scheme, guint from, guint to) {
  const SpvPanel *source = scheme->panels[from];
  g_autoptr(SpvPanel) copied = spv_panel_with_layers(scheme->panels[to], source->layers, source->n_layers);

  return put_design(scheme, to, copied);
}

SpvScheme *
spv_panel_pair_copy_design_mirrored(const SpvScheme *scheme, guint from, guint to) {
  g_autoptr(SpvPanel) copied = spv_panel_with_design_mirrored(scheme->panels[to], scheme->panels[from]);

  return put_design(scheme, to, copied);
}
