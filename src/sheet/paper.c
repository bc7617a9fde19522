/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/paper.h"

/* ISO 216 for A4 and A5; ANSI/ASME Y14.1, size A, 8.5 by 11 in, for Letter. */
static const SpvPaper papers[] = {
  { "a4", "A4", 210.0, 297.0 },
  { "a5", "A5", 148.0, 210.0 },
  { "letter", "Letter", 215.9, 279.4 },
};

const SpvPaper *
spv_papers(guint *n) {
  *n = G_N_ELEMENTS(papers);
  return papers;
}

const SpvPaper *
spv_paper_from_key(const char *key) {
  for (gsize i = 0; i < G_N_ELEMENTS(papers); i++)
    if (g_strcmp0(key, papers[i].key) == 0)
      return &papers[i];
  return NULL;
}
