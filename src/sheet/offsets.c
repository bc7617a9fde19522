/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/offsets.h"

#include <glib/gi18n-lib.h>

#include "sheet/table.h"

/* How wide a sentence may make a table that stands alone: less where there are so many dots that they go into
 * as many columns as can be. */
#define SENTENCE_MOST 62.0
#define SENTENCE_MOST_MANY 54.0
#define MANY_DOTS 24u

/* Which columns the rulings' table has: without its name a ruling still has its number, and without the way
 * round the edge its ends still have theirs along each edge. */
typedef enum { RULINGS_IN_FULL, RULINGS_WITHOUT_NAMES, RULINGS_IN_BRIEF } RulingColumns;

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
    return _("Along\nchief");
  case SPV_EDGE_SINISTER:
    return _("Along\nsinister");
  case SPV_EDGE_BASE:
    return _("Along\nbase");
  case SPV_EDGE_DEXTER:
    return _("Along\ndexter");
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

/* Where dots stand in a row, as a sentence says it. */
static const char *
edge_phrase(SpvEdge edge) {
  switch (edge) {
  case SPV_EDGE_CHIEF:
    return _("along the chief");
  case SPV_EDGE_SINISTER:
    return _("along the sinister edge");
  case SPV_EDGE_BASE:
    return _("along the base");
  case SPV_EDGE_DEXTER:
    return _("along the dexter edge");
  }
  return "";
}

/* "Tips 1–6: 0.55 mm apart along the base". */
static char *
run_words(const SpvGuide *guide, const SpvDotRun *run) {
  gboolean tips = run->kind == SPV_DOT_TIP;
  g_autofree char *spacing = spv_guide_format(run->spacing);
  SpvEdge edge;

  if (run->first == run->last)
    return g_strdup_printf(tips ? _("Tip %u") : _("Root %u"), run->first);
  const char *along = dots_share_an_edge(guide, run->first, run->last, &edge) ? edge_phrase(edge)
                                                                              : _("along the edge");
  return g_strdup_printf(tips ? _("Tips %u\u2013%u: %s\u2009mm apart %s")
                              : _("Roots %u\u2013%u: %s\u2009mm apart %s"),
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

  spv_offset_table_add_row(table, cells);
}

static SpvOffsetTable *
dots_table_new(cairo_t *measuring, const SpvGuide *guide, double room) {
  SpvEdge edge = SPV_EDGE_CHIEF;
  gboolean one_edge = dots_share_an_edge(guide, 0, G_MAXUINT, &edge);
  const char *const names[] = { _("Dot"), _("From\ncentre"), _("Below\ndatum"),
                                one_edge ? along_edge_label(edge) : _("Along\nedge") };
  SpvOffsetTable *table = spv_offset_table_new(_("Dots, mm"), names, G_N_ELEMENTS(names));

  table->figures[0] = table->figures[1] = table->figures[2] = TRUE;
  table->figures[3] = one_edge;
  for (guint i = 0; i < guide->dots->len; i++)
    add_dot(table, &g_array_index(guide->dots, SpvDot, i), one_edge);
  spv_offset_table_measure(measuring, table);
  for (guint i = 0; i < guide->runs->len; i++) {
    g_autofree char *words = run_words(guide, &g_array_index(guide->runs, SpvDotRun, i));
    spv_offset_table_add_sentence(measuring, table, words, room);
  }
  return table;
}

static void
add_ruling(SpvOffsetTable *table, const SpvRuling *ruling, RulingColumns columns) {
  const SpvRulingEnd *ends = ruling->ends;
  g_autofree char *from = signed_length(ends[0].from_datum);
  g_autofree char *to = signed_length(ends[1].from_datum);
  char *cells[SPV_TABLE_COLUMNS] = { NULL };
  guint n = 0;

  cells[n++] = g_strdup_printf("%u", ruling->number);
  if (columns == RULINGS_IN_FULL)
    cells[n++] = spv_ruling_name(ruling);
  cells[n++] = edge_and_length(ends[0].edge, ends[0].along);
  cells[n++] = edge_and_length(ends[1].edge, ends[1].along);
  if (columns != RULINGS_IN_BRIEF)
    cells[n++] = g_strdup_printf("%s / %s", from, to);
  spv_offset_table_add_row(table, cells);
}

static SpvOffsetTable *
rulings_table_new(cairo_t *measuring, const SpvGuide *guide, RulingColumns columns) {
  const char *names[SPV_TABLE_COLUMNS];
  guint n = 0;

  names[n++] = _("No.");
  if (columns == RULINGS_IN_FULL)
    names[n++] = _("Ruling");
  names[n++] = _("One end,\nalong edge");
  names[n++] = _("Other end,\nalong edge");
  if (columns != RULINGS_IN_BRIEF)
    names[n++] = _("From datum,\nround edge");
  SpvOffsetTable *table = spv_offset_table_new(_("Rulings, mm"), names, n);

  table->figures[0] = TRUE;
  for (guint i = 0; i < guide->rulings->len; i++)
    add_ruling(table, &g_array_index(guide->rulings, SpvRuling, i), columns);
  spv_offset_table_measure(measuring, table);
  return table;
}

/* With as many columns as go into ROOM. */
static SpvOffsetTable *
rulings_table_for(cairo_t *measuring, const SpvGuide *guide, double room) {
  SpvOffsetTable *table = rulings_table_new(measuring, guide, RULINGS_IN_FULL);

  for (RulingColumns columns = RULINGS_WITHOUT_NAMES; table->width > room && columns <= RULINGS_IN_BRIEF;
       columns++) {
    spv_offset_table_free(table);
    table = rulings_table_new(measuring, guide, columns);
  }
  return table;
}

/* The sentences about dots may be as wide as the rulings' table, for a column is as wide as the widest. */
GPtrArray *
spv_tables_new(cairo_t *measuring, const SpvGuide *guide, double room) {
  GPtrArray *tables = g_ptr_array_new_with_free_func((GDestroyNotify) spv_offset_table_free);
  SpvOffsetTable *rulings = guide->rulings->len > 0 ? rulings_table_for(measuring, guide, room) : NULL;
  double sentence = guide->dots->len < MANY_DOTS ? SENTENCE_MOST : SENTENCE_MOST_MANY;
  double most = MAX(rulings != NULL ? rulings->width : 0, MIN(room, sentence));

  if (guide->dots->len > 0)
    g_ptr_array_add(tables, dots_table_new(measuring, guide, most));
  if (rulings != NULL)
    g_ptr_array_add(tables, rulings);
  return tables;
}

const char *
spv_tables_note(void) {
  return _("\u2212 is towards dexter, + towards sinister. Along an edge: from its dexter or its upper end.");
}
