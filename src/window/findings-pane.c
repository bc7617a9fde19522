/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/findings-pane.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "window/finding-row.h"
#include "window/measure-entry.h"

struct _SpvFindingsPane {
  SpvPane parent_instance;

  SpvMeasureEntry *finest_line;
  GtkListBox *list;
  GtkWidget *empty;

  GListStore *items;
};

G_DEFINE_FINAL_TYPE(SpvFindingsPane, spv_findings_pane, SPV_TYPE_PANE)

static const SpvMeasureSpec finest_line_spec = {
  .key = "finest-line",
  .label = N_("Finest line"),
  .type = SPV_MEASURE_LENGTH,
  .min = SPV_FINEST_LINE_MIN,
  .max = SPV_FINEST_LINE_MAX,
};

static GtkWidget *
create_row(gpointer item, gpointer data) {
  return spv_finding_row_new(SPV_FINDING_ITEM(item), spv_pane_session(SPV_PANE(data)));
}

static void
on_row_activated(SpvFindingsPane *self, GtkListBoxRow *row) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  const SpvFinding *finding = spv_finding_item_finding(spv_finding_row_item(SPV_FINDING_ROW(row)));

  if (session)
    spv_session_select(session, (int) finding->panel, finding->layer);
}

static void
on_finest_line_changed(SpvFindingsPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));

  if (!session)
    return;
  g_autoptr(SpvScheme) edited = spv_scheme_with_finest_line(spv_session_scheme(session),
                                                            spv_measure_entry_value(self->finest_line).value);
  spv_session_push(session, edited, _("Change finest line"), "finest-line");
}

/* Only findings of the scheme of now can be said in its words; older ones stay until new ones come. */
static void
show_findings(SpvPane *pane) {
  SpvFindingsPane *self = SPV_FINDINGS_PANE(pane);
  SpvSession *session = spv_pane_session(pane);
  guint n;

  if (!spv_session_findings_are_current(session))
    return;
  spv_finding_items_sync(self->items, session);
  n = g_list_model_get_n_items(G_LIST_MODEL(self->items));
  gtk_widget_set_visible(GTK_WIDGET(self->list), n > 0);
  gtk_widget_set_visible(self->empty, n == 0);
}

static void
spv_findings_pane_refill(SpvPane *pane) {
  SpvFindingsPane *self = SPV_FINDINGS_PANE(pane);
  SpvMeasure value = { SPV_UNIT_MM, spv_session_scheme(spv_pane_session(pane))->finest_line };

  spv_measure_entry_set_value(self->finest_line, value, 0, 0, NAN);
  show_findings(pane);
}

/* Rows hold the session: a new one means new rows. */
static void
on_session_set(SpvFindingsPane *self) {
  g_list_store_remove_all(self->items);
  spv_pane_refill(SPV_PANE(self));
}

static void
spv_findings_pane_dispose(GObject *object) {
  SpvFindingsPane *self = SPV_FINDINGS_PANE(object);

  if (self->list)
    gtk_list_box_bind_model(self->list, NULL, NULL, NULL, NULL);
  self->list = NULL;
  G_OBJECT_CLASS(spv_findings_pane_parent_class)->dispose(object);
}

static void
spv_findings_pane_finalize(GObject *object) {
  g_clear_object(&SPV_FINDINGS_PANE(object)->items);
  G_OBJECT_CLASS(spv_findings_pane_parent_class)->finalize(object);
}

static void
spv_findings_pane_class_init(SpvFindingsPaneClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->dispose = spv_findings_pane_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_findings_pane_finalize;
  SPV_PANE_CLASS(klass)->refill = spv_findings_pane_refill;
  SPV_PANE_CLASS(klass)->findings_came = show_findings;
  g_type_ensure(SPV_TYPE_MEASURE_ENTRY);
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/findings-pane.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvFindingsPane, finest_line);
  gtk_widget_class_bind_template_child(widget_class, SpvFindingsPane, list);
  gtk_widget_class_bind_template_child(widget_class, SpvFindingsPane, empty);
  gtk_widget_class_bind_template_callback(widget_class, on_row_activated);
  gtk_widget_class_bind_template_callback(widget_class, on_finest_line_changed);
  gtk_widget_class_bind_template_callback(widget_class, spv_pane_settle);
}

static void
spv_findings_pane_init(SpvFindingsPane *self) {
  self->items = g_list_store_new(SPV_TYPE_FINDING_ITEM);
  gtk_widget_init_template(GTK_WIDGET(self));
  spv_measure_entry_set_spec(self->finest_line, &finest_line_spec, FALSE);
  spv_measure_entry_set_name(self->finest_line, _("Finest line"));
  gtk_list_box_bind_model(self->list, G_LIST_MODEL(self->items), create_row, self, NULL);
  g_signal_connect(self, "notify::session", G_CALLBACK(on_session_set), NULL);
}

GtkWidget *
spv_findings_pane_new(void) {
  return g_object_new(SPV_TYPE_FINDINGS_PANE, NULL);
}
