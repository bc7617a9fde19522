/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The kinds of surface and the circle behind a curved one. */
#include "config.h"

#include "surface/surface.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* The keys of the file, and through _() the words of the command line. */
static const char *const kind_keys[SPV_N_SURFACES] = {
  [SPV_SURFACE_FLAT] = N_("flat"),
  [SPV_SURFACE_CYLINDER] = N_("cylinder"),
  [SPV_SURFACE_DOME] = N_("dome"),
};

G_DEFINE_QUARK(spv_surface_error, spv_surface_error)

const char *
spv_surface_kind_key(SpvSurfaceKind kind) {
  return kind_keys[kind];
}

gboolean
spv_surface_kind_from_key(const char *key, SpvSurfaceKind *kind) {
  for (guint i = 0; i < SPV_N_SURFACES; i++)
    if (g_strcmp0(key, kind_keys[i]) == 0) {
      *kind = (SpvSurfaceKind) i;
      return TRUE;
    }
  return FALSE;
}

gboolean
spv_surface_check(const SpvSurface *surface, double width, GError **error) {
  char depth_text[G_ASCII_DTOSTR_BUF_SIZE];
  char most_text[G_ASCII_DTOSTR_BUF_SIZE];
  double depth = surface->depth;

  g_ascii_formatd(depth_text, sizeof depth_text, "%.6g", depth);
  if (surface->kind == SPV_SURFACE_FLAT) {
    if (depth == 0)
      return TRUE;
    g_set_error(error, SPV_SURFACE_ERROR, SPV_SURFACE_ERROR_DEPTH,
                _("a flat panel has a depth of %s mm; make it 0, or choose cylinder or dome"), depth_text);
    return FALSE;
  }

  /* Written so that NaN fails. The file's 15 digits may round a half up by a hair: that is no deeper. */
  if (depth > 0 && depth <= width / 2 + 1e-9)
    return TRUE;
  g_ascii_formatd(most_text, sizeof most_text, "%.6g", width / 2);
  g_set_error(error, SPV_SURFACE_ERROR, SPV_SURFACE_ERROR_DEPTH,
              _("a curved panel has a depth of %s mm; give one above 0 and at most %s mm, half of its "
                "width, or choose flat"),
              depth_text, most_text);
  return FALSE;
}

double
spv_surface_radius(const SpvSurface *surface, double width) {
  double depth = surface->depth;

  if (surface->kind == SPV_SURFACE_FLAT || depth <= 0)
    return INFINITY;
  return (width * width + 4 * depth * depth) / (8 * depth);
}
