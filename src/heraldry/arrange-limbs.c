/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Charges on arms that meet, and on the limbs of ordinaries. */
#include "heraldry/arrange-private.h"

/* So many places are tried along a limb to see which lie on the panel. */
#define TRIED 256

/* How much looser charges may stand on one arm than on another. */
#define EVEN 1.35

static void
unref_track(gpointer track) {
  spv_track_unref(track);
}

static SpvTrack *
straight(SpvPoint from, SpvPoint to) {
  const SpvPoint ends[] = { from, to };
  return spv_track_new(ends, 2, FALSE);
}

/* Where the track passes the edge between the places OUT, off the panel, and IN, on it. */
static double
find_edge(const SpvArrangeRoom *room, const SpvTrack *track, double out, double in) {
  for (guint i = 0; i < 40; i++) {
    double half = (out + in) / 2;
    if (spv_shape_contains(room->within, spv_track_at(track, half)))
      in = half;
    else
      out = half;
  }
  return in;
}

/* The part of TRACK, open, from the first to the last place on the panel; NULL where there is none. */
static SpvTrack *
inner_part(const SpvArrangeRoom *room, const SpvTrack *track) {
  double length = spv_track_length(track);
  int first = -1, last = -1;

  for (int i = 0; i <= TRIED && length > 0; i++) {
    if (!spv_shape_contains(room->within, spv_track_at(track, length * i / TRIED)))
      continue;
    first = first < 0 ? i : first;
    last = i;
  }
  if (first < 0)
    return NULL;
  double from = length * first / TRIED, to = length * last / TRIED, step = length / TRIED;
  if (first > 0)
    from = find_edge(room, track, from - step, from);
  if (last < TRIED)
    to = find_edge(room, track, to + step, to);
  return to > from ? spv_track_part(track, from, to) : NULL;
}

/* The pitch of N charges on LENGTH mm, the first a part LEAD of a pitch from its start. */
static double
pitch_for(const SpvArrangeRoom *room, double length, double n, double lead) {
  return room->spacing > 0 ? room->spacing : length / (n - 1 + lead + 0.5);
}

/* N charges on TRACK about its middle; on a closed one about its highest place. */
static void
put_along(const SpvArrangeRoom *room, const SpvTrack *track, guint n, GArray *centres) {
  double length = spv_track_length(track), pitch = pitch_for(room, length, n, 0.5);
  double middle = length / 2, first = (n - 1) / 2.0;

  if (spv_track_is_closed(track)) {
    SpvBox box = room->box;
    middle = spv_track_locate(track, spv_point((box.x0 + box.x1) / 2, box.y0), NULL);
    first = room->spacing > 0 ? first : 0;
  }
  for (guint i = 0; i < n; i++) {
    SpvPoint at = spv_track_at(track, middle + pitch * (i - first));
    g_array_append_val(centres, at);
  }
}

static SpvPoint
arm_end(const SpvTrack *arm) {
  return spv_track_at(arm, spv_track_length(arm));
}

/* Which of the ARMS get one more when EXTRA of them do: those that keep both sides alike. All upright ones
 * where they are as many; one alone goes to the most upright; otherwise the highest. */
static void
mark_extra(GPtrArray *arms, SpvPoint meeting, guint extra, gboolean *more) {
  guint upright = 0;
  double scale = 0;

  for (guint i = 0; i < arms->len; i++)
    scale = MAX(scale, spv_track_length(g_ptr_array_index(arms, i)));
  for (guint i = 0; i < arms->len; i++)
    upright += fabs(arm_end(g_ptr_array_index(arms, i)).x - meeting.x) < 0.01 * scale;
  gboolean by_upright = upright == extra || extra == 1;
  for (; extra > 0; extra--) {
    guint best = 0;
    double least = INFINITY;
    for (guint i = 0; i < arms->len; i++) {
      SpvPoint end = arm_end(g_ptr_array_index(arms, i));
      double rank = by_upright ? fabs(end.x - meeting.x) : end.y;
      if (!more[i] && rank < least) {
        least = rank;
        best = i;
      }
    }
    more[best] = TRUE;
  }
}

/* Whether one of N charges stands where N_ARMS arms meet: where that lets the arms have as many each;
 * otherwise where their number is odd. */
static gboolean
one_in_the_middle(guint n, guint n_arms) {
  if ((n - 1) % n_arms == 0 || n % n_arms == 0)
    return (n - 1) % n_arms == 0;
  return n % 2 == 1;
}

/* The pitch on each of ARMS, of which I bears NUMBERS[I] charges: each fills its own, but a long one no more
 * than EVEN times as loosely as the shortest. */
static void
find_pitches(const SpvArrangeRoom *room, GPtrArray *arms, const guint *numbers, double lead,
             double *pitches) {
  double least = INFINITY;

  for (guint i = 0; i < arms->len; i++) {
    pitches[i] = numbers[i] > 0
                     ? pitch_for(room, spv_track_length(g_ptr_array_index(arms, i)), numbers[i], lead)
                     : INFINITY;
    least = MIN(least, pitches[i]);
  }
  for (guint i = 0; i < arms->len; i++)
    pitches[i] = MIN(pitches[i], EVEN * least);
}

/* N charges on ARMS (SpvTrack) that run out from MEETING. */
static void
put_on_arms(const SpvArrangeRoom *room, GPtrArray *arms, SpvPoint meeting, guint n, GArray *centres) {
  gboolean middle = one_in_the_middle(n, arms->len);
  guint rest = n - (middle ? 1 : 0);
  double lead = middle ? 1 : 0.5;
  g_autofree gboolean *more = g_new0(gboolean, arms->len);
  g_autofree guint *numbers = g_new0(guint, arms->len);
  g_autofree double *pitches = g_new0(double, arms->len);

  mark_extra(arms, meeting, rest % arms->len, more);
  for (guint i = 0; i < arms->len; i++)
    numbers[i] = rest / arms->len + (more[i] ? 1 : 0);
  find_pitches(room, arms, numbers, lead, pitches);
  if (middle)
    g_array_append_val(centres, meeting);
  for (guint i = 0; i < arms->len; i++)
    for (guint k = 0; k < numbers[i]; k++) {
      SpvPoint at = spv_track_at(g_ptr_array_index(arms, i), pitches[i] * (k + lead));
      g_array_append_val(centres, at);
    }
}

/* The arm from FROM in DIRECTION to the edge. */
static SpvTrack *
ray(const SpvArrangeRoom *room, SpvPoint from, double x, double y) {
  SpvPoint far = { from.x + 2 * x, from.y + 2 * y };
  g_autoptr(SpvTrack) whole = straight(from, far);
  SpvTrack *inner = inner_part(room, whole);

  return inner ? inner : straight(from, spv_point(from.x + x / 2, from.y + y / 2));
}

GArray *
spv_arrange_arms(const SpvArrangeRoom *room, SpvArrangement arrangement, guint n) {
  GArray *centres = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  g_autoptr(GPtrArray) arms = g_ptr_array_new_with_free_func(unref_track);
  double w = spv_box_width(room->box), h = spv_box_height(room->box);
  SpvPoint middle = spv_box_centre(room->box);
  static const SpvPoint cross[] = { { 0, -1 }, { 0, 1 }, { -1, 0 }, { 1, 0 } };
  static const SpvPoint saltire[] = { { -1, -1 }, { 1, -1 }, { -1, 1 }, { 1, 1 } };
  static const SpvPoint chevron[] = { { -1, 0.9 }, { 1, 0.9 } };
  static const SpvPoint pall[] = { { -1, -0.84 }, { 1, -0.84 }, { 0, 1 } };
  const SpvPoint *ways = cross;
  guint n_ways = 4;

  if (arrangement == SPV_ARRANGEMENT_SALTIRE)
    ways = saltire;
  if (arrangement == SPV_ARRANGEMENT_CHEVRON) {
    ways = chevron;
    n_ways = 2;
    middle.y -= 0.2 * h;
  }
  if (arrangement == SPV_ARRANGEMENT_PALL) {
    ways = pall;
    n_ways = 3;
    middle.y -= 0.08 * h;
  }
  for (guint i = 0; i < n_ways; i++)
    g_ptr_array_add(arms, ray(room, middle, ways[i].x * w / 2, ways[i].y * h / 2));
  put_on_arms(room, arms, middle, n, centres);
  return centres;
}

/* Where the segments A0-A1 and B0-B1 cross. */
static gboolean
crossing(SpvPoint a0, SpvPoint a1, SpvPoint b0, SpvPoint b1, SpvPoint *at) {
  SpvPoint a = spv_point_subtract(a1, a0), b = spv_point_subtract(b1, b0), off = spv_point_subtract(b0, a0);
  double cross = spv_point_cross(a, b);

  if (fabs(cross) < 1e-12)
    return FALSE;
  double t = spv_point_cross(off, b) / cross, u = spv_point_cross(off, a) / cross;
  *at = spv_point_between(a0, a1, t);
  return t >= 0 && t <= 1 && u >= 0 && u <= 1;
}

/* How far the farthest of SPINES passes P. */
static double
farthest(GPtrArray *spines, SpvPoint p) {
  double far = 0, distance;

  for (guint i = 0; i < spines->len; i++) {
    spv_track_locate(g_ptr_array_index(spines, i), p, &distance);
    far = MAX(far, distance);
  }
  return far;
}

/* Where all SPINES meet, at an end or a crossing; FALSE where they don't. */
static gboolean
find_meeting(GPtrArray *spines, double breadth, SpvPoint *meeting) {
  const SpvTrack *one = g_ptr_array_index(spines, 0), *two = g_ptr_array_index(spines, 1);
  double best = MAX(breadth / 4, 1e-6);
  gboolean found = FALSE;
  gsize n, m;
  const SpvPoint *a = spv_track_points(one, &n), *b = spv_track_points(two, &m);
  g_autoptr(GArray) tried = g_array_new(FALSE, FALSE, sizeof(SpvPoint));

  for (guint i = 0; i < spines->len; i++) {
    const SpvTrack *spine = g_ptr_array_index(spines, i);
    const SpvPoint ends[] = { spv_track_at(spine, 0), arm_end(spine) };
    g_array_append_vals(tried, ends, 2);
  }
  for (gsize i = 0; i + 1 < n; i++)
    for (gsize k = 0; k + 1 < m; k++) {
      SpvPoint at;
      if (crossing(a[i], a[i + 1], b[k], b[k + 1], &at))
        g_array_append_val(tried, at);
    }
  for (guint i = 0; i < tried->len; i++) {
    SpvPoint at = g_array_index(tried, SpvPoint, i);
    double far = farthest(spines, at);
    if (far >= best)
      continue;
    best = far;
    *meeting = at;
    found = TRUE;
  }
  return found;
}

/* TRACK from S to its end, or to its start, as an arm, where that is longer than LEAST. */
static void
add_arm(GPtrArray *arms, const SpvArrangeRoom *room, const SpvTrack *track, double s, gboolean onward,
        double least) {
  double length = onward ? spv_track_length(track) - s : s;

  if (length <= least)
    return;
  g_autoptr(SpvTrack) part = onward ? spv_track_part(track, s, spv_track_length(track))
                                    : spv_track_part(track, 0, s);
  gsize n;
  const SpvPoint *points = spv_track_points(part, &n);
  g_autofree SpvPoint *turned = g_memdup2(points, n * sizeof *points);
  for (gsize i = 0; !onward && i < n; i++)
    turned[i] = points[n - 1 - i];
  g_autoptr(SpvTrack) arm = spv_track_new(turned, n, FALSE);
  SpvTrack *inner = inner_part(room, arm);
  if (inner)
    g_ptr_array_add(arms, inner);
}

/* N charges on spines that meet nowhere: as many on each, the first of them one more where they don't come
 * out even. */
static void
put_on_apart(const SpvArrangeRoom *room, GPtrArray *spines, guint n, GArray *centres) {
  for (guint i = 0; i < spines->len; i++) {
    const SpvTrack *spine = g_ptr_array_index(spines, i);
    guint m = n / spines->len + (i < n % spines->len ? 1 : 0);
    g_autoptr(SpvTrack) inner = spv_track_is_closed(spine) ? spv_track_ref(spine) : inner_part(room, spine);
    put_along(room, inner ? inner : spine, m, centres);
  }
}

GArray *
spv_arrange_spines(const SpvArrangeRoom *room, GPtrArray *spines, double breadth, guint n) {
  GArray *centres = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  g_autoptr(GPtrArray) arms = g_ptr_array_new_with_free_func(unref_track);
  SpvPoint meeting;

  if (spines->len > 1 && find_meeting(spines, breadth, &meeting))
    for (guint i = 0; i < spines->len; i++) {
      const SpvTrack *spine = g_ptr_array_index(spines, i);
      double s = spv_track_locate(spine, meeting, NULL);
      add_arm(arms, room, spine, s, FALSE, breadth / 2);
      add_arm(arms, room, spine, s, TRUE, breadth / 2);
    }
  if (arms->len > 0)
    put_on_arms(room, arms, meeting, n, centres);
  else
    put_on_apart(room, spines, n, centres);
  return centres;
}

/* The longest edge of the room DEPTH mm in, or less far where nothing is left. */
static SpvTrack *
inner_edge(const SpvArrangeRoom *room, double depth) {
  for (guint round = 0; round < 20; round++, depth /= 2) {
    g_autoptr(SpvShape) inner = spv_shape_offset(room->within, -depth);
    gsize n;
    const SpvPiece *pieces = spv_shape_pieces(inner, &n);
    const SpvRing *longest = NULL;
    for (gsize i = 0; i < n; i++)
      if (!longest || spv_ring_length(pieces[i].rings[0]) > spv_ring_length(longest))
        longest = pieces[i].rings[0];
    if (longest)
      return spv_track_new(longest->points, longest->n_points, TRUE);
  }
  return NULL;
}

GArray *
spv_arrange_orle(const SpvArrangeRoom *room, guint n, double size) {
  GArray *centres = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  double smaller = MIN(spv_box_width(room->box), spv_box_height(room->box));
  double round = 2 * (spv_box_width(room->box) + spv_box_height(room->box));

  if (!(size > 0))
    size = MIN(0.25 * smaller, SPV_ARRANGE_NEIGHBOURS * round / (n + 4));
  g_autoptr(SpvTrack) edge = inner_edge(room, size * room->reach / SPV_ARRANGE_EDGE);
  if (edge)
    put_along(room, edge, n, centres);
  return centres;
}

/* Whether the figure, SIZE mm large at AT, reaches into the room. */
static gboolean
reaches_in(const SpvArrangeRoom *room, SpvPoint at, double size) {
  double clearance = spv_arrange_clearance(room, at);

  if (clearance > 0 || clearance <= -size * room->reach)
    return clearance > 0;
  for (guint i = 0; i < room->points->len; i++) {
    SpvPoint p = spv_point_add(at, spv_point_scale(g_array_index(room->points, SpvPoint, i), size));
    if (spv_shape_contains(room->within, p))
      return TRUE;
  }
  return FALSE;
}

GArray *
spv_arrange_semy(const SpvArrangeRoom *room, double pitch, double size, SpvPoint origin) {
  GArray *centres = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  /* Columns so far apart that all six neighbours stand a pitch away. */
  double across = pitch * sqrt(0.75), reach = size * room->reach;
  SpvBox box = spv_box_grow(room->box, reach);
  int first = (int) floor((box.x0 - origin.x) / across), last = (int) ceil((box.x1 - origin.x) / across);

  for (int column = first; column <= last; column++) {
    double y = origin.y + (column % 2 != 0 ? pitch / 2 : 0);
    int top = (int) floor((box.y0 - y) / pitch), bottom = (int) ceil((box.y1 - y) / pitch);
    for (int row = top; row <= bottom; row++) {
      SpvPoint at = { origin.x + column * across, y + row * pitch };
      if (reaches_in(room, at, size))
        g_array_append_val(centres, at);
    }
  }
  return centres;
}
