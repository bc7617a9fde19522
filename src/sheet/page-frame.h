/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What every sheet has: the frame, the bar and the card outline that prove the scale, the legend of
 * tinctures, the caution and the title block. Millimetres on the page. */
#pragma once

#include <cairo.h>

#include "draw/draw.h"
#include "sheet/paper.h"

/* The frame's distance from the paper's edge: inside of what printers leave white. */
#define SPV_FRAME_MARGIN 8.0

/* White between the two columns. */
#define SPV_COLUMN_GAP 4.0

typedef struct {
  SpvBox frame;
  SpvBox columns[2]; /* for the cards that take one column */
  SpvBox free;       /* for those that take both */
  SpvPoint bar;      /* its left end */
  SpvBox card;       /* the ID-1 outline; it holds the legend, the notes and the caution */
  SpvBox legend;
  SpvBox title;   /* the title block, in the frame's corner */
  SpvPoint notes; /* the left end of their first line's top */
  char **note_lines;
  SpvPoint caution; /* likewise */
  char **caution_lines;
} SpvPageFrame;

/* One field of the title block: what it is called, and what stands in it. */
typedef struct {
  const char *label, *words;
} SpvFrameField;

/* What the title block and the legend of one sheet say. */
typedef struct {
  SpvFrameField title;    /* the scheme's, as a rule */
  SpvFrameField contents; /* what is on this sheet */
  SpvFrameField whole;    /* what the sheets belong to: the harness */
  const char *date;       /* NULL for none */
  guint number, count;
  const SpvScheme *scheme;
  const gboolean *shown; /* one a tincture of the scheme: whether the sheet shows it */
  SpvDrawMode mode;      /* of the legend's swatches */
  gboolean letterless;   /* no tincture is called by its letter on the sheet: the legend leaves them out */
} SpvFrameWords;

/* NOTE stands above the caution on every sheet: how to read its tables. NULL for none. */
SpvPageFrame *spv_page_frame_new(cairo_t *measuring, const SpvPaper *paper, const char *note);
void spv_page_frame_free(SpvPageFrame *frame);

/* The sentence that makes a sheet true: on the sheet and in the files. */
const char *spv_scale_statement(void);

void spv_page_frame_draw(cairo_t *cr, const SpvPageFrame *frame, const SpvFrameWords *words);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvPageFrame, spv_page_frame_free)
