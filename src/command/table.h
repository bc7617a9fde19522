/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A table as plain text, with its columns aligned. */
#pragma once

#include <glib.h>

typedef struct _SpvTable SpvTable;

/* ALIGNMENT has a letter a column: 'l' or 'r', the side that the column keeps to. */
SpvTable *spv_table_new(const char *alignment);
void spv_table_free(SpvTable *table);

/* Adds a row: as many CELLS as there are columns, UTF-8 without line feeds, copied. */
void spv_table_add(SpvTable *table, const char *const *cells);

/* Appends the rows to OUT, INDENT blanks in, columns two blanks apart; no row ends in a blank. */
void spv_table_print(const SpvTable *table, GString *out, guint indent);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvTable, spv_table_free)
