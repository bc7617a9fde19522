/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words on a sheet: how large they are, how they are cut and broken to a width, and lengths in words. The
 * context serves to measure by; its scale does not matter. Millimetres on paper. */
#pragma once

#include <cairo.h>
#include <glib.h>

/* Heights of capitals and the pitch of lines, mm on paper. */
#define SPV_WORDS_BODY 2.0
#define SPV_WORDS_CARD_TITLE 2.8
#define SPV_WORDS_SHEET_TITLE 3.5
#define SPV_LINE_PITCH 3.7

/* Between a number and its unit. */
#define SPV_THIN_SPACE "\u2009"

/* A context on no paper, to measure words by. */
cairo_t *spv_measuring_context_new(void);

/* TEXT, or its beginning and "…" where it is wider than WIDTH. Free with g_free(). */
char *spv_words_shorten(cairo_t *cr, const char *text, double size, gboolean bold, double width);

/* TEXT in lines of at most WIDTH, broken between words, MAX_LINES at most; what is left over, and any word
 * that is too wide by itself, is shortened. Free with g_strfreev(). */
char **spv_words_wrap(cairo_t *cr, const char *text, double size, gboolean bold, double width,
                      guint max_lines);

/* "3.4", "12.75": MM with one decimal, or two where the second isn't 0; a point whatever the locale. Free
 * with g_free(). */
char *spv_measure_words(double mm);

/* TEXT with its first letter as a capital. Free with g_free(). */
char *spv_words_capitalise(const char *text);
