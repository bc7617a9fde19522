/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The viewport: millimetres to pixels and back, limits, the grid and the ruler's ticks. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include "window/viewport.h"

static SpvViewport
looking_at(double width_mm, double height_mm) {
  SpvViewport viewport;

  spv_viewport_init(&viewport);
  spv_viewport_set_size(&viewport, 800, 600);
  spv_viewport_set_content(&viewport, (SpvBox){ -width_mm / 2, 0, width_mm / 2, height_mm });
  return viewport;
}

static void
assert_near(double a, double b) {
  assert_true(fabs(a - b) < 1e-6);
}

static void
test_there_and_back(void **state) {
  SpvViewport viewport = looking_at(3.4, 4.1);

  (void) state;
  for (int i = 0; i < 50; i++) {
    SpvPoint mm = spv_point(i * 0.37 - 5, 3 - i * 0.21);
    SpvPoint back = spv_viewport_to_mm(&viewport, spv_viewport_to_px(&viewport, mm));

    assert_near(back.x, mm.x);
    assert_near(back.y, mm.y);
  }
}

static void
test_fit(void **state) {
  SpvViewport viewport = looking_at(3.4, 4.1);
  SpvPoint top = spv_viewport_to_px(&viewport, spv_point(0, 0));
  SpvPoint foot = spv_viewport_to_px(&viewport, spv_point(0, 4.1));

  (void) state;
  assert_near(top.y, SPV_VIEWPORT_MARGIN);
  assert_near(foot.y, 600 - SPV_VIEWPORT_MARGIN);
  assert_near(top.x, 400);
  assert_true(viewport.fitted);
  /* A wide panel is fitted by its width. */
  viewport = looking_at(50, 10);
  assert_near(viewport.scale, (800 - 2 * SPV_VIEWPORT_MARGIN) / 50);
}

static void
test_fitted_follows(void **state) {
  SpvViewport viewport = looking_at(3.4, 4.1);

  (void) state;
  spv_viewport_set_size(&viewport, 400, 300);
  assert_near(viewport.scale, (300 - 2 * SPV_VIEWPORT_MARGIN) / 4.1);
  spv_viewport_set_content(&viewport, (SpvBox){ -10, 0, 10, 2 });
  assert_near(viewport.scale, (400 - 2 * SPV_VIEWPORT_MARGIN) / 20);
}

/* What lies under the pointer stays there, at any zoom within the limits. */
static void
test_zoom_about(void **state) {
  SpvViewport viewport = looking_at(9, 8.5);
  SpvPoint px = spv_point(430, 280), under = spv_viewport_to_mm(&viewport, px);

  (void) state;
  for (int i = 0; i < 40; i++) {
    SpvPoint now;

    spv_viewport_zoom(&viewport, i < 20 ? 1.1 : 1 / 1.05, px);
    now = spv_viewport_to_mm(&viewport, px);
    assert_near(now.x, under.x);
    assert_near(now.y, under.y);
  }
  assert_false(viewport.fitted);
}

static void
test_zoom_limits(void **state) {
  SpvViewport viewport = looking_at(9, 8.5);
  double fit = viewport.scale;

  (void) state;
  spv_viewport_zoom(&viewport, 1e9, spv_point(400, 300));
  assert_near(viewport.scale, SPV_VIEWPORT_MAX_SCALE);
  spv_viewport_zoom(&viewport, 1e-9, spv_point(400, 300));
  assert_near(viewport.scale, fit);
  /* A panel so small that it would fit beyond the limit is shown at the limit. */
  viewport = looking_at(0.5, 0.5);
  assert_near(viewport.scale, SPV_VIEWPORT_MAX_SCALE);
}

/* However far it is panned, something of the panel stays in the view. */
static void
test_pan_keeps_in_sight(void **state) {
  const double far[] = { -1e6, 0, 1e6 };

  (void) state;
  for (guint i = 0; i < 3; i++) {
    for (guint j = 0; j < 3; j++) {
      SpvViewport viewport = looking_at(9, 8.5);
      SpvPoint low, high;

      spv_viewport_zoom(&viewport, 3, spv_point(100, 100));
      spv_viewport_pan(&viewport, far[i], far[j]);
      low = spv_viewport_to_px(&viewport, spv_point(-4.5, 0));
      high = spv_viewport_to_px(&viewport, spv_point(4.5, 8.5));
      assert_true(high.x >= 40 && low.x <= 760 && high.y >= 40 && low.y <= 560);
    }
  }
}

static void
test_pan_moves(void **state) {
  SpvViewport viewport = looking_at(9, 8.5);
  SpvPoint before = viewport.datum;

  (void) state;
  spv_viewport_pan(&viewport, 0, 0);
  assert_true(viewport.fitted);
  spv_viewport_pan(&viewport, 12, -7);
  assert_near(viewport.datum.x - before.x, 12);
  assert_near(viewport.datum.y - before.y, -7);
  assert_false(viewport.fitted);
}

static void
test_resize_keeps_the_middle(void **state) {
  SpvViewport viewport = looking_at(9, 8.5);
  SpvPoint before, after;

  (void) state;
  spv_viewport_zoom(&viewport, 2, spv_point(300, 200));
  before = spv_viewport_to_mm(&viewport, spv_point(400, 300));
  spv_viewport_set_size(&viewport, 700, 500);
  after = spv_viewport_to_mm(&viewport, spv_point(350, 250));
  assert_near(before.x, after.x);
  assert_near(before.y, after.y);
}

/* Degenerate content and a view without size: no infinities. */
static void
test_degenerate(void **state) {
  SpvViewport viewport;
  g_autoptr(GArray) ticks = NULL;

  (void) state;
  spv_viewport_init(&viewport);
  spv_viewport_set_content(&viewport, (SpvBox){ 2, 2, 2, 2 });
  spv_viewport_set_size(&viewport, 0, 0);
  spv_viewport_pan(&viewport, 10, 10);
  spv_viewport_zoom(&viewport, 2, spv_point(0, 0));
  assert_true(isfinite(viewport.scale) && viewport.scale > 0);
  assert_true(isfinite(viewport.datum.x) && isfinite(viewport.datum.y));
  ticks = spv_viewport_ticks(&viewport, FALSE);
  assert_true(ticks->len < 100);
}

static void
test_steps_thin_out(void **state) {
  SpvViewport viewport = looking_at(9, 8.5);
  const struct {
    double scale, step;
  } cases[] = { { 400, 0.1 }, { 100, 0.1 }, { 60, 0.5 }, { 20, 0.5 },
                { 9, 1 },     { 7, 5 },     { 1.5, 10 }, { 0.01, 100 } };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(cases); i++) {
    viewport.scale = cases[i].scale;
    assert_true(spv_viewport_step(&viewport, 8) == cases[i].step);
  }
  assert_true(spv_viewport_coarser(0.1) == 0.5 && spv_viewport_coarser(1) == 5);
  assert_true(spv_viewport_coarser(100) == 100);
}

/* Ticks are even, in order, all in the view, and each labelled one is a multiple of the label's step. */
static void
test_ticks(void **state) {
  (void) state;
  for (double mm = 1; mm < 400; mm *= 1.7) {
    SpvViewport viewport = looking_at(mm, mm);
    double step = spv_viewport_label_step(&viewport);

    for (int vertical = 0; vertical < 2; vertical++) {
      g_autoptr(GArray) ticks = spv_viewport_ticks(&viewport, vertical != 0);
      guint labelled = 0;

      for (guint i = 0; i < ticks->len; i++) {
        const SpvTick *tick = &g_array_index(ticks, SpvTick, i);
        double ratio = tick->mm / step;

        assert_true(tick->px >= -1e-6 && tick->px <= (vertical ? 600 : 800) + 1e-6);
        assert_near(tick->px, (vertical ? viewport.datum.y : viewport.datum.x) + tick->mm * viewport.scale);
        if (i > 0)
          assert_true(tick->px - g_array_index(ticks, SpvTick, i - 1).px >= 5 - 1e-6);
        assert_true((tick->kind == SPV_TICK_LABELLED) == (fabs(ratio - round(ratio)) < 1e-6));
        labelled += tick->kind == SPV_TICK_LABELLED;
      }
      assert_true(labelled >= 1 && labelled <= 14);
    }
  }
}

static void
test_labels(void **state) {
  const struct {
    double mm, step;
    const char *label;
  } cases[] = { { 0, 1, "0" },     { -1, 1, "\u22121" },       { 12, 5, "12" },       { 0.5, 0.5, "0.5" },
                { 1, 0.5, "1.0" }, { -0.3, 0.1, "\u22120.3" }, { -1e-17, 0.1, "0.0" } };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(cases); i++) {
    g_autofree char *label = spv_tick_label(cases[i].mm, cases[i].step);

    assert_string_equal(label, cases[i].label);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_there_and_back), cmocka_unit_test(test_fit),
    cmocka_unit_test(test_fitted_follows), cmocka_unit_test(test_zoom_about),
    cmocka_unit_test(test_zoom_limits),    cmocka_unit_test(test_pan_keeps_in_sight),
    cmocka_unit_test(test_pan_moves),      cmocka_unit_test(test_resize_keeps_the_middle),
    cmocka_unit_test(test_degenerate),     cmocka_unit_test(test_steps_thin_out),
    cmocka_unit_test(test_ticks),          cmocka_unit_test(test_labels),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
