/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The first interrupt asks, the second insists. Each case runs in a child process, since signals belong to a
 * whole process. */
#define _POSIX_C_SOURCE 200809L

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "command/interrupt.h"

#define PATIENCE 200 /* waits of 10 ms */

/* Runs CASE in a child and gives what waitpid() says of it. */
static int
run_in_child(int (*in_child)(GCancellable *cancellable)) {
  pid_t child = fork();
  assert_true(child >= 0);
  if (child == 0) {
    alarm(10);
    _exit(in_child(g_cancellable_new()));
  }
  int status = 0;
  assert_int_equal(waitpid(child, &status, 0), child);
  return status;
}

static gboolean
is_cancelled_soon(GCancellable *cancellable) {
  for (int i = 0; i < PATIENCE && !g_cancellable_is_cancelled(cancellable); i++)
    g_usleep(10000);
  return g_cancellable_is_cancelled(cancellable);
}

static int
interrupt_once(GCancellable *cancellable) {
  spv_interrupt_watch(cancellable);
  if (g_cancellable_is_cancelled(cancellable))
    return 1;
  kill(getpid(), SIGINT);
  return is_cancelled_soon(cancellable) ? 0 : 2;
}

static int
terminate_once(GCancellable *cancellable) {
  spv_interrupt_watch(cancellable);
  kill(getpid(), SIGTERM);
  return is_cancelled_soon(cancellable) ? 0 : 2;
}

static int
interrupt_twice(GCancellable *cancellable) {
  spv_interrupt_watch(cancellable);
  kill(getpid(), SIGINT);
  if (!is_cancelled_soon(cancellable))
    return 2;
  kill(getpid(), SIGINT);
  g_usleep(5 * G_USEC_PER_SEC);
  return 3;
}

static int
interrupt_while_ignored(GCancellable *cancellable) {
  signal(SIGINT, SIG_IGN);
  spv_interrupt_watch(cancellable);
  kill(getpid(), SIGINT);
  kill(getpid(), SIGINT);
  g_usleep(100000);
  return g_cancellable_is_cancelled(cancellable) ? 1 : 0;
}

static void
the_first_signal_cancels(void **state) {
  (void) state;
  int status = run_in_child(interrupt_once);
  assert_true(WIFEXITED(status) && WEXITSTATUS(status) == 0);
  status = run_in_child(terminate_once);
  assert_true(WIFEXITED(status) && WEXITSTATUS(status) == 0);
}

static void
the_second_signal_ends_the_process(void **state) {
  (void) state;
  int status = run_in_child(interrupt_twice);
  assert_true(WIFSIGNALED(status));
  assert_int_equal(WTERMSIG(status), SIGINT);
}

static void
an_ignored_signal_stays_ignored(void **state) {
  (void) state;
  int status = run_in_child(interrupt_while_ignored);
  assert_true(WIFEXITED(status) && WEXITSTATUS(status) == 0);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(the_first_signal_cancels),
    cmocka_unit_test(the_second_signal_ends_the_process),
    cmocka_unit_test(an_ignored_signal_stays_ignored),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
