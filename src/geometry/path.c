/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Building, flattening and testing analytic paths. */
#include "geometry/path.h"

/* Neighbours closer than this are one point: the grid of SPV_SNAP_GRID, below which no overlay sees. */
#define SAME_POINT 1e-10

/* The most chords that one curve or arc becomes, so that no tolerance can exhaust memory. */
#define MAX_CHORDS 65536

struct _SpvPath {
  gatomicrefcount refs;
  SpvPathStep *steps;
  gsize n_steps;
  GPtrArray *rings; /* flattened at SPV_CHORD_ERROR; made when first asked for, then never changed */
};

struct _SpvPathBuilder {
  GArray *steps;
  gboolean open; /* whether a run is open, from START to HERE */
  SpvPoint start, here;
};

static gboolean
is_finite(SpvPoint p) {
  return isfinite(p.x) && isfinite(p.y);
}

static gboolean
is_same(SpvPoint a, SpvPoint b) {
  return spv_point_distance(a, b) <= SAME_POINT;
}

SpvPathBuilder *
spv_path_builder_new(void) {
  SpvPathBuilder *builder = g_new0(SpvPathBuilder, 1);
  builder->steps = g_array_new(FALSE, FALSE, sizeof(SpvPathStep));
  return builder;
}

void
spv_path_builder_free(SpvPathBuilder *builder) {
  if (builder == NULL)
    return;
  g_array_unref(builder->steps);
  g_free(builder);
}

static void
add_step(SpvPathBuilder *builder, SpvPathStep step) {
  g_array_append_val(builder->steps, step);
  builder->here = step.to;
}

void
spv_path_builder_move(SpvPathBuilder *builder, SpvPoint to) {
  g_return_if_fail(builder != NULL);
  g_return_if_fail(is_finite(to));

  add_step(builder, (SpvPathStep){ .op = SPV_PATH_MOVE, .to = to });
  builder->start = to;
  builder->open = TRUE;
}

void
spv_path_builder_line(SpvPathBuilder *builder, SpvPoint to) {
  g_return_if_fail(builder != NULL);
  g_return_if_fail(is_finite(to));

  if (!builder->open)
    spv_path_builder_move(builder, to);
  else
    add_step(builder, (SpvPathStep){ .op = SPV_PATH_LINE, .to = to });
}

void
spv_path_builder_curve(SpvPathBuilder *builder, SpvPoint c1, SpvPoint c2, SpvPoint to) {
  g_return_if_fail(builder != NULL);
  g_return_if_fail(is_finite(c1) && is_finite(c2) && is_finite(to));

  if (!builder->open)
    spv_path_builder_move(builder, c1);
  add_step(builder, (SpvPathStep){ .op = SPV_PATH_CURVE, .c1 = c1, .c2 = c2, .to = to });
}

static SpvPoint
arc_point(SpvPoint centre, double radius, double angle) {
  return spv_point(centre.x + radius * cos(angle), centre.y + radius * sin(angle));
}

void
spv_path_builder_arc(SpvPathBuilder *builder, SpvPoint centre, double radius, double start, double sweep) {
  g_return_if_fail(builder != NULL);
  g_return_if_fail(is_finite(centre) && isfinite(radius) && radius >= 0);
  g_return_if_fail(isfinite(start) && isfinite(sweep));

  SpvPoint from = arc_point(centre, radius, start);
  if (!builder->open)
    spv_path_builder_move(builder, from);
  else if (!is_same(builder->here, from))
    spv_path_builder_line(builder, from);
  /* A whole turn ends exactly where it began. */
  gboolean whole = fabs(fabs(sweep) - 2 * G_PI) < 1e-12;
  add_step(builder, (SpvPathStep){ .op = SPV_PATH_ARC,
                                   .to = whole ? builder->here : arc_point(centre, radius, start + sweep),
                                   .centre = centre,
                                   .radius = radius,
                                   .start = start,
                                   .sweep = sweep });
}

void
spv_path_builder_close(SpvPathBuilder *builder) {
  g_return_if_fail(builder != NULL);

  if (!builder->open)
    return;
  add_step(builder, (SpvPathStep){ .op = SPV_PATH_CLOSE, .to = builder->start });
  builder->open = FALSE;
}

void
spv_path_builder_step(SpvPathBuilder *builder, const SpvPathStep *step) {
  switch (step->op) {
  case SPV_PATH_MOVE:
    spv_path_builder_move(builder, step->to);
    break;
  case SPV_PATH_LINE:
    spv_path_builder_line(builder, step->to);
    break;
  case SPV_PATH_CURVE:
    spv_path_builder_curve(builder, step->c1, step->c2, step->to);
    break;
  case SPV_PATH_ARC:
    spv_path_builder_arc(builder, step->centre, step->radius, step->start, step->sweep);
    break;
  case SPV_PATH_CLOSE:
    spv_path_builder_close(builder);
    break;
  }
}

void
spv_path_builder_path(SpvPathBuilder *builder, const SpvPath *path) {
  g_return_if_fail(builder != NULL);
  g_return_if_fail(path != NULL);

  for (gsize i = 0; i < path->n_steps; i++) {
    const SpvPathStep *step = &path->steps[i];
    add_step(builder, *step);
    if (step->op == SPV_PATH_MOVE)
      builder->start = step->to;
    builder->open = step->op != SPV_PATH_CLOSE;
  }
}

void
spv_path_builder_polygon(SpvPathBuilder *builder, const SpvPoint *points, gsize n) {
  g_return_if_fail(builder != NULL);
  g_return_if_fail(points != NULL || n == 0);

  if (n == 0)
    return;
  spv_path_builder_move(builder, points[0]);
  for (gsize i = 1; i < n; i++)
    spv_path_builder_line(builder, points[i]);
  spv_path_builder_close(builder);
}

SpvPath *
spv_path_builder_build(SpvPathBuilder *builder) {
  g_return_val_if_fail(builder != NULL, NULL);

  SpvPath *path = g_new0(SpvPath, 1);
  g_atomic_ref_count_init(&path->refs);
  path->n_steps = builder->steps->len;
  path->steps = (SpvPathStep *) g_array_free(g_steal_pointer(&builder->steps), FALSE);
  g_free(builder);
  return path;
}

SpvPath *
spv_path_ref(const SpvPath *path) {
  g_return_val_if_fail(path != NULL, NULL);

  SpvPath *counted = (SpvPath *) path;
  g_atomic_ref_count_inc(&counted->refs);
  return counted;
}

void
spv_path_unref(SpvPath *path) {
  if (path == NULL || !g_atomic_ref_count_dec(&path->refs))
    return;
  g_clear_pointer(&path->rings, g_ptr_array_unref);
  g_free(path->steps);
  g_free(path);
}

SpvPath *
spv_path_new_polygon(const SpvPoint *points, gsize n) {
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_polygon(builder, points, n);
  return spv_path_builder_build(builder);
}

SpvPath *
spv_path_new_box(SpvBox box) {
  double x0 = MIN(box.x0, box.x1), x1 = MAX(box.x0, box.x1);
  double y0 = MIN(box.y0, box.y1), y1 = MAX(box.y0, box.y1);
  const SpvPoint corners[] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };
  return spv_path_new_polygon(corners, G_N_ELEMENTS(corners));
}

SpvPath *
spv_path_new_circle(SpvPoint centre, double radius) {
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_arc(builder, centre, radius, 0, 2 * G_PI);
  spv_path_builder_close(builder);
  return spv_path_builder_build(builder);
}

const SpvPathStep *
spv_path_steps(const SpvPath *path, gsize *n) {
  g_return_val_if_fail(path != NULL, NULL);
  g_return_val_if_fail(n != NULL, NULL);

  *n = path->n_steps;
  return path->steps;
}

gboolean
spv_path_is_empty(const SpvPath *path) {
  g_return_val_if_fail(path != NULL, TRUE);

  return path->n_steps == 0;
}

static void
flatten_arc(GArray *points, const SpvPathStep *arc, double tolerance) {
  /* A chord over the angle a strays from its arc by r (1 - cos a/2): the sagitta (Machinery's Handbook, 31st
   * edition, p. 83). At least four chords a turn, so that even a speck of a circle keeps an area. */
  double widest = tolerance < arc->radius ? 2 * acos(1 - tolerance / arc->radius) : G_PI_2;
  double chords = ceil(fabs(arc->sweep) / MIN(widest, G_PI_2));
  gsize n = (gsize) CLAMP(chords, 1, MAX_CHORDS);
  for (gsize i = 1; i < n; i++) {
    SpvPoint p = arc_point(arc->centre, arc->radius, arc->start + arc->sweep * ((double) i / (double) n));
    g_array_append_val(points, p);
  }
  g_array_append_val(points, arc->to);
}

static void
flatten_curve(GArray *points, SpvPoint from, const SpvPathStep *curve, double tolerance) {
  /* N equal steps of the parameter keep a cubic within TOLERANCE of its chords when
   * n² >= 6/8 · max |second difference| / tolerance: Wang's formula (G. Wang, 1984; from memory). */
  SpvPoint to = curve->to, c1 = curve->c1, c2 = curve->c2;
  double bend1 = hypot(from.x - 2 * c1.x + c2.x, from.y - 2 * c1.y + c2.y);
  double bend2 = hypot(c1.x - 2 * c2.x + to.x, c1.y - 2 * c2.y + to.y);
  double chords = ceil(sqrt(0.75 * MAX(bend1, bend2) / tolerance));
  gsize n = (gsize) CLAMP(chords, 1, MAX_CHORDS);
  for (gsize i = 1; i < n; i++) {
    double t = (double) i / (double) n, u = 1 - t;
    double b0 = u * u * u, b1 = 3 * u * u * t, b2 = 3 * u * t * t, b3 = t * t * t;
    SpvPoint p = { b0 * from.x + b1 * c1.x + b2 * c2.x + b3 * to.x,
                   b0 * from.y + b1 * c1.y + b2 * c2.y + b3 * to.y };
    g_array_append_val(points, p);
  }
  g_array_append_val(points, to);
}

/* Moves the run in POINTS to RINGS, without repeated points, if it is a ring at all. */
static void
finish_run(GPtrArray *rings, GArray *points) {
  SpvPoint *p = (SpvPoint *) (void *) points->data;
  gsize n = 0;
  for (gsize i = 0; i < points->len; i++)
    if (n == 0 || !is_same(p[i], p[n - 1]))
      p[n++] = p[i];
  while (n > 1 && is_same(p[n - 1], p[0]))
    n--;
  if (n >= 3)
    g_ptr_array_add(rings, spv_ring_new(p, n));
  g_array_set_size(points, 0);
}

static void
free_ring(gpointer ring) {
  spv_ring_free(ring);
}

GPtrArray *
spv_path_flatten(const SpvPath *path, double tolerance) {
  g_return_val_if_fail(path != NULL, NULL);
  g_return_val_if_fail(isfinite(tolerance) && tolerance > 0, NULL);

  GPtrArray *rings = g_ptr_array_new_with_free_func(free_ring);
  g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  SpvPoint here = { 0, 0 };
  for (gsize i = 0; i < path->n_steps; i++) {
    const SpvPathStep *step = &path->steps[i];
    switch (step->op) {
    case SPV_PATH_MOVE:
      finish_run(rings, points);
      g_array_append_val(points, step->to);
      break;
    case SPV_PATH_LINE:
      g_array_append_val(points, step->to);
      break;
    case SPV_PATH_CURVE:
      flatten_curve(points, here, step, tolerance);
      break;
    case SPV_PATH_ARC:
      flatten_arc(points, step, tolerance);
      break;
    case SPV_PATH_CLOSE:
      finish_run(rings, points);
      break;
    }
    here = step->to;
  }
  finish_run(rings, points);
  return rings;
}

/* The rings at SPV_CHORD_ERROR, owned by PATH. Two threads may both make them; the second one's are thrown
 * away. */
static GPtrArray *
kept_rings(const SpvPath *path) {
  SpvPath *cache = (SpvPath *) path;
  GPtrArray *rings = g_atomic_pointer_get(&cache->rings);
  if (rings != NULL)
    return rings;
  rings = spv_path_flatten(path, SPV_CHORD_ERROR);
  if (g_atomic_pointer_compare_and_exchange(&cache->rings, NULL, rings))
    return rings;
  g_ptr_array_unref(rings);
  return g_atomic_pointer_get(&cache->rings);
}

SpvBox
spv_path_bounds(const SpvPath *path) {
  g_return_val_if_fail(path != NULL, ((SpvBox){ 0 }));

  GPtrArray *rings = kept_rings(path);
  if (rings->len == 0)
    return (SpvBox){ 0 };
  SpvBox box = spv_ring_bounds(g_ptr_array_index(rings, 0));
  for (guint i = 1; i < rings->len; i++)
    box = spv_box_join(box, spv_ring_bounds(g_ptr_array_index(rings, i)));
  return box;
}

gboolean
spv_path_contains(const SpvPath *path, SpvPoint point) {
  g_return_val_if_fail(path != NULL, FALSE);
  g_return_val_if_fail(is_finite(point), FALSE);

  GPtrArray *rings = kept_rings(path);
  int winding = 0;
  for (guint i = 0; i < rings->len; i++)
    winding += spv_ring_winding(g_ptr_array_index(rings, i), point);
  return winding != 0;
}
