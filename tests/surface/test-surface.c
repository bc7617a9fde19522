/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Surfaces: their words, their limits, and the circle through chord and height. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include <math.h>
#include <string.h>

#include "surface/surface.h"

static void
keys_go_there_and_back(void **state) {
  (void) state;
  for (guint i = 0; i < SPV_N_SURFACES; i++) {
    SpvSurfaceKind kind = SPV_N_SURFACES;

    assert_true(spv_surface_kind_from_key(spv_surface_kind_key((SpvSurfaceKind) i), &kind));
    assert_int_equal(kind, i);
  }
  assert_string_equal(spv_surface_kind_key(SPV_SURFACE_CYLINDER), "cylinder");
}

static void
an_unknown_key_leaves_the_kind(void **state) {
  SpvSurfaceKind kind = SPV_SURFACE_DOME;

  (void) state;
  assert_false(spv_surface_kind_from_key("Dome", &kind));
  assert_false(spv_surface_kind_from_key("", &kind));
  assert_false(spv_surface_kind_from_key(NULL, &kind));
  assert_int_equal(kind, SPV_SURFACE_DOME);
}

static void
takes_what_can_stand(void **state) {
  static const SpvSurface good[] = {
    { SPV_SURFACE_FLAT, 0 },       { SPV_SURFACE_CYLINDER, 0.01 }, { SPV_SURFACE_CYLINDER, 3 },
    { SPV_SURFACE_CYLINDER, 4.5 }, { SPV_SURFACE_DOME, 0.01 },     { SPV_SURFACE_DOME, 4.5 },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(good); i++) {
    g_autoptr(GError) error = NULL;

    assert_true(spv_surface_check(&good[i], 9, &error));
    assert_null(error);
  }
  /* Half of 33.333333333333336 as 15 digits give both back. */
  assert_true(spv_surface_check(&(SpvSurface){ SPV_SURFACE_DOME, 16.6666666666667 }, 33.3333333333333, NULL));
}

static void
refuses_what_cannot_and_says_what_to_do(void **state) {
  static const struct {
    SpvSurface surface;
    const char *advice;
  } bad[] = {
    { { SPV_SURFACE_FLAT, 0.5 }, "make it 0" },       { { SPV_SURFACE_FLAT, -1 }, "make it 0" },
    { { SPV_SURFACE_FLAT, NAN }, "make it 0" },       { { SPV_SURFACE_DOME, 0 }, "at most 4.5" },
    { { SPV_SURFACE_DOME, -1 }, "at most 4.5" },      { { SPV_SURFACE_DOME, 4.51 }, "at most 4.5" },
    { { SPV_SURFACE_CYLINDER, NAN }, "at most 4.5" }, { { SPV_SURFACE_CYLINDER, INFINITY }, "at most 4.5" },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(bad); i++) {
    g_autoptr(GError) error = NULL;

    assert_false(spv_surface_check(&bad[i].surface, 9, &error));
    assert_true(g_error_matches(error, SPV_SURFACE_ERROR, SPV_SURFACE_ERROR_DEPTH));
    assert_non_null(strstr(error->message, bad[i].advice));
    assert_false(spv_surface_check(&bad[i].surface, 9, NULL));
  }
}

static void
radius_gives_the_printed_values(void **state) {
  /* Machinery's Handbook, 31st ed., p. 79: chord 16, height 6 gives 8 1/3; radius 60, height 8 gives chord
     59.86 (59.8665 unrounded); p. 50, examples 3 and 4: radius 12, height 2 gives chord 13.27. */
  assert_true(fabs(spv_surface_radius(&(SpvSurface){ SPV_SURFACE_DOME, 6 }, 16) - 25.0 / 3) < 1e-12);
  assert_true(fabs(spv_surface_radius(&(SpvSurface){ SPV_SURFACE_CYLINDER, 8 }, 59.86) - 60) < 0.02);
  assert_true(fabs(spv_surface_radius(&(SpvSurface){ SPV_SURFACE_CYLINDER, 2 }, 13.27) - 12) < 0.01);
  /* Computed: the dome of chord 9 and height 3 (R = 4.875), and the flattening table's two caps. */
  assert_true(fabs(spv_surface_radius(&(SpvSurface){ SPV_SURFACE_DOME, 3 }, 9) - 4.875) < 1e-12);
  assert_true(fabs(spv_surface_radius(&(SpvSurface){ SPV_SURFACE_DOME, 2 }, 20) - 26) < 1e-12);
  assert_true(fabs(spv_surface_radius(&(SpvSurface){ SPV_SURFACE_DOME, 4 }, 30) - 30.125) < 1e-12);
  (void) state;
}

static void
radius_follows_the_unit_circle(void **state) {
  /* Machinery's Handbook, 31st ed., p. 83: h = r (1 - cos a/2), c = 2 r sin a/2. */
  (void) state;
  for (int degrees = 1; degrees <= 180; degrees++) {
    double half = degrees * G_PI / 360;
    SpvSurface surface = { SPV_SURFACE_DOME, 1 - cos(half) };

    assert_true(fabs(spv_surface_radius(&surface, 2 * sin(half)) - 1) < 1e-10);
  }
}

static void
flat_has_no_circle(void **state) {
  (void) state;
  assert_true(isinf(spv_surface_radius(&(SpvSurface){ SPV_SURFACE_FLAT, 0 }, 9)));
  assert_true(isinf(spv_surface_radius(&(SpvSurface){ SPV_SURFACE_DOME, 0 }, 9)));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(keys_go_there_and_back),
    cmocka_unit_test(an_unknown_key_leaves_the_kind),
    cmocka_unit_test(takes_what_can_stand),
    cmocka_unit_test(refuses_what_cannot_and_says_what_to_do),
    cmocka_unit_test(radius_gives_the_printed_values),
    cmocka_unit_test(radius_follows_the_unit_circle),
    cmocka_unit_test(flat_has_no_circle),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
