/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures that go round a middle: stars, moons, suns, wheels, cogs. */
#include "heraldry/figure-private.h"

#include "heraldry/arrange.h"

/* Half the angle of a mullet's points, degrees. Five points are the pentagram's; fewer would be too blunt if
 * their sides ran into one another like that, and more too. */
static double
mullet_half_angle(guint points) {
  return points < 5 ? 16 : points == 5 ? 18 : 23;
}

/* How far in the sides of two neighbouring points meet, of how far out the points are: by the law of sines.
 */
static double
mullet_valley(guint points) {
  double tip = mullet_half_angle(points) * G_PI / 180;
  return sin(tip) / sin(tip + G_PI / points);
}

void
spv_figure_mullet(const SpvPattern *pattern, SpvPathBuilder *builder) {
  guint points = spv_figure_own(pattern, SPV_CHARGE_OWN);
  double valley = mullet_valley(points);
  for (guint i = 0; i < 2 * points; i++)
    spv_path_builder_line(builder, spv_figure_polar(i % 2 == 0 ? 1 : valley, i * G_PI / points));
  spv_path_builder_close(builder);
  if (spv_figure_own(pattern, SPV_CHARGE_OWN + 1) == 1)
    spv_figure_hole(builder, spv_point(0, 0), MIN(0.45 * valley, 0.25));
}

/* A point that sways to one side and back: from the valley FROM by TIP to the valley TO, each side swaying by
 * SWAY at a third and two thirds of its length. The run is at FROM. */
static void
add_wavy_ray(SpvPathBuilder *builder, SpvPoint from, SpvPoint tip, SpvPoint to, double sway) {
  SpvPoint aside = spv_point_scale(spv_point_quarter_turn(spv_point_unit(tip)), sway);
  spv_path_builder_curve(builder, spv_point_add(spv_point_between(from, tip, 1 / 3.0), aside),
                         spv_point_subtract(spv_point_between(from, tip, 2 / 3.0), aside), tip);
  spv_path_builder_curve(builder, spv_point_subtract(spv_point_between(tip, to, 1 / 3.0), aside),
                         spv_point_add(spv_point_between(tip, to, 2 / 3.0), aside), to);
}

void
spv_figure_estoile(const SpvPattern *pattern, SpvPathBuilder *builder) {
  guint points = spv_figure_own(pattern, SPV_CHARGE_OWN);
  double tip = 0.3, half = G_PI / points, valley = sin(tip) / sin(tip + half);
  double sway = 0.9 * valley * sin(half);
  spv_path_builder_move(builder, spv_figure_polar(valley, -half));
  for (guint i = 0; i < points; i++) {
    double at = 2 * half * i;
    add_wavy_ray(builder, spv_figure_polar(valley, at - half), spv_figure_polar(1, at),
                 spv_figure_polar(valley, at + half), sway);
  }
  spv_path_builder_close(builder);
}

/* A disc of radius 1 without a smaller one that reaches out of it: upwards, towards dexter, towards sinister
 * as the viewer sees it. */
void
spv_figure_crescent(const SpvPattern *pattern, SpvPathBuilder *builder) {
  const double inner = 0.72, off = 0.36;
  double towards = pattern->kind == SPV_PATTERN_INCRESCENT   ? -G_PI / 2
                   : pattern->kind == SPV_PATTERN_DECRESCENT ? G_PI / 2
                                                             : 0;
  /* The corners of the horns lie where both circles meet: by the law of cosines, seen from either middle. */
  double outer_half = acos((1 + off * off - inner * inner) / (2 * off));
  double inner_half = acos((1 - off * off - inner * inner) / (2 * off * inner));
  /* An arc's angles start at the right; the horns' at the top. */
  double axis = towards - G_PI / 2;
  spv_path_builder_arc(builder, spv_point(0, 0), 1, axis + outer_half, 2 * (G_PI - outer_half));
  spv_path_builder_arc(builder, spv_figure_polar(off, towards), inner, axis - inner_half,
                       -2 * (G_PI - inner_half));
  spv_path_builder_close(builder);
}

/* A rim, a hub, and between two spokes each a hole that they bound. */
void
spv_figure_wheel(const SpvPattern *pattern, SpvPathBuilder *builder) {
  guint spokes = spv_figure_own(pattern, SPV_CHARGE_OWN);
  double half = MIN(0.1, 0.6 / spokes), rim = 0.79, hub = MAX(0.27, 0.45 * half * spokes);
  double at_rim = asin(half / rim), at_hub = asin(half / hub), step = 2 * G_PI / spokes;
  spv_figure_disc(builder, spv_point(0, 0), 1);
  for (guint i = 0; i < spokes; i++) {
    double from = i * step - G_PI / 2;
    spv_path_builder_arc(builder, spv_point(0, 0), hub, from + at_hub, step - 2 * at_hub);
    spv_path_builder_arc(builder, spv_point(0, 0), rim, from + step - at_rim, -(step - 2 * at_rim));
    spv_path_builder_close(builder);
  }
}

void
spv_figure_cog(const SpvPattern *pattern, SpvPathBuilder *builder) {
  guint teeth = spv_figure_own(pattern, SPV_CHARGE_OWN);
  double step = 2 * G_PI / teeth, root = 1 - MIN(0.27, 0.9 * step);
  double at_tip = 0.21 * step, at_root = 0.28 * step;
  for (guint i = 0; i < teeth; i++) {
    double at = i * step - G_PI / 2;
    spv_path_builder_arc(builder, spv_point(0, 0), 1, at - at_tip, 2 * at_tip);
    spv_path_builder_arc(builder, spv_point(0, 0), root, at + at_root, step - 2 * at_root);
  }
  spv_path_builder_close(builder);
  spv_figure_hole(builder, spv_point(0, 0), 0.32);
}

/* A disc with rays, which are straight and wavy by turns where their number is even. */
void
spv_figure_sun(const SpvPattern *pattern, SpvPathBuilder *builder) {
  guint rays = spv_figure_own(pattern, SPV_CHARGE_OWN);
  double step = 2 * G_PI / rays, disc = 0.55, half = MIN(0.36 * step, 0.19);
  for (guint i = 0; i < rays; i++) {
    SpvPoint from = spv_figure_polar(disc, i * step - half), to = spv_figure_polar(disc, i * step + half);
    double sway = rays % 2 == 0 && i % 2 == 1 ? 1.3 * disc * sin(half) : 0;
    spv_path_builder_arc(builder, spv_point(0, 0), disc, (i - 1.0) * step + half - G_PI / 2, step - 2 * half);
    add_wavy_ray(builder, from, spv_figure_polar(1, i * step), to, sway);
  }
  spv_path_builder_close(builder);
}
