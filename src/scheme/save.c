/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Write beside, flush, rename, flush the folder. */
#define _POSIX_C_SOURCE 200809L /* readlink, fchown, O_CLOEXEC */

#include "config.h"

#include "scheme/save.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "scheme/scheme.h"

struct _SpvSave {
  char *shown;     /* the path as messages show it */
  char *target;    /* what is replaced, links followed */
  char *folder;    /* where it lies */
  char *temporary; /* the new file, in the same folder */
  int fd;
  GError *failure; /* the first one, or NULL */
};

#define MAX_LINKS 40    /* as many as Linux follows */
#define MAX_ATTEMPTS 64 /* at a name that is free */

static void
set_failure(GError **error, const char *shown, int number) {
  const char *what = g_strerror(number);
  switch (number) {
  case ENOSPC:
  case EDQUOT:
  case EFBIG:
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE,
                _("%s: could not be saved: there is no room left; free some and save again (%s)"), shown,
                what);
    break;
  case EACCES:
  case EPERM:
  case EROFS:
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE,
                _("%s: could not be saved: writing is not allowed there; save it in another folder (%s)"),
                shown, what);
    break;
  case ENOENT:
  case ENOTDIR:
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE,
                _("%s: could not be saved: its folder does not exist; make it first (%s)"), shown, what);
    break;
  default:
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE, _("%s: could not be saved: %s"), shown,
                what);
  }
}

/* PATH with links in its last part followed, also when the last of them leads nowhere yet; NULL, with errno
 * set, when they go round in a circle. */
static char *
follow_links(const char *path) {
  g_autofree char *at = g_strdup(path);
  for (guint i = 0; i < MAX_LINKS; i++) {
    char link[4096];
    gssize length = readlink(at, link, sizeof link - 1);
    if (length < 0)
      return g_steal_pointer(&at);
    link[length] = '\0';
    g_autofree char *folder = g_path_get_dirname(at);
    char *next = g_path_is_absolute(link) ? g_strdup(link) : g_build_filename(folder, link, NULL);
    g_free(at);
    at = next;
  }
  errno = ELOOP;
  return NULL;
}

/* The mode of the file at TARGET, or -1 when there is none. FALSE, with ERROR set, when TARGET can't be
 * replaced. */
static gboolean
look_at_target(const char *target, const char *shown, struct stat *old, gboolean *exists, GError **error) {
  *exists = stat(target, old) == 0;
  if (!*exists) {
    if (errno == ENOENT)
      return TRUE;
    set_failure(error, shown, errno);
    return FALSE;
  }
  if (S_ISDIR(old->st_mode)) {
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE,
                _("%s: could not be saved: this is a folder; give a file name"), shown);
    return FALSE;
  }
  if (!S_ISREG(old->st_mode)) {
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE,
                _("%s: could not be saved: this is not an ordinary file; give another name"), shown);
    return FALSE;
  }
  if (faccessat(AT_FDCWD, target, W_OK, AT_EACCESS) != 0) {
    g_set_error(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE,
                _("%s: could not be saved: the file is read-only; save under another name"), shown);
    return FALSE;
  }
  return TRUE;
}

/* Makes a new hidden file in the folder. Its name is short, whatever the target's is, so that it always fits,
 * and differs between processes that share their random numbers (a fork) and from what a killed one left

 * * behind. */
static gboolean
open_temporary(SpvSave *save, gboolean keep_private) {
  for (guint i = 0; i < MAX_ATTEMPTS; i++) {
    g_autofree char *name = g_strdup_printf(".spolvero-%d-%08x.tmp", (int) getpid(), g_random_int());
    g_autofree char *path = g_build_filename(save->folder, name, NULL);
    save->fd = open(path, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, keep_private ? 0600 : 0666);
    if (save->fd >= 0) {
      save->temporary = g_steal_pointer(&path);
      return TRUE;
    }
    if (errno != EEXIST)
      return FALSE;
  }
  return FALSE;
}

SpvSave *
spv_save_begin(const char *path, GError **error) {
  g_autofree char *shown = g_filename_display_name(path);
  g_autofree char *target = follow_links(path);
  if (target == NULL) {
    set_failure(error, shown, errno);
    return NULL;
  }
  struct stat old;
  gboolean exists;
  if (!look_at_target(target, shown, &old, &exists, error))
    return NULL;

  SpvSave *save = g_new0(SpvSave, 1);
  save->folder = g_path_get_dirname(target);
  save->shown = g_steal_pointer(&shown);
  save->target = g_steal_pointer(&target);
  save->fd = -1;
  if (!open_temporary(save, exists)) {
    set_failure(error, save->shown, errno);
    spv_save_abandon(save);
    return NULL;
  }
  if (exists) {
    /* Best effort: only the superuser can give a file back to its owner. */
    G_GNUC_UNUSED int ignored = fchown(save->fd, old.st_uid, old.st_gid);
    if (fchmod(save->fd, old.st_mode & 07777) != 0) {
      set_failure(error, save->shown, errno);
      spv_save_abandon(save);
      return NULL;
    }
  }
  return save;
}

static void
keep_failure(SpvSave *save, int number) {
  if (save->failure == NULL)
    set_failure(&save->failure, save->shown, number);
}

static gboolean
report(const SpvSave *save, GError **error) {
  if (save->failure == NULL)
    return TRUE;
  if (error != NULL)
    *error = g_error_copy(save->failure);
  return FALSE;
}

gboolean
spv_save_write(SpvSave *save, const void *bytes, gsize length, GError **error) {
  const char *rest = bytes;
  while (save->failure == NULL && length > 0) {
    gssize written = write(save->fd, rest, length);
    if (written < 0 && errno == EINTR)
      continue;
    if (written < 0) {
      keep_failure(save, errno);
      break;
    }
    rest += written;
    length -= (gsize) written;
  }
  return report(save, error);
}

/* Makes the new name last through a power cut. Some file systems can't flush a folder, and need not. */
static void
flush_folder(SpvSave *save) {
  int fd = open(save->folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0)
    return;
  if (fsync(fd) != 0 && errno != EINVAL && errno != ENOTSUP && errno != EROFS)
    keep_failure(save, errno);
  close(fd);
}

gboolean
spv_save_commit(SpvSave *save, GError **error) {
  if (save->failure == NULL && fsync(save->fd) != 0)
    keep_failure(save, errno);
  int fd = save->fd;
  save->fd = -1;
  if (close(fd) != 0)
    keep_failure(save, errno);
  if (save->failure == NULL && rename(save->temporary, save->target) != 0)
    keep_failure(save, errno);
  if (save->failure == NULL) {
    g_clear_pointer(&save->temporary, g_free);
    flush_folder(save);
  }
  gboolean done = report(save, error);
  spv_save_abandon(save);
  return done;
}

void
spv_save_abandon(SpvSave *save) {
  if (save == NULL)
    return;
  if (save->fd >= 0)
    close(save->fd);
  if (save->temporary != NULL)
    unlink(save->temporary);
  g_clear_error(&save->failure);
  g_free(save->temporary);
  g_free(save->folder);
  g_free(save->target);
  g_free(save->shown);
  g_free(save);
}
