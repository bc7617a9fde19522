/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What this room's tests share: comparing doubles, the reference tables, random figures. */
#pragma once

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "geometry/path.h"

/* cmocka's own comparison of floats is single precision. */
#define assert_near(actual, expected, tolerance)                                                             \
  assert_near_at((actual), (expected), (tolerance), __FILE__, __LINE__)

static inline void
assert_near_at(double actual, double expected, double tolerance, const char *file, int line) {
  if (fabs(actual - expected) <= tolerance)
    return;
  print_error("%.12g is not %.12g within %g\n", actual, expected, tolerance);
  _fail(file, line);
}

/* The rows of tests/reference/NAME without its heading, each a strv of fields. No field is quoted with a
 * comma inside. */
static inline GPtrArray *
reference_rows(const char *name) {
  const char *root = g_getenv("SPV_TEST_SOURCE_DIR");
  g_autofree char *path = g_build_filename(root != NULL ? root : ".", "tests", "reference", name, NULL);
  g_autofree char *text = NULL;
  if (!g_file_get_contents(path, &text, NULL, NULL))
    fail_msg("%s can't be read", path);
  g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
  GPtrArray *rows = g_ptr_array_new_with_free_func((GDestroyNotify) (void *) g_strfreev);
  for (guint i = 1; lines[0] != NULL && lines[i] != NULL; i++)
    if (lines[i][0] != '\0')
      g_ptr_array_add(rows, g_strsplit(lines[i], ",", -1));
  return rows;
}

/* The value of KEY in areas.csv. */
static inline double
reference_area(const char *key) {
  g_autoptr(GPtrArray) rows = reference_rows("areas.csv");
  for (guint i = 0; i < rows->len; i++) {
    char **row = g_ptr_array_index(rows, i);
    if (g_str_equal(row[0], key))
      return g_ascii_strtod(row[1], NULL);
  }
  fail_msg("areas.csv has no %s", key);
  return NAN;
}

static inline SpvPoint
random_point(GRand *random, double reach) {
  double x = g_rand_double_range(random, -reach, reach);
  return spv_point(x, g_rand_double_range(random, -reach, reach));
}

/* A simple ring of N points round the datum, clockwise on screen, at distances from LEAST to MOST. */
static inline SpvRing *
random_star(GRand *random, guint n, double least, double most) {
  g_autofree SpvPoint *points = g_new(SpvPoint, n);
  for (guint i = 0; i < n; i++) {
    double angle = 2 * G_PI * i / n, radius = g_rand_double_range(random, least, most);
    points[i] = spv_point(radius * cos(angle), radius * sin(angle));
  }
  return spv_ring_new(points, n);
}

static inline double
distance_to_segment(SpvPoint p, SpvPoint a, SpvPoint b) {
  SpvPoint along = spv_point_subtract(b, a);
  double square = spv_point_dot(along, along);
  double t = square > 0 ? spv_point_dot(spv_point_subtract(p, a), along) / square : 0;
  return spv_point_distance(p, spv_point_between(a, b, CLAMP(t, 0, 1)));
}

static inline double
distance_to_ring(SpvPoint p, const SpvRing *ring) {
  double nearest = INFINITY;
  for (gsize i = 0; i < ring->n_points; i++)
    nearest = MIN(nearest, distance_to_segment(p, ring->points[i], ring->points[(i + 1) % ring->n_points]));
  return nearest;
}
