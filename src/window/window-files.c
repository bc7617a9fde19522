/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How schemes come into the window and leave it: new, open, save, recent, dropped. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "scheme/library.h"
#include "scheme/scheme-file.h"
#include "window/dialogs.h"
#include "window/new-dialog.h"
#include "window/window-private.h"

/* The most recent files that the menu shows. */
#define MAX_RECENT 8

/* The folder that was used last, or NULL. Free with g_object_unref(). */
static GFile *
last_folder(SpvWindow *window) {
  GFile *file = window->session ? spv_session_file(window->session) : NULL;
  if (file)
    return g_file_get_parent(file);
  GSettings *settings = spv_window_settings(window);
  g_autofree char *uri = settings ? g_settings_get_string(settings, "last-folder") : NULL;
  if (!uri || uri[0] == '\0')
    return NULL;
  GFile *folder = g_file_new_for_uri(uri);
  if (!g_file_query_exists(folder, NULL))
    g_clear_object(&folder);
  return folder;
}

/* FILE has been opened or saved. */
static void
remember_file(SpvWindow *window, GFile *file) {
  GSettings *settings = spv_window_settings(window);
  g_autoptr(GFile) folder = g_file_get_parent(file);
  if (settings && folder) {
    g_autofree char *folder_uri = g_file_get_uri(folder);
    g_settings_set_string(settings, "last-folder", folder_uri);
  }
  g_autofree char *uri = g_file_get_uri(file);
  GtkRecentData recent = { .mime_type = (char *) SPV_SCHEME_MIME,
                           .app_name = (char *) "Spolvero",
                           .app_exec = (char *) "spolvero %u" };
  gtk_recent_manager_add_full(gtk_recent_manager_get_default(), uri, &recent);
}

/* New */

static void
start_scheme(const SpvScheme *scheme, gpointer window) {
  SpvWindow *shown = spv_window_show_scheme(window, scheme, NULL);
  gtk_window_present(GTK_WINDOW(shown));
}

void
spv_window_new_scheme(SpvWindow *window) {
  spv_new_dialog_present(GTK_WINDOW(window), start_scheme, window);
}

/* Open */

SpvWindow *
spv_window_of_file(SpvWindow *window, GFile *file) {
  GtkApplication *application = gtk_window_get_application(GTK_WINDOW(window));
  for (GList *at = gtk_application_get_windows(application); at; at = at->next) {
    SpvSession *session = SPV_IS_WINDOW(at->data) ? spv_window_session(at->data) : NULL;
    GFile *its_file = session ? spv_session_file(session) : NULL;
    if (its_file && g_file_equal(its_file, file))
      return at->data;
  }
  return NULL;
}

static SpvScheme *
load(GFile *file, GError **error) {
  g_autofree char *path = g_file_get_path(file);
  if (path)
    return spv_scheme_load(path, error);
  g_autofree char *uri = g_file_get_uri(file);
  g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_READ,
              _("“%s” is not on this computer. Copy it to a folder of this computer, and open it there."),
              uri);
  return NULL;
}

void
spv_window_open_file(SpvWindow *window, GFile *file) {
  SpvWindow *owner = spv_window_of_file(window, file);
  if (owner) {
    gtk_window_present(GTK_WINDOW(owner));
    return;
  }
  g_autoptr(GError) error = NULL;
  g_autoptr(SpvScheme) scheme = load(file, &error);
  if (!scheme) {
    g_autofree char *name = g_file_get_basename(file);
    g_autofree char *heading = g_strdup_printf(_("“%s” could not be opened"), name);
    spv_dialog_message(GTK_WINDOW(window), heading, error->message);
    return;
  }
  SpvWindow *shown = spv_window_show_scheme(window, scheme, file);
  remember_file(shown, file);
  gtk_window_present(GTK_WINDOW(shown));
}

static void
open_chosen(GFile *file, gpointer window) {
  spv_window_open_file(window, file);
}

void
spv_window_open(SpvWindow *window) {
  g_autoptr(GFile) folder = last_folder(window);
  spv_dialog_open_scheme(GTK_WINDOW(window), folder, open_chosen, window);
}

/* Save */

static gboolean
save_to(SpvWindow *window, GFile *file) {
  g_autoptr(GError) error = NULL;
  if (spv_session_save(window->session, file, &error)) {
    remember_file(window, file);
    spv_window_notice(window, NULL);
    return TRUE;
  }
  g_autofree char *name = g_file_get_basename(file);
  g_autofree char *heading = g_strdup_printf(_("“%s” could not be saved"), name);
  g_autofree char *detail = g_strdup_printf(_("%s\n\nYour work is still here, unsaved."), error->message);
  spv_dialog_message(GTK_WINDOW(window), heading, detail);
  return FALSE;
}

static void
save_chosen(GFile *file, gpointer window) {
  save_to(window, file);
}

/* A file name from the scheme's title: what a path can't hold becomes a hyphen. */
static char *
file_name_for(const SpvScheme *scheme) {
  g_autofree char *lower = g_utf8_strdown(scheme->title, -1);
  g_autoptr(GString) name = g_string_new(NULL);
  for (const char *at = lower; *at; at = g_utf8_next_char(at)) {
    gunichar c = g_utf8_get_char(at);
    if (g_unichar_isalnum(c) || g_unichar_ismark(c))
      g_string_append_unichar(name, c);
    else if (name->len > 0 && name->str[name->len - 1] != '-')
      g_string_append_c(name, '-');
  }
  if (name->len > 0 && name->str[name->len - 1] == '-')
    g_string_truncate(name, name->len - 1);
  return g_strconcat(name->len > 0 ? name->str : _("untitled"), SPV_SCHEME_SUFFIX, NULL);
}

void
spv_window_save_as(SpvWindow *window) {
  g_autoptr(GFile) folder = last_folder(window);
  GFile *file = spv_session_file(window->session);
  g_autofree char *name = file ? g_file_get_basename(file)
                               : file_name_for(spv_session_scheme(window->session));
  spv_dialog_save_scheme(GTK_WINDOW(window), folder, name, save_chosen, window);
}

void
spv_window_save(SpvWindow *window) {
  GFile *file = spv_session_file(window->session);
  if (file)
    save_to(window, file);
  else
    spv_window_save_as(window);
}

static void
save_template(const char *name, gpointer data) {
  SpvWindow *window = data;
  g_autoptr(GError) error = NULL;
  g_autofree char *path = spv_library_save_template(spv_session_scheme(window->session), name, &error);
  if (!path) {
    spv_dialog_message(GTK_WINDOW(window), _("The template could not be saved"), error->message);
    return;
  }
  g_autofree char *words = g_strdup_printf(_("“%s” is now among your templates."), name);
  spv_window_notice(window, words);
}

void
spv_window_save_as_template(SpvWindow *window) {
  spv_dialog_ask_name(GTK_WINDOW(window), _("Save as template"),
                      _("New schemes can start from it. A template of the same name is replaced."),
                      spv_session_scheme(window->session)->title, _("_Save"), save_template, window);
}

/* Recent files */

static int
latest_first(gconstpointer a, gconstpointer b) {
  GtkRecentInfo *x = (GtkRecentInfo *) a, *y = (GtkRecentInfo *) b;
  return g_date_time_compare(gtk_recent_info_get_modified(y), gtk_recent_info_get_modified(x));
}

/* An underscore would make the next letter a mnemonic. */
static char *
menu_words(GtkRecentInfo *info) {
  g_auto(GStrv) parts = g_strsplit(gtk_recent_info_get_display_name(info), "_", -1);
  return g_strjoinv("__", parts);
}

void
spv_window_update_recent(SpvWindow *window) {
  g_menu_remove_all(window->recent_menu);
  GList *items = g_list_sort(gtk_recent_manager_get_items(gtk_recent_manager_get_default()), latest_first);
  int n = 0;
  for (GList *at = items; at && n < MAX_RECENT; at = at->next) {
    GtkRecentInfo *info = at->data;
    if (g_strcmp0(gtk_recent_info_get_mime_type(info), SPV_SCHEME_MIME) != 0 || !gtk_recent_info_exists(info))
      continue;
    g_autofree char *words = menu_words(info);
    g_autoptr(GMenuItem) item = g_menu_item_new(words, NULL);
    g_menu_item_set_action_and_target(item, "win.open-recent", "s", gtk_recent_info_get_uri(info));
    g_menu_append_item(window->recent_menu, item);
    n++;
  }
  g_list_free_full(items, (GDestroyNotify) gtk_recent_info_unref);
  gtk_widget_set_sensitive(window->recent_button, n > 0);
}

/* Dropped files */

static gboolean
on_drop(GtkDropTarget *target, const GValue *value, double x, double y, gpointer window) {
  (void) target;
  (void) x;
  (void) y;
  GSList *files = g_value_get_boxed(value);
  for (GSList *at = files; at; at = at->next)
    spv_window_open_file(window, at->data);
  return files != NULL;
}

void
spv_window_accept_files(SpvWindow *window) {
  GtkDropTarget *target = gtk_drop_target_new(GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);
  g_signal_connect(target, "drop", G_CALLBACK(on_drop), window);
  gtk_widget_add_controller(GTK_WIDGET(window), GTK_EVENT_CONTROLLER(target));
}
