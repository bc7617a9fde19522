/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The legend: which tincture a colour or a hatch stands for. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "sheet/page-frame-private.h"
#include "sheet/label.h"
#include "sheet/wording.h"

#define HEADING_HEIGHT 4.2
#define ROW_HEIGHT 4.2
#define LETTER_WIDTH 3.4
#define SWATCH_WIDTH 6.0
#define SWATCH_HEIGHT 3.0
#define COLUMN_GAP 3.0
#define COLUMNS_MOST 3u

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

/* "Deep sea green (vert)": the name, and the id that the file and the layers use; the name alone where both
 * are wider than ROOM. */
static char *
tincture_words(cairo_t *cr, const SpvTincture *tincture, double room) {
  g_autofree char *name = spv_words_capitalise(tincture->name[0] != '\0' ? tincture->name : tincture->id);
  g_autofree char *both = g_strdup_printf("%s (%s)", name, tincture->id);

  if (g_ascii_strcasecmp(name, tincture->id) != 0 &&
      spv_words_width(cr, both, SPV_WORDS_BODY, FALSE, 1) <= room)
    return g_steal_pointer(&both);
  return spv_words_shorten(cr, name, SPV_WORDS_BODY, FALSE, room);
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
  double swatch = words->letterless ? x : x + LETTER_WIDTH, name = swatch + SWATCH_WIDTH + 1.6;
  double baseline = y + SWATCH_HEIGHT / 2 + SPV_WORDS_BODY / 2;
  g_autofree char *letter = spv_tincture_letter(tincture);
  g_autofree char *shown = tincture_words(cr, &words->scheme->tinctures[tincture], x + width - name);

  draw_swatch(cr, &words->scheme->tinctures[tincture], words->mode, swatch, y);
  spv_set_rgb(cr, spv_ink);
  if (!words->letterless)
    spv_draw_words(cr, letter, x, baseline, SPV_WORDS_BODY, 0, FALSE, 1);
  spv_draw_words(cr, shown, name, baseline, SPV_WORDS_BODY, 0, FALSE, 1);
}

/* As few columns as can be: the names may then be long. */
void
spv_legend_draw(cairo_t *cr, SpvBox box, const SpvFrameWords *words) {
  guint n = count_shown(words);
  guint rows = (guint) MAX(1, floor((spv_box_height(box) - HEADING_HEIGHT) / ROW_HEIGHT + 0.3));
  guint columns = CLAMP((n + rows - 1) / rows, 1, COLUMNS_MOST);
  double width = (spv_box_width(box) - (columns - 1) * COLUMN_GAP) / columns;
  guint room = n > columns * rows ? columns * rows - 1 : n;
  guint drawn = 0;

  if (n == 0)
    return;
  spv_set_rgb(cr, spv_ink);
  spv_draw_words(cr, words->mode == SPV_DRAW_HATCH ? _("Tinctures, hatched") : _("Tinctures"), box.x0,
                 box.y0 + SPV_WORDS_BODY, SPV_WORDS_BODY, 0, TRUE, 1);
  for (guint i = 0; i < words->scheme->n_tinctures && drawn < room; i++) {
    if (!words->shown[i])
      continue;
    draw_entry(cr, words, i, box.x0 + (drawn / rows) * (width + COLUMN_GAP),
               box.y0 + HEADING_HEIGHT + (drawn % rows) * ROW_HEIGHT, width);
    drawn++;
  }
  if (drawn == n)
    return;
  g_autofree char *more = g_strdup_printf(_("and %u more"), n - drawn);
  spv_set_rgb(cr, spv_grey);
  spv_draw_words(cr, more, box.x0 + (drawn / rows) * (width + COLUMN_GAP),
                 box.y0 + HEADING_HEIGHT + (drawn % rows) * ROW_HEIGHT + 2.5, SPV_WORDS_BODY, 0, FALSE, 1);
}
