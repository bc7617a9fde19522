/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the tests of the panes share: a pane in a window of its own on a small scheme, and ways to find and to
 * use what is in it. */
#pragma once

#include "window/a-scheme.h"

#include <gtk/gtk.h>
#include <string.h>

#include "window/measure-entry.h"
#include "window/pane.h"

typedef struct {
  SpvSession *session;
  GtkWidget *window, *pane;
} Bench;

/* "Heron Ferry Guild" with its kneepads on their sides, a jagged border over the check, and
 * the border chosen. */
static inline SpvSession *
bench_session(void) {
  g_autoptr(SpvScheme) plain = a_scheme();
  SpvOutlineSpec outline = plain->panels[0]->outline;
  SpvSurface dome = { SPV_SURFACE_DOME, 0.6 };
  g_autoptr(SpvPanel) dexter = spv_panel_new("kneepad-dexter", "kneepad, dexter", SPV_SIDE_DEXTER, &outline,
                                             &dome, spv_point(-4, 0));
  g_autoptr(SpvPanel) sinister = spv_panel_new("kneepad-sinister", "kneepad, sinister", SPV_SIDE_SINISTER,
                                               &outline, &dome, spv_point(4, 0));
  g_autoptr(SpvLayer) border = spv_layer_new("jagged-border", SPV_PATTERN_JAGGED_BORDER, "sable", NULL);
  SpvLayer *layers[] = { plain->panels[0]->layers[0], plain->panels[0]->layers[1], border };
  g_autoptr(SpvPanel) painted = spv_panel_with_layers(dexter, layers, 3);
  SpvPanel *panels[] = { painted, sinister };
  g_autoptr(SpvScheme) scheme = spv_scheme_with_panels(plain, panels, 2);
  SpvSession *session = spv_session_new(scheme, NULL);

  spv_session_select(session, 0, 2);
  return session;
}

/* PANE is taken over. */
static inline Bench
bench_open(GtkWidget *pane) {
  Bench bench = { bench_session(), gtk_window_new(), pane };

  gtk_window_set_default_size(GTK_WINDOW(bench.window), 320, 720);
  gtk_window_set_child(GTK_WINDOW(bench.window), pane);
  g_object_set(pane, "session", bench.session, NULL);
  gtk_window_present(GTK_WINDOW(bench.window));
  WAIT_FOR(gtk_widget_get_mapped(pane) && gtk_widget_get_height(pane) > 0, 5000);
  return bench;
}

/* Closes, and fails unless the pane and the session have gone. */
static inline void
bench_close(Bench *bench) {
  gpointer pane = bench->pane, session = bench->session;

  g_object_add_weak_pointer(pane, &pane);
  g_object_add_weak_pointer(session, &session);
  gtk_window_destroy(GTK_WINDOW(bench->window));
  g_object_unref(bench->session);
  WAIT_FOR(pane == NULL && session == NULL, 5000);
}

/* The N-th widget of TYPE under ROOT, depth first, counted from 0; NULL when there are not so many. */
static inline GtkWidget *
find_nth_counting(GtkWidget *root, GType type, int *n) {
  if (g_type_is_a(G_OBJECT_TYPE(root), type) && (*n)-- == 0)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child(root); child;
       child = gtk_widget_get_next_sibling(child)) {
    GtkWidget *found = find_nth_counting(child, type, n);
    if (found)
      return found;
  }
  return NULL;
}
static inline GtkWidget *
find_nth(GtkWidget *root, GType type, int n) {
  return find_nth_counting(root, type, &n);
}

/* Whether a screen reader calls WIDGET so; needs GTK_A11Y=test. */
static inline gboolean
is_called(GtkWidget *widget, const char *name) {
  g_autofree char *mismatch = gtk_test_accessible_check_property(GTK_ACCESSIBLE(widget),
                                                                 GTK_ACCESSIBLE_PROPERTY_LABEL, name);
  return mismatch == NULL;
}

/* The widget of TYPE under ROOT that a screen reader calls NAME; fails when there is none. */
static inline GtkWidget *
find_called(GtkWidget *root, GType type, const char *name) {
  GtkWidget *widget;

  for (int n = 0; (widget = find_nth(root, type, n)); n++) {
    if (gtk_test_accessible_has_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL) &&
        is_called(widget, name))
      return widget;
  }
  fail_msg("no %s is called “%s”", g_type_name(type), name);
  return NULL;
}

/* The label under ROOT that says WORDS, or NULL. */
static inline GtkWidget *
find_words(GtkWidget *root, const char *words) {
  GtkWidget *label;

  for (int n = 0; (label = find_nth(root, GTK_TYPE_LABEL, n)); n++) {
    if (strcmp(gtk_label_get_text(GTK_LABEL(label)), words) == 0)
      return label;
  }
  return NULL;
}

/* Whether WIDGET and all around it up to the window are shown. */
static inline gboolean
is_shown(GtkWidget *widget) {
  for (; widget; widget = gtk_widget_get_parent(widget)) {
    if (!gtk_widget_get_visible(widget))
      return FALSE;
  }
  return TRUE;
}

static inline const char *
text_of(GtkWidget *editable) {
  return gtk_editable_get_text(GTK_EDITABLE(editable));
}

/* Types TEXT over what stands in EDITABLE, a character at a time, as a painter does. */
static inline void
type_over(GtkWidget *editable, const char *text) {
  gtk_widget_grab_focus(editable);
  gtk_editable_delete_text(GTK_EDITABLE(editable), 0, -1);
  for (int position = 0; *text; text = g_utf8_next_char(text))
    gtk_editable_insert_text(GTK_EDITABLE(editable), text, (int) (g_utf8_next_char(text) - text), &position);
}

static inline void
press_enter(GtkWidget *editable) {
  g_signal_emit_by_name(editable, "activate");
}

static inline void
leave_field(Bench *bench) {
  gtk_window_set_focus(GTK_WINDOW(bench->window), NULL);
}

static inline void
click(GtkWidget *button) {
  assert_true(gtk_widget_is_sensitive(button));
  g_signal_emit_by_name(button, "clicked");
}

/* Presses KEYVAL on the key controllers of WIDGET; returns whether one took it. */
static inline gboolean
press_key(GtkWidget *widget, guint keyval, GdkModifierType state) {
  g_autoptr(GListModel) controllers = gtk_widget_observe_controllers(widget);
  gboolean handled = FALSE;

  for (guint i = 0; !handled && i < g_list_model_get_n_items(controllers); i++) {
    g_autoptr(GtkEventController) controller = g_list_model_get_item(controllers, i);
    if (GTK_IS_EVENT_CONTROLLER_KEY(controller))
      g_signal_emit_by_name(controller, "key-pressed", keyval, 0u, state, &handled);
  }
  return handled;
}

/* How many steps can be undone: undoes them all and does them again. */
static inline guint
count_steps(SpvSession *session) {
  guint n = 0;

  while (spv_session_undo(session))
    n++;
  for (guint i = 0; i < n; i++)
    spv_session_redo(session);
  return n;
}

/* Without a display there is nothing to test: meson counts 77 as skipped, and CI fails on that. */
#define RUN_PANE_TESTS(tests)                                                                                \
  int main(void) {                                                                                           \
    if (!gtk_init_check())                                                                                   \
      return 77;                                                                                             \
    return cmocka_run_group_tests(tests, NULL, NULL);                                                        \
  }
