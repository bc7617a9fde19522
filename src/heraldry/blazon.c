/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The items of a blazon, and what its words leave unsaid. */
#include "heraldry/blazon-private.h"

#include <string.h>

#include "heraldry/arrange.h"

SpvBlazonItem *
spv_blazon_item_new(SpvPatternKind kind) {
  SpvBlazonItem *item = g_new0(SpvBlazonItem, 1);

  item->pattern = spv_pattern_preset(kind);
  item->on = item->counterchange = -1;
  return item;
}

void
spv_blazon_item_free(SpvBlazonItem *item) {
  if (!item)
    return;
  for (guint i = 0; i < SPV_PATTERN_TEXTS; i++)
    g_free(item->texts[i]);
  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    g_free(item->tinctures[slot]);
  g_free(item);
}

void
spv_blazon_item_set_text(SpvBlazonItem *item, guint index, const char *text) {
  g_return_if_fail(index < SPV_PATTERN_TEXTS);
  char *copy = g_strdup(text);

  g_free(item->texts[index]);
  item->texts[index] = copy;
  item->pattern.texts[index] = copy;
}

/* Whether A and B have the same kind, measures and texts. */
static gboolean
patterns_equal(const SpvPattern *a, const SpvPattern *b) {
  for (guint i = 0; i < SPV_PATTERN_MEASURES; i++)
    if (!spv_measure_equal(a->measures[i], b->measures[i]))
      return FALSE;
  for (guint i = 0; i < SPV_PATTERN_TEXTS; i++)
    if (g_strcmp0(a->texts[i], b->texts[i]) != 0)
      return FALSE;
  return a->kind == b->kind && !a->mirrored == !b->mirrored;
}

gboolean
spv_blazon_item_equal(const SpvBlazonItem *a, const SpvBlazonItem *b) {
  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    if (g_strcmp0(a->tinctures[slot], b->tinctures[slot]) != 0)
      return FALSE;
  return patterns_equal(&a->pattern, &b->pattern) && a->on == b->on && a->counterchange == b->counterchange;
}

SpvMeasure *
spv_blazon_measure(SpvPattern *pattern, const char *key) {
  int index = spv_pattern_measure_index(pattern->kind, key);

  return index < 0 ? NULL : &pattern->measures[index];
}

char *
spv_blazon_quote(const char *text) {
  GString *quoted = g_string_new("\"");

  for (const char *p = text; *p != '\0'; p++) {
    if (*p == '"' || *p == '\\')
      g_string_append_c(quoted, '\\');
    g_string_append_c(quoted, *p);
  }
  g_string_append_c(quoted, '"');
  return g_string_free(quoted, FALSE);
}

gboolean
spv_blazon_can_bear(SpvPatternKind kind) {
  return kind != SPV_PATTERN_FIELD && spv_pattern_info(kind)->n_slots == 1;
}

int
spv_blazon_beneath(const GPtrArray *items, guint index) {
  const SpvBlazonItem *item = g_ptr_array_index(items, index);

  return spv_blazon_can_bear(item->pattern.kind) ? (int) index : item->on;
}

/* The nearest division of two tinctures below item INDEX that is laid on the same as that; otherwise the
 * nearest on the panel, otherwise the nearest of all. */
int
spv_blazon_counterchange(const GPtrArray *items, guint index) {
  const SpvBlazonItem *item = g_ptr_array_index(items, index);
  int on_panel = -1, any = -1;

  for (guint i = index; i-- > 0;) {
    const SpvBlazonItem *below = g_ptr_array_index(items, i);
    if (spv_pattern_info(below->pattern.kind)->n_slots != 2)
      continue;
    if (below->on == item->on)
      return (int) i;
    if (any < 0)
      any = (int) i;
    if (on_panel < 0 && below->on < 0)
      on_panel = (int) i;
  }
  return on_panel >= 0 ? on_panel : any;
}

gboolean
spv_blazon_is_charged(const GPtrArray *items, guint index) {
  for (guint i = index + 1; i < items->len; i++) {
    const SpvBlazonItem *item = g_ptr_array_index(items, i);
    if (item->on != (int) index)
      continue;
    switch (spv_pattern_group(item->pattern.kind)) {
    case SPV_GROUP_ORDINARY:
    case SPV_GROUP_CHARGE:
    case SPV_GROUP_OWN:
      return TRUE;
    case SPV_GROUP_DIVISION:
    case SPV_GROUP_VARIED:
    case SPV_GROUP_BORDER:
      break;
    }
  }
  return FALSE;
}

/* Copies what both call KEY. */
static void
copy_measure(const SpvPattern *from, SpvPattern *to, const char *key) {
  SpvPattern source = *from;
  SpvMeasure *value = spv_blazon_measure(&source, key), *place = spv_blazon_measure(to, key);

  if (value && place)
    *place = *value;
}

/* What stands beside an ordinary, in pairs, and how wide the ordinary is where nothing is said of that: a
 * fraction of the panel. */
static const struct {
  SpvPatternKind of, with;
  double plain, charged;
} cotised[] = {
  { SPV_PATTERN_FESS, SPV_PATTERN_BARRULET, 1.0 / 3, 1.0 / 3 },
  { SPV_PATTERN_BAR, SPV_PATTERN_BARRULET, 1.0 / 5, 1.0 / 5 },
  { SPV_PATTERN_PALE, SPV_PATTERN_ENDORSE, 1.0 / 3, 1.0 / 3 },
  { SPV_PATTERN_PALLET, SPV_PATTERN_ENDORSE, 1.0 / 6, 1.0 / 6 },
  { SPV_PATTERN_BEND, SPV_PATTERN_COTISE, 1.0 / 5, 1.0 / 3 },
  { SPV_PATTERN_BEND_SINISTER, SPV_PATTERN_COTISE, 1.0 / 5, 1.0 / 3 },
  { SPV_PATTERN_BENDLET, SPV_PATTERN_COTISE, 1.0 / 10, 1.0 / 10 },
  { SPV_PATTERN_SCARPE, SPV_PATTERN_COTISE, 1.0 / 10, 1.0 / 10 },
  { SPV_PATTERN_CHEVRON, SPV_PATTERN_COUPLE_CLOSE, 0, 0 },
};

/* Half as far again as the ordinary is wide, so that a quarter of it shows on either side, as beside a bend
 * of the usual width. Common practice, no source. */
#define SPREAD 1.5

static SpvMeasure
spread(const SpvPattern *of, double plain, double charged) {
  SpvPattern copy = *of;
  const SpvMeasure *width = spv_blazon_measure(&copy, "width"),
                   *choice = spv_blazon_measure(&copy, "charged");
  SpvMeasure apart = { SPV_UNIT_RELATIVE, SPREAD * plain };

  if (width && width->unit != SPV_UNIT_AUTO) {
    apart = (SpvMeasure){ width->unit, SPREAD * width->value };
    apart.value = MIN(apart.value, apart.unit == SPV_UNIT_MM ? SPV_OUTLINE_MAX_MM : SPV_RELATIVE_MAX);
  } else if (choice && choice->value > 0) {
    apart.value = SPREAD * charged;
  }
  return apart;
}

gboolean
spv_blazon_cotise(const SpvPattern *of, SpvPattern *cotise) {
  SpvPattern copy = *of;
  const SpvMeasure *number = spv_blazon_measure(&copy, "number");
  gboolean sinister = of->kind == SPV_PATTERN_BEND_SINISTER || of->kind == SPV_PATTERN_SCARPE;
  guint row = 0;

  while (row < G_N_ELEMENTS(cotised) && cotised[row].of != of->kind)
    row++;
  if (row == G_N_ELEMENTS(cotised) || (number && number->unit == SPV_UNIT_PLAIN && number->value != 1))
    return FALSE;
  *cotise = spv_pattern_preset(cotised[row].with);
  copy_measure(of, cotise, "angle");
  copy_measure(of, cotise, "shift");
  /* Cotises lie along a bend; those along a bend sinister are their mirror image. */
  cotise->mirrored = of->mirrored ? !sinister : sinister;
  if (sinister && spv_blazon_measure(cotise, "shift")->value != 0)
    spv_blazon_measure(cotise, "shift")->value *= -1;
  if (cotised[row].plain > 0)
    *spv_blazon_measure(cotise, "apart") = spread(of, cotised[row].plain, cotised[row].charged);
  return TRUE;
}

/* The places on the sides of each ordinary: the larger share goes to the first. */
static const struct {
  SpvPatternKind kind;
  guint n, places[4];
} sides[] = {
  { SPV_PATTERN_FESS, 2, { SPV_PLACE_CHIEF, SPV_PLACE_BASE } },
  { SPV_PATTERN_BAR, 2, { SPV_PLACE_CHIEF, SPV_PLACE_BASE } },
  { SPV_PATTERN_CLOSET, 2, { SPV_PLACE_CHIEF, SPV_PLACE_BASE } },
  { SPV_PATTERN_BARRULET, 2, { SPV_PLACE_CHIEF, SPV_PLACE_BASE } },
  { SPV_PATTERN_BAR_GEMEL, 2, { SPV_PLACE_CHIEF, SPV_PLACE_BASE } },
  { SPV_PATTERN_CHEVRON, 2, { SPV_PLACE_CHIEF, SPV_PLACE_BASE } },
  { SPV_PATTERN_CHEVRONEL, 2, { SPV_PLACE_CHIEF, SPV_PLACE_BASE } },
  { SPV_PATTERN_COUPLE_CLOSE, 2, { SPV_PLACE_CHIEF, SPV_PLACE_BASE } },
  { SPV_PATTERN_PALE, 2, { SPV_PLACE_DEXTER, SPV_PLACE_SINISTER } },
  { SPV_PATTERN_PALLET, 2, { SPV_PLACE_DEXTER, SPV_PLACE_SINISTER } },
  { SPV_PATTERN_ENDORSE, 2, { SPV_PLACE_DEXTER, SPV_PLACE_SINISTER } },
  { SPV_PATTERN_PILE, 2, { SPV_PLACE_DEXTER, SPV_PLACE_SINISTER } },
  { SPV_PATTERN_BEND, 2, { SPV_PLACE_SECOND_QUARTER, SPV_PLACE_THIRD_QUARTER } },
  { SPV_PATTERN_BENDLET, 2, { SPV_PLACE_SECOND_QUARTER, SPV_PLACE_THIRD_QUARTER } },
  { SPV_PATTERN_COTISE, 2, { SPV_PLACE_SECOND_QUARTER, SPV_PLACE_THIRD_QUARTER } },
  { SPV_PATTERN_BEND_SINISTER, 2, { SPV_PLACE_FIRST_QUARTER, SPV_PLACE_FOURTH_QUARTER } },
  { SPV_PATTERN_SCARPE, 2, { SPV_PLACE_FIRST_QUARTER, SPV_PLACE_FOURTH_QUARTER } },
  { SPV_PATTERN_CROSS,
    4,
    { SPV_PLACE_FIRST_QUARTER, SPV_PLACE_SECOND_QUARTER, SPV_PLACE_THIRD_QUARTER,
      SPV_PLACE_FOURTH_QUARTER } },
  { SPV_PATTERN_SALTIRE, 4, { SPV_PLACE_CHIEF, SPV_PLACE_DEXTER, SPV_PLACE_SINISTER, SPV_PLACE_BASE } },
  { SPV_PATTERN_PALL, 3, { SPV_PLACE_CHIEF, SPV_PLACE_DEXTER, SPV_PLACE_SINISTER } },
};

/* In a quarter beside a cross of the usual width (a fifth of the panel): common practice, no source. */
#define BESIDE_CROSS 0.28

gboolean
spv_blazon_between(SpvPatternKind kind, guint n, SpvBlazonBetween *between) {
  guint row = 0, share;

  while (row < G_N_ELEMENTS(sides) && sides[row].kind != kind)
    row++;
  if (row == G_N_ELEMENTS(sides)) {
    SpvPatternGroup group = spv_pattern_group(kind);
    if (group != SPV_GROUP_CHARGE && group != SPV_GROUP_OWN)
      return FALSE;
    /* Beside a charge, as beside a pale. */
    return spv_blazon_between(SPV_PATTERN_PALE, n, between);
  }
  *between = (SpvBlazonBetween){ .n_parts = sides[row].n };
  if (n < between->n_parts || (between->n_parts > 2 && n % between->n_parts != 0))
    return FALSE;
  share = n / between->n_parts;
  for (guint i = 0; i < between->n_parts; i++) {
    between->parts[i].place = sides[row].places[i];
    between->parts[i].number = share + (i < n % between->n_parts ? 1 : 0);
  }
  between->size = kind == SPV_PATTERN_CROSS && share == 1 ? BESIDE_CROSS : 0;
  return TRUE;
}

SpvPattern
spv_blazon_between_part(const SpvBlazonBetween *between, guint part, const SpvPattern *pattern) {
  SpvPattern copy = *pattern;

  copy.measures[SPV_CHARGE_PLACE] = (SpvMeasure){ SPV_UNIT_PLAIN, between->parts[part].place };
  copy.measures[SPV_CHARGE_NUMBER] = (SpvMeasure){ SPV_UNIT_PLAIN, between->parts[part].number };
  if (between->size > 0 && copy.measures[SPV_CHARGE_SIZE].unit == SPV_UNIT_AUTO)
    copy.measures[SPV_CHARGE_SIZE] = (SpvMeasure){ SPV_UNIT_RELATIVE, between->size };
  return copy;
}

/* Tinctures */

void
spv_blazon_tincture_clear(SpvBlazonTincture *tincture) {
  for (guint i = 0; i < G_N_ELEMENTS(tincture->parts); i++)
    g_clear_pointer(&tincture->parts[i], g_free);
}

static char *
part_in_words(const SpvBlazonTincture *tincture, guint part) {
  return tincture->own[part] ? spv_blazon_quote(tincture->parts[part]) : g_strdup(tincture->parts[part]);
}

char *
spv_blazon_tincture_write(const SpvBlazonTincture *tincture) {
  g_autofree char *first = part_in_words(tincture, 0), *second = NULL;

  if (tincture->fur == SPV_FUR_NONE)
    return g_steal_pointer(&first);
  second = part_in_words(tincture, 1);
  for (guint i = 0; spv_blazon_furs[i].words; i++)
    if (spv_blazon_furs[i].fur == tincture->fur && g_str_equal(first, spv_blazon_furs[i].ground) &&
        g_str_equal(second, spv_blazon_furs[i].spots))
      return g_strdup(spv_blazon_furs[i].words);
  for (guint i = 0; spv_blazon_fur_makers[i].words; i++)
    if (spv_blazon_fur_makers[i].fur == tincture->fur)
      return g_strdup_printf("%s %s and %s", spv_blazon_fur_makers[i].words, first, second);
  return g_strdup_printf("%s ermined %s", first, second);
}
