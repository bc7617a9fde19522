/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The title block: rows of named fields, one or two in a row. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "sheet/page-frame-private.h"
#include "sheet/wording.h"

#define CELL_PADDING 1.6
#define LABEL_HEIGHT 3.3
#define SPLIT 0.6   /* where two fields in a row meet */
#define NARROW 60.0 /* below it two long fields in a row would be too short for their words */

/* A field: a name for what is in it, and that. */
typedef struct {
  const char *label, *words;
  double size; /* of the words */
  guint lines; /* at most so many */
} Field;

static double
line_pitch(const Field *field) {
  return field->size * SPV_LINE_PITCH / SPV_WORDS_BODY;
}

static double
field_height(const Field *field) {
  return 2 * CELL_PADDING + LABEL_HEIGHT + field->size + (field->lines - 1) * line_pitch(field);
}

static void
draw_field(cairo_t *cr, const Field *field, SpvBox box) {
  gboolean bold = field->size > SPV_WORDS_BODY;
  double x = box.x0 + CELL_PADDING, y = box.y0 + CELL_PADDING;
  double room = spv_box_width(box) - 2 * CELL_PADDING;
  g_auto(GStrv) lines = spv_words_wrap(cr, field->words, field->size, bold, room, field->lines);
  g_autofree char *label = spv_words_shorten(cr, field->label, SPV_WORDS_BODY, FALSE, room);

  cairo_set_line_width(cr, SPV_LINE_FINE);
  spv_set_rgb(cr, spv_ink);
  cairo_rectangle(cr, box.x0, box.y0, spv_box_width(box), spv_box_height(box));
  cairo_stroke(cr);
  spv_set_rgb(cr, spv_grey);
  spv_draw_words(cr, label, x, y + SPV_WORDS_BODY, SPV_WORDS_BODY, 0, FALSE, 1);
  spv_set_rgb(cr, spv_ink);
  for (guint i = 0; lines[i] != NULL; i++)
    spv_draw_words(cr, lines[i], x, y + LABEL_HEIGHT + field->size + i * line_pitch(field), field->size, 0,
                   bold, 1);
}

/* A row of one field, or of two, with its foot at BOTTOM, which moves up. */
static void
draw_row(cairo_t *cr, SpvBox block, double *bottom, const Field *left, const Field *right) {
  double top = *bottom - field_height(left);
  double middle = right != NULL ? block.x0 + SPLIT * spv_box_width(block) : block.x1;

  draw_field(cr, left, (SpvBox){ block.x0, top, middle, *bottom });
  if (right != NULL)
    draw_field(cr, right, (SpvBox){ middle, top, block.x1, *bottom });
  *bottom = top;
}

/* The fields of a block. */
typedef struct {
  Field title, contents, whole, number, scale, last;
} Fields;

static Fields
make_fields(const SpvFrameWords *words, const char *number, gboolean narrow) {
  return (Fields){
    { words->title.label, words->title.words, narrow ? SPV_WORDS_CARD_TITLE : SPV_WORDS_SHEET_TITLE,
      narrow ? 2 : 1 },
    { words->contents.label, words->contents.words, SPV_WORDS_BODY, 2 },
    { words->whole.label, words->whole.words, SPV_WORDS_BODY, 1 },
    { _("Sheet"), number, SPV_WORDS_BODY, 1 },
    { _("Scale"), spv_scale_statement(), SPV_WORDS_BODY, narrow ? 2 : 1 },
    { words->date != NULL ? _("Date") : _("Made with"), words->date != NULL ? words->date : "Spolvero",
      SPV_WORDS_BODY, 1 },
  };
}

/* A date that is wider than ROOM takes a line from the contents. */
static void
make_room_for_date(cairo_t *cr, Fields *fields, double room) {
  if (spv_words_width(cr, fields->last.words, SPV_WORDS_BODY, FALSE, 1) <= room)
    return;
  fields->last.lines = 2;
  fields->contents.lines = 1;
}

double
spv_title_block_height(void) {
  Fields fields = make_fields(&(SpvFrameWords){ 0 }, NULL, FALSE);

  return field_height(&fields.title) + field_height(&fields.contents) + field_height(&fields.whole) +
         field_height(&fields.scale);
}

void
spv_title_block_draw(cairo_t *cr, SpvBox box, const SpvFrameWords *words) {
  g_autofree char *number = g_strdup_printf(_("%u of %u"), words->number, words->count);
  gboolean narrow = spv_box_width(box) < NARROW;
  Fields fields = make_fields(words, number, narrow);
  double bottom = box.y1;

  if (narrow) {
    make_room_for_date(cr, &fields, SPLIT * spv_box_width(box) - 2 * CELL_PADDING);
    draw_row(cr, box, &bottom, &fields.last, &fields.number);
    draw_row(cr, box, &bottom, &fields.scale, NULL);
    draw_row(cr, box, &bottom, &fields.whole, NULL);
  } else {
    draw_row(cr, box, &bottom, &fields.scale, &fields.last);
    draw_row(cr, box, &bottom, &fields.whole, &fields.number);
  }
  draw_row(cr, box, &bottom, &fields.contents, NULL);
  draw_row(cr, box, &bottom, &fields.title, NULL);
  spv_set_rgb(cr, spv_ink);
  cairo_set_line_width(cr, SPV_LINE_FRAME);
  cairo_rectangle(cr, box.x0, bottom, spv_box_width(box), box.y1 - bottom);
  cairo_stroke(cr);
}
