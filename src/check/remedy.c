/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The smallest change of one measure that clears a warning, found by trying. */
#include "check/check-private.h"

#include <math.h>

/* No search recomposes the panel more often than this; a trial for which all of the panel has to be measured
 * counts as SLOW. */
#define MAX_TRIALS 40
#define SLOW 4

/* Lengths are tried in steps of 0.05 mm, which calipers can set: so many to the millimetre. */
#define STEPS_A_MM 20

typedef struct {
  const SpvScheme *scheme;
  guint panel, layer;
  const SpvComposition *now;
  guint n_seen; /* shapes of the layer that are to be seen now */
  const GArray *known;
  gboolean may_surface; /* a layer below may come to show something narrow */
  double width;         /* mm, of the layer's narrowest */
  GCancellable *cancellable;
  guint trials;
  double best_change; /* the factor of the smallest change that is known to mend; INFINITY at first */
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

/* What can be said of LAYER by what it lays: the worst of its shapes. */
static SpvAlone
layer_alone(const SpvComposition *composition, guint layer, double limit) {
  SpvAlone worst = SPV_ALONE_WIDE;

  for (guint i = 0; i < composition->shapes->len; i++) {
    if (((const SpvLaidShape *) g_ptr_array_index(composition->shapes, i))->layer != layer)
      continue;
    switch (spv_narrow_alone(composition, i, limit)) {
    case SPV_ALONE_NARROW:
      return SPV_ALONE_NARROW;
    case SPV_ALONE_UNSURE:
      worst = SPV_ALONE_UNSURE;
      break;
    case SPV_ALONE_WIDE:
      break;
    }
  }
  return worst;
}

/* Whether setting MEASURE to VALUE clears the layer, adds no warning below it, and keeps all of the layer to
 * be seen. FALSE, with ERROR set, when cancelled. */
static gboolean
try_value(Search *search, guint measure, SpvMeasure value, GError **error) {
  SpvRemedy remedy = { search->layer, measure, value };
  double limit = search->scheme->finest_line;

  search->trials++;
  if (g_cancellable_set_error_if_cancelled(search->cancellable, error))
    return FALSE;
  g_autoptr(SpvScheme) changed = spv_remedy_apply(&remedy, search->panel, search->scheme);
  g_autoptr(SpvComposition) composition = spv_compose(changed, search->panel);
  SpvAlone alone = layer_alone(composition, search->layer, limit);
  if (alone == SPV_ALONE_NARROW)
    return FALSE;
  g_autoptr(SpvPartition) partition = spv_partition_new(composition, search->cancellable, error);
  if (partition == NULL || count_seen(partition, search->layer) < search->n_seen)
    return FALSE;
  if (alone == SPV_ALONE_WIDE && !search->may_surface)
    return TRUE;
  search->trials += SLOW - 1;
  return spv_narrow_is_clear(partition, limit, search->layer, search->known, search->cancellable, error);
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

/* A way along one measure: how far it is known to fail, and where it clears the layer (0: not found). */
typedef struct {
  guint measure;
  const SpvMeasureSpec *spec;
  double start;
  guint bad, good;
} Way;

/* By which factor step K of WAY changes the measure; above 1. */
static double
change_at(const Way *way, guint k) {
  double to = value_at(way->spec, way->start, k).value;

  if (way->spec->type == SPV_MEASURE_COUNT)
    return to > 0 ? way->start / to : INFINITY;
  return to / way->start;
}

/* Whether step K of WAY changes less than the best that is known to mend. */
static gboolean
is_smaller(const Search *search, const Way *way, guint k) {
  return change_at(way, k) < search->best_change * (1 - 1e-9);
}

/* How many steps WAY has, that are allowed and make sense. */
static guint
n_steps(const Search *search, const Way *way) {
  const SpvOutlineSpec *outline = &search->now->panel->outline;

  if (way->spec->type == SPV_MEASURE_COUNT)
    return way->start > way->spec->min ? (guint) (way->start - way->spec->min) : 0;
  double most = MIN(way->spec->max, MAX(outline->width, outline->height));
  double steps = steps_in(most) - steps_in(way->start);
  return steps > 0 ? (guint) steps : 0;
}

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

/* The step that would do if the narrowest grew just as the measure does; 0 when there is none. */
static guint
guess_step(const Search *search, const Way *way) {
  double limit = search->scheme->finest_line;
  double k = way->spec->type == SPV_MEASURE_COUNT
                 ? way->start - floor(way->start * search->width / limit + 1e-9)
                 : ceil(way->start * limit / search->width * STEPS_A_MM - 1e-9) - steps_in(way->start);
  guint last = n_steps(search, way);

  return last > 0 ? (guint) CLAMP(k, 1, last) : 0;
}

/* Tries the likely step of WAY. FALSE, with ERROR set, when cancelled. */
static gboolean
try_guess(Search *search, Way *way, GError **error) {
  guint k = guess_step(search, way);

  if (k == 0 || !is_smaller(search, way, k) || search->trials >= MAX_TRIALS)
    return TRUE;
  if (!try_step(search, way, k, error))
    return FALSE;
  if (way->good > 0)
    search->best_change = change_at(way, way->good);
  return TRUE;
}

/* Looks for the first step of WAY that clears the layer, from what is known of it, by strides that double and
 * then by halves. Gives up where the change is no smaller than the best that is known. FALSE, with ERROR set,
 * when cancelled. */
static gboolean
search_way(Search *search, Way *way, GError **error) {
  guint last = n_steps(search, way);

  for (guint stride = 1; way->good == 0; stride *= 2) {
    guint k = MIN(way->bad + stride, last);

    if (k == way->bad || search->trials >= MAX_TRIALS || !is_smaller(search, way, way->bad + 1))
      return TRUE;
    if (!try_step(search, way, k, error))
      return FALSE;
  }
  for (guint stride = 1; way->bad == 0 && way->good > 1 && search->trials < MAX_TRIALS; stride *= 2)
    if (!try_step(search, way, way->good > stride ? way->good - stride : 1, error))
      return FALSE;
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

/* What stands for the length KEY of the layer where it is not given; 0 where that follows from something
 * else, which is tried itself. */
static double
length_in_effect(const Search *search, const char *key) {
  gboolean size = g_str_equal(key, "size") || g_str_equal(key, "diameter");

  return size ? spv_composition_charge_size(search->now, search->layer) : 0;
}

/* Likewise for a count. */
static double
counted(const Search *search, const SpvDraft *draft, const char *key) {
  return g_str_equal(key, "periods") ? spv_composition_teeth(search->now, search->layer)
                                     : count_in_effect(draft, key);
}

/* Where the way of MEASURE starts: what is in effect now. FALSE when the measure can't mend. */
static gboolean
measure_start(const Search *search, guint measure, double *start) {
  const SpvPattern *pattern = &search->now->panel->layers[search->layer]->pattern;
  const SpvDraft *draft = g_ptr_array_index(search->now->drafts, search->layer);
  const SpvMeasureSpec *spec = &spv_pattern_info(pattern->kind)->measures[measure];
  g_autoptr(SpvFrame) frame = spv_composition_frame(search->now, search->layer);
  const SpvOutline *outline = frame->outline;

  if (draft == NULL || !spv_words_can_mend(spec->key) || is_overruled(pattern, spec->key) ||
      !spv_pattern_measure_counts(pattern, measure))
    return FALSE;
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    *start = spv_pattern_measure(pattern, measure, outline, counted(search, draft, spec->key));
    return TRUE;
  case SPV_MEASURE_LENGTH:
    /* One of 0 is not there to be widened. */
    *start = spv_pattern_measure(pattern, measure, outline, length_in_effect(search, spec->key));
    return *start > 0;
  case SPV_MEASURE_ANGLE:
  case SPV_MEASURE_CHOICE:
    return FALSE;
  }
  return FALSE;
}

/* The ways of the layer's measures of TYPE, added to WAYS. */
static void
add_ways(const Search *search, SpvMeasureType type, GArray *ways) {
  const SpvPatternInfo *info = spv_pattern_info(search->now->panel->layers[search->layer]->pattern.kind);

  for (guint i = 0; i < info->n_measures; i++) {
    Way way = { .measure = i, .spec = &info->measures[i] };

    if (way.spec->type == type && measure_start(search, i, &way.start))
      g_array_append_val(ways, way);
  }
}

/* Tries the likely step of every way first: it tells how far along the others it is worth to look. FALSE,
 * with ERROR set, when cancelled. */
static gboolean
search_ways(Search *search, GArray *ways, GError **error) {
  for (guint i = 0; i < ways->len; i++)
    if (!try_guess(search, &g_array_index(ways, Way, i), error))
      return FALSE;
  for (guint i = 0; i < ways->len; i++) {
    Way *way = &g_array_index(ways, Way, i);

    if (!search_way(search, way, error))
      return FALSE;
    if (way->good > 0)
      search->best_change = MIN(search->best_change, change_at(way, way->good));
  }
  return TRUE;
}

gboolean
spv_remedy_find(const SpvPartition *partition, const SpvNarrow *narrow, const GArray *known,
                GCancellable *cancellable, SpvRemedy *remedy, gboolean *found, GError **error) {
  const SpvComposition *now = partition->composition;
  g_autoptr(GArray) ways = g_array_new(FALSE, FALSE, sizeof(Way));
  Search search = {
    .scheme = now->scheme,
    .panel = now->panel_index,
    .layer = (guint) narrow->layer,
    .now = now,
    .n_seen = count_seen(partition, (guint) narrow->layer),
    .known = known,
    .may_surface = spv_narrow_may_surface(now, now->scheme->finest_line, (guint) narrow->layer, known),
    .width = narrow->width,
    .cancellable = cancellable,
    .best_change = INFINITY,
  };

  *found = FALSE;
  /* Of equal changes the first is taken: fewer of the same is the smaller one to a design. */
  add_ways(&search, SPV_MEASURE_COUNT, ways);
  add_ways(&search, SPV_MEASURE_LENGTH, ways);
  if (!search_ways(&search, ways, error))
    return FALSE;
  for (guint i = ways->len; i-- > 0;) {
    const Way *way = &g_array_index(ways, Way, i);

    if (way->good == 0 || change_at(way, way->good) > search.best_change * (1 + 1e-9))
      continue;
    *found = TRUE;
    *remedy = (SpvRemedy){ search.layer, way->measure, value_at(way->spec, way->start, way->good) };
  }
  return TRUE;
}
