/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/smallest-figure.h"

#include <string.h>

#include "heraldry/arrange.h"
#include "heraldry/figure.h"

/* The path that PATTERN's figure is, or NULL. */
static const char *
path_of(const SpvPattern *pattern) {
  return pattern->kind == SPV_PATTERN_PATH_CHARGE ? spv_pattern_text(pattern, 0) : NULL;
}

static gboolean
is_same(const SpvSmallestFigure *last, const SpvPattern *pattern, double line) {
  if (last->kind != pattern->kind || last->line != line || g_strcmp0(last->path, path_of(pattern)) != 0)
    return FALSE;
  /* Where it stands, and how large, does not change the figure. */
  for (guint i = SPV_CHARGE_OWN; i < SPV_PATTERN_MEASURES; i++) {
    if (!spv_measure_equal(last->own[i], pattern->measures[i]))
      return FALSE;
  }
  return TRUE;
}

double
spv_smallest_figure(SpvSmallestFigure *last, const SpvPattern *pattern, double line) {
  if (is_same(last, pattern, line))
    return last->size;
  g_free(last->path);
  last->kind = pattern->kind;
  memcpy(last->own, pattern->measures, sizeof last->own);
  last->path = g_strdup(path_of(pattern));
  last->line = line;
  last->size = spv_figure_smallest(pattern, line);
  return last->size;
}

void
spv_smallest_figure_clear(SpvSmallestFigure *last) {
  g_clear_pointer(&last->path, g_free);
  last->line = 0;
}
