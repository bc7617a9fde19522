/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Turning the runs of a path so that they add or cut as a fill rule says. */
#include "geometry/wind.h"

#include "geometry/transform.h"

/* A run is held against the others as a polygon that strays from it by no more than this part of the path. */
#define COARSE 2000

/* One run of the path. */
typedef struct {
  SpvPath *path;
  SpvRing *ring; /* NULL: it fills nothing */
  SpvBox box;
  double area; /* signed, as it comes */
  int others;  /* how often the others wind round it */
  int owner;   /* a hole's: the run that it is cut from, or -1 */
  gboolean adds;
  gboolean dropped; /* the others fill all about it */
  gboolean slit;    /* a hole's: joined to its owner's run */
} Run;

static void
clear_run(gpointer data) {
  Run *run = data;
  spv_path_unref(run->path);
  spv_ring_free(run->ring);
}

/* The box of all points and handles. */
static SpvBox
reach_of(const SpvPath *path) {
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);
  SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };

  for (gsize i = 0; i < n; i++) {
    SpvBox step = { steps[i].to.x, steps[i].to.y, steps[i].to.x, steps[i].to.y };
    box = spv_box_join(box, step);
    if (steps[i].op == SPV_PATH_ARC)
      box = spv_box_join(box, spv_box_grow((SpvBox){ steps[i].centre.x, steps[i].centre.y, steps[i].centre.x,
                                                     steps[i].centre.y },
                                           steps[i].radius));
  }
  return box;
}

static void
add_run(GArray *runs, SpvPathBuilder *builder, double tolerance) {
  spv_path_builder_close(builder);
  Run run = { .path = spv_path_builder_build(builder), .owner = -1 };
  g_autoptr(GPtrArray) rings = spv_path_flatten(run.path, tolerance);

  if (rings->len > 0) {
    const SpvRing *ring = g_ptr_array_index(rings, 0);
    run.ring = spv_ring_new(ring->points, ring->n_points);
    run.box = spv_ring_bounds(ring);
    run.area = spv_ring_area(ring);
  }
  g_array_append_val(runs, run);
}

/* The runs of PATH that are more than a point, all closed. */
static GArray *
split(const SpvPath *path) {
  GArray *runs = g_array_new(FALSE, FALSE, sizeof(Run));
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);
  SpvBox reach = reach_of(path);
  double tolerance = MAX(hypot(spv_box_width(reach), spv_box_height(reach)) / COARSE, 1e-12);

  g_array_set_clear_func(runs, clear_run);
  for (gsize i = 0; i < n;) {
    SpvPathBuilder *builder = spv_path_builder_new();
    gsize first = i;
    do
      spv_path_builder_step(builder, &steps[i++]);
    while (i < n && steps[i].op != SPV_PATH_MOVE);
    if (i - first > 1)
      add_run(runs, builder, tolerance);
    else
      spv_path_builder_free(builder);
  }
  return runs;
}

/* A place on RING's edge: the middle of its longest side, away from corners, where runs like to touch. */
static SpvPoint
place_on(const SpvRing *ring) {
  SpvPoint place = ring->points[0];
  double longest = -1;

  for (gsize i = 0; i < ring->n_points; i++) {
    SpvPoint a = ring->points[i], b = ring->points[(i + 1) % ring->n_points];
    if (spv_point_distance(a, b) <= longest)
      continue;
    longest = spv_point_distance(a, b);
    place = spv_point_between(a, b, 0.5);
  }
  return place;
}

static gboolean
holds(SpvBox box, SpvPoint p) {
  return p.x >= box.x0 && p.x <= box.x1 && p.y >= box.y0 && p.y <= box.y1;
}

/* How often the runs but I wind round PLACE; how many do so goes to DEPTH. */
static int
winding_of_others(GArray *runs, guint i, SpvPoint place, int *depth) {
  int sum = 0;

  *depth = 0;
  for (guint k = 0; k < runs->len; k++) {
    const Run *other = &g_array_index(runs, Run, k);
    if (k == i || !other->ring || !holds(other->box, place))
      continue;
    int winding = spv_ring_winding(other->ring, place);
    sum += winding;
    *depth += winding != 0;
  }
  return sum;
}

/* Whether the others fill all about run I, inside and out, so that its edge is no edge of the whole. */
static gboolean
is_within_others(GArray *runs, guint i) {
  const SpvRing *ring = g_array_index(runs, Run, i).ring;
  int depth;

  for (gsize k = 0; k < ring->n_points; k++)
    if (winding_of_others(runs, i, ring->points[k], &depth) == 0)
      return FALSE;
  return TRUE;
}

/* Says of run I whether it adds, or is of no account. */
static void
judge(GArray *runs, guint i, SpvFillRule rule) {
  Run *run = &g_array_index(runs, Run, i);
  int depth, others = winding_of_others(runs, i, place_on(run->ring), &depth);

  run->adds = rule == SPV_FILL_EVEN_ODD ? depth % 2 == 0 : others + (run->area < 0 ? -1 : 1) != 0;
  run->dropped = rule == SPV_FILL_NONZERO && run->adds && others != 0 && is_within_others(runs, i);
}

/* The run that the hole I is cut from: the smallest round it that adds; -1 if there is none. */
static int
find_owner(GArray *runs, guint i) {
  const Run *hole = &g_array_index(runs, Run, i);
  SpvPoint place = place_on(hole->ring);
  double least = INFINITY;
  int owner = -1;

  for (guint k = 0; k < runs->len; k++) {
    const Run *other = &g_array_index(runs, Run, k);
    if (k == i || !other->ring || !other->adds || other->dropped || fabs(other->area) >= least ||
        !holds(other->box, place) || spv_ring_winding(other->ring, place) == 0)
      continue;
    least = fabs(other->area);
    owner = (int) k;
  }
  return owner;
}

/* Whether some other run adds in or over the hole I, which OWNER's does all round it. */
static gboolean
is_filled_again(GArray *runs, guint i) {
  const Run *hole = &g_array_index(runs, Run, i);
  SpvPoint place = place_on(hole->ring);

  for (guint k = 0; k < runs->len; k++) {
    const Run *other = &g_array_index(runs, Run, k);
    if (other->ring && other->adds && !other->dropped && (int) k != hole->owner &&
        spv_box_overlaps(other->box, hole->box) && spv_ring_winding(other->ring, place) == 0)
      return TRUE;
  }
  return FALSE;
}

/* RUN's path, clockwise where it adds and the other way where it cuts. A new reference. */
static SpvPath *
turned(const Run *run) {
  gboolean right = run->area == 0 || (run->area > 0) == run->adds;
  return right ? spv_path_ref(run->path) : spv_path_reverse(run->path);
}

/* Adds RUN, and the holes that are slit to it: from its start to theirs, round them, and back. */
static void
add_wound(SpvPathBuilder *builder, GArray *runs, guint index) {
  const Run *run = &g_array_index(runs, Run, index);
  g_autoptr(SpvPath) outer = turned(run);
  gsize n;
  const SpvPathStep *steps = spv_path_steps(outer, &n);
  SpvPoint start = steps[0].to;
  gboolean slit = FALSE;

  for (gsize i = 0; i + 1 < n; i++)
    spv_path_builder_step(builder, &steps[i]);
  for (guint k = 0; k < runs->len; k++) {
    const Run *hole = &g_array_index(runs, Run, k);
    if (!hole->slit || hole->owner != (int) index)
      continue;
    g_autoptr(SpvPath) inner = turned(hole);
    spv_path_builder_line(builder, start);
    spv_path_builder_join(builder, inner);
    slit = TRUE;
  }
  if (slit)
    spv_path_builder_line(builder, start);
  spv_path_builder_close(builder);
}

SpvPath *
spv_path_wind(const SpvPath *path, SpvFillRule rule) {
  g_return_val_if_fail(path != NULL, NULL);

  g_autoptr(GArray) runs = split(path);
  SpvPathBuilder *builder = spv_path_builder_new();

  for (guint i = 0; i < runs->len; i++)
    if (g_array_index(runs, Run, i).ring)
      judge(runs, i, rule);
  for (guint i = 0; i < runs->len; i++) {
    Run *run = &g_array_index(runs, Run, i);
    if (!run->ring || run->adds)
      continue;
    run->owner = find_owner(runs, i);
    run->slit = run->owner >= 0 && is_filled_again(runs, i);
  }
  for (guint i = 0; i < runs->len; i++)
    if (!g_array_index(runs, Run, i).slit && !g_array_index(runs, Run, i).dropped)
      add_wound(builder, runs, i);
  return spv_path_builder_build(builder);
}
