/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Outlines keep their measures, their symmetry and their edges. */
#include "support/near.h"

#include "heraldry/outline.h"

static SpvOutline *
preset_outline(SpvOutlineFamily family, double width, double height) {
  SpvOutlineSpec spec;
  GError *error = NULL;

  spv_outline_spec_preset(family, width, height, &spec);
  assert_true(spv_outline_spec_check(&spec, &error));
  assert_null(error);
  return spv_outline_new(&spec);
}

static double
height_for(SpvOutlineFamily family, double width, double height) {
  return family == SPV_OUTLINE_DISC ? width : height;
}

static void
every_family_has_the_size_it_was_given(void **state) {
  (void) state;
  for (int f = 0; f < SPV_N_OUTLINE_FAMILIES; f++) {
    double height = height_for((SpvOutlineFamily) f, 6.4, 8.2);
    g_autoptr(SpvOutline) outline = preset_outline((SpvOutlineFamily) f, 6.4, height);
    SpvBox box = spv_shape_bounds(spv_outline_shape(outline));

    assert_near(box.x0, -3.2, SPV_CHORD_ERROR);
    assert_near(box.x1, 3.2, SPV_CHORD_ERROR);
    assert_near(box.y0, 0, SPV_CHORD_ERROR);
    assert_near(box.y1, height, SPV_CHORD_ERROR);
  }
}

static void
every_family_is_symmetrical_and_starts_at_the_datum(void **state) {
  (void) state;
  for (int f = 0; f < SPV_N_OUTLINE_FAMILIES; f++) {
    g_autoptr(SpvOutline)
        outline = preset_outline((SpvOutlineFamily) f, 5, height_for((SpvOutlineFamily) f, 5, 7));
    const SpvTrack *track = spv_outline_track(outline);
    double length = spv_track_length(track);
    SpvPoint start = spv_track_at(track, 0);

    assert_near(start.x, 0, 1e-9);
    assert_near(start.y, 0, 1e-9);
    for (int i = 1; i < 20; i++) {
      SpvPoint right = spv_track_at(track, length * i / 40), left = spv_track_at(track, -length * i / 40);
      assert_near(right.x, -left.x, 2e-3);
      assert_near(right.y, left.y, 2e-3);
    }
  }
}

static void
edges_follow_one_another_round_the_panel(void **state) {
  (void) state;
  for (int f = 0; f < SPV_N_OUTLINE_FAMILIES; f++) {
    g_autoptr(SpvOutline)
        outline = preset_outline((SpvOutlineFamily) f, 5, height_for((SpvOutlineFamily) f, 5, 7));
    double length = spv_track_length(spv_outline_track(outline)), sum = 0, s0, s1, last = 0;

    for (int e = 0; e < SPV_N_EDGES; e++) {
      spv_outline_edge(outline, (SpvEdge) e, &s0, &s1);
      assert_true(s1 > s0);
      if (e > 0)
        assert_near(s0, last, 1e-9);
      last = s1;
      sum += s1 - s0;
      assert_int_equal(spv_outline_edge_at(outline, (s0 + s1) / 2), e);
      assert_near(spv_outline_along_edge(outline, (s0 + s1) / 2), (s1 - s0) / 2, 1e-9);
    }
    assert_near(sum, length, 1e-9);
  }
}

static void
a_rectangles_edges_are_its_sides(void **state) {
  g_autoptr(SpvOutline) outline = preset_outline(SPV_OUTLINE_RECTANGLE, 4, 6);
  double s0, s1;

  (void) state;
  spv_outline_edge(outline, SPV_EDGE_CHIEF, &s0, &s1);
  assert_near(s0, -2, 1e-9);
  assert_near(s1, 2, 1e-9);
  spv_outline_edge(outline, SPV_EDGE_BASE, &s0, &s1);
  assert_near(s0, 8, 1e-9);
  assert_near(s1, 12, 1e-9);
  /* A quarter of the way along the base from its dexter end, which is the far end clockwise. */
  assert_near(spv_outline_along_edge(outline, 11), 1, 1e-9);
  /* The dexter side is read downwards. */
  assert_near(spv_outline_along_edge(outline, 17), 1, 1e-9);
  assert_near(spv_outline_from_datum(outline, 19), -1, 1e-9);
  assert_near(spv_outline_from_datum(outline, 21), 1, 1e-9);
}

static void
a_discs_edges_are_quarters(void **state) {
  g_autoptr(SpvOutline) outline = preset_outline(SPV_OUTLINE_DISC, 8, 8);
  double length = spv_track_length(spv_outline_track(outline)), s0, s1;

  (void) state;
  /* Circumference: πd. */
  assert_near(length, 8 * G_PI, 0.01);
  for (int e = 0; e < SPV_N_EDGES; e++) {
    spv_outline_edge(outline, (SpvEdge) e, &s0, &s1);
    assert_near(s1 - s0, length / 4, 1e-3);
  }
}

/* Heater shield of width w with straight sides s, then arcs of radius w: area ws + (π/3 − √3/4)w², height s +
 * w√3/2; w = 20, s = 5 gives 345.67394 and 22.32051. tests/reference/README.md, section 10 (computed, and
 * reproduced with GEOS); Boutell, Handbook to English Heraldry, 11th ed., for the arcs about an inverted
 * equilateral triangle. */
static void
a_plate_is_boutells_heater(void **state) {
  double height = 5 + 20 * sqrt(3) / 2;
  SpvOutlineSpec spec = { SPV_OUTLINE_PLATE, 20, height, { 5, 0 } };
  g_autoptr(SpvOutline) outline = spv_outline_new(&spec);
  SpvOutlineSpec preset;

  (void) state;
  assert_near(height, 22.32051, 1e-5);
  assert_near(spv_shape_area(spv_outline_shape(outline)), 345.67394, 0.03);
  spv_outline_spec_preset(SPV_OUTLINE_PLATE, 20, height, &preset);
  assert_near(preset.own[0], 5, 1e-9);
}

/* A segment of height h of a circle of radius R = 12, depth 2, has area 18.0062 (Machinery's Handbook, 31st
 * ed., p. 50, ex. 3-4, exact value): what a round pad loses when 2 mm of a 24 mm circle are cut off. */
static void
a_round_pad_loses_the_segment_that_is_cut_off(void **state) {
  SpvOutlineSpec spec = { SPV_OUTLINE_ROUND_PAD, 24, 22, { 2, 0 } };
  g_autoptr(SpvOutline) outline = spv_outline_new(&spec);

  (void) state;
  assert_near(spv_shape_area(spv_outline_shape(outline)), G_PI * 144 - 18.0062, 0.1);
}

/* A rectangle loses (4 − π)r² at its four round corners: tests/reference/README.md, section 10. */
static void
round_corners_lose_what_the_book_says(void **state) {
  SpvOutlineSpec spec = { SPV_OUTLINE_RECTANGLE, 30, 20, { 2, 0 } };
  g_autoptr(SpvOutline) outline = spv_outline_new(&spec);

  (void) state;
  assert_near(spv_shape_area(spv_outline_shape(outline)), 596.56637, 0.02);
}

static void
a_greave_is_a_trapezium(void **state) {
  SpvOutlineSpec spec = { SPV_OUTLINE_GREAVE, 6, 9, { 4, 0 } };
  g_autoptr(SpvOutline) outline = spv_outline_new(&spec);

  (void) state;
  assert_near(spv_shape_area(spv_outline_shape(outline)), (6 + 4) / 2.0 * 9, 1e-9);
}

static void
measures_that_do_not_go_together_are_refused(void **state) {
  static const SpvOutlineSpec wrong[] = {
    { SPV_OUTLINE_DISC, 4, 5, { 0, 0 } },        { SPV_OUTLINE_RECTANGLE, 0.4, 5, { 0, 0 } },
    { SPV_OUTLINE_RECTANGLE, 4, 501, { 0, 0 } }, { SPV_OUTLINE_RECTANGLE, NAN, 5, { 0, 0 } },
    { SPV_OUTLINE_RECTANGLE, 4, 5, { 2.1, 0 } }, { SPV_OUTLINE_RECTANGLE, 4, 5, { -1, 0 } },
    { SPV_OUTLINE_PLATE, 9, 4, { 0, 0 } },       { SPV_OUTLINE_PLATE, 9, 10, { 6, 0 } },
    { SPV_OUTLINE_KNEEPAD, 4, 5, { 4.5, 0 } },   { SPV_OUTLINE_KNEEPAD, 4, 5, { 3, INFINITY } },
    { SPV_OUTLINE_GREAVE, 4, 5, { 4.5, 0 } },    { SPV_OUTLINE_ROUND_PAD, 4, 5, { 4.6, 0 } },
    { SPV_OUTLINE_BANNER, 4, 5, { 4.9, 0 } },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(wrong); i++) {
    g_autoptr(GError) error = NULL;
    assert_false(spv_outline_spec_check(&wrong[i], &error));
    assert_non_null(error);
    assert_int_equal(error->domain, SPV_OUTLINE_ERROR);
  }
}

static void
random_measures_within_range_make_sound_outlines(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(20);
  int made = 0;

  (void) state;
  for (int round = 0; round < 2000; round++) {
    SpvOutlineSpec spec = { (SpvOutlineFamily) g_rand_int_range(rand, 0, SPV_N_OUTLINE_FAMILIES),
                            g_rand_double_range(rand, 0.5, 60),
                            g_rand_double_range(rand, 0.5, 60),
                            { g_rand_double_range(rand, 0, 20), g_rand_double_range(rand, 0, 5) } };
    if (spec.family == SPV_OUTLINE_DISC)
      spec.height = spec.width;
    if (!spv_outline_spec_check(&spec, NULL))
      continue;
    made++;
    g_autoptr(SpvOutline) outline = spv_outline_new(&spec);
    gsize n_pieces;
    const SpvPiece *pieces = spv_shape_pieces(spv_outline_shape(outline), &n_pieces);
    double s0, s1;

    assert_int_equal(n_pieces, 1);
    assert_int_equal(pieces[0].n_rings, 1);
    if (spv_shape_area(spv_outline_shape(outline)) > spec.width * spec.height + 1e-6)
      fail_msg("family %d %g x %g, %g, %g: larger than its box", spec.family, spec.width, spec.height,
               spec.own[0], spec.own[1]);
    for (int e = 0; e < SPV_N_EDGES; e++) {
      spv_outline_edge(outline, (SpvEdge) e, &s0, &s1);
      if (!(s1 > s0))
        fail_msg("family %d %g x %g, %g, %g: edge %d from %g to %g", spec.family, spec.width, spec.height,
                 spec.own[0], spec.own[1], e, s0, s1);
    }
  }
  assert_true(made > 500);
}

/* An outline is as wide and as high as its spec, wherever in its range an own measure lies. */
static void
own_measures_at_their_limits_keep_the_size(void **state) {
  static const SpvOutlineSpec specs[] = {
    /* A foot much narrower than the top, and corners as round as they may be: most of the top is rounding. */
    { SPV_OUTLINE_GREAVE, 60, 20, { 6, 8 } },        { SPV_OUTLINE_GREAVE, 500, 0.5, { 50, 0.22 } },
    { SPV_OUTLINE_GREAVE, 6, 9, { 6, 2.7 } },        { SPV_OUTLINE_KNEEPAD, 10, 8, { 8, 1e-300 } },
    { SPV_OUTLINE_KNEEPAD, 10, 8, { 8, 1e-15 } },    { SPV_OUTLINE_KNEEPAD, 10, 8, { 8, 1e-4 } },
    { SPV_OUTLINE_KNEEPAD, 20, 12, { 20, 4.8 } },    { SPV_OUTLINE_RECTANGLE, 10, 8, { 4, 0 } },
    { SPV_OUTLINE_RECTANGLE, 10, 8, { 1e-300, 0 } }, { SPV_OUTLINE_PLATE, 10, 5, { 0, 0 } },
    { SPV_OUTLINE_PLATE, 10, 12, { 1e-300, 0 } },    { SPV_OUTLINE_BANNER, 10, 8, { 7.2, 0 } },
    { SPV_OUTLINE_ROUND_PAD, 10, 8, { 1e-300, 0 } },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(specs); i++) {
    assert_true(spv_outline_spec_check(&specs[i], NULL));
    g_autoptr(SpvOutline) outline = spv_outline_new(&specs[i]);
    SpvBox box = spv_shape_bounds(spv_outline_shape(outline));

    assert_near(spv_box_width(box), specs[i].width, 2 * SPV_CHORD_ERROR);
    assert_near(box.y0, 0, SPV_CHORD_ERROR);
    assert_near(box.y1, specs[i].height, SPV_CHORD_ERROR);
  }
}

/* From the end of its top edge a kneepad only goes down until it comes to its foot. */
static void
a_kneepads_side_never_runs_back_up(void **state) {
  (void) state;
  for (int i = 0; i <= 20; i++)
    for (int k = 0; k <= 10; k++) {
      double top = 4 + 16 * k / 10.0;
      SpvOutlineSpec spec = { SPV_OUTLINE_KNEEPAD, 20, 12, { top, MIN(0.4 * 12, top / 2) * i / 20 } };
      g_autoptr(SpvOutline) outline = spv_outline_new(&spec);
      gsize n;
      const SpvPoint *points = spv_track_points(spv_outline_track(outline), &n);

      for (gsize p = 0; p + 1 < n && points[p + 1].x > 0; p++)
        if (points[p + 1].y < points[p].y - 1e-9)
          fail_msg("crown %g, top %g: up from %g to %g", spec.own[1], top, points[p].y, points[p + 1].y);
    }
}

static void
keys_are_unique_and_found_again(void **state) {
  (void) state;
  for (int f = 0; f < SPV_N_OUTLINE_FAMILIES; f++) {
    SpvOutlineFamily found;
    assert_true(spv_outline_family_from_key(spv_outline_info((SpvOutlineFamily) f)->key, &found));
    assert_int_equal(found, f);
  }
  SpvOutlineFamily untouched = SPV_OUTLINE_DISC;
  assert_false(spv_outline_family_from_key("oval", &untouched));
  assert_false(spv_outline_family_from_key(NULL, &untouched));
  assert_int_equal(untouched, SPV_OUTLINE_DISC);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(every_family_has_the_size_it_was_given),
    cmocka_unit_test(every_family_is_symmetrical_and_starts_at_the_datum),
    cmocka_unit_test(edges_follow_one_another_round_the_panel),
    cmocka_unit_test(a_rectangles_edges_are_its_sides),
    cmocka_unit_test(a_discs_edges_are_quarters),
    cmocka_unit_test(a_plate_is_boutells_heater),
    cmocka_unit_test(a_round_pad_loses_the_segment_that_is_cut_off),
    cmocka_unit_test(round_corners_lose_what_the_book_says),
    cmocka_unit_test(a_greave_is_a_trapezium),
    cmocka_unit_test(measures_that_do_not_go_together_are_refused),
    cmocka_unit_test(random_measures_within_range_make_sound_outlines),
    cmocka_unit_test(own_measures_at_their_limits_keep_the_size),
    cmocka_unit_test(a_kneepads_side_never_runs_back_up),
    cmocka_unit_test(keys_are_unique_and_found_again),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
