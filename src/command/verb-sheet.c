/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `sheet`: guide sheets at true scale. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "command/choices.h"
#include "command/input.h"
#include "command/verb.h"
#include "sheet/sheet.h"

typedef struct {
  SpvSheetOptions sheet;
  SpvFormat format;
  int dpi;
} Choices;

/* The words of the call as sheet options; FALSE, with MESSAGE set, where one is wrong. */
static gboolean
choose(const char *paper, const char *format, const char *content, Choices *choices, char **message) {
  g_autoptr(GError) error = NULL;
  if (!spv_choose_paper(paper, &choices->sheet.paper, message) || !spv_choose_dpi(choices->dpi, message))
    return FALSE;
  if (format && !spv_format_from_key(format, &choices->format)) {
    *message = g_strdup_printf(_("no format is called “%s”; take one of: png, pdf, svg"), format);
    return FALSE;
  }
  if (content && !spv_content_from_list(content, &choices->sheet.content, &error)) {
    *message = g_strdup(error->message);
    return FALSE;
  }
  return TRUE;
}

static int
fail(SpvCall *call, const char *file, const GError *error) {
  spv_call_progress_end(call);
  if (g_error_matches(error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return spv_call_fail(call, NULL, _("stopped; sheets that were finished are kept, no other file is"));
  /* A file that can't be written is named in the message; all else is about the scheme. */
  gboolean names_file = g_error_matches(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_WRITE);
  return spv_call_fail(call, names_file ? NULL : spv_input_name(file), error->message);
}

static int
print_sheets(SpvCall *call, const char *file, const char *folder, const Choices *choices, gboolean as_json) {
  g_autoptr(SpvScheme) scheme = spv_input_scheme(call, file);
  if (!scheme)
    return SPV_EXIT_FAILED;
  g_autoptr(GError) error = NULL;
  g_autoptr(SpvSheets) sheets = spv_sheets_new(scheme, &choices->sheet, call->cancellable, &error);
  if (!sheets)
    return fail(call, file, error);
  g_autoptr(GPtrArray) paths = spv_sheets_export(sheets, folder, choices->format, choices->dpi,
                                                 call->cancellable, spv_call_progress, call, &error);
  if (!paths)
    return fail(call, file, error);
  spv_call_progress_end(call);
  spv_print_paths(call, "sheets", paths, as_json);
  return SPV_EXIT_DONE;
}

static int
run(const SpvVerb *verb, SpvCall *call, char ***arguments) {
  Choices choices = { spv_sheet_options_preset(), SPV_FORMAT_PNG, SPV_DPI_PRESET };
  gboolean as_json = FALSE;
  g_autofree char *folder = NULL, *paper = NULL, *format = NULL, *content = NULL, *date = NULL;
  g_auto(GStrv) files = NULL, panels = NULL;
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &folder, N_("Folder for the sheets; made if missing"), "DIR" },
    { "paper", 0, 0, G_OPTION_ARG_FILENAME, &paper, N_("a4 (preset), a5 or letter"), "PAPER" },
    { "dpi", 0, 0, G_OPTION_ARG_INT, &choices.dpi, N_("Dots an inch in a PNG, 150 to 2400; preset 600"),
      "N" },
    { "format", 0, 0, G_OPTION_ARG_FILENAME, &format, N_("png (preset), pdf or svg"), "FORMAT" },
    { "panel", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &panels,
      N_("Only this one; may be repeated; preset: all with a design"), "ID" },
    { "content", 0, 0, G_OPTION_ARG_FILENAME, &content,
      N_("Any of templates,enlargements,offsets; preset: all"), "LIST" },
    { "hatch", 0, 0, G_OPTION_ARG_NONE, &choices.sheet.hatch,
      N_("Hatch the tinctures instead of colouring them"), NULL },
    { "date", 0, 0, G_OPTION_ARG_FILENAME, &date, N_("Print this date, or today's for “today”; preset: none"),
      "TEXT" },
    { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_("Print the names of the sheets as JSON"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &files, NULL, NULL },
    { NULL },
  };
  int status = SPV_EXIT_DONE;
  if (!spv_verb_parse(verb, call, entries, arguments, &status))
    return status;
  const char *file = spv_verb_file(verb, call, files, &status);
  if (!file || !spv_verb_check_text(verb, call, "--date", date, &status))
    return status;
  if (!folder || !*folder)
    return spv_call_misuse(call, verb->name, _("name a folder for the sheets with -o"));
  g_autofree char *message = NULL;
  if (!choose(paper, format, content, &choices, &message))
    return spv_call_misuse(call, verb->name, message);
  if (date && g_str_equal(date, "today")) {
    g_autoptr(GDateTime) now = g_date_time_new_now_local();
    g_free(date);
    date = g_date_time_format(now, "%Y-%m-%d");
  }
  choices.sheet.date = date;
  choices.sheet.panels = (const char *const *) panels;
  return print_sheets(call, file, folder, &choices, as_json);
}

const SpvVerb spv_verb_sheet = {
  "sheet",
  "FILE -o DIR [OPTION…]",
  N_("Print panels at true scale: guide sheets as PNG, PDF or SVG"),
  N_("Prints the names of the files written. Print them at 100\u2009%, with no fitting to\n"
     "the page, and lay a ruler on the 100\u2009mm bar before you cut. FILE may be “-”,\n"
     "standard input."),
  run,
};
