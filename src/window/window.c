/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "window/blazon-entry.h"
#include "window/canvas.h"
#include "window/column.h"
#include "window/findings-pane.h"
#include "window/harness-view.h"
#include "window/layers-pane.h"
#include "window/measures-pane.h"
#include "window/panel-pane.h"
#include "window/path-words.h"
#include "window/tinctures-pane.h"
#include "window/window-private.h"

G_DEFINE_FINAL_TYPE(SpvWindow, spv_window, GTK_TYPE_APPLICATION_WINDOW)

SpvSession *
spv_window_session(SpvWindow *window) {
  return window->session;
}

GSettings *
spv_window_settings(SpvWindow *window) {
  GtkApplication *application = gtk_window_get_application(GTK_WINDOW(window));
  return application ? spv_application_settings(SPV_APPLICATION(application)) : NULL;
}

void
spv_window_notice(SpvWindow *window, const char *words) {
  gtk_widget_set_visible(window->notice_bar, words != NULL);
  gtk_label_set_text(GTK_LABEL(window->notice_label), words ? words : "");
}

/* The scheme's title, with a mark before it while no file holds it; below it, the file. */
static void
update_title(SpvWindow *window) {
  if (!window->session)
    return;
  const char *title = spv_session_scheme(window->session)->title;
  g_autofree char *marked = spv_session_is_modified(window->session) ? g_strconcat("• ", title, NULL)
                                                                     : g_strdup(title);
  gtk_window_set_title(GTK_WINDOW(window), marked);
  gtk_label_set_text(GTK_LABEL(window->title_label), marked);

  GFile *file = spv_session_file(window->session);
  g_autofree char *path = file ? g_file_get_path(file) : NULL;
  g_autofree char *words = path ? spv_path_words(path) : g_strdup(_("Not saved yet"));
  gtk_label_set_text(GTK_LABEL(window->subtitle_label), words);
  gtk_widget_set_visible(window->subtitle_label, TRUE);
}

static void
update_harness(SpvWindow *window) {
  const SpvScheme *scheme = spv_session_scheme(window->session);
  gtk_label_set_text(GTK_LABEL(window->harness_name), scheme->harness);
  g_autofree char *line = g_strdup_printf(
      ngettext("%u panel, to scale", "%u panels, all to one scale", scheme->n_panels), scheme->n_panels);
  gtk_label_set_text(GTK_LABEL(window->harness_line), line);
}

static void
on_scheme_changed(SpvWindow *window) {
  update_title(window);
  update_harness(window);
  spv_window_update_actions(window);
}

static void
on_state_changed(SpvWindow *window) {
  update_title(window);
  spv_window_update_actions(window);
}

static void
on_keeping_failed(const char *message, gpointer window) {
  spv_window_notice(window, message);
}

static void
set_session(SpvWindow *window, SpvSession *session) {
  g_autofree char *folder = spv_recovery_folder();
  window->session = g_object_ref(session);
  window->autosave = spv_autosave_new(session, folder, on_keeping_failed, window);
  g_signal_connect_object(session, "scheme-changed", G_CALLBACK(on_scheme_changed), window,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(session, "selection-changed", G_CALLBACK(spv_window_update_actions), window,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(session, "notify::modified", G_CALLBACK(on_state_changed), window,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(session, "notify::file", G_CALLBACK(on_state_changed), window, G_CONNECT_SWAPPED);

  GtkWidget *const viewers[] = { window->canvas,         window->harness_view, window->panel_pane,
                                 window->blazon_entry,   window->layers_pane,  window->measures_pane,
                                 window->tinctures_pane, window->findings_pane };
  for (gsize i = 0; i < G_N_ELEMENTS(viewers); i++)
    g_object_set(viewers[i], "session", session, NULL);
  on_scheme_changed(window);
  gtk_stack_set_visible_child_name(GTK_STACK(window->stack), "design");
  gtk_widget_grab_focus(window->canvas);
}

SpvWindow *
spv_window_show_scheme(SpvWindow *window, const SpvScheme *scheme, GFile *file) {
  SpvWindow *empty = window;
  if (window->session)
    empty = spv_window_new(SPV_APPLICATION(gtk_window_get_application(GTK_WINDOW(window))));
  g_autoptr(SpvSession) session = spv_session_new(scheme, file);
  set_session(empty, session);
  return empty;
}

gboolean
spv_window_keep(SpvWindow *window, GError **error) {
  return !window->autosave || spv_autosave_flush(window->autosave, error);
}

/* Size and switches */

static void
restore_state(SpvWindow *window) {
  GSettings *settings = spv_window_settings(window);
  if (settings) {
    gtk_window_set_default_size(GTK_WINDOW(window), g_settings_get_int(settings, "window-width"),
                                g_settings_get_int(settings, "window-height"));
    if (g_settings_get_boolean(settings, "window-maximized"))
      gtk_window_maximize(GTK_WINDOW(window));
  }
  spv_window_restore_switches(window);
}

static void
store_state(SpvWindow *window) {
  GSettings *settings = spv_window_settings(window);
  if (!settings)
    return;
  gboolean maximized = gtk_window_is_maximized(GTK_WINDOW(window));
  g_settings_set_boolean(settings, "window-maximized", maximized);
  if (maximized)
    return;
  int width, height;
  gtk_window_get_default_size(GTK_WINDOW(window), &width, &height);
  g_settings_set_int(settings, "window-width", CLAMP(width, 640, 16384));
  g_settings_set_int(settings, "window-height", CLAMP(height, 480, 16384));
}

/* Nothing is asked: what is unsaved is kept, and offered at the next start. Only where it can't be kept does
 * the window stay. */
static gboolean
spv_window_close_request(GtkWindow *gtk_window) {
  SpvWindow *window = SPV_WINDOW(gtk_window);
  g_autoptr(GError) error = NULL;
  if (!spv_window_keep(window, &error)) {
    spv_window_notice(window, error->message);
    return GDK_EVENT_STOP;
  }
  store_state(window);
  return GTK_WINDOW_CLASS(spv_window_parent_class)->close_request(gtk_window);
}

SpvWindow *
spv_window_new(SpvApplication *application) {
  SpvWindow *window = g_object_new(SPV_TYPE_WINDOW, "application", application, NULL);
  restore_state(window);
  return window;
}

static void
spv_window_dispose(GObject *object) {
  SpvWindow *window = SPV_WINDOW(object);
  g_clear_pointer(&window->autosave, spv_autosave_free);
  g_clear_object(&window->session);
  g_clear_pointer(&window->kept, g_ptr_array_unref);
  g_clear_object(&window->edit_menu);
  g_clear_object(&window->recent_menu);
  gtk_widget_dispose_template(GTK_WIDGET(object), SPV_TYPE_WINDOW);
  G_OBJECT_CLASS(spv_window_parent_class)->dispose(object);
}

static void
ensure_types(void) {
  g_type_ensure(SPV_TYPE_BLAZON_ENTRY);
  g_type_ensure(SPV_TYPE_CANVAS);
  g_type_ensure(SPV_TYPE_COLUMN);
  g_type_ensure(SPV_TYPE_FINDINGS_PANE);
  g_type_ensure(SPV_TYPE_HARNESS_VIEW);
  g_type_ensure(SPV_TYPE_LAYERS_PANE);
  g_type_ensure(SPV_TYPE_MEASURES_PANE);
  g_type_ensure(SPV_TYPE_PANEL_PANE);
  g_type_ensure(SPV_TYPE_TINCTURES_PANE);
}

#define BIND(child) gtk_widget_class_bind_template_child(widget_class, SpvWindow, child)

static void
spv_window_class_init(SpvWindowClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);
  G_OBJECT_CLASS(klass)->dispose = spv_window_dispose;
  GTK_WINDOW_CLASS(klass)->close_request = spv_window_close_request;

  ensure_types();
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/window.ui");
  BIND(title_label);
  BIND(subtitle_label);
  BIND(recent_button);
  BIND(menu_button);
  BIND(undo_button);
  BIND(redo_button);
  BIND(kept_bar);
  BIND(kept_label);
  BIND(notice_bar);
  BIND(notice_label);
  BIND(stack);
  BIND(left_pane);
  BIND(right_pane);
  BIND(harness_name);
  BIND(harness_line);
  BIND(canvas);
  BIND(harness_view);
  BIND(panel_pane);
  BIND(blazon_entry);
  BIND(layers_pane);
  BIND(measures_pane);
  BIND(tinctures_pane);
  BIND(findings_pane);
  /* Not a key of the application: in a field, Delete must reach the field. */
  gtk_widget_class_add_binding_action(widget_class, GDK_KEY_Delete, 0, "win.remove-layer", NULL);
}

/* The menu's section of undo and redo changes with every step, so it is made here and put into its place. */
static void
add_menus(SpvWindow *window) {
  GMenuModel *menu = gtk_menu_button_get_menu_model(GTK_MENU_BUTTON(window->menu_button));
  window->edit_menu = g_menu_new();
  g_menu_insert_section(G_MENU(menu), 1, NULL, G_MENU_MODEL(window->edit_menu));

  window->recent_menu = g_menu_new();
  gtk_menu_button_set_menu_model(GTK_MENU_BUTTON(window->recent_button), G_MENU_MODEL(window->recent_menu));
  g_signal_connect_object(gtk_recent_manager_get_default(), "changed", G_CALLBACK(spv_window_update_recent),
                          window, G_CONNECT_SWAPPED);
  spv_window_update_recent(window);
}

static void
spv_window_init(SpvWindow *window) {
  gtk_widget_init_template(GTK_WIDGET(window));
  add_menus(window);
  spv_window_add_actions(window);
  spv_window_update_actions(window);
  spv_window_accept_files(window);
}
