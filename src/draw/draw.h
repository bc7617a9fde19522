/* SPDX-License-Identifier: GPL-3.0-or-later */
/* cairo painters. Each draws in the panel's own millimetres: the caller has scaled and moved the context.
 * Nothing is decided here, and nothing returned: the caller asks the context's status once at the end.
 * PAPER_MM is how large one millimetre of the panel comes out (1 at true size, 12 for an enlargement × 12):
 * line widths, dots and words keep their size on paper. */
#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include "guide/guide.h"

typedef enum {
  SPV_DRAW_COLOUR, /* tinctures as colours */
  SPV_DRAW_HATCH,  /* tinctures as the engraver's hatch, black on white */
  SPV_DRAW_LINES   /* boundaries only, white between */
} SpvDrawMode;

/* Line widths on paper, mm: the ISO 128 series. */
#define SPV_LINE_HATCH 0.13
#define SPV_LINE_INK 0.18
#define SPV_LINE_RULING 0.25

/* The lattice of the hatches on paper, mm: from one line or dot to the next. */
#define SPV_HATCH_PITCH 0.9

/* The hues of the look: ink, accent and greys. */
extern const SpvRgb spv_ink, spv_accent, spv_grey;

void spv_set_rgb(cairo_t *cr, SpvRgb colour);
/* Adds PATH to the context's current path, curves and arcs as such. */
void spv_draw_add_path(cairo_t *cr, const SpvPath *path);

/* The panel's layers, clipped to its outline; a panel with no layers is white. */
void spv_draw_panel(cairo_t *cr, const SpvComposition *composition, SpvDrawMode mode, double paper_mm);
/* The outline alone, LINE mm thick on paper, in the context's colour. */
void spv_draw_outline(cairo_t *cr, const SpvOutline *outline, double line, double paper_mm);
/* Fills the context's current path (and consumes it) with HATCH in black; the lines keep in step over the
 * whole panel, for they all hang on one lattice through the datum. */
void spv_draw_hatch(cairo_t *cr, SpvHatch hatch, double paper_mm);
/* Dots with their numbers, and rulings with theirs. A dot shrinks where its neighbour is close; where numbers
 * would overlap some are left out, the first and the last of a run coming before the others. */
void spv_draw_guide(cairo_t *cr, const SpvGuide *guide, double paper_mm);
/* Likewise, of one layer (an index into the panel's layers) only. */
void spv_draw_guide_of_layer(cairo_t *cr, const SpvGuide *guide, guint layer, double paper_mm);

/* Words SIZE mm high (capital letters) on paper, with the left end of the baseline at (X, Y), in the
 * context's colour; returns their width in the context's units. ALIGN is 0 (from X on), 0.5 (about X) or 1
 * (up to X). */
double spv_draw_words(cairo_t *cr, const char *words, double x, double y, double size, double align,
                      gboolean bold, double paper_mm);
/* Likewise, on a white halo that sets them off from whatever lies beneath. */
double spv_draw_words_haloed(cairo_t *cr, const char *words, double x, double y, double size, double align,
                             gboolean bold, double paper_mm);
/* How wide spv_draw_words() would draw WORDS, in the context's units. */
double spv_words_width(cairo_t *cr, const char *words, double size, gboolean bold, double paper_mm);
