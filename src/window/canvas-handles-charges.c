/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles of charges: the middle of all, the size and turn of the first, the space to the last. */
#include "heraldry/figure.h"
#include "window/canvas-handles-private.h"

#define ARM SPV_HANDLE_ARM

static SpvPoint
centre_of(const GArray *places, guint i) {
  const SpvTransform *place = &g_array_index(places, SpvTransform, i);

  return spv_point(place->e, place->f);
}

/* The charge nearest to AT, but not SKIPPED. */
static guint
nearest(const GArray *places, SpvPoint at, int skipped) {
  guint best = places->len;

  for (guint i = 0; i < places->len; i++)
    if ((int) i != skipped && (best == places->len || spv_point_distance(centre_of(places, i), at) <
                                                          spv_point_distance(centre_of(places, best), at)))
      best = i;
  return best;
}

/* What "across" and "down" are: the middle of all charges, or, of strewn ones, any of them. */
static SpvPoint
middle_of(const SpvHandleMaking *making, const GArray *places, gboolean strewn) {
  SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };
  SpvPoint middle = making->middle;

  for (guint i = 0; i < places->len; i++) {
    SpvPoint p = centre_of(places, i);

    box = spv_box_join(box, (SpvBox){ p.x, p.y, p.x, p.y });
  }
  if (places->len > 0)
    middle = strewn ? centre_of(places, nearest(places, middle, -1)) : spv_box_centre(box);
  if (strewn && spv_making_is_given(making, "across") != spv_making_is_given(making, "down"))
    return middle;
  return spv_point(spv_making_value(making, "across", middle.x), spv_making_value(making, "down", middle.y));
}

/* On the edge of the figure's greater side, as it is turned. */
static void
add_size(SpvHandleMaking *making, SpvPoint centre, double size, double turn) {
  g_autoptr(SpvPath) figure = spv_figure_path(making->pattern);
  SpvBox box = spv_path_bounds(figure);
  gboolean tall = spv_box_height(box) > spv_box_width(box) + 1e-6;
  SpvPoint edge = tall ? spv_point(0, 0.5) : spv_point(0.5, 0);
  SpvPoint direction = spv_transform_point(spv_transform_turn(turn, spv_point(0, 0)), edge);
  const char *key = spv_pattern_measure_index(making->pattern->kind, "diameter") >= 0 ? "diameter" : "size";

  spv_making_slide(making, key, centre, direction, size);
}

/* Charges in an arrangement keep its shape as they move apart: each goes straight from the middle. Of strewn
 * ones that is the neighbour beneath, of others the last. */
static void
add_spacing(SpvHandleMaking *making, const GArray *places, SpvPoint middle, gboolean strewn) {
  guint last = strewn ? nearest(places, middle, -1) : places->len - 1;
  guint next = nearest(places, centre_of(places, last), (int) last);
  double between = next == places->len ? making->smaller / 4
                                       : spv_point_distance(centre_of(places, last), centre_of(places, next));
  double spacing = spv_making_value(making, "spacing", between);
  SpvPoint away = strewn ? spv_point(0, spacing) : spv_point_subtract(centre_of(places, last), middle);

  if (spacing > 0 && spv_point_length(away) > 1e-6)
    spv_making_slide(making, "spacing", middle, spv_point_scale(away, 1 / spacing), spacing);
}

void
spv_handles_of_charge(SpvHandleMaking *making) {
  g_autoptr(GArray) places = spv_arrange(making->pattern, making->frame);
  gboolean strewn = spv_making_value(making, "arrangement", 0) == SPV_ARRANGEMENT_SEMY;
  double turn = spv_making_value(making, "turn", 0), size = 0;
  SpvPoint middle = middle_of(making, places, strewn);
  SpvPoint first = places->len == 0 || strewn ? middle : centre_of(places, 0);

  if (places->len > 0)
    size = hypot(g_array_index(places, SpvTransform, 0).a, g_array_index(places, SpvTransform, 0).b);
  add_size(making, first, size, turn);
  spv_making_move(making, "across", "down", spv_point(0, 0), middle);
  spv_making_turn(making, "turn", first, spv_point(0, -ARM * making->smaller), 1, 1, turn);
  if (places->len > 1)
    add_spacing(making, places, middle, strewn);
}

const SpvHandleMaker spv_handles_of_charges[] = {
  { SPV_PATTERN_ROUNDEL, SPV_PATTERN_TALLY, spv_handles_of_charge },
  { 0, 0, NULL },
};

/* The nodes of a free path are no measures: see path-nodes.h. */
const SpvHandleMaker spv_handles_of_own[] = {
  { SPV_PATTERN_PATH_CHARGE, SPV_PATTERN_PATH_CHARGE, spv_handles_of_charge },
  { SPV_PATTERN_LETTERING, SPV_PATTERN_LETTERING, spv_handles_of_lettering },
  { 0, 0, NULL },
};
