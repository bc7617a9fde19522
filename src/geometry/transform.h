/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Affine transforms of points and paths: plain values, passed by copy. */
#pragma once

#include "geometry/path.h"

/* x' = a x + c y + e, y' = b x + d y + f: the order of SVG's matrix(). */
typedef struct {
  double a, b, c, d, e, f;
} SpvTransform;

#define SPV_TRANSFORM_IDENTITY ((SpvTransform){ 1, 0, 0, 1, 0, 0 })

static inline SpvPoint
spv_transform_point(SpvTransform t, SpvPoint p) {
  return (SpvPoint){ t.a * p.x + t.c * p.y + t.e, t.b * p.x + t.d * p.y + t.f };
}

static inline gboolean
spv_transform_is_identity(SpvTransform t) {
  return t.a == 1 && t.b == 0 && t.c == 0 && t.d == 1 && t.e == 0 && t.f == 0;
}

/* First INNER, then OUTER. */
SpvTransform spv_transform_compose(SpvTransform outer, SpvTransform inner);
/* A turn by ANGLE radians (clockwise on screen) about (0, 0), then a shift to AT. */
SpvTransform spv_transform_turn(double angle, SpvPoint at);
/* Scaled by FACTOR about (0, 0), turned by ANGLE, then shifted to AT. */
SpvTransform spv_transform_place(double factor, double angle, SpvPoint at);
/* The mirror in the vertical line x = 0. */
#define SPV_TRANSFORM_MIRROR ((SpvTransform){ -1, 0, 0, 1, 0, 0 })
/* FALSE where T flattens the plane to a line. */
gboolean spv_transform_invert(SpvTransform t, SpvTransform *inverse);

/* PATH under T. Arcs stay arcs under turns, shifts, mirrors and even scaling; otherwise they become curves
 * within 1e-4 of their radius. Where T mirrors, every run is turned round, so that what added still adds and
 * what cut a hole still cuts one. */
SpvPath *spv_path_transform(const SpvPath *path, SpvTransform t);
/* PATH with every run from its end to its start. */
SpvPath *spv_path_reverse(const SpvPath *path);
/* Adds the open or closed runs of PATH to the run that is open in BUILDER: a line joins it to their start.
 * The run stays open. */
void spv_path_builder_join(SpvPathBuilder *builder, const SpvPath *path);
