/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measures as they are typed and shown. */
#include "support/near.h"

#include <locale.h>
#include <string.h>

#include "window/measure-text.h"

static const SpvMeasureSpec depth = { .key = "depth",
                                      .label = "Depth",
                                      .type = SPV_MEASURE_LENGTH,
                                      .basis = SPV_BASIS_WIDTH,
                                      .min = 0.05,
                                      .max = 10 };
static const SpvMeasureSpec shift = { .key = "shift",
                                      .label = "Shift",
                                      .type = SPV_MEASURE_LENGTH,
                                      .basis = SPV_BASIS_HEIGHT,
                                      .min = -10,
                                      .max = 10 };
static const SpvMeasureSpec width = {
  .key = "width", .label = "Width", .type = SPV_MEASURE_LENGTH, .min = 0.5, .max = 500
};
static const SpvMeasureSpec points = {
  .key = "points", .label = "Points", .type = SPV_MEASURE_COUNT, .min = 1, .max = 200
};
static const SpvMeasureSpec lean = {
  .key = "lean", .label = "Lean", .type = SPV_MEASURE_ANGLE, .min = -60, .max = 60
};

typedef struct {
  const SpvMeasureSpec *spec;
  SpvUnit typed_in; /* what a bare number means */
  const char *text;
  SpvUnit unit;
  double value;
} Readable;

static const Readable readables[] = {
  { &depth, SPV_UNIT_MM, "7,5", SPV_UNIT_MM, 7.5 },
  { &depth, SPV_UNIT_MM, "7.5", SPV_UNIT_MM, 7.5 },
  { &depth, SPV_UNIT_MM, " 7.5 mm", SPV_UNIT_MM, 7.5 },
  { &depth, SPV_UNIT_MM, "0,7 mm ", SPV_UNIT_MM, 0.7 },
  { &depth, SPV_UNIT_MM, "0.7MM", SPV_UNIT_MM, 0.7 },
  { &depth, SPV_UNIT_MM, "0.7\u2009mm", SPV_UNIT_MM, 0.7 },
  { &depth, SPV_UNIT_MM, ".5", SPV_UNIT_MM, 0.5 },
  { &depth, SPV_UNIT_MM, "5.", SPV_UNIT_MM, 5 },
  { &depth, SPV_UNIT_MM, "+2", SPV_UNIT_MM, 2 },
  { &depth, SPV_UNIT_MM, "20%", SPV_UNIT_RELATIVE, 0.2 },
  { &depth, SPV_UNIT_MM, "20\u202f%", SPV_UNIT_RELATIVE, 0.2 },
  { &depth, SPV_UNIT_RELATIVE, "12,5", SPV_UNIT_RELATIVE, 0.125 },
  { &depth, SPV_UNIT_RELATIVE, "1 mm", SPV_UNIT_MM, 1 },
  { &depth, SPV_UNIT_AUTO, "1", SPV_UNIT_MM, 1 },
  { &depth, SPV_UNIT_MM, "", SPV_UNIT_AUTO, 0 },
  { &depth, SPV_UNIT_MM, "   ", SPV_UNIT_AUTO, 0 },
  { &depth, SPV_UNIT_MM, "auto", SPV_UNIT_AUTO, 0 },
  { &depth, SPV_UNIT_MM, "0.05", SPV_UNIT_MM, 0.05 },
  { &depth, SPV_UNIT_MM, "10", SPV_UNIT_MM, 10 },
  { &depth, SPV_UNIT_MM, "200%", SPV_UNIT_RELATIVE, 2 },
  { &shift, SPV_UNIT_MM, "-3", SPV_UNIT_MM, -3 },
  { &shift, SPV_UNIT_MM, "\u22123", SPV_UNIT_MM, -3 },
  { &shift, SPV_UNIT_MM, "-20 %", SPV_UNIT_RELATIVE, -0.2 },
  { &points, SPV_UNIT_PLAIN, "6", SPV_UNIT_PLAIN, 6 },
  { &lean, SPV_UNIT_DEGREES, "-7,5", SPV_UNIT_DEGREES, -7.5 },
  { &lean, SPV_UNIT_DEGREES, "15°", SPV_UNIT_DEGREES, 15 },
  { &lean, SPV_UNIT_DEGREES, "15 deg", SPV_UNIT_DEGREES, 15 },
};

static void
reads_a_number_with_point_or_comma_and_its_unit(void **state) {
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(readables); i++) {
    const Readable *row = &readables[i];
    SpvMeasure value = { SPV_UNIT_PLAIN, -1 };
    g_autoptr(GError) error = NULL;
    if (!spv_measure_text_parse(row->spec, row->text, row->typed_in, &value, &error))
      fail_msg("“%s”: %s", row->text, error->message);
    if (value.unit != row->unit)
      fail_msg("“%s” has unit %d, expected %d", row->text, value.unit, row->unit);
    assert_near(value.value, row->value, 1e-12);
  }
}

typedef struct {
  const SpvMeasureSpec *spec;
  const char *text;
  SpvMeasureTextError code;
  const char *message;
} Refused;

static const Refused refused[] = {
  { &depth, "abc", SPV_MEASURE_TEXT_ERROR_UNREADABLE, "Type a number. From 0.05\u2009mm to 10.00\u2009mm." },
  { &depth, "1e400", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &depth, "1.000,5", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &depth, "1 2", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &depth, "-", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &depth, ".", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &depth, "nan", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &depth, "0x10", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &depth, "3 inch", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &depth, "3°", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &width, "20%", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &depth, "-3", SPV_MEASURE_TEXT_ERROR_RANGE, "From 0.05\u2009mm to 10.00\u2009mm." },
  { &depth, "0.04", SPV_MEASURE_TEXT_ERROR_RANGE, NULL },
  { &depth, "10.01", SPV_MEASURE_TEXT_ERROR_RANGE, NULL },
  { &depth, "201%", SPV_MEASURE_TEXT_ERROR_RANGE, "From 0\u2009% to 200\u2009%." },
  { &depth, "99999999999999999999999999999999", SPV_MEASURE_TEXT_ERROR_RANGE, NULL },
  { &points, "6.5", SPV_MEASURE_TEXT_ERROR_RANGE, "A whole number from 1 to 200." },
  { &points, "0", SPV_MEASURE_TEXT_ERROR_RANGE, NULL },
  { &points, "6 mm", SPV_MEASURE_TEXT_ERROR_UNREADABLE, NULL },
  { &lean, "61", SPV_MEASURE_TEXT_ERROR_RANGE, "From -60° to 60°." },
};

static void
refuses_what_it_cannot_take_and_says_the_range(void **state) {
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(refused); i++) {
    const Refused *row = &refused[i];
    SpvMeasure value = { SPV_UNIT_PLAIN, -1 };
    g_autoptr(GError) error = NULL;
    if (spv_measure_text_parse(row->spec, row->text, SPV_UNIT_MM, &value, &error))
      fail_msg("“%s” was read as %g", row->text, value.value);
    if (!g_error_matches(error, SPV_MEASURE_TEXT_ERROR, (int) row->code))
      fail_msg("“%s”: wrong code: %s", row->text, error->message);
    if (row->message)
      assert_string_equal(error->message, row->message);
    assert_near(value.value, -1, 0);
  }
}

/* More digits than any number of the bench has must not overrun anything. */
static void
refuses_a_very_long_number(void **state) {
  g_autofree char *text = g_strnfill(100000, '1');
  SpvMeasure value;

  (void) state;
  assert_false(spv_measure_text_parse(&depth, text, SPV_UNIT_MM, &value, NULL));
}

static void
shows_numbers_with_a_point_and_their_units(void **state) {
  static const struct {
    SpvMeasure value;
    const char *number, *with_unit;
  } rows[] = {
    { { SPV_UNIT_MM, 0.7 }, "0.70", "0.70\u2009mm" },
    { { SPV_UNIT_MM, 0.125 }, "0.125", "0.125\u2009mm" },
    { { SPV_UNIT_MM, 2.652 }, "2.65", "2.65\u2009mm" },
    { { SPV_UNIT_MM, 1.0 / 3 }, "0.33", "0.33\u2009mm" },
    { { SPV_UNIT_MM, 120 }, "120.00", "120.00\u2009mm" },
    { { SPV_UNIT_RELATIVE, 0.2 }, "20", "20\u2009%" },
    { { SPV_UNIT_RELATIVE, 0.125 }, "12.5", "12.5\u2009%" },
    { { SPV_UNIT_RELATIVE, 1.0 / 3 }, "33.33", "33.33\u2009%" },
    { { SPV_UNIT_DEGREES, -7.5 }, "-7.5", "-7.5°" },
    { { SPV_UNIT_DEGREES, -0.001 }, "0", "0°" },
    { { SPV_UNIT_PLAIN, 6 }, "6", "6" },
    { { SPV_UNIT_AUTO, 0 }, "", "auto" },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autofree char *number = spv_measure_text_number(rows[i].value);
    g_autofree char *with_unit = spv_measure_text_with_unit(rows[i].value);
    assert_string_equal(number, rows[i].number);
    assert_string_equal(with_unit, rows[i].with_unit);
  }
}

static void
steps_stay_whole_and_in_range(void **state) {
  SpvMeasure value = { SPV_UNIT_MM, 0.7 };

  (void) state;
  for (int i = 0; i < 100; i++)
    value = spv_measure_text_step(&depth, value, 1);
  assert_true(value.value == 5.7);
  assert_true(spv_measure_text_step(&depth, value, 500).value == 10);
  assert_true(spv_measure_text_step(&depth, value, -500).value == 0.05);
  assert_true(spv_measure_text_step(&depth, (SpvMeasure){ SPV_UNIT_RELATIVE, 0.2 }, 5).value == 0.25);
  assert_true(spv_measure_text_step(&depth, (SpvMeasure){ SPV_UNIT_RELATIVE, 0.02 }, -5).value == 0);
  assert_true(spv_measure_text_step(&points, (SpvMeasure){ SPV_UNIT_PLAIN, 6 }, -1).value == 5);
  assert_true(spv_measure_text_step(&points, (SpvMeasure){ SPV_UNIT_PLAIN, 1 }, -1).value == 1);
  assert_true(spv_measure_text_step(&lean, (SpvMeasure){ SPV_UNIT_DEGREES, 7.5 }, 1).value == 8.5);
}

static void
another_unit_keeps_the_size(void **state) {
  SpvMeasure mm = { SPV_UNIT_MM, 0.85 };
  SpvMeasure relative = spv_measure_text_convert(mm, SPV_UNIT_RELATIVE, 3.4);

  (void) state;
  assert_int_equal(relative.unit, SPV_UNIT_RELATIVE);
  assert_near(relative.value, 0.25, 1e-12);
  assert_near(spv_measure_text_convert(relative, SPV_UNIT_MM, 3.4).value, 0.85, 1e-12);
  assert_near(spv_measure_text_basis(&depth, 3.4, 4.1), 3.4, 0);
  assert_near(spv_measure_text_basis(&shift, 3.4, 4.1), 4.1, 0);
  assert_near(spv_measure_text_basis(&width, 3.4, 4.1), 0, 0);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(reads_a_number_with_point_or_comma_and_its_unit),
    cmocka_unit_test(refuses_what_it_cannot_take_and_says_the_range),
    cmocka_unit_test(refuses_a_very_long_number),
    cmocka_unit_test(shows_numbers_with_a_point_and_their_units),
    cmocka_unit_test(steps_stay_whole_and_in_range),
    cmocka_unit_test(another_unit_keeps_the_size),
  };

  /* In a comma country too: the figures don't follow the locale. */
  setlocale(LC_ALL, "");
  return cmocka_run_group_tests(tests, NULL, NULL);
}
