/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small scene made by hand, so that the painters are tested without what composes and guides: a rectangle
 * of 20 by 10 mm with the datum in the middle of its top edge, and shapes laid on it. And a bitmap to draw it
 * on. */
#pragma once

#include "draw/draw.h"

typedef struct {
  SpvScheme scheme;
  SpvTincture tinctures[SPV_N_HATCHES]; /* one for each hatch, each of another colour */
  SpvComposition composition;
  SpvGuide guide;
} Scene;

/* FAMILY may be any whose own measures can be at their presets. */
void scene_init(Scene *scene, SpvOutlineFamily family, double width, double height);
void scene_clear(Scene *scene);
/* Lays AREA (consumed) in the tincture that has HATCH. */
void scene_lay(Scene *scene, SpvPath *area, SpvHatch hatch);
SpvPath *scene_box(double x0, double y0, double x1, double y1);

/* A white bitmap of WIDTH by HEIGHT px, and a context on it whose unit is a millimetre of SCALE px, with the
 * datum at (X, Y) px. */
cairo_t *bitmap_new(int width, int height, double scale, double x, double y);
/* The pixel (X, Y) of the context's bitmap as 0xrrggbb. */
guint bitmap_pixel(cairo_t *cr, int x, int y);
/* How dark, 0 (white) to 1. */
double bitmap_ink(cairo_t *cr, int x, int y);
guint scene_rgb(SpvRgb colour);
/* The largest difference of any channel of any pixel, 0 to 255. */
guint bitmap_compare(cairo_t *a, cairo_t *b);
