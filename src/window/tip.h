/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tooltips that follow what is shown. Whenever one is set the toolkit asks the display where the pointer is,
 * and waits for the answer: a drag that fills every pane anew must not do that for words that stay the same.
 */
#pragma once

#include <gtk/gtk.h>

/* Makes WORDS (NULL: none) the tooltip of WIDGET, if they are not. */
void spv_tip_set(GtkWidget *widget, const char *words);
/* The same, and what a screen reader calls WIDGET. */
void spv_tip_set_as_name(GtkWidget *widget, const char *words);
