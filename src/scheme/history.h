/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Undo and redo: the list of scheme values, with a label for each step. */
#pragma once

#include "scheme/scheme.h"

typedef struct _SpvHistory SpvHistory;

/* The most steps that can be undone; older ones are forgotten. */
#define SPV_HISTORY_LIMIT 500

/* A history that stands at SCHEME, as saved. */
SpvHistory *spv_history_new(const SpvScheme *scheme);
void spv_history_free(SpvHistory *history);

/* The scheme of now, owned by the history. */
const SpvScheme *spv_history_current(const SpvHistory *history);

/* Makes SCHEME the present, and forgets what could be redone. Nothing happens when SCHEME is the present
 * already. LABEL says what was done ("Change depth"). A step with the same non-NULL MERGE key as the one
 * before it, with no spv_history_settle() between, joins it: a drag is one step. Returns whether anything
 * changed. */
gboolean spv_history_push(SpvHistory *history, const SpvScheme *scheme, const char *label, const char *merge);
/* Ends a run of joined steps: the drag is over, the field was left. */
void spv_history_settle(SpvHistory *history);

gboolean spv_history_can_undo(const SpvHistory *history);
gboolean spv_history_can_redo(const SpvHistory *history);
/* What undo or redo would do, or NULL. */
const char *spv_history_undo_label(const SpvHistory *history);
const char *spv_history_redo_label(const SpvHistory *history);
/* FALSE when there is nothing to undo or redo. */
gboolean spv_history_undo(SpvHistory *history);
gboolean spv_history_redo(SpvHistory *history);
/* Takes the last step back as if it had never been taken: nothing is left to redo. FALSE when there is none.
 */
gboolean spv_history_drop(SpvHistory *history);

/* The present is what the file holds. */
void spv_history_mark_saved(SpvHistory *history);
/* No file holds the present, nor will undo reach one that does. */
void spv_history_mark_unsaved(SpvHistory *history);
/* Whether the present differs from what the file holds; undoing back to it clears this. */
gboolean spv_history_is_modified(const SpvHistory *history);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvHistory, spv_history_free)
