/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Comparing numbers: cmocka 1.1.5 has floats only. Includes cmocka and what it needs. */
#pragma once

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>

/* Fails, saying both numbers, unless ACTUAL lies within TOLERANCE of EXPECTED. A NaN always fails. */
#define assert_near(actual, expected, tolerance)                                                             \
  do {                                                                                                       \
    double actual_ = (actual), expected_ = (expected), tolerance_ = (tolerance);                             \
    if (!(fabs(actual_ - expected_) <= tolerance_))                                                          \
      fail_msg("%s is %.12g, expected %.12g within %g", #actual, actual_, expected_, tolerance_);            \
  } while (0)

/* How often a test tries at random: N times, a fifth as often where every access is watched, which takes many
 * times as long. */
#ifdef __SANITIZE_ADDRESS__
#define ROUNDS(n) ((n) / 5 + 1)
#else
#define ROUNDS(n) (n)
#endif
