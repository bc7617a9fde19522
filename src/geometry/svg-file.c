/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shapes of an SVG file, with the transforms around them. */
#include "config.h"

#include "geometry/svg-private.h"
#include "geometry/wind.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* The deepest nesting of elements. */
#define MAX_DEPTH 1000

/* What an element hands on to those within it. */
typedef struct {
  SpvTransform transform;
  SpvFillRule rule;
} Level;

typedef struct {
  GArray *levels; /* Level: of the elements that are open */
  guint skipped;  /* how many open elements are in something that is never shown */
  SpvPathBuilder *builder;
  gsize n_steps, n_runs;
  gboolean rooted; /* the first element has been seen, and is an svg */
} Reader;

/* NAME without the prefix of its namespace. */
static const char *
local_name(const char *name) {
  const char *colon = strrchr(name, ':');
  return colon ? colon + 1 : name;
}

static gboolean
is_hidden(const char *name) {
  static const char *const hidden[] = { "defs", "symbol", "clipPath", "mask", "marker", "pattern", NULL };
  return g_strv_contains(hidden, name);
}

/* The fill rule of an element: its attribute's, its style's, which counts for more, or INHERITED. */
static SpvFillRule
fill_rule(const char **keys, const char **values, SpvFillRule inherited) {
  const char *rule = NULL;
  g_autofree char *styled = NULL;

  for (guint i = 0; keys[i]; i++) {
    if (g_str_equal(keys[i], "fill-rule") && !styled)
      rule = values[i];
    const char *style = g_str_equal(keys[i], "style") ? strstr(values[i], "fill-rule") : NULL;
    const char *colon = style ? strchr(style, ':') : NULL;
    if (colon) {
      g_free(styled);
      rule = styled = g_strndup(colon + 1, strcspn(colon + 1, ";"));
    }
  }
  if (rule && strstr(rule, "evenodd"))
    return SPV_FILL_EVEN_ODD;
  return rule && strstr(rule, "nonzero") ? SPV_FILL_NONZERO : inherited;
}

static gboolean
enter(GMarkupParseContext *context, Reader *reader, const char **keys, const char **values, GError **error) {
  Level level = { SPV_TRANSFORM_IDENTITY, SPV_FILL_NONZERO };
  SpvTransform own = SPV_TRANSFORM_IDENTITY;
  int line = 0;

  if (reader->levels->len > 0)
    level = g_array_index(reader->levels, Level, reader->levels->len - 1);
  g_markup_parse_context_get_position(context, &line, NULL);
  for (guint i = 0; keys[i]; i++)
    if (g_str_equal(keys[i], "transform") && !spv_svg_read_transform(values[i], &own, error)) {
      g_prefix_error(error, _("Line %d: "), line);
      return FALSE;
    }
  level.transform = spv_transform_compose(level.transform, own);
  level.rule = fill_rule(keys, values, level.rule);
  g_array_append_val(reader->levels, level);
  if (reader->levels->len <= MAX_DEPTH)
    return TRUE;
  g_set_error(error, SPV_SVG_ERROR, SPV_SVG_ERROR_LIMIT,
              _("Line %d: elements are nested more than %d deep; ungroup them"), line, MAX_DEPTH);
  return FALSE;
}

/* Whether every number in PATH is within reach. */
static gboolean
is_within_reach(const SpvPath *path) {
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);

  for (gsize i = 0; i < n; i++) {
    double most = MAX(fabs(steps[i].to.x), fabs(steps[i].to.y));
    if (steps[i].op == SPV_PATH_CURVE)
      most = MAX(MAX(fabs(steps[i].c1.x), fabs(steps[i].c1.y)),
                 MAX(most, MAX(fabs(steps[i].c2.x), fabs(steps[i].c2.y))));
    if (!(most <= SPV_SVG_MAX_NUMBER))
      return FALSE;
  }
  return TRUE;
}

static void
add_shape(GMarkupParseContext *context, Reader *reader, const char *name, const char **keys,
          const char **values, GError **error) {
  const Level *level = &g_array_index(reader->levels, Level, reader->levels->len - 1);
  GError *own = NULL;
  g_autoptr(SpvPath) path = spv_svg_element_path(name, keys, values, &own);
  int line = 0;
  gsize n = 0;

  g_markup_parse_context_get_position(context, &line, NULL);
  if (own) {
    g_propagate_prefixed_error(error, own, _("Line %d: "), line);
    return;
  }
  if (!path)
    return;
  g_autoptr(SpvPath) moved = spv_path_transform(path, level->transform);
  g_autoptr(SpvPath) wound = spv_path_wind(moved, level->rule);
  const SpvPathStep *steps = spv_path_steps(wound, &n);
  reader->n_steps += n;
  for (gsize i = 0; i < n; i++)
    reader->n_runs += steps[i].op == SPV_PATH_MOVE;
  if (reader->n_runs > SPV_SVG_MAX_RUNS)
    g_set_error(error, SPV_SVG_ERROR, SPV_SVG_ERROR_LIMIT,
                _("Line %d: the shapes have more than %d separate runs in all; simplify them"), line,
                SPV_SVG_MAX_RUNS);
  else if (reader->n_steps > SPV_SVG_MAX_STEPS)
    g_set_error(error, SPV_SVG_ERROR, SPV_SVG_ERROR_LIMIT,
                _("Line %d: the shapes have more than %d points in all; simplify them"), line,
                SPV_SVG_MAX_STEPS);
  else if (!is_within_reach(wound))
    g_set_error(error, SPV_SVG_ERROR, SPV_SVG_ERROR_LIMIT,
                _("Line %d: the transform leads past 1,000,000,000; use a smaller one"), line);
  else
    spv_path_builder_path(reader->builder, wound);
}

static void
start_element(GMarkupParseContext *context, const char *element, const char **keys, const char **values,
              gpointer data, GError **error) {
  Reader *reader = data;
  const char *name = local_name(element);

  if (!reader->rooted && !g_str_equal(name, "svg")) {
    g_set_error(error, SPV_SVG_ERROR, SPV_SVG_ERROR_SYNTAX,
                _("The file starts with <%s>, so it is no SVG file; export the drawing as SVG"), element);
    return;
  }
  reader->rooted = TRUE;
  if (reader->skipped > 0 || is_hidden(name)) {
    reader->skipped++;
    return;
  }
  if (enter(context, reader, keys, values, error))
    add_shape(context, reader, name, keys, values, error);
}

static void
end_element(GMarkupParseContext *context, const char *element, gpointer data, GError **error) {
  Reader *reader = data;

  (void) context;
  (void) element;
  (void) error;
  if (reader->skipped > 0)
    reader->skipped--;
  else
    g_array_set_size(reader->levels, reader->levels->len - 1);
}

/* So many digits that what is written strays by less than a millionth of the path's size. */
static guint
decimals_for(const SpvPath *path) {
  SpvBox box = { INFINITY, INFINITY, -INFINITY, -INFINITY };
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);

  for (gsize i = 0; i < n; i++)
    box = spv_box_join(box, (SpvBox){ steps[i].to.x, steps[i].to.y, steps[i].to.x, steps[i].to.y });
  double size = hypot(spv_box_width(box), spv_box_height(box));
  return size > 0 ? (guint) CLAMP(7 - floor(log10(size)), 0, 17) : 6;
}

static char *
write_shapes(const SpvPath *path, GError **error) {
  if (spv_path_is_empty(path)) {
    g_set_error_literal(
        error, SPV_SVG_ERROR, SPV_SVG_ERROR_EMPTY,
        _("The file has no shape: no path, rect, circle, ellipse, polygon or polyline that is "
          "shown; turn text, strokes and copies into paths first"));
    return NULL;
  }
  return spv_svg_path_write(path, decimals_for(path));
}

/* GMarkup's messages say line and character. */
static void
take_markup_error(GError **error, GError *markup) {
  if (markup->domain != G_MARKUP_ERROR) {
    g_propagate_error(error, markup);
    return;
  }
  g_set_error(error, SPV_SVG_ERROR, SPV_SVG_ERROR_SYNTAX, _("The file can't be read as XML: %s"),
              markup->message);
  g_error_free(markup);
}

char *
spv_svg_file_path(const char *text, gsize length, GError **error) {
  g_return_val_if_fail(text != NULL, NULL);
  static const GMarkupParser parser = { .start_element = start_element, .end_element = end_element };
  static const char mark[] = "\xEF\xBB\xBF"; /* the byte order mark that some programs put first */

  if (length >= 3 && memcmp(text, mark, 3) == 0) {
    text += 3;
    length -= 3;
  }
  g_autoptr(GArray) levels = g_array_new(FALSE, FALSE, sizeof(Level));
  g_autoptr(SpvPathBuilder) builder = spv_path_builder_new();
  Reader reader = { .levels = levels, .builder = builder };
  g_autoptr(GMarkupParseContext) context = g_markup_parse_context_new(&parser, 0, &reader, NULL);
  GError *failure = NULL;

  if (!g_markup_parse_context_parse(context, text, (gssize) length, &failure) ||
      !g_markup_parse_context_end_parse(context, &failure)) {
    take_markup_error(error, failure);
    return NULL;
  }
  g_autoptr(SpvPath) path = spv_path_builder_build(g_steal_pointer(&builder));
  return write_shapes(path, error);
}
