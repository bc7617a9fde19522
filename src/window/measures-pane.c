/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/measures-pane.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "heraldry/arrange.h"
#include "window/measure-effect.h"
#include "window/measure-entry.h"
#include "window/measure-text.h"
#include "window/pattern-text-entry.h"
#include "window/screen-text.h"
#include "window/smallest-figure.h"
#include "window/ties-pane.h"
#include "window/tincture-choice.h"

/* What stands in one row of the grid. */
typedef struct {
  GtkWidget *label; /* NULL where the field is as wide as the pane */
  GtkWidget *field; /* NULL: there is no such row */
} Row;

struct _SpvMeasuresPane {
  SpvPane parent_instance;

  GtkLabel *heading;
  GtkLabel *empty;
  GtkLabel *locked;
  GtkGrid *grid;
  GtkWidget *kind_label;
  SpvPane *ties;
  GtkDropDown *kind; /* stays: a painter who tries one kind after the other must not lose it */

  /* The rows that stand in the grid, and whose they are. */
  char *shown;     /* panel, layer and kind */
  int shown_group; /* whose kinds the drop-down has, or -1 */
  int n_rows;
  Row measures[SPV_PATTERN_MEASURES];
  Row texts[SPV_PATTERN_TEXTS];
  Row tinctures[SPV_PATTERN_SLOTS];
  Row smallest; /* under a charge's size: how small it may be */
  Row crossed;  /* under the tinctures: why they can't be chosen */
  gboolean showing;
  SpvSmallestFigure last_smallest;
};

G_DEFINE_FINAL_TYPE(SpvMeasuresPane, spv_measures_pane, SPV_TYPE_PANE)

/* Edits */

/* "Change depth" for a measure called "Depth". */
static char *
edit_label(const char *what) {
  g_autofree char *lower = spv_screen_text_inside(what);

  /* Translators: a step of the history; %s is a measure in lower case, such as "depth". */
  return g_strdup_printf(_("Change %s"), lower);
}

/* The layer that is shown, or NULL; which measure, text or slot FIELD is for goes to INDEX. */
static const SpvLayer *
layer_of(SpvMeasuresPane *self, gpointer field, guint *index) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  *index = GPOINTER_TO_UINT(g_object_get_data(G_OBJECT(field), "index"));
  return session ? spv_session_chosen_layer(session) : NULL;
}

static void
edit(SpvMeasuresPane *self, const SpvLayer *edited, const char *label, const char *merge) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  spv_session_edit_layer(session, (guint) spv_session_layer(session), edited, label, merge);
}

/* What joins a run of edits of KEY. Free with g_free(). */
static char *
merge_key(SpvMeasuresPane *self, const SpvLayer *layer, const char *key) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  return g_strdup_printf("measure:%s:%s:%s", spv_session_chosen_panel(session)->id, layer->id, key);
}

static void
on_measure_changed(SpvMeasureEntry *entry, SpvMeasuresPane *self) {
  guint index;
  const SpvLayer *layer = layer_of(self, entry, &index);

  if (!layer)
    return;
  const SpvMeasureSpec *spec = &spv_pattern_info(layer->pattern.kind)->measures[index];
  g_autofree char *label = edit_label(_(spec->label));
  g_autofree char *merge = merge_key(self, layer, spec->key);
  g_autoptr(SpvLayer) edited = spv_layer_with_measure(layer, index, spv_measure_entry_value(entry));
  edit(self, edited, label, merge);
}

static void
on_text_changed(SpvPatternTextEntry *entry, SpvMeasuresPane *self) {
  guint index;
  const SpvLayer *layer = layer_of(self, entry, &index);

  if (!layer)
    return;
  const SpvTextSpec *spec = &spv_pattern_info(layer->pattern.kind)->texts[index];
  g_autofree char *label = edit_label(_(spec->label));
  g_autofree char *merge = merge_key(self, layer, spec->key);
  g_autoptr(SpvLayer) edited = spv_layer_with_text(layer, index, spv_pattern_text_entry_text(entry));
  edit(self, edited, label, merge);
}

static void
on_tincture_changed(SpvTinctureChoice *choice, SpvMeasuresPane *self) {
  guint slot;
  const SpvLayer *layer = layer_of(self, choice, &slot);

  if (!layer)
    return;
  g_autoptr(SpvLayer) edited = spv_layer_with_tincture(layer, slot, spv_tincture_choice_id(choice));
  edit(self, edited, _("Change tincture"), NULL);
}

/* The kind of GROUP that stands at PLACE in its list; SPV_N_PATTERNS: there is none. */
static guint
kind_at(SpvPatternGroup group, guint place) {
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++)
    if (spv_pattern_group((SpvPatternKind) kind) == group && place-- == 0)
      return kind;
  return SPV_N_PATTERNS;
}

static void
on_kind_selected(SpvMeasuresPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  const SpvLayer *layer = session ? spv_session_chosen_layer(session) : NULL;

  if (self->showing || !layer)
    return;
  guint kind = kind_at(spv_pattern_group(layer->pattern.kind), gtk_drop_down_get_selected(self->kind));
  if (kind < SPV_N_PATTERNS && kind != layer->pattern.kind)
    spv_session_set_layer_kind(session, (guint) spv_session_layer(session), (SpvPatternKind) kind);
}

/* Rows */

static void
show_row(Row *row, gboolean shown) {
  if (row->label)
    gtk_widget_set_visible(row->label, shown);
  if (row->field)
    gtk_widget_set_visible(row->field, shown);
}

/* A row: LABEL with its HINT on the left, FIELD on the right. */
static Row
attach(SpvMeasuresPane *self, const char *label_text, const char *hint, GtkWidget *field) {
  GtkWidget *label = gtk_label_new(label_text);

  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_mnemonic_widget(GTK_LABEL(label), field);
  gtk_widget_set_tooltip_text(label, hint);
  gtk_widget_set_tooltip_text(field, hint);
  gtk_grid_attach(self->grid, label, 0, self->n_rows, 1, 1);
  gtk_grid_attach(self->grid, field, 1, self->n_rows++, 1, 1);
  return (Row){ label, field };
}

/* A row of FIELD alone. */
static Row
attach_wide(SpvMeasuresPane *self, GtkWidget *field) {
  gtk_grid_attach(self->grid, field, 0, self->n_rows++, 2, 1);
  return (Row){ NULL, field };
}

/* A row of a few quiet words. */
static Row
attach_words(SpvMeasuresPane *self) {
  GtkWidget *label = gtk_label_new(NULL);

  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_widget_add_css_class(label, "caption");
  gtk_widget_add_css_class(label, "dim-label");
  return attach_wide(self, label);
}

static void
attach_measure(SpvMeasuresPane *self, guint index, const SpvMeasureSpec *spec) {
  GtkWidget *entry = spv_measure_entry_new();

  spv_measure_entry_set_spec(SPV_MEASURE_ENTRY(entry), spec, TRUE);
  spv_measure_entry_set_name(SPV_MEASURE_ENTRY(entry), _(spec->label));
  g_object_set_data(G_OBJECT(entry), "index", GUINT_TO_POINTER(index));
  g_signal_connect(entry, "changed", G_CALLBACK(on_measure_changed), self);
  g_signal_connect_swapped(entry, "settled", G_CALLBACK(spv_pane_settle), self);
  self->measures[index] = attach(self, _(spec->label), _(spec->hint), entry);
}

static void
attach_text(SpvMeasuresPane *self, guint index, SpvPatternKind kind) {
  GtkWidget *entry = spv_pattern_text_entry_new(kind, index);

  g_object_set_data(G_OBJECT(entry), "index", GUINT_TO_POINTER(index));
  g_signal_connect(entry, "changed", G_CALLBACK(on_text_changed), self);
  g_signal_connect_swapped(entry, "settled", G_CALLBACK(spv_pane_settle), self);
  self->texts[index] = attach_wide(self, entry);
}

static void
attach_tincture(SpvMeasuresPane *self, guint slot, SpvPatternKind kind) {
  const SpvPatternInfo *info = spv_pattern_info(kind);
  /* A field lies at the bottom: there is nothing beneath it to leave. */
  GtkWidget *choice = spv_tincture_choice_new(kind != SPV_PATTERN_FIELD);
  const char *label = info->n_slots > 1 ? _(info->slots[slot]) : _("Tincture");
  g_autofree char *name = g_strdup_printf(_("Tincture: %s"), _(info->slots[slot]));

  spv_tincture_choice_set_name(SPV_TINCTURE_CHOICE(choice), name);
  g_object_set_data(G_OBJECT(choice), "index", GUINT_TO_POINTER(slot));
  g_signal_connect(choice, "changed", G_CALLBACK(on_tincture_changed), self);
  self->tinctures[slot] = attach(self, label, NULL, choice);
}

/* All but the kind's. */
static void
clear_rows(SpvMeasuresPane *self) {
  GtkWidget *child = gtk_widget_get_first_child(GTK_WIDGET(self->grid));

  while (child) {
    GtkWidget *next = gtk_widget_get_next_sibling(child);
    if (child != self->kind_label && child != GTK_WIDGET(self->kind))
      gtk_grid_remove(self->grid, child);
    child = next;
  }
  self->n_rows = 1;
  for (guint i = 0; i < SPV_PATTERN_MEASURES; i++)
    self->measures[i] = (Row){ NULL, NULL };
  for (guint i = 0; i < SPV_PATTERN_TEXTS; i++)
    self->texts[i] = (Row){ NULL, NULL };
  for (guint i = 0; i < SPV_PATTERN_SLOTS; i++)
    self->tinctures[i] = (Row){ NULL, NULL };
  self->smallest = self->crossed = (Row){ NULL, NULL };
}

static gboolean
is_charge(SpvPatternKind kind) {
  return spv_pattern_group(kind) == SPV_GROUP_CHARGE || kind == SPV_PATTERN_PATH_CHARGE;
}

/* Rows for LAYER on PANEL, unless they are there already: a field that is being typed in must stay. */
static void
build_rows(SpvMeasuresPane *self, const SpvPanel *panel, const SpvLayer *layer) {
  SpvPatternKind kind = layer->pattern.kind;
  const SpvPatternInfo *info = spv_pattern_info(kind);
  g_autofree char *wanted = g_strjoin("\n", panel->id, layer->id, info->key, NULL);

  if (g_strcmp0(wanted, self->shown) == 0)
    return;
  g_free(self->shown);
  self->shown = g_steal_pointer(&wanted);
  clear_rows(self);
  for (guint i = 0; i < info->n_measures; i++) {
    attach_measure(self, i, &info->measures[i]);
    if (is_charge(kind) && i == SPV_CHARGE_SIZE)
      self->smallest = attach_words(self);
  }
  for (guint i = 0; i < info->n_texts; i++)
    attach_text(self, i, kind);
  for (guint i = 0; i < info->n_slots; i++)
    attach_tincture(self, i, kind);
  self->crossed = attach_words(self);
}

/* Showing */

/* The kinds of LAYER's group, to turn it into another in place. */
static void
show_kind(SpvMeasuresPane *self, const SpvLayer *layer) {
  SpvPatternGroup group = spv_pattern_group(layer->pattern.kind);
  guint selected = 0;

  self->showing = TRUE;
  if (self->shown_group != (int) group) {
    g_autoptr(GtkStringList) names = gtk_string_list_new(NULL);
    for (guint i = 0, kind; (kind = kind_at(group, i)) < SPV_N_PATTERNS; i++)
      gtk_string_list_append(names, _(spv_pattern_info((SpvPatternKind) kind)->label));
    gtk_drop_down_set_model(self->kind, G_LIST_MODEL(names));
    self->shown_group = (int) group;
  }
  while (kind_at(group, selected) < layer->pattern.kind)
    selected++;
  if (gtk_drop_down_get_selected(self->kind) != selected)
    gtk_drop_down_set_selected(self->kind, selected);
  self->showing = FALSE;
}

/* Whether measure INDEX says anything about PATTERN as it stands; one charge keeps no distance to itself. */
static gboolean
measure_counts(const SpvPattern *pattern, guint index) {
  if (is_charge(pattern->kind) && index == SPV_CHARGE_SPACING) {
    double arrangement = pattern->measures[SPV_CHARGE_ARRANGEMENT].value;
    return pattern->measures[SPV_CHARGE_NUMBER].value > 1 || arrangement == SPV_ARRANGEMENT_SEMY ||
           arrangement == SPV_ARRANGEMENT_ROWS;
  }
  return spv_pattern_measure_counts(pattern, index);
}

static void
show_measures(SpvMeasuresPane *self, const SpvLayer *layer) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  const SpvComposition *composition = spv_session_composition(session);
  guint at = (guint) spv_session_layer(session);
  g_autoptr(SpvFrame) frame = spv_composition_frame(composition, at);
  double width = spv_outline_width(frame->outline), height = spv_outline_height(frame->outline);
  const SpvPatternInfo *info = spv_pattern_info(layer->pattern.kind);

  for (guint i = 0; i < info->n_measures; i++) {
    gboolean counts = measure_counts(&layer->pattern, i);
    show_row(&self->measures[i], counts);
    if (counts)
      spv_measure_entry_set_value(SPV_MEASURE_ENTRY(self->measures[i].field), layer->pattern.measures[i],
                                  width, height, spv_measure_effect(composition, at, info->measures[i].key));
  }
}

/* Rows are given in words only where they are asked for. */
static gboolean
text_counts(const SpvPattern *pattern, guint index) {
  gboolean rows = g_str_equal(spv_pattern_info(pattern->kind)->texts[index].key, "rows");

  return !rows || pattern->measures[SPV_CHARGE_ARRANGEMENT].value == SPV_ARRANGEMENT_ROWS;
}

static void
show_texts(SpvMeasuresPane *self, const SpvLayer *layer) {
  for (guint i = 0; i < spv_pattern_info(layer->pattern.kind)->n_texts; i++) {
    show_row(&self->texts[i], text_counts(&layer->pattern, i));
    spv_pattern_text_entry_show(SPV_PATTERN_TEXT_ENTRY(self->texts[i].field), layer->pattern.texts[i]);
  }
}

static void
show_smallest(SpvMeasuresPane *self, const SpvLayer *layer) {
  double size;

  if (!self->smallest.field)
    return;
  size = spv_smallest_figure(&self->last_smallest, &layer->pattern,
                             spv_session_scheme(spv_pane_session(SPV_PANE(self)))->finest_line);
  show_row(&self->smallest, isfinite(size) && size > 0);
  /* Rounded up: a hundredth less would be too small. What is less than a thousandth is the reckoning's. */
  g_autofree char *mm = spv_measure_text_with_unit((SpvMeasure){ SPV_UNIT_MM, ceil(size * 100 - 0.1) / 100 });
  g_autofree char *words = g_strdup_printf(_("Smallest for your line: %s"), mm);
  g_autofree char *unbroken = spv_screen_text_unbroken(words);
  gtk_label_set_text(GTK_LABEL(self->smallest.field), unbroken);
}

static void
show_tinctures(SpvMeasuresPane *self, const SpvLayer *layer, const SpvPanel *panel) {
  const SpvScheme *scheme = spv_session_scheme(spv_pane_session(SPV_PANE(self)));
  int across = layer->counterchange ? spv_panel_find_layer(panel, layer->counterchange) : -1;

  for (guint i = 0; i < spv_pattern_info(layer->pattern.kind)->n_slots; i++) {
    spv_tincture_choice_show(SPV_TINCTURE_CHOICE(self->tinctures[i].field), scheme, layer->tinctures[i]);
    gtk_widget_set_sensitive(self->tinctures[i].field, across < 0);
  }
  show_row(&self->crossed, across >= 0);
  if (across < 0)
    return;
  /* Translators: %s is the name of the layer across which this one is counterchanged. */
  g_autofree char *words = g_strdup_printf(_("Counterchanged: it shows the tinctures of “%s”."),
                                           panel->layers[across]->name);
  gtk_label_set_text(GTK_LABEL(self->crossed.field), words);
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
  show_kind(self, layer);
  show_measures(self, layer);
  show_smallest(self, layer);
  show_texts(self, layer);
  show_tinctures(self, layer, panel);
}

static void
spv_measures_pane_finalize(GObject *object) {
  SpvMeasuresPane *self = SPV_MEASURES_PANE(object);

  g_free(self->shown);
  spv_smallest_figure_clear(&self->last_smallest);
  G_OBJECT_CLASS(spv_measures_pane_parent_class)->finalize(object);
}

static void
spv_measures_pane_class_init(SpvMeasuresPaneClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->finalize = spv_measures_pane_finalize;
  SPV_PANE_CLASS(klass)->refill = spv_measures_pane_refill;
  g_type_ensure(SPV_TYPE_TIES_PANE);
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/measures-pane.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, heading);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, empty);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, locked);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, grid);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, kind_label);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, kind);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasuresPane, ties);
  gtk_widget_class_bind_template_callback(widget_class, on_kind_selected);
}

static void
spv_measures_pane_init(SpvMeasuresPane *self) {
  self->shown_group = -1;
  self->n_rows = 1;
  gtk_widget_init_template(GTK_WIDGET(self));
  g_object_bind_property(self, "session", self->ties, "session", G_BINDING_DEFAULT);
}

GtkWidget *
spv_measures_pane_new(void) {
  return g_object_new(SPV_TYPE_MEASURES_PANE, NULL);
}
