/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Undo as a list of values and a place in it. */
#include "scheme/history.h"

/* A value that was once the present, and the step that led to it. */
typedef struct {
  SpvScheme *scheme;
  char *label; /* NULL for the first */
  char *merge; /* NULL: never joined */
} Entry;

struct _SpvHistory {
  GPtrArray *entries; /* Entry, oldest first; never empty */
  guint present;      /* index into entries */
  gboolean open;      /* the step to the present may still be joined */
  SpvScheme *saved;   /* what the file holds; NULL when no file does */
};

static Entry *
entry_new(const SpvScheme *scheme, const char *label, const char *merge) {
  Entry *entry = g_new(Entry, 1);
  *entry = (Entry){ spv_scheme_ref(scheme), g_strdup(label), g_strdup(merge) };
  return entry;
}

static void
entry_free(Entry *entry) {
  spv_scheme_unref(entry->scheme);
  g_free(entry->label);
  g_free(entry->merge);
  g_free(entry);
}

static Entry *
entry_at(const SpvHistory *history, guint index) {
  return g_ptr_array_index(history->entries, index);
}

SpvHistory *
spv_history_new(const SpvScheme *scheme) {
  SpvHistory *history = g_new0(SpvHistory, 1);
  history->entries = g_ptr_array_new_with_free_func((GDestroyNotify) entry_free);
  g_ptr_array_add(history->entries, entry_new(scheme, NULL, NULL));
  history->saved = spv_scheme_ref(scheme);
  return history;
}

void
spv_history_free(SpvHistory *history) {
  if (history == NULL)
    return;
  g_ptr_array_unref(history->entries);
  spv_scheme_unref(history->saved);
  g_free(history);
}

const SpvScheme *
spv_history_current(const SpvHistory *history) {
  return entry_at(history, history->present)->scheme;
}

static void
forget_redo(SpvHistory *history) {
  guint kept = history->present + 1;
  if (history->entries->len > kept)
    g_ptr_array_remove_range(history->entries, kept, history->entries->len - kept);
}

gboolean
spv_history_push(SpvHistory *history, const SpvScheme *scheme, const char *label, const char *merge) {
  if (scheme == spv_history_current(history))
    return FALSE;
  forget_redo(history);

  Entry *last = entry_at(history, history->present);
  if (history->open && merge != NULL && g_strcmp0(last->merge, merge) == 0) {
    SpvScheme *old = last->scheme;
    last->scheme = spv_scheme_ref(scheme);
    spv_scheme_unref(old);
    return TRUE;
  }

  g_ptr_array_add(history->entries, entry_new(scheme, label, merge));
  if (history->entries->len > SPV_HISTORY_LIMIT + 1)
    g_ptr_array_remove_index(history->entries, 0);
  history->present = history->entries->len - 1;
  history->open = TRUE;
  return TRUE;
}

void
spv_history_settle(SpvHistory *history) {
  history->open = FALSE;
}

gboolean
spv_history_can_undo(const SpvHistory *history) {
  return history->present > 0;
}

gboolean
spv_history_can_redo(const SpvHistory *history) {
  return history->present + 1 < history->entries->len;
}

const char *
spv_history_undo_label(const SpvHistory *history) {
  return spv_history_can_undo(history) ? entry_at(history, history->present)->label : NULL;
}

const char *
spv_history_redo_label(const SpvHistory *history) {
  return spv_history_can_redo(history) ? entry_at(history, history->present + 1)->label : NULL;
}

gboolean
spv_history_undo(SpvHistory *history) {
  if (!spv_history_can_undo(history))
    return FALSE;
  history->present--;
  spv_history_settle(history);
  return TRUE;
}

gboolean
spv_history_redo(SpvHistory *history) {
  if (!spv_history_can_redo(history))
    return FALSE;
  history->present++;
  spv_history_settle(history);
  return TRUE;
}

gboolean
spv_history_drop(SpvHistory *history) {
  if (!spv_history_undo(history))
    return FALSE;
  forget_redo(history);
  return TRUE;
}

void
spv_history_mark_saved(SpvHistory *history) {
  SpvScheme *old = history->saved;
  history->saved = spv_scheme_ref(spv_history_current(history));
  spv_scheme_unref(old);
  /* Undo must be able to come back to what the file holds, so nothing joins the step that led to it. */
  spv_history_settle(history);
}

void
spv_history_mark_unsaved(SpvHistory *history) {
  g_clear_pointer(&history->saved, spv_scheme_unref);
}

gboolean
spv_history_is_modified(const SpvHistory *history) {
  return spv_history_current(history) != history->saved;
}
