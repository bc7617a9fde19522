/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words: their outlines, their height and width, and what they stand on. */
#include <glib.h>
#include <string.h>

#include "support/near.h"

#include "heraldry/lettering.h"

#define FONT "DejaVu Sans Bold"

static SpvOutline *
outline_of(SpvOutlineFamily family, double width, double height) {
  SpvOutlineSpec spec;
  spv_outline_spec_preset(family, width, height, &spec);
  return spv_outline_new(&spec);
}

static void
set(SpvPattern *pattern, guint index, SpvUnit unit, double value) {
  pattern->measures[index] = (SpvMeasure){ unit, value };
}

static SpvPattern
words(const char *text, int baseline) {
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_LETTERING);
  pattern.texts[SPV_LETTERING_TEXT] = text;
  pattern.texts[SPV_LETTERING_FONT] = FONT;
  set(&pattern, SPV_LETTERING_BASELINE, SPV_UNIT_PLAIN, baseline);
  return pattern;
}

static SpvPath *
laid(const SpvPattern *pattern, const SpvOutline *outline) {
  g_autoptr(SpvDraft) draft = spv_pattern_lay(pattern, outline);
  return spv_path_ref(draft->area[0]);
}

static SpvShape *
shape_of(const SpvPattern *pattern, const SpvOutline *outline) {
  g_autoptr(SpvPath) path = laid(pattern, outline);
  return spv_shape_new_from_path(path);
}

static double
area_of(const SpvPath *path) {
  g_autoptr(SpvShape) shape = spv_shape_new_from_path(path);
  return spv_shape_area(shape);
}

/* The rules of the numerals; the years are those that cathedrals and films show (from memory). */
static void
roman_numerals(void **state) {
  static const struct {
    guint number;
    const char *text;
  } rows[] = { { 1, "I" },
               { 3, "III" },
               { 4, "IV" },
               { 9, "IX" },
               { 14, "XIV" },
               { 40, "XL" },
               { 90, "XC" },
               { 400, "CD" },
               { 900, "CM" },
               { 1999, "MCMXCIX" },
               { 2024, "MMXXIV" },
               { 1776, "MDCCLXXVI" },
               { 3888, "MMMDCCCLXXXVIII" },
               { 3999, "MMMCMXCIX" } };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autofree char *text = spv_lettering_roman(rows[i].number);
    assert_string_equal(text, rows[i].text);
  }
  /* And read back by adding, a smaller sign before a larger one taken off. */
  for (guint n = 1; n < 4000; n++) {
    g_autofree char *text = spv_lettering_roman(n);
    guint sum = 0, last = 0;
    for (gssize i = (gssize) strlen(text) - 1; i >= 0; i--) {
      static const char signs[] = "IVXLCDM";
      static const guint values[] = { 1, 5, 10, 50, 100, 500, 1000 };
      guint value = values[strchr(signs, text[i]) - signs];
      sum = value < last ? sum - value : sum + value;
      last = MAX(last, value);
    }
    assert_int_equal(sum, n);
  }
}

static void
texts_are_checked(void **state) {
  g_autofree char *most = g_strnfill(200, 'A'), *more = g_strnfill(201, 'A');
  static const char *const bad[] = { "", " ", "a\nb", "a\tb", "\x7f" };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(bad); i++) {
    g_autoptr(GError) error = NULL;
    assert_false(spv_lettering_text_check(bad[i], &error));
    assert_true(g_error_matches(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT));
  }
  assert_true(spv_lettering_text_check(most, NULL));
  assert_false(spv_lettering_text_check(more, NULL));
  assert_true(spv_lettering_text_check("Ælfgifu’s VII", NULL));
  assert_true(spv_lettering_font_check(FONT, NULL));
  assert_true(spv_lettering_font_check("No Such Family At All Italic", NULL));
  g_autoptr(GError) error = NULL;
  assert_false(spv_lettering_font_check("", &error));
  assert_true(g_error_matches(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT));
  assert_false(spv_lettering_font_check("Bold 12", NULL));
  assert_false(spv_lettering_font_is_installed("No Such Family At All"));
}

/* Capitals are exactly 1 high, wherever the words have them; a space is no letter but takes room. */
static void
letters(void **state) {
  g_autoptr(GArray) middles = g_array_new(FALSE, FALSE, sizeof(double));
  double advance, shorter;
  (void) state;
  g_autoptr(GPtrArray) all = spv_lettering_letters("HI H", FONT, middles, &advance);
  assert_int_equal(all->len, 3);
  assert_int_equal(middles->len, 3);
  for (guint i = 0; i < 3; i++) {
    SpvBox box = spv_path_bounds(g_ptr_array_index(all, i));
    double middle = g_array_index(middles, double, i);
    assert_near(box.y0, -1, 1e-4);
    assert_near(box.y1, 0, 1e-4);
    assert_near(spv_box_centre(box).x, middle, 0.03);
    assert_true(i == 0 || middle > g_array_index(middles, double, i - 1));
  }
  assert_true(g_array_index(middles, double, 2) < advance);
  g_autoptr(GPtrArray) tight = spv_lettering_letters("HIH", FONT, NULL, &shorter);
  assert_int_equal(tight->len, 3);
  assert_true(shorter < advance - 0.2);
  g_autoptr(GPtrArray) none = spv_lettering_letters(" ", FONT, NULL, &advance);
  assert_int_equal(none->len, 0);
}

/* An O is less than its outer edge, a B has two holes, an i is two pieces, and a letter in a ring stays. */
static void
holes_are_kept(void **state) {
  static const struct {
    const char *text;
    guint pieces, rings;
  } rows[] = {
    { "O", 1, 2 }, { "B", 1, 3 }, { "i", 2, 2 }, { "8", 1, 3 }, { "L", 1, 1 }, { "\xC2\xAE", 2, 4 }
  };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autoptr(GPtrArray) all = spv_lettering_letters(rows[i].text, FONT, NULL, NULL);
    g_autoptr(SpvShape) shape = spv_shape_new_from_path(g_ptr_array_index(all, 0));
    gsize n;
    const SpvPiece *pieces = spv_shape_pieces(shape, &n);
    guint n_rings = 0;
    for (gsize k = 0; k < n; k++)
      n_rings += (guint) pieces[k].n_rings;
    if (n != rows[i].pieces || n_rings != rows[i].rings)
      fail_msg("%s has %zu pieces and %u rings", rows[i].text, n, n_rings);
    if (i == 0)
      assert_true(spv_shape_area(shape) < 0.8 * spv_ring_area(pieces[0].rings[0]));
  }
}

static void
height_and_place(void **state) {
  g_autoptr(SpvOutline) panel = outline_of(SPV_OUTLINE_RECTANGLE, 30, 20);
  SpvPattern pattern = words("HEH", 0);
  (void) state;
  set(&pattern, SPV_LETTERING_HEIGHT, SPV_UNIT_MM, 3.5);
  set(&pattern, SPV_LETTERING_ACROSS, SPV_UNIT_MM, 2);
  set(&pattern, SPV_LETTERING_DOWN, SPV_UNIT_MM, 7);
  g_autoptr(SpvPath) path = laid(&pattern, panel);
  SpvBox box = spv_path_bounds(path);
  assert_near(spv_box_height(box), 3.5, 1e-3);
  assert_near(spv_box_centre(box).x, 2, 1e-3);
  assert_near(spv_box_centre(box).y, 7, 1e-3);
  /* The middle is that of the capitals, whatever hangs below. */
  SpvPattern low = pattern;
  low.texts[SPV_LETTERING_TEXT] = "HgH";
  g_autoptr(SpvPath) hanging = laid(&low, panel);
  assert_near(spv_path_bounds(hanging).y0, 7 - 1.75, 1e-3);
  assert_true(spv_path_bounds(hanging).y1 > 7 + 1.75 + 0.4);
  /* A quarter turn swaps the sides of the box. */
  set(&pattern, SPV_LETTERING_TURN, SPV_UNIT_DEGREES, 90);
  g_autoptr(SpvPath) turned = laid(&pattern, panel);
  assert_near(spv_box_width(spv_path_bounds(turned)), 3.5, 1e-3);
  assert_near(spv_box_height(spv_path_bounds(turned)), spv_box_width(box), 1e-3);
}

/* The width is what the words may become: they fill it, unless a height says less. */
static void
width_fits(void **state) {
  g_autoptr(SpvOutline) panel = outline_of(SPV_OUTLINE_RECTANGLE, 30, 20);
  SpvPattern pattern = words("HERON", 0);
  (void) state;
  set(&pattern, SPV_LETTERING_WIDTH, SPV_UNIT_MM, 12);
  g_autoptr(SpvPath) filled = laid(&pattern, panel);
  assert_near(spv_box_width(spv_path_bounds(filled)), 12, 0.01);
  set(&pattern, SPV_LETTERING_HEIGHT, SPV_UNIT_MM, 1);
  g_autoptr(SpvPath) small = laid(&pattern, panel);
  assert_true(spv_box_width(spv_path_bounds(small)) < 6);
  set(&pattern, SPV_LETTERING_HEIGHT, SPV_UNIT_MM, 15);
  g_autoptr(SpvPath) large = laid(&pattern, panel);
  assert_near(spv_box_width(spv_path_bounds(large)), 12, 0.01);
  set(&pattern, SPV_LETTERING_HEIGHT, SPV_UNIT_MM, 0);
  g_autoptr(SpvPath) none = laid(&pattern, panel);
  assert_true(spv_path_is_empty(none));
}

/* On every panel, on every baseline, words without a height lie within the outline and can be seen. */
static void
defaults_fit_every_panel(void **state) {
  static const char *const texts[] = { "VII", "8", "HERON GUILD", "Quay" };
  (void) state;
  for (int family = 0; family < SPV_N_OUTLINE_FAMILIES; family++) {
    g_autoptr(SpvOutline)
        panel = outline_of((SpvOutlineFamily) family, 14, family == SPV_OUTLINE_DISC ? 14 : 18);
    for (int baseline = 0; baseline < 6; baseline++)
      for (guint i = 0; i < G_N_ELEMENTS(texts); i++) {
        SpvPattern pattern = words(texts[i], baseline);
        g_autoptr(SpvShape) shape = shape_of(&pattern, panel);
        g_autoptr(SpvShape) inside = spv_shape_intersection(shape, spv_outline_shape(panel));
        double area = spv_shape_area(shape);
        if (!(area > 0.3))
          fail_msg("“%s” on baseline %d of a %s is a speck: %g", texts[i], baseline,
                   spv_outline_info((SpvOutlineFamily) family)->key, area);
        if (spv_shape_area(inside) < area * (1 - 1e-6))
          fail_msg("“%s” on baseline %d of a %s is cut: %g of %g", texts[i], baseline,
                   spv_outline_info((SpvOutlineFamily) family)->key, spv_shape_area(inside), area);
      }
  }
}

/* The middles of letters on an arc lie on one circle (those of I, a plain bar in this font, at half its
 * height), and the bow is how much of it they take up. */
static void
arcs_are_round(void **state) {
  g_autoptr(SpvOutline) panel = outline_of(SPV_OUTLINE_DISC, 40, 40);
  (void) state;
  for (int way = -1; way <= 1; way += 2) {
    SpvPattern pattern = words("IIIIIII", 1);
    set(&pattern, SPV_LETTERING_BOW, SPV_UNIT_DEGREES, way * 140);
    set(&pattern, SPV_LETTERING_HEIGHT, SPV_UNIT_MM, 2);
    g_autoptr(SpvShape) shape = shape_of(&pattern, panel);
    gsize n;
    const SpvPiece *pieces = spv_shape_pieces(shape, &n);
    double advance;
    g_autoptr(GPtrArray) row = spv_lettering_letters("IIIIIII", FONT, NULL, &advance);
    /* Of the feet; of the tops where the arc hangs down. */
    double radius = 2 * advance / (140 * G_PI / 180);
    assert_int_equal(n, 7);
    /* The circle's middle lies under the middle letter's, whose own lies at half its height above its foot.
     */
    SpvPoint middle = { 0, NAN };
    for (gsize i = 0; i < n; i++) {
      SpvBox box = spv_ring_bounds(pieces[i].rings[0]);
      if (fabs(spv_box_centre(box).x) < 0.05)
        middle.y = spv_box_centre(box).y + way * (radius + 1);
    }
    double most = 0;
    for (gsize i = 0; i < n; i++) {
      SpvPoint at = spv_box_centre(spv_ring_bounds(pieces[i].rings[0]));
      assert_near(spv_point_distance(at, middle), radius + 1, 0.02);
      most = MAX(most, fabs(atan2(at.x, way * (middle.y - at.y))));
    }
    /* From the first letter's middle to the last's: six sevenths of the bow. */
    assert_near(2 * most, 140 * G_PI / 180 * 6 / 7, 0.01);
  }
}

/* Along the edges: feet or tops at the inset, upright at chief and base. */
static void
edges_are_followed(void **state) {
  g_autoptr(SpvOutline) panel = outline_of(SPV_OUTLINE_RECTANGLE, 30, 20);
  (void) state;
  for (int baseline = 2; baseline < 6; baseline++) {
    SpvPattern pattern = words("HEL", baseline);
    set(&pattern, SPV_LETTERING_HEIGHT, SPV_UNIT_MM, 2);
    set(&pattern, SPV_LETTERING_INSET, SPV_UNIT_MM, 1);
    g_autoptr(SpvShape) shape = shape_of(&pattern, panel);
    SpvBox box = spv_shape_bounds(shape);
    SpvPoint middle = spv_box_centre(box);
    gsize n;
    spv_shape_pieces(shape, &n);
    assert_int_equal(n, 3);
    switch (baseline) {
    case 2:
      assert_near(box.y0, 1, 0.01);
      assert_near(box.y1, 3, 0.01);
      assert_near(middle.x, 0, 0.2);
      break;
    case 3:
      assert_near(box.x0, -14, 0.01);
      assert_near(box.x1, -12, 0.01);
      assert_near(middle.y, 10, 0.2);
      break;
    case 4:
      assert_near(box.y1, 19, 0.01);
      assert_near(box.y0, 17, 0.01);
      break;
    default:
      assert_near(box.x1, 14, 0.01);
      assert_near(box.x0, 12, 0.01);
      break;
    }
    /* L, the last, is the only one whose upper right (as it is read) is empty: it shows which way words run.
     */
    SpvPoint corner[] = { { box.x1 - 0.2, box.y0 + 0.3 },
                          { box.x0 + 0.3, box.y0 + 0.2 },
                          { box.x1 - 0.2, box.y0 + 0.3 },
                          { box.x1 - 0.3, box.y1 - 0.2 } };
    assert_false(spv_shape_contains(shape, corner[baseline - 2]));
    SpvPoint foot[] = { { box.x1 - 0.2, box.y1 - 0.2 },
                        { box.x1 - 0.2, box.y0 + 0.2 },
                        { box.x1 - 0.2, box.y1 - 0.2 },
                        { box.x0 + 0.2, box.y1 - 0.2 } };
    assert_true(spv_shape_contains(shape, foot[baseline - 2]));
  }
  /* Moved along its edge. */
  SpvPattern moved = words("HEL", 4);
  set(&moved, SPV_LETTERING_HEIGHT, SPV_UNIT_MM, 2);
  set(&moved, SPV_LETTERING_ACROSS, SPV_UNIT_MM, 5);
  g_autoptr(SpvPath) path = laid(&moved, panel);
  assert_near(spv_box_centre(spv_path_bounds(path)).x, 5, 0.2);
}

/* Mirrored, words change places; they are not turned round. */
static void
mirrored_words_can_be_read(void **state) {
  g_autoptr(SpvOutline) panel = outline_of(SPV_OUTLINE_ROUND_PAD, 30, 24);
  (void) state;
  for (int baseline = 0; baseline < 6; baseline++) {
    SpvPattern pattern = words("FR7", baseline), there = pattern;
    set(&pattern, SPV_LETTERING_TURN, SPV_UNIT_DEGREES, 20);
    set(&pattern, SPV_LETTERING_ACROSS, SPV_UNIT_MM, 4);
    pattern.mirrored = TRUE;
    /* The same words laid at the mirror image of the place. */
    set(&there, SPV_LETTERING_TURN, SPV_UNIT_DEGREES, -20);
    set(&there, SPV_LETTERING_ACROSS, SPV_UNIT_MM, -4);
    if (baseline == 3 || baseline == 5)
      set(&there, SPV_LETTERING_BASELINE, SPV_UNIT_PLAIN, 8 - baseline);
    g_autoptr(SpvShape) image = shape_of(&pattern, panel), own = shape_of(&there, panel);
    g_autoptr(SpvShape) common = spv_shape_intersection(image, own);
    assert_true(spv_shape_area(image) > 0.5);
    assert_near(spv_shape_area(common), spv_shape_area(image), 1e-3);
    assert_near(spv_shape_area(own), spv_shape_area(image), 1e-3);
  }
  /* On a frame that lies aslant, too, and on its mirror image. */
  g_autoptr(SpvFrame) frame = spv_frame_new_box(spv_point(3, 2), 0.4, 12, 5);
  g_autoptr(SpvFrame) image = spv_frame_mirrored(frame);
  SpvPattern plain = words("FR7", 0), mirrored = plain;
  mirrored.mirrored = TRUE;
  g_autoptr(SpvDraft) one = spv_pattern_lay_on(&mirrored, frame, panel);
  g_autoptr(SpvDraft) other = spv_pattern_lay_on(&plain, frame, panel);
  g_autoptr(SpvDraft) third = spv_pattern_lay_on(&plain, image, panel);
  assert_near(area_of(one->area[0]), area_of(other->area[0]), 1e-6);
  g_autoptr(SpvShape) a = spv_shape_new_from_path(one->area[0]), b = spv_shape_new_from_path(other->area[0]);
  g_autoptr(SpvShape) both = spv_shape_intersection(a, b);
  assert_near(spv_shape_area(both), spv_shape_area(a), 1e-3);
  /* An F's stem is its left side: it stays there. */
  assert_near(area_of(third->area[0]), spv_shape_area(a), 1e-6);
}

/* No words are too strange: other ways of writing, marks, pictures, two hundred letters. */
static void
strange_words(void **state) {
  g_autoptr(SpvOutline) panel = outline_of(SPV_OUTLINE_KNEEPAD, 4, 5);
  g_autofree char *most = g_strnfill(200, 'W');
  const char *texts[] = { most,         "\u05d0\u05d1\u05d2 ABC", "e\u0301",
                          "\U0001F600", "\u0e01\u0e33",           "\uFFFD",
                          "fi ffl" };
  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(texts); i++)
    for (int baseline = 0; baseline < 6; baseline++) {
      SpvPattern pattern = words(texts[i], baseline);
      pattern.texts[SPV_LETTERING_FONT] = i % 2 ? "No Such Family At All" : FONT;
      assert_true(spv_lettering_text_check(texts[i], NULL));
      g_autoptr(SpvPath) path = laid(&pattern, panel);
      gsize n;
      const SpvPathStep *steps = spv_path_steps(path, &n);
      for (gsize k = 0; k < n; k++)
        assert_true(isfinite(steps[k].to.x) && isfinite(steps[k].to.y));
    }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(roman_numerals),
    cmocka_unit_test(texts_are_checked),
    cmocka_unit_test(letters),
    cmocka_unit_test(holes_are_kept),
    cmocka_unit_test(height_and_place),
    cmocka_unit_test(width_fits),
    cmocka_unit_test(defaults_fit_every_panel),
    cmocka_unit_test(arcs_are_round),
    cmocka_unit_test(edges_are_followed),
    cmocka_unit_test(mirrored_words_can_be_read),
    cmocka_unit_test(strange_words),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
