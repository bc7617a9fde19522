/* SPDX-License-Identifier: GPL-3.0-or-later */
/* JSON for standard output: keys in the order in which they were set, innermost objects and arrays on a line
 * of their own, numbers in their shortest form ("1.4", where jansson itself writes 1.3999999999999999). */
#pragma once

#include <jansson.h>

#include <glib.h>

/* Appends VALUE to OUT, ending in a line feed. */
void spv_json_print(const json_t *value, GString *out);

/* Appends NUMBER, which is finite, with the fewest digits that read back as the same double; -0 as 0. */
void spv_json_print_number(double number, GString *out);
