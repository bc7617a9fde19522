/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/layer-choice.h"

struct _SpvLayerChoice {
  GtkWidget parent_instance;
  GtkDropDown *drop_down;
  GtkStringList *names;
  GPtrArray *ids; /* of the items; NULL for none */
  gboolean (*takes)(SpvPatternKind kind);
  gboolean showing; /* we are choosing ourselves */
};

G_DEFINE_FINAL_TYPE(SpvLayerChoice, spv_layer_choice, GTK_TYPE_WIDGET)

static guint changed_signal;

static void
on_selected(SpvLayerChoice *self) {
  if (!self->showing && gtk_drop_down_get_selected(self->drop_down) != GTK_INVALID_LIST_POSITION)
    g_signal_emit(self, changed_signal, 0);
}

/* Makes item N the layer ID called NAME. Items that are right stay: an open list is not to be shaken. */
static void
put_item(SpvLayerChoice *self, guint n, const char *id, const char *name) {
  const char *const one[] = { name, NULL };
  const char *old = gtk_string_list_get_string(self->names, n);

  if (n < self->ids->len) {
    g_free(self->ids->pdata[n]);
    self->ids->pdata[n] = g_strdup(id);
  } else {
    g_ptr_array_add(self->ids, g_strdup(id));
  }
  if (!old)
    gtk_string_list_append(self->names, name);
  else if (!g_str_equal(old, name))
    gtk_string_list_splice(self->names, n, 1, one);
}

gboolean
spv_layer_choice_show(SpvLayerChoice *self, const SpvPanel *panel, guint index, const char *id) {
  guint n = 1, selected = 0, n_old;

  g_return_val_if_fail(SPV_IS_LAYER_CHOICE(self) && index < panel->n_layers, FALSE);
  self->showing = TRUE;
  /* As in the list of layers: the topmost first. */
  for (guint i = index; i-- > 0;) {
    const SpvLayer *layer = panel->layers[i];
    if (!self->takes(layer->pattern.kind))
      continue;
    if (g_strcmp0(layer->id, id) == 0)
      selected = n;
    put_item(self, n++, layer->id, layer->name);
  }
  n_old = g_list_model_get_n_items(G_LIST_MODEL(self->names));
  if (n < n_old) {
    gtk_string_list_splice(self->names, n, n_old - n, NULL);
    g_ptr_array_set_size(self->ids, (int) n);
  }
  if (gtk_drop_down_get_selected(self->drop_down) != selected)
    gtk_drop_down_set_selected(self->drop_down, selected);
  self->showing = FALSE;
  return n > 1;
}

const char *
spv_layer_choice_id(SpvLayerChoice *self) {
  guint selected = gtk_drop_down_get_selected(self->drop_down);

  return selected < self->ids->len ? g_ptr_array_index(self->ids, selected) : NULL;
}

void
spv_layer_choice_set_name(SpvLayerChoice *self, const char *name) {
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->drop_down), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static gboolean
spv_layer_choice_grab_focus(GtkWidget *widget) {
  return gtk_widget_grab_focus(GTK_WIDGET(SPV_LAYER_CHOICE(widget)->drop_down));
}

static void
spv_layer_choice_dispose(GObject *object) {
  SpvLayerChoice *self = SPV_LAYER_CHOICE(object);

  if (self->drop_down)
    gtk_widget_unparent(GTK_WIDGET(self->drop_down));
  self->drop_down = NULL;
  g_clear_pointer(&self->ids, g_ptr_array_unref);
  G_OBJECT_CLASS(spv_layer_choice_parent_class)->dispose(object);
}

static void
spv_layer_choice_class_init(SpvLayerChoiceClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->dispose = spv_layer_choice_dispose;
  widget_class->grab_focus = spv_layer_choice_grab_focus;
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  changed_signal = g_signal_new("changed", G_TYPE_FROM_CLASS(klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
}

static void
spv_layer_choice_init(SpvLayerChoice *self) {
  self->names = gtk_string_list_new(NULL);
  self->ids = g_ptr_array_new_with_free_func(g_free);
  self->drop_down = GTK_DROP_DOWN(gtk_drop_down_new(G_LIST_MODEL(self->names), NULL));
  gtk_widget_set_parent(GTK_WIDGET(self->drop_down), GTK_WIDGET(self));
  g_signal_connect_swapped(self->drop_down, "notify::selected", G_CALLBACK(on_selected), self);
}

GtkWidget *
spv_layer_choice_new(const char *none, gboolean (*takes)(SpvPatternKind kind)) {
  SpvLayerChoice *self = g_object_new(SPV_TYPE_LAYER_CHOICE, NULL);

  self->takes = takes;
  self->showing = TRUE;
  put_item(self, 0, NULL, none);
  self->showing = FALSE;
  return GTK_WIDGET(self);
}
