/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/tip.h"

void
spv_tip_set(GtkWidget *widget, const char *words) {
  if (g_strcmp0(words, gtk_widget_get_tooltip_text(widget)) != 0)
    gtk_widget_set_tooltip_text(widget, words);
}

void
spv_tip_set_as_name(GtkWidget *widget, const char *words) {
  if (g_strcmp0(words, gtk_widget_get_tooltip_text(widget)) == 0)
    return;
  gtk_widget_set_tooltip_text(widget, words);
  gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}
