/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The families of outlines: a table of what each measures, allows and draws. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "heraldry/outline-private.h"

void
spv_half_line(SpvHalf *half, SpvPoint to) {
  SpvPathStep step = { .op = SPV_PATH_LINE, .to = to };
  if (spv_point_distance(half->at, to) == 0)
    return;
  g_array_append_val(half->steps, step);
  half->at = to;
}

void
spv_half_curve(SpvHalf *half, SpvPoint c1, SpvPoint c2, SpvPoint to) {
  SpvPathStep step = { .op = SPV_PATH_CURVE, .c1 = c1, .c2 = c2, .to = to };
  g_array_append_val(half->steps, step);
  half->at = to;
}

void
spv_half_arc(SpvHalf *half, SpvPoint centre, double radius, double start, double sweep) {
  SpvPoint to = { centre.x + radius * cos(start + sweep), centre.y + radius * sin(start + sweep) };
  SpvPathStep step = {
    .op = SPV_PATH_ARC, .to = to, .centre = centre, .radius = radius, .start = start, .sweep = sweep
  };
  if (radius <= 0 || sweep <= 0)
    return;
  g_array_append_val(half->steps, step);
  half->at = to;
}

/* Says that own measure INDEX must lie between MIN and MAX mm, where it doesn't. */
static gboolean
check_own(const SpvOutlineSpec *spec, guint index, double min, double max, GError **error) {
  const SpvOutlineInfo *info = spv_outline_info(spec->family);
  double value = spec->own[index];
  g_autofree char *low = NULL, *high = NULL;
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  if (value >= min - 1e-9 && value <= max + 1e-9)
    return TRUE;
  low = g_strdup(g_ascii_formatd(buffer, sizeof buffer, "%.2f", min));
  high = g_strdup(g_ascii_formatd(buffer, sizeof buffer, "%.2f", max));
  g_set_error(error, SPV_OUTLINE_ERROR, SPV_OUTLINE_ERROR_MISFIT,
              /* TRANSLATORS: a measure's name, then two lengths in mm. */
              _("“%s” must be from %s to %s\u2009mm on a panel of this size"), _(info->own[index].label), low,
              high);
  return FALSE;
}

/* An elliptical arc about CENTRE from angle A to B (radians, clockwise) as cubics of at most a quarter turn:
 * the usual handle length 4/3 tan(Δ/4), which strays by at most 0.03 % of the radius. */
static void
half_ellipse(SpvHalf *half, SpvPoint centre, double rx, double ry, double a, double b) {
  int n = (int) ceil((b - a) / (G_PI / 2) - 1e-9);

  for (int i = 0; i < n; i++) {
    double p = a + (b - a) * i / n, q = a + (b - a) * (i + 1) / n;
    double k = 4.0 / 3.0 * tan((q - p) / 4);
    SpvPoint c1 = { centre.x + rx * (cos(p) - k * sin(p)), centre.y + ry * (sin(p) + k * cos(p)) };
    SpvPoint c2 = { centre.x + rx * (cos(q) + k * sin(q)), centre.y + ry * (sin(q) - k * cos(q)) };
    SpvPoint to = { centre.x + rx * cos(q), centre.y + ry * sin(q) };
    spv_half_curve(half, c1, c2, to);
  }
}

/* Round pad: an ellipse whose lower end is cut off straight. */

static gboolean
round_pad_check(const SpvOutlineSpec *spec, GError **error) {
  return check_own(spec, 0, 0, 0.9 * spec->height, error);
}

static void
round_pad_preset(SpvOutlineSpec *spec) {
  spec->own[0] = 0;
}

static void
round_pad_draw(const SpvOutlineSpec *spec, SpvHalf *half) {
  double rx = spec->width / 2, ry = (spec->height + spec->own[0]) / 2;
  double end = asin(CLAMP((spec->height - ry) / ry, -1, 1));

  half_ellipse(half, spv_point(0, ry), rx, ry, -G_PI / 2, end);
  spv_half_line(half, spv_point(0, spec->height));
}

/* Kneepad. */

static gboolean
kneepad_check(const SpvOutlineSpec *spec, GError **error) {
  return check_own(spec, 0, 0.2 * spec->width, spec->width, error) &&
         check_own(spec, 1, 0, MIN(0.4 * spec->height, spec->own[0] / 2), error);
}

static void
kneepad_preset(SpvOutlineSpec *spec) {
  spec->own[0] = 0.78 * spec->width;
  spec->own[1] = MIN(0.04 * spec->height, spec->own[0] / 4);
}

/* A flatter crown than this, mm, is drawn straight: it is far below the chord error, and the circle through
 * it would be too large to reckon with. */
#define FLATTEST_CROWN 1e-4

static void
kneepad_draw(const SpvOutlineSpec *spec, SpvHalf *half) {
  double w = spec->width / 2, h = spec->height, t = spec->own[0] / 2, crown = spec->own[1];

  if (crown > FLATTEST_CROWN) {
    double r = (t * t + crown * crown) / (2 * crown);
    spv_half_arc(half, spv_point(0, r), r, -G_PI / 2, asin(MIN(1, t / r)));
  } else {
    spv_half_line(half, spv_point(t, 0));
  }
  /* Under a high crown the handle keeps below the corner, so that the side never runs back up. */
  spv_half_curve(half, spv_point(t + (w - t) * 0.6, crown + 0.05 * h),
                 spv_point(w, MAX(0.24, crown / h + 0.1) * h), spv_point(w, crown + 0.45 * (h - crown)));
  spv_half_curve(half, spv_point(w, crown + 0.76 * (h - crown)), spv_point(0.58 * w, h), spv_point(0, h));
}

/* Plate: the heater shield of Boutell: straight sides, then arcs whose centres lie on the line where the
 * sides end. */

static gboolean
plate_check(const SpvOutlineSpec *spec, GError **error) {
  if (spec->height < spec->width / 2) {
    g_set_error(error, SPV_OUTLINE_ERROR, SPV_OUTLINE_ERROR_MISFIT,
                _("a plate is at least half as high as it is wide; make it higher, or take a rectangle"));
    return FALSE;
  }
  return check_own(spec, 0, 0, spec->height - spec->width / 2, error);
}

static void
plate_preset(SpvOutlineSpec *spec) {
  double full = spec->height - spec->width * sqrt(3) / 2;
  spec->own[0] = CLAMP(full, 0, MAX(0, spec->height - spec->width / 2));
}

static void
plate_draw(const SpvOutlineSpec *spec, SpvHalf *half) {
  double w = spec->width / 2, s = spec->own[0], d = spec->height - s;
  /* The circle that leaves the side upright at (w, s) and meets the centre line at the foot. */
  double r = (w * w + d * d) / (2 * w);

  spv_half_line(half, spv_point(w, 0));
  spv_half_line(half, spv_point(w, s));
  spv_half_arc(half, spv_point(w - r, s), r, 0, atan2(d, r - w));
}

/* Greave, rectangle and strip: a trapezium whose corners may be rounded. */

/* How much of each side a rounding of RADIUS takes at a corner of angle A. */
static double
tangent_length(double radius, double angle) {
  return radius / tan(angle / 2);
}

/* The angle at the upper corners of a trapezium. */
static double
trapezium_angle(double width, double foot, double height) {
  return atan2(height, (width - foot) / 2);
}

static double
trapezium_max_corner(double width, double foot, double height) {
  double angle = trapezium_angle(width, foot, height);
  double side = hypot(height, (width - foot) / 2);
  double upper = tangent_length(1, angle), lower = tangent_length(1, G_PI - angle);
  return MIN(width / 2 / upper, MIN(foot / 2 / lower, side / (upper + lower)));
}

static void
round_corner(SpvHalf *half, SpvPoint corner, SpvPoint in, SpvPoint out, double radius) {
  double turn = acos(CLAMP(spv_point_dot(in, out), -1, 1));
  double back = tangent_length(radius, G_PI - turn);
  SpvPoint start = spv_point_subtract(corner, spv_point_scale(in, back));
  SpvPoint inward = spv_point_quarter_turn(in);
  SpvPoint centre = spv_point_add(start, spv_point_scale(inward, radius));

  spv_half_line(half, start);
  spv_half_arc(half, centre, radius, atan2(-inward.y, -inward.x), turn);
}

static void
trapezium_draw(double width, double foot, double height, double radius, SpvHalf *half) {
  SpvPoint upper = { width / 2, 0 }, lower = { foot / 2, height };
  SpvPoint down = spv_point_unit(spv_point_subtract(lower, upper));

  if (radius > 0) {
    round_corner(half, upper, spv_point(1, 0), down, radius);
    round_corner(half, lower, down, spv_point(-1, 0), radius);
  } else {
    spv_half_line(half, upper);
    spv_half_line(half, lower);
  }
  spv_half_line(half, spv_point(0, height));
}

/* How wide the trapezium is before its sharp upper corners are rounded, so that the greave has its width
 * after. A side that runs in by d on its way down loses r (√(d² + h²) + d) / h of the top edge to a rounding
 * of radius r, which then bulges by r; so half of the width is foot / 2 + d - r (√(d² + h²) + d) / h + r, and
 * this is the larger root d. */
static double
greave_full_width(const SpvOutlineSpec *spec) {
  double foot = spec->own[0], radius = spec->own[1], k = radius / spec->height;
  double run = (spec->width - foot) / 2 - radius;
  double d = (run * (1 - k) + sqrt(run * run * k * k + (1 - 2 * k) * radius * radius)) / (1 - 2 * k);

  return foot + 2 * MAX(d, 0);
}

static gboolean
greave_check(const SpvOutlineSpec *spec, GError **error) {
  /* What fits the trapezium as measured fits the wider one too. A little less, so that some straight is left
   * of each side. */
  double most = 0.9 * trapezium_max_corner(spec->width, spec->own[0], spec->height);
  return check_own(spec, 0, 0.1 * spec->width, spec->width, error) && check_own(spec, 1, 0, most, error);
}

static void
greave_preset(SpvOutlineSpec *spec) {
  spec->own[0] = 0.72 * spec->width;
  spec->own[1] = 0.04 * MIN(spec->width, spec->height);
}

static void
greave_draw(const SpvOutlineSpec *spec, SpvHalf *half) {
  trapezium_draw(greave_full_width(spec), spec->own[0], spec->height, spec->own[1], half);
}

static gboolean
rectangle_check(const SpvOutlineSpec *spec, GError **error) {
  return check_own(spec, 0, 0, trapezium_max_corner(spec->width, spec->width, spec->height), error);
}

static void
rectangle_preset(SpvOutlineSpec *spec) {
  spec->own[0] = 0;
}

static void
rectangle_draw(const SpvOutlineSpec *spec, SpvHalf *half) {
  trapezium_draw(spec->width, spec->width, spec->height, spec->own[0], half);
}

static void
strip_draw(const SpvOutlineSpec *spec, SpvHalf *half) {
  trapezium_draw(spec->width, spec->width, spec->height, 0, half);
}

/* Disc. */

static gboolean
disc_check(const SpvOutlineSpec *spec, GError **error) {
  if (fabs(spec->width - spec->height) <= 1e-9)
    return TRUE;
  g_set_error(error, SPV_OUTLINE_ERROR, SPV_OUTLINE_ERROR_MISFIT,
              _("a disc is as high as it is wide; make both the same, or take a round pad"));
  return FALSE;
}

static void
disc_draw(const SpvOutlineSpec *spec, SpvHalf *half) {
  double r = spec->width / 2;
  spv_half_arc(half, spv_point(0, r), r, -G_PI / 2, G_PI);
}

/* Banner: a rectangle whose foot may be cut to two tails. */

static gboolean
banner_check(const SpvOutlineSpec *spec, GError **error) {
  return check_own(spec, 0, 0, 0.9 * spec->height, error);
}

static void
banner_preset(SpvOutlineSpec *spec) {
  spec->own[0] = 0.15 * spec->height;
}

static void
banner_draw(const SpvOutlineSpec *spec, SpvHalf *half) {
  spv_half_line(half, spv_point(spec->width / 2, 0));
  spv_half_line(half, spv_point(spec->width / 2, spec->height));
  spv_half_line(half, spv_point(0, spec->height - spec->own[0]));
}

static gboolean
nothing_to_check(const SpvOutlineSpec *spec, GError **error) {
  (void) spec;
  (void) error;
  return TRUE;
}

static void
nothing_to_preset(SpvOutlineSpec *spec) {
  (void) spec;
}

static const SpvFamily families[SPV_N_OUTLINE_FAMILIES] = {
  [SPV_OUTLINE_ROUND_PAD] = { { "round-pad",
                                N_("Round pad"),
                                1,
                                { { "cut", N_("Cut"),
                                    N_("How much of the oval is missing where the lower rim is "
                                       "straight") } } },
                              round_pad_check,
                              round_pad_preset,
                              round_pad_draw },
  [SPV_OUTLINE_KNEEPAD] = { { "kneepad",
                              N_("Kneepad"),
                              2,
                              { { "top", N_("Top edge"), N_("How wide the top edge is, corner to corner") },
                                { "crown", N_("Crown"),
                                  N_("How far the top edge rises in its middle above its corners") } } },
                            kneepad_check,
                            kneepad_preset,
                            kneepad_draw },
  [SPV_OUTLINE_PLATE] = { { "plate",
                            N_("Plate"),
                            1,
                            { { "straight", N_("Straight sides"),
                                N_("How far the sides run straight down before they curve") } } },
                          plate_check,
                          plate_preset,
                          plate_draw },
  [SPV_OUTLINE_GREAVE] = { { "greave",
                             N_("Greave"),
                             2,
                             { { "foot", N_("Foot"), N_("How wide the lower end is") },
                               { "corner", N_("Corner radius"), N_("How round the corners are") } } },
                           greave_check,
                           greave_preset,
                           greave_draw },
  [SPV_OUTLINE_RECTANGLE] = { { "rectangle",
                                N_("Rectangle"),
                                1,
                                { { "corner", N_("Corner radius"), N_("How round the corners are") } } },
                              rectangle_check,
                              rectangle_preset,
                              rectangle_draw },
  [SPV_OUTLINE_STRIP] = { { "strip", N_("Strip"), 0, { { NULL, NULL, NULL } } },
                          nothing_to_check,
                          nothing_to_preset,
                          strip_draw },
  [SPV_OUTLINE_DISC] = { { "disc", N_("Disc"), 0, { { NULL, NULL, NULL } } },
                         disc_check,
                         nothing_to_preset,
                         disc_draw },
  [SPV_OUTLINE_BANNER] = { { "banner",
                             N_("Banner"),
                             1,
                             { { "tails", N_("Tails"),
                                 N_("How deep the foot is cut in; 0 for a straight foot") } } },
                           banner_check,
                           banner_preset,
                           banner_draw },
};

const SpvFamily *
spv_outline_family(SpvOutlineFamily family) {
  g_return_val_if_fail((guint) family < SPV_N_OUTLINE_FAMILIES, NULL);
  return &families[family];
}

const SpvOutlineInfo *
spv_outline_info(SpvOutlineFamily family) {
  g_return_val_if_fail((guint) family < SPV_N_OUTLINE_FAMILIES, NULL);
  return &families[family].info;
}

gboolean
spv_outline_family_from_key(const char *key, SpvOutlineFamily *family) {
  for (guint i = 0; i < SPV_N_OUTLINE_FAMILIES; i++)
    if (g_strcmp0(key, families[i].info.key) == 0) {
      *family = (SpvOutlineFamily) i;
      return TRUE;
    }
  return FALSE;
}
