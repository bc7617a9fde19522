/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures: which drawing each charge has, and its own unit. */
#include "heraldry/figure.h"

#include "geometry/shape.h"
#include "geometry/svg-path.h"
#include "geometry/wind.h"
#include "heraldry/arrange.h"
#include "heraldry/figure-private.h"

/* Sizes between which a path can be brought to 1 without losing all digits. */
#define SMALLEST_PATH 1e-90
#define LARGEST_PATH 1e90

/* The charges that are drawn by rule; the others are path data. */
#define KIND(kind) [kind - SPV_PATTERN_ROUNDEL]
static const SpvFigureDraw draws[SPV_PATTERN_PATH_CHARGE - SPV_PATTERN_ROUNDEL] = {
  KIND(SPV_PATTERN_ROUNDEL) = spv_figure_roundel,
  KIND(SPV_PATTERN_ANNULET) = spv_figure_annulet,
  KIND(SPV_PATTERN_BILLET) = spv_figure_billet,
  KIND(SPV_PATTERN_LOZENGE) = spv_figure_lozenge,
  KIND(SPV_PATTERN_FUSIL) = spv_figure_fusil,
  KIND(SPV_PATTERN_MASCLE) = spv_figure_mascle,
  KIND(SPV_PATTERN_RUSTRE) = spv_figure_rustre,
  KIND(SPV_PATTERN_MULLET) = spv_figure_mullet,
  KIND(SPV_PATTERN_ESTOILE) = spv_figure_estoile,
  KIND(SPV_PATTERN_CRESCENT) = spv_figure_crescent,
  KIND(SPV_PATTERN_INCRESCENT) = spv_figure_crescent,
  KIND(SPV_PATTERN_DECRESCENT) = spv_figure_crescent,
  KIND(SPV_PATTERN_GOUT) = spv_figure_gout,
  KIND(SPV_PATTERN_HEART) = spv_figure_heart,
  KIND(SPV_PATTERN_CROSS_COUPED) = spv_figure_cross_couped,
  KIND(SPV_PATTERN_CROSS_PATTY) = spv_figure_cross_patty,
  KIND(SPV_PATTERN_CROSS_POTENT) = spv_figure_cross_potent,
  KIND(SPV_PATTERN_CROSS_POMMY) = spv_figure_cross_pommy,
  KIND(SPV_PATTERN_CROSS_FITCHY) = spv_figure_cross_fitchy,
  KIND(SPV_PATTERN_WHEEL) = spv_figure_wheel,
  KIND(SPV_PATTERN_COG) = spv_figure_cog,
  KIND(SPV_PATTERN_SUN) = spv_figure_sun,
  KIND(SPV_PATTERN_GEM) = spv_figure_gem,
  KIND(SPV_PATTERN_HOURGLASS) = spv_figure_hourglass,
  KIND(SPV_PATTERN_TALLY) = spv_figure_tally,
};
#undef KIND

guint
spv_figure_own(const SpvPattern *pattern, guint index) {
  const SpvMeasureSpec *spec = &spv_pattern_info(pattern->kind)->measures[index];
  double value = spv_measure_resolve(spec, pattern->measures[index], 1, 1, spec->min);
  return (guint) (spec->type == SPV_MEASURE_COUNT ? CLAMP(value, spec->min, spec->max) : MAX(value, 0));
}

void
spv_figure_disc(SpvPathBuilder *builder, SpvPoint centre, double radius) {
  spv_path_builder_arc(builder, centre, radius, 0, 2 * G_PI);
  spv_path_builder_close(builder);
}

void
spv_figure_hole(SpvPathBuilder *builder, SpvPoint centre, double radius) {
  spv_path_builder_arc(builder, centre, radius, 0, -2 * G_PI);
  spv_path_builder_close(builder);
}

SpvPoint
spv_figure_polar(double radius, double angle) {
  return spv_point(radius * sin(angle), -radius * cos(angle));
}

static void
reach(SpvBox *box, SpvPoint at) {
  *box = spv_box_join(*box, (SpvBox){ at.x, at.y, at.x, at.y });
}

static SpvPoint
curve_at(SpvPoint from, const SpvPathStep *curve, double t) {
  SpvPoint a = spv_point_between(from, curve->c1, t), b = spv_point_between(curve->c1, curve->c2, t),
           c = spv_point_between(curve->c2, curve->to, t);
  return spv_point_between(spv_point_between(a, b, t), spv_point_between(b, c, t), t);
}

/* Where one coordinate of a curve turns back: the roots of its derivative, a t² + 2 b t + c. */
static void
reach_turns(SpvBox *box, SpvPoint from, const SpvPathStep *curve, double a, double b, double c) {
  double root = sqrt(MAX(b * b - a * c, 0)), q = -(b + copysign(root, b));
  double turns[] = { q / a, c / q };
  for (guint i = 0; i < G_N_ELEMENTS(turns); i++)
    if (turns[i] > 0 && turns[i] < 1)
      reach(box, curve_at(from, curve, turns[i]));
}

static void
reach_curve(SpvBox *box, SpvPoint from, const SpvPathStep *curve) {
  SpvPoint p = spv_point_subtract(curve->c1, from), q = spv_point_subtract(curve->c2, curve->c1),
           r = spv_point_subtract(curve->to, curve->c2);
  reach_turns(box, from, curve, p.x - 2 * q.x + r.x, q.x - p.x, p.x);
  reach_turns(box, from, curve, p.y - 2 * q.y + r.y, q.y - p.y, p.y);
}

static void
reach_arc(SpvBox *box, const SpvPathStep *arc) {
  double low = MIN(arc->start, arc->start + arc->sweep), high = MAX(arc->start, arc->start + arc->sweep);
  for (double quarter = ceil(low / (G_PI / 2)); quarter <= high / (G_PI / 2); quarter++) {
    double angle = quarter * G_PI / 2;
    reach(box, spv_point(arc->centre.x + arc->radius * cos(angle), arc->centre.y + arc->radius * sin(angle)));
  }
}

SpvBox
spv_figure_bounds(const SpvPath *path) {
  SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };
  SpvPoint here = { 0, 0 };
  gsize n = 0;
  const SpvPathStep *steps = spv_path_steps(path, &n);

  for (gsize i = 0; i < n; i++) {
    const SpvPathStep *step = &steps[i];
    /* A move alone draws nothing, and a close only goes where the run has been. */
    if (step->op != SPV_PATH_MOVE && step->op != SPV_PATH_CLOSE) {
      reach(&box, here);
      reach(&box, step->to);
    }
    if (step->op == SPV_PATH_CURVE)
      reach_curve(&box, here, step);
    if (step->op == SPV_PATH_ARC)
      reach_arc(&box, step);
    here = step->to;
  }
  return box.x0 <= box.x1 ? box : (SpvBox){ 0, 0, 0, 0 };
}

SpvPath *
spv_figure_normalise(const SpvPath *path) {
  SpvBox box = spv_figure_bounds(path);
  SpvPoint middle = spv_box_centre(box);
  double size = MAX(spv_box_width(box), spv_box_height(box));
  /* Also FALSE for what is not a number. */
  if (!(size > SMALLEST_PATH && size < LARGEST_PATH && spv_point_length(middle) < LARGEST_PATH))
    return spv_path_builder_build(spv_path_builder_new());

  SpvTransform unit = { 1 / size, 0, 0, 1 / size, -middle.x / size, -middle.y / size };
  return spv_path_transform(path, unit);
}

/* What the painter brought: any path, as SVG fills it. */
static SpvPath *
own_path(const char *text) {
  g_autoptr(SpvPath) read = text == NULL ? NULL : spv_svg_path_parse(text, NULL);
  if (read == NULL)
    return spv_path_builder_build(spv_path_builder_new());
  g_autoptr(SpvPath) wound = spv_path_wind(read, SPV_FILL_NONZERO);
  g_autoptr(SpvPath) path = spv_figure_normalise(wound);
  g_autoptr(SpvShape) shape = spv_shape_new_from_path(path);
  return spv_shape_is_empty(shape) ? spv_path_builder_build(spv_path_builder_new()) : spv_path_ref(path);
}

SpvPath *
spv_figure_path(const SpvPattern *pattern) {
  g_return_val_if_fail(pattern != NULL, NULL);
  g_return_val_if_fail(pattern->kind >= SPV_PATTERN_ROUNDEL && pattern->kind <= SPV_PATTERN_PATH_CHARGE,
                       NULL);

  if (pattern->kind == SPV_PATTERN_PATH_CHARGE)
    return own_path(spv_pattern_text(pattern, 0));
  SpvFigureDraw draw = draws[pattern->kind - SPV_PATTERN_ROUNDEL];
  if (draw == NULL)
    return spv_figure_drawn(pattern->kind);

  SpvPathBuilder *builder = spv_path_builder_new();
  draw(pattern, builder);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  return spv_figure_normalise(path);
}
