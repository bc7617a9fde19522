/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/finding-row.h"

#include <glib/gi18n-lib.h>

#include "window/tip.h"

struct _SpvFindingRow {
  GtkListBoxRow parent_instance;

  GtkLabel *panel;
  GtkLabel *message;
  GtkWidget *remedy_box;
  GtkLabel *remedy;
  GtkButton *use_button;

  SpvFindingItem *item;
  SpvSession *session;
};

G_DEFINE_FINAL_TYPE(SpvFindingRow, spv_finding_row, GTK_TYPE_LIST_BOX_ROW)

static void
on_use_clicked(SpvFindingRow *self) {
  /* The row may go while its finding is mended. */
  SpvFinding finding = *spv_finding_item_finding(self->item);

  if (self->session)
    spv_session_apply_finding(self->session, &finding);
}

static void
show_severity(SpvFindingRow *self, SpvSeverity severity) {
  const char *word = "";

  switch (severity) {
  case SPV_SEVERITY_NOTE:
    gtk_widget_add_css_class(GTK_WIDGET(self), "spv-note");
    word = _("Note");
    break;
  case SPV_SEVERITY_WARNING:
    gtk_widget_add_css_class(GTK_WIDGET(self), "spv-warning");
    word = _("Warning");
    break;
  }
  g_autofree char *spoken = g_strdup_printf("%s: %s", word, spv_finding_item_message(self->item));
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
}

static void
show_item(SpvFindingRow *self) {
  const char *panel = spv_finding_item_panel(self->item);
  const char *remedy = spv_finding_item_remedy(self->item), *use = spv_finding_item_use(self->item);

  gtk_label_set_text(self->panel, panel ? panel : "");
  gtk_widget_set_visible(GTK_WIDGET(self->panel), panel != NULL);
  gtk_label_set_text(self->message, spv_finding_item_message(self->item));
  gtk_label_set_text(self->remedy, remedy ? remedy : "");
  gtk_button_set_label(self->use_button, use ? use : "");
  gtk_widget_set_visible(GTK_WIDGET(self->use_button), use != NULL);
  gtk_widget_set_visible(self->remedy_box, remedy || use);
  gtk_widget_set_sensitive(GTK_WIDGET(self->use_button), !spv_finding_item_is_locked(self->item));
  spv_tip_set(GTK_WIDGET(self->use_button),
              spv_finding_item_is_locked(self->item) ? _("The layer is locked: unlock it first.") : remedy);
  show_severity(self, spv_finding_item_finding(self->item)->severity);
}

SpvFindingItem *
spv_finding_row_item(SpvFindingRow *self) {
  g_return_val_if_fail(SPV_IS_FINDING_ROW(self), NULL);
  return self->item;
}

static void
spv_finding_row_dispose(GObject *object) {
  g_clear_object(&SPV_FINDING_ROW(object)->session);
  G_OBJECT_CLASS(spv_finding_row_parent_class)->dispose(object);
}

static void
spv_finding_row_finalize(GObject *object) {
  g_clear_object(&SPV_FINDING_ROW(object)->item);
  G_OBJECT_CLASS(spv_finding_row_parent_class)->finalize(object);
}

static void
spv_finding_row_class_init(SpvFindingRowClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->dispose = spv_finding_row_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_finding_row_finalize;
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/finding-row.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvFindingRow, panel);
  gtk_widget_class_bind_template_child(widget_class, SpvFindingRow, message);
  gtk_widget_class_bind_template_child(widget_class, SpvFindingRow, remedy_box);
  gtk_widget_class_bind_template_child(widget_class, SpvFindingRow, remedy);
  gtk_widget_class_bind_template_child(widget_class, SpvFindingRow, use_button);
  gtk_widget_class_bind_template_callback(widget_class, on_use_clicked);
}

static void
spv_finding_row_init(SpvFindingRow *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
}

GtkWidget *
spv_finding_row_new(SpvFindingItem *item, SpvSession *session) {
  SpvFindingRow *self = g_object_new(SPV_TYPE_FINDING_ROW, NULL);

  self->item = g_object_ref(item);
  self->session = g_object_ref(session);
  show_item(self);
  return GTK_WIDGET(self);
}
