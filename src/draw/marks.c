/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How large the dots are, and where the numbers stand. */
#include "draw/marks-private.h"

/* How far a dot's white ring reaches, in radii of the dot. */
#define RINGED (1 + SPV_DOT_RING)

/* mm on paper */
#define DOT_RADIUS 1.0
#define DOT_RADIUS_MIN 0.2
#define NUMBER_GAP 0.55
#define RULING_OVERHANG 2.0

static gboolean
is_of_layer(guint of, int layer) {
  return layer < 0 || of == (guint) layer;
}

/* --- How large the dots are --- */

typedef struct {
  const SpvGuide *guide;
  guint *order; /* indices of dots, by x */
  guint n;
} DotsByX;

static int
compare_x(gconstpointer a, gconstpointer b, gpointer data) {
  const GArray *dots = data;
  double ax = g_array_index(dots, SpvDot, *(const guint *) a).at.x;
  double bx = g_array_index(dots, SpvDot, *(const guint *) b).at.x;

  return (ax > bx) - (ax < bx);
}

static DotsByX
sort_dots(const SpvGuide *guide, int layer) {
  DotsByX sorted = { guide, g_new(guint, guide->dots->len + 1), 0 };

  for (guint i = 0; i < guide->dots->len; i++)
    if (is_of_layer(g_array_index(guide->dots, SpvDot, i).layer, layer))
      sorted.order[sorted.n++] = i;
  g_qsort_with_data(sorted.order, (int) sorted.n, sizeof(guint), compare_x, guide->dots);
  return sorted;
}

static const SpvDot *
sorted_dot(const DotsByX *sorted, guint i) {
  return &g_array_index(sorted->guide->dots, SpvDot, sorted->order[i]);
}

/* A dot and its ring reach at most half way to the next one. */
double *
spv_mark_radii(const SpvGuide *guide, int layer, double paper_mm) {
  double *nearest = g_new(double, guide->dots->len + 1);
  double wanted = 2 * RINGED * DOT_RADIUS / paper_mm;
  DotsByX sorted = sort_dots(guide, layer);

  for (guint i = 0; i < guide->dots->len; i++)
    nearest[i] = wanted;
  for (guint i = 0; i < sorted.n; i++) {
    const SpvDot *dot = sorted_dot(&sorted, i);

    for (guint j = i + 1; j < sorted.n && sorted_dot(&sorted, j)->at.x - dot->at.x < wanted; j++) {
      double distance = spv_point_distance(dot->at, sorted_dot(&sorted, j)->at);

      nearest[sorted.order[i]] = MIN(nearest[sorted.order[i]], distance);
      nearest[sorted.order[j]] = MIN(nearest[sorted.order[j]], distance);
    }
  }
  for (guint i = 0; i < guide->dots->len; i++)
    nearest[i] = MAX(nearest[i] / 2 / RINGED, DOT_RADIUS_MIN / paper_mm);
  g_free(sorted.order);
  return nearest;
}

/* --- Where the numbers go --- */

typedef struct {
  const SpvGuide *guide;
  int layer;
  const double *radii;
  double digit, paper_mm;
  DotsByX by_x;
  double largest; /* of the radii */
  GArray *placed; /* SpvPlacedNumber */
} Placing;

static guint
n_digits(guint number) {
  guint digits = 1;

  while ((number /= 10) > 0)
    digits++;
  return digits;
}

static SpvPoint
number_half_size(const Placing *placing, guint number) {
  return spv_point(n_digits(number) * placing->digit / 2, SPV_NUMBER_SIZE / placing->paper_mm / 2);
}

static SpvBox
box_about(SpvPoint middle, SpvPoint half) {
  return (SpvBox){ middle.x - half.x, middle.y - half.y, middle.x + half.x, middle.y + half.y };
}

static gboolean
box_meets_disc(SpvBox box, SpvPoint centre, double radius) {
  double dx = MAX(MAX(box.x0 - centre.x, centre.x - box.x1), 0);
  double dy = MAX(MAX(box.y0 - centre.y, centre.y - box.y1), 0);

  return hypot(dx, dy) < radius;
}

static gboolean
meets_a_dot(const Placing *placing, SpvBox box) {
  const DotsByX *by_x = &placing->by_x;
  guint low = 0, high = by_x->n;

  while (low < high) {
    guint middle = (low + high) / 2;

    if (sorted_dot(by_x, middle)->at.x < box.x0 - placing->largest)
      low = middle + 1;
    else
      high = middle;
  }
  for (guint i = low; i < by_x->n && sorted_dot(by_x, i)->at.x <= box.x1 + placing->largest; i++)
    if (box_meets_disc(box, sorted_dot(by_x, i)->at, placing->radii[by_x->order[i]]))
      return TRUE;
  return FALSE;
}

static gboolean
meets_a_number(const Placing *placing, SpvBox box) {
  SpvBox grown = spv_box_grow(box, 0.3 / placing->paper_mm);

  for (guint i = 0; i < placing->placed->len; i++)
    if (spv_box_overlaps(grown, g_array_index(placing->placed, SpvPlacedNumber, i).box))
      return TRUE;
  return FALSE;
}

/* The middle of a number that stands off from FROM by GAP in the unit direction TOWARDS. */
static SpvPoint
stand_off(SpvPoint from, SpvPoint towards, double gap, SpvPoint half) {
  double reach = gap + fabs(towards.x) * half.x + fabs(towards.y) * half.y;

  return spv_point_add(from, spv_point_scale(towards, reach));
}

static gboolean
try_place(Placing *placing, guint number, gboolean is_ruling, SpvPoint middle) {
  SpvPlacedNumber placed = { number, is_ruling, middle,
                             box_about(middle, number_half_size(placing, number)) };

  if (meets_a_number(placing, placed.box) || meets_a_dot(placing, placed.box))
    return FALSE;
  g_array_append_val(placing->placed, placed);
  return TRUE;
}

static gboolean
is_placed(const Placing *placing, guint number, gboolean is_ruling) {
  for (guint i = 0; i < placing->placed->len; i++) {
    const SpvPlacedNumber *placed = &g_array_index(placing->placed, SpvPlacedNumber, i);

    if (placed->number == number && placed->is_ruling == is_ruling)
      return TRUE;
  }
  return FALSE;
}

/* The dot STEP after dot INDEX, if it is of the same layer and kind; otherwise dot INDEX itself. */
static const SpvDot *
neighbour(const SpvGuide *guide, guint index, int step) {
  const SpvDot *dot = &g_array_index(guide->dots, SpvDot, index);
  gint64 other = (gint64) index + step;
  const SpvDot *found = other < 0 || other >= guide->dots->len
                            ? dot
                            : &g_array_index(guide->dots, SpvDot, (guint) other);

  return found->layer == dot->layer && found->kind == dot->kind ? found : dot;
}

/* Away from the pattern, square on the row of dots: a tip's number stands beyond the tip, inwards; a root's
 * outwards. */
static SpvPoint
outward(const SpvGuide *guide, guint index) {
  const SpvDot *dot = &g_array_index(guide->dots, SpvDot, index);
  SpvPoint row = spv_point_subtract(neighbour(guide, index, 1)->at, neighbour(guide, index, -1)->at);
  SpvPoint inward = spv_track_normal(spv_outline_track(guide->composition->outline), dot->from_datum);
  SpvPoint square = spv_point_unit(spv_point_quarter_turn(row));
  double side = spv_point_dot(square, inward);

  /* One dot alone has no row, and a row may turn its end to the edge. */
  if (fabs(side) < 0.2) {
    square = inward;
    side = 1;
  }
  return spv_point_scale(square, (side > 0 ? 1 : -1) * (dot->kind == SPV_DOT_TIP ? 1 : -1));
}

static gboolean
place_dot_number(Placing *placing, guint index) {
  const SpvDot *dot = &g_array_index(placing->guide->dots, SpvDot, index);
  SpvPoint half = number_half_size(placing, dot->number);
  double gap = RINGED * placing->radii[index] + NUMBER_GAP / placing->paper_mm;
  SpvPoint away = outward(placing->guide, index);

  if (is_placed(placing, dot->number, FALSE))
    return TRUE;
  return try_place(placing, dot->number, FALSE, stand_off(dot->at, away, gap, half));
}

/* The first and the last of a run look for any free place about them before they give up. */
static void
place_dot_number_somewhere(Placing *placing, guint index) {
  const SpvDot *dot = &g_array_index(placing->guide->dots, SpvDot, index);
  SpvPoint half = number_half_size(placing, dot->number), away = outward(placing->guide, index);
  double gap = RINGED * placing->radii[index] + NUMBER_GAP / placing->paper_mm;

  if (is_placed(placing, dot->number, FALSE))
    return;
  for (int ring = 0; ring < 4; ring++) {
    for (int turn = 0; turn < 8; turn++) {
      double angle = (turn % 2 == 1 ? -1 : 1) * ((turn + 1) / 2) * G_PI / 4;
      SpvPoint towards = spv_point(away.x * cos(angle) - away.y * sin(angle),
                                   away.x * sin(angle) + away.y * cos(angle));

      if (try_place(placing, dot->number, FALSE, stand_off(dot->at, towards, gap + ring * half.y, half)))
        return;
    }
  }
}

/* Every how many-th of a run can have its number: neighbours SPACING apart, figures as wide as LAST's. */
static guint
stride_for(const Placing *placing, double spacing, guint last) {
  double needed = 2 * number_half_size(placing, last).x + 0.4 / placing->paper_mm;

  return spacing > 0 ? (guint) CLAMP(ceil(needed / spacing), 1, 1e6) : 1;
}

/* The index of the dot with NUMBER, or -1: numbers count the dots from 1, in order. */
static int
dot_index(const SpvGuide *guide, guint number) {
  return number >= 1 && number <= guide->dots->len &&
                 g_array_index(guide->dots, SpvDot, number - 1).number == number
             ? (int) number - 1
             : -1;
}

static void
place_run_ends(Placing *placing, const SpvDotRun *run) {
  int first = dot_index(placing->guide, run->first), last = dot_index(placing->guide, run->last);

  if (first >= 0)
    place_dot_number_somewhere(placing, (guint) first);
  if (last >= 0)
    place_dot_number_somewhere(placing, (guint) last);
}

static void
place_run_between(Placing *placing, const SpvDotRun *run) {
  guint stride = stride_for(placing, run->spacing, run->last);

  for (guint number = run->first + stride; number < run->last; number += stride) {
    int index = dot_index(placing->guide, number);

    if (index >= 0)
      place_dot_number(placing, (guint) index);
  }
}

void
spv_mark_ruling_ends(const SpvRuling *ruling, double paper_mm, SpvPoint ends[2]) {
  SpvPoint a = ruling->ends[0].at, b = ruling->ends[1].at;
  SpvPoint along = spv_point_scale(spv_point_unit(spv_point_subtract(b, a)), RULING_OVERHANG / paper_mm);

  ends[0] = spv_point_subtract(a, along);
  ends[1] = spv_point_add(b, along);
}

static void
place_ruling_number(Placing *placing, const SpvRuling *ruling) {
  SpvPoint ends[2], half = number_half_size(placing, ruling->number);
  SpvPoint away;

  if (is_placed(placing, ruling->number, TRUE))
    return;
  spv_mark_ruling_ends(ruling, placing->paper_mm, ends);
  away = spv_point_unit(spv_point_subtract(ends[0], ends[1]));
  if (try_place(placing, ruling->number, TRUE,
                stand_off(ends[0], away, NUMBER_GAP / placing->paper_mm, half)))
    return;
  try_place(placing, ruling->number, TRUE,
            stand_off(ends[1], spv_point_scale(away, -1), NUMBER_GAP / placing->paper_mm, half));
}

static gboolean
same_family(const SpvRuling *a, const SpvRuling *b) {
  return a->layer == b->layer && a->kind == b->kind;
}

/* The first and the last of each family of rulings when ENDS, else the ones between. */
static void
place_rulings(Placing *placing, gboolean ends) {
  const GArray *rulings = placing->guide->rulings;

  for (guint i = 0; i < rulings->len; i++) {
    const SpvRuling *ruling = &g_array_index(rulings, SpvRuling, i);
    gboolean first = i == 0 || !same_family(ruling, ruling - 1);
    gboolean last = i + 1 == rulings->len || !same_family(ruling, ruling + 1);

    if (is_of_layer(ruling->layer, placing->layer) && (first || last) == ends)
      place_ruling_number(placing, ruling);
  }
}

GArray *
spv_mark_numbers(const SpvGuide *guide, int layer, const double *radii, double digit, double paper_mm) {
  Placing placing = { guide, layer, radii, digit, paper_mm, sort_dots(guide, layer), 0, NULL };

  placing.placed = g_array_new(FALSE, FALSE, sizeof(SpvPlacedNumber));
  for (guint i = 0; i < guide->dots->len; i++)
    placing.largest = MAX(placing.largest, radii[i]);
  for (guint pass = 0; pass < 2; pass++) {
    for (guint i = 0; i < guide->runs->len; i++) {
      const SpvDotRun *run = &g_array_index(guide->runs, SpvDotRun, i);

      if (!is_of_layer(run->layer, layer))
        continue;
      if (pass == 0)
        place_run_ends(&placing, run);
      else
        place_run_between(&placing, run);
    }
    place_rulings(&placing, pass == 0);
  }
  g_free(placing.by_x.order);
  return placing.placed;
}
