/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Schemes: making, copying; each edit copies the way from what changed up to the root. */
#include "config.h"

#include "scheme/scheme-private.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>
#include <string.h>

#include "scheme/equal-private.h"
#include "scheme/name-private.h"

G_DEFINE_QUARK(spv_scheme_error, spv_scheme_error)

SpvScheme *
spv_scheme_new(const char *title, const char *harness) {
  g_autofree char *clean_title = spv_name_clean(title);
  g_autofree char *clean_harness = spv_name_clean(harness);

  SpvScheme *scheme = g_new0(SpvScheme, 1);
  g_atomic_ref_count_init(&scheme->refs);
  scheme->title = spv_shared_new(clean_title != NULL ? clean_title : _("Untitled"));
  scheme->note = spv_shared_new("");
  scheme->harness = spv_shared_new(clean_harness != NULL ? clean_harness : _("Unnamed harness"));
  scheme->finest_line = SPV_FINEST_LINE_PRESET;
  return scheme;
}

SpvScheme *
spv_scheme_ref(const SpvScheme *scheme) {
  SpvScheme *self = (SpvScheme *) scheme;
  g_atomic_ref_count_inc(&self->refs);
  return self;
}

static void
free_panels(SpvPanel *const *panels, guint n) {
  for (guint i = 0; i < n; i++)
    spv_panel_unref(panels[i]);
  g_free((gpointer) panels);
}

static void
free_tinctures(const SpvTincture *tinctures, guint n) {
  for (guint i = 0; i < n; i++)
    spv_tincture_clear(&tinctures[i]);
  g_free((gpointer) tinctures);
}

static void
free_unknown_tinctures(json_t **unknown, guint n) {
  if (unknown == NULL)
    return;
  for (guint i = 0; i < n; i++)
    json_decref(unknown[i]);
  g_free(unknown);
}

void
spv_scheme_unref(SpvScheme *scheme) {
  if (scheme == NULL || !g_atomic_ref_count_dec(&scheme->refs))
    return;
  spv_shared_unref(scheme->title);
  spv_shared_unref(scheme->note);
  spv_shared_unref(scheme->harness);
  free_unknown_tinctures(scheme->unknown_tinctures, scheme->n_tinctures);
  free_tinctures(scheme->tinctures, scheme->n_tinctures);
  free_panels(scheme->panels, scheme->n_panels);
  json_decref(scheme->unknown);
  json_decref(scheme->unknown_harness);
  g_free(scheme);
}

static SpvPanel *const *
copy_panels(SpvPanel *const *panels, guint n) {
  if (n == 0)
    return NULL;
  SpvPanel **copy = g_new(SpvPanel *, n);
  for (guint i = 0; i < n; i++)
    copy[i] = spv_panel_ref(panels[i]);
  return copy;
}

/* The N tinctures of a scheme, sharing their strings, with room for one more. */
static SpvTincture *
copy_tinctures(const SpvTincture *tinctures, guint n) {
  SpvTincture *copy = g_new0(SpvTincture, n + 1);
  for (guint i = 0; i < n; i++) {
    copy[i] = tinctures[i];
    spv_shared_ref(copy[i].id);
    spv_shared_ref(copy[i].name);
    for (guint part = 0; part < SPV_FUR_PARTS; part++)
      spv_shared_ref(copy[i].of[part]);
  }
  return copy;
}

/* Likewise what is unknown of them. */
static json_t **
copy_unknown_tinctures(json_t **unknown, guint n) {
  if (unknown == NULL)
    return NULL;
  json_t **copy = g_new0(json_t *, n + 1);
  for (guint i = 0; i < n; i++)
    copy[i] = json_incref(unknown[i]);
  return copy;
}

SpvScheme *
spv_scheme_copy(const SpvScheme *scheme) {
  SpvScheme *copy = g_new0(SpvScheme, 1);
  /* Everything but the count, which another thread may be changing. */
  memcpy(copy, scheme, offsetof(SpvScheme, refs));
  g_atomic_ref_count_init(&copy->refs);
  spv_shared_ref(copy->title);
  spv_shared_ref(copy->note);
  spv_shared_ref(copy->harness);
  copy->tinctures = copy_tinctures(scheme->tinctures, scheme->n_tinctures);
  copy->unknown_tinctures = copy_unknown_tinctures(scheme->unknown_tinctures, scheme->n_tinctures);
  copy->panels = copy_panels(scheme->panels, scheme->n_panels);
  json_incref(copy->unknown);
  json_incref(copy->unknown_harness);
  return copy;
}

int
spv_scheme_find_panel(const SpvScheme *scheme, const char *id) {
  for (guint i = 0; i < scheme->n_panels; i++)
    if (g_strcmp0(scheme->panels[i]->id, id) == 0)
      return (int) i;
  return -1;
}

int
spv_scheme_find_tincture(const SpvScheme *scheme, const char *id) {
  for (guint i = 0; i < scheme->n_tinctures; i++)
    if (g_strcmp0(scheme->tinctures[i].id, id) == 0)
      return (int) i;
  return -1;
}

SpvScheme *
spv_scheme_with_title(const SpvScheme *scheme, const char *title) {
  g_autofree char *clean = spv_name_clean(title);
  if (clean == NULL || strcmp(scheme->title, clean) == 0)
    return spv_scheme_ref(scheme);
  SpvScheme *copy = spv_scheme_copy(scheme);
  spv_shared_replace(&copy->title, clean);
  return copy;
}

SpvScheme *
spv_scheme_with_note(const SpvScheme *scheme, const char *note) {
  g_autofree char *clean = spv_note_clean(note);
  if (strcmp(scheme->note, clean) == 0)
    return spv_scheme_ref(scheme);
  SpvScheme *copy = spv_scheme_copy(scheme);
  spv_shared_replace(&copy->note, clean);
  return copy;
}

SpvScheme *
spv_scheme_with_finest_line(const SpvScheme *scheme, double mm) {
  g_return_val_if_fail(isfinite(mm), spv_scheme_ref(scheme));
  mm = CLAMP(mm, SPV_FINEST_LINE_MIN, SPV_FINEST_LINE_MAX);
  if (scheme->finest_line == mm)
    return spv_scheme_ref(scheme);
  SpvScheme *copy = spv_scheme_copy(scheme);
  copy->finest_line = mm;
  return copy;
}

static gboolean
panel_ids_differ(SpvPanel *const *panels, guint n) {
  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < i; j++)
      if (strcmp(panels[i]->id, panels[j]->id) == 0)
        return FALSE;
  return TRUE;
}

static gboolean
has_panels(const SpvScheme *scheme, SpvPanel *const *panels, guint n) {
  if (scheme->n_panels != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!spv_panel_equal(scheme->panels[i], panels[i]))
      return FALSE;
  return TRUE;
}

static void
set_panels(SpvScheme *copy, SpvPanel *const *panels, guint n) {
  SpvPanel *const *old = copy->panels;
  guint n_old = copy->n_panels;
  copy->panels = copy_panels(panels, n);
  copy->n_panels = n;
  free_panels(old, n_old);
}

SpvScheme *
spv_scheme_with_panels(const SpvScheme *scheme, SpvPanel *const *panels, guint n) {
  g_return_val_if_fail(n <= SPV_SCHEME_MAX_PANELS, spv_scheme_ref(scheme));
  g_return_val_if_fail(panel_ids_differ(panels, n), spv_scheme_ref(scheme));
  if (has_panels(scheme, panels, n))
    return spv_scheme_ref(scheme);
  SpvScheme *copy = spv_scheme_copy(scheme);
  set_panels(copy, panels, n);
  return copy;
}

SpvScheme *
spv_scheme_with_panel(const SpvScheme *scheme, guint index, const SpvPanel *panel) {
  g_return_val_if_fail(index < scheme->n_panels, spv_scheme_ref(scheme));
  g_autofree SpvPanel **panels = g_memdup2(scheme->panels, scheme->n_panels * sizeof(SpvPanel *));
  panels[index] = (SpvPanel *) panel;
  return spv_scheme_with_panels(scheme, panels, scheme->n_panels);
}

SpvScheme *
spv_scheme_with_harness(const SpvScheme *scheme, const SpvScheme *harness) {
  SpvScheme *copy = spv_scheme_copy(scheme);
  spv_shared_replace(&copy->harness, harness->harness);
  json_decref(copy->unknown_harness);
  copy->unknown_harness = json_incref(harness->unknown_harness);

  g_autoptr(GPtrArray) panels = g_ptr_array_new_with_free_func((GDestroyNotify) spv_panel_unref);
  for (guint i = 0; i < harness->n_panels; i++) {
    const SpvPanel *bare = harness->panels[i];
    int from = spv_scheme_find_panel(scheme, bare->id);
    const SpvPanel *old = from >= 0 ? scheme->panels[from] : NULL;
    g_autoptr(SpvPanel) dressed = spv_panel_with_layers(bare, old != NULL ? old->layers : NULL,
                                                        old != NULL ? old->n_layers : 0);
    g_ptr_array_add(panels,
                    spv_panel_with_unknown(dressed, bare->unknown, old != NULL ? old->unknown_design : NULL));
  }
  set_panels(copy, (SpvPanel *const *) panels->pdata, panels->len);
  if (!spv_scheme_equal(scheme, copy))
    return copy;
  spv_scheme_unref(copy);
  return spv_scheme_ref(scheme);
}

static gboolean
has_unknown(const SpvScheme *scheme, json_t *unknown, json_t *unknown_harness, json_t **unknown_tinctures) {
  for (guint i = 0; i < scheme->n_tinctures; i++)
    if (!spv_json_same(scheme->unknown_tinctures != NULL ? scheme->unknown_tinctures[i] : NULL,
                       unknown_tinctures != NULL ? unknown_tinctures[i] : NULL))
      return FALSE;
  return spv_json_same(scheme->unknown, unknown) && spv_json_same(scheme->unknown_harness, unknown_harness);
}

SpvScheme *
spv_scheme_with_unknown(const SpvScheme *scheme, json_t *unknown, json_t *unknown_harness,
                        json_t **unknown_tinctures) {
  if (has_unknown(scheme, unknown, unknown_harness, unknown_tinctures))
    return spv_scheme_ref(scheme);
  SpvScheme *copy = spv_scheme_copy(scheme);
  json_decref(copy->unknown);
  json_decref(copy->unknown_harness);
  free_unknown_tinctures(copy->unknown_tinctures, copy->n_tinctures);
  copy->unknown = json_incref(unknown);
  copy->unknown_harness = json_incref(unknown_harness);
  copy->unknown_tinctures = copy_unknown_tinctures(unknown_tinctures, copy->n_tinctures);
  return copy;
}
