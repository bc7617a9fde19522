/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measuring along a polyline. */
#include "geometry/track.h"

/* Neighbours closer than this are one point, and a place this near a corner is the corner, mm. */
#define SAME_POINT 1e-10
#define AT_CORNER 1e-9

/* A turn sharper than this is a corner rather than a step of a flattened curve. */
#define CORNER (20 * G_PI / 180)

struct _SpvTrack {
  gatomicrefcount refs;
  gboolean closed;
  SpvPoint *points;
  gsize n;
  gsize n_segments;
  double *starts; /* where each segment starts, and the whole length after the last */
};

static SpvPoint
segment_end(const SpvTrack *track, gsize i) {
  return track->points[i + 1 == track->n ? 0 : i + 1];
}

static double
segment_length(const SpvTrack *track, gsize i) {
  return track->starts[i + 1] - track->starts[i];
}

/* The unit tangent of segment I; a track without length is taken to run to the right. */
static SpvPoint
segment_tangent(const SpvTrack *track, gsize i) {
  if (track->n_segments == 0)
    return spv_point(1, 0);
  return spv_point_unit(spv_point_subtract(segment_end(track, i), track->points[i]));
}

static gsize
drop_repeats(SpvPoint *points, gsize n, gboolean closed) {
  gsize kept = 0;
  for (gsize i = 0; i < n; i++)
    if (kept == 0 || spv_point_distance(points[i], points[kept - 1]) > SAME_POINT)
      points[kept++] = points[i];
  while (closed && kept > 1 && spv_point_distance(points[kept - 1], points[0]) <= SAME_POINT)
    kept--;
  return kept;
}

SpvTrack *
spv_track_new(const SpvPoint *points, gsize n, gboolean closed) {
  g_return_val_if_fail(points != NULL && n >= 2, NULL);
  for (gsize i = 0; i < n; i++)
    g_return_val_if_fail(isfinite(points[i].x) && isfinite(points[i].y), NULL);

  SpvTrack *track = g_new0(SpvTrack, 1);
  g_atomic_ref_count_init(&track->refs);
  track->closed = closed;
  track->points = g_memdup2(points, n * sizeof *points);
  track->n = drop_repeats(track->points, n, closed);
  track->n_segments = track->n < 2 ? 0 : closed ? track->n : track->n - 1;
  track->starts = g_new0(double, track->n_segments + 1);
  for (gsize i = 0; i < track->n_segments; i++)
    track->starts[i + 1] = track->starts[i] + spv_point_distance(track->points[i], segment_end(track, i));
  return track;
}

SpvTrack *
spv_track_ref(const SpvTrack *track) {
  g_return_val_if_fail(track != NULL, NULL);

  SpvTrack *counted = (SpvTrack *) track;
  g_atomic_ref_count_inc(&counted->refs);
  return counted;
}

void
spv_track_unref(SpvTrack *track) {
  if (track == NULL || !g_atomic_ref_count_dec(&track->refs))
    return;
  g_free(track->points);
  g_free(track->starts);
  g_free(track);
}

double
spv_track_length(const SpvTrack *track) {
  g_return_val_if_fail(track != NULL, 0);

  return track->starts[track->n_segments];
}

gboolean
spv_track_is_closed(const SpvTrack *track) {
  g_return_val_if_fail(track != NULL, FALSE);

  return track->closed;
}

const SpvPoint *
spv_track_points(const SpvTrack *track, gsize *n) {
  g_return_val_if_fail(track != NULL, NULL);
  g_return_val_if_fail(n != NULL, NULL);

  *n = track->n;
  return track->points;
}

/* S brought into [0, length) on a closed track; as it is on an open one. */
static double
wrap(const SpvTrack *track, double s) {
  double length = track->starts[track->n_segments];
  if (!track->closed || length <= 0)
    return s;
  double wrapped = s - floor(s / length) * length;
  return wrapped >= length ? 0 : MAX(wrapped, 0);
}

/* The segment that holds S (wrapped), the first or the last for an S beyond the ends. */
static gsize
find_segment(const SpvTrack *track, double s) {
  gsize low = 0, high = track->n_segments;
  while (high - low > 1) {
    gsize middle = (low + high) / 2;
    if (track->starts[middle] <= s)
      low = middle;
    else
      high = middle;
  }
  return low;
}

SpvPoint
spv_track_at(const SpvTrack *track, double s) {
  g_return_val_if_fail(track != NULL, spv_point(0, 0));
  g_return_val_if_fail(isfinite(s), track->points[0]);

  if (track->n_segments == 0)
    return track->points[0];
  s = wrap(track, s);
  gsize i = find_segment(track, s);
  double t = (s - track->starts[i]) / segment_length(track, i);
  return spv_point_between(track->points[i], segment_end(track, i), t);
}

/* The turn from the segment before vertex I to the one after it, radians, clockwise on screen positive; 0 at
 * the ends of an open track. */
static double
turn_at(const SpvTrack *track, gsize i) {
  if (!track->closed && (i == 0 || i + 1 >= track->n))
    return 0;
  SpvPoint before = segment_tangent(track, (i + track->n_segments - 1) % track->n_segments);
  SpvPoint after = segment_tangent(track, i % track->n_segments);
  return atan2(spv_point_cross(before, after), spv_point_dot(before, after));
}

static SpvPoint
rotate(SpvPoint p, double angle) {
  double c = cos(angle), s = sin(angle);
  return spv_point(p.x * c - p.y * s, p.x * s + p.y * c);
}

/* How far the normal has turned from its segment's own at DISTANCE from the vertex with TURN, where the
 * neighbouring segments have the given lengths; unsigned by side. */
static double
lean(double turn, double distance, double length, double neighbour) {
  if (distance <= AT_CORNER)
    return turn / 2;
  if (fabs(turn) > CORNER)
    return 0;
  double reach = MIN(length, neighbour) / 2;
  return distance < reach ? turn / 2 * (1 - distance / reach) : 0;
}

SpvPoint
spv_track_normal(const SpvTrack *track, double s) {
  g_return_val_if_fail(track != NULL, spv_point(0, 0));
  g_return_val_if_fail(isfinite(s), spv_point(0, 0));

  if (track->n_segments == 0)
    return spv_point_quarter_turn(segment_tangent(track, 0));
  s = wrap(track, s);
  gsize n = track->n_segments, i = find_segment(track, s);
  double length = segment_length(track, i);
  double from_start = MAX(s - track->starts[i], 0), from_end = MAX(track->starts[i + 1] - s, 0);
  double angle = 0;
  if (from_start <= from_end)
    angle = -lean(turn_at(track, i), from_start, length, segment_length(track, (i + n - 1) % n));
  else
    angle = lean(turn_at(track, i + 1), from_end, length, segment_length(track, (i + 1) % n));
  return rotate(spv_point_quarter_turn(segment_tangent(track, i)), angle);
}

double
spv_track_locate(const SpvTrack *track, SpvPoint point, double *distance) {
  g_return_val_if_fail(track != NULL, 0);
  g_return_val_if_fail(isfinite(point.x) && isfinite(point.y), 0);

  double best = spv_point_distance(point, track->points[0]), best_s = 0;
  for (gsize i = 0; i < track->n_segments; i++) {
    SpvPoint a = track->points[i], along = spv_point_subtract(segment_end(track, i), a);
    double t = spv_point_dot(spv_point_subtract(point, a), along) / spv_point_dot(along, along);
    t = CLAMP(t, 0, 1);
    double d = spv_point_distance(point, spv_point_add(a, spv_point_scale(along, t)));
    if (d < best) {
      best = d;
      best_s = track->starts[i] + t * segment_length(track, i);
    }
  }
  if (distance != NULL)
    *distance = best;
  return wrap(track, best_s);
}

SpvTrack *
spv_track_part(const SpvTrack *track, double s0, double s1) {
  g_return_val_if_fail(track != NULL, NULL);
  g_return_val_if_fail(isfinite(s0) && isfinite(s1) && s1 > s0, NULL);

  g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  SpvPoint first = spv_track_at(track, s0), last = spv_track_at(track, s1);
  double length = spv_track_length(track);
  g_array_append_val(points, first);
  if (length > 0) {
    double turns = track->closed ? floor(s0 / length) : 0, turns_end = track->closed ? floor(s1 / length) : 0;
    for (double turn = turns; turn <= turns_end; turn++)
      for (gsize i = 0; i < track->n; i++) {
        double s = turn * length + track->starts[MIN(i, track->n_segments)];
        if (s > s0 + AT_CORNER && s < s1 - AT_CORNER)
          g_array_append_val(points, track->points[i]);
      }
  }
  g_array_append_val(points, last);
  return spv_track_new((const SpvPoint *) (void *) points->data, points->len, FALSE);
}

typedef struct {
  double along_line, s;
} Crossing;

static int
compare_crossings(gconstpointer a, gconstpointer b) {
  const Crossing *first = a, *second = b;
  return (first->along_line > second->along_line) - (first->along_line < second->along_line);
}

static int
side_of(double distance) {
  return (distance > SAME_POINT) - (distance < -SAME_POINT);
}

/* Notes the crossing between vertex FROM on one side and vertex TO on the other, where the vertices between
 * lie on the line (indices count on past the last point of a closed track): at the place itself, or at the
 * middle of the stretch that runs along the line. */
static void
add_crossing(const SpvTrack *track, const double *sides, gsize from, gsize to, SpvPoint a, SpvPoint direction,
             GArray *crossings) {
  double length = spv_track_length(track);
  double first, last;
  if (to == from + 1) {
    double d0 = sides[from % track->n], d1 = sides[to % track->n];
    gsize segment = from % track->n;
    first = last = track->starts[segment] + segment_length(track, segment) * (d0 / (d0 - d1));
  } else {
    first = track->starts[(from + 1) % track->n] + (from + 1 >= track->n ? length : 0);
    last = track->starts[(to - 1) % track->n] + (to - 1 >= track->n ? length : 0);
  }
  Crossing crossing = { .s = wrap(track, (first + last) / 2) };
  crossing.along_line = spv_point_dot(spv_point_subtract(spv_track_at(track, crossing.s), a), direction);
  g_array_append_val(crossings, crossing);
}

GArray *
spv_track_crossings(const SpvTrack *track, SpvPoint a, SpvPoint b) {
  g_return_val_if_fail(track != NULL, NULL);
  g_return_val_if_fail(isfinite(a.x) && isfinite(a.y) && isfinite(b.x) && isfinite(b.y), NULL);

  GArray *found = g_array_new(FALSE, FALSE, sizeof(double));
  SpvPoint direction = spv_point_unit(spv_point_subtract(b, a));
  if (track->n_segments == 0 || spv_point_length(direction) <= 0)
    return found;

  g_autofree double *sides = g_new(double, track->n);
  gsize start = track->n;
  for (gsize i = 0; i < track->n; i++) {
    sides[i] = spv_point_cross(direction, spv_point_subtract(track->points[i], a));
    if (start == track->n && side_of(sides[i]) != 0)
      start = i;
  }
  if (start == track->n)
    return found;

  g_autoptr(GArray) crossings = g_array_new(FALSE, FALSE, sizeof(Crossing));
  gsize end = track->closed ? start + track->n : track->n - 1, from = start;
  for (gsize i = start + 1; i <= end; i++) {
    int side = side_of(sides[i % track->n]);
    if (side == 0)
      continue;
    if (side != side_of(sides[from % track->n]))
      add_crossing(track, sides, from, i, a, direction, crossings);
    from = i;
  }
  g_array_sort(crossings, compare_crossings);
  for (guint i = 0; i < crossings->len; i++)
    g_array_append_val(found, g_array_index(crossings, Crossing, i).s);
  return found;
}
