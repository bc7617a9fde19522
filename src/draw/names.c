/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tinctures' names on the panel itself, for a sheet that is printed without colour. */
#include "draw/draw.h"

#define NAME_SIZE 2.0 /* mm on paper */

/* Whether words WIDTH wide and HEIGHT high go into a circle of RADIUS. */
static gboolean
fits(double width, double height, double radius) {
  return hypot(width / 2, height / 2) <= radius;
}

static void
draw_name(cairo_t *cr, const SpvRegion *region, const char *name, double paper_mm) {
  double radius, height = NAME_SIZE / paper_mm;
  double width = spv_words_width(cr, name, NAME_SIZE, FALSE, paper_mm);
  SpvPoint middle = spv_shape_middle(region->shape, &radius);

  if (fits(width, height, radius))
    spv_draw_words_haloed(cr, name, middle.x, middle.y + height / 2, NAME_SIZE, 0.5, FALSE, paper_mm);
}

void
spv_draw_tincture_names(cairo_t *cr, const SpvPartition *partition, double paper_mm) {
  const SpvScheme *scheme = partition->composition->scheme;

  cairo_save(cr);
  spv_set_rgb(cr, spv_grey);
  for (guint i = 0; i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);

    if (region->tincture >= 0)
      draw_name(cr, region, scheme->tinctures[region->tincture].name, paper_mm);
  }
  cairo_restore(cr);
}
