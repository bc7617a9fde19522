/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the tables of a card say: the offsets of its dots and rulings. */
#pragma once

#include <cairo.h>

#include "guide/guide.h"

/* The tables of GUIDE (SpvOffsetTable), without those that would be empty. Where the rulings' table would be
 * wider than ROOM, mm on paper, it does without the columns that only help. */
GPtrArray *spv_tables_new(cairo_t *measuring, const SpvGuide *guide, double room);

/* How to read the tables, in a sentence or two. */
const char *spv_tables_note(void);
