/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/tincture-swatch.h"

#include "draw/draw.h"

#define CORNER 4.0
/* How many spots of a fur stand beside each other. */
#define SPOTS_ACROSS 2.0
/* CSS pixels in a millimetre of paper. */
#define PX_PER_MM (96 / 25.4)

struct _SpvTinctureSwatch {
  GtkWidget parent_instance;
  int size;
  SpvTinctureLook looks[SPV_SWATCH_MAX];
  guint n_looks;
  gboolean hatched;
  SpvHatch hatch;
};

G_DEFINE_FINAL_TYPE(SpvTinctureSwatch, spv_tincture_swatch, GTK_TYPE_WIDGET)

enum { PROP_0, PROP_SIZE };

static GdkRGBA
rgba(SpvRgb colour) {
  return (GdkRGBA){ colour.red / 255.0f, colour.green / 255.0f, colour.blue / 255.0f, 1 };
}

/* The spots of a fur on its ground, in a part of the swatch that is WIDTH wide. */
static void
snapshot_fur(const SpvTinctureLook *look, GtkSnapshot *snapshot, float left, float width, float size) {
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, &GRAPHENE_RECT_INIT(left, 0, width, size));
  GdkRGBA spots = rgba(look->spots);
  SpvOutlineSpec spec = { .family = SPV_OUTLINE_RECTANGLE, .width = size, .height = size };

  g_autoptr(SpvOutline) outline = spv_outline_new(&spec);
  g_autoptr(SpvPath) path = spv_fur_spots(look->fur, size / SPOTS_ACROSS, outline);
  cairo_translate(cr, left + width / 2, 0);
  spv_draw_add_path(cr, path);
  gdk_cairo_set_source_rgba(cr, &spots);
  cairo_fill(cr);
  cairo_destroy(cr);
}

static void
snapshot_looks(SpvTinctureSwatch *self, GtkSnapshot *snapshot, float size) {
  float part = size / self->n_looks;

  for (guint i = 0; i < self->n_looks; i++) {
    GdkRGBA colour = rgba(self->looks[i].colour);
    gtk_snapshot_append_color(snapshot, &colour, &GRAPHENE_RECT_INIT(i * part, 0, part, size));
    if (self->looks[i].fur != SPV_FUR_NONE)
      snapshot_fur(&self->looks[i], snapshot, i * part, part, size);
  }
}

static void
snapshot_hatch(SpvTinctureSwatch *self, GtkSnapshot *snapshot, float size) {
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, &GRAPHENE_RECT_INIT(0, 0, size, size));

  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_paint(cr);
  cairo_scale(cr, PX_PER_MM, PX_PER_MM);
  cairo_rectangle(cr, 0, 0, size / PX_PER_MM, size / PX_PER_MM);
  spv_draw_hatch(cr, self->hatch, 1);
  cairo_destroy(cr);
}

/* An empty frame, struck through from the upper right. */
static void
snapshot_none(GtkSnapshot *snapshot, float size, const GdkRGBA *line) {
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, &GRAPHENE_RECT_INIT(0, 0, size, size));

  gdk_cairo_set_source_rgba(cr, line);
  cairo_set_line_width(cr, 1);
  cairo_move_to(cr, 0, size);
  cairo_line_to(cr, size, 0);
  cairo_stroke(cr);
  cairo_destroy(cr);
}

static void
spv_tincture_swatch_snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  SpvTinctureSwatch *self = SPV_TINCTURE_SWATCH(widget);
  float size = self->size, left = (gtk_widget_get_width(widget) - size) / 2,
        top = (gtk_widget_get_height(widget) - size) / 2;
  GskRoundedRect frame;
  GdkRGBA line;

  gtk_style_context_get_color(gtk_widget_get_style_context(widget), &line);
  line.alpha *= 0.35f;
  gtk_snapshot_save(snapshot);
  gtk_snapshot_translate(snapshot, &GRAPHENE_POINT_INIT(floorf(left), floorf(top)));
  gsk_rounded_rect_init_from_rect(&frame, &GRAPHENE_RECT_INIT(0, 0, size, size), CORNER);
  gtk_snapshot_push_rounded_clip(snapshot, &frame);
  if (self->hatched)
    snapshot_hatch(self, snapshot, size);
  else if (self->n_looks > 0)
    snapshot_looks(self, snapshot, size);
  else
    snapshot_none(snapshot, size, &line);
  gtk_snapshot_pop(snapshot);
  gtk_snapshot_append_border(snapshot, &frame, (float[4]){ 1, 1, 1, 1 },
                             (GdkRGBA[4]){ line, line, line, line });
  gtk_snapshot_restore(snapshot);
}

static void
spv_tincture_swatch_measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                            int *natural, int *minimum_baseline, int *natural_baseline) {
  (void) orientation;
  (void) for_size;
  *minimum = *natural = SPV_TINCTURE_SWATCH(widget)->size;
  *minimum_baseline = *natural_baseline = -1;
}

void
spv_tincture_swatch_set_looks(SpvTinctureSwatch *self, const SpvTinctureLook *looks, guint n) {
  g_return_if_fail(SPV_IS_TINCTURE_SWATCH(self) && n <= SPV_SWATCH_MAX);
  for (guint i = 0; i < n; i++)
    self->looks[i] = looks[i];
  self->n_looks = n;
  self->hatched = FALSE;
  gtk_widget_queue_draw(GTK_WIDGET(self));
}

void
spv_tincture_swatch_set_hatch(SpvTinctureSwatch *self, SpvHatch hatch) {
  g_return_if_fail(SPV_IS_TINCTURE_SWATCH(self));
  self->hatched = TRUE;
  self->hatch = hatch;
  gtk_widget_queue_draw(GTK_WIDGET(self));
}

static void
spv_tincture_swatch_get_property(GObject *object, guint id, GValue *value, GParamSpec *pspec) {
  if (id == PROP_SIZE)
    g_value_set_int(value, SPV_TINCTURE_SWATCH(object)->size);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void
spv_tincture_swatch_set_property(GObject *object, guint id, const GValue *value, GParamSpec *pspec) {
  if (id == PROP_SIZE)
    SPV_TINCTURE_SWATCH(object)->size = g_value_get_int(value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void
spv_tincture_swatch_class_init(SpvTinctureSwatchClass *klass) {
  GObjectClass *object_class = G_OBJECT_CLASS(klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  object_class->get_property = spv_tincture_swatch_get_property;
  object_class->set_property = spv_tincture_swatch_set_property;
  widget_class->snapshot = spv_tincture_swatch_snapshot;
  widget_class->measure = spv_tincture_swatch_measure;
  g_object_class_install_property(
      object_class, PROP_SIZE,
      g_param_spec_int("size", NULL, NULL, 8, 256, 24,
                       G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS));
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
spv_tincture_swatch_init(SpvTinctureSwatch *self) {
  gtk_widget_set_valign(GTK_WIDGET(self), GTK_ALIGN_CENTER);
}

GtkWidget *
spv_tincture_swatch_new(int size) {
  return g_object_new(SPV_TYPE_TINCTURE_SWATCH, "size", size, NULL);
}
