/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small square that shows one tincture, two or three beside each other, none, or an engraver's hatch. */
#pragma once

#include <gtk/gtk.h>

#include "window/tincture-look.h"

G_BEGIN_DECLS

#define SPV_TYPE_TINCTURE_SWATCH (spv_tincture_swatch_get_type())
G_DECLARE_FINAL_TYPE(SpvTinctureSwatch, spv_tincture_swatch, SPV, TINCTURE_SWATCH, GtkWidget)

#define SPV_SWATCH_MAX 3

/* Property: "size" (int, px, both ways). */

GtkWidget *spv_tincture_swatch_new(int size);

/* N looks, 0 to SPV_SWATCH_MAX, beside each other; none shows an empty frame with a stroke through it. */
void spv_tincture_swatch_set_looks(SpvTinctureSwatch *swatch, const SpvTinctureLook *looks, guint n);
/* Black on white as in print without colour. */
void spv_tincture_swatch_set_hatch(SpvTinctureSwatch *swatch, SpvHatch hatch);

G_END_DECLS
