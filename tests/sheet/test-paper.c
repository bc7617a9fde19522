/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Papers, and what they come to in pixels, against the published table in tests/reference/paper.csv (ISO
 * 216, ANSI/ASME Y14.1, ISO/IEC 7810). */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include <math.h>

#include "sheet/paper.h"
#include "sheet/png-writer.h"

/* The row of the reference table whose second column is NAME, split. */
static GStrv
reference_row(const char *name) {
  g_autofree char *path = g_build_filename(g_getenv("SPV_TEST_SOURCE_DIR"), "tests", "reference", "paper.csv",
                                           NULL);
  g_autofree char *text = NULL;

  assert_true(g_file_get_contents(path, &text, NULL, NULL));
  g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
  for (gsize i = 0; lines[i] != NULL; i++) {
    g_auto(GStrv) cells = g_strsplit(lines[i], ",", -1);
    if (g_strv_length(cells) > 9 && strcmp(cells[1], name) == 0)
      return g_steal_pointer(&cells);
  }
  fail_msg("the reference table has no row %s", name);
  return NULL;
}

static void
assert_pixels(const char *cell, double mm, int dpi) {
  assert_int_equal(spv_png_pixels(mm, dpi), (int) g_ascii_strtoll(cell, NULL, 10));
}

static void
papers_have_their_published_sizes(void **state) {
  static const char *const names[][2] = { { "a4", "A4" }, { "a5", "A5" }, { "letter", "Letter (A)" } };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS(names); i++) {
    const SpvPaper *paper = spv_paper_from_key(names[i][0]);
    g_auto(GStrv) row = reference_row(names[i][1]);
    assert_non_null(paper);
    assert_true(fabs(paper->width - g_ascii_strtod(row[2], NULL)) < 1e-9);
    assert_true(fabs(paper->height - g_ascii_strtod(row[3], NULL)) < 1e-9);
    assert_pixels(row[6], paper->width, 300);
    assert_pixels(row[7], paper->height, 300);
    assert_pixels(row[8], paper->width, 600);
    assert_pixels(row[9], paper->height, 600);
  }
}

static void
the_card_has_its_published_size(void **state) {
  g_auto(GStrv) row = reference_row("ID-1");

  (void) state;
  assert_true(fabs(SPV_CARD_WIDTH - g_ascii_strtod(row[2], NULL)) < 1e-9);
  assert_true(fabs(SPV_CARD_HEIGHT - g_ascii_strtod(row[3], NULL)) < 1e-9);
  assert_pixels(row[8], SPV_CARD_WIDTH, 600);
  assert_pixels(row[9], SPV_CARD_HEIGHT, 600);
}

static void
every_paper_is_found_by_its_key_and_nothing_else_is(void **state) {
  guint n = 0;
  const SpvPaper *papers = spv_papers(&n);

  (void) state;
  assert_int_equal(n, 3);
  for (guint i = 0; i < n; i++)
    assert_ptr_equal(spv_paper_from_key(papers[i].key), &papers[i]);
  assert_null(spv_paper_from_key("A4"));
  assert_null(spv_paper_from_key(""));
  assert_null(spv_paper_from_key(NULL));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(papers_have_their_published_sizes),
    cmocka_unit_test(the_card_has_its_published_size),
    cmocka_unit_test(every_paper_is_found_by_its_key_and_nothing_else_is),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
