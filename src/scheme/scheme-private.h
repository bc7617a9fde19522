/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the edits of a scheme share. */
#pragma once

#include "scheme/scheme.h"

/* A copy with one reference, to be changed before anyone else sees it. Its list of tinctures, and that of
 * what is unknown of them, have room for one more. */
SpvScheme *spv_scheme_copy(const SpvScheme *scheme);

/* Lets go of the strings of a scheme's TINCTURE. */
void spv_tincture_clear(const SpvTincture *tincture);

/* The scheme with the N TINCTURES in the place of its own, of which nothing may be used yet. SCHEME itself
 * where they break a rule of spv_scheme_with_tincture_added(); furs may stand before what they are made of.
 */
SpvScheme *spv_scheme_with_tinctures(const SpvScheme *scheme, const SpvTincture *tinctures, guint n);
