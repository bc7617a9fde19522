/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The value itself: pieces, their measures, and passage to a path. */
#include "geometry/shape-private.h"

struct _SpvShape {
  gatomicrefcount refs;
  SpvPiece *pieces;
  gsize n_pieces;
  double area;
  SpvBox bounds;
};

static void
piece_clear(SpvPiece *piece) {
  for (gsize i = 0; i < piece->n_rings; i++)
    spv_ring_free(piece->rings[i]);
  g_free(piece->rings);
}

SpvShape *
spv_shape_new_take(GArray *pieces) {
  SpvShape *shape = g_new0(SpvShape, 1);
  g_atomic_ref_count_init(&shape->refs);
  shape->n_pieces = pieces->len;
  shape->pieces = (SpvPiece *) (void *) g_array_free(pieces, FALSE);
  for (gsize i = 0; i < shape->n_pieces; i++) {
    const SpvPiece *piece = &shape->pieces[i];
    SpvBox box = spv_ring_bounds(piece->rings[0]);
    shape->bounds = i == 0 ? box : spv_box_join(shape->bounds, box);
    for (gsize j = 0; j < piece->n_rings; j++)
      shape->area += spv_ring_area(piece->rings[j]);
  }
  return shape;
}

SpvShape *
spv_shape_new_empty(void) {
  return spv_shape_new_take(g_array_new(FALSE, FALSE, sizeof(SpvPiece)));
}

SpvShape *
spv_shape_ref(const SpvShape *shape) {
  g_return_val_if_fail(shape != NULL, NULL);

  SpvShape *counted = (SpvShape *) shape;
  g_atomic_ref_count_inc(&counted->refs);
  return counted;
}

void
spv_shape_unref(SpvShape *shape) {
  if (shape == NULL || !g_atomic_ref_count_dec(&shape->refs))
    return;
  for (gsize i = 0; i < shape->n_pieces; i++)
    piece_clear(&shape->pieces[i]);
  g_free(shape->pieces);
  g_free(shape);
}

gboolean
spv_shape_is_empty(const SpvShape *shape) {
  g_return_val_if_fail(shape != NULL, TRUE);

  return shape->n_pieces == 0;
}

double
spv_shape_area(const SpvShape *shape) {
  g_return_val_if_fail(shape != NULL, 0);

  return shape->area;
}

SpvBox
spv_shape_bounds(const SpvShape *shape) {
  g_return_val_if_fail(shape != NULL, ((SpvBox){ 0 }));

  return shape->bounds;
}

gboolean
spv_shape_contains(const SpvShape *shape, SpvPoint point) {
  g_return_val_if_fail(shape != NULL, FALSE);
  g_return_val_if_fail(isfinite(point.x) && isfinite(point.y), FALSE);

  int winding = 0;
  for (gsize i = 0; i < shape->n_pieces; i++)
    for (gsize j = 0; j < shape->pieces[i].n_rings; j++)
      winding += spv_ring_winding(shape->pieces[i].rings[j], point);
  return winding != 0;
}

const SpvPiece *
spv_shape_pieces(const SpvShape *shape, gsize *n) {
  g_return_val_if_fail(shape != NULL, NULL);
  g_return_val_if_fail(n != NULL, NULL);

  *n = shape->n_pieces;
  return shape->pieces;
}

SpvShape *
spv_shape_piece(const SpvShape *shape, gsize index) {
  g_return_val_if_fail(shape != NULL, NULL);
  g_return_val_if_fail(index < shape->n_pieces, NULL);

  const SpvPiece *from = &shape->pieces[index];
  SpvPiece piece = { g_new(SpvRing *, from->n_rings), from->n_rings };
  for (gsize i = 0; i < from->n_rings; i++)
    piece.rings[i] = spv_ring_new(from->rings[i]->points, from->rings[i]->n_points);
  GArray *pieces = g_array_new(FALSE, FALSE, sizeof(SpvPiece));
  g_array_append_val(pieces, piece);
  return spv_shape_new_take(pieces);
}

SpvPath *
spv_shape_to_path(const SpvShape *shape) {
  g_return_val_if_fail(shape != NULL, NULL);

  SpvPathBuilder *builder = spv_path_builder_new();
  for (gsize i = 0; i < shape->n_pieces; i++)
    for (gsize j = 0; j < shape->pieces[i].n_rings; j++) {
      const SpvRing *ring = shape->pieces[i].rings[j];
      spv_path_builder_polygon(builder, ring->points, ring->n_points);
    }
  return spv_path_builder_build(builder);
}
