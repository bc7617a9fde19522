/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the verbs that write pages have in common: choosing the paper and the dots, and naming the files. */
#pragma once

#include "command/call.h"
#include "sheet/sheet.h"

/* Each takes what the call said and returns FALSE, with MESSAGE set (free with g_free()), where that can't
 * be; the paper KEY may be NULL, which leaves PAPER as it is. */
gboolean spv_choose_paper(const char *key, const SpvPaper **paper, char **message);
gboolean spv_choose_dpi(int dpi, char **message);

/* Prints PATHS, one a line, or as the list NAME of a JSON object. */
void spv_print_paths(SpvCall *call, const char *name, const GPtrArray *paths, gboolean as_json);
