/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The field for one measure: what typing, keys and its unit menu give. */
#include "window/test-pane-support.h"

#include "support/near.h"

#define PANEL_WIDTH 3.4
#define PANEL_HEIGHT 4.1

static const SpvMeasureSpec depth = { .key = "depth",
                                      .label = "Depth",
                                      .type = SPV_MEASURE_LENGTH,
                                      .basis = SPV_BASIS_WIDTH,
                                      .preset = { SPV_UNIT_RELATIVE, 0.2 },
                                      .min = 0.05,
                                      .max = 10 };
static const SpvMeasureSpec slope = { .key = "angle",
                                      .label = "Slope",
                                      .type = SPV_MEASURE_ANGLE,
                                      .preset = { SPV_UNIT_AUTO, 0 },
                                      .min = 1,
                                      .max = 89 };
static const char *const edges[] = { "chief", "base", NULL };
static const SpvMeasureSpec edge = { .key = "edge",
                                     .label = "Edge",
                                     .type = SPV_MEASURE_CHOICE,
                                     .preset = { SPV_UNIT_PLAIN, 1 },
                                     .choices = edges };

/* An entry in a window, whose owner takes every value as a pane does. */
typedef struct {
  GtkWidget *window, *entry, *text, *field;
  double worked_out;
  guint n_changed, n_settled;
} Desk;

static void
on_changed(SpvMeasureEntry *entry, Desk *desk) {
  desk->n_changed++;
  spv_measure_entry_set_value(entry, spv_measure_entry_value(entry), PANEL_WIDTH, PANEL_HEIGHT,
                              desk->worked_out);
}

static void
on_settled(SpvMeasureEntry *entry, Desk *desk) {
  (void) entry;
  desk->n_settled++;
}

static void
desk_open(Desk *desk, const SpvMeasureSpec *spec, gboolean optional, SpvMeasure value, double worked_out) {
  *desk = (Desk){ .window = gtk_window_new(), .entry = spv_measure_entry_new(), .worked_out = worked_out };
  spv_measure_entry_set_spec(SPV_MEASURE_ENTRY(desk->entry), spec, optional);
  spv_measure_entry_set_name(SPV_MEASURE_ENTRY(desk->entry), spec->label);
  spv_measure_entry_set_value(SPV_MEASURE_ENTRY(desk->entry), value, PANEL_WIDTH, PANEL_HEIGHT, worked_out);
  g_signal_connect(desk->entry, "changed", G_CALLBACK(on_changed), desk);
  g_signal_connect(desk->entry, "settled", G_CALLBACK(on_settled), desk);
  gtk_window_set_child(GTK_WINDOW(desk->window), desk->entry);
  gtk_window_present(GTK_WINDOW(desk->window));
  WAIT_FOR(gtk_widget_get_mapped(desk->entry), 5000);
  desk->text = find_nth(desk->entry, GTK_TYPE_ENTRY, 0);
  desk->field = gtk_widget_get_parent(desk->text);
  gtk_widget_grab_focus(desk->entry);
}

static void
desk_close(Desk *desk) {
  gpointer entry = desk->entry;

  g_object_add_weak_pointer(entry, &entry);
  gtk_window_destroy(GTK_WINDOW(desk->window));
  WAIT_FOR(entry == NULL, 5000);
}

static SpvMeasure
value_of(Desk *desk) {
  return spv_measure_entry_value(SPV_MEASURE_ENTRY(desk->entry));
}

#define assert_value(desk, expected_unit, expected)                                                          \
  do {                                                                                                       \
    assert_int_equal(value_of(desk).unit, expected_unit);                                                    \
    assert_near(value_of(desk).value, expected, 1e-9);                                                       \
  } while (0)

static const SpvMeasure half_mm = { SPV_UNIT_MM, 0.5 };

static void
a_decimal_comma_is_a_decimal_point(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, half_mm, NAN);
  assert_string_equal(text_of(desk.text), "0.50");
  type_over(desk.text, "7,5");
  assert_value(&desk, SPV_UNIT_MM, 7.5);
  assert_string_equal(text_of(desk.text), "7,5"); /* the painter's words stay while they are typed */
  press_enter(desk.text);
  assert_string_equal(text_of(desk.text), "7.50");
  assert_true(desk.n_settled > 0);
  desk_close(&desk);
}

static void
a_typed_unit_switches_the_unit(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, half_mm, NAN);
  type_over(desk.text, "20 %");
  press_enter(desk.text);
  assert_value(&desk, SPV_UNIT_RELATIVE, 0.2);
  assert_string_equal(text_of(desk.text), "20");
  assert_non_null(find_words(desk.entry, "%"));
  type_over(desk.text, "30");
  assert_value(&desk, SPV_UNIT_RELATIVE, 0.3);
  type_over(desk.text, "0,7mm");
  assert_value(&desk, SPV_UNIT_MM, 0.7);
  desk_close(&desk);
}

static void
what_does_not_do_is_marked_and_not_taken(void **state) {
  static const char *const bad[] = { "abc", "1e400", "-3", "0.04", "11" };
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, half_mm, NAN);
  for (guint i = 0; i < G_N_ELEMENTS(bad); i++) {
    gtk_editable_set_text(GTK_EDITABLE(desk.text), bad[i]);
    assert_value(&desk, SPV_UNIT_MM, 0.5);
    assert_true(gtk_widget_has_css_class(desk.field, "error"));
    assert_non_null(strstr(gtk_widget_get_tooltip_text(desk.field), "From 0.05\u2009mm to 10.00\u2009mm."));
    gtk_test_accessible_assert_state(GTK_ACCESSIBLE(desk.text), GTK_ACCESSIBLE_STATE_INVALID,
                                     GTK_ACCESSIBLE_INVALID_TRUE);
    assert_true(press_key(desk.text, GDK_KEY_Escape, 0));
    assert_string_equal(text_of(desk.text), "0.50");
    assert_false(gtk_widget_has_css_class(desk.field, "error"));
    assert_null(gtk_widget_get_tooltip_text(desk.field));
  }
  assert_int_equal(desk.n_changed, 0);
  gtk_editable_set_text(GTK_EDITABLE(desk.text), "abc");
  gtk_window_set_focus(GTK_WINDOW(desk.window), NULL);
  assert_string_equal(text_of(desk.text), "0.50");
  /* With nothing typed Escape is somebody else's. */
  assert_false(press_key(desk.text, GDK_KEY_Escape, 0));
  desk_close(&desk);
}

static void
an_empty_field_is_left_to_the_pattern(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, half_mm, NAN);
  gtk_editable_set_text(GTK_EDITABLE(desk.text), "");
  assert_value(&desk, SPV_UNIT_MM, 0.5); /* it may be on its way to another number */
  gtk_window_set_focus(GTK_WINDOW(desk.window), NULL);
  assert_int_equal(value_of(&desk).unit, SPV_UNIT_AUTO);
  assert_string_equal(text_of(desk.text), "0.68"); /* the preset: a fifth of the width */
  assert_true(gtk_widget_has_css_class(desk.field, "auto"));
  assert_non_null(find_words(desk.entry, "auto"));
  gtk_widget_grab_focus(desk.entry);
  gtk_window_set_focus(GTK_WINDOW(desk.window), NULL);
  assert_int_equal(value_of(&desk).unit, SPV_UNIT_AUTO); /* looking is not changing */
  desk_close(&desk);
}

/* Accessibility writes into a field that does not have the focus, and so never loses it. */
static void
words_from_outside_settle_by_themselves(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, half_mm, NAN);
  gtk_window_set_focus(GTK_WINDOW(desk.window), NULL);
  desk.n_settled = 0;
  gtk_editable_set_text(GTK_EDITABLE(desk.text), "7,5 mm");
  assert_value(&desk, SPV_UNIT_MM, 7.5);
  WAIT_FOR(desk.n_settled == 1, 5000);
  assert_string_equal(text_of(desk.text), "7.50");
  gtk_editable_set_text(GTK_EDITABLE(desk.text), "");
  WAIT_FOR(desk.n_settled == 2, 5000);
  assert_int_equal(value_of(&desk).unit, SPV_UNIT_AUTO);
  desk_close(&desk);
}

static void
a_field_that_must_have_a_value_keeps_it(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, FALSE, half_mm, NAN);
  gtk_editable_set_text(GTK_EDITABLE(desk.text), "");
  press_enter(desk.text);
  assert_value(&desk, SPV_UNIT_MM, 0.5);
  assert_string_equal(text_of(desk.text), "0.50");
  assert_int_equal(desk.n_changed, 0);
  desk_close(&desk);
}

static void
a_value_that_the_pattern_works_out_is_shown(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &slope, TRUE, (SpvMeasure){ SPV_UNIT_AUTO, 0 }, G_PI / 4);
  assert_string_equal(text_of(desk.text), "45");
  assert_true(press_key(desk.text, GDK_KEY_Up, 0)); /* steps start from what is in effect */
  assert_value(&desk, SPV_UNIT_DEGREES, 46);
  assert_non_null(find_words(desk.entry, "°"));
  desk_close(&desk);
  desk_open(&desk, &slope, TRUE, (SpvMeasure){ SPV_UNIT_AUTO, 0 }, NAN);
  assert_string_equal(text_of(desk.text), "");
  assert_true(press_key(desk.text, GDK_KEY_Up, 0));
  assert_value(&desk, SPV_UNIT_DEGREES, 2);
  desk_close(&desk);
}

static void
arrow_and_page_keys_step(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, half_mm, NAN);
  assert_true(press_key(desk.text, GDK_KEY_Up, 0));
  assert_value(&desk, SPV_UNIT_MM, 0.55);
  assert_string_equal(text_of(desk.text), "0.55");
  assert_true(press_key(desk.text, GDK_KEY_Page_Up, 0));
  assert_value(&desk, SPV_UNIT_MM, 0.8);
  assert_true(press_key(desk.text, GDK_KEY_Page_Down, 0));
  assert_true(press_key(desk.text, GDK_KEY_Down, 0));
  assert_value(&desk, SPV_UNIT_MM, 0.5);
  for (int i = 0; i < 20; i++)
    press_key(desk.text, GDK_KEY_Down, 0);
  assert_value(&desk, SPV_UNIT_MM, 0.05);                           /* the end of the range */
  assert_false(press_key(desk.text, GDK_KEY_Up, GDK_CONTROL_MASK)); /* that moves layers */
  assert_false(press_key(desk.text, GDK_KEY_Left, 0));
  desk_close(&desk);
}

/* The wheel over a field that nobody is in scrolls the pane. */
static void
only_a_focused_field_scrolls(void **state) {
  g_autoptr(GListModel) controllers = NULL;
  gboolean handled = FALSE;
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, half_mm, NAN);
  controllers = gtk_widget_observe_controllers(desk.text);
  for (int focused = 1; focused >= 0; focused--) {
    if (!focused)
      gtk_window_set_focus(GTK_WINDOW(desk.window), NULL);
    for (guint i = 0; i < g_list_model_get_n_items(controllers); i++) {
      g_autoptr(GtkEventController) controller = g_list_model_get_item(controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_SCROLL(controller))
        g_signal_emit_by_name(controller, "scroll", 0.0, -1.0, &handled);
    }
    assert_int_equal(handled, focused);
    assert_value(&desk, SPV_UNIT_MM, 0.55);
  }
  desk_close(&desk);
}

static void
the_unit_menu_keeps_the_size(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, (SpvMeasure){ SPV_UNIT_MM, 0.85 }, NAN);
  assert_true(gtk_widget_activate_action(desk.text, "measure.unit", "s", "relative"));
  assert_value(&desk, SPV_UNIT_RELATIVE, 0.25);
  assert_string_equal(text_of(desk.text), "25");
  assert_true(gtk_widget_activate_action(desk.text, "measure.unit", "s", "mm"));
  assert_value(&desk, SPV_UNIT_MM, 0.85);
  assert_true(gtk_widget_activate_action(desk.text, "measure.unit", "s", "auto"));
  assert_int_equal(value_of(&desk).unit, SPV_UNIT_AUTO);
  desk_close(&desk);
}

static void
a_choice_is_a_drop_down(void **state) {
  GtkWidget *drop_down;
  Desk desk;

  (void) state;
  desk_open(&desk, &edge, TRUE, (SpvMeasure){ SPV_UNIT_AUTO, 0 }, NAN);
  drop_down = find_called(desk.entry, GTK_TYPE_DROP_DOWN, "Edge");
  assert_true(is_shown(drop_down));
  assert_false(is_shown(desk.text));
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(drop_down)), 1); /* the preset */
  gtk_drop_down_set_selected(GTK_DROP_DOWN(drop_down), 0);
  assert_value(&desk, SPV_UNIT_PLAIN, 0);
  assert_int_equal(desk.n_changed, 1);
  desk_close(&desk);
}

static void
another_value_from_outside_takes_the_place_of_what_is_typed(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, half_mm, NAN);
  type_over(desk.text, "7,5");
  spv_measure_entry_set_value(SPV_MEASURE_ENTRY(desk.entry), half_mm, PANEL_WIDTH, PANEL_HEIGHT, NAN);
  assert_string_equal(text_of(desk.text), "0.50");
  desk_close(&desk);
}

static void
it_has_names(void **state) {
  Desk desk;

  (void) state;
  desk_open(&desk, &depth, TRUE, half_mm, NAN);
  assert_true(is_called(desk.text, "Depth"));
  assert_ptr_equal(find_called(desk.entry, GTK_TYPE_MENU_BUTTON, "Unit of Depth"),
                   find_nth(desk.entry, GTK_TYPE_MENU_BUTTON, 0));
  desk_close(&desk);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test(a_decimal_comma_is_a_decimal_point),
  cmocka_unit_test(a_typed_unit_switches_the_unit),
  cmocka_unit_test(what_does_not_do_is_marked_and_not_taken),
  cmocka_unit_test(an_empty_field_is_left_to_the_pattern),
  cmocka_unit_test(words_from_outside_settle_by_themselves),
  cmocka_unit_test(a_field_that_must_have_a_value_keeps_it),
  cmocka_unit_test(a_value_that_the_pattern_works_out_is_shown),
  cmocka_unit_test(arrow_and_page_keys_step),
  cmocka_unit_test(only_a_focused_field_scrolls),
  cmocka_unit_test(the_unit_menu_keeps_the_size),
  cmocka_unit_test(a_choice_is_a_drop_down),
  cmocka_unit_test(another_value_from_outside_takes_the_place_of_what_is_typed),
  cmocka_unit_test(it_has_names),
};

RUN_PANE_TESTS(tests)
