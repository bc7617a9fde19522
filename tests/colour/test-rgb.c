/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Screen colours: reading, writing, luminance and contrast. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include <math.h>
#include <string.h>

#include "colour/rgb.h"

static void
reads_six_digits_in_either_case(void **state) {
  SpvRgb colour = { 0, 0, 0 };

  (void) state;
  assert_true(spv_rgb_parse("#1e90Ff", &colour));
  assert_int_equal(colour.red, 0x1e);
  assert_int_equal(colour.green, 0x90);
  assert_int_equal(colour.blue, 0xff);
}

static void
refuses_all_else_and_leaves_the_colour(void **state) {
  static const char *const bad[] = { "",         "#",       "1e90ff",     "#1e90f",  "#1e90ff0", "#1e90fg",
                                     "#1e 0ff",  "# 1e90f", "#+1e90f",    "#-1-1-1", "#0x1e90",  "#1e90ff ",
                                     " #1e90ff", "#١٢٣",    "rgb(1,2,3)", "red",     NULL };
  SpvRgb colour = { 1, 2, 3 };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(bad); i++)
    assert_false(spv_rgb_parse(bad[i], &colour));
  assert_true(spv_rgb_equal(colour, (SpvRgb){ 1, 2, 3 }));
}

static void
writes_what_it_reads(void **state) {
  (void) state;
  for (guint i = 0; i < 256; i++) {
    SpvRgb colour = { (guint8) i, (guint8) (255 - i), (guint8) (i * 7) };
    SpvRgb back = { 0, 0, 0 };
    g_autofree char *text = spv_rgb_to_string(colour);

    assert_int_equal(strlen(text), 7);
    assert_true(spv_rgb_parse(text, &back));
    assert_true(spv_rgb_equal(colour, back));
  }
  g_autofree char *text = spv_rgb_to_string((SpvRgb){ 0xAB, 0x0C, 0x00 });
  assert_string_equal(text, "#ab0c00");
}

static void
equal_needs_every_channel(void **state) {
  SpvRgb base = { 10, 20, 30 };

  (void) state;
  assert_true(spv_rgb_equal(base, (SpvRgb){ 10, 20, 30 }));
  assert_false(spv_rgb_equal(base, (SpvRgb){ 11, 20, 30 }));
  assert_false(spv_rgb_equal(base, (SpvRgb){ 10, 21, 30 }));
  assert_false(spv_rgb_equal(base, (SpvRgb){ 10, 20, 31 }));
}

static void
luminance_weighs_linear_light(void **state) {
  /* W3C, WCAG 2.2, "relative luminance": 0.2126, 0.7152 and 0.0722 are those of the three primaries. */
  static const struct {
    SpvRgb colour;
    double luminance;
  } worked[] = {
    { { 0, 0, 0 }, 0 },
    { { 255, 255, 255 }, 1 },
    { { 255, 0, 0 }, 0.2126 },
    { { 0, 255, 0 }, 0.7152 },
    { { 0, 0, 255 }, 0.0722 },
    { { 255, 255, 0 }, 0.9278 },
    /* On the straight part: 10 / 255 / 12.92. */
    { { 10, 10, 10 }, 10 / 255.0 / 12.92 },
    /* Grey 128 has L* = 53.5850 (IEC 61966-2-1 white; computed, and the same from LittleCMS); CIE 1976:
       Y = ((L* + 16) / 116)³. */
    { { 128, 128, 128 }, 0.215861 },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(worked); i++)
    assert_true(fabs(spv_rgb_luminance(worked[i].colour) - worked[i].luminance) < 1e-6);
}

static void
contrast_gives_the_worked_ratios(void **state) {
  /* W3C, WCAG 2.2, "contrast ratio"; the figures are computed from its formula. The pair 767676 and 777777
     brackets its 4.5, 949494 its 3. */
  static const struct {
    const char *a, *b;
    double ratio;
  } worked[] = {
    { "#000000", "#ffffff", 21 },     { "#767676", "#ffffff", 4.5422 }, { "#777777", "#ffffff", 4.4781 },
    { "#949494", "#ffffff", 3.0335 }, { "#ff0000", "#ffffff", 3.9985 }, { "#0000ff", "#ffffff", 8.5925 },
    { "#ffff00", "#0000ff", 8.0016 }, { "#808080", "#000000", 5.3172 }, { "#3a5f0b", "#3a5f0b", 1 },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(worked); i++) {
    SpvRgb a, b;

    assert_true(spv_rgb_parse(worked[i].a, &a));
    assert_true(spv_rgb_parse(worked[i].b, &b));
    assert_true(fabs(spv_rgb_contrast(a, b) - worked[i].ratio) < 5e-5);
    assert_true(spv_rgb_contrast(a, b) == spv_rgb_contrast(b, a));
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(reads_six_digits_in_either_case),
    cmocka_unit_test(refuses_all_else_and_leaves_the_colour),
    cmocka_unit_test(writes_what_it_reads),
    cmocka_unit_test(equal_needs_every_channel),
    cmocka_unit_test(luminance_weighs_linear_light),
    cmocka_unit_test(contrast_gives_the_worked_ratios),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
