/* SPDX-License-Identifier: GPL-3.0-or-later */
/* spolvero: the window. */
#include "window/application.h"

int
main(int argc, char **argv) {
  g_autoptr(SpvApplication) application = spv_application_new();
  return g_application_run(G_APPLICATION(application), argc, argv);
}
