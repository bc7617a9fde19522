/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The narrowest stroke of a piece. */
#include "geometry-test.h"
#include "geometry/width.h"

/* What width.h promises, mm. */
#define EXACT 0.002

static SpvShape *
polygon_shape(const SpvPoint *points, gsize n) {
  g_autoptr(SpvPath) path = spv_path_new_polygon(points, n);
  return spv_shape_new_from_path(path);
}

static void
assert_narrowest(const SpvPoint *points, gsize n, double width) {
  g_autoptr(SpvShape) shape = polygon_shape(points, n);
  SpvPoint place = { NAN, NAN };
  assert_near(spv_piece_narrowest(shape, 0, INFINITY, &place), width, EXACT);
  assert_true(spv_shape_contains(shape, place));
}

static void
test_a_bar_gives_its_width(void **state) {
  (void) state;
  const SpvPoint bar[] = { { 0, 0 }, { 30, 0 }, { 30, 0.8 }, { 0, 0.8 } };
  const SpvPoint slanted[] = { { 0, 0 }, { 16, 12 }, { 15.4, 12.8 }, { -0.6, 0.8 } };
  const SpvPoint square[] = { { -3, -3 }, { 3, -3 }, { 3, 3 }, { -3, 3 } };
  assert_narrowest(bar, 4, 0.8);
  assert_narrowest(slanted, 4, 1);
  assert_narrowest(square, 4, 6);
}

/* Twice the inradius: 2 · area / half the circumference, elementary geometry. */
static void
test_a_triangle_gives_its_inscribed_circle(void **state) {
  (void) state;
  const SpvPoint right[] = { { 0, 0 }, { 4, 0 }, { 0, 3 } };
  const SpvPoint sharp[] = { { 0, 0 }, { 20, -0.5 }, { 20, 0.5 } };
  assert_narrowest(right, 3, 2);
  double side = hypot(20, 0.5);
  assert_narrowest(sharp, 3, 2 * 10 / ((1 + 2 * side) / 2));
}

/* Closed forms: twice a regular polygon's apothem, R cos(pi / n); a trapezoid's height where its sides
 * don't meet it first; in a half disc, its radius. */
static void
test_convex_pieces_give_their_largest_disc(void **state) {
  (void) state;
  for (guint n = 3; n <= 200; n += n < 12 ? 1 : 47) {
    g_autofree SpvPoint *points = g_new(SpvPoint, n);
    for (guint i = 0; i < n; i++)
      points[i] = spv_point(7 + 3 * cos(2 * G_PI * i / n + 0.1), 3 * sin(2 * G_PI * i / n + 0.1) - 2);
    g_autoptr(SpvShape) shape = polygon_shape(points, n);
    SpvPoint place;
    assert_near(spv_piece_narrowest(shape, 0, INFINITY, &place), 6 * cos(G_PI / n), 1e-8);
    assert_near(place.x, 7, 1e-6);
    assert_near(place.y, -2, 1e-6);
  }
  const SpvPoint trapezoid[] = { { 0, 0 }, { 20, 0 }, { 17, 3 }, { 4, 3 } };
  g_autoptr(SpvShape) flat = polygon_shape(trapezoid, G_N_ELEMENTS(trapezoid));
  assert_near(spv_piece_narrowest(flat, 0, INFINITY, NULL), 3, 1e-8);

  g_autoptr(SpvPath) disc_path = spv_path_new_circle(spv_point(0, 0), 4);
  g_autoptr(SpvPath) box_path = spv_path_new_box((SpvBox){ -5, 0, 5, 5 });
  g_autoptr(SpvShape) disc = spv_shape_new_from_path(disc_path);
  g_autoptr(SpvShape) box = spv_shape_new_from_path(box_path);
  g_autoptr(SpvShape) half = spv_shape_intersection(disc, box);
  SpvPoint place;
  assert_near(spv_piece_narrowest(half, 0, INFINITY, &place), 4, SPV_CHORD_ERROR);
  assert_near(place.x, 0, 0.1);
  assert_near(place.y, 2, 0.001);
}

/* Straight corners and points that all but repeat, as rounding leaves them. */
static void
test_a_convex_ring_with_idle_points(void **state) {
  (void) state;
  const SpvPoint bar[] = { { 0, 0 },    { 3, 0 },   { 3 + 1e-9, 0 }, { 30, 0 },        { 30, 0.4 },
                           { 30, 0.8 }, { 8, 0.8 }, { 0, 0.8 },      { 0, 0.8 - 1e-9 } };
  g_autoptr(SpvShape) shape = polygon_shape(bar, G_N_ELEMENTS(bar));
  SpvPoint place;
  assert_near(spv_piece_narrowest(shape, 0, INFINITY, &place), 0.8, 1e-6);
  assert_near(place.x, 15, 0.01);
  assert_near(place.y, 0.4, 0.01);
}

/* A plate of 3 by 2 with N points of DEPTH on one side, and a nib of WIDTH by 0.5 on the other. */
static SpvShape *
toothed_plate(guint n, double depth, double width) {
  g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(SpvPoint));
  for (guint i = 0; i < 2 * n; i++) {
    SpvPoint point = { 3.0 * i / (2 * n), i % 2 == 0 ? 0 : -depth };
    g_array_append_val(points, point);
  }
  const SpvPoint rest[] = { { 3, 0 },   { 3, 2 }, { 1 + width, 2 }, { 1 + width, 2.5 },
                            { 1, 2.5 }, { 1, 2 }, { 0, 2 } };
  g_array_append_vals(points, rest, G_N_ELEMENTS(rest));
  return polygon_shape((const SpvPoint *) (void *) points->data, points->len);
}

/* Whether a piece is wide enough must come out the same whether it is only asked for or measured in full. */
static void
test_enough_and_the_full_measure_agree(void **state) {
  (void) state;
  const double nibs[] = { 0.06, 0.15, 0.24, 0.26, 0.35 };
  for (guint n = 1; n <= 9; n += 4)
    for (guint i = 0; i < G_N_ELEMENTS(nibs); i++) {
      g_autoptr(SpvShape) shape = toothed_plate(n, 0.7, nibs[i]);
      SpvPoint place;
      double asked = spv_piece_narrowest(shape, 0, 0.25, &place);
      assert_near(spv_piece_narrowest(shape, 0, INFINITY, NULL), nibs[i], EXACT);
      if (nibs[i] > 0.25) {
        assert_true(asked >= 0.25);
        continue;
      }
      assert_near(asked, nibs[i], EXACT);
      assert_near(place.x, 1 + nibs[i] / 2, 0.05);
      assert_true(place.y > 2 && place.y < 2.5);
    }
}

static void
test_arms_count_though_the_body_stays_whole(void **state) {
  (void) state;
  const SpvPoint even_l[] = { { 0, 0 }, { 12, 0 }, { 12, 2 }, { 2, 2 }, { 2, 12 }, { 0, 12 } };
  const SpvPoint uneven_l[] = { { 0, 0 }, { 12, 0 }, { 12, 0.3 }, { 2, 0.3 }, { 2, 12 }, { 0, 12 } };
  const SpvPoint t[] = { { 0, 0 },     { 20, 0 },   { 20, 5 },  { 10.4, 5 },
                         { 10.4, 15 }, { 9.6, 15 }, { 9.6, 5 }, { 0, 5 } };
  const SpvPoint comb[] = { { 0, 0 },  { 20, 0 },  { 20, 9 },    { 19.5, 9 },  { 19.5, 3 },
                            { 12, 3 }, { 12, 9 },  { 11.85, 9 }, { 11.85, 3 }, { 5, 3 },
                            { 5, 9 },  { 4.6, 9 }, { 4.6, 3 },   { 0, 3 } };
  assert_narrowest(even_l, G_N_ELEMENTS(even_l), 2);
  assert_narrowest(uneven_l, G_N_ELEMENTS(uneven_l), 0.3);
  assert_narrowest(t, G_N_ELEMENTS(t), 0.8);
  assert_narrowest(comb, G_N_ELEMENTS(comb), 0.15);

  g_autoptr(SpvShape) shape = polygon_shape(comb, G_N_ELEMENTS(comb));
  SpvPoint place;
  assert_near(spv_piece_narrowest(shape, 0, 0.25, &place), 0.15, EXACT);
  assert_near(place.x, 11.925, 0.01);
  assert_true(place.y > 3 && place.y < 9);
}

/* A round brush reaches into a crescent's middle and into a tooth's foot; how far it comes short of their
 * tips is another question. */
static void
test_tips_are_no_arms(void **state) {
  (void) state;
  const double angles[] = { 15, 30, 60, 90, 120 };
  for (guint i = 0; i < G_N_ELEMENTS(angles); i++) {
    double half = tan(angles[i] * G_PI / 360) * 3;
    SpvPoint points[3 * 6 + 3];
    guint n = 0;
    points[n++] = spv_point(0, 20);
    points[n++] = spv_point(0, 0);
    for (guint tooth = 0; tooth < 6; tooth++) {
      double x = 4 + 12 * tooth;
      points[n++] = spv_point(x, 0);
      points[n++] = spv_point(x + half, -3);
      points[n++] = spv_point(x + 2 * half, 0);
    }
    points[n++] = spv_point(80, 20);
    g_autoptr(SpvShape) shape = polygon_shape(points, n);
    assert_true(spv_piece_narrowest(shape, 0, INFINITY, NULL) > 11);
    assert_true(spv_piece_narrowest(shape, 0, 0.25, NULL) >= 0.25);
  }

  /* Where a disc touches a straight edge, the gap beside it runs out in a tip finer than any tooth's. */
  g_autoptr(SpvPath) box_path = spv_path_new_box((SpvBox){ 0, -5, 20, 5 });
  g_autoptr(SpvPath) disc_path = spv_path_new_circle(spv_point(0, 0), 5);
  g_autoptr(SpvShape) box = spv_shape_new_from_path(box_path);
  g_autoptr(SpvShape) disc = spv_shape_new_from_path(disc_path);
  g_autoptr(SpvShape) beside = spv_shape_difference(box, disc);
  assert_true(spv_piece_narrowest(beside, 0, INFINITY, NULL) > 9);

  g_autoptr(SpvPath) moon_path = spv_path_new_circle(spv_point(0, 0), 10);
  g_autoptr(SpvPath) bite_path = spv_path_new_circle(spv_point(6, 0), 9);
  g_autoptr(SpvShape) moon = spv_shape_new_from_path(moon_path);
  g_autoptr(SpvShape) bite = spv_shape_new_from_path(bite_path);
  g_autoptr(SpvShape) crescent = spv_shape_difference(moon, bite);
  assert_near(spv_piece_narrowest(crescent, 0, INFINITY, NULL), 7, EXACT);
}

/* Two squares with a bar between them: the bar's width, whatever the squares'. */
static void
test_a_waist_gives_the_waist(void **state) {
  (void) state;
  const double widths[] = { 0.01, 0.1, 0.25, 1, 3.3 };
  for (guint i = 0; i < G_N_ELEMENTS(widths); i++) {
    double w = widths[i] / 2;
    const SpvPoint dumb_bell[] = { { -12, -4 }, { -4, -4 }, { -4, -w }, { 4, -w }, { 4, -4 }, { 12, -4 },
                                   { 12, 4 },   { 4, 4 },   { 4, w },   { -4, w }, { -4, 4 }, { -12, 4 } };
    g_autoptr(SpvShape) shape = polygon_shape(dumb_bell, G_N_ELEMENTS(dumb_bell));
    SpvPoint place;
    assert_near(spv_piece_narrowest(shape, 0, INFINITY, &place), widths[i], EXACT);
    assert_near(place.x, 0, 0.1);
    assert_near(place.y, 0, 0.1);
  }
}

/* Past the waist the lesser part vanishes, and what is left is whole again: the waist must still be found. */
static void
test_a_small_head_on_a_thin_neck(void **state) {
  (void) state;
  const SpvPoint points[] = { { 0, 0 },    { 10, 0 },     { 10, 4.8 },   { 13, 4.8 },
                              { 13, 4.3 }, { 14.4, 4.3 }, { 14.4, 5.7 }, { 13, 5.7 },
                              { 13, 5.2 }, { 10, 5.2 },   { 10, 10 },    { 0, 10 } };
  g_autoptr(SpvShape) shape = polygon_shape(points, G_N_ELEMENTS(points));
  SpvPoint place;
  assert_near(spv_piece_narrowest(shape, 0, INFINITY, &place), 0.4, EXACT);
  assert_near(place.x, 11.5, 0.2);
  assert_near(place.y, 5, 0.1);
  assert_near(spv_piece_narrowest(shape, 0, 0.5, NULL), 0.4, EXACT);
}

static void
test_a_tooth_gives_what_it_stands_on(void **state) {
  (void) state;
  const SpvPoint toothed[] = { { 0, 0 }, { 4, 0 }, { 5, -3 }, { 6, 0 }, { 10, 0 }, { 10, 5 }, { 0, 5 } };
  /* The disc that touches the far side and both corners at the tooth's foot: 1 + (5 − r)² = r². */
  assert_narrowest(toothed, G_N_ELEMENTS(toothed), 5.2);
}

/* tests/reference/areas.csv, zigzag-band-width: H cos(atan(2A/p)). */
static void
test_a_zigzag_band_gives_its_perpendicular_width(void **state) {
  (void) state;
  SpvPoint points[14];
  for (guint i = 0; i <= 6; i++) {
    points[i] = spv_point(5 * i, i % 2 == 0 ? 0 : 4);
    points[13 - i] = spv_point(5 * i, i % 2 == 0 ? 6 : 10);
  }
  g_autoptr(SpvShape) band = polygon_shape(points, G_N_ELEMENTS(points));
  assert_near(spv_piece_narrowest(band, 0, INFINITY, NULL), reference_area("zigzag-band-width"), EXACT);
}

static SpvShape *
ring_shape(SpvPoint hole, double radius) {
  SpvPathBuilder *builder = spv_path_builder_new();
  spv_path_builder_arc(builder, spv_point(0, 0), 10, 0, 2 * G_PI);
  spv_path_builder_close(builder);
  spv_path_builder_arc(builder, hole, radius, 0, -2 * G_PI);
  spv_path_builder_close(builder);
  g_autoptr(SpvPath) path = spv_path_builder_build(builder);
  return spv_shape_new_from_path(path);
}

static void
test_a_ring_gives_its_thinnest_wall(void **state) {
  (void) state;
  SpvPoint place;
  g_autoptr(SpvShape) eccentric = ring_shape(spv_point(2, 0), 6);
  assert_near(spv_piece_narrowest(eccentric, 0, INFINITY, &place), 2, EXACT);
  assert_near(place.x, 9, 0.01);
  assert_near(place.y, 0, 0.5);
  g_autoptr(SpvShape) even = ring_shape(spv_point(0, 0), 7);
  assert_near(spv_piece_narrowest(even, 0, INFINITY, &place), 3, EXACT);
  assert_near(spv_point_length(place), 8.5, 0.01);
}

static void
test_a_wall_between_two_holes(void **state) {
  (void) state;
  g_autoptr(SpvPath) outer_path = spv_path_new_box((SpvBox){ 0, 0, 30, 20 });
  g_autoptr(SpvPath) left_path = spv_path_new_box((SpvBox){ 5, 5, 14.7, 15 });
  g_autoptr(SpvPath) right_path = spv_path_new_box((SpvBox){ 15.1, 5, 25, 15 });
  g_autoptr(SpvShape) outer = spv_shape_new_from_path(outer_path);
  g_autoptr(SpvShape) left = spv_shape_new_from_path(left_path);
  g_autoptr(SpvShape) right = spv_shape_new_from_path(right_path);
  g_autoptr(SpvShape) one = spv_shape_difference(outer, left);
  g_autoptr(SpvShape) two = spv_shape_difference(one, right);
  SpvPoint place;
  assert_near(spv_piece_narrowest(two, 0, INFINITY, &place), 0.4, EXACT);
  assert_near(place.x, 14.9, 0.001);
}

/* Holes that touch at a corner leave no wall to paint, as cells of a check do not. */
static void
test_a_corner_that_two_holes_share_is_no_waist(void **state) {
  (void) state;
  g_autoptr(SpvPath) outer_path = spv_path_new_box((SpvBox){ 0, 0, 20, 20 });
  g_autoptr(SpvPath) first_path = spv_path_new_box((SpvBox){ 5, 5, 10, 10 });
  g_autoptr(SpvPath) second_path = spv_path_new_box((SpvBox){ 10, 10, 15, 15 });
  g_autoptr(SpvShape) outer = spv_shape_new_from_path(outer_path);
  g_autoptr(SpvShape) first = spv_shape_new_from_path(first_path);
  g_autoptr(SpvShape) second = spv_shape_new_from_path(second_path);
  g_autoptr(SpvShape) one = spv_shape_difference(outer, first);
  g_autoptr(SpvShape) two = spv_shape_difference(one, second);
  assert_near(spv_piece_narrowest(two, 0, INFINITY, NULL), 5, EXACT);
}

/* A frame 0.15 wide with a gap in its lower side: its corners are a little wider, and the middle between
 * those at the gap is in no part of it. */
static void
test_the_place_lies_in_the_piece(void **state) {
  (void) state;
  const SpvPoint frame[] = { { -4, 8 },       { -4, 0 },       { 4, 0 },       { 4, 8 },
                             { 1, 8 },        { 1, 7.85 },     { 3.85, 7.85 }, { 3.85, 0.15 },
                             { -3.85, 0.15 }, { -3.85, 7.85 }, { -1, 7.85 },   { -1, 8 } };
  assert_narrowest(frame, G_N_ELEMENTS(frame), 0.15);
}

static void
test_a_curved_waist(void **state) {
  (void) state;
  /* A rectangle bitten by two discs from above and below: 10 − 2·4.6 is left between them. */
  g_autoptr(SpvPath) box_path = spv_path_new_box((SpvBox){ -20, -5, 20, 5 });
  g_autoptr(SpvPath) above_path = spv_path_new_circle(spv_point(3, -8), 7.6);
  g_autoptr(SpvPath) below_path = spv_path_new_circle(spv_point(3, 8), 7.6);
  g_autoptr(SpvShape) box = spv_shape_new_from_path(box_path);
  g_autoptr(SpvShape) above = spv_shape_new_from_path(above_path);
  g_autoptr(SpvShape) below = spv_shape_new_from_path(below_path);
  g_autoptr(SpvShape) half = spv_shape_difference(box, above);
  g_autoptr(SpvShape) bitten = spv_shape_difference(half, below);
  SpvPoint place;
  double width = spv_piece_narrowest(bitten, 0, INFINITY, &place);
  /* The discs' chords leave the waist up to two chord errors wider. */
  assert_near(width, 0.8 + SPV_CHORD_ERROR, EXACT + SPV_CHORD_ERROR);
  assert_near(place.x, 3, 0.1);
  assert_near(place.y, 0, 0.01);
}

static void
test_enough_is_enough(void **state) {
  (void) state;
  const SpvPoint bar[] = { { 0, 0 }, { 30, 0 }, { 30, 0.8 }, { 0, 0.8 } };
  g_autoptr(SpvShape) shape = polygon_shape(bar, 4);
  SpvPoint place;
  assert_true(spv_piece_narrowest(shape, 0, 0.5, &place) >= 0.5);
  assert_true(spv_shape_contains(shape, place));
  assert_near(spv_piece_narrowest(shape, 0, 1, &place), 0.8, EXACT);
  assert_true(spv_shape_contains(shape, place));
}

/* What hangs together by a hair is taken apart: the squares count, not the hair. */
static void
test_squares_that_hang_by_a_hair(void **state) {
  (void) state;
  const double w = 2e-7;
  const SpvPoint points[] = { { -12, -4 }, { -4, -4 }, { -4, -w }, { 4, -w }, { 4, -3 }, { 10, -3 },
                              { 10, 3 },   { 4, 3 },   { 4, w },   { -4, w }, { -4, 4 }, { -12, 4 } };
  g_autoptr(SpvShape) shape = polygon_shape(points, G_N_ELEMENTS(points));
  SpvPoint place;
  assert_near(spv_piece_narrowest(shape, 0, INFINITY, &place), 6, EXACT);
  assert_near(place.x, 7, EXACT);
}

static void
test_hairs_and_specks(void **state) {
  (void) state;
  const SpvPoint hair[] = { { 0, 0 }, { 30, 0 }, { 30, 1e-7 }, { 0, 1e-7 } };
  const SpvPoint speck[] = { { 0, 0 }, { 1e-5, 0 }, { 0, 1e-5 } };
  g_autoptr(SpvShape) thin = polygon_shape(hair, 4);
  g_autoptr(SpvShape) small = polygon_shape(speck, 3);
  assert_near(spv_piece_narrowest(thin, 0, INFINITY, NULL), 0, EXACT);
  assert_near(spv_piece_narrowest(thin, 0, 0.25, NULL), 0, EXACT);
  assert_near(spv_piece_narrowest(small, 0, 0.25, NULL), 0, EXACT);
}

static void
test_the_same_wherever_it_lies_and_however_it_is_turned(void **state) {
  (void) state;
  const SpvPoint waist[] = { { -6, -3 }, { -1, -3 }, { 0, -0.35 }, { 1, -3 }, { 6, -3 },
                             { 6, 3 },   { 1, 3 },   { 0, 0.35 },  { -1, 3 }, { -6, 3 } };
  g_autoptr(GRand) random = g_rand_new_with_seed(51);
  for (guint round = 0; round < 8; round++) {
    double turn = g_rand_double_range(random, -4, 4);
    SpvPoint by = random_point(random, 100), moved[G_N_ELEMENTS(waist)];
    for (guint i = 0; i < G_N_ELEMENTS(waist); i++)
      moved[i] = spv_point(by.x + waist[i].x * cos(turn) - waist[i].y * sin(turn),
                           by.y + waist[i].x * sin(turn) + waist[i].y * cos(turn));
    g_autoptr(SpvShape) shape = polygon_shape(moved, G_N_ELEMENTS(moved));
    SpvPoint place;
    assert_near(spv_piece_narrowest(shape, 0, INFINITY, &place), 0.7, EXACT);
    assert_near(spv_point_distance(place, by), 0, 0.05);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_a_bar_gives_its_width),
    cmocka_unit_test(test_a_triangle_gives_its_inscribed_circle),
    cmocka_unit_test(test_convex_pieces_give_their_largest_disc),
    cmocka_unit_test(test_a_convex_ring_with_idle_points),
    cmocka_unit_test(test_enough_and_the_full_measure_agree),
    cmocka_unit_test(test_arms_count_though_the_body_stays_whole),
    cmocka_unit_test(test_tips_are_no_arms),
    cmocka_unit_test(test_a_waist_gives_the_waist),
    cmocka_unit_test(test_a_small_head_on_a_thin_neck),
    cmocka_unit_test(test_a_tooth_gives_what_it_stands_on),
    cmocka_unit_test(test_a_zigzag_band_gives_its_perpendicular_width),
    cmocka_unit_test(test_a_ring_gives_its_thinnest_wall),
    cmocka_unit_test(test_a_wall_between_two_holes),
    cmocka_unit_test(test_a_corner_that_two_holes_share_is_no_waist),
    cmocka_unit_test(test_the_place_lies_in_the_piece),
    cmocka_unit_test(test_a_curved_waist),
    cmocka_unit_test(test_enough_is_enough),
    cmocka_unit_test(test_squares_that_hang_by_a_hair),
    cmocka_unit_test(test_hairs_and_specks),
    cmocka_unit_test(test_the_same_wherever_it_lies_and_however_it_is_turned),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
