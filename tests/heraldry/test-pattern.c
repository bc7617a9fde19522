/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Patterns: the areas, places and counts that heraldry and calipers ask for. */
#include "support/near.h"

#include "heraldry/pattern.h"

static SpvOutline *
rectangle(double width, double height) {
  SpvOutlineSpec spec = { SPV_OUTLINE_RECTANGLE, width, height, { 0, 0 } };
  return spv_outline_new(&spec);
}

static void
set(SpvPattern *pattern, const char *key, SpvUnit unit, double value) {
  int index = spv_pattern_measure_index(pattern->kind, key);
  SpvMeasure measure = { unit, value };

  assert_true(index >= 0);
  assert_true(spv_measure_is_valid(&spv_pattern_info(pattern->kind)->measures[index], measure));
  pattern->measures[index] = measure;
}

/* The area that SLOT of the draft shows on the panel, mm². */
static double
shown(const SpvDraft *draft, int slot, const SpvOutline *outline) {
  g_autoptr(SpvShape) area = NULL;

  if (draft->cells[slot]) {
    g_autoptr(SpvShape) cells = spv_shape_clip_cells(spv_outline_shape(outline), draft->cells[slot]);
    return spv_shape_area(cells);
  }
  area = spv_shape_new_from_path(draft->area[slot]);
  g_autoptr(SpvShape) inside = spv_shape_intersection(spv_outline_shape(outline), area);
  return spv_shape_area(inside);
}

static double
shown_by(SpvPattern pattern, int slot, const SpvOutline *outline) {
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, outline);
  return shown(draft, slot, outline);
}

static void
all_tinctures_of_a_division_cover_the_panel(void **state) {
  (void) state;
  for (int f = 0; f < SPV_N_OUTLINE_FAMILIES; f++) {
    SpvOutlineSpec spec;
    spv_outline_spec_preset((SpvOutlineFamily) f, 5, f == SPV_OUTLINE_DISC ? 5 : 6.3, &spec);
    g_autoptr(SpvOutline) outline = spv_outline_new(&spec);
    double whole = spv_shape_area(spv_outline_shape(outline));

    for (int k = 0; k < SPV_N_PATTERNS; k++) {
      SpvPattern pattern = spv_pattern_preset((SpvPatternKind) k);
      if (spv_pattern_info(pattern.kind)->n_slots < 2)
        continue;
      g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, outline);
      double sum = 0;
      for (guint slot = 0; slot < spv_pattern_info(pattern.kind)->n_slots; slot++) {
        double part = shown(draft, (int) slot, outline);
        assert_true(part > 0);
        sum += part;
      }
      assert_near(sum / whole, 1, 1e-9);
    }
  }
}

static void
straight_divisions_of_a_square_part_it_evenly(void **state) {
  static const SpvPatternKind halves[] = { SPV_PATTERN_PER_PALE,    SPV_PATTERN_PER_FESS,
                                           SPV_PATTERN_PER_BEND,    SPV_PATTERN_PER_BEND_SINISTER,
                                           SPV_PATTERN_PER_SALTIRE, SPV_PATTERN_QUARTERLY,
                                           SPV_PATTERN_PALY,        SPV_PATTERN_BARRY };
  g_autoptr(SpvOutline) square = rectangle(10, 10);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(halves); i++) {
    SpvPattern pattern = spv_pattern_preset(halves[i]);
    assert_near(shown_by(pattern, 0, square), 50, 1e-7);
    assert_near(shown_by(pattern, 1, square), 50, 1e-7);
  }
}

/* The wedge of a chevron line on a square: a right angle with its point at depth a below the top of a square
 * of side w cuts a triangle of half base w/2 at height w/2, and all of the square under it: area w²/4 + w(w −
 * a − w/2). */
static void
per_chevron_cuts_the_wedge(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_PER_CHEVRON);

  (void) state;
  set(&pattern, "apex", SPV_UNIT_MM, 4);
  assert_near(shown_by(pattern, 1, square), 25 + 10 * (10 - 4 - 5), 1e-7);
}

static void
dexter_is_the_viewers_left(void **state) {
  /* Fox-Davies (1909) p. 104; Boutell ch. IV: dexter and sinister are the bearer's. */
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern pale = spv_pattern_preset(SPV_PATTERN_PER_PALE);
  SpvPattern bend = spv_pattern_preset(SPV_PATTERN_PER_BEND);
  g_autoptr(SpvDraft) halves = spv_pattern_lay(&pale, square);
  g_autoptr(SpvDraft) parts = spv_pattern_lay(&bend, square);

  (void) state;
  assert_true(spv_path_contains(halves->area[0], spv_point(-2, 5)));
  assert_true(spv_path_contains(halves->area[1], spv_point(2, 5)));
  /* A bend runs from dexter chief to sinister base: its upper part holds sinister chief. */
  assert_true(spv_path_contains(parts->area[0], spv_point(4, 1)));
  assert_true(spv_path_contains(parts->area[1], spv_point(-4, 9)));
}

/* Bendy of N: every inner boundary is one N-th of the reach across the slope; on a square at 45 degrees the
 * reach is its diagonal. */
static void
bendy_pieces_are_of_one_width(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_BENDY);
  g_autoptr(SpvDraft) draft = NULL;

  (void) state;
  set(&pattern, "pieces", SPV_UNIT_PLAIN, 10);
  draft = spv_pattern_lay(&pattern, square);
  assert_int_equal(draft->lines->len, 9);
  for (guint i = 0; i + 1 < draft->lines->len; i++) {
    SpvDraftLine a = g_array_index(draft->lines, SpvDraftLine, i);
    SpvDraftLine b = g_array_index(draft->lines, SpvDraftLine, i + 1);
    SpvPoint along = spv_point_unit(spv_point_subtract(a.to, a.from));
    double apart = fabs(spv_point_cross(along, spv_point_subtract(b.from, a.from)));
    assert_near(apart, 10 * sqrt(2) / 10, 1e-9);
  }
}

/* Chief: a third of the field. Kent, The Banner Display'd (1726), ch. 1 s. 6 no. 2; Cussans (1866) p. 13. */
static void
a_chief_is_a_third_of_the_field(void **state) {
  g_autoptr(SpvOutline) square = rectangle(9, 9);
  (void) state;
  assert_near(shown_by(spv_pattern_preset(SPV_PATTERN_CHIEF), 0, square), 27, 1e-7);
}

static void
a_bordure_is_as_wide_as_asked_all_round(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 8);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_BORDURE);

  (void) state;
  set(&pattern, "width", SPV_UNIT_MM, 1);
  assert_near(shown_by(pattern, 0, square), 10 * 8 - 8 * 6, 1e-6);
  set(&pattern, "width", SPV_UNIT_MM, 5);
  assert_near(shown_by(pattern, 0, square), 80, 1e-7);
  set(&pattern, "width", SPV_UNIT_MM, 0);
  assert_near(shown_by(pattern, 0, square), 0, 1e-9);
}

static void
a_roundel_has_its_place_and_size(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_ROUNDEL);
  SpvBox box;

  (void) state;
  set(&pattern, "diameter", SPV_UNIT_MM, 3);
  set(&pattern, "across", SPV_UNIT_MM, 1);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, square);
  box = spv_path_bounds(draft->area[0]);
  assert_near(spv_box_centre(box).x, 1, 0.002);
  assert_near(spv_box_centre(box).y, 5, 0.002);
  assert_near(shown(draft, 0, square), G_PI * 9 / 4, 0.01);
}

/* The border's points on a straight edge: area under n points of depth d over length L is L·d/2, whatever n;
 * the edge runs 2n·√((L/2n)² + d²). tests/reference/README.md, section 13. */
static void
jagged_points_on_a_straight_edge_follow_the_closed_form(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(12, 10);

  (void) state;
  for (int n = 1; n <= 40; n++) {
    SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_JAGGED_BORDER);
    double length = 0;
    set(&pattern, "points", SPV_UNIT_PLAIN, n);
    set(&pattern, "depth", SPV_UNIT_MM, 1.5);
    set(&pattern, "width", SPV_UNIT_MM, 0.5);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);

    assert_near(shown(draft, 0, panel), 12 * 1.5 / 2 + 12 * 0.5, 1e-7);
    assert_int_equal(draft->dots->len, 2 * n + 1);
    for (int i = 0; i < n; i++) {
      SpvDraftDot tip = g_array_index(draft->dots, SpvDraftDot, i);
      SpvDraftDot root = g_array_index(draft->dots, SpvDraftDot, n + i);
      assert_int_equal(tip.kind, SPV_DOT_TIP);
      assert_int_equal(root.kind, SPV_DOT_ROOT);
      assert_near(tip.at.y, 8, 1e-9);
      assert_near(root.at.y, 9.5, 1e-9);
      assert_near(tip.spacing, 12.0 / n, 1e-9);
      length += 2 * spv_point_distance(tip.at, root.at);
    }
    assert_near(length, 2 * n * sqrt((6.0 / n) * (6.0 / n) + 1.5 * 1.5), 1e-7);
  }
}

static void
a_pitch_is_made_to_come_out_whole(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(10, 10);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_JAGGED_BORDER);

  (void) state;
  set(&pattern, "pitch", SPV_UNIT_MM, 0.9);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
  assert_near(g_array_index(draft->dots, SpvDraftDot, 0).spacing, 10.0 / 11, 1e-9);
}

static void
points_stand_square_on_a_disc(void **state) {
  SpvOutlineSpec spec = { SPV_OUTLINE_DISC, 10, 10, { 0, 0 } };
  g_autoptr(SpvOutline) disc = spv_outline_new(&spec);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_JAGGED_BORDER);

  (void) state;
  set(&pattern, "edge", SPV_UNIT_PLAIN, 4);
  set(&pattern, "points", SPV_UNIT_PLAIN, 20);
  set(&pattern, "depth", SPV_UNIT_MM, 1);
  set(&pattern, "width", SPV_UNIT_MM, 0.5);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, disc);
  assert_int_equal(draft->dots->len, 40);
  for (guint i = 0; i < draft->dots->len; i++) {
    SpvDraftDot dot = g_array_index(draft->dots, SpvDraftDot, i);
    double from_centre = spv_point_distance(dot.at, spv_point(0, 5));
    assert_near(from_centre, dot.kind == SPV_DOT_TIP ? 3.5 : 4.5, 0.003);
  }
  /* A ring of 20 kites about the centre: the field that is left is a star whose corners alternate between
   * both radii. */
  g_autoptr(SpvShape) border = spv_shape_new_from_path(draft->area[0]);
  g_autoptr(SpvShape) left = spv_shape_difference(spv_outline_shape(disc), border);
  assert_near(spv_shape_area(left), 20 * 3.5 * 4.5 * sin(G_PI / 20), 0.05);
}

/* A kneepad's base is curved: in a straight row the points stand level, evenly across the panel where their
 * roots are. */
static void
a_straight_row_is_level_on_a_curved_base(void **state) {
  SpvOutlineSpec spec;
  spv_outline_spec_preset(SPV_OUTLINE_KNEEPAD, 3.4, 4.1, &spec);
  g_autoptr(SpvOutline) kneepad = spv_outline_new(&spec);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_JAGGED_BORDER);

  (void) state;
  set(&pattern, "row", SPV_UNIT_PLAIN, 1);
  set(&pattern, "width", SPV_UNIT_MM, 0.9);
  set(&pattern, "depth", SPV_UNIT_MM, 0.7);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, kneepad);
  double spacing = g_array_index(draft->dots, SpvDraftDot, 0).spacing;

  assert_int_equal(draft->dots->len, 13);
  for (guint i = 0; i < draft->dots->len; i++) {
    SpvDraftDot dot = g_array_index(draft->dots, SpvDraftDot, i);
    SpvPoint foot = spv_track_at(spv_outline_track(kneepad), dot.s);
    assert_near(dot.at.y, dot.kind == SPV_DOT_TIP ? 2.5 : 3.2, 1e-9);
    /* It stands on the outline straight below. */
    assert_near(foot.x, dot.at.x, 1e-6);
    assert_true(foot.y >= dot.at.y - 1e-6);
  }
  /* The first and the last root lie where the row meets the outline. */
  double out = 0;
  spv_track_locate(spv_outline_track(kneepad), g_array_index(draft->dots, SpvDraftDot, 6).at, &out);
  assert_near(out, 0, 1e-6);
  assert_near(
      fabs(g_array_index(draft->dots, SpvDraftDot, 1).at.x - g_array_index(draft->dots, SpvDraftDot, 0).at.x),
      spacing, 1e-9);
}

/* Round corners are not part of the row: the points of a base border stand upright on the straight part. */
static void
points_keep_out_of_tight_corners(void **state) {
  SpvOutlineSpec spec = { SPV_OUTLINE_RECTANGLE, 10, 10, { 0.5, 0 } };
  g_autoptr(SpvOutline) panel = spv_outline_new(&spec);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_JAGGED_BORDER);

  (void) state;
  set(&pattern, "width", SPV_UNIT_MM, 1);
  set(&pattern, "points", SPV_UNIT_PLAIN, 9);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
  assert_near(g_array_index(draft->dots, SpvDraftDot, 0).spacing, 1, 0.01);
  for (guint i = 9; i < draft->dots->len; i++)
    assert_near(g_array_index(draft->dots, SpvDraftDot, i).at.y, 9, 1e-3);
}

/* The sides of so low a greave face down: it has no dexter edge, and nothing can stand on it. */
static void
an_edge_that_the_outline_lacks_has_no_points(void **state) {
  SpvOutlineSpec spec = { SPV_OUTLINE_GREAVE, 20, 4, { 6, 0 } };
  g_autoptr(SpvOutline) greave = spv_outline_new(&spec);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_JAGGED_BORDER);

  (void) state;
  set(&pattern, "edge", SPV_UNIT_PLAIN, 1);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, greave);
  assert_true(spv_path_is_empty(draft->area[0]));
  assert_int_equal(draft->dots->len, 0);
}

static void
lean_moves_the_tips_along_the_edge(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(10, 10);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_JAGGED_BORDER);
  SpvPoint upright, leaning;

  (void) state;
  set(&pattern, "depth", SPV_UNIT_MM, 2);
  {
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
    upright = g_array_index(draft->dots, SpvDraftDot, 0).at;
  }
  set(&pattern, "lean", SPV_UNIT_DEGREES, 30);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
  leaning = g_array_index(draft->dots, SpvDraftDot, 0).at;
  /* Clockwise along the base is towards dexter. */
  assert_near(leaning.x - upright.x, -2 * tan(G_PI / 6), 1e-9);
  assert_near(leaning.y, upright.y, 1e-9);
}

static void
degenerate_measures_lay_nothing_and_break_nothing(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(4);

  (void) state;
  for (int round = 0; round < ROUNDS(300); round++) {
    SpvOutlineSpec spec;
    SpvPattern pattern = spv_pattern_preset((SpvPatternKind) g_rand_int_range(rand, 0, SPV_N_PATTERNS));
    const SpvPatternInfo *info = spv_pattern_info(pattern.kind);
    double width = g_rand_double_range(rand, 0.5, 20);
    int family = g_rand_int_range(rand, 0, SPV_N_OUTLINE_FAMILIES);

    spv_outline_spec_preset((SpvOutlineFamily) family, width,
                            family == SPV_OUTLINE_DISC ? width : width * 1.3, &spec);
    g_autoptr(SpvOutline) outline = spv_outline_new(&spec);
    for (guint i = 0; i < info->n_measures; i++) {
      const SpvMeasureSpec *measure = &info->measures[i];
      SpvMeasure value = { SPV_UNIT_AUTO, 0 };
      double at = g_rand_int_range(rand, 0, 3) / 2.0; /* the least, the middle or the most */
      switch (measure->type) {
      case SPV_MEASURE_COUNT:
        /* Hundreds of charges over one another would take seconds to join. */
        value = (SpvMeasure){ SPV_UNIT_PLAIN,
                              floor(measure->min + at * (MIN(measure->max, 60) - measure->min)) };
        break;
      case SPV_MEASURE_LENGTH:
        value = (SpvMeasure){ SPV_UNIT_MM, measure->min + at * (measure->max - measure->min) };
        break;
      case SPV_MEASURE_ANGLE:
        value = (SpvMeasure){ SPV_UNIT_DEGREES, measure->min + at * (measure->max - measure->min) };
        break;
      case SPV_MEASURE_CHOICE:
        value = (SpvMeasure){ SPV_UNIT_PLAIN, 0 };
        break;
      }
      if (g_rand_boolean(rand))
        continue;
      assert_true(spv_measure_is_valid(measure, value));
      pattern.measures[i] = value;
    }
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, outline);
    double whole = spv_shape_area(spv_outline_shape(outline));
    double sum = 0;
    for (guint slot = 0; slot < info->n_slots; slot++)
      sum += shown(draft, (int) slot, outline);
    assert_true(sum >= 0 && sum <= whole * (1 + 1e-8));
    if (info->n_slots >= 2 && fabs(sum / whole - 1) > 1e-8)
      fail_msg("the parts of %s sum up to %g of the panel", info->key, sum / whole);
  }
}

static void
presets_are_valid_and_keys_are_found(void **state) {
  (void) state;
  for (int k = 0; k < SPV_N_PATTERNS; k++) {
    const SpvPatternInfo *info = spv_pattern_info((SpvPatternKind) k);
    SpvPatternKind found;

    assert_true(spv_pattern_kind_from_key(info->key, &found));
    assert_int_equal(found, k);
    assert_true(info->n_slots >= 1 && info->n_slots <= SPV_PATTERN_SLOTS);
    assert_true(info->n_measures <= SPV_PATTERN_MEASURES);
    for (guint i = 0; i < info->n_measures; i++) {
      assert_true(spv_measure_is_valid(&info->measures[i], info->measures[i].preset));
      assert_int_equal(spv_pattern_measure_index((SpvPatternKind) k, info->measures[i].key), i);
    }
  }
  assert_int_equal(spv_pattern_measure_index(SPV_PATTERN_FIELD, "depth"), -1);
}

static void
measures_out_of_range_or_of_the_wrong_unit_are_refused(void **state) {
  const SpvMeasureSpec *depth = &spv_pattern_info(SPV_PATTERN_CHIEF)->measures[0];
  const SpvMeasureSpec *pieces = &spv_pattern_info(SPV_PATTERN_PALY)->measures[0];
  const SpvMeasureSpec *shift = &spv_pattern_info(SPV_PATTERN_PER_PALE)->measures[0];

  (void) state;
  assert_false(spv_measure_is_valid(depth, (SpvMeasure){ SPV_UNIT_MM, -0.1 }));
  assert_false(spv_measure_is_valid(depth, (SpvMeasure){ SPV_UNIT_MM, NAN }));
  assert_false(spv_measure_is_valid(depth, (SpvMeasure){ SPV_UNIT_PLAIN, 1 }));
  assert_false(spv_measure_is_valid(depth, (SpvMeasure){ SPV_UNIT_DEGREES, 1 }));
  assert_false(spv_measure_is_valid(depth, (SpvMeasure){ SPV_UNIT_RELATIVE, 2.1 }));
  assert_false(spv_measure_is_valid(depth, (SpvMeasure){ SPV_UNIT_RELATIVE, -0.1 }));
  assert_true(spv_measure_is_valid(shift, (SpvMeasure){ SPV_UNIT_RELATIVE, -0.1 }));
  assert_false(spv_measure_is_valid(pieces, (SpvMeasure){ SPV_UNIT_PLAIN, 2.5 }));
  assert_false(spv_measure_is_valid(pieces, (SpvMeasure){ SPV_UNIT_PLAIN, 1 }));
  assert_false(spv_measure_is_valid(pieces, (SpvMeasure){ SPV_UNIT_PLAIN, INFINITY }));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(all_tinctures_of_a_division_cover_the_panel),
    cmocka_unit_test(straight_divisions_of_a_square_part_it_evenly),
    cmocka_unit_test(per_chevron_cuts_the_wedge),
    cmocka_unit_test(dexter_is_the_viewers_left),
    cmocka_unit_test(bendy_pieces_are_of_one_width),
    cmocka_unit_test(a_chief_is_a_third_of_the_field),
    cmocka_unit_test(a_bordure_is_as_wide_as_asked_all_round),
    cmocka_unit_test(a_roundel_has_its_place_and_size),
    cmocka_unit_test(jagged_points_on_a_straight_edge_follow_the_closed_form),
    cmocka_unit_test(a_pitch_is_made_to_come_out_whole),
    cmocka_unit_test(points_stand_square_on_a_disc),
    cmocka_unit_test(a_straight_row_is_level_on_a_curved_base),
    cmocka_unit_test(points_keep_out_of_tight_corners),
    cmocka_unit_test(an_edge_that_the_outline_lacks_has_no_points),
    cmocka_unit_test(lean_moves_the_tips_along_the_edge),
    cmocka_unit_test(degenerate_measures_lay_nothing_and_break_nothing),
    cmocka_unit_test(presets_are_valid_and_keys_are_found),
    cmocka_unit_test(measures_out_of_range_or_of_the_wrong_unit_are_refused),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
