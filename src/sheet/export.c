/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Documents as files. cairo hides what goes wrong while it finishes a file, so the first failure of ours is
 * kept here, whatever cairo says. */
#include "config.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "scheme/save.h"
#include "sheet/document.h"
#include "sheet/page-frame.h"
#include "sheet/png-writer.h"

#define POINTS_PER_MM (72.0 / 25.4)
#define SLUG_MOST 80u

typedef struct {
  const SpvDocument *document;
  int dpi;
  GCancellable *cancellable;
  void (*progress)(double fraction, gpointer data);
  gpointer data;
  guint index;   /* the page at hand */
  SpvSave *save; /* the file at hand */
  GError *error; /* its first failure */
} Export;

/* TITLE as a file name that every system takes: lower-case letters, digits and hyphens. */
static char *
slug_new(const char *title) {
  g_autofree char *ascii = g_str_to_ascii(title, "C");
  GString *slug = g_string_new(NULL);

  for (const char *c = ascii; *c != '\0' && slug->len < SLUG_MOST; c++) {
    if (g_ascii_isalnum(*c))
      g_string_append_c(slug, g_ascii_tolower(*c));
    else if (*c != '\'' && *c != '?' && slug->len > 0 && slug->str[slug->len - 1] != '-')
      g_string_append_c(slug, '-');
  }
  while (slug->len > 0 && slug->str[slug->len - 1] == '-')
    g_string_truncate(slug, slug->len - 1);
  if (slug->len == 0)
    g_string_assign(slug, "sheet");
  return g_string_free(slug, FALSE);
}

static void
tell_progress(const Export *export, double fraction) {
  if (export->progress != NULL)
    export->progress((export->index + fraction) / export->document->n_pages, export->data);
}

static void
page_progress(double fraction, gpointer data) {
  tell_progress(data, fraction);
}

static void
draw_page(cairo_t *cr, gpointer data) {
  const Export *export = data;

  export->document->draw(export->document->data, export->index, cr);
}

static gboolean
save_bytes(const void *bytes, gsize length, gpointer data, GError **error) {
  return spv_save_write(((Export *) data)->save, bytes, length, error);
}

/* After the first failure the bytes are dropped: cairo would go on as if nothing had happened. */
static cairo_status_t
save_stream(void *data, const unsigned char *bytes, unsigned int length) {
  Export *export = data;

  if (export->error == NULL)
    spv_save_write(export->save, bytes, length, &export->error);
  return export->error == NULL ? CAIRO_STATUS_SUCCESS : CAIRO_STATUS_WRITE_ERROR;
}

static void
write_png(Export *export) {
  const SpvPaper *paper = export->document->paper;
  SpvPngPage page = {
    paper->width,         paper->height, export->dpi, export->document->title, "Spolvero " SPV_VERSION,
    spv_scale_statement()
  };

  spv_png_write(&page, draw_page, export, save_bytes, export, export->cancellable, page_progress, export,
                &export->error);
}

/* Draws sheet INDEX on SURFACE, SCALE units a millimetre, and ends the page. */
static void
draw_vector_page(Export *export, cairo_surface_t *surface, double scale) {
  if (g_cancellable_set_error_if_cancelled(export->cancellable, &export->error))
    return;

  cairo_t *cr = cairo_create(surface);
  cairo_scale(cr, scale, scale);
  draw_page(cr, export);
  cairo_show_page(cr);
  cairo_status_t status = cairo_status(cr);
  cairo_destroy(cr);
  if (export->error == NULL && status != CAIRO_STATUS_SUCCESS)
    g_set_error(&export->error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE, _("The page could not be drawn: %s"),
                cairo_status_to_string(status));
}

/* Ends the file; cairo writes most of it now. */
static void
finish_surface(Export *export, cairo_surface_t *surface) {
  cairo_surface_finish(surface);
  cairo_status_t status = cairo_surface_status(surface);
  if (export->error == NULL && status != CAIRO_STATUS_SUCCESS)
    g_set_error(&export->error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE,
                _("The file could not be finished: %s"), cairo_status_to_string(status));
  cairo_surface_destroy(surface);
}

static cairo_status_t
keep_stream(void *data, const unsigned char *bytes, unsigned int length) {
  g_string_append_len(data, (const char *) bytes, length);
  return CAIRO_STATUS_SUCCESS;
}

static gboolean
number_surface(const GMatchInfo *match, GString *result, gpointer data) {
  GHashTable *numbers = data;
  g_autofree char *name = g_match_info_fetch(match, 0);

  if (!g_hash_table_contains(numbers, name))
    g_hash_table_insert(numbers, g_strdup(name), GUINT_TO_POINTER(g_hash_table_size(numbers)));
  g_string_append_printf(result, "surface%u", GPOINTER_TO_UINT(g_hash_table_lookup(numbers, name)));
  return FALSE;
}

/* cairo numbers its surfaces over the life of the process, and writes the numbers into the file. They are
 * numbered anew from 0 here: the same sheets give the same bytes. An SVG of cairo's holds words as outlines
 * only, so none of ours can look like such a name. */
static char *
number_surfaces(const GString *svg, GError **error) {
  g_autoptr(GRegex) regex = g_regex_new("\\bsurface[0-9]+\\b", G_REGEX_RAW, 0, error);
  g_autoptr(GHashTable) numbers = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);

  if (regex == NULL)
    return NULL;
  return g_regex_replace_eval(regex, svg->str, (gssize) svg->len, 0, 0, number_surface, numbers, error);
}

/* Kept whole until it is finished: a sheet takes a few hundred kilobytes. */
static void
write_svg(Export *export) {
  const SpvPaper *paper = export->document->paper;
  g_autoptr(GString) svg = g_string_new(NULL);
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream(keep_stream, svg, paper->width,
                                                                 paper->height);

  cairo_svg_surface_set_document_unit(surface, CAIRO_SVG_UNIT_MM);
  draw_vector_page(export, surface, 1);
  finish_surface(export, surface);
  if (export->error != NULL)
    return;
  g_autofree char *text = number_surfaces(svg, &export->error);
  if (text != NULL)
    spv_save_write(export->save, text, strlen(text), &export->error);
}

static void
write_pdf(Export *export) {
  const SpvPaper *paper = export->document->paper;
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(
      save_stream, export, paper->width * POINTS_PER_MM, paper->height * POINTS_PER_MM);

  /* An empty date takes away the time of now, which cairo puts in: the same sheets give the same bytes. */
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, "");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, export->document->title);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Spolvero " SPV_VERSION);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_SUBJECT, spv_scale_statement());
  for (export->index = 0; export->index < export->document->n_pages && export->error == NULL;
       export->index++) {
    draw_vector_page(export, surface, POINTS_PER_MM);
    if (export->error == NULL)
      tell_progress(export, 0.9);
  }
  finish_surface(export, surface);
}

/* One whole file at PATH, written by WRITE; nothing there when it fails. */
static gboolean
write_file(Export *export, const char *path, void (*write)(Export *export), GError **error) {
  if (g_cancellable_set_error_if_cancelled(export->cancellable, error))
    return FALSE;

  export->error = NULL;
  export->save = spv_save_begin(path, &export->error);
  if (export->save != NULL) {
    write(export);
    if (export->error == NULL)
      spv_save_commit(export->save, &export->error);
    else
      spv_save_abandon(export->save);
    export->save = NULL;
  }
  if (export->error == NULL)
    return TRUE;
  if (export->error->domain == G_IO_ERROR || export->error->domain == SPV_SHEET_ERROR)
    g_propagate_error(error, g_steal_pointer(&export->error));
  else
    g_set_error_literal(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE, export->error->message);
  g_clear_error(&export->error);
  return FALSE;
}

static gboolean
export_each(Export *export, const char *folder, const char *name, SpvFormat format, GPtrArray *paths,
            GError **error) {
  for (export->index = 0; export->index < export->document->n_pages; export->index++) {
    g_autofree char *file = g_strdup_printf("%s-%u.%s", name, export->index + 1, spv_format_key(format));
    g_autofree char *path = g_build_filename(folder, file, NULL);
    if (!write_file(export, path, format == SPV_FORMAT_PNG ? write_png : write_svg, error))
      return FALSE;
    g_ptr_array_add(paths, g_steal_pointer(&path));
    if (format == SPV_FORMAT_SVG)
      tell_progress(export, 1);
  }
  return TRUE;
}

static gboolean
export_together(Export *export, const char *folder, const char *name, GPtrArray *paths, GError **error) {
  g_autofree char *file = g_strdup_printf("%s.pdf", name);
  g_autofree char *path = g_build_filename(folder, file, NULL);

  if (!write_file(export, path, write_pdf, error))
    return FALSE;
  g_ptr_array_add(paths, g_steal_pointer(&path));
  export->index = export->document->n_pages;
  tell_progress(export, 0);
  return TRUE;
}

static gboolean
make_folder(const char *folder, GError **error) {
  if (g_mkdir_with_parents(folder, 0777) == 0)
    return TRUE;

  int saved = errno;
  g_set_error(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE,
              _("%s: the folder could not be made: %s. Choose another folder."), folder, g_strerror(saved));
  return FALSE;
}

GPtrArray *
spv_document_export(const SpvDocument *document, const char *folder, const char *name, SpvFormat format,
                    int dpi, GCancellable *cancellable, void (*progress)(double fraction, gpointer data),
                    gpointer data, GError **error) {
  Export export = { document, dpi, cancellable, progress, data, 0, NULL, NULL };
  g_autoptr(GPtrArray) paths = g_ptr_array_new_with_free_func(g_free);
  gboolean done = FALSE;

  if (format == SPV_FORMAT_PNG && (dpi < SPV_DPI_MIN || dpi > SPV_DPI_MAX)) {
    g_set_error(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_OPTION,
                _("%d dpi can't be drawn; choose from %d to %d"), dpi, SPV_DPI_MIN, SPV_DPI_MAX);
    return NULL;
  }
  if (!make_folder(folder, error))
    return NULL;
  switch (format) {
  case SPV_FORMAT_PNG:
  case SPV_FORMAT_SVG:
    done = export_each(&export, folder, name, format, paths, error);
    break;
  case SPV_FORMAT_PDF:
    done = export_together(&export, folder, name, paths, error);
    break;
  }
  return done ? g_steal_pointer(&paths) : NULL;
}

static void
draw_sheet(gconstpointer sheets, guint index, cairo_t *cr) {
  spv_sheets_draw(sheets, index, cr);
}

GPtrArray *
spv_sheets_export(const SpvSheets *sheets, const char *folder, SpvFormat format, int dpi,
                  GCancellable *cancellable, void (*progress)(double fraction, gpointer data), gpointer data,
                  GError **error) {
  SpvDocument document = { spv_sheets_paper(sheets), spv_sheets_title(sheets), spv_sheets_count(sheets),
                           draw_sheet, sheets };
  g_autofree char *slug = slug_new(spv_sheets_title(sheets));

  return spv_document_export(&document, folder, slug, format, dpi, cancellable, progress, data, error);
}
