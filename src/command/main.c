/* SPDX-License-Identifier: GPL-3.0-or-later */
/* spolvero-cli: sets the locale and hands over to the verbs. */
#include "command/command.h"

int
main(int argc, char **argv) {
  SpvCommandContext context = { NULL, NULL, NULL };
  return spv_command_run(&context, argc, argv);
}
