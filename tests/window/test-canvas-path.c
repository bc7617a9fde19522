/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The nodes of a free path on the canvas: dragged, added, taken away, turned smooth, by pointer and by keys.
 */
#include "test-canvas-frame.h"
#include "test-canvas-scene.h"
#include "window/canvas-private.h"

typedef struct {
  SpvSession *session;
  GtkWidget *window, *widget;
  SpvCanvas *canvas;
} Bench;

static Bench
bench_new(void) {
  g_autoptr(SpvScheme) scheme = scene_scheme(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_FREE_PATH);
  Bench bench = { .session = spv_session_new(scheme, NULL), .widget = spv_canvas_new() };

  bench.canvas = SPV_CANVAS(bench.widget);
  g_object_set(bench.widget, "session", bench.session, NULL);
  spv_session_select(bench.session, 0, 1);
  bench.window = frame_around(bench.widget, 720, 640);
  return bench;
}

static void
bench_free(Bench *bench) {
  frame_close(bench->window, bench->widget);
  g_assert_finalize_object(bench->session);
}

/* Where (X, Y) mm of the panel is on the widget. */
static SpvPoint
at_mm(const Bench *bench, double x, double y) {
  SpvPoint px = spv_viewport_to_px(&bench->canvas->viewport, spv_point(x, y));

  return spv_point(px.x + bench->canvas->ruler, px.y + bench->canvas->ruler);
}

static void
emit_drag(const Bench *bench, const char *name, double x, double y) {
  g_signal_emit_by_name(frame_controller(bench->widget, GTK_TYPE_GESTURE_DRAG, GDK_BUTTON_PRIMARY), name, x,
                        y);
}

static void
click_twice(const Bench *bench, SpvPoint px) {
  GtkEventController *clicks = frame_controller(bench->widget, GTK_TYPE_GESTURE_CLICK, GDK_BUTTON_PRIMARY);

  for (int n = 1; n <= 2; n++) {
    emit_drag(bench, "drag-begin", px.x, px.y);
    g_signal_emit_by_name(clicks, "pressed", n, px.x, px.y);
    emit_drag(bench, "drag-end", 0, 0);
  }
}

static SpvPoint
node(const Bench *bench, guint index) {
  return spv_path_nodes_get(bench->canvas->nodes, index)->at;
}

static guint
count_nodes(const Bench *bench) {
  return bench->canvas->nodes->nodes->len;
}

/* The preset of a new path: its first node is chosen. */
static void
test_drag_is_one_step(void **state) {
  Bench bench = bench_new();
  SpvPoint px = at_mm(&bench, 2, 3);
  cairo_surface_t *image;

  (void) state;
  assert_int_equal(count_nodes(&bench), 4);
  assert_int_equal(bench.canvas->node, 0);
  emit_drag(&bench, "drag-begin", px.x, px.y);
  for (int i = 1; i <= 30; i++)
    emit_drag(&bench, "drag-update", i, -i);
  assert_non_null(bench.canvas->caption);
  image = frame_grab(bench.widget, "canvas-path-dragging");
  cairo_surface_destroy(image);
  emit_drag(&bench, "drag-end", 0, 0);
  assert_int_equal(bench.canvas->node, 1);
  assert_true(fabs(node(&bench, 1).x - 2 - 30 / bench.canvas->viewport.scale) < 0.03);
  /* On a twentieth of a millimetre. */
  assert_true(fabs(remainder(node(&bench, 1).x, 0.05)) < 1e-6);
  assert_string_equal(spv_session_undo_label(bench.session), "Move node");
  assert_true(spv_session_undo(bench.session));
  assert_true(fabs(node(&bench, 1).x - 2) < 1e-9);
  assert_false(spv_session_undo(bench.session));
  bench_free(&bench);
}

/* Escape in mid-drag leaves no trace. */
static void
test_escape(void **state) {
  Bench bench = bench_new();
  SpvPoint px = at_mm(&bench, 2, 3);

  (void) state;
  emit_drag(&bench, "drag-begin", px.x, px.y);
  emit_drag(&bench, "drag-update", 40, 0);
  assert_true(frame_key(bench.widget, GDK_KEY_Escape, 0));
  assert_true(fabs(node(&bench, 1).x - 2) < 1e-9);
  assert_null(spv_session_undo_label(bench.session));
  assert_null(spv_session_redo_label(bench.session));
  bench_free(&bench);
}

static void
test_clicked_twice(void **state) {
  Bench bench = bench_new();

  (void) state;
  click_twice(&bench, at_mm(&bench, 1, 4));
  assert_int_equal(count_nodes(&bench), 5);
  assert_int_equal(bench.canvas->node, 2);
  assert_true(spv_point_distance(node(&bench, 2), spv_point(1, 4)) < 0.05);
  click_twice(&bench, at_mm(&bench, 1, 4));
  assert_int_equal(count_nodes(&bench), 5);
  assert_true(spv_path_nodes_is_smooth(bench.canvas->nodes, 2));
  assert_true(spv_session_undo(bench.session));
  assert_false(spv_path_nodes_is_smooth(bench.canvas->nodes, 2));
  assert_true(spv_session_undo(bench.session));
  assert_int_equal(count_nodes(&bench), 4);
  assert_false(spv_session_undo(bench.session));
  bench_free(&bench);
}

static void
test_keys(void **state) {
  Bench bench = bench_new();

  (void) state;
  assert_true(frame_key(bench.widget, GDK_KEY_Page_Down, 0));
  assert_int_equal(bench.canvas->node, 1);
  assert_true(frame_key(bench.widget, GDK_KEY_Right, 0));
  assert_true(frame_key(bench.widget, GDK_KEY_Down, GDK_SHIFT_MASK));
  assert_true(spv_point_distance(node(&bench, 1), spv_point(2.05, 3.5)) < 1e-6);
  /* A run of them is one step. */
  assert_true(spv_session_undo(bench.session));
  assert_true(spv_point_distance(node(&bench, 1), spv_point(2, 3)) < 1e-6);
  assert_true(frame_key(bench.widget, GDK_KEY_Insert, 0));
  assert_int_equal(count_nodes(&bench), 5);
  assert_true(frame_key(bench.widget, GDK_KEY_Return, 0));
  assert_true(spv_path_nodes_is_smooth(bench.canvas->nodes, (guint) bench.canvas->node));
  for (int i = 0; i < 4; i++)
    assert_true(frame_key(bench.widget, GDK_KEY_Delete, 0));
  assert_int_equal(count_nodes(&bench), 3);
  /* With no node chosen, Delete is the window's. */
  assert_true(frame_key(bench.widget, GDK_KEY_Escape, 0));
  assert_false(frame_key(bench.widget, GDK_KEY_Delete, 0));
  bench_free(&bench);
}

/* In the mirror, an arrow still moves the node the way it points. */
static void
test_mirrored(void **state) {
  Bench bench = bench_new();
  double before;

  (void) state;
  spv_session_mirror_layer(bench.session);
  bench.canvas->node = 1;
  before = spv_transform_point(bench.canvas->path_place, node(&bench, 1)).x;
  assert_true(fabs(before + 2) < 1e-9);
  assert_true(frame_key(bench.widget, GDK_KEY_Right, 0));
  assert_true(fabs(spv_transform_point(bench.canvas->path_place, node(&bench, 1)).x - before - 0.05) < 1e-6);
  bench_free(&bench);
}

static void
test_both_sides(void **state) {
  Bench bench = bench_new();
  g_autoptr(SpvLayer) layer = spv_layer_with_measure(spv_session_chosen_layer(bench.session), 0,
                                                     (SpvMeasure){ SPV_UNIT_PLAIN, 1 });
  g_autoptr(SpvLayer) shape = spv_layer_with_text(layer, 0, "M 0.5 2 C 2 1 3.5 2 3 4 L 1 7 Z");
  cairo_surface_t *image;
  SpvPoint left;

  (void) state;
  spv_session_edit_layer(bench.session, 1, shape, "Change", NULL);
  assert_true(spv_canvas_path_is_mirrored(bench.canvas));
  assert_true(frame_key(bench.widget, GDK_KEY_Page_Down, 0));
  image = frame_grab(bench.widget, "canvas-path-mirrored");
  left = at_mm(&bench, -2, 3.5);
  assert_int_equal(frame_pixel(image, (int) left.x, (int) left.y), 0x225d55);
  cairo_surface_destroy(image);
  bench_free(&bench);
}

static void
test_says_which(void **state) {
  Bench bench = bench_new();
  g_autofree char *first = spv_canvas_node_words(bench.canvas), *second = NULL, *none = NULL;

  (void) state;
  assert_string_equal(first, "node 1 of 4, smooth: Across 0.00\u2009mm Down 1.00\u2009mm");
  assert_true(frame_key(bench.widget, GDK_KEY_Page_Up, 0));
  assert_true(frame_key(bench.widget, GDK_KEY_Page_Up, 0));
  second = spv_canvas_node_words(bench.canvas);
  assert_string_equal(second, "node 3 of 4, corner: Across 0.00\u2009mm Down 5.00\u2009mm");
  assert_true(frame_key(bench.widget, GDK_KEY_Escape, 0));
  none = spv_canvas_node_words(bench.canvas);
  assert_string_equal(none, "4 nodes, none is chosen");
  bench_free(&bench);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_drag_is_one_step), cmocka_unit_test(test_escape),
    cmocka_unit_test(test_clicked_twice),    cmocka_unit_test(test_keys),
    cmocka_unit_test(test_mirrored),         cmocka_unit_test(test_both_sides),
    cmocka_unit_test(test_says_which),
  };

  if (!gtk_init_check())
    return 77;
  return cmocka_run_group_tests(tests, NULL, NULL);
}
