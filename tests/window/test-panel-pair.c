/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a panel gives to the one on the other side. */
#include "window/test-pane-support.h"

#include "window/panel-pair.h"

static void
the_other_side_has_the_other_id(void **state) {
  g_autoptr(SpvSession) session = bench_session();
  g_autoptr(SpvScheme) centred = a_scheme();

  (void) state;
  assert_int_equal(spv_panel_pair_find(spv_session_scheme(session), 0), 1);
  assert_int_equal(spv_panel_pair_find(spv_session_scheme(session), 1), 0);
  /* Both of these are said to stand on the centre line, whatever their ids say. */
  assert_int_equal(spv_panel_pair_find(centred, 0), -1);
}

static void
size_goes_across_alone(void **state) {
  g_autoptr(SpvSession) session = bench_session();
  const SpvScheme *scheme = spv_session_scheme(session);
  SpvOutlineSpec outline = scheme->panels[0]->outline;

  (void) state;
  outline.width = 3.8;
  g_autoptr(SpvPanel) wider = spv_panel_with_outline(scheme->panels[0], &outline);
  g_autoptr(SpvPanel) measured = spv_panel_with_measured(wider, TRUE);
  g_autoptr(SpvScheme) before = spv_scheme_with_panel(scheme, 0, measured);
  g_autoptr(SpvScheme) after = spv_panel_pair_copy_size(before, 0, 1);
  assert_true(after->panels[1]->outline.width == 3.8);
  assert_true(after->panels[1]->measured);
  assert_int_equal(after->panels[1]->n_layers, 0);
  assert_string_equal(after->panels[1]->name, "kneepad, sinister");
  assert_true(after->panels[1]->place.x == 4);
  g_autoptr(SpvScheme) again = spv_panel_pair_copy_size(after, 0, 1);
  assert_ptr_equal(again, after);
}

static void
design_goes_across_unless_a_layer_there_is_locked(void **state) {
  g_autoptr(SpvSession) session = bench_session();
  const SpvScheme *scheme = spv_session_scheme(session);
  g_autoptr(SpvScheme) after = spv_panel_pair_copy_design(scheme, 0, 1);

  (void) state;
  assert_int_equal(after->panels[1]->n_layers, 3);
  assert_true(spv_layer_equal(after->panels[1]->layers[2], scheme->panels[0]->layers[2]));
  g_autoptr(SpvScheme) again = spv_panel_pair_copy_design(after, 0, 1);
  assert_ptr_equal(again, after);

  g_autoptr(SpvLayer) locked = spv_layer_with_locked(after->panels[1]->layers[0], TRUE);
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(after->panels[1], 0, locked);
  g_autoptr(SpvScheme) guarded = spv_scheme_with_panel(after, 1, panel);
  assert_null(spv_panel_pair_copy_design(guarded, 0, 1));
}

static void
a_design_goes_across_as_its_mirror_image(void **state) {
  g_autoptr(SpvSession) session = bench_session();
  const SpvScheme *scheme = spv_session_scheme(session);
  g_autoptr(SpvScheme) after = spv_panel_pair_copy_design_mirrored(scheme, 0, 1);

  (void) state;
  assert_int_equal(after->panels[1]->n_layers, 3);
  for (guint i = 0; i < 3; i++)
    assert_true(after->panels[1]->layers[i]->pattern.mirrored);
  g_autoptr(SpvScheme) again = spv_panel_pair_copy_design_mirrored(after, 0, 1);
  assert_ptr_equal(again, after);
  g_autoptr(SpvScheme) back = spv_panel_pair_copy_design_mirrored(after, 1, 0);
  assert_ptr_equal(back, after);
  g_autoptr(SpvLayer) locked = spv_layer_with_locked(after->panels[0]->layers[0], TRUE);
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(after->panels[0], 0, locked);
  g_autoptr(SpvScheme) guarded = spv_scheme_with_panel(after, 0, panel);
  assert_null(spv_panel_pair_copy_design_mirrored(guarded, 1, 0));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(the_other_side_has_the_other_id),
    cmocka_unit_test(size_goes_across_alone),
    cmocka_unit_test(design_goes_across_unless_a_layer_there_is_locked),
    cmocka_unit_test(a_design_goes_across_as_its_mirror_image),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
