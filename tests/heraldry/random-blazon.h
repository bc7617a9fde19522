/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lists of patterns at random: every kind, measure, text, tincture, and every way to lie on another. */
#pragma once

#include "heraldry/arrange.h"
#include "heraldry/blazon.h"
#include "heraldry/lettering.h"

static inline SpvMeasure
random_measure(GRand *rand, const SpvMeasureSpec *spec) {
  double low = MAX(spec->min, -50), high = MIN(spec->max, 60);
  guint n_choices = spec->choices ? g_strv_length((char **) spec->choices) : 0;

  if (g_rand_int_range(rand, 0, 6) == 0)
    return (SpvMeasure){ SPV_UNIT_AUTO, 0 };
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_rand_int_range(rand, (int) spec->min, (int) high + 1) };
  case SPV_MEASURE_CHOICE:
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_rand_int_range(rand, 0, (int) n_choices) };
  case SPV_MEASURE_ANGLE:
    if (g_rand_boolean(rand) && spec->min <= -90)
      return (SpvMeasure){ SPV_UNIT_DEGREES,
                           45 * g_rand_int_range(rand, (int) spec->min / 45, (int) spec->max / 45 + 1) };
    return (SpvMeasure){ SPV_UNIT_DEGREES, g_rand_double_range(rand, spec->min, spec->max) };
  case SPV_MEASURE_LENGTH:
    if (g_rand_boolean(rand))
      return (SpvMeasure){ SPV_UNIT_RELATIVE, g_rand_double_range(rand, spec->min < 0 ? -1 : 0, 1) };
    return (SpvMeasure){ SPV_UNIT_MM, g_rand_double_range(rand, low, high) };
  }
  return spec->preset;
}

static inline const char *
random_text(GRand *rand, const SpvTextSpec *spec) {
  static const char *const texts[] = { "2, 1",
                                       "3, 2, 1",
                                       " 4,4",
                                       "1",
                                       "VII",
                                       "Sans Bold 12",
                                       "a \"b\" \\ c",
                                       "\xC3\xA9t\xC3\xA9",
                                       "M 0 0 L 3 0 L 3 4 Z",
                                       "M0,0 C1 1 2 2 3 0\nZ" };
  const char *text = texts[g_rand_int_range(rand, 0, G_N_ELEMENTS(texts))];

  return spec->check(text, NULL) ? text : NULL;
}

static inline char *
random_tincture(GRand *rand) {
  static const char *const tinctures[] = { "azure",
                                           "or",
                                           "gules",
                                           "proper",
                                           "tenne",
                                           "ermine",
                                           "pean",
                                           "potent",
                                           "counter-vair",
                                           "vairy or and gules",
                                           "counter-vairy or and \"deep sea\"",
                                           "potenty \"a \\\" b\" and vert",
                                           "argent ermined gules",
                                           "\"deep sea\"",
                                           "\"azure\"",
                                           "\"back\\\\slash\"" };
  int i = g_rand_int_range(rand, -1, G_N_ELEMENTS(tinctures));

  return i < 0 ? NULL : g_strdup(tinctures[i]);
}

static inline gboolean
random_can_bear(const SpvBlazonItem *item) {
  return item->pattern.kind != SPV_PATTERN_FIELD && spv_pattern_info(item->pattern.kind)->n_slots == 1;
}

/* An item for after ITEMS; a PLAIN one has little but its presets. */
static inline SpvBlazonItem *
random_item(GRand *rand, const GPtrArray *items, gboolean plain) {
  SpvPatternKind kind = (SpvPatternKind) g_rand_int_range(rand, 0, SPV_N_PATTERNS);
  const SpvPatternInfo *info = spv_pattern_info(kind);
  SpvBlazonItem *item = spv_blazon_item_new(kind);
  int changes = plain ? 8 : 3;

  for (guint i = 0; i < info->n_measures; i++)
    if (g_rand_int_range(rand, 0, changes) == 0)
      item->pattern.measures[i] = random_measure(rand, &info->measures[i]);
  for (guint i = 0; i < info->n_texts; i++)
    if (g_rand_boolean(rand))
      spv_blazon_item_set_text(item, i, random_text(rand, &info->texts[i]));
  item->pattern.mirrored = g_rand_int_range(rand, 0, changes) == 0;
  for (guint slot = 0; slot < info->n_slots; slot++)
    item->tinctures[slot] = random_tincture(rand);
  if (items->len > 0) {
    int below = g_rand_boolean(rand) ? (int) items->len - 1 : g_rand_int_range(rand, 0, (int) items->len);
    const SpvBlazonItem *base = g_ptr_array_index(items, (guint) below);
    if (g_rand_boolean(rand) && random_can_bear(base))
      item->on = below;
    if (g_rand_int_range(rand, 0, 3) == 0)
      item->on = base->on;
    below = g_rand_int_range(rand, 0, (int) items->len);
    base = g_ptr_array_index(items, (guint) below);
    /* What has several tinctures is not counterchanged: no layer is. */
    if (info->n_slots == 1 && g_rand_int_range(rand, 0, 4) == 0 &&
        spv_pattern_info(base->pattern.kind)->n_slots == 2)
      item->counterchange = below;
  }
  /* A layer that is counterchanged shows the division's tinctures, and none of its own. */
  for (guint slot = 0; item->counterchange >= 0 && slot < SPV_PATTERN_SLOTS; slot++)
    g_clear_pointer(&item->tinctures[slot], g_free);
  return item;
}

static inline GPtrArray *
random_items(GRand *rand) {
  GPtrArray *items = g_ptr_array_new_with_free_func((GDestroyNotify) spv_blazon_item_free);
  int n = g_rand_int_range(rand, 0, 9);
  gboolean plain = g_rand_boolean(rand);

  for (int i = 0; i < n; i++)
    g_ptr_array_add(items, random_item(rand, items, plain));
  return items;
}
