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
