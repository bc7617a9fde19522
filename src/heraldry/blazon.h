/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Blazon: a design in the words of English heraldry, "Azure, a bend or", read and written.
 *
 * A blazon names the field first, and then what lies on it, from the bottom up. What plain words can't say
 * stands in brackets after them, by the keys of the kinds' measures and texts: "a fess wavy [width 2.5 mm,
 * shift 0.1] gules". A length is in mm, or without a unit a part of the panel; an angle is in degrees; "auto"
 * leaves a measure to the program; texts stand in quotes. Upper and lower case, accents and hyphens do not
 * matter.
 *
 * Every list of patterns can be written, and reads as the same list again. */
#pragma once

#include "heraldry/fur.h"
#include "heraldry/pattern.h"

#define SPV_BLAZON_MAX_ITEMS 256          /* patterns in one blazon */
#define SPV_BLAZON_TEXT_MAX (1024 * 1024) /* bytes */

/* Where in a text something stands: characters, counted from 0. */
typedef struct {
  guint start, length;
} SpvBlazonPlace;

/* One pattern of a blazon. */
typedef struct {
  SpvPattern pattern;
  char *texts[SPV_PATTERN_TEXTS]; /* what pattern.texts points at, owned here */
  /* A tincture for each slot, in words (see spv_blazon_tincture_read()); NULL leaves what lies beneath. */
  char *tinctures[SPV_PATTERN_SLOTS];
  /* Indices of items before it, or -1. */
  int on;            /* what it is laid on, and cut to; otherwise the panel */
  int counterchange; /* a division of two tinctures, across which it shows the other one of them */
  /* Where a parsed blazon names it, and each of its tinctures: no length where that is said by no word. */
  SpvBlazonPlace place, tincture_places[SPV_PATTERN_SLOTS];
} SpvBlazonItem;

SpvBlazonItem *spv_blazon_item_new(SpvPatternKind kind);
void spv_blazon_item_free(SpvBlazonItem *item);
/* TEXT may be NULL. */
void spv_blazon_item_set_text(SpvBlazonItem *item, guint index, const char *text);
/* Whether both are the same but for their places. */
gboolean spv_blazon_item_equal(const SpvBlazonItem *a, const SpvBlazonItem *b);

/* The items that TEXT (UTF-8) names, bottom first, as a GPtrArray of SpvBlazonItem; empty for an empty text.
 * NULL, with ERROR (SPV_PATTERN_ERROR_BLAZON) and PLACE (may be NULL) set, where it is none: the message
 * names the word, its place (characters counted from 1) and what could stand there; PLACE is where that word
 * stands. */
GPtrArray *spv_blazon_parse(const char *text, SpvBlazonPlace *place, GError **error);

/* ITEMS (SpvBlazonItem, bottom first) in words, as plain as they can be said. Free with g_free(). */
char *spv_blazon_write(const GPtrArray *items);

/* The words that could stand at CURSOR, a character of TEXT counted from 0, of which the text before it may
 * have the beginning; where that begins goes to START (CURSOR itself where no word was begun). OWN (may be
 * NULL) are the names of the scheme's own tinctures, which are offered in quotes where a tincture could
 * stand. In alphabetical order, each once. NULL-terminated; free with g_strfreev(). */
char **spv_blazon_complete(const char *text, guint cursor, const char *const *own, guint *start);

/* A tincture taken apart. Plain ones have one part, furs two: the ground, and the spots (see heraldry/fur.h).
 */
typedef struct {
  SpvFur fur;
  char *parts[2]; /* heraldic words ("azure", "proper"), or names of the scheme's own; the second NULL without
                     a fur */
  gboolean own[2]; /* which of them are the scheme's own */
} SpvBlazonTincture;

/* Reads the words of one tincture: "azure"; "gold", which is "or"; "ermine", "vair" and the other furs with a
 * name of their own; "vairy or and gules", "counter-vairy …", "potenty …", "argent ermined gules"; "\"deep
 * sea\"", a name of the scheme's own, in which \" stands for a quote and \\ for a backslash. FALSE where it
 * is none. Clear with spv_blazon_tincture_clear(). */
gboolean spv_blazon_tincture_read(const char *words, SpvBlazonTincture *tincture);
/* The same in the shortest words; free with g_free(). */
char *spv_blazon_tincture_write(const SpvBlazonTincture *tincture);
void spv_blazon_tincture_clear(SpvBlazonTincture *tincture);

/* The plain heraldic tinctures, NULL-terminated: "argent", "or", … and "proper". */
extern const char *const spv_blazon_tinctures[];

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvBlazonItem, spv_blazon_item_free)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(SpvBlazonTincture, spv_blazon_tincture_clear)
