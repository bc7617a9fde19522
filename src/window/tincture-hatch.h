/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drop-down of the engraver's hatches, each with a sample. */
#pragma once

#include <gtk/gtk.h>

#include "scheme/tincture.h"

G_BEGIN_DECLS

/* The button shows the sample alone; the list says "gules: upright lines". Its selected position
 * is the SpvHatch. */
GtkDropDown *spv_tincture_hatch_drop_down_new(void);

/* "gules: upright lines", translated. */
const char *spv_tincture_hatch_label(SpvHatch hatch);

G_END_DECLS
