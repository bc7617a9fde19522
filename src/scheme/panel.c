/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Panels: making, copying; every edit of the layers goes through one function that checks them. */
#include "scheme/panel.h"

#include <stddef.h>
#include <string.h>

#include "scheme/equal-private.h"
#include "scheme/name-private.h"

static const char *const side_keys[] = {
  [SPV_SIDE_CENTRE] = "centre",
  [SPV_SIDE_DEXTER] = "dexter",
  [SPV_SIDE_SINISTER] = "sinister",
};

const char *
spv_side_key(SpvSide side) {
  g_return_val_if_fail((guint) side < G_N_ELEMENTS(side_keys), NULL);
  return side_keys[side];
}

gboolean
spv_side_from_key(const char *key, SpvSide *side) {
  for (guint i = 0; i < G_N_ELEMENTS(side_keys); i++)
    if (g_strcmp0(key, side_keys[i]) == 0) {
      *side = (SpvSide) i;
      return TRUE;
    }
  return FALSE;
}

SpvPanel *
spv_panel_new(const char *id, const char *name, SpvSide side, const SpvOutlineSpec *outline,
              const SpvSurface *surface, SpvPoint place) {
  g_return_val_if_fail(spv_id_is_valid(id), NULL);
  g_return_val_if_fail(spv_outline_spec_check(outline, NULL), NULL);
  g_return_val_if_fail(spv_surface_check(surface, outline->width, NULL), NULL);
  g_autofree char *clean = spv_name_clean(name);

  SpvPanel *panel = g_new0(SpvPanel, 1);
  g_atomic_ref_count_init(&panel->refs);
  panel->id = spv_shared_new(id);
  panel->name = spv_shared_new(clean != NULL ? clean : id);
  panel->side = side;
  panel->outline = *outline;
  panel->surface = *surface;
  panel->place = place;
  return panel;
}

SpvPanel *
spv_panel_ref(const SpvPanel *panel) {
  SpvPanel *self = (SpvPanel *) panel;
  g_atomic_ref_count_inc(&self->refs);
  return self;
}

static void
free_layers(SpvLayer *const *layers, guint n) {
  for (guint i = 0; i < n; i++)
    spv_layer_unref(layers[i]);
  g_free((gpointer) layers);
}

void
spv_panel_unref(SpvPanel *panel) {
  if (panel == NULL || !g_atomic_ref_count_dec(&panel->refs))
    return;
  spv_shared_unref(panel->id);
  spv_shared_unref(panel->name);
  free_layers(panel->layers, panel->n_layers);
  json_decref(panel->unknown);
  json_decref(panel->unknown_design);
  g_free(panel);
}

/* N layers, each with a new reference; NULL for none. */
static SpvLayer *const *
copy_layers(SpvLayer *const *layers, guint n) {
  if (n == 0)
    return NULL;
  SpvLayer **copy = g_new(SpvLayer *, n);
  for (guint i = 0; i < n; i++)
    copy[i] = spv_layer_ref(layers[i]);
  return copy;
}

/* A copy with one reference, to be changed before anyone else sees it. */
static SpvPanel *
panel_copy(const SpvPanel *panel) {
  SpvPanel *copy = g_new0(SpvPanel, 1);
  /* Everything but the count, which another thread may be changing. */
  memcpy(copy, panel, offsetof(SpvPanel, refs));
  g_atomic_ref_count_init(&copy->refs);
  spv_shared_ref(copy->id);
  spv_shared_ref(copy->name);
  copy->layers = copy_layers(panel->layers, panel->n_layers);
  json_incref(copy->unknown);
  json_incref(copy->unknown_design);
  return copy;
}

int
spv_panel_find_layer(const SpvPanel *panel, const char *id) {
  for (guint i = 0; i < panel->n_layers; i++)
    if (g_strcmp0(panel->layers[i]->id, id) == 0)
      return (int) i;
  return -1;
}

gboolean
spv_panel_has_design(const SpvPanel *panel) {
  for (guint i = 0; i < panel->n_layers; i++)
    if (!panel->layers[i]->hidden)
      return TRUE;
  return FALSE;
}

char *
spv_panel_new_layer_id(const SpvPanel *panel, SpvPatternKind kind) {
  const char *key = spv_pattern_info(kind)->key;
  char *id = g_strdup(key);
  for (guint n = 2; spv_panel_find_layer(panel, id) >= 0; n++) {
    g_free(id);
    id = g_strdup_printf("%s-%u", key, n);
  }
  return id;
}

SpvPanel *
spv_panel_with_name(const SpvPanel *panel, const char *name) {
  g_autofree char *clean = spv_name_clean(name);
  if (clean == NULL || strcmp(panel->name, clean) == 0)
    return spv_panel_ref(panel);
  SpvPanel *copy = panel_copy(panel);
  spv_shared_replace(&copy->name, clean);
  return copy;
}

SpvPanel *
spv_panel_with_outline(const SpvPanel *panel, const SpvOutlineSpec *outline) {
  g_return_val_if_fail(spv_outline_spec_check(outline, NULL), spv_panel_ref(panel));
  SpvPanel *copy = panel_copy(panel);
  copy->outline = *outline;
  /* A narrower panel can't keep a dome that is deeper than half of it: it takes the deepest that fits, cut to
   * 0.001 mm, so that it still fits when it is read back from the file's 15 digits. */
  if (copy->surface.depth > outline->width / 2)
    copy->surface.depth = floor(outline->width / 2 * 1000) / 1000;
  if (!spv_panel_equal(panel, copy))
    return copy;
  spv_panel_unref(copy);
  return spv_panel_ref(panel);
}

SpvPanel *
spv_panel_with_surface(const SpvPanel *panel, const SpvSurface *surface) {
  g_return_val_if_fail(spv_surface_check(surface, panel->outline.width, NULL), spv_panel_ref(panel));
  if (panel->surface.kind == surface->kind && panel->surface.depth == surface->depth)
    return spv_panel_ref(panel);
  SpvPanel *copy = panel_copy(panel);
  copy->surface = *surface;
  return copy;
}

SpvPanel *
spv_panel_with_measured(const SpvPanel *panel, gboolean measured) {
  if (!panel->measured == !measured)
    return spv_panel_ref(panel);
  SpvPanel *copy = panel_copy(panel);
  copy->measured = measured ? TRUE : FALSE;
  return copy;
}

static gboolean
layer_ids_differ(SpvLayer *const *layers, guint n) {
  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < i; j++)
      if (strcmp(layers[i]->id, layers[j]->id) == 0)
        return FALSE;
  return TRUE;
}

static gboolean
has_layers(const SpvPanel *panel, SpvLayer *const *layers, guint n) {
  if (panel->n_layers != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!spv_layer_equal(panel->layers[i], layers[i]))
      return FALSE;
  return TRUE;
}

/* Whether one of the N layers is called ID and is of a kind that WANTED takes. */
static gboolean
has_layer(SpvLayer *const *layers, guint n, const char *id, gboolean (*wanted)(SpvPatternKind kind)) {
  for (guint i = 0; i < n; i++)
    if (strcmp(layers[i]->id, id) == 0)
      return wanted(layers[i]->pattern.kind);
  return FALSE;
}

/* LAYERS[INDEX] without what it says of layers that are not below it any more. A new reference. */
static SpvLayer *
settled_layer(SpvLayer *const *layers, guint index) {
  const SpvLayer *layer = layers[index];
  const char *on = layer->on, *counterchange = layer->counterchange;

  if (on != NULL && !has_layer(layers, index, on, spv_kind_can_bear))
    on = NULL;
  if (counterchange != NULL && (spv_pattern_info(layer->pattern.kind)->n_slots != 1 ||
                                !has_layer(layers, index, counterchange, spv_kind_can_counterchange)))
    counterchange = NULL;
  g_autoptr(SpvLayer) laid = spv_layer_with_on(layer, on);
  return spv_layer_with_counterchange(laid, counterchange);
}

SpvPanel *
spv_panel_with_layers(const SpvPanel *panel, SpvLayer *const *layers, guint n) {
  g_return_val_if_fail(n <= SPV_PANEL_MAX_LAYERS, spv_panel_ref(panel));
  g_return_val_if_fail(layer_ids_differ(layers, n), spv_panel_ref(panel));
  g_autoptr(GPtrArray) settled = g_ptr_array_new_with_free_func((GDestroyNotify) spv_layer_unref);
  for (guint i = 0; i < n; i++)
    g_ptr_array_add(settled, settled_layer(layers, i));
  SpvLayer *const *kept = (SpvLayer *const *) settled->pdata;
  if (has_layers(panel, kept, n))
    return spv_panel_ref(panel);
  SpvPanel *copy = panel_copy(panel);
  free_layers(copy->layers, copy->n_layers);
  copy->layers = copy_layers(kept, n);
  copy->n_layers = n;
  return copy;
}

SpvPanel *
spv_panel_with_layer(const SpvPanel *panel, guint index, const SpvLayer *layer) {
  g_return_val_if_fail(index < panel->n_layers, spv_panel_ref(panel));
  g_autofree SpvLayer **layers = g_memdup2(panel->layers, panel->n_layers * sizeof(SpvLayer *));
  layers[index] = (SpvLayer *) layer;
  return spv_panel_with_layers(panel, layers, panel->n_layers);
}

SpvPanel *
spv_panel_with_layer_added(const SpvPanel *panel, guint index, const SpvLayer *layer) {
  g_return_val_if_fail(index <= panel->n_layers, spv_panel_ref(panel));
  g_return_val_if_fail(panel->n_layers < SPV_PANEL_MAX_LAYERS, spv_panel_ref(panel));
  g_autofree SpvLayer **layers = g_new(SpvLayer *, panel->n_layers + 1);
  for (guint i = 0; i < panel->n_layers; i++)
    layers[i < index ? i : i + 1] = panel->layers[i];
  layers[index] = (SpvLayer *) layer;
  return spv_panel_with_layers(panel, layers, panel->n_layers + 1);
}

SpvPanel *
spv_panel_with_layer_removed(const SpvPanel *panel, guint index) {
  g_return_val_if_fail(index < panel->n_layers, spv_panel_ref(panel));
  g_autofree SpvLayer **layers = g_new(SpvLayer *, panel->n_layers);
  for (guint i = 0; i + 1 < panel->n_layers; i++)
    layers[i] = panel->layers[i < index ? i : i + 1];
  return spv_panel_with_layers(panel, layers, panel->n_layers - 1);
}

SpvPanel *
spv_panel_with_layer_moved(const SpvPanel *panel, guint from, guint to) {
  g_return_val_if_fail(from < panel->n_layers && to < panel->n_layers, spv_panel_ref(panel));
  g_autofree SpvLayer **layers = g_memdup2(panel->layers, panel->n_layers * sizeof(SpvLayer *));
  SpvLayer *moved = layers[from];
  if (from < to)
    memmove(&layers[from], &layers[from + 1], (to - from) * sizeof(SpvLayer *));
  else
    memmove(&layers[to + 1], &layers[to], (from - to) * sizeof(SpvLayer *));
  layers[to] = moved;
  return spv_panel_with_layers(panel, layers, panel->n_layers);
}

SpvPanel *
spv_panel_with_design_mirrored(const SpvPanel *panel, const SpvPanel *other) {
  g_autoptr(GPtrArray) layers = g_ptr_array_new_with_free_func((GDestroyNotify) spv_layer_unref);
  for (guint i = 0; i < other->n_layers; i++)
    g_ptr_array_add(layers, spv_layer_with_mirrored(other->layers[i], !other->layers[i]->pattern.mirrored));
  return spv_panel_with_layers(panel, (SpvLayer *const *) layers->pdata, layers->len);
}

SpvPanel *
spv_panel_with_unknown(const SpvPanel *panel, json_t *unknown, json_t *unknown_design) {
  if (spv_json_same(panel->unknown, unknown) && spv_json_same(panel->unknown_design, unknown_design))
    return spv_panel_ref(panel);
  SpvPanel *copy = panel_copy(panel);
  json_decref(copy->unknown);
  json_decref(copy->unknown_design);
  copy->unknown = json_incref(unknown);
  copy->unknown_design = json_incref(unknown_design);
  return copy;
}

SpvOutline *
spv_panel_outline(const SpvPanel *panel) {
  return spv_outline_new(&panel->outline);
}
