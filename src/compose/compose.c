/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The painter's order of shapes on a panel. */
#include "compose/compose.h"

static void
laid_shape_free(SpvLaidShape *shape) {
  spv_path_unref(shape->area);
  g_clear_pointer(&shape->clips, g_ptr_array_unref);
  g_clear_pointer(&shape->cells, g_ptr_array_unref);
  g_clear_pointer(&shape->gaps, g_ptr_array_unref);
  g_free(shape);
}

static void
draft_free_or_null(gpointer draft) {
  spv_draft_free(draft);
}

static void
path_free(gpointer path) {
  spv_path_unref(path);
}

/* CLIPS and AREA, which cut a shape together; either may be NULL. */
static GPtrArray *
clips_with(const GPtrArray *clips, const SpvPath *area) {
  GPtrArray *all;

  if (clips == NULL && area == NULL)
    return NULL;
  all = g_ptr_array_new_with_free_func(path_free);
  for (guint i = 0; clips != NULL && i < clips->len; i++)
    g_ptr_array_add(all, spv_path_ref(g_ptr_array_index(clips, i)));
  if (area != NULL)
    g_ptr_array_add(all, spv_path_ref(area));
  return all;
}

/* One layer on its way into the composition. */
typedef struct {
  SpvComposition *composition;
  guint index;
  const SpvLayer *layer;
  const SpvDraft *draft;
  const GPtrArray *clips; /* what it is laid on; or NULL */
} Laying;

/* Adds AREA in a plain tincture. CLIPS is taken over. */
static SpvLaidShape *
add_plain(const Laying *laying, guint slot, guint tincture, const SpvPath *area, GPtrArray *clips) {
  SpvLaidShape *shape = g_new0(SpvLaidShape, 1);

  shape->layer = laying->index;
  shape->slot = slot;
  shape->tincture = tincture;
  shape->area = spv_path_ref(area);
  shape->clips = clips;
  shape->fur = -1;
  g_ptr_array_add(laying->composition->shapes, shape);
  return shape;
}

/* Adds AREA in TINCTURE, which may be a fur: then its ground, and its spots over that. EXTRA (may be NULL)
 * cuts the area beside the layer's clips. Returns the shape that has the area. */
static SpvLaidShape *
add_shape(const Laying *laying, guint slot, guint tincture, const SpvPath *area, const SpvPath *extra) {
  const SpvScheme *scheme = laying->composition->scheme;
  const SpvTincture *given = &scheme->tinctures[tincture];
  GPtrArray *clips = clips_with(laying->clips, extra);

  if (given->fur == SPV_FUR_NONE)
    return add_plain(laying, slot, tincture, area, clips);

  int ground = spv_scheme_find_tincture(scheme, given->of[0]);
  int spots = spv_scheme_find_tincture(scheme, given->of[1]);
  g_return_val_if_fail(ground >= 0 && spots >= 0, NULL);
  SpvLaidShape *shape = add_plain(laying, slot, (guint) ground, area, clips);
  g_autoptr(SpvPath) spotted = spv_fur_spots(given->fur, spv_fur_pitch_in_effect(scheme, given),
                                             laying->composition->outline);
  SpvLaidShape *spots_shape = add_plain(laying, slot, (guint) spots, spotted, clips_with(clips, area));
  shape->fur = spots_shape->fur = (int) tincture;
  return shape;
}

/* Adds what SLOT lays. */
static void
add_slot(const Laying *laying, guint slot, guint tincture) {
  const SpvDraft *draft = laying->draft;
  SpvLaidShape *shape = add_shape(laying, slot, tincture, draft->area[slot], NULL);

  if (draft->cells[slot] == NULL)
    return;
  shape->cells = g_ptr_array_ref(draft->cells[slot]);
  if (draft->cells[1 - slot] != NULL)
    shape->gaps = g_ptr_array_ref(draft->cells[1 - slot]);
}

/* A path that covers the panel. */
static SpvPath *
cover_new(const SpvOutline *outline) {
  SpvBox bounds = spv_outline_bounds(outline);
  double margin = 0.1 * MAX(spv_box_width(bounds), spv_box_height(bounds));

  return spv_path_new_box(spv_box_grow(bounds, margin));
}

/* The areas of a division cover the panel between them. Where all are painted, the first goes over all of it
 * and the others on top, as a painter would: then no hair of what lies beneath shows along their common
 * edges. */
static void
add_slots(const Laying *laying) {
  const SpvComposition *composition = laying->composition;
  guint n_slots = spv_pattern_info(laying->layer->pattern.kind)->n_slots, n_painted = 0;
  int tinctures[SPV_PATTERN_SLOTS];

  for (guint slot = 0; slot < n_slots; slot++) {
    tinctures[slot] = spv_scheme_find_tincture(composition->scheme, laying->layer->tinctures[slot]);
    n_painted += tinctures[slot] >= 0;
  }
  for (guint slot = 0; slot < n_slots; slot++) {
    if (tinctures[slot] < 0)
      continue;
    if (slot == 0 && n_slots > 1 && n_painted == n_slots) {
      g_autoptr(SpvPath) cover = cover_new(composition->outline);
      add_shape(laying, slot, (guint) tinctures[slot], cover, NULL)->covers = TRUE;
    } else {
      add_slot(laying, slot, (guint) tinctures[slot]);
    }
  }
}

/* Adds a layer that shows, over each part of the division ACROSS, the tincture of the other part. Where both
 * are given, all of it goes down in the one and a part of it in the other on top, as in add_slots(). */
static void
add_counterchanged(const Laying *laying, guint across) {
  const SpvComposition *composition = laying->composition;
  const SpvLayer *division = composition->panel->layers[across];
  const SpvDraft *parts = g_ptr_array_index(composition->drafts, across);
  const SpvPath *area = laying->draft->area[0];
  int tinctures[2];

  for (guint slot = 0; slot < 2; slot++)
    tinctures[slot] = spv_scheme_find_tincture(composition->scheme, division->tinctures[slot]);
  if (tinctures[1] >= 0)
    add_shape(laying, 0, (guint) tinctures[1], area, tinctures[0] >= 0 ? NULL : parts->area[0]);
  if (tinctures[0] >= 0)
    add_shape(laying, 0, (guint) tinctures[0], area, parts->area[1]);
}

/* The layer below that ID names, or -1; HIDDEN where that is not painted, and so neither is what depends on
 * it. */
static int
find_base(const SpvComposition *composition, const char *id, gboolean *hidden) {
  int base = id == NULL ? -1 : spv_panel_find_layer(composition->panel, id);

  if (base >= 0 && g_ptr_array_index(composition->drafts, (guint) base) == NULL)
    *hidden = TRUE;
  return base;
}

/* What cuts a layer that is laid on layer ON (-1: the panel) and counterchanged across layer ACROSS
 * (likewise). */
static GPtrArray *
clips_of(const SpvComposition *composition, int on, int across) {
  const GPtrArray *all = composition->clips;
  GPtrArray *clips = NULL;

  if (on >= 0) {
    const SpvDraft *base = g_ptr_array_index(composition->drafts, (guint) on);
    clips = clips_with(g_ptr_array_index(all, (guint) on), base->area[0]);
  }
  if (across >= 0) {
    const GPtrArray *more = g_ptr_array_index(all, (guint) across);
    for (guint i = 0; more != NULL && i < more->len; i++) {
      GPtrArray *both = clips_with(clips, g_ptr_array_index(more, i));
      g_clear_pointer(&clips, g_ptr_array_unref);
      clips = both;
    }
  }
  return clips;
}

SpvFrame *
spv_composition_frame(const SpvComposition *composition, guint layer) {
  const char *on = composition->panel->layers[layer]->on;
  int base = on == NULL ? -1 : spv_panel_find_layer(composition->panel, on);
  const SpvDraft *draft = base < 0 ? NULL : g_ptr_array_index(composition->drafts, (guint) base);

  if (draft != NULL && draft->frame != NULL)
    return spv_frame_ref(draft->frame);
  return spv_frame_new(composition->outline);
}

static void
add_layer(SpvComposition *composition, guint index) {
  const SpvLayer *layer = composition->panel->layers[index];
  gboolean hidden = layer->hidden;
  int on = find_base(composition, layer->on, &hidden);
  int across = find_base(composition, layer->counterchange, &hidden);

  if (hidden) {
    g_ptr_array_add(composition->drafts, NULL);
    g_ptr_array_add(composition->clips, NULL);
    return;
  }
  g_autoptr(SpvFrame) frame = spv_composition_frame(composition, index);
  SpvDraft *draft = spv_pattern_lay_on(&layer->pattern, frame, composition->outline);
  GPtrArray *clips = clips_of(composition, on, across);
  Laying laying = { composition, index, layer, draft, clips };

  if (across >= 0)
    add_counterchanged(&laying, (guint) across);
  else
    add_slots(&laying);
  g_ptr_array_add(composition->drafts, draft);
  g_ptr_array_add(composition->clips, clips);
}

static void
clips_free_or_null(gpointer clips) {
  if (clips != NULL)
    g_ptr_array_unref(clips);
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
  composition->clips = g_ptr_array_new_with_free_func(clips_free_or_null);
  for (guint i = 0; i < composition->panel->n_layers; i++)
    add_layer(composition, i);
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
  g_ptr_array_unref(composition->clips);
  spv_outline_unref(composition->outline);
  spv_scheme_unref(composition->scheme);
  g_free(composition);
}

gboolean
spv_laid_shape_contains(const SpvLaidShape *shape, SpvPoint point) {
  if (!spv_path_contains(shape->area, point))
    return FALSE;
  for (guint i = 0; shape->clips != NULL && i < shape->clips->len; i++)
    if (!spv_path_contains(g_ptr_array_index(shape->clips, i), point))
      return FALSE;
  return TRUE;
}

int
spv_composition_pick(const SpvComposition *composition, SpvPoint point) {
  if (!spv_path_contains(spv_outline_path(composition->outline), point))
    return -1;
  for (guint i = composition->shapes->len; i-- > 0;)
    if (spv_laid_shape_contains(g_ptr_array_index(composition->shapes, i), point))
      return (int) i;
  return -1;
}
