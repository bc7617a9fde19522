/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/properties-dialog.h"

#include <glib/gi18n-lib.h>

#include "window/measure-text.h"

struct _SpvPropertiesDialog {
  GtkWindow parent_instance;

  GtkWidget *title_entry, *note_view, *line_entry, *line_complaint, *apply_button;

  SpvSession *session;
};

G_DEFINE_FINAL_TYPE(SpvPropertiesDialog, spv_properties_dialog, GTK_TYPE_WINDOW)

static const SpvMeasureSpec line_spec = {
  .key = "finest-line",
  .type = SPV_MEASURE_LENGTH,
  .preset = { SPV_UNIT_MM, SPV_FINEST_LINE_PRESET },
  .min = SPV_FINEST_LINE_MIN,
  .max = SPV_FINEST_LINE_MAX,
};

static char *
typed_title(SpvPropertiesDialog *dialog) {
  return g_strstrip(g_strdup(gtk_editable_get_text(GTK_EDITABLE(dialog->title_entry))));
}

static char *
typed_note(SpvPropertiesDialog *dialog) {
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(GTK_TEXT_VIEW(dialog->note_view));
  GtkTextIter start, end;
  gtk_text_buffer_get_bounds(buffer, &start, &end);
  return gtk_text_buffer_get_text(buffer, &start, &end, FALSE);
}

/* FALSE, with ERROR set, when what stands there is no width. */
static gboolean
typed_line(SpvPropertiesDialog *dialog, double *mm, GError **error) {
  SpvMeasure value;
  if (!spv_measure_text_parse(&line_spec, gtk_editable_get_text(GTK_EDITABLE(dialog->line_entry)),
                              SPV_UNIT_MM, &value, error))
    return FALSE;
  *mm = spv_measure_resolve(&line_spec, value, 0, 0, SPV_FINEST_LINE_PRESET);
  return TRUE;
}

static void
on_typed(SpvPropertiesDialog *dialog) {
  g_autofree char *title = typed_title(dialog);
  double mm;
  g_autoptr(GError) error = NULL;
  gboolean line_fits = typed_line(dialog, &mm, &error);
  gtk_label_set_text(GTK_LABEL(dialog->line_complaint), line_fits ? "" : error->message);
  gtk_widget_set_visible(dialog->line_complaint, !line_fits);
  gtk_widget_set_sensitive(dialog->apply_button, title[0] != '\0' && line_fits);
}

static void
apply(SpvPropertiesDialog *dialog) {
  g_autofree char *title = typed_title(dialog);
  g_autofree char *note = typed_note(dialog);
  double mm;
  if (!title[0] || !typed_line(dialog, &mm, NULL))
    return;
  g_autoptr(SpvScheme) titled = spv_scheme_with_title(spv_session_scheme(dialog->session), title);
  g_autoptr(SpvScheme) noted = spv_scheme_with_note(titled, note);
  g_autoptr(SpvScheme) lined = spv_scheme_with_finest_line(noted, mm);
  spv_session_push(dialog->session, lined, _("Change scheme properties"), NULL);
  gtk_window_destroy(GTK_WINDOW(dialog));
}

static void
fill(SpvPropertiesDialog *dialog) {
  const SpvScheme *scheme = spv_session_scheme(dialog->session);
  gtk_editable_set_text(GTK_EDITABLE(dialog->title_entry), scheme->title);
  gtk_text_buffer_set_text(gtk_text_view_get_buffer(GTK_TEXT_VIEW(dialog->note_view)), scheme->note, -1);
  g_autofree char *line = spv_measure_text_number((SpvMeasure){ SPV_UNIT_MM, scheme->finest_line });
  gtk_editable_set_text(GTK_EDITABLE(dialog->line_entry), line);
  on_typed(dialog);
}

SpvPropertiesDialog *
spv_properties_dialog_present(GtkWindow *parent, SpvSession *session) {
  SpvPropertiesDialog *dialog = g_object_new(SPV_TYPE_PROPERTIES_DIALOG, "transient-for", parent,
                                             "destroy-with-parent", TRUE, NULL);
  dialog->session = g_object_ref(session);
  fill(dialog);
  gtk_window_present(GTK_WINDOW(dialog));
  return dialog;
}

static void
spv_properties_dialog_dispose(GObject *object) {
  g_clear_object(&SPV_PROPERTIES_DIALOG(object)->session);
  gtk_widget_dispose_template(GTK_WIDGET(object), SPV_TYPE_PROPERTIES_DIALOG);
  G_OBJECT_CLASS(spv_properties_dialog_parent_class)->dispose(object);
}

static void
spv_properties_dialog_class_init(SpvPropertiesDialogClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);
  G_OBJECT_CLASS(klass)->dispose = spv_properties_dialog_dispose;
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/properties-dialog.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvPropertiesDialog, title_entry);
  gtk_widget_class_bind_template_child(widget_class, SpvPropertiesDialog, note_view);
  gtk_widget_class_bind_template_child(widget_class, SpvPropertiesDialog, line_entry);
  gtk_widget_class_bind_template_child(widget_class, SpvPropertiesDialog, line_complaint);
  gtk_widget_class_bind_template_child(widget_class, SpvPropertiesDialog, apply_button);
  gtk_widget_class_bind_template_callback(widget_class, on_typed);
  gtk_widget_class_bind_template_callback(widget_class, apply);
  gtk_widget_class_add_binding_action(widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
spv_properties_dialog_init(SpvPropertiesDialog *dialog) {
  gtk_widget_init_template(GTK_WIDGET(dialog));
}
