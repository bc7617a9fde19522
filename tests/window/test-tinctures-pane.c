/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The scheme's tinctures. */
#include "window/test-pane-support.h"

#include <math.h>

#include "window/tincture-choice.h"
#include "window/tincture-colour.h"
#include "window/tincture-fur.h"
#include "window/tincture-row.h"
#include "window/tinctures-pane.h"

static const SpvTincture *
tincture(Bench *bench, guint index) {
  return &spv_session_scheme(bench->session)->tinctures[index];
}

static GtkWidget *
row_at(Bench *bench, int index) {
  return find_nth(bench->pane, SPV_TYPE_TINCTURE_ROW, index);
}

static void
a_run_of_typing_is_one_step(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  GtkWidget *row = row_at(&bench, 2), *name = find_called(row, GTK_TYPE_ENTRY, "Name of deep sea green");

  (void) state;
  type_over(GTK_WIDGET(gtk_editable_get_delegate(GTK_EDITABLE(name))), "reed green");
  assert_string_equal(tincture(&bench, 2)->name, "reed green");
  assert_string_equal(tincture(&bench, 2)->id, "vert");
  assert_ptr_equal(row_at(&bench, 2), row);
  assert_string_equal(text_of(name), "reed green");
  assert_string_equal(spv_session_undo_label(bench.session), "Rename tincture");
  assert_true(is_called(name, "Name of reed green"));
  press_enter(name);
  assert_int_equal(count_steps(bench.session), 1);
  spv_session_undo(bench.session);
  assert_string_equal(text_of(name), "deep sea green");
  bench_close(&bench);
}

static void
a_name_is_needed(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  GtkWidget *name = find_called(row_at(&bench, 0), GTK_TYPE_ENTRY, "Name of bone");

  (void) state;
  gtk_editable_set_text(GTK_EDITABLE(name), "  ");
  assert_string_equal(tincture(&bench, 0)->name, "bone");
  assert_true(gtk_widget_has_css_class(name, "error"));
  assert_string_equal(gtk_widget_get_tooltip_text(name), "A tincture needs a name.");
  assert_true(press_key(name, GDK_KEY_Escape, 0));
  assert_string_equal(text_of(name), "bone");
  assert_false(gtk_widget_has_css_class(name, "error"));
  assert_int_equal(count_steps(bench.session), 0);
  bench_close(&bench);
}

static void
only_an_unused_tincture_can_go(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  GtkWidget *used = find_called(row_at(&bench, 0), GTK_TYPE_BUTTON, "Remove “bone”");
  GtkWidget *unused = find_called(row_at(&bench, 2), GTK_TYPE_BUTTON, "Remove “deep sea green”");

  (void) state;
  assert_false(gtk_widget_is_sensitive(used));
  assert_non_null(strstr(gtk_widget_get_tooltip_text(used), "kneepad, dexter"));
  click(unused);
  assert_int_equal(spv_session_scheme(bench.session)->n_tinctures, 2);
  assert_null(row_at(&bench, 2));
  assert_string_equal(spv_session_undo_label(bench.session), "Remove tincture");
  spv_session_undo(bench.session);
  assert_non_null(find_called(row_at(&bench, 2), GTK_TYPE_BUTTON, "Remove “deep sea green”"));
  bench_close(&bench);
}

static void
count(gpointer counter) {
  ++*(guint *) counter;
}

/* Each setting of a tooltip waits for the display: a drag has no time for that. */
static void
tips_that_stay_the_same_are_not_set_again(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  GtkWidget *button = find_called(row_at(&bench, 2), GTK_TYPE_BUTTON, "Remove “deep sea green”");
  guint n = 0;

  (void) state;
  g_signal_connect_swapped(button, "notify::tooltip-text", G_CALLBACK(count), &n);
  spv_session_rename_layer(bench.session, 1, "Chequy");
  assert_int_equal(n, 0);
  g_autoptr(SpvLayer) green = spv_layer_with_tincture(spv_session_chosen_layer(bench.session), 0, "vert");
  spv_session_edit_layer(bench.session, 2, green, "Change tincture", NULL);
  assert_int_equal(n, 1);
  assert_non_null(strstr(gtk_widget_get_tooltip_text(button), "kneepad, dexter"));
  bench_close(&bench);
}

/* Chooses WHAT in the menu of the button that adds. */
static void
add(Bench *bench, const char *action, const char *what) {
  GVariant *parameter = what ? g_variant_new_string(what) : NULL;

  assert_true(
      gtk_widget_activate_action_variant(find_nth(bench->pane, GTK_TYPE_MENU_BUTTON, 0), action, parameter));
}

static void
a_new_one_takes_a_hatch_that_is_free(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  GtkWidget *button = find_called(bench.pane, GTK_TYPE_MENU_BUTTON, "Add a tincture");
  GtkWidget *first = row_at(&bench, 0);

  (void) state;
  add(&bench, "tincture.add-colour", NULL);
  assert_int_equal(tincture(&bench, 3)->hatch, SPV_HATCH_OR);
  assert_string_equal(tincture(&bench, 3)->id, "or");
  assert_ptr_equal(row_at(&bench, 0), first);
  for (guint n = 4; n < SPV_SCHEME_MAX_TINCTURES; n++)
    add(&bench, "tincture.add-colour", NULL);
  assert_int_equal(spv_session_scheme(bench.session)->n_tinctures, SPV_SCHEME_MAX_TINCTURES);
  assert_false(gtk_widget_is_sensitive(button));
  for (guint i = 0; i < SPV_SCHEME_MAX_TINCTURES; i++)
    assert_int_equal(spv_scheme_find_tincture(spv_session_scheme(bench.session), tincture(&bench, i)->id), i);
  bench_close(&bench);
}

static void
changes_the_hatch(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  GtkWidget *hatch = find_called(row_at(&bench, 1), GTK_TYPE_DROP_DOWN, "Hatch of soot");

  (void) state;
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(hatch)), SPV_HATCH_SABLE);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(hatch), SPV_HATCH_AZURE);
  assert_int_equal(tincture(&bench, 1)->hatch, SPV_HATCH_AZURE);
  assert_string_equal(spv_session_undo_label(bench.session), "Change hatch");
  spv_session_undo(bench.session);
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(hatch)), SPV_HATCH_SABLE);
  bench_close(&bench);
}

static void
the_dialog_changes_the_colour_when_the_painter_agrees(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  GdkRGBA brick = { 0.625f, 0.1875f, 0.15625f, 1 }, shown;

  (void) state;
  for (int agrees = 0; agrees < 2; agrees++) {
    GtkWidget *dialog = spv_tincture_colour_ask(bench.pane, bench.session, "vert");
    gpointer gone = dialog;
    g_object_add_weak_pointer(G_OBJECT(dialog), &gone);
    gtk_color_chooser_get_rgba(GTK_COLOR_CHOOSER(dialog), &shown);
    assert_int_equal((int) (shown.green * 255 + 0.5f), 0x5e);
    gtk_color_chooser_set_rgba(GTK_COLOR_CHOOSER(dialog), &brick);
    gtk_dialog_response(GTK_DIALOG(dialog), agrees ? GTK_RESPONSE_OK : GTK_RESPONSE_CANCEL);
    WAIT_FOR(gone == NULL, 5000);
    assert_int_equal(tincture(&bench, 2)->colour.red, agrees ? 0x9f : 0x21);
    assert_int_equal(count_steps(bench.session), agrees);
  }
  assert_int_equal(tincture(&bench, 2)->colour.green, 0x30);
  assert_int_equal(tincture(&bench, 2)->colour.blue, 0x28);
  bench_close(&bench);
}

/* "ermine" of bone and soot, its row, and what its button opens. */
static SpvTinctureFur *
add_ermine(Bench *bench) {
  GtkWidget *fur;

  add(bench, "tincture.add-fur", "ermine");
  assert_int_equal(spv_session_scheme(bench->session)->n_tinctures, 4);
  fur = find_nth(row_at(bench, 3), SPV_TYPE_TINCTURE_FUR, 0);
  assert_non_null(fur);
  return SPV_TINCTURE_FUR(fur);
}

static void
a_fur_is_made_of_two_plain_tinctures(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  GtkWidget *fur = GTK_WIDGET(add_ermine(&bench)), *spots;

  (void) state;
  assert_int_equal(tincture(&bench, 3)->fur, SPV_FUR_ERMINE);
  assert_string_equal(tincture(&bench, 3)->of[0], "argent");
  assert_string_equal(tincture(&bench, 3)->of[1], "sable");
  assert_string_equal(spv_session_undo_label(bench.session), "Add fur");
  assert_non_null(find_called(row_at(&bench, 3), GTK_TYPE_BUTTON, "Fur of ermine"));
  assert_false(
      is_shown(find_nth(row_at(&bench, 3), GTK_TYPE_DROP_DOWN, 3))); /* the hatch's, after the fur's */

  /* No fur is made of a fur. */
  spots = find_called(fur, GTK_TYPE_DROP_DOWN, "Spots");
  assert_int_equal(g_list_model_get_n_items(gtk_drop_down_get_model(GTK_DROP_DOWN(spots))), 3);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(spots), 2);
  assert_string_equal(tincture(&bench, 3)->of[1], "vert");
  /* The ground's own colour for the spots: then the ground takes theirs. */
  gtk_drop_down_set_selected(GTK_DROP_DOWN(spots), 0);
  assert_string_equal(tincture(&bench, 3)->of[0], "vert");
  assert_string_equal(tincture(&bench, 3)->of[1], "argent");
  assert_string_equal(spv_session_undo_label(bench.session), "Change spots of fur");
  gtk_drop_down_set_selected(GTK_DROP_DOWN(find_called(fur, GTK_TYPE_DROP_DOWN, "Fur")), SPV_FUR_POTENT - 1);
  assert_int_equal(tincture(&bench, 3)->fur, SPV_FUR_POTENT);
  /* What a fur is made of must stay. */
  assert_false(
      gtk_widget_is_sensitive(find_called(row_at(&bench, 2), GTK_TYPE_BUTTON, "Remove “deep sea green”")));
  spv_session_undo(bench.session);
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(find_called(fur, GTK_TYPE_DROP_DOWN, "Fur"))),
                   SPV_FUR_ERMINE - 1);
  bench_close(&bench);
}

static void
the_pitch_of_a_fur_goes_by_the_line_until_it_is_given(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  GtkWidget *pitch = find_called(GTK_WIDGET(add_ermine(&bench)), GTK_TYPE_ENTRY, "Pitch");
  GtkWidget *button = find_nth(row_at(&bench, 3), GTK_TYPE_MENU_BUTTON, 0);
  double fine = spv_fur_smallest_pitch(SPV_FUR_ERMINE, spv_session_scheme(bench.session)->finest_line);

  (void) state;
  assert_true(tincture(&bench, 3)->pitch == 0);
  assert_true(fabs(g_ascii_strtod(text_of(pitch), NULL) - fine) <= 0.005);
  gtk_editable_set_text(GTK_EDITABLE(pitch), "2.5");
  assert_true(tincture(&bench, 3)->pitch == 2.5);
  assert_true(is_called(button, "Ermine, 2.50\u202fmm from spot to spot"));
  press_enter(pitch);
  gtk_editable_set_text(GTK_EDITABLE(pitch), "");
  press_enter(pitch);
  assert_true(tincture(&bench, 3)->pitch == 0);
  assert_true(fabs(g_ascii_strtod(text_of(pitch), NULL) - fine) <= 0.005);
  bench_close(&bench);
}

static void
a_fur_needs_two_tinctures(void **state) {
  Bench bench = bench_open(spv_tinctures_pane_new());
  g_autoptr(SpvScheme) bare = spv_scheme_new("Lantern Company", "One panel");

  (void) state;
  spv_session_replace(bench.session, bare, NULL);
  for (guint n = 0; n < 3; n++) {
    gtk_widget_activate_action(find_nth(bench.pane, GTK_TYPE_MENU_BUTTON, 0), "tincture.add-fur", "s",
                               "vair");
    assert_int_equal(spv_session_scheme(bench.session)->n_tinctures, n < 2 ? n : n + 1);
    if (n < 2)
      add(&bench, "tincture.add-colour", NULL);
  }
  bench_close(&bench);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test(a_run_of_typing_is_one_step),
  cmocka_unit_test(a_name_is_needed),
  cmocka_unit_test(only_an_unused_tincture_can_go),
  cmocka_unit_test(tips_that_stay_the_same_are_not_set_again),
  cmocka_unit_test(a_new_one_takes_a_hatch_that_is_free),
  cmocka_unit_test(changes_the_hatch),
  cmocka_unit_test(a_fur_is_made_of_two_plain_tinctures),
  cmocka_unit_test(the_pitch_of_a_fur_goes_by_the_line_until_it_is_given),
  cmocka_unit_test(a_fur_needs_two_tinctures),
  cmocka_unit_test(the_dialog_changes_the_colour_when_the_painter_agrees),
};

RUN_PANE_TESTS(tests)
