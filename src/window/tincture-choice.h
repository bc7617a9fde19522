/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drop-down of the scheme's tinctures, each with its swatch and name, and none where a slot may be empty.
 */
#pragma once

#include <gtk/gtk.h>

#include "scheme/scheme.h"

G_BEGIN_DECLS

#define SPV_TYPE_TINCTURE_CHOICE (spv_tincture_choice_get_type())
G_DECLARE_FINAL_TYPE(SpvTinctureChoice, spv_tincture_choice, SPV, TINCTURE_CHOICE, GtkWidget)

/* Signal: "changed": the painter chose another one. */

/* OPTIONAL: whether none may be chosen. */
GtkWidget *spv_tincture_choice_new(gboolean optional);
/* Of the tinctures that are no furs, of which furs are made. */
GtkWidget *spv_tincture_choice_new_plain(void);

/* Shows SCHEME's tinctures with the one called ID (NULL: none) chosen. */
void spv_tincture_choice_show(SpvTinctureChoice *choice, const SpvScheme *scheme, const char *id);
/* The chosen one's id, owned by the choice, or NULL. */
const char *spv_tincture_choice_id(SpvTinctureChoice *choice);
/* The name that a screen reader says. */
void spv_tincture_choice_set_name(SpvTinctureChoice *choice, const char *name);

G_END_DECLS
