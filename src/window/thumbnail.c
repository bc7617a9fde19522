/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/thumbnail.h"

#include "draw/draw.h"

/* Left free on each side, pixels. */
#define MARGIN 2.0

/* The panels composed once: a thumbnail's scheme never changes. */
static GPtrArray *
compose_all(const SpvScheme *scheme) {
  GPtrArray *all = g_ptr_array_new_with_free_func((GDestroyNotify) spv_composition_unref);
  for (guint i = 0; i < scheme->n_panels; i++)
    g_ptr_array_add(all, spv_compose(scheme, i));
  return all;
}

static SpvBox
bounds_of(const SpvComposition *composition) {
  SpvBox box = spv_outline_bounds(composition->outline);
  SpvPoint place = composition->panel->place;
  return (SpvBox){ box.x0 + place.x, box.y0 + place.y, box.x1 + place.x, box.y1 + place.y };
}

static SpvBox
bounds_of_all(GPtrArray *all) {
  SpvBox sum = bounds_of(g_ptr_array_index(all, 0));
  for (guint i = 1; i < all->len; i++) {
    SpvBox box = bounds_of(g_ptr_array_index(all, i));
    sum = (SpvBox){ MIN(sum.x0, box.x0), MIN(sum.y0, box.y0), MAX(sum.x1, box.x1), MAX(sum.y1, box.y1) };
  }
  return sum;
}

static void
draw(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data) {
  (void) area;
  GPtrArray *all = data;
  if (all->len == 0)
    return;
  SpvBox box = bounds_of_all(all);
  double scale = MIN((width - 2 * MARGIN) / spv_box_width(box), (height - 2 * MARGIN) / spv_box_height(box));
  SpvPoint centre = spv_box_centre(box);
  cairo_translate(cr, width / 2.0, height / 2.0);
  cairo_scale(cr, scale, scale);
  cairo_translate(cr, -centre.x, -centre.y);
  for (guint i = 0; i < all->len; i++) {
    const SpvComposition *composition = g_ptr_array_index(all, i);
    cairo_save(cr);
    cairo_translate(cr, composition->panel->place.x, composition->panel->place.y);
    spv_draw_panel(cr, composition, SPV_DRAW_COLOUR, scale);
    spv_set_rgb(cr, spv_ink);
    spv_draw_outline(cr, composition->outline, 1, scale);
    cairo_restore(cr);
  }
}

GtkWidget *
spv_thumbnail_new(const SpvScheme *scheme, int size) {
  GtkWidget *area = gtk_drawing_area_new();
  gtk_drawing_area_set_content_width(GTK_DRAWING_AREA(area), size);
  gtk_drawing_area_set_content_height(GTK_DRAWING_AREA(area), size);
  gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(area), draw, compose_all(scheme),
                                 (GDestroyNotify) g_ptr_array_unref);
  return area;
}
