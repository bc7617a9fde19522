/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Outlines: the family's right half, mirrored, flattened and measured. */
#include "config.h"

#include "heraldry/outline.h"

#include <glib/gi18n-lib.h>

#include "heraldry/outline-private.h"

struct _SpvOutline {
  SpvOutlineSpec spec;
  SpvPath *path;
  SpvTrack *track;
  SpvShape *shape;
  double chief_end, base_start; /* along the track, on the viewer's right */
  gatomicrefcount refs;
};

G_DEFINE_QUARK(spv_outline_error, spv_outline_error)

const char *
spv_edge_key(SpvEdge edge) {
  static const char *const keys[SPV_N_EDGES] = {
    [SPV_EDGE_CHIEF] = "chief",
    [SPV_EDGE_SINISTER] = "sinister",
    [SPV_EDGE_BASE] = "base",
    [SPV_EDGE_DEXTER] = "dexter",
  };
  g_return_val_if_fail((guint) edge < SPV_N_EDGES, NULL);
  return keys[edge];
}

static gboolean
check_size(double value, const char *what, GError **error) {
  if (isfinite(value) && value >= SPV_OUTLINE_MIN_MM && value <= SPV_OUTLINE_MAX_MM)
    return TRUE;
  /* TRANSLATORS: "the width" or "the height". */
  g_set_error(error, SPV_OUTLINE_ERROR, SPV_OUTLINE_ERROR_RANGE, _("%s must be from 0.5 to 500\u2009mm"),
              what);
  return FALSE;
}

gboolean
spv_outline_spec_check(const SpvOutlineSpec *spec, GError **error) {
  const SpvFamily *family = spv_outline_family(spec->family);

  if (!check_size(spec->width, _("the width"), error) || !check_size(spec->height, _("the height"), error))
    return FALSE;
  for (guint i = 0; i < family->info.n_own; i++)
    if (!isfinite(spec->own[i]) || spec->own[i] < 0) {
      g_set_error(error, SPV_OUTLINE_ERROR, SPV_OUTLINE_ERROR_RANGE, _("“%s” must not be below 0"),
                  _(family->info.own[i].label));
      return FALSE;
    }
  return family->check(spec, error);
}

void
spv_outline_spec_preset(SpvOutlineFamily family, double width, double height, SpvOutlineSpec *spec) {
  *spec = (SpvOutlineSpec){ .family = family, .width = width, .height = height };
  spv_outline_family(family)->preset(spec);
}

/* STEP mirrored about the centre line and run backwards, so that it ends at TO. */
static void
add_mirrored(SpvPathBuilder *builder, const SpvPathStep *step, SpvPoint to) {
  switch (step->op) {
  case SPV_PATH_LINE:
    spv_path_builder_line(builder, to);
    break;
  case SPV_PATH_CURVE:
    spv_path_builder_curve(builder, spv_point(-step->c2.x, step->c2.y), spv_point(-step->c1.x, step->c1.y),
                           to);
    break;
  case SPV_PATH_ARC:
    spv_path_builder_arc(builder, spv_point(-step->centre.x, step->centre.y), step->radius,
                         G_PI - step->start - step->sweep, step->sweep);
    break;
  case SPV_PATH_MOVE:
  case SPV_PATH_CLOSE:
    g_assert_not_reached();
  }
}

static SpvPath *
outline_path(const SpvOutlineSpec *spec) {
  g_autoptr(GArray) steps = g_array_new(FALSE, FALSE, sizeof(SpvPathStep));
  SpvHalf half = { steps, { 0, 0 } };
  SpvPathBuilder *builder = spv_path_builder_new();

  spv_outline_family(spec->family)->draw(spec, &half);
  spv_path_builder_move(builder, spv_point(0, 0));
  for (guint i = 0; i < steps->len; i++)
    spv_path_builder_step(builder, &g_array_index(steps, SpvPathStep, i));
  for (guint i = steps->len; i-- > 0;) {
    SpvPoint start = i > 0 ? g_array_index(steps, SpvPathStep, i - 1).to : spv_point(0, 0);
    add_mirrored(builder, &g_array_index(steps, SpvPathStep, i), spv_point(-start.x, start.y));
  }
  spv_path_builder_close(builder);
  return spv_path_builder_build(builder);
}

/* Which way the segment from A to B faces, clockwise from up: up 0, to the right π/2, down π, and on to 3π/2
 * in the notch of a banner's tails. */
static double
facing(SpvPoint a, SpvPoint b) {
  double angle = atan2(b.y - a.y, b.x - a.x);
  return angle < -G_PI / 2 ? angle + 2 * G_PI : angle;
}

/* Where, from S on, the outline first faces more towards ANGLE (radians clockwise from up) than before: the
 * edges part where the outline faces 45 degrees between. Along a flattened curve the facing turns evenly from
 * the middle of one segment to the middle of the next; at a corner the corner itself is the place. */
static double
turning_place(const SpvTrack *track, double from, double angle) {
  gsize n;
  const SpvPoint *points = spv_track_points(track, &n);
  double s = 0, last_middle = 0, last = 0;

  for (gsize i = 0; i < n; i++) {
    SpvPoint a = points[i], b = points[(i + 1) % n];
    double length = spv_point_distance(a, b), now = facing(a, b);

    if (now > angle && s + length > from) {
      double turn = now - last, middle = s + length / 2;
      if (turn > G_PI / 9 || turn <= 0)
        return s;
      return CLAMP(last_middle + (middle - last_middle) * (angle - last) / turn, from, middle);
    }
    last = now;
    last_middle = s + length / 2;
    s += length;
  }
  return s / 2;
}

/* How the right half faces where it meets the centre line at the foot; a foot that turns there by less than
 * 20 degrees is a level one, flattened. */
static double
facing_at_foot(const SpvTrack *track) {
  gsize n;
  const SpvPoint *points = spv_track_points(track, &n);
  double s = 0, half = spv_track_length(track) / 2;

  for (gsize i = 0; i < n; i++) {
    SpvPoint a = points[i], b = points[(i + 1) % n];
    s += spv_point_distance(a, b);
    if (s >= half - 1e-6)
      return facing(a, b) > G_PI * 17 / 18 ? G_PI : facing(a, b);
  }
  return G_PI;
}

SpvOutline *
spv_outline_new(const SpvOutlineSpec *spec) {
  SpvOutline *outline = g_new0(SpvOutline, 1);
  g_autoptr(GPtrArray) rings = NULL;
  SpvRing *ring;

  outline->spec = *spec;
  outline->path = outline_path(spec);
  rings = spv_path_flatten(outline->path, SPV_CHORD_ERROR);
  ring = g_ptr_array_index(rings, 0);
  outline->track = spv_track_new(ring->points, ring->n_points, TRUE);
  outline->shape = spv_shape_new_from_path(outline->path);
  outline->chief_end = turning_place(outline->track, 0, G_PI / 4);
  /* Half-way from facing sideways to facing as the foot does: a level foot gives 45 degrees, a pointed one
   * less. */
  outline->base_start = turning_place(outline->track, outline->chief_end,
                                      MIN(3 * G_PI / 4, (G_PI / 2 + facing_at_foot(outline->track)) / 2));
  g_atomic_ref_count_init(&outline->refs);
  return outline;
}

SpvOutline *
spv_outline_ref(const SpvOutline *outline) {
  SpvOutline *own = (SpvOutline *) outline;
  g_atomic_ref_count_inc(&own->refs);
  return own;
}

void
spv_outline_unref(SpvOutline *outline) {
  if (!outline || !g_atomic_ref_count_dec(&outline->refs))
    return;
  spv_path_unref(outline->path);
  spv_track_unref(outline->track);
  spv_shape_unref(outline->shape);
  g_free(outline);
}

double
spv_outline_width(const SpvOutline *outline) {
  return outline->spec.width;
}

double
spv_outline_height(const SpvOutline *outline) {
  return outline->spec.height;
}

SpvBox
spv_outline_bounds(const SpvOutline *outline) {
  double w = outline->spec.width / 2;
  return (SpvBox){ -w, 0, w, outline->spec.height };
}

const SpvPath *
spv_outline_path(const SpvOutline *outline) {
  return outline->path;
}

const SpvTrack *
spv_outline_track(const SpvOutline *outline) {
  return outline->track;
}

const SpvShape *
spv_outline_shape(const SpvOutline *outline) {
  return outline->shape;
}

void
spv_outline_edge(const SpvOutline *outline, SpvEdge edge, double *s0, double *s1) {
  double length = spv_track_length(outline->track);

  switch (edge) {
  case SPV_EDGE_CHIEF:
    *s0 = -outline->chief_end;
    *s1 = outline->chief_end;
    break;
  case SPV_EDGE_SINISTER:
    *s0 = outline->chief_end;
    *s1 = outline->base_start;
    break;
  case SPV_EDGE_BASE:
    *s0 = outline->base_start;
    *s1 = length - outline->base_start;
    break;
  case SPV_EDGE_DEXTER:
    *s0 = length - outline->base_start;
    *s1 = length - outline->chief_end;
    break;
  }
}

static double
wrapped(const SpvOutline *outline, double s) {
  double length = spv_track_length(outline->track);
  s = fmod(s, length);
  return s < 0 ? s + length : s;
}

SpvEdge
spv_outline_edge_at(const SpvOutline *outline, double s) {
  double length = spv_track_length(outline->track);

  s = wrapped(outline, s);
  if (s <= outline->chief_end || s >= length - outline->chief_end)
    return SPV_EDGE_CHIEF;
  if (s < outline->base_start)
    return SPV_EDGE_SINISTER;
  return s <= length - outline->base_start ? SPV_EDGE_BASE : SPV_EDGE_DEXTER;
}

double
spv_outline_along_edge(const SpvOutline *outline, double s) {
  SpvEdge edge = spv_outline_edge_at(outline, s);
  double s0 = 0, s1 = 0;

  spv_outline_edge(outline, edge, &s0, &s1);
  s = wrapped(outline, s);
  switch (edge) {
  case SPV_EDGE_CHIEF:
    return s > s1 ? s - spv_track_length(outline->track) - s0 : s - s0;
  case SPV_EDGE_SINISTER:
    return s - s0;
  case SPV_EDGE_BASE:
  case SPV_EDGE_DEXTER:
    return s1 - s;
  }
  return 0;
}

double
spv_outline_from_datum(const SpvOutline *outline, double s) {
  double length = spv_track_length(outline->track);
  s = wrapped(outline, s);
  return s > length / 2 ? s - length : s;
}
