/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/session.h"

#include <glib/gi18n-lib.h>

#include "scheme/scheme-file.h"
#include "window/checker.h"
#include "window/tinctures-equal.h"

/* How long a painter may go on dragging before the checks start, ms. */
#define CHECK_DELAY 80

struct _SpvSession {
  GObject parent_instance;
  SpvHistory *history;
  GFile *file;
  int panel, layer;
  GPtrArray *compositions; /* SpvComposition or NULL, one a panel */
  SpvGuide *guide;         /* of the chosen panel, or NULL while nobody asked */
  SpvChecker *checker;
};

G_DEFINE_FINAL_TYPE(SpvSession, spv_session, G_TYPE_OBJECT)

enum {
  PROP_0,
  PROP_TITLE,
  PROP_MODIFIED,
  PROP_CAN_UNDO,
  PROP_CAN_REDO,
  PROP_UNDO_LABEL,
  PROP_REDO_LABEL,
  PROP_FILE,
  PROP_PANEL,
  PROP_LAYER,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

enum { SCHEME_CHANGED, SELECTION_CHANGED, FINDINGS_CHANGED, N_SIGNALS };
static guint signals[N_SIGNALS];

static void
release_composition(gpointer composition) {
  if (composition)
    spv_composition_unref(composition);
}

const SpvScheme *
spv_session_scheme(SpvSession *session) {
  return spv_history_current(session->history);
}

/* What follows from the history alone. */
static void
notify_history(SpvSession *session) {
  static const int followers[] = { PROP_TITLE,    PROP_MODIFIED,   PROP_CAN_UNDO,
                                   PROP_CAN_REDO, PROP_UNDO_LABEL, PROP_REDO_LABEL };
  for (gsize i = 0; i < G_N_ELEMENTS(followers); i++)
    g_object_notify_by_pspec(G_OBJECT(session), props[followers[i]]);
}

/* Where there are panels one is chosen; the layer is one of its own or none. */
static void
clamp_selection(SpvSession *session) {
  const SpvScheme *scheme = spv_session_scheme(session);
  session->panel = CLAMP(session->panel, 0, MAX((int) scheme->n_panels - 1, 0));
  int n_layers = scheme->n_panels ? (int) scheme->panels[session->panel]->n_layers : 0;
  session->layer = CLAMP(session->layer, -1, n_layers - 1);
}

/* The layer that was chosen is looked for by its id, since its place may have changed. */
static void
follow_layer(SpvSession *session, const char *layer_id) {
  clamp_selection(session);
  const SpvPanel *panel = spv_session_chosen_panel(session);
  int layer = panel && layer_id ? spv_panel_find_layer(panel, layer_id) : -1;
  if (layer >= 0)
    session->layer = layer;
}

static void
drop_stale_compositions(SpvSession *session) {
  const SpvScheme *scheme = spv_session_scheme(session);
  g_ptr_array_set_size(session->compositions, (int) scheme->n_panels);
  for (guint i = 0; i < scheme->n_panels; i++) {
    SpvComposition *made = g_ptr_array_index(session->compositions, i);
    if (made && (made->panel != scheme->panels[i] || !spv_tinctures_equal(made->scheme, scheme))) {
      spv_composition_unref(made);
      g_ptr_array_index(session->compositions, i) = NULL;
    }
  }
}

static void
notify_selection(SpvSession *session, int old_panel, int old_layer) {
  if (session->panel != old_panel)
    g_object_notify_by_pspec(G_OBJECT(session), props[PROP_PANEL]);
  if (session->layer != old_layer)
    g_object_notify_by_pspec(G_OBJECT(session), props[PROP_LAYER]);
  if (session->panel != old_panel || session->layer != old_layer)
    g_signal_emit(session, signals[SELECTION_CHANGED], 0);
}

/* The scheme is another value and the selection is right again: everybody is told, in one order. */
static void
tell_changed(SpvSession *session, int old_panel, int old_layer) {
  g_clear_pointer(&session->guide, spv_guide_free);
  drop_stale_compositions(session);
  spv_checker_request(session->checker, spv_session_scheme(session), CHECK_DELAY);
  g_object_freeze_notify(G_OBJECT(session));
  notify_history(session);
  g_signal_emit(session, signals[SCHEME_CHANGED], 0);
  notify_selection(session, old_panel, old_layer);
  g_object_thaw_notify(G_OBJECT(session));
}

static char *
chosen_layer_id(SpvSession *session) {
  const SpvLayer *layer = spv_session_chosen_layer(session);
  return layer ? g_strdup(layer->id) : NULL;
}

void
spv_session_push_and_choose(SpvSession *session, const SpvScheme *scheme, const char *label,
                            const char *merge, int layer) {
  int old_panel = session->panel, old_layer = session->layer;
  g_autofree char *layer_id = chosen_layer_id(session);
  if (!spv_history_push(session->history, scheme, label, merge))
    return;
  if (layer == SPV_SESSION_SAME_LAYER) {
    follow_layer(session, layer_id);
  } else {
    session->layer = layer;
    clamp_selection(session);
  }
  tell_changed(session, old_panel, old_layer);
}

void
spv_session_push(SpvSession *session, const SpvScheme *scheme, const char *label, const char *merge) {
  spv_session_push_and_choose(session, scheme, label, merge, SPV_SESSION_SAME_LAYER);
}

void
spv_session_settle(SpvSession *session) {
  spv_history_settle(session->history);
}

/* The topmost layer of PANEL that has handles to drag; -1 when there is none. */
static int
open_layer(const SpvPanel *panel) {
  for (guint i = panel->n_layers; i-- > 0;) {
    if (!panel->layers[i]->hidden && !panel->layers[i]->locked)
      return (int) i;
  }
  return -1;
}

/* The topmost layer of NOW that BEFORE has not, or has otherwise; -1 when there is none. */
static int
changed_layer(const SpvPanel *before, const SpvPanel *now) {
  for (int i = (int) now->n_layers - 1; i >= 0; i--) {
    int old = spv_panel_find_layer(before, now->layers[i]->id);
    if (old < 0 || before->layers[old] != now->layers[i])
      return i;
  }
  return -1;
}

/* Shows what undo and redo change: its layer is chosen, on another panel when the chosen one stays
 * as it is. */
static void
go_where_it_changed(SpvSession *session, const SpvScheme *before) {
  const SpvScheme *now = spv_session_scheme(session);
  if (before->n_panels != now->n_panels || now->n_panels == 0)
    return;
  guint panel = (guint) session->panel;
  for (guint i = 0; before->panels[panel] == now->panels[panel]; i++) {
    if (i == now->n_panels)
      return;
    panel = i;
  }
  int layer = changed_layer(before->panels[panel], now->panels[panel]);
  if (layer >= 0)
    session->layer = layer;
  else if (panel != (guint) session->panel)
    session->layer = open_layer(now->panels[panel]);
  session->panel = (int) panel;
}

static gboolean
step(SpvSession *session, gboolean (*move)(SpvHistory *history)) {
  int old_panel = session->panel, old_layer = session->layer;
  g_autofree char *layer_id = chosen_layer_id(session);
  g_autoptr(SpvScheme) before = spv_scheme_ref(spv_session_scheme(session));
  if (!move(session->history))
    return FALSE;
  follow_layer(session, layer_id);
  go_where_it_changed(session, before);
  clamp_selection(session);
  tell_changed(session, old_panel, old_layer);
  return TRUE;
}

gboolean
spv_session_undo(SpvSession *session) {
  return step(session, spv_history_undo);
}

gboolean
spv_session_redo(SpvSession *session) {
  return step(session, spv_history_redo);
}

gboolean
spv_session_drop(SpvSession *session) {
  return step(session, spv_history_drop);
}

gboolean
spv_session_is_modified(SpvSession *session) {
  return spv_history_is_modified(session->history);
}

const char *
spv_session_undo_label(SpvSession *session) {
  return spv_history_undo_label(session->history);
}

const char *
spv_session_redo_label(SpvSession *session) {
  return spv_history_redo_label(session->history);
}

GFile *
spv_session_file(SpvSession *session) {
  return session->file;
}

/* The first panel that has something on it. */
static void
choose_first(SpvSession *session) {
  const SpvScheme *scheme = spv_session_scheme(session);
  session->panel = 0;
  session->layer = -1;
  for (guint i = 0; i < scheme->n_panels; i++) {
    if (scheme->panels[i]->n_layers > 0) {
      session->panel = (int) i;
      session->layer = open_layer(scheme->panels[i]);
      return;
    }
  }
}

static void
put_in_place(SpvSession *session, const SpvScheme *scheme, GFile *file) {
  SpvHistory *history = spv_history_new(scheme);
  g_clear_pointer(&session->history, spv_history_free);
  session->history = history;
  g_set_object(&session->file, file);
  choose_first(session);
}

void
spv_session_replace(SpvSession *session, const SpvScheme *scheme, GFile *file) {
  put_in_place(session, scheme, file);
  /* What was chosen before was of another document: it counts as changed whatever its number. */
  tell_changed(session, -2, -2);
  g_object_notify_by_pspec(G_OBJECT(session), props[PROP_FILE]);
}

void
spv_session_mark_unsaved(SpvSession *session) {
  spv_history_mark_unsaved(session->history);
  g_object_notify_by_pspec(G_OBJECT(session), props[PROP_MODIFIED]);
}

gboolean
spv_session_save(SpvSession *session, GFile *file, GError **error) {
  if (!file)
    file = session->file;
  g_return_val_if_fail(file != NULL, FALSE);
  g_autofree char *path = g_file_get_path(file);
  if (!path) {
    g_autofree char *uri = g_file_get_uri(file);
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE,
                _("“%s” is not on this computer. Save to a folder of this computer instead."), uri);
    return FALSE;
  }
  if (!spv_scheme_save(spv_session_scheme(session), path, error))
    return FALSE;
  spv_history_mark_saved(session->history);
  g_object_freeze_notify(G_OBJECT(session));
  if (g_set_object(&session->file, file))
    g_object_notify_by_pspec(G_OBJECT(session), props[PROP_FILE]);
  notify_history(session);
  g_object_thaw_notify(G_OBJECT(session));
  return TRUE;
}

int
spv_session_panel(SpvSession *session) {
  return session->panel;
}

int
spv_session_layer(SpvSession *session) {
  return session->layer;
}

void
spv_session_select(SpvSession *session, int panel, int layer) {
  int old_panel = session->panel, old_layer = session->layer;
  session->panel = panel;
  session->layer = layer;
  clamp_selection(session);
  if (session->panel == old_panel && session->layer == old_layer)
    return;
  spv_history_settle(session->history);
  if (session->panel != old_panel)
    g_clear_pointer(&session->guide, spv_guide_free);
  notify_selection(session, old_panel, old_layer);
}

void
spv_session_choose_panel(SpvSession *session, int panel) {
  const SpvScheme *scheme = spv_session_scheme(session);
  if (panel != session->panel && panel >= 0 && (guint) panel < scheme->n_panels)
    spv_session_select(session, panel, open_layer(scheme->panels[panel]));
}

const SpvPanel *
spv_session_chosen_panel(SpvSession *session) {
  const SpvScheme *scheme = spv_session_scheme(session);
  return (guint) session->panel < scheme->n_panels ? scheme->panels[session->panel] : NULL;
}

const SpvLayer *
spv_session_chosen_layer(SpvSession *session) {
  const SpvPanel *panel = spv_session_chosen_panel(session);
  if (!panel || session->layer < 0 || (guint) session->layer >= panel->n_layers)
    return NULL;
  return panel->layers[session->layer];
}

const SpvComposition *
spv_session_composition_of(SpvSession *session, guint panel) {
  const SpvScheme *scheme = spv_session_scheme(session);
  g_return_val_if_fail(panel < scheme->n_panels, NULL);
  gpointer *place = &g_ptr_array_index(session->compositions, panel);
  if (!*place)
    *place = spv_compose(scheme, panel);
  return *place;
}

const SpvComposition *
spv_session_composition(SpvSession *session) {
  return spv_session_chosen_panel(session) ? spv_session_composition_of(session, (guint) session->panel)
                                           : NULL;
}

const SpvGuide *
spv_session_guide(SpvSession *session) {
  if (!session->guide && spv_session_chosen_panel(session))
    session->guide = spv_guide_new(spv_session_composition(session));
  return session->guide;
}

GPtrArray *
spv_session_findings(SpvSession *session) {
  return spv_checker_findings(session->checker);
}

gboolean
spv_session_findings_are_current(SpvSession *session) {
  return spv_checker_is_current(session->checker);
}

static void
findings_came(gpointer data) {
  g_signal_emit(data, signals[FINDINGS_CHANGED], 0);
}

SpvSession *
spv_session_new(const SpvScheme *scheme, GFile *file) {
  SpvSession *session = g_object_new(SPV_TYPE_SESSION, NULL);
  put_in_place(session, scheme, file);
  drop_stale_compositions(session);
  spv_checker_request(session->checker, scheme, CHECK_DELAY);
  return session;
}

static void
spv_session_init(SpvSession *session) {
  session->layer = -1;
  session->compositions = g_ptr_array_new_with_free_func(release_composition);
  session->checker = spv_checker_new(findings_came, session);
}

static void
spv_session_finalize(GObject *object) {
  SpvSession *session = SPV_SESSION(object);
  spv_checker_free(session->checker);
  g_clear_pointer(&session->guide, spv_guide_free);
  g_ptr_array_unref(session->compositions);
  g_clear_pointer(&session->history, spv_history_free);
  g_clear_object(&session->file);
  G_OBJECT_CLASS(spv_session_parent_class)->finalize(object);
}

static void
spv_session_get_property(GObject *object, guint id, GValue *value, GParamSpec *pspec) {
  SpvSession *session = SPV_SESSION(object);
  if (id == PROP_TITLE)
    g_value_set_string(value, spv_session_scheme(session)->title);
  else if (id == PROP_MODIFIED)
    g_value_set_boolean(value, spv_session_is_modified(session));
  else if (id == PROP_CAN_UNDO)
    g_value_set_boolean(value, spv_history_can_undo(session->history));
  else if (id == PROP_CAN_REDO)
    g_value_set_boolean(value, spv_history_can_redo(session->history));
  else if (id == PROP_UNDO_LABEL)
    g_value_set_string(value, spv_session_undo_label(session));
  else if (id == PROP_REDO_LABEL)
    g_value_set_string(value, spv_session_redo_label(session));
  else if (id == PROP_FILE)
    g_value_set_object(value, session->file);
  else if (id == PROP_PANEL)
    g_value_set_int(value, session->panel);
  else if (id == PROP_LAYER)
    g_value_set_int(value, session->layer);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void
spv_session_class_init(SpvSessionClass *klass) {
  GObjectClass *object_class = G_OBJECT_CLASS(klass);
  object_class->finalize = spv_session_finalize;
  object_class->get_property = spv_session_get_property;

  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  props[PROP_TITLE] = g_param_spec_string("title", NULL, NULL, NULL, flags);
  props[PROP_MODIFIED] = g_param_spec_boolean("modified", NULL, NULL, FALSE, flags);
  props[PROP_CAN_UNDO] = g_param_spec_boolean("can-undo", NULL, NULL, FALSE, flags);
  props[PROP_CAN_REDO] = g_param_spec_boolean("can-redo", NULL, NULL, FALSE, flags);
  props[PROP_UNDO_LABEL] = g_param_spec_string("undo-label", NULL, NULL, NULL, flags);
  props[PROP_REDO_LABEL] = g_param_spec_string("redo-label", NULL, NULL, NULL, flags);
  props[PROP_FILE] = g_param_spec_object("file", NULL, NULL, G_TYPE_FILE, flags);
  props[PROP_PANEL] = g_param_spec_int("panel", NULL, NULL, 0, G_MAXINT, 0, flags);
  props[PROP_LAYER] = g_param_spec_int("layer", NULL, NULL, -1, G_MAXINT, -1, flags);
  g_object_class_install_properties(object_class, N_PROPS, props);

  static const char *const names[N_SIGNALS] = { "scheme-changed", "selection-changed", "findings-changed" };
  for (guint i = 0; i < N_SIGNALS; i++)
    signals[i] = g_signal_new(names[i], SPV_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                              0);
}
