/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the makers of handles share. A maker works in the mm of what its layer is laid on; the handles are
 * brought to the panel's when all are made. */
#pragma once

#include "heraldry/arrange.h"
#include "window/canvas-handles.h"

/* How far from its pivot a turning handle stands, as a part of the smaller measure. */
#define SPV_HANDLE_ARM 0.32

typedef struct {
  const SpvPattern *pattern;
  const SpvFrame *frame;     /* what it is laid on, already mirrored where the layer is */
  const SpvOutline *outline; /* the frame's */
  const SpvDraft *draft;     /* in the frame's mm; NULL for charges, which are arranged, not ruled */
  double width, height, smaller;
  SpvPoint middle; /* of half the height on the centre line */
  GArray *handles;
} SpvHandleMaking;

/* Measure KEY in the core's units; FALLBACK where the pattern works it out, or has none such. */
double spv_making_value(const SpvHandleMaking *making, const char *key, double fallback);
/* Whether KEY is a measure that counts, and is given. */
gboolean spv_making_is_given(const SpvHandleMaking *making, const char *key);

/* Each adds a handle of measure KEY, unless the pattern has none such or it does not count. See the
 * motions. */
void spv_making_slide(SpvHandleMaking *making, const char *key, SpvPoint foot, SpvPoint direction,
                      double value);
/* The same, its foot so that it stands at AT now. */
void spv_making_slide_at(SpvHandleMaking *making, const char *key, SpvPoint at, SpvPoint direction,
                         double value);
void spv_making_move(SpvHandleMaking *making, const char *across, const char *down, SpvPoint foot,
                     SpvPoint values);
/* FACTOR: the measure is so many times the angle from ZERO, clockwise when SENSE is 1. */
void spv_making_turn(SpvHandleMaking *making, const char *key, SpvPoint foot, SpvPoint zero, double sense,
                     double factor, double value);
/* WHOLE runs over all the pieces. */
void spv_making_divide(SpvHandleMaking *making, const char *key, SpvPoint foot, SpvPoint whole, double count);

/* What the pattern ruled: the line called NUMBER of KIND, or NULL. */
const SpvDraftLine *spv_making_line(const SpvHandleMaking *making, SpvLineKind kind, guint number);
/* How far the parallel lines FIRST and SECOND are from each other, mm; FALLBACK where one is missing. */
double spv_making_between(const SpvHandleMaking *making, guint first, guint second, double fallback);
/* The slope that the pattern took, radians from the level. */
double spv_making_slope(const SpvHandleMaking *making);
/* From the first edge of the outline to the last, in unit DIRECTION. */
void spv_making_extent(const SpvHandleMaking *making, SpvPoint direction, double *low, double *high);

/* The handles of the line of partition where it runs through AT along unit ALONG, LENGTH mm long. Its teeth
 * are at most DEEPEST mm deep where no depth is given. */
void spv_making_profile(SpvHandleMaking *making, SpvPoint at, SpvPoint along, double length, double deepest);
/* The same on the straight line NUMBER that the pattern ruled: PART of the way along what of it lies on the
 * outline. */
void spv_making_profile_on(SpvHandleMaking *making, guint number, double part, double deepest);

/* Who makes the handles of the kinds from FIRST to LAST. */
typedef struct {
  SpvPatternKind first, last;
  void (*make)(SpvHandleMaking *making);
} SpvHandleMaker;

/* One table a group of kinds, each ending with a row without a maker. */
extern const SpvHandleMaker spv_handles_of_divisions[], spv_handles_of_varied[], spv_handles_of_ordinaries[],
    spv_handles_of_borders[], spv_handles_of_charges[], spv_handles_of_own[];

/* Makers that two tables share. */
void spv_handles_of_band(SpvHandleMaking *making);
void spv_handles_of_chevron(SpvHandleMaking *making);
void spv_handles_of_charge(SpvHandleMaking *making);
void spv_handles_of_lettering(SpvHandleMaking *making);
/* Where three lines meet, and how wide the upper two are apart. */
void spv_handles_of_fork(SpvHandleMaking *making);
