/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The canvas's own fields, shared by its parts: what it shows (canvas.c), and what the pointer
 * (canvas-input.c) and the keys (canvas-keys.c) do to it. */
#pragma once

#include "window/canvas-paint.h"
#include "window/canvas.h"

/* What the pressed pointer is doing. */
typedef enum { SPV_GRIP_NONE, SPV_GRIP_CLICK, SPV_GRIP_HANDLE, SPV_GRIP_PAN } SpvGrip;

struct _SpvCanvas {
  GtkWidget parent_instance;

  SpvSession *session; /* owned, or NULL */
  gboolean hatch, show_guide;

  int ruler;            /* how thick the rulers are, px */
  SpvViewport viewport; /* of the mat, which starts that far in on both axes */
  GArray *handles;      /* SpvHandle, of the chosen layer or, when none is, of the panel */
  SpvHandle active;     /* the handle that was used last */
  gboolean has_active;
  GskRenderNode *scene; /* all but the pointer's marks; NULL when it must be drawn anew */

  SpvPoint pointer; /* on the mat, px */
  gboolean pointer_inside, space_held;

  SpvGrip grip;
  SpvPoint grip_from;      /* where it was pressed, px */
  SpvPoint grip_last;      /* PAN: how far it had been moved */
  SpvHandle held;          /* HANDLE: as it was when it was taken */
  SpvPoint grip_slack;     /* HANDLE: from the pointer to the handle's middle, mm */
  char *caption;           /* HANDLE: what the slip says */
  const SpvScheme *pushed; /* HANDLE: what the drag last made; compared, never read */
  double pinch_start;      /* scale when a pinch began */
  guint settle_source;     /* ends a run of nudges */
};

/* Takes the session's scheme and selection of now. */
void spv_canvas_refresh(SpvCanvas *canvas);
/* The scene is to be drawn anew. */
void spv_canvas_invalidate(SpvCanvas *canvas);
/* The handle that the keys move, among those of now; NULL when there is none. */
const SpvHandle *spv_canvas_active_handle(SpvCanvas *canvas);

/* Carries out HANDLE at VALUES; joins the run of edits of the same handle. */
void spv_canvas_push_values(SpvCanvas *canvas, const SpvHandle *handle, const double values[2]);
/* HANDLE is from now on the one that the keys move. */
void spv_canvas_use_handle(SpvCanvas *canvas, const SpvHandle *handle);
void spv_canvas_update_cursor(SpvCanvas *canvas);

/* Adds the gestures, and the keys. */
void spv_canvas_listen(SpvCanvas *canvas);
void spv_canvas_listen_to_keys(SpvCanvas *canvas);
/* Lets go of whatever is held, without a trace in the history. */
void spv_canvas_cancel_grip(SpvCanvas *canvas);
