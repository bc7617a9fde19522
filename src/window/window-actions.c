/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every verb of the window is an action: menus, buttons, keys and tests all go through these. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "window/blazon-entry.h"
#include "window/canvas.h"
#include "window/dialogs.h"
#include "window/export-dialog.h"
#include "window/layers-pane.h"
#include "window/properties-dialog.h"
#include "window/tip.h"
#include "window/window-private.h"

/* What an action needs before it can be done. */
typedef enum {
  NEEDS_NOTHING,
  NEEDS_SCHEME,
  NEEDS_UNSAVED, /* a scheme that no file holds */
  NEEDS_DESIGN,  /* something visible on some panel */
  NEEDS_UNDO,
  NEEDS_REDO,
  NEEDS_PANEL, /* one that is chosen */
  NEEDS_ROOM,  /* a panel that can take one more layer */
  NEEDS_LAYER,
  NEEDS_OPEN_LAYER, /* one that is not locked */
  NEEDS_WAY_UP,     /* likewise, with a place above */
  NEEDS_WAY_DOWN,
  NEEDS_LAYER_AND_ROOM,
  NEEDS_PANELS /* more than one */
} Need;

/* Dialogs and notices */

static void
export_sheets(SpvWindow *window) {
  spv_export_dialog_present(GTK_WINDOW(window), spv_session_scheme(window->session),
                            spv_window_settings(window));
}

static void
scheme_properties(SpvWindow *window) {
  spv_properties_dialog_present(GTK_WINDOW(window), window->session);
}

static void
about(SpvWindow *window) {
  spv_dialog_about(GTK_WINDOW(window));
}

static void
dismiss_notice(SpvWindow *window) {
  spv_window_notice(window, NULL);
}

static void
open_recent(SpvWindow *window, const char *uri) {
  g_autoptr(GFile) file = g_file_new_for_uri(uri);
  spv_window_open_file(window, file);
}

/* Edits */

static void
undo(SpvWindow *window) {
  spv_session_undo(window->session);
}

static void
redo(SpvWindow *window) {
  spv_session_redo(window->session);
}

static void
add_layer(SpvWindow *window, const char *key) {
  SpvPatternKind kind;
  if (spv_pattern_kind_from_key(key, &kind))
    spv_session_add_layer(window->session, kind);
}

static void
remove_layer(SpvWindow *window) {
  spv_session_remove_layer(window->session);
}

static void
duplicate_layer(SpvWindow *window) {
  spv_session_duplicate_layer(window->session);
}

static void
mirror_layer(SpvWindow *window) {
  spv_session_mirror_layer(window->session);
}

static void
choose_layer(SpvWindow *window) {
  g_action_group_change_action_state(G_ACTION_GROUP(window), "fold-right", g_variant_new_boolean(FALSE));
  spv_layers_pane_choose_kind(SPV_LAYERS_PANE(window->layers_pane));
}

static void
edit_blazon(SpvWindow *window) {
  g_action_group_change_action_state(G_ACTION_GROUP(window), "fold-right", g_variant_new_boolean(FALSE));
  spv_blazon_entry_edit(SPV_BLAZON_ENTRY(window->blazon_entry));
}

static void
raise_layer(SpvWindow *window) {
  guint layer = (guint) spv_session_layer(window->session);
  spv_session_move_layer(window->session, layer, layer + 1);
}

static void
lower_layer(SpvWindow *window) {
  guint layer = (guint) spv_session_layer(window->session);
  spv_session_move_layer(window->session, layer, layer - 1);
}

static void
rename_layer(SpvWindow *window) {
  spv_layers_pane_rename(SPV_LAYERS_PANE(window->layers_pane));
}

static void
toggle_layer_hidden(SpvWindow *window) {
  gboolean hidden = spv_session_chosen_layer(window->session)->hidden;
  spv_session_set_layer_hidden(window->session, (guint) spv_session_layer(window->session), !hidden);
}

static void
toggle_layer_locked(SpvWindow *window) {
  gboolean locked = spv_session_chosen_layer(window->session)->locked;
  spv_session_set_layer_locked(window->session, (guint) spv_session_layer(window->session), !locked);
}

/* What is shown */

static void
zoom_in(SpvWindow *window) {
  spv_canvas_zoom_in(SPV_CANVAS(window->canvas));
}

static void
zoom_out(SpvWindow *window) {
  spv_canvas_zoom_out(SPV_CANVAS(window->canvas));
}

static void
zoom_fit(SpvWindow *window) {
  spv_canvas_zoom_fit(SPV_CANVAS(window->canvas));
}

/* Chooses the panel STEP further on, round and round. */
static void
go_on(SpvWindow *window, int step) {
  int n = (int) spv_session_scheme(window->session)->n_panels;
  spv_session_choose_panel(window->session, (spv_session_panel(window->session) + step + n) % n);
}

static void
next_panel(SpvWindow *window) {
  go_on(window, 1);
}

static void
previous_panel(SpvWindow *window) {
  go_on(window, -1);
}

static void
show_guide(SpvWindow *window, gboolean on) {
  g_object_set(window->canvas, "show-guide", on, NULL);
}

static void
show_hatch(SpvWindow *window, gboolean on) {
  g_object_set(window->canvas, "hatch", on, NULL);
}

static void
fold_left(SpvWindow *window, gboolean folded) {
  gtk_widget_set_visible(window->left_pane, !folded);
}

static void
fold_right(SpvWindow *window, gboolean folded) {
  gtk_widget_set_visible(window->right_pane, !folded);
}

/* The tables */

static const struct {
  const char *name;
  Need need;
  void (*act)(SpvWindow *window);
  void (*act_on)(SpvWindow *window, const char *what); /* in its place: takes a string */
} verbs[] = {
  { "new", NEEDS_NOTHING, spv_window_new_scheme, NULL },
  { "open", NEEDS_NOTHING, spv_window_open, NULL },
  { "open-recent", NEEDS_NOTHING, NULL, open_recent },
  { "save", NEEDS_UNSAVED, spv_window_save, NULL },
  { "save-as", NEEDS_SCHEME, spv_window_save_as, NULL },
  { "save-as-template", NEEDS_SCHEME, spv_window_save_as_template, NULL },
  { "export", NEEDS_DESIGN, export_sheets, NULL },
  { "export-sampler", NEEDS_NOTHING, spv_window_export_sampler, NULL },
  { "scheme-properties", NEEDS_SCHEME, scheme_properties, NULL },
  { "about", NEEDS_NOTHING, about, NULL },
  { "restore-kept", NEEDS_NOTHING, spv_window_restore_kept, NULL },
  { "discard-kept", NEEDS_NOTHING, spv_window_discard_kept, NULL },
  { "dismiss-notice", NEEDS_NOTHING, dismiss_notice, NULL },
  { "undo", NEEDS_UNDO, undo, NULL },
  { "redo", NEEDS_REDO, redo, NULL },
  { "add-layer", NEEDS_ROOM, NULL, add_layer },
  { "choose-layer", NEEDS_ROOM, choose_layer, NULL },
  { "edit-blazon", NEEDS_PANEL, edit_blazon, NULL },
  { "remove-layer", NEEDS_OPEN_LAYER, remove_layer, NULL },
  { "duplicate-layer", NEEDS_LAYER_AND_ROOM, duplicate_layer, NULL },
  { "mirror-layer", NEEDS_OPEN_LAYER, mirror_layer, NULL },
  { "raise-layer", NEEDS_WAY_UP, raise_layer, NULL },
  { "lower-layer", NEEDS_WAY_DOWN, lower_layer, NULL },
  { "rename-layer", NEEDS_OPEN_LAYER, rename_layer, NULL },
  { "toggle-layer-hidden", NEEDS_OPEN_LAYER, toggle_layer_hidden, NULL },
  { "toggle-layer-locked", NEEDS_LAYER, toggle_layer_locked, NULL },
  { "zoom-in", NEEDS_SCHEME, zoom_in, NULL },
  { "zoom-out", NEEDS_SCHEME, zoom_out, NULL },
  { "zoom-fit", NEEDS_SCHEME, zoom_fit, NULL },
  { "next-panel", NEEDS_PANELS, next_panel, NULL },
  { "previous-panel", NEEDS_PANELS, previous_panel, NULL },
};

/* Each is remembered under a setting, INVERTED where that says the opposite. */
static const struct {
  const char *name, *setting;
  gboolean inverted, at_first;
  void (*show)(SpvWindow *window, gboolean on);
} switches[] = {
  { "toggle-guide", "show-guide", FALSE, TRUE, show_guide },
  { "toggle-hatch", "show-hatch", FALSE, FALSE, show_hatch },
  { "fold-left", "left-pane", TRUE, FALSE, fold_left },
  { "fold-right", "right-pane", TRUE, FALSE, fold_right },
};

static void
on_activate(GSimpleAction *action, GVariant *parameter, gpointer window) {
  for (gsize i = 0; i < G_N_ELEMENTS(verbs); i++) {
    if (!g_str_equal(verbs[i].name, g_action_get_name(G_ACTION(action))))
      continue;
    if (verbs[i].act_on)
      verbs[i].act_on(window, g_variant_get_string(parameter, NULL));
    else
      verbs[i].act(window);
  }
}

static void
on_change_state(GSimpleAction *action, GVariant *state, gpointer window) {
  GSettings *settings = spv_window_settings(window);
  gboolean on = g_variant_get_boolean(state);
  for (gsize i = 0; i < G_N_ELEMENTS(switches); i++) {
    if (!g_str_equal(switches[i].name, g_action_get_name(G_ACTION(action))))
      continue;
    switches[i].show(window, on);
    if (settings)
      g_settings_set_boolean(settings, switches[i].setting, on != switches[i].inverted);
  }
  g_simple_action_set_state(action, state);
}

void
spv_window_restore_switches(SpvWindow *window) {
  GSettings *settings = spv_window_settings(window);
  for (gsize i = 0; settings && i < G_N_ELEMENTS(switches); i++) {
    gboolean on = g_settings_get_boolean(settings, switches[i].setting) != switches[i].inverted;
    g_action_group_change_action_state(G_ACTION_GROUP(window), switches[i].name, g_variant_new_boolean(on));
  }
}

static gboolean
has_design(const SpvScheme *scheme) {
  for (guint i = 0; i < scheme->n_panels; i++)
    if (spv_panel_has_design(scheme->panels[i]))
      return TRUE;
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
  gboolean room = panel && panel->n_layers < SPV_PANEL_MAX_LAYERS;
  guint layer = (guint) spv_session_layer(session); /* beyond all when there is none */
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
  case NEEDS_PANEL:
    return panel != NULL;
  case NEEDS_ROOM:
    return room;
  case NEEDS_LAYER:
    return spv_session_chosen_layer(session) != NULL;
  case NEEDS_OPEN_LAYER:
    return spv_session_can_edit_layer(session, layer);
  case NEEDS_WAY_UP:
    return spv_session_can_move_layer(session, layer, layer + 1);
  case NEEDS_WAY_DOWN:
    return spv_session_can_move_layer(session, layer, layer - 1);
  case NEEDS_LAYER_AND_ROOM:
    return spv_session_chosen_layer(session) && room;
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

/* Says on its button and in the menu what undo and redo would do. */
static void
say_steps(SpvWindow *window) {
  SpvSession *session = window->session;
  const char *undone = session ? spv_session_undo_label(session) : NULL;
  const char *redone = session ? spv_session_redo_label(session) : NULL;
  /* Translators: %s is a step such as "change depth". With a colon before it ("Undo: %s") it
   * keeps its capital. */
  g_autofree char *undo_words = undone ? step_words(_("Undo %s"), undone) : g_strdup(_("Undo"));
  g_autofree char *redo_words = redone ? step_words(_("Redo %s"), redone) : g_strdup(_("Redo"));

  if (g_strcmp0(undo_words, gtk_widget_get_tooltip_text(window->undo_button)) == 0 &&
      g_strcmp0(redo_words, gtk_widget_get_tooltip_text(window->redo_button)) == 0)
    return;
  spv_tip_set_as_name(window->undo_button, undo_words);
  spv_tip_set_as_name(window->redo_button, redo_words);
  g_menu_remove_all(window->edit_menu);
  g_menu_append(window->edit_menu, undo_words, "win.undo");
  g_menu_append(window->edit_menu, redo_words, "win.redo");
}

static void
enable(SpvWindow *window, const char *name, Need need) {
  GAction *action = g_action_map_lookup_action(G_ACTION_MAP(window), name);
  g_simple_action_set_enabled(G_SIMPLE_ACTION(action), is_met(window, need));
}

void
spv_window_update_actions(SpvWindow *window) {
  for (gsize i = 0; i < G_N_ELEMENTS(verbs); i++)
    enable(window, verbs[i].name, verbs[i].need);
  for (gsize i = 0; i < G_N_ELEMENTS(switches); i++)
    enable(window, switches[i].name, NEEDS_SCHEME);
  say_steps(window);
}

void
spv_window_add_actions(SpvWindow *window) {
  for (gsize i = 0; i < G_N_ELEMENTS(verbs); i++) {
    GActionEntry entry = { .name = verbs[i].name, .activate = on_activate };
    entry.parameter_type = verbs[i].act_on ? "s" : NULL;
    g_action_map_add_action_entries(G_ACTION_MAP(window), &entry, 1, window);
  }
  for (gsize i = 0; i < G_N_ELEMENTS(switches); i++) {
    GActionEntry entry = { .name = switches[i].name, .change_state = on_change_state };
    entry.state = switches[i].at_first ? "true" : "false";
    g_action_map_add_action_entries(G_ACTION_MAP(window), &entry, 1, window);
  }
}
