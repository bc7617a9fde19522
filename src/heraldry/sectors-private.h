/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sectors about a point, bounded by arms that may bear a line of partition. */
#pragma once

#include "heraldry/lay-private.h"
#include "heraldry/profile.h"

#define SPV_MOST_ARMS 16

typedef struct {
  SpvPoint centre;
  guint n;                            /* arms: 3 to SPV_MOST_ARMS */
  SpvPoint directions[SPV_MOST_ARMS]; /* of length 1, clockwise from one to the next, once round */
  guint slots[SPV_MOST_ARMS];         /* of the sector that comes clockwise after each arm */
  double sides[SPV_MOST_ARMS]; /* where the crests of each arm stand: 1 clockwise of it, -1 the other way */
} SpvSectors;

/* Fills DRAFT's first N_SLOTS areas. LINE is whole on each arm, from where the sectors beside it have room
 * for its teeth to where the arm leaves OUTLINE; nearer to the centre the arms are straight, so that all meet
 * in one point and no two cross. Teeth are no deeper than there is room for half way out. */
void spv_sectors_lay(const SpvSectors *sectors, const SpvLine *line, const SpvOutline *outline, guint n_slots,
                     SpvDraft *draft);
