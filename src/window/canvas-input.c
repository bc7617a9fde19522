/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the pointer, the wheel and a pinch do to the canvas. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "window/canvas-private.h"
#include "window/screen-text.h"

#define REACH 9.0      /* px from a handle's middle that still takes it */
#define STILL 5.0      /* px that a click may wander */
#define SCROLL_PX 56.0 /* px that one notch of the wheel pans */
#define SCROLL_ZOOM 1.15

/* --- Edits --- */

static const SpvLayer *
held_layer(SpvCanvas *canvas, const SpvHandle *handle) {
  return handle->owner == SPV_HANDLE_OF_LAYER ? spv_session_chosen_layer(canvas->session) : NULL;
}

/* "Change depth", as a step of history. */
static char *
edit_label(const SpvHandle *handle, const SpvLayer *layer) {
  const char *what = layer == NULL ? (handle->measures[0] == SPV_PANEL_WIDTH ? _("Width") : _("Height"))
                     : handle->n_measures > 1
                         ? _("Place")
                         : _(spv_pattern_info(layer->pattern.kind)->measures[handle->measures[0]].label);
  g_autofree char *lower = spv_screen_text_inside(what);

  return g_strdup_printf(_("Change %s"), lower);
}

void
spv_canvas_push_values(SpvCanvas *canvas, const SpvHandle *handle, const double values[2]) {
  const SpvPanel *panel = spv_session_chosen_panel(canvas->session);
  const SpvLayer *layer = held_layer(canvas, handle);
  g_autofree char *label = edit_label(handle, layer);
  g_autofree char *merge = g_strdup_printf("canvas %s %s %u", panel->id, layer == NULL ? "" : layer->id,
                                           handle->measures[0]);

  if (layer != NULL) {
    g_autoptr(SpvLayer) changed = spv_handle_apply_to_layer(handle, layer, values);

    spv_session_edit_layer(canvas->session, (guint) spv_session_layer(canvas->session), changed, label,
                           merge);
  } else if (handle->owner == SPV_HANDLE_OF_PANEL) {
    g_autoptr(SpvPanel) changed = spv_handle_apply_to_panel(handle, panel, values);

    spv_session_edit_panel(canvas->session, changed, label, merge);
  }
}

void
spv_canvas_use_handle(SpvCanvas *canvas, const SpvHandle *handle) {
  canvas->active = *handle;
  canvas->has_active = TRUE;
  spv_canvas_invalidate(canvas);
}

/* What the measures came to, which may be less than was asked for. */
static void
say_caption(SpvCanvas *canvas) {
  const SpvHandle *now = spv_handles_find(canvas->handles, &canvas->held);
  const SpvLayer *layer = held_layer(canvas, &canvas->held);
  const SpvHandle *handle = now == NULL ? &canvas->held : now;

  g_free(canvas->caption);
  canvas->caption = spv_handle_caption(handle, layer == NULL ? NULL : &layer->pattern, handle->values);
}

/* --- Gripping --- */

static const SpvHandle *
handle_at(SpvCanvas *canvas, SpvPoint px) {
  const SpvHandle *found = NULL;
  double best = REACH;

  for (guint i = 0; i < canvas->handles->len; i++) {
    const SpvHandle *handle = &g_array_index(canvas->handles, SpvHandle, i);
    double distance = spv_point_distance(spv_viewport_to_px(&canvas->viewport, handle->at), px);

    if (distance <= best) {
      best = distance;
      found = handle;
    }
  }
  return found;
}

static gboolean
is_holding(SpvCanvas *canvas) {
  return canvas->grip == SPV_GRIP_HANDLE || canvas->grip == SPV_GRIP_NODE;
}

void
spv_canvas_update_cursor(SpvCanvas *canvas) {
  const char *name = NULL;

  if (canvas->grip == SPV_GRIP_PAN)
    name = "grabbing";
  else if (canvas->space_held)
    name = "grab";
  else if (is_holding(canvas) || handle_at(canvas, canvas->pointer) != NULL ||
           spv_canvas_is_over_node(canvas, canvas->pointer))
    name = "move";
  gtk_widget_set_cursor_from_name(GTK_WIDGET(canvas), name);
}

static void
let_go(SpvCanvas *canvas) {
  gboolean held = is_holding(canvas);

  canvas->grip = SPV_GRIP_NONE;
  canvas->pushed = NULL;
  g_clear_pointer(&canvas->caption, g_free);
  if (held) {
    spv_session_settle(canvas->session);
    spv_canvas_refresh(canvas);
  }
  spv_canvas_update_cursor(canvas);
}

void
spv_canvas_cancel_grip(SpvCanvas *canvas) {
  const SpvScheme *pushed = canvas->pushed;
  gboolean held = is_holding(canvas);

  if (canvas->grip == SPV_GRIP_NONE)
    return;
  let_go(canvas);
  /* Only what this drag made is taken back. */
  if (held && pushed != NULL && pushed == spv_session_scheme(canvas->session))
    spv_session_drop(canvas->session);
}

static void
press(SpvCanvas *canvas, SpvPoint px, gboolean pan) {
  const SpvHandle *handle = handle_at(canvas, px);

  gtk_widget_grab_focus(GTK_WIDGET(canvas));
  canvas->grip_from = canvas->pointer = px;
  canvas->grip_last = spv_point(0, 0);
  canvas->pushed = NULL;
  if (pan || canvas->space_held) {
    canvas->grip = SPV_GRIP_PAN;
  } else if (canvas->session != NULL && handle != NULL) {
    spv_session_settle(canvas->session);
    canvas->grip = SPV_GRIP_HANDLE;
    canvas->held = *handle;
    canvas->grip_slack = spv_point_subtract(handle->at, spv_viewport_to_mm(&canvas->viewport, px));
    spv_canvas_use_handle(canvas, &canvas->held);
    say_caption(canvas);
  } else if (!spv_canvas_press_path(canvas, px)) {
    canvas->grip = SPV_GRIP_CLICK;
  }
  spv_canvas_update_cursor(canvas);
}

static void
drag_handle(SpvCanvas *canvas, SpvPoint px, gboolean free) {
  SpvPoint mm = spv_point_add(spv_viewport_to_mm(&canvas->viewport, px), canvas->grip_slack);
  const SpvScheme *before = spv_session_scheme(canvas->session);
  double values[2];

  spv_handle_drag(&canvas->held, mm, !free, values);
  spv_canvas_push_values(canvas, &canvas->held, values);
  if (spv_session_scheme(canvas->session) != before)
    canvas->pushed = spv_session_scheme(canvas->session);
  say_caption(canvas);
}

static void
drag(SpvCanvas *canvas, double dx, double dy, gboolean free) {
  SpvPoint px = spv_point_add(canvas->grip_from, spv_point(dx, dy));

  canvas->pointer = px;
  switch (canvas->grip) {
  case SPV_GRIP_HANDLE:
    drag_handle(canvas, px, free);
    break;
  case SPV_GRIP_NODE:
    spv_canvas_drag_node(canvas, px, free);
    break;
  case SPV_GRIP_PAN:
    spv_viewport_pan(&canvas->viewport, dx - canvas->grip_last.x, dy - canvas->grip_last.y);
    canvas->grip_last = spv_point(dx, dy);
    spv_canvas_invalidate(canvas);
    break;
  case SPV_GRIP_CLICK:
    if (hypot(dx, dy) > STILL)
      canvas->grip = SPV_GRIP_NONE;
    break;
  case SPV_GRIP_NONE:
    break;
  }
  gtk_widget_queue_draw(GTK_WIDGET(canvas));
}

/* The topmost layer where it was clicked is chosen; beside the panel, none. */
static void
click(SpvCanvas *canvas) {
  SpvPoint mm = spv_viewport_to_mm(&canvas->viewport, canvas->grip_from);
  int layer = -1;

  if (canvas->session == NULL || spv_session_chosen_panel(canvas->session) == NULL)
    return;
  const SpvComposition *composition = spv_session_composition(canvas->session);
  int shape = spv_composition_pick(composition, mm);
  if (shape >= 0)
    layer = (int) ((const SpvLaidShape *) g_ptr_array_index(composition->shapes, (guint) shape))->layer;
  spv_session_select(canvas->session, spv_session_panel(canvas->session), layer);
}

static void
release(SpvCanvas *canvas) {
  gboolean clicked = canvas->grip == SPV_GRIP_CLICK;

  let_go(canvas);
  if (clicked)
    click(canvas);
}

/* --- Pointer --- */

/* From the widget's pixels to the mat's. */
static SpvPoint
on_mat(SpvCanvas *canvas, double x, double y) {
  return spv_point(x - canvas->ruler, y - canvas->ruler);
}

static gboolean
has_modifier(gpointer controller, GdkModifierType modifier) {
  return (gtk_event_controller_get_current_event_state(controller) & modifier) != 0;
}

static void
on_drag_begin(GtkGestureDrag *gesture, double x, double y, SpvCanvas *canvas) {
  press(canvas, on_mat(canvas, x, y), FALSE);
  gtk_gesture_set_state(GTK_GESTURE(gesture), GTK_EVENT_SEQUENCE_CLAIMED);
}

static void
on_drag_update(GtkGestureDrag *gesture, double dx, double dy, SpvCanvas *canvas) {
  drag(canvas, dx, dy, has_modifier(gesture, GDK_CONTROL_MASK));
}

static void
on_drag_end(GtkGestureDrag *gesture, double dx, double dy, SpvCanvas *canvas) {
  (void) gesture;
  (void) dx;
  (void) dy;
  release(canvas);
}

static void
on_drag_cancel(GtkGesture *gesture, GdkEventSequence *sequence, SpvCanvas *canvas) {
  (void) gesture;
  (void) sequence;
  spv_canvas_cancel_grip(canvas);
}

/* The drag that the second press began is over before it moves anything. */
static void
on_pressed(GtkGestureClick *gesture, int n, double x, double y, SpvCanvas *canvas) {
  (void) gesture;
  if (n != 2 || canvas->session == NULL)
    return;
  let_go(canvas);
  spv_canvas_press_path_twice(canvas, on_mat(canvas, x, y));
}

static void
on_pan_begin(GtkGestureDrag *gesture, double x, double y, SpvCanvas *canvas) {
  (void) gesture;
  press(canvas, on_mat(canvas, x, y), TRUE);
}

static void
on_motion(GtkEventControllerMotion *controller, double x, double y, SpvCanvas *canvas) {
  (void) controller;
  canvas->pointer = on_mat(canvas, x, y);
  canvas->pointer_inside = canvas->pointer.x >= 0 && canvas->pointer.y >= 0;
  spv_canvas_update_cursor(canvas);
  gtk_widget_queue_draw(GTK_WIDGET(canvas));
}

static void
on_leave(GtkEventControllerMotion *controller, SpvCanvas *canvas) {
  (void) controller;
  canvas->pointer_inside = FALSE;
  gtk_widget_queue_draw(GTK_WIDGET(canvas));
}

static gboolean
on_scroll(GtkEventControllerScroll *controller, double dx, double dy, SpvCanvas *canvas) {
  gboolean wheel = gtk_event_controller_scroll_get_unit(controller) == GDK_SCROLL_UNIT_WHEEL;
  double px = wheel ? SCROLL_PX : 1;

  if (has_modifier(controller, GDK_CONTROL_MASK))
    spv_viewport_zoom(&canvas->viewport, pow(SCROLL_ZOOM, wheel ? -dy : -dy / SCROLL_PX), canvas->pointer);
  else if (has_modifier(controller, GDK_SHIFT_MASK))
    spv_viewport_pan(&canvas->viewport, -dy * px, -dx * px);
  else
    spv_viewport_pan(&canvas->viewport, -dx * px, -dy * px);
  spv_canvas_invalidate(canvas);
  return TRUE;
}

static void
on_pinch_begin(GtkGesture *gesture, GdkEventSequence *sequence, SpvCanvas *canvas) {
  (void) gesture;
  (void) sequence;
  spv_canvas_cancel_grip(canvas);
  canvas->pinch_start = canvas->viewport.scale;
}

static void
on_pinch(GtkGestureZoom *gesture, double scale, SpvCanvas *canvas) {
  double x, y;

  if (!gtk_gesture_get_bounding_box_center(GTK_GESTURE(gesture), &x, &y))
    return;
  spv_viewport_zoom(&canvas->viewport, canvas->pinch_start * scale / canvas->viewport.scale,
                    on_mat(canvas, x, y));
  spv_canvas_invalidate(canvas);
}

/* --- Which of them listen --- */

static GtkGesture *
add_drag(SpvCanvas *canvas, guint button, GCallback begin) {
  GtkGesture *gesture = gtk_gesture_drag_new();

  gtk_gesture_single_set_button(GTK_GESTURE_SINGLE(gesture), button);
  g_signal_connect(gesture, "drag-begin", begin, canvas);
  g_signal_connect(gesture, "drag-update", G_CALLBACK(on_drag_update), canvas);
  g_signal_connect(gesture, "drag-end", G_CALLBACK(on_drag_end), canvas);
  g_signal_connect(gesture, "cancel", G_CALLBACK(on_drag_cancel), canvas);
  gtk_widget_add_controller(GTK_WIDGET(canvas), GTK_EVENT_CONTROLLER(gesture));
  return gesture;
}

/* Grouped with the drag, which claims what it sees: otherwise it would never count to two. */
static void
add_clicks(SpvCanvas *canvas, GtkGesture *drag) {
  GtkGesture *gesture = gtk_gesture_click_new();

  gtk_gesture_single_set_button(GTK_GESTURE_SINGLE(gesture), GDK_BUTTON_PRIMARY);
  g_signal_connect(gesture, "pressed", G_CALLBACK(on_pressed), canvas);
  gtk_widget_add_controller(GTK_WIDGET(canvas), GTK_EVENT_CONTROLLER(gesture));
  gtk_gesture_group(gesture, drag);
}

static void
add_pinch(SpvCanvas *canvas) {
  GtkGesture *gesture = gtk_gesture_zoom_new();

  g_signal_connect(gesture, "begin", G_CALLBACK(on_pinch_begin), canvas);
  g_signal_connect(gesture, "scale-changed", G_CALLBACK(on_pinch), canvas);
  gtk_widget_add_controller(GTK_WIDGET(canvas), GTK_EVENT_CONTROLLER(gesture));
}

void
spv_canvas_listen(SpvCanvas *canvas) {
  GtkEventController *motion = gtk_event_controller_motion_new();
  GtkEventController *scroll = gtk_event_controller_scroll_new(GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);

  add_clicks(canvas, add_drag(canvas, GDK_BUTTON_PRIMARY, G_CALLBACK(on_drag_begin)));
  add_drag(canvas, GDK_BUTTON_MIDDLE, G_CALLBACK(on_pan_begin));
  add_pinch(canvas);
  g_signal_connect(motion, "enter", G_CALLBACK(on_motion), canvas);
  g_signal_connect(motion, "motion", G_CALLBACK(on_motion), canvas);
  g_signal_connect(motion, "leave", G_CALLBACK(on_leave), canvas);
  g_signal_connect(scroll, "scroll", G_CALLBACK(on_scroll), canvas);
  gtk_widget_add_controller(GTK_WIDGET(canvas), motion);
  gtk_widget_add_controller(GTK_WIDGET(canvas), scroll);
  spv_canvas_listen_to_keys(canvas);
}
