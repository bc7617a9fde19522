/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words are as large on paper as they say, measured in the bitmap. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include "scene.h"

#define WIDTH 600
#define HEIGHT 200
#define PX 20.0 /* px a mm of paper */

/* The box of what is inked, px, within half a pixel. */
static SpvBox
inked(cairo_t *cr) {
  SpvBox box = { WIDTH, HEIGHT, 0, 0 };

  for (int y = 0; y < HEIGHT; y++) {
    for (int x = 0; x < WIDTH; x++) {
      if (bitmap_ink(cr, x, y) < 0.5)
        continue;
      box = (SpvBox){ MIN(box.x0, x), MIN(box.y0, y), MAX(box.x1, x + 1), MAX(box.y1, y + 1) };
    }
  }
  return box;
}

static SpvBox
draw(const char *words, double size, double align, gboolean bold, double paper_mm, double *width) {
  cairo_t *cr = bitmap_new(WIDTH, HEIGHT, PX * paper_mm, WIDTH / 2.0, 150);
  SpvBox box;

  cairo_set_source_rgb(cr, 0, 0, 0);
  *width = spv_draw_words(cr, words, 0, 0, size, align, bold, paper_mm) * paper_mm * PX;
  assert_true(fabs(spv_words_width(cr, words, size, bold, paper_mm) * paper_mm * PX - *width) < 1e-6);
  box = inked(cr);
  cairo_destroy(cr);
  return box;
}

/* A capital is SIZE mm high and stands on the baseline. */
static void
test_height(void **state) {
  (void) state;
  for (double size = 1; size <= 5; size += 0.5) {
    for (int bold = 0; bold < 2; bold++) {
      double width;
      SpvBox box = draw("H", size, 0, bold != 0, 1, &width);

      assert_true(fabs(spv_box_height(box) - size * PX) <= 1);
      assert_true(fabs(box.y1 - 150) <= 1);
    }
  }
}

/* However the panel is enlarged, words come out alike. */
static void
test_same_on_paper(void **state) {
  double width, again;
  SpvBox box = draw("Heron 12.05", 2, 0, FALSE, 1, &width);

  (void) state;
  for (double paper_mm = 0.1; paper_mm < 200; paper_mm *= 7) {
    SpvBox other = draw("Heron 12.05", 2, 0, FALSE, paper_mm, &again);

    assert_true(fabs(again - width) < 0.01);
    assert_true(fabs(other.x0 - box.x0) <= 1 && fabs(other.x1 - box.x1) <= 1);
  }
}

static void
test_align(void **state) {
  double width;
  SpvBox left = draw("HHH", 2, 0, TRUE, 3, &width);
  SpvBox middle = draw("HHH", 2, 0.5, TRUE, 3, &width);
  SpvBox right = draw("HHH", 2, 1, TRUE, 3, &width);

  (void) state;
  assert_true(left.x0 >= WIDTH / 2.0 - 1);
  assert_true(right.x1 <= WIDTH / 2.0 + 1);
  assert_true(fabs((middle.x0 + middle.x1) / 2 - WIDTH / 2.0) <= 1.5);
  assert_true(fabs(left.x0 - middle.x0 - width / 2) <= 1);
  assert_true(fabs(left.x0 - right.x0 - width) <= 1);
}

/* Figures are tabular, so that columns of them line up. */
static void
test_tabular(void **state) {
  double one, eight;

  (void) state;
  draw("1111", 2, 0, FALSE, 1, &one);
  draw("8888", 2, 0, FALSE, 1, &eight);
  assert_true(fabs(one - eight) < 0.01);
}

/* A halo keeps words readable on black. */
static void
test_halo(void **state) {
  cairo_t *cr = bitmap_new(WIDTH, HEIGHT, PX, WIDTH / 2.0, 150);
  guint white = 0;

  (void) state;
  cairo_set_source_rgb(cr, 0, 0, 0);
  cairo_paint(cr);
  spv_draw_words_haloed(cr, "HHH", 0, 0, 2, 0.5, FALSE, 1);
  for (int x = 0; x < WIDTH; x++)
    white += bitmap_pixel(cr, x, 125) == 0xffffff;
  assert_true(white > 30);
  assert_int_equal(bitmap_pixel(cr, WIDTH / 2, 50), 0x000000);
  cairo_destroy(cr);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_height),  cmocka_unit_test(test_same_on_paper), cmocka_unit_test(test_align),
    cmocka_unit_test(test_tabular), cmocka_unit_test(test_halo),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
