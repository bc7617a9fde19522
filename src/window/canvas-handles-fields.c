/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles of divisions and of varied fields. */
#include "window/canvas-handles-private.h"

#define ARM SPV_HANDLE_ARM

/* Of a check's choice "centre": centred on a cell. */
#define CENTRED_ON_CELL 2

/* Divisions have their line's handles half-way from where it begins to the middle, where the others are. */
static void
add_line(SpvHandleMaking *making) {
  spv_making_profile_on(making, 1, 0.25, INFINITY);
}

/* A slope falls to the viewer's right, or (ACROSS -1) to the left. */
static void
add_slope(SpvHandleMaking *making, SpvPoint pivot, double across) {
  spv_making_turn(making, "angle", pivot, spv_point(across * ARM * making->smaller, 0), across, 1,
                  spv_making_slope(making));
}

/* Half the angle between the upper lines of a pall: of the first that neither stands nor lies. */
static double
half_fork(const SpvHandleMaking *making, double down) {
  for (guint i = 0; i < making->draft->lines->len; i++) {
    const SpvDraftLine *line = &g_array_index(making->draft->lines, SpvDraftLine, i);
    SpvPoint run = spv_point_subtract(line->to, line->from);

    if (fabs(run.x) > 1e-6 * spv_point_length(run))
      return atan2(fabs(run.x), fabs(run.y));
  }
  return CLAMP(atan2(making->width / 2, down), G_PI / 36, G_PI * 17 / 36);
}

void
spv_handles_of_fork(SpvHandleMaking *making) {
  double down = spv_making_value(making, "down", making->height / 2);

  spv_making_slide(making, "down", spv_point(0, 0), spv_point(0, 1), down);
  /* The upper limb on the viewer's right turns clockwise from straight up as the angle opens. */
  spv_making_turn(making, "angle", spv_point(0, down), spv_point(0, -ARM * making->smaller), 1, 2,
                  2 * half_fork(making, down));
}

static void
add_shift(SpvHandleMaking *making, SpvPoint direction) {
  spv_making_slide(making, "shift", making->middle, direction, spv_making_value(making, "shift", 0));
}

static void
add_per_pale(SpvHandleMaking *making) {
  add_shift(making, spv_point(1, 0));
  add_line(making);
}

static void
add_per_fess(SpvHandleMaking *making) {
  add_shift(making, spv_point(0, 1));
  add_line(making);
}

static void
add_per_bend(SpvHandleMaking *making) {
  double across = making->pattern->kind == SPV_PATTERN_PER_BEND_SINISTER ? -1 : 1;
  SpvPoint shift = { spv_making_value(making, "shift", 0), 0 };

  add_shift(making, spv_point(1, 0));
  add_slope(making, spv_point_add(making->middle, shift), across);
  add_line(making);
}

static void
add_per_chevron(SpvHandleMaking *making) {
  double apex = spv_making_value(making, "apex", 0);

  spv_making_slide(making, "apex", spv_point(0, 0), spv_point(0, 1), apex);
  /* The leg on the viewer's right turns anticlockwise from straight down as the angle opens. */
  spv_making_turn(making, "angle", spv_point(0, apex), spv_point(0, ARM * making->smaller), -1, 2,
                  spv_making_value(making, "angle", G_PI / 2));
  add_line(making);
}

static void
add_per_saltire(SpvHandleMaking *making) {
  add_slope(making, making->middle, 1);
  add_line(making);
}

static void
add_per_pall(SpvHandleMaking *making) {
  spv_handles_of_fork(making);
  add_line(making);
}

static void
add_meeting(SpvHandleMaking *making) {
  SpvPoint at = { spv_making_value(making, "across", 0), spv_making_value(making, "down", 0) };

  spv_making_move(making, "across", "down", making->middle, at);
  add_line(making);
}

static void
add_tierced(SpvHandleMaking *making) {
  gboolean in_pale = making->pattern->kind == SPV_PATTERN_TIERCED_IN_PALE;

  spv_making_slide(making, "middle", making->middle, in_pale ? spv_point(0.5, 0) : spv_point(0, 0.5),
                   spv_making_value(making, "middle", 0));
  add_line(making);
}

const SpvHandleMaker spv_handles_of_divisions[] = {
  { SPV_PATTERN_PER_PALE, SPV_PATTERN_PER_PALE, add_per_pale },
  { SPV_PATTERN_PER_FESS, SPV_PATTERN_PER_FESS, add_per_fess },
  { SPV_PATTERN_PER_BEND, SPV_PATTERN_PER_BEND_SINISTER, add_per_bend },
  { SPV_PATTERN_PER_CHEVRON, SPV_PATTERN_PER_CHEVRON, add_per_chevron },
  { SPV_PATTERN_PER_SALTIRE, SPV_PATTERN_PER_SALTIRE, add_per_saltire },
  { SPV_PATTERN_PER_PALL, SPV_PATTERN_PER_PALL, add_per_pall },
  { SPV_PATTERN_QUARTERLY, SPV_PATTERN_QUARTERLY, add_meeting },
  { SPV_PATTERN_TIERCED_IN_PALE, SPV_PATTERN_TIERCED_IN_FESS, add_tierced },
  { SPV_PATTERN_GYRONNY, SPV_PATTERN_GYRONNY, add_meeting },
  { 0, 0, NULL },
};

/* --- Stripes --- */

/* The handle stands on the first boundary: the wider the first piece, the fewer the pieces. */
static void
add_stripes(SpvHandleMaking *making, const char *key, SpvPoint direction) {
  double low, high, along = spv_point_dot(making->middle, direction);
  SpvPoint aside = spv_point_subtract(making->middle, spv_point_scale(direction, along));

  spv_making_extent(making, direction, &low, &high);
  spv_making_divide(making, key, spv_point_add(aside, spv_point_scale(direction, low)),
                    spv_point_scale(direction, high - low), spv_making_value(making, key, 6));
}

static void
add_bends(SpvHandleMaking *making, const char *key, double across) {
  double slope = spv_making_value(making, "angle", atan2(making->height, making->width));

  add_stripes(making, key, spv_point(-across * sin(slope), cos(slope)));
  spv_making_turn(making, "angle", making->middle, spv_point(across * ARM * making->smaller, 0), across, 1,
                  slope);
}

static void
add_straight(SpvHandleMaking *making) {
  add_stripes(making, "pieces",
              making->pattern->kind == SPV_PATTERN_PALY ? spv_point(1, 0) : spv_point(0, 1));
  add_line(making);
}

static void
add_bendy(SpvHandleMaking *making) {
  add_bends(making, "pieces", making->pattern->kind == SPV_PATTERN_BENDY ? 1 : -1);
  add_line(making);
}

static void
add_crossed(SpvHandleMaking *making) {
  gboolean bars = making->pattern->kind == SPV_PATTERN_BARRY_BENDY;

  add_stripes(making, "pieces", bars ? spv_point(0, 1) : spv_point(1, 0));
  add_bends(making, "bends", 1);
}

/* Counted on the centre line; the angle is turned about the point nearest to the middle. */
static void
add_chevronny(SpvHandleMaking *making) {
  double pieces = spv_making_value(making, "pieces", 6);
  SpvPoint point = { 0, making->height / pieces * floor(pieces / 2) };

  spv_making_divide(making, "pieces", spv_point(0, 0), spv_point(0, making->height), pieces);
  spv_making_turn(making, "angle", point, spv_point(0, ARM * making->smaller), -1, 2,
                  spv_making_value(making, "angle", G_PI / 2));
  spv_making_profile_on(making, 2, 0.5, INFINITY);
}

/* --- Checks --- */

/* The grid of a check, in its own axes: x along the rows, about the panel's middle. */
typedef struct {
  SpvPoint along, down;         /* unit, in the frame's mm */
  double left, top, wide, high; /* what the counts divide */
  double cell, tall;            /* mm */
} Grid;

static Grid
grid_of(const SpvHandleMaking *making) {
  double turn = spv_making_value(making, "turn", 0), given = spv_making_value(making, "cell", 0);
  double columns = spv_making_value(making, "columns", 7), rows = spv_making_value(making, "rows", 0);
  Grid grid = { .along = { cos(turn), sin(turn) }, .down = { -sin(turn), cos(turn) } };
  double right, bottom;

  spv_making_extent(making, grid.along, &grid.left, &right);
  spv_making_extent(making, grid.down, &grid.top, &bottom);
  grid.left -= spv_point_dot(making->middle, grid.along);
  grid.top -= spv_point_dot(making->middle, grid.down);
  grid.wide = turn == 0 ? making->width : right - spv_point_dot(making->middle, grid.along) - grid.left;
  grid.high = turn == 0 ? making->height : bottom - spv_point_dot(making->middle, grid.down) - grid.top;
  if (turn == 0) {
    grid.left = -making->width / 2;
    grid.top = -making->height / 2;
  }
  grid.cell = given > 0 ? given : grid.wide / columns;
  grid.tall = rows > 0 ? grid.high / rows : grid.cell;
  return grid;
}

/* The ruling of KIND nearest to AT, both in the grid's axes; FALSE when the check has none. */
static gboolean
nearest_ruling(const SpvHandleMaking *making, const Grid *grid, SpvLineKind kind, double at, double *found) {
  SpvPoint axis = kind == SPV_LINE_COLUMN ? grid->along : grid->down;
  double best = INFINITY;

  for (guint i = 0; i < making->draft->lines->len; i++) {
    const SpvDraftLine *line = &g_array_index(making->draft->lines, SpvDraftLine, i);
    double where = spv_point_dot(spv_point_subtract(line->from, making->middle), axis);

    if (line->kind == kind && fabs(where - at) < best) {
      best = fabs(where - at);
      *found = where;
    }
  }
  return isfinite(best);
}

/* In the frame's mm. */
static SpvPoint
on_grid(const SpvHandleMaking *making, const Grid *grid, double x, double y) {
  return spv_point_add(making->middle,
                       spv_point_add(spv_point_scale(grid->along, x), spv_point_scale(grid->down, y)));
}

/* The shift that puts the grid where it is, its corner at (X, Y): as given, or what the pattern chose, seen
 * from where the grid would lie without a shift. */
static SpvPoint
grid_shift(const SpvHandleMaking *making, const Grid *grid, double x, double y) {
  gboolean by_cells = spv_making_value(making, "cell", 0) > 0,
           by_rows = spv_making_value(making, "rows", 0) > 0;
  gboolean on_cell = spv_making_value(making, "centre", 0) == CENTRED_ON_CELL;
  double base_x = by_cells ? (on_cell ? -grid->cell / 2 : 0) : grid->left;
  double base_y = by_rows ? grid->top : on_cell ? -grid->tall / 2 : 0;
  double off_x = remainder(x - base_x, grid->cell), off_y = remainder(y - base_y, grid->tall);
  SpvPoint shift = spv_point_add(spv_point_scale(grid->along, off_x), spv_point_scale(grid->down, off_y));
  gboolean upright = grid->along.y == 0, across = spv_making_is_given(making, "across"),
           down = spv_making_is_given(making, "down");

  if (across && (upright || down))
    shift.x = spv_making_value(making, "across", 0);
  if (down && (upright || across))
    shift.y = spv_making_value(making, "down", 0);
  return shift;
}

/* On the corner of the grid at (X, Y) in its axes. */
static void
add_corner(SpvHandleMaking *making, const Grid *grid, double x, double y) {
  SpvPoint corner = on_grid(making, grid, x, y), shift = grid_shift(making, grid, x, y);
  double rows = spv_making_value(making, "rows", 0), next;

  spv_making_move(making, "across", "down", spv_point_subtract(corner, shift), shift);
  if (spv_making_value(making, "cell", 0) > 0)
    spv_making_slide(making, "cell", corner, grid->along, grid->cell);
  else if (nearest_ruling(making, grid, SPV_LINE_COLUMN, x + grid->cell, &next) && next > x)
    spv_making_divide(making, "columns", corner, spv_point_scale(grid->along, grid->wide),
                      spv_making_value(making, "columns", 7));
  if (rows > 0 && nearest_ruling(making, grid, SPV_LINE_ROW, y + grid->tall, &next) && next > y)
    spv_making_divide(making, "rows", corner, spv_point_scale(grid->down, grid->high), rows);
}

static void
add_check(SpvHandleMaking *making) {
  Grid grid = grid_of(making);
  double x, y;

  if (nearest_ruling(making, &grid, SPV_LINE_COLUMN, 0, &x) &&
      nearest_ruling(making, &grid, SPV_LINE_ROW, 0, &y))
    add_corner(making, &grid, x, y);
  spv_making_turn(making, "turn", making->middle, spv_point(0, -ARM * making->smaller), 1, 1,
                  spv_making_value(making, "turn", 0));
}

/* --- Lozenges, laces and stones --- */

/* The slope is turned about the middle, which stays where it is as the lozenges grow taller. */
static void
add_lozengy(SpvHandleMaking *making) {
  double columns = spv_making_value(making, "columns", 6), angle = spv_making_value(making, "angle", 1);
  double wide = making->width / columns, tall = wide * tan(angle);
  SpvPoint first = { -making->width / 2, making->middle.y - tall / 4 };
  SpvPoint shift = { spv_making_value(making, "across", 0), spv_making_value(making, "down", 0) };
  SpvPoint corner = { first.x + floor(columns / 2) * wide, first.y };

  spv_making_move(making, "across", "down", corner, shift);
  spv_making_divide(making, "columns", spv_point_add(first, shift), spv_point(making->width, 0), columns);
  spv_making_turn(making, "angle", making->middle, spv_point(ARM * making->smaller, 0), 1, 1, angle);
}

/* About the crossing of laces nearest to the middle. */
static void
add_fretty(SpvHandleMaking *making) {
  double columns = spv_making_value(making, "columns", 4), angle = spv_making_value(making, "angle", 1);
  double mesh = making->width / columns, side = mesh / 2 / cos(angle);
  SpvPoint first = { -making->width / 2, making->middle.y };
  SpvPoint crossing = { first.x + floor(columns / 2) * mesh, first.y };
  /* Half-way up the lace that rises to the viewer's right. */
  SpvPoint lace = { crossing.x + side / 2 * cos(angle), crossing.y - side / 2 * sin(angle) };

  spv_making_divide(making, "columns", first, spv_point(making->width, 0), columns);
  spv_making_slide(making, "width", lace, spv_point(0.5 * sin(angle), 0.5 * cos(angle)),
                   spv_making_value(making, "width", 0));
  spv_making_turn(making, "angle", crossing, spv_point(ARM * making->smaller, 0), 1, 1, angle);
}

/* In the second course a joint stands on the centre line; in the first, half a stone from it. */
static void
add_masoned(SpvHandleMaking *making) {
  double courses = spv_making_value(making, "courses", 5), tall = making->height / courses;
  double stone = spv_making_value(making, "stone", 2 * tall), joint = spv_making_value(making, "joint", 0);

  spv_making_divide(making, "courses", spv_point(0, 0), spv_point(0, making->height), courses);
  if (courses > 1) {
    spv_making_slide(making, "stone", spv_point(0, 1.5 * tall), spv_point(1, 0), stone);
    spv_making_slide(making, "joint", spv_point(-making->width / 4, floor(courses / 2) * tall),
                     spv_point(0, 0.5), joint);
  } else {
    spv_making_slide(making, "stone", making->middle, spv_point(0.5, 0), stone);
    spv_making_slide(making, "joint", spv_point(stone / 2, making->height / 4), spv_point(0.5, 0), joint);
  }
}

const SpvHandleMaker spv_handles_of_varied[] = {
  { SPV_PATTERN_PALY, SPV_PATTERN_BARRY, add_straight },
  { SPV_PATTERN_BENDY, SPV_PATTERN_BENDY_SINISTER, add_bendy },
  { SPV_PATTERN_CHEVRONNY, SPV_PATTERN_CHEVRONNY, add_chevronny },
  { SPV_PATTERN_BARRY_BENDY, SPV_PATTERN_PALY_BENDY, add_crossed },
  { SPV_PATTERN_CHECK, SPV_PATTERN_CHECK, add_check },
  { SPV_PATTERN_LOZENGY, SPV_PATTERN_FUSILY, add_lozengy },
  { SPV_PATTERN_FRETTY, SPV_PATTERN_FRETTY, add_fretty },
  { SPV_PATTERN_MASONED, SPV_PATTERN_MASONED, add_masoned },
  { 0, 0, NULL },
};
