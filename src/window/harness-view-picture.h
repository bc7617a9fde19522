/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A panel of the harness as it was drawn last, kept until the panel or the scale is another one: editing one
 * panel draws only that one anew. */
#pragma once

#include <gdk/gdk.h>

#include "draw/draw.h"

/* All zeros: nothing drawn yet. */
typedef struct {
  SpvComposition *composition;
  GdkTexture *texture;
  double scale; /* px of the texture a mm */
} SpvPanelPicture;

/* Draws COMPOSITION at SCALE px a mm with an outline LINE px thick, unless that is what PICTURE holds. */
void spv_panel_picture_update(SpvPanelPicture *picture, const SpvComposition *composition, double scale,
                              double line, SpvRgb outline);
/* What the picture covers, mm on the panel: a little more than the panel, for the outline's line. */
SpvBox spv_panel_picture_box(const SpvPanelPicture *picture);
/* Lets go of what PICTURE (SpvPanelPicture) holds. */
void spv_panel_picture_clear(gpointer picture);
