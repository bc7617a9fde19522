/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/application.h"

#include <glib-unix.h>
#include <glib/gi18n-lib.h>
#include <locale.h>
#include <signal.h>

#include "window/window.h"

#define SETTINGS_ID "org.spolvero.Spolvero"

struct _SpvApplication {
  GtkApplication parent_instance;
  GSettings *settings; /* or NULL */
  guint signals[2];    /* sources for the signals that end the program */
};

G_DEFINE_FINAL_TYPE(SpvApplication, spv_application, GTK_TYPE_APPLICATION)

/* The keys, also in ui/shortcuts.ui. Delete is the window's own: see spv_window_class_init(). */
static const struct {
  const char *action;
  const char *keys[3];
} keys[] = {
  { "win.new", { "<Control>n" } },
  { "win.open", { "<Control>o" } },
  { "win.save", { "<Control>s" } },
  { "win.save-as", { "<Control><Shift>s" } },
  { "win.export", { "<Control>e" } },
  { "win.scheme-properties", { "<Alt>Return" } },
  { "win.undo", { "<Control>z" } },
  { "win.redo", { "<Control><Shift>z", "<Control>y" } },
  { "win.choose-layer", { "<Control>l" } },
  { "win.edit-blazon", { "<Control>b" } },
  { "win.duplicate-layer", { "<Control>d" } },
  { "win.mirror-layer", { "<Control>m" } },
  { "win.raise-layer", { "<Control>Up" } },
  { "win.lower-layer", { "<Control>Down" } },
  { "win.rename-layer", { "F2" } },
  { "win.next-panel", { "<Control>Page_Down" } },
  { "win.previous-panel", { "<Control>Page_Up" } },
  { "win.zoom-in", { "<Control>plus", "<Control>equal" } },
  { "win.zoom-out", { "<Control>minus" } },
  { "win.zoom-fit", { "<Control>0" } },
  { "win.toggle-guide", { "<Control>g" } },
  { "win.toggle-hatch", { "<Control>h" } },
  { "win.fold-left", { "F9" } },
  { "win.fold-right", { "<Shift>F9" } },
  { "app.shortcuts", { "<Control>question", "<Control><Shift>question" } },
  { "app.quit", { "<Control>q" } },
  { "window.close", { "<Control>w" } },
};

GSettings *
spv_application_settings(SpvApplication *application) {
  return application->settings;
}

/* g_settings_new() ends the program when the schema is missing; a program run from where it was built must
 * not end for that. */
static GSettings *
find_settings(void) {
  GSettingsSchemaSource *source = g_settings_schema_source_get_default();
  g_autoptr(GSettingsSchema) schema = source ? g_settings_schema_source_lookup(source, SETTINGS_ID, TRUE)
                                             : NULL;
  return schema ? g_settings_new_full(schema, NULL, NULL) : NULL;
}

/* Actions */

/* Each window closes in its own way: it keeps what is unsaved, or stays and says why not. */
static void
activate_quit(GSimpleAction *action, GVariant *parameter, gpointer application) {
  (void) action;
  (void) parameter;
  g_autoptr(GList) windows = g_list_copy(gtk_application_get_windows(application));
  for (GList *at = windows; at; at = at->next) {
    if (SPV_IS_WINDOW(at->data))
      gtk_window_close(at->data);
  }
}

static void
activate_shortcuts(GSimpleAction *action, GVariant *parameter, gpointer application) {
  (void) action;
  (void) parameter;
  g_autoptr(GtkBuilder) builder = gtk_builder_new_from_resource("/org/spolvero/ui/shortcuts.ui");
  GtkWindow *shortcuts = GTK_WINDOW(gtk_builder_get_object(builder, "shortcuts"));
  GtkWindow *active = gtk_application_get_active_window(application);
  gtk_window_set_transient_for(shortcuts, active);
  gtk_window_set_destroy_with_parent(shortcuts, TRUE);
  gtk_window_present(shortcuts);
}

/* The system ends the program: what is unsaved goes to disk first. */
static gboolean
on_signal(gpointer application) {
  for (GList *at = gtk_application_get_windows(application); at; at = at->next) {
    if (SPV_IS_WINDOW(at->data))
      spv_window_keep(at->data, NULL);
  }
  g_application_quit(application);
  return G_SOURCE_CONTINUE;
}

/* Windows */

static SpvWindow *
empty_window(SpvApplication *application) {
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(application)); at; at = at->next) {
    if (SPV_IS_WINDOW(at->data) && !spv_window_session(at->data))
      return at->data;
  }
  return spv_window_new(application);
}

/* Work that a window of this run holds, or offers already, is not offered again: it is locked. */
static void
offer_kept(SpvWindow *window) {
  g_autofree char *folder = spv_recovery_folder();
  g_autoptr(GPtrArray) kept = spv_recovery_list(folder);
  if (kept->len > 0)
    spv_window_offer_kept(window, kept);
}

static void
spv_application_activate(GApplication *application) {
  SpvWindow *window = empty_window(SPV_APPLICATION(application));
  offer_kept(window);
  gtk_window_present(GTK_WINDOW(window));
}

static void
spv_application_open(GApplication *application, GFile **files, int n, const char *hint) {
  (void) hint;
  SpvWindow *window = empty_window(SPV_APPLICATION(application));
  offer_kept(window);
  gtk_window_present(GTK_WINDOW(window));
  for (int i = 0; i < n; i++)
    spv_window_open_file(window, files[i]);
}

/* Life */

static void
load_style(void) {
  GdkDisplay *display = gdk_display_get_default();
  g_autoptr(GtkCssProvider) provider = gtk_css_provider_new();
  gtk_css_provider_load_from_resource(provider, "/org/spolvero/ui/style.css");
  gtk_style_context_add_provider_for_display(display, GTK_STYLE_PROVIDER(provider),
                                             GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_icon_theme_add_resource_path(gtk_icon_theme_get_for_display(display), "/org/spolvero/ui/icons");
}

static void
spv_application_startup(GApplication *application) {
  static const GActionEntry actions[] = {
    { .name = "quit", .activate = activate_quit },
    { .name = "shortcuts", .activate = activate_shortcuts },
  };
  G_APPLICATION_CLASS(spv_application_parent_class)->startup(application);
  gtk_window_set_default_icon_name(SPV_APP_ID);
  load_style();
  g_action_map_add_action_entries(G_ACTION_MAP(application), actions, G_N_ELEMENTS(actions), application);
  for (gsize i = 0; i < G_N_ELEMENTS(keys); i++)
    gtk_application_set_accels_for_action(GTK_APPLICATION(application), keys[i].action, keys[i].keys);

  SpvApplication *self = SPV_APPLICATION(application);
  self->signals[0] = g_unix_signal_add(SIGTERM, on_signal, application);
  self->signals[1] = g_unix_signal_add(SIGINT, on_signal, application);
}

static void
spv_application_finalize(GObject *object) {
  SpvApplication *application = SPV_APPLICATION(object);
  for (gsize i = 0; i < G_N_ELEMENTS(application->signals); i++)
    g_clear_handle_id(&application->signals[i], g_source_remove);
  g_clear_object(&application->settings);
  G_OBJECT_CLASS(spv_application_parent_class)->finalize(object);
}

static void
spv_application_class_init(SpvApplicationClass *klass) {
  GApplicationClass *application_class = G_APPLICATION_CLASS(klass);
  G_OBJECT_CLASS(klass)->finalize = spv_application_finalize;
  application_class->startup = spv_application_startup;
  application_class->activate = spv_application_activate;
  application_class->open = spv_application_open;
}

static void
spv_application_init(SpvApplication *application) {
  application->settings = find_settings();
}

SpvApplication *
spv_application_new(void) {
  return g_object_new(SPV_TYPE_APPLICATION, "application-id", SPV_APP_ID, "flags", G_APPLICATION_HANDLES_OPEN,
                      NULL);
}
