/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sampler laid on pages: plates in rows under their headings. */
#include "config.h"

#include "sheet/chart.h"

#include <glib/gi18n-lib.h>

#include "draw/draw.h"
#include "heraldry/figure.h"
#include "sheet/chart-samples.h"
#include "sheet/page-frame.h"
#include "sheet/wording.h"

#define CELL_LEAST 25.0 /* how wide a cell is at least, mm */
#define WORD_BELOW 3.6  /* a word's baseline under its plate */
#define CELL_FOOT 2.6   /* white under the words */
#define HEADING_ABOVE 2.0
#define HEADING_HEIGHT 6.0 /* from the baseline of a heading to the plates under it, and its capitals */
#define SMALLEST_GAP 1.4   /* between a plate and the charge at its smallest */

/* A cell or a heading on a page. */
typedef struct {
  const SpvSample *sample; /* NULL for a heading */
  SpvSampleGroup group;
  guint page;
  SpvPoint at; /* its upper left corner, mm on the page */
} Item;

struct _SpvChart {
  SpvSamples *samples;
  const SpvPaper *paper;
  SpvDrawMode mode;
  SpvPageFrame *frame;
  double cell_width;
  GArray *items; /* Item */
  guint n_pages;
  GPtrArray *compositions; /* SpvComposition, one a panel */
};

SpvChartOptions
spv_chart_options_preset(void) {
  SpvChartOptions options = { .paper = spv_paper_from_key("a4"), .finest_line = SPV_FINEST_LINE_PRESET };

  return options;
}

static double
cell_height(SpvSampleGroup group) {
  double words = group == SPV_SAMPLES_CHARGES ? WORD_BELOW + SPV_LINE_PITCH : WORD_BELOW;

  return SPV_SAMPLE_HEIGHT + words + CELL_FOOT;
}

/* Where the next thing goes. */
typedef struct {
  SpvChart *chart;
  guint column, n_columns;
  double y;
} Flow;

static void
flow_add(Flow *flow, SpvSampleGroup group, const SpvSample *sample, double x, double y) {
  Item item = { sample, group, flow->chart->n_pages - 1, { x, y } };

  g_array_append_val(flow->chart->items, item);
}

static void
flow_new_page(Flow *flow) {
  flow->chart->n_pages++;
  flow->column = 0;
  flow->y = flow->chart->frame->free.y0;
}

/* Starts a row HEIGHT mm high, on a new page where this one has no room. */
static void
flow_new_row(Flow *flow, double height) {
  flow->column = 0;
  if (flow->y + height > flow->chart->frame->free.y1)
    flow_new_page(flow);
}

/* A heading stays with the first row under it. */
static void
flow_heading(Flow *flow, SpvSampleGroup group) {
  double above = flow->y > flow->chart->frame->free.y0 ? HEADING_ABOVE : 0;

  flow_new_row(flow, above + HEADING_HEIGHT + cell_height(group));
  if (flow->y > flow->chart->frame->free.y0)
    flow->y += above;
  flow_add(flow, group, NULL, flow->chart->frame->free.x0, flow->y);
  flow->y += HEADING_HEIGHT;
}

static void
flow_sample(Flow *flow, const SpvSample *sample) {
  const SpvChart *chart = flow->chart;
  double height = cell_height(sample->group);

  if (flow->column == 0)
    flow_new_row(flow, height);
  flow_add(flow, sample->group, sample, chart->frame->free.x0 + flow->column * chart->cell_width, flow->y);
  if (++flow->column < flow->n_columns)
    return;
  flow->column = 0;
  flow->y += height;
}

static void
lay_out(SpvChart *chart) {
  double width = spv_box_width(chart->frame->free);
  Flow flow = { .chart = chart, .n_columns = (guint) floor(width / CELL_LEAST) };

  chart->cell_width = width / flow.n_columns;
  flow_new_page(&flow);
  for (guint i = 0; i < chart->samples->samples->len; i++) {
    const SpvSample *sample = g_ptr_array_index(chart->samples->samples, i);
    const SpvSample *before = i > 0 ? g_ptr_array_index(chart->samples->samples, i - 1) : NULL;

    if (before == NULL || before->group != sample->group) {
      if (flow.column > 0)
        flow.y += cell_height(before->group);
      flow.column = 0;
      flow_heading(&flow, sample->group);
    }
    flow_sample(&flow, sample);
  }
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
  chart->frame = spv_page_frame_new(measuring, options->paper);
  chart->items = g_array_new(FALSE, FALSE, sizeof(Item));
  chart->compositions = g_ptr_array_new_with_free_func(unref_composition);
  for (guint i = 0; i < chart->samples->scheme->n_panels; i++)
    g_ptr_array_add(chart->compositions, spv_compose(chart->samples->scheme, i));
  lay_out(chart);
  cairo_destroy(measuring);
  return chart;
}

void
spv_chart_free(SpvChart *chart) {
  g_ptr_array_unref(chart->compositions);
  g_array_unref(chart->items);
  spv_page_frame_free(chart->frame);
  spv_samples_free(chart->samples);
  g_free(chart);
}

guint
spv_chart_count(const SpvChart *chart) {
  return chart->n_pages;
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
  SpvBox box = spv_path_bounds(figure);
  SpvPoint middle = { at.x + SPV_SAMPLE_WIDTH + SMALLEST_GAP - box.x0 * sample->smallest,
                      at.y + SPV_SAMPLE_HEIGHT - box.y1 * sample->smallest };
  g_autoptr(SpvPath) placed = spv_path_transform(figure, spv_transform_place(sample->smallest, 0, middle));

  spv_set_rgb(cr, spv_ink);
  spv_draw_add_path(cr, placed);
  cairo_fill(cr);
}

static void
draw_words(const SpvChart *chart, const SpvSample *sample, SpvPoint at, cairo_t *cr) {
  double room = chart->cell_width - 1;
  g_autofree char *capital = spv_words_capitalise(sample->word);
  g_autofree char *word = spv_words_shorten(cr, capital, SPV_WORDS_BODY, FALSE, room);
  double y = at.y + SPV_SAMPLE_HEIGHT + WORD_BELOW;

  spv_set_rgb(cr, spv_ink);
  spv_draw_words(cr, word, at.x, y, SPV_WORDS_BODY, 0, FALSE, 1);
  if (sample->smallest <= 0)
    return;
  g_autofree char *size = spv_measure_words(sample->smallest);
  /* TRANSLATORS: the smallest size of a charge: "from 2.1 mm". */
  g_autofree char *from = g_strdup_printf(_("from %s\u2009mm"), size);
  spv_set_rgb(cr, spv_grey);
  spv_draw_words(cr, from, at.x, y + SPV_LINE_PITCH, SPV_WORDS_BODY, 0, FALSE, 1);
}

static void
draw_sample(const SpvChart *chart, const SpvSample *sample, SpvPoint at, cairo_t *cr) {
  const SpvComposition *composition = g_ptr_array_index(chart->compositions, sample->panel);

  cairo_save(cr);
  cairo_translate(cr, at.x + SPV_SAMPLE_WIDTH / 2, at.y);
  spv_draw_panel(cr, composition, chart->mode, 1);
  spv_set_rgb(cr, spv_ink);
  spv_draw_outline(cr, composition->outline, SPV_LINE_INK, 1);
  cairo_restore(cr);
  if (sample->smallest > 0)
    draw_smallest(chart, sample, at, cr);
  draw_words(chart, sample, at, cr);
}

/* The tinctures that the plates of PAGE show. */
static gboolean *
shown_on(const SpvChart *chart, guint page) {
  const SpvScheme *scheme = chart->samples->scheme;
  gboolean *shown = g_new0(gboolean, scheme->n_tinctures);

  for (guint i = 0; i < chart->items->len; i++) {
    const Item *item = &g_array_index(chart->items, Item, i);
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

  for (guint i = 0; i < chart->items->len; i++) {
    const Item *item = &g_array_index(chart->items, Item, i);
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
  g_autofree char *panels = headings_on(chart, page);
  g_autofree char *line = spv_measure_words(chart->samples->scheme->finest_line);
  /* TRANSLATORS: what the sampler's sizes are for: a finest line of so many mm. */
  g_autofree char *harness = g_strdup_printf(_("For a finest line of %s\u2009mm"), line);
  SpvFrameWords words = {
    .title = chart->samples->scheme->title,
    .harness = harness,
    .panels = panels,
    .number = page + 1,
    .count = chart->n_pages,
    .scheme = chart->samples->scheme,
    .shown = shown,
    .mode = chart->mode,
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
  for (guint i = 0; i < chart->items->len; i++) {
    const Item *item = &g_array_index(chart->items, Item, i);
    SpvBox box = { item->at.x, item->at.y, item->at.x + chart->cell_width,
                   item->at.y + cell_height(item->group) };

    if (item->page != index || !spv_box_overlaps(clip, spv_box_grow(box, 1)))
      continue;
    if (item->sample != NULL) {
      draw_sample(chart, item->sample, item->at, cr);
      continue;
    }
    spv_set_rgb(cr, spv_ink);
    spv_draw_words(cr, spv_samples_heading(item->group), item->at.x, item->at.y + SPV_WORDS_CARD_TITLE,
                   SPV_WORDS_CARD_TITLE, 0, TRUE, 1);
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
  SpvDocument document = { chart->paper, _("Sampler"), chart->n_pages, draw_page, chart };
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
