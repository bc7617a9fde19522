/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the window's own files share. */
#pragma once

#include "window/autosave.h"
#include "window/window.h"

struct _SpvWindow {
  GtkApplicationWindow parent_instance;

  /* From the template. */
  GtkWidget *title_label, *subtitle_label;
  GtkWidget *recent_button, *menu_button, *undo_button, *redo_button;
  GtkWidget *kept_bar, *kept_label;
  GtkWidget *notice_bar, *notice_label;
  GtkWidget *stack, *left_pane, *right_pane;
  GtkWidget *harness_name, *harness_line;
  GtkWidget *canvas, *harness_view, *panel_pane;
  GtkWidget *blazon_entry, *layers_pane, *measures_pane, *tinctures_pane, *findings_pane;

  /* Its own. */
  SpvSession *session;   /* NULL while the window is empty */
  SpvAutosave *autosave; /* likewise */
  GPtrArray *kept;       /* SpvRecovery, still to be offered; or NULL */
  GMenu *edit_menu;      /* undo and redo, which say what they would do */
  GMenu *recent_menu;
};

/* window.c */
/* The settings, or NULL. */
GSettings *spv_window_settings(SpvWindow *window);
/* Says one line that needs no answer, until it is dismissed or NULL follows. */
void spv_window_notice(SpvWindow *window, const char *words);

/* window-actions.c */
void spv_window_add_actions(SpvWindow *window);
/* Sets the switches as the settings remember them. */
void spv_window_restore_switches(SpvWindow *window);
/* The one place that says what can be done now. */
void spv_window_update_actions(SpvWindow *window);

/* window-files.c: the actions of the same names. */
void spv_window_new_scheme(SpvWindow *window);
void spv_window_open(SpvWindow *window);
void spv_window_save(SpvWindow *window);
void spv_window_save_as(SpvWindow *window);
void spv_window_save_as_template(SpvWindow *window);
/* The window of the program that shows FILE, or NULL. */
SpvWindow *spv_window_of_file(SpvWindow *window, GFile *file);
/* Fills the menu of recent files. */
void spv_window_update_recent(SpvWindow *window);
/* Files dropped on the window are opened. */
void spv_window_accept_files(SpvWindow *window);

/* window-sampler.c: likewise. */
void spv_window_export_sampler(SpvWindow *window);

/* window-kept.c: the answers to what the bar offers. */
void spv_window_restore_kept(SpvWindow *window);
void spv_window_discard_kept(SpvWindow *window);
