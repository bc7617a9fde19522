/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window in process, on a virtual display: its actions, its files, what it keeps. */
#include "window/window-test.h"

#include "scheme/scheme-file.h"

static void
windows_go_when_closed(void **state) {
  (void) state;
  for (int with_scheme = 0; with_scheme < 2; with_scheme++) {
    SpvWindow *window = with_scheme ? a_window() : spv_window_new(application);
    gpointer alive = window;
    gpointer session = spv_window_session(window);
    gpointer canvas = window->canvas;
    g_object_add_weak_pointer(G_OBJECT(window), &alive);
    g_object_add_weak_pointer(G_OBJECT(canvas), &canvas);
    if (session)
      g_object_add_weak_pointer(session, &session);
    gtk_window_present(GTK_WINDOW(window));
    spin(100);
    gtk_window_close(GTK_WINDOW(window));
    WAIT_FOR(!alive, 5000);
    assert_null(session);
    assert_null(canvas);
  }
}

static void
an_empty_window_offers_a_start_only(void **state) {
  (void) state;
  SpvWindow *window = spv_window_new(application);
  static const char *const on[] = { "new", "open", "open-recent", "export-sampler", "about" };
  g_auto(GStrv) actions = g_action_group_list_actions(G_ACTION_GROUP(window));
  assert_true(g_strv_length(actions) >= 30);
  for (char **at = actions; *at; at++) {
    gboolean expected = strstr(*at, "kept") || strstr(*at, "notice");
    for (gsize i = 0; i < G_N_ELEMENTS(on); i++)
      expected |= g_str_equal(*at, on[i]);
    if (enabled(window, *at) != expected)
      fail_msg("%s is %s in an empty window", *at, expected ? "off" : "on");
  }
  assert_string_equal(gtk_stack_get_visible_child_name(GTK_STACK(window->stack)), "start");
  gtk_window_destroy(GTK_WINDOW(window));
}

static void
actions_follow_what_is_chosen(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  SpvSession *session = spv_window_session(window);
  assert_true(enabled(window, "save"));
  assert_false(enabled(window, "undo"));
  assert_false(enabled(window, "raise-layer"));
  assert_true(enabled(window, "lower-layer"));
  spv_session_select(session, 0, 0);
  assert_true(enabled(window, "raise-layer"));
  assert_false(enabled(window, "lower-layer"));
  spv_session_select(session, 1, -1);
  static const char *const need_layer[] = { "remove-layer",       "duplicate-layer", "rename-layer",
                                            "raise-layer",        "lower-layer",     "toggle-layer-hidden",
                                            "toggle-layer-locked" };
  for (gsize i = 0; i < G_N_ELEMENTS(need_layer); i++)
    assert_false(enabled(window, need_layer[i]));
  spv_session_select(session, 0, 1);
  act(window, "toggle-layer-locked");
  assert_false(enabled(window, "remove-layer"));
  assert_false(enabled(window, "lower-layer"));
  assert_true(enabled(window, "duplicate-layer"));
  act(window, "toggle-layer-locked");
  act(window, "toggle-layer-hidden");
  assert_true(enabled(window, "export"));
  spv_session_select(session, 0, 0);
  act(window, "toggle-layer-hidden");
  assert_false(enabled(window, "export"));
  close_all();
}

static void
every_edit_can_be_undone_by_its_name(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  SpvSession *session = spv_window_session(window);
  g_autoptr(SpvScheme) start = spv_scheme_ref(spv_session_scheme(session));
  static const char *const edits[] = { "duplicate-layer",     "lower-layer",         "toggle-layer-hidden",
                                       "toggle-layer-locked", "toggle-layer-locked", "raise-layer",
                                       "remove-layer" };
  for (gsize i = 0; i < G_N_ELEMENTS(edits); i++) {
    act(window, edits[i]);
    assert_true(enabled(window, "undo"));
    assert_true(g_str_has_prefix(gtk_widget_get_tooltip_text(window->undo_button), "Undo "));
  }
  for (gsize i = 0; i < G_N_ELEMENTS(edits); i++)
    act(window, "undo");
  assert_false(enabled(window, "undo"));
  assert_ptr_equal(spv_session_scheme(session), start);
  assert_true(enabled(window, "redo"));
  close_all();
}

static void
every_kind_of_layer_can_be_added(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  spv_session_select(spv_window_session(window), 1, -1);
  for (int kind = 0; kind < SPV_N_PATTERNS; kind++) {
    add(window, spv_pattern_info(kind)->key);
    assert_int_equal(spv_session_chosen_layer(spv_window_session(window))->pattern.kind, kind);
  }
  add(window, "no-such-kind");
  assert_int_equal(spv_session_chosen_panel(spv_window_session(window))->n_layers, SPV_N_PATTERNS);
  spin(100);
  close_all();
  /* So many layers may take so long that the work was kept meanwhile. */
  g_autofree char *kept = spv_recovery_folder();
  remove_folder(kept);
}

static void
the_tooltip_says_what_undo_does(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  assert_string_equal(gtk_widget_get_tooltip_text(window->undo_button), "Undo");
  g_autoptr(SpvScheme)
      scheme = spv_scheme_with_title(spv_session_scheme(spv_window_session(window)), "Lantern Company");
  spv_session_push(spv_window_session(window), scheme, "Change title", NULL);
  assert_string_equal(gtk_widget_get_tooltip_text(window->undo_button), "Undo change title");
  assert_string_equal(gtk_window_get_title(GTK_WINDOW(window)), "• Lantern Company");
  act(window, "undo");
  assert_string_equal(gtk_widget_get_tooltip_text(window->redo_button), "Redo change title");
  assert_string_equal(gtk_window_get_title(GTK_WINDOW(window)), "Heron Ferry Guild");
  close_all();
}

static void
switches_change_what_is_shown(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  static const struct {
    const char *action, *property;
  } switches[] = { { "toggle-hatch", "hatch" }, { "toggle-guide", "show-guide" } };
  for (gsize i = 0; i < G_N_ELEMENTS(switches); i++) {
    for (int turn = 0; turn < 2; turn++) {
      gboolean before, after;
      g_object_get(window->canvas, switches[i].property, &before, NULL);
      act(window, switches[i].action);
      g_object_get(window->canvas, switches[i].property, &after, NULL);
      assert_int_not_equal(before, after);
      g_autoptr(GVariant) shown = g_action_group_get_action_state(G_ACTION_GROUP(window), switches[i].action);
      assert_int_equal(g_variant_get_boolean(shown), after);
    }
  }
  act(window, "fold-left");
  act(window, "fold-right");
  assert_false(gtk_widget_get_visible(window->left_pane));
  assert_false(gtk_widget_get_visible(window->right_pane));
  /* The next window remembers. */
  SpvWindow *other = a_window();
  assert_false(gtk_widget_get_visible(other->left_pane));
  act(other, "fold-left");
  act(other, "fold-right");
  assert_true(gtk_widget_get_visible(other->right_pane));
  act(window, "zoom-in");
  act(window, "zoom-out");
  act(window, "zoom-fit");
  close_all();
}

static void
panels_go_round(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  SpvSession *session = spv_window_session(window);
  act(window, "next-panel");
  assert_int_equal(spv_session_panel(session), 1);
  act(window, "next-panel");
  assert_int_equal(spv_session_panel(session), 0);
  assert_int_equal(spv_session_layer(session), 1);
  act(window, "previous-panel");
  assert_int_equal(spv_session_panel(session), 1);
  close_all();
}

static void
a_scheme_goes_to_a_file_and_back(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  g_autoptr(GFile) file = a_file(folder, "heron.scheme.json");

  SpvWindow *window = spv_window_new(application);
  spv_window_open_file(window, file);
  SpvSession *session = spv_window_session(window);
  assert_non_null(session);
  assert_true(is_label(window->subtitle_label, "heron.scheme.json"));
  assert_false(enabled(window, "save"));
  act(window, "remove-layer");
  act(window, "save");
  assert_false(spv_session_is_modified(session));
  g_autoptr(SpvScheme) back = spv_scheme_load(g_file_peek_path(file), NULL);
  assert_int_equal(back->panels[0]->n_layers, 1);

  /* Opened once more it is this window that comes forward; another file has another window. */
  guint windows = g_list_length(gtk_application_get_windows(GTK_APPLICATION(application)));
  spv_window_open_file(window, file);
  assert_int_equal(g_list_length(gtk_application_get_windows(GTK_APPLICATION(application))), windows);
  g_autoptr(GFile) other = a_file(folder, "other.scheme.json");
  spv_window_open_file(window, other);
  assert_int_equal(g_list_length(gtk_application_get_windows(GTK_APPLICATION(application))), windows + 1);
  assert_ptr_equal(spv_window_session(window), session);
  close_all();
  remove_folder(folder);
}

static void
closing_keeps_unsaved_work_and_the_next_start_offers_it(void **state) {
  (void) state;
  g_autofree char *folder = spv_recovery_folder();
  SpvWindow *window = a_window();
  add(window, "bordure");
  gtk_window_close(GTK_WINDOW(window));
  spin(50);
  g_autoptr(GPtrArray) kept = spv_recovery_list(folder);
  assert_int_equal(kept->len, 1);

  SpvWindow *next = spv_window_new(application);
  spv_window_offer_kept(next, kept);
  g_clear_pointer(&kept, g_ptr_array_unref);
  assert_true(gtk_widget_get_visible(next->kept_bar));
  assert_true(g_str_has_prefix(gtk_label_get_text(GTK_LABEL(next->kept_label)), "Unsaved work from "));
  act(next, "restore-kept");
  assert_false(gtk_widget_get_visible(next->kept_bar));
  SpvSession *session = spv_window_session(next);
  assert_int_equal(spv_session_scheme(session)->panels[0]->n_layers, 3);
  assert_true(spv_session_is_modified(session));
  /* It stays kept until a file holds it. */
  assert_int_equal(count_files(folder), 2);
  g_autofree char *elsewhere = a_folder();
  g_autofree char *path = g_build_filename(elsewhere, "heron.scheme.json", NULL);
  g_autoptr(GFile) file = g_file_new_for_path(path);
  assert_true(spv_session_save(session, file, NULL));
  assert_int_equal(count_files(folder), 0);
  close_all();
  remove_folder(elsewhere);
}

static void
work_kept_of_an_open_file_is_an_edit_of_it(void **state) {
  (void) state;
  g_autofree char *folder = spv_recovery_folder();
  g_autofree char *elsewhere = a_folder();
  g_autoptr(GFile) file = a_file(elsewhere, "heron.scheme.json");
  SpvWindow *window = spv_window_new(application);
  spv_window_open_file(window, file);
  add(window, "bordure");
  gtk_window_close(GTK_WINDOW(window));
  spin(50);

  SpvWindow *next = spv_window_new(application);
  spv_window_open_file(next, file);
  g_autoptr(GPtrArray) kept = spv_recovery_list(folder);
  spv_window_offer_kept(next, kept);
  assert_non_null(strstr(gtk_label_get_text(GTK_LABEL(next->kept_label)), "“heron.scheme.json”"));
  guint windows = g_list_length(gtk_application_get_windows(GTK_APPLICATION(application)));
  act(next, "restore-kept");
  assert_int_equal(g_list_length(gtk_application_get_windows(GTK_APPLICATION(application))), windows);
  SpvSession *session = spv_window_session(next);
  assert_int_equal(spv_session_scheme(session)->panels[0]->n_layers, 3);
  assert_true(spv_session_is_modified(session));
  act(next, "undo");
  assert_int_equal(spv_session_scheme(session)->panels[0]->n_layers, 2);
  assert_false(spv_session_is_modified(session));
  assert_int_equal(count_files(folder), 0);
  close_all();
  remove_folder(elsewhere);
}

static void
discarded_work_is_offered_no_more(void **state) {
  (void) state;
  g_autofree char *folder = spv_recovery_folder();
  SpvWindow *window = a_window();
  add(window, "bordure");
  gtk_window_close(GTK_WINDOW(window));
  spin(50);
  g_autoptr(GPtrArray) kept = spv_recovery_list(folder);
  SpvWindow *next = spv_window_new(application);
  spv_window_offer_kept(next, kept);
  act(next, "discard-kept");
  assert_false(gtk_widget_get_visible(next->kept_bar));
  assert_null(spv_window_session(next));
  assert_int_equal(count_files(folder), 0);
  close_all();
}

static void
recent_files_are_offered(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  g_autoptr(GFile) file = a_file(folder, "saltmarsh_wardens.scheme.json");
  SpvWindow *window = spv_window_new(application);
  spv_window_open_file(window, file);
  WAIT_FOR(gtk_widget_get_sensitive(window->recent_button), 10000);
  g_autoptr(GVariant) target = g_menu_model_get_item_attribute_value(
      G_MENU_MODEL(window->recent_menu), 0, G_MENU_ATTRIBUTE_TARGET, G_VARIANT_TYPE_STRING);
  g_autofree char *uri = g_file_get_uri(file);
  assert_string_equal(g_variant_get_string(target, NULL), uri);
  g_action_group_activate_action(G_ACTION_GROUP(window), "open-recent", target);
  assert_true(g_file_equal(spv_session_file(spv_window_session(window)), file));
  close_all();
  remove_folder(folder);
}

static void
a_dropped_file_is_opened(void **state) {
  (void) state;
  g_autofree char *folder = a_folder();
  g_autoptr(GFile) file = a_file(folder, "heron.scheme.json");
  SpvWindow *window = spv_window_new(application);
  g_autoptr(GListModel) controllers = gtk_widget_observe_controllers(GTK_WIDGET(window));
  guint n_targets = 0;
  for (guint i = 0; i < g_list_model_get_n_items(controllers); i++) {
    g_autoptr(GObject) target = g_list_model_get_item(controllers, i);
    if (!GTK_IS_DROP_TARGET(target))
      continue;
    n_targets++;
    GSList *files = g_slist_append(NULL, g_object_ref(file));
    g_auto(GValue) value = G_VALUE_INIT;
    g_value_init(&value, GDK_TYPE_FILE_LIST);
    g_value_set_boxed(&value, files);
    g_slist_free_full(files, g_object_unref);
    gboolean taken = FALSE;
    g_signal_emit_by_name(target, "drop", &value, 1.0, 1.0, &taken);
    assert_true(taken);
  }
  assert_int_equal(n_targets, 1);
  assert_string_equal(spv_session_scheme(spv_window_session(window))->title, "Heron Ferry Guild");
  close_all();
  remove_folder(folder);
}

static void
every_key_belongs_to_an_action(void **state) {
  (void) state;
  SpvWindow *window = a_window();
  g_auto(GStrv) named = gtk_application_list_action_descriptions(GTK_APPLICATION(application));
  assert_true(g_strv_length(named) > 20);
  for (char **at = named; *at; at++) {
    if (g_str_has_prefix(*at, "win."))
      assert_true(g_action_group_has_action(G_ACTION_GROUP(window), *at + 4));
    else if (g_str_has_prefix(*at, "app."))
      assert_true(g_action_group_has_action(G_ACTION_GROUP(application), *at + 4));
    g_auto(GStrv) keys = gtk_application_get_accels_for_action(GTK_APPLICATION(application), *at);
    for (char **key = keys; *key; key++) {
      guint value;
      GdkModifierType modifiers;
      assert_true(gtk_accelerator_parse(*key, &value, &modifiers));
    }
  }
  g_action_group_activate_action(G_ACTION_GROUP(application), "shortcuts", NULL);
  WAIT_FOR(toplevel_of_type("GtkShortcutsWindow"), 5000);
  close_all();
}

static void
the_shell_has_its_own_icons(void **state) {
  (void) state;
  GtkIconTheme *theme = gtk_icon_theme_get_for_display(gdk_display_get_default());
  static const char *const names[] = { "spv-undo-symbolic", "spv-redo-symbolic", "spv-menu-symbolic",
                                       "spv-trash-symbolic" };
  for (gsize i = 0; i < G_N_ELEMENTS(names); i++)
    assert_true(gtk_icon_theme_has_icon(theme, names[i]));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(windows_go_when_closed),
    cmocka_unit_test(an_empty_window_offers_a_start_only),
    cmocka_unit_test(actions_follow_what_is_chosen),
    cmocka_unit_test(every_edit_can_be_undone_by_its_name),
    cmocka_unit_test(every_kind_of_layer_can_be_added),
    cmocka_unit_test(the_tooltip_says_what_undo_does),
    cmocka_unit_test(switches_change_what_is_shown),
    cmocka_unit_test(panels_go_round),
    cmocka_unit_test(a_scheme_goes_to_a_file_and_back),
    cmocka_unit_test(closing_keeps_unsaved_work_and_the_next_start_offers_it),
    cmocka_unit_test(work_kept_of_an_open_file_is_an_edit_of_it),
    cmocka_unit_test(discarded_work_is_offered_no_more),
    cmocka_unit_test(recent_files_are_offered),
    cmocka_unit_test(a_dropped_file_is_opened),
    cmocka_unit_test(every_key_belongs_to_an_action),
    cmocka_unit_test(the_shell_has_its_own_icons),
  };
  RUN_WITH_APPLICATION(tests);
}
