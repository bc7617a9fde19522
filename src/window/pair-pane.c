/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/pair-pane.h"

#include <glib/gi18n-lib.h>

#include "window/panel-pair.h"
#include "window/tip.h"

struct _SpvPairPane {
  SpvPane parent_instance;

  GtkLabel *heading;
  GtkButton *size_button;
  GtkButton *design_button;
  GtkButton *mirror_button;
};

G_DEFINE_FINAL_TYPE(SpvPairPane, spv_pair_pane, SPV_TYPE_PANE)

/* Copies to the panel of the other side, as one edit. */
static void
copy_across(SpvPairPane *self, SpvScheme *(*copy)(const SpvScheme *scheme, guint from, guint to),
            const char *label) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  int from, to;

  if (!session || !spv_session_chosen_panel(session))
    return;
  from = spv_session_panel(session);
  to = spv_panel_pair_find(spv_session_scheme(session), (guint) from);
  if (to < 0)
    return;
  g_autoptr(SpvScheme) edited = copy(spv_session_scheme(session), (guint) from, (guint) to);
  if (edited)
    spv_session_push(session, edited, label, NULL);
}

static void
on_size_clicked(SpvPairPane *self) {
  copy_across(self, spv_panel_pair_copy_size, _("Copy size across"));
}

static void
on_design_clicked(SpvPairPane *self) {
  copy_across(self, spv_panel_pair_copy_design, _("Copy design across"));
}

static void
on_mirror_clicked(SpvPairPane *self) {
  copy_across(self, spv_panel_pair_copy_design_mirrored, _("Copy design across, mirrored"));
}

/* COPIED is SCHEME with the design copied across: SCHEME itself when it is there already, NULL when it may
 * not be. */
static void
show_copy(GtkButton *button, const SpvScheme *copied, const SpvScheme *scheme, const char *does,
          const char *done) {
  gtk_widget_set_sensitive(GTK_WIDGET(button), copied && copied != scheme);
  spv_tip_set(GTK_WIDGET(button), !copied            ? _("A layer there is locked: unlock it first")
                                  : copied != scheme ? does
                                                     : done);
}

static void
spv_pair_pane_refill(SpvPane *pane) {
  SpvPairPane *self = SPV_PAIR_PANE(pane);
  SpvSession *session = spv_pane_session(pane);
  const SpvScheme *scheme = spv_session_scheme(session);
  guint index = (guint) spv_session_panel(session);
  int other = spv_session_chosen_panel(session) ? spv_panel_pair_find(scheme, index) : -1;

  gtk_widget_set_visible(GTK_WIDGET(self), other >= 0);
  if (other < 0)
    return;
  g_autoptr(SpvScheme) sized = spv_panel_pair_copy_size(scheme, index, (guint) other);
  g_autoptr(SpvScheme) designed = spv_panel_pair_copy_design(scheme, index, (guint) other);
  g_autoptr(SpvScheme) mirrored = spv_panel_pair_copy_design_mirrored(scheme, index, (guint) other);
  gtk_label_set_text(self->heading, scheme->panels[other]->name);
  show_copy(self->size_button, sized, scheme, _("Give it this panel's outline, size and surface"),
            _("It has this panel's outline, size and surface"));
  show_copy(self->design_button, designed, scheme, _("Put this panel's layers in place of its own"),
            _("It has this panel's layers"));
  show_copy(self->mirror_button, mirrored, scheme,
            _("Put the mirror image of this panel's layers in place of its own"),
            _("It has the mirror image of this panel's layers"));
}

static void
spv_pair_pane_class_init(SpvPairPaneClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  SPV_PANE_CLASS(klass)->refill = spv_pair_pane_refill;
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/pair-pane.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvPairPane, heading);
  gtk_widget_class_bind_template_child(widget_class, SpvPairPane, size_button);
  gtk_widget_class_bind_template_child(widget_class, SpvPairPane, design_button);
  gtk_widget_class_bind_template_child(widget_class, SpvPairPane, mirror_button);
  gtk_widget_class_bind_template_callback(widget_class, on_size_clicked);
  gtk_widget_class_bind_template_callback(widget_class, on_design_clicked);
  gtk_widget_class_bind_template_callback(widget_class, on_mirror_clicked);
}

static void
spv_pair_pane_init(SpvPairPane *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  gtk_widget_set_visible(GTK_WIDGET(self), FALSE);
}
