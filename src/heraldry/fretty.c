/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Fretty: laces in two diagonal directions, over and under each other in turn. */
#include "heraldry/lattice-private.h"

/* Beside the lace that lies over it, the lower one leaves this part of the laces' width open. */
#define GAP (1.0 / 3)

/* The laces of one direction. */
typedef struct {
  const SpvOutline *outline;
  const SpvParallels *family, *other;
  double width; /* mm */
  SpvBox box;   /* nothing outside it is drawn */
} Laces;

/* Adds the strand of lace I between A and B along the other family's normal. */
static void
add_strand(const Laces *laces, int i, double a, double b, SpvPathBuilder *builder) {
  double middle = laces->family->first + i * laces->family->step;
  SpvPoint corners[4];

  if (spv_lattice_cell(laces->family->normal, middle - laces->width / 2, middle + laces->width / 2,
                       laces->other->normal, a, b, laces->box, corners))
    spv_path_builder_polygon(builder, corners, 4);
}

/* Adds all laces of a family: whole ones, or, where they are INTERLACED, cut beside every second lace of the
 * other family, where the
 * numbers of both and UNDER add up to an even one. */
static void
add_laces(const Laces *laces, gboolean interlaced, int under, SpvPathBuilder *builder) {
  double cut = laces->width * (0.5 + GAP), low, high;
  int from, to, other_from, other_to;

  spv_parallels_range(laces->family, laces->outline, &from, &to);
  spv_parallels_range(laces->other, laces->outline, &other_from, &other_to);
  spv_outline_extent(laces->outline, laces->other->normal, &low, &high);
  /* One more on either side: its middle lies past the outline, but not all of its width. */
  for (int i = from - 1; i <= to; i++) {
    if (!interlaced) {
      add_strand(laces, i, low - laces->other->step, high + laces->other->step, builder);
      continue;
    }
    int first = other_from - 3;
    first += (first + i + under) & 1;
    for (int j = first; j <= other_to; j += 2) {
      double at = laces->other->first + j * laces->other->step;
      add_strand(laces, i, at + cut, at + 2 * laces->other->step - cut, builder);
    }
  }
}

void
spv_lay_fretty(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double angle = spv_pattern_measure(pattern, SPV_FRETTY_ANGLE, outline, 1);
  double width = spv_pattern_measure(pattern, SPV_FRETTY_WIDTH, outline, 0);
  gboolean interlaced = spv_pattern_measure(pattern, SPV_FRETTY_LACES, outline, 0) == SPV_LACES_INTERLACED;
  SpvPathBuilder *builder = spv_path_builder_new();
  SpvParallels families[2];

  spv_lattice_lozenges(outline, spv_pattern_measure(pattern, SPV_FRETTY_COLUMNS, outline, 4), angle,
                       families);
  /* Laces cross at both ends of the panel's middle, so that it is a crossing or the middle of a mesh. */
  spv_lattice_through(families, spv_point(-spv_outline_width(outline) / 2, spv_outline_height(outline) / 2));
  /* Wider laces than this would lie over one another side by side. */
  width = MIN(width, families[0].step);
  for (int k = 0; k < 2 && width > 0; k++) {
    Laces laces = { outline, &families[k], &families[1 - k], width, spv_lay_box(outline) };
    add_laces(&laces, interlaced, k, builder);
  }
  draft->area[0] = spv_path_builder_build(builder);
  guint last = spv_parallels_rule(&families[0], outline, SPV_LINE_DIVISION, 0, draft);
  spv_parallels_rule(&families[1], outline, SPV_LINE_DIVISION, last, draft);
}
