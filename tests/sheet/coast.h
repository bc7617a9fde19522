/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Schemes of the estuary coast, made in code: a harness with one of everything that goes on a sheet, and
 * harnesses by chance. */
#pragma once

#include "scheme/scheme.h"

typedef struct {
  SpvScheme *scheme;
  GPtrArray *panels; /* SpvPanel */
} Coast;

static inline Coast
coast_begin(const char *title, const char *harness) {
  static const SpvTincture tinctures[] = {
    { "argent", "bone", { 0xe4, 0xd9, 0xbc }, SPV_HATCH_ARGENT, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "sable", "ink", { 0x2b, 0x2f, 0x45 }, SPV_HATCH_SABLE, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "vert", "deep sea green", { 0x23, 0x5f, 0x56 }, SPV_HATCH_VERT, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "gules", "madder", { 0xa8, 0x32, 0x2d }, SPV_HATCH_GULES, SPV_FUR_NONE, { NULL, NULL }, 0 },
    { "or", "lantern yellow", { 0xd9, 0xa8, 0x2e }, SPV_HATCH_OR, SPV_FUR_NONE, { NULL, NULL }, 0 },
  };
  Coast coast = { spv_scheme_new(title, harness),
                  g_ptr_array_new_with_free_func((GDestroyNotify) spv_panel_unref) };

  for (gsize i = 0; i < G_N_ELEMENTS(tinctures); i++) {
    SpvScheme *more = spv_scheme_with_tincture_added(coast.scheme, &tinctures[i]);
    spv_scheme_unref(coast.scheme);
    coast.scheme = more;
  }
  return coast;
}

/* The measure called KEY set to VALUE; consumes LAYER. */
static inline SpvLayer *
coast_set(SpvLayer *layer, const char *key, SpvUnit unit, double value) {
  int index = spv_pattern_measure_index(layer->pattern.kind, key);
  SpvLayer *set = spv_layer_with_measure(layer, (guint) index, (SpvMeasure){ unit, value });

  spv_layer_unref(layer);
  return set;
}

/* Adds a panel of FAMILY with N layers, which are consumed. */
static inline void
coast_add(Coast *coast, const char *id, const char *name, SpvOutlineFamily family, double width,
          double height, double dome, SpvLayer **layers, guint n) {
  SpvOutlineSpec spec;
  SpvSurface surface = { dome > 0 ? SPV_SURFACE_DOME : SPV_SURFACE_FLAT, dome };

  spv_outline_spec_preset(family, width, height, &spec);
  g_autoptr(SpvPanel) bare = spv_panel_new(id, name, SPV_SIDE_CENTRE, &spec, &surface,
                                           (SpvPoint){ 0, 20.0 * coast->panels->len });
  g_ptr_array_add(coast->panels, spv_panel_with_layers(bare, layers, n));
  for (guint i = 0; i < n; i++)
    spv_layer_unref(layers[i]);
}

/* The scheme; consumes COAST. */
static inline SpvScheme *
coast_end(Coast *coast) {
  SpvScheme *whole = spv_scheme_with_panels(coast->scheme, (SpvPanel *const *) coast->panels->pdata,
                                            coast->panels->len);

  spv_scheme_unref(coast->scheme);
  g_ptr_array_unref(coast->panels);
  return whole;
}

static inline SpvLayer *
coast_border(guint points, double depth, const char *tincture) {
  SpvLayer *layer = spv_layer_new("border", SPV_PATTERN_JAGGED_BORDER, tincture, NULL);

  layer = coast_set(layer, "points", SPV_UNIT_PLAIN, points);
  return coast_set(layer, "depth", SPV_UNIT_MM, depth);
}

/* A check with COLUMNS cells across. */
static inline SpvLayer *
coast_check(guint columns) {
  return coast_set(spv_layer_new("check", SPV_PATTERN_CHECK, "argent", "sable"), "columns", SPV_UNIT_PLAIN,
                   columns);
}

/* A 32 mm trooper: small panels, one of each kind of work. */
static inline SpvScheme *
coast_wardens(void) {
  Coast coast = coast_begin("Saltmarsh Wardens", "Armoured trooper, 32 mm");
  SpvLayer *knee[] = { spv_layer_new("bend", SPV_PATTERN_PER_BEND, "vert", "argent"),
                       coast_border(6, 0.45, "sable") };
  SpvLayer *pad[] = { spv_layer_new("field", SPV_PATTERN_FIELD, "vert", NULL), coast_check(8) };
  SpvLayer *other_pad[] = { spv_layer_new("field", SPV_PATTERN_FIELD, "argent", NULL),
                            coast_border(14, 0.8, "gules"),
                            spv_layer_new("roundel", SPV_PATTERN_ROUNDEL, "or", NULL) };
  SpvLayer *greave[] = { spv_layer_new("pale", SPV_PATTERN_PER_PALE, "vert", "argent") };
  SpvLayer *gauntlet[] = { coast_check(4) };
  SpvLayer *breast[] = { spv_layer_new("quarterly", SPV_PATTERN_QUARTERLY, "vert", "argent"),
                         spv_layer_new("chief", SPV_PATTERN_CHIEF, "sable", NULL) };
  SpvLayer *plain[] = { spv_layer_new("field", SPV_PATTERN_FIELD, "vert", NULL) };

  coast_add(&coast, "kneepad-dexter", "kneepad, dexter", SPV_OUTLINE_KNEEPAD, 3.4, 4.1, 0.6, knee, 2);
  coast_add(&coast, "pad-sinister", "shoulder pad, sinister", SPV_OUTLINE_ROUND_PAD, 9, 8.5, 3, pad, 2);
  coast_add(&coast, "pad-dexter", "shoulder pad, dexter", SPV_OUTLINE_ROUND_PAD, 9, 8.5, 3, other_pad, 3);
  coast_add(&coast, "greave-dexter", "greave, dexter", SPV_OUTLINE_GREAVE, 3.6, 7.2, 0, greave, 1);
  coast_add(&coast, "gauntlet", "gauntlet, sinister", SPV_OUTLINE_RECTANGLE, 2.2, 2, 0, gauntlet, 1);
  coast_add(&coast, "breastplate", "breastplate", SPV_OUTLINE_PLATE, 8.4, 9.6, 1.2, breast, 2);
  coast_add(&coast, "helm", "helm crest", SPV_OUTLINE_STRIP, 1.6, 6, 0, plain, 1);
  return coast_end(&coast);
}

/* One disc, DIAMETER mm across, plain. */
static inline SpvScheme *
coast_disc(double diameter) {
  Coast coast = coast_begin("Lantern Company", "One shield");
  SpvLayer *field[] = { spv_layer_new("field", SPV_PATTERN_FIELD, "sable", NULL) };

  coast_add(&coast, "shield", "shield", SPV_OUTLINE_DISC, diameter, diameter, 0, field, 1);
  return coast_end(&coast);
}

/* A harness by chance, the same for the same SEED: sizes from a gauntlet's to a hull's. */
static inline SpvScheme *
coast_by_chance(guint32 seed) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(seed);
  Coast coast = coast_begin("Heron Ferry Guild", "By chance");
  int n = g_rand_int_range(rand, 1, 14);

  for (int i = 0; i < n; i++) {
    g_autofree char *id = g_strdup_printf("panel-%d", i);
    double size = pow(10, g_rand_double_range(rand, 0.2, 1.65));
    double height = CLAMP(size * g_rand_double_range(rand, 0.4, 1.6), 1, 60);
    SpvOutlineFamily family = (SpvOutlineFamily) g_rand_int_range(rand, 0, SPV_N_OUTLINE_FAMILIES);
    SpvOutlineSpec spec;
    if (family == SPV_OUTLINE_DISC)
      height = size;
    spv_outline_spec_preset(family, size, height, &spec);
    if (!spv_outline_spec_check(&spec, NULL))
      family = SPV_OUTLINE_RECTANGLE; /* which takes any measures */
    SpvLayer *layers[] = { coast_check((guint) g_rand_int_range(rand, 1, 30)),
                           coast_border((guint) g_rand_int_range(rand, 1, 60), size / 10, "gules") };
    guint first = (guint) g_rand_int_range(rand, 0, 2);
    if (first == 1)
      spv_layer_unref(layers[0]);
    coast_add(&coast, id, id, family, size, height, 0, layers + first, 2 - first);
  }
  return coast_end(&coast);
}
