/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The field for one measure: number and unit, or a choice. It knows the measure's spec and the panel's size,
 * and nothing of sessions or layers. */
#pragma once

#include <gtk/gtk.h>

#include "heraldry/measure.h"

G_BEGIN_DECLS

#define SPV_TYPE_MEASURE_ENTRY (spv_measure_entry_get_type())
G_DECLARE_FINAL_TYPE(SpvMeasureEntry, spv_measure_entry, SPV, MEASURE_ENTRY, GtkWidget)

/* Signals: "changed": the painter gave another value that the spec allows; read it with
 * spv_measure_entry_value(). "settled": the painter is done with the field for now (Enter, or left it). */

GtkWidget *spv_measure_entry_new(void);

/* What is measured. SPEC's strings must outlive the entry; OPTIONAL: whether it may be AUTO. */
void spv_measure_entry_set_spec(SpvMeasureEntry *entry, const SpvMeasureSpec *spec, gboolean optional);

/* Shows VALUE on a panel of WIDTH by HEIGHT mm. WORKED_OUT is what the pattern makes of an AUTO without a
 * preset, in the core's units, or NAN when that has no one number. Words that the painter is just typing are
 * left alone while they still mean VALUE. */
void spv_measure_entry_set_value(SpvMeasureEntry *entry, SpvMeasure value, double width, double height,
                                 double worked_out);
SpvMeasure spv_measure_entry_value(SpvMeasureEntry *entry);

/* Marks the value that was typed as one that does not do, for a reason that the spec does not know; NULL
 * clears the mark. It stays until the next change or spv_measure_entry_set_value(). */
void spv_measure_entry_set_error(SpvMeasureEntry *entry, const char *message);
gboolean spv_measure_entry_has_error(SpvMeasureEntry *entry);

/* The name that a screen reader says. */
void spv_measure_entry_set_name(SpvMeasureEntry *entry, const char *name);

G_END_DECLS
