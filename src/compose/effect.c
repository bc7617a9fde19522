/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a layer's measures come to where they are not given: its pattern works them out on its frame. */
#include "compose/compose.h"
#include "heraldry/arrange.h"
#include "heraldry/profile.h"

double
spv_fur_pitch_in_effect(const SpvScheme *scheme, const SpvTincture *fur) {
  return fur->pitch > 0 ? fur->pitch : spv_fur_smallest_pitch(fur->fur, scheme->finest_line);
}

double
spv_composition_charge_size(const SpvComposition *composition, guint layer) {
  const SpvPattern *pattern = &composition->panel->layers[layer]->pattern;
  SpvPatternGroup group = spv_pattern_group(pattern->kind);

  if (group != SPV_GROUP_CHARGE && pattern->kind != SPV_PATTERN_PATH_CHARGE)
    return 0;
  g_autoptr(SpvFrame) frame = spv_composition_frame(composition, layer);
  g_autoptr(GArray) places = spv_arrange(pattern, frame);
  if (places->len == 0)
    return 0;
  const SpvTransform *first = &g_array_index(places, SpvTransform, 0);
  return hypot(first->a, first->b);
}

guint
spv_composition_teeth(const SpvComposition *composition, guint layer) {
  const SpvPattern *pattern = &composition->panel->layers[layer]->pattern;
  g_autoptr(SpvFrame) frame = spv_composition_frame(composition, layer);
  double width = spv_outline_width(frame->outline), height = spv_outline_height(frame->outline);
  SpvLine line = spv_line_of(pattern, frame->outline);

  return spv_line_periods(&line, MAX(width, height), MIN(width, height));
}
