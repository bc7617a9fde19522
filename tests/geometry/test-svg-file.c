/* SPDX-License-Identifier: GPL-3.0-or-later */
/* SVG files: their shapes, the transforms around them, and what is no SVG file. */
#include "geometry-test.h"

#include <string.h>

#include "geometry/shape.h"
#include "geometry/svg-path.h"
#include "geometry/wind.h"

/* BODY in an svg element, read. */
static SpvPath *
read_body(const char *body) {
  g_autofree char *text = g_strconcat("<?xml version='1.0'?>\n<!DOCTYPE svg>\n"
                                      "<svg xmlns='http://www.w3.org/2000/svg' width='10'>",
                                      body, "</svg>", NULL);
  g_autoptr(GError) error = NULL;
  g_autofree char *data = spv_svg_file_path(text, strlen(text), &error);
  if (!data)
    fail_msg("%s: %s", body, error->message);
  g_autoptr(SpvPath) path = spv_svg_path_parse(data, &error);
  if (!path)
    fail_msg("%s: %s", data, error->message);
  return spv_path_wind(path, SPV_FILL_NONZERO);
}

/* Checks the area of BODY, and its box. */
static void
assert_fills(const char *body, double area, SpvBox box) {
  g_autoptr(SpvPath) path = read_body(body);
  g_autoptr(SpvShape) shape = spv_shape_new_from_path(path);
  SpvBox got = spv_shape_bounds(shape);
  if (fabs(spv_shape_area(shape) - area) > 0.001 * area)
    fail_msg("%s fills %g, not %g", body, spv_shape_area(shape), area);
  assert_near(got.x0, box.x0, 0.01);
  assert_near(got.y0, box.y0, 0.01);
  assert_near(got.x1, box.x1, 0.01);
  assert_near(got.y1, box.y1, 0.01);
}

static void
assert_refused(const char *text, SpvSvgError code, const char *says) {
  g_autoptr(GError) error = NULL;
  g_autofree char *data = spv_svg_file_path(text, strlen(text), &error);
  if (data)
    fail_msg("“%s” was taken", text);
  assert_true(g_error_matches(error, SPV_SVG_ERROR, (int) code));
  if (strstr(error->message, says) == NULL)
    fail_msg("“%s”: the message is “%s”", text, error->message);
}

static void
test_every_shape(void **state) {
  (void) state;
  assert_fills("<path d='M0 0H10V5H0z'/>", 50, (SpvBox){ 0, 0, 10, 5 });
  assert_fills("<rect x='1' y='2' width='30' height='20'/>", 600, (SpvBox){ 1, 2, 31, 22 });
  /* Four corners less what a circle of radius 5 leaves of a square. */
  assert_fills("<rect width='30' height='20' rx='5'/>", 600 - (4 - G_PI) * 25, (SpvBox){ 0, 0, 30, 20 });
  assert_fills("<rect width='30' height='20' ry='4' rx='5'/>", 600 - (4 - G_PI) * 20,
               (SpvBox){ 0, 0, 30, 20 });
  /* Radii are cut to half a side (SVG 1.1, 9.2): an ellipse. */
  assert_fills("<rect width='30' height='20' rx='99'/>", G_PI * 150, (SpvBox){ 0, 0, 30, 20 });
  assert_fills("<circle cx='3' cy='4' r='10'/>", G_PI * 100, (SpvBox){ -7, -6, 13, 14 });
  assert_fills("<ellipse cx='3' cy='4' rx='10' ry='5'/>", G_PI * 50, (SpvBox){ -7, -1, 13, 9 });
  assert_fills("<polygon points='0,0 10,0 5,10'/>", 50, (SpvBox){ 0, 0, 10, 10 });
  assert_fills("<polyline points='0 0-10 0-5-10'/>", 50, (SpvBox){ -10, -10, 0, 0 });
  assert_fills("<s:g xmlns:s='x'><s:rect width='1in' height='25.4mm'/></s:g>", 96 * 96,
               (SpvBox){ 0, 0, 96, 96 });
}

static void
test_transforms(void **state) {
  (void) state;
  const char *square = "<rect width='10' height='10'/>";
  static const struct {
    const char *transform;
    double area;
    SpvBox box;
  } rows[] = {
    { "translate(5)", 100, { 5, 0, 15, 10 } },
    { "translate(5,-3)", 100, { 5, -3, 15, 7 } },
    { "scale(2)", 400, { 0, 0, 20, 20 } },
    { "scale(2 3)", 600, { 0, 0, 20, 30 } },
    { "scale(-1,1)", 100, { -10, 0, 0, 10 } },
    { "rotate(90)", 100, { -10, 0, 0, 10 } },
    { "rotate(90 10 10)", 100, { 10, 0, 20, 10 } },
    { "skewX(45)", 100, { 0, 0, 20, 10 } },
    { "skewY(45)", 100, { 0, 0, 10, 20 } },
    { "matrix(1 0 0 2 3 4)", 200, { 3, 4, 13, 24 } },
    { " translate ( 5 , 5 ) , scale(2)\n", 400, { 5, 5, 25, 25 } },
    { "scale(2)translate(5,5)", 400, { 10, 10, 30, 30 } },
    { "", 100, { 0, 0, 10, 10 } },
  };
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_autofree char *body = g_strdup_printf("<g transform='%s'>%s</g>", rows[i].transform, square);
    assert_fills(body, rows[i].area, rows[i].box);
  }
  assert_fills(
      "<g transform='translate(10)'><g transform='scale(2)'><rect transform='translate(1)' width='1' "
      "height='1'/></g></g>",
      4, (SpvBox){ 12, 0, 14, 2 });
  /* A sibling has nothing of it. */
  assert_fills("<g transform='translate(99)'/><rect width='1' height='1'/>", 1, (SpvBox){ 0, 0, 1, 1 });
}

static void
test_what_is_never_shown(void **state) {
  (void) state;
  const char *hidden[] = { "defs", "symbol", "clipPath", "mask", "marker", "pattern" };
  for (guint i = 0; i < G_N_ELEMENTS(hidden); i++) {
    g_autofree char *body = g_strdup_printf(
        "<%s transform='none'><g><rect width='99' height='99'/></g><path d='?'/></%s>"
        "<rect width='1' height='1'/>",
        hidden[i], hidden[i]);
    assert_fills(body, 1, (SpvBox){ 0, 0, 1, 1 });
  }
}

static void
test_fill_rules(void **state) {
  (void) state;
  const char *both = "d='M0 0H10V10H0zM2 2H8V8H2z'";
  static const struct {
    const char *format;
    double area;
  } rows[] = { { "<path %s/>", 100 },
               { "<path fill-rule='evenodd' %s/>", 64 },
               { "<path style='fill:#000;fill-rule: evenodd;x:y' %s/>", 64 },
               { "<path style='fill-rule:nonzero' fill-rule='evenodd' %s/>", 100 },
               { "<g fill-rule='evenodd'><path %s/></g>", 64 },
               { "<g fill-rule='evenodd'><path fill-rule='nonzero' %s/></g>", 100 },
               /* What stands in the hole, and runs the other way, does not cancel. */
               { "<path fill-rule='evenodd' %s/><path d='M4 4V6H6V4z'/>", 68 },
               { "<path fill-rule='evenodd' %s/><path d='M4 4H6V6H4z'/>", 68 } };
  for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
    g_auto(GStrv) parts = g_strsplit(rows[i].format, "%s", 2);
    g_autofree char *body = g_strconcat(parts[0], both, parts[1], NULL);
    assert_fills(body, rows[i].area, (SpvBox){ 0, 0, 10, 10 });
  }
}

static void
test_what_is_no_svg(void **state) {
  (void) state;
  assert_refused("", SPV_SVG_ERROR_SYNTAX, "XML");
  assert_refused("M 0 0 L 1 1", SPV_SVG_ERROR_SYNTAX, "XML");
  assert_refused("<html><body/></html>", SPV_SVG_ERROR_SYNTAX, "<html>");
  assert_refused("<svg>", SPV_SVG_ERROR_SYNTAX, "XML");
  assert_refused("<svg></g>", SPV_SVG_ERROR_SYNTAX, "XML");
  assert_refused("<svg>\xff</svg>", SPV_SVG_ERROR_SYNTAX, "XML");
  assert_refused("<svg/>", SPV_SVG_ERROR_EMPTY, "no shape");
  assert_refused("<svg><line x1='1'/><text>a</text><path/><path d=' '/><circle/></svg>", SPV_SVG_ERROR_EMPTY,
                 "no shape");
  assert_refused("<svg>\n<path d='M 1'/></svg>", SPV_SVG_ERROR_SYNTAX, "Line 2: Character 4");
  assert_refused("<svg>\n\n<g transform='turn(3)'/></svg>", SPV_SVG_ERROR_SYNTAX,
                 "Line 3: The transform “turn(3)”");
  const char *bad[] = { "rotate(1 2)",  "scale()",  "scale(1",   "matrix(1 2 3 4 5)",
                        "scale(1 2 3)", "rotate 3", "scale(1,)", "translate(1,2,3,4,5,6,7)" };
  for (guint i = 0; i < G_N_ELEMENTS(bad); i++) {
    g_autofree char *text = g_strdup_printf("<svg><g transform='%s'/></svg>", bad[i]);
    assert_refused(text, SPV_SVG_ERROR_SYNTAX, "can't be read; matrix");
  }
  assert_refused("<svg><rect width='50%' height='1'/></svg>", SPV_SVG_ERROR_SYNTAX, "width=“50%”");
  assert_refused("<svg><polygon points='1 2 3'/></svg>", SPV_SVG_ERROR_SYNTAX, "points of a polygon");
  assert_refused(
      "<svg><g transform='scale(1e9)'><g transform='scale(1e9)'><path d='M0 0H9V9z'/></g></g></svg>",
      SPV_SVG_ERROR_LIMIT, "1,000,000,000");
}

static void
test_nesting_ends(void **state) {
  (void) state;
  g_autoptr(GString) text = g_string_new("<svg>");
  for (guint i = 0; i < 5000; i++)
    g_string_append(text, "<g>");
  assert_refused(text->str, SPV_SVG_ERROR_LIMIT, "nested");
  g_string_assign(text, "<svg>");
  for (guint i = 0; i <= SPV_SVG_MAX_RUNS; i++)
    g_string_append(text, "<rect width='1' height='1'/>");
  g_string_append(text, "</svg>");
  assert_refused(text->str, SPV_SVG_ERROR_LIMIT, "separate runs in all");
}

/* Files written with a byte order mark, and broken at random: an error or data that reads, never a crash. */
static void
test_broken_files_never_crash(void **state) {
  (void) state;
  const char *seed =
      "\xEF\xBB\xBF<svg><g transform='rotate(30 1 2) scale(2)'><path fill-rule='evenodd' d='M0 0H9V9zM1 "
      "1a2 3 4 0 1 5 6z'/><rect width='3mm' height='4' rx='1'/><polygon points='0 0 1 0 1 1'/></g></svg>";
  g_autoptr(GRand) random = g_rand_new_with_seed(11);
  guint taken = 0;
  for (guint round = 0; round < 8000; round++) {
    g_autofree char *text = g_strdup(seed);
    gsize length = strlen(text);
    for (gint k = g_rand_int_range(random, 0, 4); k > 0; k--)
      text[g_rand_int_range(random, 0, (gint32) length)] = (char) g_rand_int_range(random, 1, 256);
    g_autoptr(GError) error = NULL;
    g_autofree char *data = spv_svg_file_path(text, length, &error);
    assert_true((data == NULL) == (error != NULL));
    if (!data)
      continue;
    g_autoptr(SpvPath) path = spv_svg_path_parse(data, &error);
    if (!path)
      fail_msg("%s", error->message);
    taken++;
  }
  assert_true(taken > 2000);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(test_every_shape),
    cmocka_unit_test(test_transforms),
    cmocka_unit_test(test_what_is_never_shown),
    cmocka_unit_test(test_fill_rules),
    cmocka_unit_test(test_what_is_no_svg),
    cmocka_unit_test(test_nesting_ends),
    cmocka_unit_test(test_broken_files_never_crash),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
