/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sampler's plates, out of the tables of kinds. */
#include "config.h"

#include "sheet/chart-samples.h"

#include <glib/gi18n-lib.h>

#include "heraldry/arrange.h"
#include "heraldry/figure.h"
#include "heraldry/profile.h"

/* What lies on a plate: up to so many layers. */
#define MOST_LAYERS 4

#define EDGE_ALL 4 /* the choice "all" of a jagged border's edges */

/* A free shape, mm from the datum. */
#define SHAPE "M 0 3 C 4 3 6 5 6 8 L 0 15 L -6 8 C -6 5 -4 3 0 3 Z"

static const char *const headings[SPV_N_SAMPLE_GROUPS] = {
  [SPV_SAMPLES_LINES] = N_("Lines of partition"),
  [SPV_SAMPLES_DIVISIONS] = N_("Divisions"),
  [SPV_SAMPLES_VARIED] = N_("Varied fields"),
  [SPV_SAMPLES_ORDINARIES] = N_("Ordinaries"),
  [SPV_SAMPLES_BORDERS] = N_("Borders"),
  [SPV_SAMPLES_FURS] = N_("Furs"),
  [SPV_SAMPLES_CHARGES] = N_("Charges"),
  [SPV_SAMPLES_ARRANGEMENTS] = N_("Arrangements"),
  [SPV_SAMPLES_EDGES] = N_("Lines on ordinaries"),
  [SPV_SAMPLES_TOGETHER] = N_("Laid together"),
  [SPV_SAMPLES_OWN] = N_("Your own"),
};

/* Usual colours of the tinctures: common practice, no source. */
static const SpvTincture tinctures[] = {
  { .id = "argent", .name = N_("argent"), .colour = { 0xf1, 0xec, 0xe0 }, .hatch = SPV_HATCH_ARGENT },
  { .id = "or", .name = N_("or"), .colour = { 0xe3, 0xb5, 0x3c }, .hatch = SPV_HATCH_OR },
  { .id = "azure", .name = N_("azure"), .colour = { 0x2f, 0x5d, 0x8f }, .hatch = SPV_HATCH_AZURE },
  { .id = "gules", .name = N_("gules"), .colour = { 0xa8, 0x32, 0x2d }, .hatch = SPV_HATCH_GULES },
  { .id = "sable", .name = N_("sable"), .colour = { 0x2b, 0x2b, 0x30 }, .hatch = SPV_HATCH_SABLE },
};

/* The furs by their names, out of two tinctures each: Fox-Davies, A Complete Guide to Heraldry (1909) ch. VI,
 * from memory. */
static const SpvTincture furs[] = {
  { .id = "ermine", .name = N_("ermine"), .fur = SPV_FUR_ERMINE, .of = { "argent", "sable" } },
  { .id = "ermines", .name = N_("ermines"), .fur = SPV_FUR_ERMINE, .of = { "sable", "argent" } },
  { .id = "erminois", .name = N_("erminois"), .fur = SPV_FUR_ERMINE, .of = { "or", "sable" } },
  { .id = "pean", .name = N_("pean"), .fur = SPV_FUR_ERMINE, .of = { "sable", "or" } },
  { .id = "vair", .name = N_("vair"), .fur = SPV_FUR_VAIR, .of = { "argent", "azure" } },
  { .id = "counter-vair",
    .name = N_("counter-vair"),
    .fur = SPV_FUR_COUNTER_VAIR,
    .of = { "argent", "azure" } },
  { .id = "potent", .name = N_("potent"), .fur = SPV_FUR_POTENT, .of = { "argent", "azure" } },
};

/* Spots as far apart as a plate shows well. */
#define FUR_PITCH 3.2

typedef struct {
  SpvSamples *samples;
  GPtrArray *panels; /* SpvPanel */
  double line;
} Making;

static void
sample_free(gpointer data) {
  SpvSample *sample = data;

  g_free(sample->word);
  g_free(sample);
}

static void
unref_panel(gpointer panel) {
  spv_panel_unref(panel);
}

static SpvScheme *
scheme_new(double line) {
  g_autoptr(SpvScheme) bare = spv_scheme_new(_("Sampler"), _("Plates"));
  SpvScheme *scheme = spv_scheme_with_finest_line(bare, line);

  for (guint i = 0; i < G_N_ELEMENTS(tinctures) + G_N_ELEMENTS(furs); i++) {
    SpvTincture tincture = i < G_N_ELEMENTS(tinctures) ? tinctures[i] : furs[i - G_N_ELEMENTS(tinctures)];
    tincture.name = _(tincture.name);
    if (tincture.fur != SPV_FUR_NONE)
      tincture.pitch = FUR_PITCH;
    SpvScheme *more = spv_scheme_with_tincture_added(scheme, &tincture);
    spv_scheme_unref(scheme);
    scheme = more;
  }
  return scheme;
}

/* LAYER with measure KEY at VALUE, where its kind has it. LAYER is consumed. */
static SpvLayer *
set(SpvLayer *layer, const char *key, SpvUnit unit, double value) {
  int index = spv_pattern_measure_index(layer->pattern.kind, key);
  if (index < 0)
    return layer;

  SpvLayer *changed = spv_layer_with_measure(layer, (guint) index, (SpvMeasure){ unit, value });
  spv_layer_unref(layer);
  return changed;
}

/* Likewise, with its text KEY. */
static SpvLayer *
set_text(SpvLayer *layer, const char *key, const char *text) {
  SpvLayer *changed = spv_layer_with_text(layer, (guint) spv_pattern_text_index(layer->pattern.kind, key),
                                          text);

  spv_layer_unref(layer);
  return changed;
}

/* Adds a plate with the N LAYERS, which are consumed. */
static void
add_plate(Making *making, SpvSampleGroup group, const char *word, double smallest, SpvLayer **layers,
          guint n) {
  SpvOutlineSpec outline;
  SpvSurface surface = { SPV_SURFACE_FLAT, 0 };
  g_autofree char *id = g_strdup_printf("plate-%u", making->panels->len + 1);
  SpvSample *sample = g_new0(SpvSample, 1);

  spv_outline_spec_preset(SPV_OUTLINE_PLATE, SPV_SAMPLE_WIDTH, SPV_SAMPLE_HEIGHT, &outline);
  g_autoptr(SpvPanel) plate = spv_panel_new(id, word, SPV_SIDE_CENTRE, &outline, &surface, spv_point(0, 0));
  g_ptr_array_add(making->panels, spv_panel_with_layers(plate, layers, n));
  for (guint i = 0; i < n; i++)
    spv_layer_unref(layers[i]);
  sample->group = group;
  sample->panel = making->panels->len - 1;
  sample->word = g_strdup(word);
  sample->smallest = smallest;
  g_ptr_array_add(making->samples->samples, sample);
}

/* LAYER, in its tinctures, over a field of argent where it leaves any to be seen. */
static void
add_layer(Making *making, SpvSampleGroup group, const char *word, double smallest, SpvLayer *layer) {
  SpvLayer *layers[MOST_LAYERS] = { spv_layer_new("ground", SPV_PATTERN_FIELD, "argent", NULL), layer };

  add_plate(making, group, word, smallest, layers, 2);
}

static SpvLayer *
layer_new(SpvPatternKind kind) {
  gboolean parted = spv_pattern_info(kind)->n_slots > 1;
  SpvLayer *layer = spv_layer_new("sample", kind, "azure", parted ? "or" : NULL);

  if (spv_pattern_info(kind)->n_slots < 3)
    return layer;
  SpvLayer *whole = spv_layer_with_tincture(layer, 2, "gules");
  spv_layer_unref(layer);
  return whole;
}

static void
add_lines(Making *making) {
  for (guint i = 0; i < SPV_N_PROFILES; i++) {
    SpvLayer *layer = set(layer_new(SPV_PATTERN_PER_FESS), "line", SPV_UNIT_PLAIN, i);
    add_layer(making, SPV_SAMPLES_LINES, _(spv_profile_key((SpvProfile) i)), 0, layer);
  }
}

/* All kinds of GROUP; the smallest size of each where it is a charge. */
static void
add_kinds(Making *making, SpvPatternGroup group, SpvSampleGroup samples) {
  for (guint i = 0; i < SPV_N_PATTERNS; i++) {
    SpvPatternKind kind = (SpvPatternKind) i;
    if (spv_pattern_group(kind) != group)
      continue;
    SpvLayer *layer = layer_new(kind);
    double smallest = group == SPV_GROUP_CHARGE ? spv_figure_smallest(&layer->pattern, making->line) : 0;
    if (group == SPV_GROUP_CHARGE)
      layer = set(set(layer, "size", SPV_UNIT_RELATIVE, 0.7), "diameter", SPV_UNIT_RELATIVE, 0.7);
    if (kind == SPV_PATTERN_JAGGED_BORDER)
      layer = set(set(layer, "edge", SPV_UNIT_PLAIN, EDGE_ALL), "points", SPV_UNIT_PLAIN, 20);
    if (kind == SPV_PATTERN_FREE_PATH)
      layer = set_text(layer, "path", SHAPE);
    add_layer(making, samples, _(spv_pattern_info(kind)->label), smallest, layer);
  }
}

static void
add_furs(Making *making) {
  for (guint i = 0; i < G_N_ELEMENTS(furs); i++) {
    SpvLayer *layer = spv_layer_new("sample", SPV_PATTERN_FIELD, furs[i].id, NULL);
    add_layer(making, SPV_SAMPLES_FURS, _(furs[i].name), 0, layer);
  }
}

static void
add_arrangements(Making *making) {
  for (guint i = SPV_ARRANGEMENT_ROWS; spv_arrangement_keys[i] != NULL; i++) {
    guint number = i == SPV_ARRANGEMENT_ORLE ? 8 : i == SPV_ARRANGEMENT_ROWS ? 6 : 5;
    SpvLayer *layer = set(layer_new(SPV_PATTERN_MULLET), "arrangement", SPV_UNIT_PLAIN, i);
    layer = set(layer, "number", SPV_UNIT_PLAIN, number);
    if (i == SPV_ARRANGEMENT_ROWS)
      layer = set_text(layer, "rows", "3, 2, 1");
    add_layer(making, SPV_SAMPLES_ARRANGEMENTS, _(spv_arrangement_keys[i]), 0, layer);
  }
}

/* A band or a border with a line of partition. */
static const struct {
  const char *word;
  SpvPatternKind kind;
  SpvProfile line;
} edges[] = {
  { N_("Chief indented"), SPV_PATTERN_CHIEF, SPV_PROFILE_INDENTED },
  { N_("Fess wavy"), SPV_PATTERN_FESS, SPV_PROFILE_WAVY },
  { N_("Pale dovetailed"), SPV_PATTERN_PALE, SPV_PROFILE_DOVETAILED },
  { N_("Bend raguly"), SPV_PATTERN_BEND, SPV_PROFILE_RAGULY },
  { N_("Chevron embattled"), SPV_PATTERN_CHEVRON, SPV_PROFILE_EMBATTLED },
  { N_("Cross invected"), SPV_PATTERN_CROSS, SPV_PROFILE_INVECTED },
  { N_("Bordure engrailed"), SPV_PATTERN_BORDURE, SPV_PROFILE_ENGRAILED },
};

static void
add_edges(Making *making) {
  for (guint i = 0; i < G_N_ELEMENTS(edges); i++) {
    SpvLayer *layer = set(layer_new(edges[i].kind), "line", SPV_UNIT_PLAIN, edges[i].line);
    add_layer(making, SPV_SAMPLES_EDGES, _(edges[i].word), 0, layer);
  }
}

/* One layer of a plate that shows several together. */
typedef struct {
  SpvPatternKind kind;
  const char *tinctures[2];
  gboolean on, counterchanged; /* on the layer below it, or across the lowest one */
  struct {
    const char *key;
    double value;
  } measures[3]; /* plain ones */
} Together;

static const struct {
  const char *word;
  Together layers[MOST_LAYERS]; /* bottom first; a field of no tincture ends them */
} together[] = {
  { N_("Charged chief"),
    { { .kind = SPV_PATTERN_FIELD, .tinctures = { "argent" } },
      { .kind = SPV_PATTERN_CHIEF, .tinctures = { "azure" }, .measures = { { "charged", 1 } } },
      { .kind = SPV_PATTERN_MULLET, .tinctures = { "or" }, .on = TRUE, .measures = { { "number", 3 } } } } },
  { N_("Charged bend"),
    { { .kind = SPV_PATTERN_FIELD, .tinctures = { "or" } },
      { .kind = SPV_PATTERN_BEND, .tinctures = { "gules" }, .measures = { { "charged", 1 } } },
      { .kind = SPV_PATTERN_LOZENGE,
        .tinctures = { "argent" },
        .on = TRUE,
        .measures = { { "number", 3 } } } } },
  { N_("Between charges"),
    { { .kind = SPV_PATTERN_FIELD, .tinctures = { "azure" } },
      { .kind = SPV_PATTERN_FESS, .tinctures = { "argent" } },
      { .kind = SPV_PATTERN_CRESCENT,
        .tinctures = { "or" },
        .measures = { { "number", 2 }, { "place", SPV_PLACE_CHIEF } } },
      { .kind = SPV_PATTERN_CRESCENT,
        .tinctures = { "or" },
        .measures = { { "place", SPV_PLACE_BASE } } } } },
  { N_("Counterchanged charge"),
    { { .kind = SPV_PATTERN_PER_PALE, .tinctures = { "azure", "or" } },
      { .kind = SPV_PATTERN_TOWER, .tinctures = { "azure" }, .counterchanged = TRUE } } },
  { N_("Counterchanged bend"),
    { { .kind = SPV_PATTERN_PER_FESS, .tinctures = { "gules", "argent" } },
      { .kind = SPV_PATTERN_BEND, .tinctures = { "gules" }, .counterchanged = TRUE } } },
  { N_("Semy of billets"),
    { { .kind = SPV_PATTERN_FIELD, .tinctures = { "azure" } },
      { .kind = SPV_PATTERN_BILLET,
        .tinctures = { "or" },
        .measures = { { "arrangement", SPV_ARRANGEMENT_SEMY } } } } },
  { N_("Fess of a fur"),
    { { .kind = SPV_PATTERN_FIELD, .tinctures = { "gules" } },
      { .kind = SPV_PATTERN_FESS, .tinctures = { "ermine" } } } },
};

/* Layer INDEX of a plate, over LAYERS. */
static SpvLayer *
together_layer(const Together *spec, guint index, SpvLayer *const *layers) {
  g_autofree char *id = g_strdup_printf("layer-%u", index + 1);
  g_autoptr(SpvLayer) bare = spv_layer_new(id, spec->kind, spec->tinctures[0], spec->tinctures[1]);
  g_autoptr(SpvLayer) laid = spv_layer_with_on(bare, spec->on ? layers[index - 1]->id : NULL);
  SpvLayer *layer = spv_layer_with_counterchange(laid, spec->counterchanged ? layers[0]->id : NULL);

  for (guint i = 0; i < G_N_ELEMENTS(spec->measures) && spec->measures[i].key != NULL; i++)
    layer = set(layer, spec->measures[i].key, SPV_UNIT_PLAIN, spec->measures[i].value);
  return layer;
}

static void
add_together(Making *making) {
  for (guint i = 0; i < G_N_ELEMENTS(together); i++) {
    SpvLayer *layers[MOST_LAYERS];
    guint n = 0;

    for (; n < MOST_LAYERS && together[i].layers[n].tinctures[0] != NULL; n++)
      layers[n] = together_layer(&together[i].layers[n], n, layers);
    add_plate(making, SPV_SAMPLES_TOGETHER, _(together[i].word), 0, layers, n);
  }
}

/* Words that stand on no straight line; invented places, not translated. */
static const struct {
  const char *word, *text;
  guint baseline;
} letterings[] = {
  { N_("Letters on an arc"), "LANTERN", 1 },
  { N_("Letters along an edge"), "HERON FERRY", 2 },
};

static void
add_letterings(Making *making) {
  for (guint i = 0; i < G_N_ELEMENTS(letterings); i++) {
    SpvLayer *layer = set_text(layer_new(SPV_PATTERN_LETTERING), "text", letterings[i].text);
    layer = set(layer, "baseline", SPV_UNIT_PLAIN, letterings[i].baseline);
    add_layer(making, SPV_SAMPLES_OWN, _(letterings[i].word), 0, layer);
  }
}

SpvSamples *
spv_samples_new(double finest_line) {
  SpvSamples *samples = g_new0(SpvSamples, 1);
  g_autoptr(GPtrArray) panels = g_ptr_array_new_with_free_func(unref_panel);
  g_autoptr(SpvScheme) scheme = scheme_new(finest_line);
  Making making = { samples, panels, finest_line };

  samples->samples = g_ptr_array_new_with_free_func(sample_free);
  add_lines(&making);
  add_kinds(&making, SPV_GROUP_DIVISION, SPV_SAMPLES_DIVISIONS);
  add_kinds(&making, SPV_GROUP_VARIED, SPV_SAMPLES_VARIED);
  add_kinds(&making, SPV_GROUP_ORDINARY, SPV_SAMPLES_ORDINARIES);
  add_kinds(&making, SPV_GROUP_BORDER, SPV_SAMPLES_BORDERS);
  add_furs(&making);
  add_kinds(&making, SPV_GROUP_CHARGE, SPV_SAMPLES_CHARGES);
  add_arrangements(&making);
  add_edges(&making);
  add_together(&making);
  add_kinds(&making, SPV_GROUP_OWN, SPV_SAMPLES_OWN);
  add_letterings(&making);
  samples->scheme = spv_scheme_with_panels(scheme, (SpvPanel *const *) panels->pdata, panels->len);
  return samples;
}

void
spv_samples_free(SpvSamples *samples) {
  g_ptr_array_unref(samples->samples);
  spv_scheme_unref(samples->scheme);
  g_free(samples);
}

const char *
spv_samples_heading(SpvSampleGroup group) {
  return _(headings[group]);
}

const char *
spv_samples_note(SpvSampleGroup group) {
  return group == SPV_SAMPLES_CHARGES ? _("beside each, the smallest that your line allows") : NULL;
}
