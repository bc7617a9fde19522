/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading the path data of SVG. */
#include "config.h"

#include "geometry/svg-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

G_DEFINE_QUARK(spv - svg - error - quark, spv_svg_error)

const char *
spv_svg_skip_space(const char *p) {
  while (*p == ' ' || *p == '\t' || *p == '\r' || *p == '\n')
    p++;
  return p;
}

const char *
spv_svg_skip_comma(const char *p) {
  p = spv_svg_skip_space(p);
  return *p == ',' ? spv_svg_skip_space(p + 1) : p;
}

static const char *
skip_digits(const char *p) {
  while (g_ascii_isdigit(*p))
    p++;
  return p;
}

const char *
spv_svg_read_number(const char *p, double *value) {
  const char *start = p;

  if (*p == '+' || *p == '-')
    p++;
  const char *digits = p;
  p = skip_digits(p);
  gsize n = (gsize) (p - digits);
  if (*p == '.') {
    const char *fraction = p + 1;
    p = skip_digits(fraction);
    n += (gsize) (p - fraction);
  }
  if (n == 0)
    return NULL;
  if (*p == 'e' || *p == 'E') {
    const char *exponent = p[1] == '+' || p[1] == '-' ? p + 2 : p + 1;
    if (g_ascii_isdigit(*exponent))
      p = skip_digits(exponent);
  }
  /* Read apart: what follows a number may look like more of it to strtod(), as "0x1" does. */
  g_autofree char *number = g_strndup(start, (gsize) (p - start));
  *value = g_ascii_strtod(number, NULL);
  return p;
}

/* A reader of path data. */
typedef struct {
  const char *text; /* all of it */
  const char *p;    /* here */
  SpvPathBuilder *builder;
  guint n_steps, n_runs;
  SpvPoint start, here;
  SpvPoint handle; /* the last control point, for S and T */
  char handle_of;  /* 'C' or 'Q' where the last command left such a handle; otherwise 0 */
  gboolean closed; /* the run has been closed: what draws next starts another */
  GError **error;
} Reader;

/* The character's number, from 1. A byte that starts no character counts as one. */
static guint
character_at(const Reader *reader, const char *p) {
  guint n = 1;
  for (const char *at = reader->text; at < p; at++)
    n += ((guchar) *at & 0xC0) != 0x80;
  return n;
}

static gboolean
fail(Reader *reader, SpvSvgError code, const char *could) {
  guint at = character_at(reader, reader->p);
  gunichar c = g_utf8_get_char_validated(reader->p, -1);
  char found[7] = { 0 };

  if (*reader->p == '\0')
    g_set_error(reader->error, SPV_SVG_ERROR, code, _("Character %u: the path ends where %s should follow"),
                at, could);
  else if (c == (gunichar) -1 || c == (gunichar) -2 || !g_unichar_isprint(c))
    g_set_error(reader->error, SPV_SVG_ERROR, code,
                _("Character %u: an unreadable character stands where %s should stand"), at, could);
  else {
    g_unichar_to_utf8(c, found);
    g_set_error(reader->error, SPV_SVG_ERROR, code, _("Character %u: “%s” stands where %s should stand"), at,
                found, could);
  }
  return FALSE;
}

static gboolean
fail_number(Reader *reader) {
  g_set_error(reader->error, SPV_SVG_ERROR, SPV_SVG_ERROR_LIMIT,
              _("Character %u: the number leads past 1,000,000,000; use a smaller one"),
              character_at(reader, reader->p));
  return FALSE;
}

/* Whether the path is still within its limits. */
static gboolean
check_limits(Reader *reader) {
  guint at;

  if (reader->n_steps <= SPV_SVG_MAX_STEPS && reader->n_runs <= SPV_SVG_MAX_RUNS)
    return TRUE;
  at = character_at(reader, reader->p);
  if (reader->n_runs > SPV_SVG_MAX_RUNS)
    g_set_error(reader->error, SPV_SVG_ERROR, SPV_SVG_ERROR_LIMIT,
                _("Character %u: the path has more than %d separate runs; simplify it"), at,
                SPV_SVG_MAX_RUNS);
  else
    g_set_error(reader->error, SPV_SVG_ERROR, SPV_SVG_ERROR_LIMIT,
                _("Character %u: the path has more than %d points; simplify it"), at, SPV_SVG_MAX_STEPS);
  return FALSE;
}

static gboolean
read_number(Reader *reader, double *value) {
  const char *end = spv_svg_read_number(reader->p, value);

  if (!end)
    return fail(reader, SPV_SVG_ERROR_SYNTAX, _("a number"));
  if (!(fabs(*value) <= SPV_SVG_MAX_NUMBER))
    return fail_number(reader);
  reader->p = end;
  return TRUE;
}

/* A number after another. */
static gboolean
read_next(Reader *reader, double *value) {
  reader->p = spv_svg_skip_comma(reader->p);
  return read_number(reader, value);
}

/* A pair of coordinates; RELATIVE ones count from where the command began. */
static gboolean
read_point(Reader *reader, gboolean relative, SpvPoint *point) {
  const char *from = reader->p;

  if (!read_number(reader, &point->x) || !read_next(reader, &point->y))
    return FALSE;
  if (relative)
    *point = spv_point_add(*point, reader->here);
  if (fabs(point->x) <= SPV_SVG_MAX_NUMBER && fabs(point->y) <= SPV_SVG_MAX_NUMBER)
    return TRUE;
  reader->p = from;
  return fail_number(reader);
}

/* N pairs. */
static gboolean
read_points(Reader *reader, gboolean relative, SpvPoint *points, guint n) {
  for (guint i = 0; i < n; i++) {
    if (i > 0)
      reader->p = spv_svg_skip_comma(reader->p);
    if (!read_point(reader, relative, &points[i]))
      return FALSE;
  }
  return TRUE;
}

/* A step begins: what closed a run before goes on from its start. */
static void
begin(Reader *reader) {
  if (reader->closed) {
    spv_path_builder_move(reader->builder, reader->start);
    reader->n_steps++;
    reader->n_runs++;
    reader->closed = FALSE;
  }
}

static void
line_to(Reader *reader, SpvPoint to) {
  begin(reader);
  spv_path_builder_line(reader->builder, to);
  reader->n_steps++;
  reader->here = to;
  reader->handle_of = 0;
}

static void
curve_to(Reader *reader, SpvPoint c1, SpvPoint c2, SpvPoint to) {
  begin(reader);
  spv_path_builder_curve(reader->builder, c1, c2, to);
  reader->n_steps++;
  reader->here = to;
  reader->handle = c2;
  reader->handle_of = 'C';
}

/* A quadratic curve is the cubic one whose handles lie two thirds of the way to its own. */
static void
quadratic_to(Reader *reader, SpvPoint handle, SpvPoint to) {
  curve_to(reader, spv_point_between(reader->here, handle, 2.0 / 3), spv_point_between(to, handle, 2.0 / 3),
           to);
  reader->handle = handle;
  reader->handle_of = 'Q';
}

/* The last handle of KIND mirrored in where the pen is; where there was none, the pen itself. */
static SpvPoint
mirrored_handle(const Reader *reader, char kind) {
  if (reader->handle_of != kind)
    return reader->here;
  return spv_point(2 * reader->here.x - reader->handle.x, 2 * reader->here.y - reader->handle.y);
}

static gboolean
read_move(Reader *reader, gboolean relative) {
  SpvPoint to;

  if (!read_point(reader, relative, &to))
    return FALSE;
  spv_path_builder_move(reader->builder, to);
  reader->n_steps++;
  reader->n_runs++;
  reader->start = reader->here = to;
  reader->handle_of = 0;
  reader->closed = FALSE;
  return TRUE;
}

static gboolean
read_line(Reader *reader, gboolean relative) {
  SpvPoint to;

  if (!read_point(reader, relative, &to))
    return FALSE;
  line_to(reader, to);
  return TRUE;
}

/* H and V: the one coordinate goes to X or Y. */
static gboolean
read_straight(Reader *reader, gboolean relative, gboolean upright) {
  const char *from = reader->p;
  SpvPoint to = reader->here;
  double *moved = upright ? &to.y : &to.x, before = *moved;

  if (!read_number(reader, moved))
    return FALSE;
  if (relative)
    *moved += before;
  if (fabs(*moved) > SPV_SVG_MAX_NUMBER) {
    reader->p = from;
    return fail_number(reader);
  }
  line_to(reader, to);
  return TRUE;
}

static gboolean
read_curve(Reader *reader, gboolean relative, gboolean smooth) {
  SpvPoint p[3] = { mirrored_handle(reader, 'C') };

  if (!read_points(reader, relative, smooth ? p + 1 : p, smooth ? 2 : 3))
    return FALSE;
  curve_to(reader, p[0], p[1], p[2]);
  return TRUE;
}

static gboolean
read_quadratic(Reader *reader, gboolean relative, gboolean smooth) {
  SpvPoint p[2] = { mirrored_handle(reader, 'Q') };

  if (!read_points(reader, relative, smooth ? p + 1 : p, smooth ? 1 : 2))
    return FALSE;
  quadratic_to(reader, p[0], p[1]);
  return TRUE;
}

static gboolean
read_flag(Reader *reader, gboolean *flag) {
  reader->p = spv_svg_skip_comma(reader->p);
  if (*reader->p != '0' && *reader->p != '1')
    return fail(reader, SPV_SVG_ERROR_SYNTAX, _("a flag, 0 or 1,"));
  *flag = *reader->p++ == '1';
  return TRUE;
}

/* The grammar has no sign before a radius. */
static gboolean
read_radius(Reader *reader, double *radius) {
  if (*reader->p == '-' || *reader->p == '+')
    return fail(reader, SPV_SVG_ERROR_SYNTAX, _("a radius, a number without a sign,"));
  return read_number(reader, radius);
}

static gboolean
read_arc(Reader *reader, gboolean relative) {
  double rx, ry, degrees;
  gboolean large, sweep;
  SpvPoint to;

  if (!read_radius(reader, &rx))
    return FALSE;
  reader->p = spv_svg_skip_comma(reader->p);
  if (!read_radius(reader, &ry) || !read_next(reader, &degrees) || !read_flag(reader, &large) ||
      !read_flag(reader, &sweep))
    return FALSE;
  reader->p = spv_svg_skip_comma(reader->p);
  if (!read_point(reader, relative, &to))
    return FALSE;
  begin(reader);
  reader->n_steps += spv_svg_add_arc(reader->builder, reader->here, rx, ry, fmod(degrees, 360) * G_PI / 180,
                                     large, sweep, to);
  reader->here = to;
  reader->handle_of = 0;
  return TRUE;
}

/* One set of the numbers that COMMAND takes. */
static gboolean
read_arguments(Reader *reader, char command) {
  gboolean relative = g_ascii_islower(command);

  switch (g_ascii_toupper(command)) {
  case 'M':
    return read_move(reader, relative);
  case 'L':
    return read_line(reader, relative);
  case 'H':
    return read_straight(reader, relative, FALSE);
  case 'V':
    return read_straight(reader, relative, TRUE);
  case 'C':
    return read_curve(reader, relative, FALSE);
  case 'S':
    return read_curve(reader, relative, TRUE);
  case 'Q':
    return read_quadratic(reader, relative, FALSE);
  case 'T':
    return read_quadratic(reader, relative, TRUE);
  default:
    return read_arc(reader, relative);
  }
}

static void
close_run(Reader *reader) {
  if (!reader->closed) {
    spv_path_builder_close(reader->builder);
    reader->n_steps++;
  }
  reader->here = reader->start;
  reader->closed = TRUE;
  reader->handle_of = 0;
}

/* One command with all its sets of numbers. The text stands at its letter. */
static gboolean
read_command(Reader *reader) {
  char command = *reader->p++;

  if (command == 'Z' || command == 'z') {
    close_run(reader);
    return TRUE;
  }
  reader->p = spv_svg_skip_space(reader->p);
  for (;;) {
    if (!read_arguments(reader, command))
      return FALSE;
    if (!check_limits(reader))
      return FALSE;
    if (command == 'M' || command == 'm')
      command = command == 'M' ? 'L' : 'l';
    const char *next = spv_svg_skip_comma(reader->p);
    gboolean comma = memchr(reader->p, ',', (gsize) (next - reader->p)) != NULL;
    gboolean more = *next != '\0' && strchr("+-.0123456789", *next) != NULL;
    if (!more && !comma)
      return TRUE;
    reader->p = next;
  }
}

static gboolean
read_path(Reader *reader) {
  reader->p = spv_svg_skip_space(reader->text);
  if (*reader->p == '\0') {
    g_set_error_literal(reader->error, SPV_SVG_ERROR, SPV_SVG_ERROR_EMPTY,
                        _("The path is empty; it starts with “M” and a point, as in M 0 0 L 2 0 L 1 2 Z"));
    return FALSE;
  }
  if (*reader->p != 'M' && *reader->p != 'm')
    return fail(reader, SPV_SVG_ERROR_SYNTAX, _("“M” or “m”"));
  while (*reader->p != '\0') {
    if (strchr("MmZzLlHhVvCcSsQqTtAa", *reader->p) == NULL)
      return fail(reader, SPV_SVG_ERROR_SYNTAX, _("a command (M, L, H, V, C, S, Q, T, A or Z)"));
    if (!read_command(reader))
      return FALSE;
    if (!check_limits(reader))
      return FALSE;
    reader->p = spv_svg_skip_space(reader->p);
  }
  return TRUE;
}

SpvPath *
spv_svg_path_parse(const char *text, GError **error) {
  g_return_val_if_fail(text != NULL, NULL);

  g_autoptr(SpvPathBuilder) builder = spv_path_builder_new();
  Reader reader = { .text = text, .p = text, .builder = builder, .error = error };
  if (!read_path(&reader))
    return NULL;
  return spv_path_builder_build(g_steal_pointer(&builder));
}
