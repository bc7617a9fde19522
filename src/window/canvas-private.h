/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The canvas's own fields, shared by its parts: what it shows (canvas.c), and what the pointer
 * (canvas-input.c) and the keys (canvas-keys.c) do to it, and to the nodes of a free path (canvas-path.c). */
#pragma once

#include "window/canvas-paint.h"
#include "window/canvas.h"
#include "window/path-nodes.h"

/* What the pressed pointer is doing. */
typedef enum { SPV_GRIP_NONE, SPV_GRIP_CLICK, SPV_GRIP_HANDLE, SPV_GRIP_NODE, SPV_GRIP_PAN } SpvGrip;

struct _SpvCanvas {
  GtkWidget parent_instance;

  SpvSession *session; /* owned, or NULL */
  gboolean hatch, show_guide;

  int ruler;            /* how thick the rulers are, px */
  SpvViewport viewport; /* of the mat, which starts that far in on both axes */
  GArray *handles;      /* SpvHandle, of the chosen layer or, when none is, of the panel */
  SpvHandle active;     /* the handle that was used last */
  gboolean has_active;

  SpvPathNodes *nodes;     /* of the chosen layer where it is a free path; otherwise NULL */
  int node;                /* the one that was chosen, or -1 */
  char *path_layer;        /* the id of that layer */
  SpvTransform path_place; /* from the path's mm to the panel's */

  GskRenderNode *scene; /* all but the pointer's marks; NULL when it must be drawn anew */

  SpvPoint pointer; /* on the mat, px */
  gboolean pointer_inside, space_held;

  SpvGrip grip;
  SpvPoint grip_from;       /* where it was pressed, px */
  SpvPoint grip_last;       /* PAN: how far it had been moved */
  SpvHandle held;           /* HANDLE: as it was when it was taken */
  SpvPathNodes *held_nodes; /* NODE: as they were when it was taken */
  SpvNodePart held_part;
  SpvPoint grip_slack;     /* HANDLE, NODE: from the pointer to the middle of what is held, mm */
  char *caption;           /* HANDLE, NODE: what the slip says */
  const SpvScheme *pushed; /* HANDLE, NODE: what the drag last made; compared, never read */
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
/* Ends the run of edits of now a moment after the last. */
void spv_canvas_settle_later(SpvCanvas *canvas);

/* Takes the nodes of layer INDEX, if it is a free path. */
void spv_canvas_refresh_path(SpvCanvas *canvas, const SpvComposition *composition, int index);
/* Whether the path is drawn on both sides. */
gboolean spv_canvas_path_is_mirrored(SpvCanvas *canvas);
/* "node 2 of 5, smooth: Across 1.20 mm Down 2.00 mm"; NULL without nodes. Free with g_free(). */
char *spv_canvas_node_words(SpvCanvas *canvas);
gboolean spv_canvas_is_over_node(SpvCanvas *canvas, SpvPoint px);
/* A press at PX on a node, which is then held, or on an edge; FALSE on neither. */
gboolean spv_canvas_press_path(SpvCanvas *canvas, SpvPoint px);
/* The second of two presses: on a node it turns smooth, or a corner; on an edge it adds one. */
gboolean spv_canvas_press_path_twice(SpvCanvas *canvas, SpvPoint px);
void spv_canvas_drag_node(SpvCanvas *canvas, SpvPoint px, gboolean free);
/* FALSE where KEY means nothing to a path's nodes. */
gboolean spv_canvas_path_key(SpvCanvas *canvas, guint key, gboolean far);
