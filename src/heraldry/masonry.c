/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Masoned: the joints between stones that lie in courses, each upright joint over the middle of a stone. */
#include "heraldry/lay-private.h"

typedef struct {
  SpvBox box; /* as far as joints reach */
  guint courses;
  double height;              /* of a course, mm */
  double width, stone, joint; /* how wide the panel, a stone and a joint are, mm */
} Wall;

static Wall
wall_of(const SpvPattern *pattern, const SpvOutline *outline) {
  double w = spv_outline_width(outline), h = spv_outline_height(outline);
  Wall wall = { .box = spv_lay_box(outline), .width = w };

  wall.courses = (guint) spv_pattern_measure(pattern, SPV_MASONED_COURSES, outline, 5);
  wall.height = h / wall.courses;
  wall.stone = MAX(spv_pattern_measure(pattern, SPV_MASONED_STONE, outline, 2 * wall.height),
                   w / SPV_PATTERN_MAX_COUNT);
  /* A wider joint would leave no stone. */
  wall.joint = MIN(spv_pattern_measure(pattern, SPV_MASONED_JOINT, outline, 0), MIN(wall.height, wall.stone));
  return wall;
}

static void
add_rectangle(SpvPathBuilder *builder, double x0, double y0, double x1, double y1) {
  SpvPoint corners[4] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };

  spv_path_builder_polygon(builder, corners, 4);
}

/* Upright joints stand half a stone from one another, in every second course: in the first one at odd places
 * from the centre line on, in the second at even ones. They reach into the level joints above and below, so
 * that no seam shows. */
static void
add_course(const Wall *wall, guint course, SpvPathBuilder *builder, SpvDraft *draft) {
  double top = course == 0 ? wall->box.y0 : course * wall->height;
  double bottom = course + 1 == wall->courses ? wall->box.y1 : (course + 1) * wall->height;
  /* The last place that is on the panel, and the last from which a joint reaches it. */
  int last_on = (int) ceil(wall->width / wall->stone - 1e-9) - 1;
  int last = (int) floor((wall->width + wall->joint) / wall->stone);

  for (int i = -last; i <= last; i++) {
    double x = i * wall->stone / 2;
    if ((i & 1) == (int) (course & 1))
      continue;
    add_rectangle(builder, x - wall->joint / 2, top, x + wall->joint / 2, bottom);
    if (ABS(i) <= last_on)
      spv_draft_add_line(draft, SPV_LINE_COLUMN, (guint) (i + last_on + 1), spv_point(x, top),
                         spv_point(x, bottom));
  }
}

void
spv_lay_masoned(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  Wall wall = wall_of(pattern, frame->outline);
  SpvPathBuilder *builder = spv_path_builder_new();

  if (wall.joint <= 0) {
    draft->area[0] = spv_path_builder_build(builder);
    return;
  }
  for (guint i = 1; i < wall.courses; i++) {
    double y = i * wall.height;
    add_rectangle(builder, wall.box.x0, y - wall.joint / 2, wall.box.x1, y + wall.joint / 2);
    spv_draft_add_line(draft, SPV_LINE_ROW, i, spv_point(wall.box.x0, y), spv_point(wall.box.x1, y));
  }
  for (guint i = 0; i < wall.courses; i++)
    add_course(&wall, i, builder, draft);
  draft->area[0] = spv_path_builder_build(builder);
}
