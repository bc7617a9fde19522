/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where charges stand: the part, the arrangement, the size. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "heraldry/arrange-private.h"
#include "heraldry/figure.h"
#include "heraldry/lay-private.h"

/* The most strewn charges: a pitch that asks for more is widened. */
#define MOST_STREWN 2000

/* A single row, where the part is so much longer than it is high, and a single column the other way round. */
#define LONG 2.2
/* Two stand under one another where the part is so much higher than wide. */
#define TALL 1.5

const char *const spv_place_keys[] = { N_("whole"),
                                       N_("chief"),
                                       N_("fess"),
                                       N_("base"),
                                       N_("dexter"),
                                       N_("sinister"),
                                       N_("first quarter"),
                                       N_("second quarter"),
                                       N_("third quarter"),
                                       N_("fourth quarter"),
                                       NULL };
const char *const spv_arrangement_keys[] = { N_("usual"),   N_("rows"),          N_("pale"),  N_("fess"),
                                             N_("bend"),    N_("bend sinister"), N_("cross"), N_("saltire"),
                                             N_("chevron"), N_("pall"),          N_("orle"),  N_("semy"),
                                             NULL };

/* Reads the rows of TEXT into ROWS. The byte where that ends goes to END; what is wrong there is told by the
 * return value, NULL where nothing is. */
static const char *
read_rows(const char *text, GArray *rows, const char **end) {
  guint total = 0;
  const char *p = text;

  for (;;) {
    guint number = 0;
    while (*p == ' ')
      p++;
    *end = p;
    if (!g_ascii_isdigit(*p))
      return _("a number should stand");
    while (g_ascii_isdigit(*p) && number <= SPV_PATTERN_MAX_COUNT)
      number = number * 10 + (guint) (*p++ - '0');
    total += number;
    if (number == 0 || total > SPV_PATTERN_MAX_COUNT)
      return _("a number from 1 should stand, and no more than 200 in all rows");
    g_array_append_val(rows, number);
    while (*p == ' ')
      p++;
    *end = p;
    if (*p == '\0')
      return NULL;
    if (*p++ != ',')
      return _("a comma should stand");
  }
}

gboolean
spv_rows_text_check(const char *text, GError **error) {
  g_autoptr(GArray) rows = g_array_new(FALSE, FALSE, sizeof(guint));
  const char *end, *wrong = read_rows(text, rows, &end);

  if (wrong)
    g_set_error(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT,
                /* TRANSLATORS: the second part is “a number should stand”, or the like. */
                _("Character %ld of the rows: %s; write how many stand in each row, as in 3, 2, 1"),
                g_utf8_pointer_to_offset(text, end) + 1, wrong);
  return wrong == NULL;
}

/* The box of PLACE in the bounds of all. */
static SpvBox
place_box(SpvBox all, SpvPlace place) {
  double w = spv_box_width(all), h = spv_box_height(all);
  SpvPoint middle = spv_box_centre(all);

  switch (place) {
  case SPV_PLACE_WHOLE:
    return all;
  case SPV_PLACE_CHIEF:
    return (SpvBox){ all.x0, all.y0, all.x1, all.y0 + h / 3 };
  case SPV_PLACE_FESS:
    return (SpvBox){ all.x0, all.y0 + h / 3, all.x1, all.y1 - h / 3 };
  case SPV_PLACE_BASE:
    return (SpvBox){ all.x0, all.y1 - h / 3, all.x1, all.y1 };
  case SPV_PLACE_DEXTER:
    return (SpvBox){ all.x0, all.y0, all.x0 + w / 3, all.y1 };
  case SPV_PLACE_SINISTER:
    return (SpvBox){ all.x1 - w / 3, all.y0, all.x1, all.y1 };
  case SPV_PLACE_FIRST_QUARTER:
    return (SpvBox){ all.x0, all.y0, middle.x, middle.y };
  case SPV_PLACE_SECOND_QUARTER:
    return (SpvBox){ middle.x, all.y0, all.x1, middle.y };
  case SPV_PLACE_THIRD_QUARTER:
    return (SpvBox){ all.x0, middle.y, middle.x, all.y1 };
  case SPV_PLACE_FOURTH_QUARTER:
    return (SpvBox){ middle.x, middle.y, all.x1, all.y1 };
  }
  return all;
}

static guint
choice(const SpvPattern *pattern, guint index, const SpvOutline *outline) {
  return (guint) spv_pattern_measure(pattern, index, outline, 0);
}

/* The half sides and the reach of FIGURE turned by TURN. FALSE where it has no extent. */
static gboolean
measure_figure(SpvArrangeRoom *room, const SpvPath *figure, double turn) {
  g_autoptr(SpvPath) turned = spv_path_transform(figure, spv_transform_turn(turn, spv_point(0, 0)));
  /* In units of 1: the tolerance of a panel's mm is a thousandth of the figure. */
  g_autoptr(GPtrArray) rings = spv_path_flatten(turned, SPV_CHORD_ERROR);

  room->points = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  for (guint i = 0; i < rings->len; i++) {
    const SpvRing *ring = g_ptr_array_index(rings, i);
    g_array_append_vals(room->points, ring->points, (guint) ring->n_points);
    for (gsize k = 0; k < ring->n_points; k++) {
      room->half.x = MAX(room->half.x, fabs(ring->points[k].x));
      room->half.y = MAX(room->half.y, fabs(ring->points[k].y));
      room->reach = MAX(room->reach, spv_point_length(ring->points[k]));
    }
  }
  return room->half.x > 0 && room->half.y > 0;
}

/* The part of FRAME in which PATTERN's charges stand. FALSE where the figure is nothing. */
static gboolean
find_room(SpvArrangeRoom *room, const SpvPattern *pattern, const SpvFrame *frame, const SpvPath *figure) {
  const SpvOutline *outline = frame->outline;
  SpvPlace place = (SpvPlace) choice(pattern, SPV_CHARGE_PLACE, outline);
  SpvBox whole = spv_outline_bounds(outline), box = place_box(whole, place);
  double smaller;

  if (!measure_figure(room, figure, spv_pattern_measure(pattern, SPV_CHARGE_TURN, outline, 0)))
    return FALSE;
  room->within = spv_shape_ref(spv_outline_shape(outline));
  room->box = box;
  if (place != SPV_PLACE_WHOLE) {
    g_autoptr(SpvPath) path = spv_path_new_box(box);
    g_autoptr(SpvShape) part = spv_shape_new_from_path(path);
    g_autoptr(SpvShape) all = room->within;
    room->within = spv_shape_intersection(all, part);
    if (!spv_shape_is_empty(room->within))
      room->box = spv_shape_bounds(room->within);
  }
  smaller = MIN(spv_box_width(room->box), spv_box_height(room->box));
  room->cap = place == SPV_PLACE_WHOLE && frame->breadth <= 0 ? 0.45 * smaller : 0.7 * smaller;
  if (frame->breadth > 0)
    room->cap = MIN(room->cap, 0.7 * frame->breadth);
  double longer = MAX(spv_box_width(room->box), spv_box_height(room->box));
  room->band = frame->breadth > 0 && !frame->spines && longer > TALL * smaller;
  room->spacing = spv_pattern_measure(pattern, SPV_CHARGE_SPACING, outline, 0);
  return TRUE;
}

/* Rows that narrow to the base, as even as they can be: about as many as the box is higher than wide. */
static void
even_rows(GArray *rows, guint n, double height_of_width) {
  guint n_rows = (guint) CLAMP(floor(sqrt(n * height_of_width) + 0.5), 2, n);

  for (guint i = 0; i < n_rows; i++) {
    guint in_row = n / n_rows + (i < n % n_rows ? 1 : 0);
    g_array_append_val(rows, in_row);
  }
}

/* The rows in which N charges usually stand in BOX; on a BAND along it. */
static void
usual_rows(GArray *rows, guint n, SpvBox box, gboolean band) {
  static const guint few[][4] = { { 0 }, { 1 }, { 2 }, { 2, 1 }, { 2, 2 }, { 2, 1, 2 }, { 3, 2, 1 } };
  double ratio = spv_box_width(box) / MAX(spv_box_height(box), 1e-9);
  gboolean column = n == 2 ? ratio < 1 / TALL : ratio < 1 / LONG && n <= 2 / ratio;

  if ((band && ratio > 1) || (ratio > LONG && n <= 2 * ratio))
    g_array_append_val(rows, n);
  else if (column || band)
    for (guint i = 0, one = 1; i < n; i++)
      g_array_append_val(rows, one);
  else if (n < G_N_ELEMENTS(few))
    for (guint i = 0; i < 4 && few[n][i] > 0; i++)
      g_array_append_val(rows, few[n][i]);
  else
    even_rows(rows, n, 1 / ratio);
}

/* The rows of ARRANGEMENT, one of those that stand in rows. */
static GArray *
find_rows(const SpvPattern *pattern, SpvArrangement arrangement, const SpvArrangeRoom *room, guint n) {
  GArray *rows = g_array_new(FALSE, FALSE, sizeof(guint));
  int index = spv_pattern_text_index(pattern->kind, "rows");
  const char *text = index < 0 ? NULL : spv_pattern_text(pattern, (guint) index), *end;

  if (arrangement == SPV_ARRANGEMENT_ROWS && text && !read_rows(text, rows, &end))
    return rows;
  g_array_set_size(rows, 0);
  if (arrangement == SPV_ARRANGEMENT_FESS)
    g_array_append_val(rows, n);
  else if (arrangement == SPV_ARRANGEMENT_PALE)
    for (guint i = 0, one = 1; i < n; i++)
      g_array_append_val(rows, one);
  else
    usual_rows(rows, n, room->box, room->band);
  return rows;
}

/* Where the charges stand if they aren't moved, all arrangements but semy. */
static GArray *
find_centres(const SpvPattern *pattern, const SpvFrame *frame, const SpvArrangeRoom *room, double size) {
  SpvArrangement arrangement = (SpvArrangement) choice(pattern, SPV_CHARGE_ARRANGEMENT, frame->outline);
  guint n = (guint) CLAMP(spv_pattern_measure(pattern, SPV_CHARGE_NUMBER, frame->outline, 1), 1,
                          SPV_PATTERN_MAX_COUNT);
  gboolean on_limbs = frame->spines && frame->spines->len > 0 &&
                      choice(pattern, SPV_CHARGE_PLACE, frame->outline) == SPV_PLACE_WHOLE;

  switch (arrangement) {
  case SPV_ARRANGEMENT_USUAL:
    if (on_limbs)
      return spv_arrange_spines(room, frame->spines, frame->breadth, n);
    break;
  case SPV_ARRANGEMENT_ROWS:
  case SPV_ARRANGEMENT_PALE:
  case SPV_ARRANGEMENT_FESS:
  case SPV_ARRANGEMENT_SEMY:
    break;
  case SPV_ARRANGEMENT_BEND:
  case SPV_ARRANGEMENT_BEND_SINISTER:
    return spv_arrange_diagonal(room, n, arrangement == SPV_ARRANGEMENT_BEND_SINISTER);
  case SPV_ARRANGEMENT_CROSS:
  case SPV_ARRANGEMENT_SALTIRE:
  case SPV_ARRANGEMENT_CHEVRON:
  case SPV_ARRANGEMENT_PALL:
    return spv_arrange_arms(room, arrangement, n);
  case SPV_ARRANGEMENT_ORLE:
    return spv_arrange_orle(room, n, size);
  }
  g_autoptr(GArray) rows = find_rows(pattern, arrangement, room, n);
  return spv_arrange_rows(room, (const guint *) (const void *) rows->data, rows->len);
}

/* The size that looks right; where no size keeps the charges clear of the edge, one that keeps them clear of
 * one another. */
static double
default_size(const SpvArrangeRoom *room, const GArray *centres) {
  double size = spv_arrange_size(room, centres);
  SpvArrangeRoom anywhere = *room;

  if (size > 0.02 * room->cap)
    return size;
  anywhere.reach = 1e-9;
  size = spv_arrange_size(&anywhere, centres);
  return size > 0 ? size : 0.2 * room->cap;
}

/* Moves the middle of the CENTRES to where PATTERN says. */
static void
shift(const SpvPattern *pattern, const SpvOutline *outline, GArray *centres) {
  SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };

  for (guint i = 0; i < centres->len; i++) {
    SpvPoint p = g_array_index(centres, SpvPoint, i);
    box = spv_box_join(box, (SpvBox){ p.x, p.y, p.x, p.y });
  }
  if (centres->len == 0)
    return;
  SpvPoint middle = spv_box_centre(box);
  SpvPoint to = { spv_pattern_measure(pattern, SPV_CHARGE_ACROSS, outline, middle.x),
                  spv_pattern_measure(pattern, SPV_CHARGE_DOWN, outline, middle.y) };
  for (guint i = 0; i < centres->len; i++) {
    SpvPoint *p = &g_array_index(centres, SpvPoint, i);
    *p = spv_point_add(*p, spv_point_subtract(to, middle));
  }
}

/* Charges strewn over the room. Their size, where it is 0, goes to SIZE. */
static GArray *
strew(const SpvPattern *pattern, const SpvOutline *outline, const SpvArrangeRoom *room, double *size) {
  SpvPoint middle = spv_box_centre(room->box);
  SpvPoint origin = { spv_pattern_measure(pattern, SPV_CHARGE_ACROSS, outline, middle.x),
                      spv_pattern_measure(pattern, SPV_CHARGE_DOWN, outline, middle.y) };
  double area = spv_box_width(room->box) * spv_box_height(room->box);
  double pitch = room->spacing;

  if (!(pitch > 0))
    pitch = *size > 0 ? *size / 0.6 : 0.25 * MIN(spv_box_width(room->box), spv_box_height(room->box));
  pitch = MAX(pitch, sqrt(area / MOST_STREWN));
  if (!(*size > 0))
    *size = 0.6 * pitch;
  return spv_arrange_semy(room, pitch, *size, origin);
}

static void
clear_room(SpvArrangeRoom *room) {
  g_clear_pointer(&room->within, spv_shape_unref);
  g_clear_pointer(&room->points, g_array_unref);
}

static GArray *
arrange(const SpvPattern *pattern, const SpvFrame *frame, const SpvPath *figure) {
  const SpvOutline *outline = frame->outline;
  GArray *places = g_array_new(FALSE, FALSE, sizeof(SpvTransform));
  double size = spv_pattern_measure(pattern, SPV_CHARGE_SIZE, outline, -1);
  double turn = spv_pattern_measure(pattern, SPV_CHARGE_TURN, outline, 0);
  SpvArrangeRoom room = { 0 };
  g_autoptr(GArray) centres = NULL;

  if (size == 0)
    return places;
  if (!find_room(&room, pattern, frame, figure)) {
    clear_room(&room);
    return places;
  }
  if (choice(pattern, SPV_CHARGE_ARRANGEMENT, outline) == SPV_ARRANGEMENT_SEMY)
    centres = strew(pattern, outline, &room, &size);
  else {
    centres = find_centres(pattern, frame, &room, size);
    if (size < 0)
      size = default_size(&room, centres);
    shift(pattern, outline, centres);
  }
  for (guint i = 0; i < centres->len; i++) {
    SpvTransform place = spv_transform_place(size, turn, g_array_index(centres, SpvPoint, i));
    g_array_append_val(places, place);
  }
  clear_room(&room);
  return places;
}

GArray *
spv_arrange(const SpvPattern *pattern, const SpvFrame *frame) {
  g_autoptr(SpvPath) figure = spv_figure_path(pattern);
  return arrange(pattern, frame, figure);
}

/* What is laid on one charge: a disc where it is round, otherwise the rectangle about its FIGURE. */
static SpvFrame *
frame_of(const SpvPattern *pattern, const SpvPath *figure, SpvTransform place) {
  gboolean round = pattern->kind == SPV_PATTERN_ROUNDEL || pattern->kind == SPV_PATTERN_ANNULET;
  double size = hypot(place.a, place.b), angle = atan2(place.b, place.a);
  SpvBox box = spv_path_bounds(figure);
  SpvOutlineSpec spec = { .family = round ? SPV_OUTLINE_DISC : SPV_OUTLINE_RECTANGLE,
                          .width = size * spv_box_width(box),
                          .height = size * spv_box_height(box) };
  SpvPoint datum = spv_transform_point(place, spv_point((box.x0 + box.x1) / 2, box.y0));

  if (round)
    spec.width = spec.height = size;
  g_autoptr(SpvOutline) outline = spv_outline_new(&spec);
  return spv_frame_new_outline(outline, datum, angle);
}

void
spv_lay_charge(const SpvPattern *pattern, const SpvFrame *frame, SpvDraft *draft) {
  g_autoptr(SpvPath) figure = spv_figure_path(pattern);
  g_autoptr(GArray) places = arrange(pattern, frame, figure);
  SpvPathBuilder *builder = spv_path_builder_new();

  for (guint i = 0; i < places->len; i++) {
    g_autoptr(SpvPath) placed = spv_path_transform(figure, g_array_index(places, SpvTransform, i));
    spv_path_builder_path(builder, placed);
  }
  draft->area[0] = spv_path_builder_build(builder);
  /* Several charges are no one thing to lay something on: then that is the panel, of which they show a part.
   */
  if (places->len == 1 && !spv_path_is_empty(figure))
    draft->frame = frame_of(pattern, figure, g_array_index(places, SpvTransform, 0));
}
