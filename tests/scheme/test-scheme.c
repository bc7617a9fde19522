/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Schemes, panels and layers: an edit makes a new value, shares the rest, and leaves the old one as
 * it was. */
#include "scheme-test.h"

#include "scheme-edits.h"

#include <string.h>

static void
an_edit_that_changes_nothing_gives_the_same_value(void **state) {
  (void) state;
  g_autoptr(SpvScheme) s = test_load("scheme-newer.scheme.json");
  const SpvPanel *p = s->panels[0];
  const SpvLayer *l = p->layers[1];
#define SAME(type, expression, value)                                                                        \
  {                                                                                                          \
    g_autoptr(type) same = (expression);                                                                     \
    assert_ptr_equal(same, value);                                                                           \
  }
  SAME(SpvLayer, spv_layer_with_id(l, "points"), l);
  SAME(SpvLayer, spv_layer_with_name(l, "Points"), l);
  SAME(SpvLayer, spv_layer_with_name(l, ""), l);
  SAME(SpvLayer, spv_layer_with_name(l, " \t"), l);
  SAME(SpvLayer, spv_layer_with_measure(l, 1, l->pattern.measures[1]), l);
  SAME(SpvLayer, spv_layer_with_tincture(l, 0, "argent"), l);
  SAME(SpvLayer, spv_layer_with_hidden(l, FALSE), l);
  SAME(SpvLayer, spv_layer_with_locked(l, FALSE), l);
  SAME(SpvLayer, spv_layer_with_unknown(l, NULL), l);
  SAME(SpvPanel, spv_panel_with_name(p, "kneepad"), p);
  SAME(SpvPanel, spv_panel_with_outline(p, &p->outline), p);
  SAME(SpvPanel, spv_panel_with_surface(p, &p->surface), p);
  SAME(SpvPanel, spv_panel_with_measured(p, FALSE), p);
  SAME(SpvPanel, spv_panel_with_layers(p, p->layers, p->n_layers), p);
  SAME(SpvPanel, spv_panel_with_layer(p, 1, l), p);
  SAME(SpvPanel, spv_panel_with_layer_moved(p, 1, 1), p);
  SAME(SpvPanel, spv_panel_with_unknown(p, p->unknown, p->unknown_design), p);
  SAME(SpvScheme, spv_scheme_with_title(s, "Heron Ferry Guild"), s);
  SAME(SpvScheme, spv_scheme_with_title(s, ""), s);
  SAME(SpvScheme, spv_scheme_with_note(s, ""), s);
  SAME(SpvScheme, spv_scheme_with_finest_line(s, 0.3), s);
  SAME(SpvScheme, spv_scheme_with_panel(s, 0, p), s);
  SAME(SpvScheme, spv_scheme_with_panels(s, s->panels, s->n_panels), s);
  SAME(SpvScheme, spv_scheme_with_tincture(s, 0, &s->tinctures[0]), s);
  SAME(SpvScheme, spv_scheme_with_harness(s, s), s);
  SAME(SpvScheme, spv_scheme_with_unknown(s, s->unknown, s->unknown_harness, s->unknown_tinctures), s);
#undef SAME
}

static void
an_edit_shares_what_it_does_not_touch(void **state) {
  (void) state;
  g_autoptr(SpvScheme) before = test_load("scheme-full.scheme.json");
  g_autofree char *text = spv_scheme_to_text(before, NULL);
  g_autoptr(SpvLayer) layer = spv_layer_with_hidden(before->panels[2]->layers[1], TRUE);
  g_autoptr(SpvPanel) panel = spv_panel_with_layer(before->panels[2], 1, layer);
  g_autoptr(SpvScheme) after = spv_scheme_with_panel(before, 2, panel);
  for (guint i = 0; i < before->n_panels; i++)
    assert_int_equal(after->panels[i] == before->panels[i], i != 2);
  assert_ptr_equal(after->panels[2]->layers[0], before->panels[2]->layers[0]);
  assert_ptr_equal(after->panels[2]->layers[1], layer);
  assert_ptr_equal(after->panels[2]->layers[2], before->panels[2]->layers[2]);
  assert_ptr_equal(after->title, before->title);
  assert_true(layer->hidden);
  g_autofree char *again = spv_scheme_to_text(before, NULL);
  assert_string_equal(again, text);
}

static void
old_values_never_change(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(77);
  SpvScheme *scheme = test_load("scheme-full.scheme.json");
  for (guint i = 0; i < 300; i++) {
    g_autofree char *before = spv_scheme_to_text(scheme, NULL);
    SpvScheme *next = test_random_edit(scheme, random);
    g_autofree char *after = spv_scheme_to_text(scheme, NULL);
    assert_string_equal(before, after);
    /* And whatever the edit was, its file gives back the same file. */
    g_autofree char *text = spv_scheme_to_text(next, NULL);
    g_autoptr(SpvScheme) again = test_parse(text);
    g_autofree char *twice = spv_scheme_to_text(again, NULL);
    assert_string_equal(text, twice);
    spv_scheme_unref(scheme);
    scheme = next;
  }
  spv_scheme_unref(scheme);
}

static void
a_new_layer_has_its_kinds_presets(void **state) {
  (void) state;
  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
    const SpvPatternInfo *info = spv_pattern_info((SpvPatternKind) kind);
    g_autoptr(SpvLayer) layer = spv_layer_new("a-1", (SpvPatternKind) kind, "or", "vert");
    SpvPattern preset = spv_pattern_preset((SpvPatternKind) kind);
    assert_string_equal(layer->id, "a-1");
    assert_string_equal(layer->name, info->label);
    for (guint i = 0; i < SPV_PATTERN_MEASURES; i++)
      assert_true(spv_measure_equal(layer->pattern.measures[i], preset.measures[i]));
    assert_string_equal(layer->tinctures[0], "or");
    if (info->n_slots >= 2)
      assert_string_equal(layer->tinctures[1], "vert");
    else
      assert_null(layer->tinctures[1]);
    assert_null(layer->tinctures[2]);
    for (guint i = 0; i < SPV_PATTERN_TEXTS; i++)
      assert_null(layer->pattern.texts[i]);
    assert_null(layer->on);
    assert_null(layer->counterchange);
    assert_false(layer->hidden || layer->locked || layer->pattern.mirrored);
  }
}

static void
layers_move_and_keep_their_order(void **state) {
  (void) state;
  static const struct {
    guint from, to;
    const char *order;
  } rows[] = { { 0, 3, "bcda" }, { 3, 0, "dabc" }, { 1, 2, "acbd" }, { 2, 1, "acbd" }, { 2, 2, "abcd" } };
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  SpvLayer *layers[4];
  for (guint i = 0; i < 4; i++) {
    const char id[2] = { (char) ('a' + i), '\0' };
    layers[i] = spv_layer_new(id, SPV_PATTERN_FIELD, "argent", NULL);
  }
  g_autoptr(SpvPanel) panel = spv_panel_with_layers(scheme->panels[0], layers, 4);
  for (guint i = 0; i < 4; i++)
    spv_layer_unref(layers[i]);
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autoptr(SpvPanel) moved = spv_panel_with_layer_moved(panel, rows[i].from, rows[i].to);
    for (guint j = 0; j < 4; j++)
      assert_int_equal(moved->layers[j]->id[0], rows[i].order[j]);
  }
  assert_int_equal(spv_panel_find_layer(panel, "c"), 2);
  assert_int_equal(spv_panel_find_layer(panel, "e"), -1);
  assert_int_equal(spv_panel_find_layer(panel, NULL), -1);

  g_autoptr(SpvPanel) fewer = spv_panel_with_layer_removed(panel, 1);
  assert_int_equal(fewer->n_layers, 3);
  assert_string_equal(fewer->layers[1]->id, "c");
  g_autoptr(SpvPanel) back = spv_panel_with_layer_added(fewer, 3, panel->layers[1]);
  assert_string_equal(back->layers[3]->id, "b");
  g_autoptr(SpvPanel) none = spv_panel_with_layers(panel, NULL, 0);
  assert_int_equal(none->n_layers, 0);
}

static void
a_new_layers_id_is_free(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  SpvPanel *panel = spv_panel_ref(scheme->panels[0]);
  static const char *const expected[] = { "check", "check-2", "check-3" };
  for (guint i = 0; i < G_N_ELEMENTS(expected); i++) {
    g_autofree char *id = spv_panel_new_layer_id(panel, SPV_PATTERN_CHECK);
    assert_string_equal(id, expected[i]);
    g_autoptr(SpvLayer) layer = spv_layer_new(id, SPV_PATTERN_CHECK, NULL, NULL);
    SpvPanel *next = spv_panel_with_layer_added(panel, 0, layer);
    spv_panel_unref(panel);
    panel = next;
  }
  spv_panel_unref(panel);
}

static void
names_are_made_fit_for_the_file(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autoptr(SpvScheme) tabbed = spv_scheme_with_title(scheme, "A\tB\nC");
  assert_string_equal(tabbed->title, "A B C");
  g_autofree char *long_name = g_strnfill(300, 'x');
  g_autoptr(SpvScheme) cut = spv_scheme_with_title(scheme, long_name);
  assert_int_equal(strlen(cut->title), 200);
  g_autoptr(SpvScheme) broken = spv_scheme_with_note(scheme, "a\xff"
                                                             "b\x01"
                                                             "c\n");
  assert_string_equal(broken->note, "a\xef\xbf\xbd"
                                    "b c\n");
  g_autoptr(SpvScheme) noted = spv_scheme_with_note(tabbed, broken->note);
  g_autofree char *text = spv_scheme_to_text(noted, NULL);
  g_autoptr(SpvScheme) again = test_parse(text);
  assert_string_equal(again->note, broken->note);
  g_autoptr(SpvScheme) unnamed = spv_scheme_new("", "  ");
  assert_string_equal(unnamed->title, "Untitled");
  assert_string_equal(unnamed->harness, "Unnamed harness");
  g_autofree char *empty = spv_scheme_to_text(unnamed, NULL);
  g_autoptr(SpvScheme) reread = test_parse(empty);
  assert_int_equal(reread->n_panels, 0);
}

static void
the_finest_line_stays_within_its_range(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-small.scheme.json");
  g_autoptr(SpvScheme) fine = spv_scheme_with_finest_line(scheme, 0);
  assert_true(fine->finest_line == SPV_FINEST_LINE_MIN);
  g_autoptr(SpvScheme) broad = spv_scheme_with_finest_line(scheme, 50);
  assert_true(broad->finest_line == SPV_FINEST_LINE_MAX);
}

static void
a_renamed_tincture_is_followed_by_its_layers(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-newer.scheme.json");
  int index = spv_scheme_find_tincture(scheme, "argent");
  SpvTincture tincture = scheme->tinctures[index];
  tincture.id = "grey";
  g_autoptr(SpvScheme) renamed = spv_scheme_with_tincture(scheme, (guint) index, &tincture);
  assert_int_equal(spv_scheme_find_tincture(renamed, "argent"), -1);
  assert_int_equal(spv_scheme_find_tincture(renamed, "grey"), index);
  assert_string_equal(renamed->panels[0]->layers[0]->tinctures[1], "grey");
  assert_string_equal(renamed->panels[0]->layers[1]->tinctures[0], "grey");
  assert_string_equal(renamed->panels[0]->layers[0]->tinctures[0], "azure");
  assert_ptr_equal(renamed->panels[1], scheme->panels[1]);
  assert_string_equal(scheme->panels[0]->layers[1]->tinctures[0], "argent");
  g_autofree char *text = spv_scheme_to_text(renamed, NULL);
  assert_non_null(strstr(text, "\"recipe\""));
  g_autoptr(SpvScheme) again = test_parse(text);
  assert_string_equal(again->panels[0]->layers[1]->tinctures[0], "grey");
}

static void
a_tincture_in_use_is_not_removed(void **state) {
  (void) state;
  GError *error = NULL;
  g_autoptr(SpvScheme) scheme = test_load("scheme-newer.scheme.json");
  assert_null(spv_scheme_with_tincture_removed(scheme, 1, &error));
  assert_int_equal(error->code, SPV_SCHEME_ERROR_IN_USE);
  assert_string_equal(error->message,
                      "“heron grey” is used by “Diagonal” on “kneepad”: give that layer another "
                      "tincture first");
  g_error_free(error);

  SpvTincture spare = { "spare", "spare", { 1, 2, 3 }, SPV_HATCH_VERT, SPV_FUR_NONE, { NULL, NULL }, 0 };
  g_autoptr(SpvScheme) more = spv_scheme_with_tincture_added(scheme, &spare);
  assert_int_equal(more->n_tinctures, 3);
  g_autoptr(SpvPanel) bare = spv_panel_with_layers(more->panels[0], NULL, 0);
  g_autoptr(SpvScheme) unused = spv_scheme_with_panel(more, 0, bare);
  g_autoptr(SpvScheme) less = spv_scheme_with_tincture_removed(unused, 0, NULL);
  assert_int_equal(less->n_tinctures, 2);
  assert_string_equal(less->tinctures[0].id, "argent");
  assert_string_equal(less->tinctures[1].id, "spare");
  /* What a newer version wrote of a tincture goes with it. */
  assert_non_null(less->unknown_tinctures[0]);
  assert_null(less->unknown_tinctures[1]);
}

static void
another_harness_takes_the_designs_of_panels_that_it_has(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-full.scheme.json");
  g_autoptr(SpvScheme) bearer = test_load("scheme-newer.scheme.json");
  const SpvPanel *old = bearer->panels[0];
  g_autoptr(SpvPanel) knee = spv_panel_new("kneepad-dexter", "other kneepad", SPV_SIDE_DEXTER, &old->outline,
                                           &old->surface, old->place);
  SpvPanel *const panels[] = { (SpvPanel *) old, knee };
  g_autoptr(SpvScheme) harness = spv_scheme_with_panels(bearer, panels, 2);

  g_autoptr(SpvScheme) moved = spv_scheme_with_harness(scheme, harness);
  assert_string_equal(moved->title, "Saltmarsh Wardens");
  assert_string_equal(moved->harness, "Ferry hand, 28 mm");
  assert_int_equal(moved->n_tinctures, scheme->n_tinctures);
  assert_int_equal(moved->n_panels, 2);
  /* A panel of no such id is bare: its own layers use another scheme's tinctures. */
  assert_int_equal(moved->panels[0]->n_layers, 0);
  assert_string_equal(moved->panels[1]->name, "other kneepad");
  assert_int_equal(moved->panels[1]->n_layers, 3);
  assert_ptr_equal(moved->panels[1]->layers[0], scheme->panels[1]->layers[0]);
  g_autofree char *text = spv_scheme_to_text(moved, NULL);
  g_autoptr(SpvScheme) again = test_parse(text);
  assert_int_equal(again->n_panels, 2);
}

static void
keys_are_found_again(void **state) {
  (void) state;
  for (guint i = 0; i < SPV_N_HATCHES; i++) {
    SpvHatch hatch = SPV_HATCH_ARGENT;
    assert_true(spv_hatch_from_key(spv_hatch_key((SpvHatch) i), &hatch));
    assert_int_equal(hatch, i);
  }
  for (guint i = 0; i <= SPV_SIDE_SINISTER; i++) {
    SpvSide side = SPV_SIDE_CENTRE;
    assert_true(spv_side_from_key(spv_side_key((SpvSide) i), &side));
    assert_int_equal(side, i);
  }
  SpvHatch hatch;
  SpvSide side;
  assert_false(spv_hatch_from_key("plaid", &hatch));
  assert_false(spv_hatch_from_key(NULL, &hatch));
  assert_false(spv_side_from_key("left", &side));
}

static gpointer
read_and_edit(gpointer data) {
  const SpvScheme *scheme = data;
  g_autoptr(GRand) random = g_rand_new_with_seed(5);
  guint n = 0;
  for (guint i = 0; i < 200; i++) {
    g_autoptr(SpvScheme) mine = spv_scheme_ref(scheme);
    g_autoptr(SpvScheme) edited = test_random_edit(mine, random);
    g_autofree char *text = spv_scheme_to_text(edited, NULL);
    n += text[0] == '{';
  }
  return GUINT_TO_POINTER(n);
}

static void
threads_share_a_scheme_without_a_lock(void **state) {
  (void) state;
  g_autoptr(SpvScheme) scheme = test_load("scheme-newer.scheme.json");
  g_autofree char *before = spv_scheme_to_text(scheme, NULL);
  GThread *threads[4];
  for (guint i = 0; i < 4; i++)
    threads[i] = g_thread_new("reader", read_and_edit, scheme);
  for (guint i = 0; i < 4; i++)
    assert_int_equal(GPOINTER_TO_UINT(g_thread_join(threads[i])), 200);
  g_autofree char *after = spv_scheme_to_text(scheme, NULL);
  assert_string_equal(before, after);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(an_edit_that_changes_nothing_gives_the_same_value),
    cmocka_unit_test(an_edit_shares_what_it_does_not_touch),
    cmocka_unit_test(old_values_never_change),
    cmocka_unit_test(a_new_layer_has_its_kinds_presets),
    cmocka_unit_test(layers_move_and_keep_their_order),
    cmocka_unit_test(a_new_layers_id_is_free),
    cmocka_unit_test(names_are_made_fit_for_the_file),
    cmocka_unit_test(the_finest_line_stays_within_its_range),
    cmocka_unit_test(a_renamed_tincture_is_followed_by_its_layers),
    cmocka_unit_test(a_tincture_in_use_is_not_removed),
    cmocka_unit_test(another_harness_takes_the_designs_of_panels_that_it_has),
    cmocka_unit_test(keys_are_found_again),
    cmocka_unit_test(threads_share_a_scheme_without_a_lock),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
