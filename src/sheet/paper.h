/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Paper sizes, and the things in a painter's pocket that prove a scale. */
#pragma once

#include <glib.h>

typedef struct {
  const char *key;      /* "a4" */
  const char *label;    /* "A4" */
  double width, height; /* mm, upright */
} SpvPaper;

/* The papers: A4, A5 (ISO 216), Letter (ANSI/ASME Y14.1); their number goes to N. */
const SpvPaper *spv_papers(guint *n);
/* NULL when there is no such paper. */
const SpvPaper *spv_paper_from_key(const char *key);

/* ID-1, the size of a bank card: ISO/IEC 7810; the corner radius is the middle of its 2.88-3.48 mm. */
#define SPV_CARD_WIDTH 85.60
#define SPV_CARD_HEIGHT 53.98
#define SPV_CARD_RADIUS 3.18

/* The calibration bar, mm. */
#define SPV_BAR_LENGTH 100.0
