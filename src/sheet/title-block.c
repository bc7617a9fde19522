/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The title block: rows of named fields, of which one takes the height that is left. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "sheet/frame-private.h"
#include "sheet/wording.h"

#define CELL_PADDING 2.0
#define LABEL_HEIGHT 3.4
#define SPLIT 0.62  /* where two fields in a row meet */
#define NARROW 60.0 /* below it two fields in a row would be too short for their words */

/* A field from X on, WIDTH wide, TOP to BOTTOM. */
typedef struct {
  const char *label; /* NULL for none */
  const char *words;
  SpvBox box;
  double size; /* of its words */
  gboolean bold;
} Field;

static guint
lines_in(SpvBox box, const Field *field) {
  double height = spv_box_height(box) - 2 * CELL_PADDING - (field->label != NULL ? LABEL_HEIGHT : 0);

  return (guint) MAX(1,
                     floor((height - field->size) / (field->size * SPV_LINE_PITCH / SPV_WORDS_BODY) + 1.01));
}

static void
draw_field(cairo_t *cr, const Field *field) {
  double pitch = field->size * SPV_LINE_PITCH / SPV_WORDS_BODY;
  double x = field->box.x0 + CELL_PADDING, y = field->box.y0 + CELL_PADDING;
  g_auto(GStrv)
      lines = spv_words_wrap(cr, field->words, field->size, field->bold,
                             spv_box_width(field->box) - 2 * CELL_PADDING, lines_in(field->box, field));

  cairo_set_line_width(cr, SPV_LINE_FINE);
  spv_set_rgb(cr, spv_ink);
  cairo_rectangle(cr, field->box.x0, field->box.y0, spv_box_width(field->box), spv_box_height(field->box));
  cairo_stroke(cr);
  if (field->label == NULL)
    y = field->box.y0 + (spv_box_height(field->box) - field->size - (g_strv_length(lines) - 1) * pitch) / 2;
  if (field->label != NULL) {
    spv_set_rgb(cr, spv_grey);
    spv_draw_words(cr, field->label, x, y + SPV_WORDS_BODY, SPV_WORDS_BODY, 0, FALSE, 1);
    y += LABEL_HEIGHT;
  }
  spv_set_rgb(cr, spv_ink);
  for (guint i = 0; lines[i] != NULL; i++)
    spv_draw_words(cr, lines[i], x, y + field->size + i * pitch, field->size, 0, field->bold, 1);
}

/* The height of a labelled field with LINES lines. */
static double
field_height(guint lines) {
  return 2 * CELL_PADDING + LABEL_HEIGHT + SPV_WORDS_BODY + (lines - 1) * SPV_LINE_PITCH;
}

static void
draw_row(cairo_t *cr, SpvBox block, double *bottom, double height, const char *label, const char *words) {
  Field field = { label, words, { block.x0, *bottom - height, block.x1, *bottom }, SPV_WORDS_BODY, FALSE };

  draw_field(cr, &field);
  *bottom -= height;
}

/* Two fields side by side; WORDS are the label and the words of the left one, then of the right one. */
static void
draw_pair(cairo_t *cr, SpvBox block, double *bottom, const char *const words[4]) {
  double middle = block.x0 + SPLIT * spv_box_width(block), top = *bottom - field_height(1);
  Field left = { words[0], words[1], { block.x0, top, middle, *bottom }, SPV_WORDS_BODY, FALSE };
  Field right = { words[2], words[3], { middle, top, block.x1, *bottom }, SPV_WORDS_BODY, FALSE };

  draw_field(cr, &left);
  draw_field(cr, &right);
  *bottom = top;
}

/* From the bottom up. */
static void
draw_fields(cairo_t *cr, SpvBox block, double *bottom, const SpvFrameWords *words, const char *number) {
  const char *const made_and_number[] = { _("Made with"), "Spolvero", _("Sheet"), number };
  const char *const scale_and_made[] = { _("Scale"), spv_scale_statement(), _("Made with"), "Spolvero" };
  const char *const harness_and_number[] = { _("Harness"), words->harness, _("Sheet"), number };

  if (words->date != NULL)
    draw_row(cr, block, bottom, field_height(1), _("Date"), words->date);
  if (spv_box_width(block) < NARROW) {
    draw_pair(cr, block, bottom, made_and_number);
    draw_row(cr, block, bottom, field_height(2), _("Scale"), spv_scale_statement());
    draw_row(cr, block, bottom, field_height(2), _("Harness"), words->harness);
  } else {
    draw_pair(cr, block, bottom, scale_and_made);
    draw_pair(cr, block, bottom, harness_and_number);
  }
}

void
spv_title_block_draw(cairo_t *cr, SpvBox box, const SpvFrameWords *words) {
  g_autofree char *number = g_strdup_printf(_("%u of %u"), words->number, words->count);
  double bottom = box.y1;

  gboolean narrow = spv_box_width(box) < NARROW;

  draw_fields(cr, box, &bottom, words, number);
  double size = narrow ? SPV_WORDS_CARD_TITLE : SPV_WORDS_SHEET_TITLE;
  double title_height = narrow ? 2 * CELL_PADDING + size * 2.9 : 2 * CELL_PADDING + size + 1.5;
  Field title = { NULL, words->title, { box.x0, box.y0, box.x1, box.y0 + title_height }, size, TRUE };
  draw_field(cr, &title);
  Field panels = {
    _("Panels"), words->panels, { box.x0, box.y0 + title_height, box.x1, bottom }, SPV_WORDS_BODY, FALSE
  };
  draw_field(cr, &panels);
  spv_set_rgb(cr, spv_ink);
  cairo_set_line_width(cr, SPV_LINE_FRAME);
  cairo_rectangle(cr, box.x0, box.y0, spv_box_width(box), spv_box_height(box));
  cairo_stroke(cr);
}
