/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Points and boxes: millimetres, x to the viewer's right, y down. Plain values, passed by copy. */
#pragma once

#include <glib.h>
#include <math.h>

typedef struct {
  double x, y; /* mm */
} SpvPoint;

/* An axis-parallel box from (x0, y0), the upper left, to (x1, y1), the lower right; mm. */
typedef struct {
  double x0, y0, x1, y1;
} SpvBox;

static inline SpvPoint
spv_point(double x, double y) {
  return (SpvPoint){ x, y };
}

static inline SpvPoint
spv_point_add(SpvPoint a, SpvPoint b) {
  return (SpvPoint){ a.x + b.x, a.y + b.y };
}

static inline SpvPoint
spv_point_subtract(SpvPoint a, SpvPoint b) {
  return (SpvPoint){ a.x - b.x, a.y - b.y };
}

static inline SpvPoint
spv_point_scale(SpvPoint a, double factor) {
  return (SpvPoint){ a.x * factor, a.y * factor };
}

/* The point a fraction T of the way from A (0) to B (1); T may lie outside. */
static inline SpvPoint
spv_point_between(SpvPoint a, SpvPoint b, double t) {
  return (SpvPoint){ a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t };
}

static inline double
spv_point_dot(SpvPoint a, SpvPoint b) {
  return a.x * b.x + a.y * b.y;
}

/* Positive when B lies clockwise of A as seen on screen (y down). */
static inline double
spv_point_cross(SpvPoint a, SpvPoint b) {
  return a.x * b.y - a.y * b.x;
}

static inline double
spv_point_length(SpvPoint a) {
  return hypot(a.x, a.y);
}

static inline double
spv_point_distance(SpvPoint a, SpvPoint b) {
  return hypot(a.x - b.x, a.y - b.y);
}

/* A turned by a quarter clockwise on screen (y down): right becomes down. */
static inline SpvPoint
spv_point_quarter_turn(SpvPoint a) {
  return (SpvPoint){ -a.y, a.x };
}

/* A scaled to length 1; (0, 0) stays (0, 0). */
static inline SpvPoint
spv_point_unit(SpvPoint a) {
  double length = hypot(a.x, a.y);
  return length > 0 ? (SpvPoint){ a.x / length, a.y / length } : a;
}

/* How far P lies from the segment from A to B, which may be one point. */
static inline double
spv_point_to_segment(SpvPoint p, SpvPoint a, SpvPoint b) {
  SpvPoint along = spv_point_subtract(b, a);
  double squared = spv_point_dot(along, along);
  double t = squared > 0 ? spv_point_dot(spv_point_subtract(p, a), along) / squared : 0;
  return spv_point_distance(p, spv_point_between(a, b, CLAMP(t, 0, 1)));
}

static inline double
spv_box_width(SpvBox box) {
  return box.x1 - box.x0;
}

static inline double
spv_box_height(SpvBox box) {
  return box.y1 - box.y0;
}

static inline SpvPoint
spv_box_centre(SpvBox box) {
  return (SpvPoint){ (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
}

/* BOX grown by MARGIN on every side. */
static inline SpvBox
spv_box_grow(SpvBox box, double margin) {
  return (SpvBox){ box.x0 - margin, box.y0 - margin, box.x1 + margin, box.y1 + margin };
}

/* The smallest box that holds both. */
static inline SpvBox
spv_box_join(SpvBox a, SpvBox b) {
  return (SpvBox){ MIN(a.x0, b.x0), MIN(a.y0, b.y0), MAX(a.x1, b.x1), MAX(a.y1, b.y1) };
}

static inline gboolean
spv_box_overlaps(SpvBox a, SpvBox b) {
  return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}
