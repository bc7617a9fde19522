/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Stripes: equal pieces, counted as asked, with any line of partition. */
#include "laid.h"

#include "heraldry/profile.h"

#define DEGREE (G_PI / 180)

/* Of a rectangle either tincture has half, however the boundaries run: the second and the third move as much
 * from the one to the other as the third and the fourth move back. What the first and the last leave over is
 * nothing for lines that have as much above as below, and for an engrailed or an invected one what half an
 * ellipse has more than half of its box: (π/4 − 1/2) of length times depth. The points of an engrailed line
 * reach into the piece that comes first (Fox-Davies pp. 91-92). */
static void
stripes_with_any_line_have_their_share(void **state) {
  static const SpvPatternKind kinds[] = { SPV_PATTERN_PALY, SPV_PATTERN_BARRY };
  g_autoptr(SpvOutline) panel = rectangle(10, 14);

  (void) state;
  for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++)
    for (int line = 0; line < SPV_N_PROFILES; line++) {
      SpvPattern pattern = spv_pattern_preset(kinds[k]);
      double more = (k == 0 ? 14 : 10) * 0.9 * (G_PI / 4 - 0.5);
      double first = 70 + (line == SPV_PROFILE_ENGRAILED ? more : line == SPV_PROFILE_INVECTED ? -more : 0);
      set(&pattern, "line", SPV_UNIT_PLAIN, line);
      set(&pattern, "periods", SPV_UNIT_PLAIN, 5);
      set(&pattern, "amplitude", SPV_UNIT_MM, 0.9);
      assert_near(shown(&pattern, 0, panel), first, 0.02);
      assert_near(shown(&pattern, 1, panel), 140 - first, 0.02);
    }
}

/* One boundary fits into the next, so that every inner piece, clipped to the rectangle, has just the area of
 * a plain one. */
static void
inner_pieces_with_a_line_are_as_large_as_plain_ones(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(10, 14);

  (void) state;
  for (int line = 0; line < SPV_N_PROFILES; line++) {
    SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_BARRY);
    set(&pattern, "pieces", SPV_UNIT_PLAIN, 7);
    set(&pattern, "line", SPV_UNIT_PLAIN, line);
    set(&pattern, "amplitude", SPV_UNIT_MM, 0.8);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
    g_autoptr(SpvShape) second = seen(draft, 1, panel);

    assert_near(spv_shape_area(second), 3 * 20, 1e-6);
    assert_int_equal(count_lines(draft, SPV_LINE_DIVISION), 6);
  }
}

/* How far the boundary between the first two pieces swings on a rectangle. */
static double
swing(const SpvPattern *pattern, const SpvOutline *outline) {
  g_autoptr(SpvDraft) draft = spv_pattern_lay(pattern, outline);
  g_autoptr(SpvShape) first = seen(draft, 0, outline);
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(first, &n);
  SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };

  for (gsize i = 0; i < n; i++)
    for (gsize k = 0; k < pieces[i].rings[0]->n_points; k++) {
      SpvPoint at = pieces[i].rings[0]->points[k];
      if (at.y > 1e-6 && at.y < 4)
        box = spv_box_join(box, (SpvBox){ at.x, at.y, at.x, at.y });
    }
  return spv_box_height(box);
}

/* Left to itself, a line is so shallow that each stripe stays one; told, it is as deep as it is told. */
static void
teeth_leave_the_stripe_unless_told(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(10, 15);

  (void) state;
  for (int line = 1; line < SPV_N_PROFILES; line++) {
    SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_BARRY);
    set(&pattern, "pieces", SPV_UNIT_PLAIN, 5);
    set(&pattern, "line", SPV_UNIT_PLAIN, line);
    if (!spv_profile_runs_alike((SpvProfile) line))
      assert_true(swing(&pattern, panel) <= 1 + 1e-6);
    set(&pattern, "amplitude", SPV_UNIT_MM, 1.6);
    assert_near(swing(&pattern, panel), 1.6, 0.002);
  }
}

/* Indented (Fox-Davies p. 91) is a zigzag: a barry boundary with n teeth of depth d on a width w makes each
 * of the two sides of a tooth hypot(w/2n, d) long. */
static void
teeth_are_whole_and_counted_across_the_panel(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(10, 14);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_BARRY);

  (void) state;
  set(&pattern, "pieces", SPV_UNIT_PLAIN, 2);
  set(&pattern, "line", SPV_UNIT_PLAIN, SPV_PROFILE_INDENTED);
  set(&pattern, "periods", SPV_UNIT_PLAIN, 4);
  set(&pattern, "amplitude", SPV_UNIT_MM, 1.5);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
  g_autoptr(SpvShape) first = seen(draft, 0, panel);
  gsize n;
  const SpvPiece *pieces = spv_shape_pieces(first, &n);

  assert_int_equal(n, 1);
  /* Three straight sides: the dexter and sinister ones end where the zigzag swings evenly about 7 mm,
   * wherever in a tooth that is, so that they are as long together whichever. */
  double zigzag = spv_ring_length(pieces[0].rings[0]) - 10;
  SpvBox box = spv_shape_bounds(first);
  assert_near(box.y1, 7.75, 1e-6);
  assert_true(zigzag > 8 * hypot(10.0 / 8, 1.5) + 2 * 6.25 - 1e-6);
  assert_true(zigzag < 8 * hypot(10.0 / 8, 1.5) + 2 * 7.75 + 1e-6);
}

static void
bendy_and_bendy_sinister_mirror_each_other(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern bendy = spv_pattern_preset(SPV_PATTERN_BENDY), sinister = bendy;
  g_autoptr(GRand) rand = g_rand_new_with_seed(3);

  (void) state;
  sinister.kind = SPV_PATTERN_BENDY_SINISTER;
  g_autoptr(SpvDraft) one = spv_pattern_lay(&bendy, square);
  g_autoptr(SpvDraft) other = spv_pattern_lay(&sinister, square);
  for (int i = 0; i < 200; i++) {
    SpvPoint at = { g_rand_double_range(rand, -5, 5), g_rand_double_range(rand, 0, 10) };
    assert_int_equal(slot_at(one, at), slot_at(other, spv_point(-at.x, at.y)));
  }
  /* Turned by half about the square's middle, one tincture of six becomes the other. */
  assert_near(shown(&bendy, 0, square), 50, 1e-7);
  assert_near(shown(&sinister, 1, square), 50, 1e-7);
}

/* On a rectangle of w by h, N chevrons of h/N each lie on the centre line; away from it they are lower by the
 * distance over the tangent of half the angle. */
static void
chevrons_are_counted_on_the_centre_line(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(11, 17);
  g_autoptr(GRand) rand = g_rand_new_with_seed(11);

  (void) state;
  for (int line = 0; line < 2; line++)
    for (int pieces = 2; pieces < 12; pieces++) {
      double angle = g_rand_double_range(rand, 40, 140), step = 17.0 / pieces;
      SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_CHEVRONNY);
      set(&pattern, "pieces", SPV_UNIT_PLAIN, pieces);
      set(&pattern, "angle", SPV_UNIT_DEGREES, angle);
      if (line) {
        set(&pattern, "line", SPV_UNIT_PLAIN, SPV_PROFILE_WAVY);
        set(&pattern, "amplitude", SPV_UNIT_MM, 1e-4);
      }
      g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
      for (int i = 0; i < 100; i++) {
        SpvPoint at = { g_rand_double_range(rand, -5.5, 5.5), g_rand_double_range(rand, 0, 17) };
        double apex = (at.y - fabs(at.x) / tan(angle * DEGREE / 2)) / step;
        if (fabs(apex - round(apex)) > 1e-3)
          assert_int_equal(slot_at(draft, at), (int) floor(apex) & 1);
      }
    }
}

static void
chevrons_with_a_line_are_their_own_mirror_image(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(11, 17);
  g_autoptr(GRand) rand = g_rand_new_with_seed(5);

  (void) state;
  for (int line = 1; line < SPV_N_PROFILES; line++) {
    SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_CHEVRONNY);
    set(&pattern, "line", SPV_UNIT_PLAIN, line);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
    for (int i = 0; i < 100; i++) {
      SpvPoint at = { g_rand_double_range(rand, 0, 5.5), g_rand_double_range(rand, 0, 17) };
      assert_int_equal(slot_at(draft, at), slot_at(draft, spv_point(-at.x, at.y)));
    }
    assert_near(shown(&pattern, 0, panel) + shown(&pattern, 1, panel), 11 * 17, 1e-6);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(stripes_with_any_line_have_their_share),
    cmocka_unit_test(inner_pieces_with_a_line_are_as_large_as_plain_ones),
    cmocka_unit_test(teeth_leave_the_stripe_unless_told),
    cmocka_unit_test(teeth_are_whole_and_counted_across_the_panel),
    cmocka_unit_test(bendy_and_bendy_sinister_mirror_each_other),
    cmocka_unit_test(chevrons_are_counted_on_the_centre_line),
    cmocka_unit_test(chevrons_with_a_line_are_their_own_mirror_image),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
