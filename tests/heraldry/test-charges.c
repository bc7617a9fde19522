/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every charge: its unit, its area, its counts, its symmetry, and that a brush can paint it at 3 mm. */
#include "support/near.h"

#include <gio/gio.h>

#include "heraldry/arrange.h"
#include "heraldry/figure.h"

#define FIRST SPV_PATTERN_ROUNDEL
#define LAST SPV_PATTERN_TALLY

static SpvPattern
charge(SpvPatternKind kind) {
  return spv_pattern_preset(kind);
}

/* KIND with its own measure INDEX at VALUE. */
static SpvPattern
charge_with(SpvPatternKind kind, guint index, double value) {
  SpvPattern pattern = spv_pattern_preset(kind);
  SpvMeasure measure = { SPV_UNIT_PLAIN, value };
  assert_true(spv_measure_is_valid(&spv_pattern_info(kind)->measures[SPV_CHARGE_OWN + index], measure));
  pattern.measures[SPV_CHARGE_OWN + index] = measure;
  return pattern;
}

/* The figure of PATTERN, SIZE mm large. */
static SpvShape *
shape_at(SpvPattern pattern, double size) {
  g_autoptr(SpvPath) unit = spv_figure_path(&pattern);
  g_autoptr(SpvPath) path = spv_path_transform(unit, spv_transform_place(size, 0, spv_point(0, 0)));
  return spv_shape_new_from_path(path);
}

/* The area of the figure at size 1. */
static double
area(SpvPattern pattern) {
  g_autoptr(SpvShape) shape = shape_at(pattern, 100);
  return spv_shape_area(shape) / 10000;
}

/* Each figure with every count that it may have; CHECK is called with each. */
static void
for_each_figure(void (*check)(SpvPattern pattern)) {
  for (int k = FIRST; k <= LAST; k++) {
    const SpvPatternInfo *info = spv_pattern_info((SpvPatternKind) k);
    check(charge((SpvPatternKind) k));
    if (info->n_measures == SPV_CHARGE_OWN)
      continue;
    const SpvMeasureSpec *spec = &info->measures[SPV_CHARGE_OWN];
    for (double value = spec->min; value <= spec->max; value += spec->max > 40 ? 15 : 1)
      check(charge_with((SpvPatternKind) k, 0, value));
  }
}

static void
check_unit(SpvPattern pattern) {
  g_autoptr(SpvPath) path = spv_figure_path(&pattern);
  g_autoptr(GPtrArray) rings = spv_path_flatten(path, 1e-7);
  assert_true(rings->len > 0);
  SpvBox box = spv_ring_bounds(g_ptr_array_index(rings, 0));
  for (guint i = 1; i < rings->len; i++)
    box = spv_box_join(box, spv_ring_bounds(g_ptr_array_index(rings, i)));
  assert_near(spv_box_centre(box).x, 0, 1e-6);
  assert_near(spv_box_centre(box).y, 0, 1e-6);
  assert_near(MAX(spv_box_width(box), spv_box_height(box)), 1, 1e-6);
}

static void
every_figure_has_its_middle_at_the_origin_and_size_1(void **state) {
  (void) state;
  for_each_figure(check_unit);
}

/* No run takes away what another adds, other than as a hole: nowhere does the path wind less than not at all,
 * and what it winds round is what the shape covers. */
static void
check_winding(SpvPattern pattern) {
  g_autoptr(SpvPath) path = spv_figure_path(&pattern);
  g_autoptr(SpvShape) shape = spv_shape_new_from_path(path);
  g_autoptr(GPtrArray) rings = spv_path_flatten(path, SPV_CHORD_ERROR);
  guint inside = 0, differ = 0;
  const int steps = 61;
  for (int i = 0; i < steps * steps; i++) {
    SpvPoint at = spv_point((i % steps + 0.513) / steps - 0.5, (i / steps + 0.487) / steps - 0.5);
    int winding = 0;
    for (guint j = 0; j < rings->len; j++)
      winding += spv_ring_winding(g_ptr_array_index(rings, j), at);
    assert_true(winding >= 0);
    inside += winding > 0;
    differ += (winding > 0) != spv_shape_contains(shape, at);
  }
  assert_true(inside > 0);
  assert_true(differ <= 2); /* a sample on an edge */
  assert_near((double) inside / (steps * steps), spv_shape_area(shape), 0.03);
}

static void
every_figure_fills_by_the_non_zero_rule_what_its_shape_covers(void **state) {
  (void) state;
  for_each_figure(check_winding);
}

/* A brush that holds a 0.25 mm line paints every charge, as it stands in the list, at 3 mm. */
static void
every_charge_can_be_painted_at_3_mm(void **state) {
  (void) state;
  for (int k = FIRST; k <= LAST; k++) {
    SpvPattern pattern = charge((SpvPatternKind) k);
    double smallest = spv_figure_smallest(&pattern, 0.25);
    if (!(smallest >= 0.25 && smallest <= 3))
      fail_msg("%s can be painted from %.2f mm on", spv_pattern_info(pattern.kind)->key, smallest);
  }
}

static void
every_file_is_a_charge(void **state) {
  g_auto(GStrv)
      names = g_resources_enumerate_children("/org/spolvero/charges", G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  (void) state;
  assert_non_null(names);
  for (guint i = 0; names[i] != NULL; i++) {
    SpvPatternKind kind;
    assert_true(g_str_has_suffix(names[i], ".svg"));
    g_autofree char *key = g_strndup(names[i], strlen(names[i]) - 4);
    assert_true(spv_pattern_kind_from_key(key, &kind));
    assert_true(kind >= FIRST && kind <= LAST);
  }
}

static double
asymmetry(SpvPattern a, SpvPattern b) {
  g_autoptr(SpvPath) first = spv_figure_path(&a);
  g_autoptr(SpvPath) second = spv_figure_path(&b);
  g_autoptr(SpvPath) mirrored = spv_path_transform(second, SPV_TRANSFORM_MIRROR);
  g_autoptr(SpvShape) one = spv_shape_new_from_path(first);
  g_autoptr(SpvShape) other = spv_shape_new_from_path(mirrored);
  g_autoptr(SpvShape) less = spv_shape_difference(one, other);
  g_autoptr(SpvShape) more = spv_shape_difference(other, one);
  return spv_shape_area(less) + spv_shape_area(more);
}

static void
what_is_alike_on_both_sides_is_so_exactly(void **state) {
  static const SpvPatternKind alike[] = {
    SPV_PATTERN_ROUNDEL,     SPV_PATTERN_ANNULET,      SPV_PATTERN_BILLET,      SPV_PATTERN_LOZENGE,
    SPV_PATTERN_FUSIL,       SPV_PATTERN_MASCLE,       SPV_PATTERN_RUSTRE,      SPV_PATTERN_MULLET,
    SPV_PATTERN_CRESCENT,    SPV_PATTERN_GOUT,         SPV_PATTERN_HEART,       SPV_PATTERN_CROSS_COUPED,
    SPV_PATTERN_CROSS_PATTY, SPV_PATTERN_CROSS_POTENT, SPV_PATTERN_CROSS_POMMY, SPV_PATTERN_CROSS_FITCHY,
    SPV_PATTERN_SWORD,       SPV_PATTERN_DAGGER,       SPV_PATTERN_ARROW,       SPV_PATTERN_PHEON,
    SPV_PATTERN_TOWER,       SPV_PATTERN_GATE,         SPV_PATTERN_ANCHOR,      SPV_PATTERN_OAR,
    SPV_PATTERN_LANTERN,     SPV_PATTERN_BELL,         SPV_PATTERN_WHEEL,       SPV_PATTERN_COG,
    SPV_PATTERN_CLAW,        SPV_PATTERN_TOOTH,        SPV_PATTERN_CROWN,       SPV_PATTERN_GEM,
    SPV_PATTERN_HOURGLASS,
  };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(alike); i++) {
    double differs = asymmetry(charge(alike[i]), charge(alike[i]));
    /* Chords of arcs may start elsewhere on the other side: within the chord error along the edge. */
    if (!(differs < 2e-3))
      fail_msg("%s differs from its mirror image by %g", spv_pattern_info(alike[i])->key, differs);
  }
  /* And what is not, is not. */
  assert_true(asymmetry(charge(SPV_PATTERN_AXE), charge(SPV_PATTERN_AXE)) > 0.1);
  assert_true(asymmetry(charge(SPV_PATTERN_ESTOILE), charge(SPV_PATTERN_ESTOILE)) > 0.02);
}

static void
plain_figures_have_their_closed_areas(void **state) {
  (void) state;
  assert_near(area(charge(SPV_PATTERN_ROUNDEL)), G_PI / 4, 1e-4);
  assert_near(area(charge(SPV_PATTERN_ANNULET)), G_PI / 4 * (1 - 0.55 * 0.55), 1e-4);
  assert_near(area(charge_with(SPV_PATTERN_ANNULET, 0, 80)), G_PI / 4 * 0.36, 1e-4);
  assert_near(area(charge(SPV_PATTERN_BILLET)), 0.5, 1e-9);
  /* Half the product of the diagonals. */
  assert_near(area(charge(SPV_PATTERN_LOZENGE)), 0.8 / 2, 1e-9);
  assert_near(area(charge(SPV_PATTERN_FUSIL)), 0.45 / 2, 1e-9);
  assert_near(area(charge_with(SPV_PATTERN_MASCLE, 0, 60)), 0.4 * (1 - 0.36), 1e-9);
  assert_near(area(charge(SPV_PATTERN_RUSTRE)), 0.4 - G_PI * 0.14 * 0.14, 1e-4);
  /* A square without its corners. */
  assert_near(area(charge(SPV_PATTERN_CROSS_COUPED)), 1 - 4 * 0.35 * 0.35, 1e-9);
}

/* However wide the hole is asked to be, a rustre is one piece with one hole. */
static void
a_rustre_holds_together(void **state) {
  (void) state;
  for (int hole = 5; hole <= 95; hole += 10) {
    g_autoptr(SpvShape) shape = shape_at(charge_with(SPV_PATTERN_RUSTRE, 0, hole), 10);
    gsize n = 0;
    const SpvPiece *pieces = spv_shape_pieces(shape, &n);
    assert_int_equal(n, 1);
    assert_int_equal(pieces[0].n_rings, 2);
  }
}

static SpvPoint
centroid(const SpvShape *shape) {
  gsize n = 0;
  const SpvRing *ring = spv_shape_pieces(shape, &n)[0].rings[0];
  SpvPoint sum = { 0, 0 };
  for (gsize i = 0; i < ring->n_points; i++) {
    SpvPoint a = ring->points[i], b = ring->points[(i + 1) % ring->n_points];
    sum = spv_point_add(sum, spv_point_scale(spv_point_add(a, b), spv_point_cross(a, b) / 6));
  }
  return spv_point_scale(sum, 1 / spv_ring_area(ring));
}

/* Twice the length of a star's points and of its valleys from its middle, and the area of n triangles between
 * them: n R r sin(π ÷ n). */
static void
a_mullet_is_a_star_of_as_many_points(void **state) {
  (void) state;
  for (guint points = 3; points <= 16; points++) {
    g_autoptr(SpvShape) shape = shape_at(charge_with(SPV_PATTERN_MULLET, 0, points), 10);
    gsize n = 0;
    const SpvPiece *pieces = spv_shape_pieces(shape, &n);
    const SpvRing *ring = pieces[0].rings[0];
    assert_int_equal(n, 1);
    assert_int_equal(ring->n_points, 2 * points);
    SpvPoint middle = centroid(shape);
    double near = INFINITY, far = 0;
    guint outer = 0;
    for (gsize i = 0; i < ring->n_points; i++) {
      double radius = spv_point_distance(ring->points[i], middle);
      near = MIN(near, radius);
      far = MAX(far, radius);
    }
    for (gsize i = 0; i < ring->n_points; i++) {
      double radius = spv_point_distance(ring->points[i], middle);
      assert_true(fabs(radius - near) < 1e-6 || fabs(radius - far) < 1e-6);
      outer += fabs(radius - far) < 1e-6;
    }
    assert_int_equal(outer, points);
    assert_near(spv_shape_area(shape), points * far * near * sin(G_PI / points), 1e-6);
  }
  /* The pentagram: 5 sin 36° cos 72° ÷ cos 36° of the square of its radius, which is 1 ÷ (2 sin 72°). */
  double radius = 0.5 / sin(0.4 * G_PI);
  assert_near(area(charge(SPV_PATTERN_MULLET)),
              5 * sin(0.2 * G_PI) * cos(0.4 * G_PI) / cos(0.2 * G_PI) * radius * radius, 1e-9);
}

static void
a_pierced_mullet_has_a_hole_in_its_middle(void **state) {
  (void) state;
  for (guint points = 3; points <= 16; points++) {
    SpvPattern pattern = charge_with(SPV_PATTERN_MULLET, 0, points);
    g_autoptr(SpvShape) whole = shape_at(pattern, 10);
    pattern.measures[SPV_CHARGE_OWN + 1] = (SpvMeasure){ SPV_UNIT_PLAIN, 1 };
    g_autoptr(SpvShape) pierced = shape_at(pattern, 10);
    gsize n = 0;
    assert_int_equal(spv_shape_pieces(whole, &n)[0].n_rings, 1);
    assert_int_equal(spv_shape_pieces(pierced, &n)[0].n_rings, 2);
    SpvPoint middle = centroid(whole);
    assert_true(spv_shape_contains(whole, middle));
    assert_false(spv_shape_contains(pierced, middle));
    /* A round hole: its area and its length are a circle's. */
    const SpvRing *hole = spv_shape_pieces(pierced, &n)[0].rings[1];
    double length = spv_ring_length(hole);
    assert_near(-spv_ring_area(hole), length * length / (4 * G_PI), 0.01);
    assert_near(spv_shape_area(whole) - spv_shape_area(pierced), -spv_ring_area(hole), 1e-6);
    assert_true(spv_figure_smallest(&pattern, 0.25) <= 3);
  }
}

/* How often a circle about the middle of PATTERN's figure, SHARE of the farthest point's distance wide, comes
 * into the figure. */
static guint
crossings(SpvPattern pattern, double share) {
  g_autoptr(SpvShape) shape = shape_at(pattern, 10);
  SpvPoint middle = centroid(shape);
  gsize n = 0;
  const SpvRing *ring = spv_shape_pieces(shape, &n)[0].rings[0];
  double far = 0;
  for (gsize i = 0; i < ring->n_points; i++)
    far = MAX(far, spv_point_distance(ring->points[i], middle));

  guint entered = 0;
  gboolean before = FALSE, first = FALSE;
  const int steps = 2000;
  for (int i = 0; i <= steps; i++) {
    double angle = 2 * G_PI * (i % steps) / steps + 0.0003;
    SpvPoint at = { middle.x + share * far * cos(angle), middle.y + share * far * sin(angle) };
    gboolean here = spv_shape_contains(shape, at);
    first = i == 0 ? here : first;
    entered += i > 0 && here && !before;
    before = here;
  }
  return entered;
}

static void
figures_have_as_many_parts_as_asked_for(void **state) {
  static const struct {
    SpvPatternKind kind;
    double share;
  } counted[] = {
    { SPV_PATTERN_MULLET, 0.9 }, { SPV_PATTERN_ESTOILE, 0.85 }, { SPV_PATTERN_WHEEL, 0.6 },
    { SPV_PATTERN_COG, 0.95 },   { SPV_PATTERN_SUN, 0.85 },
  };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(counted); i++) {
    const SpvMeasureSpec *spec = &spv_pattern_info(counted[i].kind)->measures[SPV_CHARGE_OWN];
    assert_int_equal(crossings(charge(counted[i].kind), counted[i].share), spec->preset.value);
    for (double n = spec->min; n <= spec->max; n++)
      assert_int_equal(crossings(charge_with(counted[i].kind, 0, n), counted[i].share), n);
  }
}

static void
a_wheel_has_a_hole_between_two_spokes(void **state) {
  (void) state;
  for (guint spokes = 3; spokes <= 16; spokes++) {
    g_autoptr(SpvShape) shape = shape_at(charge_with(SPV_PATTERN_WHEEL, 0, spokes), 10);
    gsize n = 0;
    assert_int_equal(spv_shape_pieces(shape, &n)[0].n_rings, 1 + spokes);
    assert_int_equal(n, 1);
  }
}

/* Four strokes stand apart; the fifth joins them. */
static void
every_fifth_tally_stroke_crosses_four(void **state) {
  (void) state;
  for (guint strokes = 1; strokes <= 20; strokes++) {
    SpvPattern pattern = charge_with(SPV_PATTERN_TALLY, 0, strokes);
    g_autoptr(SpvPath) path = spv_figure_path(&pattern);
    g_autoptr(GPtrArray) runs = spv_path_flatten(path, 0.001);
    g_autoptr(SpvShape) shape = shape_at(pattern, 10);
    gsize pieces = 0;
    spv_shape_pieces(shape, &pieces);
    assert_int_equal(runs->len, strokes);
    assert_int_equal(pieces, strokes / 5 + strokes % 5);
  }
}

/* The increscent's horns point to dexter, the viewer's left, so its body lies to sinister. */
static void
crescents_point_as_they_are_called(void **state) {
  (void) state;
  g_autoptr(SpvShape) crescent = shape_at(charge(SPV_PATTERN_CRESCENT), 10);
  g_autoptr(SpvShape) increscent = shape_at(charge(SPV_PATTERN_INCRESCENT), 10);
  g_autoptr(SpvShape) decrescent = shape_at(charge(SPV_PATTERN_DECRESCENT), 10);
  assert_true(centroid(crescent).y > 0.5);
  assert_near(centroid(crescent).x, 0, 1e-3);
  assert_true(centroid(increscent).x > 0.5);
  assert_true(centroid(decrescent).x < -0.5);
  assert_near(spv_shape_area(increscent), spv_shape_area(crescent), 1e-2);
  assert_true(asymmetry(charge(SPV_PATTERN_INCRESCENT), charge(SPV_PATTERN_DECRESCENT)) < 2e-3);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(every_figure_has_its_middle_at_the_origin_and_size_1),
    cmocka_unit_test(every_figure_fills_by_the_non_zero_rule_what_its_shape_covers),
    cmocka_unit_test(every_charge_can_be_painted_at_3_mm),
    cmocka_unit_test(every_file_is_a_charge),
    cmocka_unit_test(what_is_alike_on_both_sides_is_so_exactly),
    cmocka_unit_test(plain_figures_have_their_closed_areas),
    cmocka_unit_test(a_rustre_holds_together),
    cmocka_unit_test(a_mullet_is_a_star_of_as_many_points),
    cmocka_unit_test(a_pierced_mullet_has_a_hole_in_its_middle),
    cmocka_unit_test(figures_have_as_many_parts_as_asked_for),
    cmocka_unit_test(a_wheel_has_a_hole_between_two_spokes),
    cmocka_unit_test(every_fifth_tally_stroke_crosses_four),
    cmocka_unit_test(crescents_point_as_they_are_called),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
