/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/measure-effect.h"

#include <math.h>

#include "heraldry/arrange.h"

/* The distance between the first two lines of KIND, square to them, mm. */
static double
line_distance(const SpvDraft *draft, SpvLineKind kind) {
  const SpvDraftLine *first = NULL;

  for (guint i = 0; i < draft->lines->len; i++) {
    const SpvDraftLine *line = &g_array_index(draft->lines, SpvDraftLine, i);
    if (line->kind != kind)
      continue;
    if (!first) {
      first = line;
      continue;
    }
    SpvPoint along = spv_point_unit(spv_point_subtract(first->to, first->from));
    double distance = fabs(spv_point_cross(along, spv_point_subtract(line->from, first->from)));
    return distance / MAX(1, ABS((int) line->number - (int) first->number));
  }
  return NAN;
}

/* How steeply the first division falls, from 0 (level) to π/2. */
static double
slope(const SpvDraft *draft) {
  for (guint i = 0; i < draft->lines->len; i++) {
    const SpvDraftLine *line = &g_array_index(draft->lines, SpvDraftLine, i);
    SpvPoint along = spv_point_subtract(line->to, line->from);
    if (line->kind == SPV_LINE_DIVISION && spv_point_length(along) > 0)
      return atan2(fabs(along.y), fabs(along.x));
  }
  return NAN;
}

/* The middle of all PLACES, in the frame's mm. */
static SpvPoint
middle_of(GArray *places) {
  SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };

  for (guint i = 0; i < places->len; i++) {
    SpvPoint at = spv_transform_point(g_array_index(places, SpvTransform, i), spv_point(0, 0));
    box = (SpvBox){ MIN(box.x0, at.x), MIN(box.y0, at.y), MAX(box.x1, at.x), MAX(box.y1, at.y) };
  }
  return spv_point((box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2);
}

/* Where and how large the charges of PATTERN come to stand on FRAME. */
static double
charge_effect(const SpvPattern *pattern, const SpvFrame *frame, int index) {
  g_autoptr(GArray) places = spv_arrange(pattern, frame);

  if (places->len == 0)
    return NAN;
  SpvTransform first = g_array_index(places, SpvTransform, 0);
  SpvPoint origin = spv_transform_point(first, spv_point(0, 0));
  switch (index) {
  case SPV_CHARGE_ACROSS:
    return middle_of(places).x;
  case SPV_CHARGE_DOWN:
    return middle_of(places).y;
  case SPV_CHARGE_SIZE:
    return spv_point_length(spv_point_subtract(spv_transform_point(first, spv_point(1, 0)), origin));
  case SPV_CHARGE_SPACING:
    if (places->len < 2)
      return NAN;
    SpvPoint next = spv_transform_point(g_array_index(places, SpvTransform, 1), spv_point(0, 0));
    return spv_point_length(spv_point_subtract(next, origin));
  default:
    return NAN;
  }
}

/* How wide a limb, or how large a box, comes out that others can be laid on. */
static double
bearer_effect(SpvPatternKind kind, const SpvFrame *frame, const char *key) {
  gboolean has_height = spv_pattern_measure_index(kind, "height") >= 0;

  if (g_str_equal(key, "height"))
    return spv_outline_height(frame->outline);
  if (g_str_equal(key, "width") && has_height)
    return spv_outline_width(frame->outline);
  if (g_str_equal(key, "width") && frame->breadth > 0)
    return frame->breadth;
  return NAN;
}

static gboolean
is_charge(SpvPatternKind kind) {
  return spv_pattern_group(kind) == SPV_GROUP_CHARGE || kind == SPV_PATTERN_PATH_CHARGE;
}

/* The height of what LAYER is laid on, mm. */
static double
height_on(const SpvComposition *composition, guint layer) {
  g_autoptr(SpvFrame) frame = spv_composition_frame(composition, layer);

  return spv_outline_height(frame->outline);
}

double
spv_measure_effect(const SpvComposition *composition, guint layer, const char *key) {
  const SpvDraft *draft;

  g_return_val_if_fail(layer < composition->drafts->len, NAN);
  draft = g_ptr_array_index(composition->drafts, layer);
  if (!draft)
    return NAN;
  const SpvPattern *pattern = &composition->panel->layers[layer]->pattern;
  if (is_charge(pattern->kind)) {
    g_autoptr(SpvFrame) frame = spv_composition_frame(composition, layer);
    return charge_effect(pattern, frame, spv_pattern_measure_index(pattern->kind, key));
  }
  if (g_str_equal(key, "pitch") && draft->dots->len > 0)
    return g_array_index(draft->dots, SpvDraftDot, 0).spacing;
  if (g_str_equal(key, "cell"))
    return line_distance(draft, SPV_LINE_COLUMN);
  if (g_str_equal(key, "rows"))
    return round(height_on(composition, layer) / line_distance(draft, SPV_LINE_ROW));
  if (g_str_equal(key, "angle"))
    return slope(draft);
  return draft->frame ? bearer_effect(pattern->kind, draft->frame, key) : NAN;
}
