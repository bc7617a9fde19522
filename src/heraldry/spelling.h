/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How far a word is from another: for what a mistyped one was meant to be. */
#pragma once

#include <glib.h>

/* How many bytes must be put in, taken out, changed, or swapped with the next, to make B of A: the optimal
 * string alignment (a form of the distance of Damerau, 1964, and Levenshtein, 1966; from memory). Of longer
 * words only the first 64 bytes are looked at. */
guint spv_spelling_distance(const char *a, const char *b);
