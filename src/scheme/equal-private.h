/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Deep comparison of a scheme's values: an edit that changes nothing gives back the value that it
 * was given. */
#pragma once

#include "scheme/scheme.h"

/* NULL is the same as NULL only. */
gboolean spv_json_same(const json_t *a, const json_t *b);
gboolean spv_panel_equal(const SpvPanel *a, const SpvPanel *b);
gboolean spv_tincture_equal(const SpvTincture *a, const SpvTincture *b);
gboolean spv_scheme_equal(const SpvScheme *a, const SpvScheme *b);
