/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The painter's own shape: one or both sides, holes, and what is no path. */
#include <glib.h>
#include <string.h>

#include "support/near.h"

#include "heraldry/lettering.h"

static SpvOutline *
square(void) {
  SpvOutlineSpec spec = { SPV_OUTLINE_RECTANGLE, 20, 20, { 0, 0 } };
  return spv_outline_new(&spec);
}

static SpvShape *
laid(const char *text, gboolean both_sides, gboolean mirrored) {
  g_autoptr(SpvOutline) panel = square();
  SpvPattern pattern = spv_pattern_preset(SPV_PATTERN_FREE_PATH);
  pattern.texts[0] = text;
  pattern.mirrored = mirrored;
  pattern.measures[0] = (SpvMeasure){ SPV_UNIT_PLAIN, both_sides };
  g_autoptr(SpvDraft) draft = spv_pattern_lay(&pattern, panel);
  return spv_shape_new_from_path(draft->area[0]);
}

static void
assert_box(const SpvShape *shape, double x0, double y0, double x1, double y1) {
  SpvBox box = spv_shape_bounds(shape);
  assert_near(box.x0, x0, 1e-6);
  assert_near(box.y0, y0, 1e-6);
  assert_near(box.x1, x1, 1e-6);
  assert_near(box.y1, y1, 1e-6);
}

/* Millimetres from the datum, whichever way the runs go round. */
static void
a_shape_lies_where_it_is_drawn(void **state) {
  (void) state;
  g_autoptr(SpvShape) one = laid("M 1 2 H 4 V 7 H 1 Z", FALSE, FALSE),
                      other = laid("M 1 2 V 7 H 4 V 2 Z", FALSE, FALSE);
  assert_near(spv_shape_area(one), 15, 1e-6);
  assert_near(spv_shape_area(other), 15, 1e-6);
  assert_box(one, 1, 2, 4, 7);
  g_autoptr(SpvShape) image = laid("M 1 2 H 4 V 7 H 1 Z", FALSE, TRUE);
  assert_near(spv_shape_area(image), 15, 1e-6);
  assert_box(image, -4, 2, -1, 7);
}

/* On both sides: apart from the centre line two pieces, across it one. */
static void
both_sides_are_joined(void **state) {
  gsize n;
  (void) state;
  g_autoptr(SpvShape) apart = laid("M 1 2 H 4 V 7 H 1 Z", TRUE, FALSE);
  assert_near(spv_shape_area(apart), 30, 1e-6);
  assert_box(apart, -4, 2, 4, 7);
  spv_shape_pieces(apart, &n);
  assert_int_equal(n, 2);
  g_autoptr(SpvShape) across = laid("M -1 2 H 4 V 7 H -1 Z", TRUE, FALSE);
  assert_near(spv_shape_area(across), 40, 1e-6);
  spv_shape_pieces(across, &n);
  assert_int_equal(n, 1);
  g_autoptr(SpvShape) touching = laid("M 0 2 H 4 V 7 H 0 Z", TRUE, FALSE);
  spv_shape_pieces(touching, &n);
  assert_int_equal(n, 1);
  assert_near(spv_shape_area(touching), 40, 1e-6);
}

/* A hole is a hole on both sides, and what covers it from the other side covers it. */
static void
holes_are_kept(void **state) {
  (void) state;
  g_autoptr(SpvShape) ring = laid("M 2 2 H 8 V 8 H 2 Z M 4 4 V 6 H 6 V 4 Z", TRUE, FALSE);
  assert_near(spv_shape_area(ring), 2 * (36 - 4), 1e-6);
  assert_false(spv_shape_contains(ring, spv_point(5, 5)));
  assert_false(spv_shape_contains(ring, spv_point(-5, 5)));
  /* From -3 to 9 with a hole from -2 to 0: the image, from -9 to 3, covers it. */
  g_autoptr(SpvShape) covered = laid("M -3 2 H 9 V 8 H -3 Z M -2 4 V 6 H 0 V 4 Z", TRUE, FALSE);
  assert_near(spv_shape_area(covered), 18 * 6, 1e-6);
}

static void
the_preset_is_a_path(void **state) {
  (void) state;
  g_autoptr(SpvShape) shape = laid(NULL, FALSE, FALSE);
  assert_true(spv_shape_area(shape) > 5);
  assert_true(spv_path_text_check(SPV_FREE_PATH_PRESET, NULL));
  assert_true(spv_path_text_check(SPV_PATH_CHARGE_PRESET, NULL));
}

static void
what_is_no_path(void **state) {
  g_autoptr(GError) error = NULL;
  (void) state;
  assert_false(spv_path_text_check("M 1 1 L 2", &error));
  assert_true(g_error_matches(error, SPV_PATTERN_ERROR, SPV_PATTERN_ERROR_TEXT));
  assert_non_null(strstr(error->message, "Character 10"));
  /* Laid all the same, it is nothing. */
  g_autoptr(SpvShape) none = laid("M 1 1 L 2", TRUE, FALSE);
  assert_true(spv_shape_is_empty(none));
  g_autoptr(SpvShape) flat = laid("M 1 1 L 2 2", TRUE, FALSE);
  assert_true(spv_shape_is_empty(flat));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(a_shape_lies_where_it_is_drawn),
    cmocka_unit_test(both_sides_are_joined),
    cmocka_unit_test(holes_are_kept),
    cmocka_unit_test(the_preset_is_a_path),
    cmocka_unit_test(what_is_no_path),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
