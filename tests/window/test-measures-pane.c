/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The chosen layer's measures and tinctures. */
#include "window/test-pane-support.h"

#include "support/near.h"
#include "window/measures-pane.h"
#include "window/tincture-choice.h"

static const SpvLayer *
layer(Bench *bench) {
  return spv_session_chosen_layer(bench->session);
}

static SpvMeasure
measure(Bench *bench, const char *key) {
  return layer(bench)->pattern.measures[spv_pattern_measure_index(layer(bench)->pattern.kind, key)];
}

static void
a_run_of_typing_is_one_step(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *depth = find_called(bench.pane, GTK_TYPE_ENTRY, "Depth");

  (void) state;
  type_over(depth, "0,75 mm");
  assert_int_equal(measure(&bench, "depth").unit, SPV_UNIT_MM);
  assert_near(measure(&bench, "depth").value, 0.75, 1e-12);
  assert_string_equal(text_of(depth), "0,75 mm");
  assert_true(gtk_widget_is_ancestor(gtk_window_get_focus(GTK_WINDOW(bench.window)), depth));
  assert_int_equal(count_steps(bench.session), 1);
  bench_close(&bench);
}

static void
leaving_a_field_ends_the_run(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *points = find_called(bench.pane, GTK_TYPE_ENTRY, "Points");

  (void) state;
  gtk_widget_grab_focus(points);
  for (int i = 0; i < 3; i++)
    press_key(points, GDK_KEY_Up, 0);
  assert_near(measure(&bench, "points").value, 9, 0);
  assert_string_equal(spv_session_undo_label(bench.session), "Change points");
  press_enter(points);
  press_key(points, GDK_KEY_Down, 0);
  assert_near(measure(&bench, "points").value, 8, 0);
  spv_session_undo(bench.session);
  assert_near(measure(&bench, "points").value, 9, 0);
  assert_string_equal(text_of(points), "9");
  spv_session_undo(bench.session);
  assert_near(measure(&bench, "points").value, 6, 0);
  assert_string_equal(text_of(points), "6");
  assert_null(spv_session_undo_label(bench.session));
  bench_close(&bench);
}

static void
shows_what_the_pattern_works_out(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *pitch = find_called(bench.pane, GTK_TYPE_ENTRY, "Pitch");
  const SpvComposition *composition = spv_session_composition(bench.session);
  double s0, s1;

  (void) state;
  spv_outline_edge(composition->outline, SPV_EDGE_BASE, &s0, &s1);
  assert_near(g_ascii_strtod(text_of(pitch), NULL), (s1 - s0) / 6, 0.005);
  spv_session_select(bench.session, 0, 1);
  assert_near(g_ascii_strtod(text_of(find_called(bench.pane, GTK_TYPE_ENTRY, "Cell")), NULL), 3.4 / 7, 0.005);
  /* Square cells: as many rows as fit. */
  assert_string_equal(text_of(find_called(bench.pane, GTK_TYPE_ENTRY, "Rows")), "8");
  spv_session_add_layer(bench.session, SPV_PATTERN_PER_BEND);
  assert_near(g_ascii_strtod(text_of(find_called(bench.pane, GTK_TYPE_ENTRY, "Slope")), NULL),
              atan2(4.1, 3.4) * 180 / G_PI, 0.01);
  bench_close(&bench);
}

static void
a_choice_and_a_tincture_are_steps_of_their_own(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *edge = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Edge");
  GtkWidget *tincture = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Tincture: Border");

  (void) state;
  gtk_drop_down_set_selected(GTK_DROP_DOWN(edge), 0);
  assert_near(measure(&bench, "edge").value, 0, 0);
  assert_string_equal(spv_session_undo_label(bench.session), "Change edge");
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(tincture)), 2); /* none, argent, sable */
  gtk_drop_down_set_selected(GTK_DROP_DOWN(tincture), 3);
  assert_string_equal(layer(&bench)->tinctures[0], "vert");
  assert_string_equal(spv_session_undo_label(bench.session), "Change tincture");
  gtk_drop_down_set_selected(GTK_DROP_DOWN(tincture), 0);
  assert_null(layer(&bench)->tinctures[0]);
  spv_session_undo(bench.session);
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(tincture)), 3);
  bench_close(&bench);
}

static void
a_field_must_have_a_tincture(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *tincture;

  (void) state;
  spv_session_select(bench.session, 0, 0);
  tincture = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Tincture: Field");
  assert_int_equal(g_list_model_get_n_items(gtk_drop_down_get_model(GTK_DROP_DOWN(tincture))), 3);
  spv_session_select(bench.session, 0, 1);
  tincture = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Tincture: First");
  assert_int_equal(g_list_model_get_n_items(gtk_drop_down_get_model(GTK_DROP_DOWN(tincture))), 4);
  bench_close(&bench);
}

/* A change of the scheme's tinctures reaches the drop-downs without losing what is chosen. */
static void
follows_the_tinctures(void **state) {
  static const SpvTincture gules = { "gules", "brick", { 0xa0, 0x30, 0x28 }, SPV_HATCH_GULES, SPV_FUR_NONE, { NULL, NULL }, 0 };
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *tincture = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Tincture: Border");

  (void) state;
  g_autoptr(SpvScheme) more = spv_scheme_with_tincture_added(spv_session_scheme(bench.session), &gules);
  spv_session_push(bench.session, more, "Add tincture", NULL);
  assert_int_equal(g_list_model_get_n_items(gtk_drop_down_get_model(GTK_DROP_DOWN(tincture))), 5);
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(tincture)), 2);
  assert_string_equal(layer(&bench)->tinctures[0], "sable");
  assert_int_equal(count_steps(bench.session), 1);
  bench_close(&bench);
}

static void
a_locked_layer_can_not_be_changed(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *depth = find_called(bench.pane, GTK_TYPE_ENTRY, "Depth");
  GtkWidget *words = find_words(bench.pane, "The layer is locked. Unlock it to change it.");

  (void) state;
  assert_true(gtk_widget_is_sensitive(depth));
  assert_false(is_shown(words));
  g_autoptr(SpvLayer) locked = spv_layer_with_locked(layer(&bench), TRUE);
  spv_session_edit_layer(bench.session, 2, locked, "Lock layer", NULL);
  assert_false(gtk_widget_is_sensitive(depth));
  assert_true(is_shown(words));
  bench_close(&bench);
}

static void
says_what_to_do_when_nothing_is_chosen(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *words = find_words(bench.pane, "Choose a layer to see its measures.");

  (void) state;
  assert_false(is_shown(words));
  assert_non_null(find_words(bench.pane, "Jagged border"));
  spv_session_select(bench.session, 1, -1);
  assert_true(is_shown(words));
  assert_null(find_nth(bench.pane, SPV_TYPE_MEASURE_ENTRY, 0));
  bench_close(&bench);
}

static void
what_was_typed_for_one_layer_is_not_given_to_another(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *width = find_called(bench.pane, GTK_TYPE_ENTRY, "Width");

  (void) state;
  gtk_widget_grab_focus(width);
  gtk_editable_set_text(GTK_EDITABLE(width), "");
  spv_session_add_layer(bench.session, SPV_PATTERN_BORDURE);
  assert_int_equal(measure(&bench, "width").unit, SPV_UNIT_RELATIVE);
  assert_int_equal(count_steps(bench.session), 1);
  bench_close(&bench);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test(a_run_of_typing_is_one_step),
  cmocka_unit_test(leaving_a_field_ends_the_run),
  cmocka_unit_test(shows_what_the_pattern_works_out),
  cmocka_unit_test(a_choice_and_a_tincture_are_steps_of_their_own),
  cmocka_unit_test(a_field_must_have_a_tincture),
  cmocka_unit_test(follows_the_tinctures),
  cmocka_unit_test(a_locked_layer_can_not_be_changed),
  cmocka_unit_test(says_what_to_do_when_nothing_is_chosen),
  cmocka_unit_test(what_was_typed_for_one_layer_is_not_given_to_another),
};

RUN_PANE_TESTS(tests)
