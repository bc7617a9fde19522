/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Arcs of SVG: from end points to centre and angles. */
#include "geometry/svg-private.h"

/* An arc as SVG's appendix F.6.4 has it, the middle of its ellipse and two angles. */
typedef struct {
  double rx, ry;
  SpvPoint centre;
  double start, sweep;
} Ellipse;

/* The angle from U to V, radians, signed (F.6.5.4). */
static double
angle_between(SpvPoint u, SpvPoint v) {
  return atan2(spv_point_cross(u, v), spv_point_dot(u, v));
}

/* F.6.5 and, for radii that don't reach, F.6.6 of SVG 1.1. */
static Ellipse
from_end_points(SpvPoint from, double rx, double ry, double turn, gboolean large, gboolean sweep,
                SpvPoint to) {
  double c = cos(turn), s = sin(turn);
  SpvPoint half = { (from.x - to.x) / 2, (from.y - to.y) / 2 };
  SpvPoint along = { c * half.x + s * half.y, -s * half.x + c * half.y }; /* (x1', y1') */
  double x = along.x / rx, y = along.y / ry, reach = x * x + y * y;       /* Λ */
  double k = reach >= 1 ? 0 : sqrt((1 - reach) / reach);

  if (reach > 1) {
    rx *= sqrt(reach);
    ry *= sqrt(reach);
  }
  if (large == sweep)
    k = -k;
  SpvPoint centre = { k * rx * along.y / ry, -k * ry * along.x / rx }; /* (cx', cy') */
  SpvPoint u = { (along.x - centre.x) / rx, (along.y - centre.y) / ry };
  SpvPoint v = { (-along.x - centre.x) / rx, (-along.y - centre.y) / ry };
  double turned = angle_between(u, v);

  if (!sweep && turned > 0)
    turned -= 2 * G_PI;
  else if (sweep && turned < 0)
    turned += 2 * G_PI;
  return (Ellipse){ rx, ry,
                    spv_point(c * centre.x - s * centre.y + (from.x + to.x) / 2,
                              s * centre.x + c * centre.y + (from.y + to.y) / 2),
                    atan2(u.y, u.x), turned };
}

/* Adds ELLIPSE's arc: one of a unit circle, stretched, turned and shifted. */
static guint
add_stretched(SpvPathBuilder *builder, const Ellipse *ellipse, double turn, SpvPoint to) {
  double c = cos(turn), s = sin(turn);
  SpvTransform t = { ellipse->rx * c, ellipse->rx * s,   -ellipse->ry * s,
                     ellipse->ry * c, ellipse->centre.x, ellipse->centre.y };
  SpvPathBuilder *unit = spv_path_builder_new();
  gsize n;

  spv_path_builder_arc(unit, spv_point(0, 0), 1, ellipse->start, ellipse->sweep);
  g_autoptr(SpvPath) round = spv_path_builder_build(unit);
  g_autoptr(SpvPath) path = spv_path_transform(round, t);
  const SpvPathStep *steps = spv_path_steps(path, &n);

  for (gsize i = 0; i < n; i++)
    switch (steps[i].op) {
    case SPV_PATH_CURVE:
      spv_path_builder_curve(builder, steps[i].c1, steps[i].c2, i + 1 == n ? to : steps[i].to);
      break;
    case SPV_PATH_ARC:
      spv_path_builder_arc(builder, steps[i].centre, steps[i].radius, steps[i].start, steps[i].sweep);
      break;
    case SPV_PATH_MOVE:
    case SPV_PATH_LINE:
    case SPV_PATH_CLOSE:
      break;
    }
  return (guint) n - 1;
}

guint
spv_svg_add_arc(SpvPathBuilder *builder, SpvPoint from, double rx, double ry, double turn, gboolean large,
                gboolean sweep, SpvPoint to) {
  if (from.x == to.x && from.y == to.y)
    return 0;
  Ellipse ellipse = { 0 };
  if (rx > 0 && ry > 0)
    ellipse = from_end_points(from, rx, ry, turn, large, sweep, to);
  /* A radius so small, or so large, that there is no number for the middle is a line, too. */
  if (!(ellipse.rx > 0 && ellipse.ry > 0 && isfinite(ellipse.rx) && isfinite(ellipse.ry) &&
        isfinite(ellipse.centre.x) && isfinite(ellipse.centre.y) && isfinite(ellipse.start))) {
    spv_path_builder_line(builder, to);
    return 1;
  }
  return add_stretched(builder, &ellipse, turn, to);
}
