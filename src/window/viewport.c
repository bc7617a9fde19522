/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/viewport.h"

/* Ticks and labels stand at least so far apart, px. */
#define SMALL_TICK 5.0
#define MIDDLE_TICK 18.0
#define LABEL 64.0

/* What of the panel stays in sight however far it is panned, px. */
#define IN_SIGHT 48.0

static const double steps[] = { 0.1, 0.5, 1, 5, 10, 50, 100 };

void
spv_viewport_init(SpvViewport *viewport) {
  *viewport = (SpvViewport){ .scale = 1, .fitted = TRUE, .content = { -0.5, 0, 0.5, 1 } };
}

SpvPoint
spv_viewport_to_px(const SpvViewport *viewport, SpvPoint mm) {
  return spv_point_add(viewport->datum, spv_point_scale(mm, viewport->scale));
}

SpvPoint
spv_viewport_to_mm(const SpvViewport *viewport, SpvPoint px) {
  return spv_point_scale(spv_point_subtract(px, viewport->datum), 1 / viewport->scale);
}

double
spv_viewport_fit_scale(const SpvViewport *viewport) {
  double across = MAX(viewport->width - 2 * SPV_VIEWPORT_MARGIN, 1) / spv_box_width(viewport->content);
  double down = MAX(viewport->height - 2 * SPV_VIEWPORT_MARGIN, 1) / spv_box_height(viewport->content);

  return MIN(MIN(across, down), SPV_VIEWPORT_MAX_SCALE);
}

/* The middle of the content at the middle of the view. */
static void
centre(SpvViewport *viewport) {
  SpvPoint middle = spv_point_scale(spv_box_centre(viewport->content), viewport->scale);

  viewport->datum = spv_point_subtract(spv_point(viewport->width / 2, viewport->height / 2), middle);
}

void
spv_viewport_fit(SpvViewport *viewport) {
  viewport->scale = spv_viewport_fit_scale(viewport);
  viewport->fitted = TRUE;
  centre(viewport);
}

static void
keep_in_sight(SpvViewport *viewport) {
  SpvPoint low = spv_viewport_to_px(viewport, spv_point(viewport->content.x0, viewport->content.y0));
  SpvPoint high = spv_viewport_to_px(viewport, spv_point(viewport->content.x1, viewport->content.y1));
  double across = MIN(IN_SIGHT, viewport->width / 2), down = MIN(IN_SIGHT, viewport->height / 2);

  viewport->datum.x += MAX(across - high.x, 0) - MAX(low.x - (viewport->width - across), 0);
  viewport->datum.y += MAX(down - high.y, 0) - MAX(low.y - (viewport->height - down), 0);
}

void
spv_viewport_set_size(SpvViewport *viewport, double width, double height) {
  double dx = (width - viewport->width) / 2, dy = (height - viewport->height) / 2;

  viewport->width = width;
  viewport->height = height;
  if (viewport->fitted) {
    spv_viewport_fit(viewport);
    return;
  }
  viewport->datum = spv_point_add(viewport->datum, spv_point(dx, dy));
  spv_viewport_zoom(viewport, 1, spv_point(width / 2, height / 2));
}

void
spv_viewport_set_content(SpvViewport *viewport, SpvBox content) {
  if (spv_box_width(content) <= 0 || spv_box_height(content) <= 0) {
    SpvPoint middle = spv_box_centre(content);

    content = spv_box_grow((SpvBox){ middle.x, middle.y, middle.x, middle.y }, 0.5);
  }
  viewport->content = content;
  if (viewport->fitted)
    spv_viewport_fit(viewport);
  else
    spv_viewport_zoom(viewport, 1, viewport->datum);
}

void
spv_viewport_zoom(SpvViewport *viewport, double factor, SpvPoint px) {
  SpvPoint under = spv_viewport_to_mm(viewport, px);
  double scale = CLAMP(viewport->scale * factor, spv_viewport_fit_scale(viewport), SPV_VIEWPORT_MAX_SCALE);

  if (scale != viewport->scale)
    viewport->fitted = FALSE;
  viewport->scale = scale;
  viewport->datum = spv_point_subtract(px, spv_point_scale(under, scale));
  keep_in_sight(viewport);
}

void
spv_viewport_pan(SpvViewport *viewport, double dx, double dy) {
  if (dx == 0 && dy == 0)
    return;
  viewport->datum = spv_point_add(viewport->datum, spv_point(dx, dy));
  viewport->fitted = FALSE;
  keep_in_sight(viewport);
}

double
spv_viewport_step(const SpvViewport *viewport, double least) {
  for (guint i = 0; i < G_N_ELEMENTS(steps); i++)
    if (steps[i] * viewport->scale >= least)
      return steps[i];
  return steps[G_N_ELEMENTS(steps) - 1];
}

double
spv_viewport_coarser(double step) {
  for (guint i = 0; i < G_N_ELEMENTS(steps); i++)
    if (steps[i] > step)
      return steps[i];
  return step;
}

double
spv_viewport_label_step(const SpvViewport *viewport) {
  return spv_viewport_step(viewport, LABEL);
}

static gboolean
is_multiple(long i, double small, double step) {
  long ratio = lround(step / small);

  return ratio > 0 && i % ratio == 0;
}

GArray *
spv_viewport_ticks(const SpvViewport *viewport, gboolean vertical) {
  GArray *ticks = g_array_new(FALSE, FALSE, sizeof(SpvTick));
  double small = spv_viewport_step(viewport, SMALL_TICK), middle = spv_viewport_step(viewport, MIDDLE_TICK);
  double labelled = spv_viewport_label_step(viewport);
  double datum = vertical ? viewport->datum.y : viewport->datum.x;
  double length = vertical ? viewport->height : viewport->width;
  long first = (long) ceil(-datum / viewport->scale / small);
  long last = (long) floor((length - datum) / viewport->scale / small);

  for (long i = first; i <= last; i++) {
    double mm = (double) i * small;
    SpvTickKind kind = is_multiple(i, small, labelled) ? SPV_TICK_LABELLED
                       : is_multiple(i, small, middle) ? SPV_TICK_MIDDLE
                                                       : SPV_TICK_SMALL;
    SpvTick tick = { mm, datum + mm * viewport->scale, kind };

    g_array_append_val(ticks, tick);
  }
  return ticks;
}

char *
spv_tick_label(double mm, double step) {
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  double rounded = step < 1 ? round(mm * 10) / 10 : round(mm);

  g_ascii_formatd(number, sizeof number, step < 1 ? "%.1f" : "%.0f", fabs(rounded));
  return g_strconcat(rounded < 0 ? "\u2212" : "", number, NULL);
}
