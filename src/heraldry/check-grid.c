/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Check: a grid of cells in turn of two tinctures, placed so that the cells which the edge cuts stay as wide
 * as they can. */
#include "heraldry/lay-private.h"

/* Lines stand at x0 + i·width and y0 + j·height. */
typedef struct {
  double x0, y0, width, height;
} Grid;

/* The panel in the grid's own axes: its own mm where the grid is not turned, otherwise turned back about its
 * middle, which is then (0, 0). */
typedef struct {
  SpvPoint *points; /* the outline */
  gsize n;
  SpvBox bounds;
  double left, top, width, height;
  SpvPoint middle;
  double turn;        /* radians */
  SpvTransform place; /* from the grid's axes to the panel's */
} Field;

/* A smaller cell than this is beyond any hand, and would only make a crowd. */
#define MIN_CELL 0.01

/* How finely offsets are tried, along one axis: first all over a cell, then between the neighbours of the
 * best. */
#define COARSE_STEPS 16
#define FINE_STEPS 8

/* Keeps the part of RING (N points, any shape) with SIGN · coordinate >= SIGN · level; returns how many
 * points are left in OUT. */
static guint
keep_side(const SpvPoint *ring, guint n, gboolean vertical, double level, double sign, SpvPoint *out) {
  guint kept = 0;

  for (guint i = 0; i < n; i++) {
    SpvPoint a = ring[i], b = ring[i + 1 < n ? i + 1 : 0];
    double da = sign * ((vertical ? a.x : a.y) - level), db = sign * ((vertical ? b.x : b.y) - level);

    if (da >= 0)
      out[kept++] = a;
    if ((da > 0 && db < 0) || (da < 0 && db > 0))
      out[kept++] = spv_point_between(a, b, da / (da - db));
  }
  return kept;
}

static SpvBox
points_bounds(const SpvPoint *points, guint n) {
  SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };
  for (guint i = 0; i < n; i++) {
    box.x0 = MIN(box.x0, points[i].x);
    box.y0 = MIN(box.y0, points[i].y);
    box.x1 = MAX(box.x1, points[i].x);
    box.y1 = MAX(box.y1, points[i].y);
  }
  return box;
}

/* The narrower side of a cut cell, or INFINITY for a whole or an empty one. */
static double
partial_side(const SpvPoint *band, guint n, const Grid *grid, double x, SpvPoint *left, SpvPoint *piece) {
  guint n_left = keep_side(band, n, TRUE, x, 1, left);
  guint n_piece = keep_side(left, n_left, TRUE, x + grid->width, -1, piece);
  double area = 0;

  if (n_piece < 3)
    return INFINITY;
  for (guint i = 0; i < n_piece; i++)
    area += spv_point_cross(piece[i], piece[(i + 1) % n_piece]) / 2;
  if (area <= 1e-9 || area >= grid->width * grid->height - 1e-9)
    return INFINITY;
  SpvBox box = points_bounds(piece, n_piece);
  return MIN(spv_box_width(box), spv_box_height(box));
}

/* The narrower side of the narrowest cell that the outline cuts: what calipers would say of it. INFINITY when
 * it cuts none, or as soon as a cell is found that is no wider than ENOUGH (then the result is
 * that cell's). */
static double
narrowest_partial(const Field *field, const Grid *grid, double enough) {
  gsize n = field->n;
  SpvBox bounds = field->bounds;
  /* Each cut of a ring by a line adds at most one point for every two that it had. */
  g_autofree SpvPoint *work = g_new(SpvPoint, (n + 4) * 16);
  SpvPoint *above = work, *band = work + (n + 4) * 2, *left = work + (n + 4) * 5,
           *piece = work + (n + 4) * 10;
  double least = INFINITY;

  for (double y = grid->y0 + floor((bounds.y0 - grid->y0) / grid->height + 1e-9) * grid->height;
       y < bounds.y1 - 1e-9; y += grid->height) {
    guint n_above = keep_side(field->points, (guint) n, FALSE, y, 1, above);
    guint n_band = keep_side(above, n_above, FALSE, y + grid->height, -1, band);
    SpvBox box = points_bounds(band, n_band);

    if (n_band < 3)
      continue;
    for (double x = grid->x0 + floor((box.x0 - grid->x0) / grid->width + 1e-9) * grid->width;
         x < box.x1 - 1e-9; x += grid->width) {
      least = MIN(least, partial_side(band, n_band, grid, x, left, piece));
      if (least <= enough)
        return least;
    }
  }
  return least;
}

/* Tries offset Y for the grid; keeps it when it is better than BEST. */
static void
try_offset(const Field *field, Grid grid, Grid *best, double *best_width) {
  /* Better by more than what rounding could make: of equals, the first stays. */
  double width = narrowest_partial(field, &grid, *best_width + 1e-6);

  if (width > *best_width + 1e-6) {
    *best = grid;
    *best_width = width;
  }
}

/* Chooses the free offsets. Across, the grid keeps the panel's symmetry: a line or a cell on the centre line.
 * Down, any offset will do. */
static Grid
best_grid(const Field *field, Grid grid, gboolean free_across, gboolean free_down) {
  Grid best = grid;
  double best_width = narrowest_partial(field, &grid, 0);
  double step = grid.height / COARSE_STEPS;
  double first_x = grid.x0;

  for (int cell = 0; cell <= (free_across ? 1 : 0); cell++)
    for (int i = 0; i < (free_down ? COARSE_STEPS : 1); i++) {
      Grid tried = grid;
      tried.x0 = first_x + cell * grid.width / 2;
      tried.y0 = grid.y0 + i * step;
      try_offset(field, tried, &best, &best_width);
    }
  if (free_down && isfinite(best_width)) {
    Grid coarse = best;
    for (int i = 1 - FINE_STEPS; i < FINE_STEPS; i++) {
      Grid tried = coarse;
      tried.y0 = coarse.y0 + i * step / FINE_STEPS;
      try_offset(field, tried, &best, &best_width);
    }
  }
  return best;
}

static double
cell_size(double given, double extent) {
  return MAX(given, MAX(MIN_CELL, extent / SPV_PATTERN_MAX_COUNT));
}

/* Chooses the free offsets of a turned grid: as in the other axis, or in both, a line or a cell comes on the
 * panel's middle, so that it looks the same when turned by half. */
static Grid
best_turned_grid(const Field *field, Grid grid, gboolean free_across, gboolean free_down, double columns,
                 double rows) {
  Grid best = grid, tried = grid;
  double fixed = columns + rows;

  if (free_across != free_down) {
    gboolean cell = fmod(fixed, 2) == 1;
    best.x0 -= free_across && cell ? grid.width / 2 : 0;
    best.y0 -= free_down && cell ? grid.height / 2 : 0;
  } else if (free_across) {
    double best_width = narrowest_partial(field, &best, 0);
    tried.x0 -= grid.width / 2;
    tried.y0 -= grid.height / 2;
    try_offset(field, tried, &best, &best_width);
  }
  return best;
}

static Grid
place_grid(const SpvPattern *pattern, const SpvOutline *outline, const Field *field) {
  double w = field->width, h = field->height;
  double cell = spv_pattern_measure(pattern, SPV_CHECK_CELL, outline, 0);
  double columns = cell > 0 ? 0 : spv_pattern_measure(pattern, SPV_CHECK_COLUMNS, outline, 0);
  double rows = spv_pattern_measure(pattern, SPV_CHECK_ROWS, outline, 0);
  int centre = (int) spv_pattern_measure(pattern, SPV_CHECK_CENTRE, outline, SPV_CENTRE_BEST);
  gboolean free_across = columns <= 0 && pattern->measures[SPV_CHECK_ACROSS].unit == SPV_UNIT_AUTO;
  gboolean free_down = rows <= 0 && pattern->measures[SPV_CHECK_DOWN].unit == SPV_UNIT_AUTO;
  /* The painter's shift is along the panel's axes. */
  SpvPoint shift = { spv_pattern_measure(pattern, SPV_CHECK_ACROSS, outline, 0),
                     spv_pattern_measure(pattern, SPV_CHECK_DOWN, outline, 0) };
  double c = cos(field->turn), s = sin(field->turn);
  Grid grid;

  grid.width = columns > 0 ? w / columns : cell_size(cell, w);
  grid.height = rows > 0 ? h / rows : cell_size(grid.width, h);
  grid.x0 = columns > 0 ? field->left : field->middle.x - (centre == SPV_CENTRE_CELL ? grid.width / 2 : 0);
  grid.y0 = rows > 0 ? field->top : field->middle.y - (centre == SPV_CENTRE_CELL ? grid.height / 2 : 0);
  if (centre == SPV_CENTRE_BEST && field->turn == 0)
    grid = best_grid(field, grid, free_across, free_down);
  else if (centre == SPV_CENTRE_BEST)
    grid = best_turned_grid(field, grid, free_across, free_down, columns, rows);
  grid.x0 += c * shift.x + s * shift.y;
  grid.y0 += c * shift.y - s * shift.x;
  return grid;
}

/* The cell's place in its array is the cell's tincture: the one in dexter chief is of the first. The
 * outermost cells reach past the bounds, so that nothing of the panel is left out where its flattened curve
 * strays over them by a hair. A turned grid has cells that are nowhere on the panel. */
static void
add_cells(const Grid *grid, const Field *field, SpvBox panel, SpvDraft *draft) {
  SpvBox bounds = field->bounds;
  SpvBox box = spv_box_grow(bounds, 0.1 * MAX(spv_box_width(bounds), spv_box_height(bounds)));
  int first_i = (int) floor((bounds.x0 - grid->x0) / grid->width + 1e-9);
  int first_j = (int) floor((bounds.y0 - grid->y0) / grid->height + 1e-9);
  int last_i = (int) ceil((bounds.x1 - grid->x0) / grid->width - 1e-9);
  int last_j = (int) ceil((bounds.y1 - grid->y0) / grid->height - 1e-9);
  SpvPathBuilder *builders[2] = { spv_path_builder_new(), spv_path_builder_new() };

  for (int slot = 0; slot < 2; slot++)
    draft->cells[slot] = g_ptr_array_new_with_free_func((GDestroyNotify) spv_ring_free);
  for (int j = first_j; j < last_j; j++)
    for (int i = first_i; i < last_i; i++) {
      int slot = (i - first_i + j - first_j) % 2;
      double x0 = i == first_i ? box.x0 : grid->x0 + i * grid->width;
      double y0 = j == first_j ? box.y0 : grid->y0 + j * grid->height;
      double x1 = i + 1 == last_i ? box.x1 : grid->x0 + (i + 1) * grid->width;
      double y1 = j + 1 == last_j ? box.y1 : grid->y0 + (j + 1) * grid->height;
      SpvPoint corners[4] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };
      for (int k = 0; k < 4; k++)
        corners[k] = spv_transform_point(field->place, corners[k]);
      if (!spv_box_overlaps(points_bounds(corners, 4), panel))
        continue;
      g_ptr_array_add(draft->cells[slot], spv_ring_new(corners, 4));
      spv_path_builder_polygon(builders[slot], corners, 4);
    }
  for (int slot = 0; slot < 2; slot++)
    draft->area[slot] = spv_path_builder_build(builders[slot]);
}

static void
add_ruling(const Field *field, SpvLineKind kind, guint number, SpvPoint from, SpvPoint to, SpvDraft *draft) {
  spv_draft_add_line(draft, kind, number, spv_transform_point(field->place, from),
                     spv_transform_point(field->place, to));
}

static void
add_rulings(const Grid *grid, const Field *field, SpvDraft *draft) {
  SpvBox bounds = field->bounds;
  guint number = 0;

  for (int i = (int) ceil((bounds.x0 - grid->x0) / grid->width + 1e-9);
       grid->x0 + i * grid->width < bounds.x1 - 1e-9; i++) {
    double x = grid->x0 + i * grid->width;
    add_ruling(field, SPV_LINE_COLUMN, ++number, spv_point(x, bounds.y0 - 1), spv_point(x, bounds.y1 + 1),
               draft);
  }
  number = 0;
  for (int j = (int) ceil((bounds.y0 - grid->y0) / grid->height + 1e-9);
       grid->y0 + j * grid->height < bounds.y1 - 1e-9; j++) {
    double y = grid->y0 + j * grid->height;
    add_ruling(field, SPV_LINE_ROW, ++number, spv_point(bounds.x0 - 1, y), spv_point(bounds.x1 + 1, y),
               draft);
  }
}

/* OUTLINE in the axes of a grid turned by TURN. Free its points. */
static Field
field_of(const SpvOutline *outline, double turn) {
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);
  SpvBox bounds = spv_outline_bounds(outline);
  double w = spv_outline_width(outline), h = spv_outline_height(outline);
  Field field = { g_memdup2(points, n * sizeof *points),
                  n,
                  bounds,
                  -w / 2,
                  0,
                  w,
                  h,
                  spv_point(0, h / 2),
                  turn,
                  SPV_TRANSFORM_IDENTITY };

  if (turn == 0)
    return field;
  field.place = spv_transform_turn(turn, field.middle);
  SpvTransform back = spv_transform_turn(-turn, spv_point(0, 0));
  for (gsize i = 0; i < n; i++)
    field.points[i] = spv_transform_point(back, spv_point_subtract(points[i], field.middle));
  field.middle = spv_point(0, 0);
  field.bounds = points_bounds(field.points, (guint) n);
  field.left = field.bounds.x0;
  field.top = field.bounds.y0;
  field.width = spv_box_width(field.bounds);
  field.height = spv_box_height(field.bounds);
  return field;
}

void
spv_lay_check(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  Field field = field_of(outline, spv_pattern_measure(pattern, SPV_CHECK_TURN, outline, 0));
  Grid grid = place_grid(pattern, outline, &field);
  double narrowest = narrowest_partial(&field, &grid, 0);

  add_cells(&grid, &field, spv_lay_box(outline), draft);
  add_rulings(&grid, &field, draft);
  draft->smallest_partial = isfinite(narrowest) ? narrowest : 0;
  g_free(field.points);
}
