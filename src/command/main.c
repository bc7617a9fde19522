/* SPDX-License-Identifier: GPL-3.0-or-later */
/* spolvero-cli: sets the locale and hands over to the verbs. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <signal.h>

#include "command/command.h"
#include "command/interrupt.h"

int
main(int argc, char **argv) {
  setlocale(LC_ALL, "");
  /* A program run from where it was built finds its translations there. */
  const char *locale_dir = g_getenv("SPV_LOCALE_DIR");
  bindtextdomain(GETTEXT_PACKAGE, locale_dir ? locale_dir : SPV_LOCALE_DIR);
  bind_textdomain_codeset(GETTEXT_PACKAGE, "UTF-8");
  textdomain(GETTEXT_PACKAGE);
  signal(SIGPIPE, SIG_DFL); /* `spolvero-cli guide FILE | head` ends quietly, whoever started it */

  g_autoptr(GCancellable) cancellable = g_cancellable_new();
  spv_interrupt_watch(cancellable);
  SpvCommandContext context = { NULL, NULL, cancellable };
  return spv_command_run(&context, argc, argv);
}
