/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the handles of each kind of pattern lie, and of the panel itself. What a pattern works out for itself
 * (the slope of a bend, the place of a grid) is read from its draft. */
#include "window/canvas-handles.h"

/* How far from its pivot a turning handle stands, as a part of the panel's smaller measure. */
#define ARM 0.32

typedef struct {
  const SpvPattern *pattern;
  const SpvOutline *outline;
  const SpvDraft *draft;
  GArray *handles;
} Making;

static int
measure_index(const Making *making, const char *key) {
  return spv_pattern_measure_index(making->pattern->kind, key);
}

/* In the core's units; FALLBACK where the pattern works it out. */
static double
value_of(const Making *making, const char *key, double fallback) {
  int index = measure_index(making, key);

  return index < 0 ? fallback
                   : spv_pattern_measure(making->pattern, (guint) index, making->outline, fallback);
}

static double
smaller(const Making *making) {
  return MIN(spv_outline_width(making->outline), spv_outline_height(making->outline));
}

static void
add(Making *making, SpvHandle handle, const char *key, const char *second) {
  int first_index = measure_index(making, key);
  int second_index = second == NULL ? first_index : measure_index(making, second);

  if (first_index < 0 || second_index < 0)
    return;
  handle.owner = SPV_HANDLE_OF_LAYER;
  handle.n_measures = second == NULL ? 1 : 2;
  handle.measures[0] = (guint) first_index;
  handle.measures[1] = (guint) second_index;
  g_array_append_val(making->handles, handle);
}

static void
add_slide(Making *making, const char *key, SpvPoint foot, SpvPoint direction, double value) {
  SpvHandle handle = { .motion = SPV_MOTION_SLIDE, .foot = foot, .direction = direction };

  handle.values[0] = value;
  handle.at = spv_point_add(foot, spv_point_scale(direction, value));
  add(making, handle, key, NULL);
}

static void
add_move(Making *making, const char *across_key, const char *down_key, SpvPoint foot, double across,
         double down) {
  SpvHandle handle = { .motion = SPV_MOTION_MOVE, .foot = foot, .values = { across, down } };

  handle.at = spv_point_add(foot, spv_point(across, down));
  add(making, handle, across_key, down_key);
}

/* FACTOR: the measure is so many times the angle from ZERO, clockwise when SENSE is 1. */
static void
add_turn(Making *making, const char *key, SpvPoint foot, SpvPoint zero, double sense, double factor,
         double value) {
  SpvHandle handle = { .motion = SPV_MOTION_TURN, .foot = foot, .direction = zero };
  double angle = sense * value / factor;
  SpvPoint arm = spv_point(zero.x * cos(angle) - zero.y * sin(angle),
                           zero.x * sin(angle) + zero.y * cos(angle));

  handle.turn_sense = sense;
  handle.turn_factor = factor;
  handle.values[0] = value;
  handle.at = spv_point_add(foot, arm);
  add(making, handle, key, NULL);
}

/* WHOLE runs over all the pieces. */
static void
add_divide(Making *making, const char *key, SpvPoint foot, SpvPoint whole, double count) {
  SpvHandle handle = { .motion = SPV_MOTION_DIVIDE, .foot = foot, .direction = whole };

  handle.values[0] = count;
  handle.at = spv_point_add(foot, spv_point_scale(whole, 1 / count));
  add(making, handle, key, NULL);
}

/* --- Divisions --- */

static SpvPoint
half_way_down(const Making *making) {
  return spv_point(0, spv_outline_height(making->outline) / 2);
}

/* The slope that the pattern took, radians from the level. */
static double
drawn_slope(const Making *making) {
  const SpvDraftLine *line;
  SpvPoint run;

  if (making->draft->lines->len == 0)
    return G_PI / 4;
  line = &g_array_index(making->draft->lines, SpvDraftLine, 0);
  run = spv_point_subtract(line->to, line->from);
  return atan2(fabs(run.y), fabs(run.x));
}

/* A slope falls to the viewer's right, or (ACROSS -1) to the left. */
static void
add_slope(Making *making, SpvPoint pivot, double across) {
  SpvPoint level = spv_point(across * ARM * smaller(making), 0);

  add_turn(making, "angle", pivot, level, across, 1, drawn_slope(making));
}

static void
add_bend(Making *making, double across) {
  double shift = value_of(making, "shift", 0);

  add_slide(making, "shift", half_way_down(making), spv_point(1, 0), shift);
  add_slope(making, spv_point_add(half_way_down(making), spv_point(shift, 0)), across);
}

static void
add_chevron(Making *making) {
  double apex = value_of(making, "apex", 0), angle = value_of(making, "angle", G_PI / 2);

  add_slide(making, "apex", spv_point(0, 0), spv_point(0, 1), apex);
  /* The leg on the viewer's right turns anticlockwise from straight down as the angle opens. */
  add_turn(making, "angle", spv_point(0, apex), spv_point(0, ARM * smaller(making)), -1, 2, angle);
}

/* --- Stripes and checks --- */

/* From the first edge of the panel to the last, in unit DIRECTION. */
static void
extent_along(const SpvOutline *outline, SpvPoint direction, double *low, double *high) {
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);

  *low = INFINITY;
  *high = -INFINITY;
  for (gsize i = 0; i < n; i++) {
    double at = spv_point_dot(points[i], direction);

    *low = MIN(*low, at);
    *high = MAX(*high, at);
  }
}

/* The handle stands on the first boundary: the wider the first piece, the fewer the pieces. */
static void
add_stripes(Making *making, SpvPoint direction) {
  double low, high, pieces = value_of(making, "pieces", 6);
  SpvPoint middle = half_way_down(making), aside, foot;

  extent_along(making->outline, direction, &low, &high);
  aside = spv_point_subtract(middle, spv_point_scale(direction, spv_point_dot(middle, direction)));
  foot = spv_point_add(aside, spv_point_scale(direction, low));
  add_divide(making, "pieces", foot, spv_point_scale(direction, high - low), pieces);
}

static void
add_bendy(Making *making) {
  double slope = drawn_slope(making);

  add_stripes(making, spv_point(-sin(slope), cos(slope)));
  add_slope(making, half_way_down(making), 1);
}

/* The ruling of KIND nearest to WHERE, mm across or down; FALSE when the check has none. */
static gboolean
nearest_ruling(const Making *making, SpvLineKind kind, double where, double *found) {
  double best = INFINITY;

  for (guint i = 0; i < making->draft->lines->len; i++) {
    const SpvDraftLine *line = &g_array_index(making->draft->lines, SpvDraftLine, i);
    double at = kind == SPV_LINE_COLUMN ? line->from.x : line->from.y;

    if (line->kind == kind && fabs(at - where) < best) {
      best = fabs(at - where);
      *found = at;
    }
  }
  return isfinite(best);
}

/* The shift that puts a ruling where it is now: as given, or what the pattern chose, seen from where the grid
 * would lie without a shift (BASE). */
static double
grid_shift(const Making *making, const char *key, double ruling, double base, double cell) {
  int index = measure_index(making, key);

  if (making->pattern->measures[index].unit != SPV_UNIT_AUTO)
    return value_of(making, key, 0);
  return remainder(ruling - base, cell);
}

static void
add_check(Making *making) {
  double w = spv_outline_width(making->outline), h = spv_outline_height(making->outline);
  double given = value_of(making, "cell", 0), columns = value_of(making, "columns", 7);
  double rows = value_of(making, "rows", 0), cell = given > 0 ? given : w / columns;
  double tall = rows > 0 ? h / rows : cell, x = 0, y = 0, next = 0, across, down;
  /* Of best, line and cell, the third. */
  gboolean on_cell = value_of(making, "centre", 0) == 2;
  double base_x = given > 0 ? (on_cell ? -cell / 2 : 0) : -w / 2;
  double base_y = rows > 0 ? 0 : h / 2 - (on_cell ? tall / 2 : 0);

  if (!nearest_ruling(making, SPV_LINE_COLUMN, 0, &x) || !nearest_ruling(making, SPV_LINE_ROW, h / 2, &y))
    return;
  across = grid_shift(making, "across", x, base_x, cell);
  down = grid_shift(making, "down", y, base_y, tall);
  add_move(making, "across", "down", spv_point(x - across, y - down), across, down);
  if (given > 0) {
    add_slide(making, "cell", spv_point(x, y), spv_point(1, 0), cell);
    return;
  }
  if (nearest_ruling(making, SPV_LINE_COLUMN, x + cell, &next) && next > x)
    add_divide(making, "columns", spv_point(x, y), spv_point(w, 0), columns);
}

/* --- Borders and ordinaries --- */

static double
middle_of_edge(const Making *making, SpvEdge edge) {
  double s0, s1;

  spv_outline_edge(making->outline, edge, &s0, &s1);
  return (s0 + s1) / 2;
}

/* The edge that a border stands on; one that runs all round is shown at the base. */
static SpvEdge
border_edge(const Making *making) {
  static const SpvEdge edges[] = { SPV_EDGE_CHIEF, SPV_EDGE_DEXTER, SPV_EDGE_BASE, SPV_EDGE_SINISTER };
  guint choice = (guint) value_of(making, "edge", 2);

  return choice < G_N_ELEMENTS(edges) ? edges[choice] : SPV_EDGE_BASE;
}

/* Whether the points stand in a straight row rather than square on the outline. */
static gboolean
in_a_row(const Making *making) {
  return value_of(making, "row", 0) > 0 && value_of(making, "edge", 2) < SPV_N_EDGES;
}

/* The way inward, in which the points stand, at S along the outline. */
static SpvPoint
point_direction(const Making *making, double s) {
  static const SpvPoint inward[SPV_N_EDGES] = {
    [SPV_EDGE_CHIEF] = { 0, 1 },
    [SPV_EDGE_SINISTER] = { -1, 0 },
    [SPV_EDGE_BASE] = { 0, -1 },
    [SPV_EDGE_DEXTER] = { 1, 0 },
  };

  return in_a_row(making) ? inward[border_edge(making)]
                          : spv_track_normal(spv_outline_track(making->outline), s);
}

static const SpvDraftDot *
dot_at(const Making *making, guint index) {
  return &g_array_index(making->draft->dots, SpvDraftDot, index);
}

/* The index of the first root: the tips come before. */
static guint
count_tips(const Making *making) {
  guint n = 0;

  while (n < making->draft->dots->len && dot_at(making, n)->kind == SPV_DOT_TIP)
    n++;
  return n;
}

/* The index of the root nearest to AT, from FIRST on. */
static guint
root_near(const Making *making, guint first, SpvPoint at) {
  guint found = first;

  for (guint i = first; i < making->draft->dots->len; i++)
    if (spv_point_distance(dot_at(making, i)->at, at) < spv_point_distance(dot_at(making, found)->at, at))
      found = i;
  return found;
}

/* The point under a tip, where the border's width ends. */
static SpvPoint
under_tip(const Making *making, const SpvDraftDot *tip, double depth, double lean) {
  SpvPoint normal = point_direction(making, tip->s), along = spv_point(normal.y, -normal.x);
  SpvPoint rise = spv_point_add(normal, spv_point_scale(along, tan(lean)));

  return spv_point_subtract(tip->at, spv_point_scale(rise, depth));
}

/* Without depth there are no dots to go by: the handles stand at the middle of the edge. */
static void
add_blunt_border(Making *making, double s, double width) {
  SpvPoint edge = spv_track_at(spv_outline_track(making->outline), s), normal = point_direction(making, s);

  add_slide(making, "width", edge, normal, width);
  add_slide(making, "depth", spv_point_add(edge, spv_point_scale(normal, width)), normal, 0);
}

/* The width's handle stands under a tip and the depth's between two tips, level with them: neither hides a
 * dot. The lean's stands beyond the next tip. */
static void
add_jagged(Making *making) {
  double s = middle_of_edge(making, border_edge(making)), width = value_of(making, "width", 0);
  double depth = value_of(making, "depth", 0), lean = value_of(making, "lean", 0);
  SpvPoint middle = spv_track_at(spv_outline_track(making->outline), s), foot, normal;
  const SpvDraftDot *root, *tip, *other;
  guint n_tips = count_tips(making), index;

  if (n_tips == 0 || n_tips == making->draft->dots->len) {
    add_blunt_border(making, s, width);
    return;
  }
  index = root_near(making, n_tips, middle);
  root = dot_at(making, index);
  /* Tip i stands between the roots i and i + 1. */
  index = MIN(index - n_tips, n_tips - 1);
  tip = dot_at(making, index);
  other = dot_at(making, index > 0 ? index - 1 : MIN(1, n_tips - 1));
  normal = point_direction(making, tip->s);
  foot = spv_point_subtract(under_tip(making, tip, depth, lean), spv_point_scale(normal, width));
  add_slide(making, "width", foot, normal, width);
  add_slide(making, "depth", root->at, point_direction(making, root->s), depth);
  normal = spv_point_scale(point_direction(making, other->s), depth + 0.1 * smaller(making));
  /* The inward normal, turned anticlockwise, is the way along the edge. */
  add_turn(making, "lean", under_tip(making, other, depth, lean), normal, -1, 1, lean);
}

static void
add_bordure(Making *making) {
  const SpvTrack *track = spv_outline_track(making->outline);
  double s = middle_of_edge(making, SPV_EDGE_SINISTER);

  add_slide(making, "width", spv_track_at(track, s), spv_track_normal(track, s),
            value_of(making, "width", 0));
}

static void
add_roundel(Making *making) {
  SpvPoint centre = spv_point(value_of(making, "across", 0), value_of(making, "down", 0));

  add_slide(making, "diameter", centre, spv_point(0.5, 0), value_of(making, "diameter", 0));
  add_move(making, "across", "down", spv_point(0, 0), centre.x, centre.y);
}

static void
add_kind(Making *making) {
  SpvPoint middle = half_way_down(making);

  /* Kinds without handles of their own have none. */
  switch ((int) making->pattern->kind) {
  case SPV_PATTERN_FIELD:
    break;
  case SPV_PATTERN_PER_PALE:
    add_slide(making, "shift", middle, spv_point(1, 0), value_of(making, "shift", 0));
    break;
  case SPV_PATTERN_PER_FESS:
    add_slide(making, "shift", middle, spv_point(0, 1), value_of(making, "shift", 0));
    break;
  case SPV_PATTERN_PER_BEND:
    add_bend(making, 1);
    break;
  case SPV_PATTERN_PER_BEND_SINISTER:
    add_bend(making, -1);
    break;
  case SPV_PATTERN_PER_CHEVRON:
    add_chevron(making);
    break;
  case SPV_PATTERN_PER_SALTIRE:
    add_slope(making, middle, 1);
    break;
  case SPV_PATTERN_QUARTERLY:
    add_move(making, "across", "down", middle, value_of(making, "across", 0), value_of(making, "down", 0));
    break;
  case SPV_PATTERN_PALY:
    add_stripes(making, spv_point(1, 0));
    break;
  case SPV_PATTERN_BARRY:
    add_stripes(making, spv_point(0, 1));
    break;
  case SPV_PATTERN_BENDY:
    add_bendy(making);
    break;
  case SPV_PATTERN_CHECK:
    add_check(making);
    break;
  case SPV_PATTERN_JAGGED_BORDER:
    add_jagged(making);
    break;
  case SPV_PATTERN_BORDURE:
    add_bordure(making);
    break;
  case SPV_PATTERN_CHIEF:
    add_slide(making, "depth", spv_point(0, 0), spv_point(0, 1), value_of(making, "depth", 0));
    break;
  case SPV_PATTERN_ROUNDEL:
    add_roundel(making);
    break;
  }
}

GArray *
spv_layer_handles(const SpvComposition *composition, guint index) {
  GArray *handles = g_array_new(FALSE, TRUE, sizeof(SpvHandle));
  const SpvLayer *layer = composition->panel->layers[index];
  Making making = { &layer->pattern, composition->outline, g_ptr_array_index(composition->drafts, index),
                    handles };

  if (!layer->hidden && !layer->locked && making.draft != NULL)
    add_kind(&making);
  return handles;
}

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
