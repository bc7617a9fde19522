/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/chart-export.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "window/path-words.h"

typedef struct {
  SpvChartOptions options;
  char *path;
  int dpi;
} Job;

SpvChartOptions
spv_chart_export_options(const SpvExportChoices *choices, const SpvScheme *scheme) {
  SpvChartOptions options = spv_chart_options_preset();

  options.paper = choices->paper;
  options.hatch = choices->hatch;
  if (scheme != NULL)
    options.finest_line = scheme->finest_line;
  return options;
}

/* The format that NAME's suffix names; FALSE where it names none. */
static gboolean
format_of(const char *name, SpvFormat *format) {
  const char *suffix = strrchr(name, '.');

  return suffix != NULL && suffix != name && spv_format_from_key(suffix + 1, format);
}

char *
spv_chart_export_name(const char *name) {
  SpvFormat format;

  return format_of(name, &format) ? g_strdup(name) : g_strconcat(name, ".pdf", NULL);
}

char *
spv_chart_export_first(const char *path) {
  SpvFormat format;

  if (!format_of(path, &format) || format == SPV_FORMAT_PDF)
    return g_strdup(path);
  const char *suffix = strrchr(path, '.');
  g_autofree char *stem = g_strndup(path, (gsize) (suffix - path));
  return g_strconcat(stem, "-1", suffix, NULL);
}

void
spv_chart_export_result_free(SpvChartExportResult *result) {
  g_ptr_array_unref(result->paths);
  g_free(result);
}

static void
job_free(gpointer data) {
  Job *job = data;

  g_free(job->path);
  g_free(job);
}

/* Runs on the worker's thread. */
static void
work(GTask *task, gpointer source, gpointer data, GCancellable *cancellable) {
  const Job *job = data;
  GError *error = NULL;
  g_autoptr(SpvChart) chart = spv_chart_new(&job->options);
  GPtrArray *paths = spv_chart_export(chart, job->path, job->dpi, cancellable, NULL, NULL, &error);

  (void) source;
  if (paths == NULL) {
    g_task_return_error(task, error);
    return;
  }
  SpvChartExportResult *result = g_new0(SpvChartExportResult, 1);
  result->paths = paths;
  result->n_pages = spv_chart_count(chart);
  g_task_return_pointer(task, result, (GDestroyNotify) spv_chart_export_result_free);
}

void
spv_chart_export_async(const SpvChartOptions *options, const char *path, int dpi, GCancellable *cancellable,
                       GAsyncReadyCallback callback, gpointer data) {
  g_autoptr(GTask) task = g_task_new(NULL, cancellable, callback, data);
  Job *job = g_new0(Job, 1);

  job->options = *options;
  job->path = g_strdup(path);
  job->dpi = dpi;
  /* What was written before a late cancel is said rather than hidden. */
  g_task_set_check_cancellable(task, FALSE);
  g_task_set_task_data(task, job, job_free);
  g_task_run_in_thread(task, work);
}

SpvChartExportResult *
spv_chart_export_finish(GAsyncResult *result, GError **error) {
  return g_task_propagate_pointer(G_TASK(result), error);
}

char *
spv_chart_export_words(const SpvChartExportResult *result) {
  const char *first = g_ptr_array_index(result->paths, 0);
  g_autofree char *folder = g_path_get_dirname(first);
  g_autofree char *words = spv_path_words(result->paths->len > 1 ? folder : first);

  return g_strdup_printf(ngettext("%u page of the sampler written to %s.",
                                  "%u pages of the sampler written to %s.", result->n_pages),
                         result->n_pages, words);
}
