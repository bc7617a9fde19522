/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How charges stand: as many as asked, even, alike on both sides, and clear of one another and of the edge.
 */
#include <glib.h>
#include <string.h>

#include "support/near.h"

#include "heraldry/arrange.h"
#include "heraldry/figure.h"

static SpvOutline *
outline_of(SpvOutlineFamily family, double width, double height) {
  SpvOutlineSpec spec;
  spv_outline_spec_preset(family, width, height, &spec);
  return spv_outline_new(&spec);
}

static SpvFrame *
panel(SpvOutlineFamily family, double width, double height) {
  g_autoptr(SpvOutline) outline = outline_of(family, width, height);
  return spv_frame_new(outline);
}

static void
set(SpvPattern *pattern, guint index, SpvUnit unit, double value) {
  pattern->measures[index] = (SpvMeasure){ unit, value };
}

static SpvPattern
charges(SpvPatternKind kind, guint number, SpvArrangement arrangement) {
  SpvPattern pattern = spv_pattern_preset(kind);
  set(&pattern, SPV_CHARGE_NUMBER, SPV_UNIT_PLAIN, number);
  set(&pattern, SPV_CHARGE_ARRANGEMENT, SPV_UNIT_PLAIN, arrangement);
  return pattern;
}

static SpvPoint
at(GArray *places, guint i) {
  SpvTransform t = g_array_index(places, SpvTransform, i);
  return spv_point(t.e, t.f);
}

static double
size_at(GArray *places, guint i) {
  SpvTransform t = g_array_index(places, SpvTransform, i);
  return hypot(t.a, t.b);
}

/* Checks that PLACES are ROWS (0-terminated), each in one line about AXIS, with the same distance within all.
 */
static void
assert_rows(GArray *places, const guint *rows, double axis) {
  guint i = 0;
  double pitch = 0, above = -INFINITY;
  for (guint row = 0; rows[row] > 0; row++) {
    double y = at(places, i).y;
    assert_true(y > above);
    above = y;
    assert_near((at(places, i).x + at(places, i + rows[row] - 1).x) / 2, axis, 1e-9);
    for (guint k = 0; k < rows[row]; k++, i++) {
      assert_near(at(places, i).y, y, 1e-9);
      if (k == 0)
        continue;
      double apart = at(places, i).x - at(places, i - 1).x;
      pitch = pitch > 0 ? pitch : apart;
      assert_near(apart, pitch, 1e-9);
    }
  }
  assert_int_equal(i, places->len);
}

/* The handbooks' usual arrangement; see arrange.h. */
static void
usual_rows(void **state) {
  static const guint rows[][6] = { { 1 },       { 2 },       { 2, 1 },    { 2, 2 },    { 2, 1, 2 },
                                   { 3, 2, 1 }, { 3, 2, 2 }, { 3, 3, 2 }, { 3, 3, 3 }, { 4, 3, 3 } };
  g_autoptr(SpvFrame) frame = panel(SPV_OUTLINE_PLATE, 20, 22);
  (void) state;
  for (guint n = 1; n <= G_N_ELEMENTS(rows); n++) {
    SpvPattern pattern = charges(SPV_PATTERN_ROUNDEL, n, SPV_ARRANGEMENT_USUAL);
    g_autoptr(GArray) places = spv_arrange(&pattern, frame);
    assert_rows(places, rows[n - 1], 0);
  }
}

static void
long_parts_have_one_row_or_column(void **state) {
  static const guint row[] = { 3, 0 }, column[] = { 1, 1, 1, 0 }, pair[] = { 1, 1, 0 };
  (void) state;
  g_autoptr(SpvFrame) wide = panel(SPV_OUTLINE_STRIP, 30, 8), high = panel(SPV_OUTLINE_STRIP, 8, 30),
                      taller = panel(SPV_OUTLINE_RECTANGLE, 10, 16);
  SpvPattern three = charges(SPV_PATTERN_ROUNDEL, 3, SPV_ARRANGEMENT_USUAL);
  SpvPattern two = charges(SPV_PATTERN_ROUNDEL, 2, SPV_ARRANGEMENT_USUAL);
  g_autoptr(GArray) across = spv_arrange(&three, wide), down = spv_arrange(&three, high),
                    both = spv_arrange(&two, taller);
  assert_rows(across, row, 0);
  assert_rows(down, column, 0);
  assert_rows(both, pair, 0);
  /* Evenly spread: a third of the side from one to the next. */
  assert_near(at(across, 1).x - at(across, 0).x, 10, 1e-9);
  assert_near(at(down, 1).y - at(down, 0).y, 10, 1e-9);
}

static void
one_stands_in_the_middle(void **state) {
  g_autoptr(SpvFrame) frame = panel(SPV_OUTLINE_RECTANGLE, 20, 30);
  SpvPattern one = charges(SPV_PATTERN_ROUNDEL, 1, SPV_ARRANGEMENT_USUAL);
  (void) state;
  g_autoptr(GArray) places = spv_arrange(&one, frame);
  assert_near(at(places, 0).x, 0, 1e-12);
  assert_near(at(places, 0).y, 15, 1e-12);
  assert_near(size_at(places, 0), 9, 1e-9); /* 0.45 of the lesser side */
}

static void
as_written(void **state) {
  static const guint rows[] = { 1, 2, 4, 0 };
  g_autoptr(SpvFrame) frame = panel(SPV_OUTLINE_RECTANGLE, 20, 20);
  SpvPattern pattern = charges(SPV_PATTERN_BILLET, 3, SPV_ARRANGEMENT_ROWS);
  (void) state;
  pattern.texts[0] = "1,2 , 4";
  g_autoptr(GArray) places = spv_arrange(&pattern, frame);
  assert_rows(places, rows, 0);
}

static void
rows_are_checked(void **state) {
  static const struct {
    const char *text, *says;
  } bad[] = { { "", "Character 1 of the rows: a number" },
              { "3,", "Character 3" },
              { "3 2", "Character 3 of the rows: a comma" },
              { "0", "Character 1" },
              { "100,101", "Character 5 of the rows: a number from 1" },
              { "9999999999999", "Character 1" },
              { "ü", "Character 1" },
              { "3, x", "Character 4" },
              { "3.5", "Character 2" },
              { "-3", "Character 1" } };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(bad); i++) {
    g_autoptr(GError) error = NULL;
    assert_false(spv_rows_text_check(bad[i].text, &error));
    assert_true(g_error_matches(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT));
    if (!strstr(error->message, bad[i].says))
      fail_msg("“%s”: %s", bad[i].text, error->message);
  }
  assert_true(spv_rows_text_check("3, 2, 1", NULL));
  assert_true(spv_rows_text_check(" 100 ,100 ", NULL));
}

/* Checks that whatever has a mirror image in the centre line, and an even size. */
static void
assert_symmetric(GArray *places) {
  for (guint i = 0; i < places->len; i++) {
    gboolean found = FALSE;
    for (guint k = 0; k < places->len && !found; k++)
      found = hypot(at(places, i).x + at(places, k).x, at(places, i).y - at(places, k).y) < 0.02;
    if (!found)
      fail_msg("%u of %u, at %g, %g, has no counterpart", i, places->len, at(places, i).x, at(places, i).y);
    assert_near(size_at(places, i), size_at(places, 0), 1e-12);
  }
}

/* Every charge lies inside the outline, and no two overlap: their areas add up. */
static void
assert_clear(const SpvPattern *pattern, const SpvFrame *frame, const char *what) {
  g_autoptr(SpvDraft) draft = spv_pattern_lay(pattern, frame->outline);
  g_autoptr(SpvShape) all = spv_shape_new_from_path(draft->area[0]);
  g_autoptr(SpvShape) inside = spv_shape_intersection(all, spv_outline_shape(frame->outline));
  g_autoptr(SpvPath) figure = spv_figure_path(pattern);
  g_autoptr(GArray) places = spv_arrange(pattern, frame);
  double sum = 0;
  for (guint i = 0; i < places->len; i++) {
    g_autoptr(SpvPath) placed = spv_path_transform(figure, g_array_index(places, SpvTransform, i));
    g_autoptr(SpvShape) shape = spv_shape_new_from_path(placed);
    sum += spv_shape_area(shape);
  }
  assert_true(sum > 0);
  if (fabs(spv_shape_area(all) - sum) > 1e-6 * sum)
    fail_msg("%s: charges overlap: %g of %g", what, spv_shape_area(all), sum);
  if (fabs(spv_shape_area(inside) - sum) > 1e-6 * sum)
    fail_msg("%s: charges are cut: %g of %g", what, spv_shape_area(inside), sum);
}

static void
defaults_keep_clear_on_every_panel(void **state) {
  static const SpvArrangement arrangements[] = { SPV_ARRANGEMENT_USUAL,   SPV_ARRANGEMENT_PALE,
                                                 SPV_ARRANGEMENT_FESS,    SPV_ARRANGEMENT_CROSS,
                                                 SPV_ARRANGEMENT_SALTIRE, SPV_ARRANGEMENT_CHEVRON,
                                                 SPV_ARRANGEMENT_PALL,    SPV_ARRANGEMENT_ORLE,
                                                 SPV_ARRANGEMENT_BEND,    SPV_ARRANGEMENT_BEND_SINISTER };
  (void) state;
  for (int family = 0; family < SPV_N_OUTLINE_FAMILIES; family++)
    for (guint shape = 0; shape < 2; shape++) {
      g_autoptr(SpvFrame) frame = panel((SpvOutlineFamily) family, 14, shape ? 11 : 20);
      for (guint i = 0; i < G_N_ELEMENTS(arrangements); i++)
        for (guint n = 1; n <= 9; n++) {
          SpvPattern pattern = charges(n % 2 ? SPV_PATTERN_ROUNDEL : SPV_PATTERN_BILLET, n, arrangements[i]);
          g_autoptr(GArray) places = spv_arrange(&pattern, frame);
          g_autofree char *what = g_strdup_printf("%u %s on a %s", n, spv_arrangement_keys[arrangements[i]],
                                                  spv_outline_info((SpvOutlineFamily) family)->key);
          assert_int_equal(places->len, n);
          assert_clear(&pattern, frame, what);
          if (size_at(places, 0) < 0.4)
            fail_msg("%s: %g mm is a speck", what, size_at(places, 0));
          if (arrangements[i] != SPV_ARRANGEMENT_BEND && arrangements[i] != SPV_ARRANGEMENT_BEND_SINISTER)
            assert_symmetric(places);
        }
    }
}

/* What stands in a part of the panel stands in its box. */
static void
places_are_kept(void **state) {
  (void) state;
  for (int family = 0; family < SPV_N_OUTLINE_FAMILIES; family++) {
    g_autoptr(SpvFrame) frame = panel((SpvOutlineFamily) family, 14, 20);
    SpvBox all = spv_outline_bounds(frame->outline);
    SpvPoint middle = spv_box_centre(all);
    for (int place = 0; place <= SPV_PLACE_FOURTH_QUARTER; place++)
      for (guint n = 1; n <= 3; n++) {
        SpvPattern pattern = charges(SPV_PATTERN_ROUNDEL, n, SPV_ARRANGEMENT_USUAL);
        set(&pattern, SPV_CHARGE_PLACE, SPV_UNIT_PLAIN, place);
        g_autofree char *what = g_strdup_printf("%u in %s on a %s", n, spv_place_keys[place],
                                                spv_outline_info((SpvOutlineFamily) family)->key);
        assert_clear(&pattern, frame, what);
        g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, frame->outline);
        SpvBox box = spv_path_bounds(draft->area[0]);
        if (place == SPV_PLACE_CHIEF)
          assert_true(box.y1 < all.y0 + spv_box_height(all) / 3);
        if (place == SPV_PLACE_BASE)
          assert_true(box.y0 > all.y1 - spv_box_height(all) / 3);
        if (place == SPV_PLACE_FIRST_QUARTER || place == SPV_PLACE_THIRD_QUARTER)
          assert_true(box.x1 < middle.x);
        if (place == SPV_PLACE_SECOND_QUARTER || place == SPV_PLACE_FOURTH_QUARTER)
          assert_true(box.x0 > middle.x);
        if (place == SPV_PLACE_DEXTER)
          assert_true(box.x1 < all.x0 + spv_box_width(all) / 3);
      }
  }
}

/* What is given is kept: size, spacing, the middle, the turn. */
static void
what_is_given_is_kept(void **state) {
  g_autoptr(SpvFrame) frame = panel(SPV_OUTLINE_RECTANGLE, 20, 20);
  (void) state;
  for (int arrangement = 0; arrangement < SPV_ARRANGEMENT_SEMY; arrangement++) {
    if (arrangement == SPV_ARRANGEMENT_ROWS)
      continue;
    SpvPattern pattern = charges(SPV_PATTERN_BILLET, 5, (SpvArrangement) arrangement);
    set(&pattern, SPV_CHARGE_SIZE, SPV_UNIT_MM, 1.25);
    set(&pattern, SPV_CHARGE_SPACING, SPV_UNIT_MM, 2);
    set(&pattern, SPV_CHARGE_ACROSS, SPV_UNIT_MM, 3);
    set(&pattern, SPV_CHARGE_DOWN, SPV_UNIT_MM, 7);
    set(&pattern, SPV_CHARGE_TURN, SPV_UNIT_DEGREES, 30);
    g_autoptr(GArray) places = spv_arrange(&pattern, frame);
    SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };
    double nearest = INFINITY;
    assert_int_equal(places->len, 5);
    for (guint i = 0; i < 5; i++) {
      SpvTransform t = g_array_index(places, SpvTransform, i);
      assert_near(size_at(places, i), 1.25, 1e-12);
      assert_near(atan2(t.b, t.a), G_PI / 6, 1e-12);
      box = spv_box_join(box, (SpvBox){ t.e, t.f, t.e, t.f });
      for (guint k = 0; k < i; k++)
        nearest = MIN(nearest, spv_point_distance(at(places, i), at(places, k)));
    }
    assert_near(spv_box_centre(box).x, 3, 1e-9);
    assert_near(spv_box_centre(box).y, 7, 1e-9);
    /* Two apart; in usual saltire (2, 1, 2) the middle one lies between rows that are. */
    if (arrangement != SPV_ARRANGEMENT_USUAL)
      assert_near(nearest, 2, 0.01);
  }
}

/* One in the middle, and as many on each limb: five in cross and in saltire, as the handbooks have them. */
static void
five_in_cross_and_in_saltire(void **state) {
  g_autoptr(SpvFrame) frame = panel(SPV_OUTLINE_RECTANGLE, 20, 20);
  (void) state;
  SpvPattern cross = charges(SPV_PATTERN_ROUNDEL, 5, SPV_ARRANGEMENT_CROSS);
  SpvPattern saltire = charges(SPV_PATTERN_ROUNDEL, 5, SPV_ARRANGEMENT_SALTIRE);
  g_autoptr(GArray) upright = spv_arrange(&cross, frame), slanting = spv_arrange(&saltire, frame);
  for (guint i = 0; i < 5; i++) {
    SpvPoint p = spv_point_subtract(at(upright, i), spv_point(0, 10));
    SpvPoint q = spv_point_subtract(at(slanting, i), spv_point(0, 10));
    assert_near(spv_point_length(p),
                i == 0 ? 0 : spv_point_length(spv_point_subtract(at(upright, 1), spv_point(0, 10))), 1e-9);
    assert_near(p.x * p.y, 0, 1e-9);
    assert_near(fabs(q.x), fabs(q.y), 1e-9);
  }
}

static void
bends_fall_the_right_way(void **state) {
  g_autoptr(SpvFrame) frame = panel(SPV_OUTLINE_RECTANGLE, 20, 20);
  (void) state;
  SpvPattern bend = charges(SPV_PATTERN_ROUNDEL, 3, SPV_ARRANGEMENT_BEND);
  SpvPattern sinister = charges(SPV_PATTERN_ROUNDEL, 3, SPV_ARRANGEMENT_BEND_SINISTER);
  g_autoptr(GArray) one = spv_arrange(&bend, frame), other = spv_arrange(&sinister, frame);
  for (guint i = 0; i < 3; i++) {
    assert_near(at(one, i).y - 10, at(one, i).x, 1e-9);
    assert_near(at(other, i).y - 10, -at(other, i).x, 1e-9);
  }
  assert_true(at(one, 0).x < at(one, 2).x);
}

/* Half-drop: every second column is half a pitch lower, and each charge has six neighbours a pitch away. */
static void
semy_is_a_half_drop(void **state) {
  g_autoptr(SpvFrame) frame = panel(SPV_OUTLINE_RECTANGLE, 20, 20);
  SpvPattern pattern = charges(SPV_PATTERN_ROUNDEL, 1, SPV_ARRANGEMENT_SEMY);
  (void) state;
  set(&pattern, SPV_CHARGE_SPACING, SPV_UNIT_MM, 3);
  set(&pattern, SPV_CHARGE_SIZE, SPV_UNIT_MM, 1);
  g_autoptr(GArray) places = spv_arrange(&pattern, frame);
  assert_symmetric(places);
  guint middles = 0;
  for (guint i = 0; i < places->len; i++) {
    SpvPoint p = at(places, i);
    assert_true(fabs(p.x) < 10.5 && p.y > -0.5 && p.y < 20.5);
    guint neighbours = 0;
    for (guint k = 0; k < places->len; k++) {
      double apart = spv_point_distance(p, at(places, k));
      assert_true(k == i || apart > 3 - 1e-9);
      neighbours += k != i && apart < 3 + 1e-9;
    }
    if (fabs(p.x) < 6 && p.y > 4 && p.y < 16) {
      assert_int_equal(neighbours, 6);
      middles++;
    }
  }
  assert_true(middles > 10);
  /* One figure a pitch squared times √3/2 of the panel, and those that the edge cuts. */
  double share = 9 * sqrt(0.75);
  assert_true(places->len >= 400 / share && places->len <= 21.0 * 21.0 / share + 21);
  /* However fine the pitch, there is an end. */
  set(&pattern, SPV_CHARGE_SPACING, SPV_UNIT_MM, 0.05);
  g_autoptr(GArray) many = spv_arrange(&pattern, frame);
  assert_true(many->len < 4000);
}

static void
unref_track(gpointer track) {
  spv_track_unref(track);
}

static SpvFrame *
limbs(const SpvPoint (*ends)[2], guint n, double breadth) {
  g_autoptr(SpvOutline) outline = outline_of(SPV_OUTLINE_RECTANGLE, 20, 20);
  g_autoptr(GPtrArray) spines = g_ptr_array_new_with_free_func(unref_track);
  for (guint i = 0; i < n; i++)
    g_ptr_array_add(spines, spv_track_new(ends[i], 2, FALSE));
  return spv_frame_new_limbs(outline, spines, breadth);
}

/* On a cross, told as two lines that cross or as four that meet: the middle first, then as many on each limb.
 */
static void
charges_on_a_cross(void **state) {
  static const SpvPoint lines[][2] = { { { 0, -2 }, { 0, 22 } }, { { -12, 10 }, { 12, 10 } } };
  static const SpvPoint arms[][2] = {
    { { 0, 10 }, { 0, -2 } }, { { 0, 10 }, { 0, 22 } }, { { 0, 10 }, { -12, 10 } }, { { 12, 10 }, { 0, 10 } }
  };
  g_autoptr(SpvFrame) two = limbs(lines, 2, 4), four = limbs(arms, 4, 4);
  SpvFrame *frames[] = { two, four };
  (void) state;
  for (guint f = 0; f < 2; f++)
    for (guint n = 1; n <= 9; n++) {
      SpvPattern pattern = charges(SPV_PATTERN_ROUNDEL, n, SPV_ARRANGEMENT_USUAL);
      g_autoptr(GArray) places = spv_arrange(&pattern, frames[f]);
      gboolean middle = FALSE;
      assert_int_equal(places->len, n);
      assert_symmetric(places);
      assert_true(size_at(places, 0) <= 0.7 * 4 + 1e-9);
      for (guint i = 0; i < n; i++) {
        SpvPoint p = at(places, i);
        assert_near(p.x * (p.y - 10), 0, 1e-6);
        middle |= hypot(p.x, p.y - 10) < 1e-6;
      }
      assert_int_equal(middle, n % 2 == 1);
      if (n == 5)
        for (guint i = 1; i < n; i++) /* limbs of 10: a pitch of 10/1.5 */
          assert_near(hypot(at(places, i).x, at(places, i).y - 10), 10 / 1.5, 1e-6);
    }
}

static void
charges_on_one_limb(void **state) {
  static const SpvPoint fess[][2] = { { { -14, 10 }, { 14, 10 } } };
  g_autoptr(SpvFrame) frame = limbs(fess, 1, 5);
  SpvPattern pattern = charges(SPV_PATTERN_ROUNDEL, 4, SPV_ARRANGEMENT_USUAL);
  (void) state;
  g_autoptr(GArray) places = spv_arrange(&pattern, frame);
  for (guint i = 0; i < 4; i++)
    assert_near(at(places, i).x, -7.5 + 5 * i, 1e-6); /* the part on the panel, 20, in four */
  assert_near(size_at(places, 0), 3.5, 1e-9);
  set(&pattern, SPV_CHARGE_SPACING, SPV_UNIT_MM, 3);
  g_autoptr(GArray) closer = spv_arrange(&pattern, frame);
  for (guint i = 1; i < 4; i++)
    assert_near(at(closer, i).x - at(closer, i - 1).x, 3, 1e-9);
}

/* Round a bordure: evenly, the first at the datum. */
static void
charges_on_a_closed_limb(void **state) {
  SpvPoint points[720];
  g_autoptr(SpvOutline) outline = outline_of(SPV_OUTLINE_DISC, 20, 20);
  g_autoptr(GPtrArray) spines = g_ptr_array_new_with_free_func(unref_track);
  (void) state;
  for (guint i = 0; i < 720; i++)
    points[i] = spv_point(8 * sin(2 * G_PI * i / 720 + 1), 10 - 8 * cos(2 * G_PI * i / 720 + 1));
  g_ptr_array_add(spines, spv_track_new(points, 720, TRUE));
  g_autoptr(SpvFrame) frame = spv_frame_new_limbs(outline, spines, 3);
  SpvPattern pattern = charges(SPV_PATTERN_BILLET, 8, SPV_ARRANGEMENT_USUAL);
  g_autoptr(GArray) places = spv_arrange(&pattern, frame);
  assert_int_equal(places->len, 8);
  for (guint i = 0; i < 8; i++) {
    assert_near(at(places, i).x, 8 * sin(G_PI / 4 * i), 0.05);
    assert_near(at(places, i).y, 10 - 8 * cos(G_PI / 4 * i), 0.05);
  }
}

/* On bars, which meet nowhere: shared out. On a bend's box: along it. */
static void
charges_on_bars_and_bends(void **state) {
  static const SpvPoint bars[][2] = { { { -12, 5 }, { 12, 5 } }, { { -12, 15 }, { 12, 15 } } };
  g_autoptr(SpvFrame) two = limbs(bars, 2, 4), box = spv_frame_new_box(spv_point(3, 3), 0.5, 24, 4);
  SpvPattern pattern = charges(SPV_PATTERN_ROUNDEL, 5, SPV_ARRANGEMENT_USUAL);
  (void) state;
  g_autoptr(GArray) shared = spv_arrange(&pattern, two), along = spv_arrange(&pattern, box);
  guint upper = 0;
  for (guint i = 0; i < 5; i++)
    upper += at(shared, i).y < 10;
  assert_int_equal(upper, 3);
  for (guint i = 0; i < 5; i++) {
    assert_near(at(along, i).y, 2, 1e-9);
    assert_near(at(along, i).x, 24 / 5.5 * (i - 2.0), 1e-9);
  }
  assert_near(size_at(along, 0), 2.8, 1e-9);
}

static void
without_size_there_is_nothing(void **state) {
  g_autoptr(SpvFrame) frame = panel(SPV_OUTLINE_PLATE, 20, 22);
  (void) state;
  for (int arrangement = 0; arrangement <= SPV_ARRANGEMENT_SEMY; arrangement++) {
    SpvPattern pattern = charges(SPV_PATTERN_ROUNDEL, 3, (SpvArrangement) arrangement);
    set(&pattern, SPV_CHARGE_SIZE, SPV_UNIT_MM, 0);
    g_autoptr(GArray) places = spv_arrange(&pattern, frame);
    assert_int_equal(places->len, 0);
  }
}

/* The most charges, on the smallest and the largest panel, one way and another. */
static void
extremes(void **state) {
  static const double sides[][2] = { { 0.5, 0.5 }, { 500, 0.5 }, { 0.5, 500 }, { 500, 500 } };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(sides); i++) {
    g_autoptr(SpvFrame) frame = panel(SPV_OUTLINE_RECTANGLE, sides[i][0], sides[i][1]);
    for (int arrangement = 0; arrangement < SPV_ARRANGEMENT_SEMY; arrangement++)
      for (int place = 0; place <= SPV_PLACE_FOURTH_QUARTER; place += 3) {
        SpvPattern pattern = charges(SPV_PATTERN_ROUNDEL, 200, (SpvArrangement) arrangement);
        set(&pattern, SPV_CHARGE_PLACE, SPV_UNIT_PLAIN, place);
        g_autoptr(GArray) places = spv_arrange(&pattern, frame);
        assert_int_equal(places->len, 200);
        for (guint k = 0; k < 200; k++)
          assert_true(isfinite(at(places, k).x) && isfinite(at(places, k).y) && size_at(places, k) > 0);
      }
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(usual_rows),
    cmocka_unit_test(long_parts_have_one_row_or_column),
    cmocka_unit_test(one_stands_in_the_middle),
    cmocka_unit_test(as_written),
    cmocka_unit_test(rows_are_checked),
    cmocka_unit_test(defaults_keep_clear_on_every_panel),
    cmocka_unit_test(places_are_kept),
    cmocka_unit_test(what_is_given_is_kept),
    cmocka_unit_test(five_in_cross_and_in_saltire),
    cmocka_unit_test(bends_fall_the_right_way),
    cmocka_unit_test(semy_is_a_half_drop),
    cmocka_unit_test(charges_on_a_cross),
    cmocka_unit_test(charges_on_one_limb),
    cmocka_unit_test(charges_on_a_closed_limb),
    cmocka_unit_test(charges_on_bars_and_bends),
    cmocka_unit_test(without_size_there_is_nothing),
    cmocka_unit_test(extremes),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
