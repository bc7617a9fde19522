/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scene.h"

#include <string.h>

static const SpvRgb colours[SPV_N_HATCHES] = {
  { 0xf0, 0xee, 0xe6 }, { 0xd9, 0xa4, 0x2b }, { 0xa8, 0x1e, 0x2a },
  { 0x1f, 0x4e, 0x9c }, { 0x22, 0x24, 0x2a }, { 0x22, 0x5d, 0x55 },
  { 0x6a, 0x2f, 0x7a }, { 0xb8, 0x62, 0x1c }, { 0x72, 0x1a, 0x28 },
};

static void
laid_shape_free(gpointer data) {
  SpvLaidShape *shape = data;

  spv_path_unref(shape->area);
  g_free(shape);
}

void
scene_init(Scene *scene, SpvOutlineFamily family, double width, double height) {
  SpvOutlineSpec spec;

  memset(scene, 0, sizeof *scene);
  for (guint i = 0; i < SPV_N_HATCHES; i++) {
    scene->tinctures[i].id = scene->tinctures[i].name = spv_hatch_key((SpvHatch) i);
    scene->tinctures[i].colour = colours[i];
    scene->tinctures[i].hatch = (SpvHatch) i;
  }
  scene->scheme.tinctures = scene->tinctures;
  scene->scheme.n_tinctures = SPV_N_HATCHES;
  spv_outline_spec_preset(family, width, height, &spec);
  scene->composition.scheme = &scene->scheme;
  scene->composition.outline = spv_outline_new(&spec);
  scene->composition.shapes = g_ptr_array_new_with_free_func(laid_shape_free);
  scene->guide.composition = &scene->composition;
  scene->guide.dots = g_array_new(FALSE, TRUE, sizeof(SpvDot));
  scene->guide.rulings = g_array_new(FALSE, TRUE, sizeof(SpvRuling));
  scene->guide.runs = g_array_new(FALSE, TRUE, sizeof(SpvDotRun));
}

void
scene_clear(Scene *scene) {
  spv_outline_unref(scene->composition.outline);
  g_ptr_array_unref(scene->composition.shapes);
  g_array_unref(scene->guide.dots);
  g_array_unref(scene->guide.rulings);
  g_array_unref(scene->guide.runs);
}

void
scene_lay(Scene *scene, SpvPath *area, SpvHatch hatch) {
  SpvLaidShape *shape = g_new0(SpvLaidShape, 1);

  shape->tincture = (guint) hatch;
  shape->layer = scene->composition.shapes->len;
  shape->area = area;
  g_ptr_array_add(scene->composition.shapes, shape);
}

SpvPath *
scene_box(double x0, double y0, double x1, double y1) {
  return spv_path_new_box((SpvBox){ x0, y0, x1, y1 });
}

cairo_t *
bitmap_new(int width, int height, double scale, double x, double y) {
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create(surface);

  cairo_surface_destroy(surface);
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_paint(cr);
  cairo_translate(cr, x, y);
  cairo_scale(cr, scale, scale);
  return cr;
}

static const guint32 *
bitmap_row(cairo_t *cr, int y) {
  cairo_surface_t *surface = cairo_get_target(cr);

  cairo_surface_flush(surface);
  return (const guint32 *) (gconstpointer) (cairo_image_surface_get_data(surface) +
                                            y * cairo_image_surface_get_stride(surface));
}

guint
bitmap_pixel(cairo_t *cr, int x, int y) {
  return bitmap_row(cr, y)[x] & 0xffffff;
}

double
bitmap_ink(cairo_t *cr, int x, int y) {
  guint pixel = bitmap_pixel(cr, x, y);

  return 1 - ((pixel >> 16) + ((pixel >> 8) & 0xff) + (pixel & 0xff)) / 765.0;
}

guint
scene_rgb(SpvRgb colour) {
  return (guint) colour.red << 16 | (guint) colour.green << 8 | colour.blue;
}

guint
bitmap_compare(cairo_t *a, cairo_t *b) {
  cairo_surface_t *surface = cairo_get_target(a);
  int width = cairo_image_surface_get_width(surface), height = cairo_image_surface_get_height(surface);
  guint most = 0;

  for (int y = 0; y < height; y++) {
    for (int x = 0; x < width; x++) {
      guint p = bitmap_pixel(a, x, y), q = bitmap_pixel(b, x, y);

      for (int shift = 0; shift <= 16; shift += 8) {
        int difference = (int) (p >> shift & 0xff) - (int) (q >> shift & 0xff);

        most = MAX(most, (guint) ABS(difference));
      }
    }
  }
  return most;
}
