/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The reader of blazons: its words, its state, and its parts, each of which reads one kind of phrase. */
#pragma once

#include "heraldry/blazon-private.h"

typedef enum {
  SPV_TOKEN_WORD,
  SPV_TOKEN_NUMBER,
  SPV_TOKEN_TEXT, /* in quotes */
  SPV_TOKEN_SIGN,
  SPV_TOKEN_END
} SpvTokenType;

typedef struct {
  SpvTokenType type;
  char *word;    /* WORD: lower case, without accents; NUMBER: as written; TEXT: what stands in the quotes */
  double number; /* NUMBER */
  gunichar sign; /* SIGN */
  gboolean open; /* TEXT: it has no closing quote */
  SpvBlazonPlace place;
} SpvToken;

/* TEXT (valid UTF-8) as SpvToken, the last of which is an END. */
GArray *spv_blazon_tokens(const char *text);
/* WORD in lower case, without accents. Free with g_free(). */
char *spv_blazon_fold(const char *word, gssize length);

/* What kind of word could stand somewhere. */
typedef enum {
  SPV_EXPECT_TINCTURE,
  SPV_EXPECT_NOUN,
  SPV_EXPECT_VARIED,
  SPV_EXPECT_NUMBER,
  SPV_EXPECT_LINE,
  SPV_EXPECT_POSITION,
  SPV_EXPECT_TEXT, /* words in quotes */
  SPV_EXPECT_SIGN,
  SPV_EXPECT_KEYWORD, /* the word itself: "and", a measure's key */
  SPV_EXPECT_SILENT   /* another word for one that is noted: not worth a word */
} SpvExpect;
#define SPV_N_EXPECTS (SPV_EXPECT_SILENT + 1)

typedef struct {
  SpvExpect expect;
  const char *words; /* what is left of them to be written */
} SpvExpected;

/* How far the reader came with what may be there or not. */
typedef enum {
  SPV_PARSED_NOTHING, /* it isn't there: nothing was read */
  SPV_PARSED,
  SPV_PARSED_WRONG /* it is begun and goes wrong */
} SpvParsed;

typedef struct {
  gboolean charged_given; /* the text says whether it is charged */
  int cotises;            /* the item beside which it was laid by "cotised"; or -1 */
  gboolean placed;        /* the text says where charges stand */
} SpvBlazonMark;

typedef struct {
  const char *text; /* borrowed */
  GArray *tokens;
  guint at;
  GPtrArray *nouns;
  GPtrArray *items;    /* SpvBlazonItem */
  GArray *marks;       /* SpvBlazonMark, one an item */
  GArray *pending;     /* guint: items that take the tincture that is named next */
  GPtrArray *mentions; /* char *: the tinctures in the order in which they are named */
  GArray *expected;    /* SpvExpected at token FURTHEST, which was looked at and did not fit */
  guint furthest;
  SpvBlazonPlace named; /* where the tincture that was read last stands */
  GError *error;        /* what went wrong, where more can be said than what could stand there */
  SpvBlazonPlace place;
} SpvBlazonParser;

void spv_blazon_parser_init(SpvBlazonParser *parser, const char *text);
void spv_blazon_parser_clear(SpvBlazonParser *parser);

/* Looking at tokens (blazon-parse.c) */

const SpvToken *spv_parser_token(const SpvBlazonParser *parser);
SpvBlazonItem *spv_parser_item(const SpvBlazonParser *parser, guint index);
SpvBlazonMark *spv_parser_mark(const SpvBlazonParser *parser, guint index);
/* Sets the error, once: MESSAGE (taken over) is about the tokens from FROM up to TO. Returns WRONG. */
SpvParsed spv_parser_wrong(SpvBlazonParser *parser, guint from, guint to, char *message);
/* How many tokens from AT on are WORDS; 0 where they aren't. Notes what could have stood there. */
guint spv_parser_match(SpvBlazonParser *parser, guint at, const char *words, SpvExpect expect);
/* Reads WORDS, or SIGN (also noted), where they stand next. */
gboolean spv_parser_take(SpvBlazonParser *parser, const char *words);
gboolean spv_parser_take_silently(SpvBlazonParser *parser, const char *words); /* not noted */
gboolean spv_parser_take_sign(SpvBlazonParser *parser, gunichar sign);
/* Notes that WORDS could stand at token AT. */
void spv_parser_expect(SpvBlazonParser *parser, guint at, const char *words, SpvExpect expect);
/* A number in words or figures at token AT; 0 where there is none. What is no count of charges is WRONG in
 * RESULT. */
guint spv_parser_number(SpvBlazonParser *parser, guint at, SpvParsed *result);
/* A new item of KIND, named by the tokens from FROM on; its index goes to INDEX. */
SpvParsed spv_parser_add(SpvBlazonParser *parser, SpvPatternKind kind, int on, guint from, guint *index);

/* The whole text (blazon-parse.c); FALSE where it is no blazon. */
gboolean spv_parser_blazon(SpvBlazonParser *parser);

/* Nouns (blazon-parse-noun.c) */

typedef struct {
  gboolean given;
  guint n;
} SpvQuantity;

/* The noun at token AT that is longest, and of how many tokens it is. */
const SpvBlazonNoun *spv_parser_noun_at(SpvBlazonParser *parser, guint at, guint *length);
const SpvBlazonVaried *spv_parser_varied_at(SpvBlazonParser *parser, guint at, guint *length);
const SpvBlazonPosition *spv_parser_position_at(SpvBlazonParser *parser, guint at, guint *length);
/* Whether a number or an article stands at token AT; the noun after it is at token AT + LENGTH. */
gboolean spv_parser_quantity_at(SpvBlazonParser *parser, guint at, SpvQuantity *quantity, guint *length);
/* Reads a number and a noun, and adds an item of it. */
SpvParsed spv_parser_noun(SpvBlazonParser *parser, int on, guint *index);
/* Reads a noun after "semy of", and adds an item of it. */
SpvParsed spv_parser_strewn(SpvBlazonParser *parser, int on, guint *index);
/* Reads "the second fess", one of the items before BEFORE; ALL: also one that bears nothing. */
SpvParsed spv_parser_reference(SpvBlazonParser *parser, guint before, gboolean all, guint *index);
/* The error for a word that should be a noun. */
SpvParsed spv_parser_no_noun(SpvBlazonParser *parser);

/* What follows a noun (blazon-parse-modifier.c) */

/* Reads all that may stand between item INDEX's noun and its tincture. */
SpvParsed spv_parser_modifiers(SpvBlazonParser *parser, guint index);
/* Reads "three, two and one". */
SpvParsed spv_parser_rows(SpvBlazonParser *parser, guint index);
/* Puts item INDEX in its place; LENGTH tokens say so. */
SpvParsed spv_parser_put(SpvBlazonParser *parser, guint index, const SpvBlazonPosition *position, guint from);
/* Reads measures in brackets (blazon-parse-measure.c). */
SpvParsed spv_parser_bracket(SpvBlazonParser *parser, guint index);

/* Tinctures (blazon-parse-tincture.c) */

/* Reads one tincture; in words to WORDS, NULL for "bare". */
SpvParsed spv_parser_tincture(SpvBlazonParser *parser, char **words);
/* Gives item INDEX the tincture that was read last. */
void spv_parser_give(SpvBlazonParser *parser, guint index, guint slot, const char *words);
/* Gives it to all that wait for one. */
void spv_parser_give_pending(SpvBlazonParser *parser, const char *words);
/* Reads as many as item INDEX has, or "counterchanged"; one that has none of its own is left pending. */
SpvParsed spv_parser_tinctures(SpvBlazonParser *parser, guint index);

/* Phrases (blazon-parse-phrase.c) */

/* Reads "chequy gules and argent". */
SpvParsed spv_parser_varied(SpvBlazonParser *parser, int on, guint *index);
/* Reads one charge with all that belongs to it, laid on ON unless it says otherwise. */
SpvParsed spv_parser_charge(SpvBlazonParser *parser, int on);
/* Reads what may follow the tincture of item INDEX; INNER: only what needs no comma. */
SpvParsed spv_parser_tail(SpvBlazonParser *parser, guint index, gboolean inner);

/* Messages (blazon-parse-message.c) */

/* The error of a blazon that could not be read; free with g_error_free(). */
GError *spv_parser_error(SpvBlazonParser *parser, SpvBlazonPlace *place);
