/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where charges stand. */
#include "config.h"

#include "heraldry/arrange.h"

#include <glib/gi18n-lib.h>

#include "heraldry/figure.h"
#include "heraldry/lay-private.h"

const char *const spv_place_keys[] = { N_("whole"),          N_("chief"),         N_("fess"),
                                       N_("base"),           N_("dexter"),        N_("sinister"),
                                       N_("first quarter"),  N_("second quarter"), N_("third quarter"),
                                       N_("fourth quarter"), NULL };
const char *const spv_arrangement_keys[] = { N_("usual"),         N_("rows"),  N_("pale"),
                                             N_("fess"),          N_("bend"),  N_("bend sinister"),
                                             N_("cross"),         N_("saltire"), N_("chevron"),
                                             N_("pall"),          N_("orle"),  N_("semy"), NULL };

gboolean
spv_rows_text_check(const char *text, GError **error) {
  (void) text;
  (void) error;
  return TRUE;
}

/* One in the middle. */
GArray *
spv_arrange(const SpvPattern *pattern, const SpvFrame *frame) {
  const SpvOutline *outline = frame->outline;
  double smaller = MIN(spv_outline_width(outline), spv_outline_height(outline));
  double size = spv_pattern_measure(pattern, SPV_CHARGE_SIZE, outline, 0.4 * smaller);
  SpvPoint at = { spv_pattern_measure(pattern, SPV_CHARGE_ACROSS, outline, 0),
                  spv_pattern_measure(pattern, SPV_CHARGE_DOWN, outline, spv_outline_height(outline) / 2) };
  GArray *places = g_array_new(FALSE, FALSE, sizeof(SpvTransform));

  if (size > 0) {
    SpvTransform place = spv_transform_place(
        size, spv_pattern_measure(pattern, SPV_CHARGE_TURN, outline, 0), at);
    g_array_append_val(places, place);
  }
  return places;
}

void
spv_lay_charge(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  g_autoptr(GArray) places = spv_arrange(pattern, frame);
  g_autoptr(SpvPath) figure = spv_figure_path(pattern);
  SpvPathBuilder *builder = spv_path_builder_new();

  for (guint i = 0; i < places->len; i++) {
    g_autoptr(SpvPath) placed = spv_path_transform(figure, g_array_index(places, SpvTransform, i));
    spv_path_builder_path(builder, placed);
  }
  draft->area[0] = spv_path_builder_build(builder);
}
