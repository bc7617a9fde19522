/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sampler, drawn as it is laid on pages. */
#include "config.h"

#include "sheet/chart.h"

#include <glib/gi18n-lib.h>

#include "draw/draw.h"
#include "heraldry/figure.h"
#include "sheet/chart-plan.h"
#include "sheet/page-frame.h"
#include "sheet/wording.h"

/* Between a heading and its note. */
#define NOTE_AFTER 3.0

struct _SpvChart {
  SpvSamples *samples;
  const SpvPaper *paper;
  SpvDrawMode mode;
  SpvPageFrame *frame;
  SpvChartPlan *plan;
  GPtrArray *compositions; /* SpvComposition, one a panel */
};

SpvChartOptions
spv_chart_options_preset(void) {
  SpvChartOptions options = { .paper = spv_paper_from_key("a4"), .finest_line = SPV_FINEST_LINE_PRESET };

  return options;
}

static void
unref_composition(gpointer composition) {
  spv_composition_unref(composition);
}

SpvChart *
spv_chart_new(const SpvChartOptions *options) {
  SpvChart *chart = g_new0(SpvChart, 1);
  cairo_t *measuring = spv_measuring_context_new();

  chart->samples = spv_samples_new(options->finest_line);
  chart->paper = options->paper;
  chart->mode = options->hatch ? SPV_DRAW_HATCH : SPV_DRAW_COLOUR;
  chart->frame = spv_page_frame_new(measuring, options->paper, NULL);
  chart->plan = spv_chart_plan_new(measuring, chart->samples, chart->frame->free);
  chart->compositions = g_ptr_array_new_with_free_func(unref_composition);
  for (guint i = 0; i < chart->samples->scheme->n_panels; i++)
    g_ptr_array_add(chart->compositions, spv_compose(chart->samples->scheme, i));
  cairo_destroy(measuring);
  return chart;
}

void
spv_chart_free(SpvChart *chart) {
  g_ptr_array_unref(chart->compositions);
  spv_chart_plan_free(chart->plan);
  spv_page_frame_free(chart->frame);
  spv_samples_free(chart->samples);
  g_free(chart);
}

guint
spv_chart_count(const SpvChart *chart) {
  return chart->plan->n_pages;
}

const SpvScheme *
spv_chart_scheme(const SpvChart *chart) {
  return chart->samples->scheme;
}

/* The charge of SAMPLE at the smallest size that the line allows, its foot level with the plate's. */
static void
draw_smallest(const SpvChart *chart, const SpvSample *sample, SpvPoint at, cairo_t *cr) {
  const SpvLayer *layer = chart->samples->scheme->panels[sample->panel]->layers[1];
  g_autoptr(SpvPath) figure = spv_figure_path(&layer->pattern);
  SpvPoint middle = { at.x + SPV_SAMPLE_WIDTH + SPV_CHART_BESIDE_GAP + chart->plan->beside / 2,
                      at.y + SPV_SAMPLE_HEIGHT - spv_path_bounds(figure).y1 * sample->smallest };
  g_autoptr(SpvPath) placed = spv_path_transform(figure, spv_transform_place(sample->smallest, 0, middle));

  spv_set_rgb(cr, spv_ink);
  spv_draw_add_path(cr, placed);
  cairo_fill(cr);
}

static void
draw_words(const SpvChartItem *item, cairo_t *cr) {
  double x = item->box.x0, y = item->box.y0 + SPV_SAMPLE_HEIGHT + SPV_CHART_WORD_BELOW;

  spv_set_rgb(cr, spv_ink);
  for (guint i = 0; item->lines[i] != NULL; i++, y += SPV_LINE_PITCH)
    spv_draw_words(cr, item->lines[i], x, y, SPV_WORDS_BODY, 0, FALSE, 1);
  if (item->sample->smallest <= 0)
    return;
  /* Upwards: what is said must hold. */
  g_autofree char *size = spv_measure_words(ceil(item->sample->smallest * 100 - 1e-6) / 100);
  /* TRANSLATORS: the smallest size of a charge: "from 2.1 mm". */
  g_autofree char *from = g_strdup_printf(_("from %s\u2009mm"), size);
  spv_set_rgb(cr, spv_grey);
  spv_draw_words(cr, from, x, y, SPV_WORDS_BODY, 0, FALSE, 1);
}

static void
draw_sample(const SpvChart *chart, const SpvChartItem *item, cairo_t *cr) {
  const SpvSample *sample = item->sample;
  const SpvComposition *composition = g_ptr_array_index(chart->compositions, sample->panel);

  cairo_save(cr);
  cairo_translate(cr, item->box.x0 + SPV_SAMPLE_WIDTH / 2, item->box.y0);
  spv_draw_panel(cr, composition, chart->mode, 1);
  spv_set_rgb(cr, spv_ink);
  spv_draw_outline(cr, composition->outline, SPV_LINE_INK, 1);
  cairo_restore(cr);
  if (sample->smallest > 0 && sample->smallest <= SPV_CHART_BESIDE_MOST)
    draw_smallest(chart, sample, spv_point(item->box.x0, item->box.y0), cr);
  draw_words(item, cr);
}

static void
draw_heading(const SpvChartItem *item, cairo_t *cr) {
  const char *heading = spv_samples_heading(item->group), *note = spv_samples_note(item->group);
  /* TRANSLATORS: a heading that was begun on the page before. */
  g_autofree char *again = g_strdup_printf(_("%s, continued"), heading);
  double x = item->box.x0, y = item->box.y0 + SPV_CHART_HEADING_BASELINE;

  spv_set_rgb(cr, spv_ink);
  x += spv_draw_words(cr, item->continued ? again : heading, x, y, SPV_WORDS_CARD_TITLE, 0, TRUE, 1);
  if (note == NULL)
    return;
  spv_set_rgb(cr, spv_grey);
  spv_draw_words(cr, note, x + NOTE_AFTER, y, SPV_WORDS_BODY, 0, FALSE, 1);
}

/* The tinctures that the plates of PAGE show. */
static gboolean *
shown_on(const SpvChart *chart, guint page) {
  const SpvScheme *scheme = chart->samples->scheme;
  gboolean *shown = g_new0(gboolean, scheme->n_tinctures);

  for (guint i = 0; i < chart->plan->items->len; i++) {
    const SpvChartItem *item = g_ptr_array_index(chart->plan->items, i);
    if (item->page != page || item->sample == NULL)
      continue;
    const SpvComposition *composition = g_ptr_array_index(chart->compositions, item->sample->panel);
    for (guint k = 0; k < composition->shapes->len; k++)
      shown[((const SpvLaidShape *) g_ptr_array_index(composition->shapes, k))->tincture] = TRUE;
  }
  return shown;
}

/* "Ordinaries; Borders": the headings on PAGE. */
static char *
headings_on(const SpvChart *chart, guint page) {
  GString *words = g_string_new(NULL);
  int last = -1;

  for (guint i = 0; i < chart->plan->items->len; i++) {
    const SpvChartItem *item = g_ptr_array_index(chart->plan->items, i);
    if (item->page != page || (int) item->group == last)
      continue;
    last = (int) item->group;
    g_string_append_printf(words, "%s%s", words->len > 0 ? "; " : "", spv_samples_heading(item->group));
  }
  return g_string_free(words, FALSE);
}

static void
draw_frame(const SpvChart *chart, guint page, cairo_t *cr) {
  g_autofree gboolean *shown = shown_on(chart, page);
  g_autofree char *headings = headings_on(chart, page);
  g_autofree char *line = spv_measure_words(chart->samples->scheme->finest_line);
  g_autofree char *finest = g_strdup_printf(_("%s\u2009mm"), line);
  SpvFrameWords words = {
    .title = { _("Title"), chart->samples->scheme->title },
    .contents = { _("On this sheet"), headings },
    .whole = { _("Finest line"), finest },
    .number = page + 1,
    .count = chart->plan->n_pages,
    .scheme = chart->samples->scheme,
    .shown = shown,
    .mode = chart->mode,
    .letterless = TRUE,
  };
  spv_page_frame_draw(cr, chart->frame, &words);
}

void
spv_chart_draw(const SpvChart *chart, guint index, cairo_t *cr) {
  SpvBox clip;

  cairo_save(cr);
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_rectangle(cr, 0, 0, chart->paper->width, chart->paper->height);
  cairo_fill(cr);
  draw_frame(chart, index, cr);
  cairo_clip_extents(cr, &clip.x0, &clip.y0, &clip.x1, &clip.y1);
  for (guint i = 0; i < chart->plan->items->len; i++) {
    const SpvChartItem *item = g_ptr_array_index(chart->plan->items, i);
    if (item->page != index || !spv_box_overlaps(clip, spv_box_grow(item->box, 1)))
      continue;
    if (item->sample != NULL)
      draw_sample(chart, item, cr);
    else
      draw_heading(item, cr);
  }
  cairo_restore(cr);
}

static void
draw_page(gconstpointer chart, guint index, cairo_t *cr) {
  spv_chart_draw(chart, index, cr);
}

GPtrArray *
spv_chart_export(const SpvChart *chart, const char *path, int dpi, GCancellable *cancellable,
                 void (*progress)(double fraction, gpointer data), gpointer data, GError **error) {
  SpvDocument document = { chart->paper, _("Sampler"), chart->plan->n_pages, draw_page, chart };
  g_autofree char *folder = g_path_get_dirname(path);
  g_autofree char *name = g_path_get_basename(path);
  char *suffix = strrchr(name, '.');
  SpvFormat format;

  if (suffix == NULL || suffix == name || !spv_format_from_key(suffix + 1, &format)) {
    g_set_error(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_OPTION,
                _("“%s” doesn't say what to write; let it end in .png, .pdf or .svg"), name);
    return NULL;
  }
  *suffix = '\0';
  return spv_document_export(&document, folder, name, format, dpi, cancellable, progress, data, error);
}
