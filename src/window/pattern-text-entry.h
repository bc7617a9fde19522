/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The field for one text of a pattern: words, a font, a path, how charges stand in rows. It checks while the
 * painter types, and says below what is wrong; the last good text stays. */
#pragma once

#include <gtk/gtk.h>

#include "heraldry/pattern.h"

G_BEGIN_DECLS

#define SPV_TYPE_PATTERN_TEXT_ENTRY (spv_pattern_text_entry_get_type())
G_DECLARE_FINAL_TYPE(SpvPatternTextEntry, spv_pattern_text_entry, SPV, PATTERN_TEXT_ENTRY, GtkWidget)

/* Signals: "changed": the painter gave another text that the spec allows. "settled": the painter is done with
 * the field for now. */

/* The field for text INDEX of KIND. */
GtkWidget *spv_pattern_text_entry_new(SpvPatternKind kind, guint index);

/* Shows TEXT (NULL: none is given). What the painter is typing is left alone while TEXT is what it last came
 * to. */
void spv_pattern_text_entry_show(SpvPatternTextEntry *entry, const char *text);
/* The last good text, owned by the entry; NULL: none is given. */
const char *spv_pattern_text_entry_text(SpvPatternTextEntry *entry);

/* Takes the path of the SVG file FILE; what is wrong with it is said below. */
void spv_pattern_text_entry_take_file(SpvPatternTextEntry *entry, GFile *file);

G_END_DECLS
