/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Random edits of a scheme, its panels and its layers. */
#include "scheme-edits.h"

static guint
below(GRand *random, guint n) {
  return (guint) g_rand_int_range(random, 0, (gint32) n);
}

static const char *
any_tincture(const SpvScheme *scheme, GRand *random) {
  guint index = below(random, scheme->n_tinctures + 1);
  return index < scheme->n_tinctures ? scheme->tinctures[index].id : NULL;
}

static SpvMeasure
any_measure(const SpvMeasureSpec *spec, GRand *random) {
  guint n_choices = 0;
  while (spec->choices != NULL && spec->choices[n_choices] != NULL)
    n_choices++;
  double between = g_rand_double_range(random, spec->min, spec->max + 1e-9);
  if (below(random, 4) == 0)
    return (SpvMeasure){ SPV_UNIT_AUTO, 0 };
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return (SpvMeasure){ SPV_UNIT_PLAIN, floor(between) };
  case SPV_MEASURE_CHOICE:
    return (SpvMeasure){ SPV_UNIT_PLAIN, below(random, n_choices) };
  case SPV_MEASURE_ANGLE:
    return (SpvMeasure){ SPV_UNIT_DEGREES, MIN(between, spec->max) };
  case SPV_MEASURE_LENGTH:
    if (below(random, 2) == 0)
      return (SpvMeasure){ SPV_UNIT_MM, MIN(between, spec->max) };
    return (SpvMeasure){ SPV_UNIT_RELATIVE, g_rand_double_range(random, 0, SPV_RELATIVE_MAX) };
  }
  return (SpvMeasure){ SPV_UNIT_AUTO, 0 };
}

/* What the check of each text takes. */
static const char *
any_text(const SpvTextSpec *spec, GRand *random) {
  static const struct {
    const char *key, *texts[2];
  } rows[] = {
    { "rows", { "2, 1", "3, 2, 1" } },
    { "path", { "M 0 0 L 4 0 L 2 3 Z", "M 0 0 C 1 2 3 2 4 0 Z" } },
    { "text", { "VII", "Ferry \\ \"Heron\"" } },
    { "font", { "DejaVu Sans Bold", "DejaVu Serif" } },
  };
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++)
    if (g_strcmp0(spec->key, rows[i].key) == 0)
      return rows[i].texts[below(random, 2)];
  return NULL;
}

/* Laid on, or counterchanged across, any layer of the panel, itself and those above it among them. */
static SpvLayer *
refer(const SpvPanel *panel, const SpvLayer *layer, GRand *random) {
  guint index = below(random, panel->n_layers + 1);
  const char *id = index < panel->n_layers ? panel->layers[index]->id : NULL;
  if (below(random, 2) == 0)
    return spv_layer_with_on(layer, id);
  return spv_layer_with_counterchange(layer, id);
}

static SpvLayer *
edit_layer(const SpvScheme *scheme, const SpvPanel *panel, const SpvLayer *layer, GRand *random) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);
  switch (below(random, 9)) {
  case 0:
    return spv_layer_with_hidden(layer, !layer->hidden);
  case 1:
    return spv_layer_with_locked(layer, !layer->locked);
  case 2: {
    g_autofree char *name = g_strdup_printf("Layer %u", below(random, 1000));
    return spv_layer_with_name(layer, name);
  }
  case 3:
    return spv_layer_with_tincture(layer, below(random, info->n_slots), any_tincture(scheme, random));
  case 4:
    return spv_layer_with_mirrored(layer, !layer->pattern.mirrored);
  case 5:
    return refer(panel, layer, random);
  case 6:
    return spv_layer_with_kind(layer, (SpvPatternKind) below(random, SPV_N_PATTERNS));
  case 7: {
    if (info->n_texts == 0)
      return spv_layer_ref(layer);
    guint text = below(random, info->n_texts);
    return spv_layer_with_text(layer, text, any_text(&info->texts[text], random));
  }
  default:
    if (info->n_measures == 0)
      return spv_layer_ref(layer);
    guint index = below(random, info->n_measures);
    return spv_layer_with_measure(layer, index, any_measure(&info->measures[index], random));
  }
}

static SpvPanel *
add_layer(const SpvScheme *scheme, const SpvPanel *panel, GRand *random) {
  SpvPatternKind kind = (SpvPatternKind) below(random, SPV_N_PATTERNS);
  g_autofree char *id = spv_panel_new_layer_id(panel, kind);
  const char *first = any_tincture(scheme, random), *second = any_tincture(scheme, random);
  g_autoptr(SpvLayer) layer = spv_layer_new(id, kind, first, second);
  return spv_panel_with_layer_added(panel, below(random, panel->n_layers + 1), layer);
}

static SpvPanel *
edit_layers(const SpvScheme *scheme, const SpvPanel *panel, GRand *random) {
  if (panel->n_layers == 0)
    return add_layer(scheme, panel, random);
  guint index = below(random, panel->n_layers);
  switch (below(random, 4)) {
  case 0:
    return add_layer(scheme, panel, random);
  case 1:
    return spv_panel_with_layer_removed(panel, index);
  case 2:
    return spv_panel_with_layer_moved(panel, index, below(random, panel->n_layers));
  default: {
    g_autoptr(SpvLayer) layer = edit_layer(scheme, panel, panel->layers[index], random);
    return spv_panel_with_layer(panel, index, layer);
  }
  }
}

static SpvPanel *
edit_panel(const SpvScheme *scheme, const SpvPanel *panel, GRand *random) {
  SpvOutlineSpec outline;
  switch (below(random, 6)) {
  case 0:
    spv_outline_spec_preset(SPV_OUTLINE_DISC, 4, 4, &outline);
    outline.width = outline.height = g_rand_double_range(random, 0.5, 60);
    return spv_panel_with_outline(panel, &outline);
  case 1: {
    g_autofree char *name = g_strdup_printf("panel %u", below(random, 1000));
    return spv_panel_with_name(panel, name);
  }
  case 2: {
    SpvSurface surface = { SPV_SURFACE_DOME, panel->outline.width * g_rand_double_range(random, 0.01, 0.49) };
    return spv_panel_with_surface(panel, &surface);
  }
  case 3:
    return spv_panel_with_measured(panel, !panel->measured);
  default:
    return edit_layers(scheme, panel, random);
  }
}

/* At times one that can't be: of a fur, or as a part of a fur. */
static void
make_fur(const SpvScheme *scheme, SpvTincture *tincture, GRand *random) {
  tincture->fur = (SpvFur) below(random, SPV_N_FURS);
  tincture->of[0] = any_tincture(scheme, random);
  tincture->of[1] = any_tincture(scheme, random);
  tincture->pitch = below(random, 3) == 0 ? 0 : g_rand_double_range(random, 0.03, 20);
}

static SpvScheme *
edit_tincture(const SpvScheme *scheme, GRand *random) {
  guint index = below(random, scheme->n_tinctures);
  SpvTincture tincture = scheme->tinctures[index];
  g_autofree char *id = g_strdup_printf("t-%u", g_rand_int(random));
  tincture.colour.red = (guint8) below(random, 256);
  if (below(random, 3) == 0)
    make_fur(scheme, &tincture, random);
  if (below(random, 2) == 0)
    tincture.id = id;
  if (below(random, 2) == 0 && scheme->n_tinctures < SPV_SCHEME_MAX_TINCTURES) {
    tincture.id = id;
    return spv_scheme_with_tincture_added(scheme, &tincture);
  }
  return spv_scheme_with_tincture(scheme, index, &tincture);
}

SpvScheme *
test_random_edit(const SpvScheme *scheme, GRand *random) {
  g_autofree char *words = g_strdup_printf("Words %u", below(random, 1000));
  switch (below(random, 10)) {
  case 0:
    return spv_scheme_with_title(scheme, words);
  case 1:
    return spv_scheme_with_note(scheme, words);
  case 2:
    return spv_scheme_with_finest_line(scheme, g_rand_double_range(random, 0, 6));
  case 3:
    return edit_tincture(scheme, random);
  case 4: {
    SpvScheme *less = spv_scheme_with_tincture_removed(scheme, below(random, scheme->n_tinctures), NULL);
    if (less != NULL && less->n_tinctures > 0)
      return less;
    spv_scheme_unref(less);
    return spv_scheme_ref(scheme);
  }
  default: {
    guint index = below(random, scheme->n_panels);
    g_autoptr(SpvPanel) panel = edit_panel(scheme, scheme->panels[index], random);
    return spv_scheme_with_panel(scheme, index, panel);
  }
  }
}
