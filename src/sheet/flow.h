/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cards flow over sheets: in two columns, wide ones across both at the top, none over another. First all
 * enlargements get the same size, the largest with which the sheets are fewest; then those of each sheet grow
 * into what is left of it, the smallest first (packing.h). Millimetres on the page. */
#pragma once

#include "sheet/card.h"
#include "sheet/page-frame.h"

typedef struct {
  SpvCard *card; /* owned */
  SpvPoint at;
} SpvPlacedCard;

typedef struct {
  GPtrArray *cards; /* SpvPlacedCard, in the order of the harness, the wide ones first */
} SpvPage;

void spv_page_free(SpvPage *page);

/* Lays the cards of SUBJECTS (SpvSubject) out in FRAME. Returns the pages (SpvPage); NULL, with MISFIT set to
 * the subject, when one can't go on this paper. */
GPtrArray *spv_flow(cairo_t *measuring, GPtrArray *subjects, const SpvCardOptions *options,
                    const SpvPageFrame *frame, const SpvSubject **misfit);
