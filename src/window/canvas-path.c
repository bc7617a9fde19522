/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What pointer and keys do to the nodes of the chosen free path. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "window/canvas-private.h"

#define REACH 9.0      /* px from a node's middle that still take it */
#define EDGE_REACH 5.0 /* px from an edge that still take that */
#define NUDGE 0.05     /* mm */
#define NUDGE_FAR 0.5
#define SNAPPED_PER_MM (1 / SPV_HANDLE_SNAP)
#define FREE_PER_MM 1000.0

static gboolean
is_free_path(const SpvLayer *layer) {
  return layer != NULL && layer->pattern.kind == SPV_PATTERN_FREE_PATH && !layer->hidden && !layer->locked;
}

void
spv_canvas_refresh_path(SpvCanvas *canvas, const SpvComposition *composition, int index) {
  const SpvLayer *layer = composition == NULL || index < 0 ? NULL : composition->panel->layers[index];
  gboolean same = layer != NULL && g_strcmp0(layer->id, canvas->path_layer) == 0;

  g_clear_pointer(&canvas->nodes, spv_path_nodes_free);
  if (is_free_path(layer))
    canvas->nodes = spv_path_nodes_parse(spv_pattern_text(&layer->pattern, 0));
  if (canvas->nodes == NULL) {
    canvas->node = -1;
    g_clear_pointer(&canvas->path_layer, g_free);
    return;
  }
  canvas->path_place = spv_layer_place(composition, (guint) index);
  if (!same) {
    g_free(canvas->path_layer);
    canvas->path_layer = g_strdup(layer->id);
    /* A new shape can be taken on at once; one that is only chosen waits for the painter to choose a node,
     * so that Delete still means the layer. */
    canvas->node = layer->pattern.texts[0] == NULL ? 0 : -1;
  }
  canvas->node = MIN(canvas->node, (int) canvas->nodes->nodes->len - 1);
}

gboolean
spv_canvas_path_is_mirrored(SpvCanvas *canvas) {
  const SpvLayer *layer = canvas->nodes == NULL ? NULL : spv_session_chosen_layer(canvas->session);

  return layer != NULL && layer->pattern.measures[0].unit == SPV_UNIT_PLAIN &&
         layer->pattern.measures[0].value > 0;
}

/* From the mat's pixels to the path's mm. */
static SpvPoint
to_path(SpvCanvas *canvas, SpvPoint px) {
  SpvTransform back = SPV_TRANSFORM_IDENTITY;

  spv_transform_invert(canvas->path_place, &back);
  return spv_transform_point(back, spv_viewport_to_mm(&canvas->viewport, px));
}

static double
to_mm(SpvCanvas *canvas, double px) {
  return px / canvas->viewport.scale;
}

gboolean
spv_canvas_is_over_node(SpvCanvas *canvas, SpvPoint px) {
  SpvNodePart part;
  guint index;

  return canvas->nodes != NULL && spv_path_nodes_hit(canvas->nodes, to_path(canvas, px), to_mm(canvas, REACH),
                                                     canvas->node, &index, &part);
}

/* Carries out what was done to NODES; joins the run of edits that MERGE names. */
static void
push_nodes(SpvCanvas *canvas, const SpvPathNodes *nodes, const char *label, const char *merge) {
  const SpvLayer *layer = spv_session_chosen_layer(canvas->session);
  const SpvScheme *before = spv_session_scheme(canvas->session);
  g_autofree char *text = spv_path_nodes_write(nodes);
  g_autoptr(SpvLayer) changed = NULL;

  if (layer == NULL)
    return;
  changed = spv_layer_with_text(layer, 0, text);
  spv_session_edit_layer(canvas->session, (guint) spv_session_layer(canvas->session), changed, label, merge);
  if (spv_session_scheme(canvas->session) != before)
    canvas->pushed = spv_session_scheme(canvas->session);
}

/* An edit that is a step of its own; NODE is chosen after it. */
static void
push_once(SpvCanvas *canvas, const SpvPathNodes *nodes, int node, const char *label) {
  spv_session_settle(canvas->session);
  canvas->node = node;
  push_nodes(canvas, nodes, label, NULL);
  spv_session_settle(canvas->session);
  spv_canvas_refresh(canvas);
}

static char *
merge_key(SpvCanvas *canvas, guint node, SpvNodePart part) {
  return g_strdup_printf("canvas %s %s node %u %d", spv_session_chosen_panel(canvas->session)->id,
                         canvas->path_layer, node, (int) part);
}

/* --- What it says --- */

static void
append_mm(GString *words, double mm) {
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd(number, sizeof number, "%.2f", mm);
  g_string_append_printf(words, "%s\u2009mm", number);
}

/* "Across 1.20 mm", and on a line of its own "Down 2.00 mm". */
static char *
place_words(SpvPoint at) {
  GString *words = g_string_new(_("Across"));

  g_string_append_c(words, ' ');
  append_mm(words, at.x);
  g_string_append_printf(words, "\n%s ", _("Down"));
  append_mm(words, at.y);
  return g_string_free(words, FALSE);
}

char *
spv_canvas_node_words(SpvCanvas *canvas) {
  g_autofree char *place = NULL;

  if (canvas->nodes == NULL)
    return NULL;
  if (canvas->node < 0)
    return g_strdup_printf(g_dngettext(GETTEXT_PACKAGE, "%u node, none is chosen", "%u nodes, none is chosen",
                                       canvas->nodes->nodes->len),
                           canvas->nodes->nodes->len);
  place = place_words(spv_path_nodes_get(canvas->nodes, (guint) canvas->node)->at);
  g_strdelimit(place, "\n", ' ');
  return g_strdup_printf(spv_path_nodes_is_smooth(canvas->nodes, (guint) canvas->node)
                             /* TRANSLATORS: which node of how many, and where it is */
                             ? _("node %d of %u, smooth: %s")
                             : _("node %d of %u, corner: %s"),
                         canvas->node + 1, canvas->nodes->nodes->len, place);
}

static void
say_place(SpvCanvas *canvas, SpvPoint at) {
  g_free(canvas->caption);
  canvas->caption = place_words(at);
}

/* --- Pointer --- */

gboolean
spv_canvas_press_path(SpvCanvas *canvas, SpvPoint px) {
  SpvPoint at = canvas->nodes == NULL ? px : to_path(canvas, px), middle;
  guint index;
  double t;

  if (canvas->nodes == NULL)
    return FALSE;
  if (!spv_path_nodes_hit(canvas->nodes, at, to_mm(canvas, REACH), canvas->node, &index,
                          &canvas->held_part)) {
    /* A press on an edge may be the first of two, and must not choose what lies beside it. */
    canvas->grip = SPV_GRIP_NONE;
    return spv_path_nodes_hit_edge(canvas->nodes, at, to_mm(canvas, EDGE_REACH), &index, &t);
  }
  spv_session_settle(canvas->session);
  canvas->grip = SPV_GRIP_NODE;
  canvas->node = (int) index;
  g_clear_pointer(&canvas->held_nodes, spv_path_nodes_free);
  canvas->held_nodes = spv_path_nodes_copy(canvas->nodes);
  middle = spv_path_nodes_part(canvas->nodes, index, canvas->held_part);
  canvas->grip_slack = spv_point_subtract(middle, at);
  say_place(canvas, middle);
  spv_canvas_refresh(canvas);
  return TRUE;
}

void
spv_canvas_drag_node(SpvCanvas *canvas, SpvPoint px, gboolean free) {
  SpvPoint to = spv_point_add(to_path(canvas, px), canvas->grip_slack);
  double per_mm = free ? FREE_PER_MM : SNAPPED_PER_MM;
  g_autoptr(SpvPathNodes) moved = spv_path_nodes_copy(canvas->held_nodes);
  g_autofree char *merge = merge_key(canvas, (guint) canvas->node, canvas->held_part);

  to = spv_point(round(to.x * per_mm) / per_mm, round(to.y * per_mm) / per_mm);
  spv_path_nodes_move(moved, (guint) canvas->node, canvas->held_part, to);
  say_place(canvas, to);
  push_nodes(canvas, moved, canvas->held_part == SPV_NODE_POINT ? _("Move node") : _("Bend edge"), merge);
}

gboolean
spv_canvas_press_path_twice(SpvCanvas *canvas, SpvPoint px) {
  SpvPoint at = canvas->nodes == NULL ? px : to_path(canvas, px);
  g_autoptr(SpvPathNodes) changed = NULL;
  SpvNodePart part;
  guint index;
  double t;

  if (canvas->nodes == NULL)
    return FALSE;
  changed = spv_path_nodes_copy(canvas->nodes);
  if (spv_path_nodes_hit(changed, at, to_mm(canvas, REACH), -1, &index, &part)) {
    spv_path_nodes_toggle(changed, index);
    push_once(canvas, changed, (int) index,
              spv_path_nodes_is_smooth(changed, index) ? _("Make node smooth") : _("Make node a corner"));
    return TRUE;
  }
  if (!spv_path_nodes_hit_edge(changed, at, to_mm(canvas, EDGE_REACH), &index, &t))
    return FALSE;
  index = spv_path_nodes_insert(changed, index, t);
  push_once(canvas, changed, (int) index, _("Add node"));
  return TRUE;
}

/* --- Keys --- */

static gboolean
nudge_node(SpvCanvas *canvas, SpvPoint arrow, gboolean far) {
  g_autoptr(SpvPathNodes) moved = spv_path_nodes_copy(canvas->nodes);
  g_autofree char *merge = merge_key(canvas, (guint) canvas->node, SPV_NODE_POINT);
  SpvTransform place = canvas->path_place;
  /* The arrow points on the panel; a shape that is turned or mirrored has other axes. */
  SpvPoint way = { place.a * arrow.x + place.b * arrow.y, place.c * arrow.x + place.d * arrow.y };
  SpvPoint at = spv_path_nodes_get(moved, (guint) canvas->node)->at;

  spv_path_nodes_move(moved, (guint) canvas->node, SPV_NODE_POINT,
                      spv_point_add(at, spv_point_scale(way, far ? NUDGE_FAR : NUDGE)));
  push_nodes(canvas, moved, _("Move node"), merge);
  spv_canvas_settle_later(canvas);
  return TRUE;
}

static gboolean
choose_node(SpvCanvas *canvas, int step) {
  int n = (int) canvas->nodes->nodes->len;

  spv_session_settle(canvas->session);
  canvas->node = canvas->node < 0 ? (step > 0 ? 0 : n - 1) : (canvas->node + step + n) % n;
  spv_canvas_refresh(canvas);
  return TRUE;
}

static gboolean
remove_node(SpvCanvas *canvas) {
  g_autoptr(SpvPathNodes) changed = spv_path_nodes_copy(canvas->nodes);
  guint node = (guint) canvas->node;

  if (spv_path_nodes_remove(changed, node))
    push_once(canvas, changed, node > 0 ? (int) node - 1 : 0, _("Remove node"));
  else
    gtk_widget_error_bell(GTK_WIDGET(canvas));
  return TRUE;
}

static gboolean
toggle_node(SpvCanvas *canvas) {
  g_autoptr(SpvPathNodes) changed = spv_path_nodes_copy(canvas->nodes);
  guint node = (guint) canvas->node;

  spv_path_nodes_toggle(changed, node);
  push_once(canvas, changed, (int) node,
            spv_path_nodes_is_smooth(changed, node) ? _("Make node smooth") : _("Make node a corner"));
  return TRUE;
}

/* In the middle of the edge that follows. */
static gboolean
insert_node(SpvCanvas *canvas) {
  g_autoptr(SpvPathNodes) changed = spv_path_nodes_copy(canvas->nodes);
  guint node = spv_path_nodes_insert(changed, (guint) canvas->node, 0.5);

  push_once(canvas, changed, (int) node, _("Add node"));
  return TRUE;
}

static gboolean
leave_node(SpvCanvas *canvas) {
  canvas->node = -1;
  spv_canvas_refresh(canvas);
  return TRUE;
}

gboolean
spv_canvas_path_key(SpvCanvas *canvas, guint key, gboolean far) {
  if (canvas->nodes == NULL || canvas->grip != SPV_GRIP_NONE)
    return FALSE;
  if (key == GDK_KEY_Page_Down || key == GDK_KEY_Page_Up)
    return choose_node(canvas, key == GDK_KEY_Page_Down ? 1 : -1);
  if (canvas->node < 0)
    return FALSE;
  switch (key) {
  case GDK_KEY_Left:
  case GDK_KEY_KP_Left:
    return nudge_node(canvas, spv_point(-1, 0), far);
  case GDK_KEY_Right:
  case GDK_KEY_KP_Right:
    return nudge_node(canvas, spv_point(1, 0), far);
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    return nudge_node(canvas, spv_point(0, -1), far);
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    return nudge_node(canvas, spv_point(0, 1), far);
  case GDK_KEY_Delete:
  case GDK_KEY_KP_Delete:
  case GDK_KEY_BackSpace:
    return remove_node(canvas);
  case GDK_KEY_Insert:
  case GDK_KEY_KP_Insert:
    return insert_node(canvas);
  case GDK_KEY_Return:
  case GDK_KEY_KP_Enter:
    return toggle_node(canvas);
  case GDK_KEY_Escape:
    return leave_node(canvas);
  default:
    return FALSE;
  }
}
