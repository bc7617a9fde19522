/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What laid-out sheets are made of: for this room and its tests. */
#pragma once

#include "sheet/flow.h"
#include "sheet/sheet.h"

struct _SpvSheets {
  SpvScheme *scheme;
  const SpvPaper *paper;
  SpvDrawMode mode;
  char *date; /* NULL for none */
  SpvPageFrame *frame;
  GPtrArray *subjects; /* SpvSubject */
  GPtrArray *pages;    /* SpvPage */
};
