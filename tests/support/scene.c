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

/* SCHEME with the topmost layer replaced by CHANGED; both are consumed. */
static SpvScheme *
with_top(SpvScheme *scheme, SpvLayer *changed) {
  const SpvPanel *panel = scheme->panels[0];
  SpvScheme *next = with_panel(scheme, spv_panel_with_layer(panel, panel->n_layers - 1, changed));

  spv_layer_unref(changed);
  return next;
}

static const SpvLayer *
top_of(const SpvScheme *scheme) {
  return scheme->panels[0]->layers[scheme->panels[0]->n_layers - 1];
}

SpvScheme *
scene_lay_on(SpvScheme *scheme, const char *id) {
  scheme = with_top(scheme, spv_layer_with_on(top_of(scheme), id));
  assert_string_equal(top_of(scheme)->on, id);
  return scheme;
}

SpvScheme *
scene_counterchange(SpvScheme *scheme, const char *id) {
  scheme = with_top(scheme, spv_layer_with_counterchange(top_of(scheme), id));
  assert_string_equal(top_of(scheme)->counterchange, id);
  return scheme;
}

SpvScheme *
scene_add_fur(SpvScheme *scheme, SpvFur fur, const char *ground, const char *spots, double pitch) {
  SpvTincture tincture = {
    .id = spv_fur_key(fur), .name = spv_fur_key(fur), .fur = fur, .of = { ground, spots }, .pitch = pitch
  };
  SpvScheme *next = spv_scheme_with_tincture_added(scheme, &tincture);

  assert_true(next->n_tinctures == scheme->n_tinctures + 1);
  spv_scheme_unref(scheme);
  return next;
}

SpvScheme *
scene_mirror(SpvScheme *scheme) {
  return with_panel(scheme, spv_panel_with_design_mirrored(scheme->panels[0], scheme->panels[0]));
}

/* A value that SPEC allows; counts stay small, so that a test does not take minutes. */
static SpvMeasure
random_measure(GRand *rand, const SpvMeasureSpec *spec) {
  guint n_choices = 0;

  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return (SpvMeasure){ SPV_UNIT_PLAIN,
                         g_rand_int_range(rand, (int) spec->min, (int) MIN(spec->max, 24) + 1) };
  case SPV_MEASURE_LENGTH:
    return (SpvMeasure){ SPV_UNIT_RELATIVE, g_rand_double_range(rand, spec->min < 0 ? -0.5 : 0.04, 0.7) };
  case SPV_MEASURE_ANGLE:
    return (SpvMeasure){ SPV_UNIT_DEGREES, g_rand_double_range(rand, spec->min, spec->max) };
  case SPV_MEASURE_CHOICE:
    while (spec->choices[n_choices] != NULL)
      n_choices++;
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_rand_int_range(rand, 0, (int) n_choices) };
  }
  return spec->preset;
}

/* Ties the topmost layer to those below, where they allow it. */
static SpvScheme *
tie_randomly(GRand *rand, SpvScheme *scheme) {
  const SpvPanel *panel = scheme->panels[0];
  guint top = panel->n_layers - 1;
  g_autoptr(SpvLayer) layer = spv_layer_ref(panel->layers[top]);

  if (top > 0 && g_rand_int_range(rand, 0, 3) == 0) {
    SpvLayer *laid = spv_layer_with_on(layer, panel->layers[g_rand_int_range(rand, 0, (int) top)]->id);
    spv_layer_unref(layer);
    layer = laid;
  }
  if (top > 0 && g_rand_int_range(rand, 0, 3) == 0) {
    const char *across = panel->layers[g_rand_int_range(rand, 0, (int) top)]->id;
    SpvLayer *changed = spv_layer_with_counterchange(layer, across);
    spv_layer_unref(layer);
    layer = changed;
  }
  return with_top(scheme, spv_layer_with_mirrored(layer, g_rand_int_range(rand, 0, 4) == 0));
}

static SpvScheme *
add_randomly(GRand *rand, SpvScheme *scheme) {
  static const char *const ids[] = { "vert", "argent", "sable", "ermine", NULL };
  SpvPatternKind kind = (SpvPatternKind) g_rand_int_range(rand, 0, SPV_N_PATTERNS);
  const SpvPatternInfo *info = spv_pattern_info(kind);
  const char *second = info->n_slots > 1 ? ids[g_rand_int_range(rand, 0, 5)] : NULL;

  scheme = scene_add(scheme, kind, ids[g_rand_int_range(rand, 0, 4)], second);
  if (info->n_slots > 2)
    scheme = with_top(scheme, spv_layer_with_tincture(top_of(scheme), 2, ids[g_rand_int_range(rand, 0, 5)]));
  for (guint i = 0; i < info->n_measures; i++) {
    SpvMeasure measure = random_measure(rand, &info->measures[i]);
    if (g_rand_boolean(rand))
      scheme = with_top(scheme, spv_layer_with_measure(top_of(scheme), i, measure));
  }
  return tie_randomly(rand, scheme);
}

SpvScheme *
scene_random(GRand *rand, int most_layers) {
  int family = g_rand_int_range(rand, 0, SPV_N_OUTLINE_FAMILIES);
  double width = g_rand_double_range(rand, 1, 30);
  double height = family == SPV_OUTLINE_DISC ? width : width * g_rand_double_range(rand, 0.9, 2);
  SpvScheme *scheme = scene_new((SpvOutlineFamily) family, width, height);

  scheme = scene_add_fur(scheme, SPV_FUR_ERMINE, "argent", "sable", width / 4);
  for (int i = g_rand_int_range(rand, 1, most_layers + 1); i > 0; i--)
    scheme = add_randomly(rand, scheme);
  return scheme;
}
