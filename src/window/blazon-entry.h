/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The chosen panel in words: it follows the layers, and what is typed into it becomes the layers. */
#pragma once

#include "window/pane.h"

G_BEGIN_DECLS

#define SPV_TYPE_BLAZON_ENTRY (spv_blazon_entry_get_type())
G_DECLARE_FINAL_TYPE(SpvBlazonEntry, spv_blazon_entry, SPV, BLAZON_ENTRY, SpvPane)

GtkWidget *spv_blazon_entry_new(void);

/* Puts the focus into the words, all of them marked, so that typing starts another blazon. */
void spv_blazon_entry_edit(SpvBlazonEntry *entry);

G_END_DECLS
