/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/a-scheme.h"

#include "scheme/scheme-file.h"
#include "window/session.h"

static void
count(gpointer counter) {
  ++*(guint *) counter;
}

typedef struct {
  SpvSession *session;
  guint scheme, selection, findings;
} Fixture;

static int
set_up(void **state) {
  Fixture *f = g_new0(Fixture, 1);
  g_autoptr(SpvScheme) scheme = a_scheme();
  f->session = spv_session_new(scheme, NULL);
  g_signal_connect_swapped(f->session, "scheme-changed", G_CALLBACK(count), &f->scheme);
  g_signal_connect_swapped(f->session, "selection-changed", G_CALLBACK(count), &f->selection);
  g_signal_connect_swapped(f->session, "findings-changed", G_CALLBACK(count), &f->findings);
  *state = f;
  return 0;
}

static int
tear_down(void **state) {
  Fixture *f = *state;
  gpointer alive = f->session;
  g_object_add_weak_pointer(G_OBJECT(f->session), &alive);
  g_object_unref(f->session);
  int result = alive ? 1 : 0;
  g_free(f);
  return result;
}

static void
rename_layer(SpvSession *session, const char *name, const char *merge) {
  g_autoptr(SpvLayer) layer = spv_layer_with_name(spv_session_chosen_layer(session), name);
  spv_session_edit_layer(session, (guint) spv_session_layer(session), layer, "Rename layer", merge);
}

static void
starts_at_the_first_design(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  assert_int_equal(spv_session_panel(s), 0);
  assert_int_equal(spv_session_layer(s), 1);
  assert_string_equal(spv_session_chosen_layer(s)->id, "check");
  assert_false(spv_session_is_modified(s));
  assert_null(spv_session_undo_label(s));
  assert_null(spv_session_file(s));
}

static void
an_edit_is_one_step_and_tells_once(void **state) {
  Fixture *f = *state;
  rename_layer(f->session, "chequy", NULL);
  assert_int_equal(f->scheme, 1);
  assert_int_equal(f->selection, 0);
  assert_true(spv_session_is_modified(f->session));
  assert_string_equal(spv_session_undo_label(f->session), "Rename layer");
  assert_true(spv_session_undo(f->session));
  assert_int_equal(f->scheme, 2);
  assert_false(spv_session_is_modified(f->session));
  assert_string_equal(spv_session_redo_label(f->session), "Rename layer");
  assert_true(spv_session_redo(f->session));
  assert_string_equal(spv_session_chosen_layer(f->session)->name, "chequy");
  assert_false(spv_session_redo(f->session));
}

static void
an_edit_that_changes_nothing_is_no_step(void **state) {
  Fixture *f = *state;
  const SpvLayer *layer = spv_session_chosen_layer(f->session);
  g_autofree char *name = g_strdup(layer->name);
  rename_layer(f->session, name, NULL);
  assert_int_equal(f->scheme, 0);
  assert_null(spv_session_undo_label(f->session));
}

static void
a_drag_is_one_step_until_something_else_is_chosen(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  rename_layer(s, "a", "drag");
  rename_layer(s, "b", "drag");
  spv_session_select(s, 0, 0);
  spv_session_select(s, 0, 1);
  rename_layer(s, "c", "drag");
  assert_true(spv_session_undo(s));
  assert_string_equal(spv_session_chosen_panel(s)->layers[1]->name, "b");
  assert_true(spv_session_undo(s));
  assert_false(spv_session_is_modified(s));
}

static void
adds_above_the_chosen_layer_and_chooses_it(void **state) {
  Fixture *f = *state;
  spv_session_select(f->session, 0, 0);
  f->selection = 0;
  spv_session_add_layer(f->session, SPV_PATTERN_PER_BEND);
  const SpvPanel *panel = spv_session_chosen_panel(f->session);
  assert_int_equal(panel->n_layers, 3);
  assert_int_equal(spv_session_layer(f->session), 1);
  assert_int_equal(f->selection, 1);
  const SpvLayer *layer = spv_session_chosen_layer(f->session);
  assert_int_equal(layer->pattern.kind, SPV_PATTERN_PER_BEND);
  /* The field beneath is argent: neither half vanishes on it. */
  assert_string_equal(layer->tinctures[0], "sable");
  assert_string_equal(layer->tinctures[1], "vert");
  assert_true(g_str_has_prefix(spv_session_undo_label(f->session), "Add "));
}

static void
adds_on_top_of_a_panel_with_no_layer_chosen(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_select(s, 0, -1);
  assert_null(spv_session_chosen_layer(s));
  spv_session_add_layer(s, SPV_PATTERN_JAGGED_BORDER);
  assert_int_equal(spv_session_layer(s), 2);
  spv_session_select(s, 1, -1);
  spv_session_add_layer(s, SPV_PATTERN_FIELD);
  assert_int_equal(spv_session_layer(s), 0);
  assert_string_equal(spv_session_chosen_layer(s)->tinctures[0], "argent");
  assert_null(spv_session_chosen_layer(s)->tinctures[1]);
}

static void
a_border_is_seen_on_a_bare_panel(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_select(s, 1, -1);
  spv_session_add_layer(s, SPV_PATTERN_JAGGED_BORDER);
  /* Argent, the first, is nearly as white as the panel. */
  assert_string_equal(spv_session_chosen_layer(s)->tinctures[0], "sable");
  spv_session_undo(s);
  spv_session_add_layer(s, SPV_PATTERN_CHECK);
  assert_string_equal(spv_session_chosen_layer(s)->tinctures[0], "argent");
  assert_string_equal(spv_session_chosen_layer(s)->tinctures[1], "sable");
  /* What is hidden is not beneath. */
  spv_session_set_layer_hidden(s, 0, TRUE);
  spv_session_add_layer(s, SPV_PATTERN_ROUNDEL);
  assert_string_equal(spv_session_chosen_layer(s)->tinctures[0], "sable");
}

static void
another_kind_keeps_what_it_has_and_gets_what_it_needs(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_set_layer_kind(s, 0, SPV_PATTERN_TIERCED_IN_FESS);
  const SpvLayer *layer = spv_session_chosen_panel(s)->layers[0];
  assert_int_equal(layer->pattern.kind, SPV_PATTERN_TIERCED_IN_FESS);
  assert_string_equal(layer->id, "field");
  assert_string_equal(layer->tinctures[0], "argent");
  assert_string_equal(layer->tinctures[1], "sable");
  assert_string_equal(layer->tinctures[2], "vert");
  assert_string_equal(spv_session_undo_label(s), "Change kind of layer");
  spv_session_set_layer_locked(s, 0, TRUE);
  spv_session_set_layer_kind(s, 0, SPV_PATTERN_FIELD);
  assert_int_equal(spv_session_chosen_panel(s)->layers[0]->pattern.kind, SPV_PATTERN_TIERCED_IN_FESS);
}

static void
a_layer_is_mirrored_and_mirrored_back(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_select(s, 0, 1);
  spv_session_mirror_layer(s);
  assert_true(spv_session_chosen_layer(s)->pattern.mirrored);
  assert_string_equal(spv_session_undo_label(s), "Mirror layer");
  spv_session_mirror_layer(s);
  assert_false(spv_session_chosen_layer(s)->pattern.mirrored);
  spv_session_select(s, 0, -1);
  spv_session_mirror_layer(s);
  spv_session_undo(s);
  assert_true(spv_session_chosen_panel(s)->layers[1]->pattern.mirrored);
}

static void
removing_goes_on_downwards_and_stops_at_none(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_remove_layer(s);
  assert_int_equal(spv_session_layer(s), 0);
  spv_session_remove_layer(s);
  assert_int_equal(spv_session_layer(s), -1);
  assert_int_equal(spv_session_chosen_panel(s)->n_layers, 0);
  spv_session_remove_layer(s);
  spv_session_undo(s);
  spv_session_undo(s);
  assert_int_equal(spv_session_chosen_panel(s)->n_layers, 2);
  assert_false(spv_session_is_modified(s));
}

static void
of_a_locked_layer_nothing_changes_but_the_lock(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_set_layer_locked(s, 1, TRUE);
  assert_string_equal(spv_session_undo_label(s), "Lock layer");
  const SpvLayer *locked = spv_session_chosen_layer(s);
  assert_true(locked->locked);
  assert_false(spv_session_can_edit_layer(s, 1));
  assert_false(spv_session_can_move_layer(s, 1, 0));

  rename_layer(s, "chequy", NULL);
  spv_session_rename_layer(s, 1, "chequy");
  spv_session_set_layer_hidden(s, 1, TRUE);
  spv_session_move_layer(s, 1, 0);
  spv_session_remove_layer(s);
  assert_int_equal(spv_session_chosen_panel(s)->n_layers, 2);
  assert_ptr_equal(spv_session_chosen_layer(s), locked);

  /* Another may pass it, and a copy is open. */
  spv_session_move_layer(s, 0, 1);
  assert_string_equal(spv_session_chosen_panel(s)->layers[0]->id, "check");
  spv_session_undo(s);
  spv_session_select(s, 0, 1);
  spv_session_duplicate_layer(s);
  assert_false(spv_session_chosen_layer(s)->locked);
  spv_session_undo(s);

  spv_session_set_layer_locked(s, 1, FALSE);
  assert_string_equal(spv_session_undo_label(s), "Unlock layer");
  spv_session_set_layer_hidden(s, 1, TRUE);
  assert_string_equal(spv_session_undo_label(s), "Hide layer");
  spv_session_rename_layer(s, 1, "chequy");
  assert_string_equal(spv_session_undo_label(s), "Rename layer");
  assert_string_equal(spv_session_chosen_panel(s)->layers[1]->name, "chequy");
}

static void
a_layer_moves_only_to_a_place_that_there_is(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  assert_true(spv_session_can_move_layer(s, 0, 1));
  assert_true(spv_session_can_move_layer(s, 1, 0));
  assert_false(spv_session_can_move_layer(s, 1, 1));
  assert_false(spv_session_can_move_layer(s, 1, 2));
  assert_false(spv_session_can_move_layer(s, 0, (guint) -1));
  assert_false(spv_session_can_move_layer(s, (guint) -1, 0));
  spv_session_move_layer(s, 1, 2);
  assert_null(spv_session_undo_label(s));
}

static void
coming_to_a_panel_chooses_its_topmost_open_layer(void **state) {
  Fixture *f = *state;
  SpvSession *s = f->session;
  spv_session_choose_panel(s, 1);
  assert_int_equal(spv_session_panel(s), 1);
  assert_int_equal(spv_session_layer(s), -1);
  spv_session_choose_panel(s, 0);
  assert_int_equal(spv_session_layer(s), 1);
  /* On the chosen panel the choice stays, and what is out of range is nowhere. */
  spv_session_select(s, 0, 0);
  f->selection = 0;
  spv_session_choose_panel(s, 0);
  spv_session_choose_panel(s, 2);
  spv_session_choose_panel(s, -1);
  assert_int_equal(spv_session_layer(s), 0);
  assert_int_equal(f->selection, 0);

  static const struct {
    gboolean hidden[2], locked[2];
    int chosen;
  } cases[] = {
    { { FALSE, TRUE }, { FALSE, FALSE }, 0 },
    { { FALSE, FALSE }, { FALSE, TRUE }, 0 },
    { { TRUE, FALSE }, { FALSE, TRUE }, -1 },
    { { FALSE, FALSE }, { TRUE, FALSE }, 1 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS(cases); i++) {
    spv_session_select(s, 0, -1);
    for (guint k = 0; k < 2; k++) {
      spv_session_set_layer_locked(s, k, FALSE);
      spv_session_set_layer_hidden(s, k, cases[i].hidden[k]);
      spv_session_set_layer_locked(s, k, cases[i].locked[k]);
    }
    spv_session_select(s, 1, -1);
    spv_session_choose_panel(s, 0);
    assert_int_equal(spv_session_layer(s), cases[i].chosen);
  }
}

static void
a_drag_that_is_given_up_leaves_no_trace(void **state) {
  Fixture *f = *state;
  rename_layer(f->session, "a", "drag");
  rename_layer(f->session, "b", "drag");
  f->scheme = 0;
  assert_true(spv_session_drop(f->session));
  assert_int_equal(f->scheme, 1);
  assert_false(spv_session_is_modified(f->session));
  assert_null(spv_session_undo_label(f->session));
  assert_null(spv_session_redo_label(f->session));
  assert_int_equal(spv_session_layer(f->session), 1);
  assert_false(spv_session_drop(f->session));
}

static void
the_choice_follows_a_layer_that_moves(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_move_layer(s, 1, 0);
  assert_int_equal(spv_session_layer(s), 0);
  assert_string_equal(spv_session_chosen_layer(s)->id, "check");
  spv_session_undo(s);
  assert_int_equal(spv_session_layer(s), 1);
  assert_string_equal(spv_session_chosen_layer(s)->id, "check");
}

static void
a_copy_has_an_id_of_its_own(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_duplicate_layer(s);
  assert_int_equal(spv_session_chosen_panel(s)->n_layers, 3);
  assert_int_equal(spv_session_layer(s), 2);
  assert_string_not_equal(spv_session_chosen_layer(s)->id, "check");
  assert_int_equal(spv_session_chosen_layer(s)->pattern.kind, SPV_PATTERN_CHECK);
}

static void
undo_shows_the_panel_that_it_changes(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  rename_layer(s, "chequy", NULL);
  spv_session_select(s, 1, -1);
  spv_session_undo(s);
  assert_int_equal(spv_session_panel(s), 0);
}

static void
redo_chooses_the_layer_that_comes_back(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_select(s, 1, -1);
  spv_session_add_layer(s, SPV_PATTERN_PER_BEND);
  spv_session_undo(s);
  assert_int_equal(spv_session_layer(s), -1);
  spv_session_redo(s);
  assert_int_equal(spv_session_layer(s), 0);
  spv_session_select(s, 0, 0);
  spv_session_remove_layer(s);
  spv_session_undo(s);
  assert_int_equal(spv_session_layer(s), 0);
  assert_string_equal(spv_session_chosen_layer(s)->id, "field");
}

static void
a_choice_out_of_range_is_brought_back(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  spv_session_select(s, 99, 99);
  assert_int_equal(spv_session_panel(s), 1);
  assert_int_equal(spv_session_layer(s), -1);
  spv_session_select(s, -5, -5);
  assert_int_equal(spv_session_panel(s), 0);
  assert_int_equal(spv_session_layer(s), -1);
}

static void
a_panel_that_did_not_change_is_composed_once(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  const SpvComposition *first = spv_session_composition_of(s, 0);
  const SpvComposition *second = spv_session_composition_of(s, 1);
  const SpvGuide *guide = spv_session_guide(s);
  assert_ptr_equal(spv_session_composition(s), first);
  assert_ptr_equal(guide->composition, first);
  g_autoptr(SpvComposition) old = spv_composition_ref((SpvComposition *) first);
  rename_layer(s, "chequy", NULL);
  assert_ptr_not_equal(spv_session_composition_of(s, 0), old);
  assert_ptr_equal(spv_session_composition_of(s, 1), second);
  assert_ptr_equal(spv_session_guide(s)->composition, spv_session_composition_of(s, 0));
}

static void
another_colour_composes_every_panel_anew(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  const SpvScheme *scheme = spv_session_scheme(s);
  g_autoptr(SpvComposition) old = spv_composition_ref((SpvComposition *) spv_session_composition_of(s, 1));
  SpvTincture tincture = scheme->tinctures[1];
  tincture.colour.red++;
  g_autoptr(SpvScheme) recoloured = spv_scheme_with_tincture(scheme, 1, &tincture);
  spv_session_push(s, recoloured, "Change colour", NULL);
  assert_ptr_not_equal(spv_session_composition_of(s, 1), old);
}

static void
another_title_composes_nothing_anew(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  const SpvComposition *composition = spv_session_composition_of(s, 0);
  g_autoptr(SpvScheme) titled = spv_scheme_with_title(spv_session_scheme(s), "Lantern Company");
  spv_session_push(s, titled, "Change title", NULL);
  assert_ptr_equal(spv_session_composition_of(s, 0), composition);
  g_autofree char *title = NULL;
  g_object_get(s, "title", &title, NULL);
  assert_string_equal(title, "Lantern Company");
}

static void
findings_come_for_the_scheme_of_now(void **state) {
  Fixture *f = *state;
  assert_false(spv_session_findings_are_current(f->session));
  WAIT_FOR(spv_session_findings_are_current(f->session), 20000);
  assert_int_equal(f->findings, 1);
  /* The second panel is bare, and nobody has measured either. */
  g_autoptr(SpvScheme) scheme = spv_scheme_ref(spv_session_scheme(f->session));
  g_autoptr(GPtrArray) expected = spv_check_scheme(scheme, NULL, NULL, NULL, NULL);
  assert_non_null(expected);
  assert_int_equal(spv_session_findings(f->session)->len, expected->len);
  assert_true(expected->len > 0);
  for (guint i = 0; i < expected->len; i++) {
    const SpvFinding *a = g_ptr_array_index(expected, i);
    const SpvFinding *b = g_ptr_array_index(spv_session_findings(f->session), i);
    assert_int_equal(a->kind, b->kind);
    assert_int_equal(a->panel, b->panel);
  }
}

static void
edits_in_a_row_are_checked_once_at_the_end(void **state) {
  Fixture *f = *state;
  for (int i = 0; i < 20; i++) {
    g_autofree char *name = g_strdup_printf("check %d", i);
    rename_layer(f->session, name, "drag");
  }
  WAIT_FOR(spv_session_findings_are_current(f->session), 20000);
  assert_int_equal(f->findings, 1);
}

static void
a_session_may_go_while_its_checks_run(void **state) {
  (void) state;
  for (int wait = 0; wait < 120; wait += 20) {
    g_autoptr(SpvScheme) scheme = a_scheme();
    g_autoptr(SpvSession) session = spv_session_new(scheme, NULL);
    gint64 end = g_get_monotonic_time() + wait * 1000;
    while (g_get_monotonic_time() < end)
      g_main_context_iteration(NULL, FALSE);
  }
  gint64 end = g_get_monotonic_time() + 200000;
  while (g_get_monotonic_time() < end)
    g_main_context_iteration(NULL, FALSE);
}

static void
a_remedy_is_one_step_and_shows_its_panel(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  int columns = spv_pattern_measure_index(SPV_PATTERN_CHECK, "columns");
  assert_true(columns >= 0);
  g_autoptr(SpvLayer) fine = spv_layer_with_measure(spv_session_chosen_layer(s), (guint) columns,
                                                    (SpvMeasure){ SPV_UNIT_PLAIN, 16 });
  spv_session_edit_layer(s, 1, fine, "Change columns", NULL);
  spv_session_select(s, 1, -1);
  WAIT_FOR(spv_session_findings_are_current(s), 20000);
  const SpvFinding *worst = NULL;
  GPtrArray *findings = spv_session_findings(s);
  for (guint i = 0; i < findings->len && !worst; i++) {
    const SpvFinding *finding = g_ptr_array_index(findings, i);
    if (finding->has_remedy)
      worst = finding;
  }
  assert_non_null(worst);
  SpvFinding copy = *worst;
  spv_session_select(s, 0, 1);
  spv_session_set_layer_locked(s, 1, TRUE);
  spv_session_apply_finding(s, &copy);
  assert_string_equal(spv_session_undo_label(s), "Lock layer");
  spv_session_undo(s);
  spv_session_select(s, 1, -1);
  spv_session_apply_finding(s, &copy);
  assert_int_equal(spv_session_panel(s), 0);
  assert_true(spv_session_chosen_layer(s)->pattern.measures[columns].value < 16);
  spv_session_undo(s);
  assert_true(spv_session_chosen_layer(s)->pattern.measures[columns].value == 16);
}

static void
saving_clears_modified_and_remembers_the_file(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  g_autofree char *folder = a_folder();
  g_autofree char *path = g_build_filename(folder, "heron.scheme.json", NULL);
  g_autoptr(GFile) file = g_file_new_for_path(path);
  rename_layer(s, "chequy", NULL);
  assert_true(spv_session_save(s, file, NULL));
  assert_false(spv_session_is_modified(s));
  assert_true(g_file_equal(spv_session_file(s), file));
  g_autoptr(SpvScheme) back = spv_scheme_load(path, NULL);
  assert_string_equal(back->panels[0]->layers[1]->name, "chequy");
  /* Undo leaves what the file holds, redo comes back to it. */
  spv_session_undo(s);
  assert_true(spv_session_is_modified(s));
  spv_session_redo(s);
  assert_false(spv_session_is_modified(s));
  remove_folder(folder);
}

static void
a_save_that_fails_leaves_everything_as_it_was(void **state) {
  SpvSession *s = ((Fixture *) *state)->session;
  rename_layer(s, "chequy", NULL);
  g_autoptr(GFile) nowhere = g_file_new_for_path("/nonexistent-folder/heron.scheme.json");
  g_autoptr(GError) error = NULL;
  assert_false(spv_session_save(s, nowhere, &error));
  assert_true(g_error_matches(error, SPV_SCHEME_ERROR, SPV_SCHEME_ERROR_WRITE));
  assert_true(spv_session_is_modified(s));
  assert_null(spv_session_file(s));
  g_clear_error(&error);
  g_autoptr(GFile) remote = g_file_new_for_uri("https://example.org/heron.scheme.json");
  assert_false(spv_session_save(s, remote, &error));
  assert_non_null(error);
}

static void
replacing_starts_anew(void **state) {
  Fixture *f = *state;
  rename_layer(f->session, "chequy", NULL);
  g_autoptr(SpvScheme) empty = spv_scheme_new("Quarry Row Pikes", "Nothing");
  f->scheme = f->selection = 0;
  spv_session_replace(f->session, empty, NULL);
  assert_int_equal(f->scheme, 1);
  assert_int_equal(f->selection, 1);
  assert_null(spv_session_undo_label(f->session));
  assert_null(spv_session_chosen_panel(f->session));
  assert_null(spv_session_composition(f->session));
  assert_null(spv_session_guide(f->session));
  spv_session_add_layer(f->session, SPV_PATTERN_FIELD);
  spv_session_remove_layer(f->session);
  spv_session_duplicate_layer(f->session);
  spv_session_move_layer(f->session, 0, 1);
  assert_null(spv_session_undo_label(f->session));
}

int
main(void) {
#define SESSION(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)
  const struct CMUnitTest tests[] = {
    SESSION(starts_at_the_first_design),
    SESSION(an_edit_is_one_step_and_tells_once),
    SESSION(an_edit_that_changes_nothing_is_no_step),
    SESSION(a_drag_is_one_step_until_something_else_is_chosen),
    SESSION(adds_above_the_chosen_layer_and_chooses_it),
    SESSION(adds_on_top_of_a_panel_with_no_layer_chosen),
    SESSION(a_border_is_seen_on_a_bare_panel),
    SESSION(another_kind_keeps_what_it_has_and_gets_what_it_needs),
    SESSION(a_layer_is_mirrored_and_mirrored_back),
    SESSION(removing_goes_on_downwards_and_stops_at_none),
    SESSION(of_a_locked_layer_nothing_changes_but_the_lock),
    SESSION(a_layer_moves_only_to_a_place_that_there_is),
    SESSION(coming_to_a_panel_chooses_its_topmost_open_layer),
    SESSION(a_drag_that_is_given_up_leaves_no_trace),
    SESSION(the_choice_follows_a_layer_that_moves),
    SESSION(a_copy_has_an_id_of_its_own),
    SESSION(undo_shows_the_panel_that_it_changes),
    SESSION(redo_chooses_the_layer_that_comes_back),
    SESSION(a_choice_out_of_range_is_brought_back),
    SESSION(a_panel_that_did_not_change_is_composed_once),
    SESSION(another_colour_composes_every_panel_anew),
    SESSION(another_title_composes_nothing_anew),
    SESSION(findings_come_for_the_scheme_of_now),
    SESSION(edits_in_a_row_are_checked_once_at_the_end),
    cmocka_unit_test(a_session_may_go_while_its_checks_run),
    SESSION(a_remedy_is_one_step_and_shows_its_panel),
    SESSION(saving_clears_modified_and_remembers_the_file),
    SESSION(a_save_that_fails_leaves_everything_as_it_was),
    SESSION(replacing_starts_anew),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
