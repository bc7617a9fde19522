/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A card: one panel's framed block on a sheet, or the part of it that goes on the next. It is laid out first,
 * as pieces with a place each, and drawn later, as often as wanted. Millimetres; a card's own corner is (0,
 * 0). */
#pragma once

#include "draw/draw.h"
#include "sheet/card-plan.h"
#include "sheet/subject.h"
#include "sheet/table.h"

typedef enum {
  SPV_PIECE_WORDS,    /* a line of the head, or a caption */
  SPV_PIECE_TEMPLATE, /* box: of the outline */
  SPV_PIECE_FIGURE,   /* box: of everything drawn; at: where the outline's corner stands */
  SPV_PIECE_TABLE
} SpvCardPieceKind;

typedef struct {
  SpvCardPieceKind kind;
  SpvBox box;
  SpvPoint at;
  SpvDrawMode mode;   /* TEMPLATE, FIGURE */
  gboolean marked;    /* TEMPLATE: with dots and rulings */
  double factor;      /* FIGURE */
  GArray *labels;     /* SpvLabel; FIGURE, and TEMPLATE where MARKED */
  SpvTablePart table; /* TABLE */
  char *words;        /* WORDS */
  double size;        /* WORDS: of the capitals */
  gboolean bold, grey;
} SpvCardPiece;

typedef struct {
  const SpvSubject *subject;
  double width, height;
  GPtrArray *pieces;   /* SpvCardPiece */
  SpvTablePlace after; /* where the tables go on; at their end when the card is complete */
} SpvCard;

typedef struct {
  guint content;    /* SpvContent flags */
  SpvDrawMode mode; /* SPV_DRAW_COLOUR or SPV_DRAW_HATCH */
} SpvCardOptions;

/* How high the head of SUBJECT's card and its margin at the foot are together, at WIDTH: what a plan does not
 * count. */
double spv_card_surround(cairo_t *measuring, const SpvSubject *subject, double width);

/* The card of SUBJECT at WIDTH, arranged as PLAN (for the width within its padding) says. */
SpvCard *spv_card_new(cairo_t *measuring, const SpvSubject *subject, const SpvCardOptions *options,
                      double width, const SpvPlan *plan);
/* A card that goes on with the tables from PLACE. */
SpvCard *spv_card_new_continued(cairo_t *measuring, const SpvSubject *subject, double width,
                                double max_height, SpvTablePlace place);
void spv_card_free(SpvCard *card);

gboolean spv_card_is_complete(const SpvCard *card);

/* Makes CARD MORE mm higher: the white goes above and below an enlargement that stands alone, else to the
 * foot. */
void spv_card_stretch(SpvCard *card, double more);

/* The smallest width and height that a card needs for one template alone. */
void spv_card_least(const SpvSubject *subject, double *width, double *height);

/* Draws CARD with its corner at AT; leaves out what the context's clip hides. */
void spv_card_draw(cairo_t *cr, const SpvCard *card, SpvPoint at);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvCard, spv_card_free)
