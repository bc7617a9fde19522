/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Fields varied by two families of parallel lines: barry-bendy, paly-bendy, lozengy and fusily. */
#include "heraldry/lattice-private.h"

void
spv_outline_extent(const SpvOutline *outline, SpvPoint direction, double *low, double *high) {
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

SpvPoint
spv_lattice_corner(SpvPoint a, double a_at, SpvPoint b, double b_at) {
  double across = spv_point_cross(a, b);

  return spv_point((a_at * b.y - b_at * a.y) / across, (b_at * a.x - a_at * b.x) / across);
}

gboolean
spv_lattice_cell(SpvPoint a, double a0, double a1, SpvPoint b, double b0, double b1, SpvBox box,
                 SpvPoint corners[4]) {
  gboolean clockwise = spv_point_cross(a, b) > 0;
  SpvBox bounds = { INFINITY, INFINITY, -INFINITY, -INFINITY };

  corners[0] = spv_lattice_corner(a, a0, b, b0);
  corners[clockwise ? 1 : 3] = spv_lattice_corner(a, a1, b, b0);
  corners[2] = spv_lattice_corner(a, a1, b, b1);
  corners[clockwise ? 3 : 1] = spv_lattice_corner(a, a0, b, b1);
  for (int i = 0; i < 4; i++)
    bounds = spv_box_join(bounds, (SpvBox){ corners[i].x, corners[i].y, corners[i].x, corners[i].y });
  return spv_box_overlaps(bounds, box);
}

void
spv_parallels_range(const SpvParallels *family, const SpvOutline *outline, int *from, int *to) {
  double low, high;

  spv_outline_extent(outline, family->normal, &low, &high);
  *from = (int) floor((low - family->first) / family->step + 1e-6) + 1;
  *to = (int) ceil((high - family->first) / family->step - 1e-6);
}

guint
spv_parallels_rule(const SpvParallels *family, const SpvOutline *outline, SpvLineKind kind, guint number,
                   SpvDraft *draft) {
  double reach = spv_outline_width(outline) + spv_outline_height(outline);
  SpvPoint along = spv_point_quarter_turn(spv_point_scale(family->normal, -1));
  SpvPoint middle = spv_box_centre(spv_outline_bounds(outline));
  int from, to;

  spv_parallels_range(family, outline, &from, &to);
  for (int i = from; i < to; i++) {
    double off = family->first + i * family->step - spv_point_dot(middle, family->normal);
    SpvPoint at = spv_point_add(middle, spv_point_scale(family->normal, off));
    spv_draft_add_line(draft, kind, ++number, spv_point_subtract(at, spv_point_scale(along, reach)),
                       spv_point_add(at, spv_point_scale(along, reach)));
  }
  return number;
}

void
spv_lattice_lozenges(const SpvOutline *outline, double columns, double angle, SpvParallels families[2]) {
  double w = spv_outline_width(outline), h = spv_outline_height(outline);
  double width = MAX(w / columns, h / (SPV_PATTERN_MAX_COUNT * tan(angle)));

  families[0] = (SpvParallels){ { sin(angle), cos(angle) }, 0, width * sin(angle) };
  families[1] = (SpvParallels){ { -sin(angle), cos(angle) }, 0, width * sin(angle) };
}

void
spv_lattice_through(SpvParallels families[2], SpvPoint origin) {
  for (int k = 0; k < 2; k++)
    families[k].first = spv_point_dot(families[k].normal, origin);
}

/* The strips of FAMILY that lie on the outline, as the lines between them; the outermost strips reach past
 * all of it, so that nothing of the panel is left out where its flattened curve strays by a hair. Free
 * with g_free(). */
static double *
edges_of_strips(const SpvParallels *family, const SpvOutline *outline, int *from, guint *n_strips) {
  double low, high;
  int to;

  spv_parallels_range(family, outline, from, &to);
  spv_outline_extent(outline, family->normal, &low, &high);
  *n_strips = (guint) (MAX(to, *from) - *from) + 1;
  double *edges = g_new(double, *n_strips + 1), margin = 0.1 * (high - low);
  for (guint i = 1; i < *n_strips; i++)
    edges[i] = family->first + (*from + (int) i - 1) * family->step;
  edges[0] = low - margin;
  edges[*n_strips] = high + margin;
  return edges;
}

/* Cells in turn of the two tinctures: the one between line -1 and line 0 of both families is of the slot
 * EVEN. */
static void
add_cells(const SpvParallels families[2], const SpvOutline *outline, int even, SpvDraft *draft) {
  SpvPathBuilder *builders[2] = { spv_path_builder_new(), spv_path_builder_new() };
  SpvBox box = spv_lay_box(outline);
  guint n[2];
  int from[2];
  g_autofree double *a = edges_of_strips(&families[0], outline, &from[0], &n[0]);
  g_autofree double *b = edges_of_strips(&families[1], outline, &from[1], &n[1]);

  for (int slot = 0; slot < 2; slot++)
    draft->cells[slot] = g_ptr_array_new_with_free_func((GDestroyNotify) spv_ring_free);
  for (guint i = 0; i < n[0]; i++)
    for (guint j = 0; j < n[1]; j++) {
      int slot = ((from[0] + from[1]) & 1) ^ ((i + j) & 1) ^ (even & 1);
      SpvPoint corners[4];

      if (!spv_lattice_cell(families[0].normal, a[i], a[i + 1], families[1].normal, b[j], b[j + 1], box,
                            corners))
        continue;
      g_ptr_array_add(draft->cells[slot], spv_ring_new(corners, 4));
      spv_path_builder_polygon(builders[slot], corners, 4);
    }
  for (int slot = 0; slot < 2; slot++)
    draft->area[slot] = spv_path_builder_build(builders[slot]);
}

/* PIECES strips of one width over all that the outline reaches along NORMAL. */
static SpvParallels
pieces_along(const SpvOutline *outline, SpvPoint normal, double pieces) {
  double low, high;

  spv_outline_extent(outline, normal, &low, &high);
  return (SpvParallels){ normal, low, (high - low) / pieces };
}

/* Bars or pales, crossed by bends; both are counted as in barry, paly and bendy, and the cell in the first of
 * both is of the first tincture. */
static void
lay_crossed_by_bends(const SpvPattern *pattern, const SpvOutline *outline, SpvPoint direction,
                     SpvLineKind kind, SpvDraft *draft) {
  double angle = spv_lay_bend_angle(pattern, SPV_CROSSED_ANGLE, outline);
  double pieces = spv_pattern_measure(pattern, SPV_CROSSED_PIECES, outline, 6);
  double bends = spv_pattern_measure(pattern, SPV_CROSSED_BENDS, outline, 6);
  SpvParallels families[2] = { pieces_along(outline, direction, pieces),
                               pieces_along(outline, spv_point(-sin(angle), cos(angle)), bends) };

  add_cells(families, outline, 0, draft);
  spv_parallels_rule(&families[0], outline, kind, 0, draft);
  spv_parallels_rule(&families[1], outline, SPV_LINE_DIVISION, 0, draft);
}

void
spv_lay_barry_bendy(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  lay_crossed_by_bends(pattern, frame->outline, spv_point(0, 1), SPV_LINE_ROW, draft);
}

void
spv_lay_paly_bendy(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  lay_crossed_by_bends(pattern, frame->outline, spv_point(1, 0), SPV_LINE_COLUMN, draft);
}

/* Whole lozenges lie across the panel, in rows of one tincture. Halfway between the middles of two rows both
 * tinctures have as much of a level line; that is where the middle of the panel comes, so that on a rectangle
 * each has half of it, however high it is. */
void
spv_lay_lozengy(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  double angle = spv_pattern_measure(pattern, SPV_LOZENGY_ANGLE, outline, 1);
  SpvParallels families[2];

  spv_lattice_lozenges(outline, spv_pattern_measure(pattern, SPV_LOZENGY_COLUMNS, outline, 6), angle,
                       families);
  double height = families[0].step / cos(angle);
  /* The dexter corner of a lozenge of the first tincture. */
  SpvPoint corner = {
    -spv_outline_width(outline) / 2 + spv_pattern_measure(pattern, SPV_LOZENGY_ACROSS, outline, 0),
    spv_outline_height(outline) / 2 - height / 4 + spv_pattern_measure(pattern, SPV_LOZENGY_DOWN, outline, 0)
  };
  spv_lattice_through(families, corner);
  /* That lozenge lies between line 0 and line 1 of the one family, line -1 and line 0 of the other. */
  add_cells(families, outline, 1, draft);
  guint last = spv_parallels_rule(&families[0], outline, SPV_LINE_DIVISION, 0, draft);
  spv_parallels_rule(&families[1], outline, SPV_LINE_DIVISION, last, draft);
}
