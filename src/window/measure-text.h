/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measures as a painter types and reads them: numbers with a decimal point or comma whatever the locale, with
 * or without a unit, their ranges in words, and the step that an arrow key takes. No widgets in here. */
#pragma once

#include "heraldry/measure.h"

typedef enum {
  SPV_MEASURE_TEXT_ERROR_UNREADABLE, /* not a number, or a unit that this measure does not take */
  SPV_MEASURE_TEXT_ERROR_RANGE       /* a number, but not one that the spec allows */
} SpvMeasureTextError;
#define SPV_MEASURE_TEXT_ERROR (spv_measure_text_error_quark())
GQuark spv_measure_text_error_quark(void);

/* Reads TEXT as a value for SPEC (not a CHOICE). UNIT is what a length without a unit is in: SPV_UNIT_MM or
 * SPV_UNIT_RELATIVE (per cent). Blanks around and before the unit are allowed, thin ones too; empty text and
 * "auto" give AUTO. On failure sets ERROR with a sentence that names the range, and leaves VALUE alone. */
gboolean spv_measure_text_parse(const SpvMeasureSpec *spec, const char *text, SpvUnit unit, SpvMeasure *value,
                                GError **error);

/* The number alone, with a point: "0.70" (mm, two decimals, a third where that is a 5), "20" (per cent),
 * "7.5" (degrees), "6" (a count), "" (AUTO). Free with g_free(). */
char *spv_measure_text_number(SpvMeasure value);
/* "mm", "%", "°", "" for counts, "auto" translated. */
const char *spv_measure_text_unit(SpvUnit unit);
/* Number and unit with a thin space between where the unit wants one: "0.70 mm", "20 %", "15°".
 * Free with g_free(). */
char *spv_measure_text_with_unit(SpvMeasure value);
/* "From 0.05 mm to 5.00 mm." for values in UNIT; translated; free with g_free(). */
char *spv_measure_text_range(const SpvMeasureSpec *spec, SpvUnit unit);

/* The lowest and the highest value of SPEC in UNIT; a RELATIVE one as a fraction. */
void spv_measure_text_limits(const SpvMeasureSpec *spec, SpvUnit unit, double *min, double *max);

/* VALUE (not AUTO) moved by STEPS simple steps (0.05 mm, 1 %, 1°, 1) and kept in range. */
SpvMeasure spv_measure_text_step(const SpvMeasureSpec *spec, SpvMeasure value, int steps);

/* The panel's measure, mm, that a relative value of SPEC is a fraction of; 0 where there is none. */
double spv_measure_text_basis(const SpvMeasureSpec *spec, double width, double height);
/* VALUE, a length in MM or RELATIVE, as the same size in UNIT (the other of the two), for a basis of BASIS mm
 * (> 0). */
SpvMeasure spv_measure_text_convert(SpvMeasure value, SpvUnit unit, double basis);
