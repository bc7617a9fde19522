/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a card is about: one panel with its composition, its guide and the words that go with them. */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

#include "guide/guide.h"

typedef struct {
  const SpvPanel *panel; /* owned by the composition's scheme */
  SpvComposition *composition;
  SpvPartition *partition;
  SpvGuide *guide;
  SpvPath *boundaries; /* of all that is to be seen of each shape */
  SpvBox bounds;       /* of the outline, in the panel's mm */
  char *title;         /* "Kneepad, dexter" */
  char *detail;        /* its size and surface, and whether it was measured */
  GPtrArray *tables;   /* SpvOffsetTable */
  double table_width;  /* mm on paper */
} SpvSubject;

/* Its tables are as wide as ROOM, mm on paper, where they can be. NULL, with ERROR set, only when cancelled.
 */
SpvSubject *spv_subject_new(cairo_t *measuring, const SpvScheme *scheme, guint panel, double room,
                            GCancellable *cancellable, GError **error);
void spv_subject_free(SpvSubject *subject);

/* Sets SHOWN (one a tincture of the scheme) for those that the panel shows. */
void spv_subject_mark_tinctures(const SpvSubject *subject, gboolean *shown);

G_DEFINE_AUTOPTR_CLEANUP_FUNC(SpvSubject, spv_subject_free)
