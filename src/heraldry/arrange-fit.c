/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Charges in rows and in bend: how far apart they must stand to be large. */
#include "heraldry/arrange-private.h"

/* How much of their size charges give up to stand about the middle (for each of the box's sides that they
 * would be shifted) and evenly (for each even share that they would be nearer or farther). */
#define ASIDE 1.2
#define UNEVEN 0.25

/* So many charges are fitted roughly: nobody sees the difference, but it takes its time. */
#define MANY 40

/* What can be varied to make charges larger. */
typedef struct {
  double across, down;     /* the pitches, of the box's even shares */
  double shift_x, shift_y; /* of the whole, of the box's sides */
} Fit;

typedef struct Layout Layout;

struct Layout {
  const SpvArrangeRoom *room;
  void (*put)(const Layout *layout, Fit fit, GArray *centres);
  const guint *rows;
  guint n_rows;   /* in bend: how many charges */
  double slant;   /* in bend: 1 from dexter chief, -1 from sinister chief */
  gboolean askew; /* the room isn't its own mirror image: charges may be shifted to a side */
};

/* Squared distance from P to the side from A to B, and whether the ray from P to the right crosses it. */
static double
to_side(SpvPoint p, SpvPoint a, SpvPoint b, gboolean *crosses) {
  SpvPoint along = { b.x - a.x, b.y - a.y }, to = { p.x - a.x, p.y - a.y };
  double square = spv_point_dot(along, along), t = square > 0 ? spv_point_dot(to, along) / square : 0;

  t = CLAMP(t, 0, 1);
  *crosses = (a.y > p.y) != (b.y > p.y) && p.x < a.x + along.x * (p.y - a.y) / along.y;
  SpvPoint off = { to.x - t * along.x, to.y - t * along.y };
  return spv_point_dot(off, off);
}

double
spv_arrange_clearance(const SpvArrangeRoom *room, SpvPoint point) {
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(room->within, &n);
  double nearest = INFINITY;
  gboolean inside = FALSE, crosses;

  for (gsize i = 0; i < n; i++)
    for (gsize k = 0; k < pieces[i].n_rings; k++) {
      const SpvRing *ring = pieces[i].rings[k];
      for (gsize j = 0; j < ring->n_points; j++) {
        SpvPoint next = ring->points[j + 1 == ring->n_points ? 0 : j + 1];
        nearest = MIN(nearest, to_side(point, ring->points[j], next, &crosses));
        inside ^= crosses;
      }
    }
  return isfinite(nearest) ? (inside ? 1 : -1) * sqrt(nearest) : 0;
}

double
spv_arrange_size(const SpvArrangeRoom *room, const GArray *centres) {
  const SpvPoint *at = (const SpvPoint *) (const void *) centres->data;
  double size = room->cap;

  for (guint i = 0; i < centres->len; i++)
    for (guint k = i + 1; k < centres->len; k++) {
      double across = fabs(at[i].x - at[k].x) / (2 * room->half.x);
      double down = fabs(at[i].y - at[k].y) / (2 * room->half.y);
      size = MIN(size, SPV_ARRANGE_NEIGHBOURS * MAX(across, down));
    }
  for (guint i = 0; i < centres->len; i++)
    size = MIN(size, SPV_ARRANGE_EDGE * spv_arrange_clearance(room, at[i]) / room->reach);
  return size;
}

/* How good FIT is: the size, less where the whole leaves the middle or doesn't fill the box. */
static double
merit_of(const Layout *layout, Fit fit, GArray *scratch) {
  double aside = fabs(fit.shift_x) + fabs(fit.shift_y), uneven = fabs(1 - fit.across) + fabs(1 - fit.down);

  g_array_set_size(scratch, 0);
  layout->put(layout, fit, scratch);
  double size = spv_arrange_size(layout->room, scratch);
  return size > 0 ? size * MAX(1 - ASIDE * aside - UNEVEN * uneven, 0.1) : size;
}

/* Tries one of FIT's numbers, STEP more or less again and again, and keeps the best. */
static double
improve(const Layout *layout, Fit *fit, double *number, double step, double best, GArray *scratch) {
  gboolean pitch = number == &fit->across || number == &fit->down;
  double kept = *number, from = *number;

  for (int k = 1; k <= 12; k++)
    for (int side = -1; side <= 1; side += 2) {
      *number = from + side * step * k;
      double merit = pitch && *number < 0.1 ? -INFINITY : merit_of(layout, *fit, scratch);
      if (merit <= best + 1e-6 * fabs(best))
        continue;
      best = merit;
      kept = *number;
    }
  *number = kept;
  return best;
}

/* The centres of LAYOUT, as far apart as lets them be largest. */
static GArray *
fit_layout(const Layout *layout) {
  GArray *centres = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  Fit fit = { 1, 1, 0, 0 };
  double best = merit_of(layout, fit, centres);

  double finest = centres->len > MANY ? 0.05 : 0.004;

  for (double step = 0.06; step > finest && best < layout->room->cap; step /= 2) {
    if (layout->n_rows > 1 || best <= 0)
      best = improve(layout, &fit, &fit.shift_y, step / 2, best, centres);
    if (layout->askew)
      best = improve(layout, &fit, &fit.shift_x, step / 2, best, centres);
    best = improve(layout, &fit, &fit.across, step, best, centres);
    best = improve(layout, &fit, &fit.down, step, best, centres);
  }
  merit_of(layout, fit, centres);
  return centres;
}

static SpvPoint
middle_of(const SpvArrangeRoom *room, Fit fit) {
  SpvPoint middle = spv_box_centre(room->box);
  return spv_point(middle.x + fit.shift_x * spv_box_width(room->box),
                   middle.y + fit.shift_y * spv_box_height(room->box));
}

static void
put_rows(const Layout *layout, Fit fit, GArray *centres) {
  const SpvArrangeRoom *room = layout->room;
  SpvPoint middle = middle_of(room, fit);
  guint most = 1;

  for (guint i = 0; i < layout->n_rows; i++)
    most = MAX(most, layout->rows[i]);
  double end = room->band ? 0.5 : 0;
  double across = fit.across * spv_box_width(room->box) / (most + end);
  double down = fit.down * spv_box_height(room->box) / (layout->n_rows + end);
  if (room->spacing > 0)
    across = down = room->spacing;

  for (guint i = 0; i < layout->n_rows; i++)
    for (guint k = 0; k < layout->rows[i]; k++) {
      SpvPoint at = { middle.x + across * (k - (layout->rows[i] - 1) / 2.0),
                      middle.y + down * (i - (layout->n_rows - 1) / 2.0) };
      g_array_append_val(centres, at);
    }
}

static void
put_diagonal(const Layout *layout, Fit fit, GArray *centres) {
  const SpvArrangeRoom *room = layout->room;
  SpvPoint middle = middle_of(room, fit);
  SpvPoint diagonal = { layout->slant * spv_box_width(room->box), spv_box_height(room->box) };
  double length = spv_point_length(diagonal);
  double pitch = room->spacing > 0 ? room->spacing : fit.across * length / layout->n_rows;

  for (guint i = 0; i < layout->n_rows; i++) {
    double along = length > 0 ? pitch / length * (i - (layout->n_rows - 1) / 2.0) : 0;
    SpvPoint at = spv_point_add(middle, spv_point_scale(diagonal, along));
    g_array_append_val(centres, at);
  }
}

/* Whether the room lies aside of the centre line. */
static gboolean
is_askew(const SpvArrangeRoom *room) {
  return fabs(room->box.x0 + room->box.x1) > 1e-6 * spv_box_width(room->box);
}

GArray *
spv_arrange_rows(const SpvArrangeRoom *room, const guint *rows, guint n_rows) {
  Layout layout = { .room = room, .put = put_rows, .rows = rows, .n_rows = n_rows, .askew = is_askew(room) };
  return fit_layout(&layout);
}

GArray *
spv_arrange_diagonal(const SpvArrangeRoom *room, guint n, gboolean from_sinister) {
  Layout layout = {
    .room = room, .put = put_diagonal, .n_rows = n, .slant = from_sinister ? -1 : 1, .askew = TRUE
  };
  return fit_layout(&layout);
}
