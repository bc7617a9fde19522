/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words on a straight line, on an arc, or along an edge of the panel. */
#include "heraldry/lay-private.h"
#include "heraldry/lettering.h"

#include "geometry/wind.h"

/* The choices of the baseline, in the order of their table. */
typedef enum {
  BASELINE_STRAIGHT,
  BASELINE_ARC,
  BASELINE_CHIEF,
  BASELINE_DEXTER,
  BASELINE_BASE,
  BASELINE_SINISTER
} Baseline;

/* Words as large as fit keep this part of that size, clear of the edge. */
#define CLEAR 0.9

/* An arc that bends less is a straight line. */
#define LEAST_BOW 0.01

/* Where no bow is given, words take up a third of a circle, but few letters less: its radius is no less than
 * so many times their height. */
#define MOST_BOW (2 * G_PI / 3)
#define LEAST_RADIUS 3.0

/* Along an edge, letters are no higher than this part of the panel, and take up no more than this of the
 * edge, where no height is given. */
#define EDGE_HEIGHT 0.16
#define EDGE_FILL 0.92

/* Words to be laid, and how. */
typedef struct {
  const SpvOutline *outline;
  Baseline baseline;
  GPtrArray *letters; /* SpvPath, capitals 1 high */
  GArray *middles;    /* double */
  double advance;
  double height; /* mm; below 0: not given */
  double width;  /* mm, at most */
  double turn, bow, inset;
  SpvMeasure across_given, down_given;
  SpvPoint to; /* where the middle goes, of what is given */
} Words;

static void
add_letter(SpvPathBuilder *builder, const SpvPath *letter, SpvTransform t) {
  g_autoptr(SpvPath) placed = spv_path_transform(letter, t);
  spv_path_builder_path(builder, placed);
}

/* LETTER, whose middle stands at MIDDLE on the baseline, moved so that it stands at AT, turned by ANGLE,
 * HEIGHT high. */
static SpvTransform
stand(double middle, SpvPoint at, double angle, double height) {
  return spv_transform_compose(spv_transform_place(height, angle, at),
                               (SpvTransform){ 1, 0, 0, 1, -middle, 0 });
}

/* Where letter I stands on a baseline that is free of the panel, capitals 1 high: a straight line, or an arc
 * about (0, 0). Letters keep their spacing where they come closest: at their feet, or, on an arc that hangs
 * down, at their tops. */
static SpvTransform
stand_free(const Words *words, guint i) {
  double middle = g_array_index(words->middles, double, i);

  if (words->baseline == BASELINE_STRAIGHT || fabs(words->bow) < LEAST_BOW || !(words->advance > 0))
    return SPV_TRANSFORM_IDENTITY;
  double radius = words->advance / fabs(words->bow);
  double angle = (middle - words->advance / 2) / radius;
  if (words->bow > 0)
    return stand(middle, spv_point(radius * sin(angle), -radius * cos(angle)), angle, 1);
  return stand(middle, spv_point((radius + 1) * sin(angle), (radius + 1) * cos(angle)), -angle, 1);
}

/* The box of each of the letters of PATHS. */
static SpvBox
bounds_of(GPtrArray *paths) {
  SpvBox box = spv_path_bounds(g_ptr_array_index(paths, 0));

  for (guint i = 1; i < paths->len; i++)
    box = spv_box_join(box, spv_path_bounds(g_ptr_array_index(paths, i)));
  return box;
}

/* Whether a corner of OUTLINE lies in BOX under the transform whose inverse is BACK. */
static gboolean
has_corner_in(const SpvOutline *outline, SpvBox box, SpvTransform back) {
  gsize n;
  const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);

  for (gsize i = 0; i < n; i++) {
    SpvPoint p = spv_transform_point(back, points[i]);
    if (p.x > box.x0 && p.x < box.x1 && p.y > box.y0 && p.y < box.y1)
      return TRUE;
  }
  return FALSE;
}

/* Whether the boxes of all PATHS lie within OUTLINE under T. */
static gboolean
fits(GPtrArray *paths, SpvTransform t, const SpvOutline *outline) {
  SpvTransform back;

  if (!spv_transform_invert(t, &back))
    return FALSE;
  for (guint i = 0; i < paths->len; i++) {
    SpvBox box = spv_path_bounds(g_ptr_array_index(paths, i));
    const SpvPoint corners[] = {
      { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 }
    };
    for (guint k = 0; k < 4; k++)
      if (!spv_shape_contains(spv_outline_shape(outline), spv_transform_point(t, corners[k])))
        return FALSE;
    if (has_corner_in(outline, box, back))
      return FALSE;
  }
  return TRUE;
}

/* Scaled by HEIGHT and turned about MIDDLE, which goes to AT. */
static SpvTransform
place_words(const Words *words, SpvPoint middle, double height, SpvPoint at) {
  return spv_transform_compose(spv_transform_place(height, words->turn, at),
                               (SpvTransform){ 1, 0, 0, 1, -middle.x, -middle.y });
}

/* The largest height, up to MOST, at which PATHS fit the panel about AT. */
static double
largest(const Words *words, GPtrArray *paths, SpvPoint middle, double most, SpvPoint at) {
  double low = 0, high = most;

  if (fits(paths, place_words(words, middle, most, at), words->outline))
    return most;
  for (guint i = 0; i < 20; i++) {
    double half = (low + high) / 2;
    if (fits(paths, place_words(words, middle, half, at), words->outline))
      low = half;
    else
      high = half;
  }
  return CLEAR * low;
}

static void
unref_path(gpointer path) {
  spv_path_unref(path);
}

static void
lay_free(const Words *words, SpvPathBuilder *builder) {
  g_autoptr(GPtrArray) paths = g_ptr_array_new_with_free_func(unref_path);

  for (guint i = 0; i < words->letters->len; i++)
    g_ptr_array_add(paths, spv_path_transform(g_ptr_array_index(words->letters, i), stand_free(words, i)));
  SpvBox box = bounds_of(paths);
  SpvPoint middle = spv_box_centre(box);
  /* On a straight line the middle is that of the capitals, whatever hangs below. */
  if (words->baseline == BASELINE_STRAIGHT)
    middle.y = -0.5;
  double most = spv_box_width(box) > 0 ? words->width / spv_box_width(box) : words->width;
  double height = words->height;
  if (height < 0)
    height = largest(words, paths, middle, MIN(most, CLEAR * spv_outline_height(words->outline)),
                     spv_point(0, spv_box_centre(spv_outline_bounds(words->outline)).y));
  height = MIN(height, most);
  for (guint i = 0; height > 0 && i < paths->len; i++)
    add_letter(builder, g_ptr_array_index(paths, i), place_words(words, middle, height, words->to));
}

static SpvEdge
edge_of(Baseline baseline) {
  switch (baseline) {
  case BASELINE_STRAIGHT:
  case BASELINE_ARC:
  case BASELINE_CHIEF:
    return SPV_EDGE_CHIEF;
  case BASELINE_DEXTER:
    return SPV_EDGE_DEXTER;
  case BASELINE_BASE:
    return SPV_EDGE_BASE;
  case BASELINE_SINISTER:
    return SPV_EDGE_SINISTER;
  }
  return SPV_EDGE_CHIEF;
}

/* The outline DEPTH mm in, clockwise, its corners rounded by ROUND mm so that letters don't fall over one
 * another there; NULL where nothing is left. */
static SpvTrack *
inset_track(const SpvOutline *outline, double depth, double round) {
  g_autoptr(SpvShape) deep = spv_shape_offset(spv_outline_shape(outline), -depth - round);
  g_autoptr(SpvShape) inner = spv_shape_offset(deep, round);
  const SpvRing *longest = NULL;
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(inner, &n);

  for (gsize i = 0; i < n; i++)
    if (!longest || spv_ring_length(pieces[i].rings[0]) > spv_ring_length(longest))
      longest = pieces[i].rings[0];
  return longest ? spv_track_new(longest->points, longest->n_points, TRUE) : NULL;
}

/* The baseline of letters HEIGHT high along an edge, clockwise, and where on it their middle stands. The
 * letters' tops point out, so that they stand under the inset; at the base their feet do, so that they are
 * upright. NULL where there is no room. */
static SpvTrack *
edge_track(const Words *words, double height, double *middle, double *length) {
  SpvEdge edge = edge_of(words->baseline);
  gboolean on_base = edge == SPV_EDGE_BASE;
  g_autoptr(SpvTrack) track = on_base ? inset_track(words->outline, words->inset, 1.4 * height)
                                      : inset_track(words->outline, words->inset + height, height / 2);
  const SpvTrack *rim = spv_outline_track(words->outline);
  double s0, s1;

  spv_outline_edge(words->outline, edge, &s0, &s1);
  if (!track || !(s1 > s0))
    return NULL;
  double from = spv_track_locate(track, spv_track_at(rim, s0), NULL);
  double to = spv_track_locate(track, spv_track_at(rim, s1), NULL);
  *length = to > from ? to - from : to - from + spv_track_length(track);
  SpvPoint at = spv_track_at(track, from + *length / 2);
  if (words->across_given.unit != SPV_UNIT_AUTO && (on_base || edge == SPV_EDGE_CHIEF))
    at.x = words->to.x;
  if (words->down_given.unit != SPV_UNIT_AUTO && !on_base && edge != SPV_EDGE_CHIEF)
    at.y = words->to.y;
  *middle = spv_track_locate(track, at, NULL);
  return g_steal_pointer(&track);
}

/* The height that is given, or the largest that suits the edge. */
static double
edge_height(const Words *words) {
  const SpvOutline *outline = words->outline;
  double most = words->advance > 0 ? words->width / words->advance : words->width, middle, length;

  if (words->height >= 0)
    return MIN(words->height, most);
  double height = MIN(most, EDGE_HEIGHT * MIN(spv_outline_width(outline), spv_outline_height(outline)));
  /* Higher letters stand on a shorter line: it shrinks until they fit. */
  for (guint i = 0; i < 8; i++) {
    g_autoptr(SpvTrack) track = edge_track(words, height, &middle, &length);
    double room = track ? EDGE_FILL * length / MAX(words->advance, 1e-9) : height / 2;
    if (track && room >= height)
      break;
    height = MIN(room, 0.9 * height);
  }
  return height;
}

static void
lay_along_edge(const Words *words, SpvPathBuilder *builder) {
  double height = edge_height(words), middle, length;
  g_autoptr(SpvTrack) track = height > 0 ? edge_track(words, height, &middle, &length) : NULL;
  double way = words->baseline == BASELINE_BASE ? -1 : 1;

  if (!track)
    return;
  g_autoptr(GPtrArray) paths = g_ptr_array_new_with_free_func(unref_path);
  for (guint i = 0; i < words->letters->len; i++) {
    double x = g_array_index(words->middles, double, i);
    double s = middle + way * height * (x - words->advance / 2);
    SpvPoint inward = spv_track_normal(track, s), onward = { way * inward.y, -way * inward.x };
    SpvTransform t = stand(x, spv_track_at(track, s), atan2(onward.y, onward.x), height);
    g_ptr_array_add(paths, spv_path_transform(g_ptr_array_index(words->letters, i), t));
  }
  SpvPoint centre = spv_box_centre(bounds_of(paths));
  for (guint i = 0; i < paths->len; i++)
    add_letter(builder, g_ptr_array_index(paths, i), place_words(words, centre, 1, centre));
}

/* Across, a turn and a side as they lie in the mirror. */
static void
mirror_words(Words *words) {
  words->to.x = -words->to.x;
  words->turn = -words->turn;
  if (words->baseline == BASELINE_DEXTER || words->baseline == BASELINE_SINISTER)
    words->baseline = words->baseline == BASELINE_DEXTER ? BASELINE_SINISTER : BASELINE_DEXTER;
}

/* Words that are mirrored with the whole change places but can still be read: what is laid here is mirrored
 * when the draft is moved to its place, so the letters are laid as a mirror shows them. */
void
spv_lay_lettering(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  const SpvOutline *outline = frame->outline;
  const char *text = spv_pattern_text(pattern, SPV_LETTERING_TEXT);
  const char *font = spv_pattern_text(pattern, SPV_LETTERING_FONT);
  g_autoptr(GArray) middles = g_array_new(FALSE, FALSE, sizeof(double));
  Words words = { .outline = outline, .middles = middles };
  g_autoptr(GPtrArray) letters = spv_lettering_letters(text, font, middles, &words.advance);
  gboolean mirrored = pattern->mirrored !=
                      (frame->place.a * frame->place.d < frame->place.b * frame->place.c);
  SpvPathBuilder *builder = spv_path_builder_new();

#define MEASURE(index, fallback) spv_pattern_measure(pattern, index, outline, fallback)
  words.letters = letters;
  words.baseline = (Baseline) MEASURE(SPV_LETTERING_BASELINE, 0);
  words.height = MEASURE(SPV_LETTERING_HEIGHT, -1);
  words.width = MEASURE(SPV_LETTERING_WIDTH, 0.8 * spv_outline_width(outline));
  words.turn = MEASURE(SPV_LETTERING_TURN, 0);
  words.bow = MEASURE(SPV_LETTERING_BOW, MIN(MOST_BOW, words.advance / LEAST_RADIUS));
  words.inset = MEASURE(SPV_LETTERING_INSET, 0);
  words.across_given = pattern->measures[SPV_LETTERING_ACROSS];
  words.down_given = pattern->measures[SPV_LETTERING_DOWN];
  words.to = spv_point(MEASURE(SPV_LETTERING_ACROSS, 0),
                       MEASURE(SPV_LETTERING_DOWN, spv_box_centre(spv_outline_bounds(outline)).y));
#undef MEASURE
  if (mirrored)
    mirror_words(&words);
  if (letters->len > 0 && words.baseline <= BASELINE_ARC)
    lay_free(&words, builder);
  else if (letters->len > 0)
    lay_along_edge(&words, builder);
  g_autoptr(SpvPath) laid = spv_path_builder_build(builder);
  g_autoptr(SpvPath) wound = spv_path_wind(laid, SPV_FILL_NONZERO);
  draft->area[0] = spv_path_transform(wound, mirrored ? SPV_TRANSFORM_MIRROR : SPV_TRANSFORM_IDENTITY);
}
