/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/harness-view-picture.h"

#include "window/canvas-paint.h"

/* Half of the outline's line lies outside of the panel, px. */
#define ROOM 1.5

void
spv_panel_picture_clear(gpointer data) {
  SpvPanelPicture *picture = data;

  g_clear_pointer(&picture->composition, spv_composition_unref);
  g_clear_object(&picture->texture);
}

SpvBox
spv_panel_picture_box(const SpvPanelPicture *picture) {
  return spv_box_grow(spv_outline_bounds(picture->composition->outline), ROOM / picture->scale);
}

static GdkTexture *
texture_of(cairo_surface_t *surface) {
  gsize stride = (gsize) cairo_image_surface_get_stride(surface);
  int width = cairo_image_surface_get_width(surface), height = cairo_image_surface_get_height(surface);
  g_autoptr(GBytes) bytes = NULL;

  cairo_surface_flush(surface);
  bytes = g_bytes_new(cairo_image_surface_get_data(surface), stride * (gsize) height);
  return gdk_memory_texture_new(width, height, GDK_MEMORY_DEFAULT, bytes, stride);
}

void
spv_panel_picture_update(SpvPanelPicture *picture, const SpvComposition *composition, double scale,
                         double line, SpvRgb outline) {
  cairo_surface_t *surface;
  cairo_t *cr;
  SpvBox box;

  if (picture->composition == composition && picture->scale == scale)
    return;
  spv_panel_picture_clear(picture);
  picture->composition = spv_composition_ref(composition);
  picture->scale = scale;
  box = spv_panel_picture_box(picture);
  surface = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, (int) ceil(spv_box_width(box) * scale),
                                       (int) ceil(spv_box_height(box) * scale));
  cr = cairo_create(surface);
  cairo_scale(cr, scale, scale);
  cairo_translate(cr, -box.x0, -box.y0);
  spv_draw_panel(cr, composition, SPV_DRAW_COLOUR, scale / SPV_SCREEN_PX_PER_MM);
  spv_set_rgb(cr, outline);
  spv_draw_outline(cr, composition->outline, line, scale);
  cairo_destroy(cr);
  picture->texture = texture_of(surface);
  cairo_surface_destroy(surface);
}
