/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A line of partition before it is laid: steps in a plane where s runs along the baseline and v across it. */
#pragma once

#include "heraldry/profile.h"

/* A line, or a cubic curve, from where the last step ended. x is s, y is v: mm in a run; in a profile's own
 * unit s is a part of the pitch and v of the amplitude. */
typedef struct {
  gboolean curved;
  SpvPoint c1, c2, to;
} SpvRunStep;

/* One period of a profile, from (0, START) to (1, START), between -1/2 (trough) and 1/2 (crest). */
typedef struct {
  const SpvRunStep *steps;
  guint n_steps;
  double start;
  double part_of_side;  /* the usual pitch, of the panel's lesser side */
  double part_of_pitch; /* the usual amplitude, of the pitch */
  gboolean runs_alike, symmetrical;
} SpvProfileUnit;

const SpvProfileUnit *spv_profile_unit(SpvProfile profile);

/* LINE as an array of SpvRunStep on a baseline LENGTH mm long: whole periods from S0 to S1, and on to its
 * ends, where they are cut. The first step's `to` is where it starts. */
GArray *spv_line_run(const SpvLine *line, double length, double s0, double s1);
/* As spv_line_run() on a closed baseline: whole periods all round from S0 on, not cut. */
GArray *spv_line_run_round(const SpvLine *line, double length, double s0);
/* RUN with straight steps only, within TOLERANCE mm. */
GArray *spv_run_flatten(const GArray *run, double tolerance);
