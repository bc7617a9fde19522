/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/tinctures-pane.h"

#include <glib/gi18n-lib.h>

#include "window/tincture-row.h"

struct _SpvTincturesPane {
  SpvPane parent_instance;

  GtkButton *add_button;
  GtkListBox *list;
  GtkWidget *empty;

  GListStore *items;
};

G_DEFINE_FINAL_TYPE(SpvTincturesPane, spv_tinctures_pane, SPV_TYPE_PANE)

/* What a new tincture is like, by its hatch: the plain colours of an old handbook, to be changed at once. */
static const SpvRgb usual_colours[SPV_N_HATCHES] = {
  [SPV_HATCH_ARGENT] = { 0xef, 0xe6, 0xd2 },   [SPV_HATCH_OR] = { 0xc8, 0x9b, 0x3c },
  [SPV_HATCH_GULES] = { 0xa8, 0x32, 0x2a },    [SPV_HATCH_AZURE] = { 0x2c, 0x55, 0x8c },
  [SPV_HATCH_SABLE] = { 0x2b, 0x2d, 0x3a },    [SPV_HATCH_VERT] = { 0x24, 0x61, 0x58 },
  [SPV_HATCH_PURPURE] = { 0x6b, 0x3a, 0x6e },  [SPV_HATCH_TENNE] = { 0xb5, 0x65, 0x2d },
  [SPV_HATCH_SANGUINE] = { 0x6e, 0x1f, 0x26 },
};

static GtkWidget *
create_row(gpointer item, gpointer data) {
  return spv_tincture_row_new(SPV_TINCTURE_ITEM(item), spv_pane_session(SPV_PANE(data)));
}

/* The first hatch that no tincture of SCHEME has yet, or the first of all. */
static SpvHatch
unused_hatch(const SpvScheme *scheme) {
  for (guint hatch = 0; hatch < SPV_N_HATCHES; hatch++) {
    gboolean used = FALSE;
    for (guint i = 0; i < scheme->n_tinctures && !used; i++)
      used = scheme->tinctures[i].hatch == (SpvHatch) hatch;
    if (!used)
      return (SpvHatch) hatch;
  }
  return SPV_HATCH_ARGENT;
}

/* The hatch's word, with a number where that is taken. Free with g_free(). */
static char *
new_id(const SpvScheme *scheme, SpvHatch hatch) {
  char *id = g_strdup(spv_hatch_key(hatch));

  for (guint n = 2; spv_scheme_find_tincture(scheme, id) >= 0; n++) {
    g_free(id);
    id = g_strdup_printf("%s-%u", spv_hatch_key(hatch), n);
  }
  return id;
}

static void
on_add_clicked(SpvTincturesPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  const SpvScheme *scheme = session ? spv_session_scheme(session) : NULL;

  if (!scheme || scheme->n_tinctures >= SPV_SCHEME_MAX_TINCTURES)
    return;
  SpvHatch hatch = unused_hatch(scheme);
  g_autofree char *id = new_id(scheme, hatch);
  SpvTincture tincture = { .id = id, .name = id, .colour = usual_colours[hatch], .hatch = hatch };
  g_autoptr(SpvScheme) edited = spv_scheme_with_tincture_added(scheme, &tincture);
  spv_session_push(session, edited, _("Add tincture"), NULL);
}

static void
spv_tinctures_pane_refill(SpvPane *pane) {
  SpvTincturesPane *self = SPV_TINCTURES_PANE(pane);
  const SpvScheme *scheme = spv_session_scheme(spv_pane_session(pane));
  GtkListBoxRow *row;

  spv_tincture_items_sync(self->items, 0, scheme);
  for (int i = 0; (row = gtk_list_box_get_row_at_index(self->list, i)); i++)
    spv_tincture_row_refill(SPV_TINCTURE_ROW(row));
  gtk_widget_set_visible(GTK_WIDGET(self->list), scheme->n_tinctures > 0);
  gtk_widget_set_visible(self->empty, scheme->n_tinctures == 0);
  gtk_widget_set_sensitive(GTK_WIDGET(self->add_button), scheme->n_tinctures < SPV_SCHEME_MAX_TINCTURES);
}

/* Rows hold the session: a new one means new rows. */
static void
on_session_set(SpvTincturesPane *self) {
  g_list_store_remove_all(self->items);
  spv_pane_refill(SPV_PANE(self));
}

static void
spv_tinctures_pane_dispose(GObject *object) {
  SpvTincturesPane *self = SPV_TINCTURES_PANE(object);

  if (self->list)
    gtk_list_box_bind_model(self->list, NULL, NULL, NULL, NULL);
  self->list = NULL;
  G_OBJECT_CLASS(spv_tinctures_pane_parent_class)->dispose(object);
}

static void
spv_tinctures_pane_finalize(GObject *object) {
  g_clear_object(&SPV_TINCTURES_PANE(object)->items);
  G_OBJECT_CLASS(spv_tinctures_pane_parent_class)->finalize(object);
}

static void
spv_tinctures_pane_class_init(SpvTincturesPaneClass *klass) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(klass);

  G_OBJECT_CLASS(klass)->dispose = spv_tinctures_pane_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_tinctures_pane_finalize;
  SPV_PANE_CLASS(klass)->refill = spv_tinctures_pane_refill;
  gtk_widget_class_set_template_from_resource(widget_class, "/org/spolvero/ui/tinctures-pane.ui");
  gtk_widget_class_bind_template_child(widget_class, SpvTincturesPane, add_button);
  gtk_widget_class_bind_template_child(widget_class, SpvTincturesPane, list);
  gtk_widget_class_bind_template_child(widget_class, SpvTincturesPane, empty);
  gtk_widget_class_bind_template_callback(widget_class, on_add_clicked);
}

static void
spv_tinctures_pane_init(SpvTincturesPane *self) {
  self->items = g_list_store_new(SPV_TYPE_TINCTURE_ITEM);
  gtk_widget_init_template(GTK_WIDGET(self));
  gtk_list_box_bind_model(self->list, G_LIST_MODEL(self->items), create_row, self, NULL);
  g_signal_connect(self, "notify::session", G_CALLBACK(on_session_set), NULL);
}

GtkWidget *
spv_tinctures_pane_new(void) {
  return g_object_new(SPV_TYPE_TINCTURES_PANE, NULL);
}
