/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles of bands side by side (fess, pale, bend and what is narrower) and of chevrons. What moves with
 * a measure moves by the measure times a factor, which depends on what else is given. */
#include "window/canvas-handles-private.h"

#define ARM SPV_HANDLE_ARM

/* How far beside one another the handles on one band stand, as a part of the smaller measure. */
#define BESIDE 0.14

/* Bands as the pattern laid them: N, each of BARS. */
typedef struct {
  SpvPoint middle, along, across; /* of all of them */
  double n, bars, width, gap, apart;
  double across_sign; /* of a slope: -1 falls to the viewer's left */
  gboolean slopes;
} Bands;

static gboolean
is_upright(SpvPatternKind kind) {
  return kind >= SPV_PATTERN_PALE && kind <= SPV_PATTERN_ENDORSE;
}

static Bands
bands_of(const SpvHandleMaking *making) {
  SpvPatternKind kind = making->pattern->kind;
  gboolean gemel = kind == SPV_PATTERN_BAR_GEMEL, cotise = kind == SPV_PATTERN_COTISE;
  double shift = spv_making_value(making, "shift", 0), angle, width;
  Bands bands = { .n = spv_making_value(making, "number", 1), .bars = gemel || cotise ? 2 : 1 };

  bands.slopes = spv_pattern_measure_index(kind, "angle") >= 0;
  bands.across_sign = kind == SPV_PATTERN_BEND_SINISTER || kind == SPV_PATTERN_SCARPE ? -1 : 1;
  angle = spv_making_value(making, "angle", atan2(making->height, making->width));
  bands.along = is_upright(kind) ? spv_point(0, -1)
                : bands.slopes   ? spv_point(cos(angle), bands.across_sign * sin(angle))
                                 : spv_point(1, 0);
  bands.across = spv_point_quarter_turn(bands.along);
  bands.middle = spv_point_add(making->middle,
                               is_upright(kind) || bands.slopes ? spv_point(shift, 0) : spv_point(0, shift));
  width = spv_making_between(making, 1, 2, 0);
  bands.width = spv_making_value(making, "width", width);
  bands.gap = bands.bars > 1 ? spv_making_between(making, 2, 3, 0) : 0;
  if (bands.bars > 1)
    bands.gap = spv_making_value(making, cotise ? "apart" : "gap", bands.gap);
  /* From the last edge of the first band to the first of the second. */
  if (bands.n > 1)
    bands.apart = spv_making_value(
        making, "apart",
        spv_making_between(making, (guint) (2 * bands.bars), (guint) (2 * bands.bars + 1), 0));
  return bands;
}

/* On the line V mm across from the middle, U parts of the smaller measure along it. */
static SpvPoint
on_bands(const SpvHandleMaking *making, const Bands *bands, double u, double v) {
  return spv_point_add(bands->middle, spv_point_add(spv_point_scale(bands->along, u * making->smaller),
                                                    spv_point_scale(bands->across, v)));
}

static void
add_across(SpvHandleMaking *making, const Bands *bands, const char *key, double u, double v, double factor,
           double value) {
  spv_making_slide_at(making, key, on_bands(making, bands, u, v), spv_point_scale(bands->across, factor),
                      value);
}

/* The width's handle is on the very last edge, those of the spaces on the first edge of the last band and of
 * its second bar. */
static void
add_widths(SpvHandleMaking *making, const Bands *bands) {
  gboolean cotise = making->pattern->kind == SPV_PATTERN_COTISE;
  gboolean even = !cotise && !spv_making_is_given(making, "apart");
  gboolean free_gap = bands->bars > 1 && !cotise && !spv_making_is_given(making, "gap");
  double band = bands->bars * bands->width + (bands->bars - 1) * bands->gap;
  double last = (bands->n * band + (bands->n - 1) * bands->apart) / 2;
  /* Where they are spread evenly, the spaces give way. */
  double share = even ? bands->n / (bands->n + 1) : bands->n / 2;

  add_across(making, bands, "width", 0, last, share * (bands->bars + (free_gap ? 1 : 0)), bands->width);
  if (bands->n > 1)
    add_across(making, bands, "apart", BESIDE, last - band, (bands->n - 1) / 2, bands->apart);
  if (cotise)
    add_across(making, bands, "apart", BESIDE, bands->gap / 2, 0.5, bands->gap);
  else if (bands->bars > 1)
    add_across(making, bands, "gap", 2 * BESIDE, last - bands->width, share, bands->gap);
}

void
spv_handles_of_band(SpvHandleMaking *making) {
  Bands bands = bands_of(making);
  gboolean baton = making->pattern->kind == SPV_PATTERN_BATON;
  SpvPoint way = is_upright(making->pattern->kind) || bands.slopes ? spv_point(1, 0) : spv_point(0, 1);

  spv_making_slide(making, "shift", making->middle, way, spv_making_value(making, "shift", 0));
  add_widths(making, &bands);
  if (baton)
    spv_making_slide(making, "length", bands.middle, spv_point_scale(bands.along, 0.5),
                     spv_making_value(making, "length", 0));
  /* Clear of the end of a baton, which is not long. */
  spv_making_turn(making, "angle", bands.middle,
                  spv_point(bands.across_sign * (baton ? ARM / 2 : ARM) * making->smaller, 0),
                  bands.across_sign, 1,
                  spv_making_value(making, "angle", atan2(making->height, making->width)));
  spv_making_profile_on(making, 1, 0.2, bands.width / 2);
}

/* --- Chevrons --- */

/* How far the edges of the last one move, upright, as the width grows by 1 mm and its limb by THICK. */
static double
width_factor(const SpvHandleMaking *making, double n, gboolean pair, double thick) {
  gboolean even = !pair && !spv_making_is_given(making, "apart");
  gboolean free_apex = n > 1 && !spv_making_is_given(making, "apex");
  double give = thick * n / (n + 1), apex = !free_apex ? 0 : pair ? -thick : -give;

  return apex + (n - 1) * (thick - (even ? give : 0)) + thick;
}

void
spv_handles_of_chevron(SpvHandleMaking *making) {
  double n = spv_making_value(making, "number", 1), angle = spv_making_value(making, "angle", G_PI / 2);
  double wide = sin(angle / 2), aside = 0.18 * making->width;
  const SpvDraftLine *first = spv_making_line(making, SPV_LINE_DIVISION, 1);
  const SpvDraftLine *second = spv_making_line(making, SPV_LINE_DIVISION, 5);
  gboolean pair = making->pattern->kind == SPV_PATTERN_COUPLE_CLOSE && n == 2;
  double apex = spv_making_value(making, "apex", first == NULL ? making->height / 2 : first->from.y);
  double width = spv_making_value(making, "width", spv_making_between(making, 1, 3, 0));
  double pitch = first == NULL || second == NULL ? 0 : second->from.y - first->from.y;
  double last = apex + (n - 1) * pitch;

  spv_making_slide(making, "apex", spv_point(0, 0), spv_point(0, 1), apex);
  spv_making_slide_at(making, "width", spv_point(aside, last + width / wide + aside / tan(angle / 2)),
                      spv_point(0, width_factor(making, n, pair, 1 / wide)), width);
  /* The points of a pair move apart by half each, of others the last one by all the spaces above it. */
  if (n > 1)
    spv_making_slide_at(making, "apart", spv_point(0, last),
                        spv_point(0, (pair && !spv_making_is_given(making, "apex") ? 0.5 : n - 1) / wide),
                        spv_making_value(making, "apart", pitch * wide - width));
  spv_making_turn(making, "angle", spv_point(0, apex), spv_point(0, ARM * making->smaller), -1, 2, angle);
  spv_making_profile_on(making, 2, 0.7, width / 2);
}
