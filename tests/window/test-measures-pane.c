/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The chosen layer's measures and tinctures. */
#include "window/test-pane-support.h"

#include "support/near.h"
#include "window/measures-pane.h"
#include "window/pattern-text-entry.h"
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
  static const SpvTincture gules = {
    "gules", "brick", { 0xa0, 0x30, 0x28 }, SPV_HATCH_GULES, SPV_FUR_NONE, { NULL, NULL }, 0
  };
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
  spv_session_add_layer(bench.session, SPV_PATTERN_FRETTY);
  assert_int_equal(measure(&bench, "width").unit, SPV_UNIT_RELATIVE);
  assert_int_equal(count_steps(bench.session), 1);
  bench_close(&bench);
}

static void
what_has_no_effect_is_not_shown(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_PER_PALE);
  GtkWidget *line = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Line");
  GtkWidget *teeth = find_called(bench.pane, GTK_TYPE_ENTRY, "Teeth");
  GtkWidget *depth = find_called(bench.pane, GTK_TYPE_ENTRY, "Tooth depth");
  assert_false(is_shown(teeth));
  assert_false(is_shown(depth));
  gtk_drop_down_set_selected(GTK_DROP_DOWN(line), 1);
  assert_string_equal(spv_session_undo_label(bench.session), "Change line");
  assert_true(is_shown(teeth));
  assert_true(is_shown(depth));
  spv_session_undo(bench.session);
  assert_false(is_shown(teeth));

  /* One charge keeps no distance to itself. */
  spv_session_add_layer(bench.session, SPV_PATTERN_MULLET);
  GtkWidget *spacing = find_called(bench.pane, GTK_TYPE_ENTRY, "Spacing");
  assert_false(is_shown(spacing));
  gtk_editable_set_text(GTK_EDITABLE(find_called(bench.pane, GTK_TYPE_ENTRY, "Number")), "3");
  assert_true(is_shown(spacing));
  bench_close(&bench);
}

static void
a_layer_becomes_another_kind_of_its_group_in_place(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *kind = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Kind of layer");
  GtkWidget *same;

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_MULLET);
  g_autofree char *id = g_strdup(layer(&bench)->id), *tincture = g_strdup(layer(&bench)->tinctures[0]);
  gtk_editable_set_text(GTK_EDITABLE(find_called(bench.pane, GTK_TYPE_ENTRY, "Turn")), "30");
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(kind)), SPV_PATTERN_MULLET - SPV_PATTERN_ROUNDEL);
  gtk_widget_grab_focus(kind);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(kind), SPV_PATTERN_CRESCENT - SPV_PATTERN_ROUNDEL);
  assert_int_equal(layer(&bench)->pattern.kind, SPV_PATTERN_CRESCENT);
  assert_string_equal(layer(&bench)->id, id);
  assert_string_equal(layer(&bench)->name, "Crescent");
  assert_string_equal(layer(&bench)->tinctures[0], tincture);
  assert_near(measure(&bench, "turn").value, 30, 0);
  assert_string_equal(spv_session_undo_label(bench.session), "Change kind of layer");
  same = gtk_window_get_focus(GTK_WINDOW(bench.window));
  assert_true(same == kind || gtk_widget_is_ancestor(same, kind));

  /* A field that becomes a division gets its other tincture. */
  spv_session_select(bench.session, 0, 0);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(kind), SPV_PATTERN_PER_PALL);
  assert_int_equal(layer(&bench)->pattern.kind, SPV_PATTERN_PER_PALL);
  assert_string_equal(layer(&bench)->tinctures[0], "argent");
  for (guint slot = 1; slot < 3; slot++)
    assert_non_null(
        find_called(bench.pane, GTK_TYPE_DROP_DOWN, slot == 1 ? "Tincture: Dexter" : "Tincture: Sinister"));
  assert_string_equal(layer(&bench)->tinctures[1], "sable");
  assert_string_equal(layer(&bench)->tinctures[2], "vert");
  bench_close(&bench);
}

static void
a_layer_is_tied_to_those_below(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *on, *across, *tincture;

  (void) state;
  /* Over the field and the check there is nothing that bears the border. */
  assert_false(is_shown(find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Laid on")));
  spv_session_add_layer(bench.session, SPV_PATTERN_ROUNDEL);
  on = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Laid on");
  across = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Counterchanged across");
  tincture = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Tincture: Roundel");
  assert_true(is_shown(on));
  assert_int_equal(g_list_model_get_n_items(gtk_drop_down_get_model(GTK_DROP_DOWN(on))), 2);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(on), 1);
  assert_string_equal(layer(&bench)->on, "jagged-border");
  assert_string_equal(spv_session_undo_label(bench.session), "Change what it is laid on");
  gtk_drop_down_set_selected(GTK_DROP_DOWN(on), 0);
  assert_null(layer(&bench)->on);

  assert_true(gtk_widget_is_sensitive(tincture));
  gtk_drop_down_set_selected(GTK_DROP_DOWN(across), 1);
  assert_string_equal(layer(&bench)->counterchange, "check");
  assert_false(gtk_widget_is_sensitive(tincture));
  assert_true(is_shown(find_words(bench.pane, "Counterchanged: it shows the tinctures of “Check”.")));
  spv_session_undo(bench.session);
  assert_true(gtk_widget_is_sensitive(tincture));
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(across)), 0);
  bench_close(&bench);
}

static void
a_layer_is_mirrored(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *mirrored = find_called(bench.pane, GTK_TYPE_SWITCH, "Mirrored");

  (void) state;
  gtk_switch_set_active(GTK_SWITCH(mirrored), TRUE);
  assert_true(layer(&bench)->pattern.mirrored);
  assert_string_equal(spv_session_undo_label(bench.session), "Mirror layer");
  spv_session_undo(bench.session);
  assert_false(gtk_switch_get_active(GTK_SWITCH(mirrored)));
  assert_int_equal(count_steps(bench.session), 0);
  bench_close(&bench);
}

static void
a_charge_says_how_small_it_may_be(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *label = NULL;

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_ROUNDEL);
  for (int n = 0; (label = find_nth(bench.pane, GTK_TYPE_LABEL, n)); n++) {
    if (g_str_has_prefix(gtk_label_get_text(GTK_LABEL(label)), "Smallest for your line: "))
      break;
  }
  assert_non_null(label);
  assert_true(is_shown(label));
  /* A disc is nowhere narrower than it is wide. */
  assert_string_equal(gtk_label_get_text(GTK_LABEL(label)), "Smallest for your line: 0.25\u202fmm");
  bench_close(&bench);
}

static void
shows_where_charges_come_to_stand(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_ROUNDEL);
  const SpvComposition *composition = spv_session_composition(bench.session);
  const SpvDraft *draft = g_ptr_array_index(composition->drafts, 3);
  SpvBox box = spv_path_bounds(draft->area[0]);
  assert_near(g_ascii_strtod(text_of(find_called(bench.pane, GTK_TYPE_ENTRY, "Diameter")), NULL),
              box.x1 - box.x0, 0.006);
  assert_near(g_ascii_strtod(text_of(find_called(bench.pane, GTK_TYPE_ENTRY, "Below datum")), NULL),
              (box.y0 + box.y1) / 2, 0.006);
  bench_close(&bench);
}

/* Texts */

static void
words_are_checked_while_they_are_typed(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *words, *message;

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_LETTERING);
  words = find_called(bench.pane, GTK_TYPE_ENTRY, "Words");
  message = gtk_widget_get_last_child(gtk_widget_get_parent(words));
  assert_string_equal(text_of(words), "VII");
  type_over(words, "Wardens");
  assert_string_equal(layer(&bench)->pattern.texts[0], "Wardens");
  assert_string_equal(spv_session_undo_label(bench.session), "Change words");
  gtk_editable_set_text(GTK_EDITABLE(words), "");
  assert_string_equal(layer(&bench)->pattern.texts[0], "Wardens");
  assert_true(gtk_widget_has_css_class(words, "error"));
  assert_true(is_shown(message));
  assert_true(press_key(words, GDK_KEY_Escape, 0));
  assert_string_equal(text_of(words), "Wardens");
  assert_false(gtk_widget_has_css_class(words, "error"));
  assert_false(is_shown(message));
  assert_int_equal(count_steps(bench.session), 2); /* the layer, and one run of typing */
  bench_close(&bench);
}

static void
numbers_become_roman(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *words, *roman = NULL;

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_LETTERING);
  words = find_called(bench.pane, GTK_TYPE_ENTRY, "Words");
  for (int n = 0; (roman = find_nth(bench.pane, GTK_TYPE_BUTTON, n)); n++) {
    if (g_strcmp0(gtk_button_get_label(GTK_BUTTON(roman)), "Roman") == 0)
      break;
  }
  assert_non_null(roman);
  assert_false(gtk_widget_is_sensitive(roman));
  type_over(words, "Row 14");
  click(roman);
  assert_string_equal(layer(&bench)->pattern.texts[0], "Row XIV");
  assert_false(gtk_widget_is_sensitive(roman));
  bench_close(&bench);
}

static void
a_font_is_chosen_without_a_size(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *font;

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_LETTERING);
  font = find_called(bench.pane, GTK_TYPE_FONT_BUTTON, "Font");
  gtk_font_chooser_set_font(GTK_FONT_CHOOSER(font), "DejaVu Serif Italic 14");
  g_signal_emit_by_name(font, "font-set");
  assert_string_equal(layer(&bench)->pattern.texts[1], "DejaVu Serif Italic");
  g_autoptr(SpvLayer) foreign = spv_layer_with_text(layer(&bench), 1, "Estuary Hand Bold");
  spv_session_edit_layer(bench.session, 3, foreign, "Change font", NULL);
  assert_true(is_shown(find_words(bench.pane, "This font is not installed here; another takes its place.")));
  bench_close(&bench);
}

static void
rows_need_not_be_given(void **state) {
  Bench bench = bench_open(spv_measures_pane_new());
  GtkWidget *rows, *arrangement;

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_BELL);
  rows = find_called(bench.pane, GTK_TYPE_ENTRY, "Rows");
  arrangement = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Arrangement");
  assert_false(is_shown(rows));
  gtk_drop_down_set_selected(GTK_DROP_DOWN(arrangement), 1);
  assert_true(is_shown(rows));
  type_over(rows, "3, 2");
  assert_string_equal(layer(&bench)->pattern.texts[0], "3, 2");
  gtk_editable_set_text(GTK_EDITABLE(rows), "three");
  assert_string_equal(layer(&bench)->pattern.texts[0], "3, 2");
  gtk_editable_set_text(GTK_EDITABLE(rows), "");
  assert_string_equal(layer(&bench)->pattern.texts[0], "3, 2"); /* on its way to others, perhaps */
  press_enter(rows);
  assert_null(layer(&bench)->pattern.texts[0]);
  assert_false(gtk_widget_has_css_class(rows, "error"));
  bench_close(&bench);
}

static GtkTextBuffer *
path_buffer(Bench *bench) {
  return gtk_text_view_get_buffer(GTK_TEXT_VIEW(find_called(bench->pane, GTK_TYPE_TEXT_VIEW, "Path")));
}

static void
a_path_comes_from_the_keys_or_from_a_file(void **state) {
  static const char drawing[] = "<svg xmlns='http://www.w3.org/2000/svg'><rect width='4' height='2'/></svg>";
  Bench bench = bench_open(spv_measures_pane_new());
  g_autofree char *folder = a_folder(), *name = g_build_filename(folder, "block.svg", NULL);
  g_autoptr(GFile) file = g_file_new_for_path(name);
  SpvPatternTextEntry *entry;

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_PATH_CHARGE);
  entry = SPV_PATTERN_TEXT_ENTRY(find_nth(bench.pane, SPV_TYPE_PATTERN_TEXT_ENTRY, 0));
  gtk_text_buffer_set_text(path_buffer(&bench), "M 0 0 H 10 V 5 Z", -1);
  assert_string_equal(layer(&bench)->pattern.texts[0], "M 0 0 H 10 V 5 Z");
  gtk_text_buffer_set_text(path_buffer(&bench), "M 0 0 H ten", -1);
  assert_string_equal(layer(&bench)->pattern.texts[0], "M 0 0 H 10 V 5 Z");
  assert_true(gtk_widget_has_css_class(find_called(bench.pane, GTK_TYPE_TEXT_VIEW, "Path"), "error"));

  assert_true(g_file_set_contents(name, drawing, -1, NULL));
  spv_pattern_text_entry_take_file(entry, file);
  assert_string_not_equal(layer(&bench)->pattern.texts[0], "M 0 0 H 10 V 5 Z");
  assert_false(gtk_widget_has_css_class(find_called(bench.pane, GTK_TYPE_TEXT_VIEW, "Path"), "error"));
  g_autofree char *taken = g_strdup(layer(&bench)->pattern.texts[0]);
  assert_true(g_file_set_contents(name, "no drawing", -1, NULL));
  spv_pattern_text_entry_take_file(entry, file);
  assert_string_equal(layer(&bench)->pattern.texts[0], taken);
  remove_folder(folder);
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
  cmocka_unit_test(what_has_no_effect_is_not_shown),
  cmocka_unit_test(a_layer_becomes_another_kind_of_its_group_in_place),
  cmocka_unit_test(a_layer_is_tied_to_those_below),
  cmocka_unit_test(a_layer_is_mirrored),
  cmocka_unit_test(a_charge_says_how_small_it_may_be),
  cmocka_unit_test(shows_where_charges_come_to_stand),
  cmocka_unit_test(words_are_checked_while_they_are_typed),
  cmocka_unit_test(numbers_become_roman),
  cmocka_unit_test(a_font_is_chosen_without_a_size),
  cmocka_unit_test(rows_need_not_be_given),
  cmocka_unit_test(a_path_comes_from_the_keys_or_from_a_file),
};

RUN_PANE_TESTS(tests)
