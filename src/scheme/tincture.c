/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The hatches and their keys, and what a fur may be. */
#include "scheme/tincture.h"

static const char *const hatch_keys[SPV_N_HATCHES] = {
  [SPV_HATCH_ARGENT] = "argent",   [SPV_HATCH_OR] = "or",       [SPV_HATCH_GULES] = "gules",
  [SPV_HATCH_AZURE] = "azure",     [SPV_HATCH_SABLE] = "sable", [SPV_HATCH_VERT] = "vert",
  [SPV_HATCH_PURPURE] = "purpure", [SPV_HATCH_TENNE] = "tenne", [SPV_HATCH_SANGUINE] = "sanguine",
};

const char *
spv_hatch_key(SpvHatch hatch) {
  g_return_val_if_fail((guint) hatch < SPV_N_HATCHES, NULL);
  return hatch_keys[hatch];
}

gboolean
spv_hatch_from_key(const char *key, SpvHatch *hatch) {
  for (guint i = 0; i < SPV_N_HATCHES; i++)
    if (g_strcmp0(key, hatch_keys[i]) == 0) {
      *hatch = (SpvHatch) i;
      return TRUE;
    }
  return FALSE;
}

gboolean
spv_fur_pitch_is_valid(double pitch) {
  return pitch == 0 || (pitch >= SPV_FUR_PITCH_MIN && pitch <= SPV_FUR_PITCH_MAX);
}
