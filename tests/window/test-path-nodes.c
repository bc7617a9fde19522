/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The nodes of a free path: read, found, moved, added, taken away, written. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

#include "heraldry/lettering.h"
#include "window/path-nodes.h"

#define FINE 1e-4 /* mm: what is written */
#define SQUARE "M 0 0 L 4 0 L 4 4 L 0 4 Z"

static double
area_of(const SpvPathNodes *nodes) {
  g_autoptr(SpvPath) path = spv_path_nodes_path(nodes);
  g_autoptr(GPtrArray) rings = spv_path_flatten(path, SPV_CHORD_ERROR);
  double area = 0;

  for (guint i = 0; i < rings->len; i++)
    area += spv_ring_area(g_ptr_array_index(rings, i));
  return area;
}

static void
assert_at(SpvPoint p, double x, double y) {
  assert_true(fabs(p.x - x) < FINE);
  assert_true(fabs(p.y - y) < FINE);
}

static void
test_reads_and_writes(void **state) {
  const char *const texts[] = { SQUARE, SPV_FREE_PATH_PRESET,
                                "M 0 0 L 4 0 L 4 4 L 0 4 Z M 1 1 L 1 2 L 2 2 Z" };
  const guint n[] = { 4, 4, 7 };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(texts); i++) {
    g_autoptr(SpvPathNodes) nodes = spv_path_nodes_parse(texts[i]);
    g_autofree char *once = spv_path_nodes_write(nodes);
    g_autoptr(SpvPathNodes) again = spv_path_nodes_parse(once);
    g_autofree char *twice = spv_path_nodes_write(again);

    assert_int_equal(nodes->nodes->len, n[i]);
    assert_int_equal(again->nodes->len, n[i]);
    assert_string_equal(once, twice);
    assert_true(fabs(area_of(nodes) - area_of(again)) < FINE);
  }
}

/* A circle of radius 2 in two arcs: four nodes, all smooth, and its area, 4π, within what a cubic strays. */
static void
test_arcs_become_curves(void **state) {
  g_autoptr(SpvPathNodes) nodes = spv_path_nodes_parse("M -2 0 A 2 2 0 0 1 2 0 A 2 2 0 0 1 -2 0 Z");

  (void) state;
  assert_int_equal(nodes->nodes->len, 4);
  for (guint i = 0; i < 4; i++)
    assert_true(spv_path_nodes_is_smooth(nodes, i));
  assert_true(fabs(area_of(nodes) - 4 * G_PI) < 0.02);
}

static void
test_refuses(void **state) {
  GString *many = g_string_new("M 0 0");

  (void) state;
  assert_null(spv_path_nodes_parse("M 0 0 L"));
  for (int i = 0; i < SPV_PATH_NODES_MOST + 1; i++)
    g_string_append_printf(many, " L %d %d", i, i % 7 + 1);
  assert_null(spv_path_nodes_parse(many->str));
  g_string_free(many, TRUE);
}

static void
test_hits(void **state) {
  g_autoptr(SpvPathNodes) nodes = spv_path_nodes_parse(SPV_FREE_PATH_PRESET);
  SpvNodePart part = SPV_NODE_IN;
  guint index = 99;
  double t = 0;

  (void) state;
  assert_true(spv_path_nodes_hit(nodes, spv_point(2.05, 3.02), 0.1, -1, &index, &part));
  assert_int_equal(index, 1);
  assert_int_equal(part, SPV_NODE_POINT);
  assert_false(spv_path_nodes_hit(nodes, spv_point(2.2, 3.02), 0.1, -1, &index, &part));
  /* The handle of a node only while that is chosen. */
  assert_false(spv_path_nodes_hit(nodes, spv_point(1.5, 1), 0.1, -1, &index, &part));
  assert_true(spv_path_nodes_hit(nodes, spv_point(1.5, 1), 0.1, 0, &index, &part));
  assert_int_equal(index, 0);
  assert_int_equal(part, SPV_NODE_OUT);
  /* Half-way down the straight edge from (2, 3) to (0, 5). */
  assert_true(spv_path_nodes_hit_edge(nodes, spv_point(1.03, 4.03), 0.1, &index, &t));
  assert_int_equal(index, 1);
  assert_true(fabs(t - 0.5) < 0.01);
  assert_false(spv_path_nodes_hit_edge(nodes, spv_point(0, 3), 0.1, &index, &t));
}

/* A point takes its handles along; a smooth node stays smooth as one handle is moved; a corner's handles are
 * each their own. */
static void
test_moves(void **state) {
  g_autoptr(SpvPathNodes) nodes = spv_path_nodes_parse(SPV_FREE_PATH_PRESET);
  double before = spv_point_distance(spv_path_nodes_part(nodes, 0, SPV_NODE_IN),
                                     spv_path_nodes_get(nodes, 0)->at);

  (void) state;
  spv_path_nodes_move(nodes, 0, SPV_NODE_POINT, spv_point(0, 0.5));
  assert_at(spv_path_nodes_get(nodes, 0)->out, 1.5, 0.5);
  assert_at(spv_path_nodes_get(nodes, 0)->in, -1.5, 0.5);
  spv_path_nodes_move(nodes, 0, SPV_NODE_OUT, spv_point(1, 1.5));
  assert_true(spv_path_nodes_is_smooth(nodes, 0));
  assert_at(spv_path_nodes_get(nodes, 0)->in, -before * sqrt(0.5), 0.5 - before * sqrt(0.5));
  spv_path_nodes_move(nodes, 1, SPV_NODE_IN, spv_point(1, 2.5));
  assert_false(spv_path_nodes_is_smooth(nodes, 1));
  assert_at(spv_path_nodes_get(nodes, 1)->out, 2, 3);
}

/* Wherever a node is added, the shape stays as it is. */
static void
test_inserts(void **state) {
  g_autoptr(SpvPathNodes) whole = spv_path_nodes_parse(SPV_FREE_PATH_PRESET " M 3 0 L 4 0 L 4 1 Z");

  (void) state;
  for (guint i = 0; i < whole->nodes->len; i++) {
    g_autoptr(SpvPathNodes) nodes = spv_path_nodes_copy(whole);
    guint next = spv_path_nodes_next(nodes, i), added = spv_path_nodes_insert(nodes, i, 0.3);

    assert_int_equal(added, i + 1);
    assert_int_equal(spv_path_nodes_next(nodes, i), added);
    assert_int_equal(spv_path_nodes_next(nodes, added), next > i ? next + 1 : next);
    assert_true(fabs(area_of(nodes) - area_of(whole)) < 0.005);
  }
}

static void
test_removes(void **state) {
  g_autoptr(SpvPathNodes) nodes = spv_path_nodes_parse(SQUARE " M 5 0 L 6 0 L 6 1 Z");

  (void) state;
  assert_true(spv_path_nodes_remove(nodes, 0));
  assert_int_equal(nodes->nodes->len, 6);
  assert_true(fabs(area_of(nodes) - 8.5) < FINE);
  /* Three are left of either run. */
  for (guint i = 0; i < nodes->nodes->len; i++)
    assert_false(spv_path_nodes_remove(nodes, i));
  assert_int_equal(spv_path_nodes_previous(nodes, 3), 5);
}

static void
test_toggles(void **state) {
  g_autoptr(SpvPathNodes) nodes = spv_path_nodes_parse(SQUARE);

  (void) state;
  assert_false(spv_path_nodes_is_smooth(nodes, 1));
  spv_path_nodes_toggle(nodes, 1);
  assert_true(spv_path_nodes_is_smooth(nodes, 1));
  {
    g_autofree char *text = spv_path_nodes_write(nodes);
    g_autoptr(SpvPathNodes) again = spv_path_nodes_parse(text);

    assert_true(spv_path_nodes_is_smooth(again, 1));
  }
  spv_path_nodes_toggle(nodes, 1);
  assert_false(spv_path_nodes_is_smooth(nodes, 1));
  assert_true(fabs(area_of(nodes) - 16) < FINE);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_reads_and_writes),
    cmocka_unit_test(test_arcs_become_curves),
    cmocka_unit_test(test_refuses),
    cmocka_unit_test(test_hits),
    cmocka_unit_test(test_moves),
    cmocka_unit_test(test_inserts),
    cmocka_unit_test(test_removes),
    cmocka_unit_test(test_toggles),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
