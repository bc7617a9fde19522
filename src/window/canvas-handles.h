/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles of a layer, and of a panel: places that the painter drags to change a measure. Each kind of
 * pattern says how its measures lie on the panel; how a drag becomes a measure is the same for all. No
 * widgets in here. */
#pragma once

#include "compose/compose.h"

typedef enum {
  SPV_MOTION_SLIDE,  /* one length along a line: the handle is at foot + length · direction */
  SPV_MOTION_MOVE,   /* two lengths: the handle is at foot + first · direction + second · second */
  SPV_MOTION_TURN,   /* an angle about foot, from direction, clockwise when TURN_SENSE is 1 */
  SPV_MOTION_DIVIDE, /* a count: the handle is at foot + direction / count */
} SpvMotion;

typedef enum { SPV_HANDLE_OF_LAYER, SPV_HANDLE_OF_PANEL } SpvHandleOwner;

/* The measures of a panel that has handles. */
enum { SPV_PANEL_WIDTH, SPV_PANEL_HEIGHT };

typedef struct {
  SpvHandleOwner owner;
  SpvMotion motion;
  guint n_measures;   /* 1, or 2 for MOVE */
  guint measures[2];  /* indices into the pattern's measures, or SPV_PANEL_WIDTH and _HEIGHT */
  SpvPoint at;        /* where it is now, mm */
  SpvPoint foot;      /* mm */
  SpvPoint direction; /* see the motions */
  SpvPoint second;    /* MOVE: the direction of the second length; both have length 1 */
  SpvPoint basis;     /* width and height, mm, of what a length of the layer may be a fraction of */
  double turn_sense;  /* TURN: 1 or -1 */
  double turn_factor; /* TURN: how many times the angle at the foot the measure is */
  double values[2];   /* what the measures are now, in the core's units */
} SpvHandle;

/* Lengths snap to this, angles to a degree. */
#define SPV_HANDLE_SNAP 0.05

/* The handles of layer LAYER of COMPOSITION, where it lies on the panel: also when it is mirrored, or laid on
 * another layer. None for a hidden or a locked one. SpvHandle in a GArray. */
GArray *spv_layer_handles(const SpvComposition *composition, guint layer);
/* From the mm of what layer LAYER is laid on, in which its measures and its path are given, to the panel's:
 * a turn and a shift, and where the layer is mirrored, that mirror too. */
SpvTransform spv_layer_place(const SpvComposition *composition, guint layer);
/* The handles on the panel's own outline. */
GArray *spv_panel_handles(const SpvComposition *composition);

/* What the measures become when HANDLE is dragged to POINT: core's units, into VALUES; counts whole. */
void spv_handle_drag(const SpvHandle *handle, SpvPoint point, gboolean snap, double values[2]);

/* LAYER with HANDLE's measures at VALUES (core's units). Each keeps the unit that it has: mm stay mm, a
 * fraction of what it is laid on stays a fraction, what was not given becomes mm or degrees. Values beyond
 * what the measure allows are brought to its end. A new reference. */
SpvLayer *spv_handle_apply_to_layer(const SpvHandle *handle, const SpvLayer *layer, const double values[2]);
/* PANEL with the outline's width or height at VALUES; own measures that no longer fit are brought along in
 * proportion. PANEL itself where that gives no outline. A new reference. */
SpvPanel *spv_handle_apply_to_panel(const SpvHandle *handle, const SpvPanel *panel, const double values[2]);

/* "Depth 0.70 mm": what is shown beside the pointer, translated. Free with g_free(). */
char *spv_handle_caption(const SpvHandle *handle, const SpvPattern *pattern, const double values[2]);

/* The same measure among HANDLES, or NULL: handles are made anew after each edit. */
const SpvHandle *spv_handles_find(const GArray *handles, const SpvHandle *handle);
