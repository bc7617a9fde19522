/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every dialog that asks for a file or a name, or that says something: all in one place, so that a later
 * toolkit's ways can replace these in one place. Each is modal to PARENT, answers later, and never when
 * PARENT is gone. */
#pragma once

#include <gtk/gtk.h>

/* The media type of a scheme, also in the list of recent files. */
#define SPV_SCHEME_MIME "application/vnd.spolvero.scheme+json"
#define SPV_SCHEME_SUFFIX ".scheme.json"

/* Not called when the painter thinks better of it. */
typedef void (*SpvFileFunc)(GFile *file, gpointer data);
typedef void (*SpvNameFunc)(const char *name, gpointer data);

/* FOLDER, where the chooser starts, may be NULL in each. */
void spv_dialog_open_scheme(GtkWindow *parent, GFile *folder, SpvFileFunc chosen, gpointer data);
/* NAME is offered as the file's name. The chosen file ends in SPV_SCHEME_SUFFIX, and replacing one has been
 * agreed to. */
void spv_dialog_save_scheme(GtkWindow *parent, GFile *folder, const char *name, SpvFileFunc chosen,
                            gpointer data);
/* Likewise; the file ends in a format's suffix: .pdf unless another was typed. */
void spv_dialog_save_sampler(GtkWindow *parent, GFile *folder, const char *name, SpvFileFunc chosen,
                             gpointer data);
/* An SVG file. */
void spv_dialog_open_drawing(GtkWindow *parent, SpvFileFunc chosen, gpointer data);
void spv_dialog_choose_folder(GtkWindow *parent, GFile *folder, SpvFileFunc chosen, gpointer data);

/* Asks for a name, never empty: HEADING, a line of DETAIL, an entry that holds NAME, and a button ACCEPT. */
void spv_dialog_ask_name(GtkWindow *parent, const char *heading, const char *detail, const char *name,
                         const char *accept, SpvNameFunc named, gpointer data);

/* Says what happened, and shows DETAIL whole: it can be selected and copied. */
void spv_dialog_message(GtkWindow *parent, const char *heading, const char *detail);

void spv_dialog_about(GtkWindow *parent);
