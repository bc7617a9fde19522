/* SPDX-License-Identifier: GPL-3.0-or-later */
/* spolvero: the window. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

#include "window/application.h"

int
main(int argc, char **argv) {
  setlocale(LC_ALL, "");
  /* A program run from where it was built finds its translations there. */
  const char *locale_dir = g_getenv("SPV_LOCALE_DIR");
  bindtextdomain(GETTEXT_PACKAGE, locale_dir ? locale_dir : SPV_LOCALE_DIR);
  bind_textdomain_codeset(GETTEXT_PACKAGE, "UTF-8");
  textdomain(GETTEXT_PACKAGE); /* ngettext() asks the default domain, _() the one of the library */
  g_autoptr(SpvApplication) application = spv_application_new();
  return g_application_run(G_APPLICATION(application), argc, argv);
}
