/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The two parts of the frame that hold words of the scheme. */
#pragma once

#include "sheet/page-frame.h"

#define SPV_LINE_FRAME 0.25
#define SPV_LINE_FINE 0.1

/* The tinctures of the sheet, the letter, a swatch and the name of each, inside BOX; how many more there are
 * where they do not all fit. */
void spv_legend_draw(cairo_t *cr, SpvBox box, const SpvFrameWords *words);

/* How high the title block is that stands beside the bar, mm. */
double spv_title_block_height(void);

/* The fields of ISO 7200 that a guide sheet has, filling BOX. */
void spv_title_block_draw(cairo_t *cr, SpvBox box, const SpvFrameWords *words);
