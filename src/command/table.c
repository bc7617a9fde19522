/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cells kept row by row, and padded when they are printed. */
#include "command/table.h"

#include <string.h>

#define GAP 2 /* blanks between columns */

struct _SpvTable {
  char *alignment;
  guint n_columns;
  GPtrArray *cells; /* char *, row by row */
};

SpvTable *
spv_table_new(const char *alignment) {
  SpvTable *table = g_new0(SpvTable, 1);
  table->alignment = g_strdup(alignment);
  table->n_columns = strlen(alignment);
  table->cells = g_ptr_array_new_with_free_func(g_free);
  return table;
}

void
spv_table_free(SpvTable *table) {
  g_ptr_array_unref(table->cells);
  g_free(table->alignment);
  g_free(table);
}

void
spv_table_add(SpvTable *table, const char *const *cells) {
  for (guint column = 0; column < table->n_columns; column++)
    g_ptr_array_add(table->cells, g_strdup(cells[column]));
}

/* How many places TEXT takes on a terminal. */
static guint
text_width(const char *text) {
  guint width = 0;
  for (const char *at = text; *at; at = g_utf8_next_char(at)) {
    gunichar c = g_utf8_get_char(at);
    if (!g_unichar_iszerowidth(c))
      width += g_unichar_iswide(c) ? 2 : 1;
  }
  return width;
}

static void
append_blanks(GString *out, guint n) {
  for (; n; n--)
    g_string_append_c(out, ' ');
}

void
spv_table_print(const SpvTable *table, GString *out, guint indent) {
  g_autofree guint *widths = g_new0(guint, table->n_columns);
  for (guint i = 0; i < table->cells->len; i++) {
    guint column = i % table->n_columns;
    widths[column] = MAX(widths[column], text_width(table->cells->pdata[i]));
  }
  guint pending = 0; /* blanks that are only written once something follows them */
  for (guint i = 0; i < table->cells->len; i++) {
    const char *cell = table->cells->pdata[i];
    guint column = i % table->n_columns;
    guint slack = widths[column] - text_width(cell);
    pending += column == 0 ? indent : GAP;
    if (table->alignment[column] == 'r')
      pending += slack;
    if (*cell) {
      append_blanks(out, pending);
      pending = 0;
      g_string_append(out, cell);
    }
    if (table->alignment[column] == 'l')
      pending += slack;
    if (column + 1 == table->n_columns) {
      g_string_append_c(out, '\n');
      pending = 0;
    }
  }
}
