/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Edits of a scheme's tinctures: layers and furs that use one follow it. */
#include "config.h"

#include "scheme/scheme-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "scheme/equal-private.h"
#include "scheme/name-private.h"

void
spv_tincture_clear(const SpvTincture *tincture) {
  spv_shared_unref(tincture->id);
  spv_shared_unref(tincture->name);
  for (guint part = 0; part < SPV_FUR_PARTS; part++)
    spv_shared_unref(tincture->of[part]);
}

/* An SpvTincture with strings of its own; an empty name becomes OTHERWISE. What only a fur has is left out of
 * one that is none. */
static SpvTincture
own_tincture(const SpvTincture *tincture, const char *otherwise) {
  g_autofree char *clean = spv_name_clean(tincture->name);
  SpvTincture own = *tincture;
  own.id = spv_shared_new(tincture->id);
  own.name = spv_shared_new(clean != NULL ? clean : otherwise);
  for (guint part = 0; part < SPV_FUR_PARTS; part++)
    own.of[part] = tincture->fur != SPV_FUR_NONE ? spv_shared_new(tincture->of[part]) : NULL;
  if (tincture->fur == SPV_FUR_NONE)
    own.pitch = 0;
  return own;
}

/* Whether TINCTURE of SCHEME is plain, or a fur of two plain ones that there are. */
static gboolean
is_sound(const SpvScheme *scheme, const SpvTincture *tincture) {
  if (tincture->fur == SPV_FUR_NONE)
    return TRUE;
  for (guint part = 0; part < SPV_FUR_PARTS; part++) {
    int index = spv_scheme_find_tincture(scheme, tincture->of[part]);
    if (index < 0 || scheme->tinctures[index].fur != SPV_FUR_NONE)
      return FALSE;
  }
  return spv_fur_pitch_is_valid(tincture->pitch);
}

/* Gives each fur of a copy its ground's colour and hatch: it has none of its own, and what is not used must
 * not tell two schemes apart. FALSE where a fur is not sound. */
static gboolean
settle_furs(SpvScheme *copy) {
  for (guint i = 0; i < copy->n_tinctures; i++) {
    SpvTincture *fur = (SpvTincture *) &copy->tinctures[i];
    if (!is_sound(copy, fur))
      return FALSE;
    if (fur->fur == SPV_FUR_NONE)
      continue;
    const SpvTincture *ground = &copy->tinctures[spv_scheme_find_tincture(copy, fur->of[0])];
    fur->colour = ground->colour;
    fur->hatch = ground->hatch;
  }
  return TRUE;
}

/* COPY, or where it is not sound or the same as SCHEME, a new reference to SCHEME. Consumes COPY. */
static SpvScheme *
settled(const SpvScheme *scheme, SpvScheme *copy) {
  if (settle_furs(copy) && !spv_scheme_equal(scheme, copy))
    return copy;
  spv_scheme_unref(copy);
  return spv_scheme_ref(scheme);
}

/* PANEL, whose layers use NEW_ID wherever they used OLD_ID. */
static SpvPanel *
panel_with_tincture_renamed(const SpvPanel *panel, const char *old_id, const char *new_id) {
  SpvPanel *result = spv_panel_ref(panel);
  for (guint i = 0; i < panel->n_layers; i++) {
    g_autoptr(SpvLayer) layer = spv_layer_ref(panel->layers[i]);
    for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
      if (g_strcmp0(layer->tinctures[slot], old_id) == 0) {
        SpvLayer *renamed = spv_layer_with_tincture(layer, slot, new_id);
        spv_layer_unref(layer);
        layer = renamed;
      }
    SpvPanel *next = spv_panel_with_layer(result, i, layer);
    spv_panel_unref(result);
    result = next;
  }
  return result;
}

/* All that used OLD_ID in a copy uses NEW_ID. */
static void
rename_tincture(SpvScheme *copy, const char *old_id, const char *new_id) {
  for (guint i = 0; i < copy->n_tinctures; i++) {
    SpvTincture *fur = (SpvTincture *) &copy->tinctures[i];
    for (guint part = 0; part < SPV_FUR_PARTS; part++)
      if (g_strcmp0(fur->of[part], old_id) == 0)
        spv_shared_replace(&fur->of[part], new_id);
  }
  for (guint i = 0; i < copy->n_panels; i++) {
    SpvPanel *panel = copy->panels[i];
    ((SpvPanel **) copy->panels)[i] = panel_with_tincture_renamed(panel, old_id, new_id);
    spv_panel_unref(panel);
  }
}

SpvScheme *
spv_scheme_with_tincture(const SpvScheme *scheme, guint index, const SpvTincture *tincture) {
  g_return_val_if_fail(index < scheme->n_tinctures, spv_scheme_ref(scheme));
  g_return_val_if_fail(spv_id_is_valid(tincture->id), spv_scheme_ref(scheme));
  int taken = spv_scheme_find_tincture(scheme, tincture->id);
  g_return_val_if_fail(taken < 0 || taken == (int) index, spv_scheme_ref(scheme));

  const SpvTincture *old = &scheme->tinctures[index];
  SpvTincture own = own_tincture(tincture, old->name);
  SpvScheme *copy = spv_scheme_copy(scheme);
  SpvTincture *place = (SpvTincture *) &copy->tinctures[index];
  spv_tincture_clear(place);
  *place = own;
  if (strcmp(old->id, own.id) != 0)
    rename_tincture(copy, old->id, own.id);
  return settled(scheme, copy);
}

SpvScheme *
spv_scheme_with_tincture_added(const SpvScheme *scheme, const SpvTincture *tincture) {
  g_return_val_if_fail(scheme->n_tinctures < SPV_SCHEME_MAX_TINCTURES, spv_scheme_ref(scheme));
  g_return_val_if_fail(spv_id_is_valid(tincture->id), spv_scheme_ref(scheme));
  g_return_val_if_fail(spv_scheme_find_tincture(scheme, tincture->id) < 0, spv_scheme_ref(scheme));

  SpvScheme *copy = spv_scheme_copy(scheme);
  ((SpvTincture *) copy->tinctures)[copy->n_tinctures] = own_tincture(tincture, tincture->id);
  copy->n_tinctures++;
  return settled(scheme, copy);
}

SpvScheme *
spv_scheme_with_tinctures(const SpvScheme *scheme, const SpvTincture *tinctures, guint n) {
  g_return_val_if_fail(scheme->n_tinctures == 0 && n <= SPV_SCHEME_MAX_TINCTURES, spv_scheme_ref(scheme));
  SpvScheme *copy = spv_scheme_copy(scheme);
  g_free((gpointer) copy->tinctures);
  SpvTincture *own = g_new0(SpvTincture, n);
  for (guint i = 0; i < n; i++)
    own[i] = own_tincture(&tinctures[i], tinctures[i].id);
  copy->tinctures = own;
  copy->n_tinctures = n;
  return settled(scheme, copy);
}

int
spv_scheme_find_fur_of(const SpvScheme *scheme, const char *id) {
  for (guint i = 0; i < scheme->n_tinctures; i++)
    for (guint part = 0; id != NULL && part < SPV_FUR_PARTS; part++)
      if (g_strcmp0(scheme->tinctures[i].of[part], id) == 0)
        return (int) i;
  return -1;
}

/* The panel and the layer that use the tincture called ID, or FALSE. */
static gboolean
find_user(const SpvScheme *scheme, const char *id, const SpvPanel **panel, const SpvLayer **layer) {
  for (guint i = 0; i < scheme->n_panels; i++)
    for (guint j = 0; j < scheme->panels[i]->n_layers; j++) {
      *panel = scheme->panels[i];
      *layer = (*panel)->layers[j];
      for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
        if (g_strcmp0((*layer)->tinctures[slot], id) == 0)
          return TRUE;
    }
  return FALSE;
}

/* Whether no layer and no fur uses GONE; ERROR is set where one does. */
static gboolean
is_free(const SpvScheme *scheme, const SpvTincture *gone, GError **error) {
  const SpvPanel *panel = NULL;
  const SpvLayer *layer = NULL;
  int fur = spv_scheme_find_fur_of(scheme, gone->id);
  if (find_user(scheme, gone->id, &panel, &layer)) {
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_IN_USE,
                _("“%s” is used by “%s” on “%s”: give that layer another tincture first"), gone->name,
                layer->name, panel->name);
    return FALSE;
  }
  if (fur >= 0) {
    /* TRANSLATORS: a tincture's name, a fur's name. */
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_IN_USE,
                _("“%s” is part of the fur “%s”: make that fur of another tincture first"), gone->name,
                scheme->tinctures[fur].name);
    return FALSE;
  }
  return TRUE;
}

SpvScheme *
spv_scheme_with_tincture_removed(const SpvScheme *scheme, guint index, GError **error) {
  g_return_val_if_fail(index < scheme->n_tinctures, NULL);
  if (!is_free(scheme, &scheme->tinctures[index], error))
    return NULL;

  SpvScheme *copy = spv_scheme_copy(scheme);
  SpvTincture *tinctures = (SpvTincture *) copy->tinctures;
  guint after = copy->n_tinctures - index - 1;
  spv_tincture_clear(&tinctures[index]);
  memmove(&tinctures[index], &tinctures[index + 1], after * sizeof *tinctures);
  if (copy->unknown_tinctures != NULL) {
    json_decref(copy->unknown_tinctures[index]);
    memmove(&copy->unknown_tinctures[index], &copy->unknown_tinctures[index + 1], after * sizeof(json_t *));
  }
  copy->n_tinctures--;
  return copy;
}
