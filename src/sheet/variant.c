/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/variant.h"

#include "sheet/figure.h"
#include "sheet/packing.h"
#include "sheet/sheet.h"

#define SPACING_LEAST 2.8 /* from dot to dot on paper, mm: room for every number */
#define LEGIBLE_MOST 64.0 /* no subject asks for more */
#define FACTOR_ALWAYS 4.0 /* never too large, if it fits */
#define FACTOR_AMPLE 8.0  /* from here on an enlargement is large enough at SIZE_AMPLE, mm */
#define SIZE_AMPLE 76.0
#define SIZE_MOST 112.0
#define NEXT_TO_NOTHING 1e-6

static double
largest_measure(const SpvSubject *subject) {
  return MAX(spv_box_width(subject->bounds), spv_box_height(subject->bounds));
}

double
spv_variants_legible(const SpvSubject *subject) {
  double spacing = INFINITY;

  for (guint i = 0; i < subject->guide->runs->len; i++) {
    const SpvDotRun *run = &g_array_index(subject->guide->runs, SpvDotRun, i);
    if (run->last > run->first && run->spacing > 0)
      spacing = MIN(spacing, run->spacing);
  }
  return MIN(largest_measure(subject) * SPACING_LEAST / spacing, LEGIBLE_MOST);
}

/* A panel that is made much larger shows no more by being made larger still. */
static gboolean
is_of_use(const SpvSubject *subject, double factor) {
  double size = factor * largest_measure(subject);

  if (factor <= FACTOR_ALWAYS)
    return TRUE;
  return size <= (factor <= FACTOR_AMPLE ? SIZE_MOST : SIZE_AMPLE);
}

static gboolean
find_plan(const SpvSubject *subject, guint content, double factor, double surround, const SpvRoom *room,
          SpvVariant *variant) {
  double most = variant->wide ? room->wide_height : room->narrow_height;

  variant->width = variant->wide ? room->wide_width : room->narrow_width;
  if (!spv_plan_find(subject, content, factor, variant->width - 2 * SPV_CARD_PADDING, most - surround,
                     &variant->plan))
    return FALSE;
  variant->height = surround + variant->plan.height;
  variant->size = factor * largest_measure(subject);
  return TRUE;
}

/* SURROUND: of the narrow card and of the wide one. */
static void
add_variants(const SpvSubject *subject, guint content, double factor, const double surround[2],
             const SpvRoom *room, GArray *variants) {
  for (int wide = 0; wide < 2; wide++) {
    SpvVariant variant = { .wide = wide == 1 };
    if (find_plan(subject, content, factor, surround[wide], room, &variant) && variant.plan.complete)
      g_array_append_val(variants, variant);
  }
}

static double
paper_of(const SpvVariant *variant) {
  return (variant->width + SPV_PAGE_GAP) * (variant->height + SPV_PAGE_GAP);
}

static int
compare_variants(gconstpointer a, gconstpointer b) {
  const SpvVariant *first = a, *second = b;
  double difference = first->size - second->size;

  if (fabs(difference) < NEXT_TO_NOTHING)
    difference = paper_of(first) - paper_of(second);
  return (difference > 0) - (difference < 0);
}

GArray *
spv_variants_new(cairo_t *measuring, const SpvSubject *subject, guint content, const SpvRoom *room) {
  GArray *variants = g_array_new(FALSE, FALSE, sizeof(SpvVariant));
  guint n;
  const double *factors = spv_figure_factors(&n);
  const double surround[2] = { spv_card_surround(measuring, subject, room->narrow_width),
                               spv_card_surround(measuring, subject, room->wide_width) };

  for (guint i = 0; (content & SPV_CONTENT_ENLARGEMENTS) != 0 && i < n; i++)
    if (is_of_use(subject, factors[i]))
      add_variants(subject, content, factors[i], surround, room, variants);
  if (variants->len == 0)
    add_variants(subject, content, 0, surround, room, variants);
  g_array_sort(variants, compare_variants);
  return variants;
}

/* The index of the least of those that are WIDE, or not, and at least SIZE large; -1 when there is none. */
static int
find_least(const GArray *variants, double size, gboolean wide) {
  const SpvVariant *all = (const SpvVariant *) (const void *) variants->data;
  int best = -1;

  for (guint i = 0; i < variants->len; i++)
    if (all[i].wide == wide && all[i].size >= size - NEXT_TO_NOTHING &&
        (best < 0 || paper_of(&all[i]) < paper_of(&all[best]) - NEXT_TO_NOTHING))
      best = (int) i;
  return best;
}

void
spv_variants_choose(const GArray *variants, double size, guint ways[2]) {
  double largest = g_array_index(variants, SpvVariant, variants->len - 1).size;
  int narrow = find_least(variants, MIN(size, largest), FALSE);
  int wide = find_least(variants, MIN(size, largest), TRUE);

  if (narrow < 0 || wide < 0) {
    ways[0] = ways[1] = (guint) MAX(narrow, wide);
    return;
  }
  gboolean narrow_first = paper_of(&g_array_index(variants, SpvVariant, (guint) narrow)) <=
                          paper_of(&g_array_index(variants, SpvVariant, (guint) wide));
  ways[0] = (guint) (narrow_first ? narrow : wide);
  ways[1] = (guint) (narrow_first ? wide : narrow);
}

/* With as large an enlargement as there can be: the tables fill further sheets anyway. */
gboolean
spv_variant_find_cut(cairo_t *measuring, const SpvSubject *subject, guint content, const SpvRoom *room,
                     SpvPlan *plan) {
  double surround = spv_card_surround(measuring, subject, room->wide_width);
  guint n;
  const double *factors = spv_figure_factors(&n);
  SpvVariant variant = { .wide = TRUE };
  gboolean found = FALSE;

  for (guint i = 0; !found && (content & SPV_CONTENT_ENLARGEMENTS) != 0 && i < n; i++)
    if (is_of_use(subject, factors[i]))
      found = find_plan(subject, content, factors[i], surround, room, &variant);
  if (!found)
    found = find_plan(subject, content, 0, surround, room, &variant);
  *plan = variant.plan;
  return found;
}
