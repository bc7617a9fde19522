/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The words of a blazon, and what they leave unsaid: the reader and the writer must agree on both. */
#pragma once

#include "heraldry/blazon.h"

/* A noun: what can be counted and laid. */
typedef struct {
  char *words; /* lower case, without accents, parted by single blanks */
  SpvPatternKind kind;
  gboolean plural;
  guint number;         /* that the word itself means, as in "double tressure"; 0: none */
  const char *tincture; /* likewise, as in "bezant"; or NULL */
} SpvBlazonNoun;

/* A word that describes what lies beneath: "chequy", "fretty", "billety". */
typedef struct {
  const char *words;
  SpvPatternKind kind;
  gboolean semy; /* the charge KIND strewn over it */
} SpvBlazonVaried;

/* Another word for one that we know. */
typedef struct {
  const char *words, *means;
} SpvBlazonSynonym;

/* Where charges are put: "in chief" by the measure "place", "in pale" by "arrangement". */
typedef struct {
  const char *words; /* after "in" */
  guint measure;     /* SPV_CHARGE_PLACE or SPV_CHARGE_ARRANGEMENT */
  guint choice;
} SpvBlazonPosition;

/* Every noun, SpvBlazonNoun in an array that is the caller's. */
GPtrArray *spv_blazon_nouns_new(void);
/* KIND's own noun; free with g_free(). */
char *spv_blazon_noun(SpvPatternKind kind, gboolean plural);
/* Whether KIND comes in pairs and is named without a number: cotises, flaunches. */
gboolean spv_blazon_is_pair(SpvPatternKind kind);
/* KIND's own word where it describes what lies beneath, or NULL. */
const char *spv_blazon_varied_word(SpvPatternKind kind);

extern const SpvBlazonVaried spv_blazon_varied[];      /* ends in words NULL */
extern const SpvBlazonSynonym spv_blazon_line_words[]; /* other words for a line of partition */
extern const SpvBlazonSynonym spv_blazon_tincture_words[];
extern const SpvBlazonPosition spv_blazon_positions[];
extern const char *const spv_blazon_numbers[];  /* "one", … "twenty" */
extern const char *const spv_blazon_ordinals[]; /* "first", … "twelfth" */
/* What other arms bear and we don't draw, in the singular. */
extern const char *const spv_blazon_undrawn[];

/* The furs that have a word of their own. */
typedef struct {
  const char *words;
  SpvFur fur;
  const char *ground, *spots;
} SpvBlazonFur;
extern const SpvBlazonFur spv_blazon_furs[];
/* "vairy", and its like: furs of any two tinctures. */
extern const SpvBlazonFur spv_blazon_fur_makers[];

/* Whether other items can be laid on one of KIND. */
gboolean spv_blazon_can_bear(SpvPatternKind kind);
/* What a word like "fretty", right after item INDEX, is laid on: that item, or where it bears nothing what
 * that lies on itself. */
int spv_blazon_beneath(const GPtrArray *items, guint index);
/* What "counterchanged" means for item INDEX where nothing else is said; or -1. */
int spv_blazon_counterchange(const GPtrArray *items, guint index);
/* Whether item INDEX bears charges. */
gboolean spv_blazon_is_charged(const GPtrArray *items, guint index);
/* What "cotised" lays beside OF; FALSE where that can't be cotised. */
gboolean spv_blazon_cotise(const SpvPattern *of, SpvPattern *cotise);

/* Where the charges go between which an ordinary stands: so many of them, in such a place. */
typedef struct {
  guint n_parts;
  struct {
    guint number, place;
  } parts[4];
  double size; /* of the lesser side, where no size is given; 0: as usual */
} SpvBlazonBetween;

/* FALSE where N charges can't be shared out about KIND. */
gboolean spv_blazon_between(SpvPatternKind kind, guint n, SpvBlazonBetween *between);
/* PATTERN as part PART of BETWEEN. */
SpvPattern spv_blazon_between_part(const SpvBlazonBetween *between, guint part, const SpvPattern *pattern);

/* TEXT in quotes; free with g_free(). */
char *spv_blazon_quote(const char *text);
/* The pattern's measure called KEY, or NULL. */
SpvMeasure *spv_blazon_measure(SpvPattern *pattern, const char *key);
