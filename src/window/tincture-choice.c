/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/tincture-choice.h"

#include "window/tincture-item.h"
#include "window/tincture-swatch.h"
#include "window/tip.h"

#define SWATCH_SIZE 16

struct _SpvTinctureChoice {
  GtkWidget parent_instance;
  GtkDropDown *drop_down;
  GListStore *items;
  GListModel *shown; /* those of them that can be chosen */
  gboolean optional;
  gboolean showing; /* we are choosing ourselves */
};

G_DEFINE_FINAL_TYPE(SpvTinctureChoice, spv_tincture_choice, GTK_TYPE_WIDGET)

static guint changed_signal;

/* Shows ITEM in the row ROW: a swatch, then a label. */
static void
show_item(GtkWidget *row, SpvTinctureItem *item) {
  GtkWidget *swatch = gtk_widget_get_first_child(row);
  GtkWidget *label = gtk_widget_get_next_sibling(swatch);
  SpvTinctureLook look = spv_tincture_item_look(item);

  spv_tincture_swatch_set_looks(SPV_TINCTURE_SWATCH(swatch), &look, spv_tincture_item_id(item) ? 1 : 0);
  gtk_label_set_text(GTK_LABEL(label), spv_tincture_item_name(item));
}

static void
on_setup(GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer in_button) {
  GtkWidget *row = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new(NULL);

  (void) factory;
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  if (in_button) {
    /* The button must not grow with a long name; the list shows the name whole. */
    gtk_label_set_ellipsize(GTK_LABEL(label), PANGO_ELLIPSIZE_END);
    gtk_label_set_width_chars(GTK_LABEL(label), 4);
  }
  gtk_box_append(GTK_BOX(row), spv_tincture_swatch_new(SWATCH_SIZE));
  gtk_box_append(GTK_BOX(row), label);
  gtk_list_item_set_child(list_item, row);
}

static void
on_item_changed(SpvTinctureItem *item, GtkWidget *row) {
  show_item(row, item);
}

static void
on_bind(GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer data) {
  SpvTinctureItem *item = gtk_list_item_get_item(list_item);
  GtkWidget *row = gtk_list_item_get_child(list_item);

  (void) factory;
  (void) data;
  show_item(row, item);
  g_signal_connect_object(item, "changed", G_CALLBACK(on_item_changed), row, 0);
}

static void
on_unbind(GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer data) {
  (void) factory;
  (void) data;
  g_signal_handlers_disconnect_by_func(gtk_list_item_get_item(list_item), on_item_changed,
                                       gtk_list_item_get_child(list_item));
}

static GtkListItemFactory *
row_factory(gboolean in_button) {
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new();

  g_signal_connect(factory, "setup", G_CALLBACK(on_setup), GINT_TO_POINTER(in_button));
  g_signal_connect(factory, "bind", G_CALLBACK(on_bind), NULL);
  g_signal_connect(factory, "unbind", G_CALLBACK(on_unbind), NULL);
  return factory;
}

static void
on_selected(SpvTinctureChoice *self) {
  SpvTinctureItem *item = gtk_drop_down_get_selected_item(self->drop_down);

  if (self->showing || !item)
    return;
  spv_tip_set(GTK_WIDGET(self->drop_down), spv_tincture_item_name(item));
  g_signal_emit(self, changed_signal, 0);
}

/* Where the one called ID (NULL: none) stands among those that are shown. */
static guint
position_of(SpvTinctureChoice *self, const char *id) {
  for (guint i = 0; i < g_list_model_get_n_items(self->shown); i++) {
    g_autoptr(SpvTinctureItem) item = g_list_model_get_item(self->shown, i);
    if (g_strcmp0(spv_tincture_item_id(item), id) == 0)
      return i;
  }
  return GTK_INVALID_LIST_POSITION;
}

void
spv_tincture_choice_show(SpvTinctureChoice *self, const SpvScheme *scheme, const char *id) {
  guint selected;
  SpvTinctureItem *item;

  g_return_if_fail(SPV_IS_TINCTURE_CHOICE(self));
  self->showing = TRUE;
  spv_tincture_items_sync(self->items, self->optional ? 1 : 0, scheme);
  selected = position_of(self, id);
  if (gtk_drop_down_get_selected(self->drop_down) != selected)
    gtk_drop_down_set_selected(self->drop_down, selected);
  item = gtk_drop_down_get_selected_item(self->drop_down);
  spv_tip_set(GTK_WIDGET(self->drop_down), item ? spv_tincture_item_name(item) : NULL);
  self->showing = FALSE;
}

const char *
spv_tincture_choice_id(SpvTinctureChoice *self) {
  SpvTinctureItem *item = gtk_drop_down_get_selected_item(self->drop_down);

  return item ? spv_tincture_item_id(item) : NULL;
}

void
spv_tincture_choice_set_name(SpvTinctureChoice *self, const char *name) {
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->drop_down), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static gboolean
spv_tincture_choice_grab_focus(GtkWidget *widget) {
  return gtk_widget_grab_focus(GTK_WIDGET(SPV_TINCTURE_CHOICE(widget)->drop_down));
}

static void
spv_tincture_choice_dispose(GObject *object) {
  SpvTinctureChoice *self = SPV_TINCTURE_CHOICE(object);

  if (self->drop_down)
    gtk_widget_unparent(GTK_WIDGET(self->drop_down));
  self->drop_down = NULL;
  g_clear_object(&self->shown);
  g_clear_object(&self->items);
  G_OBJECT_CLASS(spv_tincture_choice_parent_class)->dispose(object);
}

static void
spv_tincture_choice_class_init(SpvTinctureChoiceClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->dispose = spv_tincture_choice_dispose;
  widget_class->grab_focus = spv_tincture_choice_grab_focus;
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  changed_signal = g_signal_new("changed", G_TYPE_FROM_CLASS(klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
}

static void
spv_tincture_choice_init(SpvTinctureChoice *self) {
  g_autoptr(GtkListItemFactory) in_button = row_factory(TRUE);
  g_autoptr(GtkListItemFactory) in_list = row_factory(FALSE);

  self->items = g_list_store_new(SPV_TYPE_TINCTURE_ITEM);
  self->shown = g_object_ref(G_LIST_MODEL(self->items));
  self->drop_down = GTK_DROP_DOWN(gtk_drop_down_new(g_object_ref(self->shown), NULL));
  gtk_drop_down_set_factory(self->drop_down, in_button);
  gtk_drop_down_set_list_factory(self->drop_down, in_list);
  gtk_widget_set_parent(GTK_WIDGET(self->drop_down), GTK_WIDGET(self));
  g_signal_connect_swapped(self->drop_down, "notify::selected", G_CALLBACK(on_selected), self);
}

GtkWidget *
spv_tincture_choice_new(gboolean optional) {
  SpvTinctureChoice *self = g_object_new(SPV_TYPE_TINCTURE_CHOICE, NULL);

  if (optional) {
    g_autoptr(SpvTinctureItem) none = spv_tincture_item_new_none();
    self->showing = TRUE;
    g_list_store_append(self->items, none);
    self->showing = FALSE;
  }
  self->optional = optional;
  return GTK_WIDGET(self);
}

static gboolean
is_plain(gpointer item, gpointer data) {
  (void) data;
  return spv_tincture_item_look(item).fur == SPV_FUR_NONE;
}

GtkWidget *
spv_tincture_choice_new_plain(void) {
  SpvTinctureChoice *self = g_object_new(SPV_TYPE_TINCTURE_CHOICE, NULL);
  GtkFilter *filter = GTK_FILTER(gtk_custom_filter_new(is_plain, NULL, NULL));

  self->showing = TRUE;
  g_object_unref(self->shown);
  self->shown = G_LIST_MODEL(gtk_filter_list_model_new(g_object_ref(G_LIST_MODEL(self->items)), filter));
  gtk_drop_down_set_model(self->drop_down, self->shown);
  self->showing = FALSE;
  return GTK_WIDGET(self);
}
