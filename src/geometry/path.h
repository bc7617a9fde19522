/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An analytic path: lines, cubic curves and circular arcs in closed or open runs. Sealed and counted: a
 * builder makes it, then nothing changes it, so any thread may read it. Filled with the non-zero rule: a run
 * that goes clockwise on screen (positive area, y down) adds, one that goes the other way cuts a hole. */
#pragma once

#include "geometry/point.h"

/* How far a polyline may stray from the curve it stands for, mm. The design allows 0.005; a fifth of that
 * keeps arc lengths true to 0.05 mm on the smallest panel. */
#define SPV_CHORD_ERROR 0.001

typedef enum {
  SPV_PATH_MOVE,  /* start a run at `to` */
  SPV_PATH_LINE,  /* straight to `to` */
  SPV_PATH_CURVE, /* cubic Bézier by `c1`, `c2` to `to` */
  SPV_PATH_ARC,   /* circular arc about `centre` from angle `start` through `sweep`, ending at `to` */
  SPV_PATH_CLOSE  /* straight back to the run's start */
} SpvPathOp;

typedef struct {
  SpvPathOp op;
  SpvPoint to;         /* end point; for CLOSE the run's start */
  SpvPoint c1, c2;     /* CURVE only */
  SpvPoint centre;     /* ARC only */
  double radius;       /* ARC only, mm */
  double start, sweep; /* ARC only, radians; a positive sweep goes clockwise on screen */
} SpvPathStep;

typedef struct _SpvPath SpvPath;
typedef struct _SpvPathBuilder SpvPathBuilder;

/* A closed polyline: the last point joins the first, which is not repeated. */
typedef struct {
  SpvPoint *points;
  gsize n_points;
} SpvRing;

/* Numbers must be finite. Where no run is open (at the start and after a close), a line starts one at its
 * `to` and a curve at its `c1`. */
SpvPathBuilder *spv_path_builder_new(void);
void spv_path_builder_move(SpvPathBuilder *builder, SpvPoint to);
void spv_path_builder_line(SpvPathBuilder *builder, SpvPoint to);
void spv_path_builder_curve(SpvPathBuilder *builder, SpvPoint c1, SpvPoint c2, SpvPoint to);
/* Adds an arc of RADIUS >= 0; the run is first joined to the arc's start by a line if it is elsewhere (or
 * started there if no run is open). A sweep of 2π ends exactly where it began. */
void spv_path_builder_arc(SpvPathBuilder *builder, SpvPoint centre, double radius, double start,
                          double sweep);
/* Closes the run; nothing if none is open. */
void spv_path_builder_close(SpvPathBuilder *builder);
/* Adds one step, as the function for its kind does. */
void spv_path_builder_step(SpvPathBuilder *builder, const SpvPathStep *step);
/* Adds every step of PATH. */
void spv_path_builder_path(SpvPathBuilder *builder, const SpvPath *path);
/* Adds one closed run through N points. */
void spv_path_builder_polygon(SpvPathBuilder *builder, const SpvPoint *points, gsize n);
/* Consumes BUILDER. */
SpvPath *spv_path_builder_build(SpvPathBuilder *builder);
/* Frees a builder whose path is not wanted. */
void spv_path_builder_free(SpvPathBuilder *builder);

SpvPath *spv_path_ref(const SpvPath *path);
void spv_path_unref(SpvPath *path);

SpvPath *spv_path_new_polygon(const SpvPoint *points, gsize n);
/* Clockwise, whichever way round BOX is given. */
SpvPath *spv_path_new_box(SpvBox box);
SpvPath *spv_path_new_circle(SpvPoint centre, double radius);

/* The steps, owned by PATH; their number goes to N. */
const SpvPathStep *spv_path_steps(const SpvPath *path, gsize *n);
gboolean spv_path_is_empty(const SpvPath *path);

/* The box of the flattened path (so within SPV_CHORD_ERROR of the curve's own); a zero box when empty. */
SpvBox spv_path_bounds(const SpvPath *path);

/* Every run as a closed ring with at least 3 points, none repeated in a row, within TOLERANCE (mm, > 0) of
 * the curve. Returns a GPtrArray of SpvRing, owned by the caller (it frees its rings). Open runs are closed;
 * a run with fewer than 3 different points is left out. */
GPtrArray *spv_path_flatten(const SpvPath *path, double tolerance);

/* Non-zero test on the path flattened at SPV_CHORD_ERROR. A point on the edge counts as inside or outside,
 * whichever rounding gives. */
gboolean spv_path_contains(const SpvPath *path, SpvPoint point);

SpvRing *spv_ring_new(const SpvPoint *points, gsize n);
void spv_ring_free(SpvRing *ring);
/* Shoelace area, mm²: positive when the ring runs clockwise on screen (y down). */
double spv_ring_area(const SpvRing *ring);
/* Length round the ring, mm. */
double spv_ring_length(const SpvRing *ring);
SpvBox spv_ring_bounds(const SpvRing *ring);
/* Whether the ring is convex within 1e-9 mm, run either way round: it turns to one side only, and once round.
 * Points that lie straight on are allowed; a ring without area, or with a spike, isn't convex. */
gboolean spv_ring_is_convex(const SpvRing *ring);
/* How often the ring winds round POINT: 0 outside. */
int spv_ring_winding(const SpvRing *ring, SpvPoint point);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvPath, spv_path_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvPathBuilder, spv_path_builder_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvRing, spv_ring_free)
