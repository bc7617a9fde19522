/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/subject.h"

#include <glib/gi18n-lib.h>

#include "sheet/offsets.h"
#include "sheet/table.h"
#include "sheet/wording.h"

static char *
surface_words(const SpvSurface *surface) {
  g_autofree char *depth = spv_measure_words(surface->depth);

  switch (surface->kind) {
  case SPV_SURFACE_FLAT:
    return g_strdup(_("flat"));
  case SPV_SURFACE_CYLINDER:
    return g_strdup_printf(_("bent, %s\u2009mm deep"), depth);
  case SPV_SURFACE_DOME:
    return g_strdup_printf(_("dome, %s\u2009mm deep"), depth);
  }
  return NULL;
}

static char *
detail_words(const SpvPanel *panel, SpvBox bounds) {
  g_autofree char *width = spv_measure_words(spv_box_width(bounds));
  g_autofree char *height = spv_measure_words(spv_box_height(bounds));
  g_autofree char *surface = surface_words(&panel->surface);

  if (panel->measured)
    return g_strdup_printf(_("%s × %s\u2009mm, %s"), width, height, surface);
  return g_strdup_printf(_("%s × %s\u2009mm, %s. A typical size: measure yours."), width, height, surface);
}

static SpvPath *
boundaries_new(const SpvPartition *partition) {
  SpvPathBuilder *builder = spv_path_builder_new();

  for (guint i = 0; i < partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(partition->regions, i);
    g_autoptr(SpvPath) path = spv_shape_to_path(region->shape);
    spv_path_builder_path(builder, path);
  }
  return spv_path_builder_build(builder);
}

SpvSubject *
spv_subject_new(cairo_t *measuring, const SpvScheme *scheme, guint panel, double room,
                GCancellable *cancellable, GError **error) {
  g_autoptr(SpvSubject) subject = g_new0(SpvSubject, 1);

  subject->composition = spv_compose(scheme, panel);
  subject->panel = subject->composition->panel;
  subject->bounds = spv_outline_bounds(subject->composition->outline);
  subject->title = spv_words_capitalise(subject->panel->name);
  subject->detail = detail_words(subject->panel, subject->bounds);
  subject->partition = spv_partition_new(subject->composition, cancellable, error);
  if (subject->partition == NULL)
    return NULL;
  subject->boundaries = boundaries_new(subject->partition);
  subject->guide = spv_guide_new(subject->composition);
  subject->tables = spv_tables_new(measuring, subject->guide, room);
  subject->table_width = spv_tables_width(subject->tables);
  return g_steal_pointer(&subject);
}

void
spv_subject_free(SpvSubject *subject) {
  g_clear_pointer(&subject->tables, g_ptr_array_unref);
  g_clear_pointer(&subject->guide, spv_guide_free);
  g_clear_pointer(&subject->partition, spv_partition_free);
  g_clear_pointer(&subject->composition, spv_composition_unref);
  g_clear_pointer(&subject->boundaries, spv_path_unref);
  g_free(subject->title);
  g_free(subject->detail);
  g_free(subject);
}

void
spv_subject_mark_tinctures(const SpvSubject *subject, gboolean *shown) {
  for (guint i = 0; i < subject->partition->regions->len; i++) {
    const SpvRegion *region = g_ptr_array_index(subject->partition->regions, i);
    if (region->tincture >= 0)
      shown[region->tincture] = TRUE;
  }
}
