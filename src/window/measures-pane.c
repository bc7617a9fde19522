/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/measures-pane.h"

#include <glib/gi18n-lib.h>

#include "window/measure-effect.h"
#include "window/measure-entry.h"
#include "window/screen-text.h"
#include "window/tincture-choice.h"

struct _SpvMeasuresPane {
  SpvPane parent_instance;

  GtkLabel *heading;
  GtkLabel *empty;
  GtkLabel *locked;
  GtkGrid *grid;

  /* The rows that stand in the grid, and whose they are. */
  char *shown; /* panel, layer and kind */
  SpvMeasureEntry *entries[SPV_PATTERN_MEASURES];
  SpvTinctureChoice *choices[SPV_PATTERN_SLOTS];
};

G_DEFINE_FINAL_TYPE(SpvMeasuresPane, spv_measures_pane, SPV_TYPE_PANE)

/* "Change depth" for a measure called "Depth". */
static char *
edit_label(const char *what) {
  g_autofree char *lower = spv_screen_text_inside(what);

  /* Translators: a step of the history; %s is a measure in lower case, such as "depth". */
  return g_strdup_printf(_("Change %s"), lower);
}

static void
on_measure_changed(SpvMeasureEntry *entry, SpvMeasuresPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  const SpvLayer *layer = session ? spv_session_chosen_layer(session) : NULL;
  guint index = GPOINTER_TO_UINT(g_object_get_data(G_OBJECT(entry), "index"));

  if (!layer)
    return;
  const SpvMeasureSpec *spec = &spv_pattern_info(layer->pattern.kind)->measures[index];
  g_autofree char *label = edit_label(_(spec->label));
  g_autofree char *merge = g_strdup_printf("measure:%s:%s:%s", spv_session_chosen_panel(session)->id,
                                           layer->id, spec->key);
  g_autoptr(SpvLayer) edited = spv_layer_with_measure(layer, index, spv_measure_entry_value(entry));
  spv_session_edit_layer(session, (guint) spv_session_layer(session), edited, label, merge);
}

static void
on_tincture_changed(SpvTinctureChoice *choice, SpvMeasuresPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  const SpvLayer *layer = session ? spv_session_chosen_layer(session) : NULL;
  guint slot = GPOINTER_TO_UINT(g_object_get_data(G_OBJECT(choice), "index"));

  if (!layer)
    return;
  g_autoptr(SpvLayer) edited = spv_layer_with_tincture(layer, slot, spv_tincture_choice_id(choice));
  spv_session_edit_layer(session, (guint) spv_session_layer(session), edited, _("Change tincture"), NULL);
}

/* A row: LABEL with its HINT on the left, FIELD on the right. */
static void
attach(SpvMeasuresPane *self, int row, const char *label_text, const char *hint, GtkWidget *field) {
  GtkWidget *label = gtk_label_new(label_text);

  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_mnemonic_widget(GTK_LABEL(label), field);
  gtk_widget_set_tooltip_text(label, hint);
  gtk_widget_set_tooltip_text(field, hint);
  gtk_grid_attach(self->grid, label, 0, row, 1, 1);
  gtk_grid_attach(self->grid, field, 1, row, 1, 1);
}

static void
attach_measure(SpvMeasuresPane *self, int row, guint index, const SpvMeasureSpec *spec) {
  GtkWidget *entry = spv_measure_entry_new();

  spv_measure_entry_set_spec(SPV_MEASURE_ENTRY(entry), spec, TRUE);
  spv_measure_entry_set_name(SPV_MEASURE_ENTRY(entry), _(spec->label));
  g_object_set_data(G_OBJECT(entry), "index", GUINT_TO_POINTER(index));
  g_signal_connect(entry, "changed", G_CALLBACK(on_measure_changed), self);
  g_signal_connect_swapped(entry, "settled", G_CALLBACK(spv_pane_settle), self);
  attach(self, row, _(spec->label), _(spec->hint), entry);
  self->entries[index] = SPV_MEASURE_ENTRY(entry);
}

static void
attach_tincture(SpvMeasuresPane *self, int row, guint slot, const SpvPatternInfo *info, SpvPatternKind kind) {
  /* A field lies at the bottom: there is nothing beneath it to leave. */
  GtkWidget *choice = spv_tincture_choice_new(kind != SPV_PATTERN_FIELD);
  const char *label = info->n_slots > 1 ? _(info->slots[slot]) : _("Tincture");
  g_autofree char *name = g_strdup_printf(_("Tincture: %s"), _(info->slots[slot]));

  spv_tincture_choice_set_name(SPV_TINCTURE_CHOICE(choice), name);
  g_object_set_data(G_OBJECT(choice), "index", GUINT_TO_POINTER(slot));
  g_signal_connect(choice, "changed", G_CALLBACK(on_tincture_changed), self);
  attach(self, row, label, NULL, choice);
  self->choices[slot] = SPV_TINCTURE_CHOICE(choice);
}

static void
clear_rows(SpvMeasuresPane *self) {
  GtkWidget *child;

  for (guint i = 0; i < SPV_PATTERN_MEASURES; i++)
    self->entries[i] = NULL;
  for (guint i = 0; i < SPV_PATTERN_SLOTS; i++)
    self->choices[i] = NULL;
  while ((child = gtk_widget_get_first_child(GTK_WIDGET(self->grid))))
    gtk_grid_remove(self->grid, child);
}

/* Rows for LAYER on PANEL, unless they are there already: a field that is being typed in must stay. */
static void
build_rows(SpvMeasuresPane *self, const SpvPanel *panel, const SpvLayer *layer) {
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);
  g_autofree char *wanted = g_strjoin("\n", panel->id, layer->id, info->key, NULL);
  int row = 0;

  if (g_strcmp0(wanted, self->shown) == 0)
    return;
  g_free(self->shown);
  self->shown = g_steal_pointer(&wanted);
  clear_rows(self);
  for (guint i = 0; i < info->n_measures; i++)
    attach_measure(self, row++, i, &info->measures[i]);
  for (guint i = 0; i < info->n_slots; i++)
    attach_tincture(self, row++, i, info, layer->pattern.kind);
}

static void
show_measure(SpvMeasuresPane *self, guint index, const SpvLayer *layer, const SpvPanel *panel) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  const char *key = spv_pattern_info(layer->pattern.kind)->measures[index].key;
  double worked_out = spv_measure_effect(spv_session_composition(session), (guint) spv_session_layer(session),
                                         key);

  spv_measure_entry_set_value(self->entries[index], layer->pattern.measures[index], panel->outline.width,
                              panel->outline.height, worked_out);
}

static void
spv_measures_pane_refill(SpvPane *pane) {
  SpvMeasuresPane *self = SPV_MEASURES_PANE(pane);
  SpvSession *session = spv_pane_session(pane);
  const SpvPanel *panel = spv_session_chosen_panel(session);
  const SpvLayer *layer = spv_session_chosen_layer(session);

  gtk_widget_set_visible(GTK_WIDGET(self->empty), layer == NULL);
  gtk_widget_set_visible(GTK_WIDGET(self->grid), layer != NULL);
  gtk_widget_set_visible(GTK_WIDGET(self->locked), layer && layer->locked);
  gtk_label_set_text(self->heading, layer ? layer->name : _("Measures"));
  if (!layer) {
    g_clear_pointer(&self->shown, g_free);
    clear_rows(self);
    return;
  }
  build_rows(self, panel, layer);
  gtk_widget_set_sensitive(GTK_WIDGET(self->grid), !layer->locked);
  for (guint i = 0; i < SPV_PATTERN_MEASURES; i++) {
    if (self->entries[i])
      show_measure(self, i, layer, panel);
  }
  for (guint i = 0; i < SPV_PATTERN_SLOTS; i++) {
    if (self->choices[i])
      spv_tincture_choice_show(self->choices[i], spv_session_scheme(session), layer->tinctures[i]);
  }
}

static void
spv_measures_pane_finalize(GObject *object) {
  g_free(SPV_MEASURES_PANE(object)->shown);
  G_OBJECT_CLASS(spv_measures_pane_parent_class)->finalize(object);
}

static void
spv_measures_pane_class_init(SpvMeasuresPaneClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->finalize = spv_measures_pane_finalize;
  SPV_PANE_CLASS(klass)->refill = spv_measures_pane_refill;
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/measures-pane.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, heading);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, empty);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, locked);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, grid);
}

static void
spv_measures_pane_init(SpvMeasuresPane *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
}

GtkWidget *
spv_measures_pane_new(void) {
  return g_object_new(SPV_TYPE_MEASURES_PANE, NULL);
}
