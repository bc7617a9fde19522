/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/word-completion.h"

#include <glib/gi18n-lib.h>

#define MAX_WORDS 8

struct _SpvWordCompletion {
  GtkPopover parent_instance;
  GtkTextView *view;
  GtkListBox *list;
  gboolean moved; /* the painter moved in the list: Enter is for it */
};

G_DEFINE_FINAL_TYPE(SpvWordCompletion, spv_word_completion, GTK_TYPE_POPOVER)

static guint chosen_signal;

static void
put_away(SpvWordCompletion *self) {
  self->moved = FALSE;
  gtk_popover_popdown(GTK_POPOVER(self));
}

static void
choose(SpvWordCompletion *self, GtkListBoxRow *row) {
  g_autofree char *word = g_strdup(gtk_label_get_text(GTK_LABEL(gtk_list_box_row_get_child(row))));

  put_away(self);
  g_signal_emit(self, chosen_signal, 0, word);
}

static void
on_row_activated(GtkListBox *list, GtkListBoxRow *row, SpvWordCompletion *self) {
  (void) list;
  choose(self, row);
}

/* Points at the cursor, so that the words stand under the one that they complete. */
static void
point(SpvWordCompletion *self) {
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->view);
  GtkTextIter cursor;
  GdkRectangle box;
  double x, y;

  gtk_text_buffer_get_iter_at_mark(buffer, &cursor, gtk_text_buffer_get_insert(buffer));
  gtk_text_view_get_iter_location(self->view, &cursor, &box);
  gtk_text_view_buffer_to_window_coords(self->view, GTK_TEXT_WINDOW_WIDGET, box.x, box.y, &box.x, &box.y);
  gtk_widget_translate_coordinates(GTK_WIDGET(self->view), gtk_widget_get_parent(GTK_WIDGET(self)), box.x,
                                   box.y, &x, &y);
  box = (GdkRectangle){ (int) x, (int) y, MAX(box.width, 1), box.height };
  gtk_popover_set_pointing_to(GTK_POPOVER(self), &box);
}

void
spv_word_completion_offer(SpvWordCompletion *self, const char *const *words) {
  GtkListBoxRow *row;

  g_return_if_fail(SPV_IS_WORD_COMPLETION(self));
  while ((row = gtk_list_box_get_row_at_index(self->list, 0)))
    gtk_list_box_remove(self->list, GTK_WIDGET(row));
  for (guint i = 0; words[i] && i < MAX_WORDS; i++) {
    GtkWidget *label = gtk_label_new(words[i]);
    gtk_label_set_xalign(GTK_LABEL(label), 0);
    gtk_list_box_append(self->list, label);
  }
  row = gtk_list_box_get_row_at_index(self->list, 0);
  if (!row) {
    put_away(self);
    return;
  }
  self->moved = FALSE;
  gtk_list_box_select_row(self->list, row);
  point(self);
  gtk_popover_popup(GTK_POPOVER(self));
}

gboolean
spv_word_completion_is_open(SpvWordCompletion *self) {
  g_return_val_if_fail(SPV_IS_WORD_COMPLETION(self), FALSE);
  return gtk_widget_get_visible(GTK_WIDGET(self));
}

static void
move(SpvWordCompletion *self, int by) {
  GtkListBoxRow *now = gtk_list_box_get_selected_row(self->list), *next;

  next = gtk_list_box_get_row_at_index(self->list, (now ? gtk_list_box_row_get_index(now) : 0) + by);
  if (next)
    gtk_list_box_select_row(self->list, next);
  self->moved = TRUE;
}

gboolean
spv_word_completion_take_key(SpvWordCompletion *self, guint keyval) {
  GtkListBoxRow *row;

  if (!spv_word_completion_is_open(self))
    return FALSE;
  switch (keyval) {
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    move(self, 1);
    return TRUE;
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    move(self, -1);
    return TRUE;
  case GDK_KEY_Escape:
    put_away(self);
    return TRUE;
  case GDK_KEY_Return:
  case GDK_KEY_KP_Enter:
    if (!self->moved) {
      put_away(self);
      return FALSE;
    }
    break;
  case GDK_KEY_Tab:
    break;
  default:
    return FALSE;
  }
  row = gtk_list_box_get_selected_row(self->list);
  if (row)
    choose(self, row);
  return row != NULL;
}

static void
spv_word_completion_class_init(SpvWordCompletionClass *klass) {
  chosen_signal = g_signal_new("chosen", G_TYPE_FROM_CLASS(klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
spv_word_completion_init(SpvWordCompletion *self) {
  GtkWidget *list = gtk_list_box_new();

  self->list = GTK_LIST_BOX(list);
  gtk_list_box_set_selection_mode(self->list, GTK_SELECTION_BROWSE);
  gtk_widget_set_can_focus(list, FALSE);
  gtk_accessible_update_property(GTK_ACCESSIBLE(list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Words that could stand here"), -1);
  g_signal_connect(list, "row-activated", G_CALLBACK(on_row_activated), self);
  gtk_widget_add_css_class(GTK_WIDGET(self), "spv-words");
  gtk_popover_set_child(GTK_POPOVER(self), list);
  gtk_popover_set_autohide(GTK_POPOVER(self), FALSE);
  gtk_popover_set_has_arrow(GTK_POPOVER(self), FALSE);
  gtk_popover_set_position(GTK_POPOVER(self), GTK_POS_BOTTOM);
}

SpvWordCompletion *
spv_word_completion_new(GtkTextView *view, GtkWidget *parent) {
  SpvWordCompletion *self = g_object_new(SPV_TYPE_WORD_COMPLETION, NULL);

  self->view = view;
  gtk_widget_set_parent(GTK_WIDGET(self), parent);
  return self;
}
