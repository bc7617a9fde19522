/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A panel's guide in words: as text for the painter, and as JSON for programs. */
#pragma once

#include <jansson.h>

#include "guide/guide.h"

/* Appends the panel's size, dots, runs and rulings, in mm to 0.05, columns aligned. */
void spv_guide_print_text(const SpvGuide *guide, GString *out);

/* The same as one member of "panels" in the JSON of `guide`, described in the manual page; numbers to 0.05,
 * and as they were worked out under "exact". */
json_t *spv_guide_to_json(const SpvGuide *guide);

/* "tip", "root". */
const char *spv_dot_kind_key(SpvDotKind kind);
/* "division", "column", "row". */
const char *spv_line_kind_key(SpvLineKind kind);
