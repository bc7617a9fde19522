/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the painter types as a name, and what a message of the core becomes on screen. No widgets in here. */
#pragma once

#include <glib.h>

/* The most characters of a name that a scheme file holds; fields for names take no more. */
#define SPV_NAME_TEXT_MAX 200

/* TEXT as a name: control characters (a pasted line's end) become blanks, blanks at the ends go, the rest is
 * cut at SPV_NAME_TEXT_MAX characters. May be "". Free with g_free(). */
char *spv_name_text_clean(const char *text);

/* MESSAGE as a sentence of its own: a capital at the start, a full stop at the end. Free with g_free(). */
char *spv_name_text_sentence(const char *message);
