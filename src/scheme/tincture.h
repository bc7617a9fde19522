/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A tincture: a named colour of the scheme, and the engraver's hatch that stands for it without colour. */
#pragma once

#include "colour/rgb.h"
#include "heraldry/fur.h"

/* The engraver's patterns: Fox-Davies (1909) pp. 76-77; Elvin (1889); Manual of Heraldry. Tenné follows
 * Fox-Davies and Elvin, where sources part. */
typedef enum {
  SPV_HATCH_ARGENT,  /* plain */
  SPV_HATCH_OR,      /* dots */
  SPV_HATCH_GULES,   /* upright lines */
  SPV_HATCH_AZURE,   /* level lines */
  SPV_HATCH_SABLE,   /* both crossed */
  SPV_HATCH_VERT,    /* down to the viewer's right */
  SPV_HATCH_PURPURE, /* down to the viewer's left */
  SPV_HATCH_TENNE,   /* the purpure diagonal and level lines */
  SPV_HATCH_SANGUINE /* both diagonals crossed */
} SpvHatch;
#define SPV_N_HATCHES 9

#define SPV_FUR_PARTS 2
#define SPV_FUR_PITCH_MIN 0.05 /* mm */
#define SPV_FUR_PITCH_MAX 500.0

/* A plain value inside a scheme; the strings belong to the scheme. */
typedef struct {
  const char *id;   /* "vert": unique within the scheme, what layers refer to */
  const char *name; /* "deep sea green" */
  SpvRgb colour;
  SpvHatch hatch;
  /* A fur is a pattern of two other tinctures of the scheme, which are no furs. It has no colour and no hatch
   * of its own: in a scheme, its ground's stand there. */
  SpvFur fur;
  const char *of[SPV_FUR_PARTS]; /* ids: the fur's ground, and its spots; NULL where FUR is none */
  double pitch;                  /* mm from spot to spot; 0: as fine as the painter's line holds */
} SpvTincture;

/* "argent", "or", "gules", … as in the file. */
const char *spv_hatch_key(SpvHatch hatch);
gboolean spv_hatch_from_key(const char *key, SpvHatch *hatch);
/* What a new tincture with HATCH looks like until the painter mixes it: common practice, from memory. */
SpvRgb spv_hatch_usual_colour(SpvHatch hatch);

/* Whether PITCH, mm, is one that a fur may have: 0, or between the limits. */
gboolean spv_fur_pitch_is_valid(double pitch);
