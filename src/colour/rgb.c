/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading, writing and weighing screen colours. */
#include "colour/rgb.h"

#include <math.h>
#include <string.h>

/* The channel whose two hex digits start at TEXT, or -1. */
static int
parse_channel(const char *text) {
  int high = g_ascii_xdigit_value(text[0]);
  int low = g_ascii_xdigit_value(text[1]);

  return high < 0 || low < 0 ? -1 : high * 16 + low;
}

gboolean
spv_rgb_parse(const char *text, SpvRgb *colour) {
  if (text == NULL || text[0] != '#' || strlen(text) != 7)
    return FALSE;

  int red = parse_channel(text + 1);
  int green = parse_channel(text + 3);
  int blue = parse_channel(text + 5);
  if (red < 0 || green < 0 || blue < 0)
    return FALSE;

  *colour = (SpvRgb){ (guint8) red, (guint8) green, (guint8) blue };
  return TRUE;
}

char *
spv_rgb_to_string(SpvRgb colour) {
  return g_strdup_printf("#%02x%02x%02x", colour.red, colour.green, colour.blue);
}

gboolean
spv_rgb_equal(SpvRgb a, SpvRgb b) {
  return a.red == b.red && a.green == b.green && a.blue == b.blue;
}

/* The linear light of an encoded channel, 0 to 1: IEC 61966-2-1:1999. */
static double
decode(guint8 channel) {
  double c = channel / 255.0;

  return c <= 0.04045 ? c / 12.92 : pow((c + 0.055) / 1.055, 2.4);
}

double
spv_rgb_luminance(SpvRgb colour) {
  return 0.2126 * decode(colour.red) + 0.7152 * decode(colour.green) + 0.0722 * decode(colour.blue);
}

double
spv_rgb_contrast(SpvRgb a, SpvRgb b) {
  double la = spv_rgb_luminance(a);
  double lb = spv_rgb_luminance(b);

  return (MAX(la, lb) + 0.05) / (MIN(la, lb) + 0.05);
}
