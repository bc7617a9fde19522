/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lines of partition: counts, areas, lengths, symmetry and ends. */
#include "laid.h"

#include "geometry/transform.h"
#include "heraldry/profile.h"

static SpvTrack *
straight(double length) {
  SpvPoint ends[2] = { { 0, 0 }, { length, 0 } };
  return spv_track_new(ends, 2, FALSE);
}

static SpvTrack *
circle(double radius) {
  SpvPoint points[720];
  for (int i = 0; i < 720; i++)
    points[i] = spv_point(radius * sin(i * G_PI / 360), -radius * cos(i * G_PI / 360));
  return spv_track_new(points, 720, TRUE);
}

static SpvTrack *
box_track(double width, double height) {
  SpvPoint points[5] = {
    { 0, 0 }, { width / 2, 0 }, { width / 2, height }, { -width / 2, height }, { -width / 2, 0 }
  };
  return spv_track_new(points, 5, TRUE);
}

/* The run as points, its ends with it. */
static SpvRing *
points_of(const SpvPath *path) {
  g_autoptr(GPtrArray) rings = spv_path_flatten(path, 1e-6);
  const SpvRing *ring = g_ptr_array_index(rings, 0);

  assert_int_equal(rings->len, 1);
  for (gsize i = 0; i < ring->n_points; i++)
    assert_true(isfinite(ring->points[i].x) && isfinite(ring->points[i].y));
  return spv_ring_new(ring->points, ring->n_points);
}

/* What lies between the run, on the straight track of LENGTH mm with crests upwards, and a line DEEP mm below
 * it. */
static SpvPath *
ground_under(const SpvPath *run, double length, double deep) {
  SpvPathBuilder *builder = spv_path_builder_new();

  spv_path_builder_move(builder, spv_point(0, deep));
  spv_path_builder_join(builder, run);
  spv_path_builder_line(builder, spv_point(length, deep));
  spv_path_builder_close(builder);
  return spv_path_builder_build(builder);
}

static double
length_of(const SpvPath *run) {
  g_autoptr(SpvRing) ring = points_of(run);
  double length = 0;

  for (gsize i = 0; i + 1 < ring->n_points; i++)
    length += spv_point_distance(ring->points[i], ring->points[i + 1]);
  return length;
}

static void
a_line_has_as_many_teeth_as_asked(void **state) {
  (void) state;
  for (int p = SPV_PROFILE_INDENTED; p < SPV_N_PROFILES; p++)
    for (guint n = 1; n <= 12; n++) {
      SpvLine line = { .profile = (SpvProfile) p, .periods = n, .amplitude = 1 };
      g_autoptr(SpvTrack) track = straight(12);
      g_autoptr(SpvPath) run = spv_line_lay(&line, track, 0, 12, -1);
      g_autoptr(SpvRing) ring = points_of(run);
      double last = 0;
      guint crossings = 0;

      for (gsize i = 0; i < ring->n_points; i++) {
        double v = ring->points[i].y;
        if (fabs(v) < 1e-9)
          continue;
        crossings += last * v < 0;
        last = v;
      }
      assert_int_equal(crossings, 2 * n);
    }
}

static void
a_line_stays_within_its_depth_and_starts_and_ends_at_the_baselines_ends(void **state) {
  static const double starts[][2] = { { 0, 10 }, { 2, 8 }, { 1.3, 9.9 }, { 4.4, 4.6 }, { 0.05, 10 } };

  (void) state;
  for (int p = SPV_PROFILE_INDENTED; p < SPV_N_PROFILES; p++)
    for (gsize i = 0; i < G_N_ELEMENTS(starts); i++)
      for (double side = -1; side <= 1; side += 2) {
        SpvLine line = { .profile = (SpvProfile) p, .periods = 3, .amplitude = 0.8 };
        g_autoptr(SpvTrack) track = straight(10);
        g_autoptr(SpvPath) run = spv_line_lay(&line, track, starts[i][0], starts[i][1], side);
        g_autoptr(SpvRing) ring = points_of(run);
        SpvBox box = spv_ring_bounds(ring);

        assert_near(box.y0, -0.4, 1e-6);
        assert_near(box.y1, 0.4, 1e-6);
        assert_true(box.x0 >= -1e-9 && box.x1 <= 10 + 1e-9);
        assert_near(ring->points[0].x, 0, 1e-9);
        assert_near(ring->points[ring->n_points - 1].x, 10, 1e-9);
      }
}

/* Over whole periods, what is full and what is empty of a line that is the same both ways are halves. Under
 * engrailed and invected, half ellipses with the half axes P / 2 and A are empty or full: π P A / 4. */
static void
whole_periods_fill_half_of_their_depth(void **state) {
  const double length = 9, deep = 0.35, whole = length * 2 * deep;

  (void) state;
  for (int p = SPV_PROFILE_INDENTED; p < SPV_N_PROFILES; p++) {
    SpvLine line = { .profile = (SpvProfile) p, .periods = 6, .amplitude = 2 * deep };
    g_autoptr(SpvTrack) track = straight(length);
    g_autoptr(SpvPath) run = spv_line_lay(&line, track, 0, length, -1);
    g_autoptr(SpvPath) ground = ground_under(run, length, deep);
    g_autoptr(SpvShape) shape = spv_shape_new_from_path(ground);
    double part = p == SPV_PROFILE_ENGRAILED ? 1 - G_PI / 4 : p == SPV_PROFILE_INVECTED ? G_PI / 4 : 0.5;
    gsize pieces;

    assert_near(spv_shape_area(shape) / whole, part, 2e-3);
    /* No line runs into itself. Engrailed points are the only ones to touch down on the trough's level. */
    spv_shape_pieces(shape, &pieces);
    assert_true(pieces >= 1 && pieces <= 7);
  }
}

/* tests/reference/areas.csv holds the zigzag of the border; this is its closed form: 2n √((L/2n)² + d²). */
static void
lengths_follow_the_closed_forms(void **state) {
  (void) state;
  for (guint n = 1; n <= 20; n++) {
    const double length = 10, deep = 0.7, pitch = length / n;
    SpvLine zigzag = { .profile = SPV_PROFILE_INDENTED, .periods = n, .amplitude = deep };
    SpvLine rounds = { .profile = SPV_PROFILE_ENGRAILED, .periods = n, .amplitude = -1 };
    SpvLine crenels = { .profile = SPV_PROFILE_EMBATTLED, .periods = n, .amplitude = -1 };
    g_autoptr(SpvTrack) track = straight(length);
    g_autoptr(SpvPath) teeth = spv_line_lay(&zigzag, track, 0, length, 1);
    g_autoptr(SpvPath) scallops = spv_line_lay(&rounds, track, 0, length, 1);
    g_autoptr(SpvPath) merlons = spv_line_lay(&crenels, track, 0, length, 1);

    assert_near(length_of(teeth), 2 * n * hypot(length / (2 * n), deep), 1e-9);
    /* Half circles: π / 2 for each mm. */
    assert_near(length_of(scallops) / length, G_PI / 2, 1e-4);
    /* Square: as much up and down as along. */
    assert_near(length_of(merlons), length + n * pitch, 1e-9);
  }
}

static void
half_circles_are_round(void **state) {
  SpvLine line = { .profile = SPV_PROFILE_INVECTED, .periods = 1, .amplitude = -1 };
  g_autoptr(SpvTrack) track = straight(4);
  g_autoptr(SpvPath) run = spv_line_lay(&line, track, 0, 4, -1);
  g_autoptr(SpvRing) ring = points_of(run);

  (void) state;
  for (gsize i = 0; i < ring->n_points; i++)
    assert_near(spv_point_distance(ring->points[i], spv_point(2, 1)), 2, 2e-5);
}

static void
a_wavy_line_is_a_sine_within_a_hundredth(void **state) {
  SpvLine line = { .profile = SPV_PROFILE_WAVY, .periods = 1, .amplitude = 2 };
  g_autoptr(SpvTrack) track = straight(2 * G_PI);
  g_autoptr(SpvPath) run = spv_line_lay(&line, track, 0, 2 * G_PI, 1);
  g_autoptr(SpvRing) ring = points_of(run);

  (void) state;
  for (gsize i = 0; i < ring->n_points; i++)
    assert_near(ring->points[i].y, -cos(ring->points[i].x), 0.02);
}

/* The middle of the whole teeth is a mirror axis, on tracks that go on beyond them too. */
static void
symmetrical_lines_are_their_own_mirror_images(void **state) {
  (void) state;
  for (int p = SPV_PROFILE_INDENTED; p < SPV_N_PROFILES; p++)
    for (guint n = 1; n <= 7; n++) {
      SpvLine line = { .profile = (SpvProfile) p, .periods = n, .amplitude = 0.9 };
      g_autoptr(SpvTrack) track = straight(10);
      g_autoptr(SpvPath) run = spv_line_lay(&line, track, 1.7, 8.3, -1);
      g_autoptr(SpvPath) ground = ground_under(run, 10, 2);
      g_autoptr(SpvPath) mirrored = spv_path_transform(ground, (SpvTransform){ -1, 0, 0, 1, 10, 0 });
      g_autoptr(SpvShape) a = spv_shape_new_from_path(ground), b = spv_shape_new_from_path(mirrored);

      if (spv_profile_is_symmetrical(line.profile))
        assert_near(difference_of(a, b), 0, 0.01);
      else
        assert_true(difference_of(a, b) > 0.3);
    }
}

static void
crests_stand_on_the_side_asked_for(void **state) {
  /* The point of an engrailed line is its crest, the point of an invected one its trough: Fox-Davies pp. 91,
   * 92. */
  g_autoptr(SpvTrack) track = straight(4);
  SpvLine engrailed = { .profile = SPV_PROFILE_ENGRAILED, .periods = 2, .amplitude = 1 };
  SpvLine invected = { .profile = SPV_PROFILE_INVECTED, .periods = 2, .amplitude = 1 };

  (void) state;
  for (double side = -1; side <= 1; side += 2) {
    g_autoptr(SpvPath) points = spv_line_lay(&engrailed, track, 0, 4, side);
    g_autoptr(SpvPath) lobes = spv_line_lay(&invected, track, 0, 4, side);
    g_autoptr(SpvRing) a = points_of(points), b = points_of(lobes);
    /* The normal of a track that runs to the right points down. */
    assert_near(a->points[0].y, side * 0.5, 1e-9);
    assert_near(b->points[0].y, -side * 0.5, 1e-9);
  }
}

static void
round_a_circle_a_line_closes_with_whole_teeth(void **state) {
  const double radius = 6, deep = 0.5;

  (void) state;
  for (int p = SPV_PROFILE_INDENTED; p < SPV_N_PROFILES; p++) {
    SpvLine line = { .profile = (SpvProfile) p, .periods = 16, .amplitude = 2 * deep };
    g_autoptr(SpvTrack) track = circle(radius);
    g_autoptr(SpvPath) run = spv_line_lay(&line, track, 0, spv_track_length(track), -1);
    g_autoptr(SpvShape) shape = spv_shape_new_from_path(run);
    g_autoptr(SpvPath) turned = spv_path_transform(run, spv_transform_turn(G_PI / 8, spv_point(0, 0)));
    g_autoptr(SpvShape) other = spv_shape_new_from_path(turned);
    gsize pieces, n_steps;
    const SpvPathStep *steps = spv_path_steps(run, &n_steps);

    assert_int_equal(steps[n_steps - 1].op, SPV_PATH_CLOSE);
    assert_int_equal(spv_shape_pieces(shape, &pieces)->n_rings, 1);
    assert_int_equal(pieces, 1);
    /* A sixteenth of a turn brings each tooth on the next. */
    assert_near(difference_of(shape, other) / spv_shape_area(shape), 0, 2e-3);
    SpvBox box = spv_shape_bounds(shape);
    assert_true(box.x1 <= radius + deep + 1e-3 && box.x1 > radius - deep);
    assert_near(box.x1, -box.x0, spv_profile_is_symmetrical(line.profile) ? 2e-3 : 0.2);
  }
}

/* In the corners of a box the teeth are mitred: no run crosses itself, and eight teeth on a square lie the
 * same on all four sides. */
static void
round_a_square_a_line_turns_its_corners(void **state) {
  (void) state;
  for (int p = SPV_PROFILE_INDENTED; p < SPV_N_PROFILES; p++)
    for (double side = -1; side <= 1; side += 2) {
      SpvLine line = { .profile = (SpvProfile) p, .periods = 16, .amplitude = 0.4 };
      g_autoptr(SpvTrack) track = box_track(8, 8);
      g_autoptr(SpvPath) run = spv_line_lay(&line, track, 0, 32, side);
      g_autoptr(SpvShape) shape = spv_shape_new_from_path(run);
      SpvTransform quarter = { 0, 1, -1, 0, 4, 4 };
      SpvTransform centred = { 1, 0, 0, 1, 0, -4 };
      g_autoptr(SpvPath) home = spv_path_transform(run, centred);
      g_autoptr(SpvPath) turned = spv_path_transform(home, quarter);
      g_autoptr(SpvPath) back = spv_path_transform(turned, (SpvTransform){ 1, 0, 0, 1, -4, 0 });
      g_autoptr(SpvShape) other = spv_shape_new_from_path(back);
      gsize pieces;

      assert_int_equal(spv_shape_pieces(shape, &pieces)->n_rings, 1);
      assert_int_equal(pieces, 1);
      assert_near(difference_of(shape, other), 0, 0.02);
    }
}

static void
along_an_arc_teeth_follow_it(void **state) {
  SpvPoint points[181];
  const double radius = 8;

  (void) state;
  for (int i = 0; i <= 180; i++)
    points[i] = spv_point(-radius * cos(i * G_PI / 180), -radius * sin(i * G_PI / 180));
  g_autoptr(SpvTrack) track = spv_track_new(points, 181, FALSE);
  for (int p = SPV_PROFILE_INDENTED; p < SPV_N_PROFILES; p++) {
    SpvLine line = { .profile = (SpvProfile) p, .pitch = 2, .amplitude = -1 };
    double length = spv_track_length(track);
    g_autoptr(SpvPath) run = spv_line_lay(&line, track, 0, length, -1);
    g_autoptr(SpvRing) ring = points_of(run);
    double deep = spv_line_amplitude(&line, length / 13), least = INFINITY, most = 0;

    assert_int_equal(spv_line_periods(&line, length, 5), 13);
    for (gsize i = 0; i < ring->n_points; i++) {
      double from_centre = spv_point_length(ring->points[i]);
      least = MIN(least, from_centre);
      most = MAX(most, from_centre);
    }
    assert_near(least, radius - deep / 2, 3e-3);
    assert_near(most, radius + deep / 2, 3e-3);
  }
}

static void
a_plain_or_flat_line_is_its_baseline(void **state) {
  static const SpvLine lines[] = { { .profile = SPV_PROFILE_PLAIN, .periods = 4, .amplitude = 2 },
                                   { .profile = SPV_PROFILE_WAVY, .periods = 4, .amplitude = 0 } };
  g_autoptr(SpvTrack) track = straight(5), round = box_track(3, 4);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(lines); i++) {
    g_autoptr(SpvPath) run = spv_line_lay(&lines[i], track, 1, 4, 1);
    g_autoptr(SpvPath) closed = spv_line_lay(&lines[i], round, 0, 14, 1);
    g_autoptr(SpvShape) shape = spv_shape_new_from_path(closed);
    gsize n;
    const SpvPathStep *steps = spv_path_steps(run, &n);

    assert_int_equal(n, 2);
    assert_near(steps[0].to.x, 0, 0);
    assert_near(steps[1].to.x, 5, 0);
    assert_near(spv_shape_area(shape), 12, 1e-9);
  }
}

static void
odd_spans_and_measures_break_nothing(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(11);

  (void) state;
  for (int round = 0; round < ROUNDS(2000); round++) {
    SpvPoint points[7];
    int n = g_rand_int_range(rand, 2, 8);
    SpvLine line = { .profile = (SpvProfile) g_rand_int_range(rand, 0, SPV_N_PROFILES) };
    static const double sizes[] = { 0, 1e-9, 1e-4, 0.05, 0.7, 3, 500 };

    for (int i = 0; i < n; i++)
      points[i] = spv_point(g_rand_double_range(rand, -9, 9), g_rand_double_range(rand, -9, 9));
    if (g_rand_int_range(rand, 0, 20) == 0)
      points[1] = points[0];
    line.periods = (guint) g_rand_int_range(rand, 0, 4) * 70;
    line.pitch = sizes[g_rand_int_range(rand, 0, 7)];
    line.amplitude = g_rand_boolean(rand) ? -1 : sizes[g_rand_int_range(rand, 0, 7)];
    g_autoptr(SpvTrack) track = spv_track_new(points, (gsize) n, g_rand_boolean(rand));
    double length = spv_track_length(track), s0 = length * g_rand_double_range(rand, 0, 1);
    double s1 = s0 + sizes[g_rand_int_range(rand, 0, 6)];
    g_autoptr(SpvPath) run = spv_line_lay(&line, track, s0, s1, g_rand_boolean(rand) ? 1 : -1);
    gsize n_steps;
    const SpvPathStep *steps = spv_path_steps(run, &n_steps);
    assert_true(n_steps >= 1 && n_steps < 2000000);
    for (gsize i = 0; i < n_steps; i++)
      assert_true(isfinite(steps[i].to.x) && isfinite(steps[i].to.y));
  }
}

static void
periods_come_out_whole(void **state) {
  SpvLine pitch = { .profile = SPV_PROFILE_INDENTED, .pitch = 0.9 };
  SpvLine count = { .profile = SPV_PROFILE_INDENTED, .periods = 5, .pitch = 0.9 };
  SpvLine usual = { .profile = SPV_PROFILE_DANCETTY, .amplitude = -1 };
  SpvLine plain = { .profile = SPV_PROFILE_PLAIN, .periods = 5 };

  (void) state;
  assert_int_equal(spv_line_periods(&pitch, 10, 10), 11);
  assert_int_equal(spv_line_periods(&pitch, 0.1, 10), 1);
  assert_int_equal(spv_line_periods(&pitch, 0, 10), 1);
  assert_int_equal(spv_line_periods(&pitch, 1e9, 10), SPV_PATTERN_MAX_COUNT);
  assert_int_equal(spv_line_periods(&count, 10, 10), 5);
  assert_int_equal(spv_line_periods(&plain, 10, 10), 0);
  /* Dancetty: "usually three complete teeth in the width", Fox-Davies p. 93. */
  assert_int_equal(spv_line_periods(&usual, 10, 10), 3);
  assert_near(spv_line_amplitude(&plain, 3), 0, 0);
  assert_near(spv_line_amplitude(&pitch, 3), 0, 0);
  assert_true(spv_line_amplitude(&usual, 3) > 0);
}

static void
a_patterns_line_is_read_by_its_measures(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(12, 8);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_PER_FESS);
  SpvPattern roundel = spv_pattern_preset(SPV_PATTERN_ROUNDEL);
  SpvLine line = spv_line_of(&pattern, panel);

  (void) state;
  assert_int_equal(line.profile, SPV_PROFILE_PLAIN);
  assert_int_equal(spv_line_of(&roundel, panel).profile, SPV_PROFILE_PLAIN);
  set(&pattern, "line", SPV_UNIT_PLAIN, SPV_PROFILE_DANCETTY);
  line = spv_line_of(&pattern, panel);
  assert_int_equal(line.profile, SPV_PROFILE_DANCETTY);
  assert_int_equal(line.periods, 0);
  assert_near(line.pitch, 8.0 / 3, 1e-12);
  assert_true(line.amplitude < 0);
  set(&pattern, "periods", SPV_UNIT_PLAIN, 7);
  assert_int_equal(spv_line_of(&pattern, panel).periods, 7);
  /* A pitch goes before a number of teeth. */
  set(&pattern, "pitch", SPV_UNIT_RELATIVE, 0.25);
  set(&pattern, "amplitude", SPV_UNIT_MM, 0.3);
  line = spv_line_of(&pattern, panel);
  assert_int_equal(line.periods, 0);
  assert_near(line.pitch, 3, 1e-12);
  assert_near(line.amplitude, 0.3, 1e-12);
}

static void
keys_are_found(void **state) {
  SpvProfile found;

  (void) state;
  for (int p = 0; p < SPV_N_PROFILES; p++) {
    assert_true(spv_profile_from_key(spv_profile_key((SpvProfile) p), &found));
    assert_int_equal(found, p);
  }
  assert_string_equal(spv_profile_key(SPV_PROFILE_RAYONNY), "rayonny");
  assert_false(spv_profile_from_key("crooked", &found));
  assert_false(spv_profile_from_key(NULL, &found));
  assert_true(spv_profile_runs_alike(SPV_PROFILE_WAVY) && spv_profile_runs_alike(SPV_PROFILE_DANCETTY));
  assert_false(spv_profile_runs_alike(SPV_PROFILE_ENGRAILED));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(a_line_has_as_many_teeth_as_asked),
    cmocka_unit_test(a_line_stays_within_its_depth_and_starts_and_ends_at_the_baselines_ends),
    cmocka_unit_test(whole_periods_fill_half_of_their_depth),
    cmocka_unit_test(lengths_follow_the_closed_forms),
    cmocka_unit_test(half_circles_are_round),
    cmocka_unit_test(a_wavy_line_is_a_sine_within_a_hundredth),
    cmocka_unit_test(symmetrical_lines_are_their_own_mirror_images),
    cmocka_unit_test(crests_stand_on_the_side_asked_for),
    cmocka_unit_test(round_a_circle_a_line_closes_with_whole_teeth),
    cmocka_unit_test(round_a_square_a_line_turns_its_corners),
    cmocka_unit_test(along_an_arc_teeth_follow_it),
    cmocka_unit_test(a_plain_or_flat_line_is_its_baseline),
    cmocka_unit_test(odd_spans_and_measures_break_nothing),
    cmocka_unit_test(periods_come_out_whole),
    cmocka_unit_test(a_patterns_line_is_read_by_its_measures),
    cmocka_unit_test(keys_are_found),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
