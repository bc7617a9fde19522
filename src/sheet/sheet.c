/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sheet.h"

#include <glib/gi18n-lib.h>

#include "sheet/flow.h"
#include "sheet/offsets.h"
#include "sheet/sheet-private.h"
#include "sheet/wording.h"

static gboolean
check_options(const SpvScheme *scheme, const SpvSheetOptions *options, GError **error) {
  if ((options->content & SPV_CONTENT_ALL) == 0) {
    g_set_error_literal(
        error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_OPTION,
        _("Nothing is chosen to go on the sheets; choose templates, enlargements or offsets"));
    return FALSE;
  }
  for (gsize i = 0; options->panels != NULL && options->panels[i] != NULL; i++)
    if (spv_scheme_find_panel(scheme, options->panels[i]) < 0) {
      g_autoptr(GString) ids = g_string_new(NULL);
      for (guint j = 0; j < scheme->n_panels; j++)
        g_string_append_printf(ids, "%s%s", j > 0 ? ", " : "", scheme->panels[j]->id);
      g_set_error(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_PANEL,
                  _("There is no panel \"%s\"; the harness has %s"), options->panels[i], ids->str);
      return FALSE;
    }
  return TRUE;
}

static gboolean
is_chosen(const SpvPanel *panel, const SpvSheetOptions *options) {
  if (options->panels == NULL)
    return spv_panel_has_design(panel);
  return g_strv_contains(options->panels, panel->id);
}

/* The subjects of the chosen panels; NULL, with ERROR set, when there is nothing to print. */
static GPtrArray *
choose_subjects(cairo_t *measuring, const SpvScheme *scheme, const SpvSheetOptions *options, double room,
                GCancellable *cancellable, GError **error) {
  g_autoptr(GPtrArray) subjects = g_ptr_array_new_with_free_func((GDestroyNotify) spv_subject_free);
  gboolean designed = FALSE;

  for (guint i = 0; i < scheme->n_panels; i++) {
    if (!is_chosen(scheme->panels[i], options))
      continue;
    SpvSubject *subject = spv_subject_new(measuring, scheme, i, room, cancellable, error);
    if (subject == NULL)
      return NULL;
    g_ptr_array_add(subjects, subject);
    designed |= spv_panel_has_design(scheme->panels[i]);
  }
  if (!designed) {
    g_set_error_literal(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_EMPTY,
                        _("There is nothing to print: no panel has a layer to be seen. Add a layer first."));
    return NULL;
  }
  return g_steal_pointer(&subjects);
}

/* The paper's names on which SUBJECT would fit, or NULL. */
static char *
papers_for(cairo_t *measuring, const SpvSubject *subject) {
  g_autoptr(GString) names = g_string_new(NULL);
  double width, height;
  guint n;
  const SpvPaper *papers = spv_papers(&n);

  spv_card_least(subject, &width, &height);
  for (guint i = 0; i < n; i++) {
    g_autoptr(SpvPageFrame) frame = spv_page_frame_new(measuring, &papers[i], spv_tables_note());
    if (width <= spv_box_width(frame->free) && height <= spv_box_height(frame->free))
      g_string_append_printf(names, "%s%s", names->len > 0 ? ", " : "", papers[i].label);
  }
  return names->len > 0 ? g_strdup(names->str) : NULL;
}

static void
set_fit_error(cairo_t *measuring, const SpvSubject *subject, const SpvPaper *paper, GError **error) {
  g_autofree char *width = spv_measure_words(spv_box_width(subject->bounds));
  g_autofree char *height = spv_measure_words(spv_box_height(subject->bounds));
  g_autofree char *papers = papers_for(measuring, subject);

  if (papers != NULL)
    g_set_error(error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_FIT,
                _("%s (%s × %s\u2009mm) is too large for %s at true size; this paper would do: %s"),
                subject->title, width, height, paper->label, papers);
  else
    g_set_error(
        error, SPV_SHEET_ERROR, SPV_SHEET_ERROR_FIT,
        _("%s (%s × %s\u2009mm) is too large for %s at true size, and for every other paper here; leave "
          "it out, or divide the panel"),
        subject->title, width, height, paper->label);
}

SpvSheets *
spv_sheets_new(const SpvScheme *scheme, const SpvSheetOptions *options, GCancellable *cancellable,
               GError **error) {
  if (!check_options(scheme, options, error))
    return NULL;

  cairo_t *measuring = spv_measuring_context_new();
  g_autoptr(SpvSheets) sheets = g_new0(SpvSheets, 1);
  SpvCardOptions card_options = { options->content, options->hatch ? SPV_DRAW_HATCH : SPV_DRAW_COLOUR };
  const SpvSubject *misfit = NULL;

  sheets->scheme = spv_scheme_ref(scheme);
  sheets->paper = options->paper;
  sheets->mode = card_options.mode;
  sheets->date = g_strdup(options->date);
  sheets->frame = spv_page_frame_new(measuring, options->paper, spv_tables_note());
  double room = spv_box_width(sheets->frame->columns[0]) - 2 * SPV_CARD_PADDING;
  sheets->subjects = choose_subjects(measuring, scheme, options, room, cancellable, error);
  if (sheets->subjects != NULL) {
    sheets->pages = spv_flow(measuring, sheets->subjects, &card_options, sheets->frame, &misfit);
    if (sheets->pages == NULL)
      set_fit_error(measuring, misfit, options->paper, error);
  }
  cairo_destroy(measuring);
  return sheets->pages != NULL ? g_steal_pointer(&sheets) : NULL;
}

void
spv_sheets_free(SpvSheets *sheets) {
  g_clear_pointer(&sheets->pages, g_ptr_array_unref);
  g_clear_pointer(&sheets->subjects, g_ptr_array_unref);
  g_clear_pointer(&sheets->frame, spv_page_frame_free);
  g_clear_pointer(&sheets->scheme, spv_scheme_unref);
  g_free(sheets->date);
  g_free(sheets);
}

guint
spv_sheets_count(const SpvSheets *sheets) {
  return sheets->pages->len;
}

const SpvPaper *
spv_sheets_paper(const SpvSheets *sheets) {
  return sheets->paper;
}

const char *
spv_sheets_title(const SpvSheets *sheets) {
  return sheets->scheme->title;
}

/* The Nth template on CARD, N counted down; its box on the page goes to BOX. */
static gboolean
find_on_card(const SpvPlacedCard *placed, guint *n, SpvBox *box) {
  for (guint i = 0; i < placed->card->pieces->len; i++) {
    const SpvCardPiece *piece = g_ptr_array_index(placed->card->pieces, i);
    if (piece->kind != SPV_PIECE_TEMPLATE || (*n)-- > 0)
      continue;
    *box = (SpvBox){ piece->box.x0 + placed->at.x, piece->box.y0 + placed->at.y, piece->box.x1 + placed->at.x,
                     piece->box.y1 + placed->at.y };
    return TRUE;
  }
  return FALSE;
}

gboolean
spv_sheets_find_template(const SpvSheets *sheets, const char *panel, guint n, guint *sheet, SpvBox *box) {
  for (guint i = 0; i < sheets->pages->len; i++) {
    const SpvPage *page = g_ptr_array_index(sheets->pages, i);
    for (guint j = 0; j < page->cards->len; j++) {
      const SpvPlacedCard *placed = g_ptr_array_index(page->cards, j);
      if (strcmp(placed->card->subject->panel->id, panel) == 0 && find_on_card(placed, &n, box)) {
        *sheet = i;
        return TRUE;
      }
    }
  }
  return FALSE;
}

/* "Kneepad, dexter; Greave, sinister": the panels of PAGE. */
static char *
page_panels(const SpvPage *page) {
  g_autoptr(GString) names = g_string_new(NULL);

  for (guint i = 0; i < page->cards->len; i++) {
    const SpvPlacedCard *placed = g_ptr_array_index(page->cards, i);
    g_string_append_printf(names, "%s%s", i > 0 ? "; " : "", placed->card->subject->title);
  }
  return g_strdup(names->str);
}

static void
draw_frame(const SpvSheets *sheets, guint index, const SpvPage *page, cairo_t *cr) {
  g_autofree gboolean *shown = g_new0(gboolean, MAX(sheets->scheme->n_tinctures, 1));
  g_autofree char *panels = page_panels(page);

  for (guint i = 0; i < page->cards->len; i++)
    spv_subject_mark_tinctures(((const SpvPlacedCard *) g_ptr_array_index(page->cards, i))->card->subject,
                               shown);
  SpvFrameWords words = {
    .title = { _("Scheme"), sheets->scheme->title },
    .contents = { _("Guide sheet for"), panels },
    .whole = { _("Harness"), sheets->scheme->harness },
    .date = sheets->date,
    .number = index + 1,
    .count = sheets->pages->len,
    .scheme = sheets->scheme,
    .shown = shown,
    .mode = sheets->mode,
  };
  spv_page_frame_draw(cr, sheets->frame, &words);
}

void
spv_sheets_draw(const SpvSheets *sheets, guint index, cairo_t *cr) {
  const SpvPage *page = g_ptr_array_index(sheets->pages, index);
  SpvBox clip;

  cairo_save(cr);
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_rectangle(cr, 0, 0, sheets->paper->width, sheets->paper->height);
  cairo_fill(cr);
  draw_frame(sheets, index, page, cr);
  cairo_clip_extents(cr, &clip.x0, &clip.y0, &clip.x1, &clip.y1);
  for (guint i = 0; i < page->cards->len; i++) {
    const SpvPlacedCard *placed = g_ptr_array_index(page->cards, i);
    SpvBox box = { placed->at.x, placed->at.y, placed->at.x + placed->card->width,
                   placed->at.y + placed->card->height };
    if (spv_box_overlaps(clip, spv_box_grow(box, 1)))
      spv_card_draw(cr, placed->card, placed->at);
  }
  cairo_restore(cr);
}
