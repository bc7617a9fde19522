/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles of ordinaries that are no bands side by side. */
#include "window/canvas-handles-private.h"

#define ARM SPV_HANDLE_ARM

static void
add_chief(SpvHandleMaking *making) {
  spv_making_slide(making, "depth", spv_point(0, 0), spv_point(0, 1), spv_making_value(making, "depth", 0));
  spv_making_profile_on(making, 1, 0.25, INFINITY);
}

static void
add_fillet(SpvHandleMaking *making) {
  double level = spv_making_value(making, "level", 0), width = spv_making_value(making, "width", 0);

  spv_making_slide(making, "level", spv_point(0, 0), spv_point(0, 1), level);
  spv_making_slide(making, "width", spv_point(0, level), spv_point(0, -1), width);
  spv_making_profile_on(making, 2, 0.25, width / 2);
}

/* The width's handle is on the limb that goes to the base. */
static void
add_cross(SpvHandleMaking *making) {
  SpvPoint shift = { spv_making_value(making, "across", 0), spv_making_value(making, "down", 0) };
  SpvPoint centre = spv_point_add(making->middle, shift);
  double width = spv_making_value(making, "width", spv_making_between(making, 1, 2, 0));

  spv_making_move(making, "across", "down", making->middle, shift);
  spv_making_slide(making, "width", spv_point(centre.x, centre.y + ARM * making->smaller), spv_point(0.5, 0),
                   width);
  spv_making_profile_on(making, 1, 0.5, width / 2);
}

/* The width's handle is on another limb than the slope's. */
static void
add_saltire(SpvHandleMaking *making) {
  double width = spv_making_value(making, "width", spv_making_between(making, 1, 2, 0));
  double angle = spv_making_value(making, "angle", atan2(making->height, making->width));
  SpvPoint limb = { -cos(angle), sin(angle) };

  spv_making_turn(making, "angle", making->middle, spv_point(ARM * making->smaller, 0), 1, 1, angle);
  spv_making_slide(making, "width",
                   spv_point_add(making->middle, spv_point_scale(limb, ARM * making->smaller)),
                   spv_point_scale(spv_point_quarter_turn(limb), -0.5), width);
  spv_making_profile_on(making, 1, 0.5, width / 2);
}

static void
add_pall(SpvHandleMaking *making) {
  double down = spv_making_value(making, "down", 0), width = spv_making_value(making, "width", 0);

  spv_handles_of_fork(making);
  spv_making_slide(making, "width", spv_point(0, down + ARM * making->smaller), spv_point(0.5, 0), width);
  spv_making_profile_on(making, 1, 0.5, width / 2);
}

/* Of the pile in the middle, or the one beside it. */
static void
add_pile(SpvHandleMaking *making) {
  guint n = (guint) spv_making_value(making, "number", 1), i = n / 2;
  double x = (i - (n - 1) / 2.0) * making->width / n;
  const SpvDraftLine *side = spv_making_line(making, SPV_LINE_DIVISION, 2 * i + 1);
  double width = spv_making_value(making, "width", side == NULL ? 0 : 2 * (x - side->from.x));

  spv_making_slide(making, "length", spv_point(x, 0), spv_point(0, 1), spv_making_value(making, "length", 0));
  spv_making_slide(making, "width", spv_point(x, 0), spv_point(0.5, 0), width);
  spv_making_profile_on(making, 2 * i + 1, 0.35, INFINITY);
}

/* One handle on the corner. */
static void
add_quarter(SpvHandleMaking *making) {
  SpvPoint foot = { -making->width / 2, 0 }, size;
  const SpvDraftLine *side = spv_making_line(making, SPV_LINE_DIVISION, 1);

  size.x = spv_making_value(making, "width", side == NULL ? 0 : side->to.x - foot.x);
  size.y = spv_making_value(making, "height", side == NULL ? 0 : side->to.y);
  spv_making_move(making, "width", "height", foot, size);
  spv_making_profile_on(making, 2, 0.5, INFINITY);
}

/* The line runs round an arc through the corners: it is taken hold of a good way above the middle. */
static void
add_flaunches(SpvHandleMaking *making) {
  double width = spv_making_value(making, "width", 0), h = making->height, left = -making->width / 2;
  double radius = (h * h / 4 + width * width) / (2 * width), up = 0.3 * h, centre = left + width - radius;

  spv_making_slide(making, "width", spv_point(left, making->middle.y), spv_point(1, 0), width);
  if (width > 1e-4 && up < radius) {
    SpvPoint at = { centre + sqrt(radius * radius - up * up), making->middle.y - up };
    SpvPoint out = spv_point_unit(spv_point_subtract(at, spv_point(centre, making->middle.y)));

    spv_making_profile(making, at, spv_point(out.y, -out.x), 2 * asin(MIN(h / 2 / radius, 1)) * radius,
                       INFINITY);
  }
}

/* Its line runs round it. */
static void
add_inescutcheon(SpvHandleMaking *making) {
  SpvPoint shift = { spv_making_value(making, "across", 0), spv_making_value(making, "down", 0) };
  SpvPoint centre = spv_point_add(making->middle, shift);
  double width = spv_making_value(making, "width", 0), factor = width / making->width;
  double round = spv_track_length(spv_outline_track(making->outline)) * factor;

  spv_making_move(making, "across", "down", making->middle, shift);
  spv_making_slide(making, "width", centre, spv_point(0.5, 0), width);
  spv_making_profile(making, spv_point(centre.x, centre.y - factor * making->height / 2), spv_point(-1, 0),
                     round, MIN(width, factor * making->height) / 8);
}

/* The depth's handle hangs from the last point. */
static void
add_label(SpvHandleMaking *making) {
  double level = spv_making_value(making, "level", 0), width = spv_making_value(making, "width", 0);
  double depth = spv_making_value(making, "depth", 0);
  double length = spv_making_value(making, "length", making->width),
         points = spv_making_value(making, "points", 3);
  gboolean free = spv_making_is_given(making, "length");
  double last = !free ? length / 2 - length / (2 * points) : points > 1 ? (length - width) / 2 : 0;

  spv_making_slide(making, "level", spv_point(0, 0), spv_point(0, 1), level);
  /* Beside the point in the middle. */
  spv_making_slide(making, "width", spv_point(-length / (2 * points + 2), level), spv_point(0, 1), width);
  spv_making_slide(making, "depth", spv_point(last, level), spv_point(0, 1), depth);
  spv_making_slide(making, "length", spv_point(0, level), spv_point(0.5, 0), length);
}

static void
add_gyron(SpvHandleMaking *making) {
  spv_making_profile_on(making, 1, 0.5, INFINITY);
}

const SpvHandleMaker spv_handles_of_ordinaries[] = {
  { SPV_PATTERN_CHIEF, SPV_PATTERN_CHIEF, add_chief },
  { SPV_PATTERN_FILLET, SPV_PATTERN_FILLET, add_fillet },
  { SPV_PATTERN_FESS, SPV_PATTERN_BATON, spv_handles_of_band },
  { SPV_PATTERN_CHEVRON, SPV_PATTERN_COUPLE_CLOSE, spv_handles_of_chevron },
  { SPV_PATTERN_CROSS, SPV_PATTERN_CROSS, add_cross },
  { SPV_PATTERN_SALTIRE, SPV_PATTERN_SALTIRE, add_saltire },
  { SPV_PATTERN_PILE, SPV_PATTERN_PILE, add_pile },
  { SPV_PATTERN_PALL, SPV_PATTERN_PALL, add_pall },
  { SPV_PATTERN_QUARTER, SPV_PATTERN_CANTON, add_quarter },
  { SPV_PATTERN_GYRON, SPV_PATTERN_GYRON, add_gyron },
  { SPV_PATTERN_FLAUNCHES, SPV_PATTERN_FLAUNCHES, add_flaunches },
  { SPV_PATTERN_INESCUTCHEON, SPV_PATTERN_INESCUTCHEON, add_inescutcheon },
  { SPV_PATTERN_LABEL, SPV_PATTERN_LABEL, add_label },
  { 0, 0, NULL },
};
