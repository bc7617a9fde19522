/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/column.h"

struct _SpvColumn {
  GtkWidget parent_instance;
  GtkWidget *child;
  guint chars;
};

G_DEFINE_FINAL_TYPE(SpvColumn, spv_column, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_CHILD, PROP_CHARS };

static GtkSizeRequestMode
spv_column_get_request_mode(GtkWidget *widget) {
  (void) widget;
  return GTK_SIZE_REQUEST_CONSTANT_SIZE;
}

/* How wide CHARS letters are on the average, px. */
static int
letters_width(SpvColumn *column) {
  PangoContext *context = gtk_widget_get_pango_context(GTK_WIDGET(column));
  PangoFontMetrics *metrics = pango_context_get_metrics(context, NULL, NULL);
  int width = pango_font_metrics_get_approximate_char_width(metrics) * (int) column->chars;

  pango_font_metrics_unref(metrics);
  return PANGO_PIXELS_CEIL(width);
}

static void
spv_column_measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                   int *minimum_baseline, int *natural_baseline) {
  SpvColumn *column = SPV_COLUMN(widget);
  *minimum_baseline = *natural_baseline = -1;
  *minimum = *natural = 0;
  if (!column->child)
    return;
  gtk_widget_measure(column->child, orientation, for_size, minimum, natural, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *natural = MAX(*minimum, letters_width(column));
}

static void
spv_column_size_allocate(GtkWidget *widget, int width, int height, int baseline) {
  SpvColumn *column = SPV_COLUMN(widget);
  if (column->child)
    gtk_widget_allocate(column->child, width, height, baseline, NULL);
}

static void
set_child(SpvColumn *column, GtkWidget *child) {
  g_clear_pointer(&column->child, gtk_widget_unparent);
  column->child = child;
  if (child)
    gtk_widget_set_parent(child, GTK_WIDGET(column));
}

static void
spv_column_set_property(GObject *object, guint id, const GValue *value, GParamSpec *pspec) {
  SpvColumn *column = SPV_COLUMN(object);
  if (id == PROP_CHILD)
    set_child(column, g_value_get_object(value));
  else if (id == PROP_CHARS)
    column->chars = g_value_get_uint(value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void
spv_column_get_property(GObject *object, guint id, GValue *value, GParamSpec *pspec) {
  if (id == PROP_CHILD)
    g_value_set_object(value, SPV_COLUMN(object)->child);
  else if (id == PROP_CHARS)
    g_value_set_uint(value, SPV_COLUMN(object)->chars);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void
spv_column_dispose(GObject *object) {
  g_clear_pointer(&SPV_COLUMN(object)->child, gtk_widget_unparent);
  G_OBJECT_CLASS(spv_column_parent_class)->dispose(object);
}

static void
spv_column_class_init(SpvColumnClass *klass) {
  GObjectClass *object_class = G_OBJECT_CLASS(klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);
  object_class->dispose = spv_column_dispose;
  object_class->set_property = spv_column_set_property;
  object_class->get_property = spv_column_get_property;
  widget_class->get_request_mode = spv_column_get_request_mode;
  widget_class->measure = spv_column_measure;
  widget_class->size_allocate = spv_column_size_allocate;
  g_object_class_install_property(
      object_class, PROP_CHILD,
      g_param_spec_object("child", NULL, NULL, GTK_TYPE_WIDGET, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS));
  g_object_class_install_property(
      object_class, PROP_CHARS,
      g_param_spec_uint("chars", NULL, NULL, 0, 1000, 0, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS));
}

static void
spv_column_init(SpvColumn *column) {
  (void) column;
}
