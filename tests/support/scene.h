/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Small schemes built in code, for tests that need a panel with a design. All names are of the invented
 * coast. */
#pragma once

#include "scheme/scheme.h"

/* A scheme "Saltmarsh Wardens" with the tinctures vert, argent and sable and one panel "pad" of FAMILY at its
 * presets, without layers. */
SpvScheme *scene_new(SpvOutlineFamily family, double width, double height);

/* The scheme with a layer of KIND on top of the panel; tinctures are ids or NULL. Consumes SCHEME. */
SpvScheme *scene_add(SpvScheme *scheme, SpvPatternKind kind, const char *first, const char *second);

/* The scheme with measure KEY of the topmost layer set. Consumes SCHEME. */
SpvScheme *scene_set(SpvScheme *scheme, const char *key, SpvUnit unit, double value);

/* The scheme with the topmost layer laid on, or counterchanged across, the layer called ID. Consumes SCHEME.
 */
SpvScheme *scene_lay_on(SpvScheme *scheme, const char *id);
SpvScheme *scene_counterchange(SpvScheme *scheme, const char *id);
/* The scheme with the fur KEY of two tinctures, called by its key, PITCH mm apart. Consumes SCHEME. */
SpvScheme *scene_add_fur(SpvScheme *scheme, SpvFur fur, const char *ground, const char *spots, double pitch);
/* The scheme with its design as its mirror image. Consumes SCHEME. */
SpvScheme *scene_mirror(SpvScheme *scheme);

/* A scheme with a fur, and up to MOST_LAYERS layers of any kind with any measures that are allowed, in any
 * tie to those below. */
SpvScheme *scene_random(GRand *rand, int most_layers);
