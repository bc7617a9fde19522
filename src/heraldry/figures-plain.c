/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures of a few straight or round lines: roundels, lozenges, drops, hearts, gems, hourglasses, tallies. */
#include "heraldry/figure-private.h"

#include "heraldry/arrange.h"

/* How wide a lozenge and a fusil are, of their height. */
#define LOZENGE_WIDTH 0.8
#define FUSIL_WIDTH 0.45

void
spv_figure_roundel(const SpvPattern *pattern, SpvPathBuilder *builder) {
  (void) pattern;
  spv_figure_disc(builder, spv_point(0, 0), 0.5);
}

void
spv_figure_annulet(const SpvPattern *pattern, SpvPathBuilder *builder) {
  spv_figure_disc(builder, spv_point(0, 0), 0.5);
  spv_figure_hole(builder, spv_point(0, 0), 0.5 * spv_figure_own(pattern, SPV_CHARGE_OWN) / 100);
}

void
spv_figure_billet(const SpvPattern *pattern, SpvPathBuilder *builder) {
  const SpvPoint corners[] = { { -0.25, -0.5 }, { 0.25, -0.5 }, { 0.25, 0.5 }, { -0.25, 0.5 } };
  (void) pattern;
  spv_path_builder_polygon(builder, corners, G_N_ELEMENTS(corners));
}

/* A rhombus 1 high and WIDTH wide, clockwise from its top, or, with a WIDTH below 0, the other way. */
static void
add_rhombus(SpvPathBuilder *builder, double width, double scale) {
  const SpvPoint corners[] = {
    { 0, -scale / 2 }, { width * scale / 2, 0 }, { 0, scale / 2 }, { -width * scale / 2, 0 }
  };
  spv_path_builder_polygon(builder, corners, G_N_ELEMENTS(corners));
}

void
spv_figure_lozenge(const SpvPattern *pattern, SpvPathBuilder *builder) {
  (void) pattern;
  add_rhombus(builder, LOZENGE_WIDTH, 1);
}

void
spv_figure_fusil(const SpvPattern *pattern, SpvPathBuilder *builder) {
  (void) pattern;
  add_rhombus(builder, FUSIL_WIDTH, 1);
}

void
spv_figure_mascle(const SpvPattern *pattern, SpvPathBuilder *builder) {
  add_rhombus(builder, LOZENGE_WIDTH, 1);
  add_rhombus(builder, -LOZENGE_WIDTH, spv_figure_own(pattern, SPV_CHARGE_OWN) / 100.0);
}

void
spv_figure_rustre(const SpvPattern *pattern, SpvPathBuilder *builder) {
  /* A hole as wide as the lozenge's sides allow would take it apart. */
  double widest = 0.5 * LOZENGE_WIDTH / hypot(LOZENGE_WIDTH, 1);
  double radius = LOZENGE_WIDTH / 2 * spv_figure_own(pattern, SPV_CHARGE_OWN) / 100;
  add_rhombus(builder, LOZENGE_WIDTH, 1);
  spv_figure_hole(builder, spv_point(0, 0), MIN(radius, 0.95 * widest));
}

void
spv_figure_gout(const SpvPattern *pattern, SpvPathBuilder *builder) {
  const double radius = 0.29, down = 0.21;
  (void) pattern;
  spv_path_builder_move(builder, spv_point(0, -0.5));
  spv_path_builder_curve(builder, spv_point(0.05, -0.22), spv_point(radius, -0.05), spv_point(radius, down));
  spv_path_builder_arc(builder, spv_point(0, down), radius, 0, G_PI);
  spv_path_builder_curve(builder, spv_point(-radius, -0.05), spv_point(-0.05, -0.22), spv_point(0, -0.5));
  spv_path_builder_close(builder);
}

void
spv_figure_heart(const SpvPattern *pattern, SpvPathBuilder *builder) {
  (void) pattern;
  spv_path_builder_move(builder, spv_point(0, -0.27));
  spv_path_builder_curve(builder, spv_point(0.08, -0.52), spv_point(0.5, -0.52), spv_point(0.5, -0.16));
  spv_path_builder_curve(builder, spv_point(0.5, 0.1), spv_point(0.17, 0.24), spv_point(0, 0.5));
  spv_path_builder_curve(builder, spv_point(-0.17, 0.24), spv_point(-0.5, 0.1), spv_point(-0.5, -0.16));
  spv_path_builder_curve(builder, spv_point(-0.5, -0.52), spv_point(-0.08, -0.52), spv_point(0, -0.27));
  spv_path_builder_close(builder);
}

/* A cut stone from the side: its crown, and under the girdle three facets. */
void
spv_figure_gem(const SpvPattern *pattern, SpvPathBuilder *builder) {
  const SpvPoint crown[] = { { -0.29, -0.42 }, { 0.29, -0.42 }, { 0.5, -0.14 }, { -0.5, -0.14 } };
  const SpvPoint middle[] = { { -0.19, -0.04 }, { 0.19, -0.04 }, { 0, 0.42 } };
  const SpvPoint dexter[] = { { -0.5, -0.04 }, { -0.3, -0.04 }, { -0.1, 0.42 } };
  const SpvPoint sinister[] = { { 0.3, -0.04 }, { 0.5, -0.04 }, { 0.1, 0.42 } };
  (void) pattern;
  spv_path_builder_polygon(builder, crown, G_N_ELEMENTS(crown));
  spv_path_builder_polygon(builder, middle, G_N_ELEMENTS(middle));
  spv_path_builder_polygon(builder, dexter, G_N_ELEMENTS(dexter));
  spv_path_builder_polygon(builder, sinister, G_N_ELEMENTS(sinister));
}

void
spv_figure_hourglass(const SpvPattern *pattern, SpvPathBuilder *builder) {
  (void) pattern;
  for (int side = 0; side < 2; side++) {
    /* The upper plate and the sinister wall down to the neck; then the same, upside down. */
    double s = side == 0 ? 1 : -1;
    const SpvPoint plate[] = { { -0.36, -0.5 }, { 0.36, -0.5 }, { 0.36, -0.385 }, { 0.29, -0.385 } };
    for (guint i = 0; i < G_N_ELEMENTS(plate); i++)
      spv_path_builder_line(builder, spv_point_scale(plate[i], s));
    spv_path_builder_curve(builder, spv_point(s * 0.29, s * -0.16), spv_point(s * 0.055, s * -0.14),
                           spv_point(s * 0.055, 0));
    spv_path_builder_curve(builder, spv_point(s * 0.055, s * 0.14), spv_point(s * 0.29, s * 0.16),
                           spv_point(s * 0.29, s * 0.385));
    spv_path_builder_line(builder, spv_point(s * 0.36, s * 0.385));
  }
  spv_path_builder_close(builder);
}

/* Tally strokes: how wide each is, and from one to the next, of their height. */
#define STROKE 0.13
#define STROKE_PITCH 0.27
/* From one group of five to the next. */
#define GROUP_PITCH 1.28

static void
add_upright(SpvPathBuilder *builder, SpvPoint at) {
  const SpvPoint corners[] = {
    { at.x, at.y }, { at.x + STROKE, at.y }, { at.x + STROKE, at.y + 1 }, { at.x, at.y + 1 }
  };
  spv_path_builder_polygon(builder, corners, G_N_ELEMENTS(corners));
}

/* The fifth stroke, which crosses the four that stand at AT. */
static void
add_crossing(SpvPathBuilder *builder, SpvPoint at) {
  SpvPoint from = spv_point(at.x - 0.09, at.y + 0.78);
  SpvPoint to = spv_point(at.x + 3 * STROKE_PITCH + STROKE + 0.09, at.y + 0.22);
  SpvPoint along = spv_point_unit(spv_point_subtract(to, from));
  SpvPoint across = spv_point_scale(spv_point_quarter_turn(along), STROKE / 2);
  const SpvPoint corners[] = { spv_point_subtract(from, across), spv_point_subtract(to, across),
                               spv_point_add(to, across), spv_point_add(from, across) };
  spv_path_builder_polygon(builder, corners, G_N_ELEMENTS(corners));
}

/* Two groups of five a row, so that many strokes don't become a long line of thin ones. */
void
spv_figure_tally(const SpvPattern *pattern, SpvPathBuilder *builder) {
  guint strokes = spv_figure_own(pattern, SPV_CHARGE_OWN);
  for (guint i = 0; i < strokes; i++) {
    guint group = i / 5, in_group = i % 5;
    SpvPoint at = spv_point(group % 2 * GROUP_PITCH, group / 2 * GROUP_PITCH);
    if (in_group == 4)
      add_crossing(builder, at);
    else
      add_upright(builder, spv_point(at.x + in_group * STROKE_PITCH, at.y));
  }
}
