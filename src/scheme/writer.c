/* SPDX-License-Identifier: GPL-3.0-or-later */
/* JSON values out of a scheme. What goes without saying is left out: AUTO measures, texts that are not given,
 * false flags, an empty note, a flat panel's depth, a panel without layers. */
#include "scheme/writer-private.h"

#include <math.h>

#include "scheme/scheme-file.h"

/* Up to here every whole number is written with all its digits. */
#define WHOLE_MAX 1e15

/* Whole numbers have no point, and there is no -0. */
static json_t *
number(double value) {
  if (value == floor(value) && fabs(value) < WHOLE_MAX)
    return json_integer((json_int_t) value);
  return json_real(value);
}

/* Lays the members of UNKNOWN into OBJECT, where they are not there already; in members that both have, and
 * that are objects, likewise. */
static void
lay_back(json_t *object, const json_t *unknown) {
  const char *key;
  json_t *value;
  json_object_foreach((json_t *) unknown, key, value) {
    json_t *known = json_object_get(object, key);
    if (known == NULL)
      json_object_set(object, key, value);
    else if (json_is_object(known) && json_is_object(value))
      lay_back(known, value);
  }
}

static void
write_colour(json_t *object, const SpvTincture *tincture) {
  g_autofree char *colour = spv_rgb_to_string(tincture->colour);
  json_object_set_new(object, "colour", json_string(colour));
  json_object_set_new(object, "hatch", json_string(spv_hatch_key(tincture->hatch)));
}

static void
write_fur(json_t *object, const SpvTincture *fur) {
  json_t *of = json_array();
  for (guint part = 0; part < SPV_FUR_PARTS; part++)
    json_array_append_new(of, json_string(fur->of[part]));
  json_object_set_new(object, "fur", json_string(spv_fur_key(fur->fur)));
  json_object_set_new(object, "of", of);
  if (fur->pitch > 0)
    json_object_set_new(object, "pitch", number(fur->pitch));
}

static json_t *
write_tincture(const SpvTincture *tincture, const json_t *unknown) {
  json_t *object = json_object();
  json_object_set_new(object, "id", json_string(tincture->id));
  json_object_set_new(object, "name", json_string(tincture->name));
  if (tincture->fur == SPV_FUR_NONE)
    write_colour(object, tincture);
  else
    write_fur(object, tincture);
  lay_back(object, unknown);
  return object;
}

static json_t *
write_tinctures(const SpvScheme *scheme) {
  json_t *list = json_array();
  for (guint i = 0; i < scheme->n_tinctures; i++)
    json_array_append_new(list, write_tincture(&scheme->tinctures[i], scheme->unknown_tinctures != NULL
                                                                          ? scheme->unknown_tinctures[i]
                                                                          : NULL));
  return list;
}

static json_t *
write_outline(const SpvOutlineSpec *spec) {
  const SpvOutlineInfo *info = spv_outline_info(spec->family);
  json_t *object = json_object();
  json_object_set_new(object, "family", json_string(info->key));
  json_object_set_new(object, "width", number(spec->width));
  json_object_set_new(object, "height", number(spec->height));
  for (guint i = 0; i < info->n_own; i++)
    json_object_set_new(object, info->own[i].key, number(spec->own[i]));
  return object;
}

static json_t *
write_surface(const SpvSurface *surface) {
  json_t *object = json_object();
  json_object_set_new(object, "kind", json_string(spv_surface_kind_key(surface->kind)));
  if (surface->depth != 0)
    json_object_set_new(object, "depth", number(surface->depth));
  return object;
}

static json_t *
write_panel(const SpvPanel *panel) {
  json_t *place = json_object();
  json_object_set_new(place, "x", number(panel->place.x));
  json_object_set_new(place, "y", number(panel->place.y));

  json_t *object = json_object();
  json_object_set_new(object, "id", json_string(panel->id));
  json_object_set_new(object, "name", json_string(panel->name));
  json_object_set_new(object, "side", json_string(spv_side_key(panel->side)));
  json_object_set_new(object, "outline", write_outline(&panel->outline));
  json_object_set_new(object, "surface", write_surface(&panel->surface));
  json_object_set_new(object, "place", place);
  if (panel->measured)
    json_object_set_new(object, "measured", json_true());
  lay_back(object, panel->unknown);
  return object;
}

static json_t *
write_harness(const SpvScheme *scheme) {
  json_t *panels = json_array();
  for (guint i = 0; i < scheme->n_panels; i++)
    json_array_append_new(panels, write_panel(scheme->panels[i]));

  json_t *object = json_object();
  json_object_set_new(object, "name", json_string(scheme->harness));
  json_object_set_new(object, "panels", panels);
  lay_back(object, scheme->unknown_harness);
  return object;
}

/* An object with one member. */
static json_t *
with_unit(const char *unit, double value) {
  json_t *object = json_object();
  json_object_set_new(object, unit, number(value));
  return object;
}

/* NULL for AUTO. */
static json_t *
write_measure(const SpvMeasureSpec *spec, SpvMeasure measure) {
  switch (measure.unit) {
  case SPV_UNIT_AUTO:
    return NULL;
  case SPV_UNIT_PLAIN:
    if (spec->type == SPV_MEASURE_CHOICE)
      return json_string(spec->choices[(guint) measure.value]);
    return number(measure.value);
  case SPV_UNIT_MM:
    return with_unit("mm", measure.value);
  case SPV_UNIT_RELATIVE:
    return with_unit("relative", measure.value);
  case SPV_UNIT_DEGREES:
    return with_unit("degrees", measure.value);
  }
  return NULL;
}

/* NULL when all are AUTO. */
static json_t *
write_measures(const SpvPattern *pattern) {
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);
  json_t *object = json_object();
  for (guint i = 0; i < info->n_measures; i++) {
    json_t *measure = write_measure(&info->measures[i], pattern->measures[i]);
    if (measure != NULL)
      json_object_set_new(object, info->measures[i].key, measure);
  }
  if (json_object_size(object) > 0)
    return object;
  json_decref(object);
  return NULL;
}

/* NULL when none is given. */
static json_t *
write_texts(const SpvPattern *pattern) {
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);
  json_t *object = NULL;
  for (guint i = 0; i < info->n_texts; i++) {
    if (pattern->texts[i] == NULL)
      continue;
    if (object == NULL)
      object = json_object();
    json_object_set_new(object, info->texts[i].key, json_string(pattern->texts[i]));
  }
  return object;
}

static json_t *
write_layer(const SpvLayer *layer) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);
  json_t *slots = json_array();
  for (guint slot = 0; slot < info->n_slots; slot++)
    json_array_append_new(slots,
                          layer->tinctures[slot] != NULL ? json_string(layer->tinctures[slot]) : json_null());

  json_t *object = json_object();
  json_object_set_new(object, "id", json_string(layer->id));
  json_object_set_new(object, "kind", json_string(info->key));
  json_object_set_new(object, "name", json_string(layer->name));
  json_object_set_new(object, "tinctures", slots);
  json_t *measures = write_measures(&layer->pattern);
  if (measures != NULL)
    json_object_set_new(object, "measures", measures);
  json_t *texts = write_texts(&layer->pattern);
  if (texts != NULL)
    json_object_set_new(object, "texts", texts);
  if (layer->on != NULL)
    json_object_set_new(object, "on", json_string(layer->on));
  if (layer->counterchange != NULL)
    json_object_set_new(object, "counterchange", json_string(layer->counterchange));
  if (layer->pattern.mirrored)
    json_object_set_new(object, "mirrored", json_true());
  if (layer->hidden)
    json_object_set_new(object, "hidden", json_true());
  if (layer->locked)
    json_object_set_new(object, "locked", json_true());
  lay_back(object, layer->unknown);
  return object;
}

/* NULL when no panel has a design. */
static json_t *
write_designs(const SpvScheme *scheme) {
  json_t *designs = json_object();
  for (guint i = 0; i < scheme->n_panels; i++) {
    const SpvPanel *panel = scheme->panels[i];
    if (panel->n_layers == 0 && panel->unknown_design == NULL)
      continue;
    json_t *layers = json_array();
    for (guint j = 0; j < panel->n_layers; j++)
      json_array_append_new(layers, write_layer(panel->layers[j]));
    json_t *design = json_object();
    json_object_set_new(design, "layers", layers);
    lay_back(design, panel->unknown_design);
    json_object_set_new(designs, panel->id, design);
  }
  if (json_object_size(designs) > 0)
    return designs;
  json_decref(designs);
  return NULL;
}

json_t *
spv_write_scheme(const SpvScheme *scheme) {
  json_t *root = json_object();
  json_object_set_new(root, "spolvero", json_integer(SPV_FILE_VERSION));
  json_object_set_new(root, "title", json_string(scheme->title));
  if (scheme->note[0] != '\0')
    json_object_set_new(root, "note", json_string(scheme->note));
  json_object_set_new(root, "finest-line", number(scheme->finest_line));
  json_object_set_new(root, "tinctures", write_tinctures(scheme));
  json_object_set_new(root, "harness", write_harness(scheme));
  json_t *designs = write_designs(scheme);
  if (designs != NULL)
    json_object_set_new(root, "designs", designs);
  lay_back(root, scheme->unknown);
  return root;
}
