/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas-paint.h"

static const SpvRgb mat = { 0x66, 0x75, 0x80 };

/* The grid's lines stand at least so far apart, px; the coarser ones are plainer to see. */
#define GRID_LEAST 9.0
#define OUTLINE_PX 2.5
#define SLIP_RADIUS 4.0
#define SLIP_PAD 7.0
#define CARD_PAD 12.0
#define CARD_LEAST 90.0

/* --- The mat --- */

static void
add_grid(cairo_t *cr, const SpvViewport *viewport, double step) {
  SpvPoint low = spv_viewport_to_mm(viewport, spv_point(0, 0));
  SpvPoint high = spv_viewport_to_mm(viewport, spv_point(viewport->width, viewport->height));

  for (long i = (long) ceil(low.x / step); i <= (long) floor(high.x / step); i++) {
    double x = floor(viewport->datum.x + (double) i * step * viewport->scale) + 0.5;

    cairo_move_to(cr, x, 0);
    cairo_line_to(cr, x, viewport->height);
  }
  for (long i = (long) ceil(low.y / step); i <= (long) floor(high.y / step); i++) {
    double y = floor(viewport->datum.y + (double) i * step * viewport->scale) + 0.5;

    cairo_move_to(cr, 0, y);
    cairo_line_to(cr, viewport->width, y);
  }
}

void
spv_canvas_paint_mat(cairo_t *cr, const SpvViewport *viewport) {
  double step = spv_viewport_step(viewport, GRID_LEAST);
  double coarser = spv_viewport_coarser(step);
  /* A line that has just come in is faint; it gains as one zooms in, so the grid thins out evenly. */
  double fine = CLAMP((step * viewport->scale - GRID_LEAST) / (4 * GRID_LEAST), 0, 1);

  spv_set_rgb(cr, mat);
  cairo_rectangle(cr, 0, 0, viewport->width, viewport->height);
  cairo_fill(cr);
  cairo_set_line_width(cr, 1);
  cairo_set_source_rgba(cr, 1, 1, 1, 0.04 + 0.06 * fine);
  add_grid(cr, viewport, step);
  cairo_stroke(cr);
  if (coarser > step) {
    cairo_set_source_rgba(cr, 1, 1, 1, 0.1);
    add_grid(cr, viewport, coarser);
    cairo_stroke(cr);
  }
}

/* --- The panel --- */

static void
enter_mm(cairo_t *cr, const SpvViewport *viewport) {
  cairo_save(cr);
  cairo_translate(cr, viewport->datum.x, viewport->datum.y);
  cairo_scale(cr, viewport->scale, viewport->scale);
}

static double
paper_mm(const SpvViewport *viewport) {
  return viewport->scale / SPV_SCREEN_PX_PER_MM;
}

void
spv_canvas_paint_panel(cairo_t *cr, const SpvViewport *viewport, const SpvComposition *composition,
                       SpvDrawMode mode) {
  enter_mm(cr, viewport);
  spv_draw_panel(cr, composition, mode, paper_mm(viewport));
  spv_set_rgb(cr, spv_ink);
  spv_draw_outline(cr, composition->outline, OUTLINE_PX, viewport->scale);
  cairo_restore(cr);
}

void
spv_canvas_paint_guide(cairo_t *cr, const SpvViewport *viewport, const SpvGuide *guide, int layer,
                       double larger) {
  enter_mm(cr, viewport);
  if (layer < 0)
    spv_draw_guide(cr, guide, paper_mm(viewport) / larger);
  else
    spv_draw_guide_of_layer(cr, guide, (guint) layer, paper_mm(viewport) / larger);
  cairo_restore(cr);
}

void
spv_canvas_paint_datum(cairo_t *cr, const SpvViewport *viewport) {
  double x = floor(viewport->datum.x), y = floor(viewport->datum.y), arm = 9;

  /* A light edge keeps the cross in sight on a red panel. */
  for (int pass = 0; pass < 2; pass++) {
    cairo_move_to(cr, x - arm, y);
    cairo_line_to(cr, x + arm, y);
    cairo_move_to(cr, x, y - arm);
    cairo_line_to(cr, x, y + arm);
    if (pass == 0)
      cairo_set_source_rgba(cr, 1, 1, 1, 0.7);
    else
      spv_set_rgb(cr, spv_accent);
    cairo_set_line_width(cr, pass == 0 ? 4 : 2);
    cairo_stroke(cr);
  }
}

void
spv_canvas_paint_handles(cairo_t *cr, const SpvViewport *viewport, const GArray *handles,
                         const SpvHandle *active) {
  double half = SPV_HANDLE_SIDE / 2.0;

  for (guint i = 0; i < handles->len; i++) {
    const SpvHandle *handle = &g_array_index(handles, SpvHandle, i);
    SpvPoint px = spv_viewport_to_px(viewport, handle->at);
    double x = floor(px.x) + 0.5 - half, y = floor(px.y) + 0.5 - half;

    cairo_rectangle(cr, x, y, SPV_HANDLE_SIDE, SPV_HANDLE_SIDE);
    cairo_set_source_rgb(cr, 1, 1, 1);
    cairo_fill(cr);
    spv_set_rgb(cr, spv_accent);
    cairo_set_line_width(cr, 1.5);
    cairo_rectangle(cr, x + 0.75, y + 0.75, SPV_HANDLE_SIDE - 1.5, SPV_HANDLE_SIDE - 1.5);
    cairo_stroke(cr);
    if (handle == active) {
      cairo_rectangle(cr, x + 3, y + 3, SPV_HANDLE_SIDE - 6, SPV_HANDLE_SIDE - 6);
      cairo_fill(cr);
    }
  }
}

/* --- Rulers --- */

static double
tick_length(SpvTickKind kind) {
  switch (kind) {
  case SPV_TICK_LABELLED:
    return 11;
  case SPV_TICK_MIDDLE:
    return 6;
  case SPV_TICK_SMALL:
    return 3;
  }
  return 0;
}

int
spv_canvas_ruler_thickness(PangoLayout *layout) {
  int width, height;

  pango_layout_set_text(layout, "100", -1);
  pango_layout_get_pixel_size(layout, &width, &height);
  return MAX(SPV_RULER_LEAST, MAX(width + 5, height + 8));
}

/* Beside its tick, upright on both rulers, if there is room before the end of LENGTH px. */
static void
paint_label(cairo_t *cr, PangoLayout *layout, const SpvTick *tick, double step, gboolean vertical,
            double thickness, double length) {
  g_autofree char *label = spv_tick_label(tick->mm, step);
  int width, height;

  pango_layout_set_text(layout, label, -1);
  pango_layout_get_pixel_size(layout, &width, &height);
  if (vertical ? tick->px - height - 1 < 0 : tick->px + 3 + width > length)
    return;
  if (vertical)
    cairo_move_to(cr, MAX(thickness - 4 - width, 1), tick->px - height - 1);
  else
    cairo_move_to(cr, tick->px + 3, thickness - 5 - height);
  pango_cairo_show_layout(cr, layout);
}

static void
paint_pointer(cairo_t *cr, gboolean vertical, double thickness, double pointer) {
  double along = floor(pointer) + 0.5;

  if (vertical) {
    cairo_move_to(cr, thickness, along);
    cairo_line_to(cr, thickness - 7, along - 4);
    cairo_line_to(cr, thickness - 7, along + 4);
  } else {
    cairo_move_to(cr, along, thickness);
    cairo_line_to(cr, along - 4, thickness - 7);
    cairo_line_to(cr, along + 4, thickness - 7);
  }
  cairo_close_path(cr);
  cairo_fill(cr);
}

void
spv_canvas_paint_ruler(cairo_t *cr, const SpvViewport *viewport, gboolean vertical, double thickness,
                       PangoLayout *layout, const GdkRGBA *ink, double pointer) {
  g_autoptr(GArray) ticks = spv_viewport_ticks(viewport, vertical);
  double step = spv_viewport_label_step(viewport);

  gdk_cairo_set_source_rgba(cr, ink);
  cairo_set_line_width(cr, 1);
  for (guint i = 0; i < ticks->len; i++) {
    const SpvTick *tick = &g_array_index(ticks, SpvTick, i);
    double at = floor(tick->px) + 0.5, length = tick_length(tick->kind);

    cairo_move_to(cr, vertical ? thickness : at, vertical ? at : thickness);
    cairo_line_to(cr, vertical ? thickness - length : at, vertical ? at : thickness - length);
  }
  cairo_stroke(cr);
  for (guint i = 0; i < ticks->len; i++)
    if (g_array_index(ticks, SpvTick, i).kind == SPV_TICK_LABELLED)
      paint_label(cr, layout, &g_array_index(ticks, SpvTick, i), step, vertical, thickness, viewport->width);
  if (pointer >= 0)
    paint_pointer(cr, vertical, thickness, pointer);
}

/* --- Slips and cards --- */

static void
add_rounded(cairo_t *cr, double x, double y, double width, double height) {
  double r = SLIP_RADIUS;

  cairo_new_sub_path(cr);
  cairo_arc(cr, x + width - r, y + r, r, -G_PI / 2, 0);
  cairo_arc(cr, x + width - r, y + height - r, r, 0, G_PI / 2);
  cairo_arc(cr, x + r, y + height - r, r, G_PI / 2, G_PI);
  cairo_arc(cr, x + r, y + r, r, G_PI, 1.5 * G_PI);
  cairo_close_path(cr);
}

static void
paint_paper(cairo_t *cr, double x, double y, double width, double height) {
  add_rounded(cr, x, y, width, height);
  cairo_set_source_rgb(cr, 0.973, 0.969, 0.957);
  cairo_fill(cr);
}

void
spv_canvas_paint_title(cairo_t *cr, PangoLayout *layout, double x, double y) {
  int width, height;

  pango_layout_get_pixel_size(layout, &width, &height);
  add_rounded(cr, x - SLIP_PAD, y - SLIP_PAD / 2, width + 2 * SLIP_PAD, height + SLIP_PAD);
  spv_set_rgb(cr, mat);
  cairo_fill(cr);
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_move_to(cr, x, y);
  pango_cairo_show_layout(cr, layout);
}

void
spv_canvas_paint_slip(cairo_t *cr, PangoLayout *layout, SpvPoint px, double width, double height) {
  int text_width, text_height;
  double w, h, x, y;

  pango_layout_get_pixel_size(layout, &text_width, &text_height);
  w = text_width + 2 * SLIP_PAD;
  h = text_height + SLIP_PAD;
  x = CLAMP(px.x + 14, 0, MAX(width - w, 0));
  y = px.y - 14 - h < 0 ? MIN(px.y + 18, MAX(height - h, 0)) : px.y - 14 - h;
  paint_paper(cr, floor(x), floor(y), w, h);
  spv_set_rgb(cr, spv_ink);
  cairo_move_to(cr, floor(x) + SLIP_PAD, floor(y) + SLIP_PAD / 2);
  pango_cairo_show_layout(cr, layout);
}

void
spv_canvas_paint_true_size(cairo_t *cr, const SpvComposition *composition, SpvDrawMode mode, double scale,
                           PangoLayout *layout, double width, double height) {
  SpvBox bounds = spv_outline_bounds(composition->outline);
  double panel_width = scale * spv_box_width(bounds), panel_height = scale * spv_box_height(bounds);
  int text_width, text_height;
  double w, h, x, y;

  pango_layout_get_pixel_size(layout, &text_width, &text_height);
  w = MAX(MAX(panel_width, text_width) + 2 * CARD_PAD, scale > 0 ? CARD_LEAST : 0);
  h = MAX(panel_height + text_height + 3 * CARD_PAD, scale > 0 ? CARD_LEAST : 0) - (scale > 0 ? 0 : CARD_PAD);
  x = floor(width - CARD_PAD - w);
  y = floor(height - CARD_PAD - h);
  paint_paper(cr, x, y, w, h);
  spv_set_rgb(cr, spv_ink);
  cairo_move_to(cr, floor(x + (w - text_width) / 2), floor(y + h - CARD_PAD / 2 - text_height));
  pango_cairo_show_layout(cr, layout);
  if (scale <= 0)
    return;
  cairo_save(cr);
  cairo_translate(cr, x + w / 2 - scale * spv_box_centre(bounds).x,
                  y + (h - text_height - CARD_PAD / 2) / 2 - scale * spv_box_centre(bounds).y);
  cairo_scale(cr, scale, scale);
  spv_draw_panel(cr, composition, mode, scale / SPV_SCREEN_PX_PER_MM);
  spv_set_rgb(cr, spv_ink);
  spv_draw_outline(cr, composition->outline, 1, scale);
  cairo_restore(cr);
}
