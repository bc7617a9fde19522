/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/a-scheme.h"

#include <sys/wait.h>
#include <unistd.h>

#include "scheme/scheme-file.h"
#include "window/autosave.h"

typedef struct {
  char *folder;
  SpvSession *session;
  SpvAutosave *autosave;
  char *complaint;
} Fixture;

static void
complain(const char *message, gpointer data) {
  Fixture *f = data;
  g_free(f->complaint);
  f->complaint = g_strdup(message);
}

static int
set_up(void **state) {
  Fixture *f = g_new0(Fixture, 1);
  g_autoptr(SpvScheme) scheme = a_scheme();
  g_autoptr(GFile) origin = g_file_new_for_path("/coast/heron.scheme.json");
  f->folder = a_folder();
  f->session = spv_session_new(scheme, origin);
  f->autosave = spv_autosave_new(f->session, f->folder, complain, f);
  *state = f;
  return 0;
}

static int
tear_down(void **state) {
  Fixture *f = *state;
  g_clear_pointer(&f->autosave, spv_autosave_free);
  g_object_unref(f->session);
  remove_folder(f->folder);
  g_free(f->folder);
  g_free(f->complaint);
  g_free(f);
  return 0;
}

static void
retitle(SpvSession *session, const char *title) {
  g_autoptr(SpvScheme) scheme = spv_scheme_with_title(spv_session_scheme(session), title);
  spv_session_push(session, scheme, "Change title", NULL);
}

/* The title of the scheme that is kept, or NULL; what an earlier program left is listed as nobody holds it.
 */
static char *
kept_title(const char *folder) {
  g_autoptr(GPtrArray) kept = spv_recovery_list(folder);
  if (kept->len == 0)
    return NULL;
  const SpvRecovery *first = g_ptr_array_index(kept, 0);
  g_autoptr(SpvScheme) scheme = spv_scheme_load(first->path, NULL);
  return scheme ? g_strdup(scheme->title) : NULL;
}

static void
nothing_is_kept_while_nothing_is_unsaved(void **state) {
  Fixture *f = *state;
  assert_true(spv_autosave_flush(f->autosave, NULL));
  assert_int_equal(count_files(f->folder), 0);
}

static void
work_is_kept_after_a_pause(void **state) {
  Fixture *f = *state;
  retitle(f->session, "Lantern Company");
  assert_int_equal(count_files(f->folder), 0);
  WAIT_FOR(count_files(f->folder) == 2, SPV_AUTOSAVE_DELAY + 10000);
}

static void
kept_work_says_where_it_belongs(void **state) {
  Fixture *f = *state;
  retitle(f->session, "Lantern Company");
  assert_true(spv_autosave_flush(f->autosave, NULL));
  g_clear_pointer(&f->autosave, spv_autosave_free);

  g_autoptr(GPtrArray) kept = spv_recovery_list(f->folder);
  assert_int_equal(kept->len, 1);
  const SpvRecovery *first = g_ptr_array_index(kept, 0);
  assert_string_equal(first->origin, "/coast/heron.scheme.json");
  g_autoptr(SpvScheme) scheme = spv_scheme_load(first->path, NULL);
  assert_string_equal(scheme->title, "Lantern Company");
  assert_true(ABS(first->time - g_get_real_time() / G_USEC_PER_SEC) < 60);
}

static void
held_work_is_offered_to_nobody_else(void **state) {
  Fixture *f = *state;
  retitle(f->session, "Lantern Company");
  assert_true(spv_autosave_flush(f->autosave, NULL));
  assert_null(kept_title(f->folder));
  g_clear_pointer(&f->autosave, spv_autosave_free);
  g_autofree char *title = kept_title(f->folder);
  assert_string_equal(title, "Lantern Company");
}

static void
undone_or_saved_work_is_kept_no_longer(void **state) {
  Fixture *f = *state;
  retitle(f->session, "Lantern Company");
  assert_true(spv_autosave_flush(f->autosave, NULL));
  assert_int_equal(count_files(f->folder), 2);
  spv_session_undo(f->session);
  assert_int_equal(count_files(f->folder), 0);

  retitle(f->session, "Ashlar Guard");
  assert_true(spv_autosave_flush(f->autosave, NULL));
  assert_int_equal(count_files(f->folder), 2);
  g_autofree char *elsewhere = a_folder();
  g_autofree char *path = g_build_filename(elsewhere, "ashlar.scheme.json", NULL);
  g_autoptr(GFile) file = g_file_new_for_path(path);
  assert_true(spv_session_save(f->session, file, NULL));
  assert_int_equal(count_files(f->folder), 0);
  remove_folder(elsewhere);
}

static void
adopted_work_stays_in_its_place(void **state) {
  Fixture *f = *state;
  retitle(f->session, "Lantern Company");
  assert_true(spv_autosave_flush(f->autosave, NULL));
  g_clear_pointer(&f->autosave, spv_autosave_free);

  g_autoptr(GPtrArray) kept = spv_recovery_list(f->folder);
  SpvRecovery *first = g_ptr_array_steal_index(kept, 0);
  g_autofree char *path = g_strdup(first->path);
  g_autoptr(SpvScheme) scheme = spv_scheme_load(path, NULL);
  spv_session_replace(f->session, scheme, NULL);
  spv_session_mark_unsaved(f->session);
  f->autosave = spv_autosave_new(f->session, f->folder, complain, f);
  spv_autosave_adopt(f->autosave, first);
  retitle(f->session, "Ashlar Guard");
  assert_true(spv_autosave_flush(f->autosave, NULL));
  assert_int_equal(count_files(f->folder), 2);
  g_autoptr(SpvScheme) again = spv_scheme_load(path, NULL);
  assert_string_equal(again->title, "Ashlar Guard");
}

static void
a_program_that_is_killed_leaves_its_work(void **state) {
  Fixture *f = *state;
  pid_t child = fork();
  if (child == 0) {
    g_autoptr(SpvScheme) scheme = a_scheme();
    SpvRecovery *recovery = spv_recovery_new(f->folder, NULL, NULL);
    if (recovery && spv_recovery_write(recovery, scheme, NULL))
      kill(getpid(), SIGKILL);
    _exit(1);
  }
  int status;
  assert_int_equal(waitpid(child, &status, 0), child);
  assert_true(WIFSIGNALED(status));
  g_autofree char *title = kept_title(f->folder);
  assert_string_equal(title, "Heron Ferry Guild");
}

static void
work_that_can_not_be_kept_is_said(void **state) {
  Fixture *f = *state;
  g_clear_pointer(&f->autosave, spv_autosave_free);
  g_autofree char *file = g_build_filename(f->folder, "a-file", NULL);
  assert_true(g_file_set_contents(file, "", 0, NULL));
  f->autosave = spv_autosave_new(f->session, file, complain, f);
  retitle(f->session, "Lantern Company");
  g_autoptr(GError) error = NULL;
  assert_false(spv_autosave_flush(f->autosave, &error));
  assert_true(g_error_matches(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE));
  retitle(f->session, "Ashlar Guard");
  WAIT_FOR(f->complaint != NULL, SPV_AUTOSAVE_DELAY + 10000);
}

static void
discarded_work_is_gone_and_its_like_stays(void **state) {
  Fixture *f = *state;
  g_autoptr(SpvScheme) scheme = a_scheme();
  for (int i = 0; i < 2; i++) {
    g_autoptr(SpvRecovery) recovery = spv_recovery_new(f->folder, NULL, NULL);
    assert_true(spv_recovery_write(recovery, scheme, NULL));
  }
  g_autoptr(GPtrArray) kept = spv_recovery_list(f->folder);
  assert_int_equal(kept->len, 2);
  assert_null(((SpvRecovery *) g_ptr_array_index(kept, 0))->origin);
  spv_recovery_discard(g_ptr_array_steal_index(kept, 0));
  g_clear_pointer(&kept, g_ptr_array_unref);
  kept = spv_recovery_list(f->folder);
  assert_int_equal(kept->len, 1);
}

static void
strange_files_are_left_alone(void **state) {
  Fixture *f = *state;
  static const char *const names[] = { "README", ".x.scheme.json", "lonely.origin" };
  for (gsize i = 0; i < G_N_ELEMENTS(names); i++) {
    g_autofree char *path = g_build_filename(f->folder, names[i], NULL);
    assert_true(g_file_set_contents(path, "", 0, NULL));
  }
  g_autoptr(GPtrArray) kept = spv_recovery_list(f->folder);
  assert_int_equal(kept->len, 0);
  assert_int_equal(count_files(f->folder), 3);
  g_autoptr(GPtrArray) none = spv_recovery_list("/nonexistent-folder");
  assert_int_equal(none->len, 0);
}

int
main(void) {
#define AUTOSAVE(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)
  const struct CMUnitTest tests[] = {
    AUTOSAVE(nothing_is_kept_while_nothing_is_unsaved),  AUTOSAVE(work_is_kept_after_a_pause),
    AUTOSAVE(kept_work_says_where_it_belongs),           AUTOSAVE(held_work_is_offered_to_nobody_else),
    AUTOSAVE(undone_or_saved_work_is_kept_no_longer),    AUTOSAVE(adopted_work_stays_in_its_place),
    AUTOSAVE(a_program_that_is_killed_leaves_its_work),  AUTOSAVE(work_that_can_not_be_kept_is_said),
    AUTOSAVE(discarded_work_is_gone_and_its_like_stays), AUTOSAVE(strange_files_are_left_alone),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
