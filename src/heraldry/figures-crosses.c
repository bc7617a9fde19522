/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures of crosses: four limbs alike, or three and one that is pointed. */
#include "heraldry/figure-private.h"

/* Adds a closed run of four limbs: the N points of one, the upper, clockwise from where it leaves the dexter
 * limb, then the same turned by quarters. */
static void
add_limbs(SpvPathBuilder *builder, const SpvPoint *limb, gsize n) {
  for (int quarter = 0; quarter < 4; quarter++)
    for (gsize i = 0; i < n; i++) {
      SpvPoint at = limb[i];
      for (int turn = 0; turn < quarter; turn++)
        at = spv_point_quarter_turn(at);
      spv_path_builder_line(builder, at);
    }
  spv_path_builder_close(builder);
}

void
spv_figure_cross_couped(const SpvPattern *pattern, SpvPathBuilder *builder) {
  const SpvPoint limb[] = { { -0.15, -0.15 }, { -0.15, -0.5 }, { 0.15, -0.5 } };
  (void) pattern;
  add_limbs(builder, limb, G_N_ELEMENTS(limb));
}

void
spv_figure_cross_potent(const SpvPattern *pattern, SpvPathBuilder *builder) {
  const SpvPoint limb[] = { { -0.075, -0.075 }, { -0.075, -0.35 }, { -0.23, -0.35 }, { -0.23, -0.5 },
                            { 0.23, -0.5 },     { 0.23, -0.35 },   { 0.075, -0.35 } };
  (void) pattern;
  add_limbs(builder, limb, G_N_ELEMENTS(limb));
}

void
spv_figure_cross_pommy(const SpvPattern *pattern, SpvPathBuilder *builder) {
  const double ball = 0.15;
  const SpvPoint limb[] = { { -0.075, -0.075 }, { -0.075, ball - 0.5 }, { 0.075, ball - 0.5 } };
  (void) pattern;
  add_limbs(builder, limb, G_N_ELEMENTS(limb));
  for (int i = 0; i < 4; i++)
    spv_figure_disc(builder, spv_figure_polar(0.5 - ball, i * G_PI / 2), ball);
}

/* Limbs that widen in curves to straight ends. */
void
spv_figure_cross_patty(const SpvPattern *pattern, SpvPathBuilder *builder) {
  /* One side of the upper limb, from the middle to the end; the other is its mirror image. */
  const SpvPoint inner = { 0.075, -0.075 }, c1 = { 0.1, -0.26 }, c2 = { 0.19, -0.42 }, outer = { 0.34, -0.5 };
  (void) pattern;
  for (int quarter = 0; quarter < 4; quarter++) {
    SpvTransform turn = spv_transform_turn(quarter * G_PI / 2, spv_point(0, 0));
    SpvTransform mirror = spv_transform_compose(turn, SPV_TRANSFORM_MIRROR);
    spv_path_builder_line(builder, spv_transform_point(mirror, inner));
    spv_path_builder_curve(builder, spv_transform_point(mirror, c1), spv_transform_point(mirror, c2),
                           spv_transform_point(mirror, outer));
    spv_path_builder_line(builder, spv_transform_point(turn, outer));
    spv_path_builder_curve(builder, spv_transform_point(turn, c2), spv_transform_point(turn, c1),
                           spv_transform_point(turn, inner));
  }
  spv_path_builder_close(builder);
}

void
spv_figure_cross_fitchy(const SpvPattern *pattern, SpvPathBuilder *builder) {
  const double half = 0.105, arm = 0.34, upper = -0.27, lower = upper + 2 * half;
  const SpvPoint corners[] = { { -half, -0.5 }, { half, -0.5 },   { half, upper }, { arm, upper },
                               { arm, lower },  { half, lower },  { half, 0.16 },  { 0, 0.5 },
                               { -half, 0.16 }, { -half, lower }, { -arm, lower }, { -arm, upper },
                               { -half, upper } };
  (void) pattern;
  spv_path_builder_polygon(builder, corners, G_N_ELEMENTS(corners));
}
