/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a panel and its design to what lies on it: first the painter's order of shapes, which is quick and
 * enough to draw; then, behind, the exact partition into regions. */
#pragma once

#include <gio/gio.h>

#include "scheme/scheme.h"

/* One shape of the painter's order. */
typedef struct {
  guint layer;     /* index into the panel's layers */
  guint slot;      /* which of the layer's tinctures */
  guint tincture;  /* index into the scheme's tinctures; never a fur */
  SpvPath *area;   /* not clipped: clip to the outline, and to CLIPS, to draw */
  int fur;         /* index of the fur of which this is the ground or the spots; -1 for a plain tincture */
  gboolean covers; /* AREA is the whole panel, since the layer's later shapes cover all of it but what its own
                      slot is to show */
  GPtrArray *clips; /* SpvPath, each of which cuts the area: what the layer is laid on, or the part of a
                       division where it is counterchanged; or NULL */
  GPtrArray *cells; /* the same area as SpvRing cells, or NULL */
  GPtrArray *gaps;  /* where there are cells: what they leave of the panel, as SpvRing cells */
} SpvLaidShape;

typedef struct {
  SpvScheme *scheme;
  guint panel_index;
  const SpvPanel *panel;
  SpvOutline *outline;
  GPtrArray *shapes; /* SpvLaidShape, bottom first */
  GPtrArray *drafts; /* SpvDraft, one a layer; NULL for one that is not to be seen */
  GPtrArray *clips;  /* GPtrArray of SpvPath, one a layer: what it is laid on; NULL where that is the panel */
  gatomicrefcount refs;
} SpvComposition;

/* Composes panel PANEL_INDEX of SCHEME. Hidden layers, those laid on or counterchanged across a hidden one,
 * and slots without a tincture, lay nothing. Quick: no overlay is computed. Read only once made; any thread
 * may. */
SpvComposition *spv_compose(const SpvScheme *scheme, guint panel_index);
SpvComposition *spv_composition_ref(const SpvComposition *composition);
void spv_composition_unref(SpvComposition *composition);

/* What layer LAYER is laid on: its base's frame, or the panel. A new reference. */
SpvFrame *spv_composition_frame(const SpvComposition *composition, guint layer);

/* How far the spots of FUR, one of SCHEME's tinctures, stand from each other, mm: as given, or as close as
 * the painter's line allows. */
double spv_fur_pitch_in_effect(const SpvScheme *scheme, const SpvTincture *fur);
/* How large the charges of layer LAYER are as they are arranged, mm; 0 where it lays none. */
double spv_composition_charge_size(const SpvComposition *composition, guint layer);
/* How many teeth the line of partition of layer LAYER has along the longer side of what it is laid on; 0 for
 * a plain one. */
guint spv_composition_teeth(const SpvComposition *composition, guint layer);

/* Whether POINT lies in SHAPE's area and in all that cuts it. */
gboolean spv_laid_shape_contains(const SpvLaidShape *shape, SpvPoint point);

/* The topmost shape at POINT as an index into shapes, or -1 (bare, or outside the panel). */
int spv_composition_pick(const SpvComposition *composition, SpvPoint point);

/* All of the panel that shows one tincture. */
typedef struct {
  int tincture; /* index into the scheme's tinctures; -1: bare, no layer covers it */
  SpvShape *shape;
} SpvRegion;

typedef struct {
  SpvComposition *composition;
  GPtrArray
      *visible;   /* SpvShape: what remains to be seen of each of the composition's shapes, in their order */
  SpvShape *bare; /* what no layer covers */
  GPtrArray
      *regions; /* SpvRegion, by tincture in the scheme's order, the bare one last; empty ones left out */
} SpvPartition;

/* The exact partition: regions do not overlap and their areas add up to the outline's within 1e-9 of it.
 * NULL, with ERROR set, only when CANCELLABLE (may be NULL) was cancelled. */
SpvPartition *spv_partition_new(const SpvComposition *composition, GCancellable *cancellable, GError **error);
void spv_partition_free(SpvPartition *partition);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvComposition, spv_composition_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvPartition, spv_partition_free)
