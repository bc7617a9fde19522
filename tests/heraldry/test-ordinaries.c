/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ordinaries: the handbooks' widths, areas by closed formulas, counts, symmetry, and what is laid on them. */
#include "measured.h"

/* How wide one of KIND is across its frame, measured in the area that it paints. */
static double
width_of(SpvPatternKind kind, gboolean charged) {
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);
  SpvPattern pattern = one_of(kind, charged);
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, outline);
  SpvPoint at, across;

  assert_non_null(draft->frame);
  if (draft->frame->spines) {
    const SpvTrack *spine = g_ptr_array_index(draft->frame->spines, 0);
    double along = 0.7 * spv_track_length(spine);
    at = spv_track_at(spine, along);
    across = spv_point_add(at, spv_track_normal(spine, along));
  } else {
    double w = spv_outline_width(draft->frame->outline), h = spv_outline_height(draft->frame->outline);
    at = spv_point(0, h / 2);
    across = w < h ? spv_point(1, h / 2) : spv_point(0, h / 2 + 1);
  }
  at = spv_transform_point(draft->frame->place, at);
  across = spv_point_subtract(spv_transform_point(draft->frame->place, across), at);
  assert_true(spv_path_contains(draft->area[0], at));
  return reach_from(draft->area[0], at, across) + reach_from(draft->area[0], at, spv_point_scale(across, -1));
}

/* How far a chief comes down, of the panel's height. */
static double
depth_of_chief(void) {
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);
  SpvPattern chief = spv_pattern_preset(SPV_PATTERN_CHIEF);

  return share_shown(&chief, outline);
}

static double
area_of(SpvPatternKind kind) {
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);
  SpvPattern pattern = one_of(kind, FALSE);

  return share_shown(&pattern, outline);
}

/* What each row of the reference is called here, and what it is a part of. */
typedef struct {
  const char *term, *of;
  SpvPatternKind kind;
  double basis; /* mm; 0: as wide as OTHER; below 0: an area */
  SpvPatternKind other;
} Proportion;

static const Proportion proportions[] = {
  { "fillet", "depth of chief", SPV_PATTERN_FILLET, HIGH / 3, SPV_PATTERN_CHIEF },
  { "pale", "width of field", SPV_PATTERN_PALE, WIDE, 0 },
  { "pale", "width", SPV_PATTERN_PALE, WIDE, 0 },
  { "pallet", "width of pale", SPV_PATTERN_PALLET, 0, SPV_PATTERN_PALE },
  { "endorse", "width of pale", SPV_PATTERN_ENDORSE, 0, SPV_PATTERN_PALE },
  { "fess", "depth of field", SPV_PATTERN_FESS, HIGH, 0 },
  { "fess", "depth", SPV_PATTERN_FESS, HIGH, 0 },
  { "bar", "depth", SPV_PATTERN_BAR, HIGH, 0 },
  { "closet", "depth of bar", SPV_PATTERN_CLOSET, 0, SPV_PATTERN_BAR },
  { "barrulet", "depth of bar", SPV_PATTERN_BARRULET, 0, SPV_PATTERN_BAR },
  { "bend", "width", SPV_PATTERN_BEND, WIDE, 0 },
  { "bend", "width", SPV_PATTERN_BEND_SINISTER, WIDE, 0 },
  { "bend", "breadth", SPV_PATTERN_BEND, WIDE, 0 },
  { "bendlet", "width of bend", SPV_PATTERN_BENDLET, 0, SPV_PATTERN_BEND },
  { "cottise", "width of bendlet", SPV_PATTERN_COTISE, 0, SPV_PATTERN_BENDLET },
  { "cottise", "width of bend", SPV_PATTERN_COTISE, 0, SPV_PATTERN_BEND },
  { "baton", "width of bend", SPV_PATTERN_BATON, 0, SPV_PATTERN_BEND },
  { "scarpe", "width of bend sinister", SPV_PATTERN_SCARPE, 0, SPV_PATTERN_BEND_SINISTER },
  { "chevron", "breadth", SPV_PATTERN_CHEVRON, WIDE, 0 },
  { "chevron", "limb width", SPV_PATTERN_CHEVRON, WIDE, 0 },
  { "chevronel", "width of chevron", SPV_PATTERN_CHEVRONEL, 0, SPV_PATTERN_CHEVRON },
  { "couple-close", "width of chevron", SPV_PATTERN_COUPLE_CLOSE, 0, SPV_PATTERN_CHEVRON },
  { "cross", "limb width", SPV_PATTERN_CROSS, WIDE, 0 },
  { "saltire", "limb width", SPV_PATTERN_SALTIRE, WIDE, 0 },
  { "orle", "width of bordure", SPV_PATTERN_ORLE, 0, SPV_PATTERN_BORDURE },
  { "quarter", "area of field", SPV_PATTERN_QUARTER, -1, 0 },
  { "canton", "area of chief", SPV_PATTERN_CANTON, -1, 0 },
  { "bordure", "width", SPV_PATTERN_BORDURE, -1, 0 },
};

static double
proportion_of(const Proportion *row, gboolean charged) {
  if (row->basis < 0)
    return area_of(row->kind);
  /* A bordure's own outer edge lies beyond the panel, so its width is what its frame says. */
  if (row->other == SPV_PATTERN_BORDURE) {
    g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);
    SpvPattern bordure = spv_pattern_preset(SPV_PATTERN_BORDURE);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&bordure, outline);
    return width_of(row->kind, charged) / draft->frame->breadth;
  }
  return width_of(row->kind, charged) / (row->basis > 0 ? row->basis : width_of(row->other, FALSE));
}

/* tests/reference/heraldry_proportions.csv: every row, by the handbook that it names; four decimals. */
static void
ordinaries_are_as_wide_as_in_the_handbooks(void **state) {
  const char *root = g_getenv("SPV_TEST_SOURCE_DIR");
  g_autofree char *path = g_build_filename(root ? root : ".", "tests", "reference",
                                           "heraldry_proportions.csv", NULL);
  g_autofree char *text = NULL;
  guint n_rows = 0;

  (void) state;
  assert_true(g_file_get_contents(path, &text, NULL, NULL));
  g_auto(GStrv) rows = g_strsplit(text, "\n", -1);
  for (guint i = 1; rows[i] && rows[i][0]; i++, n_rows++) {
    g_auto(GStrv) field = g_strsplit(rows[i], ",", -1);
    double expected = g_ascii_strtod(field[3], NULL), found = NAN;
    gboolean charged = g_str_equal(field[4], "charged"), is_known = FALSE;

    if (g_str_equal(field[0], "chief") || g_str_equal(field[0], "inescutcheon")) {
      is_known = TRUE;
      found = g_str_equal(field[0], "chief") ? depth_of_chief() : sqrt(area_of(SPV_PATTERN_INESCUTCHEON));
      assert_near(found, expected, 5.1e-5);
    }
    for (gsize k = 0; k < G_N_ELEMENTS(proportions); k++) {
      if (!g_str_equal(field[0], proportions[k].term) || !g_str_equal(field[1], proportions[k].of))
        continue;
      is_known = TRUE;
      found = proportion_of(&proportions[k], charged);
      if (!(fabs(found - expected) <= 5.1e-5))
        fail_msg("%s: %g", rows[i], found);
    }
    if (!is_known)
      fail_msg("nobody tests %s", rows[i]);
  }
  assert_int_equal(n_rows, 50);
}

/* A band of width w along the diagonal of a unit square leaves two right triangles whose height is 1/√2 − w/2
 * and whose area is its square; two bands share a square of w by w. Plane geometry; 0.262843 and 0.485685 for
 * w = 1/5. */
static void
bends_and_saltires_of_a_square(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  static const SpvPatternKind bends[] = { SPV_PATTERN_BEND, SPV_PATTERN_BEND_SINISTER };

  (void) state;
  for (int charged = 0; charged < 2; charged++) {
    double w = charged ? 1.0 / 3 : 1.0 / 5, bend = 1 - pow(1 - w / sqrt(2), 2);
    for (gsize i = 0; i < G_N_ELEMENTS(bends); i++) {
      SpvPattern pattern = one_of(bends[i], charged);
      assert_near(share_shown(&pattern, square), bend, 1e-9);
    }
    SpvPattern saltire = one_of(SPV_PATTERN_SALTIRE, charged), cross = one_of(SPV_PATTERN_CROSS, charged);
    assert_near(share_shown(&saltire, square), 2 * bend - w * w, 1e-9);
    assert_near(share_shown(&cross, square), 2 * w - w * w, 1e-9);
  }
  SpvPattern plain = one_of(SPV_PATTERN_BEND, FALSE), saltire = one_of(SPV_PATTERN_SALTIRE, FALSE);
  assert_near(share_shown(&plain, square), 0.262843, 1e-6);
  assert_near(share_shown(&saltire, square), 0.485685, 1e-6);
}

/* Plane geometry, on a rectangle of 30 by 24. */
static void
areas_by_closed_formulas(void **state) {
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);
  SpvPattern cross = one_of(SPV_PATTERN_CROSS, FALSE), pile = one_of(SPV_PATTERN_PILE, FALSE);
  SpvPattern baton = spv_pattern_preset(SPV_PATTERN_BATON), gyron = spv_pattern_preset(SPV_PATTERN_GYRON);
  SpvPattern canton = one_of(SPV_PATTERN_CANTON, TRUE), label = spv_pattern_preset(SPV_PATTERN_LABEL);
  double w = WIDE / 5;

  (void) state;
  assert_near(area_of(SPV_PATTERN_FESS), 1.0 / 3, 1e-9);
  assert_near(area_of(SPV_PATTERN_PALE), 1.0 / 3, 1e-9);
  assert_near(area_of(SPV_PATTERN_CHIEF), 1.0 / 3, 1e-9);
  assert_near(area_of(SPV_PATTERN_FILLET), 1.0 / 12, 1e-9);
  assert_near(area_of(SPV_PATTERN_QUARTER), 1.0 / 4, 1e-9);
  assert_near(area_of(SPV_PATTERN_CANTON), 1.0 / 9, 1e-9);
  /* Boutell, ch. VII: a charged canton is three quarters of a quarter. */
  assert_near(share_shown(&canton, outline), 3.0 / 16, 1e-9);
  assert_near(shown(&cross, outline), w * WIDE + w * HIGH - w * w, 1e-6);
  /* A triangle, nine tenths of the top edge wide and 0.85 of the height long. */
  assert_near(share_shown(&pile, outline), 0.9 * 0.85 / 2, 1e-9);
  assert_near(shown(&baton, outline), WIDE / 20 * 0.7 * HIGH, 1e-6);
  /* Half a quarter. */
  assert_near(share_shown(&gyron, outline), 1.0 / 8, 1e-9);
  /* A strap from side to side, and three points below it. */
  assert_near(shown(&label, outline), 0.07 * WIDE * (WIDE + 3 * (0.2 * HIGH - 0.07 * WIDE)), 1e-6);
  set(&label, "length", SPV_UNIT_MM, 12);
  assert_near(shown(&label, outline), 0.07 * WIDE * (12 + 3 * (0.2 * HIGH - 0.07 * WIDE)), 1e-6);
}

/* A right-angled chevron on a square of side 10 with its point in the middle: under its upper edge lies a
 * quarter of the square; under the lower one, w√2 lower, a triangle as high as wide to either side. Plane
 * geometry. */
static void
a_chevron_on_a_square(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern chevron = one_of(SPV_PATTERN_CHEVRON, FALSE);
  double under = 5 - 2 * sqrt(2);

  (void) state;
  assert_near(shown(&chevron, square), 25 - under * under, 1e-7);
}

/* Two parallel bands, each between two distances from the diagonal; a corner cut off at d from it is a
 * triangle of area (10/√2 − d)². Plane geometry. */
static void
cotises_leave_room_for_a_bend(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  SpvPattern cotises = spv_pattern_preset(SPV_PATTERN_COTISE), bend = one_of(SPV_PATTERN_BEND, FALSE);
  double corner = 10 / sqrt(2);
  g_autoptr(SpvShape) pair = shown_shape(&cotises, square), middle = shown_shape(&bend, square);
  g_autoptr(SpvShape) both = spv_shape_intersection(pair, middle);
  gsize n;

  (void) state;
  assert_near(spv_shape_area(pair), 2 * (pow(corner - 1.5, 2) - pow(corner - 2, 2)), 1e-7);
  spv_shape_pieces(pair, &n);
  assert_int_equal(n, 2);
  assert_true(spv_shape_is_empty(both));
}

/* tests/reference/segments.csv: Machinery's Handbook, 31st ed., p. 83; five decimals. A flaunch is a segment
 * whose chord is the panel's side. */
static void
flaunches_are_segments_of_a_circle(void **state) {
  const char *root = g_getenv("SPV_TEST_SOURCE_DIR");
  g_autofree char *path = g_build_filename(root ? root : ".", "tests", "reference", "segments.csv", NULL);
  g_autofree char *text = NULL;
  guint n_tested = 0;

  (void) state;
  assert_true(g_file_get_contents(path, &text, NULL, NULL));
  g_auto(GStrv) rows = g_strsplit(text, "\n", -1);
  for (guint i = 1; rows[i] && rows[i][0]; i++) {
    g_auto(GStrv) field = g_strsplit(rows[i], ",", -1);
    double radius = 10, angle = g_ascii_strtod(field[0], NULL), area = g_ascii_strtod(field[4], NULL);
    if (angle < 30)
      continue;
    g_autoptr(SpvOutline) outline = rectangle(40, g_ascii_strtod(field[3], NULL) * radius);
    SpvPattern flaunches = spv_pattern_preset(SPV_PATTERN_FLAUNCHES);
    set(&flaunches, "width", SPV_UNIT_MM, g_ascii_strtod(field[2], NULL) * radius);
    /* Five decimals, and the sagitta of the chords that stand for the arc: two thirds of it along the arc. */
    double arc = g_ascii_strtod(field[1], NULL) * radius;
    assert_near(shown(&flaunches, outline), 2 * area * radius * radius,
                4 / 3.0 * SPV_CHORD_ERROR * arc + 2e-3);
    n_tested++;
  }
  assert_int_equal(n_tested, 11);
}

/* Fox-Davies (1909) p. 120: five, seven and nine level pieces are two, three and four bars. */
static void
bars_share_the_field_evenly(void **state) {
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);

  (void) state;
  for (guint n = 2; n <= 4; n++) {
    SpvPattern bars = spv_pattern_preset(SPV_PATTERN_BAR);
    set(&bars, "number", SPV_UNIT_PLAIN, n);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&bars, outline);
    for (guint i = 0; i < 2 * n + 1; i++)
      assert_int_equal(spv_path_contains(draft->area[0], spv_point(3, HIGH * (i + 0.5) / (2 * n + 1))),
                       i % 2);
    assert_near(share_shown(&bars, outline), n / (2.0 * n + 1), 1e-9);
  }
}

/* As many pieces as asked for, and as far apart. */
static void
there_are_as_many_as_asked(void **state) {
  static const SpvPatternKind kinds[] = {
    SPV_PATTERN_FESS,      SPV_PATTERN_BAR,         SPV_PATTERN_CLOSET,        SPV_PATTERN_BARRULET,
    SPV_PATTERN_PALE,      SPV_PATTERN_PALLET,      SPV_PATTERN_ENDORSE,       SPV_PATTERN_BEND,
    SPV_PATTERN_BENDLET,   SPV_PATTERN_SCARPE,      SPV_PATTERN_BEND_SINISTER, SPV_PATTERN_CHEVRON,
    SPV_PATTERN_CHEVRONEL, SPV_PATTERN_COUPLE_CLOSE
  };
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);

  (void) state;
  for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++)
    for (guint number = 1; number <= 4; number++) {
      SpvPattern pattern = spv_pattern_preset(kinds[k]);
      gsize n;
      set(&pattern, "number", SPV_UNIT_PLAIN, number);
      g_autoptr(SpvShape) shape = shown_shape(&pattern, outline);
      spv_shape_pieces(shape, &n);
      if (n != number)
        fail_msg("%u of %s are %zu", number, spv_pattern_info(kinds[k])->key, n);
      g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, outline);
      assert_non_null(draft->frame);
      if (number > 1)
        assert_int_equal(draft->frame->spines->len, number);
    }
  SpvPattern gemels = spv_pattern_preset(SPV_PATTERN_BAR_GEMEL);
  set(&gemels, "number", SPV_UNIT_PLAIN, 3);
  g_autoptr(SpvShape) pairs = shown_shape(&gemels, outline);
  gsize n;
  spv_shape_pieces(pairs, &n);
  assert_int_equal(n, 6);

  SpvPattern bars = spv_pattern_preset(SPV_PATTERN_BAR);
  set(&bars, "width", SPV_UNIT_MM, 2);
  set(&bars, "apart", SPV_UNIT_MM, 3);
  g_autoptr(SpvShape) two = shown_shape(&bars, outline);
  SpvBox box = spv_shape_bounds(two);
  assert_near(box.y0, HIGH / 2 - 3.5, 1e-9);
  assert_near(box.y1, HIGH / 2 + 3.5, 1e-9);
}

/* Several piles stand side by side with their points in base: Fox-Davies p. 124. */
static void
piles_stand_side_by_side(void **state) {
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);
  SpvPattern piles = spv_pattern_preset(SPV_PATTERN_PILE);
  gsize n;

  (void) state;
  set(&piles, "number", SPV_UNIT_PLAIN, 3);
  g_autoptr(SpvShape) shape = shown_shape(&piles, outline);
  spv_shape_pieces(shape, &n);
  assert_int_equal(n, 3);
  assert_near(spv_shape_area(shape), WIDE * HIGH * 0.9 * 0.85 / 2, 1e-6);
  assert_near(spv_shape_bounds(shape).y1, 0.85 * HIGH, 1e-9);
}

/* An ordinary that a handbook draws alike on both sides is its own mirror image; the others are each other's.
 */
static void
ordinaries_are_symmetrical(void **state) {
  static const SpvPatternKind kinds[] = {
    SPV_PATTERN_CHIEF,        SPV_PATTERN_FILLET,    SPV_PATTERN_FESS,         SPV_PATTERN_BAR,
    SPV_PATTERN_CLOSET,       SPV_PATTERN_BARRULET,  SPV_PATTERN_BAR_GEMEL,    SPV_PATTERN_PALE,
    SPV_PATTERN_PALLET,       SPV_PATTERN_ENDORSE,   SPV_PATTERN_CHEVRON,      SPV_PATTERN_CHEVRONEL,
    SPV_PATTERN_COUPLE_CLOSE, SPV_PATTERN_CROSS,     SPV_PATTERN_SALTIRE,      SPV_PATTERN_PILE,
    SPV_PATTERN_PALL,         SPV_PATTERN_FLAUNCHES, SPV_PATTERN_INESCUTCHEON, SPV_PATTERN_LABEL
  };
  static const SpvPatternKind pairs[][2] = { { SPV_PATTERN_BEND, SPV_PATTERN_BEND_SINISTER } };

  (void) state;
  for (int f = 0; f < SPV_N_OUTLINE_FAMILIES; f++) {
    g_autoptr(SpvOutline) outline = panel_of((SpvOutlineFamily) f, 12, 15);
    double whole = spv_shape_area(spv_outline_shape(outline));
    for (gsize k = 0; k < G_N_ELEMENTS(kinds) + G_N_ELEMENTS(pairs); k++) {
      gboolean is_pair = k >= G_N_ELEMENTS(kinds);
      SpvPattern one = spv_pattern_preset(is_pair ? pairs[k - G_N_ELEMENTS(kinds)][0] : kinds[k]);
      SpvPattern other = spv_pattern_preset(is_pair ? pairs[k - G_N_ELEMENTS(kinds)][1] : kinds[k]);
      other.mirrored = TRUE;
      g_autoptr(SpvShape) a = shown_shape(&one, outline), b = shown_shape(&other, outline);
      assert_false(spv_shape_is_empty(a));
      /* The outline's two sides are flattened each for itself. */
      if (difference_of(a, b) > 1e-4 * whole)
        fail_msg("%s on family %d: %g mm² off", spv_pattern_info(one.kind)->key, f, difference_of(a, b));
    }
  }
}

/* Dexter is the viewer's left (Fox-Davies p. 104; Boutell ch. IV), and a bend falls from dexter chief. */
static void
each_stands_where_it_belongs(void **state) {
  g_autoptr(SpvOutline) square = rectangle(10, 10);
  static const struct {
    SpvPatternKind kind;
    SpvPoint in, out;
  } places[] = {
    { SPV_PATTERN_CHIEF, { 0, 3 }, { 0, 4 } },
    { SPV_PATTERN_FESS, { 4, 5 }, { 0, 3 } },
    { SPV_PATTERN_PALE, { 0, 9 }, { 2, 5 } },
    { SPV_PATTERN_BEND, { -4, 1 }, { 4, 1 } },
    { SPV_PATTERN_BEND_SINISTER, { 4, 1 }, { -4, 1 } },
    { SPV_PATTERN_SCARPE, { -4, 9 }, { 4, 9 } },
    { SPV_PATTERN_BATON, { -2, 3 }, { -4, 1 } },
    { SPV_PATTERN_CHEVRON, { 0, 6 }, { 0, 4 } },
    { SPV_PATTERN_PALL, { -4, 1 }, { 0, 1 } },
    { SPV_PATTERN_PALL, { 0, 9 }, { -4, 9 } },
    { SPV_PATTERN_QUARTER, { -1, 4 }, { 1, 1 } },
    { SPV_PATTERN_CANTON, { -2, 3 }, { 0, 1 } },
    { SPV_PATTERN_GYRON, { -4, 4 }, { -1, 1 } },
    { SPV_PATTERN_FLAUNCHES, { 4, 5 }, { 0, 5 } },
    { SPV_PATTERN_INESCUTCHEON, { 0.9, 5 }, { 1.1, 5 } },
    { SPV_PATTERN_LABEL, { 4.5, 1.5 }, { 4.9, 2.5 } },
    { SPV_PATTERN_FILLET, { 0, 3 }, { 0, 2 } },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(places); i++) {
    SpvPattern pattern = one_of(SPV_PATTERN_CHIEF, FALSE);
    pattern = places[i].kind == SPV_PATTERN_SCARPE ? spv_pattern_preset(places[i].kind)
                                                   : one_of(places[i].kind, FALSE);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, square);
    if (!spv_path_contains(draft->area[0], places[i].in) || spv_path_contains(draft->area[0], places[i].out))
      fail_msg("%s, place %zu", spv_pattern_info(places[i].kind)->key, i);
  }
}

/* A frame is the band itself: as long as it shows, as wide, and turned with it. */
static void
a_band_bears_its_own_frame(void **state) {
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);
  SpvPattern fess = one_of(SPV_PATTERN_FESS, FALSE), bend = one_of(SPV_PATTERN_BEND, FALSE);
  SpvPattern pale = one_of(SPV_PATTERN_PALE, FALSE), cross = one_of(SPV_PATTERN_CROSS, FALSE);
  SpvPattern chevron = one_of(SPV_PATTERN_CHEVRON, FALSE);
  g_autoptr(SpvDraft) level = spv_pattern_lay(&fess, outline), slant = spv_pattern_lay(&bend, outline);
  g_autoptr(SpvDraft) upright = spv_pattern_lay(&pale, outline), limbs = spv_pattern_lay(&cross, outline);
  g_autoptr(SpvDraft) bent = spv_pattern_lay(&chevron, outline);
  SpvPoint at = spv_transform_point(level->frame->place, spv_point(0, 0));

  (void) state;
  assert_near(at.x, 0, 1e-9);
  assert_near(at.y, HIGH / 3, 1e-9);
  assert_near(spv_outline_width(level->frame->outline), WIDE, 1e-9);
  assert_near(spv_outline_height(level->frame->outline), HIGH / 3, 1e-9);

  at = spv_transform_point(upright->frame->place, spv_point(0, 1));
  assert_near(at.x, 0, 1e-9);
  assert_near(at.y, 1, 1e-9);
  assert_near(spv_outline_width(upright->frame->outline), WIDE / 3, 1e-9);
  assert_near(upright->frame->breadth, WIDE / 3, 1e-9);

  /* The diagonal, corner to corner. */
  assert_near(spv_outline_width(slant->frame->outline), hypot(WIDE, HIGH), 1e-9);
  assert_near(spv_outline_height(slant->frame->outline), WIDE / 5, 1e-9);
  at = spv_transform_point(slant->frame->place, spv_point(0, WIDE / 10));
  assert_near(at.x, 0, 1e-9);
  assert_near(at.y, HIGH / 2, 1e-9);
  at = spv_transform_point(slant->frame->place, spv_point(hypot(WIDE, HIGH) / 2, WIDE / 10));
  assert_near(at.x, WIDE / 2, 1e-9);
  assert_near(at.y, HIGH, 1e-9);

  assert_int_equal(limbs->frame->spines->len, 4);
  for (guint i = 0; i < 4; i++)
    assert_near(spv_track_length(g_ptr_array_index(limbs->frame->spines, i)), i % 2 ? WIDE / 2 : HIGH / 2,
                1e-9);
  assert_int_equal(bent->frame->spines->len, 1);
  at = spv_track_at(g_ptr_array_index(bent->frame->spines, 0),
                    spv_track_length(g_ptr_array_index(bent->frame->spines, 0)) / 2);
  assert_near(at.x, 0, 1e-9);
  assert_near(at.y, HIGH / 2 + WIDE / 10 * sqrt(2), 1e-9);
}

/* No width, none at all. */
static void
no_width_shows_nothing(void **state) {
  g_autoptr(SpvOutline) outline = rectangle(WIDE, HIGH);

  (void) state;
  for (int kind = SPV_PATTERN_CHIEF; kind <= SPV_PATTERN_LABEL; kind++) {
    SpvPattern pattern = spv_pattern_preset((SpvPatternKind) kind);
    const char *key = kind == SPV_PATTERN_CHIEF ? "depth" : "width";
    if (kind == SPV_PATTERN_GYRON)
      continue;
    set(&pattern, key, SPV_UNIT_MM, 0);
    assert_near(shown(&pattern, outline), 0, 0);
    g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, outline);
    assert_null(draft->frame);
  }
}

static void
no_measures_bring_it_down(void **state) {
  (void) state;
  lay_at_random(SPV_PATTERN_CHIEF, SPV_PATTERN_LABEL, 80);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(ordinaries_are_as_wide_as_in_the_handbooks),
    cmocka_unit_test(bends_and_saltires_of_a_square),
    cmocka_unit_test(areas_by_closed_formulas),
    cmocka_unit_test(a_chevron_on_a_square),
    cmocka_unit_test(cotises_leave_room_for_a_bend),
    cmocka_unit_test(flaunches_are_segments_of_a_circle),
    cmocka_unit_test(bars_share_the_field_evenly),
    cmocka_unit_test(there_are_as_many_as_asked),
    cmocka_unit_test(piles_stand_side_by_side),
    cmocka_unit_test(ordinaries_are_symmetrical),
    cmocka_unit_test(each_stands_where_it_belongs),
    cmocka_unit_test(a_band_bears_its_own_frame),
    cmocka_unit_test(no_width_shows_nothing),
    cmocka_unit_test(no_measures_bring_it_down),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
