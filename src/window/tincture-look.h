/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a tincture looks in small: a colour, or a fur's ground with its spots. */
#pragma once

#include "scheme/scheme.h"

typedef struct {
  SpvRgb colour; /* of a fur: its ground's */
  SpvFur fur;
  SpvRgb spots; /* of a fur; otherwise the same as COLOUR */
} SpvTinctureLook;

/* The look of TINCTURE, which is one of SCHEME's. */
SpvTinctureLook spv_tincture_look(const SpvScheme *scheme, const SpvTincture *tincture);
gboolean spv_tincture_look_equal(SpvTinctureLook a, SpvTinctureLook b);
/* The look of a plain colour. */
static inline SpvTinctureLook
spv_tincture_look_plain(SpvRgb colour) {
  return (SpvTinctureLook){ colour, SPV_FUR_NONE, colour };
}
