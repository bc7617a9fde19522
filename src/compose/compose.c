/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The painter's order of shapes on a panel. */
#include "compose/compose.h"

static void
laid_shape_free(SpvLaidShape *shape) {
  spv_path_unref(shape->area);
  g_clear_pointer(&shape->cells, g_ptr_array_unref);
  g_clear_pointer(&shape->gaps, g_ptr_array_unref);
  g_free(shape);
}

static void
draft_free_or_null(gpointer draft) {
  spv_draft_free(draft);
}

static SpvLaidShape *
add_shape(SpvComposition *composition, guint layer, guint slot, int tincture, const SpvPath *area) {
  SpvLaidShape *shape = g_new0(SpvLaidShape, 1);

  shape->layer = layer;
  shape->slot = slot;
  shape->tincture = (guint) tincture;
  shape->area = spv_path_ref(area);
  g_ptr_array_add(composition->shapes, shape);
  return shape;
}

/* Adds what SLOT of DRAFT lays. */
static void
add_slot(SpvComposition *composition, guint layer, guint slot, int tincture, const SpvDraft *draft) {
  SpvLaidShape *shape = add_shape(composition, layer, slot, tincture, draft->area[slot]);

  if (draft->cells[slot] == NULL)
    return;
  shape->cells = g_ptr_array_ref(draft->cells[slot]);
  shape->gaps = g_ptr_array_ref(draft->cells[1 - slot]);
}

/* The two areas of a division cover the panel between them. Where both are painted, the first goes over all
 * of it and the second on top, as a painter would: then no hair of what lies beneath shows along their common
 * edge. */
static void
add_layer(SpvComposition *composition, guint index, const SpvLayer *layer) {
  SpvDraft *draft = spv_pattern_lay(&layer->pattern, composition->outline);
  int tinctures[SPV_PATTERN_SLOTS];

  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    tinctures[slot] = draft->area[slot]
                          ? spv_scheme_find_tincture(composition->scheme, layer->tinctures[slot])
                          : -1;

  if (tinctures[0] >= 0 && tinctures[1] >= 0) {
    SpvBox bounds = spv_outline_bounds(composition->outline);
    double margin = 0.1 * MAX(spv_box_width(bounds), spv_box_height(bounds));
    g_autoptr(SpvPath) cover = spv_path_new_box(spv_box_grow(bounds, margin));
    add_shape(composition, index, 0, tinctures[0], cover);
  } else if (tinctures[0] >= 0) {
    add_slot(composition, index, 0, tinctures[0], draft);
  }
  if (tinctures[1] >= 0)
    add_slot(composition, index, 1, tinctures[1], draft);
  g_ptr_array_add(composition->drafts, draft);
}

SpvComposition *
spv_compose(const SpvScheme *scheme, guint panel_index) {
  SpvComposition *composition;

  g_return_val_if_fail(panel_index < scheme->n_panels, NULL);
  composition = g_new0(SpvComposition, 1);
  composition->scheme = spv_scheme_ref(scheme);
  composition->panel_index = panel_index;
  composition->panel = scheme->panels[panel_index];
  composition->outline = spv_panel_outline(composition->panel);
  composition->shapes = g_ptr_array_new_with_free_func((GDestroyNotify) laid_shape_free);
  composition->drafts = g_ptr_array_new_with_free_func(draft_free_or_null);
  for (guint i = 0; i < composition->panel->n_layers; i++) {
    const SpvLayer *layer = composition->panel->layers[i];
    if (layer->hidden)
      g_ptr_array_add(composition->drafts, NULL);
    else
      add_layer(composition, i, layer);
  }
  g_atomic_ref_count_init(&composition->refs);
  return composition;
}

SpvComposition *
spv_composition_ref(const SpvComposition *composition) {
  SpvComposition *own = (SpvComposition *) composition;
  g_atomic_ref_count_inc(&own->refs);
  return own;
}

void
spv_composition_unref(SpvComposition *composition) {
  if (!composition || !g_atomic_ref_count_dec(&composition->refs))
    return;
  g_ptr_array_unref(composition->shapes);
  g_ptr_array_unref(composition->drafts);
  spv_outline_unref(composition->outline);
  spv_scheme_unref(composition->scheme);
  g_free(composition);
}

int
spv_composition_pick(const SpvComposition *composition, SpvPoint point) {
  if (!spv_path_contains(spv_outline_path(composition->outline), point))
    return -1;
  for (guint i = composition->shapes->len; i-- > 0;) {
    const SpvLaidShape *shape = g_ptr_array_index(composition->shapes, i);
    if (spv_path_contains(shape->area, point))
      return (int) i;
  }
  return -1;
}
