/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ordinaries: their names and measures. Widths are the handbooks', as fractions of the field: Kent, The
 * Banner Display'd (1726) ch. 1; Cussans, The Grammar of Heraldry (1866) pp. 13-15; Boutell, Handbook to
 * English Heraldry, 11th ed., ch. VI and VII; Fox-Davies, A Complete Guide to Heraldry (1909) pp. 106-141.
 * Where one depends on how many there are, or on whether it is charged, it stands in bands.c, chevrons.c and
 * crosses.c, each with its source. All can be overruled. */
#include "heraldry/kinds-private.h"

/* clang-format off */
#define WIDTH(basis, fraction) SPEC_LENGTH("width", N_("Width"), N_("How wide it is"), basis, OF(fraction), 0)
/* Chosen by the number: the usual one, less where several would not fit. */
#define WIDTH_BY_NUMBER(basis, hint) SPEC_LENGTH("width", N_("Width"), hint, basis, AUTO, 0)
/* Chosen by whether it is charged. */
#define WIDTH_BY_CHARGE(basis) SPEC_LENGTH("width", N_("Width"), \
  N_("How wide it is; a fifth of the panel when not given, a third when charged"), basis, AUTO, 0)
#define NUMBER(n) SPEC_COUNT("number", N_("Number"), N_("How many there are"), COUNT(n), 1, 50)
#define APART(basis) SPEC_LENGTH("apart", N_("Apart"), N_("How far one is from the next; evenly when not given"), basis, AUTO, 0)

#define FESS_MEASURES(name, width_hint, n) static const SpvMeasureSpec name[] = { \
  WIDTH_BY_NUMBER(SPV_BASIS_HEIGHT, width_hint), NUMBER(n), APART(SPV_BASIS_HEIGHT), \
  SPEC_LENGTH("shift", N_("Shift"), N_("How far the middle lies below half the height"), SPV_BASIS_HEIGHT, OF(0), -LONGEST), \
  EDGES_MEASURE, LINE_MEASURES }

FESS_MEASURES(fess_measures, N_("How wide it is; a third of the panel when not given, less where several must fit"), 1);
FESS_MEASURES(bar_measures, N_("How wide it is; a fifth of the panel when not given, less where many must fit"), 2);
FESS_MEASURES(closet_measures, N_("How wide it is; a tenth of the panel when not given, less where many must fit"), 2);
FESS_MEASURES(barrulet_measures, N_("How wide it is; a twentieth of the panel when not given, less where many must fit"), 2);

/* A pair of barrulets, counted as one: Fox-Davies pp. 119-120. */
static const SpvMeasureSpec bar_gemel_measures[] = {
  WIDTH_BY_NUMBER(SPV_BASIS_HEIGHT, N_("How wide each bar of a pair is; a twentieth of the panel when not given, less where many must fit")),
  SPEC_COUNT("number", N_("Pairs"), N_("How many pairs there are"), COUNT(1), 1, 50),
  SPEC_LENGTH("gap", N_("Gap"), N_("Between the two bars of a pair; as wide as a bar when not given"), SPV_BASIS_HEIGHT, AUTO, 0),
  APART(SPV_BASIS_HEIGHT),
  SPEC_LENGTH("shift", N_("Shift"), N_("How far the middle lies below half the height"), SPV_BASIS_HEIGHT, OF(0), -LONGEST),
  EDGES_MEASURE, LINE_MEASURES,
};

#define PALE_MEASURES(name, width_hint, n) static const SpvMeasureSpec name[] = { \
  WIDTH_BY_NUMBER(SPV_BASIS_WIDTH, width_hint), NUMBER(n), APART(SPV_BASIS_WIDTH), \
  SPEC_LENGTH("shift", N_("Shift"), N_("How far the middle lies from the centre line, towards sinister"), SPV_BASIS_WIDTH, OF(0), -LONGEST), \
  EDGES_MEASURE, LINE_MEASURES }

PALE_MEASURES(pale_measures, N_("How wide it is; a third of the panel when not given, less where several must fit"), 1);
PALE_MEASURES(pallet_measures, N_("How wide it is; a sixth of the panel when not given, less where many must fit"), 2);
PALE_MEASURES(endorse_measures, N_("How wide it is; a twelfth of the panel when not given, less where many must fit"), 2);

#define SLOPE SPEC_ANGLE("angle", N_("Slope"), N_("How steeply it falls; from corner to corner when not given"), AUTO, 1, 89)
#define BEND_SHIFT SPEC_LENGTH("shift", N_("Shift"), \
  N_("How far from the centre line the middle crosses half the height, towards sinister"), SPV_BASIS_WIDTH, OF(0), -LONGEST)

static const SpvMeasureSpec bend_measures[] = {
  WIDTH_BY_CHARGE(SPV_BASIS_WIDTH), NUMBER(1), APART(SPV_BASIS_WIDTH), SLOPE, BEND_SHIFT, CHARGED_MEASURE,
  EDGES_MEASURE, LINE_MEASURES,
};

#define BENDLET_MEASURES(name, n) static const SpvMeasureSpec name[] = { \
  WIDTH_BY_NUMBER(SPV_BASIS_WIDTH, N_("How wide it is; a tenth of the panel when not given, less where many must fit")), \
  NUMBER(n), APART(SPV_BASIS_WIDTH), SLOPE, BEND_SHIFT, EDGES_MEASURE, LINE_MEASURES }

BENDLET_MEASURES(bendlet_measures, 2);
BENDLET_MEASURES(scarpe_measures, 1);

/* A quarter of a bend, never alone: Fox-Davies p. 113. One on either side of a bend of the usual width. */
static const SpvMeasureSpec cotise_measures[] = {
  WIDTH(SPV_BASIS_WIDTH, 1.0 / 20),
  SPEC_LENGTH("apart", N_("Apart"), N_("How far the two are from each other, measured inside"), SPV_BASIS_WIDTH, OF(0.3), 0),
  SLOPE, BEND_SHIFT, EDGES_MEASURE, LINE_MEASURES,
};

/* A quarter of a bend, couped: Manual of Heraldry, 5th ed., ch. IV. The length is common practice, no source. */
static const SpvMeasureSpec baton_measures[] = {
  WIDTH(SPV_BASIS_WIDTH, 1.0 / 20),
  SPEC_LENGTH("length", N_("Length"), N_("From end to end"), SPV_BASIS_SMALLER, OF(0.7), 0),
  SLOPE, BEND_SHIFT, EDGES_MEASURE, LINE_MEASURES,
};

#define CHEVRON_MEASURES(name, width_hint, n) static const SpvMeasureSpec name[] = { \
  WIDTH_BY_NUMBER(SPV_BASIS_WIDTH, width_hint), \
  NUMBER(n), APART(SPV_BASIS_HEIGHT), \
  SPEC_LENGTH("apex", N_("Apex"), N_("How far the point of the uppermost lies below the top edge; by their number when not given"), \
              SPV_BASIS_HEIGHT, AUTO, -LONGEST), \
  SPEC_ANGLE("angle", N_("Angle"), N_("Between the two limbs"), DEGREES(90), 10, 170), \
  EDGES_MEASURE, LINE_MEASURES }

CHEVRON_MEASURES(chevron_measures, N_("How wide its limbs are; a fifth of the panel when not given, less where several must fit"), 1);
CHEVRON_MEASURES(chevronel_measures, N_("How wide its limbs are; a tenth of the panel when not given, less where many must fit"), 3);
CHEVRON_MEASURES(couple_close_measures, N_("How wide its limbs are; a twentieth of the panel when not given, less where many must fit"), 2);

static const SpvMeasureSpec cross_measures[] = {
  WIDTH_BY_CHARGE(SPV_BASIS_WIDTH),
  SPEC_LENGTH("across", N_("Shift across"), N_("How far the upright limb lies from the centre line, towards sinister"),
              SPV_BASIS_WIDTH, OF(0), -LONGEST),
  SPEC_LENGTH("down", N_("Shift down"), N_("How far the level limb lies below half the height"), SPV_BASIS_HEIGHT, OF(0), -LONGEST),
  CHARGED_MEASURE, LINE_MEASURES,
};

static const SpvMeasureSpec saltire_measures[] = {
  WIDTH_BY_CHARGE(SPV_BASIS_WIDTH), SLOPE, CHARGED_MEASURE, LINE_MEASURES,
};

/* The width by Fox-Davies p. 124, the rest at discretion. The length is common practice, no source. */
static const SpvMeasureSpec pile_measures[] = {
  SPEC_LENGTH("width", N_("Width"), N_("How wide it is at the top edge; nearly all of it when not given, shared where there are several"),
              SPV_BASIS_WIDTH, AUTO, 0),
  SPEC_LENGTH("length", N_("Length"), N_("How far the point lies below the top edge"), SPV_BASIS_HEIGHT, OF(0.85), 0),
  NUMBER(1), LINE_MEASURES,
};

/* Common practice, no source: as wide as a cross. */
static const SpvMeasureSpec pall_measures[] = {
  WIDTH(SPV_BASIS_WIDTH, 1.0 / 5),
  SPEC_LENGTH("down", N_("Meeting point"), N_("How far below the top edge the three limbs meet"), SPV_BASIS_HEIGHT, OF(0.5), -LONGEST),
  SPEC_ANGLE("angle", N_("Angle"), N_("Between the two upper limbs; to the upper corners when not given"), AUTO, 10, 170),
  LINE_MEASURES,
};

/* A quarter of the field: Fox-Davies p. 134. */
static const SpvMeasureSpec quarter_measures[] = {
  SPEC_LENGTH("width", N_("Width"), N_("How wide it is"), SPV_BASIS_WIDTH, OF(0.5), 0),
  SPEC_LENGTH("height", N_("Height"), N_("How high it is"), SPV_BASIS_HEIGHT, OF(0.5), 0),
  LINE_MEASURES,
};

static const SpvMeasureSpec canton_measures[] = {
  SPEC_LENGTH("width", N_("Width"), N_("How wide it is; a third of the panel when not given, wider when charged"), SPV_BASIS_WIDTH, AUTO, 0),
  SPEC_LENGTH("height", N_("Height"), N_("How high it is; a third of the panel when not given, more when charged"), SPV_BASIS_HEIGHT, AUTO, 0),
  CHARGED_MEASURE, LINE_MEASURES,
};

static const SpvMeasureSpec gyron_measures[] = { LINE_MEASURES };

/* Common practice, no source. */
static const SpvMeasureSpec flaunches_measures[] = {
  SPEC_LENGTH("width", N_("Width"), N_("How far each comes in from its side"), SPV_BASIS_WIDTH, OF(0.25), 0),
  LINE_MEASURES,
};

/* A fifth of the escutcheon: Kent no. 6. */
static const SpvMeasureSpec inescutcheon_measures[] = {
  SPEC_LENGTH("width", N_("Width"), N_("How wide it is; it has the panel's own shape"), SPV_BASIS_WIDTH, OF(1.0 / 5), 0),
  SPEC_LENGTH("across", N_("Shift across"), N_("How far its centre lies from the centre line, towards sinister"), SPV_BASIS_WIDTH, OF(0), -LONGEST),
  SPEC_LENGTH("down", N_("Shift down"), N_("How far its centre lies below half the height"), SPV_BASIS_HEIGHT, OF(0), -LONGEST),
  LINE_MEASURES,
};

/* Lowest part of the chief, a quarter of it: Cussans p. 13. */
static const SpvMeasureSpec fillet_measures[] = {
  SPEC_LENGTH("width", N_("Width"), N_("How deep it is"), SPV_BASIS_HEIGHT, OF(1.0 / 12), 0),
  SPEC_LENGTH("level", N_("Level"), N_("How far its lower edge lies below the top edge"), SPV_BASIS_HEIGHT, OF(1.0 / 3), -LONGEST),
  EDGES_MEASURE, LINE_MEASURES,
};

/* A third of the field: Kent no. 2; Cussans p. 13. */
static const SpvMeasureSpec chief_measures[] = {
  SPEC_LENGTH("depth", N_("Depth"), N_("How far the chief comes down from the top edge"), SPV_BASIS_HEIGHT, OF(1.0 / 3), 0),
  LINE_MEASURES,
};

/* Common practice, no source. */
static const SpvMeasureSpec label_measures[] = {
  SPEC_COUNT("points", N_("Points"), N_("How many points hang from it"), COUNT(3), 1, 50),
  SPEC_LENGTH("width", N_("Width"), N_("How wide the strap and each point are"), SPV_BASIS_WIDTH, OF(0.07), 0),
  SPEC_LENGTH("depth", N_("Depth"), N_("How far the points hang down from the strap's upper edge"), SPV_BASIS_HEIGHT, OF(0.2), 0),
  SPEC_LENGTH("level", N_("Level"), N_("How far the strap's upper edge lies below the top edge"), SPV_BASIS_HEIGHT, OF(0.12), -LONGEST),
  SPEC_LENGTH("length", N_("Length"), N_("How long the strap is; from side to side when not given"), SPV_BASIS_WIDTH, AUTO, 0),
};

#define KIND(kind) [kind - SPV_PATTERN_CHIEF]
#define ORDINARY(key, label, table, lay_it) { key, label, 1, { label }, MEASURES(table), .lay = lay_it }

const SpvPatternInfo spv_ordinary_kinds[] = {
  KIND(SPV_PATTERN_CHIEF) = ORDINARY("chief", N_("Chief"), chief_measures, spv_lay_chief),
  KIND(SPV_PATTERN_FILLET) = ORDINARY("fillet", N_("Fillet"), fillet_measures, spv_lay_fillet),
  KIND(SPV_PATTERN_FESS) = ORDINARY("fess", N_("Fess"), fess_measures, spv_lay_fess),
  KIND(SPV_PATTERN_BAR) = ORDINARY("bar", N_("Bar"), bar_measures, spv_lay_fess),
  KIND(SPV_PATTERN_CLOSET) = ORDINARY("closet", N_("Closet"), closet_measures, spv_lay_fess),
  KIND(SPV_PATTERN_BARRULET) = ORDINARY("barrulet", N_("Barrulet"), barrulet_measures, spv_lay_fess),
  KIND(SPV_PATTERN_BAR_GEMEL) = ORDINARY("bar-gemel", N_("Bar gemel"), bar_gemel_measures, spv_lay_fess),
  KIND(SPV_PATTERN_PALE) = ORDINARY("pale", N_("Pale"), pale_measures, spv_lay_pale),
  KIND(SPV_PATTERN_PALLET) = ORDINARY("pallet", N_("Pallet"), pallet_measures, spv_lay_pale),
  KIND(SPV_PATTERN_ENDORSE) = ORDINARY("endorse", N_("Endorse"), endorse_measures, spv_lay_pale),
  KIND(SPV_PATTERN_BEND) = ORDINARY("bend", N_("Bend"), bend_measures, spv_lay_bend),
  KIND(SPV_PATTERN_BENDLET) = ORDINARY("bendlet", N_("Bendlet"), bendlet_measures, spv_lay_bend),
  KIND(SPV_PATTERN_COTISE) = ORDINARY("cotise", N_("Cotises"), cotise_measures, spv_lay_cotise),
  KIND(SPV_PATTERN_BEND_SINISTER) = ORDINARY("bend-sinister", N_("Bend sinister"), bend_measures, spv_lay_bend),
  KIND(SPV_PATTERN_SCARPE) = ORDINARY("scarpe", N_("Scarpe"), scarpe_measures, spv_lay_bend),
  KIND(SPV_PATTERN_BATON) = ORDINARY("baton", N_("Baton"), baton_measures, spv_lay_baton),
  KIND(SPV_PATTERN_CHEVRON) = ORDINARY("chevron", N_("Chevron"), chevron_measures, spv_lay_chevron),
  KIND(SPV_PATTERN_CHEVRONEL) = ORDINARY("chevronel", N_("Chevronel"), chevronel_measures, spv_lay_chevron),
  KIND(SPV_PATTERN_COUPLE_CLOSE) = ORDINARY("couple-close", N_("Couple-close"), couple_close_measures, spv_lay_chevron),
  KIND(SPV_PATTERN_CROSS) = ORDINARY("cross", N_("Cross"), cross_measures, spv_lay_cross),
  KIND(SPV_PATTERN_SALTIRE) = ORDINARY("saltire", N_("Saltire"), saltire_measures, spv_lay_saltire),
  KIND(SPV_PATTERN_PILE) = ORDINARY("pile", N_("Pile"), pile_measures, spv_lay_pile),
  KIND(SPV_PATTERN_PALL) = ORDINARY("pall", N_("Pall"), pall_measures, spv_lay_pall),
  KIND(SPV_PATTERN_QUARTER) = ORDINARY("quarter", N_("Quarter"), quarter_measures, spv_lay_quarter),
  KIND(SPV_PATTERN_CANTON) = ORDINARY("canton", N_("Canton"), canton_measures, spv_lay_canton),
  KIND(SPV_PATTERN_GYRON) = ORDINARY("gyron", N_("Gyron"), gyron_measures, spv_lay_gyron),
  KIND(SPV_PATTERN_FLAUNCHES) = ORDINARY("flaunches", N_("Flaunches"), flaunches_measures, spv_lay_flaunches),
  KIND(SPV_PATTERN_INESCUTCHEON) = ORDINARY("inescutcheon", N_("Inescutcheon"), inescutcheon_measures, spv_lay_inescutcheon),
  KIND(SPV_PATTERN_LABEL) = ORDINARY("label", N_("Label"), label_measures, spv_lay_label),
};
/* clang-format on */
