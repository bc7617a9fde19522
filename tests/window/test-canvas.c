/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The canvas on a virtual display: what it shows, and what pointer and keys do. */
#include "test-canvas-frame.h"
#include "test-canvas-scene.h"
#include "window/canvas-private.h"
#include "window/true-size.h"

#define WIDTH 720
#define HEIGHT 640

typedef struct {
  SpvSession *session;
  GtkWidget *window, *widget;
  SpvCanvas *canvas;
} Bench;

static Bench
bench_new(SpvOutlineFamily family, double width, double height, SpvPatternKind kind, int layer) {
  g_autoptr(SpvScheme) scheme = scene_scheme(family, width, height, kind);
  Bench bench = { .session = spv_session_new(scheme, NULL), .widget = spv_canvas_new() };

  bench.canvas = SPV_CANVAS(bench.widget);
  g_object_set(bench.widget, "session", bench.session, NULL);
  spv_session_select(bench.session, 0, layer);
  bench.window = frame_around(bench.widget, WIDTH, HEIGHT);
  return bench;
}

static void
bench_free(Bench *bench) {
  frame_close(bench->window, bench->widget);
  g_assert_finalize_object(bench->session);
}

/* Where (X, Y) mm is on the widget. */
static SpvPoint
at_mm(const Bench *bench, double x, double y) {
  SpvPoint px = spv_viewport_to_px(&bench->canvas->viewport, spv_point(x, y));

  return spv_point(px.x + bench->canvas->ruler, px.y + bench->canvas->ruler);
}

static void
drag_begin(const Bench *bench, SpvPoint px, guint button) {
  g_signal_emit_by_name(frame_controller(bench->widget, GTK_TYPE_GESTURE_DRAG, button), "drag-begin", px.x,
                        px.y);
}

static void
drag_update(const Bench *bench, double dx, double dy, guint button) {
  g_signal_emit_by_name(frame_controller(bench->widget, GTK_TYPE_GESTURE_DRAG, button), "drag-update", dx,
                        dy);
}

static void
drag_end(const Bench *bench, guint button) {
  g_signal_emit_by_name(frame_controller(bench->widget, GTK_TYPE_GESTURE_DRAG, button), "drag-end", 0.0, 0.0);
}

static void
click(const Bench *bench, SpvPoint px) {
  drag_begin(bench, px, GDK_BUTTON_PRIMARY);
  drag_end(bench, GDK_BUTTON_PRIMARY);
}

static double
depth_of_chief(const Bench *bench) {
  const SpvLayer *layer = spv_session_chosen_panel(bench->session)->layers[1];

  return spv_measure_resolve(spv_pattern_info(layer->pattern.kind)->measures, layer->pattern.measures[0], 8,
                             10, 0);
}

/* Colours where the layers lie, the mat around, in the bitmap that the toolkit would show. */
static void
test_shows_the_panel(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, -1);
  cairo_surface_t *image = frame_grab(bench.widget, "canvas-chief");
  SpvPoint chief = at_mm(&bench, 2, 1.5), field = at_mm(&bench, -2, 8), mat = at_mm(&bench, -6, 5.02);

  (void) state;
  assert_int_equal(frame_pixel(image, (int) chief.x, (int) chief.y), 0x225d55);
  assert_int_equal(frame_pixel(image, (int) field.x, (int) field.y), 0xeee5d0);
  assert_true(frame_count(image, (int) mat.x - 20, (int) mat.y - 20, (int) mat.x + 20, (int) mat.y + 20,
                          0x667580) > 800);
  cairo_surface_destroy(image);
  bench_free(&bench);
}

static void
test_hatch(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, -1);
  cairo_surface_t *image;

  (void) state;
  g_object_set(bench.widget, "hatch", TRUE, NULL);
  image = frame_grab(bench.widget, "canvas-hatch");
  assert_int_equal(frame_count(image, 0, 0, WIDTH, HEIGHT, 0x225d55), 0);
  assert_true(frame_count(image, 0, 0, WIDTH, HEIGHT, 0xffffff) > 50000);
  cairo_surface_destroy(image);
  bench_free(&bench);
}

/* How much of the accent there is with LAYER chosen. */
static guint
count_accent(Bench *bench, int layer, gboolean guide, const char *name) {
  cairo_surface_t *image;
  guint n;

  spv_session_select(bench->session, 0, layer);
  g_object_set(bench->widget, "show-guide", guide, NULL);
  image = frame_grab(bench->widget, name);
  n = frame_count(image, 0, 0, WIDTH, HEIGHT, 0xdc4a2e);
  cairo_surface_destroy(image);
  return n;
}

/* With the switch, dots come of the layer that is chosen, or of all. */
static void
test_guide(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_KNEEPAD, 3.4, 4.1, SPV_PATTERN_JAGGED_BORDER, -1);
  guint bare = count_accent(&bench, -1, FALSE, "canvas-plain");
  guint without = count_accent(&bench, 1, FALSE, "canvas-border");

  (void) state;
  assert_true(count_accent(&bench, 1, TRUE, "canvas-jagged") > without + 100);
  assert_true(count_accent(&bench, 0, TRUE, "canvas-field") <= bare);
  assert_true(count_accent(&bench, -1, TRUE, "canvas-guide") > bare + 100);
  bench_free(&bench);
}

static void
test_click_chooses(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, -1);

  (void) state;
  click(&bench, at_mm(&bench, 2, 1.5));
  assert_int_equal(spv_session_layer(bench.session), 1);
  click(&bench, at_mm(&bench, 2, 8));
  assert_int_equal(spv_session_layer(bench.session), 0);
  click(&bench, at_mm(&bench, -6, 5));
  assert_int_equal(spv_session_layer(bench.session), -1);
  assert_false(spv_session_is_modified(bench.session));
  bench_free(&bench);
}

/* A press that wanders off is no click. */
static void
test_wandering_press(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, -1);

  (void) state;
  drag_begin(&bench, at_mm(&bench, 2, 1.5), GDK_BUTTON_PRIMARY);
  drag_update(&bench, 40, 3, GDK_BUTTON_PRIMARY);
  drag_end(&bench, GDK_BUTTON_PRIMARY);
  assert_int_equal(spv_session_layer(bench.session), -1);
  bench_free(&bench);
}

/* However many moves it takes, a drag is one step; the value snaps and keeps its unit. */
static void
test_drag_is_one_step(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, 1);
  double before = depth_of_chief(&bench), after;
  const SpvLayer *layer;

  (void) state;
  drag_begin(&bench, at_mm(&bench, 0, before), GDK_BUTTON_PRIMARY);
  for (int i = 1; i <= 40; i++)
    drag_update(&bench, i, i * 2, GDK_BUTTON_PRIMARY);
  assert_non_null(bench.canvas->caption);
  {
    cairo_surface_t *image = frame_grab(bench.widget, "canvas-dragging");

    cairo_surface_destroy(image);
  }
  drag_end(&bench, GDK_BUTTON_PRIMARY);
  assert_null(bench.canvas->caption);
  after = depth_of_chief(&bench);
  assert_true(fabs(after - before - 80 / bench.canvas->viewport.scale) < 0.03);
  assert_true(fabs(after * 20 - round(after * 20)) < 1e-4);
  layer = spv_session_chosen_layer(bench.session);
  assert_int_equal(layer->pattern.measures[0].unit, SPV_UNIT_RELATIVE);
  assert_string_equal(spv_session_undo_label(bench.session), "Change depth");
  assert_true(spv_session_undo(bench.session));
  assert_true(fabs(depth_of_chief(&bench) - before) < 1e-9);
  assert_false(spv_session_undo(bench.session));
  bench_free(&bench);
}

/* Two drags are two steps. */
static void
test_two_drags(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, 1);

  (void) state;
  for (int i = 0; i < 2; i++) {
    drag_begin(&bench, at_mm(&bench, 0, depth_of_chief(&bench)), GDK_BUTTON_PRIMARY);
    drag_update(&bench, 0, 30, GDK_BUTTON_PRIMARY);
    drag_end(&bench, GDK_BUTTON_PRIMARY);
  }
  assert_true(spv_session_undo(bench.session));
  assert_true(spv_session_undo(bench.session));
  assert_false(spv_session_undo(bench.session));
  bench_free(&bench);
}

static void
test_escape_cancels(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, 1);
  double before = depth_of_chief(&bench);

  (void) state;
  assert_false(frame_key(bench.widget, GDK_KEY_Escape, 0));
  drag_begin(&bench, at_mm(&bench, 0, before), GDK_BUTTON_PRIMARY);
  drag_update(&bench, 0, 50, GDK_BUTTON_PRIMARY);
  assert_true(depth_of_chief(&bench) > before);
  assert_true(frame_key(bench.widget, GDK_KEY_Escape, 0));
  assert_true(fabs(depth_of_chief(&bench) - before) < 1e-9);
  drag_update(&bench, 0, 90, GDK_BUTTON_PRIMARY);
  drag_end(&bench, GDK_BUTTON_PRIMARY);
  assert_true(fabs(depth_of_chief(&bench) - before) < 1e-9);
  assert_false(spv_session_is_modified(bench.session));
  assert_false(spv_session_undo(bench.session));
  bench_free(&bench);
}

/* With no layer chosen the panel's own size is taken by its edge. */
static void
test_panel_handles(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, -1);
  double scale = bench.canvas->viewport.scale;

  (void) state;
  drag_begin(&bench, at_mm(&bench, 0, 10), GDK_BUTTON_PRIMARY);
  drag_update(&bench, 0, -2 * scale, GDK_BUTTON_PRIMARY);
  drag_end(&bench, GDK_BUTTON_PRIMARY);
  assert_true(fabs(spv_session_chosen_panel(bench.session)->outline.height - 8) < 0.03);
  assert_true(spv_session_chosen_panel(bench.session)->outline.width == 8);
  assert_true(bench.canvas->viewport.fitted && bench.canvas->viewport.scale > scale);
  bench_free(&bench);
}

static void
test_arrows_nudge(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, 1);
  double before = depth_of_chief(&bench);

  (void) state;
  assert_true(frame_key(bench.widget, GDK_KEY_Down, 0));
  assert_true(fabs(depth_of_chief(&bench) - before - 0.05) < 1e-4);
  assert_true(frame_key(bench.widget, GDK_KEY_Down, GDK_SHIFT_MASK));
  assert_true(fabs(depth_of_chief(&bench) - before - 0.3) < 1e-4);
  assert_true(frame_key(bench.widget, GDK_KEY_Up, 0));
  assert_true(fabs(depth_of_chief(&bench) - before - 0.25) < 1e-4);
  assert_false(frame_key(bench.widget, GDK_KEY_Down, GDK_CONTROL_MASK));
  /* A run of them is one step. */
  assert_true(spv_session_undo(bench.session));
  assert_true(fabs(depth_of_chief(&bench) - before) < 1e-9);
  bench_free(&bench);
}

/* Page Down goes from handle to handle, and round. */
static void
test_next_handle(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_DISC, 9, 9, SPV_PATTERN_ROUNDEL, 1);
  const SpvHandle *first = spv_canvas_active_handle(bench.canvas);

  (void) state;
  assert_true(frame_key(bench.widget, GDK_KEY_Page_Down, 0));
  assert_ptr_not_equal(spv_canvas_active_handle(bench.canvas), first);
  for (guint i = 1; i < bench.canvas->handles->len; i++)
    assert_true(frame_key(bench.widget, GDK_KEY_Page_Down, 0));
  assert_ptr_equal(spv_canvas_active_handle(bench.canvas), first);
  bench_free(&bench);
}

static void
test_zoom_keys(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, -1);
  double fit = bench.canvas->viewport.scale;

  (void) state;
  assert_true(frame_key(bench.widget, GDK_KEY_plus, 0));
  assert_true(fabs(bench.canvas->viewport.scale - 1.25 * fit) < 1e-6);
  assert_true(frame_key(bench.widget, GDK_KEY_minus, 0));
  assert_true(fabs(bench.canvas->viewport.scale - fit) < 1e-6);
  spv_canvas_zoom_in(bench.canvas);
  spv_canvas_zoom_in(bench.canvas);
  assert_true(frame_key(bench.widget, GDK_KEY_0, 0));
  assert_true(fabs(bench.canvas->viewport.scale - fit) < 1e-6 && bench.canvas->viewport.fitted);
  bench_free(&bench);
}

static void
test_pan(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, 1);
  SpvPoint datum;
  gboolean handled = FALSE;

  (void) state;
  spv_canvas_zoom_in(bench.canvas);
  datum = bench.canvas->viewport.datum;
  drag_begin(&bench, at_mm(&bench, 0, 3), GDK_BUTTON_MIDDLE);
  drag_update(&bench, 30, -20, GDK_BUTTON_MIDDLE);
  drag_update(&bench, 50, -10, GDK_BUTTON_MIDDLE);
  drag_end(&bench, GDK_BUTTON_MIDDLE);
  assert_true(fabs(bench.canvas->viewport.datum.x - datum.x - 50) < 1e-6);
  assert_true(fabs(bench.canvas->viewport.datum.y - datum.y + 10) < 1e-6);
  /* With the space bar the first button pans too, even over a handle. */
  datum = bench.canvas->viewport.datum;
  assert_true(frame_key(bench.widget, GDK_KEY_space, 0));
  drag_begin(&bench, at_mm(&bench, 0, depth_of_chief(&bench)), GDK_BUTTON_PRIMARY);
  drag_update(&bench, 10, 10, GDK_BUTTON_PRIMARY);
  drag_end(&bench, GDK_BUTTON_PRIMARY);
  assert_true(fabs(bench.canvas->viewport.datum.x - datum.x - 10) < 1e-6);
  assert_false(spv_session_is_modified(bench.session));
  datum = bench.canvas->viewport.datum;
  g_signal_emit_by_name(frame_controller(bench.widget, GTK_TYPE_EVENT_CONTROLLER_SCROLL, 0), "scroll", 0.0,
                        1.0, &handled);
  assert_true(handled && bench.canvas->viewport.datum.y < datum.y - 10);
  bench_free(&bench);
}

/* The pointer's place is marked on both rulers. */
static void
test_pointer_marks(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_CHIEF, -1);
  cairo_surface_t *without = frame_grab(bench.widget, "canvas-no-pointer"), *with;
  guint above = 0, left = 0;

  (void) state;
  g_signal_emit_by_name(frame_controller(bench.widget, GTK_TYPE_EVENT_CONTROLLER_MOTION, 0), "motion", 333.0,
                        222.0);
  with = frame_grab(bench.widget, "canvas-pointer");
  for (int i = 0; i < SPV_RULER_LEAST; i++)
    for (int j = -4; j <= 4; j++) {
      above += frame_pixel(with, 333 + j, i) != frame_pixel(without, 333 + j, i);
      left += frame_pixel(with, i, 222 + j) != frame_pixel(without, i, 222 + j);
    }
  assert_true(above > 15 && left > 15);
  cairo_surface_destroy(without);
  cairo_surface_destroy(with);
  bench_free(&bench);
}

/* Every kind is shown with its handles and taken hold of; nothing breaks, and each drag can be undone. */
static void
test_every_kind(void **state) {
  (void) state;
  for (guint kind = 1; kind < SPV_N_PATTERNS; kind++) {
    Bench bench = bench_new(SPV_OUTLINE_KNEEPAD, 9, 10, (SpvPatternKind) kind, 1);
    g_autofree char *name = g_strdup_printf("canvas-%s", spv_pattern_info((SpvPatternKind) kind)->key);
    cairo_surface_t *image = frame_grab(bench.widget, name);

    cairo_surface_destroy(image);
    for (guint i = 0; i < bench.canvas->handles->len; i++) {
      SpvPoint at = g_array_index(bench.canvas->handles, SpvHandle, i).at;

      drag_begin(&bench, at_mm(&bench, at.x, at.y), GDK_BUTTON_PRIMARY);
      assert_int_equal(bench.canvas->grip, SPV_GRIP_HANDLE);
      drag_update(&bench, 25, 17, GDK_BUTTON_PRIMARY);
      drag_end(&bench, GDK_BUTTON_PRIMARY);
      assert_true(spv_session_undo(bench.session));
      assert_false(spv_session_undo(bench.session));
    }
    bench_free(&bench);
  }
}

static void
test_no_session(void **state) {
  GtkWidget *widget = spv_canvas_new(), *window = frame_around(widget, WIDTH, HEIGHT);
  cairo_surface_t *image = frame_grab(widget, "canvas-empty");
  Bench bench = { .widget = widget };

  (void) state;
  cairo_surface_destroy(image);
  click(&bench, spv_point(300, 300));
  assert_false(frame_key(widget, GDK_KEY_Left, 0));
  assert_true(frame_key(widget, GDK_KEY_plus, 0));
  frame_close(window, widget);
}

/* What assistive technology is told: a picture, of which panel, and how large. */
static void
test_accessible(void **state) {
  Bench bench = bench_new(SPV_OUTLINE_KNEEPAD, 3.4, 4.1, SPV_PATTERN_JAGGED_BORDER, -1);
  GtkAccessible *accessible = GTK_ACCESSIBLE(bench.widget);
  g_autoptr(SpvPanel)
      renamed = spv_panel_with_name(spv_session_chosen_panel(bench.session), "Greave, sinister");

  (void) state;
  gtk_test_accessible_assert_role(accessible, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_property(accessible, GTK_ACCESSIBLE_PROPERTY_LABEL, "Canvas");
  gtk_test_accessible_assert_property(accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                      "Kneepad, dexter, 3.4 × 4.1\u2009mm");
  spv_session_edit_panel(bench.session, renamed, "Rename", NULL);
  gtk_test_accessible_assert_property(accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                      "Greave, sinister, 3.4 × 4.1\u2009mm");
  bench_free(&bench);
}

/* With words twice as large the rulers make room. */
static void
test_large_words(void **state) {
  GtkSettings *settings = gtk_settings_get_default();
  int dpi;
  Bench bench;
  cairo_surface_t *image;

  (void) state;
  g_object_get(settings, "gtk-xft-dpi", &dpi, NULL);
  g_object_set(settings, "gtk-xft-dpi", 2 * 96 * 1024, NULL);
  bench = bench_new(SPV_OUTLINE_KNEEPAD, 3.4, 4.1, SPV_PATTERN_JAGGED_BORDER, 1);
  image = frame_grab(bench.widget, "canvas-large-words");
  assert_true(bench.canvas->ruler > SPV_RULER_LEAST + 5);
  cairo_surface_destroy(image);
  bench_free(&bench);
  g_object_set(settings, "gtk-xft-dpi", dpi, NULL);
}

/* A monitor that doesn't know its size, or says what can't be, is not believed. */
static void
test_true_size(void **state) {
  const struct {
    int width_mm, height_mm, width_px, height_px;
    double scale; /* 0: unknown */
  } cases[] = {
    { 600, 340, 2560, 1440, 2560.0 / 600 },
    { 0, 0, 1920, 1080, 0 },
    { 600, 0, 2560, 1440, 0 },
    { 160, 90, 160, 90, 1 },
    { 16, 9, 1920, 1080, 0 },
    { 600, 600, 2560, 1440, 0 },
    { 340, 600, 1440, 2560, 2560.0 / 600 },
    { -1, -1, 800, 600, 0 },
  };

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(cases); i++) {
    double scale = 0;
    gboolean known = spv_true_size_scale(cases[i].width_mm, cases[i].height_mm, cases[i].width_px,
                                         cases[i].height_px, &scale);

    assert_true(known == (cases[i].scale > 0));
    assert_true(fabs(scale - cases[i].scale) < 1e-9);
  }
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_shows_the_panel),
    cmocka_unit_test(test_hatch),
    cmocka_unit_test(test_guide),
    cmocka_unit_test(test_click_chooses),
    cmocka_unit_test(test_wandering_press),
    cmocka_unit_test(test_drag_is_one_step),
    cmocka_unit_test(test_two_drags),
    cmocka_unit_test(test_escape_cancels),
    cmocka_unit_test(test_panel_handles),
    cmocka_unit_test(test_arrows_nudge),
    cmocka_unit_test(test_next_handle),
    cmocka_unit_test(test_zoom_keys),
    cmocka_unit_test(test_pan),
    cmocka_unit_test(test_pointer_marks),
    cmocka_unit_test(test_every_kind),
    cmocka_unit_test(test_no_session),
    cmocka_unit_test(test_true_size),
    cmocka_unit_test(test_accessible),
    cmocka_unit_test(test_large_words),
  };

  g_setenv("GTK_A11Y", "test", TRUE);
  if (!gtk_init_check())
    return 77;
  return cmocka_run_group_tests(tests, NULL, NULL);
}
