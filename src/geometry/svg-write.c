/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writing the path data of SVG. */
#include "geometry/svg-path.h"

#include <string.h>

/* VALUE with at most DECIMALS digits after the point. */
static void
write_number(GString *text, double value, guint decimals) {
  char format[8], number[G_ASCII_DTOSTR_BUF_SIZE + 340];

  g_snprintf(format, sizeof format, "%%.%uf", MIN(decimals, 17));
  g_ascii_formatd(number, sizeof number, format, value);
  if (strchr(number, '.') != NULL) {
    char *end = number + strlen(number);
    while (end[-1] == '0')
      end--;
    if (end[-1] == '.')
      end--;
    *end = '\0';
  }
  g_string_append(text, g_str_equal(number, "-0") ? "0" : number);
}

static void
write_point(GString *text, SpvPoint point, guint decimals) {
  g_string_append_c(text, ' ');
  write_number(text, point.x, decimals);
  g_string_append_c(text, ' ');
  write_number(text, point.y, decimals);
}

static void
write_arc(GString *text, const SpvPathStep *arc, guint decimals) {
  guint n = (guint) CLAMP(ceil(fabs(arc->sweep) / (2 * G_PI / 3) - 1e-9), 1, 1000);

  for (guint i = 1; i <= n; i++) {
    double angle = arc->start + arc->sweep * i / n;
    SpvPoint on = { arc->centre.x + arc->radius * cos(angle), arc->centre.y + arc->radius * sin(angle) };
    g_string_append(text, " A ");
    write_number(text, arc->radius, decimals);
    g_string_append_c(text, ' ');
    write_number(text, arc->radius, decimals);
    g_string_append(text, arc->sweep > 0 ? " 0 0 1" : " 0 0 0");
    write_point(text, i == n ? arc->to : on, decimals);
  }
}

char *
spv_svg_path_write(const SpvPath *path, guint decimals) {
  g_return_val_if_fail(path != NULL, NULL);

  GString *text = g_string_new(NULL);
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);

  for (gsize i = 0; i < n; i++)
    switch (steps[i].op) {
    case SPV_PATH_MOVE:
      g_string_append(text, i == 0 ? "M" : " M");
      write_point(text, steps[i].to, decimals);
      break;
    case SPV_PATH_LINE:
      g_string_append(text, " L");
      write_point(text, steps[i].to, decimals);
      break;
    case SPV_PATH_CURVE:
      g_string_append(text, " C");
      write_point(text, steps[i].c1, decimals);
      write_point(text, steps[i].c2, decimals);
      write_point(text, steps[i].to, decimals);
      break;
    case SPV_PATH_ARC:
      write_arc(text, &steps[i], decimals);
      break;
    case SPV_PATH_CLOSE:
      g_string_append(text, " Z");
      break;
    }
  return g_string_free(text, FALSE);
}
