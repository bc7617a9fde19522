/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The harness view on a virtual display: every panel in its place, choosing by click and by key, and that
 * only what changed is drawn again. */
#include "test-canvas-frame.h"
#include "test-canvas-scene.h"
#include "window/harness-view-picture.h"
#include "window/harness-view.h"

#define WIDTH 240
#define HEIGHT 520

typedef struct {
  SpvSession *session;
  GtkWidget *window, *widget;
  SpvHarnessView *view;
} Bench;

/* Five panels as a figure bears them: helm above, a pad at either side, breastplate, and a very small one. */
static const struct {
  const char *id, *name;
  double x, y, width, height;
} places[] = {
  { "helm", "Helm", 0, 0, 4, 5 },
  { "pad-dexter", "Shoulder pad, dexter", -9, 6, 8, 7 },
  { "pad-sinister", "Shoulder pad, sinister", 9, 6, 8, 7 },
  { "breastplate", "Breastplate", 0, 8, 7, 8 },
  { "stud", "Stud", 6, 22, 0.6, 0.6 },
};
enum { HELM, PAD_DEXTER, PAD_SINISTER, BREASTPLATE, STUD, N_PLACES };

static SpvScheme *
harness_scheme(void) {
  g_autoptr(SpvScheme) one = scene_scheme(SPV_OUTLINE_RECTANGLE, 8, 10, SPV_PATTERN_PER_PALE);
  SpvPanel *panels[N_PLACES];
  SpvSurface flat = { SPV_SURFACE_FLAT, 0 };
  SpvScheme *scheme;

  for (guint i = 0; i < N_PLACES; i++) {
    SpvOutlineSpec outline;
    g_autoptr(SpvPanel) bare = NULL;

    spv_outline_spec_preset(SPV_OUTLINE_STRIP, places[i].width, places[i].height, &outline);
    bare = spv_panel_new(places[i].id, places[i].name, SPV_SIDE_CENTRE, &outline, &flat,
                         spv_point(places[i].x, places[i].y));
    panels[i] = spv_panel_with_layers(bare, one->panels[0]->layers, one->panels[0]->n_layers);
  }
  scheme = spv_scheme_with_panels(one, panels, N_PLACES);
  for (guint i = 0; i < N_PLACES; i++)
    spv_panel_unref(panels[i]);
  return scheme;
}

static Bench
bench_new(void) {
  g_autoptr(SpvScheme) scheme = harness_scheme();
  Bench bench = { .session = spv_session_new(scheme, NULL), .widget = spv_harness_view_new() };

  bench.view = SPV_HARNESS_VIEW(bench.widget);
  g_object_set(bench.widget, "session", bench.session, "valign", GTK_ALIGN_START, NULL);
  bench.window = frame_around(bench.widget, WIDTH, HEIGHT);
  return bench;
}

static void
bench_free(Bench *bench) {
  frame_close(bench->window, bench->widget);
  g_assert_finalize_object(bench->session);
}

static SpvPoint
middle_of(const Bench *bench, guint panel) {
  SpvBox box;

  assert_true(spv_harness_view_panel_box(bench->view, panel, &box));
  return spv_box_centre(box);
}

static void
press(const Bench *bench, double x, double y) {
  g_signal_emit_by_name(frame_controller(bench->widget, GTK_TYPE_GESTURE_CLICK, 0), "pressed", 1, x, y);
}

/* One scale for all, each in its place: distances and sizes on the screen are those of the harness. */
static void
test_common_scale(void **state) {
  Bench bench = bench_new();
  SpvPoint helm = middle_of(&bench, HELM), plate = middle_of(&bench, BREASTPLATE);
  double scale = (plate.y - helm.y) / ((8 + 4) - 2.5);

  (void) state;
  for (guint i = 0; i < N_PLACES; i++) {
    SpvPoint at = middle_of(&bench, i);
    SpvBox box;

    assert_true(fabs(at.x - helm.x - scale * places[i].x) < 0.01);
    assert_true(fabs(at.y - helm.y - scale * (places[i].y + places[i].height / 2 - 2.5)) < 0.01);
    spv_harness_view_panel_box(bench.view, i, &box);
    assert_true(box.x0 >= 0 && box.x1 <= gtk_widget_get_width(bench.widget));
    assert_true(fabs(spv_box_width(box) - MAX(scale * places[i].width, 16)) < 0.01);
  }
  bench_free(&bench);
}

/* Dexter, the wearer's right, is on the viewer's left; each panel shows its own tinctures. */
static void
test_draws_panels(void **state) {
  Bench bench = bench_new();
  cairo_surface_t *image = frame_grab(bench.widget, "harness");

  (void) state;
  assert_true(middle_of(&bench, PAD_DEXTER).x < middle_of(&bench, PAD_SINISTER).x);
  for (guint i = 0; i < STUD; i++) {
    SpvPoint at = middle_of(&bench, i);

    assert_int_equal(frame_pixel(image, (int) at.x - 4, (int) at.y), 0x225d55);
    assert_int_equal(frame_pixel(image, (int) at.x + 4, (int) at.y), 0xa81e2a);
  }
  cairo_surface_destroy(image);
  bench_free(&bench);
}

/* The chosen one, and only that, is in an accent frame. */
static void
test_frame(void **state) {
  Bench bench = bench_new();

  (void) state;
  for (guint chosen = 0; chosen < N_PLACES; chosen++) {
    cairo_surface_t *image;

    spv_session_select(bench.session, (int) chosen, -1);
    image = frame_grab(bench.widget, "harness-chosen");
    for (guint i = 0; i < N_PLACES; i++) {
      SpvBox box;
      guint accent;

      spv_harness_view_panel_box(bench.view, i, &box);
      /* Along the frame's upper side. */
      accent = frame_count(image, (int) box.x0, (int) box.y0 - 8, (int) box.x1, (int) box.y0 - 3, 0xdc4a2e);
      assert_true(i == chosen ? accent >= 10 : accent == 0);
    }
    cairo_surface_destroy(image);
  }
  bench_free(&bench);
}

static void
test_click(void **state) {
  Bench bench = bench_new();

  (void) state;
  for (guint i = 0; i < N_PLACES; i++) {
    SpvPoint at = middle_of(&bench, i);

    /* Even the stud, which is only a few pixels, is taken 7 px beside its middle. */
    press(&bench, at.x + 7, at.y - 7);
    assert_int_equal(spv_session_panel(bench.session), i);
  }
  press(&bench, 2, HEIGHT - 2);
  assert_int_equal(spv_session_panel(bench.session), N_PLACES - 1);
  assert_false(spv_session_is_modified(bench.session));
  bench_free(&bench);
}

static void
test_keys(void **state) {
  const struct {
    guint from, key, to;
  } cases[] = {
    { HELM, GDK_KEY_Down, BREASTPLATE },           { BREASTPLATE, GDK_KEY_Left, PAD_DEXTER },
    { PAD_DEXTER, GDK_KEY_Right, BREASTPLATE },    { BREASTPLATE, GDK_KEY_Right, PAD_SINISTER },
    { PAD_SINISTER, GDK_KEY_Right, PAD_SINISTER }, { BREASTPLATE, GDK_KEY_Up, HELM },
    { BREASTPLATE, GDK_KEY_Down, STUD },           { HELM, GDK_KEY_Up, HELM },
    { BREASTPLATE, GDK_KEY_Home, HELM },           { BREASTPLATE, GDK_KEY_End, STUD },
  };
  Bench bench = bench_new();

  (void) state;
  for (guint i = 0; i < G_N_ELEMENTS(cases); i++) {
    spv_session_select(bench.session, (int) cases[i].from, -1);
    assert_true(frame_key(bench.widget, cases[i].key, 0));
    assert_int_equal(spv_session_panel(bench.session), cases[i].to);
  }
  assert_false(frame_key(bench.widget, GDK_KEY_Tab, 0));
  assert_false(frame_key(bench.widget, GDK_KEY_Left, GDK_CONTROL_MASK));
  bench_free(&bench);
}

/* Every panel can be reached from every other by arrows alone. */
static void
test_all_reachable(void **state) {
  const int ways[4][2] = { { -1, 0 }, { 1, 0 }, { 0, -1 }, { 0, 1 } };
  Bench bench = bench_new();

  (void) state;
  for (guint from = 0; from < N_PLACES; from++) {
    gboolean reached[N_PLACES] = { FALSE };
    gboolean more = TRUE;

    reached[from] = TRUE;
    while (more) {
      more = FALSE;
      for (guint i = 0; i < N_PLACES; i++) {
        for (guint w = 0; w < 4 && reached[i]; w++) {
          guint next = spv_harness_view_neighbour(bench.view, i, ways[w][0], ways[w][1]);

          more = more || !reached[next];
          reached[next] = TRUE;
        }
      }
    }
    for (guint i = 0; i < N_PLACES; i++)
      assert_true(reached[i]);
  }
  bench_free(&bench);
}

/* It asks for the height that its width needs, and no less. */
static void
test_measure(void **state) {
  Bench bench = bench_new();
  int least, natural, narrow, wide;

  (void) state;
  gtk_widget_measure(bench.widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, &natural, NULL, NULL);
  assert_int_equal(least, 200);
  assert_int_equal(natural, 240);
  gtk_widget_measure(bench.widget, GTK_ORIENTATION_VERTICAL, 200, &narrow, NULL, NULL, NULL);
  gtk_widget_measure(bench.widget, GTK_ORIENTATION_VERTICAL, 240, &wide, NULL, NULL, NULL);
  assert_true(wide > narrow);
  /* 26 mm wide, 22.6 mm high, 12 px free all round, and a line of words. */
  assert_in_range(wide, (int) (216.0 / 26 * 22.6) + 30, (int) (216.0 / 26 * 22.6) + 60);
  bench_free(&bench);
}

static void
test_tooltip(void **state) {
  Bench bench = bench_new();
  SpvPoint at = middle_of(&bench, PAD_SINISTER);
  GtkTooltip *tooltip = g_object_new(GTK_TYPE_TOOLTIP, NULL);
  gboolean shown = FALSE;

  (void) state;
  g_signal_emit_by_name(bench.widget, "query-tooltip", (int) at.x, (int) at.y, FALSE, tooltip, &shown);
  assert_true(shown);
  g_signal_emit_by_name(bench.widget, "query-tooltip", 1, 1, FALSE, tooltip, &shown);
  assert_false(shown);
  g_object_unref(tooltip);
  bench_free(&bench);
}

/* An edit is seen at once, on its own panel. */
static void
test_follows_edits(void **state) {
  Bench bench = bench_new();
  SpvPoint at = middle_of(&bench, PAD_DEXTER), other = middle_of(&bench, PAD_SINISTER);
  cairo_surface_t *image;

  (void) state;
  spv_session_select(bench.session, PAD_DEXTER, 1);
  spv_session_remove_layer(bench.session);
  image = frame_grab(bench.widget, "harness-edited");
  assert_int_equal(frame_pixel(image, (int) at.x - 4, (int) at.y), 0xeee5d0);
  assert_int_equal(frame_pixel(image, (int) other.x - 4, (int) other.y), 0x225d55);
  cairo_surface_destroy(image);
  bench_free(&bench);
}

/* Editing one panel draws only that one anew: the others' pictures stay the very same. */
static void
test_pictures_are_kept(void **state) {
  Bench bench = bench_new();
  SpvPanelPicture edited = { 0 }, other = { 0 };
  GdkTexture *edited_before, *other_before;

  (void) state;
  spv_panel_picture_update(&edited, spv_session_composition_of(bench.session, PAD_DEXTER), 8, 1, spv_ink);
  spv_panel_picture_update(&other, spv_session_composition_of(bench.session, HELM), 8, 1, spv_ink);
  edited_before = g_object_ref(edited.texture);
  other_before = g_object_ref(other.texture);
  spv_session_select(bench.session, PAD_DEXTER, 1);
  spv_session_remove_layer(bench.session);
  spv_panel_picture_update(&edited, spv_session_composition_of(bench.session, PAD_DEXTER), 8, 1, spv_ink);
  spv_panel_picture_update(&other, spv_session_composition_of(bench.session, HELM), 8, 1, spv_ink);
  assert_ptr_not_equal(edited.texture, edited_before);
  assert_ptr_equal(other.texture, other_before);
  spv_panel_picture_update(&other, spv_session_composition_of(bench.session, HELM), 9, 1, spv_ink);
  assert_ptr_not_equal(other.texture, other_before);
  g_object_unref(edited_before);
  g_object_unref(other_before);
  spv_panel_picture_clear(&edited);
  spv_panel_picture_clear(&other);
  bench_free(&bench);
}

static void
test_accessible(void **state) {
  Bench bench = bench_new();
  GtkAccessible *accessible = GTK_ACCESSIBLE(bench.widget);

  (void) state;
  gtk_test_accessible_assert_role(accessible, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_property(accessible, GTK_ACCESSIBLE_PROPERTY_LABEL, "Harness");
  spv_session_select(bench.session, BREASTPLATE, -1);
  gtk_test_accessible_assert_property(accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                      "Chosen: Breastplate (4 of 5)");
  bench_free(&bench);
}

static void
test_no_session(void **state) {
  GtkWidget *widget = spv_harness_view_new(), *window = frame_around(widget, WIDTH, HEIGHT);
  SpvBox box;

  (void) state;
  assert_false(frame_key(widget, GDK_KEY_Left, 0));
  assert_false(spv_harness_view_panel_box(SPV_HARNESS_VIEW(widget), 0, &box));
  frame_close(window, widget);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_common_scale),  cmocka_unit_test(test_draws_panels),
    cmocka_unit_test(test_frame),         cmocka_unit_test(test_click),
    cmocka_unit_test(test_keys),          cmocka_unit_test(test_all_reachable),
    cmocka_unit_test(test_measure),       cmocka_unit_test(test_tooltip),
    cmocka_unit_test(test_follows_edits), cmocka_unit_test(test_no_session),
    cmocka_unit_test(test_accessible),    cmocka_unit_test(test_pictures_are_kept),
  };

  g_setenv("GTK_A11Y", "test", TRUE);
  if (!gtk_init_check())
    return 77;
  return cmocka_run_group_tests(tests, NULL, NULL);
}
