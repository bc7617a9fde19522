/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tables in lines that can be broken over columns and sheets: how they are made, broken and drawn. What they
 * say is in offsets.h. Millimetres on paper. */
#pragma once

#include <cairo.h>
#include <glib.h>

#define SPV_TABLE_COLUMNS 5

typedef enum {
  SPV_TABLE_HEADING, /* what the table is */
  SPV_TABLE_TEXT,    /* a line of a sentence */
  SPV_TABLE_HEADER,  /* the columns' names, two lines each; said again wherever the table goes on */
  SPV_TABLE_ROW
} SpvTableLineKind;

typedef struct {
  SpvTableLineKind kind;
  char *cells[SPV_TABLE_COLUMNS]; /* the first only, unless HEADER or ROW; NULL where there is none */
} SpvTableLine;

typedef struct {
  GPtrArray *lines; /* SpvTableLine: heading, sentences, header, rows */
  guint header;     /* index of the header line */
  guint n_columns;
  gboolean figures[SPV_TABLE_COLUMNS]; /* set flush right */
  double widths[SPV_TABLE_COLUMNS];
  double width;
} SpvOffsetTable;

/* Where in a card's tables one stands. */
typedef struct {
  guint table, line;
} SpvTablePlace;

/* Some lines of a table, one below the other. */
typedef struct {
  const SpvOffsetTable *table;
  guint first, last; /* lines, LAST not among them */
  double y;          /* of their top, below the top of what was filled */
} SpvTablePart;

/* A table with its heading and the names of its N columns; a newline in a name starts its second line. */
SpvOffsetTable *spv_offset_table_new(const char *heading, const char *const *names, guint n);
void spv_offset_table_free(SpvOffsetTable *table);
/* Adds a row; takes CELLS over. */
void spv_offset_table_add_row(SpvOffsetTable *table, char *cells[SPV_TABLE_COLUMNS]);
/* Works out how wide the table is, by its heading, names and rows so far. */
void spv_offset_table_measure(cairo_t *cr, SpvOffsetTable *table);
/* Adds a sentence above the names, below those before, in as many lines as ROOM, mm on paper, or the measured
 * table is narrow. */
void spv_offset_table_add_sentence(cairo_t *cr, SpvOffsetTable *table, const char *text, double room);

/* The width of the widest table; 0 when there is none. */
double spv_tables_width(GPtrArray *tables);

/* Fills a column HEIGHT mm high with lines from PLACE on, and moves PLACE on; a heading stays with its first
 * rows. Appends to PARTS (SpvTablePart) unless NULL. Returns the height used: 0 when nothing fits. */
double spv_tables_fill(GPtrArray *tables, SpvTablePlace *place, double height, GArray *parts);
gboolean spv_tables_at_end(GPtrArray *tables, SpvTablePlace place);

double spv_table_part_height(const SpvTablePart *part);
/* Draws PART with its top left corner at (X, Y). */
void spv_table_part_draw(cairo_t *cr, const SpvTablePart *part, double x, double y);
