/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers within words, in Roman numerals. */
#pragma once

#include <glib.h>

/* WORDS with each number from 1 to 3999 in Roman numerals; NULL when there is none. Free with g_free(). */
char *spv_roman_text(const char *words);
