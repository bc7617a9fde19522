/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The engraver's hatches, measured in the bitmap: directions, pitch, and that they keep in step. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include <string.h>

#include "scene.h"

#define SIZE 400
#define PX 10.0 /* px a mm, at true size: a line is 1.3 px thick, 9 px from the next */

/* Angles of the lines in degrees, anticlockwise from the level as the viewer sees them. Fox-Davies, A
 * Complete Guide to Heraldry (1909), pp. 76-77; Elvin, A Dictionary of Heraldry (1889); Manual of Heraldry,
 * 5th ed. Tenné as Fox-Davies and Elvin have it. */
static const struct {
  SpvHatch hatch;
  int n;
  double angles[2];
} lines[] = {
  { SPV_HATCH_GULES, 1, { 90 } },         { SPV_HATCH_AZURE, 1, { 0 } },    { SPV_HATCH_SABLE, 2, { 0, 90 } },
  { SPV_HATCH_VERT, 1, { -45 } },         { SPV_HATCH_PURPURE, 1, { 45 } }, { SPV_HATCH_TENNE, 2, { 45, 0 } },
  { SPV_HATCH_SANGUINE, 2, { -45, 45 } },
};

static cairo_t *
hatched(SpvHatch hatch, double paper_mm) {
  cairo_t *cr = bitmap_new(SIZE, SIZE, PX * paper_mm, SIZE / 2.0, 3);

  cairo_rectangle(cr, -SIZE, -SIZE, 2 * SIZE, 2 * SIZE);
  spv_draw_hatch(cr, hatch, paper_mm);
  return cr;
}

/* Weighs the direction of every edge in the bitmap, by degrees from 0 to 179. The line runs across the
 * gradient; y is turned up, as the viewer's angle has it. */
static void
weigh_directions(cairo_t *cr, double weight[180]) {
  double total = 0;

  memset(weight, 0, 180 * sizeof *weight);
  for (int y = 1; y < SIZE - 1; y++) {
    for (int x = 1; x < SIZE - 1; x++) {
      double gx = bitmap_ink(cr, x + 1, y) - bitmap_ink(cr, x - 1, y);
      double gy = -(bitmap_ink(cr, x, y + 1) - bitmap_ink(cr, x, y - 1));
      double size = hypot(gx, gy), angle = atan2(gy, gx) * 180 / G_PI + 90;

      if (size < 0.1)
        continue;
      weight[((int) lround(angle) % 180 + 180) % 180] += size;
      total += size;
    }
  }
  for (int i = 0; i < 180 && total > 0; i++)
    weight[i] /= total;
}

static double
share_near(const double weight[180], double angle) {
  double share = 0;

  for (int i = -6; i <= 6; i++)
    share += weight[(((int) angle + i) % 180 + 180) % 180];
  return share;
}

static void
test_directions(void **state) {
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(lines); i++) {
    cairo_t *cr = hatched(lines[i].hatch, 1);
    double weight[180], all = 0;

    weigh_directions(cr, weight);
    for (int j = 0; j < lines[i].n; j++) {
      /* Where two families cross, their corners have a direction of their own. */
      double share = share_near(weight, lines[i].angles[j]);

      assert_true(share > (lines[i].n == 1 ? 0.95 : 0.3));
      all += share;
    }
    assert_true(all > 0.7);
    cairo_destroy(cr);
  }
}

static double
coverage(cairo_t *cr) {
  double ink = 0;

  for (int y = 0; y < SIZE; y++)
    for (int x = 0; x < SIZE; x++)
      ink += bitmap_ink(cr, x, y);
  return ink / SIZE / SIZE;
}

/* Lines p apart and t thick cover t/p; two families crossed, 1 - (1 - t/p)². */
static void
test_coverage(void **state) {
  double one = SPV_LINE_HATCH / SPV_HATCH_PITCH, two = 1 - (1 - one) * (1 - one);

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(lines); i++) {
    cairo_t *cr = hatched(lines[i].hatch, 1);

    assert_true(fabs(coverage(cr) - (lines[i].n == 1 ? one : two)) < 0.01);
    cairo_destroy(cr);
  }
}

/* Upright lines, counted along a row: one through the datum, the others a pitch apart, however enlarged. */
static void
test_pitch(void **state) {
  (void) state;
  for (double paper_mm = 1; paper_mm < 40; paper_mm *= 3) {
    cairo_t *cr = hatched(SPV_HATCH_GULES, paper_mm);
    int count = 0;

    for (int x = 1; x < SIZE; x++)
      count += bitmap_ink(cr, x, 200) > 0.3 && bitmap_ink(cr, x - 1, 200) <= 0.3;
    assert_in_range(count, SIZE / 9 - 1, SIZE / 9 + 1);
    assert_true(bitmap_ink(cr, SIZE / 2, 200) + bitmap_ink(cr, SIZE / 2 - 1, 200) > 1.2);
    cairo_destroy(cr);
  }
}

/* Or is dotted: inked, with no direction that stands out, and nothing of a line in any row or column. */
static void
test_or_is_dots(void **state) {
  cairo_t *cr = hatched(SPV_HATCH_OR, 1);
  double weight[180], most = 0;

  (void) state;
  assert_true(coverage(cr) > 0.03 && coverage(cr) < 0.12);
  for (int y = 0; y < SIZE; y++) {
    double row = 0;

    for (int x = 0; x < SIZE; x++)
      row += bitmap_ink(cr, x, y) / SIZE;
    most = MAX(most, row);
  }
  assert_true(most < 0.4);
  weigh_directions(cr, weight);
  for (int i = 0; i < 180; i++)
    assert_true(share_near(weight, i) < 0.5);
  cairo_destroy(cr);
}

static void
test_argent_is_plain(void **state) {
  cairo_t *cr = hatched(SPV_HATCH_ARGENT, 1);

  (void) state;
  assert_true(coverage(cr) == 0);
  assert_false(cairo_has_current_point(cr));
  cairo_destroy(cr);
}

/* Two halves hatched one after the other are the whole hatched at once. The cut lies on a pixel's edge;
 * slanted lines are rounded to 1/256 px at their ends, which may move a grey by a few levels of 256. */
static void
test_keeps_in_step(void **state) {
  (void) state;
  for (guint i = 0; i < SPV_N_HATCHES; i++) {
    cairo_t *whole = bitmap_new(SIZE, SIZE, PX, 200, 0), *halves = bitmap_new(SIZE, SIZE, PX, 200, 0);

    cairo_rectangle(whole, -15, 5, 30, 30);
    spv_draw_hatch(whole, (SpvHatch) i, 1);
    cairo_rectangle(halves, -15, 5, 12, 30);
    spv_draw_hatch(halves, (SpvHatch) i, 1);
    cairo_rectangle(halves, -3, 5, 18, 30);
    spv_draw_hatch(halves, (SpvHatch) i, 1);
    assert_true(bitmap_compare(whole, halves) <= 12);
    cairo_destroy(whole);
    cairo_destroy(halves);
  }
}

/* Nothing outside of the path, whatever the hatch. */
static void
test_stays_inside(void **state) {
  (void) state;
  for (guint i = 0; i < SPV_N_HATCHES; i++) {
    cairo_t *cr = bitmap_new(SIZE, SIZE, PX, 200, 0);

    cairo_rectangle(cr, -5, 10, 10, 10);
    spv_draw_hatch(cr, (SpvHatch) i, 1);
    for (int y = 0; y < SIZE; y++)
      for (int x = 0; x < SIZE; x++)
        if (x < 150 || x >= 250 || y < 100 || y >= 200)
          assert_int_equal(bitmap_pixel(cr, x, y), 0xffffff);
    cairo_destroy(cr);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_directions),      cmocka_unit_test(test_coverage),
    cmocka_unit_test(test_pitch),           cmocka_unit_test(test_or_is_dots),
    cmocka_unit_test(test_argent_is_plain), cmocka_unit_test(test_keeps_in_step),
    cmocka_unit_test(test_stays_inside),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
