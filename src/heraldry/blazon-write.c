/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writing a blazon: its phrases, as the reader takes them apart. */
#include "heraldry/blazon-write-private.h"

#include <string.h>

#include "heraldry/arrange.h"

static const SpvBlazonItem *
item_at(const GPtrArray *items, guint index) {
  return g_ptr_array_index(items, index);
}

static gboolean
same_tinctures(const SpvBlazonItem *a, const SpvBlazonItem *b) {
  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
    if (g_strcmp0(a->tinctures[slot], b->tinctures[slot]) != 0)
      return FALSE;
  return TRUE;
}

static gboolean
is_varied(const SpvBlazonItem *item) {
  return spv_blazon_varied_word(item->pattern.kind) != NULL;
}

/* Whether item INDEX, after item BEFORE, can follow it without a comma: "fretty or", "semy of mullets or". */
static gboolean
follows(const GPtrArray *items, guint before, guint index) {
  const SpvBlazonItem *item;

  if (index >= items->len)
    return FALSE;
  item = item_at(items, index);
  if (item->on != spv_blazon_beneath(items, before) || spv_pattern_info(item->pattern.kind)->n_slots != 1)
    return FALSE;
  return is_varied(item) || spv_blazon_is_semy(&item->pattern);
}

/* Whether item INDEX is a bare one and the next one a division that covers it: "a fess chequy azure and
 * argent". */
static gboolean
is_covered(const GPtrArray *items, guint index) {
  const SpvBlazonItem *item = item_at(items, index), *next;

  if (index + 1 >= items->len || item->tinctures[0] || item->counterchange >= 0 ||
      !spv_blazon_can_bear(item->pattern.kind))
    return FALSE;
  next = item_at(items, index + 1);
  return next->on == (int) index && is_varied(next) && spv_pattern_info(next->pattern.kind)->n_slots > 1;
}

/* Whether item NEXT is what "cotised" lays beside item INDEX. */
static gboolean
is_cotised(const GPtrArray *items, guint index, guint next) {
  const SpvBlazonItem *item = item_at(items, index), *beside;
  SpvBlazonItem expected;

  if (next >= items->len)
    return FALSE;
  beside = item_at(items, next);
  expected = *beside;
  if (beside->on != item->on || beside->counterchange >= 0 ||
      !spv_blazon_cotise(&item->pattern, &expected.pattern))
    return FALSE;
  return spv_blazon_item_equal(beside, &expected);
}

/* Whether the items from NEXT on are charges that stand on the sides of item INDEX, as "between" puts them.
 * What they are when they aren't shared out goes to WHOLE. */
static gboolean
is_between(const GPtrArray *items, guint index, guint next, SpvBlazonBetween *between, SpvPattern *whole) {
  const SpvBlazonItem *item = item_at(items, index), *first;
  guint n = 0;
  int place;

  if (!spv_blazon_between(item->pattern.kind, 12, between) || next + between->n_parts > items->len)
    return FALSE;
  first = item_at(items, next);
  place = spv_pattern_measure_index(first->pattern.kind, "place");
  if (place != SPV_CHARGE_PLACE)
    return FALSE;
  for (guint part = 0; part < between->n_parts; part++) {
    const SpvBlazonItem *other = item_at(items, next + part);
    if (other->pattern.kind != first->pattern.kind)
      return FALSE;
    n += (guint) CLAMP(other->pattern.measures[SPV_CHARGE_NUMBER].value, 0, SPV_PATTERN_MAX_COUNT);
  }
  if (n > SPV_PATTERN_MAX_COUNT || !spv_blazon_between(item->pattern.kind, n, between))
    return FALSE;
  *whole = first->pattern;
  SpvPattern preset = spv_pattern_preset(whole->kind);
  whole->measures[SPV_CHARGE_PLACE] = preset.measures[SPV_CHARGE_PLACE];
  whole->measures[SPV_CHARGE_NUMBER] = (SpvMeasure){ SPV_UNIT_PLAIN, n };
  SpvMeasure beside = { SPV_UNIT_RELATIVE, between->size };
  if (between->size > 0 && spv_measure_equal(whole->measures[SPV_CHARGE_SIZE], beside))
    whole->measures[SPV_CHARGE_SIZE] = (SpvMeasure){ SPV_UNIT_AUTO, 0 };
  if (!spv_measure_equal(whole->measures[SPV_CHARGE_ARRANGEMENT], preset.measures[SPV_CHARGE_ARRANGEMENT]))
    return FALSE;
  for (guint part = 0; part < between->n_parts; part++) {
    const SpvBlazonItem *other = item_at(items, next + part);
    SpvBlazonItem expected = *other;
    expected.pattern = spv_blazon_between_part(between, part, whole);
    if (!spv_blazon_item_equal(other, &expected) || other->on != item->on || other->counterchange >= 0 ||
        !same_tinctures(first, other))
      return FALSE;
  }
  return TRUE;
}

static const char *
ordinal_ending(guint n) {
  static const char *const endings[] = { "th", "st", "nd", "rd" };
  guint units = n % 10;

  return units < G_N_ELEMENTS(endings) && n % 100 / 10 != 1 ? endings[units] : "th";
}

/* Writes "on the second fess ", item INDEX as items before BEFORE call it. */
static void
write_reference(SpvBlazonWriter *writer, const char *word, int index, guint before) {
  SpvPatternKind kind = item_at(writer->items, (guint) index)->pattern.kind;
  g_autofree char *noun = spv_blazon_varied_word(kind) ? g_strdup(spv_blazon_varied_word(kind))
                                                       : spv_blazon_noun(kind, spv_blazon_is_pair(kind));
  guint n = 0, ordinal = 0;

  for (guint i = 0; i < before; i++)
    if (item_at(writer->items, i)->pattern.kind == kind) {
      n++;
      if (i == (guint) index)
        ordinal = n;
    }
  g_string_append_printf(writer->out, "%s the ", word);
  if (n > 1 && ordinal <= 12)
    g_string_append_printf(writer->out, "%s ", spv_blazon_ordinals[ordinal - 1]);
  else if (n > 1)
    g_string_append_printf(writer->out, "%u%s ", ordinal, ordinal_ending(ordinal));
  g_string_append(writer->out, noun);
}

/* The tinctures of item INDEX, or that it is counterchanged. */
static void
write_tinctures(SpvBlazonWriter *writer, guint index) {
  const SpvBlazonItem *item = item_at(writer->items, index);
  guint n = spv_pattern_info(item->pattern.kind)->n_slots;

  if (item->counterchange >= 0) {
    g_string_append(writer->out, " counterchanged");
    if (item->counterchange != spv_blazon_counterchange(writer->items, index))
      write_reference(writer, " across", item->counterchange, index);
    return;
  }
  for (guint slot = 0; slot < n; slot++)
    g_string_append_printf(writer->out, "%s%s",
                           slot == 0       ? " "
                           : slot + 1 == n ? " and "
                                           : ", ",
                           item->tinctures[slot] ? item->tinctures[slot] : "bare");
}

static guint write_item(SpvBlazonWriter *writer, guint index, gboolean in_place);

/* Writes the division that covers the bare item INDEX, or its tincture. Returns the next item. */
static guint
write_cover(SpvBlazonWriter *writer, guint index) {
  if (!is_covered(writer->items, index)) {
    spv_blazon_write_plain(writer, index);
    write_tinctures(writer, index);
    return index + 1;
  }
  spv_blazon_write_words(writer, index + 1, &item_at(writer->items, index + 1)->pattern, FALSE);
  spv_blazon_write_plain(writer, index + 1);
  write_tinctures(writer, index + 1);
  return index + 2;
}

/* Writes "between three mullets sable", where that is what stands there. */
static guint
write_between(SpvBlazonWriter *writer, guint index, guint next) {
  SpvBlazonBetween between;
  SpvPattern whole;

  if (!is_between(writer->items, index, next, &between, &whole))
    return next;
  g_string_append(writer->out, " between");
  spv_blazon_write_words(writer, next, &whole, FALSE);
  write_tinctures(writer, next);
  return next + between.n_parts;
}

/* Writes what belongs to item INDEX after its tincture; ON: the phrase began with "on". Returns the next
 * item. */
static guint
write_tail(SpvBlazonWriter *writer, guint index, guint next, gboolean on) {
  const GPtrArray *items = writer->items;
  const SpvBlazonItem *item = item_at(items, index);
  gboolean bears = spv_blazon_can_bear(item->pattern.kind);

  if (follows(items, index, next)) {
    spv_blazon_write_words(writer, next, &item_at(items, next)->pattern, FALSE);
    spv_blazon_write_plain(writer, next);
    write_tinctures(writer, next);
    return next + 1;
  }
  if (is_cotised(items, index, next)) {
    const char *words = item_at(items, next)->tinctures[0];
    g_string_append_printf(writer->out, " cotised %s", words ? words : "bare");
    next++;
  }
  guint after = write_between(writer, index, next);
  if (after > next)
    return after;
  if (!bears || next >= items->len || item_at(items, next)->on != (int) index || follows(items, index, next))
    return next;
  if (!on) {
    gboolean each = item->pattern.kind >= SPV_PATTERN_ROUNDEL &&
                    item->pattern.kind <= SPV_PATTERN_PATH_CHARGE &&
                    item->pattern.measures[SPV_CHARGE_NUMBER].value > 1;
    g_string_append(writer->out, each ? " each charged with" : " charged with");
  }
  return write_item(writer, next, TRUE);
}

/* Whether the phrase of item INDEX begins with "on": what lies on it comes right after it and what belongs to
 * it. */
static gboolean
begins_with_on(const SpvBlazonWriter *writer, guint index) {
  const GPtrArray *items = writer->items;
  guint next = index + (is_covered(items, index) ? 2 : 1);
  SpvBlazonBetween between;
  SpvPattern whole;

  if (is_varied(item_at(items, index)) || !spv_blazon_can_bear(item_at(items, index)->pattern.kind) ||
      spv_blazon_is_semy(&item_at(items, index)->pattern) || follows(items, index, next))
    return FALSE;
  if (is_cotised(items, index, next))
    next++;
  if (is_between(items, index, next, &between, &whole))
    return FALSE;
  return next < items->len && item_at(items, next)->on == (int) index && !follows(items, index, next);
}

/* Writes item INDEX with all that belongs to it. IN_PLACE: what it is laid on has just been said. Returns the
 * next item. */
static guint
write_item(SpvBlazonWriter *writer, guint index, gboolean in_place) {
  const SpvBlazonItem *item = item_at(writer->items, index);
  gboolean on = FALSE, first = index == 0;

  if (!in_place && item->on >= 0)
    write_reference(writer, " on", item->on, index);
  if (!in_place && item->on < 0 && !first && is_varied(item))
    g_string_append(writer->out, " overall");
  if (!in_place && item->on < 0) {
    on = begins_with_on(writer, index);
    g_string_append(writer->out, on ? " on" : "");
  }
  spv_blazon_write_words(writer, index, &item->pattern, !in_place && !on);
  return write_tail(writer, index, write_cover(writer, index), on);
}

/* A field that is the first layer needs no word but its tincture. */
static gboolean
is_plain_field(const SpvBlazonItem *item) {
  return item->pattern.kind == SPV_PATTERN_FIELD && item->on < 0 && item->counterchange < 0 &&
         !item->pattern.mirrored && item->tinctures[0];
}

char *
spv_blazon_write(const GPtrArray *items) {
  SpvBlazonWriter writer = { .items = items, .out = g_string_new(NULL) };
  guint index = 0;

  if (items->len > 0 && is_plain_field(item_at(items, 0))) {
    g_string_append_printf(writer.out, " %s", item_at(items, 0)->tinctures[0]);
    index = write_tail(&writer, 0, 1, FALSE);
  }
  while (index < items->len) {
    g_string_append(writer.out, index > 0 ? "," : "");
    index = write_item(&writer, index, FALSE);
  }
  if (writer.out->len > 0) {
    g_string_erase(writer.out, 0, 1);
    writer.out->str[0] = g_ascii_toupper(writer.out->str[0]);
  }
  return g_string_free(writer.out, FALSE);
}
