/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/label.h"

#include "draw/marks-private.h"
#include "sheet/wording.h"

/* mm on paper */
#define CLEAR 0.6       /* round words */
#define CELL 0.3        /* how finely room for words is looked for */
#define LEAD_END 0.4    /* radius of the disc at the end of a line */
#define LEAD_LEAST 0.7  /* the narrowest part of a piece that a line may end in */
#define LEAD_APART 3.0  /* from one label beside the panel to the next */
#define LEADS_TRIED 60u /* heights at which a line may run */
#define FIGURE_HALF 5.0 /* of the figure that says the panel's height */
#define FIGURE_RIGHT 8.0

/* A region in more pieces than these is a pattern: its largest piece speaks for all. */
#define PIECES_MOST 8u

static const char letters[] = "ABCDEFGHJKLMNPRSTUVWXYZ";

/* What labels are placed among; all in mm on paper, from the datum. */
typedef struct {
  cairo_t *measuring;
  const SpvSubject *subject;
  double factor;
  GArray *boxes; /* SpvBox: dots, numbers and labels */
  GArray *lines; /* SpvPoint, in pairs: the centre line, then the rulings */
  GArray *labels;
} Placing;

char *
spv_tincture_letter(guint index) {
  guint n = sizeof letters - 1;

  return index < n ? g_strdup_printf("%c", letters[index])
                   : g_strdup_printf("%c%u", letters[index % n], index / n);
}

static void
label_clear(gpointer data) {
  g_free(((SpvLabel *) data)->words);
}

static void
add_line(Placing *placing, SpvPoint a, SpvPoint b) {
  SpvPoint ends[2] = { spv_point_scale(a, placing->factor), spv_point_scale(b, placing->factor) };

  g_array_append_vals(placing->lines, ends, 2);
}

static void
add_marks(Placing *placing) {
  const SpvGuide *guide = placing->subject->guide;
  double paper = placing->factor;
  double digit = spv_words_width(placing->measuring, "0", SPV_NUMBER_SIZE, TRUE, paper);
  g_autofree double *radii = spv_mark_radii(guide, -1, paper);
  g_autoptr(GArray) numbers = spv_mark_numbers(guide, -1, radii, digit, paper);
  SpvBox panel = placing->subject->bounds;

  add_line(placing, spv_point(0, panel.y0), spv_point(0, panel.y1));
  for (guint i = 0; i < guide->dots->len; i++) {
    SpvPoint at = spv_point_scale(g_array_index(guide->dots, SpvDot, i).at, paper);
    SpvBox box = spv_box_grow((SpvBox){ at.x, at.y, at.x, at.y }, radii[i] * (1 + SPV_DOT_RING) * paper);
    g_array_append_val(placing->boxes, box);
  }
  for (guint i = 0; i < numbers->len; i++) {
    SpvBox box = g_array_index(numbers, SpvPlacedNumber, i).box;
    box = (SpvBox){ box.x0 * paper, box.y0 * paper, box.x1 * paper, box.y1 * paper };
    g_array_append_val(placing->boxes, box);
  }
  for (guint i = 0; i < guide->rulings->len; i++) {
    SpvPoint ends[2];
    spv_mark_ruling_ends(&g_array_index(guide->rulings, SpvRuling, i), paper, ends);
    add_line(placing, ends[0], ends[1]);
  }
}

/* --- Room inside a piece --- */

/* Where words may stand, in cells of CELL mm: sums over the cells that are taken, so that any box of cells is
 * looked up at once. */
typedef struct {
  int width, height;
  SpvPoint corner; /* mm on paper */
  guint32 *taken;  /* (width + 1) × (height + 1): of all cells left of and above a corner */
} Grid;

static void
draw_marks(const Placing *placing, cairo_t *cr, gboolean on_centre) {
  for (guint i = 0; i < placing->boxes->len; i++) {
    SpvBox box = g_array_index(placing->boxes, SpvBox, i);
    cairo_rectangle(cr, box.x0, box.y0, spv_box_width(box), spv_box_height(box));
  }
  cairo_fill(cr);
  for (guint i = on_centre ? 2 : 0; i + 1 < placing->lines->len; i += 2) {
    SpvPoint a = g_array_index(placing->lines, SpvPoint, i),
             b = g_array_index(placing->lines, SpvPoint, i + 1);
    cairo_move_to(cr, a.x, a.y);
    cairo_line_to(cr, b.x, b.y);
  }
  cairo_stroke(cr);
}

/* All that is not SHAPE, or is a mark, is drawn opaque; the centre line is no mark if ON_CENTRE. */
static cairo_surface_t *
draw_taken(const Placing *placing, const SpvShape *shape, gboolean on_centre, const Grid *grid) {
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_A8, grid->width, grid->height);
  cairo_t *cr = cairo_create(surface);
  g_autoptr(SpvPath) path = spv_shape_to_path(shape);

  cairo_set_antialias(cr, CAIRO_ANTIALIAS_NONE);
  cairo_paint(cr);
  cairo_scale(cr, 1 / CELL, 1 / CELL);
  cairo_translate(cr, -grid->corner.x, -grid->corner.y);
  cairo_save(cr);
  cairo_scale(cr, placing->factor, placing->factor);
  spv_draw_add_path(cr, path);
  cairo_restore(cr);
  cairo_set_operator(cr, CAIRO_OPERATOR_CLEAR);
  cairo_fill_preserve(cr);
  cairo_set_operator(cr, CAIRO_OPERATOR_OVER);
  cairo_set_line_width(cr, 1.5 * CELL);
  cairo_stroke(cr);
  draw_marks(placing, cr, on_centre);
  cairo_destroy(cr);
  cairo_surface_flush(surface);
  return surface;
}

static Grid
grid_new(const Placing *placing, const SpvShape *shape, gboolean on_centre) {
  SpvBox bounds = spv_shape_bounds(shape);
  Grid grid = { (int) ceil(spv_box_width(bounds) * placing->factor / CELL) + 1,
                (int) ceil(spv_box_height(bounds) * placing->factor / CELL) + 1,
                spv_point_scale(spv_point(bounds.x0, bounds.y0), placing->factor), NULL };
  cairo_surface_t *surface = draw_taken(placing, shape, on_centre, &grid);
  const guint8 *cells = cairo_image_surface_get_data(surface);
  int stride = cairo_image_surface_get_stride(surface), pitch = grid.width + 1;

  grid.taken = g_new0(guint32, (gsize) pitch * (gsize) (grid.height + 1));
  for (int y = 0; cells != NULL && y < grid.height; y++)
    for (int x = 0; x < grid.width; x++) {
      guint32 *corner = grid.taken + (gsize) (y + 1) * (gsize) pitch + x + 1;
      *corner = corner[-1] + corner[-pitch] - corner[-pitch - 1] + (cells[y * stride + x] != 0 ? 1 : 0);
    }
  cairo_surface_destroy(surface);
  return grid;
}

/* How many cells are taken of those ACROSS by DOWN from (X, Y) on. */
static guint32
count_taken(const Grid *grid, int x, int y, int across, int down) {
  gsize pitch = (gsize) grid->width + 1;
  const guint32 *top = grid->taken + (gsize) y * pitch + x, *bottom = top + (gsize) down * pitch;

  return bottom[across] - bottom[0] - top[across] + top[0];
}

/* The middle of all the free cells. */
static SpvPoint
middle_of(const Grid *grid) {
  double x_sum = 0, y_sum = 0;
  guint n = 0;

  for (int y = 0; y < grid->height; y++)
    for (int x = 0; x < grid->width; x++) {
      if (count_taken(grid, x, y, 1, 1) > 0)
        continue;
      x_sum += x;
      y_sum += y;
      n++;
    }
  n = MAX(n, 1);
  return spv_point(grid->corner.x + (x_sum / n + 0.5) * CELL, grid->corner.y + (y_sum / n + 0.5) * CELL);
}

/* The middle of the free box of WIDTH by HEIGHT, mm, that is nearest to the middle of all that is free. */
static gboolean
find_free(const Grid *grid, double width, double height, SpvPoint *at) {
  int across = (int) ceil(width / CELL), down = (int) ceil(height / CELL);
  SpvPoint middle = middle_of(grid);
  double least = INFINITY;

  for (int y = 0; y + down <= grid->height; y++)
    for (int x = 0; x + across <= grid->width; x++) {
      SpvPoint here = { grid->corner.x + (x + across / 2.0) * CELL,
                        grid->corner.y + (y + down / 2.0) * CELL };
      double distance = spv_point_distance(here, middle);
      if (distance >= least - 1e-9 || count_taken(grid, x, y, across, down) > 0)
        continue;
      least = distance;
      *at = here;
    }
  return !isinf(least);
}

/* Puts WORDS inside SHAPE, as near its middle as there is room; the centre line is in the way unless
 * ON_CENTRE. FALSE when there is none. */
static gboolean
place_inside(Placing *placing, const SpvShape *shape, const char *words, gboolean on_centre) {
  double width = spv_words_width(placing->measuring, words, SPV_WORDS_BODY, FALSE, 1) + 2 * CLEAR;
  double height = SPV_WORDS_BODY + 2 * CLEAR;
  SpvLabel label = { NULL, { 0, 0 }, { NAN, NAN } };

  Grid grid = grid_new(placing, shape, on_centre);
  gboolean found = find_free(&grid, width, height, &label.at);
  g_free(grid.taken);
  if (!found)
    return FALSE;
  SpvBox box = { label.at.x - width / 2, label.at.y - height / 2, label.at.x + width / 2,
                 label.at.y + height / 2 };
  label.words = g_strdup(words);
  g_array_append_val(placing->labels, label);
  g_array_append_val(placing->boxes, box);
  return TRUE;
}

/* --- Beside the panel --- */

static int
compare_doubles(gconstpointer a, gconstpointer b) {
  double difference = *(const double *) a - *(const double *) b;

  return (difference > 0) - (difference < 0);
}

/* The rightmost stretch of PIECE at height Y, mm on the panel, that is at least LEAST long. FALSE when there
 * is none. */
static gboolean
find_stretch(const SpvPiece *piece, double y, double least, double *from, double *to) {
  g_autoptr(GArray) crossings = g_array_new(FALSE, FALSE, sizeof(double));

  for (gsize i = 0; i < piece->n_rings; i++) {
    const SpvRing *ring = piece->rings[i];
    for (gsize j = 0; j < ring->n_points; j++) {
      SpvPoint a = ring->points[j], b = ring->points[(j + 1) % ring->n_points];
      if ((a.y > y) == (b.y > y))
        continue;
      double x = a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x);
      g_array_append_val(crossings, x);
    }
  }
  g_array_sort(crossings, compare_doubles);
  for (guint i = crossings->len & ~1u; i >= 2; i -= 2) {
    *from = g_array_index(crossings, double, i - 2);
    *to = g_array_index(crossings, double, i - 1);
    if (*to - *from >= least)
      return TRUE;
  }
  return FALSE;
}

/* Tries a label beside the panel with a level line to PIECE at height Y, mm on paper; how long the line is
 * goes to LENGTH. */
static gboolean
find_lead(const Placing *placing, const SpvPiece *piece, double y, double width, SpvLabel *label,
          double *length) {
  double from, to, factor = placing->factor;
  double right = placing->subject->bounds.x1 * factor + SPV_LABEL_BESIDE;

  if (!find_stretch(piece, y / factor, LEAD_LEAST / factor, &from, &to))
    return FALSE;
  label->lead = spv_point(MAX((from + to) / 2 * factor, to * factor - 2), y);
  label->at = spv_point(right + width / 2, y);
  *length = right - label->lead.x;
  SpvBox line = { label->lead.x - LEAD_END, y - LEAD_END, right, y + LEAD_END };
  SpvBox words = { right, y - LEAD_APART / 2, right + width, y + LEAD_APART / 2 };
  for (guint i = 0; i < placing->boxes->len; i++)
    if (spv_box_overlaps(line, g_array_index(placing->boxes, SpvBox, i)) ||
        spv_box_overlaps(words, g_array_index(placing->boxes, SpvBox, i)))
      return FALSE;
  return TRUE;
}

/* Where the dimension line down the panel's right side has its figure. */
static SpvBox
dimension_figure(const Placing *placing) {
  SpvBox panel = placing->subject->bounds;
  double x = panel.x1 * placing->factor, y = spv_box_centre(panel).y * placing->factor;

  return (SpvBox){ x + SPV_LABEL_BESIDE, y - FIGURE_HALF, x + FIGURE_RIGHT, y + FIGURE_HALF };
}

/* The shortest line of all that are free. */
static gboolean
place_beside(Placing *placing, const SpvPiece *piece, const char *words) {
  double width = spv_words_width(placing->measuring, words, SPV_WORDS_BODY, FALSE, 1);
  SpvBox panel = placing->subject->bounds;
  double top = panel.y0 * placing->factor + LEAD_APART / 2;
  double step = (panel.y1 * placing->factor - LEAD_APART / 2 - top) / LEADS_TRIED, least = INFINITY;
  SpvLabel best = { 0 };

  for (guint i = 0; i <= LEADS_TRIED; i++) {
    SpvLabel label = { 0 };
    double length;
    if (!find_lead(placing, piece, top + i * step, width, &label, &length) || length >= least - 1e-6)
      continue;
    best = label;
    least = length;
  }
  if (isinf(least))
    return FALSE;
  SpvBox box = { best.lead.x, best.at.y - LEAD_APART / 2, best.at.x + width / 2, best.at.y + LEAD_APART / 2 };
  best.words = g_strdup(words);
  g_array_append_val(placing->labels, best);
  g_array_append_val(placing->boxes, box);
  return TRUE;
}

/* The index of the piece with the largest outer ring. */
static gsize
find_largest(const SpvPiece *pieces, gsize n) {
  gsize largest = 0;

  for (gsize i = 1; i < n; i++)
    if (spv_ring_area(pieces[i].rings[0]) > spv_ring_area(pieces[largest].rings[0]) + 1e-9)
      largest = i;
  return largest;
}

/* The name once, in the largest piece if there is room, and the letter in the others. */
static void
label_region(Placing *placing, const SpvRegion *region) {
  const SpvTincture *tincture = &placing->subject->composition->scheme->tinctures[region->tincture];
  g_autofree char *letter = spv_tincture_letter((guint) region->tincture);
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(region->shape, &n);
  gsize largest = find_largest(pieces, n);

  for (gsize i = 0; i < n; i++) {
    if (i != largest && n > PIECES_MOST)
      continue;
    g_autoptr(SpvShape) shape = spv_shape_piece(region->shape, i);
    gboolean named = i == largest && (place_inside(placing, shape, tincture->name, FALSE) ||
                                      place_inside(placing, shape, tincture->name, TRUE));
    if (!named && !place_inside(placing, shape, letter, FALSE) && i == largest)
      place_beside(placing, &pieces[i], letter);
  }
}

GArray *
spv_labels_new(cairo_t *measuring, const SpvSubject *subject, double factor) {
  g_autoptr(GArray) boxes = g_array_new(FALSE, FALSE, sizeof(SpvBox));
  g_autoptr(GArray) lines = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  Placing placing = { measuring, subject, factor, boxes, lines, g_array_new(FALSE, FALSE, sizeof(SpvLabel)) };

  g_array_set_clear_func(placing.labels, label_clear);
  add_marks(&placing);
  SpvBox figure = dimension_figure(&placing);
  g_array_append_val(placing.boxes, figure);
  for (guint i = 0; i < subject->partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(subject->partition->regions, i);
    if (region->tincture >= 0)
      label_region(&placing, region);
  }
  return placing.labels;
}

void
spv_labels_draw(cairo_t *cr, const GArray *labels) {
  cairo_save(cr);
  cairo_new_path(cr);
  for (guint i = 0; i < labels->len; i++) {
    const SpvLabel *label = &g_array_index(labels, SpvLabel, i);
    double half = spv_words_width(cr, label->words, SPV_WORDS_BODY, FALSE, 1) / 2;

    spv_set_rgb(cr, spv_ink);
    if (!isnan(label->lead.x)) {
      cairo_set_line_width(cr, SPV_LINE_HATCH);
      cairo_move_to(cr, label->lead.x, label->lead.y);
      cairo_line_to(cr, label->at.x - half - 0.5, label->at.y);
      cairo_stroke(cr);
      cairo_arc(cr, label->lead.x, label->lead.y, LEAD_END, 0, 2 * G_PI);
      cairo_fill(cr);
    }
    spv_draw_words_haloed(cr, label->words, label->at.x, label->at.y + SPV_WORDS_BODY / 2, SPV_WORDS_BODY,
                          0.5, FALSE, 1);
  }
  cairo_restore(cr);
}
