/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/panel-pane.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "window/measure-entry.h"
#include "window/pair-pane.h"
#include "window/screen-text.h"
#include "window/tip.h"

/* Where the fields stand in the grid; under each is a row for what is wrong with it. */
enum { ROW_WIDTH = 4, ROW_HEIGHT = 6, ROW_OWN = 8, ROW_DEPTH = 14 };

/* How deep a panel starts that the painter makes a cylinder or a dome: a part of its width, to be measured.
 */
#define DEPTH_START 0.125

struct _SpvPanelPane {
  SpvPane parent_instance;

  GtkWidget *content;
  GtkWidget *empty;
  GtkGrid *grid;
  GtkEntry *name;
  GtkDropDown *family;
  SpvMeasureEntry *width;
  SpvMeasureEntry *height;
  GtkDropDown *surface;
  GtkLabel *depth_label;
  SpvMeasureEntry *depth;
  GtkCheckButton *measured;
  GtkLabel *error;
  SpvPane *pair; /* the panel on the other side */

  SpvMeasureEntry *own[SPV_OUTLINE_MEASURES];
  int own_family;   /* whose own measures stand in the grid, or -1 */
  char *panel;      /* id of the panel that is shown */
  gboolean showing; /* we are setting the fields ourselves */
};

G_DEFINE_FINAL_TYPE(SpvPanelPane, spv_panel_pane, SPV_TYPE_PANE)

static const SpvMeasureSpec size_spec = {
  .key = "size",
  .label = N_("Size"),
  .type = SPV_MEASURE_LENGTH,
  .min = SPV_OUTLINE_MIN_MM,
  .max = SPV_OUTLINE_MAX_MM,
};

static const SpvMeasureSpec own_spec = {
  .key = "own",
  .label = N_("Own measure"),
  .type = SPV_MEASURE_LENGTH,
  .min = 0,
  .max = SPV_OUTLINE_MAX_MM,
};

static const SpvMeasureSpec depth_spec = {
  .key = "depth",
  .label = N_("Depth"),
  .type = SPV_MEASURE_LENGTH,
  .min = 0,
  .max = SPV_OUTLINE_MAX_MM / 2,
};

static const char *const surface_labels[SPV_N_SURFACES] = {
  [SPV_SURFACE_FLAT] = N_("Flat"),
  [SPV_SURFACE_CYLINDER] = N_("Cylinder"),
  [SPV_SURFACE_DOME] = N_("Dome"),
};

static const SpvPanel *
chosen(SpvPanelPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  return session ? spv_session_chosen_panel(session) : NULL;
}

static void
clear_error(SpvPanelPane *self) {
  gtk_widget_set_visible(GTK_WIDGET(self->error), FALSE);
}

/* Says under the field in ROW what is wrong with it. ENTRY may be NULL. */
static void
show_error(SpvPanelPane *self, int row, SpvMeasureEntry *entry, const char *message) {
  g_autofree char *sentence = spv_screen_text_sentence(message);
  GtkWidget *label = GTK_WIDGET(self->error);

  gtk_label_set_text(self->error, sentence);
  g_object_ref(label);
  gtk_grid_remove(self->grid, label);
  gtk_grid_attach(self->grid, label, 0, row + 1, 2, 1);
  g_object_unref(label);
  gtk_widget_set_visible(label, TRUE);
  if (entry)
    spv_measure_entry_set_error(entry, sentence);
}

/* Own measures that nobody took follow the size; those that the painter gave stay. */
static void
follow_preset(const SpvOutlineSpec *before, SpvOutlineSpec *after) {
  SpvOutlineSpec old, fresh;

  spv_outline_spec_preset(before->family, before->width, before->height, &old);
  spv_outline_spec_preset(after->family, after->width, after->height, &fresh);
  for (guint i = 0; i < SPV_OUTLINE_MEASURES; i++) {
    if (fabs(before->own[i] - old.own[i]) < 0.005)
      after->own[i] = fresh.own[i];
  }
}

/* Gives the panel outline SPEC and surface SURFACE if they go together; a size that the painter gives is a
 * size that the painter measured. */
static void
apply(SpvPanelPane *self, const SpvOutlineSpec *spec, const SpvSurface *surface, int row,
      SpvMeasureEntry *entry, const char *label, const char *what) {
  const SpvPanel *panel = chosen(self);
  g_autoptr(GError) error = NULL;

  clear_error(self);
  if (!spv_outline_spec_check(spec, &error) || !spv_surface_check(surface, spec->width, &error)) {
    show_error(self, row, entry, error->message);
    return;
  }
  g_autoptr(SpvPanel) outlined = spv_panel_with_outline(panel, spec);
  g_autoptr(SpvPanel) surfaced = spv_panel_with_surface(outlined, surface);
  g_autoptr(SpvPanel) measured = spv_panel_with_measured(surfaced, panel->measured || entry != NULL);
  g_autofree char *merge = entry ? g_strdup_printf("panel:%s:%s", panel->id, what) : NULL;
  spv_session_edit_panel(spv_pane_session(SPV_PANE(self)), measured, label, merge);
}

static void
on_size_changed(SpvMeasureEntry *entry, SpvPanelPane *self) {
  const SpvPanel *panel = chosen(self);
  gboolean across = entry == self->width;
  SpvOutlineSpec spec;

  if (!panel)
    return;
  spec = panel->outline;
  *(across ? &spec.width : &spec.height) = spv_measure_entry_value(entry).value;
  if (spec.family == SPV_OUTLINE_DISC)
    spec.height = spec.width;
  follow_preset(&panel->outline, &spec);
  apply(self, &spec, &panel->surface, across ? ROW_WIDTH : ROW_HEIGHT, entry,
        across ? _("Change panel width") : _("Change panel height"), across ? "width" : "height");
}

static void
on_own_changed(SpvMeasureEntry *entry, SpvPanelPane *self) {
  const SpvPanel *panel = chosen(self);
  guint index = entry == self->own[0] ? 0 : 1;
  SpvOutlineSpec spec;

  if (!panel)
    return;
  spec = panel->outline;
  spec.own[index] = spv_measure_entry_value(entry).value;
  g_autofree char *lower = spv_screen_text_inside(_(spv_outline_info(spec.family)->own[index].label));
  g_autofree char *label = g_strdup_printf(_("Change %s"), lower);
  apply(self, &spec, &panel->surface, ROW_OWN + 2 * (int) index, entry, label,
        spv_outline_info(spec.family)->own[index].key);
}

static void
on_depth_changed(SpvPanelPane *self) {
  const SpvPanel *panel = chosen(self);
  SpvSurface surface;

  if (!panel)
    return;
  surface = panel->surface;
  surface.depth = spv_measure_entry_value(self->depth).value;
  apply(self, &panel->outline, &surface, ROW_DEPTH, self->depth, _("Change panel depth"), "depth");
}

static void
on_family_selected(SpvPanelPane *self) {
  const SpvPanel *panel = chosen(self);
  guint selected = gtk_drop_down_get_selected(self->family);
  SpvOutlineSpec spec;

  if (self->showing || !panel || selected >= SPV_N_OUTLINE_FAMILIES ||
      (SpvOutlineFamily) selected == panel->outline.family)
    return;
  double height = selected == SPV_OUTLINE_DISC ? panel->outline.width : panel->outline.height;
  spv_outline_spec_preset((SpvOutlineFamily) selected, panel->outline.width, height, &spec);
  apply(self, &spec, &panel->surface, ROW_WIDTH - 2, NULL, _("Change outline"), NULL);
}

static void
on_surface_selected(SpvPanelPane *self) {
  const SpvPanel *panel = chosen(self);
  guint selected = gtk_drop_down_get_selected(self->surface);
  SpvSurface surface;

  if (self->showing || !panel || selected >= SPV_N_SURFACES ||
      (SpvSurfaceKind) selected == panel->surface.kind)
    return;
  surface = panel->surface;
  surface.kind = (SpvSurfaceKind) selected;
  if (surface.kind == SPV_SURFACE_FLAT)
    surface.depth = 0;
  else if (surface.depth <= 0)
    surface.depth = round(panel->outline.width * DEPTH_START * 20) / 20;
  if (surface.kind != SPV_SURFACE_FLAT && surface.depth <= 0)
    surface.depth = panel->outline.width * DEPTH_START;
  apply(self, &panel->outline, &surface, ROW_DEPTH - 2, NULL, _("Change surface"), NULL);
}

static void
on_measured_toggled(SpvPanelPane *self) {
  const SpvPanel *panel = chosen(self);

  if (self->showing || !panel)
    return;
  g_autoptr(SpvPanel) edited = spv_panel_with_measured(panel, gtk_check_button_get_active(self->measured));
  spv_session_edit_panel(spv_pane_session(SPV_PANE(self)), edited,
                         edited->measured ? _("Mark as measured") : _("Mark as not measured"), NULL);
}

static void
on_name_changed(SpvPanelPane *self) {
  const SpvPanel *panel = chosen(self);
  g_autofree char *name = spv_screen_text_name(gtk_editable_get_text(GTK_EDITABLE(self->name)));

  if (self->showing || !panel)
    return;
  clear_error(self);
  gtk_widget_remove_css_class(GTK_WIDGET(self->name), "error");
  if (*name == '\0') {
    gtk_widget_add_css_class(GTK_WIDGET(self->name), "error");
    show_error(self, 0, NULL, _("A panel needs a name."));
    return;
  }
  g_autoptr(SpvPanel) edited = spv_panel_with_name(panel, name);
  g_autofree char *merge = g_strdup_printf("panel:%s:name", panel->id);
  spv_session_edit_panel(spv_pane_session(SPV_PANE(self)), edited, _("Rename panel"), merge);
}

static void
show_name(SpvPanelPane *self, const char *name) {
  gtk_widget_remove_css_class(GTK_WIDGET(self->name), "error");
  self->showing = TRUE;
  if (!g_str_equal(name, gtk_editable_get_text(GTK_EDITABLE(self->name))))
    gtk_editable_set_text(GTK_EDITABLE(self->name), name);
  self->showing = FALSE;
}

/* What was refused goes away when its field is left. */
static void
on_settled(SpvPanelPane *self) {
  const SpvPanel *panel = chosen(self);

  if (!panel)
    return;
  clear_error(self);
  show_name(self, panel->name);
  spv_pane_settle(SPV_PANE(self));
}

static gboolean
on_name_key(GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
            SpvPanelPane *self) {
  (void) controller;
  (void) keycode;
  (void) state;
  if (keyval != GDK_KEY_Escape || !gtk_widget_has_css_class(GTK_WIDGET(self->name), "error"))
    return FALSE;
  on_settled(self);
  return TRUE;
}

/* Fields for the family's own measures, unless they are there already. */
static void
build_own(SpvPanelPane *self, SpvOutlineFamily family) {
  const SpvOutlineInfo *info = spv_outline_info(family);

  if (self->own_family == (int) family)
    return;
  for (guint i = 0; i < SPV_OUTLINE_MEASURES; i++) {
    int row = ROW_OWN + 2 * (int) i;
    for (int column = 0; column < 2; column++) {
      GtkWidget *old = gtk_grid_get_child_at(self->grid, column, row);
      if (old)
        gtk_grid_remove(self->grid, old);
    }
    self->own[i] = NULL;
    if (i >= info->n_own)
      continue;
    GtkWidget *label = gtk_label_new(_(info->own[i].label));
    GtkWidget *entry = spv_measure_entry_new();
    gtk_label_set_xalign(GTK_LABEL(label), 0);
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    spv_tip_set(label, _(info->own[i].hint));
    spv_tip_set(entry, _(info->own[i].hint));
    self->own[i] = SPV_MEASURE_ENTRY(entry);
    spv_measure_entry_set_spec(self->own[i], &own_spec, FALSE);
    spv_measure_entry_set_name(self->own[i], _(info->own[i].label));
    g_signal_connect(entry, "changed", G_CALLBACK(on_own_changed), self);
    g_signal_connect_swapped(entry, "settled", G_CALLBACK(on_settled), self);
    gtk_grid_attach(self->grid, label, 0, row, 1, 1);
    gtk_grid_attach(self->grid, entry, 1, row, 1, 1);
  }
  self->own_family = (int) family;
}

static void
show_length(SpvMeasureEntry *entry, double mm) {
  spv_measure_entry_set_value(entry, (SpvMeasure){ SPV_UNIT_MM, mm }, 0, 0, NAN);
}

static void
show_sizes(SpvPanelPane *self, const SpvPanel *panel) {
  gboolean disc = panel->outline.family == SPV_OUTLINE_DISC;
  gboolean flat = panel->surface.kind == SPV_SURFACE_FLAT;

  build_own(self, panel->outline.family);
  show_length(self->width, panel->outline.width);
  show_length(self->height, panel->outline.height);
  gtk_widget_set_sensitive(GTK_WIDGET(self->height), !disc);
  spv_tip_set(GTK_WIDGET(self->height), disc ? _("A disc is as high as it is wide.") : NULL);
  for (guint i = 0; i < SPV_OUTLINE_MEASURES; i++) {
    if (self->own[i])
      show_length(self->own[i], panel->outline.own[i]);
  }
  show_length(self->depth, panel->surface.depth);
  gtk_widget_set_visible(GTK_WIDGET(self->depth), !flat);
  gtk_widget_set_visible(GTK_WIDGET(self->depth_label), !flat);
}

static void
spv_panel_pane_refill(SpvPane *pane) {
  SpvPanelPane *self = SPV_PANEL_PANE(pane);
  SpvSession *session = spv_pane_session(pane);
  const SpvPanel *panel = spv_session_chosen_panel(session);
  g_autofree char *typed = spv_screen_text_name(gtk_editable_get_text(GTK_EDITABLE(self->name)));

  gtk_widget_set_visible(self->content, panel != NULL);
  gtk_widget_set_visible(self->empty, panel == NULL);
  if (!panel)
    return;
  if (g_strcmp0(self->panel, panel->id) != 0) {
    clear_error(self);
    g_free(self->panel);
    self->panel = g_strdup(panel->id);
    show_name(self, panel->name);
  } else if (*typed && !g_str_equal(typed, panel->name)) {
    show_name(self, panel->name);
  }
  show_sizes(self, panel);
  self->showing = TRUE;
  if (gtk_drop_down_get_selected(self->family) != (guint) panel->outline.family)
    gtk_drop_down_set_selected(self->family, (guint) panel->outline.family);
  if (gtk_drop_down_get_selected(self->surface) != (guint) panel->surface.kind)
    gtk_drop_down_set_selected(self->surface, (guint) panel->surface.kind);
  gtk_check_button_set_active(self->measured, panel->measured);
  self->showing = FALSE;
}

static void
spv_panel_pane_finalize(GObject *object) {
  g_free(SPV_PANEL_PANE(object)->panel);
  G_OBJECT_CLASS(spv_panel_pane_parent_class)->finalize(object);
}

static void
bind_children(GtkWidgetClass *widget_class) {
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, content);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, empty);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, grid);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, name);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, family);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, width);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, height);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, surface);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, depth_label);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, depth);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, measured);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, error);
  gtk_widget_class_bind_template_child(widget_class, SpvPanelPane, pair);
}

static void
spv_panel_pane_class_init(SpvPanelPaneClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->finalize = spv_panel_pane_finalize;
  SPV_PANE_CLASS(klass)->refill = spv_panel_pane_refill;
  g_type_ensure(SPV_TYPE_MEASURE_ENTRY);
  g_type_ensure(SPV_TYPE_PAIR_PANE);
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/panel-pane.ui");
  bind_children(widget_class);
  gtk_widget_class_bind_template_callback(widget_class, on_name_changed);
  gtk_widget_class_bind_template_callback(widget_class, on_name_key);
  gtk_widget_class_bind_template_callback(widget_class, on_settled);
  gtk_widget_class_bind_template_callback(widget_class, on_family_selected);
  gtk_widget_class_bind_template_callback(widget_class, on_size_changed);
  gtk_widget_class_bind_template_callback(widget_class, on_surface_selected);
  gtk_widget_class_bind_template_callback(widget_class, on_depth_changed);
  gtk_widget_class_bind_template_callback(widget_class, on_measured_toggled);
}

static void
fill_drop_downs(SpvPanelPane *self) {
  g_autoptr(GtkStringList) families = gtk_string_list_new(NULL);
  g_autoptr(GtkStringList) surfaces = gtk_string_list_new(NULL);

  for (guint i = 0; i < SPV_N_OUTLINE_FAMILIES; i++)
    gtk_string_list_append(families, _(spv_outline_info((SpvOutlineFamily) i)->label));
  for (guint i = 0; i < SPV_N_SURFACES; i++)
    gtk_string_list_append(surfaces, _(surface_labels[i]));
  self->showing = TRUE;
  gtk_drop_down_set_model(self->family, G_LIST_MODEL(families));
  gtk_drop_down_set_model(self->surface, G_LIST_MODEL(surfaces));
  self->showing = FALSE;
}

static void
spv_panel_pane_init(SpvPanelPane *self) {
  self->own_family = -1;
  gtk_widget_init_template(GTK_WIDGET(self));
  spv_measure_entry_set_spec(self->width, &size_spec, FALSE);
  spv_measure_entry_set_name(self->width, _("Width"));
  spv_measure_entry_set_spec(self->height, &size_spec, FALSE);
  spv_measure_entry_set_name(self->height, _("Height"));
  spv_measure_entry_set_spec(self->depth, &depth_spec, FALSE);
  spv_measure_entry_set_name(self->depth, _("Depth"));
  fill_drop_downs(self);
  g_object_bind_property(self, "session", self->pair, "session", G_BINDING_DEFAULT);
}

GtkWidget *
spv_panel_pane_new(void) {
  return g_object_new(SPV_TYPE_PANEL_PANE, NULL);
}
