/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The writer of blazons. */
#pragma once

#include "heraldry/blazon-private.h"

typedef struct {
  const GPtrArray *items; /* SpvBlazonItem */
  GString *out;
  gboolean lined;     /* the last noun was given a line of partition */
  gboolean bare_noun; /* nothing stands after the last noun */
} SpvBlazonWriter;

gboolean spv_blazon_is_semy(const SpvPattern *pattern);
/* Writes " three mullets of six points [size 2 mm]": what PATTERN, that of item INDEX, is, without its
 * tincture. What the words alone don't say stands in brackets. BEFORE: the place of a charge stands before
 * it, "in chief". */
void spv_blazon_write_words(SpvBlazonWriter *writer, guint index, const SpvPattern *pattern, gboolean before);
/* Writes " plain" where the tincture of item INDEX would be taken for a part of the noun, or for a line. */
void spv_blazon_write_plain(SpvBlazonWriter *writer, guint index);
