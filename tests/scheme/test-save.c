/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A file that is replaced holds the old bytes or the new, whole, whatever happens. */
#define _DEFAULT_SOURCE /* setegid, seteuid, fork, symlink, usleep */

#include "scheme-test.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "scheme/save.h"

static int
make_folder(void **state) {
  *state = test_new_folder();
  return 0;
}

static int
remove_folder(void **state) {
  test_remove_folder(*state);
  return 0;
}

static gboolean
save_text(const char *path, const char *text, GError **error) {
  SpvSave *save = spv_save_begin(path, error);
  if (save == NULL)
    return FALSE;
  if (!spv_save_write(save, text, strlen(text), error)) {
    spv_save_abandon(save);
    return FALSE;
  }
  return spv_save_commit(save, error);
}

static void
assert_holds(const char *path, const char *expected) {
  g_autofree char *text = test_read(path);
  assert_string_equal(text, expected);
}

/* The save fails with MESSAGE after the path, and the folder has N entries after. */
static void
assert_refused(const char *folder, const char *path, const char *message, guint n) {
  GError *error = NULL;
  g_autofree char *expected = g_strdup_printf("%s: could not be saved: %s", path, message);
  assert_false(save_text(path, "new", &error));
  assert_string_equal(error->message, expected);
  assert_int_equal(error->domain, SPV_SCHEME_ERROR);
  assert_int_equal(error->code, SPV_SCHEME_ERROR_WRITE);
  assert_int_equal(test_count_entries(folder), n);
  g_error_free(error);
}

static mode_t
mode_of(const char *path) {
  struct stat status;
  assert_int_equal(stat(path, &status), 0);
  return status.st_mode & 07777;
}

static void
a_new_file_follows_the_umask(void **state) {
  g_autofree char *path = g_build_filename(*state, "new", NULL);
  mode_t old = umask(027);
  assert_true(save_text(path, "one", NULL));
  umask(old);
  assert_holds(path, "one");
  assert_int_equal(mode_of(path), 0640);
  assert_int_equal(test_count_entries(*state), 1);
}

static void
a_replaced_file_keeps_its_mode(void **state) {
  static const mode_t modes[] = { 0600, 0644, 0666, 0755 };
  g_autofree char *path = g_build_filename(*state, "old", NULL);
  for (guint i = 0; i < G_N_ELEMENTS(modes); i++) {
    assert_true(save_text(path, "one", NULL));
    assert_int_equal(chmod(path, modes[i]), 0);
    assert_true(save_text(path, "two", NULL));
    assert_holds(path, "two");
    assert_int_equal(mode_of(path), modes[i]);
  }
  assert_int_equal(test_count_entries(*state), 1);
}

static void
links_stay_links(void **state) {
  g_autofree char *target = g_build_filename(*state, "target", NULL);
  g_autofree char *link_path = g_build_filename(*state, "link", NULL);
  g_autofree char *second = g_build_filename(*state, "second", NULL);
  assert_int_equal(symlink("target", link_path), 0);
  assert_int_equal(symlink(link_path, second), 0);
  /* First leading nowhere, then to a file. */
  assert_true(save_text(second, "one", NULL));
  assert_holds(target, "one");
  assert_true(save_text(second, "two", NULL));
  assert_holds(target, "two");
  assert_true(g_file_test(link_path, G_FILE_TEST_IS_SYMLINK));
  assert_true(g_file_test(second, G_FILE_TEST_IS_SYMLINK));
  assert_false(g_file_test(target, G_FILE_TEST_IS_SYMLINK));
  assert_int_equal(test_count_entries(*state), 3);
}

static void
links_in_a_circle_are_refused(void **state) {
  g_autofree char *path = g_build_filename(*state, "loop", NULL);
  assert_int_equal(symlink("loop", path), 0);
  assert_refused(*state, path, "Too many levels of symbolic links", 1);
}

static void
what_is_no_file_is_refused(void **state) {
  g_autofree char *folder = g_build_filename(*state, "folder", NULL);
  g_autofree char *pipe_path = g_build_filename(*state, "pipe", NULL);
  g_autofree char *lost = g_build_filename(*state, "nowhere", "file", NULL);
  g_autofree char *below = g_build_filename(*state, "pipe", "file", NULL);
  assert_int_equal(g_mkdir(folder, 0755), 0);
  assert_int_equal(mkfifo(pipe_path, 0644), 0);
  assert_refused(*state, folder, "this is a folder; give a file name", 2);
  assert_refused(*state, pipe_path, "this is not an ordinary file; give another name", 2);
  assert_refused(*state, lost, "its folder does not exist; make it first (No such file or directory)", 2);
  assert_refused(*state, below, "its folder does not exist; make it first (Not a directory)", 2);
}

/* As somebody who is not the superuser, whom permissions would not stop. */
static void
without_permission_nothing_is_written(void **state) {
  g_autofree char *path = g_build_filename(*state, "file", NULL);
  assert_true(save_text(path, "old", NULL));
  gboolean is_root = geteuid() == 0;
  if (is_root) {
    assert_int_equal(chown(*state, 65534, 65534), 0);
    assert_int_equal(chown(path, 65534, 65534), 0);
    assert_int_equal(seteuid(65534), 0);
  }
  assert_int_equal(chmod(*state, 0555), 0);
  assert_refused(*state, path, "writing is not allowed there; save it in another folder (Permission denied)",
                 1);
  assert_int_equal(chmod(*state, 0755), 0);
  assert_int_equal(chmod(path, 0444), 0);
  assert_refused(*state, path, "the file is read-only; save under another name", 1);
  if (is_root)
    assert_int_equal(seteuid(0), 0);
  assert_holds(path, "old");
}

static void
a_long_name_fits_and_a_longer_one_is_refused(void **state) {
  g_autofree char *name = g_strnfill(255, 'n');
  g_autofree char *path = g_build_filename(*state, name, NULL);
  assert_true(save_text(path, "one", NULL));
  assert_holds(path, "one");
  g_autofree char *longer = g_strconcat(path, "n", NULL);
  assert_refused(*state, longer, "File name too long", 1);
}

static void
an_abandoned_save_leaves_nothing(void **state) {
  g_autofree char *path = g_build_filename(*state, "file", NULL);
  assert_true(save_text(path, "old", NULL));
  SpvSave *save = spv_save_begin(path, NULL);
  assert_true(spv_save_write(save, "new", 3, NULL));
  assert_int_equal(test_count_entries(*state), 2);
  spv_save_abandon(save);
  assert_holds(path, "old");
  assert_int_equal(test_count_entries(*state), 1);
}

/* A folder took the name in the meantime: the renaming fails. */
static void
a_failing_rename_leaves_nothing(void **state) {
  GError *error = NULL;
  g_autofree char *path = g_build_filename(*state, "file", NULL);
  SpvSave *save = spv_save_begin(path, NULL);
  assert_true(spv_save_write(save, "new", 3, NULL));
  assert_int_equal(g_mkdir(path, 0755), 0);
  assert_false(spv_save_commit(save, &error));
  g_autofree char *expected = g_strdup_printf("%s: could not be saved: Is a directory", path);
  assert_string_equal(error->message, expected);
  g_error_free(error);
  assert_int_equal(test_count_entries(*state), 1);
}

/* A disk that takes so many bytes and no more, by the process's limit on a file's size. */
static void
set_room(rlim_t bytes) {
  struct rlimit limit;
  assert_int_equal(getrlimit(RLIMIT_FSIZE, &limit), 0);
  limit.rlim_cur = bytes;
  assert_int_equal(setrlimit(RLIMIT_FSIZE, &limit), 0);
}

static void
a_full_disk_leaves_the_old_file_whole(void **state) {
  g_autofree char *path = g_build_filename(*state, "file.scheme.json", NULL);
  g_autoptr(SpvScheme) before = test_load("scheme-small.scheme.json");
  g_autoptr(SpvScheme) after = test_load("scheme-full.scheme.json");
  gsize length;
  g_autofree char *old = spv_scheme_to_text(before, NULL);
  g_autofree char *whole = spv_scheme_to_text(after, &length);
  assert_true(spv_scheme_save(before, path, NULL));
  signal(SIGXFSZ, SIG_IGN);
  for (gsize room = 0; room <= length; room += room + 97 < length ? 97 : 1) {
    GError *error = NULL;
    set_room(room);
    gboolean saved = spv_scheme_save(after, path, &error);
    set_room(RLIM_INFINITY);
    assert_int_equal(saved, room == length);
    assert_int_equal(test_count_entries(*state), 1);
    if (saved)
      break;
    g_autofree char *expected = g_strdup_printf(
        "%s: could not be saved: there is no room left; free some and save again (File too large)", path);
    assert_string_equal(error->message, expected);
    g_error_free(error);
    assert_holds(path, old);
  }
  assert_holds(path, whole);
  signal(SIGXFSZ, SIG_DFL);
}

static void
the_first_failure_comes_back_every_time(void **state) {
  GError *first = NULL, *second = NULL, *last = NULL;
  g_autofree char *path = g_build_filename(*state, "file", NULL);
  signal(SIGXFSZ, SIG_IGN);
  set_room(2);
  SpvSave *save = spv_save_begin(path, NULL);
  assert_false(spv_save_write(save, "new", 3, &first));
  set_room(RLIM_INFINITY);
  assert_false(spv_save_write(save, "x", 1, &second));
  assert_false(spv_save_commit(save, &last));
  assert_string_equal(first->message, second->message);
  assert_string_equal(first->message, last->message);
  g_error_free(first);
  g_error_free(second);
  g_error_free(last);
  assert_int_equal(test_count_entries(*state), 0);
  signal(SIGXFSZ, SIG_DFL);
}

/* What could not be read again is not written: here, a layer whose tincture the scheme lacks. */
static void
an_unreadable_scheme_is_not_saved(void **state) {
  GError *error = NULL;
  g_autofree char *path = g_build_filename(*state, "file", NULL);
  assert_true(save_text(path, "old", NULL));
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autoptr(SpvLayer) layer = spv_layer_with_tincture(scheme->panels[0]->layers[0], 0, "murrey");
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(scheme->panels[0], 0, layer);
  g_autoptr(SpvScheme) wrong = spv_scheme_with_panel(scheme, 0, panel);
  assert_false(spv_scheme_save(wrong, path, &error));
  assert_non_null(strstr(error->message, "there is no tincture “murrey”"));
  g_error_free(error);
  assert_holds(path, "old");
}

G_GNUC_NORETURN static void
save_in_turns(const char *path, const SpvScheme *a, const SpvScheme *b, int started) {
  if (write(started, "s", 1) != 1)
    _exit(1);
  for (;;)
    if (!spv_scheme_save(a, path, NULL) || !spv_scheme_save(b, path, NULL))
      _exit(1);
}

/* Kills a child that saves without a pause, after a time of its own each round, so that the blow falls on
 * every step in the end. */
static void
killed_while_saving_leaves_one_or_the_other(void **state) {
  g_autofree char *path = g_build_filename(*state, "file.scheme.json", NULL);
  g_autoptr(SpvScheme) a = test_load("scheme-full.scheme.json");
  g_autoptr(SpvScheme) b = test_load("scheme-small.scheme.json");
  g_autofree char *text_a = spv_scheme_to_text(a, NULL);
  g_autofree char *text_b = spv_scheme_to_text(b, NULL);
  g_autoptr(GRand) random = g_rand_new_with_seed(31);
  guint n_a = 0, n_b = 0, n_unfinished = 0;
  gint64 before = g_get_monotonic_time();
  for (guint i = 0; i < 5; i++)
    assert_true(spv_scheme_save(b, path, NULL) && spv_scheme_save(a, path, NULL));
  gint32 pair = (gint32) ((g_get_monotonic_time() - before) / 5) + 1;
  /* On a fast or a busy machine the blow may fall on one side for long: more rounds, and longer waits, until
   * every step was hit. */
  for (guint i = 0; i < 100 || (i < 3000 && (n_a == 0 || n_b == 0 || n_unfinished == 0)); i++) {
    int started[2], status;
    char byte;
    assert_int_equal(pipe(started), 0);
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0)
      save_in_turns(path, i % 2 == 0 ? a : b, i % 2 == 0 ? b : a, started[1]);
    assert_int_equal(read(started[0], &byte, 1), 1);
    usleep((guint) g_rand_int_range(random, 0, (gint32) (2 + i / 100) * pair));
    assert_int_equal(kill(child, SIGKILL), 0);
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_true(WIFSIGNALED(status));
    close(started[0]);
    close(started[1]);

    g_autofree char *text = test_read(path);
    n_a += strcmp(text, text_a) == 0;
    n_b += strcmp(text, text_b) == 0;
    assert_int_equal(n_a + n_b, i + 1);
    n_unfinished += test_count_entries(*state) > 1 + n_unfinished ? 1 : 0;
  }
  /* The blows fell in the middle of saving, and on both sides of the renaming. */
  if (n_a == 0 || n_b == 0 || n_unfinished == 0)
    fail_msg("%u old, %u new, %u unfinished", n_a, n_b, n_unfinished);
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, make_folder, remove_folder)

int
main(void) {
  const struct CMUnitTest tests[] = {
    TEST(a_new_file_follows_the_umask),
    TEST(a_replaced_file_keeps_its_mode),
    TEST(links_stay_links),
    TEST(links_in_a_circle_are_refused),
    TEST(what_is_no_file_is_refused),
    TEST(without_permission_nothing_is_written),
    TEST(a_long_name_fits_and_a_longer_one_is_refused),
    TEST(an_abandoned_save_leaves_nothing),
    TEST(a_failing_rename_leaves_nothing),
    TEST(a_full_disk_leaves_the_old_file_whole),
    TEST(the_first_failure_comes_back_every_time),
    TEST(an_unreadable_scheme_is_not_saved),
    TEST(killed_while_saving_leaves_one_or_the_other),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
