/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How large a millimetre is on this screen, as far as the screen itself says. */
#pragma once

#include <glib.h>

/* The pixels a millimetre of a screen that is WIDTH_MM by HEIGHT_MM and shows WIDTH_PX by HEIGHT_PX goes to
 * SCALE. FALSE when the screen doesn't say, or says what can't be: a size of nothing, pixels that are not
 * square within a tenth, or beyond what any screen has. Then nobody knows, and nobody should guess. */
gboolean spv_true_size_scale(int width_mm, int height_mm, int width_px, int height_px, double *scale);
