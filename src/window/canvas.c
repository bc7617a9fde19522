/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the canvas shows. */
#include "config.h"

#include "window/canvas.h"

#include <glib/gi18n-lib.h>

#include "window/canvas-private.h"
#include "window/true-size.h"

#define ZOOM_STEP 1.25
#define LEAST_SIDE 240
#define RULER_LETTERING 0.72  /* of the words' size */
#define USUAL_RESOLUTION 96.0 /* dots an inch at which lettering has its usual size */
/* The true size is shown where it takes at most this part of the mat. */
#define TRUE_SIZE_PART 0.45

G_DEFINE_FINAL_TYPE(SpvCanvas, spv_canvas, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_SESSION, PROP_HATCH, PROP_SHOW_GUIDE, N_PROPS };
static GParamSpec *props[N_PROPS];

/* --- What the session says --- */

void
spv_canvas_invalidate(SpvCanvas *canvas) {
  g_clear_pointer(&canvas->scene, gsk_render_node_unref);
  gtk_widget_queue_draw(GTK_WIDGET(canvas));
}

static const SpvComposition *
composition_of(SpvCanvas *canvas) {
  if (canvas->session == NULL || spv_session_chosen_panel(canvas->session) == NULL)
    return NULL;
  return spv_session_composition(canvas->session);
}

static char *
size_text(const SpvPanel *panel) {
  char width[G_ASCII_DTOSTR_BUF_SIZE], height[G_ASCII_DTOSTR_BUF_SIZE];
  char *sizes[2] = { width, height };

  g_ascii_formatd(width, sizeof width, "%.2f", panel->outline.width);
  g_ascii_formatd(height, sizeof height, "%.2f", panel->outline.height);
  /* "3.40" is said "3.4". */
  for (int i = 0; i < 2; i++)
    if (g_str_has_suffix(sizes[i], "0"))
      sizes[i][strlen(sizes[i]) - 1] = '\0';
  return g_strdup_printf("%s × %s\u2009mm", width, height);
}

/* What is shown, and which node of a free path the keys move. */
static char *
description_of(SpvCanvas *canvas, const SpvComposition *composition) {
  g_autofree char *size = size_text(composition->panel), *node = spv_canvas_node_words(canvas);

  return node == NULL ? g_strdup_printf("%s, %s", composition->panel->name, size)
                      : g_strdup_printf("%s, %s, %s", composition->panel->name, size, node);
}

static void
describe(SpvCanvas *canvas) {
  const SpvComposition *composition = composition_of(canvas);
  g_autofree char *description = composition == NULL ? g_strdup(_("No panel is chosen."))
                                                     : description_of(canvas, composition);

  gtk_accessible_update_property(GTK_ACCESSIBLE(canvas), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Canvas"),
                                 GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
}

static void
remake_handles(SpvCanvas *canvas) {
  const SpvComposition *composition = composition_of(canvas);
  int layer = composition == NULL ? -1 : spv_session_layer(canvas->session);

  spv_canvas_refresh_path(canvas, composition, layer);
  g_clear_pointer(&canvas->handles, g_array_unref);
  if (composition != NULL && layer >= 0)
    canvas->handles = spv_layer_handles(composition, (guint) layer);
  else if (composition != NULL)
    canvas->handles = spv_panel_handles(composition);
  else
    canvas->handles = g_array_new(FALSE, TRUE, sizeof(SpvHandle));
}

const SpvHandle *
spv_canvas_active_handle(SpvCanvas *canvas) {
  const SpvHandle *active = canvas->has_active ? spv_handles_find(canvas->handles, &canvas->active) : NULL;

  if (active != NULL || canvas->handles->len == 0)
    return active;
  return &g_array_index(canvas->handles, SpvHandle, 0);
}

void
spv_canvas_refresh(SpvCanvas *canvas) {
  const SpvComposition *composition = composition_of(canvas);

  /* While the outline's own handle is held the mat stays still under it. */
  if (composition != NULL && canvas->grip != SPV_GRIP_HANDLE)
    spv_viewport_set_content(&canvas->viewport, spv_outline_bounds(composition->outline));
  remake_handles(canvas);
  describe(canvas);
  spv_canvas_invalidate(canvas);
}

/* Another panel is looked at afresh. */
static void
on_panel_changed(SpvCanvas *canvas) {
  spv_canvas_cancel_grip(canvas);
  canvas->viewport.fitted = TRUE;
  spv_canvas_refresh(canvas);
}

static void
set_session(SpvCanvas *canvas, SpvSession *session) {
  if (canvas->session == session)
    return;
  if (canvas->session != NULL) {
    spv_canvas_cancel_grip(canvas);
    g_signal_handlers_disconnect_by_data(canvas->session, canvas);
  }
  g_set_object(&canvas->session, session);
  if (session != NULL) {
    g_signal_connect_swapped(session, "scheme-changed", G_CALLBACK(spv_canvas_refresh), canvas);
    g_signal_connect_swapped(session, "selection-changed", G_CALLBACK(spv_canvas_refresh), canvas);
    g_signal_connect_swapped(session, "notify::panel", G_CALLBACK(on_panel_changed), canvas);
  }
  on_panel_changed(canvas);
}

/* --- Drawing --- */

static PangoLayout *
lettering(SpvCanvas *canvas, const char *text, double scale, PangoWeight weight) {
  PangoLayout *layout = gtk_widget_create_pango_layout(GTK_WIDGET(canvas), text);
  PangoAttrList *attributes = pango_attr_list_new();

  pango_attr_list_insert(attributes, pango_attr_scale_new(scale));
  pango_attr_list_insert(attributes, pango_attr_weight_new(weight));
  pango_attr_list_insert(attributes, pango_attr_font_features_new("tnum=1"));
  pango_layout_set_attributes(layout, attributes);
  pango_attr_list_unref(attributes);
  return layout;
}

static SpvDrawMode
mode_of(SpvCanvas *canvas) {
  return canvas->hatch ? SPV_DRAW_HATCH : SPV_DRAW_COLOUR;
}

static gboolean
screen_scale(SpvCanvas *canvas, double *scale) {
  GtkNative *native = gtk_widget_get_native(GTK_WIDGET(canvas));
  GdkSurface *surface = native == NULL ? NULL : gtk_native_get_surface(native);
  GdkMonitor *monitor;
  GdkRectangle geometry;

  if (surface == NULL)
    return FALSE;
  monitor = gdk_display_get_monitor_at_surface(gdk_surface_get_display(surface), surface);
  if (monitor == NULL)
    return FALSE;
  gdk_monitor_get_geometry(monitor, &geometry);
  return spv_true_size_scale(gdk_monitor_get_width_mm(monitor), gdk_monitor_get_height_mm(monitor),
                             geometry.width, geometry.height, scale);
}

static void
paint_true_size(SpvCanvas *canvas, cairo_t *cr, const SpvComposition *composition) {
  const SpvViewport *viewport = &canvas->viewport;
  const char *words = _("true size");
  g_autoptr(PangoLayout) layout = NULL;
  double scale = 0;

  if (!screen_scale(canvas, &scale)) {
    words = _("true size unknown on this screen");
    scale = 0;
  } else if (scale * spv_outline_width(composition->outline) > TRUE_SIZE_PART * viewport->width ||
             scale * spv_outline_height(composition->outline) > TRUE_SIZE_PART * viewport->height) {
    words = _("true size would not fit here");
    scale = 0;
  }
  layout = lettering(canvas, words, PANGO_SCALE_SMALL, PANGO_WEIGHT_NORMAL);
  spv_canvas_paint_true_size(cr, composition, mode_of(canvas), scale, layout, viewport->width,
                             viewport->height);
}

static void
paint_words(SpvCanvas *canvas, cairo_t *cr, const char *words, double x, double y) {
  g_autoptr(PangoLayout) layout = lettering(canvas, words, 1, PANGO_WEIGHT_SEMIBOLD);

  spv_canvas_paint_title(cr, layout, x, y);
}

/* How many times its usual size the painter wants all lettering. */
static double
text_scale(SpvCanvas *canvas) {
  double resolution = pango_cairo_context_get_resolution(gtk_widget_get_pango_context(GTK_WIDGET(canvas)));

  return resolution > 0 ? resolution / USUAL_RESOLUTION : 1;
}

/* Of the chosen layer alone, so that it can be read where many lie over each other; with none chosen, of all.
 */
static void
paint_guide(SpvCanvas *canvas, cairo_t *cr) {
  if (canvas->show_guide)
    spv_canvas_paint_guide(cr, &canvas->viewport, spv_session_guide(canvas->session),
                           spv_session_layer(canvas->session), text_scale(canvas));
}

static void
paint_mat(SpvCanvas *canvas, cairo_t *cr) {
  const SpvComposition *composition = composition_of(canvas);
  const SpvViewport *viewport = &canvas->viewport;
  g_autofree char *size = NULL;

  spv_canvas_paint_mat(cr, viewport);
  if (composition == NULL) {
    paint_words(canvas, cr, _("No panel here yet: start a scheme from a harness."), 14, 10);
    return;
  }
  size = size_text(composition->panel);
  spv_canvas_paint_panel(cr, viewport, composition, mode_of(canvas));
  spv_canvas_paint_datum(cr, viewport);
  paint_guide(canvas, cr);
  paint_words(canvas, cr, size, 14, 10);
  paint_true_size(canvas, cr, composition);
  if (canvas->nodes != NULL)
    spv_canvas_paint_nodes(cr, viewport, canvas->nodes, canvas->path_place, canvas->node,
                           spv_canvas_path_is_mirrored(canvas));
  spv_canvas_paint_handles(cr, viewport, canvas->handles, spv_canvas_active_handle(canvas));
}

/* What changes when the scheme, the selection or the zoom does, as one node that is kept. */
static GskRenderNode *
make_scene(SpvCanvas *canvas) {
  const SpvViewport *viewport = &canvas->viewport;
  GtkSnapshot *snapshot = gtk_snapshot_new();
  graphene_rect_t mat = GRAPHENE_RECT_INIT((float) canvas->ruler, (float) canvas->ruler,
                                           (float) viewport->width, (float) viewport->height);
  cairo_t *cr;

  gtk_snapshot_push_clip(snapshot, &mat);
  cr = gtk_snapshot_append_cairo(snapshot, &mat);
  cairo_translate(cr, canvas->ruler, canvas->ruler);
  paint_mat(canvas, cr);
  cairo_destroy(cr);
  gtk_snapshot_pop(snapshot);
  return gtk_snapshot_free_to_node(snapshot);
}

static void
snapshot_ruler(SpvCanvas *canvas, GtkSnapshot *snapshot, gboolean vertical) {
  const SpvViewport *viewport = &canvas->viewport;
  g_autoptr(PangoLayout) layout = lettering(canvas, NULL, RULER_LETTERING, PANGO_WEIGHT_NORMAL);
  double place = vertical ? canvas->pointer.y : canvas->pointer.x;
  graphene_rect_t bounds = vertical ? GRAPHENE_RECT_INIT(0, (float) canvas->ruler, (float) canvas->ruler,
                                                         (float) viewport->height)
                                    : GRAPHENE_RECT_INIT((float) canvas->ruler, 0, (float) viewport->width,
                                                         (float) canvas->ruler);
  GdkRGBA ink;
  cairo_t *cr;

  gtk_style_context_get_color(gtk_widget_get_style_context(GTK_WIDGET(canvas)), &ink);
  gtk_snapshot_push_clip(snapshot, &bounds);
  cr = gtk_snapshot_append_cairo(snapshot, &bounds);
  cairo_translate(cr, bounds.origin.x, bounds.origin.y);
  spv_canvas_paint_ruler(cr, viewport, vertical, canvas->ruler, layout, &ink,
                         canvas->pointer_inside ? place : -1);
  cairo_destroy(cr);
  gtk_snapshot_pop(snapshot);
}

static void
snapshot_slip(SpvCanvas *canvas, GtkSnapshot *snapshot) {
  const SpvViewport *viewport = &canvas->viewport;
  g_autoptr(PangoLayout) layout = lettering(canvas, canvas->caption, PANGO_SCALE_SMALL, PANGO_WEIGHT_NORMAL);
  graphene_rect_t mat = GRAPHENE_RECT_INIT((float) canvas->ruler, (float) canvas->ruler,
                                           (float) viewport->width, (float) viewport->height);
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, &mat);

  cairo_translate(cr, canvas->ruler, canvas->ruler);
  spv_canvas_paint_slip(cr, layout, canvas->pointer, viewport->width, viewport->height);
  cairo_destroy(cr);
}

static void
spv_canvas_snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  SpvCanvas *canvas = SPV_CANVAS(widget);

  if (canvas->viewport.width <= 0 || canvas->viewport.height <= 0)
    return;
  if (canvas->scene == NULL)
    canvas->scene = make_scene(canvas);
  if (canvas->scene != NULL)
    gtk_snapshot_append_node(snapshot, canvas->scene);
  snapshot_ruler(canvas, snapshot, FALSE);
  snapshot_ruler(canvas, snapshot, TRUE);
  if (canvas->caption != NULL)
    snapshot_slip(canvas, snapshot);
  if (gtk_widget_has_visible_focus(widget))
    gtk_snapshot_render_focus(snapshot, gtk_widget_get_style_context(widget), 0, 0,
                              gtk_widget_get_width(widget), gtk_widget_get_height(widget));
}

static void
spv_canvas_measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                   int *minimum_baseline, int *natural_baseline) {
  (void) widget;
  (void) orientation;
  (void) for_size;
  *minimum = LEAST_SIDE;
  *natural = 2 * LEAST_SIDE;
  *minimum_baseline = *natural_baseline = -1;
}

static void
spv_canvas_size_allocate(GtkWidget *widget, int width, int height, int baseline) {
  SpvCanvas *canvas = SPV_CANVAS(widget);
  g_autoptr(PangoLayout) layout = lettering(canvas, NULL, RULER_LETTERING, PANGO_WEIGHT_NORMAL);

  (void) baseline;
  canvas->ruler = spv_canvas_ruler_thickness(layout);
  spv_viewport_set_size(&canvas->viewport, MAX(width - canvas->ruler, 0), MAX(height - canvas->ruler, 0));
  spv_canvas_invalidate(canvas);
}

/* On another screen the true size is another one. */
static void
spv_canvas_realize(GtkWidget *widget) {
  GTK_WIDGET_CLASS(spv_canvas_parent_class)->realize(widget);
  g_signal_connect_object(gtk_native_get_surface(gtk_widget_get_native(widget)), "enter-monitor",
                          G_CALLBACK(spv_canvas_invalidate), widget, G_CONNECT_SWAPPED);
}

static void
spv_canvas_unrealize(GtkWidget *widget) {
  g_signal_handlers_disconnect_by_data(gtk_native_get_surface(gtk_widget_get_native(widget)), widget);
  GTK_WIDGET_CLASS(spv_canvas_parent_class)->unrealize(widget);
}

/* The style may have turned dark, or the words larger. */
static void
spv_canvas_css_changed(GtkWidget *widget, GtkCssStyleChange *change) {
  GTK_WIDGET_CLASS(spv_canvas_parent_class)->css_changed(widget, change);
  spv_canvas_invalidate(SPV_CANVAS(widget));
  gtk_widget_queue_allocate(widget);
}

/* --- The object --- */

static void
spv_canvas_get_property(GObject *object, guint id, GValue *value, GParamSpec *pspec) {
  SpvCanvas *canvas = SPV_CANVAS(object);

  switch (id) {
  case PROP_SESSION:
    g_value_set_object(value, canvas->session);
    break;
  case PROP_HATCH:
    g_value_set_boolean(value, canvas->hatch);
    break;
  case PROP_SHOW_GUIDE:
    g_value_set_boolean(value, canvas->show_guide);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
  }
}

static void
spv_canvas_set_property(GObject *object, guint id, const GValue *value, GParamSpec *pspec) {
  SpvCanvas *canvas = SPV_CANVAS(object);

  switch (id) {
  case PROP_SESSION:
    set_session(canvas, g_value_get_object(value));
    break;
  case PROP_HATCH:
    canvas->hatch = g_value_get_boolean(value);
    spv_canvas_invalidate(canvas);
    break;
  case PROP_SHOW_GUIDE:
    canvas->show_guide = g_value_get_boolean(value);
    spv_canvas_invalidate(canvas);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
  }
}

static void
spv_canvas_dispose(GObject *object) {
  SpvCanvas *canvas = SPV_CANVAS(object);

  g_clear_handle_id(&canvas->settle_source, g_source_remove);
  if (canvas->session != NULL)
    g_signal_handlers_disconnect_by_data(canvas->session, canvas);
  g_clear_object(&canvas->session);
  g_clear_pointer(&canvas->scene, gsk_render_node_unref);
  g_clear_pointer(&canvas->caption, g_free);
  g_clear_pointer(&canvas->nodes, spv_path_nodes_free);
  g_clear_pointer(&canvas->held_nodes, spv_path_nodes_free);
  g_clear_pointer(&canvas->path_layer, g_free);
  G_OBJECT_CLASS(spv_canvas_parent_class)->dispose(object);
}

static void
spv_canvas_finalize(GObject *object) {
  g_array_unref(SPV_CANVAS(object)->handles);
  G_OBJECT_CLASS(spv_canvas_parent_class)->finalize(object);
}

static void
spv_canvas_class_init(SpvCanvasClass *klass) {
  GObjectClass *object_class = G_OBJECT_CLASS(klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  object_class->get_property = spv_canvas_get_property;
  object_class->set_property = spv_canvas_set_property;
  object_class->dispose = spv_canvas_dispose;
  object_class->finalize = spv_canvas_finalize;
  widget_class->snapshot = spv_canvas_snapshot;
  widget_class->measure = spv_canvas_measure;
  widget_class->size_allocate = spv_canvas_size_allocate;
  widget_class->realize = spv_canvas_realize;
  widget_class->unrealize = spv_canvas_unrealize;
  widget_class->css_changed = spv_canvas_css_changed;
  props[PROP_SESSION] = g_param_spec_object("session", NULL, NULL, SPV_TYPE_SESSION,
                                            G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_HATCH] = g_param_spec_boolean("hatch", NULL, NULL, FALSE,
                                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_SHOW_GUIDE] = g_param_spec_boolean("show-guide", NULL, NULL, FALSE,
                                                G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties(object_class, N_PROPS, props);
  gtk_widget_class_set_css_name(widget_class, "canvas");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
spv_canvas_init(SpvCanvas *canvas) {
  canvas->ruler = SPV_RULER_LEAST;
  spv_viewport_init(&canvas->viewport);
  canvas->handles = g_array_new(FALSE, TRUE, sizeof(SpvHandle));
  canvas->node = -1;
  gtk_widget_set_focusable(GTK_WIDGET(canvas), TRUE);
  gtk_widget_set_hexpand(GTK_WIDGET(canvas), TRUE);
  gtk_widget_set_vexpand(GTK_WIDGET(canvas), TRUE);
  gtk_widget_set_overflow(GTK_WIDGET(canvas), GTK_OVERFLOW_HIDDEN);
  spv_canvas_listen(canvas);
  describe(canvas);
}

GtkWidget *
spv_canvas_new(void) {
  return g_object_new(SPV_TYPE_CANVAS, NULL);
}

static void
zoom(SpvCanvas *canvas, double factor) {
  spv_viewport_zoom(&canvas->viewport, factor,
                    spv_point(canvas->viewport.width / 2, canvas->viewport.height / 2));
  spv_canvas_invalidate(canvas);
}

void
spv_canvas_zoom_in(SpvCanvas *canvas) {
  zoom(canvas, ZOOM_STEP);
}

void
spv_canvas_zoom_out(SpvCanvas *canvas) {
  zoom(canvas, 1 / ZOOM_STEP);
}

void
spv_canvas_zoom_fit(SpvCanvas *canvas) {
  spv_viewport_fit(&canvas->viewport);
  spv_canvas_invalidate(canvas);
}
