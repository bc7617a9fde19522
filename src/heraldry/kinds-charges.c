/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Charges: their names and measures. All stand, and are arranged, in the same way. */
#include "heraldry/kinds-private.h"

#include "heraldry/arrange.h"
#include "heraldry/lettering.h"

static const char *const hole_choices[] = { N_("whole"), N_("pierced"), NULL };

/* clang-format off */
/* The first measures of every charge, in the order of their enum. */
#define CHARGE_MEASURES(size_key, size_label) \
  SPEC_LENGTH("across", N_("Shift across"), N_("How far the middle lies from the centre line, towards sinister"), \
              SPV_BASIS_WIDTH, AUTO, -LONGEST), \
  SPEC_LENGTH("down", N_("Below datum"), N_("How far the middle lies below the top edge"), SPV_BASIS_HEIGHT, AUTO, -LONGEST), \
  SPEC_LENGTH(size_key, size_label, N_("How high or wide each is, whichever is more"), SPV_BASIS_SMALLER, AUTO, 0), \
  SPEC_ANGLE("turn", N_("Turn"), N_("How far each is turned, clockwise"), DEGREES(0), -180, 180), \
  SPEC_CHOICE("place", N_("Place"), N_("The part of the panel in which they stand"), spv_place_keys), \
  SPEC_COUNT("number", N_("Number"), N_("How many there are"), COUNT(1), 1, SPV_PATTERN_MAX_COUNT), \
  SPEC_CHOICE("arrangement", N_("Arrangement"), N_("How they stand; usual goes by their number and by what they stand on"), \
              spv_arrangement_keys), \
  SPEC_LENGTH("spacing", N_("Spacing"), N_("From the middle of one to the next"), SPV_BASIS_WIDTH, AUTO, 0.05)

static const SpvMeasureSpec roundel_measures[] = { CHARGE_MEASURES("diameter", N_("Diameter")) };
static const SpvMeasureSpec plain_measures[] = { CHARGE_MEASURES("size", N_("Size")) };

/* Voided charges: how much of them the hole is. */
#define VOIDED_MEASURES(name, fraction) static const SpvMeasureSpec name[] = { \
  CHARGE_MEASURES("size", N_("Size")), \
  SPEC_COUNT("hole", N_("Hole, %"), N_("How wide the hole is, of the whole width"), COUNT(fraction), 5, 95) }
VOIDED_MEASURES(annulet_measures, 55);
VOIDED_MEASURES(mascle_measures, 55);
VOIDED_MEASURES(rustre_measures, 35);

static const SpvMeasureSpec mullet_measures[] = {
  CHARGE_MEASURES("size", N_("Size")),
  SPEC_COUNT("points", N_("Points"), N_("How many points it has"), COUNT(5), 3, 16),
  SPEC_CHOICE("pierced", N_("Pierced"), N_("Whether it has a round hole in its middle"), hole_choices),
};
static const SpvMeasureSpec estoile_measures[] = {
  CHARGE_MEASURES("size", N_("Size")),
  SPEC_COUNT("points", N_("Points"), N_("How many wavy points it has"), COUNT(6), 4, 16),
};
static const SpvMeasureSpec wheel_measures[] = {
  CHARGE_MEASURES("size", N_("Size")),
  SPEC_COUNT("points", N_("Spokes"), N_("How many spokes it has"), COUNT(6), 3, 16),
};
static const SpvMeasureSpec cog_measures[] = {
  CHARGE_MEASURES("size", N_("Size")),
  SPEC_COUNT("points", N_("Teeth"), N_("How many teeth it has"), COUNT(8), 4, 24),
};
static const SpvMeasureSpec sun_measures[] = {
  CHARGE_MEASURES("size", N_("Size")),
  SPEC_COUNT("points", N_("Rays"), N_("How many rays it has"), COUNT(12), 6, 32),
};
static const SpvMeasureSpec tally_measures[] = {
  CHARGE_MEASURES("size", N_("Size")),
  SPEC_COUNT("points", N_("Strokes"), N_("How many strokes it has; every fifth crosses four"), COUNT(5), 1, 20),
};

static const SpvTextSpec charge_texts[] = { SPV_ROWS_TEXT };

#define KIND(kind) [kind - SPV_PATTERN_ROUNDEL]
#define CHARGE(key, label, table) { key, label, 1, { label }, MEASURES(table), .lay = spv_lay_charge, TEXTS(charge_texts) }

const SpvPatternInfo spv_charge_kinds[] = {
  KIND(SPV_PATTERN_ROUNDEL) = CHARGE("roundel", N_("Roundel"), roundel_measures),
  KIND(SPV_PATTERN_ANNULET) = CHARGE("annulet", N_("Annulet"), annulet_measures),
  KIND(SPV_PATTERN_BILLET) = CHARGE("billet", N_("Billet"), plain_measures),
  KIND(SPV_PATTERN_LOZENGE) = CHARGE("lozenge", N_("Lozenge"), plain_measures),
  KIND(SPV_PATTERN_FUSIL) = CHARGE("fusil", N_("Fusil"), plain_measures),
  KIND(SPV_PATTERN_MASCLE) = CHARGE("mascle", N_("Mascle"), mascle_measures),
  KIND(SPV_PATTERN_RUSTRE) = CHARGE("rustre", N_("Rustre"), rustre_measures),
  KIND(SPV_PATTERN_MULLET) = CHARGE("mullet", N_("Mullet"), mullet_measures),
  KIND(SPV_PATTERN_ESTOILE) = CHARGE("estoile", N_("Estoile"), estoile_measures),
  KIND(SPV_PATTERN_CRESCENT) = CHARGE("crescent", N_("Crescent"), plain_measures),
  KIND(SPV_PATTERN_INCRESCENT) = CHARGE("increscent", N_("Increscent"), plain_measures),
  KIND(SPV_PATTERN_DECRESCENT) = CHARGE("decrescent", N_("Decrescent"), plain_measures),
  KIND(SPV_PATTERN_GOUT) = CHARGE("gout", N_("Gout"), plain_measures),
  KIND(SPV_PATTERN_HEART) = CHARGE("heart", N_("Heart"), plain_measures),
  KIND(SPV_PATTERN_CROSS_COUPED) = CHARGE("cross-couped", N_("Cross couped"), plain_measures),
  KIND(SPV_PATTERN_CROSS_PATTY) = CHARGE("cross-patty", N_("Cross patty"), plain_measures),
  KIND(SPV_PATTERN_CROSS_POTENT) = CHARGE("cross-potent", N_("Cross potent"), plain_measures),
  KIND(SPV_PATTERN_CROSS_POMMY) = CHARGE("cross-pommy", N_("Cross pommy"), plain_measures),
  KIND(SPV_PATTERN_CROSS_FITCHY) = CHARGE("cross-fitchy", N_("Cross fitchy"), plain_measures),
  KIND(SPV_PATTERN_KEY) = CHARGE("key", N_("Key"), plain_measures),
  KIND(SPV_PATTERN_SWORD) = CHARGE("sword", N_("Sword"), plain_measures),
  KIND(SPV_PATTERN_DAGGER) = CHARGE("dagger", N_("Dagger"), plain_measures),
  KIND(SPV_PATTERN_ARROW) = CHARGE("arrow", N_("Arrow"), plain_measures),
  KIND(SPV_PATTERN_PHEON) = CHARGE("pheon", N_("Pheon"), plain_measures),
  KIND(SPV_PATTERN_AXE) = CHARGE("axe", N_("Axe"), plain_measures),
  KIND(SPV_PATTERN_HAMMER) = CHARGE("hammer", N_("Hammer"), plain_measures),
  KIND(SPV_PATTERN_TOWER) = CHARGE("tower", N_("Tower"), plain_measures),
  KIND(SPV_PATTERN_GATE) = CHARGE("gate", N_("Gate"), plain_measures),
  KIND(SPV_PATTERN_ANCHOR) = CHARGE("anchor", N_("Anchor"), plain_measures),
  KIND(SPV_PATTERN_OAR) = CHARGE("oar", N_("Oar"), plain_measures),
  KIND(SPV_PATTERN_LANTERN) = CHARGE("lantern", N_("Lantern"), plain_measures),
  KIND(SPV_PATTERN_BELL) = CHARGE("bell", N_("Bell"), plain_measures),
  KIND(SPV_PATTERN_WHEEL) = CHARGE("wheel", N_("Wheel"), wheel_measures),
  KIND(SPV_PATTERN_COG) = CHARGE("cog", N_("Cog"), cog_measures),
  KIND(SPV_PATTERN_SUN) = CHARGE("sun", N_("Sun"), sun_measures),
  KIND(SPV_PATTERN_FLAME) = CHARGE("flame", N_("Flame"), plain_measures),
  KIND(SPV_PATTERN_THUNDERBOLT) = CHARGE("thunderbolt", N_("Thunderbolt"), plain_measures),
  KIND(SPV_PATTERN_WAVE) = CHARGE("wave", N_("Wave"), plain_measures),
  KIND(SPV_PATTERN_LEAF) = CHARGE("leaf", N_("Leaf"), plain_measures),
  KIND(SPV_PATTERN_OAK_BRANCH) = CHARGE("oak-branch", N_("Oak branch"), plain_measures),
  KIND(SPV_PATTERN_WING) = CHARGE("wing", N_("Wing"), plain_measures),
  KIND(SPV_PATTERN_FEATHER) = CHARGE("feather", N_("Feather"), plain_measures),
  KIND(SPV_PATTERN_CLAW) = CHARGE("claw", N_("Claw"), plain_measures),
  KIND(SPV_PATTERN_TOOTH) = CHARGE("tooth", N_("Tooth"), plain_measures),
  KIND(SPV_PATTERN_HORN) = CHARGE("horn", N_("Horn"), plain_measures),
  KIND(SPV_PATTERN_TUSK) = CHARGE("tusk", N_("Tusk"), plain_measures),
  KIND(SPV_PATTERN_CROWN) = CHARGE("crown", N_("Crown"), plain_measures),
  KIND(SPV_PATTERN_GEM) = CHARGE("gem", N_("Gem"), plain_measures),
  KIND(SPV_PATTERN_HOURGLASS) = CHARGE("hourglass", N_("Hourglass"), plain_measures),
  KIND(SPV_PATTERN_TALLY) = CHARGE("tally", N_("Tally strokes"), tally_measures),
};

/* What the painter brings. */

static const SpvTextSpec path_charge_texts[] = {
  { "path", N_("Path"), N_("The path data of an SVG file, of any size"), SPV_PATH_CHARGE_PRESET, spv_path_text_check },
  SPV_ROWS_TEXT,
};

static const char *const baseline_choices[] = { N_("straight"), N_("arc"),  N_("chief"), N_("dexter"),
                                                N_("base"),     N_("sinister"), NULL };

static const SpvMeasureSpec lettering_measures[] = {
  SPEC_LENGTH("across", N_("Shift across"), N_("How far the middle lies from the centre line, towards sinister"),
              SPV_BASIS_WIDTH, AUTO, -LONGEST),
  SPEC_LENGTH("down", N_("Below datum"), N_("How far the middle lies below the top edge"), SPV_BASIS_HEIGHT, AUTO, -LONGEST),
  SPEC_LENGTH("height", N_("Height"), N_("How high capital letters are; as large as fits when not given"),
              SPV_BASIS_HEIGHT, AUTO, 0),
  SPEC_LENGTH("width", N_("Width"), N_("How wide the words may become"), SPV_BASIS_WIDTH, OF(0.8), 0),
  SPEC_ANGLE("turn", N_("Turn"), N_("How far the words are turned, clockwise"), DEGREES(0), -180, 180),
  SPEC_CHOICE("baseline", N_("Baseline"), N_("What the letters stand on: a straight line, an arc, or an edge of the panel"),
              baseline_choices),
  { "bow", N_("Bow"), N_("How much of a circle the words take up on an arc; below 0 it hangs down"), SPV_MEASURE_ANGLE,
    SPV_BASIS_NONE, AUTO, -350, 350, NULL, "baseline" },
  { "inset", N_("Inset"), N_("How far inside the panel's edge the letters stand"), SPV_MEASURE_LENGTH, SPV_BASIS_SMALLER,
    OF(0.06), 0, LONGEST, NULL, "baseline" },
};

static const SpvTextSpec lettering_texts[] = {
  { "text", N_("Words"), N_("What is written; numbers may be Roman"), "VII", spv_lettering_text_check },
  { "font", N_("Font"), N_("The name of an installed font"), "DejaVu Sans Bold", spv_lettering_font_check },
};

static const SpvMeasureSpec free_path_measures[] = {
  SPEC_CHOICE("sides", N_("Sides"), N_("Mirrored: what is drawn is drawn on the other side of the centre line too"), spv_sides_keys),
};

static const SpvTextSpec free_path_texts[] = {
  { "path", N_("Path"), N_("Points and curves, mm from the datum, as in SVG"), SPV_FREE_PATH_PRESET, spv_path_text_check },
};

#undef KIND
#define KIND(kind) [kind - SPV_PATTERN_PATH_CHARGE]

const SpvPatternInfo spv_own_kinds[] = {
  KIND(SPV_PATTERN_PATH_CHARGE) = { "path-charge", N_("Path"), 1, { N_("Path") },
    MEASURES(plain_measures), .lay = spv_lay_charge, TEXTS(path_charge_texts) },
  KIND(SPV_PATTERN_LETTERING) = { "lettering", N_("Lettering"), 1, { N_("Letters") },
    MEASURES(lettering_measures), .lay = spv_lay_lettering, TEXTS(lettering_texts) },
  KIND(SPV_PATTERN_FREE_PATH) = { "free-path", N_("Free path"), 1, { N_("Shape") },
    MEASURES(free_path_measures), .lay = spv_lay_free_path, TEXTS(free_path_texts) },
};
/* clang-format on */
