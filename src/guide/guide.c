/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The guide as a whole, and how its lengths and rulings are said. */
#include "config.h"

#include "guide/guide-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

SpvGuide *
spv_guide_new(const SpvComposition *composition) {
  SpvGuide *guide = g_new0(SpvGuide, 1);

  guide->composition = spv_composition_ref(composition);
  guide->dots = g_array_new(FALSE, FALSE, sizeof(SpvDot));
  guide->rulings = g_array_new(FALSE, FALSE, sizeof(SpvRuling));
  guide->runs = g_array_new(FALSE, FALSE, sizeof(SpvDotRun));
  spv_guide_add_dots(guide);
  spv_guide_add_rulings(guide);
  return guide;
}

void
spv_guide_free(SpvGuide *guide) {
  if (guide == NULL)
    return;
  spv_composition_unref(guide->composition);
  g_array_unref(guide->dots);
  g_array_unref(guide->rulings);
  g_array_unref(guide->runs);
  g_free(guide);
}

gboolean
spv_guide_layer_is_laid(const SpvComposition *composition, guint layer) {
  for (guint i = 0; i < composition->shapes->len; i++) {
    const SpvLaidShape *shape = g_ptr_array_index(composition->shapes, i);

    if (shape->layer == layer)
      return TRUE;
  }
  return FALSE;
}

double
spv_guide_round(double mm) {
  if (!isfinite(mm))
    return mm;

  /* A half that arithmetic has left a hair too small is still a half. */
  double steps = floor(fabs(mm) * 20 + 0.5 + 1e-9);
  if (steps == 0)
    return 0;
  return copysign(steps / 20, mm);
}

char *
spv_guide_format(double mm) {
  char text[G_ASCII_DTOSTR_BUF_SIZE + 320];

  g_ascii_formatd(text, sizeof text, "%.2f", spv_guide_round(mm));
  return g_strdup(text);
}

char *
spv_ruling_name(const SpvRuling *ruling) {
  switch (ruling->kind) {
  case SPV_LINE_DIVISION:
    return g_strdup_printf(_("division %u"), ruling->index);
  case SPV_LINE_COLUMN:
    return g_strdup_printf(_("column %u"), ruling->index);
  case SPV_LINE_ROW:
    return g_strdup_printf(_("row %u"), ruling->index);
  }
  g_return_val_if_reached(NULL);
}
