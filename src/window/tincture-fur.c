/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/tincture-fur.h"

#include <glib/gi18n-lib.h>

#include "window/measure-entry.h"
#include "window/tincture-choice.h"

struct _SpvTinctureFur {
  GtkPopover parent_instance;

  GtkDropDown *fur;
  SpvTinctureChoice *of[2]; /* ground, spots */
  SpvMeasureEntry *pitch;

  SpvSession *session;
  char *id;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE(SpvTinctureFur, spv_tincture_fur, GTK_TYPE_POPOVER)

/* The range that a scheme file takes. */
static const SpvMeasureSpec pitch_spec = {
  .key = "pitch",
  .label = N_("Pitch"),
  .type = SPV_MEASURE_LENGTH,
  .preset = { SPV_UNIT_AUTO, 0 },
  .min = 0.05,
  .max = SPV_OUTLINE_MAX_MM,
};

static const char *const labels[SPV_N_FURS] = {
  [SPV_FUR_ERMINE] = N_("Ermine"),
  [SPV_FUR_VAIR] = N_("Vair"),
  [SPV_FUR_COUNTER_VAIR] = N_("Counter-vair"),
  [SPV_FUR_POTENT] = N_("Potent"),
};

const char *
spv_tincture_fur_label(SpvFur fur) {
  g_return_val_if_fail(fur > SPV_FUR_NONE && fur < SPV_N_FURS, NULL);
  return _(labels[fur]);
}

/* The fur of now; NULL when it has gone. */
static const SpvTincture *
fur_of(SpvTinctureFur *self, guint *index) {
  const SpvScheme *scheme = self->session ? spv_session_scheme(self->session) : NULL;
  int found = scheme ? spv_scheme_find_tincture(scheme, self->id) : -1;

  if (found < 0 || scheme->tinctures[found].fur == SPV_FUR_NONE)
    return NULL;
  *index = (guint) found;
  return &scheme->tinctures[found];
}

static void
push(SpvTinctureFur *self, guint index, const SpvTincture *tincture, const char *label, const char *merge) {
  g_autoptr(SpvScheme) edited = spv_scheme_with_tincture(spv_session_scheme(self->session), index, tincture);

  spv_session_push(self->session, edited, label, merge);
}

static void
on_fur_selected(SpvTinctureFur *self) {
  guint index;
  const SpvTincture *now = fur_of(self, &index);
  SpvFur fur = (SpvFur) (gtk_drop_down_get_selected(self->fur) + 1);

  if (self->showing || !now || fur >= SPV_N_FURS || fur == now->fur)
    return;
  SpvTincture edited = *now;
  edited.fur = fur;
  push(self, index, &edited, _("Change fur"), NULL);
}

/* The tincture that the other one has is swapped for it: a fur of one tincture would be none. */
static void
on_of_changed(SpvTinctureChoice *choice, SpvTinctureFur *self) {
  guint index, part = choice == self->of[0] ? 0 : 1;
  const SpvTincture *now = fur_of(self, &index);
  const char *id = spv_tincture_choice_id(choice);

  if (!now || !id || g_strcmp0(id, now->of[part]) == 0)
    return;
  SpvTincture edited = *now;
  edited.of[part] = id;
  if (g_strcmp0(id, now->of[1 - part]) == 0)
    edited.of[1 - part] = now->of[part];
  push(self, index, &edited, part == 0 ? _("Change ground of fur") : _("Change spots of fur"), NULL);
}

static void
on_pitch_changed(SpvTinctureFur *self) {
  guint index;
  const SpvTincture *now = fur_of(self, &index);
  SpvMeasure value = spv_measure_entry_value(self->pitch);

  if (!now)
    return;
  g_autofree char *merge = g_strdup_printf("tincture-pitch:%s", now->id);
  SpvTincture edited = *now;
  edited.pitch = value.unit == SPV_UNIT_AUTO ? 0 : value.value;
  push(self, index, &edited, _("Change pitch of fur"), merge);
}

static void
on_pitch_settled(SpvTinctureFur *self) {
  if (!self->session)
    return;
  spv_session_settle(self->session);
  spv_tincture_fur_refill(self);
}

void
spv_tincture_fur_refill(SpvTinctureFur *self) {
  guint index;
  const SpvTincture *now;
  SpvMeasure pitch;

  g_return_if_fail(SPV_IS_TINCTURE_FUR(self));
  now = fur_of(self, &index);
  if (!now)
    return;
  const SpvScheme *scheme = spv_session_scheme(self->session);
  self->showing = TRUE;
  gtk_drop_down_set_selected(self->fur, (guint) now->fur - 1);
  self->showing = FALSE;
  for (guint part = 0; part < 2; part++)
    spv_tincture_choice_show(self->of[part], scheme, now->of[part]);
  pitch = now->pitch > 0 ? (SpvMeasure){ SPV_UNIT_MM, now->pitch } : (SpvMeasure){ SPV_UNIT_AUTO, 0 };
  spv_measure_entry_set_value(self->pitch, pitch, 0, 0,
                              spv_fur_smallest_pitch(now->fur, scheme->finest_line));
}

static void
attach(GtkGrid *grid, int row, const char *words, const char *hint, GtkWidget *field) {
  GtkWidget *label = gtk_label_new(words);

  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_mnemonic_widget(GTK_LABEL(label), field);
  gtk_widget_set_tooltip_text(label, hint);
  gtk_widget_set_tooltip_text(field, hint);
  gtk_widget_set_hexpand(field, TRUE);
  gtk_grid_attach(grid, label, 0, row, 1, 1);
  gtk_grid_attach(grid, field, 1, row, 1, 1);
}

static void
add_fields(SpvTinctureFur *self, GtkGrid *grid) {
  GtkStringList *names = gtk_string_list_new(NULL);

  for (guint fur = 1; fur < SPV_N_FURS; fur++)
    gtk_string_list_append(names, spv_tincture_fur_label((SpvFur) fur));
  self->fur = GTK_DROP_DOWN(gtk_drop_down_new(G_LIST_MODEL(names), NULL));
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->fur), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Fur"), -1);
  g_signal_connect_swapped(self->fur, "notify::selected", G_CALLBACK(on_fur_selected), self);
  attach(grid, 0, _("Fur"), NULL, GTK_WIDGET(self->fur));
  for (int part = 0; part < 2; part++) {
    GtkWidget *choice = spv_tincture_choice_new_plain();
    const char *words = part == 0 ? _("Ground") : _("Spots");
    self->of[part] = SPV_TINCTURE_CHOICE(choice);
    spv_tincture_choice_set_name(self->of[part], words);
    g_signal_connect(choice, "changed", G_CALLBACK(on_of_changed), self);
    attach(grid, 1 + part, words, NULL, choice);
  }
  self->pitch = SPV_MEASURE_ENTRY(spv_measure_entry_new());
  spv_measure_entry_set_spec(self->pitch, &pitch_spec, TRUE);
  spv_measure_entry_set_name(self->pitch, _("Pitch"));
  g_signal_connect_swapped(self->pitch, "changed", G_CALLBACK(on_pitch_changed), self);
  g_signal_connect_swapped(self->pitch, "settled", G_CALLBACK(on_pitch_settled), self);
  attach(grid, 3, _("Pitch"), _("From spot to spot; empty it to go as fine as your line holds"),
         GTK_WIDGET(self->pitch));
}

static void
spv_tincture_fur_dispose(GObject *object) {
  g_clear_object(&SPV_TINCTURE_FUR(object)->session);
  G_OBJECT_CLASS(spv_tincture_fur_parent_class)->dispose(object);
}

static void
spv_tincture_fur_finalize(GObject *object) {
  g_free(SPV_TINCTURE_FUR(object)->id);
  G_OBJECT_CLASS(spv_tincture_fur_parent_class)->finalize(object);
}

static void
spv_tincture_fur_class_init(SpvTinctureFurClass *klass) {
  G_OBJECT_CLASS(klass)->dispose = spv_tincture_fur_dispose;
  G_OBJECT_CLASS(klass)->finalize = spv_tincture_fur_finalize;
}

static void
spv_tincture_fur_init(SpvTinctureFur *self) {
  GtkWidget *grid = gtk_grid_new();

  gtk_grid_set_row_spacing(GTK_GRID(grid), 6);
  gtk_grid_set_column_spacing(GTK_GRID(grid), 12);
  gtk_widget_set_size_request(grid, 230, -1);
  gtk_widget_add_css_class(grid, "spv-pane");
  add_fields(self, GTK_GRID(grid));
  gtk_popover_set_child(GTK_POPOVER(self), grid);
}

GtkWidget *
spv_tincture_fur_new(SpvSession *session, const char *id) {
  SpvTinctureFur *self = g_object_new(SPV_TYPE_TINCTURE_FUR, NULL);

  self->session = g_object_ref(session);
  self->id = g_strdup(id);
  spv_tincture_fur_refill(self);
  return GTK_WIDGET(self);
}
