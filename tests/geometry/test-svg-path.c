/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Path data of SVG: the grammar, the Recommendation's own examples, writing and reading back. */
#include "geometry-test.h"

#include <string.h>

#include "geometry/shape.h"
#include "geometry/svg-path.h"
#include "geometry/wind.h"

static SpvPath *
parse(const char *text) {
  g_autoptr(GError) error = NULL;
  SpvPath *path = spv_svg_path_parse(text, &error);
  if (!path)
    fail_msg("%s: %s", text, error->message);
  return path;
}

/* Whether TEXT gives exactly what EXPECTED, written plainly, gives. */
static void
assert_reads_as(const char *text, const char *expected) {
  g_autoptr(SpvPath) path = parse(text);
  g_autofree char *written = spv_svg_path_write(path, 9);
  assert_string_equal(written, expected);
}

static void
assert_refused(const char *text, SpvSvgError code, const char *says) {
  g_autoptr(GError) error = NULL;
  g_autoptr(SpvPath) path = spv_svg_path_parse(text, &error);
  if (path)
    fail_msg("“%s” was taken", text);
  assert_true(g_error_matches(error, SPV_SVG_ERROR, (int) code));
  if (strstr(error->message, says) == NULL)
    fail_msg("“%s”: the message is “%s”", text, error->message);
}

/* Signed area of PATH's one run: ∮ x dy by Gauss's rule of three points a step, which is exact for cubics; an
 * arc's from its own integral. */
static double
exact_area(const SpvPath *path) {
  static const double at[] = { 0.5 - 0.3872983346207417, 0.5, 0.5 + 0.3872983346207417 };
  static const double weight[] = { 5.0 / 18, 8.0 / 18, 5.0 / 18 };
  gsize n;
  const SpvPathStep *steps = spv_path_steps(path, &n);
  SpvPoint here = { 0, 0 }, start = here;
  double area = 0;
  for (gsize i = 0; i < n; i++) {
    const SpvPathStep *s = &steps[i];
    switch (s->op) {
    case SPV_PATH_MOVE:
      start = s->to;
      break;
    case SPV_PATH_LINE:
    case SPV_PATH_CLOSE:
      area += (here.x + s->to.x) / 2 * (s->to.y - here.y);
      break;
    case SPV_PATH_CURVE:
      for (guint k = 0; k < 3; k++) {
        double t = at[k], u = 1 - t;
        double x = u * u * u * here.x + 3 * u * u * t * s->c1.x + 3 * u * t * t * s->c2.x +
                   t * t * t * s->to.x;
        double dy = 3 * (u * u * (s->c1.y - here.y) + 2 * u * t * (s->c2.y - s->c1.y) +
                         t * t * (s->to.y - s->c2.y));
        area += weight[k] * x * dy;
      }
      break;
    case SPV_PATH_ARC: {
      double a = s->start, b = a + s->sweep, r = s->radius;
      area += r * (s->centre.x * (sin(b) - sin(a)) + r * ((b - a) / 2 + (sin(2 * b) - sin(2 * a)) / 4));
      break;
    }
    }
    here = s->to;
  }
  return area + (here.x + start.x) / 2 * (start.y - here.y);
}

/* SVG 1.1, section 8.3.2, example triangle01. */
static void
test_triangle01(void **state) {
  (void) state;
  g_autoptr(SpvPath) path = parse("M 100 100 L 300 100 L 200 300 z");
  assert_near(exact_area(path), 20000, 1e-9);
  assert_reads_as("M 100 100 L 300 100 L 200 300 z", "M 100 100 L 300 100 L 200 300 Z");
}

/* SVG 1.1, section 8.3.1: what the text says may be left out. */
static void
test_what_may_be_left_out(void **state) {
  (void) state;
  const char *all = "M 100 200 L 200 100 L -100 -200";
  assert_reads_as("M 100 200 L 200 100 L -100 -200", all);
  assert_reads_as("M 100 200 L 200 100 -100 -200", all);
  assert_reads_as("M100,200L200,100-100-200", all);
  assert_reads_as("M100 200 200 100-100-200", all);
  assert_reads_as("m100 200 100-100-300-300", all);
  assert_reads_as(" \t\r\nM\n100\t,\r200 L200 100 -100 , -200\n", all);
  /* Section 8.3.9: "M 0.6.5" is the pair 0.6 and .5. */
  assert_reads_as("M 0.6.5", "M 0.6 0.5");
  assert_reads_as("M.5.5-.5+.5", "M 0.5 0.5 L -0.5 0.5");
  assert_reads_as("M-1e-3 1E2L5. 5.e+0", "M -0.001 100 L 5 5");
  assert_reads_as("M1 1h1 2V4 5H0v-1-1", "M 1 1 L 2 1 L 4 1 L 4 4 L 4 5 L 0 5 L 0 4 L 0 3");
}

/* After a close the pen is at the run's start; a move is then relative to that (section 8.3.3). */
static void
test_after_a_close(void **state) {
  (void) state;
  assert_reads_as("M1 1h2v2zl-1 0z", "M 1 1 L 3 1 L 3 3 Z M 1 1 L 0 1 Z");
  assert_reads_as("m1 1h2v2zm5 5h1", "M 1 1 L 3 1 L 3 3 Z M 6 6 L 7 6");
  assert_reads_as("M1 1h2v2zzZ", "M 1 1 L 3 1 L 3 3 Z");
  assert_reads_as("M1 1m1 1 1 1", "M 1 1 M 2 2 L 3 3");
}

/* SVG 1.1, section 8.3.6, examples cubic01 and cubic02 (from memory). */
static void
test_cubics(void **state) {
  (void) state;
  assert_reads_as("M100,200 C100,100 250,100 250,200 S400,300 400,200",
                  "M 100 200 C 100 100 250 100 250 200 C 250 300 400 300 400 200");
  assert_reads_as("M600,800 C625,700 725,700 750,800 S875,900 900,800",
                  "M 600 800 C 625 700 725 700 750 800 C 775 900 875 900 900 800");
  assert_reads_as("m100,200 c0,-100 150,-100 150,0s150,100 150,0",
                  "M 100 200 C 100 100 250 100 250 200 C 250 300 400 300 400 200");
  /* Without a cubic before it, the handle is the pen. */
  assert_reads_as("M0 0 L1 1 S 2 2 3 1", "M 0 0 L 1 1 C 1 1 2 2 3 1");
  assert_reads_as("M0 0 Q1 1 2 0 S 3 3 4 0",
                  "M 0 0 C 0.666666667 0.666666667 1.333333333 0.666666667 2 0 C 2 0 3 3 4 0");
  /* 18 B H ∫ t² (1 - t)² dt: a cubic with upright handles H high over a base B has the area 3/5 B H. */
  g_autoptr(SpvPath) arch = parse("M100,200 C100,100 400,100 400,200 z");
  assert_near(exact_area(arch), 0.6 * 300 * 100, 1e-9);
}

/* SVG 1.1, section 8.3.7, example quad01: two parabolas whose vertices lie half as high as the handles. The
 * area under a parabola is two thirds of its box (Archimedes). */
static void
test_quadratics(void **state) {
  (void) state;
  g_autoptr(SpvPath) wave = parse("M200,300 Q400,50 600,300 T1000,300");
  g_autoptr(SpvPath) hill = parse("M200,300 Q400,50 600,300 z");
  SpvBox box = spv_path_bounds(wave);
  assert_near(box.y0, 175, 0.002);
  assert_near(box.y1, 425, 0.002);
  assert_near(exact_area(wave), 0, 1e-9);
  assert_near(exact_area(hill), 2.0 / 3 * 400 * 125, 1e-8);
  assert_reads_as("M200,300 q200-250 400 0t400 0",
                  "M 200 300 C 333.333333333 133.333333333 466.666666667 133.333333333 600 300 "
                  "C 733.333333333 466.666666667 866.666666667 466.666666667 1000 300");
  /* Without a quadratic before it, T is a line (8.3.7): both handles of the cubic lie on it. */
  assert_reads_as("M0 0 L3 0 T 6 3", "M 0 0 L 3 0 C 3 0 4 1 6 3");
}

/* SVG 1.1, section 8.3.8, example arcs01 (from memory): a pie of three quarters and one of a quarter. */
static void
test_pies(void **state) {
  (void) state;
  g_autoptr(SpvPath) large = parse("M300,200 h-150 a150,150 0 1,0 150,-150 z");
  g_autoptr(SpvPath) small = parse("M275,175 v-150 a150,150 0 0,0 -150,150 z");
  gsize n;
  const SpvPathStep *steps = spv_path_steps(large, &n);
  assert_int_equal(n, 4);
  assert_int_equal(steps[2].op, SPV_PATH_ARC);
  assert_near(steps[2].centre.x, 300, 1e-9);
  assert_near(steps[2].centre.y, 200, 1e-9);
  assert_near(steps[2].radius, 150, 1e-9);
  assert_near(steps[2].sweep, -1.5 * G_PI, 1e-12);
  assert_near(exact_area(large), -0.75 * G_PI * 150 * 150, 1e-6);
  assert_near(exact_area(small), -0.25 * G_PI * 150 * 150, 1e-6);
}

/* SVG 1.1, section 8.3.8, example arcs02 (from memory): the four arcs of two ellipses through two points,
 * which each flag pair picks. With radii 100 and 50 and points 100 apart and 50 down, both ellipses have
 * their middles at a corner of the box of the points, and the arcs take a quarter or three quarters. */
static void
test_the_four_arcs(void **state) {
  (void) state;
  static const struct {
    guint large, sweep;
    double middle_x, middle_y, turn; /* of the whole ellipse */
  } rows[] = {
    { 0, 0, 225, 75, -0.25 }, { 0, 1, 125, 125, 0.25 }, { 1, 0, 125, 125, -0.75 }, { 1, 1, 225, 75, 0.75 }
  };
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autofree char *text = g_strdup_printf("M 125,75 a100,50 0 %u,%u 100,50", rows[i].large, rows[i].sweep);
    g_autoptr(SpvPath) path = parse(text);
    gsize n;
    const SpvPathStep *steps = spv_path_steps(path, &n);
    double swept = 0;
    SpvPoint here = steps[0].to;
    assert_near(steps[n - 1].to.x, 225, 1e-9);
    assert_near(steps[n - 1].to.y, 125, 1e-9);
    for (gsize k = 1; k < n; k++) {
      assert_int_equal(steps[k].op, SPV_PATH_CURVE);
      for (double t = 0; t <= 1; t += 1.0 / 64) {
        double u = 1 - t;
        double x = u * u * u * here.x + 3 * u * u * t * steps[k].c1.x + 3 * u * t * t * steps[k].c2.x +
                   t * t * t * steps[k].to.x;
        double y = u * u * u * here.y + 3 * u * u * t * steps[k].c1.y + 3 * u * t * t * steps[k].c2.y +
                   t * t * t * steps[k].to.y;
        /* The curve stays on the ellipse, within 1e-4 of its radius. */
        assert_near(hypot((x - rows[i].middle_x) / 100, (y - rows[i].middle_y) / 50), 1, 1e-4);
      }
      SpvPoint a = { (here.x - rows[i].middle_x) / 100, (here.y - rows[i].middle_y) / 50 };
      SpvPoint b = { (steps[k].to.x - rows[i].middle_x) / 100, (steps[k].to.y - rows[i].middle_y) / 50 };
      swept += atan2(spv_point_cross(a, b), spv_point_dot(a, b));
      here = steps[k].to;
    }
    assert_near(swept, 2 * G_PI * rows[i].turn, 1e-9);
  }
}

/* SVG 1.1, appendix F.6.6 and 8.3.8: radii that don't reach grow, no radius is a line, and an arc to where
 * the pen is is nothing. */
static void
test_arcs_out_of_range(void **state) {
  (void) state;
  g_autoptr(SpvPath) grown = parse("M0 0 A1 1 0 0 1 10 0");
  gsize n;
  const SpvPathStep *steps = spv_path_steps(grown, &n);
  assert_int_equal(steps[1].op, SPV_PATH_ARC);
  assert_near(steps[1].radius, 5, 1e-12);
  assert_near(steps[1].centre.x, 5, 1e-12);
  assert_near(exact_area(grown), 12.5 * G_PI, 1e-9);
  g_autoptr(SpvPath) oval = parse("M0 0 A2 1 0 0 1 40 0z");
  assert_near(exact_area(oval), 0.5 * G_PI * 20 * 10, 0.5 * G_PI * 200 * 1e-4);
  /* A quarter turn swaps the radii, and a whole one changes nothing. */
  g_autoptr(SpvPath) upright = parse("M0 0 A2 1 450 0 1 40 0z");
  assert_near(spv_path_bounds(upright).y0, -40, 1e-2);
  assert_reads_as("M1 2 A0 5 0 0 1 3 4", "M 1 2 L 3 4");
  assert_reads_as("M1 2 a5 0 0 0 1 2 2", "M 1 2 L 3 4");
  assert_reads_as("M1 2 a5 5 0 0 1 0 0", "M 1 2");
  assert_reads_as("M0 0 A1e-320 1e-320 0 0 1 3 4", "M 0 0 L 3 4");
  /* Flags may stand together, and next to the point (8.3.9). */
  assert_reads_as("M0 0a5 5 0 0110 0", "M 0 0 A 5 5 0 0 1 5 -5 A 5 5 0 0 1 10 0");
}

static void
test_what_the_grammar_refuses(void **state) {
  (void) state;
  assert_refused("", SPV_SVG_ERROR_EMPTY, "empty");
  assert_refused(" \n", SPV_SVG_ERROR_EMPTY, "empty");
  assert_refused("L 1 1", SPV_SVG_ERROR_SYNTAX, "Character 1: “L” stands where “M” or “m”");
  assert_refused("M", SPV_SVG_ERROR_SYNTAX, "Character 2: the path ends where a number");
  assert_refused("M 1", SPV_SVG_ERROR_SYNTAX, "Character 4: the path ends where a number");
  assert_refused("M,1 1", SPV_SVG_ERROR_SYNTAX, "Character 2: “,” stands where a number");
  assert_refused("M 1,,1", SPV_SVG_ERROR_SYNTAX, "Character 5: “,”");
  assert_refused("M 1 1,", SPV_SVG_ERROR_SYNTAX, "Character 7: the path ends where a number");
  assert_refused("M 1 1, L 2 2", SPV_SVG_ERROR_SYNTAX, "Character 8: “L” stands where a number");
  assert_refused("M 1 1 L 2 2 3", SPV_SVG_ERROR_SYNTAX, "Character 14");
  assert_refused("M 1 1 Z 2 2", SPV_SVG_ERROR_SYNTAX, "Character 9: “2” stands where a command");
  assert_refused("M 1 1 B 2 2", SPV_SVG_ERROR_SYNTAX, "Character 7: “B” stands where a command");
  assert_refused("M 1 1 ü", SPV_SVG_ERROR_SYNTAX, "Character 7: “ü”");
  assert_refused("M 1 1 üü", SPV_SVG_ERROR_SYNTAX, "Character 7");
  assert_refused("M 1 1 L ü 1", SPV_SVG_ERROR_SYNTAX, "Character 9: “ü” stands where a number");
  assert_refused("M 1 1 \xff", SPV_SVG_ERROR_SYNTAX, "Character 7: an unreadable character");
  assert_refused("M 1e 1", SPV_SVG_ERROR_SYNTAX, "Character 4: “e”");
  assert_refused("M - 1", SPV_SVG_ERROR_SYNTAX, "Character 3: “-”");
  assert_refused("M . 1", SPV_SVG_ERROR_SYNTAX, "Character 3: “.”");
  assert_refused("M 0x1 1", SPV_SVG_ERROR_SYNTAX, "Character 4: “x”");
  assert_refused("M nan 1", SPV_SVG_ERROR_SYNTAX, "Character 3: “n”");
  assert_refused("M inf 1", SPV_SVG_ERROR_SYNTAX, "Character 3: “i”");
  assert_refused("M 0 0 A -1 1 0 0 0 1 1", SPV_SVG_ERROR_SYNTAX, "Character 9: “-” stands where a radius");
  assert_refused("M 0 0 A 1 1 0 2 0 1 1", SPV_SVG_ERROR_SYNTAX,
                 "Character 15: “2” stands where a flag, 0 or 1,");
  assert_refused("M 0 0 A 1 1 0 1.0 0 1 1", SPV_SVG_ERROR_SYNTAX, "Character 16: “.” stands where a flag");
  assert_refused("M 1e999 1", SPV_SVG_ERROR_LIMIT, "Character 3");
  assert_refused("M 1e9 1 l 1 1", SPV_SVG_ERROR_LIMIT, "Character 11");
  assert_refused("M 1e9 1 h 1", SPV_SVG_ERROR_LIMIT, "Character 11");
}

static void
test_too_many_steps(void **state) {
  (void) state;
  GString *text = g_string_new("M0 0");
  for (guint i = 1; i < SPV_SVG_MAX_STEPS; i++)
    g_string_append(text, " 1 1");
  g_autoptr(SpvPath) most = parse(text->str);
  gsize n;
  spv_path_steps(most, &n);
  assert_int_equal(n, SPV_SVG_MAX_STEPS);
  g_string_append(text, " 1 1");
  assert_refused(text->str, SPV_SVG_ERROR_LIMIT, "100000 points");
  g_string_assign(text, "");
  for (guint i = 0; i <= SPV_SVG_MAX_RUNS; i++)
    g_string_append(text, "M0 0h1v1z");
  assert_refused(text->str, SPV_SVG_ERROR_LIMIT, "2000 separate runs");
  g_string_truncate(text, text->len - strlen("M0 0h1v1z"));
  g_autoptr(SpvPath) runs = parse(text->str);
  assert_false(spv_path_is_empty(runs));
  g_string_free(text, TRUE);
}

/* A random path of straight, curved and round steps in a box 40 wide. */
static SpvPath *
random_path(GRand *random) {
  SpvPathBuilder *builder = spv_path_builder_new();
  guint n_runs = (guint) g_rand_int_range(random, 1, 4);
  for (guint run = 0; run < n_runs; run++) {
    spv_path_builder_move(builder, random_point(random, 20));
    guint n = (guint) g_rand_int_range(random, 1, 7);
    for (guint i = 0; i < n; i++)
      switch (g_rand_int_range(random, 0, 3)) {
      case 0:
        spv_path_builder_line(builder, random_point(random, 20));
        break;
      case 1: {
        SpvPoint c1 = random_point(random, 20), c2 = random_point(random, 20);
        spv_path_builder_curve(builder, c1, c2, random_point(random, 20));
        break;
      }
      default: {
        SpvPoint centre = random_point(random, 20);
        double radius = g_rand_double_range(random, 0.1, 20), start = g_rand_double_range(random, -7, 7);
        spv_path_builder_arc(builder, centre, radius, start, g_rand_double_range(random, -2, 2) * G_PI);
        break;
      }
      }
    if (g_rand_boolean(random))
      spv_path_builder_close(builder);
  }
  return spv_path_builder_build(builder);
}

static void
test_what_is_written_reads_back(void **state) {
  (void) state;
  g_autoptr(GRand) random = g_rand_new_with_seed(83);
  for (guint round = 0; round < 300; round++) {
    g_autoptr(SpvPath) path = random_path(random);
    g_autofree char *text = spv_svg_path_write(path, 6);
    g_autoptr(SpvPath) back = parse(text);
    g_autofree char *again = spv_svg_path_write(back, 6);
    g_autoptr(GPtrArray) rings = spv_path_flatten(path, 1e-4), other = spv_path_flatten(back, 1e-4);
    assert_int_equal(rings->len, other->len);
    for (guint i = 0; i < rings->len; i++) {
      const SpvRing *a = g_ptr_array_index(rings, i), *b = g_ptr_array_index(other, i);
      assert_near(spv_ring_length(b), spv_ring_length(a), 0.01);
      for (gsize k = 0; k < a->n_points; k += 7)
        assert_true(distance_to_ring(a->points[k], b) < 3e-4);
    }
    /* And what was read once is written the same for ever. */
    g_autoptr(SpvPath) third = parse(again);
    g_autofree char *last = spv_svg_path_write(third, 6);
    assert_int_equal(strlen(again), strlen(last));
  }
}

static void
test_numbers_as_written(void **state) {
  (void) state;
  g_autoptr(SpvPath) path = parse("M -0.0000001 1234567.125 L 0.5 -0.25 10 100");
  g_autofree char *three = spv_svg_path_write(path, 3), *none = spv_svg_path_write(path, 0);
  assert_string_equal(three, "M 0 1234567.125 L 0.5 -0.25 L 10 100");
  assert_string_equal(none, "M 0 1234567 L 0 0 L 10 100");
  g_autoptr(SpvPath) circle = spv_path_new_circle(spv_point(1, 2), 3);
  g_autofree char *round = spv_svg_path_write(circle, 3);
  assert_string_equal(round, "M 4 2 A 3 3 0 0 1 -0.5 4.598 A 3 3 0 0 1 -0.5 -0.598 A 3 3 0 0 1 4 2 Z");
}

/* Bytes changed, dropped and doubled at random: an error or a path of finite points, never a crash. */
static void
test_broken_paths_never_crash(void **state) {
  (void) state;
  static const char *const seeds[] = { "M100,200 C100,100 250,100 250,200 S400,300 400,200z",
                                       "M200,300 Q400,50 600,300 T1000,300",
                                       "M300,200 h-150 a150,150 0 1,0 150,-150 z m1e3-.5.5L5.e2 7",
                                       "M600,350 l 50,-25 a25,100 -30 0,1 50,-25 V1H2zv3" };
  static const char letters[] = "MmZzLlHhVvCcSsQqTtAa0123456789.-+eE, \n\xc3\xff";
  g_autoptr(GRand) random = g_rand_new_with_seed(7);
  guint taken = 0;
  for (guint round = 0; round < 40000; round++) {
    g_autoptr(GString) text = g_string_new(seeds[round % G_N_ELEMENTS(seeds)]);
    for (gint k = g_rand_int_range(random, 1, 6); k > 0; k--) {
      gssize at = g_rand_int_range(random, 0, (gint32) text->len);
      char letter = letters[g_rand_int_range(random, 0, (gint32) sizeof letters - 1)];
      switch (g_rand_int_range(random, 0, 3)) {
      case 0:
        text->str[at] = letter;
        break;
      case 1:
        g_string_erase(text, at, 1);
        break;
      default:
        g_string_insert_c(text, at, letter);
        break;
      }
      if (text->len == 0)
        g_string_append_c(text, 'M');
    }
    g_autoptr(GError) error = NULL;
    g_autoptr(SpvPath) path = spv_svg_path_parse(text->str, &error);
    assert_true((path == NULL) == (error != NULL));
    if (!path)
      continue;
    taken++;
    gsize n;
    const SpvPathStep *steps = spv_path_steps(path, &n);
    for (gsize i = 0; i < n; i++)
      assert_true(isfinite(steps[i].to.x) && isfinite(steps[i].to.y));
    g_autoptr(SpvPath) wound = spv_path_wind(path, SPV_FILL_NONZERO);
    g_autofree char *written = spv_svg_path_write(wound, 3);
    assert_non_null(written);
  }
  assert_true(taken > 4000);
}

/* The area that TEXT, wound by RULE, fills. */
static double
wound_area(const char *text, SpvFillRule rule) {
  g_autoptr(SpvPath) path = parse(text);
  g_autoptr(SpvPath) wound = spv_path_wind(path, rule);
  g_autoptr(SpvShape) shape = spv_shape_new_from_path(wound);
  return spv_shape_area(shape);
}

/* Squares of 10, 6 and 2 in one another, each run either way; areas by counting. */
static void
test_winding(void **state) {
  (void) state;
  const char *ten[] = { "M0 0H10V10H0z", "M0 0V10H10V0z" };
  const char *six[] = { "M2 2H8V8H2z", "M2 2V8H8V2z" };
  const char *two[] = { "M4 4H6V6H4z", "M4 4V6H6V4z" };
  for (guint i = 0; i < 8; i++) {
    g_autofree char *text = g_strconcat(ten[i & 1], six[i >> 1 & 1], two[i >> 2], NULL);
    int sum10 = i & 1 ? -1 : 1, sum6 = sum10 + (i >> 1 & 1 ? -1 : 1), sum2 = sum6 + (i >> 2 ? -1 : 1);
    double nonzero = (100 - 36) + (sum6 != 0 ? 36 - 4 : 0) + (sum2 != 0 ? 4 : 0);
    assert_near(wound_area(text, SPV_FILL_NONZERO), nonzero, 1e-6);
    assert_near(wound_area(text, SPV_FILL_EVEN_ODD), 100 - 36 + 4, 1e-6);
  }
  /* A run drawn twice is there once. */
  assert_near(wound_area("M0 0H10V10H0zM0 0H10V10H0z", SPV_FILL_NONZERO), 100, 1e-6);
  /* Rings that wind 1, 2, 1 and 0 times: a hole in the innermost only, by the non-zero rule as by ours. */
  g_autoptr(SpvPath) four = parse("M0 0H10V10H0zM1 1H9V9H1zM2 2V8H8V2zM4 4V6H6V4z");
  g_autoptr(SpvPath) settled = spv_path_wind(four, SPV_FILL_NONZERO);
  g_autoptr(SpvShape) frame = spv_shape_new_from_path(settled);
  assert_near(spv_shape_area(frame), 96, 1e-6);
  assert_false(spv_path_contains(settled, spv_point(5, 5)));
  assert_true(spv_path_contains(settled, spv_point(3, 5)) && spv_path_contains(settled, spv_point(0.5, 5)));
  /* A run that is open, one run by itself the wrong way, and runs without area. */
  assert_near(wound_area("M0 0V10H10V0", SPV_FILL_NONZERO), 100, 1e-6);
  assert_near(wound_area("M0 0M5 5L6 6zM0 0V10H10V0z", SPV_FILL_NONZERO), 100, 1e-6);
  /* A hole, and a second square over a corner of it: the hole does not cut the second. */
  assert_near(wound_area("M0 0H10V10H0zM2 2V8H8V2zM7 7H12V12H7z", SPV_FILL_NONZERO), 100 - 36 + 25 - 9 + 1,
              1e-6);
  /* The same in a unit a thousand times smaller, and larger. */
  g_autoptr(SpvPath) tiny = parse("M0 0V.01H.01V0zM.002 .002V.008H.008V.002z");
  g_autoptr(SpvPath) wound = spv_path_wind(tiny, SPV_FILL_EVEN_ODD);
  assert_near(exact_area(wound), 0.0001 - 0.000036, 1e-12);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_triangle01),
    cmocka_unit_test(test_what_may_be_left_out),
    cmocka_unit_test(test_after_a_close),
    cmocka_unit_test(test_cubics),
    cmocka_unit_test(test_quadratics),
    cmocka_unit_test(test_pies),
    cmocka_unit_test(test_the_four_arcs),
    cmocka_unit_test(test_arcs_out_of_range),
    cmocka_unit_test(test_what_the_grammar_refuses),
    cmocka_unit_test(test_too_many_steps),
    cmocka_unit_test(test_what_is_written_reads_back),
    cmocka_unit_test(test_numbers_as_written),
    cmocka_unit_test(test_broken_paths_never_crash),
    cmocka_unit_test(test_winding),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
