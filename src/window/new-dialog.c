/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/new-dialog.h"

#include <glib/gi18n-lib.h>

#include "scheme/library.h"
#include "window/dialogs.h"
#include "window/thumbnail.h"

#define THUMBNAIL_SIZE 64

struct _SpvNewDialog {
  GtkWindow parent_instance;

  GtkWidget *list, *title_entry, *create_button;

  void (*created)(const SpvScheme *scheme, gpointer data);
  gpointer data;
};

G_DEFINE_FINAL_TYPE(SpvNewDialog, spv_new_dialog, GTK_TYPE_WINDOW)

/* What a row stands for. */
typedef struct {
  SpvLibraryEntry *entry;
  SpvScheme *scheme; /* NULL when the entry can't be read */
} Choice;

static void
choice_free(gpointer data) {
  Choice *choice = data;
  spv_library_entry_free(choice->entry);
  g_clear_pointer(&choice->scheme, spv_scheme_unref);
  g_free(choice);
}

static Choice *
choice_of(GtkListBoxRow *row) {
  return row ? g_object_get_data(G_OBJECT(row), "spv-choice") : NULL;
}

static const char *
section_name(SpvLibraryKind kind) {
  switch (kind) {
  case SPV_LIBRARY_HARNESS:
    return _("Harnesses");
  case SPV_LIBRARY_EXAMPLE:
    return _("Examples");
  case SPV_LIBRARY_TEMPLATE:
    return _("Your templates");
  }
  g_return_val_if_reached("");
}

static void
update_header(GtkListBoxRow *row, GtkListBoxRow *before, gpointer data) {
  (void) data;
  SpvLibraryKind kind = choice_of(row)->entry->kind;
  if (before && choice_of(before)->entry->kind == kind) {
    gtk_list_box_row_set_header(row, NULL);
    return;
  }
  GtkWidget *label = gtk_label_new(section_name(kind));
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_widget_add_css_class(label, "heading");
  gtk_widget_add_css_class(label, "spv-section");
  gtk_list_box_row_set_header(row, label);
}

/* What the new scheme is called when the painter gives no title. */
static const char *
preset_title(const Choice *choice) {
  return choice->entry->kind == SPV_LIBRARY_HARNESS ? _("Untitled scheme") : choice->scheme->title;
}

static void
on_row_selected(GtkListBox *list, GtkListBoxRow *row, gpointer data) {
  (void) list;
  SpvNewDialog *dialog = data;
  const Choice *choice = choice_of(row);
  gboolean usable = choice && choice->scheme;
  gtk_widget_set_sensitive(dialog->create_button, usable);
  gtk_entry_set_placeholder_text(GTK_ENTRY(dialog->title_entry), usable ? preset_title(choice) : NULL);
}

static void
create(SpvNewDialog *dialog) {
  const Choice *choice = choice_of(gtk_list_box_get_selected_row(GTK_LIST_BOX(dialog->list)));
  if (!choice || !choice->scheme)
    return;
  g_autofree char *typed = g_strstrip(g_strdup(gtk_editable_get_text(GTK_EDITABLE(dialog->title_entry))));
  g_autoptr(SpvScheme)
      scheme = spv_scheme_with_title(choice->scheme, typed[0] ? typed : preset_title(choice));
  void (*created)(const SpvScheme *, gpointer) = dialog->created;
  gpointer data = dialog->data;
  gtk_window_destroy(GTK_WINDOW(dialog));
  created(scheme, data);
}

static void
on_remove_clicked(GtkButton *button, gpointer data) {
  SpvNewDialog *dialog = data;
  GtkListBoxRow *row = GTK_LIST_BOX_ROW(gtk_widget_get_ancestor(GTK_WIDGET(button), GTK_TYPE_LIST_BOX_ROW));
  const Choice *choice = choice_of(row);
  g_autoptr(GFile) file = g_file_new_for_path(choice->entry->path);
  g_autoptr(GError) error = NULL;
  if (!g_file_trash(file, NULL, &error)) {
    spv_dialog_message(GTK_WINDOW(dialog), _("The template could not be moved to the trash"), error->message);
    return;
  }
  gtk_list_box_remove(GTK_LIST_BOX(dialog->list), GTK_WIDGET(row));
}

static GtkWidget *
label_new(const char *words, const char *style) {
  GtkWidget *label = gtk_label_new(words);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class(label, style);
  return label;
}

static GtkWidget *
remove_button_new(SpvNewDialog *dialog, const char *title) {
  GtkWidget *button = gtk_button_new_from_icon_name("spv-trash-symbolic");
  g_autofree char *words = g_strdup_printf(_("Move “%s” to the trash"), title);
  gtk_widget_set_tooltip_text(button, words);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_widget_set_valign(button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class(button, "flat");
  g_signal_connect(button, "clicked", G_CALLBACK(on_remove_clicked), dialog);
  return button;
}

/* One line on the choice: how many panels it has, or why it can't be read. */
static char *
detail_of(const Choice *choice, const GError *error) {
  if (!choice->scheme)
    return g_strdup(error->message);
  guint n = choice->scheme->n_panels;
  if (choice->entry->kind == SPV_LIBRARY_HARNESS)
    return g_strdup_printf(ngettext("%u panel", "%u panels", n), n);
  return g_strdup_printf(ngettext("%s, %u panel", "%s, %u panels", n), choice->scheme->harness, n);
}

static GtkWidget *
row_new(SpvNewDialog *dialog, SpvLibraryEntry *entry) {
  Choice *choice = g_new0(Choice, 1);
  g_autoptr(GError) error = NULL;
  choice->entry = entry;
  choice->scheme = spv_library_load(entry, &error);

  GtkWidget *row = gtk_list_box_row_new();
  g_object_set_data_full(G_OBJECT(row), "spv-choice", choice, choice_free);
  GtkWidget *line = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 12);
  if (choice->scheme) {
    gtk_box_append(GTK_BOX(line), spv_thumbnail_new(choice->scheme, THUMBNAIL_SIZE));
  }
  GtkWidget *words = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_hexpand(words, TRUE);
  gtk_widget_set_valign(words, GTK_ALIGN_CENTER);
  g_autofree char *detail = detail_of(choice, error);
  gtk_box_append(GTK_BOX(words), label_new(entry->title, "spv-name"));
  gtk_box_append(GTK_BOX(words), label_new(detail, "dim-label"));
  gtk_box_append(GTK_BOX(line), words);
  if (entry->kind == SPV_LIBRARY_TEMPLATE)
    gtk_box_append(GTK_BOX(line), remove_button_new(dialog, entry->title));
  gtk_list_box_row_set_child(GTK_LIST_BOX_ROW(row), line);
  gtk_accessible_update_property(GTK_ACCESSIBLE(row), GTK_ACCESSIBLE_PROPERTY_LABEL, entry->title,
                                 GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, detail, -1);
  return row;
}

static void
fill(SpvNewDialog *dialog) {
  static const SpvLibraryKind kinds[] = { SPV_LIBRARY_HARNESS, SPV_LIBRARY_EXAMPLE, SPV_LIBRARY_TEMPLATE };
  for (gsize i = 0; i < G_N_ELEMENTS(kinds); i++) {
    g_autoptr(GPtrArray) entries = spv_library_list(kinds[i]);
    while (entries->len > 0)
      gtk_list_box_append(GTK_LIST_BOX(dialog->list), row_new(dialog, g_ptr_array_steal_index(entries, 0)));
  }
  gtk_list_box_select_row(GTK_LIST_BOX(dialog->list),
                          gtk_list_box_get_row_at_index(GTK_LIST_BOX(dialog->list), 0));
}

SpvNewDialog *
spv_new_dialog_present(GtkWindow *parent, void (*created)(const SpvScheme *scheme, gpointer data),
                       gpointer data) {
  SpvNewDialog *dialog = g_object_new(SPV_TYPE_NEW_DIALOG, "transient-for", parent, "destroy-with-parent",
                                      TRUE, NULL);
  dialog->created = created;
  dialog->data = data;
  gtk_window_present(GTK_WINDOW(dialog));
  return dialog;
}

static void
spv_new_dialog_dispose(GObject *object) {
  SpvNewDialog *dialog = SPV_NEW_DIALOG(object);
  /* The list loses its rows, and says so, when the other fields are gone. */
  if (dialog->list)
    g_signal_handlers_disconnect_by_data(dialog->list, dialog);
  gtk_widget_dispose_template(GTK_WIDGET(object), SPV_TYPE_NEW_DIALOG);
  G_OBJECT_CLASS(spv_new_dialog_parent_class)->dispose(object);
}

static void
spv_new_dialog_class_init(SpvNewDialogClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);
  G_OBJECT_CLASS(klass)->dispose = spv_new_dialog_dispose;
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/new-dialog.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvNewDialog, list);
  gtk_widget_class_bind_template_child(widget_class, SpvNewDialog, title_entry);
  gtk_widget_class_bind_template_child(widget_class, SpvNewDialog, create_button);
  gtk_widget_class_bind_template_callback(widget_class, create);
  gtk_widget_class_bind_template_callback(widget_class, on_row_selected);
  gtk_widget_class_add_binding_action(widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
spv_new_dialog_init(SpvNewDialog *dialog) {
  gtk_widget_init_template(GTK_WIDGET(dialog));
  gtk_list_box_set_header_func(GTK_LIST_BOX(dialog->list), update_header, NULL, NULL);
  fill(dialog);
}
