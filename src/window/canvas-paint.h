/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The canvas's painters: each draws one thing on a cairo context in the canvas's pixels. No state,
 * and no widget. */
#pragma once

#include <gdk/gdk.h>

#include "draw/draw.h"
#include "window/canvas-handles.h"
#include "window/path-nodes.h"
#include "window/viewport.h"

/* How thick a ruler is at least, px: more where the words are larger. */
#define SPV_RULER_LEAST 22
/* The side of a handle, px. */
#define SPV_HANDLE_SIDE 9

/* How many px a millimetre of paper takes for lines, dots and words: somewhat more than on a sheet, for a
 * screen is looked at from farther off. */
#define SPV_SCREEN_PX_PER_MM 4.75

/* The mat with its grid; VIEWPORT's pixels. */
void spv_canvas_paint_mat(cairo_t *cr, const SpvViewport *viewport);
void spv_canvas_paint_panel(cairo_t *cr, const SpvViewport *viewport, const SpvComposition *composition,
                            SpvDrawMode mode);
/* LAYER is an index, or -1 for every layer. The marks are LARGER times their usual size. */
void spv_canvas_paint_guide(cairo_t *cr, const SpvViewport *viewport, const SpvGuide *guide, int layer,
                            double larger);
void spv_canvas_paint_datum(cairo_t *cr, const SpvViewport *viewport);
/* ACTIVE is the one that the keys move, or NULL. */
void spv_canvas_paint_handles(cairo_t *cr, const SpvViewport *viewport, const GArray *handles,
                              const SpvHandle *active);

/* The edges and NODES of a free path that lies at PLACE, with the curve handles of node SELECTED (-1: none);
 * a corner is a square, a smooth node is round. BOTH_SIDES: its mirror image too, which can't be taken hold
 * of. */
void spv_canvas_paint_nodes(cairo_t *cr, const SpvViewport *viewport, const SpvPathNodes *nodes,
                            SpvTransform place, int selected, gboolean both_sides);

/* How thick a ruler must be for LAYOUT's lettering, px. */
int spv_canvas_ruler_thickness(PangoLayout *layout);
/* The ruler above, or VERTICAL at the left, THICKNESS px thick, in INK, lettered by LAYOUT; POINTER is where
 * to mark the pointer's place, px, or negative. */
void spv_canvas_paint_ruler(cairo_t *cr, const SpvViewport *viewport, gboolean vertical, double thickness,
                            PangoLayout *layout, const GdkRGBA *ink, double pointer);

/* LAYOUT's words in white at (X, Y) px, on a piece of the mat so that they can be read over the panel too. */
void spv_canvas_paint_title(cairo_t *cr, PangoLayout *layout, double x, double y);
/* A white slip with LAYOUT's words, its corner near PX, kept within WIDTH by HEIGHT px. */
void spv_canvas_paint_slip(cairo_t *cr, PangoLayout *layout, SpvPoint px, double width, double height);

/* A card in the lower right corner of WIDTH by HEIGHT px with the panel at SCALE px a mm and LAYOUT's words
 * under it. SCALE 0 leaves only the words. */
void spv_canvas_paint_true_size(cairo_t *cr, const SpvComposition *composition, SpvDrawMode mode,
                                double scale, PangoLayout *layout, double width, double height);
