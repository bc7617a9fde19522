/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The session's edits of what is chosen: each makes a new scheme and pushes it. Here, and nowhere else, a
 * locked layer is kept as it is. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "scheme/heraldic.h"
#include "window/session.h"

/* The least contrast in which a layer is plainly seen on a bare panel; 1 is none, 21 is black on white. */
#define PLAIN_CONTRAST 1.6

/* Pushes the chosen panel as PANEL. */
static void
push_panel(SpvSession *session, const SpvPanel *panel, const char *label, const char *merge, int layer) {
  g_autoptr(SpvScheme)
      scheme = spv_scheme_with_panel(spv_session_scheme(session), (guint) spv_session_panel(session), panel);
  spv_session_push_and_choose(session, scheme, label, merge, layer);
}

void
spv_session_edit_panel(SpvSession *session, const SpvPanel *panel, const char *label, const char *merge) {
  if (spv_session_chosen_panel(session))
    push_panel(session, panel, label, merge, SPV_SESSION_SAME_LAYER);
}

/* The chosen panel's layer INDEX, or NULL. */
static const SpvLayer *
layer_at(SpvSession *session, guint index) {
  const SpvPanel *panel = spv_session_chosen_panel(session);
  return panel && index < panel->n_layers ? panel->layers[index] : NULL;
}

gboolean
spv_session_can_edit_layer(SpvSession *session, guint index) {
  const SpvLayer *layer = layer_at(session, index);
  return layer && !layer->locked;
}

static void
put_layer(SpvSession *session, guint index, const SpvLayer *layer, const char *label, const char *merge) {
  g_autoptr(SpvPanel) edited = spv_panel_with_layer(spv_session_chosen_panel(session), index, layer);
  push_panel(session, edited, label, merge, SPV_SESSION_SAME_LAYER);
}

void
spv_session_edit_layer(SpvSession *session, guint index, const SpvLayer *layer, const char *label,
                       const char *merge) {
  if (spv_session_can_edit_layer(session, index))
    put_layer(session, index, layer, label, merge);
}

void
spv_session_rename_layer(SpvSession *session, guint index, const char *name) {
  if (!spv_session_can_edit_layer(session, index))
    return;
  g_autoptr(SpvLayer) layer = spv_layer_with_name(layer_at(session, index), name);
  put_layer(session, index, layer, _("Rename layer"), NULL);
}

void
spv_session_set_layer_hidden(SpvSession *session, guint index, gboolean hidden) {
  if (!spv_session_can_edit_layer(session, index))
    return;
  g_autoptr(SpvLayer) layer = spv_layer_with_hidden(layer_at(session, index), hidden);
  put_layer(session, index, layer, hidden ? _("Hide layer") : _("Show layer"), NULL);
}

void
spv_session_set_layer_locked(SpvSession *session, guint index, gboolean locked) {
  const SpvLayer *now = layer_at(session, index);
  if (!now)
    return;
  g_autoptr(SpvLayer) layer = spv_layer_with_locked(now, locked);
  put_layer(session, index, layer, locked ? _("Lock layer") : _("Unlock layer"), NULL);
}

/* The topmost layer of PANEL below INDEX that is seen, or NULL. */
static const SpvLayer *
layer_beneath(const SpvPanel *panel, guint index) {
  while (index-- > 0) {
    if (!panel->layers[index]->hidden)
      return panel->layers[index];
  }
  return NULL;
}

/* Whether TINCTURE would be lost on BENEATH, or, where there is nothing, on the white of the bare panel. */
static gboolean
is_lost_on(const SpvLayer *beneath, const SpvTincture *tincture) {
  static const SpvRgb white = { 0xff, 0xff, 0xff };
  if (!beneath)
    return spv_rgb_contrast(tincture->colour, white) < PLAIN_CONTRAST;
  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++) {
    if (g_strcmp0(beneath->tinctures[slot], tincture->id) == 0)
      return TRUE;
  }
  return FALSE;
}

/* The first tincture that is none of OTHERS nor, if that can be had, one that would be lost, or a fur. */
static const char *
pick_tincture(const SpvScheme *scheme, const SpvLayer *beneath, gboolean anything_shows,
              const char *const others[SPV_PATTERN_SLOTS]) {
  const char *second_best = NULL;
  for (guint i = 0; i < scheme->n_tinctures; i++) {
    const SpvTincture *tincture = &scheme->tinctures[i];
    gboolean taken = FALSE;
    for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++)
      taken |= g_strcmp0(tincture->id, others[slot]) == 0;
    if (taken)
      continue;
    if (tincture->fur == SPV_FUR_NONE && (anything_shows || !is_lost_on(beneath, tincture)))
      return tincture->id;
    if (!second_best)
      second_best = tincture->id;
  }
  return second_best;
}

/* Gives each slot of LAYER, at place INDEX of the chosen panel, from FIRST on that is empty a tincture. */
static SpvLayer *
with_tinctures(SpvSession *session, guint index, const SpvLayer *layer, guint first) {
  const SpvLayer *beneath = layer_beneath(spv_session_chosen_panel(session), index);
  guint n_slots = spv_pattern_info(layer->pattern.kind)->n_slots;
  /* Two tinctures show each other, and a field may be as white as the bare panel. */
  gboolean anything_shows = !beneath && (n_slots > 1 || layer->pattern.kind == SPV_PATTERN_FIELD);
  SpvLayer *whole = spv_layer_ref(layer);
  for (guint slot = first; slot < n_slots; slot++) {
    if (whole->tinctures[slot])
      continue;
    SpvLayer *more = spv_layer_with_tincture(
        whole, slot, pick_tincture(spv_session_scheme(session), beneath, anything_shows, whole->tinctures));
    spv_layer_unref(whole);
    whole = more;
  }
  return whole;
}

void
spv_session_add_layer(SpvSession *session, SpvPatternKind kind) {
  const SpvPanel *panel = spv_session_chosen_panel(session);
  if (!panel || panel->n_layers >= SPV_PANEL_MAX_LAYERS)
    return;
  guint index = spv_session_layer(session) < 0 ? panel->n_layers : (guint) spv_session_layer(session) + 1;
  g_autofree char *id = spv_panel_new_layer_id(panel, kind);
  g_autoptr(SpvLayer) bare = spv_layer_new(id, kind, NULL, NULL);
  g_autoptr(SpvLayer) layer = with_tinctures(session, index, bare, 0);
  g_autoptr(SpvPanel) edited = spv_panel_with_layer_added(panel, index, layer);
  /* Translators: a step of the history; %s is what a layer is called. */
  g_autofree char *label = g_strdup_printf(_("Add “%s”"), _(spv_pattern_info(kind)->label));
  push_panel(session, edited, label, NULL, (int) index);
}

void
spv_session_set_layer_kind(SpvSession *session, guint index, SpvPatternKind kind) {
  if (!spv_session_can_edit_layer(session, index))
    return;
  const SpvLayer *now = layer_at(session, index);
  g_autoptr(SpvLayer) changed = spv_layer_with_kind(now, kind);
  g_autoptr(SpvLayer)
      layer = with_tinctures(session, index, changed, spv_pattern_info(now->pattern.kind)->n_slots);
  put_layer(session, index, layer, _("Change kind of layer"), NULL);
}

void
spv_session_mirror_layer(SpvSession *session) {
  const SpvLayer *now = spv_session_chosen_layer(session);
  if (!spv_session_can_edit_layer(session, (guint) spv_session_layer(session)))
    return;
  g_autoptr(SpvLayer) layer = spv_layer_with_mirrored(now, !now->pattern.mirrored);
  put_layer(session, (guint) spv_session_layer(session), layer, _("Mirror layer"), NULL);
}

void
spv_session_remove_layer(SpvSession *session) {
  const SpvPanel *panel = spv_session_chosen_panel(session);
  const SpvLayer *layer = spv_session_chosen_layer(session);
  if (!spv_session_can_edit_layer(session, (guint) spv_session_layer(session)))
    return;
  /* Translators: a step of the history; %s is the name of a layer or of a tincture. */
  g_autofree char *label = g_strdup_printf(_("Remove “%s”"), layer->name);
  g_autoptr(SpvPanel) edited = spv_panel_with_layer_removed(panel, (guint) spv_session_layer(session));
  /* The layer beneath is chosen next, so that a key pressed again goes on downwards. */
  int next = edited->n_layers == 0 ? -1 : MAX(spv_session_layer(session) - 1, 0);
  push_panel(session, edited, label, NULL, next);
}

void
spv_session_duplicate_layer(SpvSession *session) {
  const SpvPanel *panel = spv_session_chosen_panel(session);
  const SpvLayer *layer = spv_session_chosen_layer(session);
  if (!layer || panel->n_layers >= SPV_PANEL_MAX_LAYERS)
    return;
  g_autofree char *id = spv_panel_new_layer_id(panel, layer->pattern.kind);
  g_autoptr(SpvLayer) with_id = spv_layer_with_id(layer, id);
  g_autoptr(SpvLayer) copy = spv_layer_with_locked(with_id, FALSE);
  guint index = (guint) spv_session_layer(session) + 1;
  g_autoptr(SpvPanel) edited = spv_panel_with_layer_added(panel, index, copy);
  g_autofree char *label = g_strdup_printf(_("Duplicate “%s”"), layer->name);
  push_panel(session, edited, label, NULL, (int) index);
}

gboolean
spv_session_can_move_layer(SpvSession *session, guint from, guint to) {
  return from != to && layer_at(session, to) && spv_session_can_edit_layer(session, from);
}

void
spv_session_move_layer(SpvSession *session, guint from, guint to) {
  const SpvPanel *panel = spv_session_chosen_panel(session);
  if (!spv_session_can_move_layer(session, from, to))
    return;
  g_autoptr(SpvPanel) edited = spv_panel_with_layer_moved(panel, from, to);
  g_autofree char *label = g_strdup_printf(_("Move “%s”"), panel->layers[from]->name);
  push_panel(session, edited, label, NULL, (int) to);
}

/* A locked layer of BEFORE that is not the same in AFTER, or NULL. */
static const SpvLayer *
changed_locked_layer(const SpvPanel *before, const SpvPanel *after) {
  for (guint i = 0; i < before->n_layers; i++) {
    const SpvLayer *layer = before->layers[i];
    int index = spv_panel_find_layer(after, layer->id);
    if (layer->locked && (index < 0 || !spv_layer_equal(layer, after->layers[index])))
      return layer;
  }
  return NULL;
}

/* Where the chosen layer stands on AFTER; the topmost one where it has gone. */
static int
chosen_on(SpvSession *session, const SpvPanel *after) {
  const SpvLayer *layer = spv_session_chosen_layer(session);
  int index = layer ? spv_panel_find_layer(after, layer->id) : -1;
  return index >= 0 ? index : (int) after->n_layers - 1;
}

gboolean
spv_session_lay_blazon(SpvSession *session, const char *text, SpvBlazonPlace *place, GError **error) {
  const SpvPanel *panel = spv_session_chosen_panel(session);
  guint index = (guint) spv_session_panel(session);
  if (!panel)
    return TRUE;
  g_autoptr(SpvScheme) laid = spv_heraldic_lay(spv_session_scheme(session), index, text, place, error);
  if (!laid)
    return FALSE;
  const SpvLayer *locked = changed_locked_layer(panel, laid->panels[index]);
  if (locked) {
    *place = (SpvBlazonPlace){ 0, 0 };
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_BLAZON,
                _("the layer “%s” is locked: unlock it first, or leave it as it is"), locked->name);
    return FALSE;
  }
  if (laid != spv_session_scheme(session))
    spv_session_push_and_choose(session, laid, _("Change blazon"), NULL,
                                chosen_on(session, laid->panels[index]));
  return TRUE;
}

void
spv_session_apply_finding(SpvSession *session, const SpvFinding *finding) {
  const SpvScheme *scheme = spv_session_scheme(session);
  if (!finding->has_remedy || finding->panel >= scheme->n_panels ||
      finding->remedy.layer >= scheme->panels[finding->panel]->n_layers)
    return;
  const SpvLayer *layer = scheme->panels[finding->panel]->layers[finding->remedy.layer];
  if (layer->locked || finding->remedy.measure >= spv_pattern_info(layer->pattern.kind)->n_measures)
    return;
  g_autoptr(SpvScheme) mended = spv_finding_apply(finding, scheme);
  if (!mended)
    return;
  /* Translators: a step of the history: a check's remedy was carried out on the layer. */
  g_autofree char *label = g_strdup_printf(_("Mend “%s”"), layer->name);
  spv_session_select(session, (int) finding->panel, (int) finding->remedy.layer);
  spv_session_push(session, mended, label, NULL);
}
