/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a call fails, and its line of progress. */
#include "config.h"

#include "command/call.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

/* Appends TEXT with each run of line feeds and blanks around them made one blank, so that an error stays one
 * line, and with bytes that are not UTF-8 (a file's name may hold any) shown as U+FFFD. */
static void
append_line(GString *to, const char *text) {
  g_autofree char *valid = g_utf8_make_valid(text, -1);
  g_auto(GStrv) words = g_strsplit_set(valid, "\n\r\t", -1);
  gboolean first = TRUE;
  for (char **word = words; *word; word++) {
    const char *stripped = g_strstrip(*word);
    if (!*stripped)
      continue;
    if (!first)
      g_string_append_c(to, ' ');
    g_string_append(to, stripped);
    first = FALSE;
  }
  g_string_append_c(to, '\n');
}

int
spv_call_fail(SpvCall *call, const char *where, const char *message) {
  g_autofree char *line = where ? g_strdup_printf("%s: %s", where, message) : g_strdup(message);
  g_string_append(call->err, "spolvero-cli: ");
  append_line(call->err, line);
  return SPV_EXIT_FAILED;
}

int
spv_call_misuse(SpvCall *call, const char *verb, const char *message) {
  spv_call_fail(call, NULL, message);
  if (verb)
    g_string_append_printf(call->err, _("Try “spolvero-cli %s --help”."), verb);
  else
    g_string_append(call->err, _("Try “spolvero-cli --help”."));
  g_string_append_c(call->err, '\n');
  return SPV_EXIT_USAGE;
}

void
spv_call_progress(double fraction, gpointer data) {
  SpvCall *call = data;
  int percent = (int) (CLAMP(fraction, 0, 1) * 100);
  if (!call->shows_progress || percent == call->percent)
    return;
  call->percent = percent;
  fprintf(stderr, "\r%3d\u2009%%", percent);
  fflush(stderr);
}

void
spv_call_progress_end(SpvCall *call) {
  if (call->percent < 0)
    return;
  call->percent = -1;
  fputs("\r     \r", stderr);
  fflush(stderr);
}
