/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shapes and transforms of SVG elements (SVG 1.1, sections 7.6 and 9). */
#include "config.h"

#include "geometry/svg-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Names of transforms, with how many numbers they may take (SVG 1.1, section 7.6). */
static const struct {
  const char *name;
  guint few, many; /* no other number will do */
} transforms[] = { { "matrix", 6, 6 }, { "translate", 1, 2 }, { "scale", 1, 2 },
                   { "rotate", 1, 3 }, { "skewX", 1, 1 },     { "skewY", 1, 1 } };

static SpvTransform
make_transform(const char *name, const double *v, guint n) {
  double angle = v[0] * G_PI / 180;

  if (g_str_equal(name, "matrix"))
    return (SpvTransform){ v[0], v[1], v[2], v[3], v[4], v[5] };
  if (g_str_equal(name, "translate"))
    return (SpvTransform){ 1, 0, 0, 1, v[0], n > 1 ? v[1] : 0 };
  if (g_str_equal(name, "scale"))
    return (SpvTransform){ v[0], 0, 0, n > 1 ? v[1] : v[0], 0, 0 };
  if (g_str_equal(name, "skewX"))
    return (SpvTransform){ 1, 0, tan(angle), 1, 0, 0 };
  if (g_str_equal(name, "skewY"))
    return (SpvTransform){ 1, tan(angle), 0, 1, 0, 0 };
  SpvPoint centre = { n > 1 ? v[1] : 0, n > 1 ? v[2] : 0 };
  SpvTransform back = { 1, 0, 0, 1, -centre.x, -centre.y };
  return spv_transform_compose(spv_transform_turn(angle, centre), back);
}

/* Reads up to 6 numbers between brackets; their number, or 0 where they can't be read. */
static guint
read_values(const char **p, double *values) {
  const char *at = spv_svg_skip_space(*p);
  guint n = 0;

  if (*at++ != '(')
    return 0;
  at = spv_svg_skip_space(at);
  while (n < 6) {
    const char *end = spv_svg_read_number(at, &values[n]);
    if (!end || !(fabs(values[n]) <= SPV_SVG_MAX_NUMBER))
      return 0;
    n++;
    at = spv_svg_skip_space(end);
    if (*at == ')')
      break;
    at = spv_svg_skip_comma(at);
  }
  if (*at != ')')
    return 0;
  *p = at + 1;
  return n;
}

static gboolean
is_sane(SpvTransform t) {
  const double all[] = { t.a, t.b, t.c, t.d, t.e, t.f };

  for (guint i = 0; i < G_N_ELEMENTS(all); i++)
    if (!(fabs(all[i]) <= SPV_SVG_MAX_NUMBER))
      return FALSE;
  return TRUE;
}

/* Reads one transform at P. */
static gboolean
read_one(const char **p, SpvTransform *transform) {
  double values[6] = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS(transforms); i++) {
    if (!g_str_has_prefix(*p, transforms[i].name))
      continue;
    *p += strlen(transforms[i].name);
    guint n = read_values(p, values);
    if (n != transforms[i].few && n != transforms[i].many)
      return FALSE;
    *transform = make_transform(transforms[i].name, values, n);
    return TRUE;
  }
  return FALSE;
}

gboolean
spv_svg_read_transform(const char *text, SpvTransform *transform, GError **error) {
  const char *p = spv_svg_skip_space(text);
  SpvTransform all = SPV_TRANSFORM_IDENTITY, one;

  while (*p != '\0') {
    if (!read_one(&p, &one)) {
      g_set_error(
          error, SPV_SVG_ERROR, SPV_SVG_ERROR_SYNTAX,
          _("The transform “%s” can't be read; matrix, translate, scale, rotate, skewX and skewY can"), text);
      return FALSE;
    }
    all = spv_transform_compose(all, one);
    if (!is_sane(all)) {
      g_set_error(error, SPV_SVG_ERROR, SPV_SVG_ERROR_LIMIT,
                  _("The transform “%s” leads past 1,000,000,000; use a smaller one"), text);
      return FALSE;
    }
    p = spv_svg_skip_comma(p);
  }
  *transform = all;
  return TRUE;
}

static const char *
attribute(const char **keys, const char **values, const char *key) {
  for (guint i = 0; keys[i]; i++)
    if (g_str_equal(keys[i], key))
      return values[i];
  return NULL;
}

/* How many user units one of UNIT is: SVG 1.1 section 7.10, with the 96 pixels an inch of CSS. 0: not known.
 */
static double
unit_size(const char *unit) {
  static const struct {
    const char *name;
    double size;
  } units[] = { { "", 1 },    { "px", 1 },         { "pt", 96.0 / 72 }, { "pc", 16 },
                { "in", 96 }, { "cm", 96 / 2.54 }, { "mm", 96 / 25.4 } };

  for (guint i = 0; i < G_N_ELEMENTS(units); i++)
    if (g_str_equal(unit, units[i].name))
      return units[i].size;
  return 0;
}

/* The length KEY; FALLBACK where it is not given. Clears OK, and sets ERROR, where it can't be read. */
static double
length(const char **keys, const char **values, const char *key, double fallback, gboolean *ok,
       GError **error) {
  const char *text = attribute(keys, values, key);
  double value, size;

  if (!text || !*ok)
    return fallback;
  const char *end = spv_svg_read_number(spv_svg_skip_space(text), &value);
  g_autofree char *unit = end ? g_strstrip(g_strdup(end)) : NULL;
  size = end ? unit_size(unit) : 0;
  if (size > 0 && fabs(value * size) <= SPV_SVG_MAX_NUMBER)
    return value * size;
  *ok = FALSE;
  g_set_error(error, SPV_SVG_ERROR, SPV_SVG_ERROR_SYNTAX,
              _("%s=“%s” can't be read; a number, with px, pt, pc, in, cm or mm at most, can"), key, text);
  return fallback;
}

#define LENGTH(key, fallback) length(keys, values, key, fallback, &ok, error)

/* SVG 1.1 section 9.2: from the end of the upper left corner, clockwise. */
static SpvPath *
rectangle(const char **keys, const char **values, GError **error) {
  gboolean ok = TRUE;
  double x = LENGTH("x", 0), y = LENGTH("y", 0), w = LENGTH("width", 0), h = LENGTH("height", 0);
  double rx = LENGTH("rx", -1), ry = LENGTH("ry", -1);

  if (!ok || !(w > 0 && h > 0))
    return NULL;
  rx = rx < 0 ? ry : rx;
  ry = ry < 0 ? rx : ry;
  rx = CLAMP(rx, 0, w / 2);
  ry = CLAMP(ry, 0, h / 2);
  if (!(rx > 0 && ry > 0))
    return spv_path_new_box((SpvBox){ x, y, x + w, y + h });

  const SpvPoint p[] = { { x + rx, y },         { x + w - rx, y }, { x + w, y + ry }, { x + w, y + h - ry },
                         { x + w - rx, y + h }, { x + rx, y + h }, { x, y + h - ry }, { x, y + ry } };
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_move(builder, p[0]);
  for (guint i = 1; i < 8; i += 2) {
    spv_path_builder_line(builder, p[i]);
    spv_svg_add_arc(builder, p[i], rx, ry, 0, FALSE, TRUE, p[(i + 1) % 8]);
  }
  spv_path_builder_close(builder);
  return spv_path_builder_build(builder);
}

static SpvPath *
ellipse(SpvPoint centre, double rx, double ry) {
  if (!(rx > 0 && ry > 0))
    return NULL;
  g_autoptr(SpvPath) circle = spv_path_new_circle(spv_point(0, 0), 1);
  return spv_path_transform(circle, (SpvTransform){ rx, 0, 0, ry, centre.x, centre.y });
}

static SpvPath *
round_shape(const char *name, const char **keys, const char **values, GError **error) {
  gboolean ok = TRUE;
  SpvPoint centre = { LENGTH("cx", 0), LENGTH("cy", 0) };
  double rx = LENGTH(g_str_equal(name, "circle") ? "r" : "rx", 0);
  double ry = g_str_equal(name, "circle") ? rx : LENGTH("ry", 0);

  return ok ? ellipse(centre, rx, ry) : NULL;
}

/* The points of a polygon or a polyline, which fill alike. */
static SpvPath *
polygon(const char **keys, const char **values, GError **error) {
  const char *text = attribute(keys, values, "points");
  g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  const char *p = spv_svg_skip_space(text ? text : "");

  while (*p != '\0' && points->len < SPV_SVG_MAX_STEPS) {
    SpvPoint point;
    const char *end = spv_svg_read_number(p, &point.x);
    end = end ? spv_svg_read_number(spv_svg_skip_comma(end), &point.y) : NULL;
    if (!end || !(fabs(point.x) <= SPV_SVG_MAX_NUMBER) || !(fabs(point.y) <= SPV_SVG_MAX_NUMBER))
      break;
    g_array_append_val(points, point);
    p = spv_svg_skip_comma(end);
  }
  if (*p != '\0') {
    g_set_error(
        error, SPV_SVG_ERROR, SPV_SVG_ERROR_SYNTAX,
        _("The points of a polygon can't be read after the first %u; pairs of numbers, up to %d, can"),
        points->len, SPV_SVG_MAX_STEPS);
    return NULL;
  }
  return points->len < 3 ? NULL : spv_path_new_polygon((const SpvPoint *) (void *) points->data, points->len);
}

SpvPath *
spv_svg_element_path(const char *name, const char **keys, const char **values, GError **error) {
  const char *data = attribute(keys, values, "d");

  if (g_str_equal(name, "path"))
    return data && *spv_svg_skip_space(data) != '\0' ? spv_svg_path_parse(data, error) : NULL;
  if (g_str_equal(name, "rect"))
    return rectangle(keys, values, error);
  if (g_str_equal(name, "circle") || g_str_equal(name, "ellipse"))
    return round_shape(name, keys, values, error);
  if (g_str_equal(name, "polygon") || g_str_equal(name, "polyline"))
    return polygon(keys, values, error);
  return NULL;
}
