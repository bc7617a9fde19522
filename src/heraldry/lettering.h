/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words as outlines, and the shape that the painter draws. */
#pragma once

#include "heraldry/pattern.h"

/* The measures of lettering. */
enum {
  SPV_LETTERING_ACROSS,
  SPV_LETTERING_DOWN,
  SPV_LETTERING_HEIGHT,
  SPV_LETTERING_WIDTH,
  SPV_LETTERING_TURN,
  SPV_LETTERING_BASELINE,
  SPV_LETTERING_BOW,
  SPV_LETTERING_INSET
};
enum { SPV_LETTERING_TEXT, SPV_LETTERING_FONT };

/* One line of 1 to 200 characters, none of them control characters. */
gboolean spv_lettering_text_check(const char *text, GError **error);
/* A font description that names a family; whether it is installed is not asked: another takes its place. */
gboolean spv_lettering_font_check(const char *text, GError **error);

/* Words stand on a straight line (the middle of their capitals at the pattern's place), on an arc (the middle of
 * their box there), or along an edge: clockwise with their tops outward, as on a coin, but at the base upright with
 * their feet outward. They never become wider than the width; without a height they are as high as fits the width
 * and the panel. Mirrored, they change places and can still be read. Pango keeps a font map a thread, so words may
 * be laid on any. */

/* WORDS in FONT as outlines: the baseline on y = 0, the first letter's origin at x = 0, capital letters 1 high;
 * how far the words reach goes to ADVANCE. Each letter is one entry: SpvPath in a GPtrArray, with its middle's x
 * in MIDDLES (double, one a letter). */
GPtrArray *spv_lettering_letters(const char *words, const char *font, GArray *middles, double *advance);
/* Whether FONT's family is installed here. */
gboolean spv_lettering_font_is_installed(const char *font);
/* NUMBER, 1 to 3999, in Roman numerals; free with g_free(). */
char *spv_lettering_roman(guint number);

/* Path data that spv_svg_path_parse() takes; the message says where it goes wrong. */
gboolean spv_path_text_check(const char *text, GError **error);

/* What a new path charge and a new free path show until the painter brings their own. */
#define SPV_PATH_CHARGE_PRESET "M 50 0 L 100 100 L 50 75 L 0 100 Z"
#define SPV_FREE_PATH_PRESET "M 0 1 C 1.5 1 2 2 2 3 L 0 5 L -2 3 C -2 2 -1.5 1 0 1 Z"

extern const char *const spv_sides_keys[];
