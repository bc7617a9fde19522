/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Furs: the shape of a spot, how spots stand in rows, and how fine they may be. */
#include "heraldry/fur.h"

#include "geometry/transform.h"
#include "geometry/width.h"

/* More spots than this are beyond any hand. */
#define MAX_SPOTS 40000

/* The pitch at which a fur is measured, mm: widths are exact within WIDTH_ERROR. */
#define MEASURED_PITCH 40.0
#define WIDTH_ERROR 0.002

/* How a fur's rows lie; lengths in parts of the pitch. */
typedef struct {
  const char *key;
  double row;          /* from row to row */
  gboolean half_drop;  /* every second row is shifted by half a pitch */
  gboolean turns_over; /* every second row stands on its head */
  void (*draw)(SpvPathBuilder *builder);
} FurInfo;

/* An ermine spot, in eighths of the pitch: three dots, as far from one another as they are wide, over a tail
 * that comes to three points. The tail keeps that distance from the dots, and the first dot from the top. */
static void
draw_ermine(SpvPathBuilder *builder) {
  const double u = 1.0 / 8, side = sqrt(3);
  const SpvPoint dots[] = { { 0, 1.5 }, { 1, 1.5 + side }, { -1, 1.5 + side } };

  for (guint i = 0; i < G_N_ELEMENTS(dots); i++) {
    spv_path_builder_arc(builder, spv_point_scale(dots[i], u), 0.5 * u, 0, 2 * G_PI);
    spv_path_builder_close(builder);
  }
  spv_path_builder_move(builder, spv_point(0, 4.4 * u));
  spv_path_builder_curve(builder, spv_point(0.4 * u, 5.6 * u), spv_point(0.8 * u, 7 * u),
                         spv_point(1.5 * u, 8.2 * u));
  spv_path_builder_line(builder, spv_point(0.6 * u, 7.9 * u));
  spv_path_builder_line(builder, spv_point(0, 9.2 * u));
  spv_path_builder_line(builder, spv_point(-0.6 * u, 7.9 * u));
  spv_path_builder_line(builder, spv_point(-1.5 * u, 8.2 * u));
  spv_path_builder_curve(builder, spv_point(-0.8 * u, 7 * u), spv_point(-0.4 * u, 5.6 * u),
                         spv_point(0, 4.4 * u));
  spv_path_builder_close(builder);
}

/* A bell: each side looks the same when turned by half about its middle, so that the bells of the ground,
 * between these, are of the same shape upside down. */
static void
draw_bell(SpvPathBuilder *builder) {
  const double neck = 0.25, head = 0.3, row = 1;
  const SpvPoint points[] = { { 0, 0 },      { neck, head },        { neck, row - head }, { 0.5, row },
                              { -0.5, row }, { -neck, row - head }, { -neck, head } };

  spv_path_builder_polygon(builder, points, G_N_ELEMENTS(points));
}

/* A crutch, in quarters of the pitch: a stem under a head three times as wide, two strokes. The crutches of
 * the ground, between these, are of the same shape upside down. */
static void
draw_crutch(SpvPathBuilder *builder) {
  const double u = 1.0 / 4;
  const SpvPoint head[] = { { -1.5 * u, 0 }, { 1.5 * u, 0 }, { 1.5 * u, u }, { -1.5 * u, u } };
  const SpvPoint stem[] = { { -0.5 * u, 0 }, { 0.5 * u, 0 }, { 0.5 * u, 2 * u }, { -0.5 * u, 2 * u } };

  spv_path_builder_polygon(builder, head, G_N_ELEMENTS(head));
  spv_path_builder_polygon(builder, stem, G_N_ELEMENTS(stem));
}

static void
draw_nothing(SpvPathBuilder *builder) {
  (void) builder;
}

/* How the rows of each lie: Fox-Davies, A Complete Guide to Heraldry (1909) pp. 77-84, from memory. */
static const FurInfo furs[SPV_N_FURS] = {
  [SPV_FUR_NONE] = { NULL, 1, FALSE, FALSE, draw_nothing },
  [SPV_FUR_ERMINE] = { "ermine", 0.75, TRUE, FALSE, draw_ermine },
  [SPV_FUR_VAIR] = { "vair", 1, TRUE, FALSE, draw_bell },
  [SPV_FUR_COUNTER_VAIR] = { "counter-vair", 1, FALSE, TRUE, draw_bell },
  [SPV_FUR_POTENT] = { "potent", 0.5, TRUE, FALSE, draw_crutch },
};

const char *
spv_fur_key(SpvFur fur) {
  g_return_val_if_fail((guint) fur < SPV_N_FURS, NULL);
  return furs[fur].key;
}

gboolean
spv_fur_from_key(const char *key, SpvFur *fur) {
  for (guint i = SPV_FUR_NONE + 1; i < SPV_N_FURS; i++)
    if (g_strcmp0(key, furs[i].key) == 0) {
      *fur = (SpvFur) i;
      return TRUE;
    }
  return FALSE;
}

/* The rows, and the places in a row, that spots must fill to cover BOX: from the first to before the last. */
typedef struct {
  int from_row, to_row, from, to;
} Range;

static Range
range_over(const FurInfo *info, double pitch, SpvBox box) {
  Range range;

  /* One more each way: a spot is no wider than the pitch, and a row no higher than a pitch and a half. */
  range.from_row = (int) floor(box.y0 / (info->row * pitch)) - 1;
  range.to_row = (int) ceil(box.y1 / (info->row * pitch)) + 1;
  range.from = (int) floor(box.x0 / pitch) - 1;
  range.to = (int) ceil(box.x1 / pitch) + 1;
  return range;
}

SpvPath *
spv_fur_spots(SpvFur fur, double pitch, const SpvOutline *outline) {
  g_return_val_if_fail((guint) fur < SPV_N_FURS && pitch > 0, spv_path_builder_build(spv_path_builder_new()));
  const FurInfo *info = &furs[fur];
  SpvBox box = spv_outline_bounds(outline);
  /* So much finer would be too many whatever the panel's margins. */
  double wide = MAX(pitch, sqrt(spv_box_width(box) * spv_box_height(box) / (info->row * MAX_SPOTS)));
  Range range = range_over(info, wide, box);
  SpvPathBuilder *spot_builder = spv_path_builder_new(), *builder = spv_path_builder_new();

  while ((double) (range.to_row - range.from_row) * (range.to - range.from) > MAX_SPOTS) {
    wide *= 1.02;
    range = range_over(info, wide, box);
  }
  info->draw(spot_builder);
  g_autoptr(SpvPath) spot = spv_path_builder_build(spot_builder);
  for (int row = range.from_row; row < range.to_row; row++) {
    gboolean odd = row & 1, over = odd && info->turns_over;
    double shift = odd && info->half_drop ? 0.5 : 0, y = (row + (over ? 1 : 0)) * info->row * wide;
    for (int i = range.from; i < range.to; i++) {
      SpvTransform place = spv_transform_place(wide, 0, spv_point((i + shift) * wide, y));
      if (over)
        place.d = -place.d;
      g_autoptr(SpvPath) placed = spv_path_transform(spot, place);
      spv_path_builder_path(builder, placed);
    }
  }
  return spv_path_builder_build(builder);
}

/* The pieces of SHAPE that lie wholly within BOX. */
static SpvShape *
whole_pieces(const SpvShape *shape, SpvBox box) {
  g_autoptr(GPtrArray) whole = g_ptr_array_new_with_free_func((GDestroyNotify) spv_shape_unref);
  gsize n;

  spv_shape_pieces(shape, &n);
  for (gsize i = 0; i < n; i++) {
    SpvShape *piece = spv_shape_piece(shape, i);
    SpvBox bounds = spv_shape_bounds(piece);
    if (bounds.x0 > box.x0 && bounds.y0 > box.y0 && bounds.x1 < box.x1 && bounds.y1 < box.y1)
      g_ptr_array_add(whole, piece);
    else
      spv_shape_unref(piece);
  }
  return spv_shape_union((const SpvShape *const *) whole->pdata, whole->len);
}

/* The narrowest stroke of SHAPE, or ENOUGH where that is less. */
static double
narrowest(const SpvShape *shape, double enough) {
  gsize n;

  spv_shape_pieces(shape, &n);
  for (gsize i = 0; i < n; i++)
    enough = MIN(enough, spv_piece_narrowest(shape, i, enough, NULL));
  return enough;
}

/* The narrowest stroke of one spot: each of its runs is one, whatever it runs into. */
static double
narrowest_of_spot(SpvFur fur) {
  SpvPathBuilder *builder = spv_path_builder_new();
  double least = MEASURED_PITCH;

  furs[fur].draw(builder);
  g_autoptr(SpvPath) unit = spv_path_builder_build(builder);
  g_autoptr(SpvPath) spot = spv_path_transform(unit, spv_transform_place(MEASURED_PITCH, 0, spv_point(0, 0)));
  g_autoptr(GPtrArray) rings = spv_path_flatten(spot, SPV_CHORD_ERROR);
  for (guint i = 0; i < rings->len; i++) {
    const SpvRing *ring = g_ptr_array_index(rings, i);
    g_autoptr(SpvPath) run = spv_path_new_polygon(ring->points, ring->n_points);
    g_autoptr(SpvShape) stroke = spv_shape_new_from_path(run);
    least = narrowest(stroke, least);
  }
  return least;
}

/* The narrowest stroke of FUR at MEASURED_PITCH: of a spot, of what the spots of a patch make together, and
 * of what they leave between them. */
static double
measure(SpvFur fur) {
  SpvOutlineSpec spec = {
    SPV_OUTLINE_RECTANGLE, 2.6 * MEASURED_PITCH, 4.3 * furs[fur].row * MEASURED_PITCH, { 0, 0 }
  };
  g_autoptr(SpvOutline) patch = spv_outline_new(&spec);
  SpvBox box = spv_outline_bounds(patch);
  g_autoptr(SpvPath) path = spv_fur_spots(fur, MEASURED_PITCH, patch);
  g_autoptr(SpvShape) spots = spv_shape_new_from_path(path);
  g_autoptr(SpvShape) all_between = spv_shape_difference(spv_outline_shape(patch), spots);
  g_autoptr(SpvShape) whole = whole_pieces(spots, box);
  g_autoptr(SpvShape) between = whole_pieces(all_between, box);

  if (spv_shape_is_empty(between)) {
    /* The ground hangs together: what the edge of the patch cuts must not count. */
    g_autoptr(SpvPath) margin = spv_path_new_box(spv_box_grow(box, MEASURED_PITCH));
    g_autoptr(SpvShape) around = spv_shape_new_from_path(margin);
    spv_shape_unref(g_steal_pointer(&between));
    between = spv_shape_difference(around, whole);
  }
  return narrowest(between, narrowest(whole, narrowest_of_spot(fur)));
}

double
spv_fur_smallest_pitch(SpvFur fur, double line) {
  static gsize measured;
  static double widths[SPV_N_FURS];

  g_return_val_if_fail((guint) fur < SPV_N_FURS, line);
  if (g_once_init_enter(&measured)) {
    for (guint i = SPV_FUR_NONE + 1; i < SPV_N_FURS; i++)
      widths[i] = measure((SpvFur) i);
    g_once_init_leave(&measured, 1);
  }
  return fur == SPV_FUR_NONE ? line : line * MEASURED_PITCH / (widths[fur] - WIDTH_ERROR);
}
