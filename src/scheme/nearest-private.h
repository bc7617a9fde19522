/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a mistyped word was meant to be, out of a list too long to print. */
#pragma once

#include <glib.h>

/* The MOST words most like WORD out of the N that WORD_AT gives, the likest first, joined by ", ": none that
 * differs in more than half of WORD. What differs is the number of bytes to put in, take out, change, or swap
 * with the next; of equals the first of the list counts. Free with g_free(). */
char *spv_nearest_words(const char *word, const char *(*word_at)(guint index), guint n, guint most);
