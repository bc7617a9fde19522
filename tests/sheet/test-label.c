/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The labels of an enlargement: every tincture has one, inside a piece of its own or led to it, clear of all
 * marks; and the word for the datum is clear of the numbers there. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "coast.h"
#include "draw/marks-private.h"
#include "sheet/figure.h"
#include "sheet/label.h"
#include "sheet/wording.h"

static const double tried[] = { 2, 5, 8, 12, 20 };

/* Does something with each panel of the wardens at each of some factors. */
static void
for_each_figure(void (*check)(cairo_t *cr, const SpvSubject *subject, double factor)) {
  g_autoptr(SpvScheme) scheme = coast_wardens();
  cairo_t *cr = spv_measuring_context_new();

  for (guint i = 0; i < scheme->n_panels; i++) {
    g_autoptr(SpvSubject) subject = spv_subject_new(cr, scheme, i, 80, NULL, NULL);
    for (gsize j = 0; j < G_N_ELEMENTS(tried); j++)
      check(cr, subject, tried[j]);
  }
  cairo_destroy(cr);
}

/* The region whose tincture LABEL names, by its name or its letter. */
static const SpvRegion *
region_of(const SpvSubject *subject, const SpvLabel *label) {
  const SpvScheme *scheme = subject->composition->scheme;

  for (guint i = 0; i < subject->partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(subject->partition->regions, i);
    if (region->tincture < 0)
      continue;
    g_autofree char *letter = spv_tincture_letter((guint) region->tincture);
    if (strcmp(label->words, letter) == 0 ||
        strcmp(label->words, scheme->tinctures[region->tincture].name) == 0)
      return region;
  }
  return NULL;
}

static void
check_each_has_one(cairo_t *cr, const SpvSubject *subject, double factor) {
  g_autoptr(GArray) labels = spv_labels_new(cr, subject, factor);

  for (guint i = 0; i < subject->partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(subject->partition->regions, i);
    gboolean found = region->tincture < 0;
    for (guint j = 0; j < labels->len && !found; j++)
      found = region_of(subject, &g_array_index(labels, SpvLabel, j)) == region;
    if (!found)
      fail_msg("%s, × %g: tincture %d has no label", subject->title, factor, region->tincture);
  }
}

/* On a figure that is large enough for the marks themselves. */
static void
each_tincture_has_a_label(void **state) {
  g_autoptr(SpvScheme) scheme = coast_wardens();
  cairo_t *cr = spv_measuring_context_new();

  (void) state;
  for (guint i = 0; i < scheme->n_panels; i++) {
    g_autoptr(SpvSubject) subject = spv_subject_new(cr, scheme, i, 80, NULL, NULL);
    double size = MAX(spv_box_width(subject->bounds), spv_box_height(subject->bounds));
    check_each_has_one(cr, subject, 60 / size);
  }
  cairo_destroy(cr);
}

static void
check_places(cairo_t *cr, const SpvSubject *subject, double factor) {
  g_autoptr(GArray) labels = spv_labels_new(cr, subject, factor);

  for (guint i = 0; i < labels->len; i++) {
    const SpvLabel *label = &g_array_index(labels, SpvLabel, i);
    gboolean led = !isnan(label->lead.x);
    const SpvRegion *region = region_of(subject, label);
    assert_non_null(region);
    if (!spv_shape_contains(region->shape, spv_point_scale(led ? label->lead : label->at, 1 / factor)))
      fail_msg("%s, × %g: \"%s\" is not where it says", subject->title, factor, label->words);
    if (led)
      assert_true(label->at.x > subject->bounds.x1 * factor);
  }
}

static void
a_label_is_in_its_tincture_or_led_to_it(void **state) {
  (void) state;
  for_each_figure(check_places);
}

static SpvBox
words_box(cairo_t *cr, const SpvLabel *label) {
  double half = spv_words_width(cr, label->words, SPV_WORDS_BODY, FALSE, 1) / 2;

  return (SpvBox){ label->at.x - half, label->at.y - SPV_WORDS_BODY / 2, label->at.x + half,
                   label->at.y + SPV_WORDS_BODY / 2 };
}

/* The numbers of the guide, in mm on paper from the datum. */
static GArray *
number_boxes(cairo_t *cr, const SpvSubject *subject, double factor) {
  double digit = spv_words_width(cr, "0", SPV_NUMBER_SIZE, TRUE, factor);
  g_autofree double *radii = spv_mark_radii(subject->guide, -1, factor);
  g_autoptr(GArray) numbers = spv_mark_numbers(subject->guide, -1, radii, digit, factor);
  GArray *boxes = g_array_new(FALSE, FALSE, sizeof(SpvBox));

  for (guint i = 0; i < numbers->len; i++) {
    SpvBox box = g_array_index(numbers, SpvPlacedNumber, i).box;
    box = (SpvBox){ box.x0 * factor, box.y0 * factor, box.x1 * factor, box.y1 * factor };
    g_array_append_val(boxes, box);
  }
  return boxes;
}

static void
check_clear(cairo_t *cr, const SpvSubject *subject, double factor) {
  g_autoptr(GArray) labels = spv_labels_new(cr, subject, factor);
  g_autoptr(GArray) numbers = number_boxes(cr, subject, factor);

  for (guint i = 0; i < labels->len; i++) {
    SpvBox box = words_box(cr, &g_array_index(labels, SpvLabel, i));
    for (guint j = 0; j < numbers->len; j++)
      assert_false(spv_box_overlaps(box, g_array_index(numbers, SpvBox, j)));
    for (guint j = i + 1; j < labels->len; j++)
      assert_false(spv_box_overlaps(box, words_box(cr, &g_array_index(labels, SpvLabel, j))));
    for (guint j = 0; j < subject->guide->dots->len; j++) {
      SpvPoint dot = spv_point_scale(g_array_index(subject->guide->dots, SpvDot, j).at, factor);
      assert_false(spv_box_overlaps(box, (SpvBox){ dot.x, dot.y, dot.x, dot.y }));
    }
  }
}

static void
labels_keep_clear_of_marks_and_of_each_other(void **state) {
  (void) state;
  for_each_figure(check_clear);
}

static void
check_datum(cairo_t *cr, const SpvSubject *subject, double factor) {
  g_autoptr(GArray) numbers = number_boxes(cr, subject, factor);
  SpvBox word = spv_figure_datum_words(cr, subject, factor);

  for (guint i = 0; i < numbers->len; i++)
    if (spv_box_overlaps(spv_box_grow(word, 0.8), g_array_index(numbers, SpvBox, i)))
      fail_msg("%s, × %g: a number runs into the word for the datum", subject->title, factor);
}

static void
no_number_runs_into_the_datum(void **state) {
  (void) state;
  for_each_figure(check_datum);
}

/* By the letters themselves: I, O and Q look like figures. */
static void
letters_are_told_apart(void **state) {
  g_autoptr(GHashTable) seen = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);

  (void) state;
  for (guint i = 0; i < 100; i++) {
    char *letter = spv_tincture_letter(i);
    assert_null(strpbrk(letter, "IOQ"));
    assert_true(g_hash_table_add(seen, letter));
  }
  assert_true(g_hash_table_contains(seen, "A"));
  assert_true(g_hash_table_contains(seen, "A1"));
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(each_tincture_has_a_label),
    cmocka_unit_test(a_label_is_in_its_tincture_or_led_to_it),
    cmocka_unit_test(labels_keep_clear_of_marks_and_of_each_other),
    cmocka_unit_test(no_number_runs_into_the_datum),
    cmocka_unit_test(letters_are_told_apart),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
