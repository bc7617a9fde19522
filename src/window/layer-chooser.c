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
#define LIST_WIDTH 400  /* px */
#define LIST_HEIGHT 440 /* px: as much as a low window leaves below the button */

/* How dark each slot is: the second is left bare. */
static const double shades[SPV_PATTERN_SLOTS] = { 0.55, 0, 0.25 };

static const char *const group_labels[SPV_N_GROUPS] = {
  [SPV_GROUP_DIVISION] = N_("Field and divisions"),
  [SPV_GROUP_VARIED] = N_("Varied fields"),
  [SPV_GROUP_ORDINARY] = N_("Ordinaries"),
  [SPV_GROUP_BORDER] = N_("Borders"),
  [SPV_GROUP_CHARGE] = N_("Charges"),
  [SPV_GROUP_OWN] = N_("Your own"),
};

/* One group: what of it is found stands in its grid. */
typedef struct {
  GtkWidget *heading, *grid;
  GPtrArray *buttons; /* a reference to each */
} Group;

struct _SpvLayerChooser {
  GtkPopover parent_instance;
  SpvSession *session;
  SpvOutline *plate;
  GtkWidget *search, *scroller, *nothing;
  Group groups[SPV_N_GROUPS];
};

G_DEFINE_FINAL_TYPE(SpvLayerChooser, spv_layer_chooser, GTK_TYPE_POPOVER)

/* A kind laid on the plate: made when it is first drawn, and kept. */
typedef struct {
  SpvPatternKind kind;
  SpvOutline *plate;
  SpvDraft *draft;
} Sample;

static void
sample_free(gpointer data) {
  Sample *sample = data;

  spv_outline_unref(sample->plate);
  spv_draft_free(sample->draft);
  g_free(sample);
}

/* In the text's own colour on the bare plate: so it reads in the light and in the dark. */
static void
draw_sample(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data) {
  Sample *sample = data;
  GdkRGBA ink;

  (void) height;
  if (!sample->draft) {
    SpvPattern pattern = spv_pattern_preset(sample->kind);
    sample->draft = spv_pattern_lay(&pattern, sample->plate);
  }
  gtk_style_context_get_color(gtk_widget_get_style_context(GTK_WIDGET(area)), &ink);
  cairo_translate(cr, width / 2.0, PLATE_MARGIN);
  cairo_scale(cr, PLATE_SCALE, PLATE_SCALE);
  spv_draw_add_path(cr, spv_outline_path(sample->plate));
  cairo_save(cr);
  cairo_clip(cr);
  for (guint slot = 0; slot < SPV_PATTERN_SLOTS; slot++) {
    if (!sample->draft->area[slot] || shades[slot] <= 0)
      continue;
    spv_draw_add_path(cr, sample->draft->area[slot]);
    cairo_set_source_rgba(cr, ink.red, ink.green, ink.blue, ink.alpha * shades[slot]);
    cairo_fill(cr);
  }
  cairo_restore(cr);
  spv_draw_add_path(cr, spv_outline_path(sample->plate));
  gdk_cairo_set_source_rgba(cr, &ink);
  cairo_set_line_width(cr, 1 / PLATE_SCALE);
  cairo_stroke(cr);
}

static SpvPatternKind
kind_of(gpointer button) {
  return (SpvPatternKind) GPOINTER_TO_UINT(g_object_get_data(button, "kind"));
}

static void
on_clicked(GtkButton *button, SpvLayerChooser *self) {
  gtk_popover_popdown(GTK_POPOVER(self));
  if (self->session)
    spv_session_add_layer(self->session, kind_of(button));
}

static GtkWidget *
sample_new(SpvLayerChooser *self, SpvPatternKind kind) {
  GtkWidget *area = gtk_drawing_area_new();
  Sample *sample = g_new0(Sample, 1);

  sample->kind = kind;
  sample->plate = spv_outline_ref(self->plate);
  gtk_drawing_area_set_content_width(GTK_DRAWING_AREA(area),
                                     (int) (PLATE_WIDTH * PLATE_SCALE + 2 * PLATE_MARGIN));
  gtk_drawing_area_set_content_height(GTK_DRAWING_AREA(area),
                                      (int) (PLATE_HEIGHT * PLATE_SCALE + 2 * PLATE_MARGIN));
  gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(area), draw_sample, sample, sample_free);
  gtk_widget_set_halign(area, GTK_ALIGN_CENTER);
  return area;
}

static GtkWidget *
button_new(SpvLayerChooser *self, SpvPatternKind kind) {
  const char *name = _(spv_pattern_info(kind)->label);
  GtkWidget *button = gtk_button_new();
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 3), *label = gtk_label_new(name);

  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_justify(GTK_LABEL(label), GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars(GTK_LABEL(label), 11);
  gtk_widget_add_css_class(label, "caption");
  gtk_widget_set_valign(label, GTK_ALIGN_START);
  gtk_box_append(GTK_BOX(box), sample_new(self, kind));
  gtk_box_append(GTK_BOX(box), label);
  gtk_button_set_child(GTK_BUTTON(button), box);
  gtk_button_set_has_frame(GTK_BUTTON(button), FALSE);
  gtk_widget_set_hexpand(button, TRUE);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data(G_OBJECT(button), "kind", GUINT_TO_POINTER(kind));
  g_signal_connect(button, "clicked", G_CALLBACK(on_clicked), self);
  return button;
}

static void
add_group(SpvLayerChooser *self, GtkBox *box, SpvPatternGroup index) {
  Group *group = &self->groups[index];

  group->heading = gtk_label_new(_(group_labels[index]));
  group->grid = gtk_grid_new();
  group->buttons = g_ptr_array_new_with_free_func(g_object_unref);
  gtk_label_set_xalign(GTK_LABEL(group->heading), 0);
  gtk_widget_add_css_class(group->heading, "heading");
  gtk_grid_set_column_homogeneous(GTK_GRID(group->grid), TRUE);
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++)
    if (spv_pattern_group((SpvPatternKind) kind) == index)
      g_ptr_array_add(group->buttons, g_object_ref_sink(button_new(self, (SpvPatternKind) kind)));
  gtk_box_append(box, group->heading);
  gtk_box_append(box, group->grid);
}

/* Finding */

/* Whether the words typed are the starts of words of KIND's name: as it is called here, or in a blazon, or in
 * a file. No words find every kind. */
static gboolean
is_found(SpvPatternKind kind, const char *typed) {
  const SpvPatternInfo *info = spv_pattern_info(kind);

  return *typed == '\0' || g_str_match_string(typed, _(info->label), TRUE) ||
         g_str_match_string(typed, info->label, TRUE) || g_str_match_string(typed, info->key, TRUE);
}

static void
empty_group(Group *group) {
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child(group->grid)))
    gtk_grid_remove(GTK_GRID(group->grid), child);
}

/* Puts those of GROUP that are found into its grid; returns how many they are. */
static int
fill_group(Group *group, const char *typed) {
  int n = 0;

  empty_group(group);
  for (guint i = 0; i < group->buttons->len; i++) {
    GtkWidget *button = g_ptr_array_index(group->buttons, i);
    if (!is_found(kind_of(button), typed))
      continue;
    gtk_grid_attach(GTK_GRID(group->grid), button, n % COLUMNS, n / COLUMNS, 1, 1);
    n++;
  }
  gtk_widget_set_visible(group->heading, n > 0);
  gtk_widget_set_visible(group->grid, n > 0);
  /* Every group keeps the same columns. */
  for (int column = n; column < COLUMNS; column++) {
    GtkWidget *filler = gtk_label_new(NULL);
    gtk_widget_set_hexpand(filler, TRUE);
    gtk_grid_attach(GTK_GRID(group->grid), filler, column, 0, 1, 1);
  }
  return n;
}

static void
fill(SpvLayerChooser *self) {
  g_autofree char *typed = g_strstrip(g_strdup(gtk_editable_get_text(GTK_EDITABLE(self->search))));
  GtkAdjustment *scroll = gtk_scrolled_window_get_vadjustment(GTK_SCROLLED_WINDOW(self->scroller));
  int n = 0;

  for (guint i = 0; i < SPV_N_GROUPS; i++)
    n += fill_group(&self->groups[i], typed);
  gtk_widget_set_visible(self->nothing, n == 0);
  gtk_adjustment_set_value(scroll, 0);
}

/* The first one that is found. */
static GtkWidget *
first_button(SpvLayerChooser *self) {
  for (guint i = 0; i < SPV_N_GROUPS; i++)
    for (guint k = 0; k < self->groups[i].buttons->len; k++) {
      GtkWidget *button = g_ptr_array_index(self->groups[i].buttons, k);
      if (gtk_widget_get_parent(button))
        return button;
    }
  return NULL;
}

/* Enter takes the first one, once something was typed. */
static void
on_search_activate(SpvLayerChooser *self) {
  GtkWidget *button = first_button(self);

  if (button && *gtk_editable_get_text(GTK_EDITABLE(self->search)))
    g_signal_emit_by_name(button, "clicked");
}

static gboolean
on_search_key(GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
              SpvLayerChooser *self) {
  GtkWidget *button = first_button(self);

  (void) controller;
  (void) keycode;
  (void) state;
  if (!button || (keyval != GDK_KEY_Down && keyval != GDK_KEY_KP_Down))
    return FALSE;
  gtk_widget_grab_focus(button);
  return TRUE;
}

/* Each time anew: nobody wants what was looked for the last time. */
static void
on_map(SpvLayerChooser *self) {
  gtk_editable_set_text(GTK_EDITABLE(self->search), "");
  fill(self);
  gtk_widget_grab_focus(self->search);
}

/* Hundreds of widgets that nobody sees are not to be gone through by whoever looks for one in the window, as
 * assistive tools do. */
static void
on_unmap(SpvLayerChooser *self) {
  GtkRoot *root = gtk_widget_get_root(GTK_WIDGET(self));
  GtkWidget *focus = root ? gtk_root_get_focus(root) : NULL;

  /* What has the focus must not go with it. */
  if (focus && gtk_widget_is_ancestor(focus, GTK_WIDGET(self)))
    gtk_root_set_focus(root, NULL);
  for (guint i = 0; i < SPV_N_GROUPS; i++)
    empty_group(&self->groups[i]);
}

static void
add_search(SpvLayerChooser *self, GtkBox *box) {
  GtkEventController *keys = gtk_event_controller_key_new();

  self->search = gtk_search_entry_new();
  g_object_set(self->search, "placeholder-text", _("Search"), NULL);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->search), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Search for a kind of layer"), -1);
  gtk_search_entry_set_key_capture_widget(GTK_SEARCH_ENTRY(self->search), GTK_WIDGET(self));
  gtk_event_controller_set_propagation_phase(keys, GTK_PHASE_CAPTURE);
  g_signal_connect(keys, "key-pressed", G_CALLBACK(on_search_key), self);
  gtk_widget_add_controller(self->search, keys);
  g_signal_connect_swapped(self->search, "changed", G_CALLBACK(fill), self);
  g_signal_connect_swapped(self->search, "activate", G_CALLBACK(on_search_activate), self);
  g_signal_connect_swapped(self->search, "stop-search", G_CALLBACK(gtk_popover_popdown), self);
  gtk_box_append(box, self->search);
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
  SpvLayerChooser *self = SPV_LAYER_CHOOSER(object);

  for (guint i = 0; i < SPV_N_GROUPS; i++)
    g_clear_pointer(&self->groups[i].buttons, g_ptr_array_unref);
  g_clear_pointer(&self->plate, spv_outline_unref);
  G_OBJECT_CLASS(spv_layer_chooser_parent_class)->finalize(object);
}

static void
spv_layer_chooser_class_init(SpvLayerChooserClass *klass) {
  G_OBJECT_CLASS(klass)->dispose = spv_layer_chooser_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_layer_chooser_finalize;
}

static void
spv_layer_chooser_init(SpvLayerChooser *self) {
  GtkWidget *all = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6), *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
  SpvOutlineSpec spec;

  spv_outline_spec_preset(SPV_OUTLINE_PLATE, PLATE_WIDTH, PLATE_HEIGHT, &spec);
  self->plate = spv_outline_new(&spec);
  self->scroller = gtk_scrolled_window_new();
  gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(self->scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  /* As large with one kind found as with all: nothing jumps about while the painter types. */
  gtk_scrolled_window_set_min_content_height(GTK_SCROLLED_WINDOW(self->scroller), LIST_HEIGHT);
  gtk_widget_set_size_request(all, LIST_WIDTH, -1);
  self->nothing = gtk_label_new(_("Nothing is called so. Try another word."));
  gtk_label_set_xalign(GTK_LABEL(self->nothing), 0);
  gtk_widget_add_css_class(self->nothing, "dim-label");
  add_search(self, GTK_BOX(all));
  gtk_box_append(GTK_BOX(box), self->nothing);
  for (guint group = 0; group < SPV_N_GROUPS; group++)
    add_group(self, GTK_BOX(box), (SpvPatternGroup) group);
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(self->scroller), box);
  gtk_box_append(GTK_BOX(all), self->scroller);
  gtk_popover_set_child(GTK_POPOVER(self), all);
  g_signal_connect(self, "map", G_CALLBACK(on_map), NULL);
  g_signal_connect(self, "unmap", G_CALLBACK(on_unmap), NULL);
}
