/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/tincture-row.h"

#include <glib/gi18n-lib.h>

#include "window/measure-text.h"
#include "window/screen-text.h"
#include "window/tincture-colour.h"
#include "window/tincture-fur.h"
#include "window/tincture-hatch.h"
#include "window/tincture-swatch.h"
#include "window/tip.h"

struct _SpvTinctureRow {
  GtkListBoxRow parent_instance;

  GtkBox *box;
  GtkButton *colour_button;
  SpvTinctureSwatch *swatch;
  GtkEntry *name;
  GtkDropDown *hatch; /* of a plain tincture */
  GtkButton *remove_button;
  GtkMenuButton
      *pitch;          /* of a fur, in the hatch's place: says how fine it is, and opens what it is made of */
  SpvTinctureFur *fur; /* what it opens; or NULL */

  SpvTinctureItem *item;
  SpvSession *session;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE(SpvTinctureRow, spv_tincture_row, GTK_TYPE_LIST_BOX_ROW)

/* The tincture of now; NULL when it has gone. */
static const SpvTincture *
tincture_of(SpvTinctureRow *self, guint *index) {
  const SpvScheme *scheme;
  int found;

  if (!self->session)
    return NULL;
  scheme = spv_session_scheme(self->session);
  found = spv_scheme_find_tincture(scheme, spv_tincture_item_id(self->item));
  if (found < 0)
    return NULL;
  *index = (guint) found;
  return &scheme->tinctures[found];
}

static void
push(SpvTinctureRow *self, guint index, const SpvTincture *tincture, const char *label, const char *merge) {
  g_autoptr(SpvScheme) edited = spv_scheme_with_tincture(spv_session_scheme(self->session), index, tincture);
  spv_session_push(self->session, edited, label, merge);
}

static void
show_name_error(SpvTinctureRow *self, const char *message) {
  spv_tip_set(GTK_WIDGET(self->name), message);
  if (message)
    gtk_widget_add_css_class(GTK_WIDGET(self->name), "error");
  else
    gtk_widget_remove_css_class(GTK_WIDGET(self->name), "error");
}

/* The name in the field; free with g_free(). */
static char *
typed_name(SpvTinctureRow *self) {
  return spv_screen_text_name(gtk_editable_get_text(GTK_EDITABLE(self->name)));
}

static void
on_name_changed(SpvTinctureRow *self) {
  guint index;
  const SpvTincture *now = tincture_of(self, &index);
  g_autofree char *name = typed_name(self), *merge = NULL;
  SpvTincture edited;

  if (self->showing || !now)
    return;
  show_name_error(self, *name ? NULL : _("A tincture needs a name."));
  if (*name == '\0' || g_str_equal(name, now->name))
    return;
  edited = *now;
  edited.name = name;
  merge = g_strdup_printf("tincture-name:%s", now->id);
  push(self, index, &edited, _("Rename tincture"), merge);
}

static void
show_name(SpvTinctureRow *self, const char *name) {
  self->showing = TRUE;
  gtk_editable_set_text(GTK_EDITABLE(self->name), name);
  self->showing = FALSE;
  show_name_error(self, NULL);
}

static void
on_name_settled(SpvTinctureRow *self) {
  guint index;
  const SpvTincture *now = tincture_of(self, &index);

  if (!now)
    return;
  if (!g_str_equal(gtk_editable_get_text(GTK_EDITABLE(self->name)), now->name))
    show_name(self, now->name);
  spv_session_settle(self->session);
}

static gboolean
on_name_key(GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
            SpvTinctureRow *self) {
  (void) controller;
  (void) keycode;
  (void) state;
  if (keyval != GDK_KEY_Escape || !gtk_widget_has_css_class(GTK_WIDGET(self->name), "error"))
    return FALSE;
  on_name_settled(self);
  return TRUE;
}

static void
on_hatch_selected(SpvTinctureRow *self) {
  guint index, selected = gtk_drop_down_get_selected(self->hatch);
  const SpvTincture *now = tincture_of(self, &index);
  SpvTincture edited;

  if (self->showing || !now || selected >= SPV_N_HATCHES || (SpvHatch) selected == now->hatch)
    return;
  edited = *now;
  edited.hatch = (SpvHatch) selected;
  push(self, index, &edited, _("Change hatch"), NULL);
}

static void
on_colour_clicked(SpvTinctureRow *self) {
  guint index;
  const SpvTincture *now = tincture_of(self, &index);

  if (!now)
    return;
  if (self->fur)
    gtk_menu_button_popup(self->pitch);
  else
    spv_tincture_colour_ask(GTK_WIDGET(self), self->session, spv_tincture_item_id(self->item));
}

static void
on_remove_clicked(SpvTinctureRow *self) {
  guint index;

  if (!tincture_of(self, &index))
    return;
  g_autoptr(SpvScheme)
      edited = spv_scheme_with_tincture_removed(spv_session_scheme(self->session), index, NULL);
  if (edited)
    spv_session_push(self->session, edited, _("Remove tincture"), NULL);
}

static void
name_for_reader(gpointer widget, const char *format, const char *tincture) {
  g_autofree char *words = g_strdup_printf(format, tincture);
  gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

static void
show_names(SpvTinctureRow *self, const SpvTincture *tincture) {
  gboolean fur = tincture->fur != SPV_FUR_NONE;
  g_autofree char *colour = g_strdup_printf(fur ? _("Fur of %s") : _("Colour of %s"), tincture->name);

  if (!fur) {
    g_autofree char *hatch_tip = g_strdup_printf(_("Hatch where there is no colour. %s"),
                                                 spv_tincture_hatch_label(tincture->hatch));
    spv_tip_set(GTK_WIDGET(self->hatch), hatch_tip);
  }
  if (g_strcmp0(colour, gtk_widget_get_tooltip_text(GTK_WIDGET(self->colour_button))) == 0)
    return;
  spv_tip_set_as_name(GTK_WIDGET(self->colour_button), colour);
  name_for_reader(self->name, _("Name of %s"), tincture->name);
  name_for_reader(self->hatch, _("Hatch of %s"), tincture->name);
  name_for_reader(self->remove_button, _("Remove “%s”"), tincture->name);
}

/* Only an unused tincture can go; otherwise the button says where it is used. */
static void
show_removable(SpvTinctureRow *self, guint index, const SpvTincture *tincture) {
  g_autoptr(GError) error = NULL;
  g_autoptr(SpvScheme)
      without = spv_scheme_with_tincture_removed(spv_session_scheme(self->session), index, &error);
  g_autofree char *words = without ? g_strdup_printf(_("Remove “%s”"), tincture->name)
                                   : g_strdup(error->message);

  gtk_widget_set_sensitive(GTK_WIDGET(self->remove_button), without != NULL);
  spv_tip_set(GTK_WIDGET(self->remove_button), words);
}

/* How fine a fur is, on its button. */
static void
show_pitch(SpvTinctureRow *self, const SpvTincture *fur) {
  double line = spv_session_scheme(self->session)->finest_line;
  double mm = fur->pitch > 0 ? fur->pitch : spv_fur_smallest_pitch(fur->fur, line);
  g_autofree char *pitch = spv_measure_text_with_unit((SpvMeasure){ SPV_UNIT_MM, mm });
  g_autofree char *unbroken = spv_screen_text_unbroken(pitch);
  /* Translators: a fur and its pitch: "Ermine, 1.20 mm from spot to spot". */
  g_autofree char *words = g_strdup_printf(_("%s, %s from spot to spot"), spv_tincture_fur_label(fur->fur),
                                           unbroken);

  if (g_strcmp0(unbroken, gtk_menu_button_get_label(self->pitch)) != 0)
    gtk_menu_button_set_label(self->pitch, unbroken);
  spv_tip_set_as_name(GTK_WIDGET(self->pitch), words);
}

/* A fur has no colour and no hatch of its own, but what it is made of. */
static void
show_fur(SpvTinctureRow *self, const SpvTincture *tincture) {
  gboolean fur = tincture->fur != SPV_FUR_NONE;

  gtk_widget_set_visible(GTK_WIDGET(self->hatch), !fur);
  gtk_widget_set_visible(GTK_WIDGET(self->pitch), fur);
  if (fur && !self->fur) {
    self->fur = SPV_TINCTURE_FUR(spv_tincture_fur_new(self->session, tincture->id));
    gtk_menu_button_set_popover(self->pitch, GTK_WIDGET(self->fur));
  } else if (!fur && self->fur) {
    gtk_menu_button_set_popover(self->pitch, NULL);
    self->fur = NULL;
  } else if (fur) {
    spv_tincture_fur_refill(self->fur);
  }
  if (fur)
    show_pitch(self, tincture);
}

void
spv_tincture_row_refill(SpvTinctureRow *self) {
  guint index;
  const SpvTincture *now;
  g_autofree char *typed = NULL;

  g_return_if_fail(SPV_IS_TINCTURE_ROW(self));
  now = tincture_of(self, &index);
  if (!now)
    return;
  typed = typed_name(self);
  /* An empty field is on its way to another name: it is put right when it is left. */
  if (!g_str_equal(typed, now->name) && *typed)
    show_name(self, now->name);
  SpvTinctureLook look = spv_tincture_look(spv_session_scheme(self->session), now);
  spv_tincture_swatch_set_looks(self->swatch, &look, 1);
  show_fur(self, now);
  self->showing = TRUE;
  if (now->fur == SPV_FUR_NONE && gtk_drop_down_get_selected(self->hatch) != (guint) now->hatch)
    gtk_drop_down_set_selected(self->hatch, (guint) now->hatch);
  self->showing = FALSE;
  show_names(self, now);
  show_removable(self, index, now);
}

static void
spv_tincture_row_dispose(GObject *object) {
  g_clear_object(&SPV_TINCTURE_ROW(object)->session);
  G_OBJECT_CLASS(spv_tincture_row_parent_class)->dispose(object);
}

static void
spv_tincture_row_finalize(GObject *object) {
  g_clear_object(&SPV_TINCTURE_ROW(object)->item);
  G_OBJECT_CLASS(spv_tincture_row_parent_class)->finalize(object);
}

static void
spv_tincture_row_class_init(SpvTinctureRowClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->dispose = spv_tincture_row_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_tincture_row_finalize;
  g_type_ensure(SPV_TYPE_TINCTURE_SWATCH);
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/tincture-row.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvTinctureRow, box);
  gtk_widget_class_bind_template_child(widget_class, SpvTinctureRow, colour_button);
  gtk_widget_class_bind_template_child(widget_class, SpvTinctureRow, swatch);
  gtk_widget_class_bind_template_child(widget_class, SpvTinctureRow, name);
  gtk_widget_class_bind_template_child(widget_class, SpvTinctureRow, remove_button);
  gtk_widget_class_bind_template_callback(widget_class, on_name_changed);
  gtk_widget_class_bind_template_callback(widget_class, on_name_settled);
  gtk_widget_class_bind_template_callback(widget_class, on_name_key);
  gtk_widget_class_bind_template_callback(widget_class, on_colour_clicked);
  gtk_widget_class_bind_template_callback(widget_class, on_remove_clicked);
}

static void
spv_tincture_row_init(SpvTinctureRow *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  self->hatch = spv_tincture_hatch_drop_down_new();
  gtk_box_insert_child_after(self->box, GTK_WIDGET(self->hatch), GTK_WIDGET(self->name));
  self->pitch = GTK_MENU_BUTTON(gtk_menu_button_new());
  gtk_widget_set_visible(GTK_WIDGET(self->pitch), FALSE);
  gtk_box_insert_child_after(self->box, GTK_WIDGET(self->pitch), GTK_WIDGET(self->hatch));
  g_signal_connect_swapped(self->hatch, "notify::selected", G_CALLBACK(on_hatch_selected), self);
}

GtkWidget *
spv_tincture_row_new(SpvTinctureItem *item, SpvSession *session) {
  SpvTinctureRow *self = g_object_new(SPV_TYPE_TINCTURE_ROW, NULL);

  self->item = g_object_ref(item);
  self->session = g_object_ref(session);
  show_name(self, spv_tincture_item_name(item));
  spv_tincture_row_refill(self);
  return GTK_WIDGET(self);
}
