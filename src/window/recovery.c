/* SPDX-License-Identifier: GPL-3.0-or-later */
/* flock() and O_CLOEXEC are beyond plain C17. */
#define _DEFAULT_SOURCE
#include "config.h"

#include "window/recovery.h"

#include <errno.h>
#include <fcntl.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "scheme/scheme-file.h"

#define SCHEME_SUFFIX ".scheme.json"
#define ORIGIN_SUFFIX ".origin"

/* A file without its partner is a write in progress, or what a crash in the middle of one left: after this
 * long, in seconds, it is the latter. */
#define ORPHAN_AGE 60

/* The longest path that is believed. */
#define MAX_ORIGIN 16384

char *
spv_recovery_folder(void) {
  return g_build_filename(g_get_user_state_dir(), "spolvero", "recovery", NULL);
}

/* Opens and locks the file at PATH: the descriptor, or -1 with errno set (EWOULDBLOCK: somebody holds it). */
static int
claim(const char *path) {
  int fd = g_open(path, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (fd < 0)
    return -1;
  if (flock(fd, LOCK_EX | LOCK_NB) == 0)
    return fd;
  int reason = errno;
  close(fd);
  errno = reason;
  return -1;
}

static gboolean
write_whole(int fd, const char *text) {
  gsize left = strlen(text);
  while (left > 0) {
    gssize written = write(fd, text, left);
    if (written < 0 && errno == EINTR)
      continue;
    if (written <= 0)
      return FALSE;
    text += written;
    left -= (gsize) written;
  }
  return fsync(fd) == 0;
}

static SpvRecovery *
recovery_at(const char *folder, const char *id) {
  SpvRecovery *recovery = g_new0(SpvRecovery, 1);
  g_autofree char *scheme_name = g_strconcat(id, SCHEME_SUFFIX, NULL);
  g_autofree char *origin_name = g_strconcat(id, ORIGIN_SUFFIX, NULL);
  recovery->path = g_build_filename(folder, scheme_name, NULL);
  recovery->origin_path = g_build_filename(folder, origin_name, NULL);
  recovery->lock = -1;
  return recovery;
}

static void
set_write_error(GError **error, const char *path, int reason) {
  g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE,
              _("Unsaved work could not be kept in “%s”: %s. Save the scheme to a file."), path,
              g_strerror(reason));
}

SpvRecovery *
spv_recovery_new(const char *folder, const char *origin, GError **error) {
  if (g_mkdir_with_parents(folder, 0700) != 0) {
    set_write_error(error, folder, errno);
    return NULL;
  }
  g_autofree char *id = g_uuid_string_random();
  g_autoptr(SpvRecovery) recovery = recovery_at(folder, id);
  recovery->origin = g_strdup(origin);
  recovery->lock = claim(recovery->origin_path);
  if (recovery->lock < 0 || !write_whole(recovery->lock, origin ? origin : "")) {
    set_write_error(error, folder, errno);
    g_unlink(recovery->origin_path);
    return NULL;
  }
  return g_steal_pointer(&recovery);
}

gboolean
spv_recovery_write(SpvRecovery *recovery, const SpvScheme *scheme, GError **error) {
  if (!spv_scheme_save(scheme, recovery->path, error))
    return FALSE;
  recovery->time = g_get_real_time() / G_USEC_PER_SEC;
  return TRUE;
}

void
spv_recovery_remove(SpvRecovery *recovery) {
  g_unlink(recovery->path);
  g_unlink(recovery->origin_path);
  spv_recovery_free(recovery);
}

void
spv_recovery_discard(SpvRecovery *recovery) {
  g_autoptr(GFile) file = g_file_new_for_path(recovery->path);
  g_file_trash(file, NULL, NULL);
  /* Where the trash took it there is nothing left to remove. */
  spv_recovery_remove(recovery);
}

void
spv_recovery_free(SpvRecovery *recovery) {
  if (recovery->lock >= 0)
    close(recovery->lock);
  g_free(recovery->path);
  g_free(recovery->origin);
  g_free(recovery->origin_path);
  g_free(recovery);
}

/* Fills in the origin of a claimed RECOVERY. */
static void
read_origin(SpvRecovery *recovery) {
  g_autofree char *text = g_malloc0(MAX_ORIGIN + 1);
  gssize length = read(recovery->lock, text, MAX_ORIGIN);
  if (length > 0 && text[0] == G_DIR_SEPARATOR)
    recovery->origin = g_strdup(text);
}

/* The kept work called ID when nobody holds it. */
static SpvRecovery *
take(const char *folder, const char *id) {
  g_autoptr(SpvRecovery) recovery = recovery_at(folder, id);
  GStatBuf status;
  if (g_stat(recovery->path, &status) != 0 || !S_ISREG(status.st_mode))
    return NULL;
  recovery->time = status.st_mtime;
  recovery->lock = claim(recovery->origin_path);
  if (recovery->lock < 0)
    return NULL;
  read_origin(recovery);
  return g_steal_pointer(&recovery);
}

static void
remove_orphan(const char *folder, const char *id) {
  g_autoptr(SpvRecovery) recovery = recovery_at(folder, id);
  GStatBuf status;
  if (g_file_test(recovery->path, G_FILE_TEST_EXISTS) || g_stat(recovery->origin_path, &status) != 0 ||
      g_get_real_time() / G_USEC_PER_SEC - status.st_mtime < ORPHAN_AGE)
    return;
  recovery->lock = claim(recovery->origin_path);
  if (recovery->lock >= 0)
    g_unlink(recovery->origin_path);
}

static int
newest_first(gconstpointer a, gconstpointer b) {
  const SpvRecovery *x = *(SpvRecovery *const *) a, *y = *(SpvRecovery *const *) b;
  if (x->time != y->time)
    return x->time > y->time ? -1 : 1;
  return strcmp(x->path, y->path);
}

GPtrArray *
spv_recovery_list(const char *folder) {
  GPtrArray *list = g_ptr_array_new_with_free_func((GDestroyNotify) spv_recovery_free);
  g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
  const char *name;
  while (dir && (name = g_dir_read_name(dir))) {
    /* A hidden name is a save that a crash cut short. */
    if (name[0] == '.')
      continue;
    if (g_str_has_suffix(name, SCHEME_SUFFIX)) {
      g_autofree char *id = g_strndup(name, strlen(name) - strlen(SCHEME_SUFFIX));
      SpvRecovery *recovery = take(folder, id);
      if (recovery)
        g_ptr_array_add(list, recovery);
    } else if (g_str_has_suffix(name, ORIGIN_SUFFIX)) {
      g_autofree char *id = g_strndup(name, strlen(name) - strlen(ORIGIN_SUFFIX));
      remove_orphan(folder, id);
    }
  }
  g_ptr_array_sort(list, newest_first);
  return list;
}
