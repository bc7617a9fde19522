/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `chart`: a printed sampler of the whole vocabulary. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "command/choices.h"
#include "command/verb.h"
#include "sheet/chart.h"

static int
fail(SpvCall *call, const GError *error) {
  spv_call_progress_end(call);
  if (g_error_matches(error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return spv_call_fail(call, NULL, _("stopped; pages that were finished are kept, no other file is"));
  return spv_call_fail(call, NULL, error->message);
}

static int
print_chart(SpvCall *call, const SpvChartOptions *options, const char *output, int dpi, gboolean as_json) {
  g_autoptr(GError) error = NULL;
  g_autoptr(SpvChart) chart = spv_chart_new(options);
  g_autoptr(GPtrArray)
      paths = spv_chart_export(chart, output, dpi, call->cancellable, spv_call_progress, call, &error);
  if (!paths)
    return fail(call, error);
  spv_call_progress_end(call);
  spv_print_paths(call, "pages", paths, as_json);
  return SPV_EXIT_DONE;
}

static int
run(const SpvVerb *verb, SpvCall *call, char ***arguments) {
  SpvChartOptions options = spv_chart_options_preset();
  int dpi = SPV_DPI_PRESET;
  gboolean as_json = FALSE;
  g_autofree char *output = NULL, *paper = NULL, *message = NULL;
  g_auto(GStrv) files = NULL;
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output,
      N_("File to write, .png, .pdf or .svg; a PDF holds all pages"), "FILE" },
    { "paper", 0, 0, G_OPTION_ARG_FILENAME, &paper, N_("a4 (preset), a5 or letter"), "PAPER" },
    { "dpi", 0, 0, G_OPTION_ARG_INT, &dpi, N_("Dots an inch in a PNG, 150 to 2400; preset 600"), "N" },
    { "hatch", 0, 0, G_OPTION_ARG_NONE, &options.hatch, N_("Hatch the tinctures instead of colouring them"),
      NULL },
    { "line", 0, 0, G_OPTION_ARG_DOUBLE, &options.finest_line,
      N_("Your finest line in mm, for the smallest sizes; preset 0.25"), "MM" },
    { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_("Print the names of the pages as JSON"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &files, NULL, NULL },
    { NULL },
  };
  int status = SPV_EXIT_DONE;

  if (!spv_verb_parse(verb, call, entries, arguments, &status))
    return status;
  if (files && files[0]) {
    message = g_strdup_printf(_("“%s” is one word too many; name the file with -o"), files[0]);
    return spv_call_misuse(call, verb->name, message);
  }
  if (!output || !*output)
    return spv_call_misuse(call, verb->name, _("name the new file with -o"));
  if (!spv_choose_paper(paper, &options.paper, &message) || !spv_choose_dpi(dpi, &message))
    return spv_call_misuse(call, verb->name, message);
  if (!(options.finest_line >= SPV_FINEST_LINE_MIN && options.finest_line <= SPV_FINEST_LINE_MAX))
    return spv_call_misuse(call, verb->name, _("a finest line is from 0.05 to 5\u2009mm"));
  return print_chart(call, &options, output, dpi, as_json);
}

const SpvVerb spv_verb_chart = {
  "chart",
  "-o FILE [OPTION…]",
  N_("Print a sampler: every line, division, ordinary, charge and fur"),
  N_("Prints the names of the files written. Beside each charge stands the same as\n"
     "small as your line allows, at true size when printed at 100\u2009%."),
  run,
};
