/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether two schemes have the same tinctures in the same order: what was worked out from one then holds for
 * the other. */
#pragma once

#include "scheme/scheme.h"

static inline gboolean
spv_tinctures_equal(const SpvScheme *a, const SpvScheme *b) {
  if (a == b || a->tinctures == b->tinctures)
    return a->n_tinctures == b->n_tinctures;
  if (a->n_tinctures != b->n_tinctures)
    return FALSE;
  for (guint i = 0; i < a->n_tinctures; i++) {
    const SpvTincture *x = &a->tinctures[i], *y = &b->tinctures[i];
    if (!g_str_equal(x->id, y->id) || !g_str_equal(x->name, y->name) ||
        !spv_rgb_equal(x->colour, y->colour) || x->hatch != y->hatch || x->fur != y->fur ||
        g_strcmp0(x->of[0], y->of[0]) != 0 || g_strcmp0(x->of[1], y->of[1]) != 0 || x->pitch != y->pitch)
      return FALSE;
  }
  return TRUE;
}
