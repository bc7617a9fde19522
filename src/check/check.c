/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a panel to its findings, in the order in which they matter. */
#include "check/check-private.h"

#include <math.h>

/* A smaller share of the panel than this may be bare: the hair between two exact areas. */
#define BARE_SHARE 1e-6

static SpvFinding *
add_finding(GPtrArray *findings, SpvFindingKind kind, SpvSeverity severity, guint panel) {
  SpvFinding *finding = g_new0(SpvFinding, 1);

  finding->kind = kind;
  finding->severity = severity;
  finding->panel = panel;
  finding->layer = -1;
  finding->tincture = -1;
  g_ptr_array_add(findings, finding);
  return finding;
}

/* The finding of a warning on LAYER that has been searched for a remedy, or NULL. */
static const SpvFinding *
find_warning(const GPtrArray *findings, int layer) {
  for (guint i = 0; i < findings->len; i++) {
    const SpvFinding *finding = g_ptr_array_index(findings, i);

    if (finding->severity == SPV_SEVERITY_WARNING && finding->layer == layer)
      return finding;
  }
  return NULL;
}

static gboolean
add_narrow(GPtrArray *findings, const SpvPartition *partition, const GArray *known, const SpvNarrow *narrow,
           GCancellable *cancellable, GError **error) {
  const SpvComposition *composition = partition->composition;
  gboolean own = narrow->cause == SPV_CAUSE_PATTERN;
  /* A remedy clears its whole layer: one search will do for both of its tinctures. */
  const SpvFinding *same = own ? find_warning(findings, narrow->layer) : NULL;
  SpvFinding *finding = add_finding(findings, SPV_FINDING_NARROW_STROKE,
                                    own ? SPV_SEVERITY_WARNING : SPV_SEVERITY_NOTE, composition->panel_index);

  finding->layer = narrow->layer;
  finding->tincture = narrow->tincture;
  finding->place = narrow->place;
  finding->width = narrow->width;
  finding->limit = composition->scheme->finest_line;
  finding->count = narrow->count;
  finding->cause = narrow->cause;
  if (!own)
    return TRUE;
  if (same != NULL) {
    finding->has_remedy = same->has_remedy;
    finding->remedy = same->remedy;
    return TRUE;
  }
  return spv_remedy_find(partition, narrow, known, cancellable, &finding->remedy, &finding->has_remedy,
                         error);
}

static void
add_bare(GPtrArray *findings, const SpvPartition *partition) {
  const SpvComposition *composition = partition->composition;
  double share = spv_shape_area(partition->bare) / spv_shape_area(spv_outline_shape(composition->outline));
  SpvFinding *finding;

  if (!(share > BARE_SHARE) || !spv_panel_has_design(composition->panel))
    return;
  finding = add_finding(findings, SPV_FINDING_BARE, SPV_SEVERITY_NOTE, composition->panel_index);
  finding->share = MIN(share, 1);
  finding->count = 1;
  finding->place = spv_shape_middle(partition->bare, NULL);
}

static void
add_not_measured(GPtrArray *findings, const SpvComposition *composition) {
  SpvFinding *finding;

  if (composition->panel->measured || !spv_panel_has_design(composition->panel))
    return;
  finding = add_finding(findings, SPV_FINDING_NOT_MEASURED, SPV_SEVERITY_NOTE, composition->panel_index);
  finding->count = 1;
  finding->place = spv_box_centre(spv_outline_bounds(composition->outline));
}

/* Warnings first; then by kind; then the narrower first, and whatever tells two apart. */
static int
compare_findings(gconstpointer a, gconstpointer b) {
  const SpvFinding *one = *(const SpvFinding *const *) a;
  const SpvFinding *other = *(const SpvFinding *const *) b;

  if (one->severity != other->severity)
    return one->severity > other->severity ? -1 : 1;
  if (one->kind != other->kind)
    return one->kind < other->kind ? -1 : 1;
  if (one->width != other->width)
    return one->width < other->width ? -1 : 1;
  if (one->layer != other->layer)
    return one->layer < other->layer ? -1 : 1;
  return one->tincture - other->tincture;
}

GPtrArray *
spv_check_panel(const SpvScheme *scheme, guint panel, GCancellable *cancellable, GError **error) {
  g_autoptr(GPtrArray) findings = g_ptr_array_new_with_free_func(g_free);
  g_autoptr(SpvComposition) composition = NULL;
  g_autoptr(SpvPartition) partition = NULL;
  g_autoptr(GArray) narrow = NULL;

  g_return_val_if_fail(panel < scheme->n_panels, NULL);
  composition = spv_compose(scheme, panel);
  partition = spv_partition_new(composition, cancellable, error);
  if (partition == NULL)
    return NULL;
  narrow = spv_narrow_find(partition, scheme->finest_line, cancellable, error);
  if (narrow == NULL)
    return NULL;

  for (guint i = 0; i < narrow->len; i++)
    if (!add_narrow(findings, partition, narrow, &g_array_index(narrow, SpvNarrow, i), cancellable, error))
      return NULL;
  add_bare(findings, partition);
  add_not_measured(findings, composition);
  g_ptr_array_sort(findings, compare_findings);
  return g_steal_pointer(&findings);
}

GPtrArray *
spv_check_scheme(const SpvScheme *scheme, GCancellable *cancellable,
                 void (*progress)(double fraction, gpointer data), gpointer data, GError **error) {
  g_autoptr(GPtrArray) all = g_ptr_array_new_with_free_func(g_free);

  for (guint i = 0; i < scheme->n_panels; i++) {
    GPtrArray *findings = spv_check_panel(scheme, i, cancellable, error);

    if (findings == NULL)
      return NULL;
    g_ptr_array_extend_and_steal(all, findings);
    if (progress != NULL)
      progress((i + 1.0) / scheme->n_panels, data);
  }
  return g_steal_pointer(&all);
}

/* Whether LAYER has the measure of REMEDY, and could take its value. */
static gboolean
fits(const SpvRemedy *remedy, const SpvLayer *layer) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);

  return remedy->measure < info->n_measures &&
         spv_measure_is_valid(&info->measures[remedy->measure], remedy->value);
}

SpvScheme *
spv_finding_apply(const SpvFinding *finding, const SpvScheme *scheme) {
  /* A finding may be older than the scheme: what it speaks of may be gone. */
  if (!finding->has_remedy || finding->panel >= scheme->n_panels ||
      finding->remedy.layer >= scheme->panels[finding->panel]->n_layers ||
      !fits(&finding->remedy, scheme->panels[finding->panel]->layers[finding->remedy.layer]))
    return spv_scheme_ref(scheme);
  return spv_remedy_apply(&finding->remedy, finding->panel, scheme);
}
