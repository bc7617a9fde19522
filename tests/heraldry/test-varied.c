/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Varied fields: cells in turn, laces over and under, joints between stones, and all of them under random
 * measures. */
#include "laid.h"

#include "geometry/width.h"
#include "heraldry/profile.h"

#define DEGREE (G_PI / 180)

/* A cell is a parallelogram as high as a bar, as thick as a bend, and leaning as the bend does: its area is
 * the one times the other over the sine of the slope. */
static void
bars_and_pales_crossed_by_bends_make_parallelograms(void **state) {
  static const SpvPatternKind kinds[] = { SPV_PATTERN_BARRY_BENDY, SPV_PATTERN_PALY_BENDY };
  g_autoptr(SpvOutline) panel = rectangle(10, 12);
  double slope = 40 * DEGREE, reach = 10 * sin(slope) + 12 * cos(slope);
  g_autoptr(GRand) rand = g_rand_new_with_seed(17);

  (void) state;
  for (int k = 0; k < 2; k++) {
    SpvPattern pattern = spv_pattern_preset(kinds[k]);
    double across = k == 0 ? sin(slope) : cos(slope), bar = (k == 0 ? 12 : 10) / 5.0, bend = reach / 8;
    guint whole = 0;
    set(&pattern, "pieces", SPV_UNIT_PLAIN, 5);
    set(&pattern, "bends", SPV_UNIT_PLAIN, 8);
    set(&pattern, "angle", SPV_UNIT_DEGREES, 40);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);

    assert_int_equal(count_lines(draft, k == 0 ? SPV_LINE_ROW : SPV_LINE_COLUMN), 4);
    assert_int_equal(count_lines(draft, SPV_LINE_DIVISION), 7);
    for (int slot = 0; slot < 2; slot++)
      for (guint i = 0; i < draft->cells[slot]->len; i++) {
        const SpvRing *cell = g_ptr_array_index(draft->cells[slot], i);
        assert_true(spv_ring_is_convex(cell));
        whole += fabs(spv_ring_area(cell) - bar * bend / across) < 1e-9;
      }
    assert_true(whole >= 10);
    for (int i = 0; i < 300; i++) {
      SpvPoint at = { g_rand_double_range(rand, -5, 5), g_rand_double_range(rand, 0, 12) };
      int bars = (int) floor((k == 0 ? at.y : at.x + 5) / bar);
      /* Bends are counted from sinister chief. */
      int bends = (int) floor(((5 - at.x) * sin(slope) + at.y * cos(slope)) / bend);
      assert_int_equal(slot_at(draft, at), (bars + bends) & 1);
    }
  }
}

/* Fox-Davies (1909) p. 122: lozengy is lines in bend crossed by lines in bend sinister. With whole lozenges
 * across, each tincture has half of a rectangle of any height. */
static void
lozengy_is_half_and_half(void **state) {
  static const SpvPatternKind kinds[] = { SPV_PATTERN_LOZENGY, SPV_PATTERN_FUSILY };
  g_autoptr(GRand) rand = g_rand_new_with_seed(23);

  (void) state;
  for (int round = 0; round < 40; round++) {
    double w = g_rand_double_range(rand, 2, 20), h = g_rand_double_range(rand, 2, 20);
    g_autoptr(SpvOutline) panel = rectangle(w, h);
    SpvPattern pattern = spv_pattern_preset(kinds[round & 1]);
    set(&pattern, "columns", SPV_UNIT_PLAIN, g_rand_int_range(rand, 1, 12));
    if (round & 2)
      set(&pattern, "angle", SPV_UNIT_DEGREES, g_rand_double_range(rand, 10, 80));
    assert_near(shown(&pattern, 0, panel), w * h / 2, 1e-7);
    assert_near(shown(&pattern, 1, panel), w * h / 2, 1e-7);
  }
}

/* Each lozenge shares its sides with four of the other tincture and touches those of its own at its corners.
 */
static void
lozenges_lie_in_rows_of_one_tincture(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(12, 18);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_LOZENGY);
  double height = 2 * tan(55 * DEGREE), row = 9 - height / 4;
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);

  (void) state;
  for (int i = 0; i < 6; i++) {
    double x = -5 + 2 * i;
    assert_int_equal(slot_at(draft, spv_point(x, row)), 0);
    assert_int_equal(slot_at(draft, spv_point(x, row + height)), 0);
    for (int side = -1; side <= 1; side += 2) {
      assert_int_equal(slot_at(draft, spv_point(x + side, row + height / 2)), 1);
      assert_int_equal(slot_at(draft, spv_point(x + side, row - height / 2)), 1);
      /* Nearly out at its own corners: across, it is as wide as it is told. */
      assert_int_equal(slot_at(draft, spv_point(x + 0.99 * side, row)), 0);
      assert_int_equal(slot_at(draft, spv_point(x, row + 0.49 * height * side)), 0);
    }
  }
}

static void
a_fusil_is_steeper_than_a_lozenge(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(12, 18);
  double height[2];

  (void) state;
  for (int k = 0; k < 2; k++) {
    SpvPattern pattern = spv_pattern_preset(k == 0 ? SPV_PATTERN_LOZENGY : SPV_PATTERN_FUSILY);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
    const SpvDraftLine *line = &g_array_index(draft->lines, SpvDraftLine, 0);
    height[k] = fabs((line->to.y - line->from.y) / (line->to.x - line->from.x));
  }
  assert_true(height[1] > 1.5 * height[0]);
}

/* With laces as wide as a part F of their distance, either direction covers F of the plane. Crossed plainly,
 * both cover 2F - F². Interlaced, every lace is cut at every second crossing, over its own width and a third
 * of it on both sides, of two distances: so both cover 2F (1 - 5F/6), and nothing twice. */
static void
laces_go_over_and_under(void **state) {
  double slope = 50 * DEGREE, mesh = 2.5, height = mesh * tan(slope), part = 0.25;
  g_autoptr(SpvOutline) panel = rectangle(4 * mesh, 3 * height);
  double whole = 12 * mesh * height, width = part * mesh * sin(slope);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_FRETTY);

  (void) state;
  set(&pattern, "width", SPV_UNIT_MM, width);
  assert_near(shown(&pattern, 0, panel), whole * 2 * part * (1 - 5 * part / 6), 1e-6);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
  g_autoptr(SpvShape) strands = seen(draft, 0, panel);
  gsize n, inner = 0;
  spv_shape_pieces(strands, &n);
  for (gsize i = 0; i < n; i++) {
    g_autoptr(SpvShape) strand = spv_shape_piece(strands, i);
    SpvBox box = spv_shape_bounds(strand);
    if (box.x0 < -4.99 || box.x1 > 4.99 || box.y0 < 0.01 || box.y1 > 3 * height - 0.01)
      continue;
    assert_near(spv_piece_narrowest(strand, 0, INFINITY, NULL), width, 0.002);
    /* From the middle of one crossing that it goes under to that of the next are two distances. */
    assert_near(spv_shape_area(strand), width * (2 * mesh * sin(slope) - 5 * width / 3) / sin(2 * slope),
                1e-6);
    inner++;
  }
  assert_true(inner >= 8);

  set(&pattern, "laces", SPV_UNIT_PLAIN, 1);
  assert_near(shown(&pattern, 0, panel), whole * (2 * part - part * part), 1e-6);
}

static void
laces_of_no_width_and_of_too_much(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(10, 10);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_FRETTY);

  (void) state;
  set(&pattern, "width", SPV_UNIT_MM, 0);
  assert_near(shown(&pattern, 0, panel), 0, 0);
  set(&pattern, "width", SPV_UNIT_MM, 300);
  assert_true(shown(&pattern, 0, panel) > 30);
  set(&pattern, "laces", SPV_UNIT_PLAIN, 1);
  assert_near(shown(&pattern, 0, panel), 100, 1e-6);
}

/* Five courses of 2 mm on 11 by 10 mm, stones 4 mm wide: the first, third and fifth course have their two
 * upright joints 2 mm from the centre line, the second and fourth three, 0 and 4 mm from it. The outer
 * courses have one level joint each, the inner ones two. */
static void
joints_of_masonry(void **state) {
  g_autoptr(SpvOutline) panel = rectangle(11, 10);
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_MASONED);
  double j = 0.3;

  (void) state;
  set(&pattern, "joint", SPV_UNIT_MM, j);
  assert_near(shown(&pattern, 0, panel),
              4 * 11 * j + 2 * 2 * j * (2 - j / 2) + 2 * j * (2 - j) + 2 * 3 * j * (2 - j), 1e-7);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
  assert_int_equal(count_lines(draft, SPV_LINE_ROW), 4);
  assert_int_equal(count_lines(draft, SPV_LINE_COLUMN), 3 * 2 + 2 * 3);
  /* A joint over the middle of a stone. */
  assert_true(spv_path_contains(draft->area[0], spv_point(2, 1)));
  assert_false(spv_path_contains(draft->area[0], spv_point(0, 1)));
  assert_true(spv_path_contains(draft->area[0], spv_point(0, 3)));
  assert_false(spv_path_contains(draft->area[0], spv_point(2, 3)));

  set(&pattern, "joint", SPV_UNIT_MM, 0);
  assert_near(shown(&pattern, 0, panel), 0, 0);
}

/* A value that the spec allows, or none. */
static SpvMeasure
random_measure(const SpvMeasureSpec *spec, GRand *rand) {
  static const SpvMeasure none = { SPV_UNIT_AUTO, 0 };
  guint n = 0;

  if (g_rand_int_range(rand, 0, 3) == 0)
    return none;
  switch (spec->type) {
  case SPV_MEASURE_COUNT:
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_rand_int_range(rand, MAX((int) spec->min, 1), 14) };
  case SPV_MEASURE_ANGLE:
    return (SpvMeasure){ SPV_UNIT_DEGREES, g_rand_double_range(rand, spec->min, spec->max) };
  case SPV_MEASURE_CHOICE:
    while (spec->choices[n])
      n++;
    return (SpvMeasure){ SPV_UNIT_PLAIN, g_rand_int_range(rand, 0, (int) n) };
  case SPV_MEASURE_LENGTH:
    return (SpvMeasure){ SPV_UNIT_RELATIVE, g_rand_double_range(rand, spec->min < 0 ? -0.5 : 0.05, 0.5) };
  }
  return none;
}

static SpvOutline *
random_outline(GRand *rand) {
  SpvOutlineSpec spec;
  SpvOutlineFamily family = (SpvOutlineFamily) g_rand_int_range(rand, 0, SPV_N_OUTLINE_FAMILIES);
  double width = g_rand_double_range(rand, 3, 12);
  double height = family == SPV_OUTLINE_DISC ? width : g_rand_double_range(rand, 3, 12);

  spv_outline_spec_preset(family, width, height, &spec);
  return spv_outline_new(&spec);
}

static SpvShape *
cells_or_area(const SpvDraft *draft, int slot, const SpvOutline *outline) {
  return draft->cells[slot] ? spv_shape_clip_cells(spv_outline_shape(outline), draft->cells[slot])
                            : seen(draft, slot, outline);
}

static void
both_tinctures_share_the_panel_whatever_the_measures(void **state) {
  g_autoptr(GRand) rand = g_rand_new_with_seed(20);

  (void) state;
  for (int round = 0; round < 240; round++) {
    g_autoptr(SpvOutline) outline = random_outline(rand);
    SpvPattern pattern = { .kind = (SpvPatternKind) (SPV_PATTERN_PALY +
                                                     round % (SPV_PATTERN_FRETTY - SPV_PATTERN_PALY)) };
    const SpvPatternInfo *info = spv_pattern_info(pattern.kind);
    for (guint i = 0; i < info->n_measures; i++)
      pattern.measures[i] = random_measure(&info->measures[i], rand);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, outline);
    g_autoptr(SpvShape) first = cells_or_area(draft, 0, outline);
    g_autoptr(SpvShape) second = cells_or_area(draft, 1, outline);
    g_autoptr(SpvShape) both = spv_shape_intersection(first, second);
    double whole = spv_shape_area(spv_outline_shape(outline));

    assert_near(spv_shape_area(both) / whole, 0, 1e-8);
    assert_near((spv_shape_area(first) + spv_shape_area(second)) / whole, 1, 1e-8);
    assert_true((draft->cells[0] != NULL) == (draft->cells[1] != NULL));
  }
}

static gsize
n_steps(const SpvDraft *draft) {
  gsize all = 0;
  for (int slot = 0; slot < SPV_PATTERN_SLOTS; slot++) {
    gsize n = 0;
    if (draft->area[slot])
      spv_path_steps(draft->area[slot], &n);
    all += n;
  }
  return all;
}

/* KIND with as many and as fine parts as its measures allow, at the least or the greatest angle. */
static SpvPattern
absurd(SpvPatternKind kind, gboolean greatest) {
  SpvPattern pattern = spv_pattern_preset(kind);
  const SpvPatternInfo *info = spv_pattern_info(kind);

  for (guint i = 0; i < info->n_measures; i++) {
    const SpvMeasureSpec *spec = &info->measures[i];
    if (spec->type == SPV_MEASURE_COUNT && g_strcmp0(spec->key, "periods") != 0)
      pattern.measures[i] = (SpvMeasure){ SPV_UNIT_PLAIN, SPV_PATTERN_MAX_COUNT };
    if (spec->type == SPV_MEASURE_ANGLE)
      pattern.measures[i] = (SpvMeasure){ SPV_UNIT_DEGREES, greatest ? spec->max : spec->min };
    if (spec->type == SPV_MEASURE_LENGTH && spec->min >= 0)
      pattern.measures[i] = (SpvMeasure){ SPV_UNIT_MM, MAX(spec->min, 0.05) };
  }
  if (spv_pattern_measure_index(kind, "line") >= 0)
    set(&pattern, "line", SPV_UNIT_PLAIN, SPV_PROFILE_INDENTED);
  return pattern;
}

/* On the largest, the longest and the narrowest panels that there are. */
static void
absurd_measures_are_bounded(void **state) {
  static const double sizes[][2] = { { 500, 500 }, { 500, 0.5 }, { 0.5, 500 } };

  (void) state;
  for (int size = 0; size < (int) G_N_ELEMENTS(sizes); size++) {
    g_autoptr(SpvOutline) panel = rectangle(sizes[size][0], sizes[size][1]);
    for (int kind = SPV_PATTERN_PALY; kind <= SPV_PATTERN_MASONED; kind++) {
      SpvPattern pattern = absurd((SpvPatternKind) kind, (kind + size) & 1);
      g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
      assert_true(n_steps(draft) > 0);
      assert_true(n_steps(draft) < 500000);
    }
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(bars_and_pales_crossed_by_bends_make_parallelograms),
    cmocka_unit_test(lozengy_is_half_and_half),
    cmocka_unit_test(lozenges_lie_in_rows_of_one_tincture),
    cmocka_unit_test(a_fusil_is_steeper_than_a_lozenge),
    cmocka_unit_test(laces_go_over_and_under),
    cmocka_unit_test(laces_of_no_width_and_of_too_much),
    cmocka_unit_test(joints_of_masonry),
    cmocka_unit_test(both_tinctures_share_the_panel_whatever_the_measures),
    cmocka_unit_test(absurd_measures_are_bounded),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
