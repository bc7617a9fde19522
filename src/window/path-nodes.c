/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/path-nodes.h"

#include "geometry/svg-path.h"

/* Nodes nearer than this are one, mm. */
#define SAME 1e-6
/* Handles are in line where the sine of the angle between them is no more. */
#define IN_LINE 0.01
#define DECIMALS 4
/* How finely an edge is searched for the place nearest to the pointer. */
#define STEPS 32
#define QUARTER (G_PI / 2)

static gboolean
is_same(SpvPoint a, SpvPoint b) {
  return spv_point_distance(a, b) < SAME;
}

static SpvPathNode *
node_at(const SpvPathNodes *nodes, guint index) {
  return &g_array_index(nodes->nodes, SpvPathNode, index);
}

const SpvPathNode *
spv_path_nodes_get(const SpvPathNodes *nodes, guint index) {
  return node_at(nodes, index);
}

static SpvPathNodes *
nodes_new(void) {
  SpvPathNodes *nodes = g_new0(SpvPathNodes, 1);

  nodes->nodes = g_array_new(FALSE, FALSE, sizeof(SpvPathNode));
  nodes->starts = g_array_new(FALSE, FALSE, sizeof(guint));
  return nodes;
}

SpvPathNodes *
spv_path_nodes_copy(const SpvPathNodes *nodes) {
  SpvPathNodes *copy = nodes_new();

  g_array_append_vals(copy->nodes, nodes->nodes->data, nodes->nodes->len);
  g_array_append_vals(copy->starts, nodes->starts->data, nodes->starts->len);
  return copy;
}

void
spv_path_nodes_free(SpvPathNodes *nodes) {
  if (nodes == NULL)
    return;
  g_array_unref(nodes->nodes);
  g_array_unref(nodes->starts);
  g_free(nodes);
}

/* --- Reading and writing --- */

static void
add_node(SpvPathNodes *nodes, SpvPoint at) {
  SpvPathNode node = { at, at, at };

  g_array_append_val(nodes->nodes, node);
}

/* An edge from the last node to a new one at TO. */
static void
add_curve(SpvPathNodes *nodes, SpvPoint c1, SpvPoint c2, SpvPoint to) {
  node_at(nodes, nodes->nodes->len - 1)->out = c1;
  add_node(nodes, to);
  node_at(nodes, nodes->nodes->len - 1)->in = c2;
}

/* In parts of at most a quarter turn, each by the usual cubic. */
static void
add_arc(SpvPathNodes *nodes, const SpvPathStep *arc) {
  guint n = (guint) MAX(ceil(fabs(arc->sweep) / QUARTER - 1e-9), 1);
  double part = arc->sweep / n, reach = 4.0 / 3 * tan(part / 4) * arc->radius;

  for (guint i = 0; i < n; i++) {
    double a = arc->start + i * part, b = a + part;
    SpvPoint from = spv_point_add(arc->centre, spv_point_scale(spv_point(cos(a), sin(a)), arc->radius));
    SpvPoint to = spv_point_add(arc->centre, spv_point_scale(spv_point(cos(b), sin(b)), arc->radius));

    add_curve(nodes, spv_point_add(from, spv_point_scale(spv_point(-sin(a), cos(a)), reach)),
              spv_point_subtract(to, spv_point_scale(spv_point(-sin(b), cos(b)), reach)), to);
  }
}

static guint
last_start(const SpvPathNodes *nodes) {
  return g_array_index(nodes->starts, guint, nodes->starts->len - 1);
}

/* A run that comes back to its start has one node there. */
static void
end_run(SpvPathNodes *nodes) {
  guint start, last = nodes->nodes->len - 1;

  if (nodes->starts->len == 0)
    return;
  start = last_start(nodes);
  if (last > start && is_same(node_at(nodes, start)->at, node_at(nodes, last)->at)) {
    SpvPoint back = spv_point_subtract(node_at(nodes, last)->in, node_at(nodes, last)->at);

    node_at(nodes, start)->in = spv_point_add(node_at(nodes, start)->at, back);
    g_array_set_size(nodes->nodes, last);
  }
}

static void
add_step(SpvPathNodes *nodes, const SpvPathStep *step) {
  switch (step->op) {
  case SPV_PATH_MOVE:
    end_run(nodes);
    g_array_append_val(nodes->starts, nodes->nodes->len);
    add_node(nodes, step->to);
    break;
  case SPV_PATH_LINE:
    add_node(nodes, step->to);
    break;
  case SPV_PATH_CURVE:
    add_curve(nodes, step->c1, step->c2, step->to);
    break;
  case SPV_PATH_ARC:
    add_arc(nodes, step);
    break;
  case SPV_PATH_CLOSE:
    break;
  }
}

SpvPathNodes *
spv_path_nodes_parse(const char *text) {
  g_autoptr(SpvPath) path = spv_svg_path_parse(text, NULL);
  g_autoptr(SpvPathNodes) nodes = nodes_new();
  gsize n;
  const SpvPathStep *steps;

  if (path == NULL)
    return NULL;
  steps = spv_path_steps(path, &n);
  for (gsize i = 0; i < n && nodes->nodes->len <= SPV_PATH_NODES_MOST; i++)
    add_step(nodes, &steps[i]);
  end_run(nodes);
  if (nodes->nodes->len == 0 || nodes->nodes->len > SPV_PATH_NODES_MOST)
    return NULL;
  return g_steal_pointer(&nodes);
}

/* The run that node INDEX is in: from *FIRST to before *END. */
static void
find_run(const SpvPathNodes *nodes, guint index, guint *first, guint *end) {
  *first = 0;
  *end = nodes->nodes->len;
  for (guint i = 0; i < nodes->starts->len; i++) {
    guint start = g_array_index(nodes->starts, guint, i);

    if (start <= index)
      *first = start;
    else
      *end = MIN(*end, start);
  }
}

static gboolean
is_straight(const SpvPathNode *from, const SpvPathNode *to) {
  return is_same(from->out, from->at) && is_same(to->in, to->at);
}

static void
add_edge(SpvPathBuilder *builder, const SpvPathNode *from, const SpvPathNode *to) {
  if (is_straight(from, to))
    spv_path_builder_line(builder, to->at);
  else
    spv_path_builder_curve(builder, from->out, to->in, to->at);
}

SpvPath *
spv_path_nodes_path(const SpvPathNodes *nodes) {
  SpvPathBuilder *builder = spv_path_builder_new();

  for (guint i = 0; i < nodes->starts->len; i++) {
    guint first, end;

    find_run(nodes, g_array_index(nodes->starts, guint, i), &first, &end);
    spv_path_builder_move(builder, node_at(nodes, first)->at);
    for (guint k = first + 1; k < end; k++)
      add_edge(builder, node_at(nodes, k - 1), node_at(nodes, k));
    /* A straight last edge is the closing one. */
    if (!is_straight(node_at(nodes, end - 1), node_at(nodes, first)))
      add_edge(builder, node_at(nodes, end - 1), node_at(nodes, first));
    spv_path_builder_close(builder);
  }
  return spv_path_builder_build(builder);
}

char *
spv_path_nodes_write(const SpvPathNodes *nodes) {
  g_autoptr(SpvPath) path = spv_path_nodes_path(nodes);

  return spv_svg_path_write(path, DECIMALS);
}

/* --- Asking --- */

guint
spv_path_nodes_next(const SpvPathNodes *nodes, guint index) {
  guint first, end;

  find_run(nodes, index, &first, &end);
  return index + 1 < end ? index + 1 : first;
}

guint
spv_path_nodes_previous(const SpvPathNodes *nodes, guint index) {
  guint first, end;

  find_run(nodes, index, &first, &end);
  return index > first ? index - 1 : end - 1;
}

SpvPoint
spv_path_nodes_part(const SpvPathNodes *nodes, guint index, SpvNodePart part) {
  const SpvPathNode *node = node_at(nodes, index);

  switch (part) {
  case SPV_NODE_POINT:
    break;
  case SPV_NODE_IN:
    return node->in;
  case SPV_NODE_OUT:
    return node->out;
  }
  return node->at;
}

/* The way in which the edge comes to NODE from BEFORE, or leaves it for AFTER. */
static SpvPoint
way_to(SpvPoint handle, SpvPoint at, SpvPoint neighbour) {
  return spv_point_subtract(is_same(handle, at) ? neighbour : handle, at);
}

gboolean
spv_path_nodes_is_smooth(const SpvPathNodes *nodes, guint index) {
  const SpvPathNode *node = node_at(nodes, index);
  SpvPoint back = way_to(node->in, node->at, node_at(nodes, spv_path_nodes_previous(nodes, index))->at);
  SpvPoint on = way_to(node->out, node->at, node_at(nodes, spv_path_nodes_next(nodes, index))->at);
  double lengths = spv_point_length(back) * spv_point_length(on);

  /* Without a handle a node is a corner, however flat. */
  if (is_same(node->in, node->at) && is_same(node->out, node->at))
    return FALSE;
  return lengths > 0 && spv_point_dot(back, on) < 0 && fabs(spv_point_cross(back, on)) <= IN_LINE * lengths;
}

static gboolean
has_part(const SpvPathNodes *nodes, guint index, SpvNodePart part) {
  return part == SPV_NODE_POINT ||
         !is_same(spv_path_nodes_part(nodes, index, part), node_at(nodes, index)->at);
}

gboolean
spv_path_nodes_hit(const SpvPathNodes *nodes, SpvPoint at, double reach, int selected, guint *index,
                   SpvNodePart *part) {
  double best = reach;
  gboolean found = FALSE;

  for (SpvNodePart which = SPV_NODE_IN; selected >= 0 && which <= SPV_NODE_OUT; which++) {
    double distance = spv_point_distance(spv_path_nodes_part(nodes, (guint) selected, which), at);

    if (distance > best || !has_part(nodes, (guint) selected, which))
      continue;
    best = distance;
    *index = (guint) selected;
    *part = which;
    found = TRUE;
  }
  if (found)
    return TRUE;
  for (guint i = 0; i < nodes->nodes->len; i++) {
    double distance = spv_point_distance(node_at(nodes, i)->at, at);

    /* Of two in one place, the selected one. */
    if (distance > best || (found && distance == best && (int) i != selected))
      continue;
    best = distance;
    *index = i;
    *part = SPV_NODE_POINT;
    found = TRUE;
  }
  return found;
}

/* The place T of the way along the edge, and the points of de Casteljau's construction on the way to it. */
static SpvPoint
split(const SpvPathNode *from, const SpvPathNode *to, double t, SpvPoint between[4]) {
  SpvPoint a, b, c;

  if (is_straight(from, to)) {
    a = spv_point_between(from->at, to->at, t);
    between[0] = from->at;
    between[1] = between[2] = a;
    between[3] = to->at;
    return a;
  }
  a = spv_point_between(from->at, from->out, t);
  b = spv_point_between(from->out, to->in, t);
  c = spv_point_between(to->in, to->at, t);
  between[0] = a;
  between[1] = spv_point_between(a, b, t);
  between[2] = spv_point_between(b, c, t);
  between[3] = c;
  return spv_point_between(between[1], between[2], t);
}

/* How near the edge comes to AT, and where. */
static double
nearest_on_edge(const SpvPathNode *from, const SpvPathNode *to, SpvPoint at, double *t) {
  SpvPoint between[4];
  double best = INFINITY, step = 1.0 / STEPS;

  for (int i = 0; i <= STEPS; i++) {
    double distance = spv_point_distance(split(from, to, i * step, between), at);

    if (distance >= best)
      continue;
    best = distance;
    *t = i * step;
  }
  /* Halve the step about the best. */
  for (int i = 0; i < 20; i++) {
    double centre = *t;

    step /= 2;
    for (int way = -1; way <= 1; way += 2) {
      double tried = CLAMP(centre + way * step, 0, 1);
      double distance = spv_point_distance(split(from, to, tried, between), at);

      if (distance < best) {
        best = distance;
        *t = tried;
      }
    }
  }
  return best;
}

gboolean
spv_path_nodes_hit_edge(const SpvPathNodes *nodes, SpvPoint at, double reach, guint *index, double *t) {
  double best = reach;
  gboolean found = FALSE;

  for (guint i = 0; i < nodes->nodes->len; i++) {
    double where = 0;
    double distance = nearest_on_edge(node_at(nodes, i), node_at(nodes, spv_path_nodes_next(nodes, i)), at,
                                      &where);

    if (distance > best)
      continue;
    best = distance;
    *index = i;
    *t = where;
    found = TRUE;
  }
  return found;
}

/* --- Editing --- */

/* The handle OTHER of a smooth node, as long as it is, straight on from the handle that went to TO. */
static SpvPoint
straight_on(SpvPoint at, SpvPoint to, SpvPoint other) {
  double length = spv_point_distance(other, at);

  if (is_same(to, at) || length < SAME)
    return other;
  return spv_point_add(at, spv_point_scale(spv_point_unit(spv_point_subtract(at, to)), length));
}

void
spv_path_nodes_move(SpvPathNodes *nodes, guint index, SpvNodePart part, SpvPoint to) {
  SpvPathNode *node = node_at(nodes, index);
  gboolean smooth = spv_path_nodes_is_smooth(nodes, index);
  SpvPoint by;

  switch (part) {
  case SPV_NODE_POINT:
    by = spv_point_subtract(to, node->at);
    node->at = to;
    node->in = spv_point_add(node->in, by);
    node->out = spv_point_add(node->out, by);
    break;
  case SPV_NODE_IN:
    node->in = to;
    if (smooth)
      node->out = straight_on(node->at, to, node->out);
    break;
  case SPV_NODE_OUT:
    node->out = to;
    if (smooth)
      node->in = straight_on(node->at, to, node->in);
    break;
  }
}

/* Runs that begin after node INDEX begin BY later. */
static void
shift_starts(SpvPathNodes *nodes, guint index, int by) {
  for (guint i = 0; i < nodes->starts->len; i++) {
    guint *start = &g_array_index(nodes->starts, guint, i);

    if (*start > index)
      *start = (guint) ((int) *start + by);
  }
}

guint
spv_path_nodes_insert(SpvPathNodes *nodes, guint index, double t) {
  SpvPathNode *from = node_at(nodes, index), *to = node_at(nodes, spv_path_nodes_next(nodes, index)), node;
  SpvPoint between[4];

  node.at = split(from, to, t, between);
  node.in = between[1];
  node.out = between[2];
  from->out = between[0];
  to->in = between[3];
  shift_starts(nodes, index, 1);
  g_array_insert_val(nodes->nodes, index + 1, node);
  return index + 1;
}

gboolean
spv_path_nodes_remove(SpvPathNodes *nodes, guint index) {
  guint first, end;

  find_run(nodes, index, &first, &end);
  if (end - first <= SPV_PATH_NODES_LEAST)
    return FALSE;
  g_array_remove_index(nodes->nodes, index);
  shift_starts(nodes, index, -1);
  return TRUE;
}

void
spv_path_nodes_toggle(SpvPathNodes *nodes, guint index) {
  SpvPathNode *node = node_at(nodes, index);
  SpvPoint before = node_at(nodes, spv_path_nodes_previous(nodes, index))->at;
  SpvPoint after = node_at(nodes, spv_path_nodes_next(nodes, index))->at, way;

  if (spv_path_nodes_is_smooth(nodes, index)) {
    node->in = node->out = node->at;
    return;
  }
  way = spv_point_unit(spv_point_subtract(after, before));
  node->in = spv_point_subtract(node->at, spv_point_scale(way, spv_point_distance(before, node->at) / 3));
  node->out = spv_point_add(node->at, spv_point_scale(way, spv_point_distance(after, node->at) / 3));
}
