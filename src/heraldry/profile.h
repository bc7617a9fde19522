/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lines of partition: periodic profiles, laid along any straight or curved line. Shapes after Fox-Davies, A
 * Complete Guide to Heraldry (1909) pp. 91-96. */
#pragma once

#include "heraldry/pattern.h"

typedef enum {
  SPV_PROFILE_PLAIN,
  SPV_PROFILE_INDENTED,
  SPV_PROFILE_DANCETTY,
  SPV_PROFILE_EMBATTLED,
  SPV_PROFILE_ENGRAILED,
  SPV_PROFILE_INVECTED,
  SPV_PROFILE_WAVY,
  SPV_PROFILE_NEBULY,
  SPV_PROFILE_DOVETAILED,
  SPV_PROFILE_RAGULY,
  SPV_PROFILE_POTENTY,
  SPV_PROFILE_URDY,
  SPV_PROFILE_RAYONNY
} SpvProfile;
#define SPV_N_PROFILES (SPV_PROFILE_RAYONNY + 1)

/* Which edges of a band bear its line: the order of the choice "edges". */
typedef enum { SPV_EDGES_USUAL, SPV_EDGES_BOTH, SPV_EDGES_FIRST, SPV_EDGES_SECOND } SpvBandEdges;

/* A line of partition as a pattern asks for it. */
typedef struct {
  SpvProfile profile;
  guint periods;    /* 0: by pitch */
  double pitch;     /* mm; 0: the profile's usual pitch */
  double amplitude; /* mm, from trough to crest; below 0: the profile's usual one for its pitch */
} SpvLine;

/* The line of PATTERN on OUTLINE; plain where its kind has none. */
SpvLine spv_line_of(const SpvPattern *pattern, const SpvOutline *outline);

/* "indented", as in the file and in a blazon. */
const char *spv_profile_key(SpvProfile profile);
gboolean spv_profile_from_key(const char *key, SpvProfile *profile);
/* Whether the two edges of a band with this line run alike, one fitting into the other, as a fess wavy or
 * dancetty; otherwise they mirror each other. */
gboolean spv_profile_runs_alike(SpvProfile profile);
/* Whether it looks the same from either end. */
gboolean spv_profile_is_symmetrical(SpvProfile profile);

/* LINE laid along BASELINE (an open track, or a closed one for a line that runs all round): an SpvPath of one
 * run from its start to its end. Whole periods between S0 and S1 (mm along it, S1 > S0), symmetrical about
 * their middle where the
 * profile allows; before S0 and after S1 the same teeth go on to the track's ends, where the panel's edge
 * cuts them. Crests stand to the side of spv_track_normal(), or the other one where SIDE is -1; the profile
 * swings evenly about the baseline. A plain line, or one without amplitude, is the baseline itself. On a
 * straight baseline curves stay curves. */
SpvPath *spv_line_lay(const SpvLine *line, const SpvTrack *baseline, double s0, double s1, double side);
/* LINE on two legs that fall from APEX, the right one in DIRECTION (length 1, x > 0), the left one as its
 * mirror image: one run from the left leg's end over the apex to the right one's, each leg LENGTH mm long and
 * whole from S0 to S1 mm from the apex; where S0 is 0, from where the troughs of both legs meet. Crests stand
 * below where SIDE is 1, above where it is -1. */
SpvPath *spv_line_lay_legs(const SpvLine *line, SpvPoint apex, SpvPoint direction, double length, double s0,
                           double s1, double side);
/* How many whole periods LINE has on LENGTH mm: at least 1, at most SPV_PATTERN_MAX_COUNT, 0 for a plain one.
 * UNIT (mm) is the panel's lesser side, from which the usual pitch is taken. */
guint spv_line_periods(const SpvLine *line, double length, double unit);
/* From trough to crest, mm, where its teeth are PITCH mm apart; 0 for a plain line. */
double spv_line_amplitude(const SpvLine *line, double pitch);
