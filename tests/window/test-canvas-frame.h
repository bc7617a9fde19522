/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a test of one drawn widget needs: a window around it, waiting for it to be drawn, its pixels,
 * and its controllers. */
#pragma once

#include <gtk/gtk.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

static inline gboolean
frame_late(gpointer data) {
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

static inline void
frame_bump(GdkFrameClock *clock, gpointer data) {
  (void) clock;
  ++*(guint *) data;
}

/* Until WIDGET has been drawn anew; fails after 5 s. */
static inline void
frame_wait(GtkWidget *widget) {
  GdkFrameClock *clock = gtk_widget_get_frame_clock(widget);
  gboolean late = FALSE;
  guint painted = 0, timeout = g_timeout_add(5000, frame_late, &late);
  gulong handler = g_signal_connect(clock, "after-paint", G_CALLBACK(frame_bump), &painted);

  gtk_widget_queue_draw(widget);
  while (painted == 0 && !late)
    g_main_context_iteration(NULL, TRUE);
  assert_false(late);
  g_source_remove(timeout);
  g_signal_handler_disconnect(clock, handler);
}

/* WIDGET alone in a window of WIDTH by HEIGHT px, drawn once. */
static inline GtkWidget *
frame_around(GtkWidget *widget, int width, int height) {
  GtkWidget *window = gtk_window_new();

  gtk_window_set_default_size(GTK_WINDOW(window), width, height);
  gtk_window_set_decorated(GTK_WINDOW(window), FALSE);
  gtk_window_set_child(GTK_WINDOW(window), widget);
  gtk_window_present(GTK_WINDOW(window));
  while (!gtk_widget_get_mapped(widget))
    g_main_context_iteration(NULL, TRUE);
  frame_wait(widget);
  return window;
}

/* What WIDGET shows, on a surface of its size. With SPV_TEST_KEEP set, also NAME.png in that folder,
 * for the eye. */
static inline cairo_surface_t *
frame_grab(GtkWidget *widget, const char *name) {
  GdkPaintable *paintable;
  GtkSnapshot *snapshot = gtk_snapshot_new();
  GskRenderNode *node;
  int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create(surface);
  const char *keep = g_getenv("SPV_TEST_KEEP");

  frame_wait(widget);
  paintable = gtk_widget_paintable_new(widget);
  gdk_paintable_snapshot(paintable, snapshot, width, height);
  g_object_unref(paintable);
  node = gtk_snapshot_free_to_node(snapshot);
  assert_non_null(node);
  cairo_set_source_rgb(cr, 0.97, 0.97, 0.96);
  cairo_paint(cr);
  gsk_render_node_draw(node, cr);
  gsk_render_node_unref(node);
  cairo_destroy(cr);
  cairo_surface_flush(surface);
  if (keep != NULL) {
    g_autofree char *path = g_strdup_printf("%s/%s.png", keep, name);

    cairo_surface_write_to_png(surface, path);
  }
  return surface;
}

/* 0xrrggbb */
static inline guint
frame_pixel(cairo_surface_t *surface, int x, int y) {
  const guchar *data = cairo_image_surface_get_data(surface) + y * cairo_image_surface_get_stride(surface);

  return ((const guint32 *) (gconstpointer) data)[x] & 0xffffff;
}

/* How many pixels in the box have exactly this colour. */
static inline guint
frame_count(cairo_surface_t *surface, int x0, int y0, int x1, int y1, guint colour) {
  guint count = 0;

  for (int y = MAX(y0, 0); y < MIN(y1, cairo_image_surface_get_height(surface)); y++)
    for (int x = MAX(x0, 0); x < MIN(x1, cairo_image_surface_get_width(surface)); x++)
      count += frame_pixel(surface, x, y) == colour;
  return count;
}

/* The first controller of TYPE that WIDGET listens with; a gesture for BUTTON when that isn't 0. */
static inline GtkEventController *
frame_controller(GtkWidget *widget, GType type, guint button) {
  g_autoptr(GListModel) controllers = gtk_widget_observe_controllers(widget);

  for (guint i = 0; i < g_list_model_get_n_items(controllers); i++) {
    g_autoptr(GObject) controller = g_list_model_get_item(controllers, i);

    if (!g_type_is_a(G_OBJECT_TYPE(controller), type))
      continue;
    if (button == 0 || gtk_gesture_single_get_button(GTK_GESTURE_SINGLE(controller)) == button)
      return GTK_EVENT_CONTROLLER(controller);
  }
  fail_msg("no such controller");
  return NULL;
}

static inline gboolean
frame_key(GtkWidget *widget, guint key, GdkModifierType state) {
  gboolean handled = FALSE;

  g_signal_emit_by_name(frame_controller(widget, GTK_TYPE_EVENT_CONTROLLER_KEY, 0), "key-pressed", key, 0,
                        state, &handled);
  return handled;
}

/* Closes WINDOW, and fails unless its WIDGET has gone with it. */
static inline void
frame_close(GtkWidget *window, GtkWidget *widget) {
  gpointer gone = widget;

  g_object_add_weak_pointer(G_OBJECT(widget), &gone);
  gtk_window_destroy(GTK_WINDOW(window));
  while (g_main_context_iteration(NULL, FALSE)) {
  }
  assert_null(gone);
}
