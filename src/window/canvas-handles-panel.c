/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles on the panel's own outline. */
#include "window/canvas-handles.h"

/* Where the outline reaches farthest to the viewer's right. */
static SpvPoint
widest(const SpvOutline *outline) {
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);
  double most = -INFINITY, low = 0, high = 0;

  for (gsize i = 0; i < n; i++) {
    if (points[i].x > most + 1e-6) {
      most = points[i].x;
      low = high = points[i].y;
    } else if (points[i].x > most - 1e-6) {
      low = MIN(low, points[i].y);
      high = MAX(high, points[i].y);
    }
  }
  return spv_point(most, (low + high) / 2);
}

GArray *
spv_panel_handles(const SpvComposition *composition) {
  GArray *handles = g_array_new(FALSE, TRUE, sizeof(SpvHandle));
  const SpvOutlineSpec *spec = &composition->panel->outline;
  SpvPoint side = widest(composition->outline);
  SpvHandle width = { .owner = SPV_HANDLE_OF_PANEL, .motion = SPV_MOTION_SLIDE, .n_measures = 1 };
  SpvHandle height = width;

  width.measures[0] = width.measures[1] = SPV_PANEL_WIDTH;
  width.foot = spv_point(0, side.y);
  width.direction = spv_point(0.5, 0);
  width.values[0] = spec->width;
  width.at = spv_point(spec->width / 2, side.y);
  g_array_append_val(handles, width);
  if (spec->family == SPV_OUTLINE_DISC)
    return handles;
  height.measures[0] = height.measures[1] = SPV_PANEL_HEIGHT;
  height.direction = spv_point(0, 1);
  height.values[0] = spec->height;
  height.at = spv_point(0, spec->height);
  g_array_append_val(handles, height);
  return handles;
}
