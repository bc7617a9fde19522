/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Panels: painter's order, the clip to the outline, the three modes. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include "scene.h"

#define PX 20
#define WIDTH 480
#define HEIGHT 280
#define X0 240 /* the datum */
#define Y0 40

static cairo_t *
drawn(const Scene *scene, SpvDrawMode mode) {
  cairo_t *cr = bitmap_new(WIDTH, HEIGHT, PX, X0, Y0);

  spv_draw_panel(cr, &scene->composition, mode, 10);
  assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  return cr;
}

static guint
pixel_at(cairo_t *cr, double x, double y) {
  return bitmap_pixel(cr, (int) (X0 + x * PX), (int) (Y0 + y * PX));
}

static void
test_painters_order(void **state) {
  Scene scene;
  cairo_t *cr;

  (void) state;
  scene_init(&scene, SPV_OUTLINE_STRIP, 20, 10);
  scene_lay(&scene, scene_box(-30, -30, 30, 30), SPV_HATCH_ARGENT);
  scene_lay(&scene, scene_box(-30, -30, 0, 30), SPV_HATCH_VERT);
  scene_lay(&scene, spv_path_new_circle(spv_point(0, 5), 2), SPV_HATCH_GULES);
  cr = drawn(&scene, SPV_DRAW_COLOUR);
  assert_int_equal(pixel_at(cr, 5, 5), scene_rgb(scene.tinctures[SPV_HATCH_ARGENT].colour));
  assert_int_equal(pixel_at(cr, -5, 5), scene_rgb(scene.tinctures[SPV_HATCH_VERT].colour));
  assert_int_equal(pixel_at(cr, 0, 5), scene_rgb(scene.tinctures[SPV_HATCH_GULES].colour));
  assert_int_equal(pixel_at(cr, 1.9, 5), scene_rgb(scene.tinctures[SPV_HATCH_GULES].colour));
  assert_int_equal(pixel_at(cr, 2.1, 5), scene_rgb(scene.tinctures[SPV_HATCH_ARGENT].colour));
  cairo_destroy(cr);
  scene_clear(&scene);
}

/* Every family, in every mode: no pixel is touched that lies wholly outside the outline. */
static void
test_clip(void **state) {
  const SpvDrawMode modes[] = { SPV_DRAW_COLOUR, SPV_DRAW_HATCH, SPV_DRAW_LINES };

  (void) state;
  for (guint family = 0; family < SPV_N_OUTLINE_FAMILIES; family++) {
    Scene scene;

    scene_init(&scene, (SpvOutlineFamily) family, 10, 10);
    scene_lay(&scene, scene_box(-30, -30, 30, 30), SPV_HATCH_SABLE);
    scene_lay(&scene, scene_box(-30, 4, 30, 30), SPV_HATCH_OR);
    for (guint i = 0; i < G_N_ELEMENTS(modes); i++) {
      cairo_t *cr = drawn(&scene, modes[i]), *edge = bitmap_new(WIDTH, HEIGHT, PX, X0, Y0);

      /* Black on every pixel that the outline's area or its edge meets. */
      cairo_set_source_rgb(edge, 0, 0, 0);
      spv_draw_add_path(edge, spv_outline_path(scene.composition.outline));
      cairo_set_line_width(edge, 3.0 / PX);
      cairo_fill_preserve(edge);
      cairo_stroke(edge);
      for (int y = 0; y < HEIGHT; y++)
        for (int x = 0; x < WIDTH; x++)
          if (bitmap_pixel(edge, x, y) == 0xffffff)
            assert_int_equal(bitmap_pixel(cr, x, y), 0xffffff);
      cairo_destroy(cr);
      cairo_destroy(edge);
    }
    scene_clear(&scene);
  }
}

static void
test_bare_is_white(void **state) {
  Scene scene;
  cairo_t *cr = bitmap_new(WIDTH, HEIGHT, PX, X0, Y0);

  (void) state;
  scene_init(&scene, SPV_OUTLINE_STRIP, 20, 10);
  cairo_set_source_rgb(cr, 0, 0, 1);
  cairo_paint(cr);
  spv_draw_panel(cr, &scene.composition, SPV_DRAW_COLOUR, 1);
  assert_int_equal(pixel_at(cr, 0, 5), 0xffffff);
  assert_int_equal(pixel_at(cr, 0, -1), 0x0000ff);
  cairo_destroy(cr);
  scene_clear(&scene);
}

/* Without colour there are only greys; a boundary is 0.18 mm of ink on paper. */
static void
test_lines(void **state) {
  Scene scene;
  cairo_t *cr;
  double ink = 0;

  (void) state;
  scene_init(&scene, SPV_OUTLINE_STRIP, 20, 10);
  scene_lay(&scene, scene_box(-30, -30, 30, 30), SPV_HATCH_GULES);
  scene_lay(&scene, scene_box(-30, -30, 1, 30), SPV_HATCH_AZURE);
  cr = drawn(&scene, SPV_DRAW_LINES);
  for (int x = X0 - 190; x < X0 + 190; x++) {
    guint pixel = bitmap_pixel(cr, x, Y0 + 100);

    assert_int_equal(pixel >> 16, pixel & 0xff);
    ink += bitmap_ink(cr, x, Y0 + 100);
  }
  /* Drawn 10 times enlarged, so a panel's millimetre of 20 px is 10 mm of paper. */
  assert_true(fabs(ink - SPV_LINE_INK / 10 * PX) < 0.02);
  assert_true(bitmap_ink(cr, X0 + PX, Y0 + 100) > 0.1);
  cairo_destroy(cr);
  scene_clear(&scene);
}

static void
test_hatch_has_no_colour(void **state) {
  Scene scene;
  cairo_t *cr;
  double left = 0, right = 0;

  (void) state;
  scene_init(&scene, SPV_OUTLINE_STRIP, 20, 10);
  scene_lay(&scene, scene_box(-30, -30, 30, 30), SPV_HATCH_SABLE);
  scene_lay(&scene, scene_box(-30, -30, 0, 30), SPV_HATCH_AZURE);
  cr = drawn(&scene, SPV_DRAW_HATCH);
  for (int y = Y0; y < Y0 + 200; y++) {
    for (int x = X0 - 200; x < X0 + 200; x++) {
      guint pixel = bitmap_pixel(cr, x, y);

      assert_int_equal(pixel >> 16, pixel & 0xff);
      assert_int_equal(pixel >> 16, (pixel >> 8) & 0xff);
      if (x < X0 - 2)
        left += bitmap_ink(cr, x, y);
      else if (x > X0 + 2)
        right += bitmap_ink(cr, x, y);
    }
  }
  assert_true(left > 0 && right > 1.7 * left && right < 2 * left);
  cairo_destroy(cr);
  scene_clear(&scene);
}

/* The mirror image of a panel is the panel of the mirror image. */
static void
test_mirror(void **state) {
  Scene scene, mirrored;
  cairo_t *a, *b;

  (void) state;
  scene_init(&scene, SPV_OUTLINE_PLATE, 16, 10);
  scene_init(&mirrored, SPV_OUTLINE_PLATE, 16, 10);
  scene_lay(&scene, scene_box(-30, -30, 30, 30), SPV_HATCH_OR);
  scene_lay(&mirrored, scene_box(-30, -30, 30, 30), SPV_HATCH_OR);
  scene_lay(&scene, scene_box(-30, -30, 3, 30), SPV_HATCH_VERT);
  scene_lay(&mirrored, scene_box(-3, -30, 30, 30), SPV_HATCH_VERT);
  a = drawn(&scene, SPV_DRAW_COLOUR);
  b = drawn(&mirrored, SPV_DRAW_COLOUR);
  for (int y = 0; y < HEIGHT; y++) {
    for (int x = 0; x < WIDTH; x++) {
      guint p = bitmap_pixel(a, x, y), q = bitmap_pixel(b, WIDTH - 1 - x, y);

      /* The rasteriser may round the two sides of the curve differently. */
      for (int shift = 0; shift <= 16; shift += 8)
        assert_true(abs((int) (p >> shift & 0xff) - (int) (q >> shift & 0xff)) <= 24);
    }
  }
  cairo_destroy(a);
  cairo_destroy(b);
  scene_clear(&scene);
  scene_clear(&mirrored);
}

static void
test_repeats(void **state) {
  Scene scene;
  cairo_t *a, *b;

  (void) state;
  scene_init(&scene, SPV_OUTLINE_KNEEPAD, 16, 10);
  scene_lay(&scene, scene_box(-30, -30, 30, 30), SPV_HATCH_TENNE);
  scene_lay(&scene, spv_path_new_circle(spv_point(1, 4), 3), SPV_HATCH_OR);
  a = drawn(&scene, SPV_DRAW_HATCH);
  b = drawn(&scene, SPV_DRAW_HATCH);
  assert_int_equal(bitmap_compare(a, b), 0);
  cairo_destroy(a);
  cairo_destroy(b);
  scene_clear(&scene);
}

/* Curves and arcs go over as such: a path and its fine polyline cover the same pixels. */
static void
test_paths(void **state) {
  SpvPathBuilder *builder = spv_path_builder_new();
  g_autoptr(SpvPath) path = NULL;
  cairo_t *a = bitmap_new(WIDTH, HEIGHT, PX, X0, Y0), *b = bitmap_new(WIDTH, HEIGHT, PX, X0, Y0);
  double ink = 0, difference = 0;

  (void) state;
  spv_path_builder_move(builder, spv_point(-8, 1));
  spv_path_builder_curve(builder, spv_point(-4, -2), spv_point(2, 4), spv_point(6, 1));
  spv_path_builder_arc(builder, spv_point(6, 4), 3, -G_PI / 2, G_PI);
  spv_path_builder_arc(builder, spv_point(0, 7), 2, 0, -G_PI);
  spv_path_builder_close(builder);
  path = spv_path_builder_build(builder);
  cairo_set_source_rgb(a, 0, 0, 0);
  spv_draw_add_path(a, path);
  cairo_fill(a);
  {
    g_autoptr(GPtrArray) rings = spv_path_flatten(path, 0.001);

    cairo_set_source_rgb(b, 0, 0, 0);
    for (guint i = 0; i < rings->len; i++) {
      const SpvRing *ring = g_ptr_array_index(rings, i);

      cairo_new_sub_path(b);
      for (gsize j = 0; j < ring->n_points; j++)
        cairo_line_to(b, ring->points[j].x, ring->points[j].y);
      cairo_close_path(b);
    }
    cairo_fill(b);
  }
  for (int y = 0; y < HEIGHT; y++) {
    for (int x = 0; x < WIDTH; x++) {
      ink += bitmap_ink(a, x, y);
      difference += fabs(bitmap_ink(a, x, y) - bitmap_ink(b, x, y));
    }
  }
  assert_true(ink > 10000);
  assert_true(difference < ink * 0.001);
  cairo_destroy(a);
  cairo_destroy(b);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_painters_order),
    cmocka_unit_test(test_clip),
    cmocka_unit_test(test_bare_is_white),
    cmocka_unit_test(test_lines),
    cmocka_unit_test(test_hatch_has_no_colour),
    cmocka_unit_test(test_mirror),
    cmocka_unit_test(test_repeats),
    cmocka_unit_test(test_paths),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
