/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sampler: everything of the tables is on it once, nothing overlaps or leaves its page, what it says of
 * the smallest charges is so, and it comes out the same each time. */
#include <glib/gstdio.h>
#include <string.h>

#include "heraldry/arrange.h"
#include "heraldry/figure.h"
#include "heraldry/profile.h"
#include "sheet/chart-plan.h"
#include "sheet/chart.h"
#include "sheet/page-frame.h"
#include "sheet/wording.h"
#include "support/near.h"

static const SpvSample *
sample_at(const SpvSamples *samples, guint index) {
  return g_ptr_array_index(samples->samples, index);
}

/* The layer that SAMPLE is for: over the ground. */
static const SpvLayer *
layer_of(const SpvSamples *samples, const SpvSample *sample) {
  return samples->scheme->panels[sample->panel]->layers[1];
}

/* The value of the choice KEY of LAYER. */
static guint
choice_of(const SpvLayer *layer, const char *key) {
  int index = spv_pattern_measure_index(layer->pattern.kind, key);

  assert_true(index >= 0);
  return (guint) layer->pattern.measures[index].value;
}

static void
every_kind_is_on_it_once(void **state) {
  static const SpvSampleGroup groups[SPV_N_GROUPS] = {
    [SPV_GROUP_DIVISION] = SPV_SAMPLES_DIVISIONS,  [SPV_GROUP_VARIED] = SPV_SAMPLES_VARIED,
    [SPV_GROUP_ORDINARY] = SPV_SAMPLES_ORDINARIES, [SPV_GROUP_BORDER] = SPV_SAMPLES_BORDERS,
    [SPV_GROUP_CHARGE] = SPV_SAMPLES_CHARGES,      [SPV_GROUP_OWN] = SPV_SAMPLES_OWN,
  };
  const SpvSamples *samples = *state;

  for (guint kind = 0; kind < SPV_N_PATTERNS; kind++) {
    const char *label = spv_pattern_info((SpvPatternKind) kind)->label;
    guint n = 0;
    for (guint i = 0; i < samples->samples->len; i++) {
      const SpvSample *sample = sample_at(samples, i);
      if (sample->group != groups[spv_pattern_group((SpvPatternKind) kind)] ||
          strcmp(sample->word, label) != 0)
        continue;
      assert_int_equal(layer_of(samples, sample)->pattern.kind, kind);
      n++;
    }
    if (n != 1)
      fail_msg("%s is on the sampler %u times", label, n);
  }
}

/* Each number below N is the choice KEY of exactly one sample of GROUP, from FIRST on. */
static void
check_choices(const SpvSamples *samples, SpvSampleGroup group, const char *key, guint first, guint n) {
  g_autofree guint *found = g_new0(guint, n);

  for (guint i = 0; i < samples->samples->len; i++) {
    if (sample_at(samples, i)->group != group)
      continue;
    guint choice = choice_of(layer_of(samples, sample_at(samples, i)), key);
    assert_in_range(choice, first, n - 1);
    found[choice]++;
  }
  for (guint i = first; i < n; i++)
    if (found[i] != 1)
      fail_msg("%s %u is on the sampler %u times", key, i, found[i]);
}

static void
every_line_and_arrangement_is_on_it_once(void **state) {
  const SpvSamples *samples = *state;

  check_choices(samples, SPV_SAMPLES_LINES, "line", 0, SPV_N_PROFILES);
  check_choices(samples, SPV_SAMPLES_ARRANGEMENTS, "arrangement", SPV_ARRANGEMENT_ROWS,
                SPV_ARRANGEMENT_SEMY + 1);
}

/* The names, and the tinctures of each: Fox-Davies (1909) ch. VI. */
static void
every_fur_is_on_it(void **state) {
  const SpvSamples *samples = *state;
  guint of_kind[SPV_N_FURS] = { 0 }, n = 0;

  for (guint i = 0; i < samples->samples->len; i++) {
    const SpvSample *sample = sample_at(samples, i);
    if (sample->group != SPV_SAMPLES_FURS)
      continue;
    const char *id = layer_of(samples, sample)->tinctures[0];
    for (guint k = 0; k < samples->scheme->n_tinctures; k++)
      if (strcmp(samples->scheme->tinctures[k].id, id) == 0)
        of_kind[samples->scheme->tinctures[k].fur]++;
    n++;
  }
  assert_int_equal(n, 7);
  assert_int_equal(of_kind[SPV_FUR_NONE], 0);
  for (guint fur = SPV_FUR_ERMINE; fur < SPV_N_FURS; fur++)
    assert_int_equal(of_kind[fur], fur == SPV_FUR_ERMINE ? 4 : 1);
}

static void
what_is_laid_on_or_across_another_layer_stays_so(void **state) {
  const SpvSamples *samples = *state;
  guint on = 0, across = 0, edges = 0;

  for (guint i = 0; i < samples->samples->len; i++) {
    const SpvSample *sample = sample_at(samples, i);
    const SpvPanel *panel = samples->scheme->panels[sample->panel];
    for (guint k = 0; k < panel->n_layers; k++) {
      on += panel->layers[k]->on != NULL ? 1 : 0;
      across += panel->layers[k]->counterchange != NULL ? 1 : 0;
    }
    if (sample->group != SPV_SAMPLES_EDGES)
      continue;
    assert_true(choice_of(layer_of(samples, sample), "line") != SPV_PROFILE_PLAIN);
    edges++;
  }
  assert_int_equal(on, 2);
  assert_int_equal(across, 2);
  assert_int_equal(edges, 7);
}

/* No plate is blank: each shows at least two tinctures, a fur's two, or is a field or a fur. */
static void
every_plate_shows_something(void **state) {
  const SpvSamples *samples = *state;

  for (guint i = 0; i < samples->samples->len; i++) {
    const SpvSample *sample = sample_at(samples, i);
    g_autoptr(SpvComposition) composition = spv_compose(samples->scheme, sample->panel);
    g_autoptr(SpvPartition) partition = spv_partition_new(composition, NULL, NULL);
    guint least = layer_of(samples, sample)->pattern.kind == SPV_PATTERN_FIELD &&
                          sample->group == SPV_SAMPLES_DIVISIONS
                      ? 1
                      : 2;
    if (partition->regions->len < least)
      fail_msg("%s shows %u tinctures", sample->word, partition->regions->len);
  }
}

static void
the_smallest_sizes_are_the_figures_own(void **state) {
  static const double lines[] = { 0.1, 0.25, 0.6 };

  (void) state;
  for (gsize k = 0; k < G_N_ELEMENTS(lines); k++) {
    g_autoptr(SpvSamples) samples = spv_samples_new(lines[k]);
    for (guint i = 0; i < samples->samples->len; i++) {
      const SpvSample *sample = sample_at(samples, i);
      if (sample->group != SPV_SAMPLES_CHARGES) {
        assert_near(sample->smallest, 0, 0);
        continue;
      }
      SpvPattern preset = spv_pattern_preset(layer_of(samples, sample)->pattern.kind);
      assert_near(sample->smallest, spv_figure_smallest(&preset, lines[k]), 0);
      assert_true(sample->smallest >= lines[k]);
    }
  }
}

static gboolean
is_within(SpvBox inner, SpvBox outer) {
  return inner.x0 >= outer.x0 - 1e-6 && inner.y0 >= outer.y0 - 1e-6 && inner.x1 <= outer.x1 + 1e-6 &&
         inner.y1 <= outer.y1 + 1e-6;
}

/* The words of ITEM are whole, and as wide as its box at most. */
static void
check_words(cairo_t *measuring, const SpvChartItem *item) {
  for (guint i = 0; item->lines != NULL && item->lines[i] != NULL; i++) {
    if (strstr(item->lines[i], "\u2026") != NULL)
      fail_msg("%s is cut short", item->lines[i]);
    double width = spv_words_width(measuring, item->lines[i], SPV_WORDS_BODY, FALSE, 1);
    assert_true(width <= spv_box_width(item->box));
  }
}

static void
check_plan(cairo_t *measuring, const SpvChartPlan *plan, SpvBox room, guint n_samples) {
  guint n = 0;

  for (guint i = 0; i < plan->items->len; i++) {
    const SpvChartItem *item = g_ptr_array_index(plan->items, i);
    const SpvChartItem *before = i > 0 ? g_ptr_array_index(plan->items, i - 1) : NULL;
    assert_true(is_within(item->box, room));
    check_words(measuring, item);
    for (guint k = 0; k < i; k++) {
      const SpvChartItem *other = g_ptr_array_index(plan->items, k);
      assert_false(other->page == item->page &&
                   spv_box_overlaps(spv_box_grow(item->box, -1e-6), spv_box_grow(other->box, -1e-6)));
    }
    if (item->sample != NULL) {
      /* Under a heading of its own group on each page. */
      assert_true(before != NULL && before->group == item->group && before->page == item->page);
      n++;
    } else {
      assert_int_equal(item->continued, before != NULL && before->group == item->group);
      assert_true(i + 1 < plan->items->len);
    }
  }
  assert_int_equal(n, n_samples);
}

static void
nothing_overlaps_or_leaves_the_frame_on_any_paper(void **state) {
  static const double lines[] = { SPV_FINEST_LINE_MIN, 0.25, 1, SPV_FINEST_LINE_MAX };
  cairo_t *measuring = spv_measuring_context_new();
  guint n;
  const SpvPaper *papers = spv_papers(&n);

  (void) state;
  for (gsize k = 0; k < G_N_ELEMENTS(lines); k++) {
    g_autoptr(SpvSamples) samples = spv_samples_new(lines[k]);
    for (guint i = 0; i < n; i++) {
      g_autoptr(SpvPageFrame) frame = spv_page_frame_new(measuring, &papers[i], NULL);
      g_autoptr(SpvChartPlan) plan = spv_chart_plan_new(measuring, samples, frame->free);
      check_plan(measuring, plan, frame->free, samples->samples->len);
      assert_true(plan->beside <= SPV_CHART_BESIDE_MOST);
      assert_true(plan->n_pages <= 20);
    }
  }
  cairo_destroy(measuring);
}

/* Writes the sampler into FOLDER as an SVG, and returns the bytes of its pages, one after another. */
static char *
write_sampler(const char *folder, gboolean hatch) {
  SpvChartOptions options = spv_chart_options_preset();
  g_autofree char *path = g_build_filename(folder, "sampler.svg", NULL);
  g_autoptr(GString) all = g_string_new(NULL);
  g_autoptr(GError) error = NULL;

  options.hatch = hatch;
  g_autoptr(SpvChart) chart = spv_chart_new(&options);
  g_autoptr(GPtrArray) paths = spv_chart_export(chart, path, 150, NULL, NULL, NULL, &error);
  assert_non_null(paths);
  assert_int_equal(paths->len, spv_chart_count(chart));
  for (guint i = 0; i < paths->len; i++) {
    g_autofree char *bytes = NULL;
    assert_true(g_file_get_contents(paths->pdata[i], &bytes, NULL, NULL));
    assert_int_equal(g_unlink(paths->pdata[i]), 0);
    g_string_append(all, bytes);
  }
  return g_strdup(all->str);
}

static void
it_comes_out_the_same_each_time(void **state) {
  g_autofree char *folder = g_dir_make_tmp("spolvero-test-XXXXXX", NULL);
  g_autofree char *first = write_sampler(folder, FALSE), *second = write_sampler(folder, FALSE),
                  *hatched = write_sampler(folder, TRUE);

  (void) state;
  assert_string_equal(first, second);
  assert_string_not_equal(first, hatched);
  assert_int_equal(g_rmdir(folder), 0);
}

static int
set_up(void **state) {
  *state = spv_samples_new(0.25);
  return 0;
}

static int
tear_down(void **state) {
  spv_samples_free(*state);
  return 0;
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(every_kind_is_on_it_once),
    cmocka_unit_test(every_line_and_arrangement_is_on_it_once),
    cmocka_unit_test(every_fur_is_on_it),
    cmocka_unit_test(what_is_laid_on_or_across_another_layer_stays_so),
    cmocka_unit_test(every_plate_shows_something),
    cmocka_unit_test(the_smallest_sizes_are_the_figures_own),
    cmocka_unit_test(nothing_overlaps_or_leaves_the_frame_on_any_paper),
    cmocka_unit_test(it_comes_out_the_same_each_time),
  };

  return cmocka_run_group_tests(tests, set_up, tear_down);
}
