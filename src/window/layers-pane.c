/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/layers-pane.h"

#include "window/layer-chooser.h"
#include "window/layer-row.h"

struct _SpvLayersPane {
  SpvPane parent_instance;

  GtkMenuButton *add_button;
  SpvLayerChooser *chooser;
  GtkListBox *list;
  GtkWidget *empty;

  GListStore *items;
  char *panel; /* id of the panel whose layers are shown */
  gboolean selecting;
};

G_DEFINE_FINAL_TYPE(SpvLayersPane, spv_layers_pane, SPV_TYPE_PANE)

static GtkWidget *
create_row(gpointer item, gpointer data) {
  return spv_layer_row_new(SPV_LAYER_ITEM(item), spv_pane_session(SPV_PANE(data)));
}

static void
on_row_selected(GtkListBox *list, GtkListBoxRow *row, SpvLayersPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  (void) list;
  if (self->selecting || !session || !row)
    return;
  spv_session_select(session, spv_session_panel(session),
                     (int) spv_layer_item_index(spv_layer_row_item(SPV_LAYER_ROW(row))));
}

static GtkListBoxRow *
chosen_row(SpvLayersPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  int n = (int) g_list_model_get_n_items(G_LIST_MODEL(self->items));
  int layer = session ? spv_session_layer(session) : -1;

  return layer >= 0 && layer < n ? gtk_list_box_get_row_at_index(self->list, n - 1 - layer) : NULL;
}

static void
move_chosen(SpvLayersPane *self, int by) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  int layer = spv_session_layer(session);

  spv_session_move_layer(session, (guint) layer, (guint) (layer + by));
}

static gboolean
on_key_pressed(GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
               SpvLayersPane *self) {
  gboolean control = (state & GDK_CONTROL_MASK) != 0;

  (void) controller;
  (void) keycode;
  if (!spv_pane_session(SPV_PANE(self)))
    return FALSE;
  if (control && (keyval == GDK_KEY_Up || keyval == GDK_KEY_KP_Up)) {
    move_chosen(self, 1);
    return TRUE;
  }
  if (control && (keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down)) {
    move_chosen(self, -1);
    return TRUE;
  }
  if (keyval == GDK_KEY_F2) {
    spv_layers_pane_rename(self);
    return TRUE;
  }
  return FALSE;
}

static void
on_add_field(SpvLayersPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  if (session)
    spv_session_add_layer(session, SPV_PATTERN_FIELD);
}

void
spv_layers_pane_rename(SpvLayersPane *self) {
  GtkListBoxRow *row;

  g_return_if_fail(SPV_IS_LAYERS_PANE(self));
  row = chosen_row(self);
  if (row)
    spv_layer_row_rename(SPV_LAYER_ROW(row));
}

void
spv_layers_pane_choose_kind(SpvLayersPane *self) {
  g_return_if_fail(SPV_IS_LAYERS_PANE(self));
  gtk_menu_button_popup(self->add_button);
}

/* The rows of another panel may stand for layers of the same ids: a name half typed is not theirs. */
static void
cancel_renames(SpvLayersPane *self) {
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index(self->list, i)); i++)
    spv_layer_row_cancel_rename(SPV_LAYER_ROW(row));
}

static gboolean
has_focus_inside(GtkWidget *widget) {
  GtkRoot *root = gtk_widget_get_root(widget);
  GtkWidget *focus = root ? gtk_root_get_focus(root) : NULL;

  return focus && gtk_widget_is_ancestor(focus, widget);
}

static void
spv_layers_pane_refill(SpvPane *pane) {
  SpvLayersPane *self = SPV_LAYERS_PANE(pane);
  SpvSession *session = spv_pane_session(pane);
  const SpvPanel *panel = spv_session_chosen_panel(session);
  gboolean had_focus = has_focus_inside(GTK_WIDGET(self->list));
  GtkListBoxRow *row;

  if (g_strcmp0(self->panel, panel ? panel->id : NULL) != 0) {
    cancel_renames(self);
    g_free(self->panel);
    self->panel = panel ? g_strdup(panel->id) : NULL;
  }
  self->selecting = TRUE;
  spv_layer_items_sync(self->items, spv_session_scheme(session), panel);
  row = chosen_row(self);
  if (row)
    gtk_list_box_select_row(self->list, row);
  else
    gtk_list_box_unselect_all(self->list);
  self->selecting = FALSE;
  gtk_widget_set_visible(GTK_WIDGET(self->list), panel && panel->n_layers > 0);
  gtk_widget_set_visible(self->empty, panel && panel->n_layers == 0);
  gtk_widget_set_sensitive(GTK_WIDGET(self->add_button), panel && panel->n_layers < SPV_PANEL_MAX_LAYERS);
  /* A row that moved is another widget: the keys stay with it. */
  if (had_focus && row && !has_focus_inside(GTK_WIDGET(self->list)))
    gtk_widget_grab_focus(GTK_WIDGET(row));
}

/* Rows hold the session: a new one means new rows. */
static void
on_session_set(SpvLayersPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  spv_layer_chooser_set_session(self->chooser, session);
  g_list_store_remove_all(self->items);
  spv_pane_refill(SPV_PANE(self));
}

static void
spv_layers_pane_dispose(GObject *object) {
  SpvLayersPane *self = SPV_LAYERS_PANE(object);

  if (self->list)
    gtk_list_box_bind_model(self->list, NULL, NULL, NULL, NULL);
  self->list = NULL;
  G_OBJECT_CLASS(spv_layers_pane_parent_class)->dispose(object);
}

static void
spv_layers_pane_finalize(GObject *object) {
  SpvLayersPane *self = SPV_LAYERS_PANE(object);

  g_clear_object(&self->items);
  g_free(self->panel);
  G_OBJECT_CLASS(spv_layers_pane_parent_class)->finalize(object);
}

static void
spv_layers_pane_class_init(SpvLayersPaneClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->dispose = spv_layers_pane_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_layers_pane_finalize;
  SPV_PANE_CLASS(klass)->refill = spv_layers_pane_refill;
  g_type_ensure(SPV_TYPE_LAYER_CHOOSER);
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/layers-pane.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvLayersPane, add_button);
  gtk_widget_class_bind_template_child(widget_class, SpvLayersPane, chooser);
  gtk_widget_class_bind_template_child(widget_class, SpvLayersPane, list);
  gtk_widget_class_bind_template_child(widget_class, SpvLayersPane, empty);
  gtk_widget_class_bind_template_callback(widget_class, on_row_selected);
  gtk_widget_class_bind_template_callback(widget_class, on_key_pressed);
  gtk_widget_class_bind_template_callback(widget_class, on_add_field);
}

static void
spv_layers_pane_init(SpvLayersPane *self) {
  self->items = g_list_store_new(SPV_TYPE_LAYER_ITEM);
  gtk_widget_init_template(GTK_WIDGET(self));
  gtk_list_box_bind_model(self->list, G_LIST_MODEL(self->items), create_row, self, NULL);
  g_signal_connect(self, "notify::session", G_CALLBACK(on_session_set), NULL);
}

GtkWidget *
spv_layers_pane_new(void) {
  return g_object_new(SPV_TYPE_LAYERS_PANE, NULL);
}
