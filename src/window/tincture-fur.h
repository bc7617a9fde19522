/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The popover in which a fur is made: which fur, of which two tinctures, and how fine. */
#pragma once

#include <gtk/gtk.h>

#include "window/session.h"

G_BEGIN_DECLS

#define SPV_TYPE_TINCTURE_FUR (spv_tincture_fur_get_type())
G_DECLARE_FINAL_TYPE(SpvTinctureFur, spv_tincture_fur, SPV, TINCTURE_FUR, GtkPopover)

/* Of the fur called ID in SESSION's scheme. */
GtkWidget *spv_tincture_fur_new(SpvSession *session, const char *id);

/* Shows the fur as it is now; nothing when it has gone. */
void spv_tincture_fur_refill(SpvTinctureFur *fur);

/* "Ermine", on screen. */
const char *spv_tincture_fur_label(SpvFur fur);

G_END_DECLS
