/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Designs on one panel, as small as a test can have them, and their guides. */
#pragma once

#include "guide/guide.h"

/* Sets measure KEY of LAYER, which is consumed. */
static inline SpvLayer *
design_set(SpvLayer *layer, const char *key, SpvUnit unit, double value) {
  int index = spv_pattern_measure_index(layer->pattern.kind, key);
  SpvLayer *changed;

  g_assert(index >= 0);
  changed = spv_layer_with_measure(layer, (guint) index, (SpvMeasure){ unit, value });
  spv_layer_unref(layer);
  return changed;
}

/* A scheme of the tinctures argent (0), vert (1) and sable (2), with one measured, flat panel that bears the
 * N LAYERS, which are consumed. */
static inline SpvScheme *
design_new(SpvOutlineFamily family, double width, double height, SpvLayer **layers, guint n) {
  static const SpvTincture tinctures[] = {
    { "argent", "argent", { 255, 255, 255 }, SPV_HATCH_ARGENT, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "vert", "sea green", { 30, 110, 80 }, SPV_HATCH_VERT, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "sable", "tar black", { 20, 20, 20 }, SPV_HATCH_SABLE, SPV_FUR_NONE, { NULL, NULL }, 0 },
  };
  SpvOutlineSpec outline = { .family = family, .width = width, .height = height };
  g_autoptr(SpvPanel) bare = spv_panel_new("kneepad", "kneepad", SPV_SIDE_CENTRE, &outline,
                                           &(SpvSurface){ SPV_SURFACE_FLAT, 0 }, spv_point(0, 0));
  g_autoptr(SpvPanel) laid = spv_panel_with_layers(bare, layers, n);
  g_autoptr(SpvPanel) panel = spv_panel_with_measured(laid, TRUE);
  SpvScheme *scheme = spv_scheme_new("Saltmarsh Wardens", "One kneepad");

  for (guint i = 0; i < G_N_ELEMENTS(tinctures); i++) {
    SpvScheme *more = spv_scheme_with_tincture_added(scheme, &tinctures[i]);

    spv_scheme_unref(scheme);
    scheme = more;
  }
  SpvPanel *panels[] = { panel };
  SpvScheme *whole = spv_scheme_with_panels(scheme, panels, 1);

  spv_scheme_unref(scheme);
  for (guint i = 0; i < n; i++)
    spv_layer_unref(layers[i]);
  return whole;
}

/* A plain field of TINCTURE. */
static inline SpvLayer *
design_field(const char *tincture) {
  return spv_layer_new("field", SPV_PATTERN_FIELD, tincture, NULL);
}

/* A border of sable whose points stand straight on the panel's edge. EDGE: 0 chief, 1 dexter, 2 base, 3
 * sinister, 4 all round. */
static inline SpvLayer *
design_border(int edge, int points, double depth) {
  SpvLayer *layer = spv_layer_new("border", SPV_PATTERN_JAGGED_BORDER, "sable", NULL);

  layer = design_set(layer, "edge", SPV_UNIT_PLAIN, edge);
  layer = design_set(layer, "points", SPV_UNIT_PLAIN, points);
  layer = design_set(layer, "depth", SPV_UNIT_MM, depth);
  return design_set(layer, "width", SPV_UNIT_MM, 0);
}

/* A check of COLUMNS by ROWS cells that fill the panel. */
static inline SpvLayer *
design_check(int columns, int rows) {
  SpvLayer *layer = spv_layer_new("check", SPV_PATTERN_CHECK, "argent", "sable");

  layer = design_set(layer, "columns", SPV_UNIT_PLAIN, columns);
  return design_set(layer, "rows", SPV_UNIT_PLAIN, rows);
}

/* The guide of the panel that design_new() makes. */
static inline SpvGuide *
design_guide(SpvOutlineFamily family, double width, double height, SpvLayer **layers, guint n) {
  g_autoptr(SpvScheme) scheme = design_new(family, width, height, layers, n);
  g_autoptr(SpvComposition) composition = spv_compose(scheme, 0);

  return spv_guide_new(composition);
}
