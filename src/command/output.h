/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a verb puts the scheme that it made. */
#pragma once

#include "command/call.h"
#include "scheme/scheme.h"

/* Saves SCHEME where OUTPUT says, which is standard output for "-"; with FORCE a file that is there is
 * replaced, otherwise the call fails. Returns the exit status. */
int spv_output_scheme(SpvCall *call, const SpvScheme *scheme, const char *output, gboolean force);
