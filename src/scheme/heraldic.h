/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Blazon and schemes: a panel's layers from words, and in words. */
#pragma once

#include "heraldry/blazon.h"
#include "scheme/scheme.h"

/* SCHEME with the layers of panel PANEL_INDEX as TEXT says; an empty TEXT takes all away. A new reference:
 * SCHEME itself where nothing would change. NULL, with ERROR (SPV_PATTERN_ERROR_BLAZON) and PLACE (may be
 * NULL) set, where that is no blazon.
 *
 * A heraldic word is the tincture with that id; else the first plain one with the word's hatch whose id is no
 * other such word; else a new tincture with the word as its id and name and a usual colour. A fur is the
 * tincture with that fur of those two; else a new one. A name in quotes is the tincture with that name, or
 * that id.
 *
 * Layers that are there already keep what no blazon says: the nth layer of a kind is the nth one of that
 * kind, and keeps its id, its name and its lock; what is hidden is not part of a blazon and stays where it
 * is. */
SpvScheme *spv_heraldic_lay(const SpvScheme *scheme, guint panel_index, const char *text,
                            SpvBlazonPlace *place, GError **error);

/* What lies on panel PANEL_INDEX in words, "" where nothing does; hidden layers, and what is laid on them,
 * are left out. Laying it again gives the same layers. A tincture is called by its heraldic word where that
 * means the same tincture, otherwise by its name in quotes (its id, where another one has that name). Free
 * with g_free(). */
char *spv_heraldic_describe(const SpvScheme *scheme, guint panel_index);

/* The words that could stand at CURSOR (see spv_blazon_complete()), among them SCHEME's tinctures. */
char **spv_heraldic_complete(const SpvScheme *scheme, const char *text, guint cursor, guint *start);
