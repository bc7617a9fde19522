/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/tincture-hatch.h"

#include <glib/gi18n-lib.h>

#include "window/tincture-swatch.h"

#define SAMPLE_SIZE 20

static const char *const labels[SPV_N_HATCHES] = {
  [SPV_HATCH_ARGENT] = N_("argent: plain"),
  [SPV_HATCH_OR] = N_("or: dots"),
  [SPV_HATCH_GULES] = N_("gules: upright lines"),
  [SPV_HATCH_AZURE] = N_("azure: level lines"),
  [SPV_HATCH_SABLE] = N_("sable: upright and level lines"),
  [SPV_HATCH_VERT] = N_("vert: lines down to the right"),
  [SPV_HATCH_PURPURE] = N_("purpure: lines down to the left"),
  [SPV_HATCH_TENNE] = N_("tenné: lines down to the left, and level"),
  [SPV_HATCH_SANGUINE] = N_("sanguine: both diagonals"),
};

const char *
spv_tincture_hatch_label(SpvHatch hatch) {
  g_return_val_if_fail((guint) hatch < SPV_N_HATCHES, NULL);
  return _(labels[hatch]);
}

static void
on_setup(GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer with_words) {
  GtkWidget *row = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);

  (void) factory;
  gtk_box_append(GTK_BOX(row), spv_tincture_swatch_new(SAMPLE_SIZE));
  if (with_words)
    gtk_box_append(GTK_BOX(row), gtk_label_new(NULL));
  gtk_list_item_set_child(list_item, row);
}

static void
on_bind(GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer with_words) {
  SpvHatch hatch = (SpvHatch) gtk_list_item_get_position(list_item);
  GtkWidget *swatch = gtk_widget_get_first_child(gtk_list_item_get_child(list_item));

  (void) factory;
  spv_tincture_swatch_set_hatch(SPV_TINCTURE_SWATCH(swatch), hatch);
  if (with_words)
    gtk_label_set_text(GTK_LABEL(gtk_widget_get_next_sibling(swatch)), spv_tincture_hatch_label(hatch));
}

static GtkListItemFactory *
factory_new(gboolean with_words) {
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new();

  g_signal_connect(factory, "setup", G_CALLBACK(on_setup), GINT_TO_POINTER(with_words));
  g_signal_connect(factory, "bind", G_CALLBACK(on_bind), GINT_TO_POINTER(with_words));
  return factory;
}

GtkDropDown *
spv_tincture_hatch_drop_down_new(void) {
  GtkStringList *names = gtk_string_list_new(NULL);
  g_autoptr(GtkListItemFactory) in_button = factory_new(FALSE);
  g_autoptr(GtkListItemFactory) in_list = factory_new(TRUE);
  GtkDropDown *drop_down;

  for (guint i = 0; i < SPV_N_HATCHES; i++)
    gtk_string_list_append(names, spv_tincture_hatch_label((SpvHatch) i));
  drop_down = GTK_DROP_DOWN(gtk_drop_down_new(G_LIST_MODEL(names), NULL));
  gtk_drop_down_set_factory(drop_down, in_button);
  gtk_drop_down_set_list_factory(drop_down, in_list);
  return drop_down;
}
