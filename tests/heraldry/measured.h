/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Laying patterns on panels and measuring what shows. */
#pragma once

#include "support/near.h"

#include "heraldry/pattern.h"

static inline SpvOutline *
panel_of(SpvOutlineFamily family, double width, double height) {
  SpvOutlineSpec spec;
  spv_outline_spec_preset(family, width, family == SPV_OUTLINE_DISC ? width : height, &spec);
  return spv_outline_new(&spec);
}

static inline SpvOutline *
rectangle(double width, double height) {
  SpvOutlineSpec spec = { SPV_OUTLINE_RECTANGLE, width, height, { 0, 0 } };
  return spv_outline_new(&spec);
}

static inline void
set(SpvPattern *pattern, const char *key, SpvUnit unit, double value) {
  int index = spv_pattern_measure_index(pattern->kind, key);
  SpvMeasure measure = { unit, value };

  if (index < 0)
    fail_msg("%s has no %s", spv_pattern_info(pattern->kind)->key, key);
  assert_true(spv_measure_is_valid(&spv_pattern_info(pattern->kind)->measures[index], measure));
  pattern->measures[index] = measure;
}

/* What PATTERN shows on the panel. */
static inline SpvShape *
shown_shape(const SpvPattern *pattern, const SpvOutline *outline) {
  g_autoptr(SpvDraft) draft = spv_pattern_lay(pattern, outline);
  g_autoptr(SpvShape) area = spv_shape_new_from_path(draft->area[0]);

  return spv_shape_intersection(spv_outline_shape(outline), area);
}

/* Its area, mm². */
static inline double
shown(const SpvPattern *pattern, const SpvOutline *outline) {
  g_autoptr(SpvShape) shape = shown_shape(pattern, outline);

  return spv_shape_area(shape);
}

/* As a part of the panel's area. */
static inline double
share_shown(const SpvPattern *pattern, const SpvOutline *outline) {
  return shown(pattern, outline) / spv_shape_area(spv_outline_shape(outline));
}

/* What lies in one of two shapes only, mm². */
static inline double
difference_of(const SpvShape *a, const SpvShape *b) {
  g_autoptr(SpvShape) only_a = spv_shape_difference(a, b), only_b = spv_shape_difference(b, a);

  return spv_shape_area(only_a) + spv_shape_area(only_b);
}

/* The usual panel of these tests, mm. */
#define WIDE 30.0
#define HIGH 24.0

/* One of KIND alone; in its wider form where CHARGED and it has one. */
static inline SpvPattern
one_of(SpvPatternKind kind, gboolean charged) {
  SpvPattern pattern = spv_pattern_preset(kind);

  if (spv_pattern_measure_index(kind, "number") >= 0)
    set(&pattern, "number", SPV_UNIT_PLAIN, 1);
  if (charged && spv_pattern_measure_index(kind, "charged") >= 0)
    set(&pattern, "charged", SPV_UNIT_PLAIN, 1);
  return pattern;
}

/* How far AREA reaches from AT, which lies inside it, along DIRECTION, mm. */
static inline double
reach_from(const SpvPath *area, SpvPoint at, SpvPoint direction) {
  double low = 0, high = 0.1;

  while (high < 100 && spv_path_contains(area, spv_point_add(at, spv_point_scale(direction, high))))
    high += 0.1;
  low = high - 0.1;
  for (int i = 0; i < 50; i++) {
    double middle = (low + high) / 2;
    if (spv_path_contains(area, spv_point_add(at, spv_point_scale(direction, middle))))
      low = middle;
    else
      high = middle;
  }
  return low;
}

/* A random value that measure SPEC allows. */
static inline SpvMeasure
random_measure(const SpvMeasureSpec *spec, GRand *random) {
  guint n_choices = 0;

  if (g_rand_int_range(random, 0, 4) == 0)
    return (SpvMeasure){ SPV_UNIT_AUTO, 0 };
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_rand_int_range(random, (int) spec->min, (int) spec->max + 1) };
  case SPV_MEASURE_CHOICE:
    while (spec->choices[n_choices])
      n_choices++;
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_rand_int_range(random, 0, (int) n_choices) };
  case SPV_MEASURE_ANGLE:
    return (SpvMeasure){ SPV_UNIT_DEGREES, g_rand_double_range(random, spec->min, spec->max) };
  case SPV_MEASURE_LENGTH:
    if (g_rand_int_range(random, 0, 8) == 0)
      return (SpvMeasure){ SPV_UNIT_MM, g_rand_boolean(random) ? spec->max : spec->min };
    return (SpvMeasure){ SPV_UNIT_RELATIVE,
                         g_rand_double_range(random, spec->min < 0 ? -1 : 0.02, spec->min < 0 ? 1 : 0.6) };
  }
  return (SpvMeasure){ SPV_UNIT_AUTO, 0 };
}

/* Lays TIMES patterns of random kinds from FIRST to LAST with random measures on random panels: what shows is
 * a part of the panel, and what is laid on it is a part of the panel, too. */
static inline void
lay_at_random(SpvPatternKind first, SpvPatternKind last, guint times) {
  g_autoptr(GRand) random = g_rand_new_with_seed(1726);

  for (guint i = 0; i < times; i++) {
    SpvPattern pattern = spv_pattern_preset(
        (SpvPatternKind) g_rand_int_range(random, (int) first, (int) last + 1));
    SpvPattern on = spv_pattern_preset(
        (SpvPatternKind) g_rand_int_range(random, (int) first, (int) last + 1));
    const SpvPatternInfo *info = spv_pattern_info(pattern.kind);
    SpvOutlineFamily family = (SpvOutlineFamily) g_rand_int_range(random, 0, SPV_N_OUTLINE_FAMILIES);
    g_autoptr(SpvOutline)
        outline = panel_of(family, g_rand_double_range(random, 3, 40), g_rand_double_range(random, 3, 40));
    double whole = spv_shape_area(spv_outline_shape(outline));

    for (guint k = 0; k < info->n_measures; k++) {
      pattern.measures[k] = random_measure(&info->measures[k], random);
      /* Teeth beyond counting take long and tell nothing. */
      if (g_str_equal(info->measures[k].key, "pitch") || g_str_equal(info->measures[k].key, "periods"))
        pattern.measures[k].unit = SPV_UNIT_AUTO;
    }
    pattern.mirrored = g_rand_boolean(random);
    double area = shown(&pattern, outline);
    if (!(area >= 0 && area <= whole * (1 + 1e-9)))
      fail_msg("try %u: %s shows %g of %g mm²", i, info->key, area, whole);

    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, outline);
    if (draft->frame == NULL)
      continue;
    g_autoptr(SpvDraft) second = spv_pattern_lay_on(&on, draft->frame, outline);
    g_autoptr(SpvShape) laid = spv_shape_new_from_path(second->area[0]);
    assert_true(isfinite(spv_shape_area(laid)));
  }
}
