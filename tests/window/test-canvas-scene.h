/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A scheme of one panel, to try the canvas on. */
#pragma once

#include "compose/compose.h"

/* A panel of FAMILY with a field of argent and, unless KIND is the field, a layer of KIND in vert and gules
 * on it. Free with spv_scheme_unref(). */
static inline SpvScheme *
scene_scheme(SpvOutlineFamily family, double width, double height, SpvPatternKind kind) {
  const SpvTincture tinctures[] = {
    { "argent", "bone", { 0xee, 0xe5, 0xd0 }, SPV_HATCH_ARGENT, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "vert", "deep sea green", { 0x22, 0x5d, 0x55 }, SPV_HATCH_VERT, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "gules", "madder", { 0xa8, 0x1e, 0x2a }, SPV_HATCH_GULES, SPV_FUR_NONE, { NULL, NULL }, 0 },
  };
  SpvSurface flat = { SPV_SURFACE_FLAT, 0 };
  SpvOutlineSpec outline;
  g_autoptr(SpvScheme) scheme = spv_scheme_new("Saltmarsh Wardens", "Armoured trooper, 32 mm");
  g_autoptr(SpvPanel) panel = NULL;
  g_autoptr(SpvPanel) designed = NULL;
  g_autoptr(SpvLayer) field = spv_layer_new("field", SPV_PATTERN_FIELD, "argent", NULL);
  g_autoptr(SpvLayer)
      layer = spv_layer_new("layer", kind, "vert", spv_pattern_info(kind)->n_slots > 1 ? "gules" : NULL);
  SpvLayer *layers[2] = { field, layer };
  SpvPanel *panels[1];

  for (guint i = 0; i < G_N_ELEMENTS(tinctures); i++) {
    SpvScheme *next = spv_scheme_with_tincture_added(scheme, &tinctures[i]);

    spv_scheme_unref(scheme);
    scheme = next;
  }
  spv_outline_spec_preset(family, width, height, &outline);
  panel = spv_panel_new("kneepad-dexter", "Kneepad, dexter", SPV_SIDE_DEXTER, &outline, &flat,
                        spv_point(0, 0));
  designed = spv_panel_with_layers(panel, layers, kind == SPV_PATTERN_FIELD ? 1 : 2);
  panels[0] = designed;
  return spv_scheme_with_panels(scheme, panels, 1);
}
