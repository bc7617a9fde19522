/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The exact partition, from the top down: each shape takes what it covers of what is still free, the rest
 * goes on to the next. Both parts are noded on one grid, so nothing is lost or counted twice between them. */
#include "compose/compose.h"

static void
region_free(SpvRegion *region) {
  spv_shape_unref(region->shape);
  g_free(region);
}

static void
shape_free(gpointer shape) {
  spv_shape_unref(shape);
}

static void
free_shape_element(gpointer element) {
  g_clear_pointer((SpvShape **) element, spv_shape_unref);
}

/* Whether SHAPE covers everything, as a field does: then no overlay is needed. It is a lone clockwise run
 * that fills its own box, and the box is larger than what is left. */
static gboolean
covers(const SpvLaidShape *shape, const SpvShape *free_area) {
  gsize n;
  const SpvPathStep *steps = spv_path_steps(shape->area, &n);
  SpvBox box = spv_shape_bounds(free_area), area = spv_path_bounds(shape->area);
  SpvPoint corners[4];

  if (n != 5 || area.x0 > box.x0 || area.y0 > box.y0 || area.x1 < box.x1 || area.y1 < box.y1)
    return FALSE;
  for (gsize i = 0; i < 4; i++) {
    if (steps[i].op != (i == 0 ? SPV_PATH_MOVE : SPV_PATH_LINE))
      return FALSE;
    corners[i] = steps[i].to;
  }
  SpvRing ring = { corners, 4 };
  double whole = spv_box_width(area) * spv_box_height(area);
  return steps[4].op == SPV_PATH_CLOSE && spv_ring_area(&ring) >= whole * (1 - 1e-12);
}

/* The part of AREA that SHAPE's clips leave. A new reference. */
static SpvShape *
within_clips(const SpvLaidShape *shape, const SpvShape *area) {
  SpvShape *within = spv_shape_ref(area);

  for (guint i = 0; shape->clips != NULL && i < shape->clips->len; i++) {
    g_autoptr(SpvShape) clip = spv_shape_new_from_path(g_ptr_array_index(shape->clips, i));
    SpvShape *cut = spv_shape_intersection(within, clip);
    spv_shape_unref(within);
    within = cut;
  }
  return within;
}

/* What SHAPE covers of AREA, which its clips have cut; what it leaves of that goes to REST. */
static SpvShape *
cover_part(const SpvLaidShape *shape, const SpvShape *area, SpvShape **rest) {
  if (covers(shape, area)) {
    *rest = spv_shape_new_empty();
    return spv_shape_ref(area);
  }
  if (shape->cells && shape->gaps) {
    *rest = spv_shape_clip_cells(area, shape->gaps);
    return spv_shape_clip_cells(area, shape->cells);
  }
  g_autoptr(SpvShape) laid = spv_shape_new_from_path(shape->area);
  *rest = spv_shape_difference(area, laid);
  return spv_shape_intersection(area, laid);
}

/* Whether PIECE is thinner than the snapping grid: what rounding left between two cuts along one line. */
static gboolean
is_sliver(const SpvPiece *piece) {
  double area = 0, length = 0;

  for (gsize i = 0; i < piece->n_rings; i++) {
    area += spv_ring_area(piece->rings[i]);
    length += spv_ring_length(piece->rings[i]);
  }
  return area <= length / 2 * SPV_SNAP_GRID;
}

/* SHAPE, which is taken over, without its slivers. */
static SpvShape *
without_slivers(SpvShape *shape) {
  g_autoptr(GPtrArray) kept = g_ptr_array_new_with_free_func(shape_free);
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);

  for (gsize i = 0; i < n; i++)
    if (!is_sliver(&pieces[i]))
      g_ptr_array_add(kept, spv_shape_piece(shape, i));
  if (kept->len == n)
    return shape;
  SpvShape *rest = spv_shape_union((const SpvShape *const *) kept->pdata, kept->len);
  spv_shape_unref(shape);
  return rest;
}

static SpvShape *
take(const SpvLaidShape *shape, SpvShape **free_area) {
  g_autoptr(SpvShape) within = within_clips(shape, *free_area);
  g_autoptr(SpvShape) rest = NULL;
  SpvShape *taken = without_slivers(cover_part(shape, within, &rest));
  SpvShape *left = without_slivers(shape->clips ? spv_shape_difference(*free_area, taken)
                                                : spv_shape_ref(rest));

  spv_shape_unref(*free_area);
  *free_area = left;
  return taken;
}

static void
add_region(SpvPartition *partition, int tincture, SpvShape *shape) {
  SpvRegion *region;

  if (spv_shape_is_empty(shape)) {
    spv_shape_unref(shape);
    return;
  }
  region = g_new0(SpvRegion, 1);
  region->tincture = tincture;
  region->shape = shape;
  g_ptr_array_add(partition->regions, region);
}

/* What shows of one tincture: the union of the visible parts of its shapes. */
static SpvShape *
gather(const SpvPartition *partition, guint tincture) {
  const GPtrArray *shapes = partition->composition->shapes;
  g_autoptr(GPtrArray) same = g_ptr_array_new();

  for (guint i = 0; i < shapes->len; i++) {
    const SpvLaidShape *laid = g_ptr_array_index(shapes, i);
    SpvShape *visible = g_ptr_array_index(partition->visible, i);
    if (laid->tincture == tincture && !spv_shape_is_empty(visible))
      g_ptr_array_add(same, visible);
  }
  if (same->len == 1)
    return spv_shape_ref(g_ptr_array_index(same, 0));
  return spv_shape_union((const SpvShape *const *) same->pdata, same->len);
}

SpvPartition *
spv_partition_new(const SpvComposition *composition, GCancellable *cancellable, GError **error) {
  g_autoptr(SpvPartition) partition = g_new0(SpvPartition, 1);
  guint n = composition->shapes->len;
  g_autoptr(GArray) visible = g_array_new(FALSE, TRUE, sizeof(SpvShape *));

  partition->composition = spv_composition_ref(composition);
  partition->visible = g_ptr_array_new_with_free_func(shape_free);
  partition->regions = g_ptr_array_new_with_free_func((GDestroyNotify) region_free);
  partition->bare = spv_shape_ref(spv_outline_shape(composition->outline));
  g_array_set_clear_func(visible, free_shape_element);
  g_array_set_size(visible, n);

  for (guint i = n; i-- > 0;) {
    if (g_cancellable_set_error_if_cancelled(cancellable, error))
      return NULL;
    g_array_index(visible, SpvShape *, i) = take(g_ptr_array_index(composition->shapes, i), &partition->bare);
  }
  for (guint i = 0; i < n; i++)
    g_ptr_array_add(partition->visible, g_steal_pointer(&g_array_index(visible, SpvShape *, i)));

  for (guint t = 0; t < composition->scheme->n_tinctures; t++) {
    if (g_cancellable_set_error_if_cancelled(cancellable, error))
      return NULL;
    add_region(partition, (int) t, gather(partition, t));
  }
  add_region(partition, -1, spv_shape_ref(partition->bare));
  return g_steal_pointer(&partition);
}

void
spv_partition_free(SpvPartition *partition) {
  if (!partition)
    return;
  g_clear_pointer(&partition->visible, g_ptr_array_unref);
  g_clear_pointer(&partition->regions, g_ptr_array_unref);
  spv_shape_unref(partition->bare);
  spv_composition_unref(partition->composition);
  g_free(partition);
}
