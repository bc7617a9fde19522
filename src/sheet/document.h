/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pages that can be written as files, whatever is on them. */
#pragma once

#include "sheet/sheet.h"

typedef struct {
  const SpvPaper *paper;
  const char *title;
  guint n_pages; /* at least 1 */
  /* Draws page INDEX of DATA in page millimetres, the white of the paper too. */
  void (*draw)(gconstpointer data, guint index, cairo_t *cr);
  gconstpointer data;
} SpvDocument;

/* Writes every page into FOLDER (made if missing) as NAME-1.png, NAME-2.png … (a PDF holds all the pages in
 * one file, NAME.pdf). As spv_sheets_export() in all else. */
GPtrArray *spv_document_export(const SpvDocument *document, const char *folder, const char *name,
                               SpvFormat format, int dpi, GCancellable *cancellable,
                               void (*progress)(double fraction, gpointer data), gpointer data,
                               GError **error);
