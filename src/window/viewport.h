/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the canvas looks at the panel: which millimetre lies on which pixel, the limits of zoom and pan, and
 * the grid and ruler ticks that suit the zoom. A plain value without widgets. Pixels are the toolkit's: x to
 * the right, y down, (0, 0) in the view's upper left corner. */
#pragma once

#include "geometry/point.h"

#define SPV_VIEWPORT_MAX_SCALE 400.0 /* px a mm */
/* What stays free around the panel when it is fitted, px. */
#define SPV_VIEWPORT_MARGIN 48.0

typedef struct {
  double width, height; /* of the view, px */
  double scale;         /* px a mm */
  SpvPoint datum;       /* where (0, 0) mm lies, px */
  SpvBox content;       /* what is looked at, mm */
  gboolean fitted;      /* nobody has zoomed or panned: it stays fitted when the view or the panel changes */
} SpvViewport;

/* A view with no size and nothing to see, fitted. */
void spv_viewport_init(SpvViewport *viewport);
/* Keeps the middle in the middle, or the fit. */
void spv_viewport_set_size(SpvViewport *viewport, double width, double height);
/* Keeps the datum where it is, or the fit. A box without area is taken as 1 mm about its middle. */
void spv_viewport_set_content(SpvViewport *viewport, SpvBox content);

SpvPoint spv_viewport_to_px(const SpvViewport *viewport, SpvPoint mm);
SpvPoint spv_viewport_to_mm(const SpvViewport *viewport, SpvPoint px);

/* The scale at which the content just fits, at most SPV_VIEWPORT_MAX_SCALE: as far as one can zoom out. */
double spv_viewport_fit_scale(const SpvViewport *viewport);
void spv_viewport_fit(SpvViewport *viewport);
/* Zooms by FACTOR within the limits; what lies under PX stays there. */
void spv_viewport_zoom(SpvViewport *viewport, double factor, SpvPoint px);
/* Moves the panel by (DX, DY) px, but never wholly out of sight. */
void spv_viewport_pan(SpvViewport *viewport, double dx, double dy);

/* The finest step of 0.1, 0.5, 1, 5, 10, 50, 100 mm that is at least LEAST px wide; the coarsest
 * when none is. */
double spv_viewport_step(const SpvViewport *viewport, double least);
/* The next coarser step after STEP, or STEP when it is the coarsest. */
double spv_viewport_coarser(double step);

typedef enum { SPV_TICK_SMALL, SPV_TICK_MIDDLE, SPV_TICK_LABELLED } SpvTickKind;

typedef struct {
  double mm, px; /* along the ruler */
  SpvTickKind kind;
} SpvTick;

/* The ticks of the ruler above (or, VERTICAL, at the left) in order; SpvTick in a GArray. */
GArray *spv_viewport_ticks(const SpvViewport *viewport, gboolean vertical);

/* What a labelled tick says: "-1", "0.5", with a true minus sign and as many decimals as STEP needs. Free
 * with g_free(). */
char *spv_tick_label(double mm, double step);
/* From one labelled tick to the next, mm. */
double spv_viewport_label_step(const SpvViewport *viewport);
