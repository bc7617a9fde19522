/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/measure-effect.h"

#include <math.h>

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

double
spv_measure_effect(const SpvComposition *composition, guint layer, const char *key) {
  const SpvDraft *draft;

  g_return_val_if_fail(layer < composition->drafts->len, NAN);
  draft = g_ptr_array_index(composition->drafts, layer);
  if (!draft)
    return NAN;
  if (g_str_equal(key, "pitch") && draft->dots->len > 0)
    return g_array_index(draft->dots, SpvDraftDot, 0).spacing;
  if (g_str_equal(key, "cell"))
    return line_distance(draft, SPV_LINE_COLUMN);
  if (g_str_equal(key, "rows"))
    return round(spv_outline_height(composition->outline) / line_distance(draft, SPV_LINE_ROW));
  if (g_str_equal(key, "angle"))
    return slope(draft);
  return NAN;
}
