/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the tests of the window in process share: a registered application, windows with a small scheme, and
 * ways to find and press what is in them. */
#pragma once

#include "window/a-scheme.h"

#include "scheme/scheme-file.h"
#include "window/window-private.h"

static SpvApplication *application;

/* Finding one's way */

static inline GtkWidget *
find(GtkWidget *root, gboolean (*matches)(GtkWidget *widget, const char *words), const char *words) {
  if (matches(root, words))
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child(root); child;
       child = gtk_widget_get_next_sibling(child)) {
    GtkWidget *found = find(child, matches, words);
    if (found)
      return found;
  }
  return NULL;
}

static inline gboolean
is_button(GtkWidget *widget, const char *words) {
  return GTK_IS_BUTTON(widget) && g_strcmp0(gtk_button_get_label(GTK_BUTTON(widget)), words) == 0;
}

static inline gboolean
is_label(GtkWidget *widget, const char *words) {
  return GTK_IS_LABEL(widget) && strstr(gtk_label_get_text(GTK_LABEL(widget)), words);
}

static inline gboolean
is_check(GtkWidget *widget, const char *words) {
  return GTK_IS_CHECK_BUTTON(widget) &&
         g_strcmp0(gtk_check_button_get_label(GTK_CHECK_BUTTON(widget)), words) == 0;
}

static inline gboolean
is_type(GtkWidget *widget, const char *type) {
  return g_str_equal(G_OBJECT_TYPE_NAME(widget), type);
}

static inline void
click(GtkWidget *root, const char *words) {
  GtkWidget *button = find(root, is_button, words);
  assert_non_null(button);
  assert_true(gtk_widget_is_sensitive(button));
  g_signal_emit_by_name(button, "clicked");
}

static inline GtkWidget *
toplevel_of_type(const char *type) {
  g_autoptr(GList) all = gtk_window_list_toplevels();
  for (GList *at = all; at; at = at->next) {
    if (is_type(at->data, type))
      return at->data;
  }
  return NULL;
}

static inline void
spin(guint ms) {
  gboolean late = FALSE;
  g_timeout_add(ms, spv_test_late, &late);
  while (!late)
    g_main_context_iteration(NULL, TRUE);
}

/* A window that shows a_scheme(), on screen. */
static inline SpvWindow *
a_window(void) {
  SpvWindow *window = spv_window_new(application);
  g_autoptr(SpvScheme) scheme = a_scheme();
  assert_ptr_equal(spv_window_show_scheme(window, scheme, NULL), window);
  gtk_window_present(GTK_WINDOW(window));
  WAIT_FOR(gtk_widget_get_mapped(GTK_WIDGET(window)), 10000);
  return window;
}

/* A file of FOLDER called NAME that holds a_scheme(). Free with g_object_unref(). */
static inline GFile *
a_file(const char *folder, const char *name) {
  g_autofree char *path = g_build_filename(folder, name, NULL);
  g_autoptr(SpvScheme) scheme = a_scheme();
  assert_true(spv_scheme_save(scheme, path, NULL));
  return g_file_new_for_path(path);
}

static inline void
close_all(void) {
  GtkWidget *window;
  g_autoptr(GListModel) all = g_object_ref(gtk_window_get_toplevels());
  while ((window = g_list_model_get_item(all, 0))) {
    gtk_window_destroy(GTK_WINDOW(window));
    g_object_unref(window);
  }
  spin(50);
}

static inline gboolean
enabled(SpvWindow *window, const char *action) {
  return g_action_group_get_action_enabled(G_ACTION_GROUP(window), action);
}

static inline void
act(SpvWindow *window, const char *action) {
  assert_true(g_action_group_has_action(G_ACTION_GROUP(window), action));
  assert_true(enabled(window, action));
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
}

static inline void
add(SpvWindow *window, const char *kind) {
  g_action_group_activate_action(G_ACTION_GROUP(window), "add-layer", g_variant_new_string(kind));
}

/* Runs TESTS with the application registered; 77 (skipped) where there is no display. */
#define RUN_WITH_APPLICATION(tests)                                                                          \
  do {                                                                                                       \
    if (!gtk_init_check())                                                                                   \
      return 77;                                                                                             \
    application = spv_application_new();                                                                     \
    g_application_set_flags(G_APPLICATION(application), G_APPLICATION_NON_UNIQUE);                           \
    if (!g_application_register(G_APPLICATION(application), NULL, NULL))                                     \
      return 1;                                                                                              \
    int failed_ = cmocka_run_group_tests(tests, NULL, NULL);                                                 \
    close_all();                                                                                             \
    g_object_unref(application);                                                                             \
    return failed_;                                                                                          \
  } while (0)
