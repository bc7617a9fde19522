/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A thread that waits for signals. */
#define _POSIX_C_SOURCE 200809L /* sigaction, sigwait */

#include "command/interrupt.h"

#include <signal.h>

typedef struct {
  sigset_t signals;
  GCancellable *cancellable;
} Watch;

/* A thread that waits may do anything; a signal handler may do next to nothing, and cancelling
 * takes locks. */
static gpointer
wait_for_signals(gpointer data) {
  Watch *watch = data;
  int signal_number = 0;
  sigwait(&watch->signals, &signal_number);
  g_cancellable_cancel(watch->cancellable);
  sigwait(&watch->signals, &signal_number);
  signal(signal_number, SIG_DFL);
  pthread_sigmask(SIG_UNBLOCK, &watch->signals, NULL);
  raise(signal_number);
  return NULL;
}

void
spv_interrupt_watch(GCancellable *cancellable) {
  const int numbers[] = { SIGINT, SIGTERM };
  Watch *watch = g_new0(Watch, 1);
  sigemptyset(&watch->signals);
  for (gsize i = 0; i < G_N_ELEMENTS(numbers); i++) {
    struct sigaction action;
    if (sigaction(numbers[i], NULL, &action) == 0 && action.sa_handler != SIG_IGN)
      sigaddset(&watch->signals, numbers[i]);
  }
  watch->cancellable = g_object_ref(cancellable);
  pthread_sigmask(SIG_BLOCK, &watch->signals, NULL);
  g_thread_unref(g_thread_new("signals", wait_for_signals, watch));
}
