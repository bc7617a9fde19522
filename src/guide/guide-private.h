/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The two halves of making a guide: dots and rulings. */
#pragma once

#include "guide/guide.h"

/* How far a place may stray from the outline, mm, and still count as on it. */
#define SPV_GUIDE_ON_EDGE 1e-6

/* Adds the dots and the runs of every layer of GUIDE's composition. */
void spv_guide_add_dots(SpvGuide *guide);

/* Adds the rulings of every layer of GUIDE's composition. */
void spv_guide_add_rulings(SpvGuide *guide);

/* Whether layer LAYER lays anything: without a tincture there is nothing to mark. */
gboolean spv_guide_layer_is_laid(const SpvComposition *composition, guint layer);
