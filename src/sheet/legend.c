/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The legend: which tincture a colour or a hatch stands for. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "sheet/frame-private.h"
#include "sheet/wording.h"

#define HEADING_HEIGHT 5.0
#define ROW_HEIGHT 5.6
#define SWATCH_WIDTH 6.4
#define SWATCH_HEIGHT 4.0
#define COLUMN_GAP 3.0

static void
draw_swatch(cairo_t *cr, const SpvTincture *tincture, SpvDrawMode mode, double x, double y) {
  cairo_save(cr);
  cairo_translate(cr, x, y);
  cairo_rectangle(cr, 0, 0, SWATCH_WIDTH, SWATCH_HEIGHT);
  if (mode == SPV_DRAW_HATCH) {
    spv_draw_hatch(cr, tincture->hatch, 1);
  } else {
    spv_set_rgb(cr, tincture->colour);
    cairo_fill(cr);
  }
  cairo_rectangle(cr, 0, 0, SWATCH_WIDTH, SWATCH_HEIGHT);
  cairo_set_line_width(cr, SPV_LINE_FINE);
  spv_set_rgb(cr, spv_ink);
  cairo_stroke(cr);
  cairo_restore(cr);
}

/* "deep sea green (vert)": the name, and the id that the file and the layers use. */
static char *
tincture_words(const SpvTincture *tincture) {
  if (g_ascii_strcasecmp(tincture->name, tincture->id) == 0 || tincture->name[0] == '\0')
    return spv_words_capitalise(tincture->id);

  g_autofree char *name = spv_words_capitalise(tincture->name);
  return g_strdup_printf("%s (%s)", name, tincture->id);
}

static guint
count_shown(const SpvFrameWords *words) {
  guint n = 0;

  for (guint i = 0; i < words->scheme->n_tinctures; i++)
    n += words->shown[i] ? 1 : 0;
  return n;
}

static void
draw_entry(cairo_t *cr, const SpvFrameWords *words, guint tincture, double x, double y, double width) {
  g_autofree char *name = tincture_words(&words->scheme->tinctures[tincture]);
  double room = width - SWATCH_WIDTH - 2;
  g_autofree char *shown = spv_words_shorten(cr, name, SPV_WORDS_BODY, FALSE, room);

  draw_swatch(cr, &words->scheme->tinctures[tincture], words->mode, x, y);
  spv_set_rgb(cr, spv_ink);
  spv_draw_words(cr, shown, x + SWATCH_WIDTH + 2, y + SWATCH_HEIGHT / 2 + SPV_WORDS_BODY / 2, SPV_WORDS_BODY,
                 0, FALSE, 1);
}

/* One column while the names fit below each other: they may then be long. */
void
spv_legend_draw(cairo_t *cr, SpvBox box, const SpvFrameWords *words) {
  guint n = count_shown(words);
  guint rows = (guint) floor((spv_box_height(box) - HEADING_HEIGHT) / ROW_HEIGHT);
  guint columns = n > rows ? 2 : 1;
  double width = (spv_box_width(box) - (columns - 1) * COLUMN_GAP) / columns;
  guint room = n > columns * rows ? columns * rows - 1 : n;
  guint drawn = 0;

  if (n == 0)
    return;
  spv_set_rgb(cr, spv_ink);
  spv_draw_words(cr, words->mode == SPV_DRAW_HATCH ? _("Tinctures, hatched") : _("Tinctures"), box.x0,
                 box.y0 + 3, SPV_WORDS_BODY, 0, TRUE, 1);
  for (guint i = 0; i < words->scheme->n_tinctures && drawn < room; i++) {
    if (!words->shown[i])
      continue;
    draw_entry(cr, words, i, box.x0 + (drawn / rows) * (width + COLUMN_GAP),
               box.y0 + HEADING_HEIGHT + (drawn % rows) * ROW_HEIGHT, width);
    drawn++;
  }
  if (drawn == n)
    return;
  g_autofree char *more = g_strdup_printf(_("and %u more, named in place"), n - drawn);
  spv_set_rgb(cr, spv_grey);
  spv_draw_words(cr, more, box.x0 + (drawn / rows) * (width + COLUMN_GAP),
                 box.y0 + HEADING_HEIGHT + (drawn % rows) * ROW_HEIGHT + 3, SPV_WORDS_BODY, 0, FALSE, 1);
}
