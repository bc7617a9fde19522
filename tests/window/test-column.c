/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How wide a column beside the canvas asks to be. */
#include "window/a-scheme.h"

#include <gtk/gtk.h>

#include "window/column.h"

/* In a window, so that the display's settings reach it. */
static GtkWidget *
a_column(const char *words, guint chars, gboolean wraps) {
  GtkWidget *window = gtk_window_new();
  GtkWidget *label = gtk_label_new(words);
  GtkWidget *column = g_object_new(SPV_TYPE_COLUMN, "child", label, "chars", chars, NULL);

  gtk_label_set_wrap(GTK_LABEL(label), wraps);
  gtk_window_set_child(GTK_WINDOW(window), column);
  return column;
}

static void
close_column(GtkWidget *column) {
  gtk_window_destroy(GTK_WINDOW(gtk_widget_get_root(column)));
}

static int
width_of(GtkWidget *column, gboolean natural) {
  int minimum, wanted;

  gtk_widget_measure(column, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, &wanted, NULL, NULL);
  return natural ? wanted : minimum;
}

static void
long_words_wrap_rather_than_widen_it(void **state) {
  GtkWidget *column = a_column("Cells beside a later layer are finer than the line of your brush", 0, TRUE);
  int wanted;

  (void) state;
  gtk_widget_measure(gtk_widget_get_first_child(column), GTK_ORIENTATION_HORIZONTAL, -1, NULL, &wanted, NULL,
                     NULL);
  assert_true(width_of(column, TRUE) < wanted / 2);
  assert_int_equal(width_of(column, TRUE), width_of(column, FALSE));
  close_column(column);
}

static void
it_is_as_wide_as_what_can_not_wrap(void **state) {
  GtkWidget *column = a_column("Cells beside a later layer", 0, FALSE);
  int least;

  (void) state;
  gtk_widget_measure(gtk_widget_get_first_child(column), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL,
                     NULL);
  assert_int_equal(width_of(column, TRUE), least);
  close_column(column);
}

static void
it_grows_with_the_words(void **state) {
  GtkWidget *column = a_column("Check", 30, TRUE);
  int before;

  (void) state;
  gtk_window_present(GTK_WINDOW(gtk_widget_get_root(column)));
  WAIT_FOR(gtk_widget_get_mapped(column), 5000);
  before = width_of(column, TRUE);
  assert_true(before > width_of(column, FALSE));
  g_object_set(gtk_settings_get_default(), "gtk-xft-dpi", 192 * 1024, NULL);
  WAIT_FOR(ABS(width_of(column, TRUE) - 2 * before) <= 30, 5000);
  gtk_settings_reset_property(gtk_settings_get_default(), "gtk-xft-dpi");
  close_column(column);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(long_words_wrap_rather_than_widen_it),
    cmocka_unit_test(it_is_as_wide_as_what_can_not_wrap),
    cmocka_unit_test(it_grows_with_the_words),
  };
  if (!gtk_init_check())
    return 77;
  return cmocka_run_group_tests(tests, NULL, NULL);
}
