/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The findings and the line that they go by. */
#include "window/test-pane-support.h"

#include "support/near.h"
#include "window/finding-row.h"
#include "window/findings-pane.h"

static GtkWidget *
row_at(Bench *bench, int index) {
  return find_nth(bench->pane, SPV_TYPE_FINDING_ROW, index);
}

static void
wait_for_findings(Bench *bench) {
  WAIT_FOR(spv_session_findings_are_current(bench->session), 20000);
}

/* The first row that offers a remedy, or NULL. */
static SpvFindingRow *
row_with_remedy(Bench *bench) {
  GtkWidget *row;

  for (int i = 0; (row = row_at(bench, i)); i++) {
    if (spv_finding_item_use(spv_finding_row_item(SPV_FINDING_ROW(row))))
      return SPV_FINDING_ROW(row);
  }
  return NULL;
}

/* Twenty columns of cells on a kneepad 3.4 mm wide are 0.17 mm each. */
static void
crowd_the_check(Bench *bench) {
  const SpvLayer *check = spv_session_chosen_panel(bench->session)->layers[1];

  g_autoptr(SpvLayer) crowded = spv_layer_with_measure(check, 0, (SpvMeasure){ SPV_UNIT_PLAIN, 20 });
  spv_session_edit_layer(bench->session, 1, crowded, "Change columns", NULL);
  wait_for_findings(bench);
}

static void
says_and_mends(void **state) {
  Bench bench = bench_open(spv_findings_pane_new());
  SpvFindingRow *row;
  SpvFinding finding;

  (void) state;
  crowd_the_check(&bench);
  row = row_with_remedy(&bench);
  assert_non_null(row);
  finding = *spv_finding_item_finding(spv_finding_row_item(row));
  assert_int_equal(finding.severity, SPV_SEVERITY_WARNING);
  assert_true(gtk_widget_has_css_class(GTK_WIDGET(row), "spv-warning"));
  assert_non_null(strstr(spv_finding_item_message(spv_finding_row_item(row)), "your line is 0.25\u202fmm"));
  click(find_nth(GTK_WIDGET(row), GTK_TYPE_BUTTON, 0));
  assert_true(spv_measure_equal(spv_session_scheme(bench.session)
                                    ->panels[finding.panel]
                                    ->layers[finding.remedy.layer]
                                    ->pattern.measures[finding.remedy.measure],
                                finding.remedy.value));
  wait_for_findings(&bench);
  for (int i = 0; row_at(&bench, i); i++) {
    const SpvFinding *left = spv_finding_item_finding(
        spv_finding_row_item(SPV_FINDING_ROW(row_at(&bench, i))));
    assert_false(left->panel == finding.panel && left->layer == finding.layer &&
                 left->severity == SPV_SEVERITY_WARNING && left->tincture == finding.tincture);
  }
  bench_close(&bench);
}

static void
a_remedy_waits_until_its_layer_is_unlocked(void **state) {
  Bench bench = bench_open(spv_findings_pane_new());
  GtkWidget *use;

  (void) state;
  crowd_the_check(&bench);
  spv_session_set_layer_locked(bench.session, 1, TRUE);
  wait_for_findings(&bench);
  use = find_nth(GTK_WIDGET(row_with_remedy(&bench)), GTK_TYPE_BUTTON, 0);
  assert_false(gtk_widget_is_sensitive(use));
  assert_string_equal(gtk_widget_get_tooltip_text(use), "The layer is locked: unlock it first.");
  spv_session_set_layer_locked(bench.session, 1, FALSE);
  wait_for_findings(&bench);
  click(find_nth(GTK_WIDGET(row_with_remedy(&bench)), GTK_TYPE_BUTTON, 0));
  assert_string_equal(spv_session_undo_label(bench.session), "Mend “Check”");
  bench_close(&bench);
}

static void
those_of_the_chosen_panel_come_first(void **state) {
  Bench bench = bench_open(spv_findings_pane_new());
  SpvFindingItem *item;

  (void) state;
  crowd_the_check(&bench);
  /* Nobody has measured the other panel, and that matters once it has a design. */
  spv_session_choose_panel(bench.session, 1);
  spv_session_add_layer(bench.session, SPV_PATTERN_FIELD);
  wait_for_findings(&bench);
  spv_session_choose_panel(bench.session, 0);
  item = spv_finding_row_item(SPV_FINDING_ROW(row_at(&bench, 0)));
  assert_int_equal(spv_finding_item_finding(item)->panel, 0);
  assert_null(spv_finding_item_panel(item));
  spv_session_select(bench.session, 1, -1);
  item = spv_finding_row_item(SPV_FINDING_ROW(row_at(&bench, 0)));
  assert_int_equal(spv_finding_item_finding(item)->panel, 1);
  assert_null(spv_finding_item_panel(item));
  item = spv_finding_row_item(SPV_FINDING_ROW(row_at(&bench, 1)));
  assert_int_equal(spv_finding_item_finding(item)->panel, 0);
  assert_string_equal(spv_finding_item_panel(item), "kneepad, dexter");
  bench_close(&bench);
}

static void
a_row_goes_where_its_finding_is(void **state) {
  Bench bench = bench_open(spv_findings_pane_new());
  SpvFindingRow *row;
  int layer;

  (void) state;
  crowd_the_check(&bench);
  spv_session_select(bench.session, 1, -1);
  row = row_with_remedy(&bench);
  layer = spv_finding_item_finding(spv_finding_row_item(row))->layer;
  g_signal_emit_by_name(find_nth(bench.pane, GTK_TYPE_LIST_BOX, 0), "row-activated", row);
  assert_int_equal(spv_session_panel(bench.session), 0);
  assert_int_equal(spv_session_layer(bench.session), layer);
  bench_close(&bench);
}

/* What still says the same stays the same row: nothing flickers under the painter's eyes. */
static void
keeps_rows_that_say_the_same(void **state) {
  Bench bench = bench_open(spv_findings_pane_new());
  GtkWidget *last = NULL;
  int n = 0;

  (void) state;
  crowd_the_check(&bench);
  for (; row_at(&bench, n); n++)
    last = row_at(&bench, n);
  g_autoptr(SpvScheme) renamed = spv_scheme_with_title(spv_session_scheme(bench.session), "Lantern Company");
  spv_session_push(bench.session, renamed, "Change title", NULL);
  wait_for_findings(&bench);
  assert_ptr_equal(row_at(&bench, n - 1), last);
  bench_close(&bench);
}

static void
the_finest_line_is_the_painters(void **state) {
  Bench bench = bench_open(spv_findings_pane_new());
  GtkWidget *line = find_called(bench.pane, GTK_TYPE_ENTRY, "Finest line");

  (void) state;
  assert_string_equal(text_of(line), "0.25");
  type_over(line, "0,1");
  assert_near(spv_session_scheme(bench.session)->finest_line, 0.1, 1e-12);
  assert_string_equal(spv_session_undo_label(bench.session), "Change finest line");
  assert_int_equal(count_steps(bench.session), 1);
  type_over(line, "9");
  assert_near(spv_session_scheme(bench.session)->finest_line, 0.1, 1e-12);
  press_enter(line);
  assert_string_equal(text_of(line), "0.10");
  bench_close(&bench);
}

static void
says_so_when_there_is_nothing_to_mend(void **state) {
  Bench bench = bench_open(spv_findings_pane_new());
  GtkWidget *words = find_words(bench.pane, "Nothing to mend: every stroke is as wide as your line.");

  (void) state;
  wait_for_findings(&bench);
  assert_false(is_shown(words));
  /* One measured panel with a field on it. */
  const SpvPanel *panel = spv_session_chosen_panel(bench.session);
  g_autoptr(SpvPanel) measured = spv_panel_with_measured(panel, TRUE);
  g_autoptr(SpvPanel) plain = spv_panel_with_layers(measured, panel->layers, 1);
  SpvPanel *panels[] = { plain };
  g_autoptr(SpvScheme) scheme = spv_scheme_with_panels(spv_session_scheme(bench.session), panels, 1);
  spv_session_push(bench.session, scheme, "Keep one panel", NULL);
  wait_for_findings(&bench);
  assert_true(is_shown(words));
  assert_null(row_at(&bench, 0));
  bench_close(&bench);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test(says_and_mends),
    cmocka_unit_test(a_remedy_waits_until_its_layer_is_unlocked),
  cmocka_unit_test(those_of_the_chosen_panel_come_first),
  cmocka_unit_test(a_row_goes_where_its_finding_is),
  cmocka_unit_test(keeps_rows_that_say_the_same),
  cmocka_unit_test(the_finest_line_is_the_painters),
  cmocka_unit_test(says_so_when_there_is_nothing_to_mend),
};

RUN_PANE_TESTS(tests)
