/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Convex cuts and lines: the parts from which divisions and stripes are laid. */
#include "heraldry/lay-private.h"

SpvBox
spv_lay_box(const SpvOutline *outline) {
  SpvBox box = spv_outline_bounds(outline);
  return spv_box_grow(box, 0.1 * MAX(spv_box_width(box), spv_box_height(box)));
}

SpvCut
spv_cut_box(SpvBox box) {
  return (SpvCut){ { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } }, 4 };
}

/* One pass of Sutherland and Hodgman, "Reentrant polygon clipping" (1974), from memory: exact enough for
 * convex rings. */
SpvCut
spv_cut_keep(SpvCut cut, SpvPoint at, SpvPoint normal) {
  SpvCut kept = { .n = 0 };

  for (guint i = 0; i < cut.n; i++) {
    SpvPoint a = cut.points[i], b = cut.points[(i + 1) % cut.n];
    double da = spv_point_dot(spv_point_subtract(a, at), normal);
    double db = spv_point_dot(spv_point_subtract(b, at), normal);

    if (da >= 0 && kept.n < G_N_ELEMENTS(kept.points))
      kept.points[kept.n++] = a;
    if ((da > 0) != (db > 0) && da != 0 && db != 0 && kept.n < G_N_ELEMENTS(kept.points))
      kept.points[kept.n++] = spv_point_between(a, b, da / (da - db));
  }
  return kept;
}

void
spv_cut_add(const SpvCut *cut, SpvPathBuilder *builder) {
  if (cut->n >= 3)
    spv_path_builder_polygon(builder, cut->points, cut->n);
}

void
spv_draft_add_line(SpvDraft *draft, SpvLineKind kind, guint number, SpvPoint from, SpvPoint to) {
  SpvDraftLine line = { kind, number, from, to };
  g_array_append_val(draft->lines, line);
}

double
spv_lay_bend_angle(const SpvPattern *pattern, guint index, const SpvOutline *outline) {
  double diagonal = atan2(spv_outline_height(outline), spv_outline_width(outline));
  return spv_pattern_measure(pattern, index, outline, diagonal);
}
