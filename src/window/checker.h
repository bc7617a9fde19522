/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs the checks behind the painter's back: a scheme is handed over, and a moment later its findings are
 * there. A panel that has not changed keeps the findings it had. Lives on one thread, works on another. */
#pragma once

#include "check/check.h"

typedef struct _SpvChecker SpvChecker;

/* CHANGED is called on the thread that made the checker, each time findings have come in. */
SpvChecker *spv_checker_new(void (*changed)(gpointer data), gpointer data);
/* Stops what runs; CHANGED is not called any more. */
void spv_checker_free(SpvChecker *checker);

/* Asks for the findings of SCHEME. Requests that follow within DELAY ms (0: at once) replace one another, so
 * that a drag costs one check at its end. */
void spv_checker_request(SpvChecker *checker, const SpvScheme *scheme, guint delay);

/* The findings (SpvFinding) that came in last, worst panels first in the harness's order; never NULL. */
GPtrArray *spv_checker_findings(SpvChecker *checker);
/* Whether they belong to the scheme that was asked for last. */
gboolean spv_checker_is_current(SpvChecker *checker);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvChecker, spv_checker_free)
