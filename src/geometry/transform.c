/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Moving, turning, mirroring and stretching paths. */
#include "geometry/transform.h"

/* Two columns of a matrix are as long, and square on each other, within this part. */
#define EVEN 1e-9

SpvTransform
spv_transform_compose(SpvTransform outer, SpvTransform inner) {
  SpvPoint shift = spv_transform_point(outer, spv_point(inner.e, inner.f));

  return (SpvTransform){ outer.a * inner.a + outer.c * inner.b,
                         outer.b * inner.a + outer.d * inner.b,
                         outer.a * inner.c + outer.c * inner.d,
                         outer.b * inner.c + outer.d * inner.d,
                         shift.x,
                         shift.y };
}

SpvTransform
spv_transform_place(double factor, double angle, SpvPoint at) {
  double c = factor * cos(angle), s = factor * sin(angle);

  return (SpvTransform){ c, s, -s, c, at.x, at.y };
}

SpvTransform
spv_transform_turn(double angle, SpvPoint at) {
  return spv_transform_place(1, angle, at);
}

static double
determinant(SpvTransform t) {
  return t.a * t.d - t.b * t.c;
}

gboolean
spv_transform_invert(SpvTransform t, SpvTransform *inverse) {
  double det = determinant(t);

  if (!isfinite(1 / det))
    return FALSE;
  *inverse = (SpvTransform){ t.d / det, -t.b / det, -t.c / det, t.a / det, 0, 0 };
  SpvPoint shift = spv_transform_point(*inverse, spv_point(t.e, t.f));
  inverse->e = -shift.x;
  inverse->f = -shift.y;
  return TRUE;
}

/* Whether T keeps circles round. */
static gboolean
is_even(SpvTransform t) {
  SpvPoint x = { t.a, t.b }, y = { t.c, t.d };
  double size = spv_point_dot(x, x) + spv_point_dot(y, y);

  return fabs(spv_point_dot(x, y)) <= EVEN * size &&
         fabs(spv_point_dot(x, x) - spv_point_dot(y, y)) <= EVEN * size;
}

/* An arc as cubic curves of at most an eighth of a turn, whose handles are 4/3 tan(sweep/4) of the radius
 * long (from memory; it strays from the arc by less than 1e-5 of the radius). */
static void
add_arc_as_curves(SpvPathBuilder *builder, const SpvPathStep *arc, SpvTransform t) {
  guint n = (guint) MAX(1, ceil(fabs(arc->sweep) / (G_PI / 4) - 1e-9));
  double part = arc->sweep / n, handle = 4.0 / 3 * tan(part / 4) * arc->radius;

  for (guint i = 0; i < n; i++) {
    double from = arc->start + part * i, to = from + part;
    SpvPoint a = spv_point_add(arc->centre, spv_point(arc->radius * cos(from), arc->radius * sin(from)));
    SpvPoint b = i + 1 == n
                     ? arc->to
                     : spv_point_add(arc->centre, spv_point(arc->radius * cos(to), arc->radius * sin(to)));
    SpvPoint c1 = { a.x - handle * sin(from), a.y + handle * cos(from) };
    SpvPoint c2 = { b.x + handle * sin(to), b.y - handle * cos(to) };
    spv_path_builder_curve(builder, spv_transform_point(t, c1), spv_transform_point(t, c2),
                           spv_transform_point(t, b));
  }
}

static void
add_arc(SpvPathBuilder *builder, const SpvPathStep *arc, SpvTransform t) {
  if (!is_even(t)) {
    add_arc_as_curves(builder, arc, t);
    return;
  }
  SpvPoint start = spv_transform_point(
      t, spv_point(arc->centre.x + cos(arc->start), arc->centre.y + sin(arc->start)));
  SpvPoint centre = spv_transform_point(t, arc->centre);
  double sense = determinant(t) < 0 ? -1 : 1;

  spv_path_builder_arc(builder, centre, arc->radius * hypot(t.a, t.b),
                       atan2(start.y - centre.y, start.x - centre.x), sense * arc->sweep);
}

static SpvPath *
transform_steps(const SpvPath *path, SpvTransform t) {
  SpvPathBuilder *builder = spv_path_builder_new();
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);

  for (gsize i = 0; i < n; i++)
    switch (steps[i].op) {
    case SPV_PATH_MOVE:
      spv_path_builder_move(builder, spv_transform_point(t, steps[i].to));
      break;
    case SPV_PATH_LINE:
      spv_path_builder_line(builder, spv_transform_point(t, steps[i].to));
      break;
    case SPV_PATH_CURVE:
      spv_path_builder_curve(builder, spv_transform_point(t, steps[i].c1),
                             spv_transform_point(t, steps[i].c2), spv_transform_point(t, steps[i].to));
      break;
    case SPV_PATH_ARC:
      add_arc(builder, &steps[i], t);
      break;
    case SPV_PATH_CLOSE:
      spv_path_builder_close(builder);
      break;
    }
  return spv_path_builder_build(builder);
}

SpvPath *
spv_path_transform(const SpvPath *path, SpvTransform t) {
  g_autoptr(SpvPath) moved = transform_steps(path, t);

  return determinant(t) < 0 ? spv_path_reverse(moved) : spv_path_ref(moved);
}

/* Adds the steps FIRST to LAST of one run, its closing step not among them, backwards. */
static void
add_reversed(SpvPathBuilder *builder, const SpvPathStep *steps, gsize first, gsize last) {
  spv_path_builder_move(builder, steps[last].to);
  for (gsize i = last; i > first; i--) {
    SpvPoint to = steps[i - 1].to;
    switch (steps[i].op) {
    case SPV_PATH_LINE:
      spv_path_builder_line(builder, to);
      break;
    case SPV_PATH_CURVE:
      spv_path_builder_curve(builder, steps[i].c2, steps[i].c1, to);
      break;
    case SPV_PATH_ARC:
      spv_path_builder_arc(builder, steps[i].centre, steps[i].radius, steps[i].start + steps[i].sweep,
                           -steps[i].sweep);
      break;
    case SPV_PATH_MOVE:
    case SPV_PATH_CLOSE:
      g_assert_not_reached();
    }
  }
}

SpvPath *
spv_path_reverse(const SpvPath *path) {
  SpvPathBuilder *builder = spv_path_builder_new();
  gsize n, i = 0;
  const SpvPathStep *steps = spv_path_steps(path, &n);

  while (i < n) {
    gsize first = i++;
    while (i < n && steps[i].op != SPV_PATH_MOVE && steps[i].op != SPV_PATH_CLOSE)
      i++;
    add_reversed(builder, steps, first, i - 1);
    if (i < n && steps[i].op == SPV_PATH_CLOSE) {
      spv_path_builder_close(builder);
      i++;
    }
  }
  return spv_path_builder_build(builder);
}

void
spv_path_builder_join(SpvPathBuilder *builder, const SpvPath *path) {
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);

  for (gsize i = 0; i < n; i++)
    switch (steps[i].op) {
    case SPV_PATH_MOVE:
    case SPV_PATH_LINE:
    case SPV_PATH_CLOSE:
      spv_path_builder_line(builder, steps[i].to);
      break;
    case SPV_PATH_CURVE:
      spv_path_builder_curve(builder, steps[i].c1, steps[i].c2, steps[i].to);
      break;
    case SPV_PATH_ARC:
      spv_path_builder_arc(builder, steps[i].centre, steps[i].radius, steps[i].start, steps[i].sweep);
      break;
    }
}
