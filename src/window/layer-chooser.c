/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/layer-chooser.h"

#include <glib/gi18n-lib.h>

#include "draw/draw.h"

/* The little plate that each kind is drawn on. */
#define PLATE_WIDTH 3.0 /* mm */
#define PLATE_HEIGHT 3.4
#define PLATE_SCALE 11.0 /* px a mm */
#define PLATE_MARGIN 2.0 /* px */
#define COLUMNS 4

static const char *const group_labels[SPV_N_GROUPS] = {
  [SPV_GROUP_DIVISION] = N_("Field and divisions"), [SPV_GROUP_VARIED] = N_("Varied fields"),
  [SPV_GROUP_ORDINARY] = N_("Ordinaries"),          [SPV_GROUP_BORDER] = N_("Borders"),
  [SPV_GROUP_CHARGE] = N_("Charges"),               [SPV_GROUP_OWN] = N_("Your own"),
};

struct _SpvLayerChooser {
  GtkPopover parent_instance;
  SpvSession *session;
  SpvOutline *plate;
};

G_DEFINE_FINAL_TYPE(SpvLayerChooser, spv_layer_chooser, GTK_TYPE_POPOVER)

/* The first slot in the text's own colour, the second left bare: so it reads in the light and in the dark. */
static void
draw_kind(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data) {
  SpvPattern pattern = spv_pattern_preset(GPOINTER_TO_UINT(g_object_get_data(G_OBJECT(area), "kind")));
  SpvOutline *plate = data;
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, plate);
  GdkRGBA ink;

  (void) height;
  gtk_style_context_get_color(gtk_widget_get_style_context(GTK_WIDGET(area)), &ink);
  cairo_translate(cr, width / 2.0, PLATE_MARGIN);
  cairo_scale(cr, PLATE_SCALE, PLATE_SCALE);
  spv_draw_add_path(cr, spv_outline_path(plate));
  cairo_save(cr);
  cairo_clip_preserve(cr);
  cairo_new_path(cr);
  spv_draw_add_path(cr, draft->area[0]);
  cairo_set_source_rgba(cr, ink.red, ink.green, ink.blue, ink.alpha * 0.55);
  cairo_fill(cr);
  cairo_restore(cr);
  spv_draw_add_path(cr, spv_outline_path(plate));
  gdk_cairo_set_source_rgba(cr, &ink);
  cairo_set_line_width(cr, 1 / PLATE_SCALE);
  cairo_stroke(cr);
}

static void
on_clicked(GtkButton *button, SpvLayerChooser *self) {
  SpvPatternKind kind = GPOINTER_TO_UINT(g_object_get_data(G_OBJECT(button), "kind"));

  gtk_popover_popdown(GTK_POPOVER(self));
  if (self->session)
    spv_session_add_layer(self->session, kind);
}

static GtkWidget *
button_new(SpvLayerChooser *self, SpvPatternKind kind) {
  const char *name = _(spv_pattern_info(kind)->label);
  GtkWidget *button = gtk_button_new();
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *area = gtk_drawing_area_new(), *label = gtk_label_new(name);

  g_object_set_data(G_OBJECT(area), "kind", GUINT_TO_POINTER(kind));
  gtk_drawing_area_set_content_width(GTK_DRAWING_AREA(area),
                                     (int) (PLATE_WIDTH * PLATE_SCALE + 2 * PLATE_MARGIN));
  gtk_drawing_area_set_content_height(GTK_DRAWING_AREA(area),
                                      (int) (PLATE_HEIGHT * PLATE_SCALE + 2 * PLATE_MARGIN));
  gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(area), draw_kind, spv_outline_ref(self->plate),
                                 (GDestroyNotify) spv_outline_unref);
  gtk_widget_set_halign(area, GTK_ALIGN_CENTER);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_justify(GTK_LABEL(label), GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars(GTK_LABEL(label), 11);
  gtk_widget_add_css_class(label, "caption");
  gtk_widget_set_valign(label, GTK_ALIGN_START);
  gtk_box_append(GTK_BOX(box), area);
  gtk_box_append(GTK_BOX(box), label);
  gtk_button_set_child(GTK_BUTTON(button), box);
  gtk_button_set_has_frame(GTK_BUTTON(button), FALSE);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data(G_OBJECT(button), "kind", GUINT_TO_POINTER(kind));
  g_signal_connect(button, "clicked", G_CALLBACK(on_clicked), self);
  return button;
}

static void
add_group(SpvLayerChooser *self, GtkBox *box, SpvPatternGroup group) {
  GtkWidget *heading = gtk_label_new(_(group_labels[group])), *grid = gtk_grid_new();
  int n = 0;

  gtk_label_set_xalign(GTK_LABEL(heading), 0);
  gtk_widget_add_css_class(heading, "heading");
  gtk_grid_set_column_homogeneous(GTK_GRID(grid), TRUE);
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
    if (spv_pattern_group((SpvPatternKind) kind) != group)
      continue;
    gtk_grid_attach(GTK_GRID(grid), button_new(self, (SpvPatternKind) kind), n % COLUMNS, n / COLUMNS, 1, 1);
    n++;
  }
  /* Every group keeps the same columns. */
  for (; n < COLUMNS; n++)
    gtk_grid_attach(GTK_GRID(grid), gtk_label_new(NULL), n, 0, 1, 1);
  gtk_box_append(box, heading);
  gtk_box_append(box, grid);
}

void
spv_layer_chooser_set_session(SpvLayerChooser *self, SpvSession *session) {
  g_return_if_fail(SPV_IS_LAYER_CHOOSER(self));
  g_set_object(&self->session, session);
}

static void
spv_layer_chooser_dispose(GObject *object) {
  g_clear_object(&SPV_LAYER_CHOOSER(object)->session);
  G_OBJECT_CLASS(spv_layer_chooser_parent_class)->dispose(object);
}

static void
spv_layer_chooser_finalize(GObject *object) {
  g_clear_pointer(&SPV_LAYER_CHOOSER(object)->plate, spv_outline_unref);
  G_OBJECT_CLASS(spv_layer_chooser_parent_class)->finalize(object);
}

static void
spv_layer_chooser_class_init(SpvLayerChooserClass *klass) {
  G_OBJECT_CLASS(klass)->dispose = spv_layer_chooser_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_layer_chooser_finalize;
}

static void
spv_layer_chooser_init(SpvLayerChooser *self) {
  GtkWidget *scroller = gtk_scrolled_window_new(), *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
  SpvOutlineSpec spec;

  spv_outline_spec_preset(SPV_OUTLINE_PLATE, PLATE_WIDTH, PLATE_HEIGHT, &spec);
  self->plate = spv_outline_new(&spec);
  gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height(GTK_SCROLLED_WINDOW(scroller), TRUE);
  gtk_scrolled_window_set_max_content_height(GTK_SCROLLED_WINDOW(scroller), 660);
  for (guint group = 0; group < SPV_N_GROUPS; group++)
    add_group(self, GTK_BOX(box), (SpvPatternGroup) group);
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(scroller), box);
  gtk_popover_set_child(GTK_POPOVER(self), scroller);
}
