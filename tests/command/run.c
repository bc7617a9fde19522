/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/run.h"

#include <glib/gstdio.h>

SpvRun *
spv_run_with(const char *const *arguments, GCancellable *cancellable) {
  g_autoptr(GPtrArray) argv = g_ptr_array_new();
  g_ptr_array_add(argv, (gpointer) "spolvero-cli");
  for (; *arguments; arguments++)
    g_ptr_array_add(argv, (gpointer) *arguments);
  int argc = (int) argv->len;
  g_ptr_array_add(argv, NULL);

  SpvRun *run = g_new0(SpvRun, 1);
  run->out = g_string_new(NULL);
  run->err = g_string_new(NULL);
  SpvCommandContext context = { run->out, run->err, cancellable };
  run->status = spv_command_run(&context, argc, (char **) argv->pdata);
  return run;
}

SpvRun *
spv_run(const char *first, ...) {
  g_autoptr(GPtrArray) arguments = g_ptr_array_new();
  va_list rest;
  va_start(rest, first);
  for (const char *argument = first; argument; argument = va_arg(rest, const char *))
    g_ptr_array_add(arguments, (gpointer) argument);
  va_end(rest);
  g_ptr_array_add(arguments, NULL);
  return spv_run_with((const char *const *) arguments->pdata, NULL);
}

void
spv_run_free(SpvRun *run) {
  g_string_free(run->out, TRUE);
  g_string_free(run->err, TRUE);
  g_free(run);
}

char *
spv_run_folder(void) {
  return g_dir_make_tmp("spolvero-XXXXXX", NULL);
}

void
spv_run_folder_remove(const char *folder) {
  GDir *dir = g_dir_open(folder, 0, NULL);
  for (const char *name = dir ? g_dir_read_name(dir) : NULL; name; name = g_dir_read_name(dir)) {
    g_autofree char *path = g_build_filename(folder, name, NULL);
    if (g_file_test(path, G_FILE_TEST_IS_DIR) && !g_file_test(path, G_FILE_TEST_IS_SYMLINK))
      spv_run_folder_remove(path);
    else
      g_unlink(path);
  }
  g_clear_pointer(&dir, g_dir_close);
  g_rmdir(folder);
}
