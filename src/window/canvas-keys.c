/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The canvas's keys: arrows nudge a measure, others zoom, pan and take back. */
#include "window/canvas-private.h"

#define NUDGE 0.05    /* mm; degrees and counts go by 1 */
#define NUDGE_FAR 5   /* times as far with Shift */
#define PAUSE_MS 1200 /* after this a run of nudges is one step of history */

static gboolean
on_pause(gpointer data) {
  SpvCanvas *canvas = data;

  canvas->settle_source = 0;
  if (canvas->session != NULL && canvas->grip != SPV_GRIP_HANDLE && canvas->grip != SPV_GRIP_NODE)
    spv_session_settle(canvas->session);
  return G_SOURCE_REMOVE;
}

static void
settle_now(SpvCanvas *canvas) {
  if (canvas->settle_source == 0)
    return;
  g_clear_handle_id(&canvas->settle_source, g_source_remove);
  on_pause(canvas);
}

void
spv_canvas_settle_later(SpvCanvas *canvas) {
  g_clear_handle_id(&canvas->settle_source, g_source_remove);
  canvas->settle_source = g_timeout_add(PAUSE_MS, on_pause, canvas);
}

/* Which way the measure goes when the arrow points along (DX, DY). */
static double
nudge_sign(const SpvHandle *handle, SpvPoint arrow) {
  double along;

  if (handle->motion == SPV_MOTION_TURN || handle->motion == SPV_MOTION_DIVIDE)
    return arrow.x - arrow.y;
  along = spv_point_dot(arrow, spv_point_unit(handle->direction));
  /* An arrow across the handle's line still does what it does in a number's field. */
  return fabs(along) > 0.3 ? (along > 0 ? 1 : -1) : arrow.x - arrow.y;
}

static gboolean
nudge(SpvCanvas *canvas, SpvPoint arrow, gboolean far) {
  const SpvHandle *handle = spv_canvas_active_handle(canvas);
  double step = far ? NUDGE_FAR : 1, values[2];
  SpvHandle used;

  if (canvas->session == NULL || handle == NULL || canvas->grip != SPV_GRIP_NONE)
    return FALSE;
  used = *handle;
  values[0] = used.values[0];
  values[1] = used.values[1];
  switch (used.motion) {
  case SPV_MOTION_MOVE:
    values[0] += spv_point_dot(arrow, used.direction) * step * NUDGE;
    values[1] += spv_point_dot(arrow, used.second) * step * NUDGE;
    break;
  case SPV_MOTION_SLIDE:
    values[0] += nudge_sign(&used, arrow) * step * NUDGE;
    break;
  case SPV_MOTION_TURN:
    values[0] += nudge_sign(&used, arrow) * step * G_PI / 180;
    break;
  case SPV_MOTION_DIVIDE:
    values[0] += nudge_sign(&used, arrow) * step;
    break;
  }
  if (!canvas->has_active || spv_handles_find(canvas->handles, &canvas->active) != handle)
    settle_now(canvas);
  spv_canvas_use_handle(canvas, &used);
  spv_canvas_push_values(canvas, &used, values);
  spv_canvas_settle_later(canvas);
  return TRUE;
}

/* The next handle, or the one before, becomes the one that the keys move. */
static gboolean
next_handle(SpvCanvas *canvas, int step) {
  const SpvHandle *active = spv_canvas_active_handle(canvas);
  int n = (int) canvas->handles->len, index;

  if (active == NULL)
    return FALSE;
  settle_now(canvas);
  index = (int) (active - &g_array_index(canvas->handles, SpvHandle, 0));
  spv_canvas_use_handle(canvas, &g_array_index(canvas->handles, SpvHandle, (guint) ((index + step + n) % n)));
  return TRUE;
}

static gboolean
escape(SpvCanvas *canvas) {
  if (canvas->grip == SPV_GRIP_NONE)
    return FALSE;
  spv_canvas_cancel_grip(canvas);
  return TRUE;
}

static gboolean
zoom_key(void (*zoom)(SpvCanvas *), SpvCanvas *canvas) {
  zoom(canvas);
  return TRUE;
}

static gboolean
hold_space(SpvCanvas *canvas, gboolean held) {
  canvas->space_held = held;
  spv_canvas_update_cursor(canvas);
  return TRUE;
}

static gboolean
on_key_pressed(GtkEventControllerKey *controller, guint key, guint code, GdkModifierType state,
               SpvCanvas *canvas) {
  gboolean far = (state & GDK_SHIFT_MASK) != 0;

  (void) controller;
  (void) code;
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return FALSE;
  if (spv_canvas_path_key(canvas, key, far))
    return TRUE;
  switch (key) {
  case GDK_KEY_Left:
  case GDK_KEY_KP_Left:
    return nudge(canvas, spv_point(-1, 0), far);
  case GDK_KEY_Right:
  case GDK_KEY_KP_Right:
    return nudge(canvas, spv_point(1, 0), far);
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    return nudge(canvas, spv_point(0, -1), far);
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    return nudge(canvas, spv_point(0, 1), far);
  case GDK_KEY_Page_Down:
    return next_handle(canvas, 1);
  case GDK_KEY_Page_Up:
    return next_handle(canvas, -1);
  case GDK_KEY_plus:
  case GDK_KEY_equal:
  case GDK_KEY_KP_Add:
    return zoom_key(spv_canvas_zoom_in, canvas);
  case GDK_KEY_minus:
  case GDK_KEY_KP_Subtract:
    return zoom_key(spv_canvas_zoom_out, canvas);
  case GDK_KEY_0:
  case GDK_KEY_KP_0:
    return zoom_key(spv_canvas_zoom_fit, canvas);
  case GDK_KEY_space:
    return hold_space(canvas, TRUE);
  case GDK_KEY_Escape:
    return escape(canvas);
  default:
    return FALSE;
  }
}

static void
on_key_released(GtkEventControllerKey *controller, guint key, guint code, GdkModifierType state,
                SpvCanvas *canvas) {
  (void) controller;
  (void) code;
  (void) state;
  if (key == GDK_KEY_space)
    hold_space(canvas, FALSE);
}

static void
on_focus_lost(GtkEventControllerFocus *controller, SpvCanvas *canvas) {
  (void) controller;
  hold_space(canvas, FALSE);
  settle_now(canvas);
}

void
spv_canvas_listen_to_keys(SpvCanvas *canvas) {
  GtkEventController *keys = gtk_event_controller_key_new();
  GtkEventController *focus = gtk_event_controller_focus_new();

  g_signal_connect(keys, "key-pressed", G_CALLBACK(on_key_pressed), canvas);
  g_signal_connect(keys, "key-released", G_CALLBACK(on_key_released), canvas);
  g_signal_connect(focus, "leave", G_CALLBACK(on_focus_lost), canvas);
  gtk_widget_add_controller(GTK_WIDGET(canvas), keys);
  gtk_widget_add_controller(GTK_WIDGET(canvas), focus);
}
