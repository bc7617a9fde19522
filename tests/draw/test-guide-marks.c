/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The guide's marks: dots that shrink, numbers that never cover each other, rulings that overhang; and the
 * tinctures' names. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include "draw/marks-private.h"
#include "scene.h"

#define PAPER 12.0

/* The bitmap: px a mm of the panel, its size, and the datum. */
#define PX 60
#define WIDTH 1300
#define HEIGHT 720
#define X0 650
#define Y0 40

/* A run of COUNT tips along the base of the scene's 20 by 10 mm strip, 7 mm below the datum, first at X. */
static void
add_run(Scene *scene, guint layer, guint count, double x, double spacing) {
  const SpvTrack *track = spv_outline_track(scene->composition.outline);
  guint before = scene->guide.dots->len;
  SpvDotRun run = { layer, SPV_DOT_TIP, before + 1, before + count, spacing };

  for (guint i = 0; i < count; i++) {
    SpvPoint at = spv_point(x + i * spacing, 7);
    SpvDot dot = { before + i + 1, layer, SPV_DOT_TIP, at, SPV_EDGE_BASE, 0, 0 };

    dot.from_datum = spv_track_locate(track, spv_point(at.x, 10), NULL);
    g_array_append_val(scene->guide.dots, dot);
  }
  g_array_append_val(scene->guide.runs, run);
}

static void
add_columns(Scene *scene, guint count, double x, double spacing) {
  for (guint i = 0; i < count; i++) {
    SpvRuling ruling = { .number = i + 1, .kind = SPV_LINE_COLUMN, .index = i + 1 };

    ruling.ends[0].at = spv_point(x + i * spacing, 0);
    ruling.ends[1].at = spv_point(x + i * spacing, 10);
    g_array_append_val(scene->guide.rulings, ruling);
  }
}

static GArray *
numbers_of(const Scene *scene, int layer) {
  g_autofree double *radii = spv_mark_radii(&scene->guide, layer, PAPER);

  return spv_mark_numbers(&scene->guide, layer, radii, 1.5 / PAPER, PAPER);
}

static gboolean
has_number(const GArray *numbers, guint number, gboolean is_ruling) {
  for (guint i = 0; i < numbers->len; i++) {
    const SpvPlacedNumber *placed = &g_array_index(numbers, SpvPlacedNumber, i);

    if (placed->number == number && placed->is_ruling == is_ruling)
      return TRUE;
  }
  return FALSE;
}

static void
assert_apart(const Scene *scene, const GArray *numbers) {
  g_autofree double *radii = spv_mark_radii(&scene->guide, -1, PAPER);

  for (guint i = 0; i < numbers->len; i++) {
    const SpvPlacedNumber *a = &g_array_index(numbers, SpvPlacedNumber, i);

    for (guint j = i + 1; j < numbers->len; j++)
      assert_false(spv_box_overlaps(a->box, g_array_index(numbers, SpvPlacedNumber, j).box));
    for (guint j = 0; j < scene->guide.dots->len; j++) {
      SpvPoint at = g_array_index(scene->guide.dots, SpvDot, j).at;
      SpvBox dot = spv_box_grow((SpvBox){ at.x, at.y, at.x, at.y }, radii[j] * G_SQRT2 / 2 * 0.99);

      assert_false(spv_box_overlaps(a->box, dot));
    }
  }
}

/* Far enough apart, every dot has its number, beyond its tip. */
static void
test_all_numbers(void **state) {
  Scene scene;

  (void) state;
  scene_init(&scene, SPV_OUTLINE_STRIP, 20, 10);
  add_run(&scene, 0, 12, -8, 1.4);
  {
    g_autoptr(GArray) numbers = numbers_of(&scene, -1);

    assert_int_equal(numbers->len, 12);
    for (guint i = 0; i < numbers->len; i++)
      assert_true(g_array_index(numbers, SpvPlacedNumber, i).at.y < 7);
    assert_apart(&scene, numbers);
  }
  scene_clear(&scene);
}

/* Crowded, some are left out at even steps, but never the first or the last; and nothing overlaps. */
static void
test_crowded_numbers(void **state) {
  (void) state;
  for (double spacing = 0.02; spacing < 0.5; spacing *= 1.7) {
    Scene scene;
    guint count = (guint) (18 / spacing) > 200 ? 200 : (guint) (18 / spacing);

    scene_init(&scene, SPV_OUTLINE_STRIP, 20, 10);
    add_run(&scene, 0, count, -9, spacing);
    add_run(&scene, 1, 20, -9, 0.9);
    add_columns(&scene, 60, -9.5, 0.3);
    {
      g_autoptr(GArray) numbers = numbers_of(&scene, -1);

      assert_apart(&scene, numbers);
      assert_true(has_number(numbers, 1, FALSE));
      assert_true(has_number(numbers, count, FALSE));
      assert_true(has_number(numbers, 1, TRUE));
      assert_true(has_number(numbers, 60, TRUE));
      assert_true(numbers->len >= 6);
    }
    scene_clear(&scene);
  }
}

static void
test_one_layer(void **state) {
  Scene scene;

  (void) state;
  scene_init(&scene, SPV_OUTLINE_STRIP, 20, 10);
  add_run(&scene, 3, 4, -8, 2);
  add_run(&scene, 5, 3, 1, 2);
  {
    g_autoptr(GArray) numbers = numbers_of(&scene, 5);

    assert_int_equal(numbers->len, 3);
    assert_true(has_number(numbers, 5, FALSE));
    assert_false(has_number(numbers, 4, FALSE));
  }
  scene_clear(&scene);
}

/* A dot is never larger than half the way to the next, nor too small to see. */
static void
test_radii(void **state) {
  (void) state;
  for (double spacing = 0.01; spacing < 2; spacing *= 1.5) {
    Scene scene;

    scene_init(&scene, SPV_OUTLINE_STRIP, 20, 10);
    add_run(&scene, 0, 9, -9, spacing);
    {
      g_autofree double *radii = spv_mark_radii(&scene.guide, -1, PAPER);

      for (guint i = 0; i < 9; i++) {
        assert_true(radii[i] * PAPER >= 0.2 - 1e-9);
        assert_true(radii[i] < spacing / 2 || radii[i] * PAPER < 0.2 + 1e-9);
        assert_true(radii[i] * PAPER <= 1 + 1e-9);
      }
    }
    scene_clear(&scene);
  }
}

static void
test_ruling_overhang(void **state) {
  SpvRuling ruling = { 0 };
  SpvPoint ends[2];

  (void) state;
  ruling.ends[0].at = spv_point(3, 0);
  ruling.ends[1].at = spv_point(3, 10);
  spv_mark_ruling_ends(&ruling, 4, ends);
  assert_true(fabs(ends[0].y + 0.5) < 1e-9 && fabs(ends[1].y - 10.5) < 1e-9 && ends[0].x == 3);
}

/* The disc is accent in a white ring, where the dot is. */
static void
test_dot_pixels(void **state) {
  Scene scene;
  cairo_t *cr = bitmap_new(WIDTH, HEIGHT, PX, X0, Y0);
  guint accent = scene_rgb(spv_accent), ring = 0;

  (void) state;
  scene_init(&scene, SPV_OUTLINE_STRIP, 20, 10);
  add_run(&scene, 0, 3, -6, 6);
  cairo_set_source_rgb(cr, 0, 0, 0);
  cairo_paint(cr);
  spv_draw_guide(cr, &scene.guide, PAPER);
  assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  for (int i = 0; i < 3; i++)
    assert_int_equal(bitmap_pixel(cr, X0 + (i - 1) * 6 * PX, Y0 + 7 * PX), accent);
  for (int x = X0; x < X0 + 20; x++)
    ring += bitmap_ink(cr, x, Y0 + 7 * PX) < 0.2;
  assert_true(ring > 0);
  cairo_destroy(cr);
  scene_clear(&scene);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_all_numbers),     cmocka_unit_test(test_crowded_numbers),
    cmocka_unit_test(test_one_layer),       cmocka_unit_test(test_radii),
    cmocka_unit_test(test_ruling_overhang), cmocka_unit_test(test_dot_pixels),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
