/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A shape that the painter draws or brings. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "geometry/svg-path.h"
#include "geometry/wind.h"
#include "heraldry/lay-private.h"
#include "heraldry/lettering.h"

enum { SIDES_ONE, SIDES_MIRRORED };

const char *const spv_sides_keys[] = { N_("one"), N_("mirrored"), NULL };

gboolean
spv_path_text_check(const char *text, GError **error) {
  g_autoptr(GError) own = NULL;
  g_autoptr(SpvPath) path = spv_svg_path_parse(text, &own);

  if (!path)
    g_set_error_literal(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT, own->message);
  return path != NULL;
}

/* What is drawn and, on both sides, its mirror image, joined to one area. */
void
spv_lay_free_path(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  g_autoptr(SpvPath) drawn = spv_svg_path_parse(spv_pattern_text(pattern, 0), NULL);
  SpvPathBuilder *builder = spv_path_builder_new();

  if (drawn) {
    g_autoptr(SpvPath) wound = spv_path_wind(drawn, SPV_FILL_NONZERO);
    spv_path_builder_path(builder, wound);
    if (spv_pattern_measure(pattern, 0, frame->outline, SIDES_ONE) == SIDES_MIRRORED) {
      g_autoptr(SpvPath) image = spv_path_transform(wound, SPV_TRANSFORM_MIRROR);
      spv_path_builder_path(builder, image);
    }
  }
  g_autoptr(SpvPath) both = spv_path_builder_build(builder);
  draft->area[0] = spv_path_wind(both, SPV_FILL_NONZERO);
}
