/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every verb of the window is an action: menus, buttons, keys and tests all go through these. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "window/canvas.h"
#include "window/dialogs.h"
#include "window/export-dialog.h"
#include "window/layers-pane.h"
#include "window/properties-dialog.h"
#include "window/window-private.h"

/* What an action needs before it can be done. */
typedef enum {
  NEEDS_NOTHING,
  NEEDS_SCHEME,
  NEEDS_UNSAVED, /* a scheme that no file holds */
  NEEDS_DESIGN,  /* something visible on some panel */
  NEEDS_UNDO,
  NEEDS_REDO,
  NEEDS_ROOM, /* a panel that can take one more layer */
  NEEDS_LAYER,
  NEEDS_OPEN_LAYER, /* one that is not locked */
  NEEDS_LAYER_ABOVE,
  NEEDS_LAYER_BELOW,
  NEEDS_LAYER_AND_ROOM,
  NEEDS_PANELS /* more than one */
} Need;

/* Files and dialogs */

static void
activate_new(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  (void) parameter;
  spv_window_new_scheme(window);
}

static void
activate_open(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  (void) parameter;
  spv_window_open(window);
}

static void
activate_open_recent(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  g_autoptr(GFile) file = g_file_new_for_uri(g_variant_get_string(parameter, NULL));
  spv_window_open_file(window, file);
}

static void
activate_save(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  (void) parameter;
  spv_window_save(window);
}

static void
activate_save_as(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  (void) parameter;
  spv_window_save_as(window);
}

static void
activate_save_as_template(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  (void) parameter;
  spv_window_save_as_template(window);
}

static void
activate_export(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  SpvWindow *window = data;
  spv_export_dialog_present(GTK_WINDOW(window), spv_session_scheme(window->session),
                            spv_window_settings(window));
}

static void
activate_scheme_properties(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  SpvWindow *window = data;
  spv_properties_dialog_present(GTK_WINDOW(window), window->session);
}

static void
activate_about(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  (void) parameter;
  spv_dialog_about(window);
}

static void
activate_restore_kept(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  (void) parameter;
  spv_window_restore_kept(window);
}

static void
activate_discard_kept(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  (void) parameter;
  spv_window_discard_kept(window);
}

static void
activate_dismiss_notice(GSimpleAction *action, GVariant *parameter, gpointer window) {
  (void) action;
  (void) parameter;
  spv_window_notice(window, NULL);
}

/* Edits */

static void
activate_undo(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  spv_session_undo(SPV_WINDOW(data)->session);
}

static void
activate_redo(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  spv_session_redo(SPV_WINDOW(data)->session);
}

static void
activate_add_layer(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  SpvPatternKind kind;
  if (spv_pattern_kind_from_key(g_variant_get_string(parameter, NULL), &kind))
    spv_session_add_layer(SPV_WINDOW(data)->session, kind);
}

static void
activate_remove_layer(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  spv_session_remove_layer(SPV_WINDOW(data)->session);
}

static void
activate_duplicate_layer(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  spv_session_duplicate_layer(SPV_WINDOW(data)->session);
}

static void
activate_raise_layer(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  SpvSession *session = SPV_WINDOW(data)->session;
  guint layer = (guint) spv_session_layer(session);
  spv_session_move_layer(session, layer, layer + 1);
}

static void
activate_lower_layer(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  SpvSession *session = SPV_WINDOW(data)->session;
  guint layer = (guint) spv_session_layer(session);
  spv_session_move_layer(session, layer, layer - 1);
}

static void
activate_rename_layer(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  spv_layers_pane_rename(SPV_LAYERS_PANE(SPV_WINDOW(data)->layers_pane));
}

static void
activate_toggle_layer_hidden(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  SpvSession *session = SPV_WINDOW(data)->session;
  const SpvLayer *layer = spv_session_chosen_layer(session);
  g_autoptr(SpvLayer) edited = spv_layer_with_hidden(layer, !layer->hidden);
  const char *label = layer->hidden ? _("Show layer") : _("Hide layer");
  spv_session_edit_layer(session, (guint) spv_session_layer(session), edited, label, NULL);
}

static void
activate_toggle_layer_locked(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  SpvSession *session = SPV_WINDOW(data)->session;
  const SpvLayer *layer = spv_session_chosen_layer(session);
  g_autoptr(SpvLayer) edited = spv_layer_with_locked(layer, !layer->locked);
  const char *label = layer->locked ? _("Unlock layer") : _("Lock layer");
  spv_session_edit_layer(session, (guint) spv_session_layer(session), edited, label, NULL);
}

/* What is shown */

static void
activate_zoom_in(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  spv_canvas_zoom_in(SPV_CANVAS(SPV_WINDOW(data)->canvas));
}

static void
activate_zoom_out(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  spv_canvas_zoom_out(SPV_CANVAS(SPV_WINDOW(data)->canvas));
}

static void
activate_zoom_fit(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  spv_canvas_zoom_fit(SPV_CANVAS(SPV_WINDOW(data)->canvas));
}

/* Chooses the panel STEP further on, round and round, with its topmost layer. */
static void
go_on(SpvWindow *window, int step) {
  const SpvScheme *scheme = spv_session_scheme(window->session);
  int n = (int) scheme->n_panels;
  int panel = (spv_session_panel(window->session) + step + n) % n;
  spv_session_select(window->session, panel, (int) scheme->panels[panel]->n_layers - 1);
}

static void
activate_next_panel(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  go_on(data, 1);
}

static void
activate_previous_panel(GSimpleAction *action, GVariant *parameter, gpointer data) {
  (void) action;
  (void) parameter;
  go_on(data, -1);
}

/* A switch's new state goes into the widget, and is remembered under the setting KEY. */
static void
remember(SpvWindow *window, const char *key, gboolean value) {
  GSettings *settings = spv_window_settings(window);
  if (settings)
    g_settings_set_boolean(settings, key, value);
}

static void
change_guide(GSimpleAction *action, GVariant *state, gpointer data) {
  SpvWindow *window = data;
  gboolean on = g_variant_get_boolean(state);
  g_object_set(window->canvas, "show-guide", on, NULL);
  remember(window, "show-guide", on);
  g_simple_action_set_state(action, state);
}

static void
change_hatch(GSimpleAction *action, GVariant *state, gpointer data) {
  SpvWindow *window = data;
  gboolean on = g_variant_get_boolean(state);
  g_object_set(window->canvas, "hatch", on, NULL);
  remember(window, "show-hatch", on);
  g_simple_action_set_state(action, state);
}

static void
change_fold_left(GSimpleAction *action, GVariant *state, gpointer data) {
  SpvWindow *window = data;
  gboolean folded = g_variant_get_boolean(state);
  gtk_widget_set_visible(window->left_pane, !folded);
  remember(window, "left-pane", !folded);
  g_simple_action_set_state(action, state);
}

static void
change_fold_right(GSimpleAction *action, GVariant *state, gpointer data) {
  SpvWindow *window = data;
  gboolean folded = g_variant_get_boolean(state);
  gtk_widget_set_visible(window->right_pane, !folded);
  remember(window, "right-pane", !folded);
  g_simple_action_set_state(action, state);
}

/* The table */

static const struct {
  GActionEntry entry;
  Need need;
} verbs[] = {
  { { .name = "new", .activate = activate_new }, NEEDS_NOTHING },
  { { .name = "open", .activate = activate_open }, NEEDS_NOTHING },
  { { .name = "open-recent", .activate = activate_open_recent, .parameter_type = "s" }, NEEDS_NOTHING },
  { { .name = "save", .activate = activate_save }, NEEDS_UNSAVED },
  { { .name = "save-as", .activate = activate_save_as }, NEEDS_SCHEME },
  { { .name = "save-as-template", .activate = activate_save_as_template }, NEEDS_SCHEME },
  { { .name = "export", .activate = activate_export }, NEEDS_DESIGN },
  { { .name = "scheme-properties", .activate = activate_scheme_properties }, NEEDS_SCHEME },
  { { .name = "about", .activate = activate_about }, NEEDS_NOTHING },
  { { .name = "restore-kept", .activate = activate_restore_kept }, NEEDS_NOTHING },
  { { .name = "discard-kept", .activate = activate_discard_kept }, NEEDS_NOTHING },
  { { .name = "dismiss-notice", .activate = activate_dismiss_notice }, NEEDS_NOTHING },
  { { .name = "undo", .activate = activate_undo }, NEEDS_UNDO },
  { { .name = "redo", .activate = activate_redo }, NEEDS_REDO },
  { { .name = "add-layer", .activate = activate_add_layer, .parameter_type = "s" }, NEEDS_ROOM },
  { { .name = "remove-layer", .activate = activate_remove_layer }, NEEDS_OPEN_LAYER },
  { { .name = "duplicate-layer", .activate = activate_duplicate_layer }, NEEDS_LAYER_AND_ROOM },
  { { .name = "raise-layer", .activate = activate_raise_layer }, NEEDS_LAYER_ABOVE },
  { { .name = "lower-layer", .activate = activate_lower_layer }, NEEDS_LAYER_BELOW },
  { { .name = "rename-layer", .activate = activate_rename_layer }, NEEDS_LAYER },
  { { .name = "toggle-layer-hidden", .activate = activate_toggle_layer_hidden }, NEEDS_LAYER },
  { { .name = "toggle-layer-locked", .activate = activate_toggle_layer_locked }, NEEDS_LAYER },
  { { .name = "zoom-in", .activate = activate_zoom_in }, NEEDS_SCHEME },
  { { .name = "zoom-out", .activate = activate_zoom_out }, NEEDS_SCHEME },
  { { .name = "zoom-fit", .activate = activate_zoom_fit }, NEEDS_SCHEME },
  { { .name = "next-panel", .activate = activate_next_panel }, NEEDS_PANELS },
  { { .name = "previous-panel", .activate = activate_previous_panel }, NEEDS_PANELS },
  { { .name = "toggle-guide", .state = "true", .change_state = change_guide }, NEEDS_SCHEME },
  { { .name = "toggle-hatch", .state = "false", .change_state = change_hatch }, NEEDS_SCHEME },
  { { .name = "fold-left", .state = "false", .change_state = change_fold_left }, NEEDS_SCHEME },
  { { .name = "fold-right", .state = "false", .change_state = change_fold_right }, NEEDS_SCHEME },
};

static gboolean
has_design(const SpvScheme *scheme) {
  for (guint i = 0; i < scheme->n_panels; i++) {
    for (guint k = 0; k < scheme->panels[i]->n_layers; k++) {
      if (!scheme->panels[i]->layers[k]->hidden)
        return TRUE;
    }
  }
  return FALSE;
}

static gboolean
is_met(SpvWindow *window, Need need) {
  SpvSession *session = window->session;
  if (need == NEEDS_NOTHING)
    return TRUE;
  if (!session)
    return FALSE;
  const SpvScheme *scheme = spv_session_scheme(session);
  const SpvPanel *panel = spv_session_chosen_panel(session);
  const SpvLayer *layer = spv_session_chosen_layer(session);
  gboolean room = panel && panel->n_layers < SPV_PANEL_MAX_LAYERS;
  switch (need) {
  case NEEDS_NOTHING:
  case NEEDS_SCHEME:
    return TRUE;
  case NEEDS_UNSAVED:
    return !spv_session_file(session) || spv_session_is_modified(session);
  case NEEDS_DESIGN:
    return has_design(scheme);
  case NEEDS_UNDO:
    return spv_session_undo_label(session) != NULL;
  case NEEDS_REDO:
    return spv_session_redo_label(session) != NULL;
  case NEEDS_ROOM:
    return room;
  case NEEDS_LAYER:
    return layer != NULL;
  case NEEDS_OPEN_LAYER:
    return layer && !layer->locked;
  case NEEDS_LAYER_ABOVE:
    return layer && !layer->locked && (guint) spv_session_layer(session) + 1 < panel->n_layers;
  case NEEDS_LAYER_BELOW:
    return layer && !layer->locked && spv_session_layer(session) > 0;
  case NEEDS_LAYER_AND_ROOM:
    return layer && room;
  case NEEDS_PANELS:
    return scheme->n_panels > 1;
  }
  g_return_val_if_reached(FALSE);
}

/* "Undo change depth": the step's own words go on in the sentence, unless the translation sets them apart
 * with a colon. */
static char *
step_words(const char *format, const char *step) {
  if (strchr(format, ':'))
    return g_strdup_printf(format, step);
  const char *rest = g_utf8_next_char(step);
  g_autofree char *first = g_utf8_strdown(step, rest - step);
  g_autofree char *words = g_strconcat(first, rest, NULL);
  return g_strdup_printf(format, words);
}

static void
say_step(GMenu *menu, GtkWidget *button, const char *action, const char *step, const char *plain,
         const char *format) {
  g_autofree char *words = step ? step_words(format, step) : g_strdup(plain);
  g_menu_append(menu, words, action);
  gtk_widget_set_tooltip_text(button, words);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

void
spv_window_update_actions(SpvWindow *window) {
  for (gsize i = 0; i < G_N_ELEMENTS(verbs); i++) {
    GAction *action = g_action_map_lookup_action(G_ACTION_MAP(window), verbs[i].entry.name);
    g_simple_action_set_enabled(G_SIMPLE_ACTION(action), is_met(window, verbs[i].need));
  }
  SpvSession *session = window->session;
  g_menu_remove_all(window->edit_menu);
  /* Translators: %s is a step such as "change depth". With a colon before it ("Undo: %s") it keeps its
   * capital. */
  say_step(window->edit_menu, window->undo_button, "win.undo",
           session ? spv_session_undo_label(session) : NULL, _("Undo"), _("Undo %s"));
  say_step(window->edit_menu, window->redo_button, "win.redo",
           session ? spv_session_redo_label(session) : NULL, _("Redo"), _("Redo %s"));
}

void
spv_window_add_actions(SpvWindow *window) {
  for (gsize i = 0; i < G_N_ELEMENTS(verbs); i++)
    g_action_map_add_action_entries(G_ACTION_MAP(window), &verbs[i].entry, 1, window);
}
