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

SpvRgb
spv_hatch_usual_colour(SpvHatch hatch) {
  static const SpvRgb colours[SPV_N_HATCHES] = {
    [SPV_HATCH_ARGENT] = { 0xef, 0xe6, 0xd2 },   [SPV_HATCH_OR] = { 0xc8, 0x9b, 0x3c },
    [SPV_HATCH_GULES] = { 0xa8, 0x32, 0x2a },    [SPV_HATCH_AZURE] = { 0x2c, 0x55, 0x8c },
    [SPV_HATCH_SABLE] = { 0x2b, 0x2d, 0x3a },    [SPV_HATCH_VERT] = { 0x24, 0x61, 0x58 },
    [SPV_HATCH_PURPURE] = { 0x6b, 0x3a, 0x6e },  [SPV_HATCH_TENNE] = { 0xb5, 0x65, 0x2d },
    [SPV_HATCH_SANGUINE] = { 0x6e, 0x1f, 0x26 },
  };

  g_return_val_if_fail((guint) hatch < SPV_N_HATCHES, colours[0]);
  return colours[hatch];
}
