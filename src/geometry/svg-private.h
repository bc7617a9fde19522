/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the readers of SVG share: numbers, separators and arcs. */
#pragma once

#include "geometry/svg-path.h"

/* Past white space. */
const char *spv_svg_skip_space(const char *p);
/* Past white space with at most one comma in it. */
const char *spv_svg_skip_comma(const char *p);
/* The end of the number at P by the grammar's `number`, and its value; NULL where none stands there. The
 * value may be infinite. */
const char *spv_svg_read_number(const char *p, double *value);

/* Adds the arc of an `A` command from FROM, where BUILDER's run is, to TO: radii RX and RY >= 0, the x axis
 * turned by TURN radians. As appendix F.6: nothing where the ends are one point, a line without a radius,
 * radii that don't reach scaled up. Returns how many steps were added. */
guint spv_svg_add_arc(SpvPathBuilder *builder, SpvPoint from, double rx, double ry, double turn,
                      gboolean large, gboolean sweep, SpvPoint to);

/* The transform that TEXT, a `transform` attribute, lists. FALSE where it can't be read; ERROR says what. */
gboolean spv_svg_read_transform(const char *text, SpvTransform *transform, GError **error);

/* The shape of an element called NAME, in its own units, from its attributes (NULL-terminated, as GMarkup has
 * them). NULL without ERROR where the element is no shape, or one without area. */
SpvPath *spv_svg_element_path(const char *name, const char **keys, const char **values, GError **error);
