/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The panel in words: what it shows, and what is typed into it. */
#include "window/test-pane-support.h"

#include "scheme/heraldic.h"
#include "window/blazon-entry.h"
#include "window/word-completion.h"

static GtkTextView *
view_of(Bench *bench) {
  return GTK_TEXT_VIEW(find_called(bench->pane, GTK_TYPE_TEXT_VIEW, "Blazon of the panel"));
}

static GtkTextBuffer *
buffer_of(Bench *bench) {
  return gtk_text_view_get_buffer(view_of(bench));
}

/* What stands in it. Free with g_free(). */
static char *
words_of(Bench *bench) {
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds(buffer_of(bench), &start, &end);
  return gtk_text_buffer_get_text(buffer_of(bench), &start, &end, TRUE);
}

static void
assert_words(Bench *bench, const char *expected) {
  g_autofree char *words = words_of(bench);

  assert_string_equal(words, expected);
}

/* What the core says of the chosen panel. Free with g_free(). */
static char *
described(Bench *bench) {
  return spv_heraldic_describe(spv_session_scheme(bench->session), (guint) spv_session_panel(bench->session));
}

/* Types TEXT over what stands there, a character at a time, as a painter does. */
static void
type_blazon(Bench *bench, const char *text) {
  gtk_text_buffer_set_text(buffer_of(bench), "", -1);
  for (; *text; text = g_utf8_next_char(text))
    gtk_text_buffer_insert_at_cursor(buffer_of(bench), text, (int) (g_utf8_next_char(text) - text));
}

static gboolean
press(Bench *bench, guint keyval, GdkModifierType state) {
  return press_key(GTK_WIDGET(view_of(bench)), keyval, state);
}

static SpvWordCompletion *
completion_of(Bench *bench) {
  return SPV_WORD_COMPLETION(find_nth(bench->pane, SPV_TYPE_WORD_COMPLETION, 0));
}

static const SpvPanel *
panel(Bench *bench) {
  return spv_session_chosen_panel(bench->session);
}

static GtkWidget *
message_of(Bench *bench) {
  return gtk_widget_get_prev_sibling(GTK_WIDGET(completion_of(bench)));
}

static void
follows_the_layers(void **state) {
  Bench bench = bench_open(spv_blazon_entry_new());

  (void) state;
  for (int i = 0; i < 3; i++) {
    g_autofree char *expected = described(&bench);
    assert_words(&bench, expected);
    if (i == 0)
      spv_session_add_layer(bench.session, SPV_PATTERN_LANTERN);
    else
      spv_session_undo(bench.session);
  }
  spv_session_select(bench.session, 1, -1);
  assert_words(&bench, "");
  assert_int_equal(count_steps(bench.session), 0);
  bench_close(&bench);
}

static void
what_is_typed_becomes_the_layers(void **state) {
  Bench bench = bench_open(spv_blazon_entry_new());

  (void) state;
  type_blazon(&bench, "vert, a bend argent");
  assert_int_equal(panel(&bench)->n_layers, 3); /* not before Enter */
  assert_true(press(&bench, GDK_KEY_Return, 0));
  assert_int_equal(panel(&bench)->n_layers, 2);
  assert_int_equal(panel(&bench)->layers[0]->pattern.kind, SPV_PATTERN_FIELD);
  assert_string_equal(panel(&bench)->layers[0]->tinctures[0], "vert");
  assert_int_equal(panel(&bench)->layers[1]->pattern.kind, SPV_PATTERN_BEND);
  assert_string_equal(panel(&bench)->layers[1]->tinctures[0], "argent");
  assert_string_equal(spv_session_undo_label(bench.session), "Change blazon");
  assert_int_equal(spv_session_layer(bench.session), 1); /* the border that was chosen has gone */
  g_autofree char *expected = described(&bench);
  assert_words(&bench, expected);
  assert_int_equal(count_steps(bench.session), 1);
  spv_session_undo(bench.session);
  assert_int_equal(panel(&bench)->n_layers, 3);
  bench_close(&bench);
}

static void
the_wrong_word_is_marked_and_the_layers_stay(void **state) {
  Bench bench = bench_open(spv_blazon_entry_new());
  g_autofree char *before = described(&bench);
  GtkTextIter at;

  (void) state;
  type_blazon(&bench, "Vert, a kraken argent");
  assert_true(press(&bench, GDK_KEY_Return, 0));
  assert_int_equal(count_steps(bench.session), 0);
  assert_true(is_shown(message_of(&bench)));
  assert_non_null(strstr(gtk_label_get_text(GTK_LABEL(message_of(&bench))), "kraken"));
  gtk_text_buffer_get_iter_at_offset(buffer_of(&bench), &at, 8);
  assert_true(gtk_text_iter_starts_tag(&at, NULL));
  gtk_text_buffer_get_iter_at_offset(buffer_of(&bench), &at, 14);
  assert_true(gtk_text_iter_ends_tag(&at, NULL));

  /* Another letter, and the word may be right. */
  gtk_text_buffer_insert_at_cursor(buffer_of(&bench), "s", 1);
  assert_false(is_shown(message_of(&bench)));
  press(&bench, GDK_KEY_Escape, 0);
  press(&bench, GDK_KEY_Escape, 0);
  assert_words(&bench, before);
  bench_close(&bench);
}

/* Waits until the list of words is open or not. */
static void
expect_open(Bench *bench, gboolean open) {
  WAIT_FOR(spv_word_completion_is_open(completion_of(bench)) == open, 5000);
}

static void
words_are_completed(void **state) {
  Bench bench = bench_open(spv_blazon_entry_new());

  (void) state;
  gtk_widget_grab_focus(GTK_WIDGET(view_of(&bench)));
  type_blazon(&bench, "vert, a lanter");
  expect_open(&bench, TRUE);
  assert_non_null(find_words(GTK_WIDGET(completion_of(&bench)), "lantern"));
  assert_true(press(&bench, GDK_KEY_Tab, 0));
  assert_words(&bench, "vert, a lantern ");
  expect_open(&bench, FALSE);
  assert_int_equal(count_steps(bench.session), 0);

  /* Within the words no second space is put. */
  GtkTextIter at;
  gtk_text_buffer_set_text(buffer_of(&bench), "vert, a  argent", -1);
  gtk_text_buffer_get_iter_at_offset(buffer_of(&bench), &at, 8);
  gtk_text_buffer_place_cursor(buffer_of(&bench), &at);
  gtk_text_buffer_insert_at_cursor(buffer_of(&bench), "lanter", -1);
  expect_open(&bench, TRUE);
  assert_true(press(&bench, GDK_KEY_Tab, 0));
  assert_words(&bench, "vert, a lantern argent");

  /* Down and Enter take another; Enter alone is for the blazon. */
  type_blazon(&bench, "vert, a bend");
  expect_open(&bench, TRUE);
  assert_true(press(&bench, GDK_KEY_Down, 0));
  assert_true(press(&bench, GDK_KEY_Return, 0));
  expect_open(&bench, FALSE);
  assert_int_equal(count_steps(bench.session), 0);
  g_autofree char *words = words_of(&bench);
  assert_true(g_str_has_prefix(words, "vert, a bend"));
  assert_true(strlen(words) > strlen("vert, a bend "));

  /* Asked for, where no word was begun. */
  type_blazon(&bench, "");
  expect_open(&bench, FALSE);
  assert_true(press(&bench, GDK_KEY_space, GDK_CONTROL_MASK));
  expect_open(&bench, TRUE);
  assert_true(press(&bench, GDK_KEY_Escape, 0));
  expect_open(&bench, FALSE);
  bench_close(&bench);
}

static void
a_locked_layer_stays(void **state) {
  Bench bench = bench_open(spv_blazon_entry_new());

  (void) state;
  spv_session_set_layer_locked(bench.session, 0, TRUE);
  type_blazon(&bench, "vert ");
  assert_true(press(&bench, GDK_KEY_Return, 0));
  assert_int_equal(panel(&bench)->n_layers, 3);
  assert_non_null(strstr(gtk_label_get_text(GTK_LABEL(message_of(&bench))), "“Field” is locked"));
  type_blazon(&bench, "argent, a bend vert ");
  assert_true(press(&bench, GDK_KEY_Return, 0));
  assert_int_equal(panel(&bench)->n_layers, 2);
  assert_true(panel(&bench)->layers[0]->locked);
  bench_close(&bench);
}

static void
half_typed_words_go_when_the_layers_change(void **state) {
  Bench bench = bench_open(spv_blazon_entry_new());

  (void) state;
  type_blazon(&bench, "vert, a be");
  spv_session_select(bench.session, 0, 1); /* another layer: still the same words */
  assert_words(&bench, "vert, a be");
  spv_session_mirror_layer(bench.session);
  g_autofree char *expected = described(&bench);
  assert_words(&bench, expected);
  type_blazon(&bench, "vert, a be");
  spv_session_select(bench.session, 1, -1);
  assert_words(&bench, "");
  bench_close(&bench);
}

static void
an_empty_panel_shows_an_example(void **state) {
  Bench bench = bench_open(spv_blazon_entry_new());
  GtkWidget *example = find_words(bench.pane, "Vert, a bend argent");

  (void) state;
  assert_false(is_shown(example));
  spv_session_select(bench.session, 1, -1);
  assert_true(is_shown(example));
  type_blazon(&bench, "v");
  assert_false(is_shown(example));
  bench_close(&bench);
}

static const struct CMUnitTest tests[] = {
  cmocka_unit_test(follows_the_layers),
  cmocka_unit_test(what_is_typed_becomes_the_layers),
  cmocka_unit_test(the_wrong_word_is_marked_and_the_layers_stay),
  cmocka_unit_test(words_are_completed),
  cmocka_unit_test(a_locked_layer_stays),
  cmocka_unit_test(half_typed_words_go_when_the_layers_change),
  cmocka_unit_test(an_empty_panel_shows_an_example),
};

RUN_PANE_TESTS(tests)
