/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of words that could stand at the cursor of a text view. It never takes the focus: the view goes on
 * being typed into, and hands it the keys that move in the list. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPV_TYPE_WORD_COMPLETION (spv_word_completion_get_type())
G_DECLARE_FINAL_TYPE(SpvWordCompletion, spv_word_completion, SPV, WORD_COMPLETION, GtkPopover)

/* Signal: "chosen" (string): the painter took a word. */

/* For VIEW, as a child of PARENT, which lays out its children by a layout manager, has VIEW in it, and must
 * let go of the list when it is disposed of. */
SpvWordCompletion *spv_word_completion_new(GtkTextView *view, GtkWidget *parent);

/* Offers WORDS (NULL-terminated) at the cursor; none puts the list away. */
void spv_word_completion_offer(SpvWordCompletion *completion, const char *const *words);
gboolean spv_word_completion_is_open(SpvWordCompletion *completion);
/* A key for the list while it is open: Up, Down, Tab, Enter once a word was moved to, Escape. Returns whether
 * it was one. */
gboolean spv_word_completion_take_key(SpvWordCompletion *completion, guint keyval);

G_END_DECLS
