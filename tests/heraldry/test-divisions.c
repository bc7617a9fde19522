/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Divisions: parts that cover the panel without overlaps, whatever their line; shares, counts and symmetry.
 */
#include "laid.h"

#include "geometry/transform.h"
#include "heraldry/profile.h"

static SpvOutline *
panel_of(int family, double width, double height) {
  SpvOutlineSpec spec;
  spv_outline_spec_preset((SpvOutlineFamily) family, width, family == SPV_OUTLINE_DISC ? width : height,
                          &spec);
  return spv_outline_new(&spec);
}

static SpvPattern
with_line(SpvPatternKind kind, int profile) {
  SpvPattern pattern = spv_pattern_preset(kind);

  set(&pattern, "line", SPV_UNIT_PLAIN, profile);
  return pattern;
}

/* Fails unless the slots of PATTERN cover OUTLINE and no two of them meet. */
static void
assert_parts(const SpvPattern *pattern, const SpvOutline *outline, double tolerance) {
  const SpvPatternInfo *info = spv_pattern_info(pattern->kind);
  double whole = spv_shape_area(spv_outline_shape(outline)), sum = 0, over = 0;
  SpvShape *parts[SPV_PATTERN_SLOTS];
  g_autoptr(SpvDraft) draft = spv_pattern_lay(pattern, outline);

  for (guint i = 0; i < info->n_slots; i++) {
    SpvBox box = spv_path_bounds(draft->area[i]);
    assert_true(isfinite(box.x0) && isfinite(box.y0) && isfinite(box.x1) && isfinite(box.y1));
    parts[i] = seen(draft, (int) i, outline);
    sum += spv_shape_area(parts[i]);
    for (guint k = 0; k < i; k++) {
      g_autoptr(SpvShape) both = spv_shape_intersection(parts[i], parts[k]);
      over += spv_shape_area(both);
    }
  }
  g_autoptr(SpvShape) all = spv_shape_union((const SpvShape *const *) parts, info->n_slots);
  g_autoptr(SpvShape) bare = spv_shape_difference(spv_outline_shape(outline), all);
  double left = spv_shape_area(bare);
  if (fabs(sum / whole - 1) > tolerance || over / whole > tolerance || left / whole > tolerance) {
    g_autoptr(GString) said = g_string_new(NULL);
    for (guint i = 0; i < info->n_measures; i++)
      g_string_append_printf(said, " %s %g (%d)", info->measures[i].key, pattern->measures[i].value,
                             (int) pattern->measures[i].unit);
    fail_msg("%s:%s on %g by %g: sum %.12g, overlap %g, bare %g of the panel", info->key, said->str,
             spv_outline_width(outline), spv_outline_height(outline), sum / whole, over / whole,
             left / whole);
  }
  for (guint i = 0; i < info->n_slots; i++)
    spv_shape_unref(parts[i]);
}

static void
every_line_parts_every_panel(void **state) {
  (void) state;
  for (int f = 0; f < ROUNDS(SPV_N_OUTLINE_FAMILIES); f++) {
    g_autoptr(SpvOutline) outline = panel_of(f, 6, 7.3);
    for (int k = SPV_PATTERN_PER_PALE; k <= SPV_PATTERN_GYRONNY; k++)
      for (int p = 0; p < SPV_N_PROFILES; p++) {
        SpvPattern pattern = with_line((SpvPatternKind) k, p);
        assert_parts(&pattern, outline, 1e-9);
      }
  }
}

static SpvMeasure
random_measure(const SpvMeasureSpec *spec, GRand *random) {
  guint n = 0;

  if (g_rand_int_range(random, 0, 3) == 0)
    return (SpvMeasure){ SPV_UNIT_AUTO, 0 };
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_rand_int_range(random, (int) spec->min, 25) };
  case SPV_MEASURE_CHOICE:
    while (spec->choices[n])
      n++;
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_rand_int_range(random, 0, (int) n) };
  case SPV_MEASURE_ANGLE:
    return (SpvMeasure){ SPV_UNIT_DEGREES, g_rand_double_range(random, spec->min, spec->max) };
  case SPV_MEASURE_LENGTH:
    if (g_rand_int_range(random, 0, 12) == 0)
      return (SpvMeasure){ SPV_UNIT_MM, g_rand_boolean(random) ? spec->max : spec->min };
    return (SpvMeasure){ SPV_UNIT_RELATIVE, g_rand_double_range(random, spec->min < 0 ? -0.8 : 0.03, 0.8) };
  }
  return (SpvMeasure){ SPV_UNIT_AUTO, 0 };
}

static void
random_measures_part_the_panel_too(void **state) {
  g_autoptr(GRand) random = g_rand_new_with_seed(7);

  (void) state;
  for (int round = 0; round < ROUNDS(600); round++) {
    int kind = g_rand_int_range(random, SPV_PATTERN_PER_PALE, SPV_PATTERN_GYRONNY + 1);
    SpvPattern pattern = spv_pattern_preset((SpvPatternKind) kind);
    const SpvPatternInfo *info = spv_pattern_info(pattern.kind);
    g_autoptr(SpvOutline)
        outline = panel_of(g_rand_int_range(random, 0, SPV_N_OUTLINE_FAMILIES),
                           g_rand_double_range(random, 2, 12), g_rand_double_range(random, 6, 12));
    for (guint i = 0; i < info->n_measures; i++) {
      pattern.measures[i] = random_measure(&info->measures[i], random);
      assert_true(spv_measure_is_valid(&info->measures[i], pattern.measures[i]));
    }
    assert_parts(&pattern, outline, 1e-7);
  }
}

/* Every piece of a slot, on a panel: how many, and the least and the greatest, mm². */
static guint
pieces_of(const SpvPattern *pattern, int slot, const SpvOutline *outline, double *least, double *greatest) {
  g_autoptr(SpvDraft) draft = spv_pattern_lay(pattern, outline);
  g_autoptr(SpvShape) shape = seen(draft, slot, outline);
  gsize n;

  spv_shape_pieces(shape, &n);
  *least = INFINITY;
  *greatest = 0;
  for (gsize i = 0; i < n; i++) {
    g_autoptr(SpvShape) piece = spv_shape_piece(shape, i);
    double area = spv_shape_area(piece);
    *least = MIN(*least, area);
    *greatest = MAX(*greatest, area);
  }
  return (guint) n;
}

/* Gyronny of eight on a square is eight equal parts; with points spaced evenly round the stretched square,
 * any number is equal on any rectangle: all triangles have one height there, and bases of one length. */
static void
gyrons_are_equal_on_a_rectangle(void **state) {
  static const guint pieces[] = { 8, 6, 10, 12, 16 };
  static const double sizes[][2] = { { 10, 10 }, { 12, 7 }, { 5, 9 } };

  (void) state;
  for (gsize s = 0; s < G_N_ELEMENTS(sizes); s++)
    for (gsize i = 0; i < G_N_ELEMENTS(pieces); i++) {
      g_autoptr(SpvOutline) panel = rectangle(sizes[s][0], sizes[s][1]);
      SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_GYRONNY);
      double least, greatest, each = sizes[s][0] * sizes[s][1] / pieces[i];

      set(&pattern, "pieces", SPV_UNIT_PLAIN, (double) i);
      for (int slot = 0; slot < 2; slot++) {
        assert_int_equal(pieces_of(&pattern, slot, panel, &least, &greatest), pieces[i] / 2);
        assert_near(least, each, 1e-7);
        assert_near(greatest, each, 1e-7);
      }
    }
}

/* "Gyronny": the first tincture has the gyron in dexter chief beside the upright line. The lines of eight go
 * to the corners. Common practice, no source. */
static void
the_first_gyron_is_in_dexter_chief(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_GYRONNY);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, square);

  (void) state;
  assert_int_equal(slot_at(draft, spv_point(-1, 0.5)), 0);
  assert_int_equal(slot_at(draft, spv_point(1, 0.5)), 1);
  assert_int_equal(slot_at(draft, spv_point(-4.8, 0.5)), 1);
  assert_int_equal(slot_at(draft, spv_point(4.8, 0.5)), 0);
  assert_int_equal(draft->lines->len, 4);
}

static void
thirds_are_thirds(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(9, 12);

  (void) state;
  for (int slot = 0; slot < 3; slot++) {
    SpvPattern pale = spv_pattern_preset(SPV_PATTERN_TIERCED_IN_PALE);
    SpvPattern fess = spv_pattern_preset(SPV_PATTERN_TIERCED_IN_FESS);
    assert_near(shown(&pale, slot, panel), 36, 1e-7);
    assert_near(shown(&fess, slot, panel), 36, 1e-7);
    set(&pale, "middle", SPV_UNIT_MM, 4);
    assert_near(shown(&pale, slot, panel), slot == 1 ? 48 : 30, 1e-7);
  }
}

/* To the upper corners of a square: the chief is the quarter above both diagonals, and the upright line
 * halves the rest. */
static void
per_pall_meets_the_corners(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_PER_PALL);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, square);

  (void) state;
  assert_near(shown(&pattern, 0, square), 25, 1e-7);
  assert_near(shown(&pattern, 1, square), 37.5, 1e-7);
  assert_near(shown(&pattern, 2, square), 37.5, 1e-7);
  /* Dexter is the viewer's left: Fox-Davies (1909) p. 104. */
  assert_true(spv_path_contains(draft->area[1], spv_point(-3, 8)));
  assert_true(spv_path_contains(draft->area[2], spv_point(3, 8)));
  assert_int_equal(draft->lines->len, 3);
}

/* A line that is the same both ways takes from either side what it gives to the other. */
static void
whole_teeth_leave_halves_halves(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  g_autoptr(SpvOutline) disc = panel_of(SPV_OUTLINE_DISC, 10, 10);
  double round = spv_shape_area(spv_outline_shape(disc));

  (void) state;
  for (int p = 0; p < SPV_N_PROFILES; p++) {
    SpvPattern pale = with_line(SPV_PATTERN_PER_PALE, p), fess = with_line(SPV_PATTERN_PER_FESS, p);
    SpvPattern quarters = with_line(SPV_PATTERN_QUARTERLY, p), gyrons = with_line(SPV_PATTERN_GYRONNY, p);

    if (p != SPV_PROFILE_ENGRAILED && p != SPV_PROFILE_INVECTED) {
      assert_near(shown(&pale, 0, square), 50, 0.02);
      assert_near(shown(&fess, 0, square), 50, 0.02);
    }
    /* Turned by a quarter, one tincture's quarters are the other's, whatever the line; so are gyrons turned
     * by an eighth, on a disc. */
    assert_near(shown(&quarters, 0, square), 50, 1e-6);
    assert_near(shown(&gyrons, 0, disc) / round, 0.5, 1e-4);
  }
}

/* What of the lower part stands above the baseline is as many pieces as teeth were asked for. */
static void
as_many_teeth_stand_as_asked(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(20, 12);
  g_autoptr(SpvPath) upper = spv_path_new_box((SpvBox){ -10, 0, 10, 6 });
  g_autoptr(SpvShape) above = spv_shape_new_from_path(upper);

  (void) state;
  for (int p = SPV_PROFILE_INDENTED; p < SPV_N_PROFILES; p++)
    for (guint n = 1; n <= 9; n++) {
      SpvPattern pattern = with_line(SPV_PATTERN_PER_FESS, p);
      gsize pieces;

      set(&pattern, "periods", SPV_UNIT_PLAIN, n);
      set(&pattern, "amplitude", SPV_UNIT_MM, 1);
      g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
      g_autoptr(SpvShape) lower = seen(draft, 1, panel);
      g_autoptr(SpvShape) teeth = spv_shape_intersection(lower, above);
      spv_shape_pieces(teeth, &pieces);
      /* The points of an engrailed line are its crests: one at either end, too. */
      assert_int_equal(pieces, p == SPV_PROFILE_ENGRAILED ? n + 1 : n);
      assert_int_equal(draft->lines->len, 1);
    }
}

/* With a line that is the same from either end, what is symmetrical plain stays so. */
static void
symmetrical_divisions_stay_so(void **state) {
  static const SpvPatternKind kinds[] = { SPV_PATTERN_PER_FESS, SPV_PATTERN_PER_CHEVRON,
                                          SPV_PATTERN_PER_SALTIRE, SPV_PATTERN_TIERCED_IN_FESS };

  (void) state;
  for (int f = 0; f < ROUNDS(SPV_N_OUTLINE_FAMILIES); f++) {
    g_autoptr(SpvOutline) outline = panel_of(f, 8, 9);
    for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++)
      for (int p = 0; p < SPV_N_PROFILES; p++) {
        SpvPattern pattern = with_line(kinds[k], p);
        if (!spv_profile_is_symmetrical((SpvProfile) p))
          continue;
        g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, outline);
        for (guint slot = 0; slot < spv_pattern_info(pattern.kind)->n_slots; slot++) {
          g_autoptr(SpvPath) image = spv_path_transform(draft->area[slot], SPV_TRANSFORM_MIRROR);
          g_autoptr(SpvShape) area = seen(draft, (int) slot, outline);
          g_autoptr(SpvShape) mirrored = spv_shape_new_from_path(image);
          g_autoptr(SpvShape) shape = spv_shape_intersection(spv_outline_shape(outline), mirrored);
          assert_near(difference_of(area, shape), 0, 0.03);
        }
      }
  }
}

/* A merlon of the lower part stands up into the chief; on a line that isn't symmetrical upside down, so do
 * the points of engrailed and the lobes of invected (Fox-Davies pp. 91, 92: towards and away from the field).
 */
static void
crests_stand_in_the_first_part(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(12, 12);
  SpvPattern engrailed = with_line(SPV_PATTERN_PER_FESS, SPV_PROFILE_ENGRAILED);
  SpvPattern invected = with_line(SPV_PATTERN_PER_FESS, SPV_PROFILE_INVECTED);

  (void) state;
  for (int i = 0; i < 2; i++) {
    SpvPattern *pattern = i == 0 ? &engrailed : &invected;
    set(pattern, "periods", SPV_UNIT_PLAIN, 6);
  }
  /* Half circles of radius 1 about the level a half amplitude off: those of engrailed are cut from the lower
   * part, those of invected added to it. */
  assert_near(shown(&engrailed, 1, panel), 72 + 6 - 6 * G_PI / 2, 0.02);
  assert_near(shown(&invected, 1, panel), 72 - 6 + 6 * G_PI / 2, 0.02);
}

/* Near the point where arms meet there is no room for teeth: there the parts are those of the plain division,
 * and all meet in the one point. */
static void
arms_meet_in_one_point(void **state) {
  static const SpvPatternKind kinds[] = { SPV_PATTERN_PER_SALTIRE, SPV_PATTERN_PER_PALL,
                                          SPV_PATTERN_QUARTERLY, SPV_PATTERN_GYRONNY };
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  g_autoptr(SpvPath) disc = spv_path_new_circle(spv_point(0, 5), 0.05);
  g_autoptr(SpvShape) near = spv_shape_new_from_path(disc);

  (void) state;
  for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++)
    for (int p = SPV_PROFILE_INDENTED; p < SPV_N_PROFILES; p++) {
      SpvPattern plain = spv_pattern_preset(kinds[k]), lined = with_line(kinds[k], p);
      g_autoptr(SpvDraft) a = spv_pattern_lay(&plain, square), b = spv_pattern_lay(&lined, square);

      for (guint slot = 0; slot < spv_pattern_info(kinds[k])->n_slots; slot++) {
        g_autoptr(SpvShape) whole_a = seen(a, (int) slot, square), whole_b = seen(b, (int) slot, square);
        g_autoptr(SpvShape) part_a = spv_shape_intersection(whole_a, near);
        g_autoptr(SpvShape) part_b = spv_shape_intersection(whole_b, near);
        assert_near(difference_of(part_a, part_b), 0, 1e-8);
      }
    }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(every_line_parts_every_panel),
    cmocka_unit_test(random_measures_part_the_panel_too),
    cmocka_unit_test(gyrons_are_equal_on_a_rectangle),
    cmocka_unit_test(the_first_gyron_is_in_dexter_chief),
    cmocka_unit_test(thirds_are_thirds),
    cmocka_unit_test(per_pall_meets_the_corners),
    cmocka_unit_test(whole_teeth_leave_halves_halves),
    cmocka_unit_test(as_many_teeth_stand_as_asked),
    cmocka_unit_test(symmetrical_divisions_stay_so),
    cmocka_unit_test(crests_stand_in_the_first_part),
    cmocka_unit_test(arms_meet_in_one_point),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
