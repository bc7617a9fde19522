/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Varied fields: their names, tinctures and measures. */
#include "heraldry/kinds-private.h"

static const char *const centre_choices[] = { N_("best"), N_("line"), N_("cell"), NULL };
static const char *const lace_choices[] = { N_("interlaced"), N_("plain"), NULL };

/* clang-format off */
static const SpvMeasureSpec stripes_measures[] = {
  SPEC_COUNT("pieces", N_("Pieces"), N_("How many stripes, both tinctures together"), COUNT(6), 2, SPV_PATTERN_MAX_COUNT),
  LINE_MEASURES,
};

static const SpvMeasureSpec bendy_measures[] = {
  SPEC_COUNT("pieces", N_("Pieces"), N_("How many stripes, both tinctures together"), COUNT(6), 2, SPV_PATTERN_MAX_COUNT),
  SPEC_ANGLE("angle", N_("Slope"), N_("How steeply the stripes fall; from corner to corner when not given"), AUTO, 1, 89),
  LINE_MEASURES,
};

static const SpvMeasureSpec chevronny_measures[] = {
  SPEC_COUNT("pieces", N_("Pieces"), N_("How many chevrons lie on the centre line, both tinctures together"), COUNT(6), 2, SPV_PATTERN_MAX_COUNT),
  SPEC_ANGLE("angle", N_("Angle"), N_("Between the two legs"), DEGREES(90), 10, 170),
  LINE_MEASURES,
};

static const SpvMeasureSpec barry_bendy_measures[] = {
  SPEC_COUNT("pieces", N_("Bars"), N_("How many level stripes lie over one another"), COUNT(6), 2, SPV_PATTERN_MAX_COUNT),
  SPEC_COUNT("bends", N_("Bends"), N_("How many slanting stripes cross them"), COUNT(6), 2, SPV_PATTERN_MAX_COUNT),
  SPEC_ANGLE("angle", N_("Slope"), N_("How steeply the bends fall; from corner to corner when not given"), AUTO, 1, 89),
};

static const SpvMeasureSpec paly_bendy_measures[] = {
  SPEC_COUNT("pieces", N_("Pales"), N_("How many upright stripes lie side by side"), COUNT(6), 2, SPV_PATTERN_MAX_COUNT),
  SPEC_COUNT("bends", N_("Bends"), N_("How many slanting stripes cross them"), COUNT(6), 2, SPV_PATTERN_MAX_COUNT),
  SPEC_ANGLE("angle", N_("Slope"), N_("How steeply the bends fall; from corner to corner when not given"), AUTO, 1, 89),
};

/* Seven cells across: Encyclopaedia Britannica, 9th ed., vol. 11, p. 698. */
static const SpvMeasureSpec check_measures[] = {
  SPEC_COUNT("columns", N_("Columns"), N_("How many cells lie across the panel, where no cell size is given"),
             COUNT(7), 1, SPV_PATTERN_MAX_COUNT),
  SPEC_LENGTH("cell", N_("Cell"), N_("How wide a cell is; empty it to go by the columns"), SPV_BASIS_WIDTH, AUTO, 0.05),
  SPEC_COUNT("rows", N_("Rows"), N_("How many cells lie down the panel; square cells when not given"),
             AUTO, 1, SPV_PATTERN_MAX_COUNT),
  SPEC_CHOICE("centre", N_("Centred on"), N_("A line or a cell; best keeps the cells at the edge as wide as they can be"),
              centre_choices),
  SPEC_LENGTH("across", N_("Shift across"), N_("Moves the grid towards sinister"), SPV_BASIS_WIDTH, AUTO, -LONGEST),
  SPEC_LENGTH("down", N_("Shift down"), N_("Moves the grid down"), SPV_BASIS_HEIGHT, AUTO, -LONGEST),
  SPEC_ANGLE("turn", N_("Turn"), N_("How far the grid is turned, clockwise"), DEGREES(0), -90, 90),
};

static const SpvMeasureSpec lozengy_measures[] = {
  SPEC_COUNT("columns", N_("Columns"), N_("How many lozenges lie across the panel"), COUNT(6), 1, SPV_PATTERN_MAX_COUNT),
  SPEC_ANGLE("angle", N_("Slope"), N_("How steeply the lozenges' sides fall"), DEGREES(55), 5, 85),
  SPEC_LENGTH("across", N_("Shift across"), N_("Moves the lozenges towards sinister"), SPV_BASIS_WIDTH, OF(0), -LONGEST),
  SPEC_LENGTH("down", N_("Shift down"), N_("Moves the lozenges down"), SPV_BASIS_HEIGHT, OF(0), -LONGEST),
};

/* As lozengy, at a more acute angle: Fox-Davies (1909) p. 122; the angle itself is common practice, no source. */
static const SpvMeasureSpec fusily_measures[] = {
  SPEC_COUNT("columns", N_("Columns"), N_("How many fusils lie across the panel"), COUNT(6), 1, SPV_PATTERN_MAX_COUNT),
  SPEC_ANGLE("angle", N_("Slope"), N_("How steeply the fusils' sides fall"), DEGREES(72), 5, 85),
  SPEC_LENGTH("across", N_("Shift across"), N_("Moves the fusils towards sinister"), SPV_BASIS_WIDTH, OF(0), -LONGEST),
  SPEC_LENGTH("down", N_("Shift down"), N_("Moves the fusils down"), SPV_BASIS_HEIGHT, OF(0), -LONGEST),
};

static const SpvMeasureSpec fretty_measures[] = {
  SPEC_COUNT("columns", N_("Columns"), N_("How many meshes lie across the panel"), COUNT(4), 1, SPV_PATTERN_MAX_COUNT),
  SPEC_LENGTH("width", N_("Width"), N_("How wide the laces are"), SPV_BASIS_WIDTH, OF(0.06), 0),
  SPEC_ANGLE("angle", N_("Slope"), N_("How steeply the laces fall"), DEGREES(50), 5, 85),
  SPEC_CHOICE("laces", N_("Laces"), N_("Over and under each other, or plainly crossed"), lace_choices),
};

static const SpvMeasureSpec masoned_measures[] = {
  SPEC_COUNT("courses", N_("Courses"), N_("How many rows of stones lie over one another"), COUNT(5), 1, SPV_PATTERN_MAX_COUNT),
  SPEC_LENGTH("stone", N_("Stone"), N_("How wide a stone is; twice its height when not given"), SPV_BASIS_WIDTH, AUTO, 0.05),
  SPEC_LENGTH("joint", N_("Joint"), N_("How wide the joints between the stones are"), SPV_BASIS_SMALLER, OF(0.04), 0),
};

#define KIND(kind) [kind - SPV_PATTERN_PALY]
#define FIRST_SECOND { N_("First"), N_("Second") }

const SpvPatternInfo spv_varied_kinds[] = {
  KIND(SPV_PATTERN_PALY) = { "paly", N_("Paly"), 2, FIRST_SECOND, MEASURES(stripes_measures), .lay = spv_lay_stripes },
  KIND(SPV_PATTERN_BARRY) = { "barry", N_("Barry"), 2, FIRST_SECOND, MEASURES(stripes_measures), .lay = spv_lay_stripes },
  KIND(SPV_PATTERN_BENDY) = { "bendy", N_("Bendy"), 2, FIRST_SECOND, MEASURES(bendy_measures), .lay = spv_lay_stripes },
  KIND(SPV_PATTERN_BENDY_SINISTER) = { "bendy-sinister", N_("Bendy sinister"), 2, FIRST_SECOND,
    MEASURES(bendy_measures), .lay = spv_lay_stripes },
  KIND(SPV_PATTERN_CHEVRONNY) = { "chevronny", N_("Chevronny"), 2, FIRST_SECOND,
    MEASURES(chevronny_measures), .lay = spv_lay_chevronny },
  KIND(SPV_PATTERN_BARRY_BENDY) = { "barry-bendy", N_("Barry-bendy"), 2, FIRST_SECOND,
    MEASURES(barry_bendy_measures), .lay = spv_lay_barry_bendy },
  KIND(SPV_PATTERN_PALY_BENDY) = { "paly-bendy", N_("Paly-bendy"), 2, FIRST_SECOND,
    MEASURES(paly_bendy_measures), .lay = spv_lay_paly_bendy },
  KIND(SPV_PATTERN_CHECK) = { "check", N_("Check"), 2, FIRST_SECOND, MEASURES(check_measures), .lay = spv_lay_check },
  KIND(SPV_PATTERN_LOZENGY) = { "lozengy", N_("Lozengy"), 2, FIRST_SECOND,
    MEASURES(lozengy_measures), .lay = spv_lay_lozengy },
  KIND(SPV_PATTERN_FUSILY) = { "fusily", N_("Fusily"), 2, FIRST_SECOND,
    MEASURES(fusily_measures), .lay = spv_lay_lozengy },
  KIND(SPV_PATTERN_FRETTY) = { "fretty", N_("Fretty"), 1, { N_("Laces") },
    MEASURES(fretty_measures), .lay = spv_lay_fretty },
  KIND(SPV_PATTERN_MASONED) = { "masoned", N_("Masoned"), 1, { N_("Joints") },
    MEASURES(masoned_measures), .lay = spv_lay_masoned },
};
/* clang-format on */
