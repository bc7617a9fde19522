/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of layers: what it shows, keeps and does. */
#include "window/test-pane-support.h"

#include "window/layer-chooser.h"
#include "window/layer-row.h"
#include "window/layers-pane.h"

static GtkWidget *
row_at(Bench *bench, int index) {
  return find_nth(bench->pane, SPV_TYPE_LAYER_ROW, index);
}

static const SpvLayer *
layer_at(Bench *bench, guint index) {
  return spv_session_chosen_panel(bench->session)->layers[index];
}

static GtkWidget *
list_of(Bench *bench) {
  return find_nth(bench->pane, GTK_TYPE_LIST_BOX, 0);
}

static void
shows_layers_topmost_first(void **state) {
  static const char *const names[] = { "Jagged border", "Check", "Field" };
  static const char *const summaries[] = { "base, 6 points, soot", "7 columns, soot", "bone" };
  Bench bench = bench_open(spv_layers_pane_new());

  (void) state;
  for (int i = 0; i < 3; i++) {
    g_autofree char *spoken = g_strdup_printf("%s, %s", names[i], summaries[i]);
    assert_non_null(find_words(row_at(&bench, i), names[i]));
    assert_non_null(find_words(row_at(&bench, i), summaries[i]));
    assert_true(is_called(row_at(&bench, i), spoken));
  }
  assert_null(row_at(&bench, 3));
  assert_true(gtk_list_box_row_is_selected(GTK_LIST_BOX_ROW(row_at(&bench, 0))));
  bench_close(&bench);
}

/* Only a row whose layer changed is touched, and it stays the same row. */
static void
keeps_its_rows(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());
  GtkWidget *before[3];

  (void) state;
  for (int i = 0; i < 3; i++)
    before[i] = row_at(&bench, i);
  g_autoptr(SpvLayer)
      fewer = spv_layer_with_measure(layer_at(&bench, 2), 1, (SpvMeasure){ SPV_UNIT_PLAIN, 4 });
  spv_session_edit_layer(bench.session, 2, fewer, "Change points", NULL);
  for (int i = 0; i < 3; i++)
    assert_ptr_equal(row_at(&bench, i), before[i]);
  assert_non_null(find_words(before[0], "base, 4 points, soot"));
  spv_session_add_layer(bench.session, SPV_PATTERN_ROUNDEL);
  assert_non_null(find_words(row_at(&bench, 0), "Roundel"));
  for (int i = 0; i < 3; i++)
    assert_ptr_equal(row_at(&bench, i + 1), before[i]);
  spv_session_undo(bench.session);
  for (int i = 0; i < 3; i++)
    assert_ptr_equal(row_at(&bench, i), before[i]);
  bench_close(&bench);
}

static void
a_chosen_row_chooses_the_layer(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());

  (void) state;
  gtk_list_box_select_row(GTK_LIST_BOX(list_of(&bench)), GTK_LIST_BOX_ROW(row_at(&bench, 2)));
  assert_int_equal(spv_session_layer(bench.session), 0);
  spv_session_select(bench.session, 0, 1);
  assert_true(gtk_list_box_row_is_selected(GTK_LIST_BOX_ROW(row_at(&bench, 1))));
  spv_session_select(bench.session, 0, -1);
  assert_null(gtk_list_box_get_selected_row(GTK_LIST_BOX(list_of(&bench))));
  bench_close(&bench);
}

static void
hides_and_locks(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());
  GtkWidget *hide = find_called(row_at(&bench, 0), GTK_TYPE_TOGGLE_BUTTON, "Hide layer");
  GtkWidget *lock = find_called(row_at(&bench, 0), GTK_TYPE_TOGGLE_BUTTON, "Lock layer");

  (void) state;
  gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(hide), TRUE);
  assert_true(layer_at(&bench, 2)->hidden);
  assert_string_equal(spv_session_undo_label(bench.session), "Hide layer");
  assert_true(is_called(hide, "Show layer"));
  assert_true(gtk_widget_has_css_class(row_at(&bench, 0), "spv-hidden-layer"));
  gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(lock), TRUE);
  assert_true(layer_at(&bench, 2)->locked);
  assert_string_equal(gtk_widget_get_tooltip_text(row_at(&bench, 0)),
                      "Locked: unlock it to change, move or remove it.");
  spv_session_undo(bench.session);
  spv_session_undo(bench.session);
  assert_false(gtk_toggle_button_get_active(GTK_TOGGLE_BUTTON(hide)));
  assert_false(gtk_toggle_button_get_active(GTK_TOGGLE_BUTTON(lock)));
  assert_string_equal(spv_session_redo_label(bench.session), "Hide layer");
  bench_close(&bench);
}

static void
keys_move_the_chosen_layer_and_stay_with_it(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());

  (void) state;
  gtk_widget_grab_focus(row_at(&bench, 0));
  assert_true(press_key(list_of(&bench), GDK_KEY_Down, GDK_CONTROL_MASK));
  assert_string_equal(layer_at(&bench, 1)->id, "jagged-border");
  assert_int_equal(spv_session_layer(bench.session), 1);
  assert_ptr_equal(gtk_window_get_focus(GTK_WINDOW(bench.window)), row_at(&bench, 1));
  assert_true(press_key(list_of(&bench), GDK_KEY_Down, GDK_CONTROL_MASK));
  assert_true(press_key(list_of(&bench), GDK_KEY_Down, GDK_CONTROL_MASK)); /* already at the bottom */
  assert_string_equal(layer_at(&bench, 0)->id, "jagged-border");
  assert_int_equal(count_steps(bench.session), 2);
  assert_true(press_key(list_of(&bench), GDK_KEY_Up, GDK_CONTROL_MASK));
  assert_string_equal(layer_at(&bench, 1)->id, "jagged-border");
  bench_close(&bench);
}

static void
a_locked_layer_stays_where_it_is(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());

  (void) state;
  g_autoptr(SpvLayer) locked = spv_layer_with_locked(layer_at(&bench, 2), TRUE);
  spv_session_edit_layer(bench.session, 2, locked, "Lock layer", NULL);
  press_key(list_of(&bench), GDK_KEY_Down, GDK_CONTROL_MASK);
  assert_string_equal(layer_at(&bench, 2)->id, "jagged-border");
  bench_close(&bench);
}

/* Lets row DRAGGED go over row TARGET, on its upper or its lower half; returns whether it was taken. */
static gboolean
drop_row(GtkWidget *target, SpvLayerItem *dragged, gboolean upper) {
  g_autoptr(GListModel) controllers = gtk_widget_observe_controllers(target);
  double y = gtk_widget_get_height(target) * (upper ? 0.25 : 0.75);
  g_auto(GValue) value = G_VALUE_INIT;
  gboolean taken = FALSE;

  g_value_init(&value, SPV_TYPE_LAYER_ITEM);
  g_value_set_object(&value, dragged);
  for (guint i = 0; i < g_list_model_get_n_items(controllers); i++) {
    g_autoptr(GtkEventController) controller = g_list_model_get_item(controllers, i);
    if (GTK_IS_DROP_TARGET(controller))
      g_signal_emit_by_name(controller, "drop", &value, 10.0, y, &taken);
  }
  return taken;
}

static void
a_dropped_row_moves_its_layer(void **state) {
  /* From the list's order border, check, field: which row goes over which, and what lies on top then. */
  static const struct {
    int dragged, target;
    gboolean upper;
    const char *order[3];
  } rows[] = {
    { 0, 2, FALSE, { "check", "field", "jagged-border" } },
    { 0, 2, TRUE, { "check", "jagged-border", "field" } },
    { 0, 1, TRUE, { "jagged-border", "check", "field" } },
    { 2, 0, TRUE, { "field", "jagged-border", "check" } },
    { 2, 0, FALSE, { "jagged-border", "field", "check" } },
    { 1, 1, TRUE, { "jagged-border", "check", "field" } },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    Bench bench = bench_open(spv_layers_pane_new());
    SpvLayerItem *item = spv_layer_row_item(SPV_LAYER_ROW(row_at(&bench, rows[i].dragged)));
    assert_true(drop_row(row_at(&bench, rows[i].target), item, rows[i].upper));
    for (guint n = 0; n < 3; n++)
      assert_string_equal(layer_at(&bench, 2 - n)->id, rows[i].order[n]);
    bench_close(&bench);
  }
}

static void
a_row_of_another_window_is_not_taken(void **state) {
  Bench bench = bench_open(spv_layers_pane_new()), other = bench_open(spv_layers_pane_new());

  (void) state;
  assert_false(drop_row(row_at(&bench, 2), spv_layer_row_item(SPV_LAYER_ROW(row_at(&other, 0))), FALSE));
  assert_int_equal(count_steps(bench.session), 0);
  bench_close(&other);
  bench_close(&bench);
}

static void
renames_in_place(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());
  GtkWidget *row = row_at(&bench, 0), *entry;

  (void) state;
  spv_layers_pane_rename(SPV_LAYERS_PANE(bench.pane));
  entry = find_called(row, GTK_TYPE_ENTRY, "Name of the layer");
  assert_string_equal(text_of(entry), "Jagged border");
  gtk_editable_set_text(GTK_EDITABLE(entry), "  reed\nedge ");
  press_enter(entry);
  assert_string_equal(layer_at(&bench, 2)->name, "reed edge");
  assert_string_equal(spv_session_undo_label(bench.session), "Rename layer");
  assert_non_null(find_words(row, "reed edge"));

  assert_true(press_key(list_of(&bench), GDK_KEY_F2, 0));
  gtk_editable_set_text(GTK_EDITABLE(entry), "not this");
  assert_true(press_key(entry, GDK_KEY_Escape, 0));
  assert_string_equal(layer_at(&bench, 2)->name, "reed edge");

  spv_layers_pane_rename(SPV_LAYERS_PANE(bench.pane));
  gtk_editable_set_text(GTK_EDITABLE(entry), " ");
  leave_field(&bench);
  assert_string_equal(layer_at(&bench, 2)->name, "reed edge");
  assert_int_equal(count_steps(bench.session), 1);
  bench_close(&bench);
}

/* Both panels may have a layer of the same id: a name half typed belongs to the one that it was begun on. */
static void
another_panel_ends_a_rename(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());
  GtkWidget *entry;

  (void) state;
  g_autoptr(SpvPanel) same = spv_panel_with_layers(spv_session_scheme(bench.session)->panels[1],
                                                   spv_session_scheme(bench.session)->panels[0]->layers, 3);
  g_autoptr(SpvScheme) scheme = spv_scheme_with_panel(spv_session_scheme(bench.session), 1, same);
  spv_session_push(bench.session, scheme, "Copy design", NULL);
  spv_layers_pane_rename(SPV_LAYERS_PANE(bench.pane));
  entry = find_called(row_at(&bench, 0), GTK_TYPE_ENTRY, "Name of the layer");
  gtk_editable_set_text(GTK_EDITABLE(entry), "half ty");
  spv_session_select(bench.session, 1, 2);
  leave_field(&bench);
  assert_string_equal(layer_at(&bench, 2)->name, "Jagged border");
  bench_close(&bench);
}

static void
an_empty_panel_offers_a_field(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());
  GtkWidget *words = find_words(bench.pane, "No layers yet. Add a field to start.");
  GtkWidget *button;

  (void) state;
  assert_false(is_shown(words));
  spv_session_select(bench.session, 1, -1);
  assert_true(is_shown(words));
  assert_false(is_shown(list_of(&bench)));
  button = gtk_widget_get_next_sibling(words);
  click(button);
  assert_int_equal(spv_session_chosen_panel(bench.session)->n_layers, 1);
  assert_int_equal(layer_at(&bench, 0)->pattern.kind, SPV_PATTERN_FIELD);
  assert_int_equal(spv_session_layer(bench.session), 0);
  assert_false(is_shown(words));
  bench_close(&bench);
}

static GtkWidget *
chooser_of(Bench *bench) {
  GtkWidget *menu = find_called(bench->pane, GTK_TYPE_MENU_BUTTON, "Add a layer");

  return GTK_WIDGET(gtk_menu_button_get_popover(GTK_MENU_BUTTON(menu)));
}

/* Its list is there while it is open, or once something was typed. */
static void
fill_chooser(GtkWidget *chooser) {
  GtkWidget *search = find_nth(chooser, GTK_TYPE_SEARCH_ENTRY, 0);

  gtk_editable_set_text(GTK_EDITABLE(search), "?");
  gtk_editable_set_text(GTK_EDITABLE(search), "");
}

static void
the_chooser_adds_every_kind(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());
  GtkWidget *chooser = chooser_of(&bench);

  (void) state;
  assert_true(SPV_IS_LAYER_CHOOSER(chooser));
  fill_chooser(chooser);
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
    const char *name = spv_pattern_info((SpvPatternKind) kind)->label;
    click(find_called(chooser, GTK_TYPE_BUTTON, name));
    assert_int_equal(spv_session_chosen_layer(bench.session)->pattern.kind, kind);
  }
  assert_int_equal(count_steps(bench.session), SPV_N_PATTERNS);
  bench_close(&bench);
}

/* How many kinds CHOOSER offers. */
static guint
count_offered(GtkWidget *chooser) {
  guint n = 0;
  GtkWidget *button;

  for (int i = 0; (button = find_nth(chooser, GTK_TYPE_BUTTON, i)); i++)
    n += g_object_get_data(G_OBJECT(button), "kind") || find_words(button, "Field") ? 1 : 0;
  return n;
}

static void
the_chooser_finds_kinds_by_their_words(void **state) {
  /* What is typed, how many are found, and one of them. */
  static const struct {
    const char *typed;
    guint n;
    const char *one;
  } rows[] = {
    { "cresc", 1, "Crescent" }, { "CROSS F", 1, "Cross fitchy" }, { "oak-branch", 1, "Oak branch" },
    { "field", 1, "Field" },    { "per pa", 2, "Per pall" },
  };
  Bench bench = bench_open(spv_layers_pane_new());
  GtkWidget *chooser = chooser_of(&bench), *search = find_nth(chooser, GTK_TYPE_SEARCH_ENTRY, 0);
  GtkWidget *nothing = find_words(chooser, "Nothing is called so. Try another word.");

  (void) state;
  assert_true(is_called(search, "Search for a kind of layer"));
  assert_int_equal(count_offered(chooser), 0);
  fill_chooser(chooser);
  assert_int_equal(count_offered(chooser), SPV_N_PATTERNS);
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    gtk_editable_set_text(GTK_EDITABLE(search), rows[i].typed);
    assert_int_equal(count_offered(chooser), rows[i].n);
    assert_non_null(find_called(chooser, GTK_TYPE_BUTTON, rows[i].one));
    assert_false(gtk_widget_get_visible(nothing));
  }
  gtk_editable_set_text(GTK_EDITABLE(search), "kraken");
  assert_int_equal(count_offered(chooser), 0);
  assert_true(gtk_widget_get_visible(nothing));
  press_enter(search);
  assert_int_equal(count_steps(bench.session), 0);
  bench_close(&bench);
}

static void
enter_adds_the_first_that_is_found(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());
  GtkWidget *chooser = chooser_of(&bench), *search = find_nth(chooser, GTK_TYPE_SEARCH_ENTRY, 0);

  (void) state;
  spv_layers_pane_choose_kind(SPV_LAYERS_PANE(bench.pane));
  WAIT_FOR(gtk_widget_get_mapped(search), 5000);
  press_enter(search);
  assert_int_equal(count_steps(bench.session), 0); /* nothing was typed: nothing was asked for */
  gtk_editable_set_text(GTK_EDITABLE(search), "lant");
  press_enter(search);
  assert_int_equal(spv_session_chosen_layer(bench.session)->pattern.kind, SPV_PATTERN_LANTERN);
  WAIT_FOR(!gtk_widget_get_mapped(search), 5000);
  spv_layers_pane_choose_kind(SPV_LAYERS_PANE(bench.pane));
  WAIT_FOR(gtk_widget_get_mapped(search), 5000);
  assert_string_equal(text_of(search), "");
  assert_true(press_key(search, GDK_KEY_Down, 0));
  assert_non_null(find_words(gtk_root_get_focus(gtk_widget_get_root(search)), "Field"));
  gtk_popover_popdown(GTK_POPOVER(chooser));
  WAIT_FOR(!gtk_widget_get_mapped(search), 5000);
  bench_close(&bench);
}

static void
a_row_says_how_many_there_are_and_what_they_are_laid_on(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());

  (void) state;
  spv_session_add_layer(bench.session, SPV_PATTERN_MULLET);
  assert_non_null(find_words(row_at(&bench, 0), "5 points, bone"));
  int number = spv_pattern_measure_index(SPV_PATTERN_MULLET, "number");
  g_autoptr(SpvLayer)
      three = spv_layer_with_measure(layer_at(&bench, 3), (guint) number, (SpvMeasure){ SPV_UNIT_PLAIN, 3 });
  g_autoptr(SpvLayer) laid = spv_layer_with_on(three, "jagged-border");
  spv_session_edit_layer(bench.session, 3, laid, "Change number", NULL);
  assert_non_null(find_words(row_at(&bench, 0), "×\u20093, 5 points, on “Jagged border”, bone"));
  g_autoptr(SpvLayer) crossed = spv_layer_with_counterchange(three, "check");
  g_autoptr(SpvLayer) mirrored = spv_layer_with_mirrored(crossed, TRUE);
  spv_session_edit_layer(bench.session, 3, mirrored, "Counterchange layer", NULL);
  assert_non_null(find_words(row_at(&bench, 0), "×\u20093, 5 points, counterchanged, mirrored"));
  spv_session_add_layer(bench.session, SPV_PATTERN_LETTERING);
  assert_non_null(strstr(gtk_widget_get_tooltip_text(row_at(&bench, 0)), "“VII”"));
  bench_close(&bench);
}

static void
another_document_fills_it_anew(void **state) {
  Bench bench = bench_open(spv_layers_pane_new());
  g_autoptr(SpvScheme) other = a_scheme();

  (void) state;
  spv_session_replace(bench.session, other, NULL);
  assert_non_null(find_words(row_at(&bench, 0), "Check"));
  assert_null(row_at(&bench, 2));
  g_object_set(bench.pane, "session", NULL, NULL);
  assert_null(row_at(&bench, 0));
  bench_close(&bench);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test(shows_layers_topmost_first),
  cmocka_unit_test(keeps_its_rows),
  cmocka_unit_test(a_chosen_row_chooses_the_layer),
  cmocka_unit_test(hides_and_locks),
  cmocka_unit_test(keys_move_the_chosen_layer_and_stay_with_it),
  cmocka_unit_test(a_locked_layer_stays_where_it_is),
  cmocka_unit_test(a_dropped_row_moves_its_layer),
  cmocka_unit_test(a_row_of_another_window_is_not_taken),
  cmocka_unit_test(renames_in_place),
  cmocka_unit_test(another_panel_ends_a_rename),
  cmocka_unit_test(an_empty_panel_offers_a_field),
  cmocka_unit_test(the_chooser_adds_every_kind),
  cmocka_unit_test(the_chooser_finds_kinds_by_their_words),
  cmocka_unit_test(enter_adds_the_first_that_is_found),
  cmocka_unit_test(a_row_says_how_many_there_are_and_what_they_are_laid_on),
  cmocka_unit_test(another_document_fills_it_anew),
};

RUN_PANE_TESTS(tests)
