/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/path-words.h"

#include <string.h>

char *
spv_path_words(const char *path) {
  const char *home = g_get_home_dir();
  gsize length = strlen(home);
  g_autofree char *shown = g_filename_display_name(path);
  if (g_str_has_prefix(path, home) && path[length] == G_DIR_SEPARATOR)
    return g_strconcat("~", shown + length, NULL);
  return g_steal_pointer(&shown);
}
