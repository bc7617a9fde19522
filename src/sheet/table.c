/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/table.h"

#include <string.h>

#include "draw/draw.h"
#include "sheet/wording.h"

#define COLUMN_GAP 2.1
#define HEADING_HEIGHT 5.2
#define HEADER_PITCH 3.0
#define HEADER_HEIGHT (2 * HEADER_PITCH + 2.0)
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

void
spv_offset_table_free(SpvOffsetTable *table) {
  g_ptr_array_unref(table->lines);
  g_free(table);
}

static SpvTableLine *
line_new(SpvTableLineKind kind, char *cells[SPV_TABLE_COLUMNS]) {
  SpvTableLine *line = g_new0(SpvTableLine, 1);

  line->kind = kind;
  memcpy(line->cells, cells, sizeof line->cells);
  return line;
}

SpvOffsetTable *
spv_offset_table_new(const char *heading, const char *const *names, guint n) {
  SpvOffsetTable *table = g_new0(SpvOffsetTable, 1);
  char *headings[SPV_TABLE_COLUMNS] = { g_strdup(heading) };
  char *header[SPV_TABLE_COLUMNS] = { NULL };

  for (guint i = 0; i < n; i++)
    header[i] = g_strdup(names[i]);
  table->lines = g_ptr_array_new_with_free_func(line_free);
  table->n_columns = n;
  g_ptr_array_add(table->lines, line_new(SPV_TABLE_HEADING, headings));
  table->header = table->lines->len;
  g_ptr_array_add(table->lines, line_new(SPV_TABLE_HEADER, header));
  return table;
}

void
spv_offset_table_add_row(SpvOffsetTable *table, char *cells[SPV_TABLE_COLUMNS]) {
  g_ptr_array_add(table->lines, line_new(SPV_TABLE_ROW, cells));
}

/* The two lines of a column's name; the second may be empty. */
static void
split_name(const char *name, char *parts[2]) {
  const char *end = strchr(name, '\n');

  parts[0] = end != NULL ? g_strndup(name, (gsize) (end - name)) : g_strdup(name);
  parts[1] = g_strdup(end != NULL ? end + 1 : "");
}

static double
cell_width(cairo_t *cr, const SpvTableLine *line, guint column) {
  char *parts[2];
  double width = 0;

  split_name(line->cells[column], parts);
  for (int i = 0; i < 2; i++) {
    width = MAX(width, spv_words_width(cr, parts[i], SPV_WORDS_BODY, FALSE, 1));
    g_free(parts[i]);
  }
  return width;
}

void
spv_offset_table_measure(cairo_t *cr, SpvOffsetTable *table) {
  for (guint i = table->header; i < table->lines->len; i++) {
    const SpvTableLine *line = g_ptr_array_index(table->lines, i);
    for (guint j = 0; j < table->n_columns && line->cells[j] != NULL; j++)
      table->widths[j] = MAX(table->widths[j], cell_width(cr, line, j));
  }
  const SpvTableLine *heading = g_ptr_array_index(table->lines, 0);
  table->width = (table->n_columns - 1) * COLUMN_GAP;
  for (guint j = 0; j < table->n_columns; j++)
    table->width += table->widths[j];
  table->width = MAX(table->width, spv_words_width(cr, heading->cells[0], SPV_WORDS_BODY, TRUE, 1));
}

void
spv_offset_table_add_sentence(cairo_t *cr, SpvOffsetTable *table, const char *text, double room) {
  g_auto(GStrv) lines = spv_words_wrap(cr, text, SPV_WORDS_BODY, FALSE, MAX(room, table->width), 4);

  for (guint i = 0; lines[i] != NULL; i++) {
    char *cells[SPV_TABLE_COLUMNS] = { g_strdup(lines[i]) };
    g_ptr_array_insert(table->lines, (int) table->header++, line_new(SPV_TABLE_TEXT, cells));
    table->width = MAX(table->width, spv_words_width(cr, lines[i], SPV_WORDS_BODY, FALSE, 1));
  }
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

static void
draw_cell(cairo_t *cr, const SpvOffsetTable *table, guint column, const char *words, double x,
          double baseline) {
  if (table->figures[column])
    spv_draw_words(cr, words, x + table->widths[column], baseline, SPV_WORDS_BODY, 1, FALSE, 1);
  else
    spv_draw_words(cr, words, x, baseline, SPV_WORDS_BODY, 0, FALSE, 1);
}

/* The baseline stands so that a line's words sit in its middle. */
static void
draw_cells(cairo_t *cr, const SpvOffsetTable *table, const SpvTableLine *line, double x, double baseline) {
  for (guint j = 0; j < table->n_columns; j++) {
    if (line->cells[j] != NULL)
      draw_cell(cr, table, j, line->cells[j], x, baseline);
    x += table->widths[j] + COLUMN_GAP;
  }
}

static void
draw_header(cairo_t *cr, const SpvOffsetTable *table, double x, double y) {
  const SpvTableLine *line = g_ptr_array_index(table->lines, table->header);
  double at = x;

  spv_set_rgb(cr, spv_grey);
  for (guint j = 0; j < table->n_columns; j++) {
    char *parts[2];
    split_name(line->cells[j], parts);
    for (int i = 0; i < 2; i++) {
      draw_cell(cr, table, j, parts[i], at, y + SPV_WORDS_BODY + 0.6 + i * HEADER_PITCH);
      g_free(parts[i]);
    }
    at += table->widths[j] + COLUMN_GAP;
  }
  cairo_set_line_width(cr, RULE_WIDTH);
  cairo_move_to(cr, x, y + HEADER_HEIGHT - 0.9);
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
