/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drop-down of the layers below one that it can be tied to, and none of them. */
#pragma once

#include <gtk/gtk.h>

#include "scheme/panel.h"

G_BEGIN_DECLS

#define SPV_TYPE_LAYER_CHOICE (spv_layer_choice_get_type())
G_DECLARE_FINAL_TYPE(SpvLayerChoice, spv_layer_choice, SPV, LAYER_CHOICE, GtkWidget)

/* Signal: "changed": the painter chose another one. */

/* NONE is the word for none of them; TAKES says of which kinds they may be. */
GtkWidget *spv_layer_choice_new(const char *none, gboolean (*takes)(SpvPatternKind kind));

/* Shows the layers of PANEL below INDEX with the one called ID (NULL: none) chosen. Returns whether there is
 * any to choose. */
gboolean spv_layer_choice_show(SpvLayerChoice *choice, const SpvPanel *panel, guint index, const char *id);
/* The chosen one's id, owned by the choice, or NULL. */
const char *spv_layer_choice_id(SpvLayerChoice *choice);
/* The name that a screen reader says. */
void spv_layer_choice_set_name(SpvLayerChoice *choice, const char *name);

G_END_DECLS
