/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/tincture-look.h"

/* The colour of the tincture called ID; OTHERWISE where SCHEME has none. */
static SpvRgb
colour_of(const SpvScheme *scheme, const char *id, SpvRgb otherwise) {
  int index = spv_scheme_find_tincture(scheme, id);

  return index < 0 ? otherwise : scheme->tinctures[index].colour;
}

SpvTinctureLook
spv_tincture_look(const SpvScheme *scheme, const SpvTincture *tincture) {
  if (tincture->fur == SPV_FUR_NONE)
    return spv_tincture_look_plain(tincture->colour);
  return (SpvTinctureLook){ colour_of(scheme, tincture->of[0], tincture->colour), tincture->fur,
                            colour_of(scheme, tincture->of[1], tincture->colour) };
}

gboolean
spv_tincture_look_equal(SpvTinctureLook a, SpvTinctureLook b) {
  return a.fur == b.fur && spv_rgb_equal(a.colour, b.colour) && spv_rgb_equal(a.spots, b.spots);
}
