/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a panel stands on the figure: flat, bent round a cylinder, or domed; as calipers give it. */
#pragma once

#include <glib.h>

typedef enum {
  SPV_SURFACE_FLAT,
  SPV_SURFACE_CYLINDER, /* bent across: straight up and down */
  SPV_SURFACE_DOME      /* a cap of a sphere */
} SpvSurfaceKind;
#define SPV_N_SURFACES 3

typedef struct {
  SpvSurfaceKind kind;
  double depth; /* mm, how far the middle stands above the rim; 0 for flat */
} SpvSurface;

/* The file's word for KIND: "flat", "cylinder", "dome". */
const char *spv_surface_kind_key(SpvSurfaceKind kind);
gboolean spv_surface_kind_from_key(const char *key, SpvSurfaceKind *kind);

/* Whether a panel WIDTH mm across can stand so: a flat one has depth 0; a curved one a depth above 0 and at
 * most half of WIDTH, where a cap of a sphere or a half tube ends. Sets ERROR (SPV_SURFACE_ERROR) with what
 * to do. */
gboolean spv_surface_check(const SpvSurface *surface, double width, GError **error);

/* The radius, mm, of the circle whose chord is WIDTH and whose height is the surface's depth; INFINITY when
 * flat. r = (c² + 4h²) / 8h: Machinery's Handbook, 31st ed., p. 79. */
double spv_surface_radius(const SpvSurface *surface, double width);

typedef enum { SPV_SURFACE_ERROR_DEPTH } SpvSurfaceError;
#define SPV_SURFACE_ERROR (spv_surface_error_quark())
GQuark spv_surface_error_quark(void);
