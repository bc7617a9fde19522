/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A guide as JSON. */
#include "command/guide-text.h"

static json_t *
rounded(double mm) {
  return json_real(spv_guide_round(mm));
}

/* Sets on OBJECT the keys of a place that was measured along the outline. */
static void
set_place(json_t *object, SpvPoint at, SpvEdge edge, double along, double from_datum) {
  json_object_set_new(object, "x", rounded(at.x));
  json_object_set_new(object, "y", rounded(at.y));
  json_object_set_new(object, "edge", json_string(spv_edge_key(edge)));
  json_object_set_new(object, "along", rounded(along));
  json_object_set_new(object, "from-datum", rounded(from_datum));
  json_object_set_new(
      object, "exact",
      json_pack("{s:f, s:f, s:f, s:f}", "x", at.x, "y", at.y, "along", along, "from-datum", from_datum));
}

static const char *
layer_id(const SpvGuide *guide, guint layer) {
  return guide->composition->panel->layers[layer]->id;
}

static json_t *
dots_to_json(const SpvGuide *guide) {
  json_t *list = json_array();
  for (guint i = 0; i < guide->dots->len; i++) {
    const SpvDot *dot = &g_array_index(guide->dots, SpvDot, i);
    json_t *object = json_pack("{s:I, s:s, s:s}", "number", (json_int_t) dot->number, "kind",
                               spv_dot_kind_key(dot->kind), "layer", layer_id(guide, dot->layer));
    set_place(object, dot->at, dot->edge, dot->along, dot->from_datum);
    json_array_append_new(list, object);
  }
  return list;
}

static json_t *
runs_to_json(const SpvGuide *guide) {
  json_t *list = json_array();
  for (guint i = 0; i < guide->runs->len; i++) {
    const SpvDotRun *run = &g_array_index(guide->runs, SpvDotRun, i);
    json_t *object = json_pack("{s:s, s:s, s:I, s:I, s:o, s:{s:f}}", "layer", layer_id(guide, run->layer),
                               "kind", spv_dot_kind_key(run->kind), "first", (json_int_t) run->first, "last",
                               (json_int_t) run->last, "spacing", rounded(run->spacing), "exact", "spacing",
                               run->spacing);
    json_array_append_new(list, object);
  }
  return list;
}

static json_t *
ends_to_json(const SpvRuling *ruling) {
  json_t *list = json_array();
  for (guint end = 0; end < 2; end++) {
    const SpvRulingEnd *place = &ruling->ends[end];
    json_t *object = json_object();
    set_place(object, place->at, place->edge, place->along, place->from_datum);
    json_array_append_new(list, object);
  }
  return list;
}

static json_t *
rulings_to_json(const SpvGuide *guide) {
  json_t *list = json_array();
  for (guint i = 0; i < guide->rulings->len; i++) {
    const SpvRuling *ruling = &g_array_index(guide->rulings, SpvRuling, i);
    g_autofree char *name = spv_ruling_name(ruling);
    json_t *object = json_pack("{s:I, s:s, s:s, s:s, s:I, s:o}", "number", (json_int_t) ruling->number,
                               "name", name, "layer", layer_id(guide, ruling->layer), "kind",
                               spv_line_kind_key(ruling->kind), "index", (json_int_t) ruling->index, "ends",
                               ends_to_json(ruling));
    json_array_append_new(list, object);
  }
  return list;
}

/* Each visible check: the narrowest cell that the edge cuts, where it cuts one. */
static json_t *
checks_to_json(const SpvGuide *guide) {
  json_t *list = json_array();
  const SpvComposition *composition = guide->composition;
  for (guint i = 0; i < composition->drafts->len; i++) {
    const SpvDraft *draft = composition->drafts->pdata[i];
    if (!draft || composition->panel->layers[i]->pattern.kind != SPV_PATTERN_CHECK)
      continue;
    json_t *object = json_pack("{s:s}", "layer", layer_id(guide, i));
    if (draft->smallest_partial > 0) {
      json_object_set_new(object, "smallest-partial", rounded(draft->smallest_partial));
      json_object_set_new(object, "exact", json_pack("{s:f}", "smallest-partial", draft->smallest_partial));
    }
    json_array_append_new(list, object);
  }
  return list;
}

json_t *
spv_guide_to_json(const SpvGuide *guide) {
  const SpvPanel *panel = guide->composition->panel;
  return json_pack("{s:s, s:s, s:f, s:f, s:b, s:{s:s, s:f}, s:o, s:o, s:o, s:o}", "id", panel->id, "name",
                   panel->name, "width", panel->outline.width, "height", panel->outline.height, "measured",
                   panel->measured, "surface", "kind", spv_surface_kind_key(panel->surface.kind), "depth",
                   panel->surface.depth, "dots", dots_to_json(guide), "runs", runs_to_json(guide), "rulings",
                   rulings_to_json(guide), "checks", checks_to_json(guide));
}
