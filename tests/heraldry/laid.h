/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the tests of patterns that cover a panel share: setting measures, and looking at what is laid. */
#pragma once

#include "support/near.h"

#include "heraldry/pattern.h"

static inline SpvOutline *
rectangle(double width, double height) {
  SpvOutlineSpec spec = { SPV_OUTLINE_RECTANGLE, width, height, { 0, 0 } };
  return spv_outline_new(&spec);
}

static inline void
set(SpvPattern *pattern, const char *key, SpvUnit unit, double value) {
  int index = spv_pattern_measure_index(pattern->kind, key);
  SpvMeasure measure = { unit, value };

  assert_true(index >= 0);
  assert_true(spv_measure_is_valid(&spv_pattern_info(pattern->kind)->measures[index], measure));
  pattern->measures[index] = measure;
}

/* What SLOT of the draft shows on the panel. */
static inline SpvShape *
seen(const SpvDraft *draft, int slot, const SpvOutline *outline) {
  g_autoptr(SpvShape) area = spv_shape_new_from_path(draft->area[slot]);
  return spv_shape_intersection(spv_outline_shape(outline), area);
}

static inline double
shown(const SpvPattern *pattern, int slot, const SpvOutline *outline) {
  g_autoptr(SpvDraft) draft = spv_pattern_lay(pattern, outline);
  g_autoptr(SpvShape) shape = seen(draft, slot, outline);
  return spv_shape_area(shape);
}

static inline guint
count_lines(const SpvDraft *draft, SpvLineKind kind) {
  guint n = 0;
  for (guint i = 0; i < draft->lines->len; i++)
    n += g_array_index(draft->lines, SpvDraftLine, i).kind == kind;
  return n;
}

/* The slot at POINT; the two tinctures never both cover it. */
static inline int
slot_at(const SpvDraft *draft, SpvPoint point) {
  gboolean first = spv_path_contains(draft->area[0], point);
  assert_true(first != spv_path_contains(draft->area[1], point));
  return first ? 0 : 1;
}

/* The area that only one of A and B covers. */
static inline double
difference_of(const SpvShape *a, const SpvShape *b) {
  g_autoptr(SpvShape) only_a = spv_shape_difference(a, b);
  g_autoptr(SpvShape) only_b = spv_shape_difference(b, a);

  return spv_shape_area(only_a) + spv_shape_area(only_b);
}
