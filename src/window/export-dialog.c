/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/export-dialog.h"

#include <glib/gi18n-lib.h>

#include "window/dialogs.h"
#include "window/export.h"
#include "window/path-words.h"

/* How often the bar follows the work, ms. */
#define PROGRESS_INTERVAL 50

static const SpvFormat formats[] = { SPV_FORMAT_PNG, SPV_FORMAT_PDF, SPV_FORMAT_SVG };

struct _SpvExportDialog {
  GtkWindow parent_instance;

  GtkWidget *stack, *close_button, *export_button;
  GtkWidget *folder_label, *paper_list, *format_list, *dpi_label, *dpi_spin;
  GtkWidget *templates_check, *enlargements_check, *offsets_check, *hatch_check, *date_check;
  GtkWidget *panels_box, *complaint;
  GtkWidget *progress_bar, *done_label;

  SpvScheme *scheme;
  GSettings *settings; /* or NULL */
  SpvExportChoices *choices;
  SpvExport *job; /* while it runs */
  guint timeout;
};

G_DEFINE_FINAL_TYPE(SpvExportDialog, spv_export_dialog, GTK_TYPE_WINDOW)

static gboolean
is_on(GtkWidget *check) {
  return gtk_check_button_get_active(GTK_CHECK_BUTTON(check));
}

static void
set_on(GtkWidget *check, gboolean on) {
  gtk_check_button_set_active(GTK_CHECK_BUTTON(check), on);
}

/* The choices as the fields show them */

static guint
shown_content(SpvExportDialog *dialog) {
  return (is_on(dialog->templates_check) ? SPV_CONTENT_TEMPLATES : 0) |
         (is_on(dialog->enlargements_check) ? SPV_CONTENT_ENLARGEMENTS : 0) |
         (is_on(dialog->offsets_check) ? SPV_CONTENT_OFFSETS : 0);
}

static SpvFormat
shown_format(SpvExportDialog *dialog) {
  guint n = gtk_drop_down_get_selected(GTK_DROP_DOWN(dialog->format_list));
  return formats[MIN(n, G_N_ELEMENTS(formats) - 1)];
}

/* The ids of the panels that are ticked. */
static GPtrArray *
shown_panels(SpvExportDialog *dialog) {
  GPtrArray *ids = g_ptr_array_new_with_free_func(g_free);
  for (GtkWidget *check = gtk_widget_get_first_child(dialog->panels_box); check;
       check = gtk_widget_get_next_sibling(check)) {
    if (is_on(check))
      g_ptr_array_add(ids, g_strdup(g_object_get_data(G_OBJECT(check), "spv-panel")));
  }
  return ids;
}

static void
read_fields(SpvExportDialog *dialog) {
  SpvExportChoices *choices = dialog->choices;
  guint n_papers;
  const SpvPaper *papers = spv_papers(&n_papers);
  guint paper = gtk_drop_down_get_selected(GTK_DROP_DOWN(dialog->paper_list));
  choices->paper = &papers[MIN(paper, n_papers - 1)];
  choices->format = shown_format(dialog);
  choices->dpi = gtk_spin_button_get_value_as_int(GTK_SPIN_BUTTON(dialog->dpi_spin));
  choices->content = shown_content(dialog);
  choices->hatch = is_on(dialog->hatch_check);
  choices->date = is_on(dialog->date_check);
  GPtrArray *ids = shown_panels(dialog);
  g_ptr_array_add(ids, NULL);
  g_strfreev(choices->panels);
  choices->panels = (char **) g_ptr_array_free(ids, FALSE);
}

/* Says what is missing, and lets only a whole choice go on. */
static void
on_choice_changed(SpvExportDialog *dialog) {
  if (!dialog->choices)
    return;
  gboolean png = shown_format(dialog) == SPV_FORMAT_PNG;
  gtk_widget_set_visible(dialog->dpi_label, png);
  gtk_widget_set_visible(dialog->dpi_spin, png);
  g_autoptr(GPtrArray) panels = shown_panels(dialog);
  const char *complaint = panels->len == 0         ? _("Choose at least one panel.")
                          : !shown_content(dialog) ? _("Choose what goes on the sheets.")
                                                   : NULL;
  gtk_label_set_text(GTK_LABEL(dialog->complaint), complaint ? complaint : "");
  gtk_widget_set_visible(dialog->complaint, complaint != NULL);
  gtk_widget_set_sensitive(dialog->export_button, complaint == NULL);
}

static void
show_folder(SpvExportDialog *dialog) {
  g_autofree char *words = spv_path_words(dialog->choices->folder);
  gtk_label_set_text(GTK_LABEL(dialog->folder_label), words);
}

static void
folder_chosen(GFile *file, gpointer data) {
  SpvExportDialog *dialog = data;
  char *path = g_file_get_path(file);
  if (!path) {
    spv_dialog_message(GTK_WINDOW(dialog), _("Sheets can't be written there"),
                       _("The folder is not on this computer. Choose one that is."));
    return;
  }
  g_free(dialog->choices->folder);
  dialog->choices->folder = path;
  show_folder(dialog);
}

static void
on_folder_clicked(SpvExportDialog *dialog) {
  g_autoptr(GFile) folder = g_file_new_for_path(dialog->choices->folder);
  spv_dialog_choose_folder(GTK_WINDOW(dialog), folder, folder_chosen, dialog);
}

/* The work */

static gboolean
follow_progress(gpointer data) {
  SpvExportDialog *dialog = data;
  gtk_progress_bar_set_fraction(GTK_PROGRESS_BAR(dialog->progress_bar), spv_export_progress(dialog->job));
  return G_SOURCE_CONTINUE;
}

static void
show_page(SpvExportDialog *dialog, const char *name) {
  gtk_stack_set_visible_child_name(GTK_STACK(dialog->stack), name);
  gboolean choosing = g_str_equal(name, "choices");
  gtk_widget_set_visible(dialog->export_button, choosing);
  gtk_button_set_label(GTK_BUTTON(dialog->close_button),
                       g_str_equal(name, "done") ? _("Close") : _("Cancel"));
}

static void
end_job(SpvExportDialog *dialog) {
  g_clear_handle_id(&dialog->timeout, g_source_remove);
  g_clear_pointer(&dialog->job, spv_export_free);
}

static void
on_finished(SpvExportResult *result, const GError *error, gpointer data) {
  SpvExportDialog *dialog = data;
  end_job(dialog);
  if (!result) {
    show_page(dialog, "choices");
    if (!g_error_matches(error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
      spv_dialog_message(GTK_WINDOW(dialog), _("The sheets could not be written"), error->message);
    return;
  }
  g_autofree char *folder = spv_path_words(dialog->choices->folder);
  g_autofree char *words = g_strdup_printf(
      ngettext("%u sheet written to %s.", "%u sheets written to %s.", result->n_sheets), result->n_sheets,
      folder);
  gtk_label_set_text(GTK_LABEL(dialog->done_label), words);
  spv_export_result_free(result);
  show_page(dialog, "done");
}

static void
on_export_clicked(SpvExportDialog *dialog) {
  read_fields(dialog);
  spv_export_choices_store(dialog->choices, dialog->settings);
  gtk_progress_bar_set_fraction(GTK_PROGRESS_BAR(dialog->progress_bar), 0);
  show_page(dialog, "work");
  dialog->job = spv_export_start(dialog->scheme, dialog->choices, on_finished, dialog);
  dialog->timeout = g_timeout_add(PROGRESS_INTERVAL, follow_progress, dialog);
}

/* Cancel while it works goes back to the choices; otherwise the dialog closes. */
static void
on_close_clicked(SpvExportDialog *dialog) {
  if (dialog->job)
    spv_export_cancel(dialog->job);
  else
    gtk_window_close(GTK_WINDOW(dialog));
}

static void
on_open_folder_clicked(SpvExportDialog *dialog) {
  g_autofree char *uri = g_filename_to_uri(dialog->choices->folder, NULL, NULL);
  if (uri)
    gtk_show_uri(GTK_WINDOW(dialog), uri, GDK_CURRENT_TIME);
}

/* Filling in */

static void
fill_lists(SpvExportDialog *dialog) {
  guint n, chosen = 0;
  const SpvPaper *papers = spv_papers(&n);
  g_autoptr(GtkStringList) names = gtk_string_list_new(NULL);
  for (guint i = 0; i < n; i++) {
    gtk_string_list_append(names, papers[i].label);
    if (papers[i].key == dialog->choices->paper->key)
      chosen = i;
  }
  gtk_drop_down_set_model(GTK_DROP_DOWN(dialog->paper_list), G_LIST_MODEL(names));
  gtk_drop_down_set_selected(GTK_DROP_DOWN(dialog->paper_list), chosen);
  for (guint i = 0; i < G_N_ELEMENTS(formats); i++) {
    if (formats[i] == dialog->choices->format)
      gtk_drop_down_set_selected(GTK_DROP_DOWN(dialog->format_list), i);
  }
}

static gboolean
has_visible_layer(const SpvPanel *panel) {
  for (guint i = 0; i < panel->n_layers; i++) {
    if (!panel->layers[i]->hidden)
      return TRUE;
  }
  return FALSE;
}

/* A tick for each panel that has a design, all set. */
static void
fill_panels(SpvExportDialog *dialog) {
  for (guint i = 0; i < dialog->scheme->n_panels; i++) {
    const SpvPanel *panel = dialog->scheme->panels[i];
    if (!has_visible_layer(panel))
      continue;
    GtkWidget *check = gtk_check_button_new_with_label(panel->name);
    g_object_set_data_full(G_OBJECT(check), "spv-panel", g_strdup(panel->id), g_free);
    set_on(check, TRUE);
    g_signal_connect_swapped(check, "toggled", G_CALLBACK(on_choice_changed), dialog);
    gtk_box_append(GTK_BOX(dialog->panels_box), check);
  }
}

static void
fill(SpvExportDialog *dialog) {
  const SpvExportChoices *choices = dialog->choices;
  fill_lists(dialog);
  fill_panels(dialog);
  gtk_spin_button_set_range(GTK_SPIN_BUTTON(dialog->dpi_spin), SPV_DPI_MIN, SPV_DPI_MAX);
  gtk_spin_button_set_value(GTK_SPIN_BUTTON(dialog->dpi_spin), choices->dpi);
  set_on(dialog->templates_check, (choices->content & SPV_CONTENT_TEMPLATES) != 0);
  set_on(dialog->enlargements_check, (choices->content & SPV_CONTENT_ENLARGEMENTS) != 0);
  set_on(dialog->offsets_check, (choices->content & SPV_CONTENT_OFFSETS) != 0);
  set_on(dialog->hatch_check, choices->hatch);
  set_on(dialog->date_check, choices->date);
  show_folder(dialog);
  on_choice_changed(dialog);
}

SpvExportDialog *
spv_export_dialog_present(GtkWindow *parent, const SpvScheme *scheme, GSettings *settings) {
  SpvExportDialog *dialog = g_object_new(SPV_TYPE_EXPORT_DIALOG, "transient-for", parent,
                                         "destroy-with-parent", TRUE, NULL);
  dialog->scheme = spv_scheme_ref(scheme);
  g_set_object(&dialog->settings, settings);
  dialog->choices = spv_export_choices_load(settings);
  fill(dialog);
  gtk_window_present(GTK_WINDOW(dialog));
  return dialog;
}

static void
spv_export_dialog_dispose(GObject *object) {
  SpvExportDialog *dialog = SPV_EXPORT_DIALOG(object);
  end_job(dialog);
  g_clear_pointer(&dialog->choices, spv_export_choices_free);
  g_clear_pointer(&dialog->scheme, spv_scheme_unref);
  g_clear_object(&dialog->settings);
  /* The child is a field of the template: the window must let go of it before the template does. */
  gtk_window_set_child(GTK_WINDOW(object), NULL);
  gtk_widget_dispose_template(GTK_WIDGET(object), SPV_TYPE_EXPORT_DIALOG);
  G_OBJECT_CLASS(spv_export_dialog_parent_class)->dispose(object);
}

#define BIND(child) gtk_widget_class_bind_template_child(widget_class, SpvExportDialog, child)

static void
spv_export_dialog_class_init(SpvExportDialogClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);
  G_OBJECT_CLASS(klass)->dispose = spv_export_dialog_dispose;
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/export-dialog.ui");
  BIND(stack);
  BIND(close_button);
  BIND(export_button);
  BIND(folder_label);
  BIND(paper_list);
  BIND(format_list);
  BIND(dpi_label);
  BIND(dpi_spin);
  BIND(templates_check);
  BIND(enlargements_check);
  BIND(offsets_check);
  BIND(hatch_check);
  BIND(date_check);
  BIND(panels_box);
  BIND(complaint);
  BIND(progress_bar);
  BIND(done_label);
  gtk_widget_class_bind_template_callback(widget_class, on_choice_changed);
  gtk_widget_class_bind_template_callback(widget_class, on_close_clicked);
  gtk_widget_class_bind_template_callback(widget_class, on_export_clicked);
  gtk_widget_class_bind_template_callback(widget_class, on_folder_clicked);
  gtk_widget_class_bind_template_callback(widget_class, on_open_folder_clicked);
  gtk_widget_class_add_binding_action(widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
spv_export_dialog_init(SpvExportDialog *dialog) {
  gtk_widget_init_template(GTK_WIDGET(dialog));
}
