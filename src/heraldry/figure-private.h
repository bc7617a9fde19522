/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How each figure is drawn, in any unit and about any place: spv_figure_path() brings it to its own.
 * Clockwise runs add, the others cut holes; runs that add may overlap. */
#pragma once

#include "heraldry/pattern.h"

/* Adds the figure of PATTERN to BUILDER. */
typedef void (*SpvFigureDraw)(const SpvPattern *pattern, SpvPathBuilder *builder);

/* Measure INDEX of PATTERN, one of its kind's own: a count or a choice, within what its spec allows. */
guint spv_figure_own(const SpvPattern *pattern, guint index);
/* A circle that adds, or one that cuts a hole. */
void spv_figure_disc(SpvPathBuilder *builder, SpvPoint centre, double radius);
void spv_figure_hole(SpvPathBuilder *builder, SpvPoint centre, double radius);
/* The place at RADIUS from (0, 0) in the direction ANGLE, radians clockwise from the top. */
SpvPoint spv_figure_polar(double radius, double angle);

/* The exact box of PATH: of the curves themselves, not of their chords. A zero box when empty. */
SpvBox spv_figure_bounds(const SpvPath *path);
/* PATH with the middle of its bounds at (0, 0) and their greater side 1; the empty path when it has no
 * size. */
SpvPath *spv_figure_normalise(const SpvPath *path);

/* The figure of KIND, which is kept as path data: read once and shared; a new reference. */
SpvPath *spv_figure_drawn(SpvPatternKind kind);

/* figures-plain.c */
void spv_figure_roundel(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_annulet(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_billet(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_lozenge(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_fusil(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_mascle(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_rustre(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_gout(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_heart(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_gem(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_hourglass(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_tally(const SpvPattern *pattern, SpvPathBuilder *builder);

/* figures-crosses.c */
void spv_figure_cross_couped(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_cross_patty(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_cross_potent(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_cross_pommy(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_cross_fitchy(const SpvPattern *pattern, SpvPathBuilder *builder);

/* figures-round.c */
void spv_figure_mullet(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_estoile(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_crescent(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_wheel(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_cog(const SpvPattern *pattern, SpvPathBuilder *builder);
void spv_figure_sun(const SpvPattern *pattern, SpvPathBuilder *builder);
