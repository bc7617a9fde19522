/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The nodes of a free path, as the painter edits them: points on the shape's edge, each with up to two curve
 * handles. All runs are closed, as a shape is filled. Places are in the path's own mm. No widgets in here. */
#pragma once

#include "geometry/path.h"

typedef struct {
  SpvPoint at;
  SpvPoint in, out; /* the ends of its curve handles towards the node before and after; AT where there is
                       none, and the edge leaves it straight */
} SpvPathNode;

typedef struct {
  GArray *nodes;  /* SpvPathNode, run after run */
  GArray *starts; /* guint: the first node of each run */
} SpvPathNodes;

/* What of a node is taken hold of. */
typedef enum { SPV_NODE_POINT, SPV_NODE_IN, SPV_NODE_OUT } SpvNodePart;

/* A run keeps so many nodes: fewer are no shape. */
#define SPV_PATH_NODES_LEAST 3
/* A path of more nodes is not for the hand. */
#define SPV_PATH_NODES_MOST 1000

/* The nodes of TEXT, path data; arcs become curves. NULL where it is none, or has more than
 * SPV_PATH_NODES_MOST nodes. */
SpvPathNodes *spv_path_nodes_parse(const char *text);
SpvPathNodes *spv_path_nodes_copy(const SpvPathNodes *nodes);
void spv_path_nodes_free(SpvPathNodes *nodes);
/* As path data, to a ten-thousandth of a millimetre. Free with g_free(). */
char *spv_path_nodes_write(const SpvPathNodes *nodes);
/* The path that the nodes stand for. A new reference. */
SpvPath *spv_path_nodes_path(const SpvPathNodes *nodes);

const SpvPathNode *spv_path_nodes_get(const SpvPathNodes *nodes, guint index);
/* The neighbours in its run. */
guint spv_path_nodes_next(const SpvPathNodes *nodes, guint index);
guint spv_path_nodes_previous(const SpvPathNodes *nodes, guint index);
/* Where PART of node INDEX is. */
SpvPoint spv_path_nodes_part(const SpvPathNodes *nodes, guint index, SpvNodePart part);
/* Whether the edge goes through the node without a corner. */
gboolean spv_path_nodes_is_smooth(const SpvPathNodes *nodes, guint index);

/* What lies nearest to AT, within REACH mm: a node, or a curve handle of the node SELECTED (-1: none), which
 * comes first. */
gboolean spv_path_nodes_hit(const SpvPathNodes *nodes, SpvPoint at, double reach, int selected, guint *index,
                            SpvNodePart *part);
/* The edge nearest to AT, within REACH mm: from node INDEX on, T of the way (0 to 1). */
gboolean spv_path_nodes_hit_edge(const SpvPathNodes *nodes, SpvPoint at, double reach, guint *index,
                                 double *t);

/* Moves PART of node INDEX to TO. A point takes its handles along; a handle of a smooth node turns the other
 * one with it. */
void spv_path_nodes_move(SpvPathNodes *nodes, guint index, SpvNodePart part, SpvPoint to);
/* Adds a node T of the way from node INDEX to the next; the shape stays the same. Returns its index. */
guint spv_path_nodes_insert(SpvPathNodes *nodes, guint index, double t);
/* Takes node INDEX away. FALSE, and nothing done, where its run would have too few. */
gboolean spv_path_nodes_remove(SpvPathNodes *nodes, guint index);
/* A corner becomes smooth, along the line between its neighbours; anything with a handle that is smooth
 * becomes a corner without handles. */
void spv_path_nodes_toggle(SpvPathNodes *nodes, guint index);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvPathNodes, spv_path_nodes_free)
