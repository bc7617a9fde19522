/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window/export.h"

/* Progress goes from thread to thread as whole ten-thousandths. */
#define PROGRESS_STEPS 10000

struct _SpvExport {
  void (*finished)(SpvExportResult *result, const GError *error, gpointer data); /* NULL once let go of */
  gpointer data;
  GCancellable *cancellable;
  SpvScheme *scheme;
  SpvExportChoices *choices;
  int progress; /* atomic */
  gatomicrefcount refs;
};

SpvExportChoices *
spv_export_choices_load(GSettings *settings) {
  SpvSheetOptions preset = spv_sheet_options_preset();
  SpvExportChoices *choices = g_new0(SpvExportChoices, 1);
  choices->paper = preset.paper;
  choices->format = SPV_FORMAT_PNG;
  choices->dpi = SPV_DPI_PRESET;
  choices->content = preset.content;
  if (settings) {
    g_autofree char *paper = g_settings_get_string(settings, "export-paper");
    g_autofree char *format = g_settings_get_string(settings, "export-format");
    const SpvPaper *known = spv_paper_from_key(paper);
    choices->paper = known ? known : preset.paper;
    spv_format_from_key(format, &choices->format);
    choices->dpi = g_settings_get_int(settings, "export-dpi");
    choices->content = (guint) g_settings_get_int(settings, "export-content");
    choices->hatch = g_settings_get_boolean(settings, "export-hatch");
    choices->date = g_settings_get_boolean(settings, "export-date");
    choices->folder = g_settings_get_string(settings, "export-folder");
  }
  if (!choices->folder || !g_file_test(choices->folder, G_FILE_TEST_IS_DIR)) {
    const char *documents = g_get_user_special_dir(G_USER_DIRECTORY_DOCUMENTS);
    g_free(choices->folder);
    choices->folder = g_strdup(documents ? documents : g_get_home_dir());
  }
  return choices;
}

void
spv_export_choices_store(const SpvExportChoices *choices, GSettings *settings) {
  if (!settings)
    return;
  g_settings_set_string(settings, "export-paper", choices->paper->key);
  g_settings_set_string(settings, "export-format", spv_format_key(choices->format));
  g_settings_set_int(settings, "export-dpi", choices->dpi);
  g_settings_set_int(settings, "export-content", (int) choices->content);
  g_settings_set_boolean(settings, "export-hatch", choices->hatch);
  g_settings_set_boolean(settings, "export-date", choices->date);
  g_settings_set_string(settings, "export-folder", choices->folder);
}

SpvExportChoices *
spv_export_choices_copy(const SpvExportChoices *choices) {
  SpvExportChoices *copy = g_memdup2(choices, sizeof *choices);
  copy->folder = g_strdup(choices->folder);
  copy->panels = g_strdupv(choices->panels);
  return copy;
}

void
spv_export_choices_free(SpvExportChoices *choices) {
  g_free(choices->folder);
  g_strfreev(choices->panels);
  g_free(choices);
}

void
spv_export_result_free(SpvExportResult *result) {
  g_ptr_array_unref(result->paths);
  g_free(result);
}

static void
job_unref(gpointer data) {
  SpvExport *job = data;
  if (!g_atomic_ref_count_dec(&job->refs))
    return;
  g_object_unref(job->cancellable);
  spv_scheme_unref(job->scheme);
  spv_export_choices_free(job->choices);
  g_free(job);
}

static void
report(double fraction, gpointer data) {
  SpvExport *job = data;
  g_atomic_int_set(&job->progress, (int) (CLAMP(fraction, 0, 1) * PROGRESS_STEPS));
}

/* Runs on the worker's thread. */
static void
work(GTask *task, gpointer source, gpointer data, GCancellable *cancellable) {
  (void) source;
  SpvExport *job = data;
  const SpvExportChoices *choices = job->choices;
  g_autoptr(GDateTime) now = g_date_time_new_now_local();
  g_autofree char *date = choices->date ? g_date_time_format(now, "%Y-%m-%d") : NULL;
  SpvSheetOptions options = spv_sheet_options_preset();
  options.paper = choices->paper;
  options.content = choices->content;
  options.hatch = choices->hatch;
  options.date = date;
  options.panels = (const char *const *) choices->panels;

  GError *error = NULL;
  g_autoptr(SpvSheets) sheets = spv_sheets_new(job->scheme, &options, cancellable, &error);
  GPtrArray *paths = sheets ? spv_sheets_export(sheets, choices->folder, choices->format, choices->dpi,
                                                cancellable, report, job, &error)
                            : NULL;
  if (!paths) {
    g_task_return_error(task, error);
    return;
  }
  SpvExportResult *result = g_new0(SpvExportResult, 1);
  result->paths = paths;
  result->n_sheets = spv_sheets_count(sheets);
  g_task_return_pointer(task, result, (GDestroyNotify) spv_export_result_free);
}

static void
done(GObject *source, GAsyncResult *async, gpointer data) {
  (void) source;
  (void) data;
  SpvExport *job = g_task_get_task_data(G_TASK(async));
  g_autoptr(GError) error = NULL;
  SpvExportResult *result = g_task_propagate_pointer(G_TASK(async), &error);
  if (job->finished)
    job->finished(result, error, job->data);
  else if (result)
    spv_export_result_free(result);
}

SpvExport *
spv_export_start(const SpvScheme *scheme, const SpvExportChoices *choices,
                 void (*finished)(SpvExportResult *result, const GError *error, gpointer data),
                 gpointer data) {
  SpvExport *job = g_new0(SpvExport, 1);
  g_atomic_ref_count_init(&job->refs);
  job->finished = finished;
  job->data = data;
  job->cancellable = g_cancellable_new();
  job->scheme = spv_scheme_ref(scheme);
  job->choices = spv_export_choices_copy(choices);

  g_autoptr(GTask) task = g_task_new(NULL, job->cancellable, done, NULL);
  /* What was written before a late cancel is said rather than hidden. */
  g_task_set_check_cancellable(task, FALSE);
  g_atomic_ref_count_inc(&job->refs);
  g_task_set_task_data(task, job, job_unref);
  g_task_run_in_thread(task, work);
  return job;
}

double
spv_export_progress(SpvExport *job) {
  return g_atomic_int_get(&job->progress) / (double) PROGRESS_STEPS;
}

void
spv_export_cancel(SpvExport *job) {
  g_cancellable_cancel(job->cancellable);
}

void
spv_export_free(SpvExport *job) {
  job->finished = NULL;
  g_cancellable_cancel(job->cancellable);
  job_unref(job);
}
