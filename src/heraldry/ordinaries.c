/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ordinaries. */
#include "heraldry/lay-private.h"

void
spv_lay_chief(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double depth = spv_pattern_measure(pattern, SPV_CHIEF_DEPTH, outline, 0);
  SpvBox box = spv_lay_box(outline);
  SpvPathBuilder *builder = spv_path_builder_new();

  if (depth > 0) {
    SpvCut cut = spv_cut_keep(spv_cut_box(box), spv_point(0, depth), spv_point(0, -1));
    spv_cut_add(&cut, builder);
    spv_draft_add_line(draft, SPV_LINE_DIVISION, 1, spv_point(box.x0, depth), spv_point(box.x1, depth));
  }
  draft->area[0] = spv_path_builder_build(builder);
}
