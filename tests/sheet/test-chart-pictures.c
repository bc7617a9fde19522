/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sampler against pictures of it that were looked at: every line, division, ordinary, charge and fur.
 * After a wanted change run this with SPV_REGENERATE=1, and look at tests/sheet/chart. */
#include <glib/gstdio.h>
#include <string.h>

#include "pictures.h"
#include "sheet/chart-plan.h"
#include "sheet/chart.h"
#include "sheet/page-frame.h"
#include "sheet/wording.h"
#include "support/near.h"

#define DPI 100
#define PIXELS_PER_MM (DPI / 25.4)

/* What may be other: of one plate, where a tooth more or less must show, and of a page, which is mostly
 * white. */
#define PLATE_SHARE 0.004
#define PAGE_SHARE 0.0015

static cairo_surface_t *
a_picture(int width, int height, guint32 rgb) {
  cairo_surface_t *picture = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create(picture);

  cairo_set_source_rgb(cr, (rgb >> 16 & 0xff) / 255.0, (rgb >> 8 & 0xff) / 255.0, (rgb & 0xff) / 255.0);
  cairo_paint(cr);
  cairo_destroy(cr);
  return picture;
}

static void
fill(cairo_surface_t *picture, double x, double y, double width, double height, double grey) {
  cairo_t *cr = cairo_create(picture);

  cairo_set_source_rgb(cr, grey, grey, grey);
  cairo_rectangle(cr, x, y, width, height);
  cairo_fill(cr);
  cairo_destroy(cr);
}

static void
a_difference_is_the_share_of_other_pixels(void **state) {
  cairo_surface_t *wanted = a_picture(10, 10, 0xffffff), *got = a_picture(10, 10, 0xffffff);

  (void) state;
  assert_near(pictures_difference(got, wanted, pictures_whole(got)), 0, 0);
  fill(got, 2, 3, 4, 2, 0);
  assert_near(pictures_difference(got, wanted, pictures_whole(got)), 0.08, 1e-12);
  assert_near(pictures_difference(got, wanted, (cairo_rectangle_int_t){ 2, 3, 4, 4 }), 0.5, 1e-12);
  assert_near(pictures_difference(got, wanted, (cairo_rectangle_int_t){ 6, 3, 4, 7 }), 0, 0);
  cairo_surface_destroy(got);
  cairo_surface_destroy(wanted);
}

static void
shades_within_the_tolerance_are_the_same(void **state) {
  cairo_surface_t *wanted = a_picture(4, 4, 0x808080), *near = a_picture(4, 4, 0x8080b0),
                  *far = a_picture(4, 4, 0x8080b1);

  (void) state;
  assert_int_equal(0xb0 - 0x80, PICTURES_TOLERANCE);
  assert_near(pictures_difference(near, wanted, pictures_whole(wanted)), 0, 0);
  assert_near(pictures_difference(far, wanted, pictures_whole(wanted)), 1, 0);
  assert_near(pictures_difference(wanted, far, pictures_whole(wanted)), 1, 0);
  cairo_surface_destroy(near);
  cairo_surface_destroy(far);
  cairo_surface_destroy(wanted);
}

static void
pictures_of_other_sizes_differ(void **state) {
  cairo_surface_t *wanted = a_picture(4, 4, 0xffffff), *got = a_picture(4, 5, 0xffffff);

  (void) state;
  assert_near(pictures_difference(got, wanted, pictures_whole(wanted)), 1, 0);
  assert_near(pictures_difference(wanted, wanted, (cairo_rectangle_int_t){ 4, 4, 2, 2 }), 1, 0);
  cairo_surface_destroy(got);
  cairo_surface_destroy(wanted);
}

static void
a_report_shows_got_wanted_and_difference(void **state) {
  cairo_surface_t *wanted = a_picture(8, 8, 0xffffff), *got = a_picture(8, 8, 0xffffff);
  g_autofree char *folder = g_dir_make_tmp("spolvero-test-XXXXXX", NULL);
  g_autoptr(GString) page = g_string_new(NULL);
  g_autofree char *html = NULL;

  (void) state;
  fill(got, 0, 0, 2, 1, 0);
  pictures_report(page, folder, "p", got, wanted, "Oar & key");
  g_autofree char *path = pictures_write_page(page, folder, "Pictures");
  assert_true(g_file_get_contents(path, &html, NULL, NULL));
  assert_non_null(strstr(html, "Oar &amp; key"));
  g_unlink(path);
  for (guint i = 0; i < 3; i++) {
    static const char *const names[] = { "p-got.png", "p-wanted.png", "p-difference.png" };
    g_autofree char *file = g_build_filename(folder, names[i], NULL);
    cairo_surface_t *read = cairo_image_surface_create_from_png(file);
    assert_non_null(strstr(html, names[i]));
    assert_int_equal(cairo_surface_status(read), CAIRO_STATUS_SUCCESS);
    assert_int_equal(pictures_pixel(read, 1, 0) & 0xffffff, i == 0 ? 0 : i == 1 ? 0xffffff : 0xd00000);
    assert_int_equal(pictures_pixel(read, 2, 0) & 0xffffff, 0xffffff);
    cairo_surface_destroy(read);
    g_unlink(file);
  }
  assert_int_equal(g_rmdir(folder), 0);
  cairo_surface_destroy(got);
  cairo_surface_destroy(wanted);
}

typedef struct {
  SpvChartOptions options;
  SpvChart *chart;
  /* Laid out once more, to know where each plate is. */
  SpvSamples *samples;
  SpvChartPlan *plan;
  char *references, *reports; /* folders */
  GString *page, *message;
} Sampler;

static int
set_up(void **state) {
  Sampler *sampler = g_new0(Sampler, 1);
  cairo_t *measuring = spv_measuring_context_new();

  sampler->options = spv_chart_options_preset();
  sampler->chart = spv_chart_new(&sampler->options);
  g_autoptr(SpvPageFrame) frame = spv_page_frame_new(measuring, sampler->options.paper, NULL);
  sampler->samples = spv_samples_new(sampler->options.finest_line);
  sampler->plan = spv_chart_plan_new(measuring, sampler->samples, frame->free);
  sampler->references = g_build_filename(g_getenv("SPV_TEST_SOURCE_DIR"), "tests", "sheet", "chart", NULL);
  sampler->reports = g_build_filename(g_getenv("SPV_TEST_BUILD_DIR"), "tests", "sheet", "chart", NULL);
  sampler->page = g_string_new(NULL);
  sampler->message = g_string_new(NULL);
  cairo_destroy(measuring);
  *state = sampler;
  return 0;
}

static int
tear_down(void **state) {
  Sampler *sampler = *state;

  g_string_free(sampler->page, TRUE);
  g_string_free(sampler->message, TRUE);
  g_free(sampler->references);
  g_free(sampler->reports);
  spv_chart_plan_free(sampler->plan);
  spv_samples_free(sampler->samples);
  spv_chart_free(sampler->chart);
  g_free(sampler);
  return 0;
}

static cairo_surface_t *
draw_page(const Sampler *sampler, guint index) {
  int width = (int) round(sampler->options.paper->width * PIXELS_PER_MM);
  int height = (int) round(sampler->options.paper->height * PIXELS_PER_MM);
  cairo_surface_t *picture = a_picture(width, height, 0xffffff);
  cairo_t *cr = cairo_create(picture);

  cairo_scale(cr, PIXELS_PER_MM, PIXELS_PER_MM);
  spv_chart_draw(sampler->chart, index, cr);
  cairo_destroy(cr);
  return picture;
}

/* The pixels of ITEM's plate, without its words, and of what stands beside it. */
static cairo_rectangle_int_t
plate_pixels(const Sampler *sampler, const SpvChartItem *item) {
  double beside = item->sample->smallest > 0 ? SPV_CHART_BESIDE_GAP + sampler->plan->beside : 0;
  int x = (int) floor(item->box.x0 * PIXELS_PER_MM), y = (int) floor(item->box.y0 * PIXELS_PER_MM);

  return (cairo_rectangle_int_t){ x, y, (int) ceil((SPV_SAMPLE_WIDTH + beside) * PIXELS_PER_MM),
                                  (int) ceil(SPV_SAMPLE_HEIGHT * PIXELS_PER_MM) };
}

/* What is wrong with page INDEX, in words; NULL where nothing is. */
static char *
find_faults(const Sampler *sampler, guint index, cairo_surface_t *got, cairo_surface_t *wanted) {
  g_autoptr(GString) faults = g_string_new(NULL);

  if (wanted == NULL)
    return g_strdup("there is no picture of it");
  if (!pictures_have_one_size(got, wanted))
    return g_strdup("it has another size");
  for (guint i = 0; i < sampler->plan->items->len; i++) {
    const SpvChartItem *item = g_ptr_array_index(sampler->plan->items, i);
    if (item->page != index || item->sample == NULL)
      continue;
    double share = pictures_difference(got, wanted, plate_pixels(sampler, item));
    if (share > PLATE_SHARE)
      g_string_append_printf(faults, "%s%s: %.1f %%", faults->len > 0 ? ", " : "", item->sample->word,
                             share * 100);
  }
  double share = pictures_difference(got, wanted, pictures_whole(wanted));
  if (share > PAGE_SHARE)
    g_string_append_printf(faults, "%sthe page: %.2f %%", faults->len > 0 ? ", " : "", share * 100);
  return faults->len > 0 ? g_strdup(faults->str) : NULL;
}

static void
check_picture(Sampler *sampler, guint index) {
  g_autofree char *name = g_strdup_printf("page-%u", index + 1), *file = g_strconcat(name, ".png", NULL);
  g_autofree char *path = g_build_filename(sampler->references, file, NULL);
  cairo_surface_t *got = draw_page(sampler, index);

  if (g_getenv("SPV_REGENERATE") != NULL)
    assert_true(pictures_write(got, sampler->references, file));
  cairo_surface_t *wanted = cairo_image_surface_create_from_png(path);
  gboolean there = cairo_surface_status(wanted) == CAIRO_STATUS_SUCCESS;
  g_autofree char *faults = find_faults(sampler, index, got, there ? wanted : NULL);
  if (faults != NULL) {
    g_mkdir_with_parents(sampler->reports, 0755);
    g_string_append_printf(sampler->message, "%s differs (%s)\n", name, faults);
    pictures_report(sampler->page, sampler->reports, name, got, there ? wanted : NULL, faults);
  }
  cairo_surface_destroy(wanted);
  cairo_surface_destroy(got);
}

/* Pictures of pages that are no more: taken away where they are taken anew, otherwise a fault. */
static void
check_leftover(Sampler *sampler) {
  g_autofree char *file = g_strdup_printf("page-%u.png", spv_chart_count(sampler->chart) + 1);
  g_autofree char *path = g_build_filename(sampler->references, file, NULL);

  if (!g_file_test(path, G_FILE_TEST_EXISTS))
    return;
  if (g_getenv("SPV_REGENERATE") != NULL)
    g_unlink(path);
  else
    g_string_append_printf(sampler->message, "there is no page for %s\n", file);
}

static void
the_sampler_looks_as_it_did(void **state) {
  Sampler *sampler = *state;

  assert_int_equal(sampler->plan->n_pages, spv_chart_count(sampler->chart));
  for (guint i = 0; i < spv_chart_count(sampler->chart); i++)
    check_picture(sampler, i);
  check_leftover(sampler);
  if (sampler->message->len == 0)
    return;
  g_autofree char *path = sampler->page->len > 0
                              ? pictures_write_page(sampler->page, sampler->reports, "The sampler")
                              : NULL;
  fail_msg("%sgot, wanted and difference: %s; where the change is wanted, run with SPV_REGENERATE=1",
           sampler->message->str, path != NULL ? path : "not written");
}

/* A broken picture must not pass: each plate in turn, with a 2 mm square of it painted over. */
static void
a_spoilt_plate_is_found_by_name(void **state) {
  Sampler *sampler = *state;
  guint n = 0;

  for (guint page = 0; page < sampler->plan->n_pages; page++) {
    cairo_surface_t *wanted = draw_page(sampler, page);
    for (guint i = 0; i < sampler->plan->items->len; i++) {
      const SpvChartItem *item = g_ptr_array_index(sampler->plan->items, i);
      if (item->page != page || item->sample == NULL)
        continue;
      cairo_surface_t *got = draw_page(sampler, page);
      fill(got, (item->box.x0 + 3) * PIXELS_PER_MM, (item->box.y0 + 3) * PIXELS_PER_MM, 2 * PIXELS_PER_MM,
           2 * PIXELS_PER_MM, 0.5);
      g_autofree char *faults = find_faults(sampler, page, got, wanted);
      g_autofree char *start = g_strdup_printf("%s: ", item->sample->word);
      assert_non_null(faults);
      assert_true(g_str_has_prefix(faults, start));
      cairo_surface_destroy(got);
      i += 10; /* some of each page: drawing one takes a while */
      n++;
    }
    cairo_surface_destroy(wanted);
  }
  assert_true(n >= 8);
}

int
main(void) {
  const struct CMUnitTest tests[] = {
    cmocka_unit_test(a_difference_is_the_share_of_other_pixels),
    cmocka_unit_test(shades_within_the_tolerance_are_the_same),
    cmocka_unit_test(pictures_of_other_sizes_differ),
    cmocka_unit_test(a_report_shows_got_wanted_and_difference),
    cmocka_unit_test_setup_teardown(the_sampler_looks_as_it_did, set_up, tear_down),
    cmocka_unit_test_setup_teardown(a_spoilt_plate_is_found_by_name, set_up, tear_down),
  };

  return cmocka_run_group_tests(tests, NULL, NULL);
}
