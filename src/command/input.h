/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a verb works on: the scheme that FILE names, and the panels that --panel chooses. */
#pragma once

#include "command/call.h"
#include "scheme/scheme.h"

/* What messages call FILE: its own name, or "standard input" for "-". */
const char *spv_input_name(const char *file);

/* The scheme in FILE, or in standard input where FILE is "-". NULL when it can't be had; the call has then
 * failed (SPV_EXIT_FAILED) and says why. */
SpvScheme *spv_input_scheme(SpvCall *call, const char *file);

/* The indices (guint) of the panels called IDS, each once, in the harness's order; where IDS is NULL, of
 * those with a visible layer when WITH_DESIGN, else of all. NULL when there is no such panel; the call has
 * then failed. */
GArray *spv_input_panels(SpvCall *call, const char *file, const SpvScheme *scheme, char *const *ids,
                         gboolean with_design);
