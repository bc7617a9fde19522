/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/ties-pane.h"

#include <glib/gi18n-lib.h>

#include "window/layer-choice.h"

/* A row: a label, and its field. */
typedef struct {
  GtkWidget *label, *field;
} Row;

struct _SpvTiesPane {
  SpvPane parent_instance;

  GtkGrid *grid;
  Row on, counterchange, mirrored;
  gboolean showing; /* we are setting the fields ourselves */
};

G_DEFINE_FINAL_TYPE(SpvTiesPane, spv_ties_pane, SPV_TYPE_PANE)

static const SpvLayer *
chosen(SpvTiesPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  return session ? spv_session_chosen_layer(session) : NULL;
}

static void
edit(SpvTiesPane *self, const SpvLayer *edited, const char *label) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  spv_session_edit_layer(session, (guint) spv_session_layer(session), edited, label, NULL);
}

static void
on_on_changed(SpvTiesPane *self) {
  if (!chosen(self))
    return;
  g_autoptr(SpvLayer)
      edited = spv_layer_with_on(chosen(self), spv_layer_choice_id(SPV_LAYER_CHOICE(self->on.field)));
  edit(self, edited, _("Change what it is laid on"));
}

static void
on_counterchange_changed(SpvTiesPane *self) {
  const char *id = spv_layer_choice_id(SPV_LAYER_CHOICE(self->counterchange.field));

  if (!chosen(self))
    return;
  g_autoptr(SpvLayer) edited = spv_layer_with_counterchange(chosen(self), id);
  edit(self, edited, id ? _("Counterchange layer") : _("Do not counterchange layer"));
}

static void
on_mirrored_switched(SpvTiesPane *self) {
  const SpvLayer *layer = chosen(self);

  if (!self->showing && layer &&
      !layer->pattern.mirrored != !gtk_switch_get_active(GTK_SWITCH(self->mirrored.field)))
    spv_session_mirror_layer(spv_pane_session(SPV_PANE(self)));
}

static void
show_row(Row *row, gboolean shown) {
  gtk_widget_set_visible(row->label, shown);
  gtk_widget_set_visible(row->field, shown);
}

/* Ties that can't be made are not offered. */
static void
spv_ties_pane_refill(SpvPane *pane) {
  SpvTiesPane *self = SPV_TIES_PANE(pane);
  const SpvPanel *panel = spv_session_chosen_panel(spv_pane_session(pane));
  const SpvLayer *layer = chosen(self);
  gboolean tied = layer && layer->pattern.kind != SPV_PATTERN_FIELD;

  gtk_widget_set_visible(GTK_WIDGET(self), tied);
  if (!tied)
    return;
  guint index = (guint) spv_session_layer(spv_pane_session(pane));
  gboolean one_tincture = spv_pattern_info(layer->pattern.kind)->n_slots == 1;
  gboolean bearers = spv_layer_choice_show(SPV_LAYER_CHOICE(self->on.field), panel, index, layer->on);
  gboolean divisions = spv_layer_choice_show(SPV_LAYER_CHOICE(self->counterchange.field), panel, index,
                                             layer->counterchange);
  show_row(&self->on, bearers);
  show_row(&self->counterchange, divisions && one_tincture);
  self->showing = TRUE;
  gtk_switch_set_active(GTK_SWITCH(self->mirrored.field), layer->pattern.mirrored);
  self->showing = FALSE;
  gtk_widget_set_sensitive(GTK_WIDGET(self->grid), !layer->locked);
}

static Row
attach(SpvTiesPane *self, int row, const char *words, const char *hint, GtkWidget *field) {
  GtkWidget *label = gtk_label_new(words);

  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_mnemonic_widget(GTK_LABEL(label), field);
  gtk_widget_set_tooltip_text(label, hint);
  gtk_widget_set_tooltip_text(field, hint);
  gtk_grid_attach(self->grid, label, 0, row, 1, 1);
  gtk_grid_attach(self->grid, field, 1, row, 1, 1);
  return (Row){ label, field };
}

static Row
attach_choice(SpvTiesPane *self, int row, const char *words, const char *hint, GtkWidget *choice,
              GCallback changed) {
  spv_layer_choice_set_name(SPV_LAYER_CHOICE(choice), words);
  g_signal_connect_swapped(choice, "changed", changed, self);
  return attach(self, row, words, hint, choice);
}

static void
add_rows(SpvTiesPane *self) {
  GtkWidget *mirrored = gtk_switch_new();

  self->on = attach_choice(
      self, 0, _("Laid on"), _("What it is laid on, and cut to: the panel, or a layer below"),
      spv_layer_choice_new(_("the panel"), spv_kind_can_bear), G_CALLBACK(on_on_changed));
  self->counterchange = attach_choice(
      self, 1, _("Counterchanged across"),
      _("A layer of two tinctures: it shows each where that one shows the other"),
      spv_layer_choice_new(_("nothing"), spv_kind_can_counterchange), G_CALLBACK(on_counterchange_changed));
  gtk_widget_set_halign(mirrored, GTK_ALIGN_START);
  gtk_widget_set_valign(mirrored, GTK_ALIGN_CENTER);
  gtk_accessible_update_property(GTK_ACCESSIBLE(mirrored), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Mirrored"), -1);
  g_signal_connect_swapped(mirrored, "notify::active", G_CALLBACK(on_mirrored_switched), self);
  self->mirrored = attach(self, 2, _("Mirrored"), _("As its mirror image, dexter for sinister"), mirrored);
}

static void
spv_ties_pane_class_init(SpvTiesPaneClass *klass) {
  SPV_PANE_CLASS(klass)->refill = spv_ties_pane_refill;
}

static void
spv_ties_pane_init(SpvTiesPane *self) {
  self->grid = GTK_GRID(gtk_grid_new());
  gtk_grid_set_row_spacing(self->grid, 6);
  gtk_grid_set_column_spacing(self->grid, 12);
  gtk_grid_set_column_homogeneous(self->grid, TRUE);
  gtk_box_append(GTK_BOX(self), GTK_WIDGET(self->grid));
  add_rows(self);
  gtk_widget_set_visible(GTK_WIDGET(self), FALSE);
}
