/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures that are drawn by hand: the SVG files in resources/charges/, which the program carries inside. */
#include "heraldry/figure-private.h"

#include <gio/gio.h>

#include "geometry/svg-path.h"
#include "geometry/wind.h"
#include "spv-charges.h"

/* Reads the file of KIND. The files are part of the program, so one that is missing or wrong is a fault of
 * the program, which the tests find: the figure is then empty. */
static SpvPath *
read_drawn(SpvPatternKind kind) {
  g_autofree char *name = g_strdup_printf("/org/spolvero/charges/%s.svg", spv_pattern_info(kind)->key);
  g_autoptr(GError) error = NULL;
  g_autoptr(GBytes)
      bytes = g_resource_lookup_data(spv_charges_get_resource(), name, G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
  gsize length = 0;
  const char *text = bytes == NULL ? NULL : g_bytes_get_data(bytes, &length);
  g_autofree char *data = text == NULL ? NULL : spv_svg_file_path(text, length, &error);
  g_autoptr(SpvPath) path = data == NULL ? NULL : spv_svg_path_parse(data, &error);
  if (path == NULL) {
    g_critical("%s: %s", name, error->message);
    return spv_path_builder_build(spv_path_builder_new());
  }
  return spv_figure_normalise(path);
}

SpvPath *
spv_figure_drawn(SpvPatternKind kind) {
  static SpvPath *drawn[SPV_N_PATTERNS]; /* read once, never changed after */
  if (g_once_init_enter(&drawn[kind])) {
    SpvPath *path = read_drawn(kind);
    g_once_init_leave(&drawn[kind], path);
  }
  return spv_path_ref(drawn[kind]);
}
