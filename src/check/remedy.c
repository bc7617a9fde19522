/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The smallest change of one measure that clears a warning, found by trying. */
#include "check/check-private.h"

#include <math.h>

/* No search recomposes the panel more often than this. */
#define MAX_TRIALS 40

/* Lengths are tried in steps of 0.05 mm, which calipers can set: so many to the millimetre. */
#define STEPS_A_MM 20

typedef struct {
  const SpvScheme *scheme;
  guint panel, layer;
  const SpvComposition *now;
  guint n_seen; /* shapes of the layer that are to be seen now */
  const GArray *known;
  GCancellable *cancellable;
  guint trials;
} Search;

SpvScheme *
spv_remedy_apply(const SpvRemedy *remedy, guint panel, const SpvScheme *scheme) {
  const SpvPanel *before = scheme->panels[panel];
  g_autoptr(SpvLayer)
      layer = spv_layer_with_measure(before->layers[remedy->layer], remedy->measure, remedy->value);
  g_autoptr(SpvPanel) after = spv_panel_with_layer(before, remedy->layer, layer);

  return spv_scheme_with_panel(scheme, panel, after);
}

/* How many of LAYER's shapes are to be seen. */
static guint
count_seen(const SpvPartition *partition, guint layer) {
  const GPtrArray *shapes = partition->composition->shapes;
  guint seen = 0;

  for (guint i = 0; i < shapes->len; i++) {
    const SpvLaidShape *laid = g_ptr_array_index(shapes, i);

    if (laid->layer == layer && !spv_shape_is_empty(g_ptr_array_index(partition->visible, i)))
      seen++;
  }
  return seen;
}

/* Whether setting MEASURE to VALUE clears the layer, adds no warning elsewhere, and keeps all of the layer to
 * be seen. FALSE, with ERROR set, when cancelled. */
static gboolean
try_value(Search *search, guint measure, SpvMeasure value, GError **error) {
  SpvRemedy remedy = { search->layer, measure, value };
  g_autoptr(SpvScheme) changed = spv_remedy_apply(&remedy, search->panel, search->scheme);
  g_autoptr(SpvComposition) composition = spv_compose(changed, search->panel);
  g_autoptr(SpvPartition) partition = spv_partition_new(composition, search->cancellable, error);

  search->trials++;
  if (partition == NULL)
    return FALSE;
  return spv_narrow_is_clear(partition, changed->finest_line, search->layer, search->known,
                             search->cancellable, error) &&
         count_seen(partition, search->layer) >= search->n_seen;
}

/* How many whole steps MM holds. */
static double
steps_in(double mm) {
  return floor(mm * STEPS_A_MM + 1e-9);
}

/* Step number K of MEASURE's way from START: a count goes down by ones, a length up by the step. */
static SpvMeasure
value_at(const SpvMeasureSpec *spec, double start, guint k) {
  if (spec->type == SPV_MEASURE_COUNT)
    return (SpvMeasure){ SPV_UNIT_PLAIN, start - k };
  return (SpvMeasure){ SPV_UNIT_MM, (steps_in(start) + k) / STEPS_A_MM };
}

/* How many steps the way from START has. */
static guint
n_steps(const Search *search, const SpvMeasureSpec *spec, double start) {
  const SpvOutlineSpec *outline = &search->now->panel->outline;

  if (spec->type == SPV_MEASURE_COUNT)
    return start > spec->min ? (guint) (start - spec->min) : 0;
  double most = MIN(spec->max, MAX(outline->width, outline->height));
  double steps = steps_in(most) - steps_in(start);
  return steps > 0 ? (guint) steps : 0;
}

/* A way along one measure: how far it is known to fail, and where it clears the layer (0: not found). */
typedef struct {
  guint measure;
  const SpvMeasureSpec *spec;
  double start;
  guint bad, good;
} Way;

/* Tries step K of WAY. FALSE, with ERROR set, when cancelled. */
static gboolean
try_step(Search *search, Way *way, guint k, GError **error) {
  g_autoptr(GError) cancelled = NULL;

  if (try_value(search, way->measure, value_at(way->spec, way->start, k), &cancelled))
    way->good = k;
  else
    way->bad = k;
  if (cancelled == NULL)
    return TRUE;
  g_propagate_error(error, g_steal_pointer(&cancelled));
  return FALSE;
}

/* Looks for the first step of WAY that clears the layer: strides that double until one does, then halves
 * between. FALSE, with ERROR set, when cancelled. */
static gboolean
search_way(Search *search, Way *way, GError **error) {
  guint last = n_steps(search, way->spec, way->start);

  for (guint stride = 1; way->good == 0; stride *= 2) {
    guint k = MIN(way->bad + stride, last);

    if (k == way->bad || search->trials >= MAX_TRIALS)
      return TRUE;
    if (!try_step(search, way, k, error))
      return FALSE;
  }
  while (way->good - way->bad > 1 && search->trials < MAX_TRIALS)
    if (!try_step(search, way, way->bad + (way->good - way->bad) / 2, error))
      return FALSE;
  return TRUE;
}

/* How many cells, stripes or points the layer has, as its draft shows. */
static double
count_in_effect(const SpvDraft *draft, const char *key) {
  guint n = 0;

  if (g_strcmp0(key, "points") == 0) {
    for (guint i = 0; i < draft->dots->len; i++)
      n += g_array_index(draft->dots, SpvDraftDot, i).kind == SPV_DOT_TIP;
    return n;
  }
  SpvLineKind kind = g_strcmp0(key, "columns") == 0 ? SPV_LINE_COLUMN
                     : g_strcmp0(key, "rows") == 0  ? SPV_LINE_ROW
                                                    : SPV_LINE_DIVISION;
  for (guint i = 0; i < draft->lines->len; i++)
    n += g_array_index(draft->lines, SpvDraftLine, i).kind == kind;
  return n + 1;
}

/* Whether another measure, that has been given, takes the place of KEY. */
static gboolean
is_overruled(const SpvPattern *pattern, const char *key) {
  const char *instead = spv_words_overruled_by(key);
  int index = instead != NULL ? spv_pattern_measure_index(pattern->kind, instead) : -1;

  return index >= 0 && pattern->measures[index].unit != SPV_UNIT_AUTO;
}

/* Where the way of MEASURE starts: what is in effect now. FALSE when the measure can't mend. */
static gboolean
measure_start(const Search *search, guint measure, double *start) {
  const SpvPattern *pattern = &search->now->panel->layers[search->layer]->pattern;
  const SpvDraft *draft = g_ptr_array_index(search->now->drafts, search->layer);
  const SpvMeasureSpec *spec = &spv_pattern_info(pattern->kind)->measures[measure];

  if (draft == NULL || !spv_words_can_mend(spec->key) || is_overruled(pattern, spec->key))
    return FALSE;
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    *start = spv_pattern_measure(pattern, measure, search->now->outline, count_in_effect(draft, spec->key));
    return TRUE;
  case SPV_MEASURE_LENGTH:
    /* A length that the pattern works out follows from the counts, which are tried themselves. */
    *start = spv_pattern_measure(pattern, measure, search->now->outline, -1);
    return *start >= 0;
  case SPV_MEASURE_ANGLE:
  case SPV_MEASURE_CHOICE:
    return FALSE;
  }
  return FALSE;
}

/* Tries the layer's measures of TYPE in their order; FOUND says whether one mends. FALSE, with ERROR set,
 * when cancelled. */
static gboolean
search_type(Search *search, SpvMeasureType type, SpvRemedy *remedy, gboolean *found, GError **error) {
  const SpvPatternInfo *info = spv_pattern_info(search->now->panel->layers[search->layer]->pattern.kind);

  for (guint i = 0; i < info->n_measures && !*found; i++) {
    Way way = { .measure = i, .spec = &info->measures[i] };

    if (way.spec->type != type || !measure_start(search, i, &way.start))
      continue;
    if (!search_way(search, &way, error))
      return FALSE;
    *found = way.good > 0;
    *remedy = (SpvRemedy){ search->layer, i, value_at(way.spec, way.start, way.good) };
  }
  return TRUE;
}

gboolean
spv_remedy_find(const SpvPartition *partition, guint layer, const GArray *known, GCancellable *cancellable,
                SpvRemedy *remedy, gboolean *found, GError **error) {
  const SpvComposition *now = partition->composition;
  Search search = {
    .scheme = now->scheme,
    .panel = now->panel_index,
    .layer = layer,
    .now = now,
    .n_seen = count_seen(partition, layer),
    .known = known,
    .cancellable = cancellable,
  };

  *found = FALSE;
  /* Fewer of the same is the smaller change to a design. */
  return search_type(&search, SPV_MEASURE_COUNT, remedy, found, error) &&
         search_type(&search, SPV_MEASURE_LENGTH, remedy, found, error);
}
