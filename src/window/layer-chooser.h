/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The popover of all kinds of layer, grouped, each with a small drawing of itself. */
#pragma once

#include <gtk/gtk.h>

#include "window/session.h"

G_BEGIN_DECLS

#define SPV_TYPE_LAYER_CHOOSER (spv_layer_chooser_get_type())
G_DECLARE_FINAL_TYPE(SpvLayerChooser, spv_layer_chooser, SPV, LAYER_CHOOSER, GtkPopover)

/* What is chosen is added to SESSION, which the chooser takes a reference to; NULL lets go of it. */
void spv_layer_chooser_set_session(SpvLayerChooser *chooser, SpvSession *session);

G_END_DECLS
