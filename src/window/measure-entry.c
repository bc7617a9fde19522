/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/measure-entry.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "window/measure-text.h"
#include "window/tip.h"

#define PAGE_STEPS 5

/* After this, ms, words that came from outside count as given: a field that never had the focus
 * never loses it. */
#define SETTLE_MS 400

struct _SpvMeasureEntry {
  GtkWidget parent_instance;

  GtkWidget *field;
  GtkEntry *text; /* an entry within the field: only that has its text read out and set from outside */
  GtkLabel *unit_label;
  GtkMenuButton *unit_button;
  GtkDropDown *choice;

  GSimpleActionGroup *actions; /* "measure" */

  SpvMeasureSpec spec;
  gboolean optional;
  SpvMeasure value;
  double width, height; /* of the panel, mm */
  double effect;        /* what the value comes to, in mm, degrees or as a count; NAN when unknown */

  guint settle_source; /* until then words from outside may still change */

  gboolean typing;  /* the words in the field are the painter's, not ours */
  gboolean syncing; /* we are setting the words or the choice ourselves */
  char *error;
};

G_DEFINE_FINAL_TYPE(SpvMeasureEntry, spv_measure_entry, GTK_TYPE_WIDGET)

enum { SIGNAL_CHANGED, SIGNAL_SETTLED, N_SIGNALS };
static guint signals[N_SIGNALS];

/* The first item of the choice is "auto" only where the pattern works the choice out by itself. */
static guint
choice_offset(SpvMeasureEntry *self) {
  return self->spec.preset.unit == SPV_UNIT_AUTO && self->optional ? 1 : 0;
}

static void
show_error(SpvMeasureEntry *self, const char *message) {
  g_free(self->error);
  self->error = g_strdup(message);
  gtk_accessible_update_state(GTK_ACCESSIBLE(self->text), GTK_ACCESSIBLE_STATE_INVALID,
                              message ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  spv_tip_set(self->field, message);
  if (message)
    gtk_widget_add_css_class(self->field, "error");
  else
    gtk_widget_remove_css_class(self->field, "error");
}

/* The number that stands for the value in the field. */
static SpvMeasure
shown_value(SpvMeasureEntry *self) {
  if (self->value.unit != SPV_UNIT_AUTO)
    return self->value;
  if (!isfinite(self->effect))
    return self->value;
  switch (self->spec.type) {
  case SPV_MEASURE_LENGTH:
    return (SpvMeasure){ SPV_UNIT_MM, self->effect };
  case SPV_MEASURE_ANGLE:
    return (SpvMeasure){ SPV_UNIT_DEGREES, self->effect };
  case SPV_MEASURE_COUNT:
  case SPV_MEASURE_CHOICE:
    break;
  }
  return (SpvMeasure){ SPV_UNIT_PLAIN, self->effect };
}

static void
sync_unit(SpvMeasureEntry *self) {
  const char *unit = spv_measure_text_unit(self->value.unit);
  gboolean menu = self->spec.type == SPV_MEASURE_LENGTH && self->spec.basis != SPV_BASIS_NONE;

  gtk_widget_set_visible(GTK_WIDGET(self->unit_button), menu);
  gtk_widget_set_visible(GTK_WIDGET(self->unit_label), !menu && *unit);
  gtk_label_set_text(self->unit_label, unit);
  if (g_strcmp0(unit, gtk_menu_button_get_label(self->unit_button)) != 0)
    gtk_menu_button_set_label(self->unit_button, unit);
  if (self->value.unit == SPV_UNIT_AUTO)
    gtk_widget_add_css_class(self->field, "auto");
  else
    gtk_widget_remove_css_class(self->field, "auto");
  if (menu) {
    const char *state = self->value.unit == SPV_UNIT_MM         ? "mm"
                        : self->value.unit == SPV_UNIT_RELATIVE ? "relative"
                                                                : "auto";
    GAction *action = g_action_map_lookup_action(G_ACTION_MAP(self->actions), "unit");
    g_simple_action_set_state(G_SIMPLE_ACTION(action), g_variant_new_string(state));
  }
}

static void
sync_choice(SpvMeasureEntry *self) {
  guint selected = GTK_INVALID_LIST_POSITION;

  if (self->value.unit == SPV_UNIT_AUTO && choice_offset(self) == 1)
    selected = 0;
  else if (isfinite(self->effect))
    selected = (guint) self->effect + choice_offset(self);
  self->syncing = TRUE;
  gtk_drop_down_set_selected(self->choice, selected);
  self->syncing = FALSE;
}

/* Puts our own words for the value in the field. */
static void
sync_text(SpvMeasureEntry *self) {
  g_autofree char *number = spv_measure_text_number(shown_value(self));

  self->typing = FALSE;
  show_error(self, NULL);
  self->syncing = TRUE;
  if (g_strcmp0(number, gtk_editable_get_text(GTK_EDITABLE(self->text))) != 0)
    gtk_editable_set_text(GTK_EDITABLE(self->text), number);
  self->syncing = FALSE;
  sync_unit(self);
}

/* The painter gives VALUE. What it comes to is the owner's to say, in answer to "changed". */
static void
give(SpvMeasureEntry *self, SpvMeasure value) {
  if (spv_measure_equal(value, self->value))
    return;
  self->value = value;
  sync_unit(self);
  g_signal_emit(self, signals[SIGNAL_CHANGED], 0);
}

static void
spv_measure_entry_settle(SpvMeasureEntry *self) {
  SpvMeasure value;

  g_clear_handle_id(&self->settle_source, g_source_remove);
  if (self->typing && self->optional &&
      spv_measure_text_parse(&self->spec, gtk_editable_get_text(GTK_EDITABLE(self->text)), self->value.unit,
                             &value, NULL) &&
      value.unit == SPV_UNIT_AUTO)
    give(self, value);
  sync_text(self);
  g_signal_emit(self, signals[SIGNAL_SETTLED], 0);
}

static gboolean
on_settle_timeout(gpointer entry) {
  SPV_MEASURE_ENTRY(entry)->settle_source = 0;
  spv_measure_entry_settle(entry);
  return G_SOURCE_REMOVE;
}

/* Whether the painter is in the field. */
static gboolean
has_focus(SpvMeasureEntry *self) {
  return (gtk_widget_get_state_flags(GTK_WIDGET(self->text)) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;
}

static void
on_text_changed(SpvMeasureEntry *self) {
  g_autoptr(GError) error = NULL;
  SpvMeasure value;

  if (self->syncing)
    return;
  self->typing = TRUE;
  g_clear_handle_id(&self->settle_source, g_source_remove);
  if (!spv_measure_text_parse(&self->spec, gtk_editable_get_text(GTK_EDITABLE(self->text)), self->value.unit,
                              &value, &error)) {
    show_error(self, error->message);
    return;
  }
  show_error(self, NULL);
  if (!has_focus(self))
    self->settle_source = g_timeout_add(SETTLE_MS, on_settle_timeout, self);
  /* An empty field may be on its way to another number; it means AUTO only once it is left so. */
  if (value.unit != SPV_UNIT_AUTO)
    give(self, value);
}

/* Where stepping or a change of unit starts when the value is AUTO. */
static SpvMeasure
starting_value(SpvMeasureEntry *self) {
  SpvMeasure value = shown_value(self);

  if (value.unit != SPV_UNIT_AUTO)
    return value;
  switch (self->spec.type) {
  case SPV_MEASURE_LENGTH:
    value.unit = SPV_UNIT_MM;
    break;
  case SPV_MEASURE_ANGLE:
    value.unit = SPV_UNIT_DEGREES;
    break;
  case SPV_MEASURE_COUNT:
  case SPV_MEASURE_CHOICE:
    value.unit = SPV_UNIT_PLAIN;
    break;
  }
  value.value = CLAMP(0, self->spec.min, self->spec.max);
  return value;
}

static void
step(SpvMeasureEntry *self, int steps) {
  SpvMeasure value = spv_measure_text_step(&self->spec, starting_value(self), steps);

  if (!spv_measure_is_valid(&self->spec, value))
    return;
  self->typing = FALSE;
  give(self, value);
  sync_text(self);
}

static gboolean
on_key_pressed(GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
               SpvMeasureEntry *self) {
  (void) controller;
  (void) keycode;
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK))
    return FALSE;
  switch (keyval) {
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    step(self, 1);
    return TRUE;
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    step(self, -1);
    return TRUE;
  case GDK_KEY_Page_Up:
  case GDK_KEY_KP_Page_Up:
    step(self, PAGE_STEPS);
    return TRUE;
  case GDK_KEY_Page_Down:
  case GDK_KEY_KP_Page_Down:
    step(self, -PAGE_STEPS);
    return TRUE;
  case GDK_KEY_Escape:
    if (!self->typing)
      return FALSE;
    sync_text(self);
    g_signal_emit(self, signals[SIGNAL_SETTLED], 0);
    return TRUE;
  default:
    return FALSE;
  }
}

/* Only a focused field scrolls its number: otherwise the wheel belongs to the pane. */
static gboolean
on_scroll(GtkEventControllerScroll *controller, double dx, double dy, SpvMeasureEntry *self) {
  (void) controller;
  (void) dx;
  if (dy == 0 || !has_focus(self))
    return FALSE;
  step(self, dy < 0 ? 1 : -1);
  return TRUE;
}

static void
on_choice_selected(SpvMeasureEntry *self) {
  guint selected = gtk_drop_down_get_selected(self->choice);
  guint offset = choice_offset(self);

  if (self->syncing || selected == GTK_INVALID_LIST_POSITION)
    return;
  if (selected < offset)
    give(self, (SpvMeasure){ SPV_UNIT_AUTO, 0 });
  else
    give(self, (SpvMeasure){ SPV_UNIT_PLAIN, selected - offset });
  g_signal_emit(self, signals[SIGNAL_SETTLED], 0);
}

/* The menu in the field's end: another unit for the same size. */
static void
on_unit_chosen(GSimpleAction *action, GVariant *parameter, gpointer data) {
  SpvMeasureEntry *self = SPV_MEASURE_ENTRY(data);
  const char *name = g_variant_get_string(parameter, NULL);
  double basis = spv_measure_text_basis(&self->spec, self->width, self->height);
  SpvMeasure value = { SPV_UNIT_AUTO, 0 };

  (void) action;
  if (g_str_equal(name, "mm"))
    value = spv_measure_text_convert(starting_value(self), SPV_UNIT_MM, basis);
  else if (g_str_equal(name, "relative"))
    value = spv_measure_text_convert(starting_value(self), SPV_UNIT_RELATIVE, basis);
  if (value.unit != SPV_UNIT_AUTO) {
    double min, max;
    spv_measure_text_limits(&self->spec, value.unit, &min, &max);
    value.value = CLAMP(value.value, min, max);
  }
  give(self, value);
  sync_text(self);
  g_signal_emit(self, signals[SIGNAL_SETTLED], 0);
}

static void
fill_unit_menu(SpvMeasureEntry *self) {
  g_autoptr(GMenu) menu = g_menu_new();
  const char *relative = "";

  switch (self->spec.basis) {
  case SPV_BASIS_WIDTH:
    /* xgettext:no-c-format */
    relative = _("% of the width");
    break;
  case SPV_BASIS_HEIGHT:
    /* xgettext:no-c-format */
    relative = _("% of the height");
    break;
  case SPV_BASIS_SMALLER:
    /* xgettext:no-c-format */
    relative = _("% of the smaller side");
    break;
  case SPV_BASIS_NONE:
    return;
  }
  g_menu_append(menu, "mm", "measure.unit::mm");
  g_menu_append(menu, relative, "measure.unit::relative");
  if (self->optional)
    g_menu_append(menu, _("auto"), "measure.unit::auto");
  gtk_menu_button_set_menu_model(self->unit_button, G_MENU_MODEL(menu));
}

static void
fill_choices(SpvMeasureEntry *self) {
  g_autoptr(GtkStringList) model = gtk_string_list_new(NULL);

  if (choice_offset(self) == 1)
    gtk_string_list_append(model, _("auto"));
  for (guint i = 0; self->spec.choices && self->spec.choices[i]; i++)
    gtk_string_list_append(model, _(self->spec.choices[i]));
  self->syncing = TRUE;
  gtk_drop_down_set_model(self->choice, G_LIST_MODEL(model));
  self->syncing = FALSE;
}

void
spv_measure_entry_set_spec(SpvMeasureEntry *self, const SpvMeasureSpec *spec, gboolean optional) {
  gboolean is_choice = spec->type == SPV_MEASURE_CHOICE;

  g_return_if_fail(SPV_IS_MEASURE_ENTRY(self));
  self->spec = *spec;
  self->optional = optional;
  gtk_widget_set_visible(self->field, !is_choice);
  gtk_widget_set_visible(GTK_WIDGET(self->choice), is_choice);
  if (is_choice)
    fill_choices(self);
  else
    fill_unit_menu(self);
}

void
spv_measure_entry_set_value(SpvMeasureEntry *self, SpvMeasure value, double width, double height,
                            double worked_out) {
  gboolean same;
  double effect;

  g_return_if_fail(SPV_IS_MEASURE_ENTRY(self));
  same = spv_measure_equal(value, self->value);
  effect = spv_measure_resolve(&self->spec, value, width, height, worked_out);
  self->value = value;
  self->width = width;
  self->height = height;
  self->effect = self->spec.type == SPV_MEASURE_ANGLE ? effect * 180 / G_PI : effect;
  if (self->spec.type == SPV_MEASURE_CHOICE)
    sync_choice(self);
  else if (!self->typing || !same)
    sync_text(self);
}

SpvMeasure
spv_measure_entry_value(SpvMeasureEntry *self) {
  g_return_val_if_fail(SPV_IS_MEASURE_ENTRY(self), (SpvMeasure){ 0 });
  return self->value;
}

void
spv_measure_entry_set_error(SpvMeasureEntry *self, const char *message) {
  g_return_if_fail(SPV_IS_MEASURE_ENTRY(self));
  show_error(self, message);
}

gboolean
spv_measure_entry_has_error(SpvMeasureEntry *self) {
  g_return_val_if_fail(SPV_IS_MEASURE_ENTRY(self), FALSE);
  return self->error != NULL;
}

void
spv_measure_entry_set_name(SpvMeasureEntry *self, const char *name) {
  g_autofree char *unit = g_strdup_printf(_("Unit of %s"), name);

  g_return_if_fail(SPV_IS_MEASURE_ENTRY(self));
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->text), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->choice), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->unit_button), GTK_ACCESSIBLE_PROPERTY_LABEL, unit, -1);
}

static gboolean
spv_measure_entry_grab_focus(GtkWidget *widget) {
  SpvMeasureEntry *self = SPV_MEASURE_ENTRY(widget);

  if (self->spec.type == SPV_MEASURE_CHOICE)
    return gtk_widget_grab_focus(GTK_WIDGET(self->choice));
  return gtk_widget_grab_focus(GTK_WIDGET(self->text));
}

static gboolean
spv_measure_entry_mnemonic_activate(GtkWidget *widget, gboolean cycling) {
  (void) cycling;
  return gtk_widget_grab_focus(widget);
}

static void
spv_measure_entry_dispose(GObject *object) {
  SpvMeasureEntry *self = SPV_MEASURE_ENTRY(object);
  GtkWidget *child;

  g_clear_handle_id(&self->settle_source, g_source_remove);
  while ((child = gtk_widget_get_first_child(GTK_WIDGET(self))))
    gtk_widget_unparent(child);
  g_clear_object(&self->actions);
  g_clear_pointer(&self->error, g_free);
  G_OBJECT_CLASS(spv_measure_entry_parent_class)->dispose(object);
}

static void
spv_measure_entry_class_init(SpvMeasureEntryClass *klass) {
  GObjectClass *object_class = G_OBJECT_CLASS(klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  object_class->dispose = spv_measure_entry_dispose;
  widget_class->grab_focus = spv_measure_entry_grab_focus;
  widget_class->mnemonic_activate = spv_measure_entry_mnemonic_activate;

  signals[SIGNAL_CHANGED] = g_signal_new("changed", G_TYPE_FROM_CLASS(klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_SETTLED] = g_signal_new("settled", G_TYPE_FROM_CLASS(klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/measure-entry.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvMeasureEntry, field);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasureEntry, text);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasureEntry, unit_label);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasureEntry, unit_button);
  gtk_widget_class_bind_template_child(widget_class, SpvMeasureEntry, choice);
  gtk_widget_class_bind_template_callback(widget_class, on_text_changed);
  gtk_widget_class_bind_template_callback(widget_class, spv_measure_entry_settle);
  gtk_widget_class_bind_template_callback(widget_class, on_key_pressed);
  gtk_widget_class_bind_template_callback(widget_class, on_scroll);
  gtk_widget_class_bind_template_callback(widget_class, on_choice_selected);
}

static void
spv_measure_entry_init(SpvMeasureEntry *self) {
  static const GActionEntry entries[] = { { "unit", on_unit_chosen, "s", "'mm'", NULL, { 0 } } };
  GSimpleActionGroup *group = g_simple_action_group_new();

  self->effect = NAN;
  gtk_widget_init_template(GTK_WIDGET(self));
  g_action_map_add_action_entries(G_ACTION_MAP(group), entries, G_N_ELEMENTS(entries), self);
  gtk_widget_insert_action_group(GTK_WIDGET(self), "measure", G_ACTION_GROUP(group));
  self->actions = group;
}

GtkWidget *
spv_measure_entry_new(void) {
  return g_object_new(SPV_TYPE_MEASURE_ENTRY, NULL);
}
