/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Signals that ask the program to stop. */
#pragma once

#include <gio/gio.h>

/* From now on the first SIGINT or SIGTERM cancels CANCELLABLE, and a second one ends the process as if nobody
 * had listened. A signal that the process was started to ignore stays ignored. Call it before any other
 * thread starts: they must all leave these signals to the one that waits for them. */
void spv_interrupt_watch(GCancellable *cancellable);
