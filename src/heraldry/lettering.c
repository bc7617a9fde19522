/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words as outlines. */
#include "config.h"

#include "heraldry/lettering.h"

#include <glib/gi18n-lib.h>

const char *const spv_sides_keys[] = { N_("one"), N_("mirrored"), NULL };

gboolean
spv_lettering_text_check(const char *text, GError **error) {
  (void) text;
  (void) error;
  return TRUE;
}

gboolean
spv_lettering_font_check(const char *text, GError **error) {
  (void) text;
  (void) error;
  return TRUE;
}

gboolean
spv_path_text_check(const char *text, GError **error) {
  (void) text;
  (void) error;
  return TRUE;
}
