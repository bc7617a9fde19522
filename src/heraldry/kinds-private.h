/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tables of the kinds, one a group, and the words that they are written in. */
#pragma once

#include "config.h"

#include <glib/gi18n-lib.h>

#include "heraldry/lay-private.h"

/* Each is in the order of its group in SpvPatternKind. */
extern const SpvPatternInfo spv_division_kinds[], spv_varied_kinds[], spv_ordinary_kinds[], spv_border_kinds[],
    spv_charge_kinds[], spv_own_kinds[];

/* The keys of the choices, in the order of their enums; through _() the words on screen. */
extern const char *const spv_profile_keys[], *const spv_band_edges[], *const spv_charged_keys[],
    *const spv_edge_choices[];

#define AUTO                                                                                                 \
  { SPV_UNIT_AUTO, 0 }
#define OF(fraction)                                                                                         \
  { SPV_UNIT_RELATIVE, fraction }
#define COUNT(n)                                                                                             \
  { SPV_UNIT_PLAIN, n }
#define CHOICE(i)                                                                                            \
  { SPV_UNIT_PLAIN, i }
#define DEGREES(angle)                                                                                       \
  { SPV_UNIT_DEGREES, angle }
#define LONGEST SPV_OUTLINE_MAX_MM

/* One row of a table of measures. */
#define SPEC_LENGTH(key, label, hint, basis, preset, min)                                                    \
  { key, label, hint, SPV_MEASURE_LENGTH, basis, preset, min, LONGEST, NULL, NULL }
#define SPEC_COUNT(key, label, hint, preset, min, max)                                                       \
  { key, label, hint, SPV_MEASURE_COUNT, SPV_BASIS_NONE, preset, min, max, NULL, NULL }
#define SPEC_ANGLE(key, label, hint, preset, min, max)                                                       \
  { key, label, hint, SPV_MEASURE_ANGLE, SPV_BASIS_NONE, preset, min, max, NULL, NULL }
#define SPEC_CHOICE(key, label, hint, choices)                                                               \
  { key, label, hint, SPV_MEASURE_CHOICE, SPV_BASIS_NONE, CHOICE(0), 0, 0, choices, NULL }

/* The line of partition: the last measures of every kind that has one. */
#define LINE_MEASURES                                                                                        \
  { "line", N_("Line"), N_("The line of partition"), SPV_MEASURE_CHOICE, SPV_BASIS_NONE, CHOICE(0), 0, 0,    \
    spv_profile_keys, NULL },                                                                                \
  { "periods", N_("Teeth"), N_("How many whole teeth or waves the line has, where no pitch is given"),       \
    SPV_MEASURE_COUNT, SPV_BASIS_NONE, AUTO, 1, SPV_PATTERN_MAX_COUNT, NULL, "line" },                       \
  { "pitch", N_("Pitch"), N_("From tooth to tooth, made to come out whole; empty it to go by the teeth"),    \
    SPV_MEASURE_LENGTH, SPV_BASIS_WIDTH, AUTO, 0.05, LONGEST, NULL, "line" },                                \
  { "amplitude", N_("Tooth depth"), N_("How deep the teeth or waves are, from trough to crest"),             \
    SPV_MEASURE_LENGTH, SPV_BASIS_SMALLER, AUTO, 0, LONGEST, NULL, "line" }

/* Which edges of a band bear its line. */
#define EDGES_MEASURE                                                                                        \
  { "edges", N_("On edges"), N_("Which edges bear the line; usual goes by the line, as the handbooks do"),   \
    SPV_MEASURE_CHOICE, SPV_BASIS_NONE, CHOICE(0), 0, 0, spv_band_edges, "line" }

#define CHARGED_MEASURE                                                                                      \
  SPEC_CHOICE("charged", N_("Charged"),                                                                      \
              N_("Whether it bears charges: then it is wider, where no width is given"), spv_charged_keys)

#define MEASURES(table) .n_measures = G_N_ELEMENTS(table), .measures = table
#define TEXTS(table) .n_texts = G_N_ELEMENTS(table), .texts = table
