/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Path data of SVG: the grammar of "Scalable Vector Graphics (SVG) 1.1 (Second Edition)", W3C Recommendation
 * 16 August 2011, section 8.3, and the path elements of an SVG file. */
#pragma once

#include "geometry/transform.h"

/* The path that TEXT, the content of an SVG `d` attribute, describes, in its own units. Every command of the
 * grammar, absolute and relative; elliptical arcs as in its appendix F.6, circular ones as arcs. NULL, with
 * ERROR set (SPV_SVG_ERROR): where the grammar ends (SVG renders up to there; here the painter is told), the
 * message names the place by its character, counted from 1, and what could stand there; a path without a
 * command is an error too. At most SPV_SVG_MAX_STEPS steps in SPV_SVG_MAX_RUNS runs; numbers up to
 * SPV_SVG_MAX_NUMBER. The runs go round as the text has them: spv_path_wind() makes of them a path that fills
 * as SVG fills. */
SpvPath *spv_svg_path_parse(const char *text, GError **error);

/* PATH as path data: absolute M, L, C, A and Z with DECIMALS digits after the point (trailing zeros left
 * out), always with a point, whatever the locale. Arcs are written in parts of at most a third of a turn, so
 * that no rounding turns one over. Free with g_free(). */
char *spv_svg_path_write(const SpvPath *path, guint decimals);

/* All path elements of the SVG document TEXT (LENGTH bytes) as one path's data, with the transforms of the
 * elements around them carried out. Other shapes (rect, circle, ellipse, polygon, polyline) become paths too;
 * what is in defs, symbol, clipPath, mask, marker or pattern is left out. Each is wound by its own fill-rule,
 * so that the data, read and wound again, fill all that any of them fills. NULL, with ERROR set, where TEXT
 * is not XML, has no shape, or has a path or a transform that can't be read. Free with g_free(). */
char *spv_svg_file_path(const char *text, gsize length, GError **error);

#define SPV_SVG_MAX_STEPS 100000
#define SPV_SVG_MAX_RUNS 2000 /* more than anybody paints; winding them takes the square of their number */
#define SPV_SVG_MAX_NUMBER 1e9

typedef enum { SPV_SVG_ERROR_SYNTAX, SPV_SVG_ERROR_EMPTY, SPV_SVG_ERROR_LIMIT } SpvSvgError;
#define SPV_SVG_ERROR (spv_svg_error_quark())
GQuark spv_svg_error_quark(void);
