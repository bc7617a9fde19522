/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The field and its divisions: their names, tinctures and measures. */
#include "heraldry/kinds-private.h"

/* clang-format off */
static const SpvMeasureSpec per_pale_measures[] = {
  SPEC_LENGTH("shift", N_("Shift"), N_("How far the line lies from the centre line, towards sinister"),
              SPV_BASIS_WIDTH, OF(0), -LONGEST),
  LINE_MEASURES,
};

static const SpvMeasureSpec per_fess_measures[] = {
  SPEC_LENGTH("shift", N_("Shift"), N_("How far the line lies below half the height"),
              SPV_BASIS_HEIGHT, OF(0), -LONGEST),
  LINE_MEASURES,
};

static const SpvMeasureSpec per_bend_measures[] = {
  SPEC_ANGLE("angle", N_("Slope"), N_("How steeply the line falls; from corner to corner when not given"), AUTO, 1, 89),
  SPEC_LENGTH("shift", N_("Shift"), N_("How far from the centre line it crosses half the height, towards sinister"),
              SPV_BASIS_WIDTH, OF(0), -LONGEST),
  LINE_MEASURES,
};

static const SpvMeasureSpec per_chevron_measures[] = {
  SPEC_LENGTH("apex", N_("Apex"), N_("How far the point lies below the top edge"), SPV_BASIS_HEIGHT, OF(0.4), -LONGEST),
  SPEC_ANGLE("angle", N_("Angle"), N_("Between the two legs"), DEGREES(90), 10, 170),
  LINE_MEASURES,
};

static const SpvMeasureSpec per_saltire_measures[] = {
  SPEC_ANGLE("angle", N_("Slope"), N_("How steeply the lines fall; from corner to corner when not given"), AUTO, 1, 89),
  LINE_MEASURES,
};

static const SpvMeasureSpec per_pall_measures[] = {
  SPEC_LENGTH("down", N_("Meeting point"), N_("How far below the top edge the three lines meet"),
              SPV_BASIS_HEIGHT, OF(0.5), -LONGEST),
  SPEC_ANGLE("angle", N_("Angle"), N_("Between the two upper lines; to the upper corners when not given"), AUTO, 10, 170),
  LINE_MEASURES,
};

static const SpvMeasureSpec quarterly_measures[] = {
  SPEC_LENGTH("across", N_("Shift across"), N_("How far the upright line lies from the centre line, towards sinister"),
              SPV_BASIS_WIDTH, OF(0), -LONGEST),
  SPEC_LENGTH("down", N_("Shift down"), N_("How far the level line lies below half the height"),
              SPV_BASIS_HEIGHT, OF(0), -LONGEST),
  LINE_MEASURES,
};

static const SpvMeasureSpec tierced_in_pale_measures[] = {
  SPEC_LENGTH("middle", N_("Middle"), N_("How wide the middle part is"), SPV_BASIS_WIDTH, OF(1.0 / 3), 0),
  LINE_MEASURES,
};

static const SpvMeasureSpec tierced_in_fess_measures[] = {
  SPEC_LENGTH("middle", N_("Middle"), N_("How deep the middle part is"), SPV_BASIS_HEIGHT, OF(1.0 / 3), 0),
  LINE_MEASURES,
};

/* Eight unless stated: Fox-Davies (1909) p. 137; Boutell, 11th ed., ch. VII. */
static const char *const gyronny_pieces[] = { "8", "6", "10", "12", "16", NULL };

static const SpvMeasureSpec gyronny_measures[] = {
  SPEC_CHOICE("pieces", N_("Pieces"), N_("How many gyrons, both tinctures together"), gyronny_pieces),
  SPEC_LENGTH("across", N_("Shift across"), N_("How far the point where they meet lies from the centre line, towards sinister"),
              SPV_BASIS_WIDTH, OF(0), -LONGEST),
  SPEC_LENGTH("down", N_("Shift down"), N_("How far the point where they meet lies below half the height"),
              SPV_BASIS_HEIGHT, OF(0), -LONGEST),
  LINE_MEASURES,
};

#define KIND(kind) [kind - SPV_PATTERN_FIELD]

const SpvPatternInfo spv_division_kinds[] = {
  KIND(SPV_PATTERN_FIELD) = { "field", N_("Field"), 1, { N_("Field") }, .lay = spv_lay_field },
  KIND(SPV_PATTERN_PER_PALE) = { "per-pale", N_("Per pale"), 2, { N_("Dexter"), N_("Sinister") },
    MEASURES(per_pale_measures), .lay = spv_lay_per_pale },
  KIND(SPV_PATTERN_PER_FESS) = { "per-fess", N_("Per fess"), 2, { N_("Chief"), N_("Base") },
    MEASURES(per_fess_measures), .lay = spv_lay_per_fess },
  KIND(SPV_PATTERN_PER_BEND) = { "per-bend", N_("Per bend"), 2, { N_("Sinister chief"), N_("Dexter base") },
    MEASURES(per_bend_measures), .lay = spv_lay_per_bend },
  KIND(SPV_PATTERN_PER_BEND_SINISTER) = { "per-bend-sinister", N_("Per bend sinister"), 2,
    { N_("Dexter chief"), N_("Sinister base") }, MEASURES(per_bend_measures), .lay = spv_lay_per_bend },
  KIND(SPV_PATTERN_PER_CHEVRON) = { "per-chevron", N_("Per chevron"), 2, { N_("Chief"), N_("Base") },
    MEASURES(per_chevron_measures), .lay = spv_lay_per_chevron },
  KIND(SPV_PATTERN_PER_SALTIRE) = { "per-saltire", N_("Per saltire"), 2, { N_("Chief and base"), N_("Flanks") },
    MEASURES(per_saltire_measures), .lay = spv_lay_per_saltire },
  KIND(SPV_PATTERN_PER_PALL) = { "per-pall", N_("Per pall"), 3, { N_("Chief"), N_("Dexter"), N_("Sinister") },
    MEASURES(per_pall_measures), .lay = spv_lay_per_pall },
  KIND(SPV_PATTERN_QUARTERLY) = { "quarterly", N_("Quarterly"), 2, { N_("First and fourth"), N_("Second and third") },
    MEASURES(quarterly_measures), .lay = spv_lay_quarterly },
  KIND(SPV_PATTERN_TIERCED_IN_PALE) = { "tierced-in-pale", N_("Tierced in pale"), 3,
    { N_("Dexter"), N_("Middle"), N_("Sinister") }, MEASURES(tierced_in_pale_measures), .lay = spv_lay_tierced_in_pale },
  KIND(SPV_PATTERN_TIERCED_IN_FESS) = { "tierced-in-fess", N_("Tierced in fess"), 3,
    { N_("Chief"), N_("Middle"), N_("Base") }, MEASURES(tierced_in_fess_measures), .lay = spv_lay_tierced_in_fess },
  KIND(SPV_PATTERN_GYRONNY) = { "gyronny", N_("Gyronny"), 2, { N_("First"), N_("Second") },
    MEASURES(gyronny_measures), .lay = spv_lay_gyronny },
};
/* clang-format on */
