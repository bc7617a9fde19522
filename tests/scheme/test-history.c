/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Undo and redo, row by row; and random edits, all undone and all done again. */
#include "scheme-test.h"

#include "scheme/history.h"
#include "scheme-edits.h"

#include <string.h>

typedef enum { PUSH, PUSH_SAME, SETTLE, UNDO, REDO, DROP, SAVED, UNSAVED } Step;

typedef struct {
  Step step;
  const char *title; /* PUSH: what the new value is called */
  const char *label, *merge;
  /* after the step */
  const char *present;     /* its title */
  const char *undo, *redo; /* labels, NULL when it can't be done */
  gboolean result;         /* of a step that has one */
  gboolean modified;
} Row;

/* clang-format off */
static const Row plain_rows[] = {
  /* nothing to undo or redo at first */
  { UNDO,      NULL, NULL,  NULL, "0", NULL, NULL, FALSE, FALSE },
  { REDO,      NULL, NULL,  NULL, "0", NULL, NULL, FALSE, FALSE },
  { PUSH_SAME, NULL, "x",   NULL, "0", NULL, NULL, FALSE, FALSE },
  /* there and back */
  { PUSH,      "A",  "a",   NULL, "A", "a",  NULL, TRUE,  TRUE },
  { PUSH,      "B",  "b",   NULL, "B", "b",  NULL, TRUE,  TRUE },
  { PUSH_SAME, NULL, "x",   NULL, "B", "b",  NULL, FALSE, TRUE },
  { UNDO,      NULL, NULL,  NULL, "A", "a",  "b",  TRUE,  TRUE },
  { UNDO,      NULL, NULL,  NULL, "0", NULL, "a",  TRUE,  FALSE },
  { UNDO,      NULL, NULL,  NULL, "0", NULL, "a",  FALSE, FALSE },
  { REDO,      NULL, NULL,  NULL, "A", "a",  "b",  TRUE,  TRUE },
  { REDO,      NULL, NULL,  NULL, "B", "b",  NULL, TRUE,  TRUE },
  { REDO,      NULL, NULL,  NULL, "B", "b",  NULL, FALSE, TRUE },
  /* a new step forgets what could be redone; a step that changes nothing does not */
  { UNDO,      NULL, NULL,  NULL, "A", "a",  "b",  TRUE,  TRUE },
  { PUSH_SAME, NULL, "x",   NULL, "A", "a",  "b",  FALSE, TRUE },
  { PUSH,      "C",  "c",   NULL, "C", "c",  NULL, TRUE,  TRUE },
  { REDO,      NULL, NULL,  NULL, "C", "c",  NULL, FALSE, TRUE },
};

static const Row merge_rows[] = {
  /* a drag is one step */
  { PUSH,   "A", "drag", "k",  "A", "drag", NULL,   TRUE,  TRUE },
  { PUSH,   "B", "drag", "k",  "B", "drag", NULL,   TRUE,  TRUE },
  { PUSH,   "C", "drag", "k",  "C", "drag", NULL,   TRUE,  TRUE },
  { UNDO,   NULL, NULL,  NULL, "0", NULL,   "drag", TRUE,  FALSE },
  { REDO,   NULL, NULL,  NULL, "C", "drag", NULL,   TRUE,  TRUE },
  /* redo has ended it */
  { PUSH,   "D", "drag", "k",  "D", "drag", NULL,   TRUE,  TRUE },
  { UNDO,   NULL, NULL,  NULL, "C", "drag", "drag", TRUE,  TRUE },
  /* undo has, too, and what is pushed after it forgets the rest */
  { PUSH,   "E", "drag", "k",  "E", "drag", NULL,   TRUE,  TRUE },
  { UNDO,   NULL, NULL,  NULL, "C", "drag", "drag", TRUE,  TRUE },
  { REDO,   NULL, NULL,  NULL, "E", "drag", NULL,   TRUE,  TRUE },
  /* another key, no key, and settling end it */
  { PUSH,   "F", "turn", "l",  "F", "turn", NULL,   TRUE,  TRUE },
  { PUSH,   "G", "add",  NULL, "G", "add",  NULL,   TRUE,  TRUE },
  { PUSH,   "H", "add",  NULL, "H", "add",  NULL,   TRUE,  TRUE },
  { UNDO,   NULL, NULL,  NULL, "G", "add",  "add",  TRUE,  TRUE },
  { UNDO,   NULL, NULL,  NULL, "F", "turn", "add",  TRUE,  TRUE },
  { UNDO,   NULL, NULL,  NULL, "E", "drag", "turn", TRUE,  TRUE },
  { PUSH,   "I", "drag", "k",  "I", "drag", NULL,   TRUE,  TRUE },
  { PUSH,   "J", "drag", "k",  "J", "drag", NULL,   TRUE,  TRUE },
  { SETTLE, NULL, NULL,  NULL, "J", "drag", NULL,   TRUE,  TRUE },
  { PUSH,   "K", "drag", "k",  "K", "drag", NULL,   TRUE,  TRUE },
  { UNDO,   NULL, NULL,  NULL, "J", "drag", "drag", TRUE,  TRUE },
  { UNDO,   NULL, NULL,  NULL, "E", "drag", "drag", TRUE,  TRUE },
};

static const Row drop_rows[] = {
  /* nothing to take back at first */
  { DROP,  NULL, NULL,   NULL, "0", NULL,   NULL, FALSE, FALSE },
  /* a drag that is given up leaves no trace, however many joined steps it took */
  { PUSH,  "A",  "a",    NULL, "A", "a",    NULL, TRUE,  TRUE },
  { PUSH,  "B",  "drag", "k",  "B", "drag", NULL, TRUE,  TRUE },
  { PUSH,  "C",  "drag", "k",  "C", "drag", NULL, TRUE,  TRUE },
  { DROP,  NULL, NULL,   NULL, "A", "a",    NULL, TRUE,  TRUE },
  { REDO,  NULL, NULL,   NULL, "A", "a",    NULL, FALSE, TRUE },
  /* the next drag is a step of its own */
  { PUSH,  "D",  "drag", "k",  "D", "drag", NULL, TRUE,  TRUE },
  { UNDO,  NULL, NULL,   NULL, "A", "a",    "drag", TRUE, TRUE },
  /* what could be redone goes as well */
  { DROP,  NULL, NULL,   NULL, "0", NULL,   NULL, TRUE,  FALSE },
  { DROP,  NULL, NULL,   NULL, "0", NULL,   NULL, FALSE, FALSE },
};

static const Row saved_rows[] = {
  { PUSH,    "A",  "a",   NULL, "A", "a",  NULL, TRUE, TRUE },
  { SAVED,   NULL, NULL,  NULL, "A", "a",  NULL, TRUE, FALSE },
  { PUSH,    "B",  "b",   NULL, "B", "b",  NULL, TRUE, TRUE },
  { UNDO,    NULL, NULL,  NULL, "A", "a",  "b",  TRUE, FALSE },
  { UNDO,    NULL, NULL,  NULL, "0", NULL, "a",  TRUE, TRUE },
  { REDO,    NULL, NULL,  NULL, "A", "a",  "b",  TRUE, FALSE },
  { UNDO,    NULL, NULL,  NULL, "0", NULL, "a",  TRUE, TRUE },
  /* what was saved is forgotten: no way back to it */
  { PUSH,    "C",  "c",   NULL, "C", "c",  NULL, TRUE, TRUE },
  { UNDO,    NULL, NULL,  NULL, "0", NULL, "c",  TRUE, TRUE },
  { REDO,    NULL, NULL,  NULL, "C", "c",  NULL, TRUE, TRUE },
  /* saving in the middle of a drag: what was saved stays a step of its own */
  { PUSH,    "D",  "drag", "k", "D", "drag", NULL, TRUE, TRUE },
  { SAVED,   NULL, NULL,  NULL, "D", "drag", NULL, TRUE, FALSE },
  { PUSH,    "E",  "drag", "k", "E", "drag", NULL, TRUE, TRUE },
  { UNDO,    NULL, NULL,  NULL, "D", "drag", "drag", TRUE, FALSE },
  /* the file is gone */
  { UNSAVED, NULL, NULL,  NULL, "D", "drag", "drag", TRUE, TRUE },
  { UNDO,    NULL, NULL,  NULL, "C", "c",  "drag", TRUE, TRUE },
  { REDO,    NULL, NULL,  NULL, "D", "drag", "drag", TRUE, TRUE },
  { SAVED,   NULL, NULL,  NULL, "D", "drag", "drag", TRUE, FALSE },
};
/* clang-format on */

static gboolean
take_step(SpvHistory *history, const Row *row) {
  const SpvScheme *present = spv_history_current(history);
  switch (row->step) {
  case PUSH: {
    g_autoptr(SpvScheme) next = spv_scheme_with_title(present, row->title);
    return spv_history_push(history, next, row->label, row->merge);
  }
  case PUSH_SAME:
    return spv_history_push(history, present, row->label, row->merge);
  case SETTLE:
    spv_history_settle(history);
    return TRUE;
  case UNDO:
    return spv_history_undo(history);
  case REDO:
    return spv_history_redo(history);
  case DROP:
    return spv_history_drop(history);
  case SAVED:
    spv_history_mark_saved(history);
    return TRUE;
  case UNSAVED:
    spv_history_mark_unsaved(history);
    return TRUE;
  }
  return FALSE;
}

static void
run_rows(const Row *rows, guint n) {
  g_autoptr(SpvScheme) first = spv_scheme_new("0", "H");
  g_autoptr(SpvHistory) history = spv_history_new(first);
  for (guint i = 0; i < n; i++) {
    const Row *row = &rows[i];
    gboolean result = take_step(history, row);
    const char *present = spv_history_current(history)->title;
    const char *undo = spv_history_undo_label(history), *redo = spv_history_redo_label(history);
    gboolean modified = spv_history_is_modified(history);
    if (result != row->result || strcmp(present, row->present) != 0 || g_strcmp0(undo, row->undo) != 0 ||
        g_strcmp0(redo, row->redo) != 0 || modified != row->modified)
      fail_msg("row %u: %d %s undo %s redo %s modified %d", i, result, present, undo, redo, modified);
    assert_int_equal(spv_history_can_undo(history), row->undo != NULL);
    assert_int_equal(spv_history_can_redo(history), row->redo != NULL);
  }
}

static void
steps_go_back_and_forth(void **state) {
  (void) state;
  run_rows(plain_rows, G_N_ELEMENTS(plain_rows));
}

static void
steps_of_one_key_are_joined(void **state) {
  (void) state;
  run_rows(merge_rows, G_N_ELEMENTS(merge_rows));
}

static void
a_step_that_is_given_up_leaves_no_trace(void **state) {
  (void) state;
  run_rows(drop_rows, G_N_ELEMENTS(drop_rows));
}

static void
what_the_file_holds_is_known(void **state) {
  (void) state;
  run_rows(saved_rows, G_N_ELEMENTS(saved_rows));
}

static void
only_the_last_five_hundred_steps_are_kept(void **state) {
  (void) state;
  g_autoptr(SpvScheme) first = spv_scheme_new("start", "H");
  g_autoptr(SpvHistory) history = spv_history_new(first);
  for (guint i = 1; i <= SPV_HISTORY_LIMIT + 3; i++) {
    g_autofree char *title = g_strdup_printf("%u", i);
    g_autoptr(SpvScheme) next = spv_scheme_with_title(spv_history_current(history), title);
    assert_true(spv_history_push(history, next, "step", NULL));
  }
  guint undone = 0;
  while (spv_history_undo(history))
    undone++;
  assert_int_equal(undone, SPV_HISTORY_LIMIT);
  assert_string_equal(spv_history_current(history)->title, "3");
  /* What was saved has been forgotten. */
  assert_true(spv_history_is_modified(history));
}

/* A thousand random edits: the texts on the way back are those on the way there. */
static void
random_edits_are_undone_and_redone_byte_for_byte(void **state) {
  (void) state;
  for (guint32 seed = 1; seed <= 10; seed++) {
    g_autoptr(GRand) random = g_rand_new_with_seed(seed);
    g_autoptr(SpvScheme) first = test_load("scheme-full.scheme.json");
    g_autoptr(SpvHistory) history = spv_history_new(first);
    g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func(g_free);
    g_ptr_array_add(texts, spv_scheme_to_text(first, NULL));
    for (guint i = 0; i < 100; i++) {
      g_autoptr(SpvScheme) next = test_random_edit(spv_history_current(history), random);
      if (spv_history_push(history, next, "edit", NULL))
        g_ptr_array_add(texts, spv_scheme_to_text(next, NULL));
    }
    assert_true(texts->len > 60);
    for (guint i = texts->len; i-- > 0;) {
      g_autofree char *text = spv_scheme_to_text(spv_history_current(history), NULL);
      assert_string_equal(text, g_ptr_array_index(texts, i));
      assert_int_equal(spv_history_undo(history), i > 0);
    }
    assert_ptr_equal(spv_history_current(history), first);
    assert_false(spv_history_is_modified(history));
    while (spv_history_redo(history))
      ;
    g_autofree char *last = spv_scheme_to_text(spv_history_current(history), NULL);
    assert_string_equal(last, g_ptr_array_index(texts, texts->len - 1));
    /* Whatever the edits did, the file can be read. */
    g_autoptr(SpvScheme) again = test_parse(last);
    assert_int_equal(again->n_panels, first->n_panels);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(steps_go_back_and_forth),
    cmocka_unit_test(steps_of_one_key_are_joined),
    cmocka_unit_test(a_step_that_is_given_up_leaves_no_trace),
    cmocka_unit_test(what_the_file_holds_is_known),
    cmocka_unit_test(only_the_last_five_hundred_steps_are_kept),
    cmocka_unit_test(random_edits_are_undone_and_redone_byte_for_byte),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
