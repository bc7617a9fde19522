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
