/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where several shapes of one tincture meet: only there one can widen what is narrow in another. Most cells
 * of a check meet nothing, and thousands of them would cost seconds of overlay. */
#include "check/check-private.h"

/* A piece that is the same in two shapes starts at the same point of the snapping grid. */
static guint
hash_point(gconstpointer key) {
  const SpvPoint *point = key;

  return g_double_hash(&point->x) * 31 + g_double_hash(&point->y);
}

static gboolean
same_point(gconstpointer a, gconstpointer b) {
  const SpvPoint *p = a, *q = b;

  return p->x == q->x && p->y == q->y;
}

/* The pieces of SHAPE by where they start; borrowed from it. */
static void
add_starts(GHashTable *starts, const SpvShape *shape) {
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);

  for (gsize i = 0; i < n; i++)
    g_hash_table_insert(starts, &pieces[i].rings[0]->points[0], (gpointer) &pieces[i]);
}

static gboolean
is_among(const SpvPiece *piece, GHashTable *starts) {
  const SpvPiece *other = g_hash_table_lookup(starts, &piece->rings[0]->points[0]);

  return other != NULL && other->n_rings == piece->n_rings &&
         fabs(spv_ring_area(other->rings[0]) - spv_ring_area(piece->rings[0])) < SPV_CHECK_SAME;
}

static void
free_shape(gpointer shape) {
  spv_shape_unref(shape);
}

/* The pieces of SHAPE that aren't among STARTS. */
static SpvShape *
others_of(const SpvShape *shape, GHashTable *starts) {
  g_autoptr(GPtrArray) others = g_ptr_array_new_with_free_func(free_shape);
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(shape, &n);

  for (gsize i = 0; i < n; i++)
    if (!is_among(&pieces[i], starts))
      g_ptr_array_add(others, spv_shape_piece(shape, i));
  return spv_shape_union((const SpvShape *const *) others->pdata, others->len);
}

static const SpvShape *
region_of(const SpvPartition *partition, guint tincture) {
  for (guint i = 0; i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);

    if (region->tincture == (int) tincture)
      return region->shape;
  }
  return NULL;
}

SpvShape *
spv_joint_region(const SpvPartition *partition, guint tincture) {
  const GPtrArray *shapes = partition->composition->shapes;
  const SpvShape *region = region_of(partition, tincture);
  g_autoptr(GHashTable) starts = g_hash_table_new(hash_point, same_point);
  guint parts = 0;

  for (guint i = 0; i < shapes->len; i++) {
    const SpvShape *visible = g_ptr_array_index(partition->visible, i);

    if (((const SpvLaidShape *) g_ptr_array_index(shapes, i))->tincture != tincture ||
        spv_shape_is_empty(visible))
      continue;
    add_starts(starts, visible);
    parts++;
  }
  return parts > 1 && region != NULL ? others_of(region, starts) : spv_shape_new_empty();
}

SpvShape *
spv_joint_part(const SpvPartition *partition, guint index) {
  const SpvLaidShape *laid = g_ptr_array_index(partition->composition->shapes, index);
  const SpvShape *region = region_of(partition, laid->tincture);
  g_autoptr(GHashTable) starts = g_hash_table_new(hash_point, same_point);

  if (region != NULL)
    add_starts(starts, region);
  return others_of(g_ptr_array_index(partition->visible, index), starts);
}
