/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The panel on the wearer's other side, and what it may take over. No widgets in here. */
#pragma once

#include "scheme/scheme.h"

/* The panel of the opposite side whose id differs from panel INDEX's only in "-dexter" and "-sinister"; -1
 * where there is none. */
int spv_panel_pair_find(const SpvScheme *scheme, guint index);

/* SCHEME with panel TO of the same outline, surface and state of measuring as panel FROM; SCHEME itself where
 * that is so already. A new reference. */
SpvScheme *spv_panel_pair_copy_size(const SpvScheme *scheme, guint from, guint to);

/* SCHEME with panel TO of the same design as panel FROM, likewise. NULL while a layer of TO is locked. */
SpvScheme *spv_panel_pair_copy_design(const SpvScheme *scheme, guint from, guint to);
/* Likewise, of the mirror image of FROM's design. */
SpvScheme *spv_panel_pair_copy_design_mirrored(const SpvScheme *scheme, guint from, guint to);
