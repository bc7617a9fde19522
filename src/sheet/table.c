/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/table.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "draw/draw.h"
#include "sheet/wording.h"

#define COLUMN_GAP 3.0
#define HEADING_HEIGHT 5.6
#define HEADER_HEIGHT 5.4
#define TABLE_GAP 2.5    /* above a heading that isn't the first line of its column */
#define KEEP_TOGETHER 2u /* rows that stay with what stands above them */
#define KEEP_SENTENCES 6u
#define RULE_WIDTH 0.1

static void
line_free(gpointer data) {
  SpvTableLine *line = data;

  for (int i = 0; i < SPV_TABLE_COLUMNS; i++)
    g_free(line->cells[i]);
  g_free(line);
}

static void
table_free(gpointer data) {
  SpvOffsetTable *table = data;

  g_ptr_array_unref(table->lines);
  g_free(table);
}

/* CELLS as many as the table has columns, or one, then NULL; the line takes them over. */
static void
add_line(SpvOffsetTable *table, SpvTableLineKind kind, char *cells[SPV_TABLE_COLUMNS]) {
  SpvTableLine *line = g_new0(SpvTableLine, 1);

  line->kind = kind;
  memcpy(line->cells, cells, sizeof line->cells);
  if (kind == SPV_TABLE_HEADER)
    table->header = table->lines->len;
  g_ptr_array_add(table->lines, line);
}

static void
add_text(SpvOffsetTable *table, SpvTableLineKind kind, char *text) {
  char *cells[SPV_TABLE_COLUMNS] = { text };

  add_line(table, kind, cells);
}

static SpvOffsetTable *
table_new(const char *heading, guint n_columns) {
  SpvOffsetTable *table = g_new0(SpvOffsetTable, 1);

  table->lines = g_ptr_array_new_with_free_func(line_free);
  table->n_columns = n_columns;
  add_text(table, SPV_TABLE_HEADING, g_strdup(heading));
  return table;
}

static void
measure_table(cairo_t *cr, SpvOffsetTable *table) {
  for (guint i = 0; i < table->lines->len; i++) {
    const SpvTableLine *line = g_ptr_array_index(table->lines, i);
    gboolean cells = line->kind == SPV_TABLE_HEADER || line->kind == SPV_TABLE_ROW;
    gboolean bold = line->kind == SPV_TABLE_HEADING;
    for (guint j = 0; j < table->n_columns && line->cells[j] != NULL; j++) {
      double width = spv_words_width(cr, line->cells[j], SPV_WORDS_BODY, bold, 1);
      if (cells)
        table->widths[j] = MAX(table->widths[j], width);
      else
        table->width = MAX(table->width, width);
    }
  }
  double columns = (table->n_columns - 1) * COLUMN_GAP;
  for (guint j = 0; j < table->n_columns; j++)
    columns += table->widths[j];
  table->width = MAX(table->width, columns);
}

/* "+0.40", "−7.85", "0.00". */
static char *
signed_length(double mm) {
  double rounded = spv_guide_round(mm);
  g_autofree char *length = spv_guide_format(fabs(rounded));

  return g_strconcat(rounded > 0 ? "+" : rounded < 0 ? "\u2212" : "", length, NULL);
}

static const char *
edge_label(SpvEdge edge) {
  switch (edge) {
  case SPV_EDGE_CHIEF:
    return _("chief");
  case SPV_EDGE_SINISTER:
    return _("sinister");
  case SPV_EDGE_BASE:
    return _("base");
  case SPV_EDGE_DEXTER:
    return _("dexter");
  }
  return "";
}

static const char *
along_edge_label(SpvEdge edge) {
  switch (edge) {
  case SPV_EDGE_CHIEF:
    return _("Along chief");
  case SPV_EDGE_SINISTER:
    return _("Along sinister");
  case SPV_EDGE_BASE:
    return _("Along base");
  case SPV_EDGE_DEXTER:
    return _("Along dexter");
  }
  return "";
}

/* Whether the dots numbered FIRST to LAST all stand on one edge; which goes to EDGE. */
static gboolean
dots_share_an_edge(const SpvGuide *guide, guint first, guint last, SpvEdge *edge) {
  guint found = 0;

  for (guint i = 0; i < guide->dots->len; i++) {
    const SpvDot *dot = &g_array_index(guide->dots, SpvDot, i);
    if (dot->number < first || dot->number > last)
      continue;
    if (found++ > 0 && dot->edge != *edge)
      return FALSE;
    *edge = dot->edge;
  }
  return found > 0;
}

/* "Tips 1–6: 0.55 mm apart along the base". */
static char *
run_words(const SpvGuide *guide, const SpvDotRun *run) {
  gboolean tips = run->kind == SPV_DOT_TIP;
  g_autofree char *spacing = spv_guide_format(run->spacing);
  SpvEdge edge;

  if (run->first == run->last)
    return g_strdup_printf(tips ? _("Tip %u") : _("Root %u"), run->first);
  const char *along = dots_share_an_edge(guide, run->first, run->last, &edge) ? edge_label(edge) : _("edge");
  return g_strdup_printf(tips ? _("Tips %u\u2013%u: %s\u2009mm apart along the %s")
                              : _("Roots %u\u2013%u: %s\u2009mm apart along the %s"),
                         run->first, run->last, spacing, along);
}

/* "2.85": how far below; with a sign where it is above. */
static char *
depth_length(double mm) {
  return spv_guide_round(mm) < 0 ? signed_length(mm) : spv_guide_format(fabs(mm));
}

static char *
edge_and_length(SpvEdge edge, double along) {
  g_autofree char *length = spv_guide_format(along);

  return g_strdup_printf("%s %s", edge_label(edge), length);
}

static void
add_dot(SpvOffsetTable *table, const SpvDot *dot, gboolean one_edge) {
  char *cells[SPV_TABLE_COLUMNS] = { g_strdup_printf("%u", dot->number), signed_length(dot->at.x),
                                     depth_length(dot->at.y),
                                     one_edge ? spv_guide_format(dot->along)
                                              : edge_and_length(dot->edge, dot->along) };

  add_line(table, SPV_TABLE_ROW, cells);
}

static SpvOffsetTable *
dots_table_new(const SpvGuide *guide) {
  SpvOffsetTable *table = table_new(_("Dots"), 4);
  SpvEdge edge = SPV_EDGE_CHIEF;
  gboolean one_edge = dots_share_an_edge(guide, 0, G_MAXUINT, &edge);
  char *header[SPV_TABLE_COLUMNS] = { g_strdup(_("Dot")), g_strdup(_("From centre")),
                                      g_strdup(_("Below datum")),
                                      g_strdup(one_edge ? along_edge_label(edge) : _("Along edge")) };

  for (guint i = 0; i < guide->runs->len; i++)
    add_text(table, SPV_TABLE_TEXT, run_words(guide, &g_array_index(guide->runs, SpvDotRun, i)));
  add_text(table, SPV_TABLE_TEXT, g_strdup(_("mm; \u2212 towards dexter, + towards sinister")));
  add_line(table, SPV_TABLE_HEADER, header);
  table->figures[0] = table->figures[1] = table->figures[2] = TRUE;
  table->figures[3] = one_edge;
  for (guint i = 0; i < guide->dots->len; i++)
    add_dot(table, &g_array_index(guide->dots, SpvDot, i), one_edge);
  return table;
}

static void
add_ruling(SpvOffsetTable *table, const SpvRuling *ruling) {
  const SpvRulingEnd *ends = ruling->ends;
  g_autofree char *from = signed_length(ends[0].from_datum);
  g_autofree char *to = signed_length(ends[1].from_datum);
  char *cells[SPV_TABLE_COLUMNS] = { g_strdup_printf("%u", ruling->number), spv_ruling_name(ruling),
                                     edge_and_length(ends[0].edge, ends[0].along),
                                     edge_and_length(ends[1].edge, ends[1].along),
                                     g_strdup_printf("%s \u2192 %s", from, to) };

  add_line(table, SPV_TABLE_ROW, cells);
}

static SpvOffsetTable *
rulings_table_new(const SpvGuide *guide) {
  SpvOffsetTable *table = table_new(_("Rulings"), 5);
  char *header[SPV_TABLE_COLUMNS] = { g_strdup(_("No.")), g_strdup(_("Ruling")), g_strdup(_("One end")),
                                      g_strdup(_("Other end")), g_strdup(_("From datum")) };

  add_text(table, SPV_TABLE_TEXT, g_strdup(_("mm along the edge named; round the edge from the datum")));
  add_line(table, SPV_TABLE_HEADER, header);
  table->figures[0] = TRUE;
  for (guint i = 0; i < guide->rulings->len; i++)
    add_ruling(table, &g_array_index(guide->rulings, SpvRuling, i));
  return table;
}

GPtrArray *
spv_tables_new(cairo_t *measuring, const SpvGuide *guide) {
  GPtrArray *tables = g_ptr_array_new_with_free_func(table_free);

  if (guide->dots->len > 0)
    g_ptr_array_add(tables, dots_table_new(guide));
  if (guide->rulings->len > 0)
    g_ptr_array_add(tables, rulings_table_new(guide));
  for (guint i = 0; i < tables->len; i++)
    measure_table(measuring, g_ptr_array_index(tables, i));
  return tables;
}

double
spv_tables_width(GPtrArray *tables) {
  double width = 0;

  for (guint i = 0; i < tables->len; i++)
    width = MAX(width, ((const SpvOffsetTable *) g_ptr_array_index(tables, i))->width);
  return width;
}

gboolean
spv_tables_at_end(GPtrArray *tables, SpvTablePlace place) {
  return place.table >= tables->len;
}

static double
line_height(const SpvOffsetTable *table, guint index) {
  const SpvTableLine *line = g_ptr_array_index(table->lines, index);

  switch (line->kind) {
  case SPV_TABLE_HEADING:
    return HEADING_HEIGHT;
  case SPV_TABLE_HEADER:
    return HEADER_HEIGHT;
  case SPV_TABLE_TEXT:
  case SPV_TABLE_ROW:
    return SPV_LINE_PITCH;
  }
  return 0;
}

/* Where the lines end that must not be parted from line FIRST: a heading stays with its sentences, unless
 * they are many, and the header with its first rows. */
static guint
keep_until(const SpvOffsetTable *table, guint first) {
  const SpvTableLine *line = g_ptr_array_index(table->lines, first);
  guint after_header = MIN(table->header + 1 + KEEP_TOGETHER, table->lines->len);

  switch (line->kind) {
  case SPV_TABLE_HEADING:
    return table->header - first <= KEEP_SENTENCES ? after_header : first + 2;
  case SPV_TABLE_HEADER:
    return after_header;
  case SPV_TABLE_TEXT:
  case SPV_TABLE_ROW:
    return first + 1;
  }
  return first + 1;
}

static double
lines_below_header(const SpvOffsetTable *table, guint first, guint last) {
  double height = 0;

  for (guint i = first; i < last; i++)
    height += line_height(table, i);
  return height;
}

/* With the header said again where the rows go on. */
static double
lines_height(const SpvOffsetTable *table, guint first, guint last) {
  return (first > table->header ? HEADER_HEIGHT : 0) + lines_below_header(table, first, last);
}

double
spv_table_part_height(const SpvTablePart *part) {
  return lines_height(part->table, part->first, part->last);
}

double
spv_tables_fill(GPtrArray *tables, SpvTablePlace *place, double height, GArray *parts) {
  double used = 0;

  while (!spv_tables_at_end(tables, *place)) {
    const SpvOffsetTable *table = g_ptr_array_index(tables, place->table);
    SpvTablePart part = { table, place->line, keep_until(table, place->line), 0 };
    part.y = used > 0 ? used + TABLE_GAP : 0;
    double bottom = part.y + spv_table_part_height(&part);
    if (bottom > height)
      break;
    while (part.last < table->lines->len) {
      guint last = keep_until(table, part.last);
      double more = lines_below_header(table, part.last, last);
      if (bottom + more > height)
        break;
      part.last = last;
      bottom += more;
    }
    if (parts != NULL)
      g_array_append_val(parts, part);
    used = bottom;
    place->line = part.last;
    if (place->line < table->lines->len)
      break;
    *place = (SpvTablePlace){ place->table + 1, 0 };
  }
  return used;
}

/* The baseline stands so that a line's words sit in its middle. */
static void
draw_cells(cairo_t *cr, const SpvOffsetTable *table, const SpvTableLine *line, double x, double baseline) {
  for (guint j = 0; j < table->n_columns; j++) {
    if (line->cells[j] != NULL && table->figures[j])
      spv_draw_words(cr, line->cells[j], x + table->widths[j], baseline, SPV_WORDS_BODY, 1, FALSE, 1);
    else if (line->cells[j] != NULL)
      spv_draw_words(cr, line->cells[j], x, baseline, SPV_WORDS_BODY, 0, FALSE, 1);
    x += table->widths[j] + COLUMN_GAP;
  }
}

static void
draw_header(cairo_t *cr, const SpvOffsetTable *table, double x, double y) {
  spv_set_rgb(cr, spv_grey);
  draw_cells(cr, table, g_ptr_array_index(table->lines, table->header), x, y + 3.4);
  cairo_set_line_width(cr, RULE_WIDTH);
  cairo_move_to(cr, x, y + HEADER_HEIGHT - 0.6);
  cairo_rel_line_to(cr, table->width, 0);
  cairo_stroke(cr);
}

static void
draw_line(cairo_t *cr, const SpvOffsetTable *table, guint index, double x, double y) {
  const SpvTableLine *line = g_ptr_array_index(table->lines, index);

  switch (line->kind) {
  case SPV_TABLE_HEADING:
    spv_set_rgb(cr, spv_ink);
    spv_draw_words(cr, line->cells[0], x, y + 3.4, SPV_WORDS_BODY, 0, TRUE, 1);
    break;
  case SPV_TABLE_TEXT:
    spv_set_rgb(cr, spv_ink);
    spv_draw_words(cr, line->cells[0], x, y + 2.6, SPV_WORDS_BODY, 0, FALSE, 1);
    break;
  case SPV_TABLE_HEADER:
    draw_header(cr, table, x, y);
    break;
  case SPV_TABLE_ROW:
    spv_set_rgb(cr, spv_ink);
    draw_cells(cr, table, line, x, y + 2.6);
    break;
  }
}

void
spv_table_part_draw(cairo_t *cr, const SpvTablePart *part, double x, double y) {
  if (part->first > part->table->header) {
    draw_header(cr, part->table, x, y);
    y += HEADER_HEIGHT;
  }
  for (guint i = part->first; i < part->last; i++) {
    draw_line(cr, part->table, i, x, y);
    y += line_height(part->table, i);
  }
}
