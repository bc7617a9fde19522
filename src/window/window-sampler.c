/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window's way to the sampler: where to, then the work, then what came of it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "window/chart-export.h"
#include "window/dialogs.h"
#include "window/window-private.h"

/* The window may be closed before the sampler is written. */
typedef struct {
  GWeakRef window;
  GApplication *application; /* held until it is written; or NULL */
} Writing;

static Writing *
writing_new(SpvWindow *window) {
  Writing *writing = g_new0(Writing, 1);
  GtkApplication *application = gtk_window_get_application(GTK_WINDOW(window));

  g_weak_ref_init(&writing->window, window);
  if (application != NULL) {
    writing->application = g_object_ref(G_APPLICATION(application));
    g_application_hold(writing->application);
  }
  return writing;
}

static void
writing_free(Writing *writing) {
  g_weak_ref_clear(&writing->window);
  if (writing->application != NULL)
    g_application_release(writing->application);
  g_clear_object(&writing->application);
  g_free(writing);
}

static void
on_written(GObject *source, GAsyncResult *async, gpointer data) {
  Writing *writing = data;
  g_autoptr(GError) error = NULL;
  g_autoptr(SpvChartExportResult) result = spv_chart_export_finish(async, &error);
  g_autoptr(SpvWindow) window = g_weak_ref_get(&writing->window);

  (void) source;
  if (window != NULL && !gtk_widget_in_destruction(GTK_WIDGET(window))) {
    g_autofree char *words = result != NULL ? spv_chart_export_words(result) : NULL;
    spv_window_notice(window, words);
    if (result == NULL)
      spv_dialog_message(GTK_WINDOW(window), _("The sampler could not be written"), error->message);
  }
  writing_free(writing);
}

static void
on_file_chosen(GFile *file, gpointer data) {
  SpvWindow *window = data;
  g_autofree char *path = g_file_get_path(file);
  g_autoptr(SpvExportChoices) choices = spv_export_choices_load(spv_window_settings(window));
  const SpvScheme *scheme = window->session != NULL ? spv_session_scheme(window->session) : NULL;
  SpvChartOptions options = spv_chart_export_options(choices, scheme);

  if (path == NULL) {
    spv_dialog_message(GTK_WINDOW(window), _("The sampler can't be written there"),
                       _("The folder is not on this computer. Choose one that is."));
    return;
  }
  spv_window_notice(window, _("Writing the sampler…"));
  spv_chart_export_async(&options, path, choices->dpi, NULL, on_written, writing_new(window));
}

void
spv_window_export_sampler(SpvWindow *window) {
  g_autoptr(SpvExportChoices) choices = spv_export_choices_load(spv_window_settings(window));
  g_autoptr(GFile) folder = g_file_new_for_path(choices->folder);

  spv_dialog_save_sampler(GTK_WINDOW(window), folder, _("sampler.pdf"), on_file_chosen, window);
}
