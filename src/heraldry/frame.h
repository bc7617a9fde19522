/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a pattern is laid on: the panel itself, or another pattern on it, such as a bend that bears charges or
 * a check. Sealed and counted. */
#pragma once

#include "geometry/transform.h"
#include "heraldry/outline.h"

typedef struct {
  SpvOutline *outline; /* what is laid on, in the frame's own mm: its datum is (0, 0) */
  SpvTransform place;  /* from the frame's mm to the panel's: a turn, a shift, and maybe a mirror */
  double breadth;      /* mm: how wide the limb is that charges have to fit; 0 where there is no limb */
  GPtrArray *spines;   /* SpvTrack: the middle of each limb, in the frame's mm, on which charges stand in even
                          spaces; NULL where they stand about the frame's middle */
  /* private */
  gatomicrefcount refs;
} SpvFrame;

/* The whole panel. */
SpvFrame *spv_frame_new(const SpvOutline *outline);
/* The whole panel, with SPINES (SpvTrack; a reference is taken) of limbs BREADTH mm wide, as on a chevron. */
SpvFrame *spv_frame_new_limbs(const SpvOutline *outline, GPtrArray *spines, double breadth);
/* A rectangle WIDTH by HEIGHT mm, both above 0, whose datum (the middle of its top edge) lies at DATUM and
 * whose top edge falls by ANGLE radians towards the viewer's right: a bend, a chief, a canton. Charges on it
 * fit into the lesser side. */
SpvFrame *spv_frame_new_box(SpvPoint datum, double angle, double width, double height);
/* Any other OUTLINE (a reference is taken), such as a charge's, whose datum lies at DATUM and which is turned
 * by ANGLE radians. */
SpvFrame *spv_frame_new_outline(const SpvOutline *outline, SpvPoint datum, double angle);
SpvFrame *spv_frame_ref(const SpvFrame *frame);
void spv_frame_unref(SpvFrame *frame);

/* FRAME as it lies when OUTER, on which it was laid, is moved to its place: the same frame in OUTER's
 * outer coordinates. */
SpvFrame *spv_frame_on(const SpvFrame *frame, const SpvFrame *outer);
/* FRAME as its mirror image in the panel's centre line. */
SpvFrame *spv_frame_mirrored(const SpvFrame *frame);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvFrame, spv_frame_unref)
