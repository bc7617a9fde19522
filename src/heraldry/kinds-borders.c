/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What runs along the panel's edge: names and measures. */
#include "heraldry/kinds-private.h"

const char *const spv_edge_choices[] = { N_("chief"),    N_("dexter"), N_("base"),
                                         N_("sinister"), N_("all"),    NULL };
static const char *const row_choices[] = { N_("along"), N_("straight"), NULL };

/* clang-format off */
static const SpvMeasureSpec jagged_measures[] = {
  { "edge", N_("Edge"), N_("The edge that the points stand on"),
    SPV_MEASURE_CHOICE, SPV_BASIS_NONE, CHOICE(2), 0, 0, spv_edge_choices, NULL },
  SPEC_COUNT("points", N_("Points"), N_("How many points, where no pitch is given"), COUNT(6), 1, SPV_PATTERN_MAX_COUNT),
  SPEC_LENGTH("pitch", N_("Pitch"),
              N_("From point to point along the edge, made to come out whole; empty it to go by the number of points"),
              SPV_BASIS_WIDTH, AUTO, 0.05),
  SPEC_LENGTH("depth", N_("Depth"), N_("How far the points stand over their roots"), SPV_BASIS_SMALLER, OF(0.18), 0),
  SPEC_LENGTH("width", N_("Width"), N_("How wide the border is under the points"), SPV_BASIS_SMALLER, OF(0.08), 0),
  SPEC_ANGLE("lean", N_("Lean"), N_("How far the points lean over, clockwise along the edge; 0 stands square on it"),
             DEGREES(0), -60, 60),
  SPEC_CHOICE("row", N_("Row"),
              N_("Along the edge, square on it everywhere, or in a straight line across; all round goes along the edge"),
              row_choices),
};

/* No fixed width (Fox-Davies 1909, p. 138); a fifth of the shield, read as its area. */
static const SpvMeasureSpec bordure_measures[] = {
  SPEC_LENGTH("width", N_("Width"), N_("How wide it is all round; empty it to go by its share"), SPV_BASIS_SMALLER, AUTO, 0),
  SPEC_COUNT("share", N_("Share, %"), N_("How much of the panel's area it covers, where no width is given"), COUNT(20), 1, 95),
  LINE_MEASURES,
};

/* The widths by Fox-Davies p. 141, as bordures.c says. As far from the edge as a bordure is wide: common practice, no
 * source. */
static const SpvMeasureSpec orle_measures[] = {
  SPEC_LENGTH("width", N_("Width"), N_("How wide it is; half a bordure when not given"), SPV_BASIS_SMALLER, AUTO, 0),
  SPEC_LENGTH("inset", N_("Inset"), N_("How far it lies inside the panel's edge; as far as a bordure is wide when not given"), SPV_BASIS_SMALLER, AUTO, 0),
  LINE_MEASURES,
};

static const SpvMeasureSpec tressure_measures[] = {
  SPEC_LENGTH("width", N_("Width"), N_("How wide each is; a quarter of a bordure when not given"), SPV_BASIS_SMALLER, AUTO, 0),
  SPEC_COUNT("number", N_("Number"), N_("How many lie inside one another"), COUNT(1), 1, 50),
  SPEC_LENGTH("apart", N_("Apart"), N_("How far one is from the next; as far as it is wide when not given"), SPV_BASIS_SMALLER, AUTO, 0),
  SPEC_LENGTH("inset", N_("Inset"), N_("How far the outer one lies inside the panel's edge; as far as a bordure is wide when not given"), SPV_BASIS_SMALLER, AUTO, 0),
  LINE_MEASURES,
};

#define KIND(kind) [kind - SPV_PATTERN_JAGGED_BORDER]

const SpvPatternInfo spv_border_kinds[] = {
  KIND(SPV_PATTERN_JAGGED_BORDER) = { "jagged-border", N_("Jagged border"), 1, { N_("Border") },
    MEASURES(jagged_measures), .lay = spv_lay_jagged_border },
  KIND(SPV_PATTERN_BORDURE) = { "bordure", N_("Bordure"), 1, { N_("Bordure") },
    MEASURES(bordure_measures), .lay = spv_lay_bordure },
  KIND(SPV_PATTERN_ORLE) = { "orle", N_("Orle"), 1, { N_("Orle") },
    MEASURES(orle_measures), .lay = spv_lay_orle },
  KIND(SPV_PATTERN_TRESSURE) = { "tressure", N_("Tressure"), 1, { N_("Tressure") },
    MEASURES(tressure_measures), .lay = spv_lay_tressure },
};
/* clang-format on */
