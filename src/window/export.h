/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The export of sheets as the window does it: what the painter chose, kept in the settings, and the work on a
 * thread of its own. No widgets, so it is tested without a display. */
#pragma once

#include <gio/gio.h>

#include "sheet/sheet.h"

typedef struct {
  char *folder; /* a path */
  const SpvPaper *paper;
  SpvFormat format;
  int dpi; /* PNG only */
  guint content;
  gboolean hatch, date;
  char **panels; /* ids; NULL for every panel with a design */
} SpvExportChoices;

/* What was chosen last, or the presets; SETTINGS may be NULL. Panels are not remembered: they belong
 * to one scheme. */
SpvExportChoices *spv_export_choices_load(GSettings *settings);
/* Remembers CHOICES; does nothing when SETTINGS is NULL. */
void spv_export_choices_store(const SpvExportChoices *choices, GSettings *settings);
SpvExportChoices *spv_export_choices_copy(const SpvExportChoices *choices);
void spv_export_choices_free(SpvExportChoices *choices);

typedef struct {
  GPtrArray *paths; /* char*, what was written */
  guint n_sheets;   /* a PDF holds several in one file */
} SpvExportResult;
void spv_export_result_free(SpvExportResult *result);

typedef struct _SpvExport SpvExport;

/* Starts to export SCHEME. FINISHED is called on this thread when it has ended: with a RESULT, which it
 * takes, or with ERROR. */
SpvExport *spv_export_start(const SpvScheme *scheme, const SpvExportChoices *choices,
                            void (*finished)(SpvExportResult *result, const GError *error, gpointer data),
                            gpointer data);
/* 0 to 1, never falling. */
double spv_export_progress(SpvExport *job);
/* Asks it to stop; FINISHED is called with G_IO_ERROR_CANCELLED, soon. */
void spv_export_cancel(SpvExport *job);
/* Lets go of it. When it still runs it is cancelled, and FINISHED is not called. */
void spv_export_free(SpvExport *job);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvExportChoices, spv_export_choices_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvExport, spv_export_free)
