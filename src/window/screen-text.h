/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the painter types as a name, and what words of the core become on screen. No widgets in here. */
#pragma once

#include <glib.h>

/* The most characters of a name that a scheme file holds; fields for names take no more. */
#define SPV_SCREEN_TEXT_NAME_MAX 200

/* TEXT as a name: control characters (a pasted line's end) become blanks, blanks at the ends go, the rest is
 * cut at SPV_SCREEN_TEXT_NAME_MAX characters. May be "". Free with g_free(). */
char *spv_screen_text_name(const char *text);

/* MESSAGE as a sentence of its own: a capital at the start, a full stop at the end, no line's end between a
 * number and its unit. Free with g_free(). */
char *spv_screen_text_sentence(const char *message);

/* WORDS, such as "Depth", as they go on inside a sentence: "depth" in English, as written in a language whose
 * nouns keep their capital. Free with g_free(). */
char *spv_screen_text_inside(const char *words);

/* TEXT with no line's end between a number and its unit: the thin spaces before units, which may be broken
 * at, become narrow no-break spaces. Free with g_free(). */
char *spv_screen_text_unbroken(const char *text);
