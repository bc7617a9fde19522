/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cards flow over sheets: each on the first sheet that has room for it, in the order of the harness; none
 * overlaps another. Of an ample and some thriftier layouts the one with the fewest sheets is taken, and then
 * what is left of them is used up. Millimetres on the page. */
#pragma once

#include "sheet/card.h"
#include "sheet/frame.h"

typedef struct {
  SpvCard *card;
  SpvPoint at;
} SpvPlacedCard;

typedef struct {
  GPtrArray *cards;  /* SpvPlacedCard, in the order in which they were placed */
  double bottoms[2]; /* where each of the two columns is free from; a wide card takes both */
} SpvPage;

/* White between cards. */
#define SPV_PAGE_GAP 4.0

void spv_page_free(SpvPage *page);

/* Lays the cards of SUBJECTS (SpvSubject) out in FREE. Returns the pages (SpvPage); NULL, with MISFIT set to
 * the subject, when one can't go on this paper. */
GPtrArray *spv_flow(cairo_t *measuring, GPtrArray *subjects, const SpvCardOptions *options, SpvBox free_box,
                    const SpvSubject **misfit);
