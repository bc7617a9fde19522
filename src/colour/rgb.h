/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A colour as a screen shows it: sRGB, encoded (not linear), 8 bits a channel. */
#pragma once

#include <glib.h>

typedef struct {
  guint8 red, green, blue;
} SpvRgb;

/* Reads "#rrggbb" (either case). FALSE, and COLOUR untouched, on anything else. */
gboolean spv_rgb_parse(const char *text, SpvRgb *colour);

/* "#rrggbb" in lower case; free with g_free(). */
char *spv_rgb_to_string(SpvRgb colour);

gboolean spv_rgb_equal(SpvRgb a, SpvRgb b);

/* Relative luminance, 0 (black) to 1 (white): W3C, WCAG 2.2, "relative luminance". */
double spv_rgb_luminance(SpvRgb colour);

/* Contrast ratio, 1 to 21, the same whichever comes first: W3C, WCAG 2.2, "contrast ratio". */
double spv_rgb_contrast(SpvRgb a, SpvRgb b);
