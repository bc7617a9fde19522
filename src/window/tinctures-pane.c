/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/tinctures-pane.h"

#include <glib/gi18n-lib.h>

#include "window/tincture-fur.h"
#include "window/tincture-row.h"

struct _SpvTincturesPane {
  SpvPane parent_instance;

  GtkMenuButton *add_button;
  GtkListBox *list;
  GtkWidget *empty;

  GListStore *items;
  GSimpleActionGroup *actions; /* "tincture" */
};

G_DEFINE_FINAL_TYPE(SpvTincturesPane, spv_tinctures_pane, SPV_TYPE_PANE)

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
      used = scheme->tinctures[i].fur == SPV_FUR_NONE && scheme->tinctures[i].hatch == (SpvHatch) hatch;
    if (!used)
      return (SpvHatch) hatch;
  }
  return SPV_HATCH_ARGENT;
}

/* WORD, with a number where that is taken. Free with g_free(). */
static char *
new_id(const SpvScheme *scheme, const char *word) {
  char *id = g_strdup(word);

  for (guint n = 2; spv_scheme_find_tincture(scheme, id) >= 0; n++) {
    g_free(id);
    id = g_strdup_printf("%s-%u", word, n);
  }
  return id;
}

/* The scheme that a tincture can be added to, or NULL. */
static const SpvScheme *
scheme_with_room(SpvTincturesPane *self) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  const SpvScheme *scheme = session ? spv_session_scheme(session) : NULL;

  return scheme && scheme->n_tinctures < SPV_SCHEME_MAX_TINCTURES ? scheme : NULL;
}

static void
add(SpvTincturesPane *self, const SpvTincture *tincture) {
  SpvSession *session = spv_pane_session(SPV_PANE(self));
  g_autoptr(SpvScheme) edited = spv_scheme_with_tincture_added(spv_session_scheme(session), tincture);

  spv_session_push(session, edited, tincture->fur == SPV_FUR_NONE ? _("Add tincture") : _("Add fur"), NULL);
}

static void
on_add_colour(GSimpleAction *action, GVariant *parameter, gpointer pane) {
  const SpvScheme *scheme = scheme_with_room(pane);

  (void) action;
  (void) parameter;
  if (!scheme)
    return;
  SpvHatch hatch = unused_hatch(scheme);
  g_autofree char *id = new_id(scheme, spv_hatch_key(hatch));
  SpvTincture tincture = { .id = id, .name = id, .colour = spv_hatch_usual_colour(hatch), .hatch = hatch };
  add(pane, &tincture);
}

/* The plain tincture of SCHEME with HATCH, or else the first one that is not called OTHER; or NULL. */
static const char *
find_plain(const SpvScheme *scheme, SpvHatch hatch, const char *other) {
  const char *second_best = NULL;

  for (guint i = 0; i < scheme->n_tinctures; i++) {
    const SpvTincture *tincture = &scheme->tinctures[i];
    if (tincture->fur != SPV_FUR_NONE || g_strcmp0(tincture->id, other) == 0)
      continue;
    if (tincture->hatch == hatch)
      return tincture->id;
    if (!second_best)
      second_best = tincture->id;
  }
  return second_best;
}

/* Of the tinctures that the handbooks name, as far as the scheme has them: ermine is sable on argent, vair
 * and potent are argent and azure (common practice). The painter may choose others. */
static void
on_add_fur(GSimpleAction *action, GVariant *parameter, gpointer pane) {
  const SpvScheme *scheme = scheme_with_room(pane);
  SpvFur fur;

  (void) action;
  if (!scheme || !spv_fur_from_key(g_variant_get_string(parameter, NULL), &fur))
    return;
  gboolean ermine = fur == SPV_FUR_ERMINE;
  const char *ground = find_plain(scheme, ermine ? SPV_HATCH_ARGENT : SPV_HATCH_AZURE, NULL);
  const char *spots = find_plain(scheme, ermine ? SPV_HATCH_SABLE : SPV_HATCH_ARGENT, ground);
  if (!ground || !spots)
    return;
  g_autofree char *id = new_id(scheme, spv_fur_key(fur));
  SpvTincture tincture = { .id = id, .name = id, .fur = fur, .of = { ground, spots } };
  add(pane, &tincture);
}

/* A fur needs two plain tinctures. */
static void
enable_furs(SpvTincturesPane *self, const SpvScheme *scheme) {
  GAction *action = g_action_map_lookup_action(G_ACTION_MAP(self->actions), "add-fur");
  guint n_plain = 0;

  for (guint i = 0; i < scheme->n_tinctures; i++)
    n_plain += scheme->tinctures[i].fur == SPV_FUR_NONE ? 1 : 0;
  g_simple_action_set_enabled(G_SIMPLE_ACTION(action), n_plain >= 2);
}

static void
fill_menu(SpvTincturesPane *self) {
  g_autoptr(GMenu) menu = g_menu_new(), furs = g_menu_new();

  g_menu_append(menu, _("Colour"), "tincture.add-colour");
  for (guint fur = 1; fur < SPV_N_FURS; fur++) {
    g_autofree char *action = g_strdup_printf("tincture.add-fur::%s", spv_fur_key((SpvFur) fur));
    g_menu_append(furs, spv_tincture_fur_label((SpvFur) fur), action);
  }
  g_menu_append_section(menu, _("Furs"), G_MENU_MODEL(furs));
  gtk_menu_button_set_menu_model(self->add_button, G_MENU_MODEL(menu));
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
  enable_furs(self, scheme);
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
  SpvTincturesPane *self = SPV_TINCTURES_PANE(object);

  g_clear_object(&self->items);
  g_clear_object(&self->actions);
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
}

static void
spv_tinctures_pane_init(SpvTincturesPane *self) {
  static const GActionEntry entries[] = { { "add-colour", on_add_colour, NULL, NULL, NULL, { 0 } },
                                          { "add-fur", on_add_fur, "s", NULL, NULL, { 0 } } };

  self->items = g_list_store_new(SPV_TYPE_TINCTURE_ITEM);
  self->actions = g_simple_action_group_new();
  gtk_widget_init_template(GTK_WIDGET(self));
  g_action_map_add_action_entries(G_ACTION_MAP(self->actions), entries, G_N_ELEMENTS(entries), self);
  gtk_widget_insert_action_group(GTK_WIDGET(self), "tincture", G_ACTION_GROUP(self->actions));
  fill_menu(self);
  gtk_list_box_bind_model(self->list, G_LIST_MODEL(self->items), create_row, self, NULL);
  g_signal_connect(self, "notify::session", G_CALLBACK(on_session_set), NULL);
}

GtkWidget *
spv_tinctures_pane_new(void) {
  return g_object_new(SPV_TYPE_TINCTURES_PANE, NULL);
}
