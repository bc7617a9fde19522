/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the tests of this room share: their data, a scheme to start from, and folders to write in. */
#pragma once

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>

#include <glib/gstdio.h>

#include "scheme/scheme-file.h"

/* The path of a file in tests/data/. Free with g_free(). */
static inline char *
test_data(const char *name) {
  return g_build_filename(g_getenv("SPV_TEST_SOURCE_DIR"), "tests", "data", name, NULL);
}

static inline char *
test_read(const char *path) {
  char *text = NULL;
  if (!g_file_get_contents(path, &text, NULL, NULL))
    fail_msg("%s could not be read", path);
  return text;
}

static inline SpvScheme *
test_parse(const char *text) {
  GError *error = NULL;
  SpvScheme *scheme = spv_scheme_parse(text, strlen(text), "test", &error);
  if (scheme == NULL)
    fail_msg("%s", error->message);
  return scheme;
}

static inline SpvScheme *
test_load(const char *name) {
  GError *error = NULL;
  g_autofree char *path = test_data(name);
  SpvScheme *scheme = spv_scheme_load(path, &error);
  if (scheme == NULL)
    fail_msg("%s", error->message);
  return scheme;
}

/* A new folder. Free with test_remove_folder(). */
static inline char *
test_new_folder(void) {
  char *folder = g_dir_make_tmp("spolvero-test-XXXXXX", NULL);
  assert_non_null(folder);
  return folder;
}

/* How many entries FOLDER has, hidden ones too. */
static inline guint
test_count_entries(const char *folder) {
  g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
  guint n = 0;
  while (dir != NULL && g_dir_read_name(dir) != NULL)
    n++;
  return n;
}

/* Removes a folder and the files in it, and frees its name. */
static inline void
test_remove_folder(char *folder) {
  g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name(dir)) != NULL) {
    g_autofree char *path = g_build_filename(folder, name, NULL);
    if (g_remove(path) != 0)
      g_rmdir(path);
  }
  g_rmdir(folder);
  g_free(folder);
}
