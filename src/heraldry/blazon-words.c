/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The words of a blazon, those of the trade with their usual spellings: Fox-Davies, A Complete Guide to
 * Heraldry (1909); Boutell, Handbook to English Heraldry, 11th ed. The tables of the kinds say the rest. */
#include "heraldry/blazon-private.h"

#include <string.h>

#include "heraldry/arrange.h"

const char *const spv_blazon_tinctures[] = { "argent",  "or",    "gules",    "azure",  "sable", "vert",
                                             "purpure", "tenne", "sanguine", "proper", NULL };

const SpvBlazonSynonym spv_blazon_tincture_words[] = {
  { "gold", "or" },     { "silver", "argent" },   { "purple", "purpure" }, { "tenny", "tenne" },
  { "tawny", "tenne" }, { "murrey", "sanguine" }, { NULL, NULL },
};

const SpvBlazonFur spv_blazon_furs[] = {
  { "ermine", SPV_FUR_ERMINE, "argent", "sable" },
  { "ermines", SPV_FUR_ERMINE, "sable", "argent" },
  { "erminois", SPV_FUR_ERMINE, "or", "sable" },
  { "pean", SPV_FUR_ERMINE, "sable", "or" },
  { "vair", SPV_FUR_VAIR, "argent", "azure" },
  { "counter-vair", SPV_FUR_COUNTER_VAIR, "argent", "azure" },
  { "potent", SPV_FUR_POTENT, "argent", "azure" },
  { NULL, SPV_FUR_NONE, NULL, NULL },
};

const SpvBlazonFur spv_blazon_fur_makers[] = {
  { "vairy", SPV_FUR_VAIR, NULL, NULL },
  { "counter-vairy", SPV_FUR_COUNTER_VAIR, NULL, NULL },
  { "potenty", SPV_FUR_POTENT, NULL, NULL },
  { NULL, SPV_FUR_NONE, NULL, NULL },
};

/* The first of a kind is the one that is written. */
const SpvBlazonVaried spv_blazon_varied[] = {
  { "per pale", SPV_PATTERN_PER_PALE, FALSE },
  { "party per pale", SPV_PATTERN_PER_PALE, FALSE },
  { "per fess", SPV_PATTERN_PER_FESS, FALSE },
  { "party per fess", SPV_PATTERN_PER_FESS, FALSE },
  { "per bend", SPV_PATTERN_PER_BEND, FALSE },
  { "party per bend", SPV_PATTERN_PER_BEND, FALSE },
  { "per bend sinister", SPV_PATTERN_PER_BEND_SINISTER, FALSE },
  { "party per bend sinister", SPV_PATTERN_PER_BEND_SINISTER, FALSE },
  { "per chevron", SPV_PATTERN_PER_CHEVRON, FALSE },
  { "party per chevron", SPV_PATTERN_PER_CHEVRON, FALSE },
  { "per saltire", SPV_PATTERN_PER_SALTIRE, FALSE },
  { "party per saltire", SPV_PATTERN_PER_SALTIRE, FALSE },
  { "per pall", SPV_PATTERN_PER_PALL, FALSE },
  { "tierced in pall", SPV_PATTERN_PER_PALL, FALSE },
  { "quarterly", SPV_PATTERN_QUARTERLY, FALSE },
  { "per cross", SPV_PATTERN_QUARTERLY, FALSE },
  { "tierced in pale", SPV_PATTERN_TIERCED_IN_PALE, FALSE },
  { "tierced per pale", SPV_PATTERN_TIERCED_IN_PALE, FALSE },
  { "tierced in fess", SPV_PATTERN_TIERCED_IN_FESS, FALSE },
  { "tierced per fess", SPV_PATTERN_TIERCED_IN_FESS, FALSE },
  { "gyronny", SPV_PATTERN_GYRONNY, FALSE },
  { "gironny", SPV_PATTERN_GYRONNY, FALSE },
  { "paly", SPV_PATTERN_PALY, FALSE },
  { "barry", SPV_PATTERN_BARRY, FALSE },
  { "bendy", SPV_PATTERN_BENDY, FALSE },
  { "bendy sinister", SPV_PATTERN_BENDY_SINISTER, FALSE },
  { "chevronny", SPV_PATTERN_CHEVRONNY, FALSE },
  { "chevronelly", SPV_PATTERN_CHEVRONNY, FALSE },
  { "barry-bendy", SPV_PATTERN_BARRY_BENDY, FALSE },
  { "paly-bendy", SPV_PATTERN_PALY_BENDY, FALSE },
  { "chequy", SPV_PATTERN_CHECK, FALSE },
  { "checky", SPV_PATTERN_CHECK, FALSE },
  { "checquy", SPV_PATTERN_CHECK, FALSE },
  { "check", SPV_PATTERN_CHECK, FALSE },
  { "lozengy", SPV_PATTERN_LOZENGY, FALSE },
  { "fusily", SPV_PATTERN_FUSILY, FALSE },
  { "fusilly", SPV_PATTERN_FUSILY, FALSE },
  { "fretty", SPV_PATTERN_FRETTY, FALSE },
  { "masoned", SPV_PATTERN_MASONED, FALSE },
  { "billety", SPV_PATTERN_BILLET, TRUE },
  { "goutty", SPV_PATTERN_GOUT, TRUE },
  { "gutty", SPV_PATTERN_GOUT, TRUE },
  { NULL, SPV_PATTERN_FIELD, FALSE },
};

const SpvBlazonSynonym spv_blazon_line_words[] = {
  { "undy", "wavy" },
  { "dancette", "dancetty" },
  { "dancettee", "dancetty" },
  { "crenelly", "embattled" },
  { "battled", "embattled" },
  { "invecked", "invected" },
  { "nebule", "nebuly" },
  { "nebulee", "nebuly" },
  { "dovetail", "dovetailed" },
  { "dove-tailed", "dovetailed" },
  { "ragule", "raguly" },
  { "ragulee", "raguly" },
  { "potente", "potenty" },
  { "urde", "urdy" },
  { "urdee", "urdy" },
  { "rayonne", "rayonny" },
  { "rayonnee", "rayonny" },
  { "rayony", "rayonny" },
  { "indente", "indented" },
  { "wavee", "wavy" },
  { NULL, NULL },
};

/* The first of each choice is the one that is written. */
const SpvBlazonPosition spv_blazon_positions[] = {
  { "chief", SPV_CHARGE_PLACE, SPV_PLACE_CHIEF },
  { "the chief", SPV_CHARGE_PLACE, SPV_PLACE_CHIEF },
  { "the middle", SPV_CHARGE_PLACE, SPV_PLACE_FESS },
  { "the fess point", SPV_CHARGE_PLACE, SPV_PLACE_FESS },
  { "base", SPV_CHARGE_PLACE, SPV_PLACE_BASE },
  { "the base", SPV_CHARGE_PLACE, SPV_PLACE_BASE },
  { "dexter", SPV_CHARGE_PLACE, SPV_PLACE_DEXTER },
  { "the dexter", SPV_CHARGE_PLACE, SPV_PLACE_DEXTER },
  { "the dexter flank", SPV_CHARGE_PLACE, SPV_PLACE_DEXTER },
  { "sinister", SPV_CHARGE_PLACE, SPV_PLACE_SINISTER },
  { "the sinister", SPV_CHARGE_PLACE, SPV_PLACE_SINISTER },
  { "the sinister flank", SPV_CHARGE_PLACE, SPV_PLACE_SINISTER },
  { "the first quarter", SPV_CHARGE_PLACE, SPV_PLACE_FIRST_QUARTER },
  { "dexter chief", SPV_CHARGE_PLACE, SPV_PLACE_FIRST_QUARTER },
  { "the dexter chief", SPV_CHARGE_PLACE, SPV_PLACE_FIRST_QUARTER },
  { "the second quarter", SPV_CHARGE_PLACE, SPV_PLACE_SECOND_QUARTER },
  { "sinister chief", SPV_CHARGE_PLACE, SPV_PLACE_SECOND_QUARTER },
  { "the sinister chief", SPV_CHARGE_PLACE, SPV_PLACE_SECOND_QUARTER },
  { "the third quarter", SPV_CHARGE_PLACE, SPV_PLACE_THIRD_QUARTER },
  { "dexter base", SPV_CHARGE_PLACE, SPV_PLACE_THIRD_QUARTER },
  { "the dexter base", SPV_CHARGE_PLACE, SPV_PLACE_THIRD_QUARTER },
  { "the fourth quarter", SPV_CHARGE_PLACE, SPV_PLACE_FOURTH_QUARTER },
  { "sinister base", SPV_CHARGE_PLACE, SPV_PLACE_FOURTH_QUARTER },
  { "the sinister base", SPV_CHARGE_PLACE, SPV_PLACE_FOURTH_QUARTER },
  { "pale", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_PALE },
  { "fess", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_FESS },
  { "bend", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_BEND },
  { "bend sinister", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_BEND_SINISTER },
  { "cross", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_CROSS },
  { "saltire", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_SALTIRE },
  { "chevron", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_CHEVRON },
  { "pall", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_PALL },
  { "orle", SPV_CHARGE_ARRANGEMENT, SPV_ARRANGEMENT_ORLE },
  { NULL, 0, 0 },
};

const char *const spv_blazon_numbers[] = { "one",     "two",       "three",    "four",     "five",
                                           "six",     "seven",     "eight",    "nine",     "ten",
                                           "eleven",  "twelve",    "thirteen", "fourteen", "fifteen",
                                           "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
                                           NULL };

const char *const spv_blazon_ordinals[] = { "first",    "second",  "third",  "fourth", "fifth",
                                            "sixth",    "seventh", "eighth", "ninth",  "tenth",
                                            "eleventh", "twelfth", NULL };

const char *const spv_blazon_undrawn[] = {
  "acorn",    "ass",       "barnacle",   "bear",       "bee",         "boar",       "bull",      "bugle",
  "castle",   "cat",       "catherine",  "cinquefoil", "cock",        "cockatrice", "cornish",   "crane",
  "crosslet", "crow",      "deer",       "dog",        "dolphin",     "dove",       "dragon",    "duck",
  "eagle",    "eaglet",    "elephant",   "escallop",   "escarbuncle", "falcon",     "fish",      "fleur",
  "fountain", "fox",       "fret",       "garb",       "gauntlet",    "goat",       "greyhound", "griffin",
  "hand",     "hare",      "harp",       "hart",       "hawk",        "hedgehog",   "helm",      "heron",
  "hind",     "horse",     "lamb",       "leopard",    "lily",        "lion",       "lioncel",   "lioness",
  "lizard",   "lucy",      "lymphad",    "man",        "martlet",     "maunch",     "mermaid",   "millrind",
  "moon",     "octofoil",  "otter",      "owl",        "ox",          "panther",    "peacock",   "pelican",
  "phoenix",  "pineapple", "portcullis", "quatrefoil", "ram",         "raven",      "rose",      "salmon",
  "serpent",  "shell",     "ship",       "skull",      "snake",       "spear",      "squirrel",  "stag",
  "stork",    "swan",      "talbot",     "thistle",    "tiger",       "tortoise",   "tree",      "trefoil",
  "tyger",    "unicorn",   "vine",       "water",      "whale",       "wolf",       "wyvern",    "yale",
  NULL,
};

/* What is not the kind's label with an s. */
static const struct {
  SpvPatternKind kind;
  const char *one, *many;
} own_nouns[] = {
  { SPV_PATTERN_FIELD, "field", "fields" },
  { SPV_PATTERN_BAR_GEMEL, "bar gemel", "bars gemelles" },
  { SPV_PATTERN_COTISE, "cotise", "cotises" },
  { SPV_PATTERN_BEND_SINISTER, "bend sinister", "bends sinister" },
  { SPV_PATTERN_FLAUNCHES, "flaunch", "flaunches" },
  { SPV_PATTERN_CROSS_COUPED, "cross couped", "crosses couped" },
  { SPV_PATTERN_CROSS_PATTY, "cross patty", "crosses patty" },
  { SPV_PATTERN_CROSS_POTENT, "cross potent", "crosses potent" },
  { SPV_PATTERN_CROSS_POMMY, "cross pommy", "crosses pommy" },
  { SPV_PATTERN_CROSS_FITCHY, "cross fitchy", "crosses fitchy" },
  { SPV_PATTERN_LEAF, "leaf", "leaves" },
  { SPV_PATTERN_TOOTH, "tooth", "teeth" },
  { SPV_PATTERN_TALLY, "tally", "tallies" },
  { SPV_PATTERN_PATH_CHARGE, "path charge", "path charges" },
  { SPV_PATTERN_LETTERING, "lettering", "lettering" },
  { SPV_PATTERN_FREE_PATH, "shape", "shapes" },
};

/* Other names; MANY is NULL where it ends in a plain s. */
static const struct {
  const char *one, *many;
  SpvPatternKind kind;
  guint number;
  const char *tincture;
} other_nouns[] = {
  { "fesse", NULL, SPV_PATTERN_FESS, 0, NULL },
  { "bar gemelle", "bars gemel", SPV_PATTERN_BAR_GEMEL, 0, NULL },
  { "bar-gemel", "bars gemels", SPV_PATTERN_BAR_GEMEL, 0, NULL },
  { "cottise", NULL, SPV_PATTERN_COTISE, 0, NULL },
  { "cost", NULL, SPV_PATTERN_COTISE, 0, NULL },
  { "bendlet sinister", "bendlets sinister", SPV_PATTERN_SCARPE, 0, NULL },
  { "saltier", NULL, SPV_PATTERN_SALTIRE, 0, NULL },
  { "pairle", NULL, SPV_PATTERN_PALL, 0, NULL },
  { "flanch", "flanches", SPV_PATTERN_FLAUNCHES, 0, NULL },
  { "escutcheon", NULL, SPV_PATTERN_INESCUTCHEON, 0, NULL },
  { "border", NULL, SPV_PATTERN_BORDURE, 0, NULL },
  { "double tressure", NULL, SPV_PATTERN_TRESSURE, 2, NULL },
  { "bezant", NULL, SPV_PATTERN_ROUNDEL, 0, "or" },
  { "plate", NULL, SPV_PATTERN_ROUNDEL, 0, "argent" },
  { "torteau", "torteaux", SPV_PATTERN_ROUNDEL, 0, "gules" },
  { "hurt", NULL, SPV_PATTERN_ROUNDEL, 0, "azure" },
  { "pellet", NULL, SPV_PATTERN_ROUNDEL, 0, "sable" },
  { "star", NULL, SPV_PATTERN_MULLET, 0, NULL },
  { "molet", NULL, SPV_PATTERN_MULLET, 0, NULL },
  { "goutte", NULL, SPV_PATTERN_GOUT, 0, NULL },
  { "drop", NULL, SPV_PATTERN_GOUT, 0, NULL },
  { "cross paty", "crosses paty", SPV_PATTERN_CROSS_PATTY, 0, NULL },
  { "cross pattee", "crosses pattee", SPV_PATTERN_CROSS_PATTY, 0, NULL },
  { "cross formy", "crosses formy", SPV_PATTERN_CROSS_PATTY, 0, NULL },
  { "cross humetty", "crosses humetty", SPV_PATTERN_CROSS_COUPED, 0, NULL },
  { "cross pommee", "crosses pommee", SPV_PATTERN_CROSS_POMMY, 0, NULL },
  { "cross fitched", "crosses fitched", SPV_PATTERN_CROSS_FITCHY, 0, NULL },
  { "cross fitchee", "crosses fitchee", SPV_PATTERN_CROSS_FITCHY, 0, NULL },
  { "broad arrow", NULL, SPV_PATTERN_PHEON, 0, NULL },
  { "battle axe", NULL, SPV_PATTERN_AXE, 0, NULL },
  { "sun in splendour", NULL, SPV_PATTERN_SUN, 0, NULL },
  { "cog wheel", NULL, SPV_PATTERN_COG, 0, NULL },
  { "branch of oak", "branches of oak", SPV_PATTERN_OAK_BRANCH, 0, NULL },
  { "tally stroke", NULL, SPV_PATTERN_TALLY, 0, NULL },
  { "free path", NULL, SPV_PATTERN_FREE_PATH, 0, NULL },
  { "path", NULL, SPV_PATTERN_PATH_CHARGE, 0, NULL },
  { "the words", "words", SPV_PATTERN_LETTERING, 0, NULL },
};

gboolean
spv_blazon_is_pair(SpvPatternKind kind) {
  return kind == SPV_PATTERN_COTISE || kind == SPV_PATTERN_FLAUNCHES;
}

const char *
spv_blazon_varied_word(SpvPatternKind kind) {
  for (guint i = 0; spv_blazon_varied[i].words; i++)
    if (spv_blazon_varied[i].kind == kind && !spv_blazon_varied[i].semy)
      return spv_blazon_varied[i].words;
  return NULL;
}

static char *
plural_of(const char *word) {
  static const char *const hissing[] = { "s", "x", "ch", "sh" };

  for (guint i = 0; i < G_N_ELEMENTS(hissing); i++)
    if (g_str_has_suffix(word, hissing[i]))
      return g_strconcat(word, "es", NULL);
  return g_strconcat(word, "s", NULL);
}

char *
spv_blazon_noun(SpvPatternKind kind, gboolean plural) {
  g_autofree char *label = NULL;

  for (guint i = 0; i < G_N_ELEMENTS(own_nouns); i++)
    if (own_nouns[i].kind == kind)
      return g_strdup(plural ? own_nouns[i].many : own_nouns[i].one);
  label = g_ascii_strdown(spv_pattern_info(kind)->label, -1);
  return plural ? plural_of(label) : g_steal_pointer(&label);
}

static void
noun_free(gpointer data) {
  SpvBlazonNoun *noun = data;

  g_free(noun->words);
  g_free(noun);
}

static void
add_noun(GPtrArray *nouns, char *words, SpvPatternKind kind, gboolean plural, guint number,
         const char *tincture) {
  SpvBlazonNoun *noun = g_new0(SpvBlazonNoun, 1);

  noun->words = words;
  noun->kind = kind;
  noun->plural = plural;
  noun->number = number;
  noun->tincture = tincture;
  g_ptr_array_add(nouns, noun);
}

GPtrArray *
spv_blazon_nouns_new(void) {
  GPtrArray *nouns = g_ptr_array_new_with_free_func(noun_free);

  for (guint i = 0; i < SPV_N_PATTERNS; i++) {
    SpvPatternKind kind = (SpvPatternKind) i;
    if (spv_blazon_varied_word(kind))
      continue;
    add_noun(nouns, spv_blazon_noun(kind, FALSE), kind, FALSE, 0, NULL);
    add_noun(nouns, spv_blazon_noun(kind, TRUE), kind, TRUE, 0, NULL);
  }
  for (guint i = 0; i < G_N_ELEMENTS(other_nouns); i++) {
    char *many = other_nouns[i].many ? g_strdup(other_nouns[i].many) : plural_of(other_nouns[i].one);
    add_noun(nouns, g_strdup(other_nouns[i].one), other_nouns[i].kind, FALSE, other_nouns[i].number,
             other_nouns[i].tincture);
    add_noun(nouns, many, other_nouns[i].kind, TRUE, other_nouns[i].number, other_nouns[i].tincture);
  }
  return nouns;
}
