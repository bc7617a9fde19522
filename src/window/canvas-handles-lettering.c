/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles of words: on a straight line, on an arc, along an edge. */
#include "heraldry/lettering.h"
#include "window/canvas-handles-private.h"

#define ARM SPV_HANDLE_ARM

/* The choices of the baseline. */
enum { STRAIGHT, ARC, CHIEF, DEXTER, BASE, SINISTER };

/* The box of the letters as they were laid, turned back by TURN about ABOUT; empty where there are none. */
static SpvBox
laid_box(const SpvHandleMaking *making, double turn, SpvPoint about) {
  SpvTransform back = spv_transform_compose(spv_transform_turn(-turn, about),
                                            (SpvTransform){ 1, 0, 0, 1, -about.x, -about.y });
  g_autoptr(SpvPath) upright = spv_path_transform(making->draft->area[0], back);

  return spv_path_bounds(upright);
}

/* Where no bow is given, as the letters are laid then: a third of a circle, but few letters less. */
static double
bow_of(const SpvHandleMaking *making) {
  g_autoptr(GArray) middles = g_array_new(FALSE, FALSE, sizeof(double));
  double advance = 0;

  if (!spv_making_is_given(making, "bow")) {
    g_autoptr(GPtrArray) letters = spv_lettering_letters(
        spv_pattern_text(making->pattern, SPV_LETTERING_TEXT),
        spv_pattern_text(making->pattern, SPV_LETTERING_FONT), middles, &advance);
  }
  return spv_making_value(making, "bow", MIN(2 * G_PI / 3, advance / 3));
}

static void
add_free(SpvHandleMaking *making, gboolean arc) {
  double turn = spv_making_value(making, "turn", 0), arm = ARM * making->smaller;
  double middle_y = spv_box_centre(spv_outline_bounds(making->outline)).y;
  SpvPoint to = { spv_making_value(making, "across", 0), spv_making_value(making, "down", middle_y) };
  SpvTransform stand = spv_transform_turn(turn, spv_point(0, 0));
  SpvBox box = laid_box(making, turn, to);
  double height = spv_making_value(making, "height", MAX(2 * (to.y - box.y0), 0));

  spv_making_move(making, "across", "down", spv_point(0, 0), to);
  spv_making_slide(making, "width", to, spv_transform_point(stand, spv_point(0.5, 0)),
                   spv_making_value(making, "width", 0));
  spv_making_slide(making, "height", to, spv_transform_point(stand, spv_point(0, -0.5)), height);
  spv_making_turn(making, "turn", to, spv_point(0, -arm), 1, 1, turn);
  /* A dial below the words: half a turn of it is a whole circle of words. */
  if (arc)
    spv_making_turn(making, "bow", to, spv_transform_point(stand, spv_point(0, arm)), -1, 2, bow_of(making));
}

/* How far inside the edge the letters' farther side lies, mm. */
static double
farthest_inside(const SpvHandleMaking *making) {
  g_autoptr(GPtrArray) rings = spv_path_flatten(making->draft->area[0], 0.05);
  double farthest = 0, distance;

  for (guint i = 0; i < rings->len; i++) {
    const SpvRing *ring = g_ptr_array_index(rings, i);

    for (gsize k = 0; k < ring->n_points; k++) {
      spv_track_locate(spv_outline_track(making->outline), ring->points[k], &distance);
      farthest = MAX(farthest, distance);
    }
  }
  return farthest;
}

/* Along an edge words move along it only. */
static void
add_on_edge(SpvHandleMaking *making, int baseline) {
  static const SpvEdge edges[] = { SPV_EDGE_CHIEF, SPV_EDGE_DEXTER, SPV_EDGE_BASE, SPV_EDGE_SINISTER };
  const SpvTrack *track = spv_outline_track(making->outline);
  SpvBox box = laid_box(making, 0, spv_point(0, 0));
  SpvPoint centre = spv_box_centre(box), inward, foot;
  double s0, s1, inset = spv_making_value(making, "inset", 0), height;

  spv_outline_edge(making->outline, edges[baseline - CHIEF], &s0, &s1);
  /* Beside the middle, where the words themselves are taken hold of. */
  s1 = s0 + 0.4 * (s1 - s0);
  inward = spv_track_normal(track, s1);
  foot = spv_track_at(track, s1);
  if (baseline == CHIEF || baseline == BASE)
    spv_making_slide(making, "across", spv_point(0, centre.y), spv_point(1, 0),
                     spv_making_value(making, "across", centre.x));
  else
    spv_making_slide(making, "down", spv_point(centre.x, 0), spv_point(0, 1),
                     spv_making_value(making, "down", centre.y));
  height = spv_making_is_given(making, "height") ? spv_making_value(making, "height", 0)
                                                 : MAX(farthest_inside(making) - inset, 0);
  spv_making_slide(making, "inset", foot, inward, inset);
  spv_making_slide(making, "height", spv_point_add(foot, spv_point_scale(inward, inset)), inward, height);
  spv_making_turn(making, "turn", centre, spv_point(0, -ARM * making->smaller), 1, 1,
                  spv_making_value(making, "turn", 0));
}

void
spv_handles_of_lettering(SpvHandleMaking *making) {
  int baseline = (int) spv_making_value(making, "baseline", STRAIGHT);

  if (baseline == STRAIGHT || baseline == ARC)
    add_free(making, baseline == ARC);
  else
    add_on_edge(making, CLAMP(baseline, CHIEF, SINISTER));
}
