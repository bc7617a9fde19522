/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window's dialogs in process, on a virtual display. */
#include "window/window-test.h"

#include "scheme/library.h"
#include "scheme/scheme-file.h"
#include "window/export-dialog.h"
#include "window/new-dialog.h"
#include "window/properties-dialog.h"

static void
dialogs_go_with_their_window(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  act(window, "new");
  act(window, "export");
  act(window, "scheme-properties");
  act(window, "save-as-template");
  act(window, "about");
  gpointer dialogs[] = { toplevel_of_type("SpvNewDialog"), toplevel_of_type("SpvExportDialog"),
                         toplevel_of_type("SpvPropertiesDialog"), toplevel_of_type("GtkMessageDialog") };
  for (gsize i = 0; i < G_N_ELEMENTS(dialogs); i++) {
    assert_non_null(dialogs[i]);
    g_object_add_weak_pointer(dialogs[i], &dialogs[i]);
  }
  spin(200);
  gtk_window_destroy(GTK_WINDOW(window));
  close_all();
  for (gsize i = 0; i < G_N_ELEMENTS(dialogs); i++)
    WAIT_FOR(!dialogs[i], 5000);
}

static void
a_broken_file_is_reported_whole(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  g_autofree char *path = g_build_filename(folder, "broken.scheme.json", NULL);
  assert_true(g_file_set_contents(path, "{\n  \"spolvero\": 1,\n  oops\n}\n", -1, NULL));
  g_autoptr(GError) error = NULL;
  assert_null(spv_scheme_load(path, &error));
  g_autoptr(GFile) file = g_file_new_for_path(path);
  SpvWindow *window = spv_window_new(application);
  gtk_window_present(GTK_WINDOW(window));
  spv_window_open_file(window, file);
  assert_null(spv_window_session(window));
  GtkWidget *dialog = toplevel_of_type("GtkMessageDialog");
  assert_non_null(dialog);
  assert_non_null(find(dialog, is_label, "“broken.scheme.json” could not be opened"));
  assert_non_null(find(dialog, is_label, error->message));
  assert_non_null(strstr(error->message, ":3:"));
  close_all();
  remove_folder(folder);
}

static void
a_save_that_fails_is_reported_and_keeps_the_work(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  g_autoptr(GFile) nowhere = g_file_new_for_path("/nonexistent-folder/heron.scheme.json");
  SpvWindow *shown = spv_window_show_scheme(window, spv_session_scheme(spv_window_session(window)), nowhere);
  add(shown, "bordure");
  act(shown, "save");
  GtkWidget *dialog = toplevel_of_type("GtkMessageDialog");
  assert_non_null(dialog);
  assert_non_null(find(dialog, is_label, "“heron.scheme.json” could not be saved"));
  assert_non_null(find(dialog, is_label, "Your work is still here"));
  assert_true(spv_session_is_modified(spv_window_session(shown)));
  close_all();
}

static void
new_starts_from_each_entry(void **state) {
  (void) state;
  g_autoptr(SpvScheme) mine = a_scheme();
  g_autofree char *template = spv_library_save_template(mine, "Ashlar Guard", NULL);
  assert_non_null(template);
  guint n = 0;
  for (int kind = SPV_LIBRARY_HARNESS; kind <= SPV_LIBRARY_TEMPLATE; kind++) {
    g_autoptr(GPtrArray) entries = spv_library_list(kind);
    n += entries->len;
  }
  for (guint i = 0; i < n; i++) {
    SpvWindow *window = spv_window_new(application);
    act(window, "new");
    GtkWidget *dialog = toplevel_of_type("SpvNewDialog");
    GtkListBox *list = GTK_LIST_BOX(find(dialog, is_type, "GtkListBox"));
    assert_null(gtk_list_box_get_row_at_index(list, (int) n));
    gtk_list_box_select_row(list, gtk_list_box_get_row_at_index(list, (int) i));
    gtk_editable_set_text(GTK_EDITABLE(find(dialog, is_type, "GtkEntry")), "  Lantern Company ");
    click(dialog, "Create");
    SpvSession *session = spv_window_session(window);
    assert_non_null(session);
    assert_string_equal(spv_session_scheme(session)->title, "Lantern Company");
    assert_true(spv_session_scheme(session)->n_panels > 0);
    assert_null(spv_session_file(session));
    assert_null(toplevel_of_type("SpvNewDialog"));
    gtk_window_destroy(GTK_WINDOW(window));
  }
  close_all();
  g_unlink(template);
}

static void
a_template_that_can_not_be_read_says_why(void **state) {
  (void) state;
  g_autofree char *folder = spv_library_folder();
  g_autofree char *path = g_build_filename(folder, "broken.scheme.json", NULL);
  g_mkdir_with_parents(folder, 0700);
  assert_true(g_file_set_contents(path, "{", -1, NULL));
  SpvWindow *window = spv_window_new(application);
  act(window, "new");
  GtkWidget *dialog = toplevel_of_type("SpvNewDialog");
  assert_non_null(find(dialog, is_label, "broken.scheme.json:1:"));
  GtkListBox *list = GTK_LIST_BOX(find(dialog, is_type, "GtkListBox"));
  int last = 0;
  while (gtk_list_box_get_row_at_index(list, last + 1))
    last++;
  gtk_list_box_select_row(list, gtk_list_box_get_row_at_index(list, last));
  assert_false(gtk_widget_get_sensitive(find(dialog, is_button, "Create")));
  g_unlink(path);
  close_all();
}

static gboolean
has_tooltip(GtkWidget *widget, const char *words) {
  return g_strcmp0(gtk_widget_get_tooltip_text(widget), words) == 0;
}

static void
a_template_goes_to_the_trash(void **state) {
  (void) state;
  g_autoptr(SpvScheme) mine = a_scheme();
  g_autofree char *template = spv_library_save_template(mine, "Ashlar Guard", NULL);
  SpvWindow *window = spv_window_new(application);
  act(window, "new");
  GtkWidget *dialog = toplevel_of_type("SpvNewDialog");
  GtkWidget *remove = find(dialog, has_tooltip, "Move “Ashlar Guard” to the trash");
  assert_non_null(remove);
  g_signal_emit_by_name(remove, "clicked");
  assert_false(g_file_test(template, G_FILE_TEST_EXISTS));
  assert_null(find(dialog, has_tooltip, "Move “Ashlar Guard” to the trash"));
  g_autofree char *name = g_path_get_basename(template);
  g_autofree char *trashed = g_build_filename(g_get_user_data_dir(), "Trash", "files", name, NULL);
  assert_true(g_file_test(trashed, G_FILE_TEST_EXISTS));
  close_all();
}

/* The dialog over a window that shows a_scheme(), set to write to FOLDER at DPI dots an inch. */
static GtkWidget *
an_export_dialog(const char *folder, int dpi) {
  GSettings *settings = spv_application_settings(application);
  g_settings_set_string(settings, "export-folder", folder);
  g_settings_set_int(settings, "export-dpi", dpi);
  act(a_window(), "export");
  return toplevel_of_type("SpvExportDialog");
}

static void
the_export_dialog_writes_sheets(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  GtkWidget *dialog = an_export_dialog(folder, 150);
  GtkWidget *panel = find(dialog, is_check, "kneepad, dexter");
  assert_non_null(panel);
  assert_null(find(dialog, is_check, "kneepad, sinister"));
  gtk_check_button_set_active(GTK_CHECK_BUTTON(panel), FALSE);
  assert_false(gtk_widget_get_sensitive(find(dialog, is_button, "Export")));
  gtk_check_button_set_active(GTK_CHECK_BUTTON(panel), TRUE);
  click(dialog, "Export");
  WAIT_FOR(find(dialog, is_label, "written to"), 30000);
  assert_non_null(find(dialog, is_label, "1 sheet written to"));
  assert_int_equal(count_files(folder), 1);
  gpointer alive = dialog;
  g_object_add_weak_pointer(G_OBJECT(dialog), &alive);
  click(dialog, "Close");
  WAIT_FOR(!alive, 5000);
  close_all();
  remove_folder(folder);
}

static void
an_export_can_be_cancelled_and_begun_again(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  GtkWidget *dialog = an_export_dialog(folder, 2400);
  GtkWidget *export = find(dialog, is_button, "Export");
  click(dialog, "Export");
  assert_false(gtk_widget_get_visible(export));
  click(dialog, "Cancel");
  WAIT_FOR(gtk_widget_get_visible(export), 30000);
  assert_int_equal(count_files(folder), 0);
  /* Closed while it works: nothing of it comes back. */
  click(dialog, "Export");
  gtk_window_destroy(GTK_WINDOW(dialog));
  spin(200);
  close_all();
  g_settings_set_int(spv_application_settings(application), "export-dpi", 150);
  remove_folder(folder);
}

static void
properties_are_one_step(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  SpvSession *session = spv_window_session(window);
  act(window, "scheme-properties");
  GtkWidget *dialog = toplevel_of_type("SpvPropertiesDialog");
  GtkWidget *title = find(dialog, is_type, "GtkEntry");
  GtkWidget *unit = find(dialog, is_label, "mm");
  GtkWidget *line = gtk_widget_get_prev_sibling(unit);
  assert_string_equal(gtk_editable_get_text(GTK_EDITABLE(title)), "Heron Ferry Guild");
  assert_string_equal(gtk_editable_get_text(GTK_EDITABLE(line)), "0.25");
  gtk_editable_set_text(GTK_EDITABLE(line), "9");
  assert_false(gtk_widget_get_sensitive(find(dialog, is_button, "Apply")));
  gtk_editable_set_text(GTK_EDITABLE(line), "0,3");
  gtk_editable_set_text(GTK_EDITABLE(title), "Quarry Row Pikes");
  click(dialog, "Apply");
  const SpvScheme *scheme = spv_session_scheme(session);
  assert_string_equal(scheme->title, "Quarry Row Pikes");
  assert_true(scheme->finest_line == 0.3);
  act(window, "undo");
  scheme = spv_session_scheme(session);
  assert_string_equal(scheme->title, "Heron Ferry Guild");
  assert_true(scheme->finest_line == SPV_FINEST_LINE_PRESET);
  assert_false(enabled(window, "undo"));
  close_all();
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(dialogs_go_with_their_window),
    cmocka_unit_test(a_broken_file_is_reported_whole),
    cmocka_unit_test(a_save_that_fails_is_reported_and_keeps_the_work),
    cmocka_unit_test(new_starts_from_each_entry),
    cmocka_unit_test(a_template_that_can_not_be_read_says_why),
    cmocka_unit_test(a_template_goes_to_the_trash),
    cmocka_unit_test(the_export_dialog_writes_sheets),
    cmocka_unit_test(an_export_can_be_cancelled_and_begun_again),
    cmocka_unit_test(properties_are_one_step),
  };
  RUN_WITH_APPLICATION(tests);
}
