/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The chosen panel's name and measures. */
#include "window/test-pane-support.h"

#include "support/near.h"
#include "window/panel-pane.h"

static const SpvPanel *
panel(Bench *bench) {
  return spv_session_chosen_panel(bench->session);
}

static GtkWidget *
field(Bench *bench, const char *name) {
  return find_called(bench->pane, GTK_TYPE_ENTRY, name);
}

static void
a_size_that_is_given_is_measured(void **state) {
  Bench bench = bench_open(spv_panel_pane_new());
  GtkWidget *width = field(&bench, "Width");
  GtkWidget *measured = find_nth(bench.pane, GTK_TYPE_CHECK_BUTTON, 0);

  (void) state;
  assert_string_equal(text_of(width), "3.40");
  assert_false(gtk_check_button_get_active(GTK_CHECK_BUTTON(measured)));
  type_over(width, "7,5");
  assert_near(panel(&bench)->outline.width, 7.5, 1e-12);
  assert_true(panel(&bench)->measured);
  assert_true(gtk_check_button_get_active(GTK_CHECK_BUTTON(measured)));
  assert_string_equal(spv_session_undo_label(bench.session), "Change panel width");
  assert_int_equal(count_steps(bench.session), 1);
  spv_session_undo(bench.session);
  assert_string_equal(text_of(width), "3.40");
  assert_false(gtk_check_button_get_active(GTK_CHECK_BUTTON(measured)));
  bench_close(&bench);
}

/* The top edge was worked out from the width; the crown too. What the painter gave stays. */
static void
own_measures_follow_the_size_until_they_are_given(void **state) {
  Bench bench = bench_open(spv_panel_pane_new());
  double before = panel(&bench)->outline.own[0];

  (void) state;
  type_over(field(&bench, "Width"), "6.8");
  assert_near(panel(&bench)->outline.own[0], 2 * before, 1e-9);
  type_over(field(&bench, "Top edge"), "4");
  assert_near(panel(&bench)->outline.own[0], 4, 1e-12);
  assert_string_equal(spv_session_undo_label(bench.session), "Change top edge");
  type_over(field(&bench, "Width"), "7");
  assert_near(panel(&bench)->outline.own[0], 4, 1e-12);
  bench_close(&bench);
}

static void
what_does_not_go_together_is_said_and_not_taken(void **state) {
  Bench bench = bench_open(spv_panel_pane_new());
  GtkWidget *depth = field(&bench, "Depth");
  GtkWidget *error = NULL;

  (void) state;
  for (int n = 0; (error = find_nth(bench.pane, GTK_TYPE_LABEL, n)); n++) {
    if (gtk_widget_has_css_class(error, "error"))
      break;
  }
  assert_non_null(error);
  assert_false(is_shown(error));
  type_over(depth, "2");
  assert_near(panel(&bench)->surface.depth, 0.6, 1e-12);
  assert_true(is_shown(error));
  assert_non_null(strstr(gtk_label_get_text(GTK_LABEL(error)), "half of its width"));
  assert_true(g_unichar_isupper(g_utf8_get_char(gtk_label_get_text(GTK_LABEL(error)))));
  assert_true(gtk_widget_has_css_class(gtk_widget_get_parent(depth), "error"));
  assert_string_equal(text_of(depth), "2"); /* the painter's words stay until the field is left */
  leave_field(&bench);
  assert_false(is_shown(error));
  assert_string_equal(text_of(depth), "0.60");
  assert_int_equal(count_steps(bench.session), 0);
  bench_close(&bench);
}

static void
a_surface_is_flat_or_has_a_depth(void **state) {
  Bench bench = bench_open(spv_panel_pane_new());
  GtkWidget *surface = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Surface");
  GtkWidget *depth = field(&bench, "Depth");

  (void) state;
  gtk_drop_down_set_selected(GTK_DROP_DOWN(surface), SPV_SURFACE_FLAT);
  assert_int_equal(panel(&bench)->surface.kind, SPV_SURFACE_FLAT);
  assert_near(panel(&bench)->surface.depth, 0, 0);
  assert_false(is_shown(depth));
  assert_string_equal(spv_session_undo_label(bench.session), "Change surface");
  gtk_drop_down_set_selected(GTK_DROP_DOWN(surface), SPV_SURFACE_CYLINDER);
  assert_true(panel(&bench)->surface.depth > 0);
  assert_true(is_shown(depth));
  spv_session_undo(bench.session);
  spv_session_undo(bench.session);
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(surface)), SPV_SURFACE_DOME);
  bench_close(&bench);
}

static void
every_outline_can_be_taken(void **state) {
  Bench bench = bench_open(spv_panel_pane_new());
  GtkWidget *outline = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Outline");

  (void) state;
  for (guint i = 0; i < SPV_N_OUTLINE_FAMILIES; i++) {
    const SpvOutlineInfo *info = spv_outline_info((SpvOutlineFamily) i);
    gtk_drop_down_set_selected(GTK_DROP_DOWN(outline), i);
    assert_int_equal(panel(&bench)->outline.family, i);
    for (guint own = 0; own < info->n_own; own++)
      assert_true(is_shown(field(&bench, info->own[own].label)));
  }
  bench_close(&bench);
}

static void
a_disc_is_as_high_as_it_is_wide(void **state) {
  Bench bench = bench_open(spv_panel_pane_new());
  GtkWidget *outline = find_called(bench.pane, GTK_TYPE_DROP_DOWN, "Outline");

  (void) state;
  gtk_drop_down_set_selected(GTK_DROP_DOWN(outline), SPV_OUTLINE_DISC);
  assert_near(panel(&bench)->outline.height, 3.4, 1e-12);
  assert_false(gtk_widget_is_sensitive(field(&bench, "Height")));
  type_over(field(&bench, "Width"), "5");
  assert_near(panel(&bench)->outline.height, 5, 1e-12);
  assert_string_equal(text_of(field(&bench, "Height")), "5.00");
  bench_close(&bench);
}

static void
renames(void **state) {
  Bench bench = bench_open(spv_panel_pane_new());
  GtkWidget *name = find_called(bench.pane, GTK_TYPE_ENTRY, "Name of the panel");

  (void) state;
  gtk_editable_set_text(GTK_EDITABLE(name), "knee, right");
  assert_string_equal(panel(&bench)->name, "knee, right");
  gtk_editable_set_text(GTK_EDITABLE(name), " ");
  assert_string_equal(panel(&bench)->name, "knee, right");
  assert_non_null(find_words(bench.pane, "A panel needs a name."));
  assert_true(press_key(name, GDK_KEY_Escape, 0));
  assert_string_equal(text_of(name), "knee, right");
  assert_int_equal(count_steps(bench.session), 1);
  bench_close(&bench);
}

static void
gives_to_the_other_side(void **state) {
  Bench bench = bench_open(spv_panel_pane_new());
  GtkWidget *size = NULL, *design = NULL, *mirrored = NULL, *button;

  (void) state;
  for (int n = 0; (button = find_nth(bench.pane, GTK_TYPE_BUTTON, n)); n++) {
    if (g_strcmp0(gtk_button_get_label(GTK_BUTTON(button)), "Same si_ze") == 0)
      size = button;
    if (g_strcmp0(gtk_button_get_label(GTK_BUTTON(button)), "Same _design") == 0)
      design = button;
    if (g_strcmp0(gtk_button_get_label(GTK_BUTTON(button)), "Same design, mi_rrored") == 0)
      mirrored = button;
  }
  assert_non_null(find_words(bench.pane, "kneepad, sinister"));
  assert_false(gtk_widget_is_sensitive(size)); /* they are of one size already */
  type_over(field(&bench, "Height"), "5");
  leave_field(&bench);
  click(size);
  assert_near(spv_session_scheme(bench.session)->panels[1]->outline.height, 5, 1e-12);
  assert_string_equal(spv_session_undo_label(bench.session), "Copy size across");
  assert_false(gtk_widget_is_sensitive(size));
  click(design);
  assert_int_equal(spv_session_scheme(bench.session)->panels[1]->n_layers, 3);
  assert_false(gtk_widget_is_sensitive(design));
  assert_int_equal(spv_session_panel(bench.session), 0);
  click(mirrored);
  assert_true(spv_session_scheme(bench.session)->panels[1]->layers[2]->pattern.mirrored);
  assert_false(gtk_widget_is_sensitive(mirrored));
  assert_true(gtk_widget_is_sensitive(design));
  assert_string_equal(spv_session_undo_label(bench.session), "Copy design across, mirrored");
  assert_int_equal(count_steps(bench.session), 4);
  bench_close(&bench);
}

static void
another_panel_takes_the_place(void **state) {
  Bench bench = bench_open(spv_panel_pane_new());
  GtkWidget *name = find_called(bench.pane, GTK_TYPE_ENTRY, "Name of the panel");

  (void) state;
  gtk_editable_set_text(GTK_EDITABLE(name), "");
  spv_session_select(bench.session, 1, -1);
  assert_string_equal(text_of(name), "kneepad, sinister");
  assert_false(gtk_widget_has_css_class(name, "error"));
  assert_non_null(find_words(bench.pane, "kneepad, dexter"));
  assert_int_equal(count_steps(bench.session), 0);
  bench_close(&bench);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test(a_size_that_is_given_is_measured),
  cmocka_unit_test(own_measures_follow_the_size_until_they_are_given),
  cmocka_unit_test(what_does_not_go_together_is_said_and_not_taken),
  cmocka_unit_test(a_surface_is_flat_or_has_a_depth),
  cmocka_unit_test(every_outline_can_be_taken),
  cmocka_unit_test(a_disc_is_as_high_as_it_is_wide),
  cmocka_unit_test(renames),
  cmocka_unit_test(gives_to_the_other_side),
  cmocka_unit_test(another_panel_takes_the_place),
};

RUN_PANE_TESTS(tests)
