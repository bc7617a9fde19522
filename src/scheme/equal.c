/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Deep comparison, field by field. */
#include "scheme/equal-private.h"

#include <string.h>

gboolean
spv_json_same(const json_t *a, const json_t *b) {
  if (a == NULL || b == NULL)
    return a == b;
  return json_equal(a, b) != 0;
}

static gboolean
outline_equal(const SpvOutlineSpec *a, const SpvOutlineSpec *b) {
  for (guint i = 0; i < SPV_OUTLINE_MEASURES; i++)
    if (a->own[i] != b->own[i])
      return FALSE;
  return a->family == b->family && a->width == b->width && a->height == b->height;
}

gboolean
spv_panel_equal(const SpvPanel *a, const SpvPanel *b) {
  if (a == b)
    return TRUE;
  if (a->n_layers != b->n_layers || strcmp(a->id, b->id) != 0 || strcmp(a->name, b->name) != 0)
    return FALSE;
  for (guint i = 0; i < a->n_layers; i++)
    if (!spv_layer_equal(a->layers[i], b->layers[i]))
      return FALSE;
  return a->side == b->side && outline_equal(&a->outline, &b->outline) &&
         a->surface.kind == b->surface.kind && a->surface.depth == b->surface.depth &&
         a->place.x == b->place.x && a->place.y == b->place.y && !a->measured == !b->measured &&
         spv_json_same(a->unknown, b->unknown) && spv_json_same(a->unknown_design, b->unknown_design);
}

gboolean
spv_tincture_equal(const SpvTincture *a, const SpvTincture *b) {
  for (guint part = 0; part < SPV_FUR_PARTS; part++)
    if (g_strcmp0(a->of[part], b->of[part]) != 0)
      return FALSE;
  return strcmp(a->id, b->id) == 0 && strcmp(a->name, b->name) == 0 && spv_rgb_equal(a->colour, b->colour) &&
         a->hatch == b->hatch && a->fur == b->fur && a->pitch == b->pitch;
}

static const json_t *
unknown_tincture(const SpvScheme *scheme, guint index) {
  return scheme->unknown_tinctures != NULL ? scheme->unknown_tinctures[index] : NULL;
}

gboolean
spv_scheme_equal(const SpvScheme *a, const SpvScheme *b) {
  if (a == b)
    return TRUE;
  if (a->n_panels != b->n_panels || a->n_tinctures != b->n_tinctures)
    return FALSE;
  for (guint i = 0; i < a->n_tinctures; i++)
    if (!spv_tincture_equal(&a->tinctures[i], &b->tinctures[i]) ||
        !spv_json_same(unknown_tincture(a, i), unknown_tincture(b, i)))
      return FALSE;
  for (guint i = 0; i < a->n_panels; i++)
    if (!spv_panel_equal(a->panels[i], b->panels[i]))
      return FALSE;
  return strcmp(a->title, b->title) == 0 && strcmp(a->note, b->note) == 0 &&
         strcmp(a->harness, b->harness) == 0 && a->finest_line == b->finest_line &&
         spv_json_same(a->unknown, b->unknown) && spv_json_same(a->unknown_harness, b->unknown_harness);
}
