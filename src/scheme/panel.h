/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A panel of the harness, its measures as the painter took them, and its design: the layers, bottom first. A
 * sealed, counted value: read its fields, never write them. */
#pragma once

#include "scheme/layer.h"
#include "surface/surface.h"

typedef enum { SPV_SIDE_CENTRE, SPV_SIDE_DEXTER, SPV_SIDE_SINISTER } SpvSide;

typedef struct {
  const char *id;   /* unique within the harness */
  const char *name; /* "kneepad, dexter" */
  SpvSide side;
  SpvOutlineSpec outline;
  SpvSurface surface;
  SpvPoint place;    /* where its datum lies when the harness is laid flat, mm */
  gboolean measured; /* the painter has measured it; otherwise its sizes are typical ones */
  guint n_layers;
  SpvLayer *const *layers; /* bottom first */
  /* private */
  json_t *unknown, *unknown_design;
  gatomicrefcount refs;
} SpvPanel;

/* The most layers on one panel. */
#define SPV_PANEL_MAX_LAYERS 256

SpvPanel *spv_panel_new(const char *id, const char *name, SpvSide side, const SpvOutlineSpec *outline,
                        const SpvSurface *surface, SpvPoint place);
SpvPanel *spv_panel_ref(const SpvPanel *panel);
void spv_panel_unref(SpvPanel *panel);

/* The index of the layer called ID, or -1. */
int spv_panel_find_layer(const SpvPanel *panel, const char *id);
/* Whether any of its layers is visible. */
gboolean spv_panel_has_design(const SpvPanel *panel);
/* An id for a new layer of KIND: the kind's key, with a number where that is taken. Free with g_free(). */
char *spv_panel_new_layer_id(const SpvPanel *panel, SpvPatternKind kind);

/* Each returns a new reference: PANEL itself where nothing would change. Indices must be in range. */
SpvPanel *spv_panel_with_name(const SpvPanel *panel, const char *name);
SpvPanel *spv_panel_with_outline(const SpvPanel *panel, const SpvOutlineSpec *outline);
SpvPanel *spv_panel_with_surface(const SpvPanel *panel, const SpvSurface *surface);
SpvPanel *spv_panel_with_measured(const SpvPanel *panel, gboolean measured);
/* All the layers at once: N new ones, each of which gets a reference. Here and in every edit below, a layer
 * that is laid on, or counterchanged across, one that is not below it any more is no longer so. */
SpvPanel *spv_panel_with_layers(const SpvPanel *panel, SpvLayer *const *layers, guint n);
SpvPanel *spv_panel_with_layer(const SpvPanel *panel, guint index, const SpvLayer *layer);
/* INDEX from 0 (at the bottom) to n_layers (on top). */
SpvPanel *spv_panel_with_layer_added(const SpvPanel *panel, guint index, const SpvLayer *layer);
SpvPanel *spv_panel_with_layer_removed(const SpvPanel *panel, guint index);
SpvPanel *spv_panel_with_layer_moved(const SpvPanel *panel, guint from, guint to);
/* PANEL with the layers of OTHER, each its own mirror image: the same design on the other side. PANEL itself
 * where those are its layers already. */
SpvPanel *spv_panel_with_design_mirrored(const SpvPanel *panel, const SpvPanel *other);
SpvPanel *spv_panel_with_unknown(const SpvPanel *panel, json_t *unknown, json_t *unknown_design);

/* The panel's outline, made anew; its spec has been checked when the panel was made or read. */
SpvOutline *spv_panel_outline(const SpvPanel *panel);

/* "dexter", "sinister", "centre". */
const char *spv_side_key(SpvSide side);
gboolean spv_side_from_key(const char *key, SpvSide *side);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvPanel, spv_panel_unref)
