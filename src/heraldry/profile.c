/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of the lines of partition: one period of each, and how large it usually is. Shapes after
 * Fox-Davies, A Complete Guide to Heraldry (1909) pp. 91-96; the usual pitches and depths are common
 * practice, no source, but where the table says so. */
#include "heraldry/kinds-private.h"
#include "heraldry/profile-private.h"

#define LINE(u, v)                                                                                           \
  {                                                                                                          \
    FALSE, { 0, 0 }, { 0, 0 }, {                                                                             \
      u, v                                                                                                   \
    }                                                                                                        \
  }
#define CURVE(u1, v1, u2, v2, u, v)                                                                          \
  {                                                                                                          \
    TRUE, { u1, v1 }, { u2, v2 }, {                                                                          \
      u, v                                                                                                   \
    }                                                                                                        \
  }

/* An eighth of an ellipse is a cubic whose handles are this long, of the half axis: 4/3 tan(π/16). It strays
 * by less than a part in 200,000. */
#define HANDLE 0.26521648983954400
#define HALF_ROOT 0.70710678118654752

/* Eighths of the ellipse with the half axes 1/2 across and H upwards (below 0: downwards) that stands between
 * (0, V) and (1, V); H is a whole amplitude. */
#define HALF_ROUND(v, h)                                                                                     \
  CURVE(0, v + h * HANDLE, 0.5 - 0.5 * HALF_ROOT * (1 + HANDLE), v + h * HALF_ROOT * (1 - HANDLE),           \
        0.5 - 0.5 * HALF_ROOT, v + h * HALF_ROOT),                                                           \
      CURVE(0.5 - 0.5 * HALF_ROOT * (1 - HANDLE), v + h * HALF_ROOT * (1 + HANDLE), 0.5 - 0.5 * HANDLE,      \
            v + h, 0.5, v + h),                                                                              \
      CURVE(0.5 + 0.5 * HANDLE, v + h, 0.5 + 0.5 * HALF_ROOT * (1 - HANDLE),                                 \
            v + h * HALF_ROOT * (1 + HANDLE), 0.5 + 0.5 * HALF_ROOT, v + h * HALF_ROOT),                     \
      CURVE(0.5 + 0.5 * HALF_ROOT * (1 + HANDLE), v + h * HALF_ROOT * (1 - HANDLE), 1, v + h * HANDLE, 1, v)

/* clang-format off */
static const SpvRunStep plain[] = { LINE(1, 0) };
static const SpvRunStep indented[] = { LINE(0.5, 0.5), LINE(1, -0.5) };
/* As deep as it is wide; the period begins in the middle of a gap. */
static const SpvRunStep embattled[] = {
  LINE(0.25, -0.5), LINE(0.25, 0.5), LINE(0.75, 0.5), LINE(0.75, -0.5), LINE(1, -0.5),
};
/* Between points that stand on the side of the crests. */
static const SpvRunStep engrailed[] = { HALF_ROUND(0.5, -1) };
static const SpvRunStep invected[] = { HALF_ROUND(-0.5, 1) };
/* A sine to within a hundredth of its amplitude: its crest is as round as the sine's. */
static const SpvRunStep wavy[] = {
  CURVE(0.1821, -0.5, 0.3179, 0.5, 0.5, 0.5), CURVE(0.6821, 0.5, 0.8179, -0.5, 1, -0.5),
};
/* Heads wider than their necks, on both sides. */
static const SpvRunStep nebuly[] = {
  CURVE(0.3, -0.5, 0.44, -0.16, 0.25, 0), CURVE(0.06, 0.16, 0.2, 0.5, 0.5, 0.5),
  CURVE(0.8, 0.5, 0.94, 0.16, 0.75, 0), CURVE(0.56, -0.16, 0.7, -0.5, 1, -0.5),
};
static const SpvRunStep dovetailed[] = {
  LINE(0.34, -0.5), LINE(0.16, 0.5), LINE(0.84, 0.5), LINE(0.66, -0.5), LINE(1, -0.5),
};
/* Crenels that lean back to where the line starts: to dexter on a fess, upwards on a pale. */
static const SpvRunStep raguly[] = {
  LINE(0.375, -0.5), LINE(0.125, 0.5), LINE(0.625, 0.5), LINE(0.875, -0.5), LINE(1, -0.5),
};
/* The edge of the fur potent: crutches whose heads are three quarters of the pitch wide. */
static const SpvRunStep potenty[] = {
  LINE(0.375, -0.5), LINE(0.375, 0), LINE(0.125, 0), LINE(0.125, 0.5), LINE(0.875, 0.5),
  LINE(0.875, 0), LINE(0.625, 0), LINE(0.625, -0.5), LINE(1, -0.5),
};
/* Pointed shields, wider at the shoulders than at the foot, as in vair. */
static const SpvRunStep urdy[] = {
  LINE(0.32, -0.22), LINE(0.18, 0.22), LINE(0.5, 0.5), LINE(0.82, 0.22), LINE(0.68, -0.22), LINE(1, -0.5),
};
/* Flames: sharp at both ends, with a wave in either side. */
static const SpvRunStep rayonny[] = {
  CURVE(0, -0.2, 0.48, -0.22, 0.25, 0), CURVE(0.02, 0.22, 0.5, 0.2, 0.5, 0.5),
  CURVE(0.5, 0.2, 0.98, 0.22, 0.75, 0), CURVE(0.52, -0.22, 1, -0.2, 1, -0.5),
};

#define STEPS(table) table, G_N_ELEMENTS(table)

static const SpvProfileUnit units[SPV_N_PROFILES] = {
  [SPV_PROFILE_PLAIN] = { STEPS(plain), 0, 1, 0, TRUE, TRUE },
  [SPV_PROFILE_INDENTED] = { STEPS(indented), -0.5, 1.0 / 7, 0.6, FALSE, TRUE },
  /* "Usually three complete teeth": p. 93. */
  [SPV_PROFILE_DANCETTY] = { STEPS(indented), -0.5, 1.0 / 3, 0.5, TRUE, TRUE },
  [SPV_PROFILE_EMBATTLED] = { STEPS(embattled), -0.5, 1.0 / 5, 0.5, FALSE, TRUE },
  /* Half circles: pp. 91, 92. */
  [SPV_PROFILE_ENGRAILED] = { STEPS(engrailed), 0.5, 1.0 / 6, 0.5, FALSE, TRUE },
  [SPV_PROFILE_INVECTED] = { STEPS(invected), -0.5, 1.0 / 6, 0.5, FALSE, TRUE },
  [SPV_PROFILE_WAVY] = { STEPS(wavy), -0.5, 1.0 / 4, 0.35, TRUE, TRUE },
  [SPV_PROFILE_NEBULY] = { STEPS(nebuly), -0.5, 1.0 / 4, 0.65, TRUE, TRUE },
  [SPV_PROFILE_DOVETAILED] = { STEPS(dovetailed), -0.5, 1.0 / 5, 0.5, FALSE, TRUE },
  [SPV_PROFILE_RAGULY] = { STEPS(raguly), -0.5, 1.0 / 5, 0.5, FALSE, FALSE },
  [SPV_PROFILE_POTENTY] = { STEPS(potenty), -0.5, 1.0 / 4, 0.5, FALSE, TRUE },
  [SPV_PROFILE_URDY] = { STEPS(urdy), -0.5, 1.0 / 5, 0.8, FALSE, TRUE },
  [SPV_PROFILE_RAYONNY] = { STEPS(rayonny), -0.5, 1.0 / 5, 1, FALSE, TRUE },
};
/* clang-format on */

const SpvProfileUnit *
spv_profile_unit(SpvProfile profile) {
  g_return_val_if_fail((guint) profile < SPV_N_PROFILES, &units[SPV_PROFILE_PLAIN]);
  return &units[profile];
}

const char *
spv_profile_key(SpvProfile profile) {
  g_return_val_if_fail((guint) profile < SPV_N_PROFILES, NULL);
  return spv_profile_keys[profile];
}

gboolean
spv_profile_from_key(const char *key, SpvProfile *profile) {
  for (guint i = 0; i < SPV_N_PROFILES; i++)
    if (g_strcmp0(key, spv_profile_keys[i]) == 0) {
      *profile = (SpvProfile) i;
      return TRUE;
    }
  return FALSE;
}

gboolean
spv_profile_runs_alike(SpvProfile profile) {
  return spv_profile_unit(profile)->runs_alike;
}

gboolean
spv_profile_is_symmetrical(SpvProfile profile) {
  return spv_profile_unit(profile)->symmetrical;
}

/* Measure KEY of PATTERN, whose kind has a line. */
static double
measure_of(const SpvPattern *pattern, const SpvOutline *outline, const char *key, double fallback) {
  int index = spv_pattern_measure_index(pattern->kind, key);

  return index < 0 ? fallback : spv_pattern_measure(pattern, (guint) index, outline, fallback);
}

SpvLine
spv_line_of(const SpvPattern *pattern, const SpvOutline *outline) {
  SpvLine line = { .profile = SPV_PROFILE_PLAIN, .amplitude = -1 };

  line.profile = (SpvProfile) measure_of(pattern, outline, "line", SPV_PROFILE_PLAIN);
  if (line.profile == SPV_PROFILE_PLAIN)
    return line;
  line.amplitude = measure_of(pattern, outline, "amplitude", -1);
  line.pitch = measure_of(pattern, outline, "pitch", 0);
  if (line.pitch > 0)
    return line;
  line.periods = (guint) measure_of(pattern, outline, "periods", 0);
  if (line.periods == 0)
    line.pitch = spv_profile_unit(line.profile)->part_of_side *
                 MIN(spv_outline_width(outline), spv_outline_height(outline));
  return line;
}

guint
spv_line_periods(const SpvLine *line, double length, double unit) {
  double pitch = line->pitch > 0 ? line->pitch : spv_profile_unit(line->profile)->part_of_side * unit;

  if (line->profile == SPV_PROFILE_PLAIN)
    return 0;
  if (line->periods > 0)
    return MIN(line->periods, SPV_PATTERN_MAX_COUNT);
  if (!(length > 0) || !(pitch > 0))
    return 1;
  /* Just under a half, so that lengths which should be the same, but for the last digits or the chords of a
   * curve, don't differ by a tooth where half a tooth is left over. */
  return (guint) CLAMP(floor(length / pitch + 0.499), 1, SPV_PATTERN_MAX_COUNT);
}

double
spv_line_amplitude(const SpvLine *line, double pitch) {
  if (line->profile == SPV_PROFILE_PLAIN)
    return 0;
  return line->amplitude >= 0 ? line->amplitude : spv_profile_unit(line->profile)->part_of_pitch * pitch;
}
