/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/layer-row.h"

#include <glib/gi18n-lib.h>

#include "window/screen-text.h"
#include "window/tincture-swatch.h"
#include "window/tip.h"

struct _SpvLayerRow {
  GtkListBoxRow parent_instance;

  SpvTinctureSwatch *swatch;
  GtkStack *title;
  GtkLabel *name;
  GtkEntry *name_entry;
  GtkLabel *summary;
  GtkToggleButton *hide_button;
  GtkToggleButton *lock_button;
  GtkMenuButton *menu_button;

  SpvLayerItem *item;
  SpvSession *session;
  gboolean showing; /* we are setting the buttons ourselves */
};

G_DEFINE_FINAL_TYPE(SpvLayerRow, spv_layer_row, GTK_TYPE_LIST_BOX_ROW)

static void
set_class(GtkWidget *widget, const char *name, gboolean on) {
  if (on)
    gtk_widget_add_css_class(widget, name);
  else
    gtk_widget_remove_css_class(widget, name);
}

static void
show_toggle(GtkToggleButton *button, gboolean on, const char *icon, const char *tooltip) {
  gtk_toggle_button_set_active(button, on);
  gtk_button_set_icon_name(GTK_BUTTON(button), icon);
  spv_tip_set_as_name(GTK_WIDGET(button), tooltip);
  set_class(GTK_WIDGET(button), "spv-quiet", !on);
}

/* Shows the item. */
static void
show_item(SpvLayerRow *self) {
  const SpvLayer *layer = spv_layer_item_layer(self->item);
  const char *summary = spv_layer_item_summary(self->item);
  guint n;
  const SpvTinctureLook *looks = spv_layer_item_looks(self->item, &n);
  g_autofree char *spoken = g_strdup_printf("%s, %s", layer->name, summary);

  spv_tincture_swatch_set_looks(self->swatch, looks, n);
  gtk_label_set_text(self->name, layer->name);
  gtk_label_set_text(self->summary, summary);
  gtk_widget_set_visible(GTK_WIDGET(self->summary), *summary != '\0');
  self->showing = TRUE;
  show_toggle(self->hide_button, layer->hidden,
              layer->hidden ? "spv-hidden-symbolic" : "spv-visible-symbolic",
              layer->hidden ? _("Show layer") : _("Hide layer"));
  show_toggle(self->lock_button, layer->locked,
              layer->locked ? "spv-locked-symbolic" : "spv-unlocked-symbolic",
              layer->locked ? _("Unlock layer") : _("Lock layer"));
  self->showing = FALSE;
  gtk_widget_set_sensitive(GTK_WIDGET(self->hide_button), !layer->locked);
  if (layer->locked)
    spv_tip_set(GTK_WIDGET(self->hide_button), _("The layer is locked: unlock it first."));
  set_class(GTK_WIDGET(self), "spv-hidden-layer", layer->hidden);
  spv_tip_set(GTK_WIDGET(self),
              layer->locked ? _("Locked: unlock it to change, move or remove it.") : summary);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
}

static void
on_hide_toggled(SpvLayerRow *self) {
  if (!self->showing && self->session)
    spv_session_set_layer_hidden(self->session, spv_layer_item_index(self->item),
                                 gtk_toggle_button_get_active(self->hide_button));
}

static void
on_lock_toggled(SpvLayerRow *self) {
  if (!self->showing && self->session)
    spv_session_set_layer_locked(self->session, spv_layer_item_index(self->item),
                                 gtk_toggle_button_get_active(self->lock_button));
}

/* The menu's actions act on the chosen layer: this one, once its menu is open. */
static void
on_menu_active(SpvLayerRow *self) {
  gboolean active = FALSE;

  g_object_get(self->menu_button, "active", &active, NULL);
  if (active && self->session)
    spv_session_select(self->session, spv_session_panel(self->session),
                       (int) spv_layer_item_index(self->item));
}

static gboolean
is_renaming(SpvLayerRow *self) {
  return gtk_stack_get_visible_child(self->title) == GTK_WIDGET(self->name_entry);
}

void
spv_layer_row_rename(SpvLayerRow *self) {
  g_return_if_fail(SPV_IS_LAYER_ROW(self));
  if (spv_layer_item_layer(self->item)->locked)
    return;
  gtk_editable_set_text(GTK_EDITABLE(self->name_entry), spv_layer_item_layer(self->item)->name);
  gtk_stack_set_visible_child(self->title, GTK_WIDGET(self->name_entry));
  gtk_widget_grab_focus(GTK_WIDGET(self->name_entry));
}

void
spv_layer_row_cancel_rename(SpvLayerRow *self) {
  g_return_if_fail(SPV_IS_LAYER_ROW(self));
  gtk_stack_set_visible_child(self->title, GTK_WIDGET(self->name));
}

static void
take_name(SpvLayerRow *self) {
  g_autofree char *name = NULL;

  if (!is_renaming(self))
    return;
  name = spv_screen_text_name(gtk_editable_get_text(GTK_EDITABLE(self->name_entry)));
  spv_layer_row_cancel_rename(self);
  if (*name != '\0' && self->session && !g_str_equal(name, spv_layer_item_layer(self->item)->name))
    spv_session_rename_layer(self->session, spv_layer_item_index(self->item), name);
}

static void
on_name_activate(SpvLayerRow *self) {
  take_name(self);
  gtk_widget_grab_focus(GTK_WIDGET(self));
}

static gboolean
on_name_key(GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
            SpvLayerRow *self) {
  (void) controller;
  (void) keycode;
  (void) state;
  if (keyval != GDK_KEY_Escape)
    return FALSE;
  spv_layer_row_cancel_rename(self);
  gtk_widget_grab_focus(GTK_WIDGET(self));
  return TRUE;
}

static void
on_pressed(GtkGestureClick *gesture, int n_press, double x, double y, SpvLayerRow *self) {
  (void) x;
  (void) y;
  if (n_press != 2 || is_renaming(self))
    return;
  gtk_gesture_set_state(GTK_GESTURE(gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  spv_layer_row_rename(self);
}

static GdkContentProvider *
on_drag_prepare(GtkDragSource *source, double x, double y, SpvLayerRow *self) {
  g_autoptr(GdkPaintable) paintable = NULL;

  if (spv_layer_item_layer(self->item)->locked || is_renaming(self))
    return NULL;
  paintable = gtk_widget_paintable_new(GTK_WIDGET(self));
  gtk_drag_source_set_icon(source, paintable, (int) x, (int) y);
  return gdk_content_provider_new_typed(SPV_TYPE_LAYER_ITEM, self->item);
}

static void
show_drop(SpvLayerRow *self, gboolean above, gboolean below) {
  set_class(GTK_WIDGET(self), "spv-drop-above", above);
  set_class(GTK_WIDGET(self), "spv-drop-below", below);
}

static GdkDragAction
on_drop_motion(GtkDropTarget *target, double x, double y, SpvLayerRow *self) {
  gboolean above = y < gtk_widget_get_height(GTK_WIDGET(self)) / 2.0;

  (void) target;
  (void) x;
  show_drop(self, above, !above);
  return GDK_ACTION_MOVE;
}

static void
on_drop_leave(GtkDropTarget *target, SpvLayerRow *self) {
  (void) target;
  show_drop(self, FALSE, FALSE);
}

static gboolean
on_drop(GtkDropTarget *target, const GValue *value, double x, double y, SpvLayerRow *self) {
  SpvLayerItem *dragged = g_value_get_object(value);
  guint from, gap;

  (void) target;
  (void) x;
  show_drop(self, FALSE, FALSE);
  /* A layer of another window is another document's. */
  if (!dragged || !self->session || spv_layer_item_owner(dragged) != spv_layer_item_owner(self->item))
    return FALSE;
  from = spv_layer_item_index(dragged);
  /* The list runs from the top down, the layers from the bottom up: above this row is the gap over it. */
  gap = spv_layer_item_index(self->item);
  if (y < gtk_widget_get_height(GTK_WIDGET(self)) / 2.0)
    gap++;
  spv_session_move_layer(self->session, from, gap > from ? gap - 1 : gap);
  return TRUE;
}

static void
add_controllers(SpvLayerRow *self) {
  GtkWidget *widget = GTK_WIDGET(self);
  GtkGesture *click = gtk_gesture_click_new();
  GtkDragSource *source = gtk_drag_source_new();
  GtkDropTarget *target = gtk_drop_target_new(SPV_TYPE_LAYER_ITEM, GDK_ACTION_MOVE);

  g_signal_connect(click, "pressed", G_CALLBACK(on_pressed), self);
  gtk_widget_add_controller(GTK_WIDGET(self->title), GTK_EVENT_CONTROLLER(click));
  gtk_drag_source_set_actions(source, GDK_ACTION_MOVE);
  g_signal_connect(source, "prepare", G_CALLBACK(on_drag_prepare), self);
  gtk_widget_add_controller(widget, GTK_EVENT_CONTROLLER(source));
  g_signal_connect(target, "motion", G_CALLBACK(on_drop_motion), self);
  g_signal_connect(target, "leave", G_CALLBACK(on_drop_leave), self);
  g_signal_connect(target, "drop", G_CALLBACK(on_drop), self);
  gtk_widget_add_controller(widget, GTK_EVENT_CONTROLLER(target));
}

SpvLayerItem *
spv_layer_row_item(SpvLayerRow *self) {
  g_return_val_if_fail(SPV_IS_LAYER_ROW(self), NULL);
  return self->item;
}

static void
spv_layer_row_dispose(GObject *object) {
  SpvLayerRow *self = SPV_LAYER_ROW(object);

  /* A field that loses the focus now must not rename anything. */
  g_clear_object(&self->session);
  G_OBJECT_CLASS(spv_layer_row_parent_class)->dispose(object);
}

static void
spv_layer_row_finalize(GObject *object) {
  g_clear_object(&SPV_LAYER_ROW(object)->item);
  G_OBJECT_CLASS(spv_layer_row_parent_class)->finalize(object);
}

static void
spv_layer_row_class_init(SpvLayerRowClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->dispose = spv_layer_row_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_layer_row_finalize;
  g_type_ensure(SPV_TYPE_TINCTURE_SWATCH);
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/layer-row.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvLayerRow, swatch);
  gtk_widget_class_bind_template_child(widget_class, SpvLayerRow, title);
  gtk_widget_class_bind_template_child(widget_class, SpvLayerRow, name);
  gtk_widget_class_bind_template_child(widget_class, SpvLayerRow, name_entry);
  gtk_widget_class_bind_template_child(widget_class, SpvLayerRow, summary);
  gtk_widget_class_bind_template_child(widget_class, SpvLayerRow, hide_button);
  gtk_widget_class_bind_template_child(widget_class, SpvLayerRow, lock_button);
  gtk_widget_class_bind_template_child(widget_class, SpvLayerRow, menu_button);
  gtk_widget_class_bind_template_callback(widget_class, on_hide_toggled);
  gtk_widget_class_bind_template_callback(widget_class, on_lock_toggled);
  gtk_widget_class_bind_template_callback(widget_class, on_menu_active);
  gtk_widget_class_bind_template_callback(widget_class, on_name_activate);
  gtk_widget_class_bind_template_callback(widget_class, on_name_key);
  gtk_widget_class_bind_template_callback(widget_class, take_name);
}

static void
spv_layer_row_init(SpvLayerRow *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  add_controllers(self);
}

GtkWidget *
spv_layer_row_new(SpvLayerItem *item, SpvSession *session) {
  SpvLayerRow *self = g_object_new(SPV_TYPE_LAYER_ROW, NULL);

  self->item = g_object_ref(item);
  self->session = g_object_ref(session);
  g_signal_connect_object(item, "changed", G_CALLBACK(show_item), self, G_CONNECT_SWAPPED);
  show_item(self);
  return GTK_WIDGET(self);
}
