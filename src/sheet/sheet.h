/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Guide sheets: the pages at true scale that a painter prints, cuts and works from. First they are laid out,
 * then each can be drawn on any cairo context, and all of them written as files. */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

#include "scheme/scheme.h"
#include "sheet/paper.h"

typedef enum {
  SPV_CONTENT_TEMPLATES = 1 << 0,    /* 1:1, to cut out */
  SPV_CONTENT_ENLARGEMENTS = 1 << 1, /* with dots, rulings and tinctures' names */
  SPV_CONTENT_OFFSETS = 1 << 2,      /* tables of dots and rulings */
  SPV_CONTENT_ALL = 7
} SpvContent;

typedef enum { SPV_FORMAT_PNG, SPV_FORMAT_PDF, SPV_FORMAT_SVG } SpvFormat;

#define SPV_DPI_MIN 150
#define SPV_DPI_MAX 2400
#define SPV_DPI_PRESET 600

typedef struct {
  const SpvPaper *paper;
  guint content;             /* SpvContent flags */
  gboolean hatch;            /* hatch instead of colour */
  const char *date;          /* printed as it is; NULL for none */
  const char *const *panels; /* ids, NULL-terminated; NULL for every panel with a design */
} SpvSheetOptions;

typedef struct _SpvSheets SpvSheets;

/* A4, everything, colour, no date, every panel that has a visible layer. */
SpvSheetOptions spv_sheet_options_preset(void);

/* Lays SCHEME's panels out on sheets. Fails (SPV_SHEET_ERROR) on an unknown panel, when no panel has a
 * design, or when a panel can't go on the paper at true size; the message says which, and what would do.
 * PROGRESS-free: it is quick but for the partitions of the panels. */
SpvSheets *spv_sheets_new(const SpvScheme *scheme, const SpvSheetOptions *options, GCancellable *cancellable,
                          GError **error);
void spv_sheets_free(SpvSheets *sheets);

guint spv_sheets_count(const SpvSheets *sheets);
const SpvPaper *spv_sheets_paper(const SpvSheets *sheets);
const char *spv_sheets_title(const SpvSheets *sheets);

/* Where the 1:1 outline of a panel was laid, for tests and for the curious: sheet index, and its box on the
 * page, mm. FALSE when PANEL (an id) is on none. N counts the panel's templates from 0. */
gboolean spv_sheets_find_template(const SpvSheets *sheets, const char *panel, guint n, guint *sheet,
                                  SpvBox *box);

/* Draws sheet INDEX in page millimetres: (0, 0) is the paper's upper left corner. Paints the white of the
 * paper too. The same sheets give the same drawing. */
void spv_sheets_draw(const SpvSheets *sheets, guint index, cairo_t *cr);

/* Writes every sheet into FOLDER (made if missing) as TITLE-1.png, -2 … (a PDF holds all the pages in one
 * file). Each file is written beside its place and renamed: it is whole or not there. Returns the paths
 * written, in order, or NULL with ERROR set; when cancelled or failed, files already finished stay, the
 * unfinished one goes. PROGRESS (may be NULL) is told the fraction done, never falling. */
GPtrArray *spv_sheets_export(const SpvSheets *sheets, const char *folder, SpvFormat format, int dpi,
                             GCancellable *cancellable, void (*progress)(double fraction, gpointer data),
                             gpointer data, GError **error);

const char *spv_format_key(SpvFormat format);
gboolean spv_format_from_key(const char *key, SpvFormat *format);
/* Reads "templates,enlargements,offsets". */
gboolean spv_content_from_list(const char *list, guint *content, GError **error);

typedef enum {
  SPV_SHEET_ERROR_PANEL,  /* no such panel */
  SPV_SHEET_ERROR_EMPTY,  /* nothing to print */
  SPV_SHEET_ERROR_FIT,    /* too large for the paper */
  SPV_SHEET_ERROR_OPTION, /* unknown content, dpi out of range */
  SPV_SHEET_ERROR_WRITE   /* a file could not be written */
} SpvSheetError;
#define SPV_SHEET_ERROR (spv_sheet_error_quark())
GQuark spv_sheet_error_quark(void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvSheets, spv_sheets_free)
