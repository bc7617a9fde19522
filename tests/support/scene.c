/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "support/scene.h"

#include "support/near.h"

SpvScheme *
scene_new(SpvOutlineFamily family, double width, double height) {
  static const SpvTincture tinctures[] = {
    { "vert", "deep sea green", { 0x21, 0x5e, 0x56 }, SPV_HATCH_VERT, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "argent", "bone", { 0xee, 0xe6, 0xd2 }, SPV_HATCH_ARGENT, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "sable", "slate black", { 0x34, 0x38, 0x4c }, SPV_HATCH_SABLE, SPV_FUR_NONE, { NULL, NULL }, 0 },
  };
  SpvOutlineSpec outline;
  SpvSurface flat = { SPV_SURFACE_FLAT, 0 };
  SpvScheme *scheme = spv_scheme_new("Saltmarsh Wardens", "One pad");

  for (gsize i = 0; i < G_N_ELEMENTS(tinctures); i++) {
    SpvScheme *more = spv_scheme_with_tincture_added(scheme, &tinctures[i]);
    spv_scheme_unref(scheme);
    scheme = more;
  }
  spv_outline_spec_preset(family, width, height, &outline);
  assert_true(spv_outline_spec_check(&outline, NULL));
  SpvPanel *panel = spv_panel_new("pad", "Pad", SPV_SIDE_CENTRE, &outline, &flat, spv_point(0, 0));
  SpvScheme *whole = spv_scheme_with_panels(scheme, &panel, 1);
  spv_panel_unref(panel);
  spv_scheme_unref(scheme);
  return whole;
}

static SpvScheme *
with_panel(SpvScheme *scheme, SpvPanel *panel) {
  SpvScheme *changed = spv_scheme_with_panel(scheme, 0, panel);
  spv_panel_unref(panel);
  spv_scheme_unref(scheme);
  return changed;
}

SpvScheme *
scene_add(SpvScheme *scheme, SpvPatternKind kind, const char *first, const char *second) {
  const SpvPanel *panel = scheme->panels[0];
  g_autofree char *id = spv_panel_new_layer_id(panel, kind);
  g_autoptr(SpvLayer) layer = spv_layer_new(id, kind, first, second);

  return with_panel(scheme, spv_panel_with_layer_added(panel, panel->n_layers, layer));
}

SpvScheme *
scene_set(SpvScheme *scheme, const char *key, SpvUnit unit, double value) {
  const SpvPanel *panel = scheme->panels[0];
  guint top = panel->n_layers - 1;
  const SpvLayer *layer = panel->layers[top];
  int index = spv_pattern_measure_index(layer->pattern.kind, key);
  SpvMeasure measure = { unit, value };

  assert_true(index >= 0);
  assert_true(spv_measure_is_valid(&spv_pattern_info(layer->pattern.kind)->measures[index], measure));
  g_autoptr(SpvLayer) changed = spv_layer_with_measure(layer, (guint) index, measure);
  return with_panel(scheme, spv_panel_with_layer(panel, top, changed));
}
