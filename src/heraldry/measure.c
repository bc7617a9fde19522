/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measures: which values a spec allows, and what they come to on a panel. */
#include "heraldry/measure.h"

#include <math.h>

gboolean
spv_measure_equal(SpvMeasure a, SpvMeasure b) {
  return a.unit == b.unit && (a.unit == SPV_UNIT_AUTO || a.value == b.value);
}

static gboolean
is_whole_within(double value, double min, double max) {
  return value == floor(value) && value >= min && value <= max;
}

static double
n_choices(const SpvMeasureSpec *spec) {
  guint n = 0;
  while (spec->choices && spec->choices[n])
    n++;
  return n;
}

gboolean
spv_measure_is_valid(const SpvMeasureSpec *spec, SpvMeasure value) {
  if (value.unit == SPV_UNIT_AUTO)
    return TRUE;
  if (!isfinite(value.value))
    return FALSE;

  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return value.unit == SPV_UNIT_PLAIN && is_whole_within(value.value, spec->min, spec->max);
  case SPV_MEASURE_CHOICE:
    return value.unit == SPV_UNIT_PLAIN && is_whole_within(value.value, 0, n_choices(spec) - 1);
  case SPV_MEASURE_ANGLE:
    return value.unit == SPV_UNIT_DEGREES && value.value >= spec->min && value.value <= spec->max;
  case SPV_MEASURE_LENGTH:
    if (value.unit == SPV_UNIT_RELATIVE)
      return value.value >= (spec->min < 0 ? -SPV_RELATIVE_MAX : 0) && value.value <= SPV_RELATIVE_MAX;
    return value.unit == SPV_UNIT_MM && value.value >= spec->min && value.value <= spec->max;
  }
  return FALSE;
}

static double
basis_length(SpvBasis basis, double width, double height) {
  switch (basis) {
  case SPV_BASIS_WIDTH:
    return width;
  case SPV_BASIS_HEIGHT:
    return height;
  case SPV_BASIS_SMALLER:
    return MIN(width, height);
  case SPV_BASIS_NONE:
    return 1;
  }
  return 1;
}

double
spv_measure_resolve(const SpvMeasureSpec *spec, SpvMeasure value, double width, double height,
                    double fallback) {
  SpvMeasure given = value.unit == SPV_UNIT_AUTO ? spec->preset : value;

  switch (given.unit) {
  case SPV_UNIT_AUTO:
    return fallback;
  case SPV_UNIT_PLAIN:
  case SPV_UNIT_MM:
    return given.value;
  case SPV_UNIT_RELATIVE:
    return given.value * basis_length(spec->basis, width, height);
  case SPV_UNIT_DEGREES:
    return given.value * G_PI / 180;
  }
  return fallback;
}
