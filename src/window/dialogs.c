/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/dialogs.h"

#include <glib/gi18n-lib.h>

#include "window/chart-export.h"

/* What a dialog in the air remembers; it belongs to its dialog. */
typedef struct {
  GtkWindow *parent; /* the dialog goes when the parent does */
  SpvFileFunc chosen;
  SpvNameFunc named;
  GtkEditable *entry;
  GFile *file;
  gpointer data;
} Question;

static Question *
question_new(GtkWindow *parent, gpointer data) {
  Question *question = g_new0(Question, 1);
  question->parent = parent;
  question->data = data;
  return question;
}

static void
question_free(gpointer data, GClosure *closure) {
  (void) closure;
  Question *question = data;
  g_clear_object(&question->file);
  g_free(question);
}

/* File choosers */

static GtkFileChooserNative *
chooser_new(GtkWindow *parent, const char *title, GtkFileChooserAction action, const char *accept,
            GFile *folder) {
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new(title, parent, action, accept, _("_Cancel"));
  gtk_native_dialog_set_modal(GTK_NATIVE_DIALOG(chooser), TRUE);
  if (folder)
    gtk_file_chooser_set_current_folder(GTK_FILE_CHOOSER(chooser), folder, NULL);
  /* The native dialog is nobody's child: the parent keeps it while it is shown. */
  g_object_set_data_full(G_OBJECT(parent), "spv-chooser", chooser, g_object_unref);
  return chooser;
}

static void
add_filters(GtkFileChooserNative *chooser) {
  g_autoptr(GtkFileFilter) schemes = gtk_file_filter_new();
  gtk_file_filter_set_name(schemes, _("Schemes"));
  gtk_file_filter_add_pattern(schemes, "*" SPV_SCHEME_SUFFIX);
  gtk_file_chooser_add_filter(GTK_FILE_CHOOSER(chooser), schemes);
  g_autoptr(GtkFileFilter) all = gtk_file_filter_new();
  gtk_file_filter_set_name(all, _("All files"));
  gtk_file_filter_add_pattern(all, "*");
  gtk_file_chooser_add_filter(GTK_FILE_CHOOSER(chooser), all);
}

/* The file that was chosen, or NULL; the chooser is done with. */
static GFile *
take_answer(GtkNativeDialog *dialog, int response) {
  GFile *file = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file(GTK_FILE_CHOOSER(dialog)) : NULL;
  gtk_native_dialog_hide(dialog);
  return file;
}

static gboolean
release_chooser(gpointer parent) {
  g_object_set_data(parent, "spv-chooser", NULL);
  return G_SOURCE_REMOVE;
}

static void
on_file_chosen(GtkNativeDialog *dialog, int response, gpointer data) {
  Question *question = data;
  g_autoptr(GFile) file = take_answer(dialog, response);
  if (file)
    question->chosen(file, question->data);
  /* Not now: this is the chooser's own signal. */
  g_idle_add_full(G_PRIORITY_DEFAULT_IDLE, release_chooser, g_object_ref(question->parent), g_object_unref);
}

static void
show_chooser(GtkFileChooserNative *chooser, Question *question, GCallback answered) {
  g_signal_connect_data(chooser, "response", answered, question, question_free, 0);
  gtk_native_dialog_show(GTK_NATIVE_DIALOG(chooser));
}

void
spv_dialog_open_scheme(GtkWindow *parent, GFile *folder, SpvFileFunc chosen, gpointer data) {
  GtkFileChooserNative *chooser = chooser_new(parent, _("Open scheme"), GTK_FILE_CHOOSER_ACTION_OPEN,
                                              _("_Open"), folder);
  add_filters(chooser);
  Question *question = question_new(parent, data);
  question->chosen = chosen;
  show_chooser(chooser, question, G_CALLBACK(on_file_chosen));
}

void
spv_dialog_open_drawing(GtkWindow *parent, SpvFileFunc chosen, gpointer data) {
  GtkFileChooserNative *chooser = chooser_new(parent, _("Path from an SVG file"),
                                              GTK_FILE_CHOOSER_ACTION_OPEN, _("_Open"), NULL);
  g_autoptr(GtkFileFilter) drawings = gtk_file_filter_new();
  gtk_file_filter_set_name(drawings, _("SVG drawings"));
  gtk_file_filter_add_suffix(drawings, "svg");
  gtk_file_chooser_add_filter(GTK_FILE_CHOOSER(chooser), drawings);
  Question *question = question_new(parent, data);
  question->chosen = chosen;
  show_chooser(chooser, question, G_CALLBACK(on_file_chosen));
}

void
spv_dialog_choose_folder(GtkWindow *parent, GFile *folder, SpvFileFunc chosen, gpointer data) {
  GtkFileChooserNative *chooser = chooser_new(parent, _("Choose a folder"),
                                              GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER, _("_Choose"), folder);
  Question *question = question_new(parent, data);
  question->chosen = chosen;
  show_chooser(chooser, question, G_CALLBACK(on_file_chosen));
}

static void
on_replace_answered(GtkDialog *dialog, int response, gpointer data) {
  Question *question = data;
  if (response == GTK_RESPONSE_ACCEPT)
    question->chosen(question->file, question->data);
  gtk_window_destroy(GTK_WINDOW(dialog));
}

/* The chooser asked about the name as it was typed; with the suffix, or a page's number, THERE may be another
 * file's. FILE is the answer. */
static void
ask_to_replace(const Question *asked, GFile *file, GFile *there) {
  Question *question = question_new(asked->parent, asked->data);
  question->chosen = asked->chosen;
  question->file = g_object_ref(file);
  g_autofree char *name = g_file_get_basename(there);
  GtkWidget *dialog = gtk_message_dialog_new(asked->parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                             GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE,
                                             _("“%s” is there already."), name);
  gtk_dialog_add_buttons(GTK_DIALOG(dialog), _("_Cancel"), GTK_RESPONSE_CANCEL, _("_Replace"),
                         GTK_RESPONSE_ACCEPT, NULL);
  g_signal_connect_data(dialog, "response", G_CALLBACK(on_replace_answered), question, question_free, 0);
  gtk_window_present(GTK_WINDOW(dialog));
}

static void
on_save_chosen(GtkNativeDialog *dialog, int response, gpointer data) {
  Question *question = data;
  g_autoptr(GFile) file = take_answer(dialog, response);
  g_autofree char *name = file ? g_file_get_basename(file) : NULL;
  if (file && g_str_has_suffix(name, SPV_SCHEME_SUFFIX)) {
    question->chosen(file, question->data);
  } else if (file) {
    g_autofree char *full = g_strconcat(name, SPV_SCHEME_SUFFIX, NULL);
    g_autoptr(GFile) folder = g_file_get_parent(file);
    g_autoptr(GFile) named = g_file_get_child(folder, full);
    if (g_file_query_exists(named, NULL))
      ask_to_replace(question, named, named);
    else
      question->chosen(named, question->data);
  }
  g_idle_add_full(G_PRIORITY_DEFAULT_IDLE, release_chooser, g_object_ref(question->parent), g_object_unref);
}

void
spv_dialog_save_scheme(GtkWindow *parent, GFile *folder, const char *name, SpvFileFunc chosen,
                       gpointer data) {
  GtkFileChooserNative *chooser = chooser_new(parent, _("Save scheme"), GTK_FILE_CHOOSER_ACTION_SAVE,
                                              _("_Save"), folder);
  add_filters(chooser);
  gtk_file_chooser_set_current_name(GTK_FILE_CHOOSER(chooser), name);
  Question *question = question_new(parent, data);
  question->chosen = chosen;
  show_chooser(chooser, question, G_CALLBACK(on_save_chosen));
}

static void
on_sampler_chosen(GtkNativeDialog *dialog, int response, gpointer data) {
  Question *question = data;
  g_autoptr(GFile) file = take_answer(dialog, response);
  if (file) {
    g_autofree char *typed = g_file_get_basename(file), *name = spv_chart_export_name(typed);
    g_autofree char *first = spv_chart_export_first(name);
    g_autoptr(GFile) folder = g_file_get_parent(file);
    g_autoptr(GFile) named = g_file_get_child(folder, name);
    g_autoptr(GFile) there = g_file_get_child(folder, first);
    if (!g_str_equal(first, typed) && g_file_query_exists(there, NULL))
      ask_to_replace(question, named, there);
    else
      question->chosen(named, question->data);
  }
  g_idle_add_full(G_PRIORITY_DEFAULT_IDLE, release_chooser, g_object_ref(question->parent), g_object_unref);
}

void
spv_dialog_save_sampler(GtkWindow *parent, GFile *folder, const char *name, SpvFileFunc chosen,
                        gpointer data) {
  GtkFileChooserNative *chooser = chooser_new(parent, _("Export sampler"), GTK_FILE_CHOOSER_ACTION_SAVE,
                                              _("_Export"), folder);
  g_autoptr(GtkFileFilter) pages = gtk_file_filter_new();
  gtk_file_filter_set_name(pages, _("PDF, PNG and SVG"));
  gtk_file_filter_add_suffix(pages, "pdf");
  gtk_file_filter_add_suffix(pages, "png");
  gtk_file_filter_add_suffix(pages, "svg");
  gtk_file_chooser_add_filter(GTK_FILE_CHOOSER(chooser), pages);
  gtk_file_chooser_set_current_name(GTK_FILE_CHOOSER(chooser), name);
  Question *question = question_new(parent, data);
  question->chosen = chosen;
  show_chooser(chooser, question, G_CALLBACK(on_sampler_chosen));
}

/* Names */

static char *
typed_name(GtkEditable *entry) {
  return g_strstrip(g_strdup(gtk_editable_get_text(entry)));
}

static void
on_name_typed(GtkEditable *entry, GtkDialog *dialog) {
  g_autofree char *name = typed_name(entry);
  gtk_dialog_set_response_sensitive(dialog, GTK_RESPONSE_ACCEPT, name[0] != '\0');
}

static void
on_name_answered(GtkDialog *dialog, int response, gpointer data) {
  Question *question = data;
  g_autofree char *name = typed_name(question->entry);
  if (response == GTK_RESPONSE_ACCEPT && name[0] != '\0')
    question->named(name, question->data);
  gtk_window_destroy(GTK_WINDOW(dialog));
}

void
spv_dialog_ask_name(GtkWindow *parent, const char *heading, const char *detail, const char *name,
                    const char *accept, SpvNameFunc named, gpointer data) {
  GtkWidget *dialog = gtk_message_dialog_new(parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                             GTK_MESSAGE_OTHER, GTK_BUTTONS_NONE, "%s", heading);
  gtk_message_dialog_format_secondary_text(GTK_MESSAGE_DIALOG(dialog), "%s", detail);
  gtk_dialog_add_button(GTK_DIALOG(dialog), _("_Cancel"), GTK_RESPONSE_CANCEL);
  GtkWidget *button = gtk_dialog_add_button(GTK_DIALOG(dialog), accept, GTK_RESPONSE_ACCEPT);
  gtk_widget_add_css_class(button, "suggested-action");
  gtk_dialog_set_default_response(GTK_DIALOG(dialog), GTK_RESPONSE_ACCEPT);

  GtkWidget *entry = gtk_entry_new();
  gtk_editable_set_text(GTK_EDITABLE(entry), name);
  gtk_entry_set_activates_default(GTK_ENTRY(entry), TRUE);
  gtk_accessible_update_property(GTK_ACCESSIBLE(entry), GTK_ACCESSIBLE_PROPERTY_LABEL, heading, -1);
  gtk_box_append(GTK_BOX(gtk_message_dialog_get_message_area(GTK_MESSAGE_DIALOG(dialog))), entry);
  g_signal_connect(entry, "changed", G_CALLBACK(on_name_typed), dialog);
  on_name_typed(GTK_EDITABLE(entry), GTK_DIALOG(dialog));

  Question *question = question_new(parent, data);
  question->named = named;
  question->entry = GTK_EDITABLE(entry);
  g_signal_connect_data(dialog, "response", G_CALLBACK(on_name_answered), question, question_free, 0);
  gtk_window_present(GTK_WINDOW(dialog));
  gtk_widget_grab_focus(entry);
}

/* Words */

static void
make_selectable(GtkWidget *area) {
  for (GtkWidget *child = gtk_widget_get_first_child(area); child;
       child = gtk_widget_get_next_sibling(child)) {
    if (GTK_IS_LABEL(child)) {
      gtk_label_set_selectable(GTK_LABEL(child), TRUE);
      gtk_label_set_wrap_mode(GTK_LABEL(child), PANGO_WRAP_WORD_CHAR);
    }
  }
}

void
spv_dialog_message(GtkWindow *parent, const char *heading, const char *detail) {
  GtkWidget *dialog = gtk_message_dialog_new(parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                             GTK_MESSAGE_ERROR, GTK_BUTTONS_CLOSE, "%s", heading);
  gtk_message_dialog_format_secondary_text(GTK_MESSAGE_DIALOG(dialog), "%s", detail);
  make_selectable(gtk_message_dialog_get_message_area(GTK_MESSAGE_DIALOG(dialog)));
  g_signal_connect(dialog, "response", G_CALLBACK(gtk_window_destroy), NULL);
  gtk_window_present(GTK_WINDOW(dialog));
  gtk_widget_grab_focus(gtk_dialog_get_widget_for_response(GTK_DIALOG(dialog), GTK_RESPONSE_CLOSE));
}

void
spv_dialog_about(GtkWindow *parent) {
  gtk_show_about_dialog(
      parent, "program-name", "Spolvero", "version", SPV_VERSION, "logo-icon-name", SPV_APP_ID, "comments",
      _("Freehand heraldry on scale figures: designed, checked, and printed as guide sheets at true scale."),
      "license-type", GTK_LICENSE_GPL_3_0, NULL);
}
